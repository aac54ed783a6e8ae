using System.Globalization;

namespace Confectio.Heat;

/// <summary>
/// A stretch of a log that nobody measured: two readings farther apart than the log's limit. Nothing is counted across it: no kill, no time at a
/// temperature.
/// </summary>
public sealed class LogGap
{
    internal LogGap(double fromMinutes, double toMinutes)
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
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Seconds:0.#} s without a reading, from minute {FromMinutes:0.##} to {ToMinutes:0.##}");
}
