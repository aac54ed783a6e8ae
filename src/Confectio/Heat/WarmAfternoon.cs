using System.Globalization;
using Confectio.Formulas;
using Confectio.Measures;

namespace Confectio.Heat;

/// <summary>What an icing does over an afternoon in a room whose temperature changes.</summary>
/// <remarks>
/// Between two readings the room goes in a straight line, R(t) = R₀ + s·t, and the icing follows by Newton (<see cref="LumpedBody"/>), dT/dt = b·(R − T):
/// T(t) = R(t) − s/b + (T₀ − R₀ + s/b)·e^(−b·t). Nine rates from the lowest to the highest of b are followed, and the warmest of them decides whether it
/// surely stands. Fat that melts on the way makes it slower, which is not counted. Before the first reading and after the last nothing is said.
/// Worked number: an icing of 20 °C with b = 0.02 per minute in a room that goes from 20 to 32 °C in 120 minutes is at 27.5 °C at the end.
/// </remarks>
public sealed class WarmAfternoon
{
    /// <summary>The coldest reading, and the coldest start, °C.</summary>
    public const double MinimumCelsius = -30;

    /// <summary>The warmest reading, and the warmest start, °C.</summary>
    public const double MaximumCelsius = 50;

    /// <summary>The most readings of an afternoon.</summary>
    public const int MaximumReadings = 10_000;

    // Beyond this a straight line between two readings is a guess.
    private const double LongMinutes = 90;

    private const int Rates = 9;

    private readonly ThermometerReading[] _room;
    private readonly double[] _rates;

    private WarmAfternoon(Formula formula, ThermometerReading[] room, double startCelsius, Spread ratePerMinute, FatCurves? curves)
    {
        Formula = formula;
        StartCelsius = startCelsius;
        RatePerMinute = ratePerMinute;
        _room = room;
        _rates = [.. Enumerable.Range(0, Rates).Select(i => ratePerMinute.Low * Math.Pow(ratePerMinute.High / ratePerMinute.Low, i / (Rates - 1.0)))];
        Limit = WindowLimit.Of(formula, FatWindow.All.First(window => window.Use == "stands"), curves);
        double apart = Enumerable.Range(1, room.Length - 1).Max(i => room[i].Minutes - room[i - 1].Minutes);
        List<string> cautions =
        [
            .. apart > LongMinutes ? [string.Create(CultureInfo.InvariantCulture, $"Readings are up to {apart:0.#} minutes apart. Between them nobody read: a "
                + $"straight line is taken, and the room may have been warmer.")] : Array.Empty<string>(),
            "The middle of a cake lags behind its coat, sun on it is not counted, and melting fat is not either.",
        ];
        Spread warmest = WarmestAt(out double minutes);
        (WarmestCelsius, WarmestMinutes) = (warmest, minutes);
        if (Limit.UntilCelsius is not Spread until)
        {
            Stands = WindowAnswer.NotJudged;
            Why = $"{Limit.NotJudgedWhy}, so nothing can be said.";
        }
        else
        {
            // At 20 °C it is in doubt already: whether it stands when colder is not in any of the sources.
            double? first = until.Low <= WarmRoom.MinimumCelsius ? room[0].Minutes : Crossing(until.Low).Min();
            double?[] surely = Crossing(until.High);
            double?[] likely = Crossing(until.Likely);
            EarliestMinutes = first;
            LikelyMinutes = until.Likely <= WarmRoom.MinimumCelsius ? room[0].Minutes : likely[Rates / 2];
            LatestMinutes = Array.TrueForAll(surely, one => one is not null) ? surely.Max() : null;
            if (until.High <= WarmRoom.MinimumCelsius && warmest.Low >= WarmRoom.MinimumCelsius)
                LatestMinutes ??= room[0].Minutes;
            Stands = LatestMinutes is not null ? WindowAnswer.No : EarliestMinutes is null ? WindowAnswer.Yes : WindowAnswer.Doubtful;
            MarginKelvins = until.Likely is > WarmRoom.MinimumCelsius and < WarmRoom.MaximumCelsius ? until.Likely - warmest.Likely : null;
            MarginPoints = warmest.Likely is >= WarmRoom.MinimumCelsius and <= WarmRoom.MaximumCelsius
                ? formula.SolidFat(warmest.Likely, curves).PercentOfFat!.Value.Likely - Limit.Window.Low : null;
            Why = string.Create(CultureInfo.InvariantCulture, $"its coat comes to {warmest.Likely:0.0} °C ({warmest.Low:0.0} to {warmest.High:0.0}), and it stands until "
                + $"{WindowLimit.End(until.Likely)} °C ({WindowLimit.End(until.Low)} to {WindowLimit.End(until.High)}).");
        }
        Cautions = cautions;
    }

    /// <summary>The icing.</summary>
    public Formula Formula { get; }

    /// <summary>Its temperature at the first reading, °C.</summary>
    public double StartCelsius { get; }

    /// <summary>The rate at which it follows the room, per minute.</summary>
    public Spread RatePerMinute { get; }

    /// <summary>Until which temperature it stands.</summary>
    public WindowLimit Limit { get; }

    /// <summary>Whether it stands over the whole of it: no where it surely leaves the window, doubtful where it may, not judged where the windows say nothing.</summary>
    public WindowAnswer Stands { get; }

    /// <summary>Why, in a sentence.</summary>
    public string Why { get; }

    /// <summary>The warmest the icing gets, °C, by the rates.</summary>
    public Spread WarmestCelsius { get; }

    /// <summary>When it is warmest by the middle rate, in the minutes of the readings.</summary>
    public double WarmestMinutes { get; }

    /// <summary>
    /// When it may leave the window at the earliest, in the minutes of the readings; <see langword="null"/> where it does not, or nothing is known.
    /// </summary>
    public double? EarliestMinutes { get; }

    /// <summary>When it likely leaves it; <see langword="null"/> where it likely does not.</summary>
    public double? LikelyMinutes { get; }

    /// <summary>From when on it has surely left it; <see langword="null"/> where it may stand to the end.</summary>
    public double? LatestMinutes { get; }

    /// <summary>
    /// Kelvins between where it likely leaves the window and the warmest it likely gets: below 0 where it leaves. <see langword="null"/> where that is
    /// outside the 20 to 40 °C that are judged.
    /// </summary>
    public double? MarginKelvins { get; }

    /// <summary>Points of solid fat above the least of the window at its warmest, by the likely curve; <see langword="null"/> as above.</summary>
    public double? MarginPoints { get; }

    /// <summary>What the answer leaves out or takes for granted.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>
    /// The rate of an iced cake in still air, an ESTIMATE: from the whole cake as one body with 5 W/(m²·K) to its coat by itself, as if the crumb took no
    /// heat, with 15; likely is their geometric mean. Crumb of 0.5 g/mL and 2.6 kJ/(kg·K), coat of 0.9 g/mL and 2.2, from memory.
    /// </summary>
    /// <param name="across">The diameter or the shorter side, cm, from 3 to 100.</param>
    /// <param name="high">The height, cm, from 2 to 100.</param>
    /// <param name="coat">The thickness of the coat, mm, from 1 to 30.</param>
    /// <returns>
    /// The rate per minute, for <see cref="FormulaHeat.InWarmAfternoon"/>. Worked number: 20 cm across, 10 cm high and 5 mm of coat give 0.0069 to 0.091,
    /// half of the way in 100 to 8 minutes. With two readings of a cake of your own, <see cref="LumpedBody.FromReadings"/> is better.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static Spread RateOfCake(double across, double high, double coat)
    {
        double radius = Guard.InRange(across, 3, 100) / 200, height = Guard.InRange(high, 2, 100) / 100, skin = Guard.InRange(coat, 1, 30) / 1000;
        // Air reaches the top and the side; heat of the crumb, J/(m³·K).
        double area = Math.PI * radius * (radius + 2 * height), volume = Math.PI * radius * radius * height;
        double whole = 60 * 5 * area / (volume * 500 * 2600), alone = 60 * 15 / (skin * 900 * 2200);
        return new Spread(Math.Min(whole, alone), Math.Sqrt(whole * alone), Math.Max(whole, alone), SpreadBasis.Judged);
    }

    /// <summary>The temperature of the icing at a time.</summary>
    /// <param name="minutes">The time, in the minutes of the readings, from the first to the last.</param>
    /// <returns>°C, by the rates; likely by the middle one.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="minutes"/> is outside its range.</exception>
    public Spread CelsiusAt(double minutes)
    {
        Guard.InRange(minutes, _room[0].Minutes, _room[^1].Minutes);
        double[] all = [.. _rates.Select(rate => At(rate, minutes))];
        return new Spread(all.Min(), all[Rates / 2], all.Max(), RatePerMinute.Basis);
    }

    /// <summary>The temperature of the room at a time, on a straight line between two readings.</summary>
    /// <param name="minutes">The time, in the minutes of the readings, from the first to the last.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="minutes"/> is outside its range.</exception>
    public double RoomCelsiusAt(double minutes)
    {
        Guard.InRange(minutes, _room[0].Minutes, _room[^1].Minutes);
        int i = Math.Max(1, Array.FindIndex(_room, reading => reading.Minutes >= minutes));
        return _room[i - 1].Celsius + SlopeBefore(i) * (minutes - _room[i - 1].Minutes);
    }

    /// <summary>Whether it stands over the afternoon, and why.</summary>
    public override string ToString() => (Stands switch
    {
        WindowAnswer.Yes => "stands: ",
        WindowAnswer.No => "does not stand: ",
        WindowAnswer.NotJudged => "not judged: ",
        _ => "doubtful: ",
    }) + Why;

    internal static WarmAfternoon Of(Formula formula, IEnumerable<ThermometerReading> readings, double startCelsius, Spread ratePerMinute, FatCurves? curves)
    {
        Guard.NotNull(formula);
        Guard.InRange(startCelsius, MinimumCelsius, MaximumCelsius);
        ThermometerReading[] all = ThermometerReading.Rising(readings, MaximumReadings);
        for (int i = 0; i < all.Length; i++)
        {
            if (all[i].Celsius is < MinimumCelsius or > MaximumCelsius)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(readings)}: number {i + 1} is {all[i].Celsius:0.##} °C; a room has from "
                    + $"{MinimumCelsius:0} to {MaximumCelsius:0} °C, and 88 is of another scale."), nameof(readings));
        }
        Guard.InRange(ratePerMinute.Low, 1e-6, 100, nameof(ratePerMinute));
        Guard.InRange(ratePerMinute.High, 1e-6, 100, nameof(ratePerMinute));
        return new WarmAfternoon(formula, all, startCelsius, ratePerMinute, curves);
    }

    private double SlopeBefore(int i) => (_room[i].Celsius - _room[i - 1].Celsius) / (_room[i].Minutes - _room[i - 1].Minutes);

    private double At(double rate, double minutes)
    {
        double celsius = StartCelsius;
        for (int i = 1; i < _room.Length; i++)
        {
            double end = Math.Min(minutes, _room[i].Minutes);
            celsius = After(rate, celsius, i, end - _room[i - 1].Minutes);
            if (end >= minutes)
                break;
        }
        return celsius;
    }

    // The exact answer for a room on a straight line.
    private double After(double rate, double celsius, int i, double minutes)
    {
        double slope = SlopeBefore(i), lag = slope / rate, start = _room[i - 1].Celsius;
        return start + slope * minutes - lag + (celsius - start + lag) * Math.Exp(-rate * minutes);
    }

    // Within a stretch it turns at most once: where T = R, at e^(-bt) = (s/b)/(T0 - R0 + s/b).
    private IEnumerable<(double From, double To)> Monotone(double rate)
    {
        double celsius = StartCelsius;
        for (int i = 1; i < _room.Length; i++)
        {
            double from = _room[i - 1].Minutes, length = _room[i].Minutes - from, lag = SlopeBefore(i) / rate;
            double share = lag / (celsius - _room[i - 1].Celsius + lag), turn = share is > 0 and < 1 ? -Math.Log(share) / rate : 0;
            if (turn > 0 && turn < length)
            {
                yield return (from, from + turn);
                yield return (from + turn, _room[i].Minutes);
            }
            else
            {
                yield return (from, _room[i].Minutes);
            }
            celsius = After(rate, celsius, i, length);
        }
    }

    // When each rate brings it above a temperature for the first time.
    private double?[] Crossing(double celsius) => [.. _rates.Select(rate => First(rate, celsius))];

    private double? First(double rate, double celsius)
    {
        if (StartCelsius > celsius)
            return _room[0].Minutes;
        foreach ((double from, double to) in Monotone(rate))
        {
            if (At(rate, to) <= celsius)
                continue;
            double below = from, above = to;
            for (int i = 0; i < 50; i++)
            {
                double middle = (below + above) / 2;
                if (At(rate, middle) > celsius)
                    above = middle;
                else
                    below = middle;
            }
            return above;
        }
        return null;
    }

    private Spread WarmestAt(out double minutes)
    {
        double[] warmest = new double[Rates];
        minutes = _room[0].Minutes;
        for (int i = 0; i < Rates; i++)
        {
            warmest[i] = StartCelsius;
            foreach ((double _, double to) in Monotone(_rates[i]))
            {
                double celsius = At(_rates[i], to);
                if (celsius > warmest[i])
                {
                    warmest[i] = celsius;
                    if (i == Rates / 2)
                        minutes = to;
                }
            }
        }
        return new Spread(warmest.Min(), warmest[Rates / 2], warmest.Max(), RatePerMinute.Basis);
    }
}
