namespace Confectio.Numerics;

/// <summary>Exponentials of small numbers.</summary>
internal static class Exponentials
{
    /// <summary>
    /// e^x − 1 with all its digits where x is small, after Kahan: what rounding does to e^x it does to its logarithm too. The runtime
    /// subtracts one from e^x, and the series of MathNet stops at eight digits.
    /// </summary>
    public static double MinusOne(double x)
    {
        double power = Math.Exp(x), difference = power - 1;
        return difference == 0 ? x : difference == -1 || double.IsInfinity(power) ? difference : difference * x / Math.Log(power);
    }
}
