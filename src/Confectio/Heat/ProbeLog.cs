using System.Globalization;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>What a probe in a mix showed over time, straight from one reading to the next.</summary>
/// <remarks>It tells of the spot where the probe was. The coldest spot decides: stir, and measure where it is coldest.</remarks>
public sealed class ProbeLog
{
    /// <summary>The most readings of a log.</summary>
    public const int MostReadings = 1_000_000;

    private readonly ThermometerReading[] _readings;

    private ProbeLog(ThermometerReading[] readings, bool isMended = false)
    {
        _readings = readings;
        IsMended = isMended;
    }

    /// <summary>The readings, rising in time.</summary>
    public IReadOnlyList<ThermometerReading> Readings => _readings;

    /// <summary>
    /// Whether reading left something out or put something in order. What is mended takes heat away, which is caution where kill is counted and none where cooling is:
    /// <see cref="CoolingCheck"/> takes a mended log for no proof.
    /// </summary>
    public bool IsMended { get; }

    /// <summary>The highest temperature, °C.</summary>
    public double HighestCelsius => _readings.Max(reading => reading.Celsius);

    /// <summary>From the first reading to the last, minutes.</summary>
    public double Minutes => _readings[^1].Minutes - _readings[0].Minutes;

    internal ReadOnlySpan<ThermometerReading> Span => _readings;

    /// <summary>A log of readings.</summary>
    /// <param name="readings">From 2 to 1 000 000 readings, each later than the one before.</param>
    /// <exception cref="ArgumentNullException"><paramref name="readings"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few or too many, or one is not later than the one before.</exception>
    public static ProbeLog Of(IEnumerable<ThermometerReading> readings) => new(ThermometerReading.Rising(readings, MostReadings));

    /// <summary>
    /// A log from delimited text: a column <c>minutes</c>, <c>seconds</c> or <c>time</c> (h:mm:ss), and a column <c>celsius</c> or <c>fahrenheit</c>.
    /// </summary>
    /// <param name="text">The text. It is read once, from start to end.</param>
    /// <param name="problems">
    /// Everything that was odd, with its line: a row that cannot be read, readings out of order (they are put in order), two readings of one time (the
    /// colder one is kept), a reading that leaps up out of its neighbours (left out), one that dips (kept: it was measured), a gap (counted as a straight
    /// line), a clock that passes midnight, a column that looks like the other scale.
    /// </param>
    /// <param name="reading">Whether decimals have a point or a comma.</param>
    /// <returns>The log; <see langword="null"/> where fewer than two readings can be used, or the scale is in doubt.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static ProbeLog? Read(TextReader text, out IReadOnlyList<TableProblem> problems, AmountReading reading = AmountReading.DecimalPoint)
    {
        ProbeLogReader reader = new(reading);
        ThermometerReading[]? readings = reader.Read(Guard.NotNull(text));
        problems = reader.Problems;
        return readings is null ? null : new ProbeLog(readings, reader.Problems.Count > 0);
    }

    /// <summary>The log₁₀ reduction by a kinetic set: its sum over the log, in closed form. See <see cref="KineticSet.LogReduction"/>.</summary>
    /// <param name="set">The set. Whether it applies is not asked here: <see cref="LethalityJudgement"/> does.</param>
    /// <exception cref="ArgumentNullException"><paramref name="set"/> is null.</exception>
    public Spread LogReduction(KineticSet set) => Guard.NotNull(set).LogReduction(_readings);

    /// <summary>The same by the trapezoid on the lethal rate, the way of worksheets. See <see cref="KineticSet.LogReductionByTrapezoid"/>.</summary>
    /// <param name="set">The set. Whether it applies is not asked here.</param>
    /// <returns>Log₁₀ reductions.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="set"/> is null.</exception>
    public double LogReductionByTrapezoid(KineticSet set) => Guard.NotNull(set).LogReductionByTrapezoid(_readings);

    /// <summary>The longest time without a break at or above a temperature.</summary>
    /// <param name="celsius">The temperature, °C, from −60 to 220.</param>
    /// <returns>Minutes; 0 where it was touched for an instant, <see langword="null"/> where it was never reached.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double? LongestMinutesAtOrAbove(double celsius)
    {
        Guard.InRange(celsius, -60, 220);
        double? longest = null, since = null;
        for (int i = 0; i < _readings.Length; i++)
        {
            ThermometerReading now = _readings[i];
            bool isWarm = now.Celsius >= celsius;
            if (isWarm)
                since ??= i == 0 ? now.Minutes : Crossing(_readings[i - 1], now, celsius);
            double? end = isWarm ? now.Minutes : since is null ? null : Crossing(_readings[i - 1], now, celsius);
            if (since is double start && end is double last)
                longest = Math.Max(longest ?? 0, last - start);
            if (!isWarm)
                since = null;
        }
        return longest;
    }

    internal static double Crossing(ThermometerReading from, ThermometerReading to, double celsius) => to.Celsius == from.Celsius ? from.Minutes
        : from.Minutes + (to.Minutes - from.Minutes) * ((celsius - from.Celsius) / (to.Celsius - from.Celsius));
}
