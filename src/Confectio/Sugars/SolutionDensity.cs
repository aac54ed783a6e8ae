using System.Runtime.CompilerServices;
using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Sugars;

/// <summary>
/// Densities: the polynomial of the PTB for sucrose in water, and for every other solute how much more room a gram of it takes than a gram
/// of sucrose would in a solution as strong.
/// </summary>
internal static class SolutionDensity
{
    // kg/m3: rows i of θ^k, columns of w^j; w a mass fraction, θ = (t - 20)/100. ICUMSA SPS-4 (1998).
    private static readonly CoefficientSet s_sucrose = CoefficientTable.BuiltIn.Get("density-sucrose", Constituent.Sucrose);

    private static readonly double s_a1 = s_sucrose["a1"], s_a2 = s_sucrose["a2"], s_a3 = s_sucrose["a3"], s_a4 = s_sucrose["a4"],
        s_a5 = s_sucrose["a5"], s_a6 = s_sucrose["a6"];
    private static readonly double s_b1 = s_sucrose["b1"], s_b2 = s_sucrose["b2"], s_b3 = s_sucrose["b3"], s_b4 = s_sucrose["b4"],
        s_b5 = s_sucrose["b5"];
    private static readonly double s_c1 = s_sucrose["c1"], s_c2 = s_sucrose["c2"], s_c3 = s_sucrose["c3"], s_c4 = s_sucrose["c4"];
    private static readonly double s_d1 = s_sucrose["d1"], s_d2 = s_sucrose["d2"], s_d3 = s_sucrose["d3"];
    private static readonly double s_e1 = s_sucrose["e1"], s_e2 = s_sucrose["e2"];

    private static readonly CoefficientSet s_water = CoefficientTable.BuiltIn.Get("density-water", Constituent.Water);

    private static readonly double s_n0 = s_water["n0"], s_n1 = s_water["n1"], s_n2 = s_water["n2"], s_n3 = s_water["n3"],
        s_n4 = s_water["n4"],
        s_n5 = s_water["n5"], s_waterDivisor = s_water["d1"];

    // mL/g over sucrose at the same solids and 20 °C; beyond the strengths that the handbook gives, the last value holds.
    private static readonly HeldPolynomial[] s_excess = Solutes.OverSucrose("density-others", "v");

    /// <summary>kg/m³, as the source has it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Water(double celsius)
    {
        double t = celsius;
        return (s_n0 + t * (s_n1 + t * (s_n2 + t * (s_n3 + t * (s_n4 + t * s_n5))))) / (1 + s_waterDivisor * t);
    }

    /// <summary>kg/m³ of sucrose in water.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Sucrose(double fraction, double celsius)
    {
        double w = fraction, h = (celsius - 20) / 100;
        double a = w * (s_a1 + w * (s_a2 + w * (s_a3 + w * (s_a4 + w * (s_a5 + w * s_a6)))));
        double b = w * (s_b1 + w * (s_b2 + w * (s_b3 + w * (s_b4 + w * s_b5))));
        double c = w * (s_c1 + w * (s_c2 + w * (s_c3 + w * s_c4)));
        double d = w * (s_d1 + w * (s_d2 + w * s_d3));
        double e = w * (s_e1 + w * s_e2);
        return Water(celsius) + a + h * (b + h * (c + h * (d + h * e)));
    }

    public static double GramsPerMillilitre(SugarSolution solution, double celsius)
    {
        double volume = 1000 / Sucrose(solution.Solids, celsius);
        ReadOnlySpan<double> fractions = solution.Fractions;
        for (int i = Solutes.Sucrose + 1; i < fractions.Length; i++)
        {
            if (fractions[i] > 0)
                volume += fractions[i] * s_excess[i].At(solution.Solids);
        }
        return 1 / volume;
    }

    /// <summary>The strength of the sucrose solution with this density, kg/m³; <see langword="null"/> where none has it.</summary>
    public static double? SucroseAt(double kilogramsPerCubicMetre, double celsius) =>
        kilogramsPerCubicMetre < Sucrose(0, celsius) || kilogramsPerCubicMetre > Sucrose(1, celsius) ? null
            : Roots.Rising(w => Sucrose(w, celsius) - kilogramsPerCubicMetre, 0, 1);
}
