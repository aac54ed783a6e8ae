using Confectio.Text;

namespace Confectio.Conversions;

/// <summary>
/// A mass that a measure was turned into: low, likely and high in grams, and the conversion that says why.
/// <see langword="default"/> is 0 g, exactly, by no conversion.
/// </summary>
public readonly struct ConvertedMass : IEquatable<ConvertedMass>, ISpanFormattable
{
    /// <summary>A mass that is what it is.</summary>
    internal static ConvertedMass Exactly(double grams, Conversion? by = null) => new(grams, grams, grams, 0, SpreadBasis.Exact, by, throughDensity: false);

    internal ConvertedMass(double low, double likely, double high, double standardUncertainty, SpreadBasis basis, Conversion? by,
        bool throughDensity)
    {
        Grams = new Spread(low, likely, high, standardUncertainty, basis);
        By = by;
        ThroughDensity = throughDensity;
    }

    /// <summary>
    /// The mass in grams. Its standard uncertainty is likely × u(ln m); where the amount was a volume, the part of it that comes from the
    /// density is shared by every mass of the same ingredient and packing.
    /// </summary>
    public Spread Grams { get; }

    /// <summary>
    /// The conversion, with its density, source and cautions; <see langword="null"/> where the amount was a mass already.
    /// </summary>
    public Conversion? By { get; }

    /// <summary>
    /// What the text did not say and was taken, a sentence each, where the mass is that of a line of text: which pinch, which egg. Empty
    /// elsewhere.
    /// </summary>
    public IReadOnlyList<string> Assumed => Sentences ?? [];

    internal IReadOnlyList<string>? Sentences { get; init; }

    /// <summary>Whether the uncertainty holds that of the density of <see cref="By"/>; that of a counted piece does not.</summary>
    internal bool ThroughDensity { get; }

    /// <summary>Whether two masses agree in their numbers and in the conversion that made them.</summary>
    /// <param name="other">The other mass.</param>
    public bool Equals(ConvertedMass other) => Grams == other.Grams && Equals(By, other.By);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ConvertedMass other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Grams.GetHashCode();

    /// <summary>Whether two masses are the same.</summary>
    public static bool operator ==(ConvertedMass left, ConvertedMass right) => left.Equals(right);

    /// <summary>Whether two masses differ.</summary>
    public static bool operator !=(ConvertedMass left, ConvertedMass right) => !left.Equals(right);

    /// <summary>Invariant text, such as <c>146.2 g (129.6 to 164.9)</c>.</summary>
    public override string ToString() => ToString(null);

    /// <summary>Invariant text with each number in the given format.</summary>
    /// <param name="format">
    /// A number format, or <c>U</c> for the digits that make sense; see <see cref="Spread.ToString(string?)"/>.
    /// </param>
    /// <returns>The text. Worked example: <c>U</c> writes <c>146 g (130 to 165)</c>.</returns>
    /// <exception cref="FormatException">The format is none, or longer, or asks for more digits.</exception>
    public string ToString(string? format) => Grams.ToString(format, " g");

    // Explicit, because the provider changes nothing: the text is the same in every culture.
    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(ToString(format.IsEmpty ? null : format.ToString()), destination, out charsWritten);
}
