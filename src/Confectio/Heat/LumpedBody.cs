using System.Globalization;
using Confectio.Measures;
using Confectio.Sugars;

namespace Confectio.Heat;

/// <summary>
/// A body of one temperature throughout that warms or cools in surroundings that stay as they are, by Newton: T = T∞ + (T₀ − T∞)·e^(−b·t)
/// with b = h·A/(ρ·V·c).
/// </summary>
/// <remarks>
/// It holds where heat spreads in the body faster than it comes in: with a Biot number up to 0.1 (<see cref="BiotLimit"/>). A bowl that is
/// stirred is of one temperature whatever its Biot number is; a slab of ganache is not, and its middle lags behind. The coefficient h is
/// the weak point: for a figure of your own take two readings. From memory, in W/(m²·K): still air with radiation 5 to 15, moving air 10 to
/// 50, a still bath of water 100 to 500, a stirred one or a pack of ice pressed against the wall 300 to 1500. Nothing here melts, sets or
/// dries; fat that melts on the way makes it slower.
/// </remarks>
public sealed class LumpedBody
{
    /// <summary>The Biot number up to which a body that is not stirred is of one temperature, within about 5 %.</summary>
    public const double BiotLimit = 0.1;

    /// <summary>The most readings of a fit.</summary>
    public const int MaximumReadings = 100_000;

    private LumpedBody(double ratePerMinute, double startCelsius, double surroundingsCelsius, double residualKelvins)
    {
        RatePerMinute = ratePerMinute;
        StartCelsius = startCelsius;
        SurroundingsCelsius = surroundingsCelsius;
        ResidualKelvins = residualKelvins;
    }

    /// <summary>The rate b, per minute: the share of the difference that goes in the first instant.</summary>
    public double RatePerMinute { get; }

    /// <summary>The temperature at minute 0, °C.</summary>
    public double StartCelsius { get; }

    /// <summary>The temperature of the surroundings, °C.</summary>
    public double SurroundingsCelsius { get; }

    /// <summary>The root of the mean square of what the readings are off the curve, K; 0 where it was not fitted.</summary>
    public double ResidualKelvins { get; }

    /// <summary>The time in which the difference to the surroundings is halved, minutes: ln 2/b.</summary>
    public double HalvingMinutes => Math.Log(2) / RatePerMinute;

    /// <summary>A body by its rate and one reading of it.</summary>
    /// <param name="ratePerMinute">The rate b, per minute, from 1e-9 to 1e6.</param>
    /// <param name="reading">What a thermometer in it showed.</param>
    /// <param name="surroundingsCelsius">The temperature of the surroundings, °C, from −200 to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A number is outside its range, or the reading so late that the temperature at minute 0 has no number.
    /// </exception>
    public static LumpedBody FromRate(double ratePerMinute, ThermometerReading reading, double surroundingsCelsius)
    {
        LumpedBody since = FromRate(ratePerMinute, reading.Celsius, surroundingsCelsius);
        return reading.Minutes == 0 ? since
            : new LumpedBody(since.RatePerMinute, since.At(-reading.Minutes, nameof(reading)), since.SurroundingsCelsius, 0);
    }

    internal static LumpedBody FromRate(double ratePerMinute, double startCelsius, double surroundingsCelsius) =>
        new(Guard.InRange(ratePerMinute, 1e-9, 1e6), Guard.InRange(startCelsius, -200, 1000),
            Guard.InRange(surroundingsCelsius, -200, 1000), 0);

    /// <summary>A body by its size and the coefficient of heat transfer: b = h·A/(ρ·V·c).</summary>
    /// <param name="wattsPerSquareMetreKelvin">The coefficient h, W/(m²·K), from 0.001 to 1e6.</param>
    /// <param name="squareMetres">The area A through which heat passes, m², from 1e-6 to 1e4.</param>
    /// <param name="litres">The volume V, L, from 1e-6 to 1e6.</param>
    /// <param name="gramsPerMillilitre">The density ρ, g/mL, from 0.01 to 25.</param>
    /// <param name="specificHeat">The specific heat c, kJ/(kg·K), from 0.01 to 20.</param>
    /// <param name="startCelsius">The temperature at minute 0, °C, from −200 to 1000.</param>
    /// <param name="surroundingsCelsius">The temperature of the surroundings, °C, from −200 to 1000.</param>
    /// <returns>
    /// The body. Worked number: a glass of milk, 6 cm across and 7 cm high, at 3 °C in water of 60 °C with 120 W/(m²·K) is at 38 °C after
    /// 5.8 minutes.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static LumpedBody FromGeometry(double wattsPerSquareMetreKelvin, double squareMetres, double litres,
        double gramsPerMillilitre, double specificHeat, double startCelsius, double surroundingsCelsius)
    {
        Guard.InRange(wattsPerSquareMetreKelvin, 1e-3, 1e6);
        Guard.InRange(squareMetres, 1e-6, 1e4);
        Guard.InRange(litres, 1e-6, 1e6);
        Guard.InRange(gramsPerMillilitre, 0.01, 25);
        Guard.InRange(specificHeat, 0.01, 20);
        Guard.InRange(startCelsius, -200, 1000);
        Guard.InRange(surroundingsCelsius, -200, 1000);
        // A litre times g/mL is a kilogram; a kilojoule is 1000 J.
        return new LumpedBody(60 * wattsPerSquareMetreKelvin * squareMetres / (1000 * litres * gramsPerMillilitre * specificHeat),
            startCelsius, surroundingsCelsius, 0);
    }

    /// <summary>
    /// A body by readings of it: the straight line of ln |T − T∞| over time with the least squares. Two readings are met exactly:
    /// b = ln((T₁ − T∞)/(T₂ − T∞))/(t₂ − t₁).
    /// </summary>
    /// <param name="readings">From 2 to 100 000 readings, each later than the one before, all on one side of the surroundings.</param>
    /// <param name="surroundingsCelsius">The temperature of the surroundings, °C, from −200 to 1000.</param>
    /// <returns>
    /// The body. Readings near the surroundings count too much on a logarithm: leave out those within a few kelvins of them. Worked
    /// number: 100 °C at the start and 60 °C after 10 minutes in air of 20 °C: b = 0.0693 per minute, halved in 10 minutes.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="readings"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// There are too few or too many, they are out of order, on both sides of the surroundings, or not going towards them.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="surroundingsCelsius"/> is outside its range.</exception>
    public static LumpedBody FromReadings(IEnumerable<ThermometerReading> readings, double surroundingsCelsius)
    {
        Guard.NotNull(readings);
        Guard.InRange(surroundingsCelsius, -200, 1000);
        ThermometerReading[] all = ThermometerReading.Rising(readings, MaximumReadings);
        return Fit([.. all.Select(reading => (reading.Minutes, reading.Celsius))], surroundingsCelsius, nameof(readings));
    }

    /// <summary>The Biot number h·V/(A·k): up to <see cref="BiotLimit"/> a body that is not stirred is of one temperature.</summary>
    /// <param name="wattsPerSquareMetreKelvin">The coefficient h, W/(m²·K), from 0 to 1e6.</param>
    /// <param name="squareMetres">The area A, m², from 1e-6 to 1e4.</param>
    /// <param name="litres">The volume V, L, from 0 to 1e6.</param>
    /// <param name="conductivity">
    /// The conductivity k of the body, W/(m·K), from 0.001 to 1000, such as <see cref="ThermalProperties.ConductivityParallel"/>.
    /// </param>
    /// <returns>The number. Worked number: the glass of milk of the geometry above has 2.1, and holds only because it is stirred.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static double Biot(double wattsPerSquareMetreKelvin, double squareMetres, double litres, double conductivity) =>
        Guard.InRange(wattsPerSquareMetreKelvin, 0, 1e6) / Guard.InRange(squareMetres, 1e-6,
            1e4) * (Guard.InRange(litres, 0, 1e6) / 1000) / Guard.InRange(conductivity, 1e-3, 1000);

    /// <summary>The temperature after a time.</summary>
    /// <param name="minutes">Minutes from minute 0, from −1e6 to 1e6.</param>
    /// <returns>°C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="minutes"/> is outside its range, or so long before the start that the temperature has no number.
    /// </exception>
    public double CelsiusAfter(double minutes) => At(Guard.InRange(minutes, -1e6, 1e6), nameof(minutes));

    /// <summary>The time to a temperature, from minute 0.</summary>
    /// <param name="celsius">The temperature, °C, from −273.15 to 1e6.</param>
    /// <returns>
    /// Minutes; <see langword="null"/> where it is never reached from minute 0 on: beyond the surroundings, at them, or on the far side of
    /// the start.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double? MinutesTo(double celsius)
    {
        Guard.InRange(celsius, -273.15, 1e6);
        if (celsius == StartCelsius)
            return 0;
        double left = (celsius - SurroundingsCelsius) / (StartCelsius - SurroundingsCelsius);
        return left is > 0 and < 1 ? -Math.Log(left) / RatePerMinute : null;
    }

    /// <summary>One line, such as <c>3 °C to 60 °C, half of the way in 4.22 min</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{StartCelsius:0.##} °C to {SurroundingsCelsius:0.##} °C, half of the way in {HalvingMinutes:0.##} min");

    private double At(double minutes, string name)
    {
        double celsius = SurroundingsCelsius + (StartCelsius - SurroundingsCelsius) * Math.Exp(-RatePerMinute * minutes);
        return double.IsFinite(celsius) ? celsius
            : throw new ArgumentOutOfRangeException(name, minutes, string.Create(CultureInfo.InvariantCulture,
                $"{name} was {minutes:R}; so long before the start the temperature has no number."));
    }

    private static LumpedBody Fit((double Minutes, double Celsius)[] readings, double surroundings, string name)
    {
        double side = Math.Sign(readings[0].Celsius - surroundings), meanTime = 0, meanLog = 0;
        for (int i = 0; i < readings.Length; i++)
        {
            (double minutes, double celsius) = readings[i];
            if (i > 0 && minutes <= readings[i - 1].Minutes)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{name}: number {i + 1} is at {minutes:R} minutes, not after {readings[i - 1].Minutes:R}."), name);
            if (side == 0 || (celsius - surroundings) * side <= 0)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                    $"{name}: number {i + 1} is at {celsius:R} °C, and all must be on one side of "
                    + $"the surroundings of {surroundings:R} °C."), name);
            meanTime += minutes / readings.Length;
            meanLog += Math.Log(Math.Abs(celsius - surroundings)) / readings.Length;
        }
        double covariance = 0, variance = 0;
        foreach ((double minutes, double celsius) in readings)
        {
            covariance += (minutes - meanTime) * (Math.Log(Math.Abs(celsius - surroundings)) - meanLog);
            variance += (minutes - meanTime) * (minutes - meanTime);
        }
        double rate = -covariance / variance, start = surroundings + side * Math.Exp(meanLog + rate * meanTime);
        if (!(rate > 0) || !double.IsFinite(start))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{name}: the readings do not go towards the surroundings of {surroundings:R} °C."), name);
        LumpedBody body = new(rate, start, surroundings, 0);
        double squares = readings.Sum(reading => Math.Pow(body.CelsiusAfter(reading.Minutes) - reading.Celsius, 2));
        // Two readings are met exactly.
        return readings.Length == 2 ? body : new LumpedBody(rate, start, surroundings, Math.Sqrt(squares / readings.Length));
    }
}
