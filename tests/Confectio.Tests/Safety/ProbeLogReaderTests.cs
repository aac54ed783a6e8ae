using System.Globalization;
using System.Text;
using Confectio.Heat;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Text;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>
/// Logs as thermometers and people write them. Good rows survive bad ones, every oddity has its line, and mending a log never makes more of the heat than the text
/// has in it.
/// </summary>
public sealed class ProbeLogReaderTests
{
    private const string Header = "minutes,celsius\n";

    // Garibaldi and others (1969), white at pH 9.2: the set that counts the quickest of those built in.
    private static readonly KineticSet s_set = KineticSet.Get("garibaldi-white");

    [Theory]
    [InlineData("minutes,celsius\n0,20\n1.5,56.5\n2,60\n")]
    [InlineData("seconds,celsius\n0,20\n90,56.5\n120,60\n")]
    [InlineData("time,celsius\n0:00:00,20\n0:01:30,56.5\n0:02:00,60\n")]
    [InlineData("minutes,fahrenheit\n0,68\n1.5,133.7\n2,140\n")]
    [InlineData("seconds;fahrenheit\n0;68\n90;133.7\n120;140\n")]
    [InlineData("time\tcelsius\n0:00:00\t20\n00:01:30.0\t56.5\n0:02:00\t60\n")]
    [InlineData("Celsius, Probe, MINUTES\n20, whisk, 0\n56.5, whisk, 1.5\n60, whisk, 2\n")] // any order, any case, other columns, blanks
    [InlineData("\uFEFF\nminutes,celsius\r\n\r\n0,20\r\n1.5,56.5\r\n\r\n2,60")]
    [InlineData("minutes,celsius\n0,+20\n\"1.5\",\"56.5\"\n2.00,60.\n")]
    public void OneLogInManyWritings(string text)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(text);
        Assert.Empty(problems);
        AssertReadings([(0, 20), (1.5, 56.5), (2, 60)], log);
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("")]
    public void TheCultureOfTheMachineChangesNothing(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            // A Turkish I in a header, points and commas for decimals; the header's separator decides about columns.
            (ProbeLog? point, IReadOnlyList<Problem> none) = Read("MINUTES,CELSIUS\n0,20.5\n1.25,56.75\n");
            Assert.Empty(none);
            AssertReadings([(0, 20.5), (1.25, 56.75)], point);
            (ProbeLog? comma, none) = Read("TIME;FAHRENHEIT\n0:00:00;68\n0:01:15,5;133,7\n", AmountReading.DecimalComma);
            Assert.Empty(none);
            AssertReadings([(0, 20), (75.5 / 60, 56.5)], comma);
            (_, IReadOnlyList<Problem> problems) = Read("minutes,celsius\n0,20\n1.25,1e3\n1.5,60\n");
            Assert.Equal("line 3, column celsius: '1e3' is not a number from -40 to 215; the reading is left out", Assert.Single(problems).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // A decimal mark that is not the agreed one is refused: a number ten or a thousand times off would be worse than none.
    [Theory]
    [InlineData("minutes;celsius\n0;20\n1;56,7\n2;60\n", AmountReading.DecimalPoint)]
    [InlineData("minutes;celsius\n0;20\n1;56.7\n2;60\n", AmountReading.DecimalComma)]
    public void TheOtherDecimalMarkIsRefused(string text, AmountReading reading)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(text, reading);
        AssertReadings([(0, 20), (2, 60)], log);
        AssertProblem(problems, 3, "celsius", "is not a number");
    }

    // Decimal commas between commas: "1,5" and "60" in two columns are three fields. What stands in the columns is not what was meant.
    [Fact]
    public void ARowWithMoreFieldsThanTheHeaderIsNoReading()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read("minutes,celsius\n0,20\n1,5,60\n2,60\n");
        AssertReadings([(0, 20), (2, 60)], log);
        AssertProblem(problems, 3, null, "");
    }

    [Theory]
    [InlineData("1,", "celsius")]
    [InlineData("1", "celsius")]
    [InlineData(",56", "minutes")]
    [InlineData("1,warm", "celsius")]
    [InlineData("soon,56", "minutes")]
    [InlineData("1,NaN", "celsius")]
    [InlineData("NaN,56", "minutes")]
    [InlineData("1,Infinity", "celsius")]
    [InlineData("1,-Infinity", "celsius")]
    [InlineData("Infinity,56", "minutes")]
    [InlineData("1,∞", "celsius")]
    [InlineData("-1,56", "minutes")]
    [InlineData("1000001,56", "minutes")]
    [InlineData("1,216", "celsius")]
    [InlineData("1,-41", "celsius")]
    [InlineData("1,1e2", "celsius")]
    [InlineData("1,0x38", "celsius")]
    [InlineData("1,5 6", "celsius")]
    [InlineData("1,56°", "celsius")]
    public void ABadRowIsLeftOutAndTheOthersSurvive(string row, string column)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + "0,55\n" + row + "\n2,57\n3,58\n");
        AssertReadings([(0, 55), (2, 57), (3, 58)], log);
        Assert.Contains("left out", AssertProblem(problems, 3, column, "").Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0:60:00")]
    [InlineData("0:00:60")]
    [InlineData("-0:01:00")]
    [InlineData("0:-1:00")]
    [InlineData("1:2:3:4")]
    [InlineData("5")]
    [InlineData("::")]
    [InlineData("")]
    [InlineData("0:01:NaN")]
    [InlineData("0:01:00 PM")]
    [InlineData("99999:00:00")]
    public void ABadClockIsLeftOut(string time)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read("time,celsius\n0:00:00,55\n" + time + ",56\n0:02:00,57\n0:03:00,58\n");
        AssertReadings([(0, 55), (2, 57), (3, 58)], log);
        AssertProblem(problems, 3, "time", "");
    }

    // Many recorders write minutes and seconds with one colon. Read as hours and minutes the log would be sixty times as long, and so would the kill: two parts
    // must be told of, or taken as the shorter.
    [Fact]
    public void MinutesAndSecondsAreNotTakenForHoursUnseen()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read("time,celsius\n00:00,56\n00:30,56\n01:00,56\n01:30,56\n");
        Assert.True(log is null || log.Minutes <= 1.5 || problems.Count > 0, "90 seconds, or 90 minutes: nothing says that it is in doubt");
    }

    [Fact]
    public void NothingIsNoLog()
    {
        AssertNone("", 1, "empty");
        AssertNone("\n\n  \n", 1, "empty");
        AssertNone(Header, 1, "0 readings can be used");
        AssertNone(Header + "0,60\n", 1, "1 readings can be used");
        AssertNone(Header + "0,60\n0,60\n", 1, "1 readings can be used");
        AssertNone(Header + "warm,hot\n", 2, "'warm'");
    }

    [Theory]
    [InlineData("celsius\n60\n61\n", "one column of times")]
    [InlineData("minutes,seconds,celsius\n0,0,60\n1,60,61\n", "one column of times")]
    [InlineData("minutes,time,celsius\n0,0:00:00,60\n1,0:01:00,61\n", "one column of times")]
    [InlineData("minutes\n0\n1\n", "one column of temperatures")]
    [InlineData("minutes,degrees\n0,60\n1,61\n", "one column of temperatures")]
    [InlineData("minutes,celsius,fahrenheit\n0,60,140\n1,61,141.8\n", "one column of temperatures")]
    [InlineData("minutes,celsius,celsius\n0,60,60\n1,61,61\n", "stands twice")]
    public void ColumnsThatAreMissingOrDoubledAreNoLog(string text, string says) => AssertNone("\n" + text, 2, says);

    [Fact]
    public void AQuoteLeftOpenAndALineOfTenMegabytesCostOneRowEach()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + "0,55\n1,\"56\n2," + new string('9', 10_000_000) + "\n3,57\n");
        AssertProblem(problems, 3, null, "quotation mark");
        AssertProblem(problems, 4, null, "longer than");
        AssertProblem(problems, 4, "celsius", "left out");
        AssertReadings([(0, 55), (1, 56), (3, 57)], log);
        // What is quoted of it in a message is short.
        Assert.All(problems, problem => Assert.True(problem.Message.Length < 300));
    }

    [Fact]
    public void ReadingsOutOfOrderArePutInOrderAndTold()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + "0,55\n2,57\n1,56\n3,58\n");
        AssertReadings([(0, 55), (1, 56), (2, 57), (3, 58)], log);
        AssertProblem(problems, 4, null, "the time goes back");
    }

    [Fact]
    public void OfTwoReadingsOfOneTimeTheColderIsKept()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + "0,55\n1,58\n1,56\n2,57\n2,57\n3,57\n3,59\n3,58\n4,58\n");
        AssertReadings([(0, 55), (1, 56), (2, 57), (3, 57), (4, 58)], log);
        AssertProblem(problems, 3, null, "two temperatures");
        AssertProblem(problems, 6, null, "the second reading is left out");
        AssertProblem(problems, 8, null, "the colder is kept");
        AssertProblem(problems, 9, null, "the colder is kept");
        Assert.Equal(4, problems.Count);
    }

    [Fact]
    public void ASpikeIsLeftOutAndTold()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + "0,55\n1,55.5\n2,95\n3,56\n4,140\n5,56\n");
        AssertReadings([(0, 55), (1, 55.5), (3, 56), (5, 56)], log);
        AssertProblem(problems, 4, null, "95 °C leaps");
        AssertProblem(problems, 6, null, "140 °C leaps");
    }

    // A quick rise is no spike: it does not come back.
    [Fact]
    public void AQuickRiseIsKept()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + "0,20\n1,40\n2,60\n3,61\n4,50\n");
        AssertReadings([(0, 20), (1, 40), (2, 60), (3, 61), (4, 50)], log);
        Assert.Empty(problems);
    }

    // A sensor that fails at the first or the last reading: nothing with water in it is at 140 °C, and half a minute on the way there is a great deal of
    // kill on paper.
    [Theory]
    [InlineData("0,55\n1,55\n2,55\n3,140\n")]
    [InlineData("0,140\n1,55\n2,55\n3,55\n")]
    [InlineData("0,55\n1,140\n")]
    public void AnEndThatNoMixCanHaveIsNotCounted(string rows)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + rows);
        Assert.NotEmpty(problems);
        Assert.True(log is null || log.MaximumCelsius < 105, "a reading above 105 °C was kept");
    }

    // 134 °F for 3.5 minutes, in a column that says Celsius: refused, whatever the length of the log.
    [Theory]
    [InlineData("0,70\n5,110\n10,134\n13.5,134\n14,100\n")]
    [InlineData("0,120\n1,134\n4.5,134\n")]
    [InlineData("0,134\n3.5,134\n")]
    [InlineData("0,70\n10,160\n")]
    [InlineData("0,70\n5,100\n10,134\n")]
    public void FahrenheitInAColumnOfCelsiusIsRefused(string rows)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + rows);
        Assert.True(log is null, "the log was used");
        AssertProblem(problems, 1, "celsius", "Fahrenheit");
    }

    // A thousand readings in °F on the way up to 105.3, eight of them above 105 in a smooth rise: those are no spikes. Of a mix that is lukewarm nothing must be
    // counted as if it were scalding.
    [Fact]
    public void ALongLukewarmLogInFahrenheitIsNotTakenForAScaldingOne()
    {
        string rows = string.Concat(Enumerable.Range(0, 1000).Select(i => FormattableString.Invariant($"{i},{70 + i * 0.0353:0.00}\n")));
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + rows);
        Assert.NotEmpty(problems);
        Assert.True(log is null || log.LogReduction(s_set).Likely == 0, FormattableString.Invariant($"70 to 105.3 °F, which is 41 °C, was counted as °C: {log?.LogReduction(s_set).Likely:0} log"));
    }

    // 20 to 71 °C in a column that says Fahrenheit would be −7 to 22 °C: told of; it promises nothing.
    [Theory]
    [InlineData("0,20\n5,45\n10,71\n")]
    [InlineData("0,33\n5,45\n10,71\n")]
    public void CelsiusInAColumnOfFahrenheitIsTold(string rows)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read("minutes,fahrenheit\n" + rows);
        AssertProblem(problems, 1, "fahrenheit", "Celsius");
        Assert.True(log is null || log.LogReduction(s_set).High == 0);
    }

    // The range that the messages state is the range that is read: below freezing is a reading, or a problem with its line, and never an exception.
    [Theory]
    [InlineData("minutes,celsius\n0,-5\n1,4\n2,5\n")]
    [InlineData("minutes,fahrenheit\n0,20\n1,40\n2,120\n")]
    [InlineData("minutes,celsius\n0,-40\n1,215\n2,5\n")]
    public void AReadingBelowFreezingNeverThrows(string text) => Assert.Null(Record.Exception(() => Read(text)));

    // The limit is 90 s and not a number of usual steps: two readings half an hour apart have a gap between them as well.
    [Fact]
    public void AGapIsTold()
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + "0,55\n1,55\n2,55\n30,56\n31,56\n");
        AssertReadings([(0, 55), (1, 55), (2, 55), (30, 56), (31, 56)], log);
        Assert.Contains("1680 s", AssertProblem(problems, 5, null, "without a reading").Message, StringComparison.Ordinal);
        Assert.Equal([(2.0, 30.0)], log!.Gaps.Select(gap => (gap.FromMinutes, gap.ToMinutes)));
        AssertProblem(Read(Header + "0,55\n30,56\n").Problems, 3, null, "1800 s without a reading");
        Assert.Empty(Read(Header + "0,55\n1,55\n2,55\n3.5,56\n4,56\n").Problems);
    }

    // A clock that passes midnight: ten minutes before and ten after. Put in order of time it would be a log of a day, and most of it at 56 °C.
    [Fact]
    public void AClockThatPassesMidnightIsNoDayOfHeat()
    {
        StringBuilder text = new("time,celsius\n");
        for (int i = -10; i <= 10; i++)
            text.Append(CultureInfo.InvariantCulture, $"{(i < 0 ? 23 : 0)}:{(i < 0 ? 60 + i : i):00}:00,56\n");
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(text.ToString());
        Assert.NotEmpty(problems);
        Assert.True(log is null || log.Minutes <= 20.001, FormattableString.Invariant($"20 minutes became {log?.Minutes}"));
    }

    // Cold white poured in, a wet whisk, or ice on the probe: the dip was measured. To leave it out says that the mix stayed hot, which nobody measured.
    [Fact]
    public void ADipIsNotMendedIntoHeat()
    {
        const string Rows = "0,58\n1,58\n2,40\n3,58\n4,58\n";
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(Header + Rows);
        AssertProblem(problems, 4, null, "40 °C");
        double asWritten = s_set.Unbroken(Readings.Of((0, 58), (1, 58), (2, 40), (3, 58), (4, 58))).Likely;
        Assert.True(log is null || log.LogReduction(s_set).Likely <= asWritten + 1e-12, FormattableString.Invariant($"{log?.LogReduction(s_set).Likely:0.00} log of {asWritten:0.00}"));
    }

    // Whatever is mended: no more heat than the rows that can be read have in them as they stand.
    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 300)]
    public void MendingMakesNoHeat(RandomLog random)
    {
        string text = Header + string.Concat(random.Pairs.Select(pair => FormattableString.Invariant($"{pair.Minutes:R},{pair.Celsius:R}\n")));
        (ProbeLog? log, _) = Read(text);
        double asWritten = s_set.LogReduction(Readings.Of(random.Pairs)).Likely;
        Assert.True(log is null || log.LogReduction(s_set).Likely <= asWritten * (1 + 1e-12));
    }

    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 200)]
    public void TheLogOfAReadingIsSortedWhateverTheOrderOfTheRows(RandomLog random, int seed)
    {
        (double Minutes, double Celsius)[] rows = [.. random.Pairs];
        new Random(seed).Shuffle(rows);
        static string Text(IEnumerable<(double Minutes, double Celsius)> pairs) =>
            Header + string.Concat(pairs.Select(pair => FormattableString.Invariant($"{pair.Minutes:R},{pair.Celsius:R}\n")));
        ProbeLog? shuffled = Read(Text(rows)).Log, straight = Read(Text(random.Pairs)).Log;
        Assert.Equal(straight?.Readings, shuffled?.Readings);
        Assert.All(shuffled!.Readings.Zip(shuffled.Readings.Skip(1)), pair => Assert.True(pair.First.Minutes < pair.Second.Minutes));
    }

    [Fact]
    public void ProblemsRiseWithTheirLines()
    {
        IReadOnlyList<Problem> problems = Read(Header + "0,55\nx,1\n3,56\n2,56\n2,57\n4,y\n60,57\n61,90\n62,57\n").Problems;
        Assert.True(problems.Count >= 6);
        Assert.Equal(problems.Select(problem => problem.Line).Order(), problems.Select(problem => problem.Line));
    }

    // A million readings are the most: what comes after them is told of and not dropped in silence.
    [Fact]
    public void TheMillionAndFirstReadingIsTold()
    {
        StringBuilder text = new(Header);
        for (int i = 0; i <= ProbeLog.MaximumReadings; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i / 2}.{i % 2 * 5},56\n");
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(text.ToString());
        Assert.True(log is null || log.Readings.Count == ProbeLog.MaximumReadings);
        AssertProblem(problems, ProbeLog.MaximumReadings + 2, null, "");
    }

    // A recorder that writes each second by the minute: many readings of one time, in work that grows with the rows and not with their square: twice the rows
    // allocate twice as much, where copying the rest at every oddity allocated or moved four times as much.
    [Theory]
    [InlineData(2, 56, 57)] // pairs of one time
    [InlineData(1, 56, 66)] // a spike in every other row
    public void ManyOdditiesAreReadWithWorkThatGrowsWithTheRows(int perMinute, int even, int odd)
    {
        long once = Allocated(100_000), twice = Allocated(200_000);
        Assert.InRange(twice, once, 2.6 * once);

        long Allocated(int rows)
        {
            StringBuilder text = new(Header);
            for (int i = 0; i < rows; i++)
                text.Append(CultureInfo.InvariantCulture, $"{i / perMinute},{(i % 2 == 0 ? even : odd)}\n");
            string all = text.ToString();
            long before = GC.GetAllocatedBytesForCurrentThread();
            (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(all);
            long spent = GC.GetAllocatedBytesForCurrentThread() - before;
            Assert.NotNull(log);
            Assert.InRange(problems.Count, 1, 1001);
            return spent;
        }
    }

    // Whatever stands in a file: an answer with problems, or a log that rises in time, and never an exception.
    [Property(MaxTest = 500)]
    public void AnyTextIsRead(FsCheck.NonNull<string> text, bool comma)
    {
        AmountReading reading = comma ? AmountReading.DecimalComma : AmountReading.DecimalPoint;
        Check(Read(text.Get, reading));
        Check(Read(Header + text.Get, reading));
    }

    [Property(MaxTest = 500)]
    public void AnyRowsOfOddFieldsAreRead(int seed)
    {
        string[] fields = ["", "0", "1", "-1", "2.5", "2,5", "59.9", "60", "140", "215", "-40", "NaN", "∞", "1e3", "0:01:00", "0:59:59.9", "1:2", ":", "\"", "\"\"", "\"60\"", "x", "\u0130", " "];
        string[] headers = ["minutes,celsius", "seconds;fahrenheit", "time\tcelsius", "time,fahrenheit", "celsius,minutes", "minutes", "a,b"];
        Random random = new(seed);
        string header = headers[random.Next(headers.Length)];
        string separator = header.Contains(';', StringComparison.Ordinal) ? ";" : header.Contains('\t', StringComparison.Ordinal) ? "\t" : ",";
        StringBuilder text = new(header + "\n");
        for (int i = random.Next(20); i > 0; i--)
            text.Append(string.Join(separator, Enumerable.Range(0, random.Next(4)).Select(_ => fields[random.Next(fields.Length)]))).Append('\n');
        Check(Read(text.ToString()));
    }

    [Fact]
    public void BadArgumentsAreRefused() => Assert.Throws<ArgumentNullException>("text", () => ProbeLog.Read(null!));

    private static (ProbeLog? Log, IReadOnlyList<Problem> Problems) Read(string text, AmountReading reading = AmountReading.DecimalPoint)
    {
        ProbeLog? log = ProbeLog.Read(new StringReader(text), new ProbeLogOptions { Reading = reading, ConfirmedScale = Confirmed(text) })
            .Told(out IReadOnlyList<Problem> problems);
        return (log, problems);
    }

    // These logs begin hot on purpose: somebody looked at the thermometer. Logs that nobody looked at are further up, and in GapTests.
    private static TemperatureScale? Confirmed(string text) => text.Contains("celsius", StringComparison.Ordinal) ? TemperatureScale.Celsius : null;

    private static void Check((ProbeLog? Log, IReadOnlyList<Problem> Problems) read)
    {
        if (read.Log is null)
            Assert.NotEmpty(read.Problems);
        else
            Assert.All(read.Log.Readings.Zip(read.Log.Readings.Skip(1)), pair => Assert.True(pair.First.Minutes < pair.Second.Minutes));
        Assert.All(read.Problems, problem => Assert.True(problem.Line >= 1 && problem.Message.Length > 0));
    }

    private static void AssertNone(string text, int line, string says)
    {
        (ProbeLog? log, IReadOnlyList<Problem> problems) = Read(text);
        Assert.Null(log);
        Assert.Contains(problems, problem => problem.Line == line && problem.Message.Contains(says, StringComparison.Ordinal));
    }

    private static Problem AssertProblem(IReadOnlyList<Problem> problems, int line, string? column, string says) =>
        problems.FirstOrDefault(problem => problem.Line == line && problem.Column == column && problem.Message.Contains(says, StringComparison.Ordinal))
        ?? throw new Xunit.Sdk.XunitException($"no problem on line {line} ({column}) that says '{says}', but: {string.Join(" | ", problems)}");

    private static void AssertReadings((double Minutes, double Celsius)[] expected, ProbeLog? log)
    {
        Assert.NotNull(log);
        Assert.Equal(expected.Length, log.Readings.Count);
        Assert.All(expected.Zip(log.Readings), pair =>
        {
            // Seconds and Fahrenheit are turned with a rounding or two.
            Assert.Equal(pair.First.Minutes, pair.Second.Minutes, 1e-12);
            Assert.Equal(pair.First.Celsius, pair.Second.Celsius, 1e-12);
        });
    }
}
