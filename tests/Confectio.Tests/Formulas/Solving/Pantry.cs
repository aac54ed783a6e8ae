using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>Ingredients with the compositions that a source of a problem gives, whatever the built-in table says.</summary>
internal static class Pantry
{
    /// <summary>
    /// USDA National Nutrient Database SR28 (2015), file ABBREV, g per 100 g: water, fat, protein, sugars (as sucrose; only the sum
    /// matters here); what is left stands in other.
    /// </summary>
    public static readonly IngredientTable StandardReference = Table(
        ("19903", 1.25, 38.31, 6.12, 36.71),  // chocolate, dark, 60-69 % cacao solids
        ("01053", 57.71, 37.00, 2.05, 2.79),  // cream, heavy whipping
        ("01145", 17.94, 81.11, 0.85, 0.06),  // butter without salt
        ("19350", 22.81, 0.20, 0.00, 76.77),  // syrup, corn, light
        ("19296", 17.10, 0.00, 0.30, 82.12),  // honey
        ("19335", 0.02, 0.00, 0.00, 99.80),   // sugar, granulated
        ("01095", 27.16, 8.70, 7.91, 54.40),  // milk, condensed, sweetened
        ("02047", 0.20, 0.00, 0.00, 0.00),    // salt
        ("19165", 3.00, 13.70, 19.60, 1.75),  // cocoa powder
        ("01077", 88.13, 3.25, 3.15, 5.05),   // milk, whole
        ("01091", 3.16, 0.77, 36.16, 51.98),  // milk, dry, nonfat
        ("01125", 52.31, 26.54, 15.86, 0.56), // egg yolk
        ("14429", 99.90, 0.00, 0.00, 0.00));  // water, tap

    /// <summary>A table of ingredients by water, fat, protein and sugars.</summary>
    public static IngredientTable Table(params (string Id, double Water, double Fat, double Protein, double Sugars)[] rows)
    {
        string head = "id,name,class,default_packing,water_percent,fat_percent,protein_percent,sucrose_percent,other_percent,source,kind\n";
        string text = head + string.Join('\n', rows.Select(row => string.Create(CultureInfo.InvariantCulture,
            $"i{row.Id},i{row.Id},liquid,levelled,{row.Water:0.######},{row.Fat:0.######},{row.Protein:0.######},{row.Sugars:0.######},{Math.Max(0, 100 - row.Water - row.Fat - row.Protein - row.Sugars):0.######},usda-sr,compiled")));
        IngredientTable table = IngredientTable.Empty.LayerIngredients(new StringReader(text)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        return table;
    }

    public static Ingredient Food(this IngredientTable table, string number) => table.Get("i" + number);

    public static Formula Formula(this IngredientTable table, string name, params (string Number, double Grams)[] lines) =>
        Confectio.Formulas.Formula.Of(name, lines.Select(line => FormulaLine.Of(table.Food(line.Number), line.Grams)));
}
