namespace Confectio.Tests.Uncertainty;

/// <summary>The three numbers of a spread, for comparisons that say nothing of what they mean.</summary>
internal static class SpreadEnds
{
    public static (double Low, double Likely, double High) Ends(this Spread spread) => (spread.Low, spread.Likely, spread.High);
}
