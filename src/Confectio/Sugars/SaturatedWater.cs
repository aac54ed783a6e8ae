using System.Runtime.CompilerServices;
using Confectio.Ingredients;

namespace Confectio.Sugars;

/// <summary>
/// Pure water and its vapour side by side: the boiling point at a pressure, and back. IAPWS-IF97, region 4 (equations 29 to 31).
/// </summary>
/// <remarks>
/// From 0 °C (0.6112 kPa) to the critical point (373.946 °C, 22 064 kPa). The equations are solved for either side in closed form, so that
/// one is the other's inverse to rounding. The coefficients were written down from memory and give the verification values that the release
/// prints.
/// </remarks>
internal static class SaturatedWater
{
    /// <summary>The lowest pressure, kPa: that of water at 0 °C.</summary>
    public const double MinimumKilopascals = 0.611212677;

    /// <summary>The highest pressure, kPa: the critical point.</summary>
    public const double MaximumKilopascals = 22064;

    internal const double ZeroCelsius = 273.15;
    internal const double MaximumCelsius = 373.946;

    private static readonly CoefficientSet s_line = CoefficientTable.BuiltIn.Get("saturation-line", Constituent.Water);

    private static readonly double s_n1 = s_line["n1"], s_n2 = s_line["n2"], s_n3 = s_line["n3"], s_n4 = s_line["n4"], s_n5 = s_line["n5"],
        s_n6 = s_line["n6"], s_n7 = s_line["n7"], s_n8 = s_line["n8"], s_n9 = s_line["n9"], s_n10 = s_line["n10"];

    /// <summary>The vapour pressure of water, kPa.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 373.946.</param>
    /// <returns>Kilopascals. Worked number: 26.85 °C (300 K) gives 3.536589, the release's own check.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static double PressureKilopascals(double celsius) => VapourPressure(Guard.InRange(celsius, 0, MaximumCelsius) + ZeroCelsius);

    /// <summary>The temperature at which water boils, °C.</summary>
    /// <param name="kilopascals">The pressure, kPa, from 0.611212677 to 22064.</param>
    /// <returns>Degrees Celsius. Worked number: 101.325 kPa gives 99.974.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kilopascals"/> is outside its range.</exception>
    public static double BoilingCelsius(double kilopascals) =>
        BoilingKelvin(Guard.InRange(kilopascals, MinimumKilopascals, MaximumKilopascals)) - ZeroCelsius;

    /// <summary>Kilopascals from kelvins, unchecked.</summary>
    internal static double VapourPressure(double kelvin)
    {
        double t = kelvin + s_n9 / (kelvin - s_n10);
        double a = (t + s_n1) * t + s_n2, b = (s_n3 * t + s_n4) * t + s_n5, c = (s_n6 * t + s_n7) * t + s_n8;
        double root = 2 * c / (-b + Math.Sqrt(b * b - 4 * a * c)), square = root * root;
        return 1000 * square * square;
    }

    /// <summary>Kelvins from kilopascals, unchecked.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double BoilingKelvin(double kilopascals)
    {
        double square = Math.Sqrt(kilopascals / 1000), root = Math.Sqrt(square);
        double e = square + s_n3 * root + s_n6, f = s_n1 * square + s_n4 * root + s_n7, g = s_n2 * square + s_n5 * root + s_n8;
        double d = 2 * g / (-f - Math.Sqrt(f * f - 4 * e * g)), sum = s_n10 + d;
        return (sum - Math.Sqrt(sum * sum - 4 * (s_n9 + s_n10 * d))) / 2;
    }
}
