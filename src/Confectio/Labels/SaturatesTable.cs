using System.Collections.Frozen;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>The saturated fat of the foods of the table (saturates.csv), food by food. What it does not know is not known, and is no zero.</summary>
internal static class SaturatesTable
{
    private static readonly Lazy<FrozenDictionary<string, (double Fraction, Evidence Kind)>> s_rows = new(ReadBuiltIn);

    /// <summary>Grams in a gram of a food; null where nobody tells. A food of one's own under an id of the table may be made of anything.</summary>
    public static (double Fraction, Evidence Kind)? Of(Ingredient food) => food.Composition[Constituent.Fat] <= 0 ? (0, food.CompositionProvenance.Evidence)
        : food.Record.IsCarried && s_rows.Value.TryGetValue(food.Id, out (double, Evidence) known) ? known : null;

    internal static FrozenDictionary<string, (double Fraction, Evidence Kind)> ReadBuiltIn()
    {
        Dictionary<string, (double, Evidence)> all = new(StringComparer.Ordinal);
        EmbeddedTable.Read("saturates.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string id = fields.Required("ingredient");
            if (!all.TryAdd(id, (fields.RequiredNumber("percent", 0, 100) / 100, fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")).Evidence)))
                fields.Problem("ingredient", $"{Excerpt.Of(id)} stands here twice");
        });
        return all.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
