using Confectio.Ingredients;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Densities, scales, refraction and boiling points against published tables; the files and their sources stand in Oracles/sugar-solutions.</summary>
public sealed class SolutionTests
{
    // C440 (Bates 1942) is older than the polynomial: 0.0006 in specific gravity is the known difference of the two, at 87 °Bx.
    [Fact]
    public void DensityIsThatOfTable114() => Assert.All(SugarOracles.C440Table114, row =>
        Assert.Equal(row.SpecificGravity, Brix.FromPercent(row.Percent).ApparentSpecificGravity, 6.2e-4));

    [Theory] // the PTB polynomial as published, beside the CRC Handbook (102nd ed. 2021)
    [InlineData(0.10, 20, 1.0381, 1e-4)]
    [InlineData(0.30, 20, 1.1270, 1e-4)]
    [InlineData(0.50, 20, 1.2295, 2e-4)]
    [InlineData(0.60, 20, 1.2864, 2.5e-4)]
    [InlineData(0.70, 20, 1.3472, 3.5e-4)]
    [InlineData(0.80, 20, 1.4117, 6e-4)]
    public void DensityIsThatOfTheHandbook(double fraction, double celsius, double published, double tolerance) =>
        Assert.Equal(published, SucroseSolution.GramsPerMillilitre(fraction, celsius), tolerance);

    [Theory] // Mohos 2010, Table A2.1
    [InlineData(10, 5.57, 0.01)]
    [InlineData(15, 8.34, 0.01)]
    [InlineData(60, 32.49, 0.02)]
    [InlineData(65, 35.04, 0.03)]
    [InlineData(80, 42.47, 0.05)]
    [InlineData(85, 44.86, 0.05)]
    public void BaumeIsThatOfTheHandbook(double percent, double published, double tolerance) =>
        Assert.Equal(published, Brix.FromPercent(percent).Baume, tolerance);

    [Theory] // CRC Handbook, 102nd ed. 2021, Concentrative properties of aqueous solutions
    [InlineData(Constituent.Glucose, 0.50, 1.2235)]
    [InlineData(Constituent.Fructose, 0.40, 1.1769)]
    [InlineData(Constituent.Maltose, 0.50, 1.2304)]
    [InlineData(Constituent.Glycerol, 0.60, 1.1530)]
    public void OtherSolutesAreAsDenseAsInTheHandbook(Constituent solute, double fraction, double published) =>
        Assert.Equal(published, Of(solute, fraction).GramsPerMillilitre(20), 5e-4);

    // Official rows have five decimals: 2e-5 is two units of the last. From 86 they have four and are secondary.
    [Fact]
    public void RefractionIsThatOfIcumsa1974() => Assert.All(SugarOracles.Icumsa1974, row =>
        Assert.Equal(row.RefractiveIndex, Brix.FromPercent(row.Percent).RefractiveIndex, row.Official ? 2e-5 : 2e-4));

    // GNU Units gives the closed form with water at 100 °C exactly; the equation itself is solved here: 0.25 K apart at 95 %.
    [Theory]
    [InlineData(0.20, 101.325, 0.393, 0.02)]
    [InlineData(0.40, 101.325, 1.146, 0.05)]
    [InlineData(0.60, 101.325, 2.94, 0.1)]
    [InlineData(0.70, 101.325, 4.99, 0.15)]
    [InlineData(0.80, 101.325, 9.46, 0.3)]
    [InlineData(0.85, 101.325, 14.0, 0.4)]
    [InlineData(0.90, 101.325, 22.4, 0.8)]
    [InlineData(0.95, 101.325, 39.4, 2.5)]
    [InlineData(0.60, 20, 2.34, 0.1)]
    [InlineData(0.85, 84.307, 13.67, 0.4)]
    public void ElevationIsThatOfStarzakAndPeacock(double fraction, double kilopascals, double expected, double tolerance) =>
        Assert.Equal(expected, SugarSolution.OfSucrose(fraction).BoilingPointElevation(AirPressure.FromKilopascals(kilopascals)), tolerance);

    [Theory] // temperature to strength to temperature; the solver stops at 1e-11 of the temperature
    [InlineData(101.325)]
    [InlineData(60)]
    [InlineData(5)]
    public void TheBoilingPointComesBack(double kilopascals)
    {
        for (double fraction = 0.01; fraction <= 0.98; fraction += 0.01)
        {
            double celsius = SucroseSolution.BoilingCelsius(fraction, kilopascals);
            Assert.Equal(fraction, SucroseSolution.FractionBoilingAt(celsius, kilopascals), 1e-8);
            double activity = SucroseSolution.WaterActivity(fraction, celsius);
            Assert.Equal(kilopascals / SaturatedWater.PressureKilopascals(celsius), activity, 1e-9);
        }
    }

    [Theory] // Colorado State University Extension: the rule of thumb, 2 °F per 1000 ft
    [InlineData(0, 234, 240)]
    [InlineData(5000, 224, 230)]
    [InlineData(7500, 219, 225)]
    public void TheRuleOfThumbIsThatOfTheExtensionService(double feet, double low, double high)
    {
        StageTarget target = CookingStage.Get("soft-ball").At(AirPressure.FromAltitudeFeet(feet));
        Assert.Equal(low, target.Low.RuleOfThumbFahrenheit, 1e-6);
        Assert.Equal(high, target.High.RuleOfThumbFahrenheit, 1e-6);
    }

    [Theory] // Cantera's habit: limits and order hold for every model
    [InlineData(BoilingModel.StarzakPeacock)]
    [InlineData(BoilingModel.StarzakMathlouthi)]
    public void TheBoilingPointRisesWithStrengthAndPressure(BoilingModel model)
    {
        double last = double.MinValue;
        for (int percent = 0; percent <= 98; percent++)
        {
            double celsius = SucroseSolution.BoilingCelsius(percent / 100.0, 84, model);
            Assert.True(celsius > last && celsius < SucroseSolution.BoilingCelsius(percent / 100.0, 85, model));
            last = celsius;
        }
        Assert.Equal(SaturatedWater.BoilingCelsius(84), SucroseSolution.BoilingCelsius(0, 84, model), 1e-9);
    }

    // Alone in the water a solute is its own mixture. A maltodextrin of 10 DE is far heavier than any sugar.
    [Fact]
    public void OneSoluteIsTheSameByRossAndByNorrish() => Assert.All([1000.0, 2269.0, 20000.0], molarMass =>
    {
        SugarSolution dextrin = SugarSolution.FromFractions(new Dictionary<Constituent, double> { [Constituent.HigherSaccharides] = 0.4, [Constituent.Water] = 0.6 }, molarMass);
        Assert.Equal(dextrin.WaterActivity(25, WaterActivityModel.Norrish), dextrin.WaterActivity(25, WaterActivityModel.Ross), 1e-14);
    });

    [Fact]
    public void FractionsThatDoNotAddUpAndStrengthsBeyondTheModelAreRefused()
    {
        Assert.Throws<ArgumentException>("fractions", () => SugarSolution.FromFractions(new Dictionary<Constituent, double> { [Constituent.Sucrose] = 0.5, [Constituent.Water] = 0.4 }));
        Assert.Throws<InvalidOperationException>(() => SugarSolution.OfSucrose(0.985).BoilingCelsius(AirPressure.SeaLevel));
        Assert.Throws<ArgumentOutOfRangeException>("fraction", () => SucroseSolution.BoilingCelsius(0.981, 101.325));
        Assert.Throws<ArgumentOutOfRangeException>("kilopascals", () => AirPressure.FromKilopascals(0));
        Assert.Throws<ArgumentOutOfRangeException>("kilopascals", () => AirPressure.FromKilopascals(1000));
        Assert.Throws<ArgumentOutOfRangeException>("metres", () => AirPressure.FromAltitudeMetres(9001));
        Assert.Throws<ArgumentOutOfRangeException>("lowCelsius", () => CookingStage.Of("warm", 80, 90));
    }

    private static SugarSolution Of(Constituent solute, double fraction) =>
        SugarSolution.FromFractions(new Dictionary<Constituent, double> { [solute] = fraction, [Constituent.Water] = 1 - fraction });
}
