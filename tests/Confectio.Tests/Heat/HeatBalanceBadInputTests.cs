using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>Bad numbers and bad text about heat: refused at once, by name, value and range, the same in every culture.</summary>
public sealed class HeatBalanceBadInputTests
{
    private static readonly Ingredient s_water = IngredientTable.BuiltIn.Get("water"), s_lard = IngredientTable.BuiltIn.Get("lard");

    private static readonly Formula s_formula = Formula.Of("Fennmarsh", [FormulaLine.Of(s_water, 100)]);

    private static readonly HeatBalance s_balance = HeatBalance.Of([HeatLine.Of(s_water, 100).At(50)]);

    private static readonly LumpedBody s_body = LumpedBody.FromRate(0.1, 3, 60);

    // The call; its parameter; the range that is stated; a number just outside at either end.
    public static TheoryData<string, Action<double>, string, double, double> Ranges => new()
    {
        { "properties", value => ThermalProperties.Of(s_lard, value), "celsius", -40, 150 },
        { "properties of a composition", value => ThermalProperties.Of(s_water.Composition, value), "celsius", 0, 150 },
        { "properties of a formula", value => ThermalProperties.Of(s_formula, value), "celsius", 0, 150 },
        { "equation", value => ThermalEquation.Get("ice", ThermalQuantity.SpecificHeat).At(value), "celsius", -40, 0 },
        { "siebel", value => PrintedHeatEquations.SiebelSpecificHeat(value, 0), "water", 0, 1 },
        { "earle", value => PrintedHeatEquations.EarleSpecificHeat(value), "water", 0, 1 },
        { "earle frozen", value => PrintedHeatEquations.EarleFrozenSpecificHeat(value), "water", 0, 1 },
        { "earle freezing", value => PrintedHeatEquations.EarleFreezingHeat(value), "water", 0, 1 },
        { "earle k", value => PrintedHeatEquations.EarleConductivity(value), "water", 0, 1 },
        { "earle frozen k", value => PrintedHeatEquations.EarleFrozenConductivity(value), "water", 0, 1 },
        { "solids", value => SolidFatCurve.MilkFat.PercentAt(value), "celsius", -40, 150 },
        { "melting from", value => SolidFatCurve.MilkFat.MeltingKilojoulesPerKilogram(value, 20), "fromCelsius", -40, 150 },
        { "melting to", value => SolidFatCurve.MilkFat.MeltingKilojoulesPerKilogram(5, value), "toCelsius", -40, 150 },
        { "own curve t", value => SolidFatCurve.Of("own", [new(-40, new Spread(50, 50, 50)), new(value == -40 ? -39 : value, default)], default), "percentByCelsius", -40, 150 },
        { "grams", value => HeatLine.Of(s_water, value).At(20), "grams", 0, 1e12 },
        { "celsius", value => HeatLine.Of(s_water, 100).At(value), "celsius", 0, 150 },
        { "celsius of a formula", value => HeatLine.Of(s_formula).At(value), "celsius", 0, 150 },
        { "at", value => HeatLine.Of(s_lard, 100).At(20).At(value), "celsius", -40, 150 },
        { "to", value => HeatLine.Of(s_lard, 100).At(20).HeatTo(value), "celsius", -40, 150 },
        { "ice grams", value => HeatLine.Ice(value).At(0), "grams", 0, 1e12 },
        { "ice", value => HeatLine.Ice(100).At(value), "celsius", -40, 0 },
        { "bowl grams", value => HeatLine.Bowl(VesselMaterial.Of("bowl", 0.5), value).At(20), "grams", 0, 1e12 },
        { "bowl", value => HeatLine.Bowl(VesselMaterial.Of("bowl", 0.5), 100).At(value), "celsius", -40, 150 },
        { "steel grams", value => HeatLine.Bowl(VesselMaterial.StainlessSteel, value).At(20), "grams", 0, 1e12 },
        { "steel", value => HeatLine.Bowl(VesselMaterial.StainlessSteel, 100).At(value), "celsius", -40, 150 },
        { "loss", value => HeatBalance.Of([HeatLine.Of(s_water, 100).At(50)], value), "lossKilojoules", -1e12, 1e12 },
        { "kilojoules", value => s_balance.KilojoulesTo(value), "celsius", 0, 150 },
        { "needed", value => s_balance.NeededCelsius(0, value), "targetCelsius", 0, 150 },
        { "ice to add", value => s_balance.IceToAdd(value), "targetCelsius", 0, 150 },
        { "ice to add t", value => s_balance.IceToAdd(20, value), "iceCelsius", -40, 0 },
        { "water to add", value => s_balance.WaterToAdd(value, 10), "targetCelsius", 0, 150 },
        { "water to add t", value => s_balance.WaterToAdd(20, value), "waterCelsius", 0, 100 },
        { "rate", value => LumpedBody.FromRate(value, 3, 60), "ratePerMinute", 1e-9, 1e6 },
        { "start", value => LumpedBody.FromRate(0.1, value, 60), "startCelsius", -200, 1000 },
        { "surroundings", value => LumpedBody.FromRate(0.1, 3, value), "surroundingsCelsius", -200, 1000 },
        { "h", value => LumpedBody.FromGeometry(value, 1, 1, 1, 4, 3, 60), "wattsPerSquareMetreKelvin", 1e-3, 1e6 },
        { "A", value => LumpedBody.FromGeometry(100, value, 1, 1, 4, 3, 60), "squareMetres", 1e-6, 1e4 },
        { "V", value => LumpedBody.FromGeometry(100, 1, value, 1, 4, 3, 60), "litres", 1e-6, 1e6 },
        { "rho", value => LumpedBody.FromGeometry(100, 1, 1, value, 4, 3, 60), "gramsPerMillilitre", 0.01, 25 },
        { "c", value => LumpedBody.FromGeometry(100, 1, 1, 1, value, 3, 60), "specificHeat", 0.01, 20 },
        { "geometry start", value => LumpedBody.FromGeometry(100, 1, 1, 1, 4, value, 60), "startCelsius", -200, 1000 },
        { "geometry around", value => LumpedBody.FromGeometry(100, 1, 1, 1, 4, 3, value), "surroundingsCelsius", -200, 1000 },
        { "biot h", value => LumpedBody.Biot(value, 1, 1, 0.5), "wattsPerSquareMetreKelvin", 0, 1e6 },
        { "biot A", value => LumpedBody.Biot(100, value, 1, 0.5), "squareMetres", 1e-6, 1e4 },
        { "biot V", value => LumpedBody.Biot(100, 1, value, 0.5), "litres", 0, 1e6 },
        { "biot k", value => LumpedBody.Biot(100, 1, 1, value), "conductivity", 1e-3, 1000 },
        { "minutes", value => LumpedBody.FromRate(1e-6, 3, 60).CelsiusAfter(value), "minutes", -1e6, 1e6 },
        { "time to", value => s_body.MinutesTo(value), "celsius", -273.15, 1e6 },
    };

    [Theory]
    [MemberData(nameof(Ranges))]
    public void ANumberOutsideItsRangeIsRefusedByNameValueAndRange(string call, Action<double> action, string parameter, double low, double high)
    {
        Assert.NotEmpty(call);
        double[] outside = [Math.BitDecrement(low), Math.BitIncrement(high), low - 1, high + 1, double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e300];
        Assert.All(outside, value =>
        {
            ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(parameter, () => action(value));
            Assert.Equal(value, thrown.ActualValue);
            string message = string.Create(CultureInfo.InvariantCulture, $"{parameter} was {value:R}; it must be from {low:R} to {high:R}.");
            Assert.StartsWith(message, thrown.Message, StringComparison.Ordinal);
        });
        // The ends themselves are in the range.
        action(low);
        action(high);
    }

    [Fact]
    public void TwoReadingsAreRefusedByName()
    {
        foreach (double bad in (ReadOnlySpan<double>)[double.NaN, double.PositiveInfinity, -1e9, 1e9])
        {
            Assert.Throws<ArgumentOutOfRangeException>("minutes", () => new ThermometerReading { Minutes = bad });
            Assert.Throws<ArgumentOutOfRangeException>("celsius", () => new ThermometerReading { Celsius = bad });
            Assert.Throws<ArgumentOutOfRangeException>("surroundingsCelsius", () => LumpedBody.FromReadings([new(0, 60), new(5, 40)], bad));
            Assert.Throws<ArgumentOutOfRangeException>("surroundingsCelsius", () => LumpedBody.FromRate(0.1, new ThermometerReading { Celsius = 60 }, bad));
            Assert.Throws<ArgumentOutOfRangeException>("surroundingsCelsius", () => LumpedBody.FromReadings([], bad));
        }
    }

    [Fact]
    public void ABowlHasASpecificHeat()
    {
        foreach (double bad in (ReadOnlySpan<double>)[0, -1, 5.001, double.NaN, double.PositiveInfinity])
            Assert.Contains("from 0.05 to 5", Assert.Throws<ArgumentOutOfRangeException>("specificHeat", () => VesselMaterial.Of("bowl", bad)).Message, StringComparison.Ordinal);
        // A mass of 800 g or a temperature of 20 °C where the specific heat belongs: three numbers side by side took both in silence.
        Assert.Throws<ArgumentOutOfRangeException>("specificHeat", () => VesselMaterial.Of("bowl", 20));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => HeatLine.Bowl(VesselMaterial.Of("bowl", 0.5), 20).At(800));
        Assert.Equal("bowl of enamelled steel", HeatLine.Bowl(VesselMaterial.Of(" enamelled steel ", 0.5), 800).At(20).Name);
        Assert.Throws<ArgumentException>("name", () => VesselMaterial.Of(" ", 0.5));
    }

    // A tin that was called a bowl, whatever it was.
    [Fact]
    public void ABodyThatIsNoBowlHasItsOwnNameAndTheHeatOfABowl()
    {
        HeatMass tin = HeatLine.Body(" tin ", VesselMaterial.StainlessSteel, 300);
        Assert.Equal("300 g tin", tin.ToString());
        Assert.Equal("300 g tin at 20 °C", tin.At(20).ToString());
        Assert.Equal("300 g tin at 30 °C", tin.At(20).At(30).ToString());
        Assert.Equal(HeatLine.Bowl(VesselMaterial.StainlessSteel, 300).At(20).HeatTo(60), tin.At(20).HeatTo(60));
        Assert.Throws<ArgumentException>("name", () => HeatLine.Body(" ", VesselMaterial.Glass, 300));
        Assert.Throws<ArgumentNullException>("name", () => HeatLine.Body(null!, VesselMaterial.Glass, 300));
        Assert.Throws<ArgumentNullException>("material", () => HeatLine.Body("tin", null!, 300));
        Assert.Contains("-1", Assert.Throws<ArgumentOutOfRangeException>("grams", () => HeatLine.Body("tin", VesselMaterial.Glass, -1)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => HeatLine.Body("tin", VesselMaterial.Glass, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => HeatLine.Body("tin", VesselMaterial.Glass, 20).At(800));
    }

    [Fact]
    public void FatAndWaterAreNoMoreThanAll()
    {
        Assert.Throws<ArgumentOutOfRangeException>("fat", () => PrintedHeatEquations.SiebelSpecificHeat(0.6, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>("fat", () => PrintedHeatEquations.SiebelSpecificHeat(0.6, double.NaN));
        Assert.Equal(4.1868 * 0.7 + 1.67472 * 0.3, PrintedHeatEquations.SiebelSpecificHeat(0.7, 0.3), 1e-12);
    }

    [Fact]
    public void ADefinedValueIsAskedFor()
    {
        Assert.Throws<ArgumentOutOfRangeException>("water", () => ThermalProperties.Of(s_water, 20, (WaterHeat)7));
        Assert.Throws<ArgumentOutOfRangeException>("sugar", () => ThermalProperties.Of(s_water, 20, sugar: (SugarState)7));
        Assert.Throws<ArgumentOutOfRangeException>("sugar", () => HeatLine.Of(s_water, 1, (SugarState)(-1)).At(20));
        Assert.Throws<ArgumentOutOfRangeException>("water", () => HeatLine.Of(s_water, 1).At(20).HeatTo(30, (WaterHeat)7));
        Assert.Throws<ArgumentOutOfRangeException>("water", () => HeatBalance.Of([HeatLine.Of(s_water, 1).At(20)], water: (WaterHeat)7));
        Assert.Throws<ArgumentOutOfRangeException>("sugar", () => HeatBalance.Of([HeatLine.Of(s_water, 1).At(20)], sugar: (SugarDissolves)7));
        Assert.Throws<ArgumentOutOfRangeException>("quantity", () => ThermalEquation.Get("fat", (ThermalQuantity)7));
    }

    [Fact]
    public void NullIsRefusedByName()
    {
        Assert.Throws<ArgumentNullException>("composition", () => ThermalProperties.Of((Composition)null!, 20));
        Assert.Throws<ArgumentNullException>("ingredient", () => ThermalProperties.Of((Ingredient)null!, 20));
        Assert.Throws<ArgumentNullException>("formula", () => ThermalProperties.Of((Formula)null!, 20));
        Assert.Throws<ArgumentNullException>("ingredient", () => HeatLine.Of((Ingredient)null!, 1).At(20));
        Assert.Throws<ArgumentNullException>("formula", () => HeatLine.Of((Formula)null!).At(20));
        Assert.Throws<ArgumentNullException>("material", () => HeatLine.Bowl(null!, 1).At(20));
        Assert.Throws<ArgumentNullException>("curve", () => HeatLine.Of(s_lard, 1).At(20).WithFat(null!));
        Assert.Throws<ArgumentNullException>("lines", () => HeatBalance.Of(null!));
        Assert.Throws<ArgumentNullException>("lines", () => HeatBalance.Of([null!]));
        Assert.Throws<ArgumentNullException>("key", () => SolidFatCurve.Get(null!));
        Assert.Throws<ArgumentNullException>("key", () => SolidFatCurve.Of(null!, [], default));
        Assert.Throws<ArgumentNullException>("percentByCelsius", () => SolidFatCurve.Of("own", null!, default));
        Assert.Throws<ArgumentNullException>("key", () => VesselMaterial.Get(null!));
        Assert.Throws<ArgumentNullException>("component", () => ThermalEquation.Get(null!, ThermalQuantity.Density));
        Assert.Throws<ArgumentNullException>("ingredient", () => IngredientFat.TryGet(null!, out _));
    }

    [Fact]
    public void WhatThereIsNotIsNamedAndWhatThereIsListed()
    {
        Assert.Contains("milk-fat, milk-fat-summer", Assert.Throws<ArgumentException>("key", () => SolidFatCurve.Get("tallow")).Message, StringComparison.Ordinal);
        Assert.Contains("stainless-steel, glass, copper", Assert.Throws<ArgumentException>("key", () => VesselMaterial.Get("wood")).Message, StringComparison.Ordinal);
        Assert.Contains("carbohydrate", Assert.Throws<ArgumentException>("component", () => ThermalEquation.Get("stone", ThermalQuantity.Density)).Message, StringComparison.Ordinal);
        Assert.False(SolidFatCurve.TryGet("tallow", out _));
    }

    [Fact]
    public void ABalanceHasLinesThatWeighSomething()
    {
        Assert.Contains("at least one", Assert.Throws<ArgumentException>("lines", () => HeatBalance.Of([])).Message, StringComparison.Ordinal);
        Assert.Contains("1000", Assert.Throws<ArgumentException>("lines", () => HeatBalance.Of(Enumerable.Repeat(HeatLine.Of(s_water, 1).At(20), 1001))).Message, StringComparison.Ordinal);
        Assert.Contains("above 0 g", Assert.Throws<ArgumentException>("lines", () => HeatBalance.Of([HeatLine.Of(s_water, 0).At(20)])).Message, StringComparison.Ordinal);
        // One that weighs nothing among others does no harm, but no temperature of it helps.
        HeatBalance balance = HeatBalance.Of([HeatLine.Of(s_water, 0).At(90), HeatLine.Of(s_water, 10).At(20)]);
        Assert.Equal(20, balance.FinalTemperature.Value!.Value.Likely, 1e-9);
        Assert.StartsWith("there is none of", balance.NeededCelsius(0, 30).Reason, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("line", () => balance.NeededCelsius(2, 30));
        Assert.Throws<ArgumentOutOfRangeException>("line", () => balance.NeededCelsius(-1, 30));
    }

    [Fact]
    public void ACurveMeltsAsItWarms()
    {
        static ArgumentException Refused(params KeyValuePair<double, Spread>[] points) =>
            Assert.Throws<ArgumentException>("percentByCelsius", () => SolidFatCurve.Of("own", points, new Spread(70, 80, 90)));
        Assert.Contains("from 2 to 1000", Refused(new KeyValuePair<double, Spread>(5, new Spread(50, 50, 50))).Message, StringComparison.Ordinal);
        Assert.Contains("more solid", Refused(new(5, new Spread(50, 50, 50)), new(10, new Spread(50, 50, 51))).Message, StringComparison.Ordinal);
        Assert.Contains("not above 5", Refused(new(5, new Spread(50, 50, 50)), new(5, new Spread(40, 40, 40))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("percentByCelsius", () => SolidFatCurve.Of("own", [new(5, new Spread(50, 50, 101)), new(10, default)], default));
        Assert.Throws<ArgumentOutOfRangeException>("latentHeat", () => SolidFatCurve.Of("own", [new(5, default), new(10, default)], new Spread(0, 100, 501)));
        Assert.Throws<ArgumentException>("key", () => SolidFatCurve.Of(" ", [new(5, default), new(10, default)], default));
        Assert.Contains("more than 1000", Refused([.. Enumerable.Range(0, 1001).Select(i => new KeyValuePair<double, Spread>(i / 10.0, default))]).Message, StringComparison.Ordinal);
    }

    // So long before the start the temperature is beyond any number.
    [Fact]
    public void ATemperatureWithoutANumberIsRefused() => Assert.Throws<ArgumentOutOfRangeException>("minutes", () => s_body.CelsiusAfter(-1e6));
}
