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
        // Brent stops where the function itself is below this, so its scale should be about one.
        return Brent.TryFindRoot(function, low, high, 1e-15, 200, out double root) ? root
            : throw new InvalidOperationException("A zero between two ends of unlike sign was not found.");
    }
}
