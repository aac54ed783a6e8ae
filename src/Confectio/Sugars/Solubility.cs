using Confectio.Ingredients;
using Confectio.Numerics;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>
/// How much of one sugar water holds at equilibrium with its crystals. With other sugars in the water ask <see cref="Crystallisation"/>.
/// </summary>
internal static class Solubility
{
    /// <summary>The lowest temperature of the equation for sucrose, °C.</summary>
    public const double MinimumCelsius = 0;

    /// <summary>The highest temperature of the equation for sucrose, °C.</summary>
    public const double MaximumCelsius = 100;

    private static readonly CoefficientSet s_sucrose = CoefficientTable.BuiltIn.Get("solubility-sucrose", Constituent.Sucrose);

    private static readonly double s_s0 = s_sucrose["s0"], s_s1 = s_sucrose["s1"], s_s2 = s_sucrose["s2"], s_s3 = s_sucrose["s3"],
        s_s4 = s_sucrose["s4"];

    private static readonly SolubilityPoint[] s_points = ReadBuiltIn();

    /// <summary>The tables of the other sugars: maltose and lactose as published, glucose and fructose from memory.</summary>
    public static IReadOnlyList<SolubilityPoint> Points => s_points;

    /// <summary>Sucrose, by Vavrinecz: w = 64.447 + 0.08222·t + 1.6169e-3·t² − 1.558e-6·t³ − 4.63e-8·t⁴ per cent.</summary>
    /// <param name="celsius">The temperature t, °C, from 0 to 100.</param>
    /// <returns>
    /// The mass fraction of sucrose. Older tables lie up to 0.0051 above it about room temperature and up to 0.0033 below it from 60 to 90
    /// °C, Charles (1960, from memory) within 0.0015 to 80 °C.
    /// Worked number: 20 °C gives 0.6672, which is 200.5 g in 100 g of water.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static double Sucrose(double celsius)
    {
        double t = Guard.InRange(celsius, MinimumCelsius, MaximumCelsius);
        return (s_s0 + t * (s_s1 + t * (s_s2 + t * (s_s3 + t * s_s4)))) / 100;
    }

    /// <summary>
    /// The temperature at which a sucrose solution is just saturated: below it crystals can grow, above it they dissolve.
    /// </summary>
    /// <param name="fraction">The mass fraction of sucrose, from 0.64447 (saturated at 0 °C) to 0.8265 (at 100 °C).</param>
    /// <returns>Degrees Celsius. Worked number: three parts of sugar to one of water, 0.75, dissolve at 63.3.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fraction"/> is outside its range.</exception>
    public static double SucroseSaturatedAtCelsius(double fraction)
    {
        Guard.InRange(fraction, Sucrose(MinimumCelsius), Sucrose(MaximumCelsius));
        return Roots.Rising(celsius => Sucrose(celsius) - fraction, MinimumCelsius, MaximumCelsius);
    }

    /// <summary>The temperatures for which the solubility of a sugar is known, °C.</summary>
    /// <param name="sugar">Sucrose, glucose, fructose, maltose or lactose.</param>
    /// <returns>The lowest and the highest.</returns>
    /// <exception cref="ArgumentException">No solubility of it is known.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sugar"/> is not a defined value.</exception>
    public static (double LowCelsius, double HighCelsius) RangeOf(Constituent sugar)
    {
        if (Guard.Defined(sugar) == Constituent.Sucrose)
            return (MinimumCelsius, MaximumCelsius);
        SolubilityPoint[] points = PointsOf(sugar);
        return points.Length > 0 ? (points[0].Celsius, points[^1].Celsius)
            : throw new ArgumentException($"{nameof(sugar)} was {sugar}; the solubility of {string.Join(", ", Known())} is known.",
                nameof(sugar));
    }

    /// <summary>
    /// A sugar alone in water. Sucrose is by <see cref="Sucrose"/>; the others are read from their tables, the logarithm of grams in a gram
    /// of water being taken as straight between two rows.
    /// </summary>
    /// <param name="sugar">Sucrose, glucose, fructose, maltose or lactose.</param>
    /// <param name="celsius">The temperature, °C, within <see cref="RangeOf"/>.</param>
    /// <returns>The mass fraction, without the water of the crystals. Worked number: lactose at 25 °C gives 0.178.</returns>
    /// <exception cref="ArgumentException">No solubility of the sugar is known.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Of(Constituent sugar, double celsius)
    {
        (double low, double high) = RangeOf(sugar);
        Guard.InRange(celsius, low, high);
        return sugar == Constituent.Sucrose ? Sucrose(celsius) : Between(PointsOf(sugar), celsius);
    }

    private static double Between(SolubilityPoint[] points, double celsius)
    {
        int above = Math.Max(1, Array.FindIndex(points, point => point.Celsius >= celsius));
        SolubilityPoint left = points[above - 1], right = points[above];
        double log = left.LogRatio + (right.LogRatio - left.LogRatio) * (celsius - left.Celsius) / (right.Celsius - left.Celsius);
        double ratio = Math.Exp(log);
        return ratio / (1 + ratio);
    }

    private static SolubilityPoint[] PointsOf(Constituent sugar) => Array.FindAll(s_points, point => point.Sugar == sugar);

    private static IEnumerable<Constituent> Known() => s_points.Select(point => point.Sugar).Distinct().Append(Constituent.Sucrose).Order();

    private static SolubilityPoint[] ReadBuiltIn()
    {
        List<SolubilityPoint> points = [];
        EmbeddedTable.Read("solubilities.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            points.Add(new SolubilityPoint(Solutes.Read(fields, "sugar"), fields.RequiredNumber("celsius", -20, 150),
                fields.RequiredNumber("percent", 0.1, 99) / 100,
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. points];
    }
}
