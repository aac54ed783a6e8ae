using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>What a law calls an ingredient in a list, and whether it has parts of its own that belong there (label_names.csv).</summary>
internal sealed record LabelName(string European, string American, bool IsOneInEurope, bool IsOneInAmerica)
{
    private static readonly Lazy<Dictionary<string, LabelName>> s_all = new(ReadBuiltIn);

    /// <summary>The name by a law; the ingredient's own where there is none.</summary>
    public static string Of(Ingredient ingredient, LabelRules rules, IngredientTable? names)
    {
        string own = names?.All.FirstOrDefault(known => known.Id == ingredient.Id)?.Name ?? ingredient.Name;
        return s_all.Value.TryGetValue(ingredient.Id, out LabelName? row) && (rules == LabelRules.UnitedStates ? row.American : row.European) is { Length: > 0 } name ? name : own;
    }

    /// <summary>Whether it is known to have no parts that a list names.</summary>
    public static bool IsOne(Ingredient ingredient, LabelRules rules) => s_all.Value.TryGetValue(ingredient.Id, out LabelName? row)
        && (rules == LabelRules.UnitedStates ? row.IsOneInAmerica : row.IsOneInEurope);

    private static Dictionary<string, LabelName> ReadBuiltIn()
    {
        Dictionary<string, LabelName> all = new(StringComparer.Ordinal);
        EmbeddedTable.Read("label_names.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            bool IsOne(RowFields of, string column)
            {
                string parts = of.Required(column);
                if (parts is not ("one" or "several"))
                    of.Problem(column, "one or several is expected");
                return parts == "one";
            }
            LabelName name = new(fields.Word("european_name"), fields.Word("american_name"), IsOne(fields, "european_parts"), IsOne(fields, "american_parts"));
            _ = fields.Provenance("source", "kind", "", fields.Word("note"));
            if (!all.TryAdd(fields.Required("ingredient"), name))
                fields.Problem("ingredient", "it stands twice");
        });
        return all;
    }
}
