using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Numerics;
using System.Text.Json.Serialization;
using Confectio.Text;

namespace Confectio.Uncertainty;

/// <summary>
/// An uncertain number: its likely value, its low and high, its standard uncertainty, and what the interval means.
/// <see langword="default"/> is zero, known exactly.
/// </summary>
/// <remarks>
/// <para>
/// Low and high bound about 95 % of what a careful kitchen would find, two standard uncertainties each way, unless <see cref="Basis"/>
/// says otherwise. They are not a tolerance, which is what somebody allows. The interval need not be symmetrical.
/// </para>
/// <para>
/// Arithmetic takes the numbers as independent: uncertainties combine by squares (GUM, JCGM 100:2008, 5.1.2), and so do the ways from
/// likely to low and from likely to high, apart. Numbers that share an error, such as two cups of one flour, are added up by
/// <see cref="Sum{TKey}"/>. Worked number: 100 (90 to 110) + 50 (44 to 56) is 150 (138.3 to 161.7); with a shared error, 150 (134 to 166).
/// </para>
/// </remarks>
[JsonConverter(typeof(SpreadJsonConverter))]
public readonly struct Spread : IEquatable<Spread>, ISpanFormattable, IAdditionOperators<Spread, Spread, Spread>,
    ISubtractionOperators<Spread, Spread, Spread>, IMultiplyOperators<Spread, double, Spread>, IDivisionOperators<Spread, double, Spread>
{
    /// <summary>
    /// A spread from its three numbers, the ends of what the sources have. Its standard uncertainty is a quarter of the width.
    /// </summary>
    /// <param name="low">The low end.</param>
    /// <param name="likely">The likely value, not below <paramref name="low"/>.</param>
    /// <param name="high">The high end, not below <paramref name="likely"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the three do not rise.</exception>
    public Spread(double low, double likely, double high)
        : this(low, likely, high, SpreadBasis.Sources)
    {
    }

    /// <summary>A spread from its three numbers and what they mean. Its standard uncertainty is a quarter of the width.</summary>
    /// <param name="low">The low end.</param>
    /// <param name="likely">The likely value, not below <paramref name="low"/>.</param>
    /// <param name="high">The high end, not below <paramref name="likely"/>.</param>
    /// <param name="basis">What the interval means. Three numbers that are one are exact, whatever it says.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A number is not finite, the three do not rise, or the basis is not a defined value.
    /// </exception>
    /// <exception cref="ArgumentException">The basis is <see cref="SpreadBasis.Exact"/> and the three numbers are not one.</exception>
    public Spread(double low, double likely, double high, SpreadBasis basis)
        : this(low, likely, high, high / 4 - low / 4, basis)
    {
    }

    internal Spread(double low, double likely, double high, double standardUncertainty, SpreadBasis basis)
    {
        Low = Guard.Finite(low);
        Likely = Guard.InRange(likely, low, double.MaxValue);
        High = Guard.InRange(high, likely, double.MaxValue);
        StandardUncertainty = standardUncertainty;
        if (low == high && standardUncertainty == 0)
            Basis = SpreadBasis.Exact;
        else if (basis is > SpreadBasis.Exact and <= SpreadBasis.Judged)
            Basis = basis;
        else
            throw NoBasis(basis);
    }

    private static ArgumentException NoBasis(SpreadBasis basis) =>
        new($"{nameof(basis)} was {Guard.Defined(basis)}, and the interval has a width: what is exact has none.", nameof(basis));

    /// <summary>The low end.</summary>
    public double Low { get; }

    /// <summary>The likely value.</summary>
    public double Likely { get; }

    /// <summary>The high end.</summary>
    public double High { get; }

    /// <summary>The standard uncertainty u, in the unit of the value.</summary>
    public double StandardUncertainty { get; }

    /// <summary>
    /// u over the likely value; <see langword="null"/> where that is 0 or next to it. For small ones it is the standard uncertainty of the
    /// logarithm.
    /// </summary>
    public double? RelativeUncertainty => StandardUncertainty / Math.Abs(Likely) is var share && double.IsFinite(share) ? share : null;

    /// <summary>What the interval means.</summary>
    public SpreadBasis Basis { get; }

    /// <summary>A number known exactly, or that is taken as it was given.</summary>
    /// <param name="value">The number, from −1e300 to 1e300.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public static Spread Exactly(double value) => new(Guard.InRange(value, -1e300, 1e300), value, value, 0, SpreadBasis.Exact);

    /// <summary>The likely value with a standard uncertainty, whatever it had before: likely ∓ 2u.</summary>
    /// <param name="standardUncertainty">u, from 0 to 1e300, in the unit of the value.</param>
    /// <returns>The spread. Worked number: <c>Spread.Exactly(146.2).WithUncertainty(8.8)</c> is 146.2 (128.6 to 163.8).</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="standardUncertainty"/> is outside its range, or an end would be beyond a double.
    /// </exception>
    public Spread WithUncertainty(double standardUncertainty)
    {
        double u = Guard.InRange(standardUncertainty, 0, 1e300);
        return Within(Likely - 2 * u, Likely, Likely + 2 * u, u, SpreadBasis.Coverage, nameof(standardUncertainty), standardUncertainty);
    }

    /// <summary>
    /// The likely value with a standard uncertainty of its logarithm, whatever it had before: likely × e^∓2u, which never reaches zero.
    /// </summary>
    /// <param name="logUncertainty">u, from 0 to 3.</param>
    /// <returns>The spread. Worked number: <c>Spread.Exactly(100).WithRelativeUncertainty(0.05)</c> is 100 (90.48 to 110.5).</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="logUncertainty"/> is outside its range, or the high end would be beyond a double.
    /// </exception>
    /// <exception cref="InvalidOperationException">The likely value is below 0: it has no logarithm.</exception>
    public Spread WithRelativeUncertainty(double logUncertainty)
    {
        double u = Guard.InRange(logUncertainty, 0, 3);
        return Likely >= 0
            ? Within(Likely * Math.Exp(-2 * u), Likely, Likely * Math.Exp(2 * u), Likely * u, SpreadBasis.Coverage,
                nameof(logUncertainty), u)
            : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
                $"The likely value is {Likely:R}; below 0 it has no relative uncertainty."));
    }

    /// <summary>Adds numbers up of which those of one key share their error: 1 cup and 2 cups of one flour are off together.</summary>
    /// <typeparam name="TKey">What tells errors apart.</typeparam>
    /// <param name="terms">The numbers, each with the key of its error.</param>
    /// <returns>The sum: within a key uncertainties add up, between keys their squares do (GUM, JCGM 100:2008, 5.2.2).</returns>
    /// <exception cref="ArgumentNullException">The terms or a key are null.</exception>
    public static Spread Sum<TKey>(IEnumerable<KeyValuePair<TKey, Spread>> terms)
        where TKey : notnull
    {
        Dictionary<TKey, Spread> together = [];
        foreach ((TKey key, Spread term) in Guard.NotNull(terms))
        {
            Spread known = together.GetValueOrDefault(key);
            together[key] = new Spread(known.Low + term.Low, known.Likely + term.Likely, known.High + term.High,
                known.StandardUncertainty + term.StandardUncertainty, Worse(known.Basis, term.Basis));
        }
        Spread sum = default;
        foreach (Spread one in together.Values)
            sum += one;
        return sum;
    }

    /// <summary>The sum of two independent numbers.</summary>
    public static Spread operator +(Spread left, Spread right)
    {
        double likely = left.Likely + right.Likely;
        return Within(Math.Min(likely, likely - Length(left.Likely - left.Low, right.Likely - right.Low)), likely,
            Math.Max(likely, likely + Length(left.High - left.Likely, right.High - right.Likely)),
            Length(left.StandardUncertainty, right.StandardUncertainty), Worse(left.Basis, right.Basis), nameof(right), right);
    }

    /// <summary>The difference of two independent numbers.</summary>
    public static Spread operator -(Spread left, Spread right) => left + -right;

    /// <summary>The number with its sign turned.</summary>
    public static Spread operator -(Spread value) => new(-value.High, -value.Likely, -value.Low, value.StandardUncertainty, value.Basis);

    /// <summary>All of it times a number that is known exactly, from −1e300 to 1e300.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range, or the product outside that of a double.</exception>
    public static Spread operator *(Spread left, double right) => Times(left, Guard.InRange(right, -1e300, 1e300), nameof(right));

    /// <summary>All of it times a number that is known exactly, from −1e300 to 1e300.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range, or the product outside that of a double.</exception>
    public static Spread operator *(double left, Spread right) => Times(right, Guard.InRange(left, -1e300, 1e300), nameof(left));

    /// <summary>All of it over a number that is known exactly, from 1e-300 to 1e300.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range, or the quotient outside that of a double.</exception>
    public static Spread operator /(Spread left, double right)
    {
        Guard.InRange(right, 1e-300, 1e300);
        return Within(left.Low / right, left.Likely / right, left.High / right, left.StandardUncertainty / right, left.Basis, nameof(right),
            right);
    }

    /// <summary>The product of two independent numbers, neither of them below 0.</summary>
    /// <remarks>The ways from likely to the ends combine by squares of their logarithms; a low end of 0 stays 0.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A low end is below 0.</exception>
    public static Spread operator *(Spread left, Spread right)
    {
        Guard.InRange(left.Low, 0, double.MaxValue, nameof(left));
        Guard.InRange(right.Low, 0, double.MaxValue, nameof(right));
        double likely = left.Likely * right.Likely;
        if (likely == 0)
            return Within(0, 0, left.High * right.High, left.High * right.High / 4, Worse(left.Basis, right.Basis), nameof(right), right);
        double down = Length(Math.Log(left.Likely / left.Low), Math.Log(right.Likely / right.Low));
        double up = Length(Math.Log(left.High / left.Likely), Math.Log(right.High / right.Likely));
        return Within(Math.Min(likely, likely * Math.Exp(-down)), likely, Math.Max(likely, likely * Math.Exp(up)),
            likely * Length(left.StandardUncertainty / left.Likely, right.StandardUncertainty / right.Likely),
                Worse(left.Basis, right.Basis),
            nameof(right), right);
    }

    /// <summary>Whether a value lies between low and high, both included.</summary>
    /// <param name="value">The value.</param>
    public bool Contains(double value) => value >= Low && value <= High;

    /// <summary>Whether two spreads agree in every number and in what they mean.</summary>
    /// <param name="other">The other spread.</param>
    public bool Equals(Spread other) => Low.Equals(other.Low) && Likely.Equals(other.Likely) && High.Equals(other.High)
        && StandardUncertainty.Equals(other.StandardUncertainty) && Basis == other.Basis;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Spread other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Low, Likely, High);

    /// <summary>Whether two spreads are the same.</summary>
    public static bool operator ==(Spread left, Spread right) => left.Equals(right);

    /// <summary>Whether two spreads differ.</summary>
    public static bool operator !=(Spread left, Spread right) => !left.Equals(right);

    /// <summary>Invariant text, such as <c>113.5 (109.1 to 118.2)</c>; what is exact has no interval: <c>120</c>.</summary>
    public override string ToString() => ToString(null);

    /// <summary>Invariant text with each number in the given format.</summary>
    /// <param name="format">
    /// A number format of at most 32 characters and 99 digits; <see langword="null"/> for four significant digits; or <c>U</c> for as many
    /// digits as the uncertainty leaves sense in: <c>146 (130 to 165)</c> where u is 8.8.
    /// </param>
    /// <remarks>
    /// With <c>U</c> the standard uncertainty has two significant digits where its first three are from 100 to 354, and one above; likely,
    /// low and high are rounded to the same place. It has at most two digits, as GUM 7.2.6 has it.
    /// </remarks>
    /// <exception cref="FormatException">The format is none, or longer, or asks for more digits.</exception>
    public string ToString(string? format) => ToString(format, "");

    /// <summary>The same with a unit after the likely value: <c>146.2 g (129.6 to 164.9)</c>.</summary>
    internal string ToString(string? format, string unit)
    {
        if (format is "U" or "u")
        {
            return LastPlace() is int place ? Text(this, unit, value => Rounded(value, place))
                : Text(this, unit, value => value.ToString("G6", CultureInfo.InvariantCulture));
        }
        format = NumberFormat.Checked(format ?? "G4");
        return Text(this, unit, value => value.ToString(format, CultureInfo.InvariantCulture));

        // An interval of no width would claim a range that nobody gave.
        static string Text(Spread spread, string unit, Func<double, string> number) => spread.Low == spread.High
            ? number(spread.Likely) + unit
            : $"{number(spread.Likely)}{unit} ({number(spread.Low)} to {number(spread.High)})";
    }

    // Explicit, because the provider changes nothing: the text is the same in every culture.
    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(ToString(format.IsEmpty ? null : format.ToString()), destination, out charsWritten);

    /// <summary>The less sure of two.</summary>
    internal static SpreadBasis Worse(SpreadBasis left, SpreadBasis right) => left > right ? left : right;

    private static Spread Times(Spread value, double factor, string name)
    {
        (Spread turned, double size) = factor < 0 ? (-value, -factor) : (value, factor);
        return Within(turned.Low * size, turned.Likely * size, turned.High * size, turned.StandardUncertainty * size, turned.Basis, name,
            factor);
    }

    // What is computed of good numbers may still be beyond a double: it is laid to the argument, not to a number nobody gave.
    private static Spread Within<T>(double low, double likely, double high, double u, SpreadBasis basis, string name, T argument) =>
        double.IsFinite(low) && double.IsFinite(likely) && double.IsFinite(high) && double.IsFinite(u) ? new(low, likely, high, u, basis)
            : throw new ArgumentOutOfRangeException(name, argument,
                string.Create(CultureInfo.InvariantCulture, $"{name} was {argument}; the result would be beyond what a double holds."));

    private static double Length(double a, double b) => double.Hypot(a, b);

    /// <summary>The power of ten of the last digit that makes sense; none where nothing is open.</summary>
    internal int? LastPlace()
    {
        double u = StandardUncertainty > 0 ? StandardUncertainty : (High - Low) / 4;
        if (!(u > 0) || !double.IsFinite(u))
            return null;
        int power = (int)Math.Floor(Math.Log10(u));
        return u / Math.Pow(10, power) < 3.55 ? power - 1 : power;
    }

    private static string Rounded(double value, int place)
    {
        if (place is < -15 or > 15)
            return value.ToString("G4", CultureInfo.InvariantCulture);
        if (place <= 0)
            return value.ToString("F" + -place, CultureInfo.InvariantCulture);
        double unit = Math.Pow(10, place);
        return (Math.Round(value / unit) * unit).ToString("F0", CultureInfo.InvariantCulture);
    }
}
