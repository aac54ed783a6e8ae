using System.Collections.Frozen;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Formulas;

/// <summary>
/// Solids that no food table counts but the trade asks for, told food by food (traced_solids.csv): the solids of milk that are not fat, the solids of cocoa, cocoa
/// butter. What the table does not know is not known, and is no zero.
/// </summary>
internal static class TracedSolids
{
    public const string Milk = "milk-solids-not-fat", Cocoa = "cocoa-solids", CocoaButter = "fat-of-cocoa";

    private static readonly Lazy<FrozenDictionary<(string, string), Row>> s_rows = new(ReadBuiltIn);

    /// <summary>Grams of it in a gram of an ingredient; null where nobody knows.</summary>
    public static double? FractionIn(string part, Ingredient ingredient)
    {
        // A food of one's own under an id of the table may be made of anything.
        bool isOfTable = ingredient.Record.IsCarried;
        if (isOfTable && s_rows.Value.TryGetValue((part, ingredient.Id), out Row row))
            return row.FractionIn(ingredient.Composition);
        // Where there is no milk there are none of its solids; margarine and chocolate have some, and nobody says how much.
        bool hasNoMilk = ingredient.AllergensAreStated && !ingredient.Allergens.Contains(Allergen.Milk) && !ingredient.OftenContains.Contains(Allergen.Milk);
        return part == Milk ? hasNoMilk ? 0 : null : isOfTable ? 0 : null;
    }

    /// <summary>How well it is known of an ingredient.</summary>
    public static Evidence EvidenceOf(string part, Ingredient ingredient) =>
        s_rows.Value.TryGetValue((part, ingredient.Id), out Row row) ? row.Kind : Evidence.CommonPractice;

    internal static FrozenDictionary<(string, string), Row> ReadBuiltIn()
    {
        Dictionary<(string, string), Row> all = [];
        EmbeddedTable.Read("traced_solids.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string part = fields.Required("part"), id = fields.Required("ingredient"), rule = fields.Required("rule");
            double? percent = fields.Number("percent", 0, 100);
            if (part is not (Milk or Cocoa or CocoaButter))
                fields.Problem("part", $"{Excerpt.Of(part)} is not a part that is told food by food");
            if ((rule == "percent") != percent.HasValue || rule is not ("percent" or "solids" or "solids-not-fat" or "solids-not-fat-nor-salt"
                or "solids-not-fat-nor-sucrose" or "fat" or "unknown"))
                fields.Problem("rule", $"{Excerpt.Of(rule)} is no rule, or has no percent");
            else if (!all.TryAdd((part, id), new Row(rule, percent, fields.Provenance("source", "kind", "", fields.Word("note")).Evidence)))
                fields.Problem("ingredient", $"{Excerpt.Of(id)} stands here twice");
        });
        return all.ToFrozenDictionary();
    }

    /// <summary>One row of the table.</summary>
    internal readonly record struct Row(string Rule, double? Percent, Evidence Kind)
    {
        public double? FractionIn(Composition made)
        {
            double solids = Math.Max(0, 1 - made[Constituent.Water] - made[Constituent.Alcohol]), fat = made[Constituent.Fat];
            return Rule switch
            {
                "percent" => Percent / 100,
                "solids" => solids,
                "solids-not-fat" => Math.Max(0, solids - fat),
                "solids-not-fat-nor-salt" => Math.Max(0, solids - fat - made[Constituent.Salt]),
                "solids-not-fat-nor-sucrose" => Math.Max(0, solids - fat - made[Constituent.Sucrose]),
                "fat" => fat,
                _ => null,
            };
        }
    }
}
