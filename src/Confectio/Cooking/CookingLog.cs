using System.Globalization;
using Confectio.Measures;
using Confectio.Numerics;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Cooking;

/// <summary>
/// The temperatures of a syrup over the time that it cooks, straight from one reading to the next. Where it boils, its temperature says how
/// strong it has become; below, it is as strong as at the start or as it had become by then.
/// </summary>
/// <remarks>Nobody knows what happened in a gap of the log: <see cref="Gaps"/> belong beside every number.</remarks>
public sealed class CookingLog
{
    /// <summary>The most readings of a log.</summary>
    public const int MaximumReadings = 100_000;

    /// <summary>
    /// Readings farther apart than this have a gap between them, s, unless another limit is stated. A pot on full heat warms by 10 K in a
    /// minute, and 10 K make the rate 2.4 times as fast: over a long step a straight line is a guess. A reading a minute passes, with what
    /// it drifts. It is a judgement of ours.
    /// </summary>
    public const double DefaultGapSeconds = LogGap.DefaultSeconds;

    // Between two readings the exposure is summed over steps of at most this many kelvins: the rate grows by a fifth on one.
    private const double StepKelvins = 2, FirstKelvins = 0.02;

    // Densities are followed to here.
    private const double DensityCelsius = 100;

    // Exposures at pH 0: without the gaps, straight across them, and with them at the worst.
    private readonly double _measured, _likely, _most;
    private readonly SugarSolution _end;

    private CookingLog(SugarSolution syrup, AirPressure pressure, ThermometerReading[] readings, double gapSeconds)
    {
        Syrup = syrup;
        Pressure = pressure;
        Readings = readings;
        GapSeconds = gapSeconds;
        Gaps = LogGap.In(readings, gapSeconds);
        SugarSolution now = syrup;
        for (int i = 1; i < readings.Length; i++)
        {
            bool isGap = LogGap.IsBetween(readings[i - 1], readings[i], gapSeconds);
            double worst = isGap ? Worst(readings[i - 1], readings[i], now) : 0, straight = Exposure(readings[i - 1], readings[i], ref now);
            _measured += isGap ? 0 : straight;
            _likely += straight;
            // By a hair, rounding may have it the other way round where both readings are the same.
            _most += Math.Max(worst, straight);
        }
        _end = now;
    }

    /// <summary>The syrup at the start.</summary>
    public SugarSolution Syrup { get; }

    /// <summary>The pressure of the air.</summary>
    public AirPressure Pressure { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<ThermometerReading> Readings { get; }

    /// <summary>The limit of a gap, s: readings farther apart have one between them.</summary>
    public double GapSeconds { get; }

    /// <summary>The stretches that nobody measured. Whoever shows what was inverted shows them.</summary>
    public IReadOnlyList<LogGap> Gaps { get; }

    /// <summary>A log of a syrup.</summary>
    /// <param name="syrup">The syrup at the start.</param>
    /// <param name="pressure">The pressure of the air.</param>
    /// <param name="readings">From 2 to 100 000 readings, each later than the one before.</param>
    /// <param name="gapSeconds">Readings farther apart than this have a gap between them, s, from 1 to 1.2e8.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// There are too few or too many readings, one is not later than the one before, or one is below 0 °C.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gapSeconds"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">
    /// The syrup is stronger than boiling points are known for (<see cref="SugarSolution.MaximumSolids"/>).
    /// </exception>
    public static CookingLog Of(SugarSolution syrup, AirPressure pressure, IEnumerable<ThermometerReading> readings,
        double gapSeconds = DefaultGapSeconds)
    {
        Guard.NotNull(syrup);
        Guard.InRange(gapSeconds, LogGap.LeastSeconds, LogGap.MostSeconds);
        ThermometerReading[] all = ThermometerReading.Rising(readings, MaximumReadings);
        if (all.Min(reading => reading.Celsius) is double coldest and < 0)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(readings)} has one of {coldest:R} °C; a syrup that cooks is followed from 0 °C."), nameof(readings));
        return new CookingLog(syrup, pressure, all, gapSeconds);
    }

    /// <summary>
    /// How much of the sucrose acid has inverted by the end: Vukov's rate (<see cref="Inversion"/>) summed over the log, with half and
    /// twice of it as the ends of the spread. A gap counts for nothing at the low end, as a straight line in the middle, and at the high
    /// end as if all of it had been as hot as the hotter of its two readings and as watery as when it began. A pot that was hotter than
    /// both of them meanwhile is outside the spread.
    /// </summary>
    /// <param name="ph">
    /// The pH of the syrup at room temperature, from 0 to 9; <see cref="Inversion.CreamOfTartarPh"/> with cream of tartar.
    /// </param>
    /// <returns>
    /// The share of the sucrose, from 0 to 1. Worked number: 20 minutes at 105 °C and pH 3.6, three parts of sugar to one of water, read
    /// every minute: 0.13, from 0.07 to 0.24. With no reading between the first and the last: from 0 to 0.24.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="ph"/> is outside its range.</exception>
    public Spread Inverted(double ph) =>
        Inversion.ShareAfter(At(_measured, Guard.InRange(ph, 0, 9)), At(_likely, ph), At(_most, ph));

    /// <summary>The syrup at the end: as strong as its hottest reading has it, with the likely share of its sucrose inverted.</summary>
    /// <param name="ph">The pH of the syrup at room temperature, from 0 to 9.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="ph"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">There is less water left than the reaction takes.</exception>
    public SugarSolution End(double ph) => _end.Inverted(Inverted(ph).Likely);

    private static double At(double exposure, double ph) => Math.Min(Inversion.MostExposure, exposure * Math.Pow(10, -ph));

    // A gap at the worst. The rate rises with the temperature far faster than the density falls, and falls as the syrup thickens.
    private static double Worst(ThermometerReading from, ThermometerReading to, SugarSolution now)
    {
        double hotter = Math.Max(from.Celsius, to.Celsius);
        return (to.Minutes - from.Minutes) * Inversion.RateAtPhZero(hotter,
            now.Water * now.GramsPerMillilitre(Math.Min(hotter, DensityCelsius)));
    }

    // At pH 0. The syrup gets stronger on the way, never weaker: what boiled off does not come back.
    private double Exposure(ThermometerReading from, ThermometerReading to, ref SugarSolution now)
    {
        double minutes = to.Minutes - from.Minutes, way = to.Celsius - from.Celsius, sum = 0, at = from.Celsius;
        foreach (double end in Bends(at, to.Celsius, now))
        {
            sum += Sum(at, end, way == 0 ? minutes : minutes * (end - at) / way, ref now);
            at = end;
        }
        return sum;
    }

    // Where the rate bends between two temperatures, rising or falling, and the last of them: at 100 °C, where boiling begins, where the
    // strongest syrup boils. A thin syrup gets strong within a fraction of a kelvin after it begins to boil, so that the steps begin small
    // there.
    private IEnumerable<double> Bends(double from, double to, SugarSolution now)
    {
        List<double> bends = [DensityCelsius, now.MaximumBoilingCelsius(Pressure)];
        double boils = now.BoilingCelsius(Pressure, BoilingModel.StarzakPeacock);
        bends.Add(boils);
        if (to > boils)
        {
            for (double step = FirstKelvins; step < StepKelvins; step *= 2)
                bends.Add(boils + step);
        }
        IEnumerable<double> between = bends.Where(bend => bend > Math.Min(from, to) && bend < Math.Max(from, to)).Order();
        return (to >= from ? between : between.Reverse()).Append(to);
    }

    // By Simpson, over as many steps as the temperature asks for.
    private double Sum(double from, double to, double minutes, ref SugarSolution now)
    {
        int steps = 2 * Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / StepKelvins));
        double sum = 0;
        for (int i = 0; i <= steps; i++)
        {
            // Not below 0, where no reading is, by rounding.
            double celsius = Math.Max(0, from + (to - from) * i / steps);
            if (now.Solids > 0 && celsius > now.BoilingCelsius(Pressure, BoilingModel.StarzakPeacock))
                now = now.BoilingAt(Math.Min(celsius, now.MaximumBoilingCelsius(Pressure)), Pressure);
            // Beyond, the density of 100 °C is 1 or 2 % too high, which is nothing beside a factor of two.
            double water = now.Water * now.GramsPerMillilitre(Math.Min(celsius, DensityCelsius));
            sum += (i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2) * Inversion.RateAtPhZero(celsius, water);
        }
        return sum * minutes / (3 * steps);
    }

    /// <summary>How many readings, and how many gaps.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Readings.Count} readings, {Gaps.Count} gaps");
}
