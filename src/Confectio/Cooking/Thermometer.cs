using System.Globalization;
using Confectio.Sugars;

namespace Confectio.Cooking;

/// <summary>
/// A thermometer that was held in boiling water: how much it reads too high or too low there, taken to be the same at every temperature.
/// </summary>
/// <remarks>Test it in the kitchen where it is used, in pure water at a rolling boil, the tip not on the bottom.</remarks>
public sealed class Thermometer
{
    private Thermometer(double offset) => Offset = offset;

    /// <summary>What it reads too high, K; below 0 where it reads too low.</summary>
    public double Offset { get; }

    /// <summary>A thermometer by what it shows in boiling water.</summary>
    /// <param name="readingCelsius">What it shows, °C, from 60 to 130.</param>
    /// <param name="pressure">
    /// The pressure, from the altitude or a barometer: not from this thermometer, which would vouch for itself.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="readingCelsius"/> is outside its range.</exception>
    public static Thermometer FromBoilingWater(double readingCelsius, AirPressure pressure) =>
        new(Guard.InRange(readingCelsius, 60, 130) - pressure.WaterBoilsCelsius);

    /// <summary>
    /// The kitchen rule that asks for neither altitude nor pressure: what the thermometer is short of 100 °C (212 °F) in boiling water is
    /// taken off the target. It corrects the thermometer rightly and the altitude nearly: the elevation of the boiling point shrinks with
    /// the pressure too.
    /// </summary>
    /// <param name="targetCelsius">The target at sea level, °C, from 100 to 220.</param>
    /// <param name="readingCelsius">What the thermometer shows in boiling water, °C, from 60 to 130.</param>
    /// <returns>What it is to show, °C. Worked number: water at 205 °F and a target of 280 °F give 273 °F.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double TargetByBoilingWater(double targetCelsius, double readingCelsius) =>
        Guard.InRange(targetCelsius, 100, 220) - (100 - Guard.InRange(readingCelsius, 60, 130));

    /// <summary>The true temperature behind a reading.</summary>
    /// <param name="readingCelsius">What it shows, °C, from −50 to 400.</param>
    /// <returns>Degrees Celsius.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="readingCelsius"/> is outside its range.</exception>
    public double ToTrue(double readingCelsius) => Guard.InRange(readingCelsius, -50, 400) - Offset;

    /// <summary>What it shows at a true temperature: where to take the pot off.</summary>
    /// <param name="celsius">The temperature, °C, from −50 to 400.</param>
    /// <returns>Degrees Celsius as it shows them.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double ToReading(double celsius) => Guard.InRange(celsius, -50, 400) + Offset;

    /// <summary>How far it reads off, such as <c>reads 1.5 K too high</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"reads {Math.Abs(Offset):0.##} K too {(Offset < 0 ? "low" : "high")}");
}
