using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Numerics;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>
/// How much of a fat is solid over temperature, and the heat that all of it takes up when it melts. Most of the built-in curves are from
/// memory, that of milk fat is an estimate drawn through measured ranges: <see cref="Figures"/> say so one by one. Put in your own with
/// <see cref="Of"/>.
/// </summary>
/// <remarks>
/// Between the points the curve is a piecewise cubic that never rises (Fritsch and Butland). Beyond them it is flat, and that is the
/// policy: below the first point (5 °C of the built-in ones) a fat has as much solid as there, though it has a little more; above the last
/// it has as much as there, which is 0 for a fat that has melted, and too much for one that had not (palm 4 % at 40 °C). The curve is that
/// of heating. On cooling, fat stays liquid for a while below it: butter chilled an hour ago has less solid and warms more easily.
/// </remarks>
public sealed class SolidFatCurve
{
    /// <summary>The lowest temperature that a curve is asked for, °C.</summary>
    public const double MinimumCelsius = -40;

    /// <summary>The highest temperature that a curve is asked for, °C.</summary>
    public const double MaximumCelsius = 150;

    private const int MaximumPoints = 1000;

    private static readonly Provenance s_own = new(new Source("caller", "Own figure", "Figure handed in by the caller.", "", "", ""),
        Evidence.Estimated, "", "");

    private static readonly SolidFatCurve[] s_all = ReadBuiltIn();

    private readonly MonotoneCurve _low, _likely, _high;

    private SolidFatCurve(string key, SolidFatFigure[] figures, Spread meltingHeat, Provenance meltingHeatProvenance)
    {
        Key = key;
        Figures = figures;
        LatentHeat = meltingHeat;
        LatentHeatProvenance = meltingHeatProvenance;
        double[] celsius = [.. figures.Select(figure => figure.Celsius)];
        _low = new MonotoneCurve(celsius, [.. figures.Select(figure => figure.Percent.Low)]);
        _likely = new MonotoneCurve(celsius, [.. figures.Select(figure => figure.Percent.Likely)]);
        _high = new MonotoneCurve(celsius, [.. figures.Select(figure => figure.Percent.High)]);
    }

    /// <summary>The built-in curves.</summary>
    public static IReadOnlyList<SolidFatCurve> All => s_all;

    /// <summary>Milk fat, between summer and winter.</summary>
    public static SolidFatCurve MilkFat { get; } = Get("milk-fat");

    /// <summary>The key, such as <c>milk-fat</c>.</summary>
    public string Key { get; }

    /// <summary>The points, rising in temperature.</summary>
    internal IReadOnlyList<SolidFatFigure> Figures { get; }

    /// <summary>The heat of melting of the fat if all of it were solid, kJ/kg: from memory or an estimate.</summary>
    public Spread LatentHeat { get; }

    /// <summary>Where the heat of melting comes from.</summary>
    public Provenance LatentHeatProvenance { get; }

    /// <summary>The built-in curve of a key.</summary>
    /// <param name="key">The key; case does not matter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such curve; the message lists those there are.</exception>
    public static SolidFatCurve Get(string key) => Keyed.Get(s_all, key, "curve of the fat", "fats", known => known.Key);

    /// <summary>The built-in curve of a key, where there is one.</summary>
    /// <param name="key">The key; case does not matter.</param>
    /// <param name="curve">The curve, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out SolidFatCurve? curve) =>
        (curve = Keyed.Find(s_all, key, known => known.Key)) is not null;

    /// <summary>A curve of your own.</summary>
    /// <param name="key">A key for it.</param>
    /// <param name="percentByCelsius">
    /// From 2 to 1000 points: a temperature, °C, from −40 to 150 and rising, and the percentage that is solid, from 0 to 100 and never
    /// rising.
    /// </param>
    /// <param name="latentHeat">The heat of melting if all were solid, kJ/kg, from 0 to 500.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The key is blank, there are too few or too many points, or they are out of order.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static SolidFatCurve Of(string key, IEnumerable<KeyValuePair<double, Spread>> percentByCelsius, Spread latentHeat)
    {
        if (string.IsNullOrWhiteSpace(Guard.NotNull(key)))
            throw new ArgumentException($"{nameof(key)} is blank; a curve has a key.", nameof(key));
        KeyValuePair<double, Spread>[] points = [.. Guard.NotNull(percentByCelsius).Take(MaximumPoints + 1)];
        if (points.Length is < 2 or > MaximumPoints)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(percentByCelsius)} has {(points.Length < 2 ? $"{points.Length}" : $"more than {MaximumPoints}")} points; from 2 "
                    + $"to {MaximumPoints} are expected."), nameof(percentByCelsius));
        Within(latentHeat, 500, nameof(latentHeat));
        for (int i = 0; i < points.Length; i++)
        {
            Guard.InRange(points[i].Key, MinimumCelsius, MaximumCelsius, nameof(percentByCelsius));
            Within(points[i].Value, 100, nameof(percentByCelsius));
            if (i > 0 && Misplaced(points[i - 1].Key, points[i - 1].Value, points[i].Key, points[i].Value) is string what)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{nameof(percentByCelsius)}: point {i + 1} {what}."), nameof(percentByCelsius));
        }
        return new SolidFatCurve(key.Trim(), [.. points.Select(point => new SolidFatFigure(point.Key, point.Value, "own", s_own, s_own))],
            latentHeat, s_own);
    }

    /// <summary>How much is solid at a temperature.</summary>
    /// <param name="celsius">
    /// The temperature, °C, from −40 to 150. Beyond the points the curve is flat, as the remarks of the class say.
    /// </param>
    /// <returns>Grams of solid in 100 g of the fat. Worked number: milk fat at 20 °C has 21, from 14.6 to 29.6.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public Spread PercentAt(double celsius)
    {
        Guard.InRange(celsius, MinimumCelsius, MaximumCelsius);
        double likely = _likely.At(celsius);
        // Three curves bend differently between the points: the ends give way to the middle.
        return new Spread(Math.Min(likely, _low.At(celsius)), likely, Math.Max(likely, _high.At(celsius)), BasisAt(celsius));
    }

    // Between two points the curve is no surer than the less sure of them. Two without a width may have one between them.
    private SpreadBasis BasisAt(double celsius) => Spread.Worse(SpreadBasis.Coverage,
        Spread.Worse((Figures.LastOrDefault(figure => figure.Celsius <= celsius) ?? Figures[0]).Percent.Basis,
            (Figures.FirstOrDefault(figure => figure.Celsius >= celsius) ?? Figures[^1]).Percent.Basis));

    /// <summary>
    /// The heat that the fat takes up in melting from one temperature to another, apart from its specific heat: L·(S₁ − S₂)/100.
    /// </summary>
    /// <param name="fromCelsius">The start, °C, from −40 to 150.</param>
    /// <param name="toCelsius">The end, °C, from −40 to 150.</param>
    /// <returns>kJ/kg of fat; below 0 where it sets. Worked number: milk fat from 5 to 25 °C takes up 80·(57 − 11.5)/100 = 36.4.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public double MeltingKilojoulesPerKilogram(double fromCelsius, double toCelsius)
    {
        Guard.InRange(fromCelsius, MinimumCelsius, MaximumCelsius);
        Guard.InRange(toCelsius, MinimumCelsius, MaximumCelsius);
        return LatentHeat.Likely * (SolidFraction(fromCelsius, 0) - SolidFraction(toCelsius, 0));
    }

    /// <summary>The key.</summary>
    public override string ToString() => Key;

    /// <summary>The less sure of the points beside a temperature, by its figure and by its range, and how it was measured.</summary>
    internal (Provenance Provenance, string Method) KnownAt(double celsius)
    {
        SolidFatFigure below = Figures.LastOrDefault(figure => figure.Celsius <= celsius) ?? Figures[0],
            above = Figures.FirstOrDefault(figure => figure.Celsius >= celsius) ?? Figures[^1];
        SolidFatFigure worse = above.Provenance.Evidence > below.Provenance.Evidence ? above : below;
        return (worse.Provenance, worse.Method);
    }

    /// <summary>Whether a temperature is beyond the points, and there is something left that could have gone on.</summary>
    internal bool IsBeyond(double celsius) => (celsius < Figures[0].Celsius && Figures[0].Percent.High > 0)
        || (celsius > Figures[^1].Celsius && Figures[^1].Percent.High > 0);

    // The fraction that is solid: side -1 is the low curve, 1 the high one.
    internal double SolidFraction(double celsius, int side)
    {
        double likely = _likely.At(celsius);
        return (side < 0 ? Math.Min(likely, _low.At(celsius)) : side > 0 ? Math.Max(likely, _high.At(celsius)) : likely) / 100;
    }

    private static void Within(Spread value, double high, string name)
    {
        Guard.InRange(value.Low, 0, high, name);
        Guard.InRange(value.High, 0, high, name);
    }

    private static string? Misplaced(double celsiusBefore, Spread before, double celsius, Spread now) =>
        celsius <= celsiusBefore ? string.Create(CultureInfo.InvariantCulture, $"is at {celsius:R} °C, not above {celsiusBefore:R}")
        : now.Low > before.Low || now.Likely > before.Likely || now.High > before.High
            ? string.Create(CultureInfo.InvariantCulture, $"at {celsius:R} °C has more solid than the one before; a fat melts as it warms")
                : null;

    private static SolidFatCurve[] ReadBuiltIn()
    {
        List<(string Fat, SolidFatFigure Figure)> rows = [];
        EmbeddedTable.Read("solid_fat.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string fat = fields.Required("fat");
            Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
            Provenance range = fields.Word("range_source").Length > 0 ? fields.Provenance("range_source", "range_kind", "", "")
                : provenance;
            Spread percent = new(fields.RequiredNumber("low", 0, 100), fields.RequiredNumber("percent", 0, 100),
                fields.RequiredNumber("high", 0, 100), range.Evidence.BasisOfRange());
            SolidFatFigure figure = new(fields.RequiredNumber("celsius", MinimumCelsius, MaximumCelsius), percent,
                fields.Required("method"), provenance, range);
            if (rows.Count > 0 && rows[^1].Fat == fat && Misplaced(rows[^1].Figure.Celsius, rows[^1].Figure.Percent, figure.Celsius,
                percent) is string what)
                fields.Problem("celsius", what);
            rows.Add((fat, figure));
        });
        return
        [
            .. rows.GroupBy(row => row.Fat).Select(group =>
            {
                HeatFigure melting = HeatFigure.Find(group.Key,
                    "melting") ?? throw new InvalidOperationException($"heats.csv has no melting of {group.Key}.");
                return new SolidFatCurve(group.Key, [.. group.Select(row => row.Figure)], melting.Value, melting.Provenance);
            }),
        ];
    }
}
