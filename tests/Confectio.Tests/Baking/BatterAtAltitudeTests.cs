using Confectio.Baking;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Baking;

/// <summary>Cakes at a height: the figures of the extension services and the armed forces as they are printed, and nothing between them.</summary>
public sealed class BatterAtAltitudeTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    // K19, armed forces table: 1 Tbsp at sea level is 1 tsp at 8000 ft; the other rows as read, in teaspoons.
    [Theory]
    [InlineData("1 Tbsp", 2000, "2 1/2 tsp")]
    [InlineData("1 Tbsp", 4000, "2 tsp")]
    [InlineData("1 Tbsp", 6000, "1 2/3 tsp")]
    [InlineData("1 Tbsp", 8000, "1 tsp")]
    [InlineData("5 tsp", 2000, "5 tsp")] // not changed, though 83 % stands beside it
    [InlineData("20 tsp", 8000, "8 tsp")]
    public void TheTableOfTheArmedForces(string seaLevel, int feet, string there) =>
        Assert.Equal(Amount.Parse(there), AltitudeLeavening.All.Single(row => row.SeaLevel == Amount.Parse(seaLevel)).At(feet));

    // The percentages printed beside the table, 83, 67, 56 and 33 %, are those of its first row to a per cent; its other rows do not follow them to the spoon.
    [Fact]
    public void ThePercentagesAreThoseOfTheFirstRow()
    {
        int[] printed = [83, 67, 56, 33];
        for (int i = 0; i < 4; i++)
            Assert.Equal(printed[i], Share(AltitudeLeavening.All[0], AltitudeLeavening.Heights[i]), 0.51);
        Assert.Equal(100, Share(AltitudeLeavening.All[1], 2000), 1e-9);
        Assert.All(AltitudeLeavening.All, row => Assert.InRange(Share(row, 8000), 33, 45));
        Assert.Equal(9, AltitudeLeavening.All.Count);
        Assert.Throws<ArgumentOutOfRangeException>("feet", () => AltitudeLeavening.All[0].At(3000));
    }

    // University of Wyoming, 5000 ft: 1/8 to 1/4 tsp of each tsp of leavening, 0 to 2 Tbsp of each cup of sugar less, 2 to 4 Tbsp to each cup of liquid: by hand,
    // 12 g · 3/4 to 7/8, 400 g · 14/16 to 1, 240 g · 18/16 to 20/16; 15 to 25 °F.
    [Theory]
    [InlineData("wyoming-altitude", BatterPart.Leavening, 9, 10.5)]
    [InlineData("wyoming-altitude", BatterPart.Sugar, 350, 400)]
    [InlineData("wyoming-altitude", BatterPart.Liquid, 270, 300)]
    [InlineData("csu-altitude-2002", BatterPart.Leavening, 9, 10.5)] // 1/8 to 1/4 of it
    [InlineData("dod-altitude", BatterPart.Leavening, 6.72, 8.04)] // between 67 % at 4000 and 56 % at 6000 ft
    public void TheRowsAreAppliedToTheLines(string source, BatterPart part, double low, double high)
    {
        AltitudeChange change = Cake().Changes.Single(one => one.Source.Key == source && one.Part == part);
        Assert.Equal(low, change.Grams!.Value.Low, 1e-9);
        Assert.Equal(high, change.Grams.Value.High, 1e-9);
        Assert.False(change.IsBeyond);
    }

    [Fact]
    public void TheOvenIsHotterByWhatIsPrinted()
    {
        AltitudeChange[] ovens = [.. Cake().Changes.Where(change => change.Part == BatterPart.Oven)];
        Assert.Equal(["wyoming-altitude", "csu-altitude-2002", "dod-altitude"], ovens.Select(change => change.Source.Key));
        // 15, 25, 15, 20, 25 and 25 °F over 1.8.
        Assert.Equal([(8.333, 13.889), (8.333, 11.111), (13.889, 13.889)], ovens.Select(change => (Math.Round(change.OvenKelvins!.Value.Low, 3), Math.Round(change.OvenKelvins.Value.High, 3))));
        Assert.Contains("15 to 25 °F (8.3 to 13.9 K) hotter", ovens[0].ToString(), StringComparison.Ordinal);
    }

    // New Mexico: 1/4 to 1/2 tsp for 2 cups of flour and 2500 ft. At 7500 ft a cake with 2 cups and 3 tsp keeps 1.5 to 2.25 of 3: 50 to 75 %.
    [Fact]
    public void NewMexicoCountsOnTheFlour()
    {
        Formula cake = Formula.ParseText("", "2 cups all-purpose flour\n3 tsp baking powder\n1 cup granulated sugar", s_table, MeasuringSystem.UsCustomary);
        AltitudeChange change = BatterAtAltitude.Of(cake, 7500 * 0.3048).Changes.Single(one => one.Source.Key == "nmsu-293");
        Assert.Equal(0.5, change.Grams!.Value.Low / change.GramsAtSeaLevel, 1e-9);
        Assert.Equal(0.75, change.Grams.Value.High / change.GramsAtSeaLevel, 1e-9);
    }

    // It is a rate: at 5000 ft twice 1/4 to 1/2 tsp for each two cups of flour, spooned.
    [Fact]
    public void NewMexicoGoesWithTheHeight()
    {
        AltitudeChange change = Cake().Changes.Single(one => one.Source.Key == "nmsu-293");
        double teaspoon = 4.92892159375 * s_table.Get("baking powder").Density(Packing.Levelled).GramsPerMillilitre.Likely;
        double cups = 375 / (236.5882365 * s_table.Get("all-purpose flour").Density(Packing.Spooned).GramsPerMillilitre.Likely);
        Assert.Equal(12 - 2 * cups / 2 * 0.25 * teaspoon, change.Grams!.Value.High, 1e-6);
        Assert.Equal(12 - 2 * cups / 2 * 0.5 * teaspoon, change.Grams.Value.Low, 1e-6);
    }

    [Theory]
    [InlineData(500, 0)] // nothing is printed below 2000 ft
    [InlineData(620, 1)] // 2034 ft: the armed forces alone, leavening
    [InlineData(3000, 9)] // 9843 ft: the last row of each stands; four of Wyoming, two each of Colorado and the armed forces, one of New Mexico
    public void BelowTheLowestNothingIsSaidAndAboveTheHighestTheLastRowStands(double metres, int changes)
    {
        BatterAtAltitude there = BatterAtAltitude.Of(Cake().Formula, metres);
        Assert.Equal(changes, there.Changes.Count);
        Assert.Equal(metres == 500, there.Cautions.Any(words => words.StartsWith("Nothing is printed for 500 m", StringComparison.Ordinal)));
        Assert.Equal(metres == 3000, there.Changes.Any(change => change.IsBeyond));
        Assert.Equal(metres == 3000, there.Cautions.Any(words => words.Contains("nothing was drawn on beyond", StringComparison.Ordinal)));
    }

    [Fact]
    public void ACakeThatRisesByEggAloneIsToldSo()
    {
        BatterAtAltitude sponge = BatterAtAltitude.Of(Formula.ParseText("", "120 g all-purpose flour\n120 g caster sugar\n4 large eggs", s_table, MeasuringSystem.Metric), 1600);
        Assert.DoesNotContain(sponge.Changes, change => change.Part == BatterPart.Leavening);
        Assert.Contains(sponge.Cautions, words => words.Contains("no baking powder or soda", StringComparison.Ordinal));
        Assert.Contains(BatterAtAltitude.Of(Formula.ParseText("", "120 g self-raising flour", s_table, MeasuringSystem.Metric), 1600).Cautions,
            words => words.Contains("cannot be taken out", StringComparison.Ordinal));
    }

    // Honey is no dry sugar, egg and cream no liquid of these cards.
    [Fact]
    public void WhatIsNotSpokenOfStays()
    {
        Formula cake = Formula.ParseText("", "200 g honey\n200 g heavy cream\n4 large eggs\n5 g baking soda\n200 g orange juice\n100 g water\n200 g brown sugar", s_table, MeasuringSystem.Metric);
        Assert.Equal(["bicarbonate of soda", "brown sugar", "orange juice", "water"], BatterAtAltitude.Of(cake, 1600).Changes
            .Where(change => change.Ingredient is not null).Select(change => change.Ingredient!.Name).Distinct().Order(StringComparer.Ordinal));
    }

    // Higher never has more leavening or sugar nor less liquid, by either end of each publication.
    [Property(MaxTest = 200)]
    public void HigherIsNeverLess(byte one, byte other)
    {
        (double lower, double higher) = (Math.Min(one, other) * 15.0, Math.Max(one, other) * 15.0);
        foreach (AltitudeChange above in BatterAtAltitude.Of(Cake().Formula, higher).Changes.Where(change => change.Grams is not null))
        {
            AltitudeChange? below = BatterAtAltitude.Of(Cake().Formula, lower).Changes.FirstOrDefault(change => change.Source == above.Source && change.Ingredient == above.Ingredient);
            if (below is null)
                continue;
            double sign = above.Part == BatterPart.Liquid ? -1 : 1;
            Assert.True(sign * above.Grams!.Value.Low <= sign * below.Grams!.Value.Low + 1e-9);
            Assert.True(sign * above.Grams.Value.High <= sign * below.Grams.Value.High + 1e-9);
        }
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(5200)] // feet
    [InlineData(double.NaN)]
    public void FeetAreRefused(double metres) => Assert.Throws<ArgumentOutOfRangeException>(nameof(metres), () => BatterAtAltitude.Of(Cake().Formula, metres));

    [Fact]
    public void EveryRuleIsPublished() => Assert.All(AltitudeRule.All, rule => Assert.Equal(Evidence.Compiled, rule.Provenance.Evidence));

    private static double Share(AltitudeLeavening row, int feet) => 100 * Teaspoons(row.At(feet)) / Teaspoons(row.SeaLevel);

    private static double Teaspoons(Amount amount) => amount.LowMillilitres(MeasuringSystem.UsCustomary) / MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.Teaspoon);

    // Fennmarsh Hall's butter cake for its sister kitchen, at 5000 ft.
    private static BatterAtAltitude Cake() => BatterAtAltitude.Of(Formula.Of("", [FormulaLine.Of(s_table.Get("all-purpose flour"), 375),
        FormulaLine.Of(s_table.Get("baking powder"), 12), FormulaLine.Of(s_table.Get("granulated sugar"), 400), FormulaLine.Of(s_table.Get("whole milk"), 240),
        FormulaLine.Of(s_table.Get("unsalted butter"), 227)]), 5000 * 0.3048);
}
