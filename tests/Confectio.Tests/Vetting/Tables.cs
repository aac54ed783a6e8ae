using Confectio.Ingredients;
using System.Text;
using Confectio.Vetting;

namespace Confectio.Tests.Vetting;

/// <summary>Small tables for tests: rows as "ingredient|measure|grams" or "ingredient|measure|packing|grams".</summary>
internal static class Tables
{
    public static TableVerdict Vet(IEnumerable<string> rows, VettingOptions? options = null) => ConversionTableVetter.Vet(new StringReader(Csv(rows)), IngredientTable.BuiltIn, options);

    public static string Csv(IEnumerable<string> rows)
    {
        StringBuilder text = new("ingredient,measure,packing,grams\n");
        foreach (string row in rows)
        {
            string[] parts = row.Split('|');
            text.Append('"').Append(parts[0]).Append("\",").Append(parts[1]).Append(',').Append(parts.Length == 4 ? parts[2] : "").Append(',').Append(parts[^1]).Append('\n');
        }
        return text.ToString();
    }

    /// <summary>Rows that are right by USDA SR, in US customary cups; enough of them to settle the system.</summary>
    public static readonly string[] RightByStandardReference =
    [
        "granulated sugar|1 cup|200", "icing sugar|1 cup|spooned|120", "icing sugar|1 cup|sifted|100", "brown sugar|1 cup|packed|220",
        "water|1 cup|237", "whole milk|1 cup|244", "heavy cream|1 cup|levelled|238", "honey|1 cup|339", "unsalted butter|1 cup|packed|227",
        "plain flour|1 cup|spooned|125", "cornflour|1 cup|128", "egg white|1 cup|243", "milk|1/2 cup|122", "water|2 cups|473", "buttermilk|1 cup|245",
    ];
}
