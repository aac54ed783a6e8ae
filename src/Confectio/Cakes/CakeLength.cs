using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Cakes;

/// <summary>
/// A length as people write it on a tin or an order: <c>8 1/2 in</c>, <c>20 cm</c>, <c>6 mm</c>. <see langword="default"/> is 0 cm.
/// </summary>
/// <remarks>
/// Kept in centimetres. Shapes, tiers, coats and tins take lengths, so that nobody gives inches for centimetres, or turns for a width. 1 in
/// is 2.54 cm exactly, by the agreement of 1959 on the yard. Text needs its unit: that a tin of 20 is one of 20 cm and a tin of 8 one of 8
/// in is likely, and a guess.
/// </remarks>
[JsonConverter(typeof(CakeLengthJsonConverter))]
public readonly struct CakeLength : IEquatable<CakeLength>, IComparable<CakeLength>, ISpanFormattable, ISpanParsable<CakeLength>
{
    /// <summary>The centimetres of an inch, exactly, since the agreement of 1959 on the yard.</summary>
    public const double CentimetresPerInch = 2.54;

    /// <summary>The longest length, cm.</summary>
    public const double MaximumCentimetres = 1e6;

    private CakeLength(double centimetres) => Centimetres = centimetres;

    /// <summary>Centimetres, from 0 to 1e6.</summary>
    public double Centimetres { get; }

    /// <summary>Millimetres, from 0 to 1e7.</summary>
    public double Millimetres => 10 * Centimetres;

    /// <summary>Inches, from 0 to 393 700.79. Worked number: 25.4 cm is 10 in.</summary>
    public double Inches => Centimetres / CentimetresPerInch;

    /// <summary>A length from centimetres.</summary>
    /// <param name="centimetres">The length, cm, from 0 to 1e6.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="centimetres"/> is outside its range.</exception>
    // Plus 0, so that −0 is written and hashed as 0.
    public static CakeLength FromCentimetres(double centimetres) => new(Guard.InRange(centimetres, 0, MaximumCentimetres) + 0);

    /// <summary>A length from millimetres.</summary>
    /// <param name="millimetres">The length, mm, from 0 to 1e7.</param>
    /// <returns>The length. Worked number: 6 mm is 0.6 cm.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="millimetres"/> is outside its range.</exception>
    public static CakeLength FromMillimetres(double millimetres) => new(Guard.InRange(millimetres, 0, 10 * MaximumCentimetres) / 10 + 0);

    /// <summary>A length from inches: 2.54 cm each.</summary>
    /// <param name="inches">The length, in, from 0 to 393 700, which is just short of 1e6 cm.</param>
    /// <returns>The length. Worked number: 8 in is 20.32 cm.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="inches"/> is outside its range.</exception>
    // Whole inches and binary fractions of them times 254 are exact, so the division rounds once: 33 in is 83.82 cm, and not
    // 83.82000000000001, which times 2.54 makes it.
    public static CakeLength FromInches(double inches) => new(Guard.InRange(inches, 0, MostInches) * 254 / 100 + 0);

    /// <summary>Reads a number and its unit; the same in every culture.</summary>
    /// <param name="text">
    /// The text, such as <c>8 in</c>, <c>8"</c>, <c>8 1/2 inches</c>, <c>8½ in</c>, <c>9-inch</c>, <c>half an inch</c>, <c>20 cm</c>,
    /// <c>20.5 cm</c>, <c>20,5 cm</c> or <c>6 mm</c>. A decimal mark is a point or a comma. There are no marks between thousands: <c>1,250
    /// cm</c> may be meant as either and is refused.
    /// </param>
    /// <returns>The length. Worked number: <c>8 1/2 in</c> is 21.59 cm.</returns>
    /// <exception cref="FormatException">The text is no length; the message says what was read and what was expected.</exception>
    public static CakeLength Parse(ReadOnlySpan<char> text) => Read(text, out CakeLength length) is { } reason
        ? throw new FormatException(
            $"{Excerpt.Of(text)} is not a length: {reason}. A number with in, cm or mm was expected, such as 8 1/2 in or 20.5 cm.")
        : length;

    /// <summary>Reads a number and its unit; the same in every culture.</summary>
    /// <param name="text">The text; see <see cref="Parse(ReadOnlySpan{char})"/>.</param>
    /// <param name="length">The length; the default where the text is none.</param>
    /// <returns>Whether the text is a length.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out CakeLength length) => Read(text, out length) is null;

    // The provider is not used: reading is the same in every culture. The interfaces are implemented explicitly so that nobody is told to
    // pass one.
    static CakeLength IParsable<CakeLength>.Parse(string s, IFormatProvider? provider) => Parse(Guard.NotNull(s).AsSpan());

    static CakeLength ISpanParsable<CakeLength>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<CakeLength>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out CakeLength result) =>
        TryParse(s.AsSpan(), out result);

    static bool ISpanParsable<CakeLength>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out CakeLength result) =>
        TryParse(s, out result);

    /// <summary>Compares the lengths.</summary>
    public int CompareTo(CakeLength other) => Centimetres.CompareTo(other.Centimetres);

    /// <summary>Whether the other is the same length, to the last digit.</summary>
    public bool Equals(CakeLength other) => Centimetres.Equals(other.Centimetres);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is CakeLength other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Centimetres.GetHashCode();

    /// <summary>Invariant text in centimetres that reads back as the same length, such as <c>20.32 cm</c>.</summary>
    public override string ToString() => ToString(null);

    /// <summary>Invariant text in a unit.</summary>
    /// <param name="format">
    /// <c>cm</c> or <see langword="null"/> for all digits, <c>mm</c> for 15 digits, or <c>in</c> for a mixed number where that is within
    /// 1e-9 in of a sixteenth (<c>8 1/2 in</c>) and 15 digits elsewhere.
    /// </param>
    /// <returns>The text. Worked number: 21.59 cm is <c>21.59 cm</c>, <c>215.9 mm</c> and <c>8 1/2 in</c>.</returns>
    /// <exception cref="FormatException">The format is none of these.</exception>
    public string ToString(string? format) => format switch
    {
        null or "" or "cm" or "G" => string.Create(CultureInfo.InvariantCulture, $"{Centimetres:R} cm"),
        // 15 digits leave out the rounding of the change of unit: 11.3 mm, not 11.299999999999999.
        "mm" => string.Create(CultureInfo.InvariantCulture, $"{Millimetres:G15} mm"),
        "in" => InInches(),
        _ => throw new FormatException($"{Excerpt.Of(format)} is not a format of a length; cm, mm and in are."),
    };

    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(ToString(format.ToString()), destination, out charsWritten);

    /// <summary>Whether two lengths are the same.</summary>
    public static bool operator ==(CakeLength left, CakeLength right) => left.Equals(right);

    /// <summary>Whether two lengths differ.</summary>
    public static bool operator !=(CakeLength left, CakeLength right) => !left.Equals(right);

    /// <summary>Whether the left length is shorter.</summary>
    public static bool operator <(CakeLength left, CakeLength right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left length is longer.</summary>
    public static bool operator >(CakeLength left, CakeLength right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left length is shorter or the same.</summary>
    public static bool operator <=(CakeLength left, CakeLength right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left length is longer or the same.</summary>
    public static bool operator >=(CakeLength left, CakeLength right) => left.CompareTo(right) >= 0;

    private const double MostInches = 393_700;

    private string InInches()
    {
        double sixteenths = Math.Round(16 * Inches);
        if (Math.Abs(sixteenths / 16 - Inches) > 1e-9)
            return string.Create(CultureInfo.InvariantCulture, $"{Inches:G15} in");
        (long whole, long rest) = Math.DivRem((long)sixteenths, 16);
        return rest == 0 ? string.Create(CultureInfo.InvariantCulture, $"{whole} in")
            : string.Create(CultureInfo.InvariantCulture, $"{(whole == 0 ? "" : $"{whole} ")}{new Fraction(rest, 16)} in");
    }

    // What is wrong with the text, or null. A cake of metres or feet is more likely a slip than a cake.
    private static string? Read(ReadOnlySpan<char> text, out CakeLength length)
    {
        length = default;
        string? reason = QuantityReader.Read(text, QuantityText.CentimetreUnits, signed: false, thousands: false, out double centimetres);
        // The longest length in inches of 15 digits may be past the end by the last of them.
        if (reason is null && !(centimetres <= MaximumCentimetres * (1 + 1e-14)))
            reason = "it is longer than 1000000 cm";
        if (reason is null)
            length = new CakeLength(Math.Min(centimetres, MaximumCentimetres));
        return reason;
    }
}
