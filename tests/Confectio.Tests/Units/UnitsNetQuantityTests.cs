using Confectio.Cakes;
using Confectio.Conversions;
using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sugars;
using Confectio.Uncertainty;
using Confectio.Units;
using FsCheck.Xunit;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Confectio.Tests.Units;

/// <summary>
/// Quantities there and back, exact to the last bit in the unit that is kept; from every other unit beside UnitsNet's own conversion, which is
/// the oracle. Three roundings on the way, to the base unit, from it and in the oracle's own product, are four units of the last place at most.
/// </summary>
public sealed class UnitsNetQuantityTests
{
    private const int Places = 4;

    private static readonly Ingredient s_sugar = IngredientTable.BuiltIn.Get("granulated sugar");

    private static readonly Conversion s_cup = Conversion.Of(s_sugar, MeasuringSystem.UsCustomary);

    [Property(MaxTest = 300)]
    public void ThereAndBackNothingChanges(uint seed)
    {
        double share = seed / (double)uint.MaxValue;
        CakeLength length = CakeLength.FromCentimetres(1000 * share);
        Assert.Equal(length, CakeLength.From(length.ToLength()));
        AirPressure pressure = AirPressure.FromKilopascals(50 + 60 * share);
        Assert.Equal(pressure, AirPressure.From(pressure.ToPressure()));
        ThermometerReading reading = new() { Minutes = -50 + 1000 * share, Celsius = -60 + 280 * share };
        Assert.Equal(reading, ThermometerReading.Of(reading.Time, reading.Temperature));
        Brix strength = Brix.FromPercent(95 * share);
        Temperature warm = Temperature.FromDegreesCelsius(20 + 60 * share);
        Assert.Equal(strength.Percent, Brix.FromDensity(strength.ToDensity(warm), warm).Percent, 1e-9);
        ConvertedMass mass = s_cup.ToMass(1000 * share);
        Assert.Equal(mass, s_cup.ToMass(Volume.FromMilliliters(1000 * share)));
        Assert.Equal(mass.Grams.Likely, mass.ToMass().Grams);
        ConvertedVolume volume = s_cup.ToVolume(1000 * share);
        Assert.Equal(volume, s_cup.ToVolume(Mass.FromGrams(1000 * share)));
        Assert.Equal(volume.Millilitres.Likely, volume.ToVolume().Milliliters);
    }

    // 39 units of length, 48 of pressure and all the others that UnitsNet has.
    [Property(MaxTest = 20)]
    public void EveryUnitIsReadAsUnitsNetReadsIt(uint seed)
    {
        double share = (seed + 1.0) / uint.MaxValue;
        foreach (LengthUnit unit in Enum.GetValues<LengthUnit>())
        {
            Length quantity = Length.FromMeters(0.01 + share).ToUnit(unit);
            Near(quantity.ToUnit(LengthUnit.Centimeter).Value, CakeLength.From(quantity).Centimetres, unit);
            Near(AirPressure.FromAltitudeMetres(quantity.Meters).Kilopascals, AirPressure.FromAltitude(quantity).Kilopascals, unit);
        }
        foreach (PressureUnit unit in Enum.GetValues<PressureUnit>())
        {
            Pressure quantity = Pressure.FromKilopascals(60 + 40 * share).ToUnit(unit);
            Near(quantity.ToUnit(PressureUnit.Kilopascal).Value, AirPressure.From(quantity).Kilopascals, unit);
        }
        foreach (MassUnit unit in Enum.GetValues<MassUnit>())
        {
            Mass quantity = Mass.FromGrams(1 + 999 * share).ToUnit(unit);
            Near(quantity.ToUnit(MassUnit.Gram).Value, FormulaLine.Of(s_sugar, quantity).Grams.Likely, unit);
        }
        foreach (VolumeUnit unit in Enum.GetValues<VolumeUnit>())
        {
            Volume quantity = Volume.FromMilliliters(150 + 999 * share).ToUnit(unit);
            Near(quantity.ToUnit(VolumeUnit.Milliliter).Value, MixerBowl.Of(quantity, 0.7).Millilitres, unit);
        }
        foreach (DurationUnit unit in Enum.GetValues<DurationUnit>())
        {
            Duration quantity = Duration.FromMinutes(1 + 999 * share).ToUnit(unit);
            Near(quantity.ToUnit(DurationUnit.Minute).Value, ThermometerReading.Of(quantity, Temperature.FromDegreesCelsius(20)).Minutes, unit);
        }
        foreach (DensityUnit unit in Enum.GetValues<DensityUnit>())
        {
            Density quantity = Density.FromGramsPerMilliliter(0.5 + share).ToUnit(unit);
            Near(quantity.ToUnit(DensityUnit.GramPerMilliliter).Value, Icing.Of("cream", quantity).GramsPerMillilitre.Likely, unit);
        }
        // A temperature has a zero of its own: the last place is that of the kelvins by whose way it goes.
        foreach (TemperatureUnit unit in Enum.GetValues<TemperatureUnit>().Where(unit => unit != TemperatureUnit.SolarTemperature))
        {
            Temperature quantity = Temperature.FromDegreesCelsius(-20 + 200 * share).ToUnit(unit);
            Assert.Equal(quantity.ToUnit(TemperatureUnit.DegreeCelsius).Value, ThermometerReading.Of(default, quantity).Celsius, 1e-11);
        }
    }

    // By hand: 9 in of 2.54 cm, 5200 ft of 0.3048 m, (240 − 32)·5/9, 30.1 in of mercury of 3.386388 kPa (NIST SP 811), and a day and a half.
    [Fact]
    public void KnownFiguresComeOut()
    {
        Assert.Equal(22.86, CakeLength.From(Length.FromInches(9)).Centimetres);
        Assert.Equal(33 * 254 / 100.0, CakeLength.From(Length.FromInches(33)).Centimetres);
        Assert.Equal(1584.96, AirPressure.FromAltitude(Length.FromFeet(5200)).ToAltitude().Meters, 1e-6);
        Assert.Equal(AirPressure.FromAltitudeFeet(5200), Kitchen.UsCustomary.AtAltitude(Length.FromFeet(5200)).Pressure);
        Assert.Equal(AirPressure.FromKilopascals(84), Kitchen.Metric.At(Pressure.FromKilopascals(84)).Pressure);
        Assert.Equal(101.930, AirPressure.From(Pressure.FromInchesOfMercury(30.1)).Kilopascals, 5e-3);
        Assert.Equal(240, ThermometerReading.Of(Duration.FromMinutes(1), Temperature.FromDegreesFahrenheit(240)).Temperature.DegreesFahrenheit, 1e-10);
        Assert.Equal(2160, ThermometerReading.Of(Duration.FromDays(1.5), Temperature.FromDegreesCelsius(20)).Minutes, 1e-9);
        Assert.Equal(100, AirPressure.SeaLevel.ToBoilingPointOfWater().DegreesCelsius, 0.05);
        Assert.Equal(Math.PI * 100 * 10, CakeBody.Prism(PlanShape.Round(CakeLength.From(Length.FromMeters(0.2))), CakeLength.From(Length.FromDecimeters(1))).ToVolume().Milliliters, 1e-9);
    }

    [Fact]
    public void LowLikelyAndHighKeepTheirUnit()
    {
        ConvertedMass mass = s_cup.ToMass(236.588);
        (Mass low, Mass likely, Mass high) = mass.Grams.In(MassUnit.Gram);
        Assert.Equal((mass.Grams.Low, mass.Grams.Likely, mass.Grams.High), (low.Grams, likely.Grams, high.Grams));
        SugarSolution syrup = SugarSolution.OfSucrose(0.8);
        Spread boiling = syrup.BoilingCelsius(AirPressure.SeaLevel);
        Assert.Equal(boiling.High, boiling.In(TemperatureUnit.DegreeCelsius).High.DegreesCelsius);
        Assert.Equal(boiling.Likely, syrup.ToBoilingPoint(AirPressure.SeaLevel).DegreesCelsius);
        Assert.Equal(syrup.BoilingPointElevation(AirPressure.SeaLevel), syrup.ToBoilingPointElevation(AirPressure.SeaLevel).Kelvins);
        Assert.Equal(2, new Spread(1, 2, 3).In(VolumeUnit.Liter).Likely.Liters);
        Assert.Equal(3, new Spread(1, 2, 3).In(LengthUnit.Inch).High.Inches);
        Assert.Equal(1, new Spread(1, 2, 3).In(DurationUnit.Hour).Low.Hours);
        Assert.Equal(1, new Spread(1, 2, 3).In(TemperatureDeltaUnit.Kelvin).Low.Kelvins);
        Assert.Equal(2, new Spread(1, 2, 3).In(DensityUnit.GramPerMilliliter).Likely.GramsPerMilliliter);
    }

    // What two numbers side by side would leave open: the other way round it does not compile. Figures by hand, or the worked numbers of the equations.
    [Fact]
    public void CallsOfSeveralNumbersTakeQuantities()
    {
        Assert.Equal(0.507, IcingDensity.FromMeasure(Mass.FromGrams(120), Volume.FromMilliliters(236.588)).GramsPerMilliliter, 5e-4);
        Assert.Equal(0.900, IcingDensity.FromOverrun(Density.FromGramsPerMilliliter(1.288), 43.1).GramsPerMilliliter, 5e-4);
        Assert.Equal(60, Brix.FromDensity(Density.FromKilogramsPerCubicMeter(1286.61), Temperature.FromDegreesCelsius(20)).Percent, 0.01);
        Assert.Equal(0.0285, Inversion.RatePerMinute(Temperature.FromDegreesCelsius(100), 3, Density.FromGramsPerMilliliter(0.55)), 5e-5);
        // The glass of milk: a cylinder of 6 by 7 cm without its lid, 120 W/(m²·K); 38 °C after 5.8 minutes (Çengel, Heat Transfer, the example of it).
        double radius = 0.03, height = 0.07;
        Area area = Area.FromSquareMeters(Math.PI * 2 * radius * height + 2 * Math.PI * radius * radius);
        Volume volume = Volume.FromCubicMeters(Math.PI * radius * radius * height);
        HeatTransferCoefficient h = HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(120);
        LumpedBody milk = LumpedBody.FromGeometry(h, area, volume, Density.FromKilogramsPerCubicMeter(998), SpecificEntropy.FromKilojoulesPerKilogramKelvin(4.182),
            new ThermometerReading { Celsius = 3 }, Temperature.FromDegreesCelsius(60));
        Assert.Equal(5.8, milk.TimeTo(Temperature.FromDegreesCelsius(38))!.Value.Minutes, 0.05);
        Assert.Equal(38, milk.After(Duration.FromMinutes(5.8)).DegreesCelsius, 0.2);
        Assert.Null(milk.TimeTo(Temperature.FromDegreesCelsius(61)));
        Assert.Equal(120 * volume.CubicMeters / area.SquareMeters / 0.607,
            LumpedBody.Biot(h, area, volume, ThermalConductivity.FromWattsPerMeterKelvin(0.607)), 1e-9);
        Thermometer off = Thermometer.FromBoilingWater(Temperature.FromDegreesCelsius(101.5), AirPressure.SeaLevel);
        Assert.Equal(off.Offset, off.ToOffset().Kelvins);
        Assert.Equal(116, off.ToTrue(off.ToReading(Temperature.FromDegreesCelsius(116))).DegreesCelsius, 1e-12);
        Assert.Equal("250 g", Formula.Of("x", [FormulaLine.Of(s_sugar, Mass.FromKilograms(1))]).ScaleToMass(Mass.FromGrams(250)).ToMass().ToString("g", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(18, HeatLine.Of(s_sugar, Mass.FromGrams(250)).At(Temperature.FromDegreesCelsius(18)).Celsius);
        HoldTime hold = HoldTimeTable.All[0].Rows[0];
        Assert.Equal((hold.Seconds, hold.Celsius), (hold.ToDuration().Seconds, hold.ToTemperature().DegreesCelsius));
        SyrupPot pot = SyrupPot.Of(SugarSolution.OfSucrose(0.7), 1000);
        Assert.Equal(pot.CookTo(115, AirPressure.SeaLevel).ToString(), pot.CookTo(Temperature.FromDegreesCelsius(115), AirPressure.SeaLevel).ToString());
        Assert.Equal(s_cup.Density.GramsPerMillilitre.Likely, s_cup.Density.ToDensity().GramsPerMilliliter);
    }

    [Fact]
    public void WhatIsOutsideItsRangeIsRefusedInTheUnitThatIsKept()
    {
        Assert.Throws<ArgumentOutOfRangeException>("centimetres", () => CakeLength.From(Length.FromMeters(-1)));
        Assert.Throws<ArgumentOutOfRangeException>("kilopascals", () => AirPressure.From(Pressure.FromBars(20)));
        Assert.Throws<ArgumentOutOfRangeException>("metres", () => Kitchen.Metric.AtAltitude(Length.FromKilometers(10)));
        Assert.Throws<ArgumentOutOfRangeException>("millilitres", () => s_cup.ToMass(Volume.FromLiters(-1)));
        Assert.Throws<ArgumentOutOfRangeException>("grams", () => s_cup.ToVolume(Mass.FromKilograms(1e12)));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => ThermometerReading.Of(default, Temperature.FromKelvins(0)));
    }

    // UnitsNet's structs cost nothing, and reading one in a unit that is not its own and not the base allocates: the room never does.
    [Fact]
    public void NothingAllocates()
    {
        Volume cup = Volume.FromUsCustomaryCups(1);
        Mass ounce = Mass.FromOunces(8);
        Length tin = Length.FromInches(9), hill = Length.FromFeet(5200), yard = Length.FromYards(0.3);
        Pressure low = Pressure.FromInchesOfMercury(25);
        Temperature ball = Temperature.FromDegreesFahrenheit(240);
        Duration while_ = Duration.FromHours(1.5);
        double sum = Sum();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
            sum += Sum();
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 999); // the runtime's own, once; a box each would be 24 000 at least
        Assert.True(sum > 0);

        double Sum() => s_cup.ToMass(cup).ToMass().Value + s_cup.ToVolume(ounce).ToVolume().Value + CakeLength.From(tin).ToLength().Value
            + CakeLength.From(yard).Centimetres + AirPressure.FromAltitude(hill).ToPressure().Value + AirPressure.From(low).Kilopascals
            + ThermometerReading.Of(while_, ball).Temperature.Value + s_cup.ToMass(100).Grams.In(MassUnit.Gram).High.Value;
    }

    private static void Near(double expected, double actual, Enum unit)
    {
        double place = Math.BitIncrement(Math.Abs(expected)) - Math.Abs(expected);
        Assert.True(Math.Abs(expected - actual) <= Places * place, $"{unit}: {expected:R} and {actual:R} are {Math.Abs(expected - actual) / place} places apart");
    }
}
