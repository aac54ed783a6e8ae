using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>
/// A sugar or a polyol by itself: where it turns from glass to syrup when dry, how water lowers that, how it binds water, how much of it
/// water holds. Figures with their sources (table sweetener_figures.csv), for work with one substance.
/// </summary>
/// <remarks>
/// Published figures stand before remembered ones, which count only where there is no other; likely is their median, low and high are the
/// lowest and the highest. A dry glass transition is no better known than to 5 K, a judgement: samples are damp or were heated differently.
/// A syrup of several sugars is the work of <see cref="GlassTransition"/>, <see cref="WaterActivity"/> and <see cref="Crystallisation"/>,
/// which have one operator's set of constants and do not read these.
/// </remarks>
public sealed class Sweetener
{
    private const string FileName = "sweetener_figures.csv";

    private const double DryError = 5;

    // With water, which is none and whose glass transition the others need.
    private static readonly Sweetener[] s_substances = ReadBuiltIn();

    private static readonly Sweetener[] s_all = Array.FindAll(s_substances, known => known.Key != "water");

    private static readonly double s_waterCelsius = Array.Find(s_substances, known => known.Key == "water")!.Figures[0].Value.Likely;

    private Sweetener(string key, SweetenerFigure[] figures)
    {
        Key = key;
        Figures = figures;
    }

    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<Sweetener> All => s_all;

    /// <summary>The key, such as <c>sucrose</c> or <c>isomalt</c>.</summary>
    public string Key { get; }

    /// <summary>Every figure known of it.</summary>
    public IReadOnlyList<SweetenerFigure> Figures { get; }

    /// <summary>
    /// The glass transition of the dry substance, °C; <see langword="null"/> where it is not known. Worked number: sucrose 60 (55 to 65),
    /// Roe and Labuza (2005).
    /// </summary>
    public Spread? GlassTransitionCelsius => Best(SweetenerQuantity.GlassTransitionCelsius, null) is not Spread known ? null
        : new Spread(Math.Min(known.Low, known.Likely - DryError), known.Likely, Math.Max(known.High, known.Likely + DryError),
            SpreadBasis.Judged);

    /// <summary>
    /// The constant k of Gordon and Taylor with water second (<see cref="SweetenerQuantity.GordonTaylorK"/>); <see langword="null"/> where
    /// it is not known. All are from memory.
    /// </summary>
    public Spread? GordonTaylorK => Best(SweetenerQuantity.GordonTaylorK, null);

    /// <summary>
    /// The constant K of Norrish at 25 °C; <see langword="null"/> where it is not known. Those of polyols are published, those of sugars
    /// from memory. Worked number: sorbitol 1.65.
    /// </summary>
    public Spread? NorrishK => Best(SweetenerQuantity.NorrishK, 25);

    /// <summary>The temperatures between which <see cref="Solubility"/> is known, °C; <see langword="null"/> where it is not.</summary>
    public (double LowCelsius, double HighCelsius)? SolubilityRange
    {
        get
        {
            SweetenerFigure[] points = Points();
            return points.Length == 0 ? null : (points[0].Celsius!.Value, points[^1].Celsius!.Value);
        }
    }

    /// <summary>The sweetener of a key.</summary>
    /// <param name="key">The key; case does not matter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such sweetener; the message lists those there are.</exception>
    public static Sweetener Get(string key) => Keyed.Get(s_all, key, "sweetener", "sweeteners", known => known.Key);

    /// <summary>The sweetener of a key, where there is one.</summary>
    /// <param name="key">The key; case does not matter.</param>
    /// <param name="sweetener">The sweetener, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out Sweetener? sweetener) =>
        (sweetener = Keyed.Find(s_all, key, known => known.Key)) is not null;

    /// <summary>
    /// How much of it a saturated solution holds, by mass: the logarithm of grams in a gram of water is taken as straight between the
    /// temperatures of the table.
    /// </summary>
    /// <param name="celsius">The temperature, °C, within <see cref="SolubilityRange"/>.</param>
    /// <returns>
    /// The mass fraction, without the water of the crystals. Worked number: isomalt 0.25 at 20 °C, 0.311 at 30 and 0.45 at 50.
    /// </returns>
    /// <exception cref="InvalidOperationException">Its solubility is not known.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double Solubility(double celsius)
    {
        SweetenerFigure[] points = Points();
        if (points.Length == 0)
            throw new InvalidOperationException($"The solubility of {Key} is not known.");
        Guard.InRange(celsius, points[0].Celsius!.Value, points[^1].Celsius!.Value);
        int above = Math.Max(1, Array.FindIndex(points, point => point.Celsius >= celsius));
        (double t0, double t1) = (points[above - 1].Celsius!.Value, points[above].Celsius!.Value);
        double Log(int point) => Math.Log(points[point].Value.Likely / (100 - points[point].Value.Likely));
        double ratio = Math.Exp(Log(above - 1) + (Log(above) - Log(above - 1)) * (celsius - t0) / (t1 - t0));
        return ratio / (1 + ratio);
    }

    /// <summary>
    /// The glass transition with water in it, after Gordon and Taylor: Tg = (s·Tgₛ + k·w·Tg_w)/(s + k·w), with mass fractions s of the
    /// substance and w of water and Tg_w = −135 °C (Johari and others 1987). Temperatures may be °C, because it is a weighted mean.
    /// </summary>
    /// <param name="waterFraction">w, from 0 to 1.</param>
    /// <returns>
    /// Tg, °C, over the ranges of Tgₛ and k. Worked number: sucrose of 60 °C with k = 4.7 and 3 % of water: 35.3 °C.
    /// </returns>
    /// <exception cref="InvalidOperationException">Its glass transition or its k is not known.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="waterFraction"/> is outside its range.</exception>
    public Spread GlassTransitionWith(double waterFraction)
    {
        double w = Guard.InRange(waterFraction, 0, 1);
        if (GlassTransitionCelsius is not Spread dry || GordonTaylorK is not Spread k)
            throw new InvalidOperationException($"The glass transition of {Key} with water is not known.");
        double Tg(double solid, double factor) => ((1 - w) * solid + factor * w * s_waterCelsius) / (1 - w + factor * w);
        return new Spread(Tg(dry.Low, k.High), Tg(dry.Likely, k.Likely), Tg(dry.High, k.Low), SpreadBasis.Judged);
    }

    /// <summary>The key.</summary>
    public override string ToString() => Key;

    private SweetenerFigure[] Points() => [.. Figures.Where(figure => figure.Quantity == SweetenerQuantity.SolubilityPercent)
        .OrderBy(figure => figure.Celsius)];

    private Spread? Best(SweetenerQuantity quantity, double? celsius)
    {
        SweetenerFigure[] known = [.. Figures.Where(figure => figure.Quantity == quantity && figure.Celsius == celsius)];
        SweetenerFigure[] published = [.. known.Where(figure => IsPublished(figure.Provenance.Evidence))];
        if (published.Length > 0)
            known = published;
        if (known.Length == 0)
            return null;
        double[] values = [.. known.Select(figure => figure.Value.Likely).Order()];
        double median = (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
        return new Spread(known.Min(figure => figure.Value.Low), median, known.Max(figure => figure.Value.High),
            published.Length > 0 ? SpreadBasis.Sources : SpreadBasis.Judged);
    }

    private static bool IsPublished(Evidence evidence) =>
        evidence is Evidence.Measured or Evidence.Compiled or Evidence.Computed or Evidence.Fitted;

    private static Sweetener[] ReadBuiltIn()
    {
        List<(string Key, SweetenerFigure Figure)> figures = [];
        EmbeddedTable.Read(FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string key = fields.Required("sweetener");
            SweetenerQuantity quantity = fields.Enum<SweetenerQuantity>("quantity");
            double value = fields.RequiredNumber("value", -200, 300);
            double low = fields.Number("low", -200, 300) ?? value, high = fields.Number("high", -200, 300) ?? value;
            Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
            if (!(low <= value && value <= high))
                fields.Problem("low", string.Create(CultureInfo.InvariantCulture, $"low, value and high must rise; they are {low}, {value}, {high}"));
            else
                figures.Add((key, new SweetenerFigure(quantity, fields.Number("celsius", -50, 200),
                    new Spread(low, value, high, provenance.Evidence.BasisOfRange()), provenance)));
        });
        return [.. figures.GroupBy(row => row.Key).Select(group => new Sweetener(group.Key, [.. group.Select(row => row.Figure)]))];
    }
}
