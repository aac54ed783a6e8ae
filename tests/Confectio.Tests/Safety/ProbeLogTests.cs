using Confectio.Heat;
using Confectio.Safety;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>A log of a probe: the time it was at or above a temperature, reckoned by hand on its straight lines.</summary>
public sealed class ProbeLogTests
{
    // 20 °C, a rise of 10 K a minute to 60, two minutes there, and a fall of 20 K in a minute.
    private static readonly (double, double)[] s_hill = [(0, 20), (4, 60), (6, 60), (7, 40)];

    [Theory]
    [InlineData(60, 2.0)] // the level itself
    [InlineData(55, 2.75)] // half a minute of the rise, the level, a quarter of a minute of the fall
    [InlineData(50, 3.5)]
    [InlineData(40, 5.0)] // touched at the end
    [InlineData(30, 6.0)]
    [InlineData(20, 7.0)] // the whole log, its first reading included
    [InlineData(-60, 7.0)]
    public void TheTimeAtOrAboveIsReckonedOnTheStraightLines(double celsius, double minutes) =>
        Assert.Equal(minutes, Readings.Log(s_hill).LongestMinutesAtOrAbove(celsius)!.Value, 1e-12);

    [Theory]
    [InlineData(60.0000001)]
    [InlineData(220)]
    public void ATemperatureThatWasNeverReachedHasNoTime(double celsius) => Assert.Null(Readings.Log(s_hill).LongestMinutesAtOrAbove(celsius));

    [Fact]
    public void ATemperatureThatWasOnlyTouchedHasNoughtMinutes()
    {
        Assert.Equal(0, Readings.Log((0, 20), (4, 60), (8, 20)).LongestMinutesAtOrAbove(60));
        // At the start and at the end as well.
        Assert.Equal(0, Readings.Log((0, 60), (8, 20)).LongestMinutesAtOrAbove(60));
        Assert.Equal(0, Readings.Log((0, 20), (8, 60)).LongestMinutesAtOrAbove(60));
    }

    [Fact]
    public void ABreakParts()
    {
        // Above 60 °C for 2 and for 3 minutes with a dip between them: the longer counts, not the sum. The crossings lie half-way.
        ProbeLog log = Readings.Log((0, 59), (1, 61), (2, 61), (3, 59), (4, 61), (6, 61), (7, 59));
        Assert.Equal(3, log.LongestMinutesAtOrAbove(60)!.Value, 1e-12);
        // A dip that only touches does not part.
        Assert.Equal(6, Readings.Log((0, 60), (2, 62), (3, 60), (6, 63)).LongestMinutesAtOrAbove(60));
        // The longest may come first.
        Assert.Equal(5, Readings.Log((0, 60), (5, 60), (6, 50), (7, 60), (8, 60)).LongestMinutesAtOrAbove(60));
    }

    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 300)]
    public void AWarmerMarkIsNeverHeldLonger(RandomLog log, byte lower, byte more)
    {
        ProbeLog probe = Readings.Log(log.Pairs);
        double low = 20 + lower / 4.0, high = low + more / 8.0;
        double? atLow = probe.LongestMinutesAtOrAbove(low), atHigh = probe.LongestMinutesAtOrAbove(high);
        Assert.True(atHigh is null || atLow >= atHigh - 1e-9);
        Assert.Equal(log.Pairs.Max(pair => pair.Celsius) >= low, atLow is not null);
        Assert.InRange(atLow ?? 0, 0, probe.Minutes + 1e-9);
    }

    [Fact]
    public void ALogSaysWhatItIs()
    {
        ProbeLog log = Readings.Log((-5, 20), (4, 61.5), (7, 40));
        Assert.Equal(12, log.Minutes);
        Assert.Equal(61.5, log.MaximumCelsius);
        Assert.Equal(Readings.Of((-5, 20), (4, 61.5), (7, 40)), log.Readings);
    }

    [Fact]
    public void ALogIsACopy()
    {
        ProbeReading[] own = Readings.Of((0, 20), (1, 60));
        ProbeLog log = ProbeLog.Of(own);
        own[1] = default;
        Assert.Equal(60, log.MaximumCelsius);
    }

    [Fact]
    public void TooFewOrTooManyAreRefused()
    {
        Assert.Contains("has 0;", Refused([]), StringComparison.Ordinal);
        Assert.Contains("has 1; from 2 to 1000000", Refused(Readings.Of((0, 60))), StringComparison.Ordinal);
        Assert.Contains("more than 1000000", Refused(Enumerable.Range(0, 1_000_001).Select(i => new ProbeReading(i / 2.0, 60))), StringComparison.Ordinal);
        Assert.Equal(2, ProbeLog.Of(Readings.Of((0, 60), (1, 60))).Readings.Count);
    }

    // An endless sequence is refused rather than read.
    [Fact]
    public void AnEndlessLogIsRefused() => Assert.Contains("more than", Refused(Forever()), StringComparison.Ordinal);

    [Theory]
    [InlineData(1)]
    [InlineData(0.5)]
    public void AReadingThatIsNotLaterIsRefused(double minutes) =>
        Assert.Contains(FormattableString.Invariant($"number 3 is at {minutes:R} minutes, not after 1"), Refused(Readings.Of((0, 60), (1, 60), (minutes, 61))), StringComparison.Ordinal);

    private static string Refused(IEnumerable<ProbeReading> readings) => Assert.Throws<ArgumentException>(nameof(readings), () => ProbeLog.Of(readings)).Message;

    private static IEnumerable<ProbeReading> Forever()
    {
        for (double minutes = 0; ; minutes += 0.25)
            yield return new ProbeReading(Math.Min(minutes, 1e6), 60);
    }
}
