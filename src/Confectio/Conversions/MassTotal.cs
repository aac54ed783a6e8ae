using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Conversions;

/// <summary>
/// The total of several converted masses, with the uncertainty that belongs to it.
/// </summary>
/// <remarks>
/// A density used twice is wrong twice in the same direction, so its errors add up in full; different densities are independent.
/// u(total)² = Σ over densities (Σ mᵢ u(ln ρ))² + (Σ mᵢ u(ln V))² + Σ rest²: the first term is J U Jᵀ of the GUM (5.2.2) with one
/// variable a density; the second takes all measures as one set of tools. Worked number: 100 g + 50 g by one density of u = 0.06
/// has u = 9 g; by two different densities of u = 0.06, 6.7 g.
/// Counted pieces and weighed amounts bring their own uncertainty and no density's.
/// </remarks>
public static class MassTotal
{
    /// <summary>Adds masses up.</summary>
    /// <param name="masses">The masses.</param>
    /// <returns>The total in grams; low and high are likely ∓ 2u and low is never below zero.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="masses"/> is null.</exception>
    public static Spread Of(IEnumerable<ConvertedMass> masses)
    {
        Dictionary<BulkDensity, double> byDensity = [];
        double total = 0, tool = 0, variance = 0;
        foreach (ConvertedMass mass in Guard.NotNull(masses))
        {
            total += mass.LikelyGrams;
            double own = mass.StandardUncertaintyGrams * mass.StandardUncertaintyGrams;
            if (mass is { ThroughDensity: true, By: Conversion by })
            {
                double density = mass.LikelyGrams * by.Density.LogUncertainty;
                double measure = mass.LikelyGrams * by.Options.ToolTolerance / Math.Sqrt(3);
                byDensity[by.Density] = byDensity.GetValueOrDefault(by.Density) + density;
                tool += measure;
                own = Math.Max(0, own - density * density - measure * measure);
            }
            variance += own;
        }
        foreach (double density in byDensity.Values)
            variance += density * density;
        double u = Math.Sqrt(variance + tool * tool);
        return new Spread(Math.Max(0, total - 2 * u), total, total + 2 * u);
    }
}
