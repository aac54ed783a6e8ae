using Confectio.Publishing;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Publishing;

/// <summary>F = 1.8 C + 32 exactly; what a bound may not lose.</summary>
public sealed class CardTemperatureTests
{
    [Fact]
    public void BothScalesStandBesideEachOther()
    {
        Assert.Equal("oven: 180 °C (356 °F)", CardTemperature.Of("oven", 180).ToString());
        Assert.Equal("syrup: 116 to 118 °C (241 to 244 °F)", CardTemperature.Between("syrup", 116, 118).ToString()); // 240.8, 244.4
        Assert.Equal("oven: 350 °F (177 °C)", CardTemperature.OfFahrenheit("oven", 350).ToString()); // 176.67
        Assert.Equal("chocolate: 31.5 °C (88.7 °F)", CardTemperature.Of("chocolate", 31.5).ToString());
        Assert.Equal("dish: at least 74 °C (165.2 °F)", CardTemperature.Of("dish", 74, CardTemperatureBound.AtLeast).ToString()); // 165 °F would be less
        Assert.Equal("dish: at least 160 °F (71.2 °C)", CardTemperature.OfFahrenheit("dish", 160, CardTemperatureBound.AtLeast).ToString()); // 71.11
        Assert.Equal("cold: at most 5 °C (41 °F)", CardTemperature.Of("cold", 5, CardTemperatureBound.AtMost).ToString());
        Assert.Equal("cold: at most 4 °C (39 °F)", CardTemperature.Of("cold", 4, CardTemperatureBound.AtMost).ToString()); // 39.2
        Assert.Equal("freezer: -18 °C (0 °F)", CardTemperature.Of("freezer", -18).ToString()); // −0.4, and nothing has no sign
    }

    [Property(MaxTest = 1000)]
    public bool ALeastTemperatureIsNeverConvertedToLess(short tenths, bool isWhole)
    {
        double celsius = (tenths % 3000 + 1000) / 10.0 % 400;
        celsius = isWhole ? Math.Round(celsius) : celsius;
        double least = Other(CardTemperature.Of("x", celsius, CardTemperatureBound.AtLeast)), most = Other(CardTemperature.Of("x", celsius, CardTemperatureBound.AtMost)), exact = 1.8 * celsius + 32;
        return least >= exact - 1e-9 && most <= exact + 1e-9 && least - exact <= 0.5 && exact - most <= 0.5;
    }

    [Fact]
    public void WhatIsNoTemperatureIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => CardTemperature.Of("oven", 600));
        Assert.Throws<ArgumentOutOfRangeException>("highCelsius", () => CardTemperature.Between("oven", 180, 170));
        Assert.Throws<ArgumentOutOfRangeException>("fahrenheit", () => CardTemperature.OfFahrenheit("oven", double.NaN));
        Assert.Throws<ArgumentException>("name", () => CardTemperature.Of(" ", 180));
        Assert.Throws<ArgumentOutOfRangeException>("bound", () => CardTemperature.Of("oven", 180, (CardTemperatureBound)9));
    }

    private static double Other(CardTemperature temperature) =>
        double.Parse(temperature.ToString().Split('(')[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
}
