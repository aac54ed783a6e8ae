using System.Globalization;
using Confectio.Heat;
using Confectio.Safety;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>The lookups of the Food Code, 1-201.10 and 3-501.14, as read in the rules of Tennessee, Texas and Nevada and in a trade note on cooling.</summary>
public sealed class ControlTests
{
    private const ControlNeed No = ControlNeed.NotByTheTable, Assess = ControlNeed.ProductAssessment;

    // Table A: heated to destroy vegetative cells and then packaged. Lines of water activity, columns of pH.
    private static readonly string[] s_tableA =
    [
        "           <=4.6  >4.6-5.6  >5.6",
        "<=0.92     no     no        no",
        ">0.92-0.95 no     no        PA",
        ">0.95      no     PA        PA",
    ];

    // Table B: not heated, or heated and not packaged. The first column ends below 4.2, the first line below 0.88.
    private static readonly string[] s_tableB =
    [
        "           <4.2  4.2-4.6  >4.6-5.0  >5.0",
        "<0.88      no    no       no        no",
        "0.88-0.90  no    no       no        PA",
        ">0.90-0.92 no    no       PA        PA",
        ">0.92      no    PA       PA        PA",
    ];

    /// <summary>The vectors of the reference by their numbers: C41 to C44 of table B, C45 of table A. C46 and C47 are the cooling logs below; there is no C48.</summary>
    [Theory]
    [InlineData("C41", 'B', 0.87, 7.0, No)]
    [InlineData("C42", 'B', 0.88, 5.0, No)]
    [InlineData("C42", 'B', 0.88, 5.1, Assess)]
    [InlineData("C43", 'B', 0.90, 6, Assess)]
    [InlineData("C43", 'B', 0.905, 4.8, Assess)]
    [InlineData("C43", 'B', 0.92, 4.6, No)]
    [InlineData("C43", 'B', 0.93, 4.2, Assess)]
    [InlineData("C44", 'B', 0.99, 4.19, No)]
    [InlineData("C45", 'A', 0.92, 7, No)]
    [InlineData("C45", 'A', 0.93, 5.6, No)]
    [InlineData("C45", 'A', 0.93, 5.61, Assess)]
    [InlineData("C45", 'A', 0.96, 4.6, No)]
    [InlineData("C45", 'A', 0.96, 4.7, Assess)]
    public void TheVectorsByTheirNumbers(string id, char table, double waterActivity, double ph, ControlNeed need) => Assert.True(
        need == (table == 'A' ? TimeTemperatureControl.OfHeatedAndPackaged(waterActivity, ph) : TimeTemperatureControl.Of(waterActivity, ph)), id);

    // Every thousandth of water activity and hundredth of pH, and the numbers beside every limit.
    [Fact]
    public void TheWholeOfBothTables()
    {
        double[] activities = [.. Enumerable.Range(0, 1001).Select(i => i / 1000.0), .. Beside(0.88, 0.90, 0.92, 0.95)];
        double[] acidities = [.. Enumerable.Range(0, 1401).Select(i => i / 100.0), .. Beside(4.2, 4.6, 5.0, 5.6)];
        // Lines and columns once for each number: the sentence of the table is read a few thousand times and not a few million.
        (int A, int B)[] lines = [.. activities.Select(activity => (Line(s_tableA, activity), Line(s_tableB, activity)))];
        (int A, int B)[] columns = [.. acidities.Select(ph => (Column(s_tableA, ph), Column(s_tableB, ph)))];
        string[][] wordsA = [.. s_tableA.Select(Words)], wordsB = [.. s_tableB.Select(Words)];
        for (int i = 0; i < activities.Length; i++)
        {
            for (int j = 0; j < acidities.Length; j++)
            {
                ControlNeed a = TimeTemperatureControl.OfHeatedAndPackaged(activities[i], acidities[j]), b = TimeTemperatureControl.Of(activities[i], acidities[j]);
                bool asPrinted = a == Need(wordsA[lines[i].A][1 + columns[j].A]) && b == Need(wordsB[lines[i].B][1 + columns[j].B]);
                Assert.True(asPrinted, FormattableString.Invariant($"water activity {activities[i]:R}, pH {acidities[j]:R}: {a}, {b}"));
            }
        }
    }

    // C46. Food Code 3-501.14: 135 °F to 70 °F within 2 h and to 41 °F within 6 h in all.
    [Fact]
    public void ACoolingJustInTime()
    {
        CoolingCheck check = CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (120, 70), (360, 41)));
        Assert.Equal((CoolingOutcome.InTime, CoolingOutcome.InTime), (check.Middle, check.End));
        Assert.Equal(120, check.MinutesToMiddle!.Value, 1e-6);
        Assert.Equal(360, check.MinutesToEnd!.Value, 1e-6);
    }

    [Fact] // C47: 70 °F at 2.1 h
    public void TwoHoursAndSixMinutesToTheMiddleAreTooLong()
    {
        CoolingCheck check = CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (126, 70), (360, 41)));
        Assert.Equal((CoolingOutcome.TooLate, CoolingOutcome.InTime), (check.Middle, check.End));
        Assert.Equal(126, check.MinutesToMiddle!.Value, 1e-6);
    }

    [Fact]
    public void TimeThatTheFirstStepDidNotUseCarriesOver()
    {
        // One hour to 70 °F leaves five for the rest.
        CoolingCheck check = CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (60, 70), (359, 41)));
        Assert.Equal((CoolingOutcome.InTime, CoolingOutcome.InTime), (check.Middle, check.End));
        Assert.Equal(CoolingOutcome.TooLate, CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (60, 70), (361, 41))).End);
    }

    [Fact]
    public void TheClockStartsWhereItFallsThrough135()
    {
        // From 160 °F at 0 to 110 at 50 minutes: 135 °F is passed at 25.
        CoolingCheck check = CoolingCheck.Of(Readings.FahrenheitLog((0, 160), (50, 110), (130, 70), (380, 41)));
        Assert.Equal(105, check.MinutesToMiddle!.Value, 1e-6);
        Assert.Equal(355, check.MinutesToEnd!.Value, 1e-6);
        // Between readings 70 and 41 °F are passed on the straight line.
        check = CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (100, 75), (120, 65), (300, 45), (400, 35)));
        Assert.Equal(110, check.MinutesToMiddle!.Value, 1e-6);
        Assert.Equal(340, check.MinutesToEnd!.Value, 1e-6);
    }

    [Fact]
    public void ALogThatEndsTooSoonShowsNothing()
    {
        CoolingCheck check = CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (119, 71)));
        Assert.Equal((CoolingOutcome.NotShown, CoolingOutcome.NotShown), (check.Middle, check.End));
        Assert.Null(check.MinutesToMiddle);
        Assert.Null(check.MinutesToEnd);
        // Past the two hours and not there: that is shown.
        check = CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (121, 71)));
        Assert.Equal((CoolingOutcome.TooLate, CoolingOutcome.NotShown), (check.Middle, check.End));
        check = CoolingCheck.Of(Readings.FahrenheitLog((0, 135), (110, 69), (361, 42)));
        Assert.Equal((CoolingOutcome.InTime, CoolingOutcome.TooLate), (check.Middle, check.End));
        // Still hot: the clock has not started.
        check = CoolingCheck.Of(Readings.FahrenheitLog((0, 150), (600, 140)));
        Assert.Equal((CoolingOutcome.NotShown, CoolingOutcome.NotShown), (check.Middle, check.End));
    }

    // A probe that was put in when the mix had long cooled: how long 135 to 70 °F took is not in the log, and is not shown to have been in time.
    [Fact]
    public void ALogThatBeginsCoolDoesNotShowTheFirstStep()
    {
        CoolingCheck check = CoolingCheck.Of(Readings.FahrenheitLog((0, 65), (60, 40)));
        Assert.NotEqual(CoolingOutcome.InTime, check.Middle);
    }

    // Five hours at 100 °F, and a moment at 136 before the refrigerator: a warming is no new start that makes the five hours good.
    [Fact]
    public void AWarmingInBetweenDoesNotSetTheClockBackUnseen()
    {
        CoolingCheck check = CoolingCheck.Of(Readings.FahrenheitLog((0, 150), (30, 100), (330, 100), (335, 136), (440, 65), (560, 40)));
        Assert.NotEqual((CoolingOutcome.InTime, CoolingOutcome.InTime), (check.Middle, check.End));
    }

    private static ControlNeed Need(string word) => word == "no" ? No : Assess;

    // Limits as printed, read by their signs: each number has one line and one column.
    private static int Line(string[] table, double activity) => Enumerable.Range(1, table.Length - 1).Single(i => Within(Words(table[i])[0], activity));

    private static int Column(string[] table, double ph)
    {
        string[] limits = Words(table[0]);
        // The column of 4.2 to 4.6 is written with a hyphen and no sign: both of its ends are in it.
        return Enumerable.Range(0, limits.Length).Single(i => Within(limits[i], ph));
    }

    private static string[] Words(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static bool Within(string limits, double value)
    {
        string[] ends = limits.TrimStart('<', '>', '=').Split('-');
        double first = double.Parse(ends[0], CultureInfo.InvariantCulture);
        if (limits.StartsWith("<=", StringComparison.Ordinal))
            return value <= first;
        if (limits[0] == '<')
            return value < first;
        bool above = limits[0] == '>' ? value > first : value >= first;
        return above && (ends.Length == 1 || value <= double.Parse(ends[1], CultureInfo.InvariantCulture));
    }

    private static double[] Beside(params double[] limits) => [.. limits.SelectMany(limit => new[] { Math.BitDecrement(limit), limit, Math.BitIncrement(limit) })];

    // A range of what was worked out is judged by its high end: 0.87 would need no control, and it may be 0.89.
    [Fact]
    public void TheHighEndOfARangeDecides()
    {
        Assert.Equal(ControlNeed.ProductAssessment, TimeTemperatureControl.Of(new Spread(0.84, 0.86, 0.89), 6));
        Assert.Equal(ControlNeed.NotByTheTable, TimeTemperatureControl.Of(new Spread(0.83, 0.85, 0.87), 6));
        Assert.Equal(ControlNeed.ProductAssessment, TimeTemperatureControl.OfHeatedAndPackaged(new Spread(0.90, 0.91, 0.93), 6));
        Assert.Equal(ControlNeed.NotByTheTable, TimeTemperatureControl.OfHeatedAndPackaged(new Spread(0.88, 0.90, 0.92), 6));
        Assert.Throws<ArgumentOutOfRangeException>("waterActivity", () => TimeTemperatureControl.Of(new Spread(0.9, 0.9, 1.1), 6));
    }
}
