using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Pure water: its vapour pressure, and where it boils at a pressure or an altitude.</summary>
public sealed class BoilingWaterTests
{
    // IAPWS-IF97 (2007), Tables 35 and 36, nine digits. Those at 500 K and 10 MPa were read; the other three are from memory, and another program gives them.
    [Fact]
    public void TheVerificationValuesOfTheRelease()
    {
        Assert.Equal(3.53658941, SaturatedWater.PressureKilopascals(300 - 273.15), 1e-8);
        Assert.Equal(2638.89776, SaturatedWater.PressureKilopascals(500 - 273.15), 1e-5);
        Assert.Equal(372.755919, SaturatedWater.BoilingCelsius(100) + 273.15, 1e-6);
        Assert.Equal(453.035632, SaturatedWater.BoilingCelsius(1000) + 273.15, 1e-6);
        Assert.Equal(584.149488, SaturatedWater.BoilingCelsius(10000) + 273.15, 1e-6);
    }

    // The same release by python3-iapws: 78 pressures and 203 temperatures, 0.0006113 to 22 MPa. Both are doubles; what is left is the
    // order of the operations.
    [Fact]
    public void TheSaturationLineIsThatOfAnotherProgram()
    {
        Syrups.Within(1e-12, SugarOracles.Saturation.Where(row => row.GivenKelvin),
            row => SaturatedWater.PressureKilopascals(row.Kelvin - 273.15) / (1000 * row.Megapascals) - 1);
        Syrups.Within(1e-10, SugarOracles.Saturation.Where(row => !row.GivenKelvin),
            row => SaturatedWater.BoilingCelsius(1000 * row.Megapascals) + 273.15 - row.Kelvin);
    }

    // 99.974 °C: the boiling point of water on the scale of 1990.
    [Fact]
    public void SeaLevel() => Assert.Equal(99.974, AirPressure.SeaLevel.WaterBoilsCelsius, 5e-4);

    [Fact]
    public void ThePressureComesBackFromTheKettle()
    {
        for (double celsius = 60; celsius <= 120; celsius += 0.5)
            Assert.Equal(celsius, AirPressure.FromBoilingWater(celsius).WaterBoilsCelsius, 1e-10);
    }

    // ISO 2533:1975 in its short form, p = 101.325·(1 − 2.25577e-5·h)^5.25588, with h the geopotential altitude: within 1e-5 of itself to 9 km.
    [Theory]
    [InlineData(-500)]
    [InlineData(0)]
    [InlineData(1524)]
    [InlineData(3048)]
    [InlineData(9000)]
    public void TheStandardAtmosphere(double metres)
    {
        double h = 6356766 * metres / (6356766 + metres);
        Assert.Equal(101.325 * Math.Pow(1 - 2.25577e-5 * h, 5.25588), AirPressure.FromAltitudeMetres(metres).Kilopascals, 1e-3);
        Assert.Equal(metres, AirPressure.FromAltitudeMetres(metres).StandardAltitudeMetres, 1e-7);
    }

    [Theory] // another program, with h taken for the altitude itself: 2 Pa at 1524 m, 20 Pa at 4572 m
    [InlineData(5000, 84.307, 0.005)]
    [InlineData(8000, 75.262, 0.012)]
    [InlineData(15000, 57.182, 0.04)]
    public void TheStandardAtmosphereInFeet(double feet, double kilopascals, double tolerance)
    {
        Assert.Equal(kilopascals, AirPressure.FromAltitudeFeet(feet).Kilopascals, tolerance);
        Assert.Equal(AirPressure.FromAltitudeMetres(feet * 0.3048).Kilopascals, AirPressure.FromAltitudeFeet(feet).Kilopascals, 1e-12);
    }

    // NOAA, as quoted in Wikipedia. It starts from 212 °F, the old 100 °C, and has whole degrees at 0 and 5000 feet: 0.3 °F to 12 000 feet.
    [Fact]
    public void AltitudesAreThoseOfTheAtmosphericAdministration() => Syrups.Within(0.3,
        SugarOracles.BoilingWater.Where(row => row.NoaaFahrenheit is not null && row.Feet <= 12000), row => Fahrenheit(row.Feet) - row.NoaaFahrenheit!.Value);

    // A named disagreement: at 14 000 and 15 000 feet the same column is 0.4 °F below the standard atmosphere with IF97. It is not known
    // what it was made with.
    [Theory]
    [InlineData(14000)]
    [InlineData(15000)]
    public void NoaaIsLowerAtTheTop(double feet) =>
        Assert.InRange(Fahrenheit(feet) - SugarOracles.BoilingWater.Single(row => row.Feet == feet).NoaaFahrenheit!.Value, 0.3, 0.45);

    [Theory] // the rows of that column by themselves
    [InlineData(1000, 210.2, 0.2)]
    [InlineData(2000, 208.4, 0.2)]
    [InlineData(5000, 203.0, 0.3)]
    [InlineData(8000, 197.4, 0.3)]
    [InlineData(10000, 193.6, 0.3)]
    public void FiveAltitudes(double feet, double published, double tolerance) => Assert.Equal(published, Fahrenheit(feet), tolerance);

    // USDA, Complete Guide to Home Canning, as quoted. A named disagreement: its atmosphere is as warm at the top as at the bottom, p =
    // p₀·exp(−1.16e-4·y), y in metres, so that water boils up to 1.0 °F higher at 10 000 feet. With that atmosphere the column comes out
    // within 0.12 °F.
    [Fact]
    public void TheCanningGuideHasAnotherAtmosphere() => Assert.All(SugarOracles.BoilingWater.Where(row => row.UsdaFahrenheit is not null), row =>
    {
        Assert.InRange(Fahrenheit(row.Feet) - row.UsdaFahrenheit!.Value, -0.05 - 1.05e-4 * row.Feet, 0);
        double kilopascals = 101.325 * Math.Exp(-1.16e-4 * row.Feet * 0.3048);
        Assert.Equal(row.UsdaFahrenheit.Value, Syrups.ToFahrenheit(SaturatedWater.BoilingCelsius(kilopascals)), 0.12);
    });

    [Fact] // what a weather report says is at sea level: the standard atmosphere is lifted to it
    public void AWeatherReportIsReducedToSeaLevel()
    {
        Assert.Equal(AirPressure.FromAltitudeMetres(1600).Kilopascals, AirPressure.FromWeatherReport(101.325, 1600).Kilopascals, 1e-10);
        Assert.Equal(99.0, AirPressure.FromWeatherReport(99.0, 0).Kilopascals, 1e-10);
        Assert.True(AirPressure.FromWeatherReport(99.0, 1600) < AirPressure.FromWeatherReport(103.0, 1600));
    }

    // The conventional millimetre of mercury is 133.322387415 Pa; an inch at 32 °F is 3386.389 Pa.
    [Theory]
    [InlineData("101.325 kPa", 101.325)]
    [InlineData("1013.25 hPa", 101.325)]
    [InlineData("1013.25 mbar", 101.325)]
    [InlineData("760 mmHg", 101.325)]
    [InlineData("29.92 inHg", 101.32)]
    [InlineData("84,3 kPa", 84.3)]
    public void TextOfAPressure(string text, double kilopascals) => Assert.Equal(kilopascals, AirPressure.Parse(text).Kilopascals, 1e-3);

    private static double Fahrenheit(double feet) => Syrups.ToFahrenheit(AirPressure.FromAltitudeFeet(feet).WaterBoilsCelsius);
}
