using Confectio.Conversions;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Formulas;

/// <summary>
/// An ingredient is its id. Whatever table the caller's ingredient comes from, an operation on a formula finds it there and counts with the
/// formula's own figures: the answer is that of the formula's own ingredient, bit for bit.
/// </summary>
public sealed class IdentityTests
{
    // What a kitchen that weighs its own white and its own butter has; the rest is the table below.
    private const string Own = "id,name,class,default_packing,water_percent,fat_percent,protein_percent,sucrose_percent,salt_percent,milk_fat_percent,allergens,source,kind\n"
        + "egg-white,egg white,liquid,levelled,86.4,0.1,12.1,0,0.4,,egg,Fennmarsh Hall,measured\n"
        + "butter-unsalted,unsalted butter,fat,packed,15.5,83.5,0.9,0,0,83.5,milk,Fennmarsh Hall,measured\n"
        + "sugar-granulated,granulated sugar,crystal,levelled,0.05,0,0,99.9,0,,,Fennmarsh Hall,measured\n";

    private static readonly string[] s_ids = ["egg-white", "sugar-granulated", "butter-unsalted", "water"];

    public static TheoryData<string, string> Pairs()
    {
        TheoryData<string, string> pairs = [];
        foreach (string table in s_tables.Keys)
        {
            foreach (string other in s_tables.Keys)
                pairs.Add(table, other);
        }
        return pairs;
    }

    private static readonly Dictionary<string, IngredientTable> s_tables = new()
    {
        ["built in"] = IngredientTable.BuiltIn,
        ["the same again"] = Again(),
        ["layered over"] = Layered(IngredientTable.BuiltIn),
        ["foreign"] = Layered(Again()),
    };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void AFormulaFindsTheIngredientsOfAnyTable(string table, string other)
    {
        Formula formula = Buttercream(s_tables[table]);
        Ingredient Asked(string id) => s_tables[other].Get(id);
        Ingredient OfFormula(string id) => s_tables[table].Get(id);
        Both(by => formula.GramsOf(by("butter-unsalted")));
        Assert.Equal(470, formula.GramsOf(Asked("butter-unsalted")));
        Assert.Null(formula.GramsOf(Asked("honey")));
        Both(by => formula.ScaleToIngredient(by("egg-white"), 410).TotalGrams);
        Both(by => formula.PercentOf(FormulaPart.OfIngredient(by("sugar-granulated")))[2]);
        Both(by => FormulaPart.OfIngredient(by("water")).FractionIn(OfFormula("water")));
        Both(by => Written(Replacement.Of(formula, by("butter-unsalted"), 100, [by("white shortening"), by("water")], [FormulaPart.Fat, FormulaPart.Water]).After));
        Both(by => Written(SugarReplacement.AtEqualSolids(formula, by("sugar-granulated"), 100, by("invert sugar syrup"), by("water")).After));
        Both(by => Written(SugarReplacement.AtEqualWaterActivity(formula, by("sugar-granulated"), 100, by("invert sugar syrup"), by("water")).After));
        Both(by => Written(SugarReplacement.AtEqualSweetness(formula, by("sugar-granulated"), 50, by("invert sugar syrup"), by("water"), SweetnessTable.All[0]).After));
        Both(by => Written(FormulaProblem.StartingFrom(formula).WithFixed(by("egg-white"), 200).WithRatio(by("sugar-granulated"), by("egg-white"), 1.9)
            .WithLimit(by("butter-unsalted"), 0, 300).WithTarget(FormulaPart.Fat, 0.33).Solve().ToFormula()));
        Both(by => FormulaProblem.StartingFrom(formula).WithTarget(FormulaPart.Fat, 0.3).Solve().GramsOf(by("butter-unsalted")));
        Both(by => Icing.Of("buttercream", new Spread(0.8, 0.85, 0.9), formula).Whipping(new Spread(6, 7, 8), by("egg-white")).ToString());
        foreach (string key in (string[])["dried-white", "pasteurised-white", "dried-white-sugar-in"])
        {
            foreach (EggMatch match in Enum.GetValues<EggMatch>())
                BothForms(forms => Written(EggReplacement.InFormula(formula, forms.FreshWhite, 150, forms.Get(key), match).After));
        }
        void Both<T>(Func<Func<string, Ingredient>, T> answer) => Assert.Equal(answer(OfFormula), answer(Asked));
        void BothForms<T>(Func<EggForms, T> answer) => Assert.Equal(answer(EggForms.Of(s_tables[table])), answer(EggForms.Of(s_tables[other])));
    }

    // The white of the kitchen has 13.6 % of solids and not 12.43: its powder at equal solids is worked out of that.
    [Fact]
    public void RelayeredWhiteIsReplacedByItsOwnSolids()
    {
        IngredientTable own = s_tables["layered over"];
        EggForms forms = EggForms.Of(own), builtIn = EggForms.Of(IngredientTable.BuiltIn);
        Formula formula = Buttercream(own);
        double powder = 100 * 0.136 / (1 - forms.DriedWhite.WaterFraction);
        Assert.Equal(powder, EggReplacement.Of(forms.FreshWhite, 100, forms.DriedWhite).IncomingGrams.Likely, 1e-9);
        Assert.Equal(powder, EggReplacement.InFormula(formula, builtIn.FreshWhite, 100, builtIn.DriedWhite).Replacement.IncomingGrams.Likely, 1e-9);
        // What goes in and comes out weighs the same, and the solids stay: no mass is lost on the way.
        Formula after = EggReplacement.InFormula(formula, builtIn.FreshWhite, 100, builtIn.DriedWhite).After;
        Assert.Equal(formula.TotalGrams, after.TotalGrams, 1e-9);
        Assert.Equal(Balance.Of(formula)[FormulaPart.Solids].Grams.Likely, Balance.Of(after)[FormulaPart.Solids].Grams.Likely, 1e-9);
    }

    [Fact]
    public void TwoTablesThatDisagreeMakeNoFormula()
    {
        Ingredient one = IngredientTable.BuiltIn.Get("unsalted butter"), other = s_tables["layered over"].Get("unsalted butter"), same = s_tables["the same again"].Get("unsalted butter");
        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.True(one == other && !(one != other) && one != null! && !one.Equals((object?)"butter-unsalted"));
        string message = Assert.Throws<ArgumentException>("lines", () => Formula.Of("", [FormulaLine.Of(one, 1), FormulaLine.Of(other, 1)])).Message;
        Assert.Contains("'butter-unsalted' in lines 1 and 2", message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Formula.Merge("", Buttercream(IngredientTable.BuiltIn), Buttercream(s_tables["layered over"])));
        // A table that was read a second time says the same, and its butter is added up.
        Formula both = Formula.Of("", [FormulaLine.Of(one, 1), FormulaLine.Of(same, 2)]);
        Assert.Equal(3, both.GramsOf(other));
        Assert.Equal(3, Assert.Single(both.Combined().Lines).Grams.Likely);
    }

    // 2 × 1 cup by one density have one error: twice as wide, whichever layer each was read from, and not √2 times.
    [Fact]
    public void WhatTwoLayersSayOfOneCupIsNoIndependentEvidence()
    {
        ConvertedMass Cup(string table) => Conversion.Of(s_tables[table].Get("plain flour"), Packing.Spooned, MeasuringSystem.UsCustomary).ToMass(Amount.Parse("1 cup"));
        ConvertedMass one = Cup("built in");
        Assert.Equal(2 * one.Grams.High, MassTotal.Of([one, Cup("the same again")]).High, 1e-9 * one.Grams.High);
    }

    [Fact]
    public void ATableWithoutEggHasNoFormsAndSaysWhichIsMissing()
    {
        string message = Assert.Throws<ArgumentException>("ingredients", () => EggForms.Of(IngredientTable.Empty)).Message;
        Assert.Contains("'egg-white'", message, StringComparison.Ordinal);
    }

    private static Formula Buttercream(IngredientTable table) => Formula.Of("Fennmarsh buttercream",
        [.. s_ids.Zip([210.0, 385, 470, 30]).Select(pair => FormulaLine.Of(table.Get(pair.First), pair.Second))], 10);

    private static string Written(Formula formula) =>
        string.Join("; ", formula.Lines.Select(line => FormattableString.Invariant($"{line.Ingredient.Id} {line.Grams.Likely:R} {line.Ingredient.Composition[Constituent.Water]:R}")));

    private static IngredientTable Again()
    {
        using TextReader ingredients = EmbeddedTable.Open("ingredients.csv");
        using TextReader weights = EmbeddedTable.Open("weights.csv");
        IngredientTable table = IngredientTable.Empty.LayerIngredients(ingredients).Told(out IReadOnlyList<Problem> problems)!.LayerWeights(weights).Told(out IReadOnlyList<Problem> more)!;
        Assert.Empty(problems);
        Assert.Empty(more);
        return table;
    }

    private static IngredientTable Layered(IngredientTable under)
    {
        IngredientTable table = under.LayerIngredients(new StringReader(Own)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        return table;
    }
}
