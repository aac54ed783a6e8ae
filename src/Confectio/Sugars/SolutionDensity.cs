using Confectio.Numerics;

namespace Confectio.Sugars;

/// <summary>
/// Densities: the polynomial of the PTB for sucrose in water, and for every other solute how much more room a gram of it takes than a gram of
/// sucrose would in a solution as strong.
/// </summary>
internal static class SolutionDensity
{
    // kg/m3: rows i of θ^k, columns of w^j; w a mass fraction, θ = (t - 20)/100. ICUMSA SPS-4 (1998).
    private const double A1 = 385.1761, A2 = 135.3705, A3 = 40.9299, A4 = -3.9643, A5 = 13.4853, A6 = -17.2890;
    private const double B1 = -46.2720, B2 = -7.1720, B3 = 1.1597, B4 = 5.1126, B5 = 17.5254;
    private const double C1 = 59.7712, C2 = 7.2491, C3 = 12.3630, C4 = -35.4791;
    private const double D1 = -47.2207, D2 = -21.6977, D3 = 27.6301;
    private const double E1 = 18.3184, E2 = 12.3081;

    /// <summary>kg/m³, as the source has it.</summary>
    public static double Water(double celsius)
    {
        double t = celsius;
        return (999.83952 + t * (16.952577 + t * (-7.9905127e-3 + t * (-46.241757e-6 + t * (105.84601e-9 - t * 281.03006e-12)))))
            / (1 + 16.887236e-3 * t);
    }

    /// <summary>kg/m³ of sucrose in water.</summary>
    public static double Sucrose(double fraction, double celsius)
    {
        double w = fraction, h = (celsius - 20) / 100;
        double a = w * (A1 + w * (A2 + w * (A3 + w * (A4 + w * (A5 + w * A6)))));
        double b = w * (B1 + w * (B2 + w * (B3 + w * (B4 + w * B5))));
        double c = w * (C1 + w * (C2 + w * (C3 + w * C4)));
        double d = w * (D1 + w * (D2 + w * D3));
        double e = w * (E1 + w * E2);
        return Water(celsius) + a + h * (b + h * (c + h * (d + h * e)));
    }

    public static double GramsPerMillilitre(SugarSolution solution, double celsius)
    {
        double volume = 1000 / Sucrose(solution.Solids, celsius);
        ReadOnlySpan<double> fractions = solution.Fractions;
        for (int i = 1; i < fractions.Length; i++)
        {
            if (fractions[i] > 0)
                volume += fractions[i] * ExcessVolume(i, solution.Solids);
        }
        return 1 / volume;
    }

    /// <summary>The strength of the sucrose solution with this density, kg/m³; <see langword="null"/> where none has it.</summary>
    public static double? SucroseAt(double kilogramsPerCubicMetre, double celsius) =>
        kilogramsPerCubicMetre < Sucrose(0, celsius) || kilogramsPerCubicMetre > Sucrose(1, celsius) ? null
            : Roots.Rising(w => Sucrose(w, celsius) - kilogramsPerCubicMetre, 0, 1);

    // mL/g over sucrose at the same solids and 20 C, fitted here to the CRC Handbook's solutions (Concentrative properties of
    // aqueous solutions, 102nd ed. 2021; maltose from 16 to 56 %); beyond the strengths given there the last value holds. Higher
    // saccharides: what a 42 DE syrup of 80.3 % solids and 11.83 lb to the US gallon at 100 °F leaves, both from memory. The definition of
    // its 43 degrees Baumé would leave -0.0166: 0.0023 g/mL more. Other sugars: as sucrose.
    private static double ExcessVolume(int place, double solids) => place switch
    {
        Solutes.Glucose => Quadratic(Math.Min(solids, 0.60), 0.00292, 0.01779, -0.01585),
        Solutes.Fructose => Quadratic(Math.Min(solids, 0.48), -0.00520, 0.01418, -0.00686),
        Solutes.Maltose => Quadratic(Math.Clamp(solids, 0.16, 0.56), 0.00994, -0.04491, 0.04638),
        Solutes.Glycerol => 0.16062 + solids * (-0.03735 + solids * (0.04310 - solids * 0.01771)),
        Solutes.Lactose => -0.00926,
        Solutes.Polyols => 0.03933,
        Solutes.Acids => -0.02009,
        Solutes.HigherSaccharides => -0.01440,
        _ => 0,
    };

    private static double Quadratic(double x, double a, double b, double c) => a + x * (b + x * c);
}
