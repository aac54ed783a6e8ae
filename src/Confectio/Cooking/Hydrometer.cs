using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;

namespace Confectio.Cooking;

/// <summary>
/// A glass hydrometer in syrup that is not at the temperature it was made for: it floats higher in cold syrup, deeper in hot. Its glass
/// widens by
/// 25 millionths a kelvin (from memory), so that at t it shows the strength whose density at its own temperature t₀ is ρ(t)·(1 + 25e-6·(t −
/// t₀)).
/// </summary>
public sealed class Hydrometer
{
    private static readonly double s_glassPerKelvin = CoefficientTable.BuiltIn.Get("hydrometer", "glass")["expansion"];

    private Hydrometer(double madeForCelsius) => MadeForCelsius = madeForCelsius;

    /// <summary>The temperature that it was made for, °C; it stands on the glass.</summary>
    public double MadeForCelsius { get; }

    /// <summary>A hydrometer made for a temperature.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 60: 20 on most.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static Hydrometer MadeFor(double celsius) => new(Guard.InRange(celsius, 0, 60));

    /// <summary>What the hydrometer shows.</summary>
    /// <param name="strength">The true strength of the sucrose syrup.</param>
    /// <param name="celsius">The temperature of the syrup, °C, from 0 to 100.</param>
    /// <returns>
    /// The reading. Worked number: made for 20 °C, in 60 °Bx at 80 °C it reads 54.3 °Bx; for degrees Baumé use <see cref="Brix.Baume"/>
    /// of the reading.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">
    /// It would sink below its zero: hot and thin syrup is lighter than the water it was made for.
    /// </exception>
    public Brix Reading(Brix strength, double celsius)
    {
        Guard.InRange(celsius, 0, 100);
        double shown = SolutionDensity.Sucrose(strength.Fraction, celsius) * (1 + s_glassPerKelvin * (celsius - MadeForCelsius));
        return On(shown, MadeForCelsius, string.Create(CultureInfo.InvariantCulture, $"In {strength} at {celsius:0.##} °C the hydrometer"));
    }

    /// <summary>The true strength from what the hydrometer shows.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="celsius">The temperature of the syrup, °C, from 0 to 100.</param>
    /// <returns>The strength; the difference from the reading is the correction of printed tables.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">No strength from 0 to 100 °Bx gives this reading at this temperature.</exception>
    public Brix Strength(Brix reading, double celsius)
    {
        Guard.InRange(celsius, 0, 100);
        double density = SolutionDensity.Sucrose(reading.Fraction, MadeForCelsius) / (1 + s_glassPerKelvin * (celsius - MadeForCelsius));
        return On(density, celsius, string.Create(CultureInfo.InvariantCulture,
            $"A syrup at {celsius:0.##} °C in which the hydrometer shows {reading}"));
    }

    /// <summary>What stands on it, such as <c>hydrometer made for 20 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"hydrometer made for {MadeForCelsius:0.##} °C");

    private static Brix On(double density, double celsius, string what) => SolutionDensity.SucroseAt(density, celsius) is double fraction
        ? Brix.FromFraction(fraction)
        : throw new InvalidOperationException(
            $"{what} would be {(density < SolutionDensity.Water(celsius) ? "below 0" : "above 100")} °Bx, off the scale.");
}
