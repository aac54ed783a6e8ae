using Confectio.Measures;
using Confectio.Sugars;

namespace Confectio.Safety;

/// <summary>
/// How a probe's log is read: its decimals, its scale, and what counts as a gap. <c>new()</c> is a decimal point, the heading's scale, and
/// a limit of 90 s.
/// </summary>
public sealed class ProbeLogOptions
{
    /// <summary>Whether decimals have a point or a comma.</summary>
    public AmountReading Reading { get; init; }

    /// <summary>
    /// The scale, confirmed by somebody who looked at the thermometer; it stands above the heading of the column. <see langword="null"/>:
    /// the heading decides, and a log that could be in the other scale is not used.
    /// </summary>
    public TemperatureScale? ConfirmedScale { get; init; }

    /// <summary>
    /// Readings farther apart than this have a gap between them, s, from 1 to 1.2e8; <see cref="ProbeLog.DefaultGapSeconds"/> unless
    /// stated.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public double GapSeconds
    {
        get;
        init => field = Guard.InRange(value, LogGap.LeastSeconds, LogGap.MostSeconds);
    } = ProbeLog.DefaultGapSeconds;

    /// <summary>How a log is read.</summary>
    public override string ToString() =>
        $"{Reading}, {(ConfirmedScale is TemperatureScale scale ? $"{scale} confirmed" : "unit not confirmed")}";
}
