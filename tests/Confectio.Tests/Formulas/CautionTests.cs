using Confectio.Tests.Eggs;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas;

public sealed class CautionTests
{
    // Written by hand, food by food: what each brings when it stands alone. Whatever is not named here brings none.
    private static readonly Dictionary<string, string> s_expected = new()
    {
        ["gum-paste"] = "raw-egg at-risk two-hours", // made at home with fresh white as often as not
        ["egg-whole"] = "raw-egg at-risk two-hours",
        ["egg-white"] = "raw-egg at-risk two-hours",
        ["egg-yolk"] = "raw-egg at-risk two-hours",
        ["egg-white-pasteurised"] = "two-hours",
        ["egg-yolk-pasteurised"] = "two-hours",
        ["egg-yolk-sugared"] = "two-hours",
        ["egg-white-dried"] = "two-hours",
        ["egg-white-dried-flakes"] = "two-hours",
        ["egg-white-dried-sugar-in"] = "two-hours",
        ["egg-whole-dried"] = "two-hours",
        ["egg-yolk-dried"] = "two-hours",
        ["meringue-powder"] = "two-hours",
        ["honey"] = "honey",
        ["flour-all-purpose"] = "raw-flour",
        ["flour-bread"] = "raw-flour",
        ["flour-cake"] = "raw-flour",
        ["flour-pastry"] = "raw-flour",
        ["flour-self-raising"] = "raw-flour",
        ["flour-wholemeal"] = "raw-flour",
        ["flour-rice"] = "raw-flour",
        ["flour-chickpea"] = "raw-flour",
        ["flour-soy"] = "raw-flour",
        ["semolina"] = "raw-flour",
        ["wheat-bran"] = "raw-flour",
        ["wheat-germ"] = "raw-flour",
        ["isomalt"] = "polyols",
        ["maltitol"] = "polyols",
        ["maltitol-syrup"] = "polyols",
        ["sorbitol"] = "polyols",
        ["sorbitol-syrup"] = "polyols",
        ["erythritol"] = "polyols",
        ["xylitol"] = "polyols",
        ["colour-gel"] = "six-colours",
        ["colour-liquid"] = "six-colours",
        ["sprinkles"] = "six-colours",
        ["vanilla-extract"] = "alcohol",
        ["vanilla-imitation"] = "alcohol",
        ["vanilla-paste"] = "alcohol",
        ["almond-extract"] = "alcohol",
        ["spirit-rum"] = "alcohol",
        ["spirit-kirsch"] = "alcohol",
        ["spirit-40"] = "alcohol",
        ["liqueur-orange"] = "alcohol",
        ["liqueur-blackcurrant"] = "alcohol",
        ["liqueur-coffee"] = "alcohol",
        ["liqueur-coffee-cream"] = "alcohol",
        ["wine-red"] = "alcohol",
        ["wine-marsala"] = "alcohol",
        ["flour-chestnut"] = "raw-flour",
        ["flour-buckwheat"] = "raw-flour",
        ["flour-rice-brown"] = "raw-flour",
        ["egg-duck"] = "raw-egg at-risk two-hours",
        ["egg-quail"] = "raw-egg at-risk two-hours",
    };

    [Fact]
    public void EachIngredientOfTheTableBringsItsOwnCautionsAndNoOther()
    {
        foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
            Assert.Equal(s_expected.GetValueOrDefault(ingredient.Id, ""), Codes((ingredient.Id, 100)));
        Assert.All(s_expected.Keys, id => Assert.True(IngredientTable.BuiltIn.All.Any(known => known.Id == id), id));
    }

    [Fact]
    public void APlainSyrupBringsNoneAndNothingWeighedOutAsZeroCounts()
    {
        Assert.Equal("", Codes(("sugar-granulated", 500), ("water", 250)));
        Assert.Equal("", Codes(("sugar-granulated", 500), ("egg-white", 0), ("spirit-rum", 0), ("honey", 0)));
        Formula without = Made(("sugar-granulated", 500), ("egg-white", 0), ("couverture-dark-55", 0));
        Assert.Empty(without.Allergens);
        Assert.Empty(without.OftenContains);
    }

    [Fact]
    public void TheSentenceAboutPolyolsIsDueAboveTenPercent()
    {
        // Regulation (EU) 1169/2011, Annex III, 2.4: more than 10 %. Maltitol powder has 99.5 %: 10 g in 100 g are 9.95 %, 10.1 g are 10.05 %.
        Assert.Equal("", Codes(("maltitol", 10), ("sugar-granulated", 90)));
        Assert.Equal("polyols", Codes(("maltitol", 10.1), ("sugar-granulated", 89.9)));
    }

    [Fact]
    public void ALittleVanillaIsNoSpirit()
    {
        Assert.Equal("", Codes(("sugar-granulated", 500), ("vanilla-extract", 8)));
        Assert.Equal("alcohol", Codes(("sugar-granulated", 500), ("spirit-rum", 8)));
    }

    [Fact]
    public void DriedEggOfAnotherMoistureIsTheSameFood()
    {
        Formula made = Formula.Of("", [FormulaLine.Of(Forms.DriedWhite.WithMoisture(0.05).Ingredient, 30)]);
        Assert.Equal("two-hours", string.Join(' ', made.Cautions.Select(caution => caution.Code)));
    }

    [Fact]
    public void TheSentencesNameTheirRules()
    {
        string text = string.Join(' ', Made(("egg-white", 100), ("sugar-granulated", 200)).Cautions.Select(caution => caution.Text + " " + caution.Source));
        foreach (string part in (string[])["3-302.13", "3-401.11", "3-801.11", "infants", "young children", "pregnant", "older", "immunity", "two hours", "one hour above 32 C", "local codes"])
            Assert.Contains(part, text, StringComparison.Ordinal);
    }

    [Fact]
    public void AllergensOfAFormulaAreThoseOfItsLines()
    {
        Formula made = Made(("egg-white", 100), ("butter-unsalted", 200), ("flour-all-purpose", 50), ("chocolate-compound", 50), ("egg-white", 10));
        Assert.Equal([Allergen.Milk, Allergen.Egg, Allergen.Wheat, Allergen.Gluten], made.Allergens);
        // The compound often has milk and soy; the milk of the butter is there for certain.
        Assert.Equal([Allergen.Soy], made.OftenContains);
        Assert.Contains("read the label of your own", Caution.ReadTheLabel, StringComparison.Ordinal);
    }

    private static Formula Made(params (string Id, double Grams)[] lines) =>
        Formula.Of("", lines.Select(line => FormulaLine.Of(IngredientTable.BuiltIn.All.Single(known => known.Id == line.Id), line.Grams)));

    private static string Codes(params (string Id, double Grams)[] lines) => string.Join(' ', Made(lines).Cautions.Select(caution => caution.Code));
}
