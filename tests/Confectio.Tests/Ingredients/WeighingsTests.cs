using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Uncertainty;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>A kitchen's own weighings: their mean by the GUM, and what the published figures then still add.</summary>
public sealed class WeighingsTests
{
    private static readonly Amount s_cup = Amount.Parse("1 cup");

    private static Weighings Cups(params double[] grams) => Weighings.Of(s_cup, MeasuringSystem.UsCustomary, Packing.Sifted, grams);

    // JCGM 100:2008 (GUM), table G.2, column 95 %.
    [Theory]
    [InlineData(1, 12.71)]
    [InlineData(2, 4.30)]
    [InlineData(3, 3.18)]
    [InlineData(4, 2.78)]
    [InlineData(5, 2.57)]
    [InlineData(10, 2.23)]
    [InlineData(20, 2.09)]
    [InlineData(50, 2.01)]
    [InlineData(100, 1.984)]
    public void StudentsFactorIsThatOfTheGuide(int freedom, double factor) =>
        Assert.Equal(factor, StudentFactor.Of95Percent(freedom), freedom == 100 ? 0.0005 : 0.005);

    // By hand: mean 329/3, s² = (2.7778 + 5.4444 + 0.4444)/2 = 4.3333, s/√3 = 1.2019, × 4.3027/2 = 2.5856; d/√12 = 0.2887; u = 2.6016.
    [Fact]
    public void TheMeanHasTheUncertaintyOfTheGuide()
    {
        Weighings three = Cups(108, 112, 109);
        Assert.Equal(329.0 / 3, three.MeanGrams.Likely, 1e-9);
        Assert.Equal(Math.Sqrt(13.0 / 3), three.StandardDeviationGrams!.Value, 1e-9);
        Assert.Equal(2.6016, three.MeanGrams.StandardUncertainty, 1e-4);
        Assert.Equal(1, three.ResolutionGrams);
        Assert.True(three.ResolutionWasAssumed);
        Assert.Equal("1 cup sifted: 109.7 g (104.5 to 114.9), 3 weighings", three.ToString());
    }

    [Fact]
    public void OneTwoAndEqualWeighingsSayWhatTheyCan()
    {
        // One: nothing of how fills differ; the scales alone.
        Weighings one = Cups(104.5);
        Assert.Null(one.StandardDeviationGrams);
        Assert.Equal(0.1, one.ResolutionGrams);
        Assert.Equal(0.1 / Math.Sqrt(12), one.MeanGrams.StandardUncertainty, 1e-12);
        // Two: t is 12.71. s = √2, s/√2 = 1, u = √(6.3531² + 0.2887²).
        Assert.Equal(Math.Sqrt(6.35310 * 6.35310 + 1.0 / 12), Cups(104, 106).MeanGrams.StandardUncertainty, 1e-4);
        // All equal: the step of the scales rules, and it does not average out.
        Weighings equal = Weighings.Of(s_cup, MeasuringSystem.UsCustomary, Packing.Sifted, [105, 105, 105, 105], resolutionGrams: 5);
        Assert.Equal(0, equal.StandardDeviationGrams);
        Assert.Equal(5 / Math.Sqrt(12), equal.MeanGrams.StandardUncertainty, 1e-12);
        Assert.False(equal.ResolutionWasAssumed);
    }

    [Fact]
    public void PublishedFiguresAreCombinedByTheirVariances()
    {
        // By hand. Published: 100 and 95 g, likely √9500 = 97.468, u = √(0.06² + (0.5/√3/95)²) = 0.060077. Own: 92, 95, 94; one fill to the
        // next τ̂ = 0.02923, × t(7)/2 = 0.03456; mean √(0.03456²/3 + (1/√12/93.67)²) = 0.020193; share 0.10150.
        IngredientTable table = IngredientTable.BuiltIn.With("icing sugar", Cups(92, 95, 94));
        BulkDensity density = table.Get("icing sugar").Density(Packing.Sifted);
        Assert.Equal(0.10150, density.PublishedShare!.Value, 1e-4);
        // 94.0457 about the arithmetic mean of the weighings.
        Assert.Equal(94.0457, density.GramsPerMillilitre.Likely * 236.5882365, 1e-3);
        Assert.Equal(0.03951, density.LogUncertainty, 1e-4);
        Assert.Null(density.Disagreement);
        Assert.Equal(3, density.ContributingFigures.Count);
        // Another packing is as it was, and so is the table below.
        Assert.Equal(IngredientTable.BuiltIn.Get("icing sugar").Density(Packing.Spooned).GramsPerMillilitre, table.Get("icing sugar").Density(Packing.Spooned).GramsPerMillilitre);
        Assert.Null(IngredientTable.BuiltIn.Get("icing sugar").Density(Packing.Sifted).Weighings);
        // Weighed again, the old weighings give way.
        BulkDensity again = table.With("powdered sugar", Cups(96, 97, 98, 97)).Get("icing sugar").Density(Packing.Sifted);
        Assert.Equal(4, again.Weighings!.Grams.Count);
        Assert.Single(again.Facts, fact => fact.Weighings is not null);
    }

    [Fact]
    public void TheMoreIsWeighedTheLessThePublishedFiguresAdd()
    {
        double before = 1;
        foreach (int count in (int[])[1, 2, 3, 5, 10, 100])
        {
            BulkDensity density = IngredientTable.BuiltIn.With("icing sugar", Cups([.. Enumerable.Range(0, count).Select(i => 100.0 + i % 3)]))
                .Get("icing sugar").Density(Packing.Sifted);
            Assert.True(density.PublishedShare < before, $"{count}: {density.PublishedShare}");
            before = density.PublishedShare!.Value;
            Assert.Equal(count == 1 ? SpreadBasis.Judged : SpreadBasis.Coverage, density.GramsPerMillilitre.Basis);
        }
        Assert.True(before < 0.01, $"{before}");
    }

    [Fact]
    public void WhatDisagreesIsSaidAndNotAveraged()
    {
        // A cup of 150 g where 97.5 g are published: spooned and shaken, most likely.
        IngredientTable table = IngredientTable.BuiltIn.With("icing sugar", Cups(150, 151, 149));
        Conversion conversion = Conversion.Of(table.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary);
        Assert.Equal(150, conversion.ToMass(s_cup).Grams.Likely, 0.01);
        Assert.Equal(0, conversion.Density.PublishedShare);
        Assert.Contains(conversion.Cautions, caution => caution.Contains("standard uncertainties apart", StringComparison.Ordinal)
            && caution.Contains("97.5 g", StringComparison.Ordinal));
        Assert.Single(conversion.Density.ContributingFigures);
        // One that agrees has no such sentence.
        Assert.DoesNotContain(Conversion.Of(IngredientTable.BuiltIn.With("icing sugar", Cups(100)).Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary).Cautions,
            caution => caution.Contains("apart", StringComparison.Ordinal));
    }

    [Fact]
    public void TheKitchenUsesThem()
    {
        Kitchen kitchen = Kitchen.UsCustomary.With(Kitchen.UsCustomary.Ingredients.With("powdered sugar", Cups(92, 95, 94)));
        ConvertedMass cup = kitchen.Convert("1 cup sifted powdered sugar");
        Assert.Equal(94.0457, cup.Grams.Likely, 1e-3);
        Assert.Contains(cup.By!.Cautions, caution => caution.Contains("assumed from the digits", StringComparison.Ordinal));
        Assert.Contains(Kitchen.UsCustomary.With(Kitchen.UsCustomary.Ingredients.With("powdered sugar", Cups(95))).Convert("1 cup sifted powdered sugar").By!.Cautions,
            caution => caution.StartsWith("One weighing", StringComparison.Ordinal));
        // A food that nobody weighed has a cup from now on.
        Ingredient marrons = IngredientTable.BuiltIn.All.First(food => food.Densities.Count == 0 && food.Class == IngredientClass.Pieces);
        IngredientTable weighed = IngredientTable.BuiltIn.With(marrons.Id, Weighings.Of(s_cup, MeasuringSystem.UsCustomary, Packing.Whole, [150, 158]));
        Assert.Equal(154, Conversion.Of(weighed.Get(marrons.Id), MeasuringSystem.UsCustomary).ToMass(s_cup).Grams.Likely, 1e-9);
        Assert.Null(weighed.Get(marrons.Id).Density(Packing.Whole).PublishedShare);
    }

    [Fact]
    public void BadWeighingsAreRefusedByName()
    {
        Assert.Throws<ArgumentException>("grams", () => Cups());
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => Cups(100, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => Cups(100, -1));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => Cups(1e7));
        Assert.Throws<ArgumentException>("amount", () => Weighings.Of(Amount.Parse("1 stick"), MeasuringSystem.UsCustomary, Packing.Packed, [100]));
        Assert.Throws<ArgumentException>("amount", () => Weighings.Of(Amount.Parse("1-2 cups"), MeasuringSystem.UsCustomary, Packing.Packed, [100]));
        Assert.Throws<ArgumentException>("amount", () => Weighings.Of(s_cup, null, Packing.Packed, [100]));
        Assert.Throws<ArgumentOutOfRangeException>("resolutionGrams", () => Weighings.Of(s_cup, MeasuringSystem.Metric, Packing.Packed, [100], 0));
        Assert.Throws<ArgumentOutOfRangeException>("packing", () => Weighings.Of(s_cup, MeasuringSystem.Metric, (Packing)99, [100]));
        Assert.Throws<ArgumentException>("name", () => IngredientTable.BuiltIn.With("glorp", Cups(100)));
        Assert.Contains("sieve", Assert.Throws<ArgumentException>("weighings", () => IngredientTable.BuiltIn.With("unsalted butter", Cups(100))).Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A kitchen whose mean is drawn about the published one, and whose fills are drawn about its mean as the class has it: the next fill
    /// lies within the spread 95 times in 100. Seed 2026; the figures are printed.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(10)]
    public void TheNextFillIsCovered(int count)
    {
        Random random = new(2026);
        Ingredient sugar = IngredientTable.BuiltIn.Get("icing sugar");
        IngredientTable small = new([sugar]);
        BulkDensity published = sugar.Density(Packing.Sifted);
        double fill = FigureSpread.Before(TechniqueSpreads.For(sugar.Class, Packing.Sifted));
        const int runs = 4000;
        int held = 0, disagreed = 0;
        for (int run = 0; run < runs; run++)
        {
            // τ² of this kitchen as the class has it: scaled inverse χ² of ν₀.
            double chi = 0;
            for (int i = 0; i < FigureSpread.Freedom; i++)
                chi += Math.Pow(Normal(random), 2);
            double own = fill * Math.Sqrt(FigureSpread.Freedom / chi), mean = Math.Log(published.GramsPerMillilitre.Likely * 236.5882365) + published.LogUncertainty * Normal(random);
            double Next() => Math.Exp(mean + own * Normal(random));
            BulkDensity density = small.With("icing sugar", Cups([.. Enumerable.Range(0, count).Select(_ => Math.Max(1, Math.Round(Next())))])).Get("icing sugar").Density(Packing.Sifted);
            held += density.GramsPerMillilitre.Contains(Next() / 236.5882365) ? 1 : 0;
            disagreed += density.Disagreement is null ? 0 : 1;
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{count} weighings: {100.0 * held / runs:0.0} % of next fills within, {100.0 * disagreed / runs:0.0} % said to disagree");
        Assert.InRange((double)held / runs, 0.935, 0.985);
        // Of kitchens that differ from print no more than they should, about one in twenty is told that it does.
        Assert.InRange((double)disagreed / runs, 0, 0.07);
    }

    internal static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
