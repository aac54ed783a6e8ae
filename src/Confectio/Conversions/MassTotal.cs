using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Conversions;

/// <summary>
/// The total of several converted masses, with the uncertainty that belongs to it. The total of one mass is that mass, with its own
/// low and high.
/// </summary>
/// <remarks>
/// A density used twice is wrong twice in the same direction, so its errors add up in full; different densities are independent. Downwards
/// and upwards are added up apart, because a spread of a density is not the same both ways. With d the way from likely to low (or to high)
/// of one mass, both widened alike where together they are less than 4u, and its square shared out as its variance is: D² = Σ over
/// densities (Σ dᵢ u(ln ρ)/uᵢ)² + (Σ dᵢ u(ln V)/uᵢ)² + Σ rest²: the first term is J U Jᵀ of the GUM (JCGM 100:2008, 5.2.2) with one
/// variable a density; the second takes all measures as one set of tools. D is never more than Σ of the ways themselves: a sum is at worst
/// where all its parts are. Counted pieces and weighed amounts bring their own uncertainty and no density's. A packing taken from another
/// (<see cref="BulkDensity.TakenFrom"/>) shares the error of that one. Worked number: two masses of 100 g (90.5 to 110.5, u(ln ρ) = 0.05)
/// by one density are 200 g (181.0 to 221.0); by two densities, 200 g (186.5 to 214.9).
/// </remarks>
public static class MassTotal
{
    /// <summary>Adds masses up.</summary>
    /// <param name="masses">The masses.</param>
    /// <returns>The total in grams. Low is never below zero.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="masses"/> is null.</exception>
    public static Spread Of(IEnumerable<ConvertedMass> masses)
    {
        ConvertedMass[] all = [.. Guard.NotNull(masses)];
        (double total, Reach down, Reach up) = Reaches(all);
        Way uncertainty = new();
        SpreadBasis basis = SpreadBasis.Exact;
        foreach (ConvertedMass mass in all)
        {
            uncertainty.Add(mass, mass.Grams.StandardUncertainty, 1);
            basis = Spread.Worse(basis, mass.Grams.Basis);
        }
        return new Spread(Math.Max(0, total - down.Grams), total, total + up.Grams, uncertainty.Sum().BySquares, basis);
    }

    /// <summary>The likely total, and how far it may be off downwards and upwards: for sums that have still other terms.</summary>
    internal static (double Total, Reach Down, Reach Up) Reaches(IEnumerable<ConvertedMass> masses)
    {
        Way down = new(), up = new();
        double total = 0;
        foreach (ConvertedMass mass in masses)
        {
            double below = mass.Grams.Likely - mass.Grams.Low, above = mass.Grams.High - mass.Grams.Likely;
            double widening = below + above > 0 ? Math.Max(1, 4 * mass.Grams.StandardUncertainty / (below + above)) : 1;
            total += mass.Grams.Likely;
            down.Add(mass, below, widening);
            up.Add(mass, above, widening);
        }
        return (total, down.Sum(), up.Sum());
    }

    /// <summary>How far a sum may be off in one direction: by squares, and at the worst, where every part is off in full.</summary>
    internal readonly record struct Reach(double BySquares, double AtWorst)
    {
        public double Grams => Math.Min(BySquares, AtWorst);
    }

    /// <summary>How far a total may be off in one direction.</summary>
    private sealed class Way
    {
        private readonly Dictionary<(Ingredient, Packing), double> _byDensity = [];
        private double _tool;
        private double _rest;
        private double _worst;

        public void Add(ConvertedMass mass, double way, double widening)
        {
            _worst += way;
            double u = mass.Grams.StandardUncertainty;
            way *= widening;
            double density = 0, tool = 0;
            if (u > 0 && mass is { ThroughDensity: true, By: Conversion by })
            {
                density = way * (mass.Grams.Likely * by.Density.LogUncertainty / u);
                tool = way * (mass.Grams.Likely * by.Options.ToolTolerance / Math.Sqrt(3) / u);
                // By the id and the packing that was weighed: what two layers of a table say of one butter is no independent evidence.
                (Ingredient, Packing) weighed = (by.Ingredient, (by.Density.Basis ?? by.Density).Packing);
                _byDensity[weighed] = _byDensity.GetValueOrDefault(weighed) + density;
                _tool += tool;
            }
            _rest += Math.Max(0, way * way - density * density - tool * tool);
        }

        public Reach Sum()
        {
            double sum = _rest + _tool * _tool;
            foreach (double density in _byDensity.Values)
                sum += density * density;
            return new Reach(Math.Sqrt(sum), _worst);
        }
    }
}
