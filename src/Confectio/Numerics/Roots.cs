using MathNet.Numerics.RootFinding;

namespace Confectio.Numerics;

/// <summary>Zeros of functions of one unknown.</summary>
internal static class Roots
{
    /// <summary>
    /// The zero of a rising function between two ends, by Brent, to rounding; the end itself where the function has no zero between them.
    /// </summary>
    public static double Rising(Func<double, double> function, double low, double high)
    {
        if (function(low) >= 0)
            return low;
        if (function(high) <= 0)
            return high;
        // Brent stops where the function itself is below this, so its scale should be about one. Where rounding makes the function flat,
        // MathNet's gives up beside the zero instead of naming it; halving always ends.
        return Brent.TryFindRoot(function, low, high, 1e-15, 100, out double root) ? root : Halve(function, low, high);
    }

    private static double Halve(Func<double, double> function, double low, double high)
    {
        double middle = low + (high - low) / 2;
        while (middle > low && middle < high)
        {
            if (function(middle) < 0)
                low = middle;
            else
                high = middle;
            middle = low + (high - low) / 2;
        }
        return high;
    }
}
