namespace Confectio.Costs;

/// <summary>Shares out what was rounded, so that the parts that are printed add up to the sum that is printed.</summary>
internal static class Coins
{
    /// <summary>
    /// Parts in whole units that add up to a sum in whole units: each rounded down, and the units that are left given to the largest remainders, the first of equal
    /// ones first. The sum is that of the parts, rounded.
    /// </summary>
    public static decimal[] Share(decimal[] parts, decimal sum, decimal unit)
    {
        decimal[] shared = [.. parts.Select(part => Math.Floor(Math.Round(part / unit, 9)) * unit)];
        int left = (int)((sum - shared.Sum()) / unit);
        foreach (int place in Enumerable.Range(0, parts.Length).OrderByDescending(place => parts[place] - shared[place]).ThenBy(place => place).Take(left).ToArray())
            shared[place] += unit;
        return shared;
    }
}
