using System.Runtime.CompilerServices;
using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Sugars;

/// <summary>
/// The activity of water beside one pseudo-solute: any mix of solutes is one, of their mean molar mass and of the strength k, the
/// square of the mole-weighted mean of the roots of their Norrish constants over that of sucrose. Sucrose itself has k = 1.
/// </summary>
/// <remarks>
/// ln a = ln(1 − x) − k·F(T, x)·x², where x is the mole fraction of all solutes together and F·x² is what the equation for sucrose gives
/// for −ln γ. The rule for mixing is Norrish's own, −ln γ = (Σ √Kᵢ·xᵢ)²; it gives the same answer however a solute is split in two,
/// which Σ Kᵢ·xᵢ² does not.
/// </remarks>
internal static class ActivityOfWater
{
    private static readonly CoefficientSet s_peacock = CoefficientTable.BuiltIn.Get("activity-starzak-peacock", Constituent.Sucrose),
        s_mathlouthi = CoefficientTable.BuiltIn.Get("activity-starzak-mathlouthi", Constituent.Sucrose);

    /// <summary>The most solute, as a mole fraction: that of 98 % sucrose, where the measurements end.</summary>
    public static readonly double MostSolute = MoleFraction(s_peacock.Highest);

    /// <summary>A temperature that was worked out may be past the end of its range by its last bits.</summary>
    public const double SlackKelvin = 1e-9;

    /// <summary>The critical point of water.</summary>
    public const double HighestKelvin = SaturatedWater.MaximumCelsius + SaturatedWater.ZeroCelsius;

    // J/(mol·K): the Boltzmann constant times Avogadro's, exact since 2019.
    private const double GasConstant = 8.31446261815324;

    // Starzak and Peacock (1997): −Q/R in kelvin, a, b.
    private static readonly double s_q = -s_peacock["q"] / GasConstant, s_a = s_peacock["a"], s_b = s_peacock["b"];

    // Starzak and Mathlouthi (2006).
    private static readonly double s_a0 = s_mathlouthi["a0"], s_a1 = s_mathlouthi["a1"], s_a2 = s_mathlouthi["a2"],
        s_a3 = s_mathlouthi["a3"],
        s_a4 = s_mathlouthi["a4"], s_b1 = s_mathlouthi["b1"], s_b2 = s_mathlouthi["b2"], s_referenceKelvin = s_mathlouthi["reference"],
        s_highestMathlouthiKelvin = s_mathlouthi.MaximumCelsius + SaturatedWater.ZeroCelsius;

    /// <summary>F·x², divided by what of it depends on temperature (<see cref="TemperaturePart"/>).</summary>
    public static double ConcentrationPart(double x, BoilingModel model) => model == BoilingModel.StarzakPeacock
        ? x * x * (1 + x * (s_a + s_b * x))
        : x * x * (1 + x * (s_b1 + s_b2 * x));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double TemperaturePart(double kelvin, BoilingModel model)
    {
        if (model == BoilingModel.StarzakPeacock)
            return s_q / kelvin;
        // Where it was not fitted it bends, so that beyond it stays what it is at the end.
        double t = Math.Min(kelvin, s_highestMathlouthiKelvin) / s_referenceKelvin;
        return -(s_a0 / t + s_a1 + s_a2 * Math.Log(t) + t * (s_a3 + s_a4 * t));
    }

    /// <summary>Norrish (1966) with a constant that does not move with temperature.</summary>
    public static double Norrish(double x, double constant) => (1 - x) * Math.Exp(-constant * x * x);

    public static double Of(double x, double k, double kelvin, BoilingModel model) =>
        (1 - x) * Math.Exp(-k * ConcentrationPart(x, model) * TemperaturePart(kelvin, model));

    /// <summary>
    /// The most solute for a strength. A solute stronger than sucrose would let water grow more active with less of it at the top of
    /// the range, by an equation that was fitted to sucrose: the range ends before that, at 20 °C, the coldest it is asked for.
    /// </summary>
    public static double MostSoluteFor(double k)
    {
        double strength = k * s_q / (20 + SaturatedWater.ZeroCelsius);
        // The slope of x²(1 + ax + bx²) turns at 0.56; below, nothing can rise.
        return Roots.Rising(x => -1 / (1 - x) - strength * Slope(x, BoilingModel.StarzakPeacock), 0.3, MostSolute);
    }

    /// <summary>
    /// The boiling point, K: T with a(T)·p°(T) = P. The activity hardly depends on T, so the secant is there in a few steps; where it is so
    /// strong that the secant leaps out of the range of water, the root is bracketed; a solution that boils nowhere below the critical
    /// point of water gives that point.
    /// </summary>
    public static double BoilingKelvin(double x, double k, double kilopascals, BoilingModel model)
    {
        double water = SaturatedWater.BoilingKelvin(kilopascals);
        if (x <= 0)
            return water;
        double part = k * ConcentrationPart(x, model), ideal = kilopascals / (1 - x);
        double last = water, lastMiss = Next(last) - last, kelvin = last + lastMiss;
        for (int i = 0; i < 50; i++)
        {
            double miss = Next(kelvin) - kelvin;
            if (Math.Abs(miss) < 1e-11 * kelvin)
                return kelvin + miss;
            double step = miss * (kelvin - last) / (miss - lastMiss);
            (last, lastMiss, kelvin) = (kelvin, miss, kelvin - step);
            if (!(kelvin >= water && kelvin <= HighestKelvin))
                break;
        }
        return Bracketed(part, ideal, water, model);

        // Where water under this pressure over the activity at T boils. Above the critical pressure it boils nowhere, and the equation,
        // which bends back there, would lead the secant to a temperature at which nothing boils.
        double Next(double t)
        {
            double over = ideal * Math.Exp(part * TemperaturePart(t, model));
            return over <= SaturatedWater.MaximumKilopascals ? SaturatedWater.BoilingKelvin(over) : double.NaN;
        }
    }

    /// <summary>
    /// The mole fraction of solute that boils at a temperature, the inverse of <see cref="BoilingKelvin"/>; from 0 to <paramref
    /// name="most"/>.
    /// </summary>
    public static double SoluteBoilingAt(double kelvin, double k, double kilopascals, BoilingModel model, double most)
    {
        double part = k * TemperaturePart(kelvin, model), target = Math.Log(kilopascals / SaturatedWater.VapourPressure(kelvin));
        if (target >= 0)
            return 0;
        if (Miss(most) > 0)
            return most;
        double low = 0, high = most, x = Math.Min(most / 2, -target / (1 + part * 0.1));
        for (int i = 0; i < 100; i++)
        {
            double miss = Miss(x);
            if (miss > 0)
                low = x;
            else
                high = x;
            double slope = -1 / (1 - x) - part * Slope(x, model);
            double next = x - miss / slope;
            if (!(next > low && next < high))
                next = (low + high) / 2;
            if (Math.Abs(next - x) <= 1e-15 * high)
                return next;
            x = next;
        }
        return x;

        double Miss(double at) => Math.Log(1 - at) - part * ConcentrationPart(at, model) - target;
    }

    // Rising with T: the vapour pressure by far outruns the activity.
    private static double Bracketed(double part, double ideal, double water, BoilingModel model)
    {
        Func<double, double> miss = t => Math.Log(SaturatedWater.VapourPressure(t) / ideal) - part * TemperaturePart(t, model);
        return Roots.Rising(miss, water, HighestKelvin);
    }

    // Of sucrose, whose mass fraction is near 1: what is left is said by two digits, so that it is rounded to them.
    private static double MoleFraction(double fraction)
    {
        double sucrose = fraction / Solutes.SucroseMolarMass;
        return sucrose / (sucrose + Math.Round(1 - fraction, 12) / Solutes.WaterMolarMass);
    }

    private static double Slope(double x, BoilingModel model) => model == BoilingModel.StarzakPeacock
        ? x * (2 + x * (3 * s_a + 4 * s_b * x))
        : x * (2 + x * (3 * s_b1 + 4 * s_b2 * x));
}
