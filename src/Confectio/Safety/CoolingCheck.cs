using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Safety;

/// <summary>
/// A log held against the cooling rule of the Food Code, 3-501.14: from 135 °F (57 °C) to 70 °F (21 °C) within 2 hours, and to 41 °F (5 °C)
/// within 6 hours in all. The local code decides.
/// </summary>
public sealed class CoolingCheck
{
    private const double StartCelsius = (135 - 32) / 1.8, MiddleCelsius = (70 - 32) / 1.8, EndCelsius = (41 - 32) / 1.8;
    private const double MiddleMinutes = 120, EndMinutes = 360, Slack = 1e-6;

    private CoolingCheck(ProbeLog log, CoolingOutcome middle, CoolingOutcome end, double? minutesToMiddle, double? minutesToEnd)
    {
        Log = log;
        Middle = middle;
        End = end;
        MinutesToMiddle = minutesToMiddle;
        MinutesToEnd = minutesToEnd;
    }

    /// <summary>The log, with its gaps.</summary>
    public ProbeLog Log { get; }

    /// <summary>To 70 °F within 2 hours.</summary>
    public CoolingOutcome Middle { get; }

    /// <summary>To 41 °F within 6 hours.</summary>
    public CoolingOutcome End { get; }

    /// <summary>Minutes to 70 °F, the most that they can have been; <see langword="null"/> where the log does not show it.</summary>
    public double? MinutesToMiddle { get; }

    /// <summary>Minutes to 41 °F, the most that they can have been; <see langword="null"/> where the log does not show it.</summary>
    public double? MinutesToEnd { get; }

    /// <summary>
    /// Checks a log. The clock starts where it first falls below 135 °F, and a warming on the way does not set it back. A log that begins
    /// below has an unknown time behind it: it can show that a step took too long, and not that it was in time. Nor can a log that was
    /// mended in reading (<see cref="ProbeLog.IsMended"/>). Where a mark was passed within a gap, nobody knows when: a step is in time
    /// where it is so at the worst, and too late where it is so at the best.
    /// </summary>
    /// <param name="log">The log. Its limit of a gap is 90 s unless stated, which is short for a log of hours; state yours.</param>
    /// <exception cref="ArgumentNullException"><paramref name="log"/> is null.</exception>
    public static CoolingCheck Of(ProbeLog log)
    {
        ReadOnlySpan<ThermometerReading> readings = Guard.NotNull(log).Span;
        int first = 0;
        while (first < readings.Length && readings[first].Celsius < StartCelsius)
            first++;
        bool beganCool = first == readings.Length;
        if (beganCool)
            first = 0;
        int last = first;
        while (last + 1 < readings.Length && readings[last + 1].Celsius >= StartCelsius)
            last++;
        if (!beganCool && last == readings.Length - 1 && readings[last].Celsius > StartCelsius + Slack)
            return new CoolingCheck(log, CoolingOutcome.NotShown, CoolingOutcome.NotShown, null, null);
        (double Early, double Late) start = beganCool || last + 1 == readings.Length ? (readings[last].Minutes, readings[last].Minutes)
            : Passed(readings[last], readings[last + 1], StartCelsius, log.GapSeconds);
        (double Early, double Late)? middle = Reached(readings[last..], MiddleCelsius, log.GapSeconds),
            end = Reached(readings[last..], EndCelsius, log.GapSeconds);
        double elapsed = readings[^1].Minutes - start.Late;
        CoolingOutcome toMiddle = Outcome(start, middle, MiddleMinutes, elapsed), toEnd = Outcome(start, end, EndMinutes, elapsed);
        return beganCool || log.IsMended
            ? new CoolingCheck(log, Unless(toMiddle), Unless(toEnd), null, null)
            : new CoolingCheck(log, toMiddle, toEnd, middle?.Late - start.Early, end?.Late - start.Early);
    }

    private static CoolingOutcome Unless(CoolingOutcome outcome) => outcome == CoolingOutcome.TooLate ? outcome : CoolingOutcome.NotShown;

    private static CoolingOutcome Outcome((double Early, double Late) start, (double Early, double Late)? passed, double most,
        double elapsed) => passed is (double early, double late)
        ? late - start.Early <= most + Slack ? CoolingOutcome.InTime : early - start.Late > most + Slack ? CoolingOutcome.TooLate
            : CoolingOutcome.NotShown
        : elapsed > most + Slack ? CoolingOutcome.TooLate : CoolingOutcome.NotShown;

    private static (double Early, double Late)? Reached(ReadOnlySpan<ThermometerReading> readings, double celsius, double gapSeconds)
    {
        // A temperature that was turned from Fahrenheit may be above its own mark by its last bit.
        double mark = celsius + 1e-9;
        if (readings[0].Celsius <= mark)
            return (readings[0].Minutes, readings[0].Minutes);
        for (int i = 1; i < readings.Length; i++)
        {
            if (readings[i].Celsius <= mark)
                return Passed(readings[i - 1], readings[i], Math.Max(celsius, readings[i].Celsius), gapSeconds);
        }
        return null;
    }

    // When a mark was passed between two readings: on the straight line, or anywhere in a gap.
    private static (double Early, double Late) Passed(ThermometerReading from, ThermometerReading to, double celsius, double gapSeconds)
    {
        if (LogGap.IsBetween(from, to, gapSeconds))
            return (from.Minutes, to.Minutes);
        double minutes = ProbeLog.Crossing(from, to, celsius);
        return (minutes, minutes);
    }

    /// <summary>How both steps came out.</summary>
    public override string ToString() => $"to 21 °C (70 °F) within 2 hours: {EnumWords.Of(Middle, ' ')}; to 5 °C (41 °F) within 6: {EnumWords.Of(End, ' ')} (Food Code 3-501.14). "
        + "Local codes and licensed practice decide.";
}
