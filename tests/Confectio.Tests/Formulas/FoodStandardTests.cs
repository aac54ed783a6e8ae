using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Formulas;

/// <summary>Standards of identity at their edges, and the foods of the table beside the standard of their name.</summary>
public sealed class FoodStandardTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static Ingredient Made(string id, double milkFat, double water, double fat) => s_table.LayerIngredients(new StringReader(FormattableString.Invariant(
        $"id,name,class,default_packing,water_percent,fat_percent,milk_fat_percent,other_percent,allergens,source,kind\n{id},{id} at hand,fat,packed,{water},{fat},{milkFat},{100 - water - fat},milk,confectio,estimated\n"))).OrThrow().Get(id);

    private static string[] Met(string food, Ingredient ingredient) => [.. FoodStandard.MetBy(food, ingredient).Select(standard => standard.Key)];

    // STD-02: 21 CFR 131: 17.9 is no cream, 18 light cream, 30 light whipping cream, 36 heavy cream.
    [Theory]
    [InlineData(17.9, "us-half-and-half")]
    [InlineData(18, "us-cream us-light-cream")]
    [InlineData(30, "us-cream us-light-whipping-cream")]
    [InlineData(36, "us-cream us-heavy-cream")]
    public void TheClassesOfCream(double fat, string met) => Assert.Equal(met.Split(' '), Met("cream", Made("cream-own", fat, 60, fat)));

    // STD-03: butter of 80 % fat and more, 16 % water and 2 % other solids is butter; 79.9 % of fat is none, 16.1 % of water none by Codex.
    [Fact]
    public void ButterAtItsEdges()
    {
        FoodStandard codex = FoodStandard.Get("codex-butter"), us = FoodStandard.Get("us-butter");
        Assert.True(us.IsMetBy(Made("butter-unsalted", 80, 16, 80)));
        Assert.False(us.IsMetBy(Made("butter-unsalted", 79.9, 16, 79.9)));
        Assert.False(codex.IsMetBy(Made("butter-unsalted", 80, 16.1, 80)));
        Assert.True(codex.IsMetBy(Made("butter-unsalted", 82, 16, 82)));
        // Of 4 % of other solids it is not known how much is milk's, and what is not known is not said.
        Assert.Null(codex.IsMetBy(Made("butter-unsalted", 80, 16, 80)));
    }

    // STD-01, of the foods of the table: 21 CFR 163, lowfat below 10, cocoa 10 to below 22, breakfast cocoa from 22 (recalled). STD-04 and STD-05: cream cheese of 34.24 % fat and
    // 54.44 % water meets 33 and 55; unsweetened chocolate of 52.31 % is within 50 to 60.
    [Fact]
    public void CocoaCreamCheeseAndChocolateLiquor()
    {
        Assert.Equal(["us-cocoa"], Met("cocoa", s_table.Get("cocoa-natural")));
        Assert.Equal(["us-breakfast-cocoa"], Met("cocoa", s_table.Get("cocoa-dutch-high-fat")));
        Assert.Equal(["us-cream-cheese"], Met("cream-cheese", s_table.Get("cream-cheese")));
        Assert.Equal(["us-chocolate-liquor"], Met("chocolate-liquor", s_table.Get("chocolate-unsweetened")));
        Assert.Equal("fat of cocoa at least 10 and below 22 %", FoodStandard.Get("us-cocoa").Asks);
        Assert.Equal(Evidence.FromMemory, FoodStandard.Get("us-breakfast-cocoa").Provenance.Evidence);
        // Of what is not known nothing is said: no fat of cocoa is known of a spread.
        Assert.Null(FoodStandard.Get("us-cocoa").IsMetBy(s_table.Get("spread-hazelnut")));
        Assert.Contains("cream-cheese", Assert.Throws<ArgumentException>(() => FoodStandard.MetBy("brick", s_table.Get("water"))).Message, StringComparison.Ordinal);
    }

    // The foods of the table that fail the standard of their name, and why.
    [Fact]
    public void TheFoodsOfTheTableBesideTheStandardOfTheirName()
    {
        (string Food, string Standard)[] named =
        [
            ("butter-unsalted", "us-butter"), ("butter-salted", "us-butter"), ("butter-82", "us-butter"), ("butter-whipped", "us-butter"),
            ("butter-unsalted", "codex-butter"), ("butter-salted", "codex-butter"), ("butter-82", "codex-butter"),
            ("butter-oil", "codex-anhydrous-milk-fat"), ("butter-oil", "codex-butteroil"), ("margarine-stick", "us-margarine"), ("margarine-stick-unsalted", "us-margarine"),
            ("cream-half-and-half", "us-half-and-half"), ("cream-light", "us-light-cream"), ("cream-light-whipping", "us-light-whipping-cream"), ("cream-heavy", "us-heavy-cream"),
            ("cream-double", "us-heavy-cream"), ("cream-cheese", "us-cream-cheese"), ("milk-condensed", "us-condensed-milk"), ("cocoa-natural", "us-cocoa"),
            ("cocoa-natural-high-fat", "us-breakfast-cocoa"), ("cocoa-dutch-high-fat", "us-breakfast-cocoa"), ("chocolate-unsweetened", "us-chocolate-liquor"), ("cocoa-mass", "us-chocolate-liquor"),
        ];
        Assert.Equal(
            [
                "butter-unsalted is no butter (Codex)", // 17.94 % of water in USDA SR, and 16 at most
                "butter-oil is no anhydrous milk fat (Codex)", // 99.48 % of fat in USDA SR
                "butter-oil is no butteroil (Codex)",
            ],
            named.Where(pair => FoodStandard.Get(pair.Standard).IsMetBy(s_table.Get(pair.Food)) != true).Select(pair => $"{pair.Food} is no {FoodStandard.Get(pair.Standard).Name}"));
    }
}
