using System.Globalization;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Keeping;

/// <summary>
/// Within what an organism was seen to grow, by one source. Sources differ, and each limit holds where all else suits the organism; a limit of
/// growth says nothing of an organism that is there already.
/// </summary>
public sealed class GrowthLimit
{
    private static readonly GrowthLimit[] s_all = ReadBuiltIn();

    private GrowthLimit(string organism, double? lowCelsius, double? highCelsius, double? lowPh, double? highPh, double lowWaterActivity, Provenance provenance)
    {
        Organism = organism;
        LowCelsius = lowCelsius;
        HighCelsius = highCelsius;
        LowPh = lowPh;
        HighPh = highPh;
        LowWaterActivity = lowWaterActivity;
        Provenance = provenance;
    }

    /// <summary>The limits, source beside source.</summary>
    public static IReadOnlyList<GrowthLimit> All => s_all;

    /// <summary>The organism, such as <c>Salmonella</c>.</summary>
    public string Organism { get; }

    /// <summary>The coldest it grows, °C; <see langword="null"/> where the source does not say.</summary>
    public double? LowCelsius { get; }

    /// <summary>The warmest it grows, °C.</summary>
    public double? HighCelsius { get; }

    /// <summary>The least pH.</summary>
    public double? LowPh { get; }

    /// <summary>The greatest pH.</summary>
    public double? HighPh { get; }

    /// <summary>The least water activity.</summary>
    public double LowWaterActivity { get; }

    /// <summary>Where it is from; a recalled figure says so.</summary>
    public Provenance Provenance { get; }

    /// <summary>Whether it is not shut out by water activity or acidity, at the end of either that suits it; an unknown pH shuts nothing out.</summary>
    /// <param name="waterActivity">The water activity, 0 to 1.</param>
    /// <param name="ph">The pH, 0 to 14; <see langword="null"/> where it is not known.</param>
    /// <returns>Whether it may grow. Worked number: Salmonella (0.94) is shut out at 0.93 and not at 0.92 to 0.95.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An end is outside its range.</exception>
    public bool MayGrow(Spread waterActivity, Spread? ph = null)
    {
        Guard.InRange(waterActivity.High, 0, 1, nameof(waterActivity));
        if (ph is Spread acidity)
            Acidity.Checked(acidity);
        return waterActivity.High >= LowWaterActivity && (ph is not Spread range || (!(range.High < LowPh) && !(range.Low > HighPh)));
    }

    /// <summary>A line of text.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Organism}: water activity from {LowWaterActivity:0.###}{(LowPh is double ph ? $", pH from {ph:0.##}" : "")}{(LowCelsius is double cold ? $", {cold:0.#} °C and warmer" : "")} ({Provenance})");

    private static GrowthLimit[] ReadBuiltIn()
    {
        List<GrowthLimit> limits = [];
        EmbeddedTable.Read("growth_limits.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            limits.Add(new GrowthLimit(fields.Required("organism"), fields.Number("low_celsius", -5, 60), fields.Number("high_celsius", 0, 100),
                fields.Number("low_ph", Acidity.Minimum, Acidity.Maximum), fields.Number("high_ph", Acidity.Minimum, Acidity.Maximum), fields.RequiredNumber("low_water_activity", 0, 1),
                fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. limits];
    }
}
