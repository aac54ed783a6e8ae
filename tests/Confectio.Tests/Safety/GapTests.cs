using Confectio.Heat;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>What nobody measured does not count: gaps, blank fields, and a column whose unit is in doubt. Times and kill are reckoned by hand.</summary>
public sealed class GapTests
{
    // Garibaldi and others (1969), white at pH 9.2: D 0.55 min at 55 °C and z 4.6; counted to 60 °C, and above as there.
    private static readonly KineticSet s_set = KineticSet.Get("garibaldi-white");

    private static readonly double s_perMinuteAt60 = Math.Pow(10, 5 / 4.6) / 0.55;

    // Heated on a bath, held at 66 °C; the power is cut for 24.5 minutes; then it is at 66 again. What counts is what stands before and after.
    [Fact]
    public void APowerCutIsNoHeat()
    {
        ProbeLog log = ProbeLog.Of(Readings.Of((0, 66), (0.5, 66), (25, 66), (25.5, 66)));
        Assert.Equal(s_perMinuteAt60 * 1, log.LogReduction(s_set).Likely, 1e-9);
        Assert.Equal(s_perMinuteAt60 * 1, log.LogReductionByTrapezoid(s_set), 1e-9);
        LogGap gap = Assert.Single(log.Gaps);
        Assert.Equal(1470, gap.Seconds, 1e-9);
        Assert.Equal("1470 s without a reading, from minute 0.5 to 25", gap.ToString());
        Assert.Equal(0.5, log.LongestMinutesAtOrAbove(66));
        Assert.Equal(1, log.MinutesAtOrAbove(66));
        Assert.Contains("Nothing is counted across the gap of the log, 1470 s in all.",
            LethalityJudgement.Of(log, FoodMatrix.EggWhite, new Spread(0.998, 0.998, 0.998)).Headline, StringComparison.Ordinal);
        // 3 min at 145 °F (62.8 °C): not held, though 25 minutes lie between the first and the last reading.
        Assert.DoesNotContain(HoldTimeTable.Get("food-code-3-401-11").Rows, row => row.Seconds > 60 && row.IsHeldBy(log));
    }

    [Fact]
    public void TwoReadingsHalfAnHourApartAreTwoReadings()
    {
        ProbeLog log = ProbeLog.Of(Readings.Of((0, 62), (30, 62)));
        Assert.Equal(default, log.LogReduction(s_set));
        Assert.Equal(0, log.LongestMinutesAtOrAbove(62));
        Assert.Single(log.Gaps);
        // Whoever knows that the bath was held may say so, and then it is his word.
        Assert.Equal(30, ProbeLog.Of(Readings.Of((0, 62), (30, 62)), gapSeconds: 1800).LongestMinutesAtOrAbove(62));
    }

    [Fact]
    public void SixBlankFieldsAreNoReadings()
    {
        string text = "time,celsius\n0:00:00,20\n0:00:20,62\n0:00:40,62\n" + string.Concat(Enumerable.Range(0, 6).Select(i => $"0:0{1 + i / 3}:{i % 3 * 20:00},\n")) + "0:03:00,62\n0:03:20,62\n";
        ProbeLog log = ProbeLog.Read(new StringReader(text)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Equal(6, problems.Count(problem => problem.Message.Contains("the field is empty", StringComparison.Ordinal)));
        Assert.Contains(problems, problem => problem.Line == 11 && problem.Message.Contains("140 s without a reading", StringComparison.Ordinal));
        Assert.Equal(20 / 60.0, log.LongestMinutesAtOrAbove(62)!.Value, 1e-9);
        Assert.Equal(40 / 60.0, log.MinutesAtOrAbove(62)!.Value, 1e-9);
    }

    // The limit itself is no gap, a second more is. A million readings a second apart have none.
    [Theory]
    [InlineData(90, 0)]
    [InlineData(91, 1)]
    public void TheLimitIsInclusive(double seconds, int gaps) => Assert.Equal(gaps, ProbeLog.Of(Readings.Of((7, 60), (7 + seconds / 60, 60))).Gaps.Count);

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void AnImpossibleLimitIsRefused(double seconds)
    {
        Assert.Throws<ArgumentOutOfRangeException>("gapSeconds", () => ProbeLog.Of(Readings.Of((0, 60), (1, 60)), seconds));
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => new ProbeLogOptions { GapSeconds = seconds });
        Assert.Throws<ArgumentOutOfRangeException>("gapSeconds", () => s_set.LogReduction(Readings.Of((0, 60), (1, 60)), seconds));
    }

    // More gaps never make more of a log: what a stricter limit leaves is a part of what a wider one counts.
    [FsCheck.Xunit.Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 300)]
    public void AStricterLimitNeverCountsMore(RandomLog random, RandomSet set, byte a, byte b)
    {
        double strict = 1 + Math.Min(a, b), wide = 1 + Math.Max(a, b);
        ProbeLog narrow = ProbeLog.Of(Readings.Of(random.Pairs), strict), broad = ProbeLog.Of(Readings.Of(random.Pairs), wide);
        Assert.True(narrow.LogReduction(set.Set).High <= broad.LogReduction(set.Set).High * (1 + 1e-12));
        Assert.True((narrow.MinutesAtOrAbove(55) ?? 0) <= (broad.MinutesAtOrAbove(55) ?? 0) + 1e-9);
        Assert.True(narrow.Gaps.Count >= broad.Gaps.Count);
        // What is counted and what is gap add up to no more than the log.
        Assert.True((narrow.MinutesAtOrAbove(-60) ?? 0) + narrow.Gaps.Sum(gap => gap.Seconds) / 60 <= narrow.Minutes + 1e-6);
    }

    // Cooling: 135 °F is passed within a gap from 0 to 100 minutes, 70 °F at 130. From the first reading 130 minutes are too many, from the second 30 are not.
    [Fact]
    public void AMarkThatWasPassedInAGapIsNotShown()
    {
        ProbeReading[] readings = Readings.Of((0, Readings.Celsius(150)), (100, Readings.Celsius(130)), (130, Readings.Celsius(70)), (200, Readings.Celsius(41)));
        CoolingCheck check = CoolingCheck.Of(ProbeLog.Of(readings));
        Assert.Equal((CoolingOutcome.NotShown, CoolingOutcome.InTime), (check.Middle, check.End));
        Assert.Equal(3, check.Log.Gaps.Count);
        // The limit stated as two hours: 135 °F at 75 minutes on the straight line, 70 °F 55 minutes after.
        check = CoolingCheck.Of(ProbeLog.Of(readings, 7200));
        Assert.Equal((CoolingOutcome.InTime, CoolingOutcome.InTime), (check.Middle, check.End));
        Assert.Equal(55, check.MinutesToMiddle!.Value, 1e-6);
    }

    // The slack of the check is for rounding: a second and a half too long is too long.
    [Fact]
    public void TheSlackOfTheCoolingCheckIsForRounding()
    {
        Assert.Equal(CoolingOutcome.InTime, CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (120 + 5e-7, 70), (300, 41))).Middle);
        Assert.Equal(CoolingOutcome.TooLate, CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (120 + 1e-5, 70), (300, 41))).Middle);
        Assert.Equal(CoolingOutcome.TooLate, CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (100, 70), (360 + 1e-5, 41))).End);
    }

    // 68 to 100 under a heading of Celsius: a bowl on the counter in Fahrenheit, or a mix that was put to the probe hot. It is asked, and there is no verdict.
    [Theory]
    [InlineData("celsius", "68,70,80,90,100")]
    [InlineData("celsius", "62,62,63,62,62")] // a room
    [InlineData("celsius", "38,45,52,60,68")] // from the refrigerator
    public void ACelsiusColumnThatMayBeFahrenheitIsAskedAbout(string column, string readings)
    {
        string text = $"minutes,{column}\n" + string.Concat(readings.Split(',').Select((value, i) => $"{i},{value}\n"));
        Assert.Null(ProbeLog.Read(new StringReader(text)).Told(out IReadOnlyList<Problem> problems));
        Assert.Contains(problems, problem => problem.Column == "celsius" && problem.Message.StartsWith("is this Celsius?", StringComparison.Ordinal)
            && problem.Message.EndsWith("not used until the unit is confirmed", StringComparison.Ordinal));
        ProbeLog celsius = ProbeLog.Read(new StringReader(text), new ProbeLogOptions { ConfirmedScale = TemperatureScale.Celsius }).Told(out problems)!;
        Assert.Equal(double.Parse(readings.Split(',')[0], System.Globalization.CultureInfo.InvariantCulture), celsius.Readings[0].Celsius);
        ProbeLog fahrenheit = ProbeLog.Read(new StringReader(text), new ProbeLogOptions { ConfirmedScale = TemperatureScale.Fahrenheit }).Told(out _)!;
        Assert.True(fahrenheit.MaximumCelsius <= Readings.Celsius(100) + 1e-9);
    }

    // What begins cold, or falls to where Fahrenheit would be ice, is in Celsius; what never gets hot has no verdict that could be wrong.
    [Theory]
    [InlineData("20,40,60,72")]
    [InlineData("70,50,30,5")]
    [InlineData("38,40,45,49")]
    public void ALogThatCanOnlyBeCelsiusIsNotAskedAbout(string readings) => Assert.NotNull(ProbeLog.Read(new StringReader(
        "minutes,celsius\n" + string.Concat(readings.Split(',').Select((value, i) => $"{i},{value}\n")))).Told(out _));

    [Theory]
    [InlineData("mm:ss", "9:30", 9.5)]
    [InlineData("min:s", "9:30", 9.5)]
    [InlineData("time (mm:ss)", "9:30", 9.5)]
    [InlineData("mm:ss", "90:15.5", 90 + 15.5 / 60)]
    [InlineData("h:mm", "9:30", 570)]
    [InlineData("time (hh:mm)", "09:30", 570)]
    public void OneColonIsReadWhereTheHeadingSaysWhatItParts(string heading, string time, double minutes)
    {
        ProbeLog log = ProbeLog.Read(new StringReader($"{heading},celsius\n0:00,20\n{time},60\n")).Told(out _)!;
        Assert.Equal(minutes, log.Readings[1].Minutes, 1e-9);
    }

    [Theory]
    [InlineData("0:-Infinity:00")]
    [InlineData("-Infinity:00:00")]
    [InlineData("0:00:-Infinity")]
    [InlineData("NaN:00:00")]
    public void AClockOfInfinityIsLeftOut(string time)
    {
        ProbeLog log = ProbeLog.Read(new StringReader($"time,celsius\n0:00:00,20\n{time},60\n0:01:00,61\n")).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Equal(2, log.Readings.Count);
        Assert.Contains(problems, problem => problem.Line == 3 && problem.Column == "time");
    }

    // 700 midnights are more minutes than a log has.
    [Fact]
    public void SevenHundredMidnightsAreTooMany()
    {
        string text = "time,celsius\n" + string.Concat(Enumerable.Repeat("23:00:00,20\n1:00:00,21\n", 700));
        ProbeLog log = ProbeLog.Read(new StringReader(text)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.True(log.Readings[^1].Minutes <= 1e6);
        Assert.InRange(problems.Count, 2, 1001);
        
    }
}
