using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Xunit;

namespace Confectio.Tests.Phrases;

/// <summary>Two or three figures for one amount: each is held against the others.</summary>
public sealed class FigureTests
{
    [Theory]
    // USDA SR 19296: a cup of honey is 339 g. 7 oz is 198 g, 12 oz 340 g.
    [InlineData("1 cup (7 oz, 340 g) honey", "7 oz is wrong", 340)]
    [InlineData("1 cup (12 oz, 240 g) honey", "240 g is wrong", 340.2)]
    [InlineData("2 cups (12 oz, 340 g) honey", "2 cups is wrong", 340.2)]
    // USDA SR 01145: a cup of butter is 227 g, a stick 113 g.
    [InlineData("1 cup (2 sticks, 127 g) butter", "127 g is wrong", 226)]
    // USDA SR 19335: a cup of sugar is 200 g.
    [InlineData("1 cup (3 1/2 oz; 200 g) granulated sugar", "3 1/2 oz is wrong", 200)]
    public void OfThreeTheOneThatAgreesWithNoneIsNamedAndNotTaken(string text, string named, double grams)
    {
        Phrase phrase = Phrase.Read(text, IngredientTable.BuiltIn, new PhraseOptions { MeasuringSystem = MeasuringSystem.UsCustomary });
        Assert.Contains(named, Assert.Single(phrase.Problems).Message, StringComparison.Ordinal);
        Assert.True(phrase.TryToMass(MeasuringSystem.UsCustomary, out ConvertedMass mass, out _));
        Assert.Equal(grams, mass.Grams.Likely, 0.5);
    }

    [Theory]
    [InlineData("227 g (2 cups) butter")] // USDA SR 01145: 2 cups are 454 g
    [InlineData("1 cup (100 g) honey")]
    [InlineData("100 g (7 oz) butter")] // 198 g by the international pound of 1959
    [InlineData("2 sticks (113 g) butter")]
    [InlineData("1 tsp (15 mL) vanilla extract")]
    public void OfTwoBothAreNamedAndNoneIsBlamed(string text)
    {
        foreach (MeasuringSystem? system in (MeasuringSystem?[])[null, MeasuringSystem.UsCustomary, MeasuringSystem.Metric])
        {
            string message = Assert.Single(Phrase.Read(text, IngredientTable.BuiltIn, new PhraseOptions { MeasuringSystem = system }).Problems).Message;
            Assert.Contains("contradict each other", message, StringComparison.Ordinal);
            Assert.Contains("the line does not tell", message, StringComparison.Ordinal);
        }
    }

    // Each by USDA SR 28 household weights, and rounded as handouts round.
    [Theory]
    [InlineData("1 cup (2 sticks; 227 g) unsalted butter")]
    [InlineData("1 cup (8 oz) butter")]
    [InlineData("1 cup (200 g) sugar")]
    [InlineData("1 cup (7 oz, 200 g) sugar")]
    [InlineData("1 cup (12 oz, 340 g) honey")]
    [InlineData("1/2 tsp (2 mL) salt")]
    [InlineData("1 cup (250 mL) milk")]
    [InlineData("1 cup (240 mL) milk")]
    [InlineData("200g/7oz caster sugar")]
    [InlineData("8 egg whites (240 g)")]
    [InlineData("1 lb. powdered sugar (about 4 cups)")]
    [InlineData("2 tablespoons (28 grams) butter")]
    public void FiguresThatAgreeAreNoProblem(string text) => Assert.Empty(Phrase.Read(text, IngredientTable.BuiltIn).Problems);

    // What a pinch, an egg or a heaped spoon was taken for is never left out, and nothing made of it is surer than a judgement.
    [Theory]
    [InlineData("a pinch of salt", "a pinch was taken for")]
    [InlineData("2 heaped Tbsp cocoa powder", "heaped was taken for 1.5 to 2.5 times")]
    [InlineData("1 heaped cup icing sugar", "heaped was taken for 1.1 to 1.4 times")]
    [InlineData("2 handfuls of walnuts", "a handful was taken for 1/4 to 1/2 cup")]
    [InlineData("a splash of milk", "a splash was taken for 1/2-3 tsp")]
    [InlineData("squeeze lemon juice", "a squeeze was taken for 1-3 tsp")]
    [InlineData("a dollop of sour cream", "a dollop was taken for 1-2 Tbsp")]
    [InlineData("a few drops almond extract", "a few was taken for 3 to 6")]
    [InlineData("a few drops of almond extract", "a drop was taken for 0.03 to 0.07 mL")]
    [InlineData("3 egg whites", "large was taken")]
    [InlineData("juice of 1 lemon", "1 lemon gives")]
    [InlineData("1 T sugar", "T is a tablespoon")]
    [InlineData("1 t sugar", "t is a teaspoon")]
    [InlineData("1 cup butter or margarine", "not 'or margarine'")]
    [InlineData("1 cup sugar, plus 2 Tbsp", "was added to the amount")]
    public void WhatIsAssumedIsSaid(string text, string said)
    {
        Phrase phrase = Phrase.Read(text, IngredientTable.BuiltIn);
        Assert.Contains(phrase.Assumed, sentence => sentence.Contains(said, StringComparison.Ordinal));
        Assert.True(phrase.TryToMass(MeasuringSystem.UsCustomary, out ConvertedMass mass, out _));
        Assert.Equal(phrase.Assumed, mass.Assumed);
    }

    // A third of an unknown is no amount, and no food of another name is taken: the reasons stand in the problems.
    [Theory]
    [InlineData("1,5 dl double cream", "a comma stands between digits")]
    [InlineData("l00 g honey", "a letter in it")]
    [InlineData("1 tin condensed milk", "how much is in it is not said")]
    [InlineData("a drizzle of honey", "it has no size")]
    [InlineData("zest of 2 limes", "no weight of the zest of a lime is known")]
    [InlineData("juice of 1 grapefruit", "no weight of the juice of a grapefruit is known")]
    [InlineData("1 scoop flour", "it has no size")]
    [InlineData("8-4 oz honey", "must not fall")]
    [InlineData("3 honey", "nobody knows what one of honey weighs")]
    [InlineData("2 cups unobtainium", "is not an ingredient of this table")]
    public void WhatCannotBeReadIsListedWithTheReason(string text, string reason)
    {
        Phrase phrase = Phrase.Read(text, IngredientTable.BuiltIn);
        Assert.Contains(phrase.Problems, problem => problem.Message.Contains(reason, StringComparison.Ordinal));
        Assert.NotEmpty(phrase.Unread);
        Assert.False(phrase.IsRead);
        Assert.False(phrase.TryToMass(MeasuringSystem.UsCustomary, out _, out string? why));
        Assert.NotNull(why);
    }

    // A cone of powder that slopes at 35 degrees (a repose that handbooks of bulk solids give for sugar and flour, from memory) on a cup of
    // radius r and depth h holds r tan 35 / 3h of it: 0.12 where the cup is as wide as it is deep, 0.23 where it is half as deep. Of a spoon,
    // a few millimetres deep, it is as much as the spoon.
    [Fact]
    public void AHeapIsASmallPartOfACup()
    {
        double slope = Math.Tan(35 * Math.PI / 180);
        Assert.True(Factor("1 heaped cup icing sugar", "1 cup icing sugar") is double cup && cup > 1 + slope / 6 && cup < 1 + slope / 3);
        Assert.Equal(2, Factor("1 heaped Tbsp icing sugar", "1 Tbsp icing sugar"), 1e-9);

        static double Factor(string heaped, string level) => Grams(heaped) / Grams(level);

        static double Grams(string text)
        {
            Assert.True(Phrase.Read(text, IngredientTable.BuiltIn).TryToMass(MeasuringSystem.UsCustomary, out ConvertedMass mass, out _));
            return mass.Grams.Likely;
        }
    }

    /// <summary>One rule for a line of a recipe and a row of a table: by hand, of intervals of grams.</summary>
    [Fact]
    public void TheFigureThatAgreesWithTheFewestOthersIsNamed()
    {
        (double, double) nothing = (double.NaN, double.NaN), unknown = nothing;
        Assert.False(FigureVote.Contradict([(10, 11), (10.5, 12), unknown], nothing, out int suspect, out _));
        Assert.Equal(-1, suspect);
        Assert.True(FigureVote.Contradict([(10, 11), (10.5, 12), (20, 21)], nothing, out suspect, out bool isAlone));
        Assert.Equal((2, true), (suspect, isAlone));
        // Of two nobody can tell, unless a third has a vote.
        Assert.True(FigureVote.Contradict([(10, 11), (20, 21)], nothing, out _, out isAlone));
        Assert.False(isAlone);
        Assert.True(FigureVote.Contradict([(10, 11), (20, 21)], (19, 22), out suspect, out isAlone));
        Assert.Equal((0, true), (suspect, isAlone));
    }

    // One jar holds what the bracket says; of two it is not said whether each does.
    [Theory]
    [InlineData("1 jar marshmallow cream (7 oz)", "7 oz")]
    [InlineData("1 can sweetened condensed milk (397 g)", "397 g")]
    [InlineData("2 cans sweetened condensed milk (397 g)", null)]
    [InlineData("1 & 1/2 tsp baking powder", "1 1/2 tsp")]
    [InlineData("1 cup & 2 Tbsp sugar", "1 cup + 2 Tbsp")]
    [InlineData("2 tblspns golden syrup", "2 Tbsp")]
    [InlineData("70 g icing sugar + extra for rolling", "70 g")]
    [InlineData("1 c chopped walnuts (if u want)", "1 cup")]
    [InlineData("3 eggs (M)", "3 medium")]
    public void TheAmountThatIsMeantIsRead(string text, string? amount)
    {
        Phrase phrase = Phrase.Read(text, IngredientTable.BuiltIn);
        Assert.NotNull(phrase.Ingredient);
        Assert.Equal(amount is null, phrase.Unread.Count > 0);
        Assert.Equal(amount is null ? null : (Amount?)Amount.Parse(amount), phrase.Amount?.Amount);
    }

    /// <summary>Of a lime the juice has a weight (44 g, USDA SR 09160) and the zest has none: the one is read, and the other said.</summary>
    [Fact]
    public void WhatAFruitGivesIsReadInPart()
    {
        Phrase phrase = Phrase.Read("zest and juice of 1 lime", IngredientTable.BuiltIn);
        Assert.Equal("juice-lime", phrase.Ingredient!.Id);
        Assert.Equal("zest", Assert.Single(phrase.Unread).Text);
        Assert.Contains("no weight of the zest of a lime is known", Assert.Single(phrase.Problems).Message, StringComparison.Ordinal);
        Assert.True(phrase.TryToMass(MeasuringSystem.UsCustomary, out ConvertedMass mass, out _));
        Assert.Equal(44, mass.Grams.Likely, 1);
        Phrase both = Phrase.Read("zest and juice of 1 lemon", IngredientTable.BuiltIn);
        Assert.Equal(("zest-lemon", "juice-lemon"), (both.Ingredient!.Id, both.Also!.Ingredient!.Id));
        Assert.Empty(both.Unread);
    }

    // The cup that the line names counts, whatever kitchen reads it: 250, 236.5882365 and 284.130625 mL of water of 1 g/mL or a little less.
    [Theory]
    [InlineData("1 metric cup water", 250)]
    [InlineData("1 US cup water", 236.588)]
    [InlineData("1 imperial cup water", 284.131)]
    [InlineData("1 Australian tablespoon water", 20)]
    [InlineData("1 gill water", 142.065)]
    public void TheCupThatIsNamedCounts(string text, double millilitres)
    {
        Phrase phrase = Phrase.Read(text, IngredientTable.BuiltIn);
        Assert.True(phrase.TryToMass(MeasuringSystem.Imperial, out ConvertedMass mass, out _));
        Assert.InRange(mass.Grams.Likely / millilitres, 0.99, 1.005);
    }
}
