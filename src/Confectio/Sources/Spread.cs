using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Confectio.Text;

namespace Confectio.Sources;

/// <summary>
/// The low, likely and high of an uncertain number. Low and high bound about 95 % of what a careful kitchen would find;
/// they are not a tolerance, which is what somebody allows. <see langword="default"/> is zero, known exactly.
/// </summary>
public readonly struct Spread : IEquatable<Spread>, ISpanFormattable
{
    /// <summary>A spread from its three numbers.</summary>
    /// <param name="low">The low end.</param>
    /// <param name="likely">The likely value, not below <paramref name="low"/>.</param>
    /// <param name="high">The high end, not below <paramref name="likely"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the three do not rise.</exception>
    public Spread(double low, double likely, double high)
    {
        Low = Guard.Finite(low);
        Likely = Guard.InRange(likely, low, double.MaxValue);
        High = Guard.InRange(high, likely, double.MaxValue);
    }

    /// <summary>The low end.</summary>
    public double Low { get; }

    /// <summary>The likely value.</summary>
    public double Likely { get; }

    /// <summary>The high end.</summary>
    public double High { get; }

    /// <summary>A number known exactly, or whose spread nobody gave.</summary>
    internal static Spread Exactly(double value) => new(value, value, value);

    /// <summary>The three numbers times a factor of 0 or more.</summary>
    internal Spread Times(double factor) => new(Low * factor, Likely * factor, High * factor);

    /// <summary>Whether a value lies between low and high, both included.</summary>
    /// <param name="value">The value.</param>
    public bool Contains(double value) => value >= Low && value <= High;

    /// <inheritdoc/>
    public bool Equals(Spread other) => Low.Equals(other.Low) && Likely.Equals(other.Likely) && High.Equals(other.High);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Spread other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Low, Likely, High);

    /// <summary>Whether two spreads have the same three numbers.</summary>
    public static bool operator ==(Spread left, Spread right) => left.Equals(right);

    /// <summary>Whether two spreads differ in any of their numbers.</summary>
    public static bool operator !=(Spread left, Spread right) => !left.Equals(right);

    /// <summary>Invariant text, such as <c>113.5 (109.1 to 118.2)</c>; a spread of no width is its number alone, for an interval would claim a range that nobody gave.</summary>
    public override string ToString() => ToString(null);

    /// <summary>Invariant text with each number in the given format; a spread of no width is its number alone.</summary>
    /// <param name="format">A number format of at most 32 characters and 99 digits, or <see langword="null"/> for four significant digits.</param>
    /// <exception cref="FormatException">The format is none, or longer, or asks for more digits.</exception>
    public string ToString(string? format)
    {
        format = NumberFormat.Checked(format ?? "G4");
        CultureInfo invariant = CultureInfo.InvariantCulture;
        return Low == High ? Likely.ToString(format, invariant) : $"{Likely.ToString(format, invariant)} ({Low.ToString(format, invariant)} to {High.ToString(format, invariant)})";
    }

    // Explicit, because the provider changes nothing: the text is the same in every culture.
    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(ToString(format.IsEmpty ? null : format.ToString()), destination, out charsWritten);
}
