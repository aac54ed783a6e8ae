using Confectio.Heat;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>The yield value after Haighton (1959), abstract: C = K·W/p^1.6. The constant of the cone and the words are from memory.</summary>
public sealed class ConePenetrationTests
{
    // 5840·79.03/100^1.6 and so on, worked by hand; the equation was read, K is from memory.
    [Theory]
    [InlineData(10, 291.21)] // FAT-01
    [InlineData(15, 152.22)] // FAT-02
    [InlineData(20, 96.06)] // FAT-02
    public void TheEquationOfTheAbstract(double millimetres, double yield) => Assert.Equal(yield, ConePenetration.Of(79.03, millimetres).YieldValue, 0.05);

    [Theory] // FAT-03: twice as deep is 2^1.6 times as soft, whatever the cone
    [InlineData(35, 2.5, null)]
    [InlineData(79.03, 10.0, 2815.0)]
    [InlineData(500, 14.9, 99_000.0)]
    public void TwiceAsDeepIsSoftByTheExponent(double grams, double millimetres, double? constant)
    {
        double ratio = ConePenetration.Of(grams, millimetres, constant).YieldValue / ConePenetration.Of(grams, 2 * millimetres, constant).YieldValue;
        Assert.Equal(3.0314, ratio, 0.001);
    }

    // By hand: 2815·79.03/100^1.6 = 222470/1584.893. K of a cone of 60° is from memory.
    [Fact]
    public void TheConeOf60Degrees() => Assert.Equal(140.37, ConePenetration.Of(79.03, 10, ConePenetration.ConstantOf60Degrees).YieldValue, 0.01);

    [Theory] // FAT-09, from memory
    [InlineData(500, "plastic and spreadable")]
    [InlineData(900, "hard, still spreadable")]
    [InlineData(1200, "too hard, at the limit of spreading")]
    [InlineData(60, "very soft, not spreadable")]
    [InlineData(30, "very soft, just pourable")]
    [InlineData(150, "soft, spreadable")]
    [InlineData(1600, "too hard")]
    public void TheWordsOfYieldValues(double yield, string words)
    {
        // K·W/p^1.6 with p = 100 and K = 1500: W = yield·100^1.6/1500.
        double grams = yield * Math.Pow(100, 1.6) / 1500;
        ConePenetration cone = ConePenetration.Of(grams, 10, 1500);
        Assert.Equal(yield, cone.YieldValue, 1e-9);
        Assert.Equal(words, cone.Words);
        Assert.Contains("from memory", cone.ToString(), StringComparison.Ordinal);
        Assert.Equal(yield >= 45, cone.IsWithinTheTrials);
    }

    [Fact]
    public void AConstantThatWasRecalledIsNotMeasured()
    {
        Assert.Equal(Evidence.FromMemory, ConePenetration.Of(79.03, 10).Evidence);
        Assert.Equal(Evidence.FromMemory, ConePenetration.Of(79.03, 10, 5840).Evidence);
        Assert.Equal(Evidence.FromMemory, ConePenetration.Of(79.03, 10, 2815).Evidence);
        Assert.Equal(Evidence.Measured, ConePenetration.Of(79.03, 10, 5800).Evidence);
        Assert.Equal("haighton-1959", ConePenetration.Source.Key);
    }

    [Theory]
    [InlineData(29, 10, null, "coneGrams")]
    [InlineData(double.NaN, 10, null, "coneGrams")]
    [InlineData(80, 30, null, "millimetres")]
    [InlineData(80, 0, null, "millimetres")]
    [InlineData(80, 10, 99.0, "constant")]
    public void WhatNoConeIsIsRefused(double grams, double millimetres, double? constant, string name) =>
        Assert.Throws<ArgumentOutOfRangeException>(name, () => ConePenetration.Of(grams, millimetres, constant));
}
