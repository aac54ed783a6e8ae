using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Confectio.Measures;

/// <summary>
/// An exact fraction in lowest terms: a third of a cup is 1/3, never 0.33. <see langword="default"/> is zero.
/// </summary>
/// <remarks>
/// Kept in two 64-bit integers; a result that does not fit raises <see cref="OverflowException"/> and is never rounded.
/// Worked number: 1/2 + 1/3 = 5/6.
/// </remarks>
[JsonConverter(typeof(FractionJsonConverter))]
public readonly struct Fraction : IEquatable<Fraction>, IComparable<Fraction>
{
    // One less than the denominator, so that default is the legal value 0/1.
    private readonly long _denominatorLessOne;

    /// <summary>The fraction <paramref name="numerator"/>/<paramref name="denominator"/>, reduced.</summary>
    /// <param name="numerator">The numerator.</param>
    /// <param name="denominator">The denominator, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="denominator"/> is below 1.</exception>
    public Fraction(long numerator, long denominator)
    {
        if (denominator < 1)
            throw new ArgumentOutOfRangeException(nameof(denominator), denominator,
                string.Create(CultureInfo.InvariantCulture, $"denominator was {denominator}; it must be at least 1."));
        long divisor = GreatestCommonDivisor(numerator, denominator);
        Numerator = numerator / divisor;
        _denominatorLessOne = denominator / divisor - 1;
    }

    // The last argument only tells this constructor, which trusts its caller, from the public one.
#pragma warning disable IDE0060
    private Fraction(long numerator, long denominator, bool inLowestTerms)
#pragma warning restore IDE0060
    {
        Numerator = numerator;
        _denominatorLessOne = denominator - 1;
    }

    /// <summary>Zero.</summary>
    public static Fraction Zero => default;

    /// <summary>One.</summary>
    public static Fraction One => 1;

    /// <summary>The numerator in lowest terms; it carries the sign.</summary>
    public long Numerator { get; }

    /// <summary>The denominator in lowest terms; at least 1.</summary>
    public long Denominator => _denominatorLessOne + 1;

    /// <summary>Whether the fraction is a whole number.</summary>
    public bool IsWhole => _denominatorLessOne == 0;

    /// <summary>A whole number as a fraction.</summary>
    /// <param name="value">The whole number.</param>
    public static implicit operator Fraction(int value) => new(value, 1, inLowestTerms: true);

    /// <summary>A decimal number as the fraction it writes: 0.125 is 1/8.</summary>
    /// <param name="value">The decimal number.</param>
    /// <returns>The exact fraction.</returns>
    /// <exception cref="OverflowException">The fraction does not fit in two 64-bit integers.</exception>
    public static Fraction FromDecimal(decimal value)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(value, bits);
        Int128 numerator = new((uint)bits[2], ((ulong)(uint)bits[1] << 32) | (uint)bits[0]);
        Int128 denominator = 1;
        for (int i = 0; i < value.Scale; i++)
            denominator *= 10;
        return Reduce(value < 0 ? -numerator : numerator, denominator);
    }

    /// <summary>The nearest double: numerator divided by denominator, rounded once where both are below 2^53.</summary>
    public double ToDouble() => (double)Numerator / Denominator;

    /// <summary>The sum.</summary>
    public static Fraction operator +(Fraction left, Fraction right) =>
        Reduce((Int128)left.Numerator * right.Denominator + (Int128)right.Numerator * left.Denominator,
            (Int128)left.Denominator * right.Denominator);

    /// <summary>The difference.</summary>
    public static Fraction operator -(Fraction left, Fraction right) =>
        Reduce((Int128)left.Numerator * right.Denominator - (Int128)right.Numerator * left.Denominator,
            (Int128)left.Denominator * right.Denominator);

    /// <summary>The product.</summary>
    public static Fraction operator *(Fraction left, Fraction right) =>
        Reduce((Int128)left.Numerator * right.Numerator, (Int128)left.Denominator * right.Denominator);

    /// <summary>The quotient.</summary>
    /// <exception cref="DivideByZeroException"><paramref name="right"/> is zero.</exception>
    public static Fraction operator /(Fraction left, Fraction right)
    {
        if (right.Numerator == 0)
            throw new DivideByZeroException();
        Int128 numerator = (Int128)left.Numerator * right.Denominator, denominator = (Int128)left.Denominator * right.Numerator;
        return denominator < 0 ? Reduce(-numerator, -denominator) : Reduce(numerator, denominator);
    }

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Fraction left, Fraction right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Fraction left, Fraction right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left is not larger.</summary>
    public static bool operator <=(Fraction left, Fraction right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left is not smaller.</summary>
    public static bool operator >=(Fraction left, Fraction right) => left.CompareTo(right) >= 0;

    /// <summary>Whether two fractions are the same number.</summary>
    public static bool operator ==(Fraction left, Fraction right) => left.Equals(right);

    /// <summary>Whether two fractions are different numbers.</summary>
    public static bool operator !=(Fraction left, Fraction right) => !left.Equals(right);

    /// <inheritdoc/>
    public int CompareTo(Fraction other) =>
        ((Int128)Numerator * other.Denominator).CompareTo((Int128)other.Numerator * Denominator);

    /// <inheritdoc/>
    public bool Equals(Fraction other) => Numerator == other.Numerator && _denominatorLessOne == other._denominatorLessOne;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Fraction other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Numerator, _denominatorLessOne);

    /// <summary>Invariant text: <c>3</c>, <c>1/3</c> or <c>4/3</c>.</summary>
    public override string ToString() => IsWhole
        ? Numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");

    /// <summary>Makes a fraction of parts that may be too large; false where they are, even in lowest terms.</summary>
    internal static bool TryReduce(Int128 numerator, Int128 denominator, out Fraction fraction)
    {
        Int128 a = Int128.Abs(numerator), b = denominator;
        // 64-bit remainders are an order of magnitude cheaper than 128-bit ones, and nearly every amount fits.
        if (a <= long.MaxValue && b <= long.MaxValue)
        {
            fraction = new Fraction((long)numerator, (long)denominator);
            return true;
        }
        while (b != 0)
            (a, b) = (b, a % b);
        numerator /= a;
        denominator /= a;
        bool fits = numerator >= long.MinValue && numerator <= long.MaxValue && denominator <= long.MaxValue;
        fraction = fits ? new Fraction((long)numerator, (long)denominator, inLowestTerms: true) : default;
        return fits;
    }

    /// <summary>The product; false where it does not fit, even in lowest terms.</summary>
    internal static bool TryMultiply(Fraction value, Fraction factor, out Fraction product) =>
        TryReduce((Int128)value.Numerator * factor.Numerator, (Int128)value.Denominator * factor.Denominator, out product);

    private static Fraction Reduce(Int128 numerator, Int128 denominator) =>
        TryReduce(numerator, denominator, out Fraction fraction)
            ? fraction
            : throw new OverflowException("The fraction does not fit in two 64-bit integers.");

    private static long GreatestCommonDivisor(long a, long b)
    {
        ulong x = a < 0 ? 0UL - (ulong)a : (ulong)a, y = (ulong)b;
        while (y != 0)
            (x, y) = (y, x % y);
        return (long)x;
    }
}
