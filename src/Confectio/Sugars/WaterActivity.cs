using Confectio.Ingredients;

namespace Confectio.Sugars;

/// <summary>
/// Equations for the activity of water that are named after their authors, for one solute or for sums that a workbook keeps. For a
/// solution with all that is in it use <see cref="SugarSolution.WaterActivity"/>.
/// </summary>
public static class WaterActivity
{
    private static readonly CoefficientSet s_grover = CoefficientTable.BuiltIn.Get("activity-grover", Constituent.Water),
        s_zobrist = CoefficientTable.BuiltIn.Get("activity-zobrist", Constituent.Sucrose);

    private static readonly double s_moneyBorn = CoefficientTable.BuiltIn.Get("activity-money-born", Constituent.Sucrose)["a"];

    private static readonly double s_a0 = s_grover["a0"], s_a1 = s_grover["a1"], s_a2 = s_grover["a2"];

    private static readonly double s_d1 = s_zobrist["d1"], s_d2 = s_zobrist["d2"], s_t1 = s_zobrist["t1"], s_t2 = s_zobrist["t2"],
        s_t3 = s_zobrist["t3"],
        s_t4 = s_zobrist["t4"], s_reference = s_zobrist["reference"];

    /// <summary>Norrish (1966), at 25 °C: a = x_w·exp(−K·x_s²) with mole fractions of water and solute.</summary>
    /// <param name="waterMoles">Moles of water, above 0 to 1e9.</param>
    /// <param name="soluteMoles">Moles of the solute, from 0 to 1e9.</param>
    /// <param name="constant">K of the solute, from 0 to 20: sucrose 6.47, glucose and fructose 2.25, glycerol 1.16.</param>
    /// <returns>The activity. Worked number: equal masses of sucrose and water give 0.9348.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static double Norrish(double waterMoles, double soluteMoles, double constant)
    {
        double water = Guard.InRange(waterMoles, double.Epsilon, 1e9), solute = Guard.InRange(soluteMoles, 0, 1e9);
        return ActivityOfWater.Norrish(solute / (water + solute), Guard.InRange(constant, 0, 20));
    }

    /// <summary>
    /// Ross (1975): the activity over a mixture is the product of those that each solute would give alone in all the water.
    /// </summary>
    /// <param name="activities">The activities of the single solutions, each above 0 to 1.</param>
    /// <returns>The product; 1 of none. Worked number: 0.90 and 0.95 give 0.855.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An activity is outside its range.</exception>
    public static double Ross(params ReadOnlySpan<double> activities)
    {
        double product = 1;
        foreach (double activity in activities)
            product *= Guard.InRange(activity, double.Epsilon, 1, nameof(activities));
        return product;
    }

    /// <summary>
    /// Money and Born (1951), a rule of the trade from memory: a = 1/(1 + 0.27·n). Against the default model it is right within 0.011 from
    /// 55 to 67 % sucrose; at 75 % it reads 0.04 too high.
    /// </summary>
    /// <param name="molesPer100Grams">Moles of all sugars in 100 g of water, from 0 to 20.</param>
    /// <returns>The activity. Worked number: 0.5 mol gives 0.8811.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="molesPer100Grams"/> is outside its range.</exception>
    public static double MoneyBorn(double molesPer100Grams) => 1 / (1 + s_moneyBorn * Guard.InRange(molesPer100Grams, 0, 20));

    /// <summary>
    /// Grover (1947), a rule of the trade from memory: a = 1.04 − 0.10·E + 0.0045·E². E counts a gram of each solute in a gram of water by
    /// a factor, sucrose 1 and invert sugar 1.3. Below E = 0.41 it gives more than 1.
    /// </summary>
    /// <param name="sucroseEquivalent">E, from 0.41 to 11: above, the parabola turns up.</param>
    /// <returns>The activity. Worked number: E = 2 gives 0.858.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sucroseEquivalent"/> is outside its range.</exception>
    public static double Grover(double sucroseEquivalent)
    {
        double e = Guard.InRange(sucroseEquivalent, 0.41, 11);
        return s_a0 + s_a1 * e + s_a2 * e * e;
    }

    /// <summary>
    /// Zobrist and others (2011) for sucrose and water: a = (1 − w)/(1 − 0.99721·w + 0.13599·w²) + (T − 298.15)·(0.001688·w − 0.005151·w² +
    /// 0.009607·w³ − 0.006142·w⁴), w the mass fraction and T in kelvin. Best above 75 %; it reads up to 0.007 high below 40 % and 0.01 low
    /// about 65 %.
    /// </summary>
    /// <param name="strength">How much of it is sucrose.</param>
    /// <param name="celsius">The temperature, °C, from −60 to 60.</param>
    /// <returns>The activity. Worked number: 80 °Bx at 25 °C gives 0.6914.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static double Zobrist(Brix strength, double celsius)
    {
        double w = strength.Fraction, t = Guard.InRange(celsius, -60, 60) - s_reference;
        return (1 - w) / (1 + w * (s_d1 + s_d2 * w)) + t * w * (s_t1 + w * (s_t2 + w * (s_t3 + s_t4 * w)));
    }
}
