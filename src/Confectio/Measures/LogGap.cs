using System.Globalization;

namespace Confectio.Measures;

/// <summary>
/// A stretch of a log that nobody measured: two readings farther apart than the log's limit. What a log is sure of is counted across none:
/// no kill, no time at a temperature, no inversion.
/// </summary>
public sealed class LogGap
{
    // The limits of the limit, s, and the one of a log that states none.
    internal const double LeastSeconds = 1, MostSeconds = 1.2e8, DefaultSeconds = 90;

    private LogGap(double fromMinutes, double toMinutes)
    {
        FromMinutes = fromMinutes;
        ToMinutes = toMinutes;
    }

    /// <summary>The last reading before it, minutes.</summary>
    public double FromMinutes { get; }

    /// <summary>The first reading after it, minutes.</summary>
    public double ToMinutes { get; }

    /// <summary>Its length, s.</summary>
    public double Seconds => (ToMinutes - FromMinutes) * 60;

    /// <summary>One line, such as <c>1470 s without a reading, from minute 6 to 30.5</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Seconds:0.#} s without a reading, from minute {FromMinutes:0.##} to {ToMinutes:0.##}");

    // A step a hair longer than the limit by the rounding of minutes is none.
    internal static bool IsBetween(ThermometerReading from, ThermometerReading to, double limitSeconds) =>
        (to.Minutes - from.Minutes) * 60 > limitSeconds * (1 + 1e-9) + 1e-6;

    internal static IReadOnlyList<LogGap> In(ThermometerReading[] readings, double limitSeconds)
    {
        List<LogGap> gaps = [];
        for (int i = 1; i < readings.Length; i++)
        {
            if (IsBetween(readings[i - 1], readings[i], limitSeconds))
                gaps.Add(new LogGap(readings[i - 1].Minutes, readings[i].Minutes));
        }
        return gaps.AsReadOnly();
    }
}
