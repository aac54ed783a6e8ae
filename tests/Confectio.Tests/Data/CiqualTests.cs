using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Ingredients;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Data;

/// <summary>
/// Foods whose composition is that of the Ciqual French food composition table (Anses, 2020; Oracles/ciqual): every figure is the printed
/// one, what is not printed is 0, and what the source's figures leave open stands in other.
/// </summary>
public sealed class CiqualTests
{
    private static readonly Dictionary<string, Dictionary<string, string>> s_reference = Tables.Ciqual.ToDictionary(row => row["food"]);

    private static readonly string[] s_proximates = ["water_g", "protein_g", "fat_g", "carbohydrate_g", "fibre_g", "ash_g", "alcohol_g", "acids_g"];

    public static TheoryData<string> Foods => new(IngredientTable.BuiltIn.All.Where(food => NameOf(food) is not null).Select(food => food.Id));

    [Fact]
    public void EveryRowOfTheExtractIsAFood()
    {
        string[] used = [.. Foods.Select(row => NameOf(IngredientTable.BuiltIn.Get(row.Data))!)];
        Assert.Empty(s_reference.Keys.Except(used));
        Assert.Distinct(used);
        Assert.True(used.Length >= 60);
    }

    [Theory]
    [MemberData(nameof(Foods))]
    public void TheProximatesAreAsPrinted(string id)
    {
        Ingredient food = IngredientTable.BuiltIn.Get(id);
        Composition made = food.Composition;
        Dictionary<string, string> source = s_reference[NameOf(food)!];
        // What the rounded figures have above 100 is taken from the largest; the note says how much, and it is no more than they round.
        Match lowered = Regex.Match(food.Note, "add up to [0-9.]+: ([a-z ]+) is lowered by ([0-9]+(?:\\.[0-9]+)?)", RegexOptions.CultureInvariant);
        double less = lowered.Success ? double.Parse(lowered.Groups[2].Value, CultureInfo.InvariantCulture) : 0;
        Assert.InRange(less, 0, 0.002 + s_proximates.Sum(column => HalfUnit(source[column])));

        Near("water", source["water_g"], made[Constituent.Water]);
        Near("fat", source["fat_g"], made[Constituent.Fat]);
        Near("protein", source["protein_g"], made[Constituent.Protein]);
        Near("fibre", source["fibre_g"], made[Constituent.Fibre]);
        Near("alcohol", source["alcohol_g"], made[Constituent.Alcohol]);
        Near("polyols", source["polyols_g"], made[Constituent.Polyols]);
        if (Number(source["ash_g"]) is double ash)
            Assert.Equal(ash, 100 * (made[Constituent.Salt] + made[Constituent.OtherAsh]), 0.001);
        if (!IsGuessed(food, Constituent.Acids))
            Near("acids", source["acids_g"], made[Constituent.Acids]);
        if (!IsGuessed(food, Constituent.Starch))
            Near("starch", source["starch_g"], made[Constituent.Starch]);

        void Near(string what, string printed, double fraction) =>
            Assert.Equal((Number(printed) ?? 0) - (lowered.Success && lowered.Groups[1].Value == what ? less : 0), 100 * fraction, 0.001);
    }

    [Theory]
    [MemberData(nameof(Foods))]
    public void TheSugarsAreAsPrintedOrTheirSplitIsCalledEstimated(string id)
    {
        Ingredient food = IngredientTable.BuiltIn.Get(id);
        Composition made = food.Composition;
        Dictionary<string, string> source = s_reference[NameOf(food)!];
        (string Column, Constituent Sugar)[] sugars = [("sucrose_g", Constituent.Sucrose), ("glucose_g", Constituent.Glucose), ("fructose_g", Constituent.Fructose),
            ("lactose_g", Constituent.Lactose), ("maltose_g", Constituent.Maltose)];
        if (food.SugarsProvenance.Evidence == Evidence.Compiled)
        {
            // Below 0.01 g a figure is a reading of nothing and is left out.
            Assert.All(sugars, sugar => Assert.Equal(Number(source[sugar.Column]) ?? 0, 100 * made[sugar.Sugar], 0.0101));
            Assert.InRange(100 * made[Constituent.OtherSugars], (Number(source["galactose_g"]) ?? 0) - 0.0101, double.MaxValue);
        }
        // The total is printed too; where it is the smaller, the sum of the printed sugars stands. Fifteen hundredths are their rounding.
        double printed = sugars.Sum(sugar => Number(source[sugar.Column]) ?? 0) + (Number(source["galactose_g"]) ?? 0);
        if (Number(source["sugars_g"]) is double total)
            Assert.InRange(100 * made.Sugars, Math.Min(total, printed) - 0.16, Math.Max(total, printed) + 0.001);
    }

    [Theory]
    [MemberData(nameof(Foods))]
    public void TheEnergyIsThatOfThePrintedProximates(string id)
    {
        // The factors of Regulation (EU) 1169/2011, Annex XIV: protein 4, fat 9, carbohydrate 4, polyols 2.4, fibre 2, alcohol 7, acids 3
        // kcal/g. The source counts polyols among the carbohydrate. What stands in other has no factor.
        Ingredient food = IngredientTable.BuiltIn.Get(id);
        Composition made = food.Composition;
        Dictionary<string, string> source = s_reference[NameOf(food)!];
        double Of(string column) => Number(source[column]) ?? 0;
        double proximates = s_proximates.Where(column => column != "carbohydrate_g").Sum(Of);
        double acids = IsGuessed(food, Constituent.Acids) ? 100 * made[Constituent.Acids] : Of("acids_g");
        double carbohydrate = Number(source["carbohydrate_g"]) ?? (100 - proximates);
        double open = 100 - proximates - carbohydrate;
        double expected = (4 * Of("protein_g")) + (9 * Of("fat_g")) + (4 * (carbohydrate - (100 * made[Constituent.Other]))) - (1.6 * Of("polyols_g")) + (2 * Of("fibre_g"))
            + (7 * Of("alcohol_g")) + (3 * acids);
        // What the source's figures leave open or have too much, at most at 9 kcal/g, stands in other or was taken from the largest.
        Assert.Equal(expected, 100 * made.KilocaloriesPerGram, (9 * Math.Abs(open)) + 0.5);
    }

    private static string? NameOf(Ingredient food) =>
        food.CompositionProvenance.Source.Key == "ciqual-2020" && food.CompositionProvenance.Locator is ['f', 'o', 'o', 'd', ' ', '\'', .. string name, '\''] ? name : null;

    private static bool IsGuessed(Ingredient food, Constituent constituent) => food.EvidenceOf(constituent) != Evidence.Compiled;

    private static double? Number(string printed) => double.TryParse(printed, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : null;

    // The source prints three significant digits and drops zeros at the end: 9 is 9.00.
    private static double HalfUnit(string printed) => Number(printed) is double number and > 0 ? 0.5 * Math.Pow(10, Math.Floor(Math.Log10(number)) - 2) : 0;
}
