using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Eggs;

/// <summary>What one source prints of the share of shell, white or yolk in an egg.</summary>
internal sealed class EggFraction
{
    private static readonly EggFraction[] s_all = ReadBuiltIn();

    private EggFraction(EggPart part, double? percent, double? lowPercent, double? highPercent, Provenance provenance)
    {
        Part = part;
        Percent = percent;
        LowPercent = lowPercent;
        HighPercent = highPercent;
        Provenance = provenance;
    }

    /// <summary>The shares, source by source.</summary>
    public static IReadOnlyList<EggFraction> All => s_all;

    /// <summary>The part: shell, white or yolk.</summary>
    public EggPart Part { get; }

    /// <summary>Grams in 100 g of the egg with its shell; <see langword="null"/> where the source prints a range only.</summary>
    public double? Percent { get; }

    /// <summary>The low end that the source prints; <see langword="null"/> where it prints one figure.</summary>
    public double? LowPercent { get; }

    /// <summary>The high end that the source prints; <see langword="null"/> where it prints one figure.</summary>
    public double? HighPercent { get; }

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The share of a part over all sources: the lowest, the mean of those that print one figure, the highest.</summary>
    /// <param name="part">The part. Of <see cref="EggPart.Whole"/> it is what the shell leaves over.</param>
    /// <returns>Grams in 100 g of the egg with its shell. Worked number: white 59.8, 57.0 to 63.4.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="part"/> is not a defined value.</exception>
    public static Spread RangeOf(EggPart part)
    {
        if (Guard.Defined(part) == EggPart.Whole)
        {
            Spread shell = RangeOf(EggPart.Shell);
            return Spread.Exactly(100) - shell;
        }
        EggFraction[] of = Array.FindAll(s_all, fraction => fraction.Part == part);
        return new Spread(of.Min(fraction => fraction.Percent ?? fraction.LowPercent!.Value),
            of.Average(fraction => fraction.Percent)!.Value,
            of.Max(fraction => fraction.Percent ?? fraction.HighPercent!.Value),
            of.Select(fraction => fraction.Provenance.Evidence.BasisOfRange()).Aggregate(Spread.Worse));
    }

    /// <summary>One line, such as <c>white 60 %: Britannica, egg (compiled)</c>.</summary>
    public override string ToString()
    {
        string share = Percent is double percent ? string.Create(CultureInfo.InvariantCulture, $"{percent:0.#}")
            : string.Create(CultureInfo.InvariantCulture, $"{LowPercent:0.#} to {HighPercent:0.#}");
        return $"{Part.ToString().ToLowerInvariant()} {share} %: {Provenance}";
    }

    private static EggFraction[] ReadBuiltIn()
    {
        List<EggFraction> fractions = [];
        EmbeddedTable.Read("egg_fractions.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            fractions.Add(new EggFraction(fields.Enum<EggPart>("part"), fields.Number("percent", 0, 100),
                fields.Number("low_percent", 0, 100),
                fields.Number("high_percent", 0, 100), fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"))));
        });
        return [.. fractions];
    }
}
