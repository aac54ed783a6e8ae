using System.Globalization;
using System.Numerics;
using Confectio.Measures;
using Confectio.Tests.Properties;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>Fractions against rationals of unlimited integers: the same number, or an overflow exactly where it does not fit.</summary>
public sealed class FractionTests
{
    [Fact]
    public void DefaultIsZero()
    {
        Assert.Equal(Fraction.Zero, default);
        Assert.Equal(0, default(Fraction).Numerator);
        Assert.Equal(1, default(Fraction).Denominator);
        Assert.True(default(Fraction).IsWhole);
        Assert.Equal("0", default(Fraction).ToString());
    }

    [Theory]
    [InlineData(2, 4, 1, 2)]
    [InlineData(-6, 4, -3, 2)]
    [InlineData(0, 7, 0, 1)]
    [InlineData(48, 16, 3, 1)]
    [InlineData(long.MinValue, 2, long.MinValue / 2, 1)]
    [InlineData(long.MinValue, long.MaxValue, long.MinValue, long.MaxValue)]
    public void StandsInLowestTerms(long numerator, long denominator, long reducedNumerator, long reducedDenominator)
    {
        Fraction fraction = new(numerator, denominator);
        Assert.Equal(reducedNumerator, fraction.Numerator);
        Assert.Equal(reducedDenominator, fraction.Denominator);
        Assert.Equal(reducedDenominator == 1, fraction.IsWhole);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(long.MinValue)]
    public void RefusesADenominatorBelowOne(long denominator)
    {
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(() => new Fraction(1, denominator));
        Assert.Equal("denominator", thrown.ParamName);
        Assert.Contains(denominator.ToString(CultureInfo.InvariantCulture), thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void KitchenSums()
    {
        Assert.Equal(new Fraction(5, 6), new Fraction(1, 2) + new Fraction(1, 3));
        Assert.Equal(Fraction.One, new Fraction(1, 3) + new Fraction(2, 3));
        Assert.Equal(new Fraction(1, 4), new Fraction(3, 4) - new Fraction(1, 2));
        Assert.Equal(new Fraction(1, 2), new Fraction(3, 4) * new Fraction(2, 3));
        Assert.Equal(new Fraction(9, 8), new Fraction(3, 4) / new Fraction(2, 3));
        Assert.Equal(new Fraction(-9, 8), new Fraction(3, 4) / new Fraction(-2, 3));
        Assert.Equal("4/3", new Fraction(4, 3).ToString());
        Assert.Throws<DivideByZeroException>(() => Fraction.One / Fraction.Zero);
    }

    [Fact]
    public void DecimalsAreExact()
    {
        Assert.Equal(new Fraction(1, 8), Fraction.FromDecimal(0.125m));
        Assert.Equal(new Fraction(-5, 2), Fraction.FromDecimal(-2.500m));
        Assert.Equal(new Fraction(45359237, 100000), Fraction.FromDecimal(453.59237m));
        Assert.Equal(Fraction.Zero, Fraction.FromDecimal(0.0000000000000000000000000000m));
        Assert.Equal(new Fraction(1, 10), Fraction.FromDecimal(0.1000000000000000000000000000m));
        Assert.Throws<OverflowException>(() => Fraction.FromDecimal(decimal.MaxValue));
        Assert.Throws<OverflowException>(() => Fraction.FromDecimal(0.0000000000000000000000000001m));
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 2000)]
    public void ArithmeticIsExactOrOverflows(Fraction left, Fraction right)
    {
        BigInteger a = left.Numerator, b = left.Denominator, c = right.Numerator, d = right.Denominator;
        Check(() => left + right, a * d + c * b, b * d);
        Check(() => left - right, a * d - c * b, b * d);
        Check(() => left * right, a * c, b * d);
        if (c.IsZero)
            Assert.Throws<DivideByZeroException>(() => left / right);
        else
            Check(() => left / right, a * d * c.Sign, b * BigInteger.Abs(c));
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 2000)]
    public void OrderIsTheOrderOfTheNumbers(Fraction left, Fraction right)
    {
        int expected = ((BigInteger)left.Numerator * right.Denominator).CompareTo((BigInteger)right.Numerator * left.Denominator);
        Assert.Equal(expected, Math.Sign(left.CompareTo(right)));
        Assert.Equal(expected < 0, left < right);
        Assert.Equal(expected > 0, left > right);
        Assert.Equal(expected <= 0, left <= right);
        Assert.Equal(expected >= 0, left >= right);
        Assert.Equal(expected == 0, left == right);
        Assert.Equal(expected != 0, left != right);
        Assert.Equal(expected == 0, left.Equals((object)right));
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)])]
    public void TheSameNumberIsEqualHoweverItWasMade(Fraction fraction, int multiplier)
    {
        long by = Math.Abs((long)multiplier % 1000) + 1;
        Fraction again = fraction;
        if (Int128.Abs(fraction.Numerator) < long.MaxValue / 1000 && fraction.Denominator < long.MaxValue / 1000)
            again = new Fraction(fraction.Numerator * by, fraction.Denominator * by);
        Assert.Equal(fraction, again);
        Assert.Equal(fraction.GetHashCode(), again.GetHashCode());
        Assert.Equal(BigInteger.One, BigInteger.GreatestCommonDivisor(fraction.Numerator, fraction.Denominator));
    }

    [Property]
    public void ADoubleIsRoundedOnce(int numerator, int denominator)
    {
        long above = numerator, below = Math.Abs((long)denominator) + 1;
        Assert.Equal((double)above / below, new Fraction(above, below).ToDouble());
    }

    private static void Check(Func<Fraction> compute, BigInteger numerator, BigInteger denominator)
    {
        BigInteger divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        numerator /= divisor;
        denominator /= divisor;
        if (numerator < long.MinValue || numerator > long.MaxValue || denominator > long.MaxValue)
        {
            Assert.Throws<OverflowException>(() => compute());
            return;
        }
        Fraction result = compute();
        Assert.Equal(numerator, result.Numerator);
        Assert.Equal(denominator, result.Denominator);
    }
}
