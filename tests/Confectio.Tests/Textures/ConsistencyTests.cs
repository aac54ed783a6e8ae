using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Textures;
using Confectio.Uncertainty;
using FsCheck;
using FsCheck.Fluent;
using Xunit;

namespace Confectio.Tests.Textures;

/// <summary>The consistency of icings by their water. The bands are common practice or estimated, and say so.</summary>
public sealed class ConsistencyTests
{
    private static readonly Ingredient s_sugar = IngredientTable.BuiltIn.Get("icing sugar"), s_white = IngredientTable.BuiltIn.Get("egg white"),
        s_water = IngredientTable.BuiltIn.Get("water"), s_milk = IngredientTable.BuiltIn.Get("whole milk"), s_butter = IngredientTable.BuiltIn.Get("unsalted butter");

    private static readonly ConsistencySort s_royal = ConsistencySort.Get("royal-icing"), s_glaze = ConsistencySort.Get("icing-sugar-glaze");

    private static Formula Of(params (Ingredient Food, double Grams)[] lines) => Formula.Of("icing", lines.Select(line => FormulaLine.Of(line.Food, line.Grams)));

    [Fact] // common practice, several public pages agree: 454 g of icing sugar, white powder, and 74 to 89 g of water: stiff
    public void ThePublicRatiosFallWhereTheirPagesSay()
    {
        Assert.Equal(ConsistencyBand.Stiff, IcingConsistency.Of(Of((s_sugar, 454), (s_water, 80)), s_royal).Band!.Band);
        Assert.Equal(ConsistencyBand.Stiff, IcingConsistency.Of(Of((s_sugar, 454), (s_white, 80)), s_royal).Band!.Band);
        // One cup to one tablespoon is called thick, one to two thin.
        Assert.Equal(ConsistencyBand.Stiff, IcingConsistency.Of(Of((s_sugar, 120), (s_water, 15)), s_glaze).Band!.Band);
        Assert.Equal(ConsistencyBand.Flood, IcingConsistency.Of(Of((s_sugar, 120), (s_water, 30)), s_glaze).Band!.Band);
        Assert.Equal("drier than stiff", IcingConsistency.Of(Of((s_sugar, 454), (s_water, 40)), s_royal).BandText);
        Assert.Equal("thinner than flood", IcingConsistency.Of(Of((s_sugar, 454), (s_water, 300)), s_royal).BandText);
    }

    [Fact] // counted by hand: at 20 °C 100 g of water holds 199 g of sucrose (66.5 %), 1.33 g/mL; crystals 1.59, so of 454 g of sugar and 80 of water
    public void TheWaterPhaseIsTheSyrupAndNotTheGrains()
    {
        double water = 80, dissolved = 1.99 * water, syrup = (water + dissolved) / 1.33, grains = (454 - dissolved) / 1.59;
        Spread phase = IcingConsistency.Of(Of((IngredientTable.BuiltIn.Get("granulated sugar"), 454), (s_water, 80)), s_royal).WaterPhase!.Value;
        Assert.InRange(syrup / (syrup + grains), phase.Low, phase.High);
    }

    [Fact]
    public void WhatIsStirredInTakesItThereAndWhatIsTakenBackTakesItBack() => Prop.ForAll(Gen.Choose(100, 2000).ToArbitrary(), Gen.Choose(12, 40).ToArbitrary(), Gen.Choose(0, 3).ToArbitrary(), (sugar, water, band) =>
    {
        Formula formula = Of((s_sugar, sugar), (s_water, sugar * water / 100.0));
        IcingConsistency now = IcingConsistency.Of(formula, s_royal);
        ConsistencyStep step = now.To((ConsistencyBand)band, s_milk, s_sugar);
        Formula then = Of((s_sugar, sugar), (s_water, sugar * water / 100.0), (step.StirredIn, step.Grams.Likely));
        IcingConsistency there = IcingConsistency.Of(then, s_royal);
        ConsistencyRange aimed = s_royal.Bands[band];
        Assert.Equal((aimed.Low + aimed.High) / 2, there.WaterPer100Sugars, 1e-9);
        Assert.True(step.Grams.Low <= step.Grams.Likely && step.Grams.Likely <= step.Grams.High && step.Grams.Low >= 0);
        // Taken to the water it had, by what it takes.
        ConsistencyStep back = there.ToMatch(now, s_water, s_sugar);
        Formula again = Formula.Of("again", [.. then.Lines, FormulaLine.Of(back.StirredIn, back.Grams.Likely)]);
        Assert.Equal(now.WaterPer100Sugars, IcingConsistency.Of(again, s_royal).WaterPer100Sugars, 1e-9);
    }).QuickCheckThrowOnFailure();

    // Liquid stirred in and the same liquid held back again leave the formula that was: its lines, its water, its band; and what takes it there from where it was is what was added.
    [Fact]
    public void AddingAndTakingAwayTheSameLiquidReturnsTheFormula() => Prop.ForAll(Gen.Choose(100, 2000).ToArbitrary(), Gen.Choose(12, 30).ToArbitrary(), Gen.Choose(1, 400).ToArbitrary(), (sugar, water, added) =>
    {
        foreach (Ingredient liquid in new[] { s_water, s_milk, s_white })
        {
            double had = sugar * water / 100.0, grams = added / 2.0;
            Formula before = Of((s_sugar, sugar), (liquid, had)), with = Of((s_sugar, sugar), (liquid, had + grams)),
                after = Formula.Of(before.Name, with.Lines.Select(line => FormulaLine.Of(line.Ingredient, line.Grams.Likely - (line.Ingredient == liquid ? grams : 0))));
            IcingConsistency from = IcingConsistency.Of(before, s_royal), thinner = IcingConsistency.Of(with, s_royal), back = IcingConsistency.Of(after, s_royal);
            Assert.True(thinner.WaterPer100Sugars > from.WaterPer100Sugars);
            Assert.Equal(from.WaterPer100Sugars, back.WaterPer100Sugars, 1e-9);
            Assert.Equal(from.BandText, back.BandText);
            Assert.Equal(before.TotalGrams, after.TotalGrams, 1e-9);
            Assert.Equal(grams, from.ToMatch(thinner, liquid, s_sugar).Grams.Likely, 1e-6);
            Assert.Equal(0, from.ToMatch(back, liquid, s_sugar).Grams.High, 1e-6);
        }
    }).QuickCheckThrowOnFailure();

    [Fact]
    public void TheBandsOfASortFollowEachOtherAndSayWhatTheyRestOn()
    {
        foreach (ConsistencySort sort in ConsistencySort.All)
        {
            Assert.Equal(sort.Bands.Select(band => band.Band).Order(), sort.Bands.Select(band => band.Band));
            for (int i = 1; i < sort.Bands.Count; i++)
                Assert.Equal(sort.Bands[i - 1].High, sort.Bands[i].Low);
            Assert.All(sort.Bands, band => Assert.True(band.Provenance.Evidence is Evidence.CommonPractice or Evidence.Estimated && band.Provenance.Note.Length > 0));
        }
    }

    [Fact] // halving with every 3 g of water is a straight line of the logarithm: by hand
    public void OwnTrialsGiveTheirLineAndNothingBeyondThem()
    {
        FlowTrials trials = FlowTrials.Of((20, 40), (23, 20), (26, 10));
        Assert.Equal(20, trials.SecondsAt(23).Likely, 1e-9);
        Assert.Equal(40 / Math.Sqrt(2), trials.SecondsAt(21.5).Likely, 1e-9);
        Assert.Equal(24.5, trials.WaterFor(10 * Math.Sqrt(2)), 1e-9);
        Assert.True(trials.SecondsAt(23).High > 20 && trials.SecondsAt(23).Low < 20);
        Assert.Throws<ArgumentOutOfRangeException>(() => trials.SecondsAt(27));
        Assert.Throws<ArgumentOutOfRangeException>(() => trials.WaterFor(60));
        // Trials that scatter widen the answer: Student's factor for one degree of freedom is 12.7.
        Assert.True(FlowTrials.Of((20, 40), (23, 25), (26, 10)).SecondsAt(23) is Spread wide && wide.High / wide.Low > 20);
    }

    [Fact]
    public void BadInputIsNamed()
    {
        IcingConsistency royal = IcingConsistency.Of(Of((s_sugar, 454), (s_water, 80)), s_royal);
        Assert.Contains("no water", Assert.Throws<ArgumentException>(() => IcingConsistency.Of(Of((IngredientTable.BuiltIn.Get("white shortening"), 100)), s_royal)).Message, StringComparison.Ordinal);
        Assert.Contains("no sugars", Assert.Throws<ArgumentException>(() => IcingConsistency.Of(Of((s_water, 100)), s_royal)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => royal.To(ConsistencyBand.Flood, s_sugar, s_sugar));
        Assert.Throws<ArgumentException>(() => royal.ToMatch(IcingConsistency.Of(Of((s_sugar, 454), (s_water, 80)), s_glaze), s_water, s_sugar));
        Assert.Throws<ArgumentException>(() => IcingConsistency.Of(Of((s_sugar, 454), (s_water, 80)), ConsistencySort.Get("buttercream")).To(ConsistencyBand.Flood, s_water, s_sugar));
        Assert.Throws<ArgumentOutOfRangeException>(() => royal.ToWater(double.NaN, s_water, s_sugar));
        Assert.Throws<ArgumentException>(() => FlowTrials.Of((20, 40), (23, 20)));
        Assert.Throws<ArgumentException>(() => FlowTrials.Of((20, 40), (20, 30), (20, 20)));
        Assert.Throws<ArgumentException>(() => FlowTrials.Of((20, 10), (23, 20), (26, 40)));
        Assert.Throws<ArgumentOutOfRangeException>(() => FlowTrials.Of((20, 40), (23, -1), (26, 10)));
        Assert.Throws<InvalidOperationException>(() => IcingConsistency.Of(Of((s_sugar, 100), (s_water, 60)), s_royal).To(ConsistencyBand.Stiff, s_water, s_sugar).TeaspoonsPerPound(MeasuringSystem.UsCustomary));
    }
}
