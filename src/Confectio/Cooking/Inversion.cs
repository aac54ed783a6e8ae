using Confectio.Ingredients;
using Confectio.Numerics;
using Confectio.Sources;
using Confectio.Sugars;

namespace Confectio.Cooking;

/// <summary>
/// How fast acid inverts sucrose, by Vukov (1965): k = 8.12831e16·c·exp(−13 055.7/T − 2.30259·pH) in a minute, with the water c in g/mL of
/// solution and T in kelvin.
/// </summary>
/// <remarks>
/// The constants were read in a program for sugar houses, with the water in per cent; Guggenheim and Wiseman's measurement of 1950 (24.7
/// °C, 0.1 mol/L of hydrochloric acid) is met only with g/mL: within 2 % at 30 g/L of sugar, 13 % low at 100. Of boiling syrups it is an
/// estimate within a factor of about two either way: the pH of a hot thick syrup is nobody's measurement, and a syrup with tartaric acid
/// inverted 2.2 times as fast in 1922 (Sale and Skinner).
/// </remarks>
public static class Inversion
{
    /// <summary>The factor by which a rate in a boiling syrup may be wrong, either way.</summary>
    public const double FactorOfDoubt = 2;

    /// <summary>
    /// The pH of a syrup with the usual pinch of cream of tartar: an estimate; its saturated solution has 3.56 at 25 °C, from memory.
    /// </summary>
    public const double CreamOfTartarPh = 3.6;

    /// <summary>The rate at which sucrose is inverted.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 160; measured below 110.</param>
    /// <param name="ph">The pH at room temperature, from 0 to 9.</param>
    /// <param name="waterGramsPerMillilitre">
    /// The water in a millilitre of syrup, g, from 0 to 1: the density times the fraction of water.
    /// </param>
    /// <returns>
    /// The share that is inverted in a minute, as long as that is small. Worked number: pH 3, 100 °C and 0.55 g/mL give 0.0285.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static double RatePerMinute(double celsius, double ph, double waterGramsPerMillilitre)
    {
        Guard.InRange(ph, 0, 9);
        Guard.InRange(waterGramsPerMillilitre, 0, 1);
        return RateAtPhZero(Guard.InRange(celsius, 0, 160), waterGramsPerMillilitre) * Math.Pow(10, -ph);
    }

    /// <summary>The share that is inverted after an exposure: 1 − e^−k·t.</summary>
    /// <param name="exposure">The rate times the minutes, or its sum over a log, from 0 to 1e9.</param>
    /// <returns>The share, from 0 to 1, with half and twice the exposure as its low and high ends.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="exposure"/> is outside its range.</exception>
    public static Spread ShareAfter(double exposure)
    {
        Guard.InRange(exposure, 0, MostExposure);
        return ShareAfter(exposure, exposure, exposure);
    }

    /// <summary>
    /// As <see cref="ShareAfter(double)"/>, of an exposure that is itself uncertain, and at most <see cref="MostExposure"/>.
    /// </summary>
    internal static Spread ShareAfter(double least, double likely, double most) => new(Share(least / FactorOfDoubt), Share(likely),
        Share(most * FactorOfDoubt), SpreadBasis.Judged);

    internal const double MostExposure = 1e9;

    private static readonly CoefficientSet s_vukov = CoefficientTable.BuiltIn.Get("inversion", Constituent.Sucrose);

    private static readonly double s_rate = s_vukov["rate"], s_temperature = s_vukov["temperature"];

    internal static double RateAtPhZero(double celsius, double waterGramsPerMillilitre) =>
        s_rate * waterGramsPerMillilitre * Math.Exp(-s_temperature / (celsius + SaturatedWater.ZeroCelsius));

    private static double Share(double exposure) => -Exponentials.MinusOne(-exposure);
}
