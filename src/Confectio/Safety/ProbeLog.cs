using System.Globalization;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Safety;

/// <summary>What a probe in a mix showed over time, straight from one reading to the next.</summary>
/// <remarks>It tells of the spot where the probe was. The coldest spot decides: stir, and measure where it is coldest.</remarks>
public sealed class ProbeLog
{
    /// <summary>The most readings of a log.</summary>
    public const int MaximumReadings = 1_000_000;

    /// <summary>
    /// Readings farther apart than this have a gap between them, s, unless another limit is stated. A mix on a bath changes by some 7 K in
    /// a minute, and 4 K make the kill tenfold: over a long step a straight line is a guess. A reading a minute passes, with what it
    /// drifts. It is a judgement of ours.
    /// </summary>
    public const double DefaultGapSeconds = LogGap.DefaultSeconds;

    private readonly ThermometerReading[] _readings;

    private ProbeLog(ThermometerReading[] readings, double gapSeconds, bool isMended = false)
    {
        _readings = readings;
        GapSeconds = gapSeconds;
        IsMended = isMended;
        Gaps = LogGap.In(readings, gapSeconds);
    }

    /// <summary>The limit of a gap, s: readings farther apart have one between them.</summary>
    public double GapSeconds { get; }

    /// <summary>
    /// The stretches that nobody measured. No kill and no time at a temperature is counted across one, and whoever shows a judgement of the
    /// log shows them.
    /// </summary>
    public IReadOnlyList<LogGap> Gaps { get; }

    /// <summary>The readings, rising in time.</summary>
    public IReadOnlyList<ThermometerReading> Readings => _readings;

    /// <summary>
    /// Whether reading left something out or put something in order. What is mended takes heat away, which is caution where kill is counted
    /// and none where cooling is: <see cref="CoolingCheck"/> takes a mended log for no proof.
    /// </summary>
    public bool IsMended { get; }

    /// <summary>The highest temperature, °C.</summary>
    public double MaximumCelsius => _readings.Max(reading => reading.Celsius);

    /// <summary>From the first reading to the last, minutes.</summary>
    public double Minutes => _readings[^1].Minutes - _readings[0].Minutes;

    internal ReadOnlySpan<ThermometerReading> Span => _readings;

    /// <summary>A log of readings.</summary>
    /// <param name="readings">From 2 to 1 000 000 readings, each later than the one before.</param>
    /// <param name="gapSeconds">Readings farther apart than this have a gap between them, s, from 1 to 1.2e8.</param>
    /// <exception cref="ArgumentNullException"><paramref name="readings"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few or too many, or one is not later than the one before.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gapSeconds"/> is outside its range.</exception>
    public static ProbeLog Of(IEnumerable<ThermometerReading> readings, double gapSeconds = DefaultGapSeconds)
    {
        Guard.InRange(gapSeconds, LogGap.LeastSeconds, LogGap.MostSeconds);
        return new ProbeLog(ThermometerReading.Rising(readings, MaximumReadings), gapSeconds);
    }

    /// <summary>
    /// A log from delimited text: a column of times and a column <c>celsius</c> or <c>fahrenheit</c>. Times are <c>minutes</c>,
    /// <c>seconds</c>, <c>time</c> (h:mm:ss), <c>mm:ss</c> (minutes and seconds, 9:30) or <c>h:mm</c> (hours and minutes).
    /// </summary>
    /// <param name="text">The text. It is read once, from start to end.</param>
    /// <param name="options">
    /// The decimals, the scale, the limit of a gap; as <see cref="ProbeLogOptions"/> has them where it is null.
    /// </param>
    /// <returns>
    /// The log, and as problems everything that was odd, with its line: a row that cannot be read, readings out of order (they are put in
    /// order), two readings of one time (the colder one is kept), a reading that leaps up out of its neighbours (left out), one that dips
    /// (kept: it was measured), a gap (nothing is counted across it), a clock that passes midnight, a column that may be in the other
    /// scale. A reading that is missing is missing: nothing is put in its place. There is no log where fewer than two readings can be used,
    /// or where the scale is in doubt: then a problem asks which it is, and <see cref="ProbeLogOptions.ConfirmedScale"/> answers. A log
    /// with something odd in it is had with <see cref="Reading{T}.TryGet"/>, and its problems are shown beside the answer;
    /// <see cref="Reading{T}.OrThrow"/> takes only a log without.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static Reading<ProbeLog> Read(TextReader text, ProbeLogOptions? options = null)
    {
        options ??= new ProbeLogOptions();
        ProbeLogReader reader = new(options);
        ThermometerReading[]? readings = reader.Read(Guard.NotNull(text));
        const string Lead = "This cannot be read as a log without a doubt";
        ProblemList problems = reader.Problems;
        return readings is null ? Reading<ProbeLog>.None(Lead, problems, problems.Total)
            : new Reading<ProbeLog>(new ProbeLog(readings, options.GapSeconds, problems.Count > 0), Lead, problems, problems.Total);
    }

    /// <summary>
    /// The log₁₀ reduction by a kinetic set: its sum over what was measured of the log, in closed form, gaps left out, and with no regard
    /// to how far the study counted. See <see cref="KineticSet.LogReduction"/>.
    /// </summary>
    /// <param name="set">
    /// The set. Whether it applies, and how far it was measured, is not asked here: <see cref="LethalityJudgement"/> does.
    /// </param>
    /// <exception cref="ArgumentNullException"><paramref name="set"/> is null.</exception>
    public Spread LogReduction(KineticSet set) => Guard.NotNull(set).LogReduction(_readings, GapSeconds);

    /// <summary>
    /// The same by the trapezoid on the lethal rate, the way of worksheets. See <see cref="KineticSet.LogReductionByTrapezoid"/>.
    /// </summary>
    /// <param name="set">The set. Whether it applies is not asked here.</param>
    /// <returns>Log₁₀ reductions.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="set"/> is null.</exception>
    public double LogReductionByTrapezoid(KineticSet set) => Guard.NotNull(set).LogReductionByTrapezoid(_readings, GapSeconds);

    /// <summary>The time in all at or above a temperature, gaps left out.</summary>
    /// <param name="celsius">The temperature, °C, from −60 to 220.</param>
    /// <returns>
    /// Minutes; 0 where it was touched for an instant, <see langword="null"/> where it was never reached. Across a gap nothing is counted.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double? MinutesAtOrAbove(double celsius)
    {
        double? sum = null;
        foreach ((double from, double to) in StretchesAtOrAbove(Guard.InRange(celsius, -60, 220)))
            sum = (sum ?? 0) + (to - from);
        return sum;
    }

    /// <summary>The longest time without a break at or above a temperature. A gap is a break.</summary>
    /// <param name="celsius">The temperature, °C, from −60 to 220.</param>
    /// <returns>Minutes; 0 where it was touched for an instant, <see langword="null"/> where it was never reached.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double? LongestMinutesAtOrAbove(double celsius)
    {
        double? longest = null;
        foreach ((double from, double to) in StretchesAtOrAbove(Guard.InRange(celsius, -60, 220)))
            longest = Math.Max(longest ?? 0, to - from);
        return longest;
    }

    // From the crossing upwards to the crossing downwards, parted at the gaps: what was measured on either side of a gap ends and begins at
    // a reading.
    private IEnumerable<(double From, double To)> StretchesAtOrAbove(double celsius)
    {
        double? since = null;
        for (int i = 0; i < _readings.Length; i++)
        {
            ThermometerReading now = _readings[i];
            bool isWarm = now.Celsius >= celsius, isApart = i == 0 || LogGap.IsBetween(_readings[i - 1], now, GapSeconds);
            if (i > 0 && since is double start && (isApart || !isWarm))
            {
                yield return (start, isApart ? _readings[i - 1].Minutes : Crossing(_readings[i - 1], now, celsius));
                since = null;
            }
            if (isWarm)
                since ??= isApart ? now.Minutes : Crossing(_readings[i - 1], now, celsius);
        }
        if (since is double last)
            yield return (last, _readings[^1].Minutes);
    }

    internal static double Crossing(ThermometerReading from, ThermometerReading to, double celsius) => to.Celsius == from.Celsius
        ? from.Minutes
        : from.Minutes + (to.Minutes - from.Minutes) * ((celsius - from.Celsius) / (to.Celsius - from.Celsius));

    /// <summary>How many readings over how long, and how many gaps.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Readings.Count} readings over {Minutes:0.#} min, {Gaps.Count} gaps");
}
