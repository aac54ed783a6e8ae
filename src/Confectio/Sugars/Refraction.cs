using Confectio.Numerics;

namespace Confectio.Sugars;

/// <summary>
/// Refractive indices. Sucrose at 20 °C is a polynomial fitted here to the ICUMSA table of 1974; everything else goes through the specific refraction
/// of Lorentz and Lorenz, which mixes by mass and hardly moves with temperature.
/// </summary>
internal static class Refraction
{
    /// <summary>Where the table of 1974, its secondary rows counted, ends.</summary>
    public const double MostSolids = 0.95;

    private const double WaterIndex = 1.33299;

    // n = 1.33299 + Σ c w^j; 7.0e-6 from the table at most up to 85 %, 1.8e-4 at 95 %, where the table has four decimals.
    private const double C1 = 0.142753, C2 = 0.0544204, C3 = 0.0136359, C4 = 0.0106451, C5 = -0.00809756;

    // How the specific refraction moves with temperature. Water: the first row of ISO 1743:1982. Solids: its glucose syrups.
    private const double WaterSlope = -3.384e-5, WaterCurve = 4.431e-7, SolidsSlope = 8.4e-5;

    private static readonly double s_water = Specific(WaterIndex, SolutionDensity.Water(20));

    public static double OfSucrose(double w) => WaterIndex + w * (C1 + w * (C2 + w * (C3 + w * (C4 + w * C5))));

    public static double Index(SugarSolution solution, double celsius) =>
        Index(solution.Solids, Excess(solution), 1000 * SolutionDensity.GramsPerMillilitre(solution, celsius), celsius);

    /// <summary>The strength of the sucrose solution with this index at 20 °C.</summary>
    public static double SucroseAt(double index) => Roots.Rising(w => OfSucrose(w) - index, 0, MostSolids);

    public static Brix Reading(SugarSolution solution, double celsius)
    {
        double index = Index(solution, celsius);
        if (index > Sucrose(MostSolids, celsius))
            throw new InvalidOperationException("The solution bends light more than 95 % sucrose does, where the scale of a refractometer ends.");
        return Brix.FromFraction(Roots.Rising(w => Sucrose(w, celsius) - index, 0, MostSolids));
    }

    private static double Sucrose(double w, double celsius) => Index(w, 0, SolutionDensity.Sucrose(w, celsius), celsius);

    private static double Index(double solids, double excess, double density, double celsius)
    {
        double t = celsius - 20, water = (1 - solids) * s_water;
        double sucrose = Specific(OfSucrose(solids), SolutionDensity.Sucrose(solids, 20)) - water;
        double r = density / 1000 * (water * (1 + t * (WaterSlope + t * WaterCurve)) + (sucrose + excess) * (1 + t * SolidsSlope));
        return Math.Sqrt((1 + 2 * r) / (1 - r));
    }

    private static double Specific(double index, double density) => (index * index - 1) / (index * index + 2) / (density / 1000);

    private static double Excess(SugarSolution solution)
    {
        double sum = 0;
        ReadOnlySpan<double> fractions = solution.Fractions;
        for (int i = 1; i < fractions.Length; i++)
        {
            if (fractions[i] > 0)
                sum += fractions[i] * ExcessRefraction(i, solution.Solids);
        }
        return sum;
    }

    // mL/g over sucrose at the same solids and 20 C, fitted here to the same solutions as the volumes; the higher saccharides to the
    // glucose syrups of ISO 1743:1982, whose class the standard does not give, taken as 42 DE: 6e-5 at most from 20 to 60 C.
    private static double ExcessRefraction(int place, double solids) => place switch
    {
        Solutes.Glucose => 0.000601 - 0.000539 * Math.Min(solids, 0.60),
        Solutes.Fructose => -0.001897 + 0.000566 * Math.Min(solids, 0.48),
        Solutes.Maltose => 0.002594 - 0.002619 * Math.Clamp(solids, 0.16, 0.56),
        Solutes.Glycerol => 0.016484 + 0.001986 * solids,
        Solutes.Lactose => 0.001243,
        Solutes.Polyols => 0.007685,
        Solutes.Acids => -0.01506,
        Solutes.HigherSaccharides => 0.00219,
        _ => 0,
    };
}
