using System.Globalization;
using Confectio.Formulas.Solving;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>The colours of the United Kingdom's front of pack, least first.</summary>
public enum LightColour
{
    /// <summary>Low.</summary>
    Green,

    /// <summary>Medium.</summary>
    Amber,

    /// <summary>High.</summary>
    Red,
}

/// <summary>Whether 100 g of a food are low, medium or high in something by the United Kingdom's front of pack (NHS, food labels; for food, not for drinks).</summary>
/// <remarks>
/// Low is up to and with a limit, high above another; above a portion of 100 g a second limit for the portion makes red too (from memory). Worked number: 17.5 g of fat is amber, 17.6 g
/// red.
/// </remarks>
public sealed class TrafficLight
{
    private static readonly Limits[] s_limits = ReadBuiltIn();

    private TrafficLight(LabelNutrient nutrient, LightColour likely, LightColour lowest, LightColour highest, Provenance provenance)
    {
        Nutrient = nutrient;
        Likely = likely;
        Lowest = lowest;
        Highest = highest;
        Provenance = provenance;
    }

    /// <summary>Fat, saturates, sugars or salt.</summary>
    public LabelNutrient Nutrient { get; }

    /// <summary>The colour of the likely figure.</summary>
    public LightColour Likely { get; }

    /// <summary>That of the low end.</summary>
    public LightColour Lowest { get; }

    /// <summary>That of the high end.</summary>
    public LightColour Highest { get; }

    /// <summary>Where the limits come from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The colour of a figure.</summary>
    /// <param name="nutrient">Fat, saturates, sugars or salt.</param>
    /// <param name="gramsPer100">Grams in 100 g, from 0 to 100.</param>
    /// <returns>The colour.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gramsPer100"/> is outside its range, or the nutrient is no defined value.</exception>
    /// <exception cref="ArgumentException">There is no colour for the nutrient.</exception>
    public static LightColour ColourOf(LabelNutrient nutrient, double gramsPer100) => LimitsOf(Guard.Defined(nutrient)).Of((decimal)Guard.InRange(gramsPer100, 0, 100), null);

    /// <summary>The colour, or the colours that it may be: <c>fat: amber or red</c>.</summary>
    public override string ToString() => $"{EnumWords.Of(Nutrient, ' ')}: {Word(Lowest)}{(Lowest == Highest ? "" : $" or {Word(Highest)}, likely {Word(Likely)}")}";

    /// <summary>The lights of a panel, of those lines that it has.</summary>
    internal static IReadOnlyList<TrafficLight> Of(NutritionEstimate estimate)
    {
        List<TrafficLight> lights = [];
        foreach (Limits limits in s_limits)
        {
            if (estimate[limits.Nutrient] is not NutritionLine line)
                continue;
            Spread per100 = line.Per100Grams.Value;
            Spread? portion = estimate.PortionGrams > 100 ? line.PerPortion!.Value : null;
            lights.Add(new TrafficLight(limits.Nutrient, limits.Of((decimal)per100.Likely, (decimal?)portion?.Likely), limits.Of((decimal)per100.Low, (decimal?)portion?.Low),
                limits.Of((decimal)per100.High, (decimal?)portion?.High), limits.Provenance));
        }
        return lights;
    }

    private static string Word(LightColour colour) => colour.ToString().ToLowerInvariant();

    private static Limits LimitsOf(LabelNutrient nutrient) => Array.Find(s_limits, limits => limits.Nutrient == nutrient)
        ?? throw new ArgumentException($"{nameof(nutrient)} was {EnumWords.Of(nutrient, ' ')}; only {string.Join(", ", s_limits.Select(limits => EnumWords.Of(limits.Nutrient, ' ')))} have a colour.",
            nameof(nutrient));

    private static Limits[] ReadBuiltIn()
    {
        List<Limits> all = [];
        EmbeddedTable.Read("traffic_lights.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add(new Limits(fields.Enum<LabelNutrient>("nutrient"), (decimal)fields.RequiredNumber("low_at_most", 0, 100), (decimal)fields.RequiredNumber("high_over", 0, 100),
                (decimal)fields.RequiredNumber("high_per_portion_over", 0, 100), fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }

    private sealed record Limits(LabelNutrient Nutrient, decimal Low, decimal High, decimal HighOfPortion, Provenance Provenance)
    {
        public LightColour Of(decimal per100, decimal? portion) => per100 > High || portion > HighOfPortion ? LightColour.Red : per100 > Low ? LightColour.Amber : LightColour.Green;
    }
}
