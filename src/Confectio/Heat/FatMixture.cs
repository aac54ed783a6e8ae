using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>
/// Two fats that together have less solid than their parts add up to. By how much was nowhere read as a table: what the sum says is a
/// ceiling, and its low end is lowered by a judged factor.
/// </summary>
internal sealed class FatMixture
{
    // Of the fat of a formula: less of one than this softens nothing that could be told.
    private const double LeastShare = 0.05;

    private FatMixture(string first, string second, double lowFactor, Provenance provenance, Provenance? seen)
    {
        First = first;
        Second = second;
        LowFactor = lowFactor;
        Provenance = provenance;
        Seen = seen;
    }

    /// <summary>All of them.</summary>
    public static IReadOnlyList<FatMixture> All { get; } = ReadBuiltIn();

    /// <summary>The key of a fat, or how the keys of its kind begin; <c>any</c> of every fat that has some solid.</summary>
    public string First { get; }

    /// <summary>The key of the other.</summary>
    public string Second { get; }

    /// <summary>What the low end of the sum is multiplied by.</summary>
    public double LowFactor { get; }

    /// <summary>Where the factor comes from; its note is what happens, in words.</summary>
    public Provenance Provenance { get; }

    /// <summary>Where it was published that they do; null where that is remembered or taken by likeness.</summary>
    public Provenance? Seen { get; }

    /// <summary>Whether both are in a fat, each with a part of it that counts.</summary>
    public bool IsIn(IReadOnlyList<FatOfFormula> fats, double grams) =>
        fats.Any(fat => fat.Grams >= LeastShare * grams && Is(First, fat.Curve))
        && fats.Any(fat => fat.Grams >= LeastShare * grams && Is(Second, fat.Curve));

    /// <summary>What happens and who saw it.</summary>
    public override string ToString() => $"{Provenance.Note} ({Seen?.ToString() ?? Provenance.ToString()})";

    // Soft and hard milk fat are milk fat.
    private bool Is(string word, SolidFatCurve curve) => word == "any"
        ? !curve.Key.Equals(Second, StringComparison.OrdinalIgnoreCase)
        : curve.Key.Equals(word, StringComparison.OrdinalIgnoreCase)
            || (word == SolidFatCurve.MilkFat.Key && curve.Key.StartsWith(word, StringComparison.OrdinalIgnoreCase));

    private static FatMixture[] ReadBuiltIn()
    {
        List<FatMixture> all = [];
        EmbeddedTable.Read("fat_mixtures.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Provenance? seen = fields.Word("seen_source").Length > 0 ? fields.Provenance("seen_source", "seen_kind", "", "") : null;
            string first = fields.Required("first"), second = fields.Required("second");
            foreach (string fat in (string[])[first, second])
            {
                if (fat != "any" && !SolidFatCurve.TryGet(fat, out _))
                    fields.Problem("first", $"{Excerpt.Of(fat)} has no curve");
            }
            all.Add(new FatMixture(first, second, fields.RequiredNumber("low_factor", 0, 1),
                fields.Provenance("source", "kind", "", fields.Required("note")), seen));
        });
        return [.. all];
    }
}
