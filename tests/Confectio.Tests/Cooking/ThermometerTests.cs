using Confectio.Cooking;
using Confectio.Sugars;
using Confectio.Tests.Sugars;
using Xunit;

namespace Confectio.Tests.Cooking;

/// <summary>A thermometer that was held in boiling water.</summary>
public sealed class ThermometerTests
{
    // Utah State University Extension (2006): where water boils at 205 °F by the thermometer, a target of 280 becomes 273.
    [Fact]
    public void TheExampleOfTheExtensionService() =>
        Assert.Equal(273, Syrups.ToFahrenheit(Thermometer.TargetByBoilingWater(Syrups.ToCelsius(280), Syrups.ToCelsius(205))), 1e-9);

    [Fact]
    public void AThermometerThatReadsTooHigh()
    {
        // At 5000 feet water boils at 94.90 °C: one that shows 96.4 there reads 1.5 K too high.
        Thermometer thermometer = Thermometer.FromBoilingWater(96.4, AirPressure.FromAltitudeFeet(5000));
        Assert.Equal(1.5, thermometer.Offset, 0.005);
        Assert.Equal(115 + thermometer.Offset, thermometer.ToReading(115), 1e-12);
        Assert.Equal(115, thermometer.ToTrue(thermometer.ToReading(115)), 1e-12);
    }

    // A right thermometer tells the kitchen rule where water boils. The rule then takes off what the altitude takes off water, not syrup: at 5000 feet and
    // soft ball the elevation has shrunk by 0.3 K more.
    [Fact]
    public void TheKitchenRuleForgetsThatTheElevationShrinks()
    {
        AirPressure up = AirPressure.FromAltitudeFeet(5000);
        double target = CookingStage.Get("soft ball").HighCelsius;
        double byRule = Thermometer.TargetByBoilingWater(target, up.WaterBoilsCelsius), bySyrup = CookingStage.Get("soft ball").At(up).High.Celsius;
        Assert.InRange(byRule - bySyrup, 0.3, 0.45);
    }
}
