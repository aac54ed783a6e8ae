using Confectio.Text;

namespace Confectio.Conversions;

/// <summary>
/// A volume that a mass was turned into: low, likely and high in millilitres, and the conversion that says why.
/// <see langword="default"/> is 0 mL, exactly, by no conversion.
/// </summary>
public readonly struct ConvertedVolume : IEquatable<ConvertedVolume>, ISpanFormattable
{
    internal ConvertedVolume(double low, double likely, double high, Conversion by)
    {
        Millilitres = new Spread(low, likely, high, likely * by.LogUncertainty, by.Basis);
        By = by;
    }

    /// <summary>The volume in millilitres: its low end is the mass at the high end of the density.</summary>
    public Spread Millilitres { get; }

    /// <summary>The conversion, with its density, source and cautions.</summary>
    public Conversion? By { get; }

    /// <summary>Whether two volumes agree in their numbers and in the conversion that made them.</summary>
    /// <param name="other">The other volume.</param>
    public bool Equals(ConvertedVolume other) => Millilitres == other.Millilitres && Equals(By, other.By);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ConvertedVolume other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Millilitres.GetHashCode();

    /// <summary>Whether two volumes are the same.</summary>
    public static bool operator ==(ConvertedVolume left, ConvertedVolume right) => left.Equals(right);

    /// <summary>Whether two volumes differ.</summary>
    public static bool operator !=(ConvertedVolume left, ConvertedVolume right) => !left.Equals(right);

    /// <summary>Invariant text, such as <c>690.8 mL (600.5 to 794.6)</c>.</summary>
    public override string ToString() => ToString(null);

    /// <summary>Invariant text with each number in the given format.</summary>
    /// <param name="format">
    /// A number format, or <c>U</c> for the digits that make sense; see <see cref="Spread.ToString(string?)"/>.
    /// </param>
    /// <returns>The text. Worked example: <c>U</c> writes <c>690 mL (600 to 790)</c>.</returns>
    /// <exception cref="FormatException">The format is none, or longer, or asks for more digits.</exception>
    public string ToString(string? format) => Millilitres.ToString(format, " mL");

    // Explicit, because the provider changes nothing: the text is the same in every culture.
    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(ToString(format.IsEmpty ? null : format.ToString()), destination, out charsWritten);
}
