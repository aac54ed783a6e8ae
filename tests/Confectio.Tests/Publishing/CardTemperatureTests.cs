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

    [Theory]
    [InlineData("Bake at 180 °C for 20 minutes.", "180 °C (356 °F)")]
    [InlineData("Cook to 116–118 °C, then cool to 40°C.", "116 to 118 °C (241 to 244 °F)|40 °C (104 °F)")]
    [InlineData("Heat to 240 degrees F.", "240 °F (116 °C)")] // 115.6
    [InlineData("Whisk to 71 °C (160 °F).", "")] // both stand there
    [InlineData("At 350 °F (177 °C) for a while.", "")]
    [InlineData("Let it rise by 5 °C.", "")] // a difference is 9 °F and not 41
    [InlineData("Keep it 10 °C cooler, within 2 °C.", "")]
    [InlineData("Use 2 C flour and 180 g butter; 900 °C is no oven.", "")]
    public void AStepInOneScaleIsToldInBoth(string step, string told)
    {
        string text = FormulaCard.Of(Cards.Buttercream, new CardOptions { Steps = [step] }).ToText();
        Assert.Equal(told, string.Join('|', text.Split('\n').Where(line => line.StartsWith("  Step 1: ", StringComparison.Ordinal)).Select(line => line["  Step 1: ".Length..])));
        Assert.Contains(step, text, StringComparison.Ordinal);
    }

    // The minus of some cultures has a mark of direction before it, which no form may show or hide.
    [Theory]
    [InlineData("he-IL")]
    [InlineData("fa-IR")]
    [InlineData("ar-SA")]
    [InlineData("sv-SE")]
    public void BelowNothingIsBelowNothingInEveryCulture(string culture)
    {
        FormulaCard card = FormulaCard.Of(Cards.Buttercream, new CardOptions { Temperatures = [CardTemperature.Of("freezer", -18)], Culture = System.Globalization.CultureInfo.GetCultureInfo(culture) });
        Assert.Contains("-18 °C (0 °F)", card.ToHtml(), StringComparison.Ordinal);
        Assert.DoesNotContain('\uFFFD', card.ToHtml());
    }

    private static double Other(CardTemperature temperature) =>
        double.Parse(temperature.ToString().Split('(')[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
}
