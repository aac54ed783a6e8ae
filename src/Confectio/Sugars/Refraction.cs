using System.Runtime.CompilerServices;
using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Sugars;

/// <summary>
/// Refractive indices. Sucrose at 20 °C is a polynomial fitted here to the ICUMSA table of 1974; everything else goes through the specific
/// refraction of Lorentz and Lorenz, which mixes by mass and hardly moves with temperature.
/// </summary>
internal static class Refraction
{
    private static readonly CoefficientSet s_sucrose = CoefficientTable.BuiltIn.Get("refraction-sucrose", Constituent.Sucrose);

    // n = n0 + Σ nⱼ·w^j.
    private static readonly double s_n0 = s_sucrose["n0"], s_n1 = s_sucrose["n1"], s_n2 = s_sucrose["n2"], s_n3 = s_sucrose["n3"],
        s_n4 = s_sucrose["n4"], s_n5 = s_sucrose["n5"];

    /// <summary>Where the table of 1974, its secondary rows counted, ends.</summary>
    public static readonly double MaximumSolids = s_sucrose.Highest;

    private static readonly CoefficientSet s_warmWater = CoefficientTable.BuiltIn.Get("refraction-mixtures", Constituent.Water);

    // How the specific refraction moves with temperature; that of sucrose is for all solids.
    private static readonly double s_waterSlope = s_warmWater["t1"], s_waterCurve = s_warmWater["t2"],
        s_solidsSlope = CoefficientTable.BuiltIn.Get("refraction-mixtures", Constituent.Sucrose)["t1"];

    // mL/g over sucrose at the same solids and 20 °C.
    private static readonly HeldPolynomial[] s_excess = Solutes.OverSucrose("refraction-mixtures", "r");

    private static readonly double s_water = Specific(s_n0, SolutionDensity.Water(20));

    /// <summary>The index of pure water at 20 °C.</summary>
    public static double OfWater => s_n0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double OfSucrose(double w) => s_n0 + w * (s_n1 + w * (s_n2 + w * (s_n3 + w * (s_n4 + w * s_n5))));

    public static double Index(SugarSolution solution, double celsius) =>
        Index(solution.Solids, Excess(solution), 1000 * SolutionDensity.GramsPerMillilitre(solution, celsius), celsius);

    /// <summary>The strength of the sucrose solution with this index at 20 °C.</summary>
    public static double SucroseAt(double index) => Roots.Rising(w => OfSucrose(w) - index, 0, MaximumSolids);

    public static Brix Reading(SugarSolution solution, double celsius)
    {
        double index = Index(solution, celsius);
        if (index > Sucrose(MaximumSolids, celsius))
            throw new InvalidOperationException(
                "The solution bends light more than 95 % sucrose does, where the scale of a refractometer ends.");
        return Brix.FromFraction(Roots.Rising(w => Sucrose(w, celsius) - index, 0, MaximumSolids));
    }

    private static double Sucrose(double w, double celsius) => Index(w, 0, SolutionDensity.Sucrose(w, celsius), celsius);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Index(double solids, double excess, double density, double celsius)
    {
        double t = celsius - 20, water = (1 - solids) * s_water;
        double sucrose = Specific(OfSucrose(solids), SolutionDensity.Sucrose(solids, 20)) - water;
        double r = density / 1000 * (water * (1 + t * (s_waterSlope + t * s_waterCurve)) + (sucrose + excess) * (1 + t * s_solidsSlope));
        return Math.Sqrt((1 + 2 * r) / (1 - r));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Specific(double index, double density) => (index * index - 1) / (index * index + 2) / (density / 1000);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Excess(SugarSolution solution)
    {
        double sum = 0;
        ReadOnlySpan<double> fractions = solution.Fractions;
        for (int i = Solutes.Sucrose + 1; i < fractions.Length; i++)
        {
            if (fractions[i] > 0)
                sum += fractions[i] * s_excess[i].At(solution.Solids);
        }
        return sum;
    }
}
