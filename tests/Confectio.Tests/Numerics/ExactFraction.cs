using System.Globalization;
using System.Numerics;

namespace Confectio.Tests.Numerics;

/// <summary>A fraction of whole numbers of any size: the arithmetic of the oracles, which knows no rounding.</summary>
internal readonly struct ExactFraction : IComparable<ExactFraction>
{
    private readonly BigInteger _numerator, _denominator;

    public ExactFraction(BigInteger numerator, BigInteger denominator)
    {
        BigInteger common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        if (denominator.Sign < 0)
            common = -common;
        _numerator = numerator / common;
        _denominator = denominator / common;
    }

    public static ExactFraction Zero => new(0, 1);

    public int Sign => _numerator.Sign;

    /// <summary>Reads "-3/7", "0.25" and "1e-3".</summary>
    public static ExactFraction Parse(string text)
    {
        int slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash >= 0)
            return new ExactFraction(Whole(text[..slash]), Whole(text[(slash + 1)..]));
        int exponent = text.IndexOfAny(['e', 'E']), power = exponent < 0 ? 0 : int.Parse(text[(exponent + 1)..], CultureInfo.InvariantCulture);
        string digits = exponent < 0 ? text : text[..exponent];
        int point = digits.IndexOf('.', StringComparison.Ordinal);
        if (point >= 0)
            power -= digits.Length - point - 1;
        BigInteger whole = Whole(digits.Replace(".", "", StringComparison.Ordinal));
        return power >= 0 ? new ExactFraction(whole * BigInteger.Pow(10, power), 1) : new ExactFraction(whole, BigInteger.Pow(10, -power));
    }

    public static ExactFraction operator +(ExactFraction a, ExactFraction b) =>
        new(a._numerator * b._denominator + b._numerator * a._denominator, a._denominator * b._denominator);

    public static ExactFraction operator -(ExactFraction a, ExactFraction b) =>
        new(a._numerator * b._denominator - b._numerator * a._denominator, a._denominator * b._denominator);

    public static ExactFraction operator *(ExactFraction a, ExactFraction b) => new(a._numerator * b._numerator, a._denominator * b._denominator);

    public int CompareTo(ExactFraction other) => (_numerator * other._denominator).CompareTo(other._numerator * _denominator);

    public double ToDouble() => double.Parse(ToDecimal(), CultureInfo.InvariantCulture);

    private static BigInteger Whole(string text) => BigInteger.Parse(text, CultureInfo.InvariantCulture);

    // More digits than any double needs, so that it is the nearest one.
    private string ToDecimal()
    {
        BigInteger scaled = _numerator * BigInteger.Pow(10, 400) / _denominator;
        return scaled.ToString(CultureInfo.InvariantCulture) + "e-400";
    }
}
