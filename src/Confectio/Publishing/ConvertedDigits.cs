using System.Globalization;

namespace Confectio.Publishing;

/// <summary>How many digits a converted number keeps, by the precision of what it was converted from.</summary>
/// <remarks>
/// The rule of NIST SP 811 (2008), B.7.2, recalled: a number that was rounded to a unit may be off by half of it; of the converted number so
/// many digits are kept that it may be off by no more than that in proportion, and not one more. Worked number: 36 ft is 10.9728 m; half a
/// foot is 1.39 % of it; 11 m may be off by 4.6 %, 11.0 m by 0.46 %, so it is printed as 11.0 m.
/// </remarks>
public static class ConvertedDigits
{
    private const int Most = 15;

    /// <summary>
    /// The power of ten of the last digit that is kept, the largest p with 10ᵖ/2 ≤ |value| × relative half unit: 0 for whole numbers, −1 for
    /// tenths.
    /// </summary>
    /// <param name="value">The converted number, from -1e15 to 1e15.</param>
    /// <param name="relativeHalfUnit">
    /// How far the original may be off by its rounding, as a fraction of it, from 1e-15 to 1: 0.5/36 for 36 ft.
    /// </param>
    /// <returns>From -15 to 15; 0 of a number that is 0. Worked number: −1 for 10.9728 and 0.5/36.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static int Place(double value, double relativeHalfUnit)
    {
        Guard.InRange(value, -1e15, 1e15);
        Guard.InRange(relativeHalfUnit, 1e-15, 1);
        double unit = 2 * Math.Abs(value) * relativeHalfUnit;
        if (!(unit > 0))
            return 0;
        // A tie that the logarithm or a product loses by its last bit is one.
        return Math.Clamp((int)Math.Floor(Math.Log10(unit) + 1e-9), -Most, Most);
    }

    /// <summary>The converted number, rounded to <see cref="Place"/>.</summary>
    /// <inheritdoc cref="Place"/>
    /// <returns>The number. Worked number: 11 for 10.9728 and 0.5/36.</returns>
    public static double Round(double value, double relativeHalfUnit) =>
        double.Parse(Text(value, relativeHalfUnit), NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>The converted number as it is printed, the same in every culture.</summary>
    /// <inheritdoc cref="Place"/>
    /// <returns>The text. Worked number: <c>11.0</c> for 10.9728 and 0.5/36.</returns>
    public static string Text(double value, double relativeHalfUnit) => SheetNumbers.Invariant.At(value, Place(value, relativeHalfUnit));
}
