using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Tests.Sugars;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Cooking;

/// <summary>A pot of syrup: only water leaves or joins, and everything else follows by arithmetic.</summary>
public sealed class SyrupPotTests
{
    private static readonly AirPressure s_sea = AirPressure.SeaLevel;
    private static readonly Ingredient s_sugar = Named("granulated sugar"), s_glucose = Named("glucose syrup 42 DE"), s_cream = Named("heavy cream"),
        s_butter = Named("unsalted butter"), s_water = Named("water");

    // 600 g of sugar stay 600 g: at a strength w the pot holds 600/w.
    [Theory]
    [InlineData(0.80, 750)]
    [InlineData(0.85, 705.882352941176)]
    [InlineData(0.90, 666.666666666667)]
    [InlineData(1.00, 600)]
    [InlineData(0.60, 1000)] // 200 g of water to add
    public void APotByHand(double solids, double expected)
    {
        PotEnd end = Fennmarsh().CookToSolids(solids);
        Assert.Equal(expected, end.FinalGrams.Likely, 1e-9);
        Assert.Equal(800 - expected, end.WaterToBoilOffGrams, 1e-9);
        Assert.Equal(expected / 800, end.Yield, 1e-12);
        Assert.Equal(600, end.Pot.SolidsGrams, 1e-9);
        Assert.Equal(expected - 600, end.Pot.WaterGrams, 1e-9);
        Assert.Equal(solids, end.Pot.Solution.Solids, 1e-12);
        Assert.Equal(new Spread(solids, solids, solids), end.Solids);
        Assert.Contains(expected > 800 ? "added" : "gone", end.ToString(), StringComparison.Ordinal);
    }

    // 240 °F at sea level is 86.2 % by both equations, worked out by another program: 600/0.862 = 696 g.
    [Fact]
    public void ToSoftBall()
    {
        PotTarget target = Fennmarsh().CookTo(CookingStage.Get("soft ball"), s_sea);
        Assert.Equal(600 / 0.862, target.High!.FinalGrams.Likely, 0.5);
        Assert.Equal(600 / 0.834, target.Low!.FinalGrams.Likely, 0.5); // 234 °F: 83.4 %
        Assert.Equal(Fennmarsh().CookTo(Syrups.ToCelsius(240), s_sea).FinalGrams.Likely, target.High.FinalGrams.Likely, 1e-6);
        Assert.Equal("soft ball: 112.2 to 115.6 °C (234 to 240 °F), 719.7 to 696.0 g", target.ToString());
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void OnlyWaterLeaves(Syrup syrup, Share start, Share heat, Share air)
    {
        AirPressure pressure = AirPressure.FromKilopascals(20 + 85 * air.Value);
        SugarSolution solution = syrup.Solution.WithSolids(0.05 + 0.9 * start.Value);
        if (MaximumCelsius(solution, pressure) is not double highest)
            return;
        double water = pressure.WaterBoilsCelsius, celsius = water + (highest - water) * (0.02 + 0.97 * heat.Value), grams = 10 + 5000 * air.Value;
        SyrupPot pot = SyrupPot.Of(solution, grams);
        PotEnd end = pot.CookTo(celsius, pressure);
        double scale = Math.Max(grams, end.FinalGrams.Likely);
        Assert.Same(pot, end.Start);
        Assert.Equal(pot.SolidsGrams, end.Pot.SolidsGrams, 1e-12 * scale);
        Assert.Equal(pot.WaterGrams - end.Pot.WaterGrams, end.WaterToBoilOffGrams, 1e-12 * scale);
        Assert.Equal(grams - end.WaterToBoilOffGrams, end.FinalGrams.Likely, 1e-11 * scale);
        Assert.Equal(end.Pot.SolidsGrams + end.Pot.WaterGrams, end.FinalGrams.Likely, 1e-12 * scale);
        // Each solute, not only their sum.
        Assert.All(SugarGenerators.Dissolving, part => Assert.Equal(pot.Grams * pot.Solution[part], end.Pot.Grams * end.Pot.Solution[part], 1e-11 * scale));
        // The strength boils there, and the spread holds it; of masses the other way about.
        // By the model that the pot cooks with: of a dextrin of 20 kg/mol another model boils nowhere, and then there is no spread to ask.
        Assert.Equal(celsius, end.Pot.Solution.BoilingCelsius(pressure, BoilingModel.StarzakPeacock), 1e-6);
        Assert.Equal(end.Pot.Solution.Solids, end.Solids.Likely, 1e-15);
        Assert.InRange(end.Solids.Likely, end.Solids.Low, end.Solids.High);
        Assert.Equal(pot.SolidsGrams / end.Solids.High, end.FinalGrams.Low, 1e-11 * scale);
        Assert.Equal(pot.SolidsGrams / end.Solids.Low, end.FinalGrams.High, 1e-11 * Math.Max(scale, end.FinalGrams.High));
        Assert.Equal(end.FinalGrams.Likely, end.FinalGrams.Likely);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 200)]
    public void DilutedBackItIsAsItWas(Syrup syrup, Share heat)
    {
        SugarSolution solution = syrup.Solution.WithSolids(0.4);
        if (MaximumCelsius(solution, s_sea) is not double highest)
            return;
        SyrupPot pot = SyrupPot.Of(solution, 1000);
        PotEnd end = pot.CookTo(s_sea.WaterBoilsCelsius + (highest - s_sea.WaterBoilsCelsius) * (0.02 + 0.97 * heat.Value), s_sea);
        PotEnd back = end.Pot.CookToSolids(0.4);
        Assert.Equal(1000, back.FinalGrams.Likely, 1e-8);
        Assert.Equal(-end.WaterToBoilOffGrams, back.WaterToBoilOffGrams, 1e-8);
        SyrupPot weighed = end.Pot.Weighing(1000);
        Assert.All(SugarGenerators.Dissolving, part => Assert.Equal(solution[part], weighed.Solution[part], 1e-12));
    }

    // 500 g in the pot of which 300 are solids: 60 %.
    [Fact]
    public void TheScalesTellTheStrength()
    {
        SyrupPot pot = SyrupPot.Of(SugarSolution.OfSucrose(0.4), 750);
        Assert.Equal(0.6, pot.Weighing(500).Solution.Solids, 1e-12);
        Assert.Equal(200, pot.Weighing(500).WaterGrams, 1e-9);
        Assert.Equal(1, pot.Weighing(300).Solution.Solids, 1e-12);
        Assert.Equal(0.3, pot.Weighing(1000).Solution.Solids, 1e-12);
        Assert.Same(pot, pot.Weighing(750));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => pot.Weighing(299.9));
        // Water may boil off to nothing nearly, and stays water.
        Assert.Equal(0, SyrupPot.Of(SugarSolution.PureWater, 500).Weighing(1).SolidsGrams);
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => SyrupPot.Of(SugarSolution.PureWater, 500).Weighing(0));
    }

    // 50 of 200 g of water gone is a quarter of the way.
    [Fact]
    public void ProgressIsTheShareOfTheWater()
    {
        PotEnd end = SyrupPot.Of(SugarSolution.OfSucrose(0.5), 1000).CookToSolids(0.625);
        Assert.Equal(200, end.WaterToBoilOffGrams, 1e-9);
        Assert.Equal(0, end.Progress(1000), 1e-12);
        Assert.Equal(0.25, end.Progress(950), 1e-12);
        Assert.Equal(1, end.Progress(800), 1e-12);
        Assert.Equal(1.5, end.Progress(700), 1e-12);
        Assert.True(end.Progress(1001) < 0);
        Assert.Equal(1, end.Progress(end.FinalGrams.Likely), 1e-12);
        // Diluting is a way too.
        PotEnd weaker = SyrupPot.Of(SugarSolution.OfSucrose(0.5), 1000).CookToSolids(0.4);
        Assert.Equal(0.5, weaker.Progress(1125), 1e-12);
        Assert.Throws<InvalidOperationException>(() => SyrupPot.Of(SugarSolution.OfSucrose(0.5), 1000).CookToSolids(0.5).Progress(1000));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1600)]
    public void TheHighEndOfAStageHasLessWater(double metres)
    {
        AirPressure pressure = AirPressure.FromAltitudeMetres(metres);
        PotTarget[] targets = [.. CookingStage.All.Where(stage => stage.Key != "caramel").Select(stage => Fennmarsh().CookTo(stage, pressure))];
        Assert.All(targets, target =>
        {
            Assert.True(target.Low!.FinalGrams.Likely > target.High!.FinalGrams.Likely);
            Assert.True(target.Low.FinalGrams.Low <= target.Low.FinalGrams.Likely && target.Low.FinalGrams.Likely <= target.Low.FinalGrams.High);
            Assert.Equal(target.Stage.Low.Solution!.Solids, target.Low.Pot.Solution.Solids, 1e-12);
            Assert.Equal(target.Stage.High.Solution!.Solids, target.High.Pot.Solution.Solids, 1e-12);
        });
        Assert.All(targets.Zip(targets.Skip(1)), pair => Assert.True(pair.First.High!.FinalGrams.Likely >= pair.Second.Low!.FinalGrams.Likely - 1e-9));
    }

    // No water is left of what caramel is.
    [Fact]
    public void BeyondBoilingThereIsNoEnd()
    {
        PotTarget target = Fennmarsh().CookTo(CookingStage.Get("caramel"), s_sea);
        Assert.Null(target.Low);
        Assert.Null(target.High);
        Assert.Equal("caramel: beyond boiling", target.ToString());
        Assert.Null(Fennmarsh().CookTo(CookingStage.Of("half way", 150, 200), s_sea).High);
        Assert.EndsWith("g and less", Fennmarsh().CookTo(CookingStage.Of("half way", 150, 200), s_sea).ToString(), StringComparison.Ordinal);
    }

    // The scales read the same up in the hills; the thermometer does not.
    [Theory]
    [InlineData(1600)]
    [InlineData(3000)]
    public void AltitudeMovesTheTemperatureAndNotTheMass(double metres)
    {
        PotTarget sea = Fennmarsh().CookTo(CookingStage.Get("firm ball"), s_sea), up = Fennmarsh().CookTo(CookingStage.Get("firm ball"), AirPressure.FromAltitudeMetres(metres));
        Assert.True(up.Stage.Low.Celsius < sea.Stage.Low.Celsius - metres / 400);
        Assert.Equal(sea.Low!.FinalGrams.Likely, up.Low!.FinalGrams.Likely, 1e-6);
        Assert.Equal(sea.High!.FinalGrams.Likely, up.High!.FinalGrams.Likely, 1e-6);
        // By the temperature of the sea it would be boiled far too dry.
        Assert.True(Fennmarsh().CookTo(sea.Stage.Low.Celsius, AirPressure.FromAltitudeMetres(metres)).FinalGrams.Likely < sea.Low.FinalGrams.Likely - 10);
    }

    // Soft caramel: 300 g of sugar, 300 of glucose syrup, 300 of cream, 100 of butter. USDA SR per 100 g: sugar 0.02 water, 99.8 sucrose; cream 57.71
    // and 2.79 lactose; butter 17.94 and 0.06 lactose. The syrup (from memory) is all water and sugars. So 250.1 g of water, 299.4 + 240.9 + 8.4 of solids;
    // what is left of a kilogram is fat, protein and salts.
    [Fact]
    public void FatAndProteinAreWeighedAndTakeNoPart()
    {
        Formula caramel = Formula.Of("Fennmarsh caramel",
            [FormulaLine.Of(s_sugar, 300), FormulaLine.Of(s_glucose, 300), FormulaLine.Of(s_cream, 300), FormulaLine.Of(s_butter, 100)]);
        SyrupPot pot = SyrupPot.Of(caramel);
        double water = 0.06 + 0.197 * 300 + 0.5771 * 300 + 17.94, solids = 0.998 * 300 + 0.803 * 300 + 0.0279 * 300 + 0.06, other = 1000 - water - solids;
        Assert.Equal(1000, pot.Grams, 1e-9);
        Assert.Equal(water, pot.WaterGrams, 0.02);
        Assert.Equal(solids, pot.SolidsGrams, 0.05);
        Assert.Equal(other, pot.OtherGrams, 0.05);
        PotEnd end = pot.CookTo(118, s_sea);
        Assert.Equal(pot.OtherGrams, end.Pot.OtherGrams);
        Assert.Equal(pot.SolidsGrams, end.Pot.SolidsGrams, 1e-9);
        Assert.Equal(1000 - end.WaterToBoilOffGrams, end.FinalGrams.Likely, 1e-9);
        Assert.Equal(118, end.Pot.Solution.BoilingCelsius(s_sea).Likely, 1e-7);
        Assert.Equal(pot.OtherGrams + pot.SolidsGrams / end.Solids.High, end.FinalGrams.Low, 1e-9);
        Assert.Equal(end.Pot.Solution.Solids, pot.Weighing(end.FinalGrams.Likely).Solution.Solids, 1e-12);
        // The fat is no part of the volume.
        Assert.Equal((end.FinalGrams.Likely - end.Pot.OtherGrams) / end.Pot.Solution.GramsPerMillilitre(60), end.Millilitres(60), 1e-9);
        Assert.Contains("other 20", pot.ToString(), StringComparison.Ordinal);
    }

    // What a formula says boils off is gone before the pot is looked at.
    [Fact]
    public void AFormulaThatHasBoiledIsStronger()
    {
        FormulaLine[] lines = [FormulaLine.Of(s_sugar, 600), FormulaLine.Of(s_water, 200)];
        SyrupPot fresh = SyrupPot.Of(Formula.Of("syrup", lines)), boiled = SyrupPot.Of(Formula.Of("syrup", lines, 100));
        Assert.Equal(fresh.SolidsGrams, boiled.SolidsGrams, 1e-9);
        Assert.Equal(fresh.WaterGrams - 100, boiled.WaterGrams, 1e-9);
        Assert.Equal(700, boiled.Grams, 1e-9);
        Assert.Equal(fresh.CookTo(116, s_sea).FinalGrams.Likely, boiled.CookTo(116, s_sea).FinalGrams.Likely, 1e-9);
    }

    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 100)]
    public void AFormulaKeepsItsMass(Formula formula)
    {
        SyrupPot pot = SyrupPot.Of(formula);
        Assert.Equal(formula.TotalGrams, pot.Grams, 1e-12 * formula.PutInGrams);
        Assert.Equal(formula.TotalGrams, pot.OtherGrams + pot.SolidsGrams + pot.WaterGrams, 1e-12 * formula.PutInGrams);
        Assert.InRange(pot.OtherGrams, 0, formula.TotalGrams);
    }

    // Of 65 % sucrose at 20 °C the PTB's polynomial has 1.31656 g/mL (C440 at 1.31905 × 0.9982 the same to 3e-4).
    [Fact]
    public void VolumeIsMassOverDensity()
    {
        PotEnd end = SyrupPot.Of(SugarSolution.OfSucrose(0.5), 1300).CookToSolids(0.65);
        Assert.Equal(1000, end.FinalGrams.Likely, 1e-9);
        Assert.Equal(1000 / 1.31656, end.Millilitres(), 0.01);
        Assert.Equal(1000 / 1.26825, end.Millilitres(100), 0.01);
        Assert.True(end.Millilitres(100) > end.Millilitres(20));
    }

    // By hand: 86.52 % boils at 116 °C by the equation; 600/0.8652 = 693.5. From there on it is arithmetic.
    [Fact]
    public void WorkedNumbers()
    {
        PotEnd end = Fennmarsh().CookTo(116, s_sea);
        Assert.Equal(600 / SucroseSolution.FractionBoilingAt(116, 101.325), end.FinalGrams.Likely, 1e-6);
        Assert.Equal("693.5 g, 106.5 g of water gone", end.ToString());
        Assert.Equal(693.5 / 800, end.Yield, 1e-4);
        Assert.Equal(50 / 106.5, end.Progress(750), 1e-3);
        Assert.Equal(63.3, Fennmarsh().DissolvedAtCelsius!.Value, 0.05);
        Assert.Equal("800 g: solids 600, water 200", Fennmarsh().ToString());
    }

    [Fact]
    public void PureWaterIsNoSyrup()
    {
        SyrupPot pot = SyrupPot.Of(SugarSolution.PureWater, 500);
        Assert.Throws<InvalidOperationException>(() => pot.CookTo(100, s_sea));
        Assert.Throws<InvalidOperationException>(() => pot.CookToSolids(0.5));
        Assert.Equal(0, pot.DissolvedAtCelsius);
    }

    // The documentation says so of a stage too, and of CookingStage.At, which answers the printed temperatures.
    [Fact]
    public void PureWaterHasNoStage()
    {
        Assert.Throws<InvalidOperationException>(() => SyrupPot.Of(SugarSolution.PureWater, 500).CookTo(CookingStage.Get("soft ball"), s_sea));
        Assert.Throws<InvalidOperationException>(() => CookingStage.Get("soft ball").At(s_sea, SugarSolution.PureWater));
    }

    [Fact]
    public void NoSyrupBoilsWhereWaterDoes()
    {
        PotEnd? end = null;
        try
        {
            end = Fennmarsh().CookTo(s_sea.WaterBoilsCelsius, s_sea);
        }
        catch (ArgumentOutOfRangeException refused)
        {
            Assert.Equal("celsius", refused.ParamName);
        }
        Assert.True(end is null || double.IsFinite(end.FinalGrams.Likely));
    }

    // As dry as it gets, for any amounts: the mass of the solids is in the range that the documentation gives.
    [Fact]
    public void APotMayBeWeighedDry()
    {
        SyrupPot pot = SyrupPot.Of(Formula.Of("fudge", [FormulaLine.Of(s_sugar, 365.82), FormulaLine.Of(s_cream, 177.5)]));
        Assert.Equal(1, pot.Weighing(pot.OtherGrams + pot.SolidsGrams).Solution.Solids, 1e-12);
    }

    [Fact]
    public void AtItsEndThereIsNoProgress() => Assert.All(Enumerable.Range(1, 999), permille =>
    {
        SyrupPot pot = SyrupPot.Of(SugarSolution.OfSucrose(permille / 1000.0), 777.7);
        Assert.Throws<InvalidOperationException>(() => pot.CookToSolids(pot.Solution.Solids).Progress(700));
    });

    // Saccharides of 4000 g/mol, a maltodextrin of some 4.5 DE, at a strength and a temperature that are nowhere near an end.
    [Fact]
    public void AMaltodextrinMayBeCooked()
    {
        SugarSolution solution = SugarSolution.FromGrams(new Dictionary<Constituent, double> { [Constituent.HigherSaccharides] = 4, [Constituent.Water] = 6 }, 4000);
        Assert.Equal(400, SyrupPot.Of(solution, 1000).CookTo(102, s_sea).Pot.SolidsGrams, 1e-9);
    }

    // Every page of the pot sends the reader to it; what it must say is tested with the stages.
    [Fact]
    public void TheCautionIsAtHand() => Assert.Contains("Adding water or cream to hot syrup", CookingStage.Caution, StringComparison.Ordinal);

    // Where the strongest syrup of these solids boils; null where by either model it boils nowhere, which is a failure of its own (see AMaltodextrinMayBeCooked).
    private static double? MaximumCelsius(SugarSolution solution, AirPressure pressure)
    {
        try
        {
            solution.MaximumBoilingCelsius(pressure, BoilingModel.StarzakMathlouthi);
            return solution.MaximumBoilingCelsius(pressure);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static SyrupPot Fennmarsh() => SyrupPot.Of(SugarSolution.OfSucrose(0.75), 800);

    private static Ingredient Named(string name) => IngredientTable.BuiltIn.Get(name);
}
