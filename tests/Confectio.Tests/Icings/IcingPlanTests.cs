using Confectio.Cakes;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Tests.Cakes;
using FsCheck.Xunit;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Icings;

/// <summary>From the cake to batches: nothing is lost on the way, every batch fits its bowl, and there are no fewer that would do.</summary>
public sealed class IcingPlanTests
{
    private static readonly Ingredient s_white = IngredientTable.BuiltIn.Get("egg white"), s_sugar = IngredientTable.BuiltIn.Get("granulated sugar"), s_butter = IngredientTable.BuiltIn.Get("unsalted butter");

    // 220 g of white, 396 g of sugar and 484 g of butter make 1100 g: 30 g of white, that of 0.909 US large eggs (USDA: 33 g), to 150 g.
    private static readonly Formula s_formula = Formula.Of("Fennmarsh Hall meringue buttercream", [FormulaLine.Of(s_white, 220), FormulaLine.Of(s_sugar, 396), FormulaLine.Of(s_butter, 484)]);

    private static EggSize Large => EggSizeSystem.Get("us").Size("large");

    // By hand: a 20 cm round, 10 cm high, with 5 mm, sharp: π·10.5²·10.5 − π·10²·10 = 495.32 mL; at 0.8 g/mL 396.3 g; a tenth is lost, so 440.3 g are taken.
    [Fact]
    public void APlanByHand()
    {
        double millilitres = Math.PI * (10.5 * 10.5 * 10.5 - 1000), planned = 0.8 * millilitres, taken = planned / 0.9;
        IcingPlan plan = IcingPlan.Of(Cake("cream"), [Icing.Of("cream", 0.8, s_formula)], 0.1);
        IcingNeed need = Assert.Single(plan.Needs);
        Assert.Equal(millilitres, need.Millilitres, 1e-9);
        Assert.Equal(planned, need.PlannedGrams.Likely, 1e-9);
        Assert.Equal(taken, need.TakenGrams, 1e-9);
        Assert.Equal(0.1 * taken, need.WasteGrams, 1e-9);
        Assert.Equal(0, need.LeftOverGrams);
        Assert.Null(need.LeftOverCover);
        IcingBatch batch = Assert.Single(need.Batches);
        Assert.Equal(1, batch.Count);
        Assert.Equal(taken, batch.Grams, 1e-9);
        Assert.Equal(taken / 0.8, batch.Millilitres, 1e-9);
        Assert.Equal(taken * 220 / 1100, batch.Formula!.Lines[0].Grams.Likely, 1e-9);
        Assert.Same(need, plan.Need("cream"));
        Assert.Throws<ArgumentException>("icing", () => plan.Need("jam"));
    }

    // By hand, with whole US large eggs of 33 g of white: 165 g of icing to an egg. 440.3 g need 3 eggs, 495 g, of which 54.7 g are left.
    [Fact]
    public void WholeEggsByHand()
    {
        IcingNeed need = Assert.Single(IcingPlan.Of(Cake("cream"), [Icing.Of("cream", 0.8, s_formula).InWholeEggs(Large)], 0.1).Needs);
        double taken = 0.8 * Math.PI * (10.5 * 10.5 * 10.5 - 1000) / 0.9;
        Assert.Equal(3, Assert.Single(need.Batches).Eggs);
        Assert.Equal(495, need.MadeGrams, 1e-9);
        Assert.Equal(495 - taken, need.LeftOverGrams, 1e-9);
        Assert.Equal(99, need.Batches[0].Formula!.Lines[0].Grams.Likely, 1e-9);
        // What is left over, less the same waste, as a volume.
        Assert.Equal((495 - taken) * 0.9 / 0.8, need.LeftOverCover!.Millilitres, 1e-9);
    }

    // The meringue of 220 g of white (1.034 g/mL, from the table) rises to 8 times at most: 1.548 mL to a gram of icing, more than the icing done (1.25 mL).
    [Fact]
    public void AMeringueFillsTheBowlBeforeTheButter()
    {
        Icing icing = Icing.Of("cream", 0.8, s_formula).Whipping(new Spread(6, 7, 8), s_white);
        double liquid = Confectio.Conversions.Conversion.Of(s_white, Confectio.Measures.MeasuringSystem.Metric).ToVolume(220).Millilitres.Likely;
        Assert.InRange(liquid, 206, 220);
        IcingNeed need = Assert.Single(IcingPlan.Of(Cake("cream"), [icing], 0.1, MixerBowl.Of(1000, 0.5)).Needs);
        IcingBatch batch = Assert.Single(need.Batches);
        Assert.Equal(8 * liquid / 1100 * batch.Grams, batch.PeakMillilitres, 1e-9);
        // 440.3 g would rise to 680 mL, and 500 are usable: two batches.
        Assert.Equal(2, batch.Count);
        Assert.True(batch.PeakMillilitres <= 500);
        // Without the meringue the icing when it is done decides, and 550 mL are two batches too; in 600 mL it is one.
        Assert.Equal(2, IcingPlan.Of(Cake("cream"), [Icing.Of("cream", 0.8, s_formula)], 0.1, MixerBowl.Of(1000, 0.5)).Needs[0].Batches[0].Count);
        Assert.Equal(1, IcingPlan.Of(Cake("cream"), [Icing.Of("cream", 0.8, s_formula)], 0.1, MixerBowl.Of(1000, 0.6)).Needs[0].Batches[0].Count);
    }

    [Property(MaxTest = 300)]
    public void NothingIsLostAndEveryBatchFits(ushort seed)
    {
        Random random = new(seed);
        Cake cake = RandomCakes.Of(seed);
        double density = 0.4 + random.NextDouble(), waste = 0.3 * random.NextDouble();
        Icing cream = Icing.Of("cream", new Spread(0.9 * density, density, 1.1 * density), s_formula);
        if (random.Next(2) == 0)
            cream = cream.Whipping(new Spread(5, 6 + random.NextDouble(), 8), s_white);
        bool whole = random.Next(2) == 0;
        if (whole)
            cream = cream.InWholeEggs(Large);
        MixerBowl bowl = MixerBowl.Of(2000 + 20_000 * random.NextDouble(), 0.4 + 0.5 * random.NextDouble());
        IcingPlan plan = IcingPlan.Of(cake, [cream, Icing.Of("jam", 1.3), Icing.Of("glaze", 1.2)], waste, bowl);
        Assert.Equal(cake.Cover().TotalMillilitres, plan.Needs.Sum(need => need.Millilitres), 1e-9 * cake.Cover().TotalMillilitres);
        Assert.All(plan.Needs, need =>
        {
            double made = need.Batches.Sum(batch => batch.Count * batch.Grams);
            // To a gram is asked; to a hundred-thousandth is kept.
            Assert.Equal(need.PlannedGrams.Likely, made - need.WasteGrams - need.LeftOverGrams, 1e-5);
            Assert.Equal(waste * need.TakenGrams, need.WasteGrams, 1e-9 * (1 + made));
            Assert.All(need.Batches.Where(_ => need.Icing.Formula is not null), batch =>
            {
                Assert.True(batch.PeakMillilitres <= bowl.UsableMillilitres * (1 + 1e-9));
                Assert.True(batch.PeakMillilitres >= batch.Millilitres * 0.999);
                Assert.Equal(batch.Grams, batch.Formula!.TotalGrams, 1e-9 * batch.Grams);
                Assert.Equal(batch.Grams * 220 / 1100, batch.Formula.Lines[0].Grams.Likely, 1e-9 * batch.Grams);
            });
            if (need.Icing.EggSize is null || need.Batches.Count == 0)
                return;
            // Whole eggs, no more of them than needed, and batches that differ by one egg at most.
            long[] eggs = [.. need.Batches.Select(batch => batch.Eggs!.Value)];
            Assert.Equal(Fewest(need, bowl, out long all), need.Batches.Sum(batch => batch.Count));
            Assert.Equal(all, need.Batches.Sum(batch => batch.Count * batch.Eggs!.Value));
            Assert.InRange(eggs.Max() - eggs.Min(), 0, 1);
            Assert.True(need.LeftOverGrams < 165 + 1e-6);
        });
    }

    // One egg after the other, and one batch after the other, until it is enough and all of them fit.
    private static long Fewest(IcingNeed need, MixerBowl bowl, out long eggs)
    {
        double perEgg = 33.0 * 1100 / 220, peak = need.Batches[0].PeakMillilitres / need.Batches[0].Grams;
        for (eggs = 1; eggs * perEgg < need.TakenGrams * (1 - 1e-11);)
            eggs++;
        long batches = 1;
        while ((eggs + batches - 1) / batches * perEgg * peak > bowl.UsableMillilitres * (1 + 1e-11))
            batches++;
        return batches;
    }

    // More cake, more icing, and never less left to make than the cake takes.
    [Property(MaxTest = 100)]
    public void MoreWasteTakesMore(ushort seed)
    {
        Cake cake = RandomCakes.Of(seed, coatsOnly: true);
        Icing[] icings = [Icing.Of("cream", 0.8), Icing.Of("jam", 1.3)];
        IcingPlan less = IcingPlan.Of(cake, icings, 0.05), more = IcingPlan.Of(cake, icings, 0.1);
        Assert.All(less.Needs.Zip(more.Needs), pair =>
        {
            Assert.Equal(pair.First.PlannedGrams.Likely, pair.Second.PlannedGrams.Likely);
            Assert.True(pair.Second.TakenGrams >= pair.First.TakenGrams);
        });
    }

    // Forward, then backward with what was made: the cake as it was.
    [Property(MaxTest = 100)]
    public void ForwardAndBackwardIsTheCake(ushort seed)
    {
        Cake cake = RandomCakes.Of(seed, coatsOnly: true);
        Icing cream = Icing.Of("cream", 0.8);
        double waste = 0.2 * new Random(seed).NextDouble();
        IcingPlan plan = IcingPlan.Of(cake, [cream, Icing.Of("jam", 1.3)], waste);
        if (plan.Needs.FirstOrDefault(need => need.Icing.Name == "cream") is not IcingNeed need)
            return;
        IcingCover reach = cream.CoverFrom(need.TakenGrams, waste);
        Assert.Equal(need.Millilitres, reach.Millilitres, 1e-9 * need.Millilitres);
        Assert.Equal(1, reach.CoatFactor(cake, "cream")!.Value, 1e-7);
        Assert.Equal(1, reach.MaximumScale(cake, "cream")!.Value, 1e-7);
    }

    [Fact]
    public void TheSpreadOfTheDensityIsThatOfTheGrams()
    {
        IcingNeed need = IcingPlan.Of(Cake("cream"), [Icing.Of("cream", new Spread(0.7, 0.8, 0.9))], 0).Needs[0];
        Assert.Equal(need.Millilitres * 0.7, need.PlannedGrams.Low, 1e-9);
        Assert.Equal(need.Millilitres * 0.9, need.PlannedGrams.High, 1e-9);
    }

    [Fact]
    public void WhatCannotBePlannedIsRefused()
    {
        Cake cake = Cake("cream");
        Icing cream = Icing.Of("cream", 0.8, s_formula);
        Assert.Contains("lacks cream", Assert.Throws<ArgumentException>("icings", () => IcingPlan.Of(cake, [Icing.Of("jam", 1.3)], 0)).Message, StringComparison.Ordinal);
        Assert.Contains("two of the name cream", Assert.Throws<ArgumentException>("icings", () => IcingPlan.Of(cake, [cream, cream], 0)).Message, StringComparison.Ordinal);
        PlanShapeTests.Refused("wasteFraction", 0.91, () => IcingPlan.Of(cake, [cream], 0.91));
        PlanShapeTests.Refused("usableFraction", 0, () => MixerBowl.Of(5000, 0));
        PlanShapeTests.Refused("quarts", double.NaN, () => MixerBowl.OfQuarts(double.NaN, 0.5));
        Assert.Throws<ArgumentException>("whipped", () => cream.Whipping(Spread.Exactly(7)));
        Assert.Throws<ArgumentException>("whipped", () => cream.Whipping(Spread.Exactly(7), IngredientTable.BuiltIn.Get("water")));
        Assert.Throws<ArgumentException>("whipped", () => Icing.Of("bought", 1.0).Whipping(Spread.Exactly(7), s_white));
        PlanShapeTests.Refused("rise", 0.5, () => cream.Whipping(Spread.Exactly(0.5), s_white));
        Assert.Throws<ArgumentException>("part", () => cream.InWholeEggs(Large, EggPart.Yolk));
        Assert.Throws<ArgumentException>("name", () => Icing.Of(" ", 0.8));
        // An egg too many for a cup.
        Icing whole = cream.Whipping(Spread.Exactly(8), s_white).InWholeEggs(Large);
        Assert.Contains("one egg", Assert.Throws<ArgumentException>("bowl", () => IcingPlan.Of(cake, [whole], 0, MixerBowl.Of(200, 0.5))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ABowlTooLargeAndAForgottenRiseAreCautioned()
    {
        IcingPlan plan = IcingPlan.Of(Cake("cream"), [Icing.Of("cream", 0.8, s_formula)], 0, MixerBowl.OfQuarts(60, 0.7));
        Assert.Contains(plan.Cautions, caution => caution.Contains("the whisk may not reach it", StringComparison.Ordinal));
        Assert.Contains(plan.Cautions, caution => caution.Contains("no rise is stated", StringComparison.Ordinal));
        Assert.Contains(plan.Cautions, caution => caution.Contains("Salmonella", StringComparison.Ordinal));
        Assert.Equal("60-quart bowl, 39747 of 56781 mL", plan.Bowl!.ToString());
        Assert.Empty(IcingPlan.Of(Cake("cream"), [Icing.Of("cream", 0.8)], 0).Cautions);
    }

    private static Cake Cake(string icing) => Confectio.Cakes.Cake.Of("by hand", [CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(10))).Coated(CakeCoat.Of(icing, Cm(0.5), CoatEdge.Sharp))]);
}
