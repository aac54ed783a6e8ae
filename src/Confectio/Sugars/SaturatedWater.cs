namespace Confectio.Sugars;

/// <summary>
/// Pure water and its vapour side by side: the boiling point at a pressure, and back. IAPWS-IF97, region 4 (equations 29 to 31).
/// </summary>
/// <remarks>
/// From 0 °C (0.6112 kPa) to the critical point (373.946 °C, 22 064 kPa). The equations are solved for either side in closed form, so that one is
/// the other's inverse to rounding. The coefficients were written down from memory and give the verification values that the
/// release prints.
/// </remarks>
public static class SaturatedWater
{
    /// <summary>The lowest pressure, kPa: that of water at 0 °C.</summary>
    public const double LowestKilopascals = 0.611212677;

    /// <summary>The highest pressure, kPa: the critical point.</summary>
    public const double HighestKilopascals = 22064;

    internal const double ZeroCelsius = 273.15;
    internal const double HighestCelsius = 373.946;

    private const double N1 = 0.11670521452767e4, N2 = -0.72421316703206e6, N3 = -0.17073846940092e2, N4 = 0.12020824702470e5,
        N5 = -0.32325550322333e7, N6 = 0.14915108613530e2, N7 = -0.48232657361591e4, N8 = 0.40511340542057e6,
        N9 = -0.23855557567849, N10 = 0.65017534844798e3;

    /// <summary>The vapour pressure of water, kPa.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 373.946.</param>
    /// <returns>Kilopascals. Worked number: 26.85 °C (300 K) gives 3.536589, the release's own check.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static double PressureKilopascals(double celsius) => VapourPressure(Guard.InRange(celsius, 0, HighestCelsius) + ZeroCelsius);

    /// <summary>The temperature at which water boils, °C.</summary>
    /// <param name="kilopascals">The pressure, kPa, from 0.611212677 to 22064.</param>
    /// <returns>Degrees Celsius. Worked number: 101.325 kPa gives 99.974.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kilopascals"/> is outside its range.</exception>
    public static double BoilingCelsius(double kilopascals) =>
        BoilingKelvin(Guard.InRange(kilopascals, LowestKilopascals, HighestKilopascals)) - ZeroCelsius;

    /// <summary>Kilopascals from kelvins, unchecked.</summary>
    internal static double VapourPressure(double kelvin)
    {
        double t = kelvin + N9 / (kelvin - N10);
        double a = (t + N1) * t + N2, b = (N3 * t + N4) * t + N5, c = (N6 * t + N7) * t + N8;
        double root = 2 * c / (-b + Math.Sqrt(b * b - 4 * a * c)), square = root * root;
        return 1000 * square * square;
    }

    /// <summary>Kelvins from kilopascals, unchecked.</summary>
    internal static double BoilingKelvin(double kilopascals)
    {
        double square = Math.Sqrt(kilopascals / 1000), root = Math.Sqrt(square);
        double e = square + N3 * root + N6, f = N1 * square + N4 * root + N7, g = N2 * square + N5 * root + N8;
        double d = 2 * g / (-f - Math.Sqrt(f * f - 4 * e * g)), sum = N10 + d;
        return (sum - Math.Sqrt(sum * sum - 4 * (N9 + N10 * d))) / 2;
    }
}
