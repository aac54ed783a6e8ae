using Confectio.Cooking;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Tests.Sugars;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Cooking;

/// <summary>What nobody measured of a syrup that cooks: nothing at the low end, the worst at the high end, and a fact of the log. Shares are reckoned by hand.</summary>
public sealed class CookingGapTests
{
    private const double Ph = 3.6;

    // Vukov (1965), written down again; 75 % sucrose is 1.33103 g/mL at 100 °C (the polynomial of the PTB).
    private static readonly double s_perMinuteAt105 = Rate(105, 0.25 * 1.33103);

    // Held at 105 °C for 20 minutes with a reading at each end of it only, and then for two more.
    [Fact]
    public void TwentyMinutesWithoutAReadingAreNotMeasured()
    {
        CookingLog log = Log((0, 105), (20, 105), (21, 105), (22, 105));
        Spread inverted = log.Inverted(Ph);
        Assert.Equal(1 - Math.Exp(-2 * s_perMinuteAt105 / 2), inverted.Low, 1e-6);
        Assert.Equal(1 - Math.Exp(-22 * s_perMinuteAt105), inverted.Likely, 1e-6);
        Assert.Equal(1 - Math.Exp(-22 * s_perMinuteAt105 * 2), inverted.High, 1e-6);
        LogGap gap = Assert.Single(log.Gaps);
        Assert.Equal((0, 20, 1200), (gap.FromMinutes, gap.ToMinutes, gap.Seconds));
        Assert.Equal("1200 s without a reading, from minute 0 to 20", gap.ToString());
        Assert.Equal(90, log.GapSeconds);
    }

    // Rising or falling, the high end is the hotter of the two for all of the gap, and the middle the straight line.
    [Theory]
    [InlineData(95, 105)]
    [InlineData(105, 95)]
    public void AtTheWorstAGapIsAsHotAsTheHotterOfItsReadings(double from, double to)
    {
        Spread inverted = Log((0, from), (10, to)).Inverted(Ph);
        Assert.Equal(0, inverted.Low);
        Assert.Equal(1 - Math.Exp(-10 * s_perMinuteAt105 * 2), inverted.High, 1e-6);
        Spread straight = Log(1.2e8, (0, from), (10, to)).Inverted(Ph);
        Assert.Equal(straight.Likely, inverted.Likely);
        Assert.True(straight.High < inverted.High && straight.Low > 0);
    }

    // In the gap it boiled away from 107 to 118 °C: it may have been at 118 all along, and as thin as it began.
    [Fact]
    public void AtTheWorstItIsAsWateryAsItBegan()
    {
        double high = Log((0, 107), (10, 118)).Inverted(Ph).High;
        Assert.Equal(1 - Math.Exp(-10 * Rate(118, 0.25 * 1.33103) * 2), high, 1e-6);
        // How strong it has become by its end was measured: the reading after says so.
        Assert.Equal(SugarSolution.OfSucrose(0.75).BoilingAt(118, AirPressure.SeaLevel).Solids, Log((0, 107), (10, 118)).End(9).Solids, 1e-6);
    }

    [Theory]
    [InlineData(90, 0)]
    [InlineData(91, 1)]
    public void TheLimitIsInclusive(double seconds, int gaps) => Assert.Equal(gaps, Log((7, 60), (7 + seconds / 60, 60)).Gaps.Count);

    // Whoever knows that the pot was held may say so, and then it is his word.
    [Fact]
    public void AStatedLimitIsHisWord()
    {
        CookingLog log = Log(1200, (0, 105), (20, 105));
        Assert.Empty(log.Gaps);
        Assert.Equal(1 - Math.Exp(-20 * s_perMinuteAt105 / 2), log.Inverted(Ph).Low, 1e-6);
        Assert.False(log.Gaps is List<LogGap>); // nobody takes one out
    }

    // A reading more that lies between its neighbours makes the answer no less sure, at either end.
    [Property(Arbitrary = [typeof(SugarGenerators)], MaxTest = 100)]
    public void AReadingMoreNeverWidensTheAnswer(Share first, Share last, Share where, Share start)
    {
        double from = 20 + 110 * first.Value, to = 20 + 110 * last.Value, at = 0.5 + 9 * where.Value;
        SugarSolution syrup = SugarSolution.OfSucrose(0.3 + 0.5 * start.Value);
        ThermometerReading a = new(0, from), between = new(at, from + (to - from) * at / 10), b = new(10, to);
        Spread without = CookingLog.Of(syrup, AirPressure.SeaLevel, [a, b]).Inverted(Ph), with = CookingLog.Of(syrup, AirPressure.SeaLevel, [a, between, b]).Inverted(Ph);
        Assert.True(with.Low >= without.Low && with.High <= without.High * (1 + 1e-9));
        // And a stricter limit is never surer.
        Spread strict = CookingLog.Of(syrup, AirPressure.SeaLevel, [a, between, b], 1).Inverted(Ph);
        Assert.True(strict.Low <= with.Low && strict.High >= with.High && strict.Likely == with.Likely);
    }

    private static double Rate(double celsius, double water) => 8.12831e16 * water * Math.Exp(-13055.7 / (celsius + 273.15)) * Math.Pow(10, -Ph);

    private static CookingLog Log(params (double Minutes, double Celsius)[] readings) => Log(90, readings);

    private static CookingLog Log(double gapSeconds, params (double Minutes, double Celsius)[] readings) =>
        CookingLog.Of(SugarSolution.OfSucrose(0.75), AirPressure.SeaLevel, readings.Select(reading => new ThermometerReading(reading.Minutes, reading.Celsius)), gapSeconds);
}
