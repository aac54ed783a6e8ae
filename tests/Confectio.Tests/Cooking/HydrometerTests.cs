using Confectio.Cooking;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Tests.Sugars;
using Xunit;

namespace Confectio.Tests.Cooking;

/// <summary>A glass hydrometer in syrup that is hotter or colder than it was made for.</summary>
public sealed class HydrometerTests
{
    // It floats where the displaced syrup weighs what the glass does: ρ(t)·V(t) = ρ(t₀)·V(t₀). The glass widens by 25e-6 a kelvin (from memory).
    [Theory]
    [InlineData(60, 80, 20)]
    [InlineData(60, 5, 20)]
    [InlineData(30, 60, 15)]
    [InlineData(85, 100, 60)]
    public void TheDisplacedSyrupWeighsTheSame(double percent, double celsius, double madeForCelsius)
    {
        Brix reading = Hydrometer.MadeFor(madeForCelsius).Reading(Brix.FromPercent(percent), celsius);
        Assert.Equal(SucrosePolynomial.Density(percent / 100, celsius) * (1 + 25e-6 * (celsius - madeForCelsius)),
            SucrosePolynomial.Density(reading.Fraction, madeForCelsius), 1e-9);
    }

    [Theory]
    [InlineData(15)]
    [InlineData(20)]
    [InlineData(60)]
    public void TheStrengthComesBackFromTheReading(double madeForCelsius)
    {
        for (int percent = 5; percent <= 95; percent += 5)
        {
            for (int celsius = 0; celsius <= 100; celsius += 10)
            {
                Brix strength = Brix.FromPercent(percent);
                // Thin hot syrup lets it sink below its zero, cold syrup of 95 °Bx lets it rise over its top.
                if (Floats(percent, celsius, madeForCelsius))
                    Assert.Equal(percent, Hydrometer.MadeFor(madeForCelsius).Strength(Hydrometer.MadeFor(madeForCelsius).Reading(strength, celsius), celsius).Percent, 1e-9);
                else
                    Assert.Throws<InvalidOperationException>(() => Hydrometer.MadeFor(madeForCelsius).Reading(strength, celsius));
            }
        }
    }

    [Fact]
    public void AtItsOwnTemperatureItIsRight() =>
        Assert.Equal(60, Hydrometer.MadeFor(20).Reading(Brix.FromPercent(60), 20).Percent, 1e-9);

    [Fact]
    public void HotSyrupReadsTooLowAndColdSyrupTooHigh()
    {
        Assert.True(Hydrometer.MadeFor(20).Reading(Brix.FromPercent(60), 80).Percent < 60);
        Assert.True(Hydrometer.MadeFor(20).Reading(Brix.FromPercent(60), 5).Percent > 60);
        Assert.True(Hydrometer.MadeFor(20).Strength(Brix.FromPercent(60), 80).Percent > 60);
    }

    [Fact]
    public void WhatIsOffTheScaleIsSaid()
    {
        InvalidOperationException thrown = Assert.Throws<InvalidOperationException>(() => Hydrometer.MadeFor(20).Reading(Brix.FromPercent(1), 80));
        Assert.Contains("below 0 °Bx", thrown.Message, StringComparison.Ordinal);
        thrown = Assert.Throws<InvalidOperationException>(() => Hydrometer.MadeFor(20).Reading(Brix.FromPercent(100), 0));
        Assert.Contains("above 100 °Bx", thrown.Message, StringComparison.Ordinal);
    }

    private static bool Floats(double percent, double celsius, double madeForCelsius)
    {
        double density = SucrosePolynomial.Density(percent / 100, celsius) * (1 + 25e-6 * (celsius - madeForCelsius));
        return density >= SucrosePolynomial.Density(0, madeForCelsius) && density <= SucrosePolynomial.Density(1, madeForCelsius);
    }
}
