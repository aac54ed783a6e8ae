using Confectio.Cooking;
using Confectio.Eggs;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Textures;
using Xunit;

namespace Confectio.Tests.Eggs;

/// <summary>Meringues: what the trade prints, the strength of the sugar in the white's water, acid, foam and syrup.</summary>
public sealed class MeringueTests
{
    private static readonly MeasuringSystem s_us = MeasuringSystem.UsCustomary;

    // McGee 2004, box Sugar in Meringues, calls 1 : 1 and 2 : 1 solutions of 50 and 67 %; fresh white has 87.57 % water (USDA NDB 01124): 53.31 and 69.55.
    [Theory]
    [InlineData(100, 53.31)]
    [InlineData(200, 69.55)]
    public void TheWhiteIsNotAllWater(double sugar, double percent)
    {
        MeringueBase meringue = MeringueBase.Of(Forms.FreshWhite, 100, sugar);
        Assert.Equal(percent, meringue.SucrosePercent, 0.005);
        Assert.Equal(100 * sugar / (sugar + 87.57), meringue.SucrosePercent, 1e-9);
        Assert.Equal(meringue.SucrosePercent, 100 * meringue.Solution.Solids, 1e-9);
        Assert.Equal(sugar / 100, meringue.SugarPerWhite, 1e-12);
    }

    // Vavrinecz (1962): w = 64.447 + 0.08222 t + 1.6169e-3 t² − 1.558e-6 t³ − 4.63e-8 t⁴; it passes 69.55 % at 37 °C. McGee: granulated sugar will not fully dissolve at 2 : 1.
    [Fact]
    public void TwoToOneDissolvesOnlyWarm()
    {
        MeringueBase hard = MeringueBase.Of(Forms.FreshWhite, 100, 200);
        double t = hard.DissolvedAtCelsius!.Value, vavrinecz = 64.447 + 0.08222 * t + 1.6169e-3 * t * t - 1.558e-6 * Math.Pow(t, 3) - 4.63e-8 * Math.Pow(t, 4);
        Assert.Equal(100 * 200 / 287.57, vavrinecz, 1e-6);
        Assert.InRange(t, 36, 40);
        Assert.False(hard.CanDissolveAt(20));
        Assert.True(hard.CanDissolveAt(45));
        // At 20 °C water holds 66.72 %: 87.57·66.72/33.28 = 175.6 g dissolve.
        Assert.Equal(200 - 175.6, hard.UndissolvedGrams(20), 0.1);
        Assert.Equal(0, hard.UndissolvedGrams(45));
        MeringueBase soft = MeringueBase.Of(Forms.FreshWhite, 100, 100);
        Assert.Equal(0, soft.DissolvedAtCelsius);
        Assert.True(soft.CanDissolveAt(0));
        Assert.Null(MeringueBase.Of(Forms.FreshWhite, 100, 500).DissolvedAtCelsius); // 85 %; water at 100 °C holds 82.6
    }

    // USDA NDB 18373: 3.0 g a teaspoon. An eighth of one on the 33 g white of a large egg is 1.136 %; 1/4 tsp on 225 g is 0.33 %.
    [Theory]
    [InlineData(33, 0.375, 1.136, 0.125)]
    [InlineData(33, 0.1875, 0.568, 0.0625)]
    [InlineData(225, 0.75, 0.333, 0.25)]
    public void CreamOfTartar(double white, double acid, double percent, double teaspoons)
    {
        MeringueBase meringue = MeringueBase.Of(Forms.FreshWhite, white, white, acid);
        Assert.Equal(percent, meringue.AcidPercent, 5e-4);
        Assert.Equal(teaspoons, meringue.AcidTeaspoons(s_us).Likely, 1e-9);
        Assert.True(meringue.AcidTeaspoons(s_us).High > teaspoons);
    }

    // Identities: density ρ/v, overrun 100(v − 1), air 1 − 1/v; at 7 times 1.03 g/mL.
    [Fact]
    public void AFoamOfSevenTimesItsLiquid()
    {
        Foam foam = Foam.Of(1.03).ToTimes(7);
        Assert.Equal(0.14714, foam.GramsPerMillilitre, 5e-6);
        Assert.Equal(600, foam.OverrunPercent, 1e-9);
        Assert.Equal(0.8571, foam.AirFraction, 5e-5);
        Foam weighed = Foam.Of(1.03).ToDensity(1.03 / 7);
        Assert.Equal(7, weighed.Times, 1e-12);
        // overrun = φ/(1 − φ)·100 and (ρ_liquid/ρ_foam − 1)·100
        Assert.Equal(weighed.OverrunPercent, 100 * weighed.AirFraction / (1 - weighed.AirFraction), 1e-9);
        Assert.Equal(weighed.OverrunPercent, 100 * (weighed.AirFreeGramsPerMillilitre / weighed.GramsPerMillilitre - 1), 1e-9);
        Assert.Equal(0, Foam.Of(1.03).ToTimes(1).AirFraction);
    }

    // McKee: white whips to 6 to 8 times its volume: overrun 500 to 700 %. White weighs 1.027 (USDA) to 1.030 g/mL (Choi and Okos).
    [Fact]
    public void TheMostFoamOfAWhite()
    {
        MeringueBase meringue = MeringueBase.Of(Forms.FreshWhite, 100, 100);
        Assert.Equal(600 / 1.0285, meringue.FoamMillilitres.Low, 1.5);
        Assert.Equal(700 / 1.0285, meringue.FoamMillilitres.Likely, 1.5);
        Assert.Equal(800 / 1.0285, meringue.FoamMillilitres.High, 1.5);
        Assert.Equal(1.0285 / 6, meringue.WhiteFoam(6).GramsPerMillilitre, 5e-4);
        // 100 g are 100 g, whipped or not.
        Assert.Equal(100, meringue.FoamMillilitres.Likely * meringue.WhiteFoam(7).GramsPerMillilitre, 1e-9);
    }

    // A white that was made up from powder to the solids of fresh white is a fresh white to the sugar.
    [Fact]
    public void AMeringueOfPowderAndWater()
    {
        EggReplacement made = EggReplacement.Of(Forms.FreshWhite, 100, Forms.DriedWhite);
        MeringueBase powder = MeringueBase.Of(Forms.DriedWhite, made.IncomingGrams.Likely, 200, waterGrams: made.WaterGrams), fresh = MeringueBase.Of(Forms.FreshWhite, 100, 200);
        Assert.Equal(fresh.SucrosePercent, powder.SucrosePercent, 1e-9);
        Assert.Equal(2, powder.SugarPerWhite, 1e-9);
        Assert.Equal(fresh.FoamMillilitres.Likely, powder.FoamMillilitres.Likely, 1e-9);
        // Pasteurised white has more water: 200/(200 + 88.97) (USDA NDB 01172).
        Assert.Equal(100 * 200 / 288.97, MeringueBase.Of(Forms.PasteurisedWhite, 100, 200).SucrosePercent, 1e-9);
    }

    [Fact]
    public void TheSyrupOfAnItalianMeringueIsFromFirmSoftBallToFirmBall()
    {
        MeringueBase meringue = MeringueBase.Of(Forms.FreshWhite, 100, 200);
        PotTarget syrup = meringue.ItalianSyrup(60, AirPressure.SeaLevel);
        Assert.Equal(115, syrup.Stage.Low.Celsius, 1e-6);
        Assert.Equal(121, syrup.Stage.High.Celsius, 1e-6);
        Assert.All([syrup.Low!, syrup.High!], end =>
        {
            Assert.Equal(200, end.Pot.SolidsGrams, 1e-9);
            Assert.Equal(260, end.FinalGrams.Likely + end.WaterToBoilOffGrams, 1e-9);
            // Sugar and the water that is left, in the water of the white.
            Assert.Equal(200 / (end.FinalGrams.Likely + 87.57), meringue.WithSyrup(end).Solids, 1e-9);
        });
        Assert.True(syrup.Low!.FinalGrams.Likely > syrup.High!.FinalGrams.Likely);
        // The same strength on a mountain, at lower temperatures; the pot does not change.
        PotTarget high = meringue.ItalianSyrup(60, AirPressure.FromAltitudeMetres(1600));
        Assert.True(high.Stage.Low.Celsius < 111);
        Assert.Equal(syrup.Low.FinalGrams.Likely, high.Low!.FinalGrams.Likely, 1e-6);
        // A stage of the cook's own: the pot of the room of sugars.
        PotTarget firm = meringue.ItalianSyrup(60, AirPressure.SeaLevel, CookingStage.Get("firm-ball"));
        Assert.Equal(CookingStage.Get("firm-ball").LowCelsius, firm.Stage.Low.Celsius, 1e-6);
        Assert.Throws<InvalidOperationException>(() => MeringueBase.Of(Forms.FreshWhite, 100, 0).ItalianSyrup(60, AirPressure.SeaLevel));
    }

    [Fact]
    public void ConflictingFiguresAreKept()
    {
        // 45 °C and 57 to 60 °C are textbooks'; 160 °F is guidance to households.
        IReadOnlyList<MeringueFigure> swiss = Meringue.Swiss.FiguresOf(MeringueQuantity.MixCelsius);
        Assert.Equal([45, 57, 71.1], swiss.Select(figure => figure.Low));
        Assert.Equal(160, 32 + 1.8 * swiss[2].Low, 0.05);
        Assert.Equal("fsis-consumer", swiss[2].Provenance.Source.Key);
        Assert.All(swiss, figure => Assert.Contains("conflict", figure.Provenance.Note, StringComparison.Ordinal));
        Assert.All(Meringue.All, kind => Assert.Equal((1.0, 2.0), (kind.FiguresOf(MeringueQuantity.SugarPerWhite)[0].Low, kind.FiguresOf(MeringueQuantity.SugarPerWhite)[0].High)));
        Assert.Equal((115.0, 121.0), (Meringue.Italian.FiguresOf(MeringueQuantity.SyrupCelsius)[0].Low, Meringue.Italian.FiguresOf(MeringueQuantity.SyrupCelsius)[0].High));
        Assert.Empty(Meringue.French.FiguresOf(MeringueQuantity.SyrupCelsius));
        Assert.Equal("mcgee-2004", Meringue.French.FiguresOf(MeringueQuantity.SugarPerWhite)[0].Provenance.Source.Key);
        Assert.All(Meringue.All.SelectMany(kind => kind.FiguresOf(MeringueQuantity.FoamDensity)), figure => Assert.Equal(Evidence.FromMemory, figure.Provenance.Evidence));
        Assert.Equal(3, Meringue.All.Count);
    }

    // The doses of the table are spoons of 3.0 g (USDA) on 225 g, and on the white of a large egg.
    [Fact]
    public void TheDosesOfAcidAreSpoons()
    {
        MeringueFigure figure = Meringue.French.FiguresOf(MeringueQuantity.AcidPercent)[0];
        Assert.Equal(100 * 0.75 / 225, figure.Low, 0.005);
        Assert.Equal(100 * 0.375 / 33, figure.High, 0.005);
    }

    // The measures that whites and sugar are taken in: exact (NIST Handbook 44; 21 CFR 101.9(b)(5)(viii); 4.54609 L), and 20 and 15 mL tablespoons of four and three teaspoons.
    [Fact]
    public void TheMeasuresOfTheKitchen()
    {
        Assert.Equal(236.5882365, s_us.MillilitresPer(KitchenUnit.Cup), 1e-9);
        Assert.Equal(14.78676478125, s_us.MillilitresPer(KitchenUnit.Tablespoon), 1e-9);
        Assert.Equal(4.92892159375, s_us.MillilitresPer(KitchenUnit.Teaspoon), 1e-9);
        Assert.Equal([240, 15, 5], ((KitchenUnit[])[KitchenUnit.Cup, KitchenUnit.Tablespoon, KitchenUnit.Teaspoon]).Select(MeasuringSystem.UsLabelling.MillilitresPer));
        Assert.Equal(4, MeasuringSystem.Australian.MillilitresPer(KitchenUnit.Tablespoon) / MeasuringSystem.Australian.MillilitresPer(KitchenUnit.Teaspoon));
        Assert.Equal(3, MeasuringSystem.Metric.MillilitresPer(KitchenUnit.Tablespoon) / MeasuringSystem.Metric.MillilitresPer(KitchenUnit.Teaspoon));
        Assert.Equal(284.130625, MeasuringSystem.Imperial.MillilitresPer(KitchenUnit.Cup), 1e-9);
    }
}
