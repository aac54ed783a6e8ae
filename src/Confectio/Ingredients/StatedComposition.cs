using System.Numerics;

namespace Confectio.Ingredients;

/// <summary>
/// What is known of each constituent of one food, and of some groups of them, where it comes from no food table: intervals that hold
/// whatever the source leaves open.
/// </summary>
/// <param name="intervals">Low and high of a group, a bit for each constituent; every single one is there.</param>
/// <param name="basis">What the intervals mean.</param>
internal sealed class StatedComposition(IReadOnlyDictionary<uint, (double Low, double High)> intervals, SpreadBasis basis)
{
    private static readonly uint s_all = Constituents.Count == 32 ? uint.MaxValue : (1u << Constituents.Count) - 1;

    /// <summary>The spread of a group about its likely mass fraction; 2u reaches the farther end.</summary>
    public Spread Of(uint constituents, double likely)
    {
        (double low, double high) = Within(constituents);
        low = Math.Min(low, likely);
        high = Math.Max(high, likely);
        return new Spread(low, likely, high, Math.Max(likely - low, high - likely) / 2, basis);
    }

    private (double Low, double High) Within(uint constituents)
    {
        constituents &= s_all;
        if (constituents == 0)
            return (0, 0);
        if (constituents == s_all)
            return (1, 1);
        if (intervals.TryGetValue(constituents, out (double Low, double High) known))
            return known;
        if (intervals.TryGetValue(s_all & ~constituents, out (double Low, double High) others))
            return (Math.Max(0, 1 - others.High), Math.Min(1, 1 - others.Low));
        // Nobody asked for this group before: no more than its members together, and no less than the others leave.
        (double low, double high) = Sum(constituents);
        (double otherLow, double otherHigh) = Sum(s_all & ~constituents);
        return (Math.Clamp(Math.Max(low, 1 - otherHigh), 0, 1), Math.Clamp(Math.Min(high, 1 - otherLow), 0, 1));
    }

    private (double Low, double High) Sum(uint constituents)
    {
        double low = 0, high = 0;
        for (uint left = constituents; left != 0; left &= left - 1)
        {
            (double one, double most) = intervals[1u << BitOperations.TrailingZeroCount(left)];
            low += one;
            high += most;
        }
        return (low, high);
    }
}
