using System.Globalization;
using Confectio.Publishing;
using Confectio.Tests.Consistency;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Publishing;

/// <summary>NIST SP 811 (2008), B.7.2, recalled: its example of 36 ft, and the rule itself held against every step coarser and finer.</summary>
public sealed class ConvertedDigitsTests
{
    [Theory]
    [InlineData(36 * 0.3048, 0.5 / 36, "11.0")] // the example of B.7.2, recalled: 10.9728 m; 11 has 4.5 %, 11.0 has 0.46 %, 36 has 1.39 %
    [InlineData(250 / 28.349523125, 0.5 / 250, "8.82")] // 8.8185 oz; 8.8 would be off by 0.57 %, 8.82 by 0.057 %, 250 g by 0.2 %
    [InlineData(1 * 25.4, 0.5, "30")] // an inch to the inch: half of it is 12.7 mm, and half of ten is 5
    [InlineData(100 * 25.4, 0.005, "2540")] // half of 100 in is 12.7 mm; tens keep to it, hundreds (50 mm) do not
    [InlineData(0.0034, 0.05, "0.0034")] // 0.00017; a ten-thousandth (0.00005) does, a thousandth (0.0005) does not
    [InlineData(-10.9728, 0.5 / 36, "-11.0")]
    [InlineData(0, 0.5, "0")]
    public void DigitsAreThoseOfTheOriginal(double value, double relative, string printed) => Assert.Equal(printed, ConvertedDigits.Text(value, relative));

    // 10^p/2 ≤ |value|·relative < 10^(p+1)/2, by the definition and not by the logarithm.
    [Property(MaxTest = 2000)]
    public bool TheStepIsTheLargestThatIsNoCoarser(int mantissa, byte power, byte share)
    {
        double value = (mantissa == 0 ? 1 : mantissa) * Math.Pow(10, power % 8 - 6), relative = (share + 1) / 600.0;
        int place = ConvertedDigits.Place(value, relative);
        double half = Math.Abs(value) * relative;
        return Math.Pow(10, place) / 2 <= half * (1 + 1e-6) && Math.Pow(10, place + 1) / 2 > half * (1 - 1e-6);
    }

    [Property(MaxTest = 500)]
    public bool TheRoundedNumberIsNoFurtherOffThanTheOriginalMayBe(int mantissa, byte share)
    {
        double value = mantissa / 128.0, relative = (share + 1) / 600.0;
        return Math.Abs(ConvertedDigits.Round(value, relative) - value) <= Math.Abs(value) * relative * (1 + 1e-6) + 1e-12;
    }

    [Fact]
    public void TheTextIsTheSameInEveryCulture() => Cultures.InEach(["tr-TR", "de-DE", "ar-SA", "fa-IR"], () =>
        Assert.Equal("-11.0", ConvertedDigits.Text(-10.9728, 0.5 / 36)));

    [Fact]
    public void WhatIsOutOfRangeIsRefusedByName()
    {
        Assert.Throws<ArgumentOutOfRangeException>("value", () => ConvertedDigits.Place(1e16, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>("relativeHalfUnit", () => ConvertedDigits.Text(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>("relativeHalfUnit", () => ConvertedDigits.Round(1, 1.5));
        Assert.Equal(1e15, double.Parse(ConvertedDigits.Text(1e15, 1e-15), CultureInfo.InvariantCulture));
    }
}
