using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>
/// Short equations that are widely printed for the heat of food, so that a figure made with one can be checked. <see
/// cref="ThermalProperties"/> is better.
/// </summary>
internal static class PrintedHeatEquations
{
    private static readonly CoefficientSet s_siebel = Of("siebel", "water"), s_frozen = Of("frozen-water", "ice");

    private static readonly double s_siebelWater = s_siebel["water"], s_siebelFat = s_siebel["fat"], s_siebelSolids = s_siebel["solids"],
        s_freezing = Of("earle-freezing", "water")["water"], s_frozenShare = s_frozen["share"], s_frozenCurve = s_frozen["curve"];

    private static readonly (double Water, double Solids) s_heat = WetAndDry("earle-specific-heat", "water"),
        s_frozenHeat = WetAndDry("earle-frozen-specific-heat", "ice"), s_conductivity = WetAndDry("earle-conductivity", "water"),
        s_frozenConductivity = WetAndDry("earle-frozen-conductivity", "ice");

    /// <summary>Where Siebel's equation comes from.</summary>
    public static Source SiebelSource { get; } = Bibliography.Get("siebel-1892");

    /// <summary>Where the equations of Earle and Earle come from.</summary>
    public static Source EarleSource { get; } = Bibliography.Get("earle-unit-operations");

    /// <summary>The specific heat above freezing by Siebel (1892): 4.1868·w + 1.67472·f + 0.83736·(1 − w − f).</summary>
    /// <param name="water">The mass fraction of water w, from 0 to 1.</param>
    /// <param name="fat">The mass fraction of fat f, from 0 to 1 − w.</param>
    /// <returns>kJ/(kg·K). Worked number: 59 % water and 14 % fat give 2.931.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double SiebelSpecificHeat(double water, double fat)
    {
        Guard.InRange(water, 0, 1);
        double dry = 1 - water;
        // 0.7 and 0.3 may be beyond 1 by their last bits.
        if (fat > dry && fat <= dry + 1e-12)
            fat = dry;
        return s_siebelWater * water + s_siebelFat * Guard.InRange(fat, 0, dry) + s_siebelSolids * (dry - fat);
    }

    /// <summary>The specific heat above freezing by Earle and Earle, Appendix 7: 4.19·w + 0.84·(1 − w).</summary>
    /// <param name="water">The mass fraction of water w, from 0 to 1.</param>
    /// <returns>kJ/(kg·K). Worked number: 90 % water gives 3.855.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="water"/> is outside its range.</exception>
    public static double EarleSpecificHeat(double water) => Mix(s_heat, Guard.InRange(water, 0, 1));

    /// <summary>The specific heat below freezing by Earle and Earle, Appendix 7: 2.1·w + 0.84·(1 − w).</summary>
    /// <param name="water">The mass fraction of water w, from 0 to 1.</param>
    /// <returns>kJ/(kg·K). Worked number: 90 % water gives 1.974.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="water"/> is outside its range.</exception>
    public static double EarleFrozenSpecificHeat(double water) => Mix(s_frozenHeat, Guard.InRange(water, 0, 1));

    /// <summary>The heat of freezing by Earle and Earle, Appendix 7: 335·w.</summary>
    /// <param name="water">The mass fraction of water w, from 0 to 1.</param>
    /// <returns>kJ/kg. Worked number: 90 % water gives 301.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="water"/> is outside its range.</exception>
    public static double EarleFreezingHeat(double water) => s_freezing * Guard.InRange(water, 0, 1);

    /// <summary>The conductivity above freezing by Earle and Earle, Appendix 7: 0.55·w + 0.26·(1 − w).</summary>
    /// <param name="water">The mass fraction of water w, from 0 to 1.</param>
    /// <returns>W/(m·K). Worked number: 90 % water gives 0.521.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="water"/> is outside its range.</exception>
    public static double EarleConductivity(double water) => Mix(s_conductivity, Guard.InRange(water, 0, 1));

    /// <summary>The conductivity below freezing by Earle and Earle, Appendix 7: 2.4·w + 0.26·(1 − w).</summary>
    /// <param name="water">The mass fraction of water w, from 0 to 1.</param>
    /// <returns>W/(m·K). Worked number: 90 % water gives 2.186.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="water"/> is outside its range.</exception>
    public static double EarleFrozenConductivity(double water) => Mix(s_frozenConductivity, Guard.InRange(water, 0, 1));

    /// <summary>
    /// The heat that leaves a food on its way through freezing, in the three steps of textbooks: c·(T − T_f) + L + c'·(T_f − T'), Earle and
    /// Earle. It takes all the freezing at one temperature, which no food does; <see cref="FrozenWater"/> tells how it is spread.
    /// </summary>
    /// <param name="startCelsius">The temperature T before, °C, from T_f to 150.</param>
    /// <param name="freezingCelsius">Where it begins to freeze T_f, °C, from −40 to 0.</param>
    /// <param name="endCelsius">The temperature T' after, °C, from −60 to T_f.</param>
    /// <param name="specificHeat">The specific heat c above freezing, kJ/(kg·K), from 0.1 to 5.</param>
    /// <param name="frozenSpecificHeat">The specific heat c' below freezing, kJ/(kg·K), from 0.1 to 5.</param>
    /// <param name="freezingHeat">The heat of freezing L, kJ/kg, from 0 to 335.</param>
    /// <returns>kJ/kg. Worked number: bread from 18 to −18 °C that freezes at −2, with 2.93, 1.42 and 115: 196.32.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double FreezingKilojoulesPerKilogram(
        double startCelsius, double freezingCelsius, double endCelsius, double specificHeat, double frozenSpecificHeat, double freezingHeat)
    {
        Guard.InRange(freezingCelsius, -40, 0);
        Guard.InRange(startCelsius, freezingCelsius, 150);
        Guard.InRange(endCelsius, -60, freezingCelsius);
        return Guard.InRange(specificHeat, 0.1, 5) * (startCelsius - freezingCelsius) + Guard.InRange(freezingHeat, 0, 335)
            + Guard.InRange(frozenSpecificHeat, 0.1, 5) * (freezingCelsius - endCelsius);
    }

    /// <summary>The part of a food that is ice: 1.105·w/(1 + 0.7138/ln(T_f − T + 1)), as ASHRAE prints it; from memory.</summary>
    /// <param name="water">The mass fraction of water w, from 0 to 1.</param>
    /// <param name="freezingCelsius">Where it begins to freeze T_f, °C, from −10 to 0.</param>
    /// <param name="celsius">The temperature T, °C, from −45 to T_f.</param>
    /// <returns>
    /// The mass fraction of ice, at most w. Worked number: beef with 58 % water that freezes at −1.7 °C is 0.516 ice at −20 °C.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double FrozenWater(double water, double freezingCelsius, double celsius)
    {
        Guard.InRange(water, 0, 1);
        Guard.InRange(freezingCelsius, -10, 0);
        double below = freezingCelsius - Guard.InRange(celsius, -45, freezingCelsius);
        return below == 0 ? 0 : Math.Min(water, s_frozenShare * water / (1 + s_frozenCurve / Math.Log(below + 1)));
    }

    private static CoefficientSet Of(string equation, string substance) => CoefficientTable.BuiltIn.Get(equation, substance);

    private static (double Water, double Solids) WetAndDry(string equation, string substance) =>
        (Of(equation, substance)["water"], Of(equation, substance)["solids"]);

    private static double Mix((double Water, double Solids) of, double water) => of.Water * water + of.Solids * (1 - water);
}
