using Confectio.Heat;
using Confectio.Safety;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>
/// Appendix A of FSIS for cooked beef, as it is reprinted: times for 6.5 and for 7 log of Salmonella, minutes up to 145 °F and seconds above. The table is of
/// beef and says nothing of egg; it is here because it is the longest published column of times that follows one z.
/// </summary>
public sealed class FsisTableTests
{
    // °F, time for 6.5 log, time for 7 log; typed from the reprint and not read from the library's own table.
    private static readonly (int Fahrenheit, int SixAndAHalf, int Seven)[] s_minutes =
    [
        (130, 112, 121), (131, 89, 97), (132, 71, 77), (133, 56, 62), (134, 45, 47), (135, 36, 37), (136, 28, 32), (137, 23, 24), (138, 18, 19), (139, 15, 15),
        (140, 12, 12), (141, 9, 10), (142, 8, 8), (143, 6, 6), (144, 5, 5), (145, 4, 4),
    ];

    private static readonly (int Fahrenheit, int SixAndAHalf, int Seven)[] s_seconds =
    [
        (146, 169, 182), (147, 134, 144), (148, 107, 115), (149, 85, 91), (150, 67, 72), (151, 54, 58), (152, 43, 46), (153, 34, 37), (154, 27, 29), (155, 22, 23),
        (156, 17, 19), (157, 14, 15),
    ];

    private static readonly KineticSet s_set = KineticSet.Get("fsis-appendix-a");

    public static TheoryData<int, double, double, double> SixAndAHalfLog =>
        [.. s_minutes.Select(row => (row.Fahrenheit, (double)row.SixAndAHalf, 1.0, 6.5)), .. s_seconds.Select(row => (row.Fahrenheit, (double)row.SixAndAHalf, 60.0, 6.5))];

    public static TheoryData<int, double, double, double> SevenLogInSeconds => [.. s_seconds.Select(row => (row.Fahrenheit, (double)row.Seven, 60.0, 7.0))];

    // One printed unit: a minute up to 145 °F, a second above. The printed times are the model's, rounded up more often than not: the residuals run from −0.20 (150 °F)
    // to +0.93 (142 °F) of a unit.
    [Theory]
    [MemberData(nameof(SixAndAHalfLog))]
    public void EveryRowOfTheSixAndAHalfLogColumn(int fahrenheit, double printed, double perMinute, double logs) =>
        Assert.InRange(printed - Time(fahrenheit, logs) * perMinute, -0.25, 1);

    // The same by way of a log: held for the printed time the reduction is at least 6.5 log, less one unit of print.
    [Theory]
    [MemberData(nameof(SixAndAHalfLog))]
    public void ALogHeldForThePrintedTimeReachesIt(int fahrenheit, double printed, double perMinute, double logs)
    {
        double minutes = printed / perMinute, celsius = Readings.Celsius(fahrenheit);
        double found = Readings.Log((0, celsius), (minutes, celsius)).LogReduction(s_set).Likely;
        Assert.Equal(logs * minutes / Time(fahrenheit, logs), found, 1e-9 * found);
        Assert.Equal(logs, found, logs / (printed - 1));
    }

    [Theory]
    [MemberData(nameof(SevenLogInSeconds))]
    public void TheSevenLogColumnInSeconds(int fahrenheit, double printed, double perMinute, double logs) =>
        Assert.Equal(printed, Time(fahrenheit, logs) * perMinute, 0.9);

    // A named unevenness of the printed column: its minutes from 131 to 136 °F leave the line by up to +1.7 and −1.1 minutes; the other rows of
    // minutes are within one of it.
    [Fact]
    public void TheSevenLogColumnIsUnevenFrom131To136()
    {
        double[] uneven = [.. s_minutes.Where(row => row.Fahrenheit is >= 131 and <= 136).Select(row => row.Seven - Time(row.Fahrenheit, 7))];
        Assert.InRange(uneven.Max(), 1.5, 1.8);
        Assert.InRange(uneven.Min(), -1.2, -1.0);
        Assert.All(s_minutes.Where(row => row.Fahrenheit is < 131 or > 136), row => Assert.Equal(row.Seven, Time(row.Fahrenheit, 7), 1.0));
        Assert.All(HoldTimeTable.Get("fsis-appendix-a").Rows.Where(row => row.Product == "beef, 7 log" && row.Fahrenheit is >= 133 and <= 136),
            row => Assert.Contains("uneven", row.Provenance.Note, StringComparison.Ordinal));
    }

    // The table has nought seconds at 158 °F; its own z has 10.6. What is printed is a policy and no kinetics.
    [Fact]
    public void At158ItIsAPolicy()
    {
        double model = 112 * 60 * Math.Pow(10, -2.8);
        Assert.Equal(10.6, model, 0.1);
        HoldTime row = HoldTimeTable.Get("fsis-appendix-a").Rows.Single(row => row.Fahrenheit == 158 && row.Product == "beef, 6.5 log");
        Assert.Equal(0, row.Seconds);
        Assert.Contains("policy", row.Provenance.Note, StringComparison.Ordinal);
        // The set ends at 157 °F: above it counts as there, and promises no more.
        Assert.Equal(Time(157, 6.5), Time(158, 6.5), 1e-12);
        Assert.Equal(112 * Math.Pow(10, -2.7), Time(158, 6.5), 1e-6);
    }

    [Fact]
    public void TheBuiltInRowsAreThePrintedOnes()
    {
        List<(string, double, double)> typed = [];
        foreach ((int fahrenheit, int sixAndAHalf, int seven) in s_minutes)
            typed.AddRange([("beef, 6.5 log", fahrenheit, sixAndAHalf * 60), ("beef, 7 log", fahrenheit, seven * 60)]);
        foreach ((int fahrenheit, int sixAndAHalf, int seven) in s_seconds)
            typed.AddRange([("beef, 6.5 log", fahrenheit, sixAndAHalf), ("beef, 7 log", fahrenheit, seven)]);
        typed.AddRange([("beef, 6.5 log", 158, 0), ("beef, 7 log", 158, 0)]);
        IReadOnlyList<HoldTime> rows = HoldTimeTable.Get("fsis-appendix-a").Rows;
        Assert.Equal(typed.Order(), rows.Select(row => (row.Product, row.Fahrenheit, row.Seconds)).Order());
        Assert.All(rows, row => Assert.Equal(FoodMatrix.Beef, row.Matter));
    }

    private static double Time(double fahrenheit, double logs) => logs * s_set.DecimalReductionMinutes(Readings.Celsius(fahrenheit))!.Value.Likely;
}
