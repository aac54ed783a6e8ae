using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;
using Confectio.Measures;
using Confectio.Numerics;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Text;

namespace Confectio.Safety;

/// <summary>
/// How fast heat kills one organism in one matter, as one study has it: D at some temperatures, the logarithm of D being straight between
/// them (which is what a z-value says), and where the study applies.
/// </summary>
/// <remarks>
/// <para>
/// Beyond its range nothing is extrapolated: below its lowest temperature a set counts nothing, above its highest it counts as if at the
/// highest. Both err towards less kill. Within the range a study with one D is carried on by its z, and how far is a judgement of ours, as
/// is the water activity. Published D-values of egg white differ fifteenfold at one temperature (at 56.6 °C 3.60 min at pH 7.8 and 0.247 at
/// pH 9.2, 14.6 times), so a set is never a constant of nature.
/// </para>
/// <para>
/// Where a study gives a range of z, D is as sure at its own temperature as it is printed, and the less sure the farther from it. No D is
/// surer than half a unit of its last printed digit.
/// </para>
/// </remarks>
public sealed class KineticSet
{
    private const double MinimumCelsius = -50, MaximumCelsius = 200;

    /// <summary>
    /// The fall that an inoculum of some ten million a gram allows to count, log₁₀: common practice of such studies, and the most that is
    /// ever counted.
    /// </summary>
    public const double MaximumCountedLogs = 7;

    private static readonly KineticSet[] s_all = ReadBuiltIn();

    private readonly double[] _celsius, _logLikely, _logLow, _logHigh; // natural logarithms of D

    private readonly SpreadBasis _basis; // of the least sure point

    private KineticSet(string key, string name, FoodMatrix matter, string organism, KineticPoint[] points, double lowWaterActivity,
        double highWaterActivity, double measuredLogs, Provenance? provenance)
    {
        MeasuredLogs = measuredLogs;
        Key = key;
        Name = name;
        Matter = matter;
        Organism = organism;
        Points = points;
        LowWaterActivity = lowWaterActivity;
        HighWaterActivity = highWaterActivity;
        Provenance = provenance;
        _basis = points.Select(point => point.DecimalReductionMinutes.Basis).Append(SpreadBasis.Coverage).Aggregate(Spread.Worse);
        _celsius = [.. points.Select(point => point.Celsius)];
        _logLikely = [.. points.Select(point => Math.Log(point.DecimalReductionMinutes.Likely))];
        _logLow = [.. points.Select(point => Math.Log(point.DecimalReductionMinutes.Low))];
        _logHigh = [.. points.Select(point => Math.Log(point.DecimalReductionMinutes.High))];
    }

    // D and z of a set of one's own.
    private (double Celsius, double Minutes, double Kelvin)? OwnStudy { get; init; }

    /// <summary>The sets that are built in.</summary>
    public static IReadOnlyList<KineticSet> All => s_all;

    /// <summary>The key, such as <c>garibaldi-white</c>.</summary>
    public string Key { get; }

    /// <summary>The name, such as <c>egg white, pH 9.2</c>.</summary>
    public string Name { get; }

    /// <summary>What was heated.</summary>
    public FoodMatrix Matter { get; }

    /// <summary>The organism, and its strains.</summary>
    public string Organism { get; }

    /// <summary>D at the temperatures between which the set holds, rising.</summary>
    internal IReadOnlyList<KineticPoint> Points { get; }

    /// <summary>The lowest water activity that it applies to.</summary>
    public double LowWaterActivity { get; }

    /// <summary>The highest water activity that it applies to.</summary>
    public double HighWaterActivity { get; }

    /// <summary>
    /// The pH of the matter from which on the set speaks of it; <see langword="null"/> where the acidity is not asked. A judgement of ours.
    /// </summary>
    public double? LowPh { get; private init; }

    /// <summary>The pH up to which the set speaks; <see langword="null"/> where the acidity is not asked.</summary>
    public double? HighPh { get; private init; }

    /// <summary>
    /// What was dissolved in the water of a sugar-rich study; empty where nothing was. Sugars protect differently, sucrose more than
    /// glucose and fructose.
    /// </summary>
    public string Solute { get; private init; } = "";

    /// <summary>
    /// How far the fall was counted, log₁₀. Survivors of a longer heat need not die at the same rate: <see cref="LethalityJudgement"/>
    /// counts no further and says "at least".
    /// </summary>
    public double MeasuredLogs { get; }

    /// <summary>
    /// Whether <see cref="MeasuredLogs"/> is not what the study says, for what we have read of it does not, but what the inoculum of such
    /// studies allows, at most <see cref="MaximumCountedLogs"/>.
    /// </summary>
    public bool IsMeasuredLogsAssumed { get; private init; }

    /// <summary>Where it comes from; <see langword="null"/> of a set of your own.</summary>
    public Provenance? Provenance { get; }

    /// <summary>The set of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such set; the message lists those there are.</exception>
    public static KineticSet Get(string key) => Keyed.Get(s_all, key, "kinetic set", "sets", known => known.Key);

    /// <summary>The set of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="set">The set, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out KineticSet? set)
    {
        set = Keyed.Find(s_all, key, known => known.Key);
        return set is not null;
    }

    /// <summary>A set of your own from D at one temperature and z: D(T) = D·10^((T_ref − T)/z).</summary>
    /// <param name="name">The name.</param>
    /// <param name="referenceCelsius">The temperature of D, °C, from −50 to 200.</param>
    /// <param name="decimalReduction">D, from a microsecond to 1e9 minutes.</param>
    /// <param name="zKelvin">z, K, from 1 to 100.</param>
    /// <returns>
    /// The set. It holds from −50 to 200 °C and counts to 7 log₁₀: say with <see cref="Between"/> and <see cref="CountedTo"/> what your
    /// study did.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static KineticSet Of(string name, double referenceCelsius, TimeSpan decimalReduction, double zKelvin) =>
        Of(name, referenceCelsius, Minutes(decimalReduction), zKelvin, MinimumCelsius, MaximumCelsius);

    /// <summary>The set, of your own, for a narrower range of temperatures.</summary>
    /// <param name="lowCelsius">The lowest temperature at which it holds, °C, from −50 to 200; below, nothing is counted.</param>
    /// <param name="highCelsius">The highest temperature at which it holds, °C, above <paramref name="lowCelsius"/> to 200.</param>
    /// <exception cref="InvalidOperationException">The set is built in: what a study holds for is not ours to move.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public KineticSet Between(double lowCelsius, double highCelsius)
    {
        (double reference, double minutes, double z) = Own();
        return Of(Name, reference, minutes, z, lowCelsius, highCelsius, MeasuredLogs);
    }

    /// <summary>The set, of your own, with how far your study counted.</summary>
    /// <param name="measuredLogs">How far, log₁₀, from 0.1 to 7.</param>
    /// <exception cref="InvalidOperationException">The set is built in: what a study counted is not ours to change.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="measuredLogs"/> is outside its range.</exception>
    public KineticSet CountedTo(double measuredLogs)
    {
        (double reference, double minutes, double z) = Own();
        return Of(Name, reference, minutes, z, _celsius[0], _celsius[^1], measuredLogs);
    }

    private (double Celsius, double Minutes, double Kelvin) Own() => OwnStudy
        ?? throw new InvalidOperationException(
            $"The set {Excerpt.Of(Name)} is built in and stays as its study has it; make one of your own with {nameof(Of)}.");

    private static double Minutes(TimeSpan time, [CallerArgumentExpression(nameof(time))] string name = "") =>
        Guard.InRange(time.TotalMinutes, 1e-6 / 60, 1e9, name);

    internal static KineticSet Of(string name, double referenceCelsius, double decimalReductionMinutes, double zKelvin,
        double lowCelsius = MinimumCelsius, double highCelsius = MaximumCelsius,
        double measuredLogs = MaximumCountedLogs)
    {
        if (string.IsNullOrWhiteSpace(Guard.NotNull(name)))
            throw new ArgumentException($"{nameof(name)} was {Excerpt.Of(name)}; a set needs a name.", nameof(name));
        Guard.InRange(referenceCelsius, MinimumCelsius, MaximumCelsius);
        Guard.InRange(decimalReductionMinutes, 1e-9, 1e9);
        Guard.InRange(zKelvin, 1, 100);
        Guard.InRange(lowCelsius, MinimumCelsius, MaximumCelsius - 1e-6);
        Guard.InRange(highCelsius, lowCelsius + 1e-6, MaximumCelsius);
        Guard.InRange(measuredLogs, 0.1, MaximumCountedLogs);
        Spread z = Spread.Exactly(zKelvin);
        return new KineticSet(name.Trim(), name.Trim(), FoodMatrix.Food, "",
            [.. PointsOf(referenceCelsius, Spread.Exactly(decimalReductionMinutes), z, lowCelsius, highCelsius)], 0, 1, measuredLogs, null)
        {
            OwnStudy = (referenceCelsius, decimalReductionMinutes, zKelvin),
        };
    }

    /// <summary>z between two temperatures from the times for the same kill: z = (T₂ − T₁)/log₁₀(t₁/t₂).</summary>
    /// <param name="firstCelsius">The one temperature, °C, from −50 to 200.</param>
    /// <param name="firstTime">The time at it, from a microsecond to 1e9 minutes.</param>
    /// <param name="secondCelsius">The other temperature, °C, from −50 to 200.</param>
    /// <param name="secondTime">The time at it, from a microsecond to 1e9 minutes.</param>
    /// <returns>Kelvins. Worked number: 3.5 min at 134 °F and 6.2 min at 132 °F give 4.47 K.</returns>
    /// <exception cref="ArgumentException">The hotter of the two has not the shorter time: there is no z.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ZKelvin(double firstCelsius, TimeSpan firstTime, double secondCelsius, TimeSpan secondTime)
    {
        Guard.InRange(firstCelsius, MinimumCelsius, MaximumCelsius);
        Guard.InRange(secondCelsius, MinimumCelsius, MaximumCelsius);
        double z = (secondCelsius - firstCelsius) / Math.Log10(Minutes(firstTime) / Minutes(secondTime));
        return double.IsFinite(z) && z > 0 ? z
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(secondTime)} was {secondTime.TotalMinutes:R} minutes; the hotter of two temperatures must have the shorter ")
                + "time: there is no z otherwise.", nameof(secondTime));
    }

    /// <summary>D at a temperature; above the set's range that of its highest temperature.</summary>
    /// <param name="celsius">The temperature, °C, from −50 to 220.</param>
    /// <returns>Minutes; <see langword="null"/> below the range, where nothing is counted.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public Spread? DecimalReductionMinutes(double celsius)
    {
        Guard.InRange(celsius, -50, 220);
        return celsius < _celsius[0] ? null
            : new Spread(Math.Exp(LogAt(_logLow, celsius)), Math.Exp(LogAt(_logLikely, celsius)), Math.Exp(LogAt(_logHigh, celsius)),
                _basis);
    }

    /// <summary>Whether the set applies, and why or why not, in a sentence.</summary>
    /// <param name="matter">What is heated.</param>
    /// <param name="waterActivity">Its water activity, from 0 to 1.</param>
    /// <param name="why">The reason.</param>
    /// <param name="ph">
    /// What its pH may be, from 0 to 14: a set applies where its own range meets this one; <see cref="LethalityJudgement.DefaultPh"/> where
    /// it is not stated.
    /// </param>
    /// <returns>Whether it does.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public bool AppliesTo(FoodMatrix matter, double waterActivity, out string why, Spread? ph = null)
    {
        Guard.Defined(matter);
        Guard.InRange(waterActivity, 0, 1);
        Spread acidity = Acidity.Checked(ph ?? LethalityJudgement.DefaultPh(matter));
        CultureInfo invariant = CultureInfo.InvariantCulture;
        string range = string.Create(invariant, $"{LowWaterActivity:0.####} to {HighWaterActivity:0.####}");
        if (Matter != FoodMatrix.Food && Matter != matter)
        {
            why = $"measured in {Name}, which this is not";
            return false;
        }
        if (waterActivity < LowWaterActivity)
        {
            why = string.Create(invariant, $"holds for a water activity of {range}; here it is {waterActivity:0.000}, and sugar protects: "
                + $"it would promise too much");
            return false;
        }
        if (waterActivity > HighWaterActivity)
        {
            why = string.Create(invariant, $"holds for a water activity of {range}; here it is {waterActivity:0.000}");
            return false;
        }
        if (acidity.High < LowPh || acidity.Low > HighPh)
        {
            why = string.Create(invariant, $"holds for a pH of {LowPh:0.##} to {HighPh:0.##}; here it is "
                + $"{(acidity.Low == acidity.High ? "" : $"{acidity.Low.ToString("0.##", invariant)} to ")}{acidity.High:0.##}, and "
                + $"acidity counts");
            return false;
        }
        why = string.Create(invariant, $"measured in {Name}, for a water activity of {range}; here it is {waterActivity:0.000}");
        return true;
    }

    /// <summary>The log₁₀ reduction over readings, straight from one to the next: ∫ dt/D(T), in closed form on every piece.</summary>
    /// <param name="readings">The readings, rising in time; none or one give 0.</param>
    /// <param name="gapSeconds">
    /// Nothing is counted between readings farther apart than this, s, from 1 to 1.2e8: nobody measured there.
    /// </param>
    /// <returns>
    /// Log₁₀ reductions: likely with D as it is, low with the high end of D, high with its low end. It is the sum, with no regard to how
    /// far the study counted (<see cref="MeasuredLogs"/>).
    /// </returns>
    /// <exception cref="ArgumentException">A reading is not later than the one before.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gapSeconds"/> is outside its range.</exception>
    public Spread LogReduction(ReadOnlySpan<ThermometerReading> readings, double gapSeconds = ProbeLog.DefaultGapSeconds)
    {
        Guard.InRange(gapSeconds, LogGap.LeastSeconds, LogGap.MostSeconds);
        double low = 0, likely = 0, high = 0;
        for (int i = 1; i < readings.Length; i++)
        {
            ThermometerReading from = readings[i - 1], to = readings[i];
            double minutes = Step(readings, i);
            if (Math.Max(from.Celsius, to.Celsius) < _celsius[0] || LogGap.IsBetween(from, to, gapSeconds))
                continue;
            likely += Exact(_logLikely, from.Celsius, to.Celsius, minutes);
            low += Exact(_logHigh, from.Celsius, to.Celsius, minutes);
            high += Exact(_logLow, from.Celsius, to.Celsius, minutes);
        }
        return new Spread(Math.Min(low, likely), likely, Math.Max(likely, high), _basis);
    }

    /// <summary>
    /// The likely log₁₀ reduction by the trapezoid on the lethal rate 1/D, the way of worksheets. Between readings far apart in temperature
    /// it says more than <see cref="LogReduction"/>.
    /// </summary>
    /// <param name="readings">The readings, rising in time; none or one give 0.</param>
    /// <param name="gapSeconds">Nothing is counted between readings farther apart than this, s, from 1 to 1.2e8.</param>
    /// <returns>
    /// Log₁₀ reductions. Worked number: 56, 58, 60, 60, 58 °C a minute apart with D 1 at 60 °C and z 5: 2.676, where the exact sum is
    /// 2.567.
    /// </returns>
    /// <exception cref="ArgumentException">A reading is not later than the one before.</exception>
    public double LogReductionByTrapezoid(ReadOnlySpan<ThermometerReading> readings, double gapSeconds = ProbeLog.DefaultGapSeconds)
    {
        Guard.InRange(gapSeconds, LogGap.LeastSeconds, LogGap.MostSeconds);
        double sum = 0;
        for (int i = 1; i < readings.Length; i++)
            sum += (LogGap.IsBetween(readings[i - 1], readings[i], gapSeconds) ? 0 : 1) * Step(readings,
                i) * (Rate(readings[i - 1].Celsius) + Rate(readings[i].Celsius)) / 2;
        return sum;
    }

    /// <summary>The name and the source.</summary>
    public override string ToString() => Provenance is null ? Name : $"{Name}: {Provenance}";

    private static double Step(ReadOnlySpan<ThermometerReading> readings, int i) => readings[i].Minutes > readings[i - 1].Minutes
        ? readings[i].Minutes - readings[i - 1].Minutes
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
            $"{nameof(readings)}: number {i + 1} is at {readings[i].Minutes:R} minutes, not after {readings[i - 1].Minutes:R}."),
                nameof(readings));

    private double Rate(double celsius) => celsius < _celsius[0] ? 0 : Math.Exp(-LogAt(_logLikely, celsius));

    private double LogAt(double[] logs, double celsius)
    {
        if (celsius >= _celsius[^1])
            return logs[^1];
        int i = Piece(celsius);
        return logs[i] + (logs[i + 1] - logs[i]) * (celsius - _celsius[i]) / (_celsius[i + 1] - _celsius[i]);
    }

    private int Piece(double celsius)
    {
        int i = 0;
        while (i < _celsius.Length - 2 && celsius >= _celsius[i + 1])
            i++;
        return i;
    }

    // A straight run of temperature, parted where D bends: at the points of the set.
    private double Exact(double[] logs, double from, double to, double minutes)
    {
        double low = Math.Min(from, to), high = Math.Max(from, to);
        if (low == high)
            return low < _celsius[0] ? 0 : minutes * Math.Exp(-LogAt(logs, low));
        double sum = 0, at = Math.Max(low, _celsius[0]);
        while (at < high)
        {
            if (at >= _celsius[^1])
                return sum + minutes * ((high - at) / (high - low)) * Math.Exp(-logs[^1]);
            int i = Piece(at);
            double end = Math.Min(high, _celsius[i + 1]), slope = (logs[i] - logs[i + 1]) / (_celsius[i + 1] - _celsius[i]),
                x = slope * (end - at);
            // ∫ e^(slope·T) over the piece; where it is nearly level the quotient is 1 and the difference quotient nothing but rounding.
            sum += minutes * ((end - at) / (high - low)) * Math.Exp(-LogAt(logs, at)) * (Math.Abs(x) < 1e-8 ? 1 + x / 2
                : Exponentials.MinusOne(x) / x);
            at = end;
        }
        return sum;
    }

    // The low end of D is the quickest kill: above the reference that of the steepest fall, below it that of the flattest.
    private static IEnumerable<KineticPoint> PointsOf(double reference, Spread minutes, Spread z, double low, double high)
    {
        foreach (double celsius in (double[])[low, .. reference > low && reference < high ? [reference] : (double[])[], high])
        {
            double a = Factor(celsius, z.Low), b = Factor(celsius, z.High), likely = Factor(celsius, z.Likely);
            yield return new KineticPoint(celsius,
                new Spread(minutes.Low * Math.Min(likely, Math.Min(a, b)), minutes.Likely * likely,
                    minutes.High * Math.Max(likely, Math.Max(a, b)),
                    Spread.Worse(SpreadBasis.Coverage, Spread.Worse(minutes.Basis, z.Basis))));
        }

        double Factor(double celsius, double kelvin) => Math.Pow(10, (reference - celsius) / kelvin);
    }

    private static KineticSet[] ReadBuiltIn()
    {
        List<(string Set, KineticPoint Point)> points = [];
        EmbeddedTable.Read("kinetic_points.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            points.Add((fields.Required("set"), new KineticPoint(fields.RequiredNumber("celsius", MinimumCelsius, MaximumCelsius),
                new Spread(Minutes(fields, "low_d_minutes"), Minutes(fields, "d_minutes"), Minutes(fields, "high_d_minutes")))));
        });
        List<KineticSet> sets = [];
        EmbeddedTable.Read("kinetic_sets.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string key = fields.Required("key");
            KineticPoint[] own = fields.Number("z_kelvin", 1, 100) is double z
                ? [.. PointsOf(Kelvin(fields, "reference_celsius"), new Spread(Minutes(fields, "low_d_minutes"),
                    Minutes(fields, "d_minutes"), Minutes(fields, "high_d_minutes")), new Spread(Kelvin(fields, "low_z_kelvin"), z, Kelvin(fields, "high_z_kelvin")),
                    Kelvin(fields, "low_celsius"), Kelvin(fields, "high_celsius"))]
                : [.. points.Where(point => point.Set == key).Select(point => point.Point)];
            sets.Add(new KineticSet(key, fields.Required("name"), fields.Enum<FoodMatrix>("matter"), fields.Required("organism"), own,
                fields.RequiredNumber("low_water_activity", 0, 1), fields.RequiredNumber("high_water_activity", 0, 1),
                fields.RequiredNumber("measured_logs", 0.1, MaximumCountedLogs),
                fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")))
            {
                LowPh = fields.Number("low_ph", Acidity.Minimum, Acidity.Maximum),
                HighPh = fields.Number("high_ph", Acidity.Minimum, Acidity.Maximum),
                Solute = fields.Word("solute") ?? "",
                IsMeasuredLogsAssumed = fields.Required("measured_logs_from") != "study",
            });
        });
        return [.. sets];
    }

    private static double Minutes(RowFields fields, string column) => fields.RequiredNumber(column, 1e-9, 1e9);

    private static double Kelvin(RowFields fields, string column) => fields.RequiredNumber(column, MinimumCelsius, MaximumCelsius);
}
