using Confectio.Ingredients;

namespace Confectio.Sugars;

/// <summary>
/// Short equations that are widely printed for degrees Brix and Plato, so that a sheet made with one can be checked. Each is held to the
/// range where it is good; <see cref="Brix"/> is better everywhere.
/// </summary>
internal static class PrintedEquations
{
    private static readonly double[] s_brix = Of("printed-brix", "s0", "s1", "s2", "s3"), s_plato = Of("printed-plato", "s0", "s1", "s2",
        "s3"),
        s_refraction = Of("printed-refraction", "n0", "n1", "n2", "n3", "n4", "n5");

    /// <summary>
    /// Degrees Brix from the apparent specific gravity at 20 °C: ((182.4601·s − 775.6821)·s + 1262.7794)·s − 669.5622, fitted to the table
    /// of the
    /// National Bureau of Standards.
    /// </summary>
    /// <param name="apparentSpecificGravity">s, from 1 to 1.17874 (40 °Bx); at 60 °Bx it would read 0.14 too high, at 80 1.07.</param>
    /// <returns>Degrees Brix. Worked number: 1.040 gives 9.9934.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="apparentSpecificGravity"/> is outside its range.</exception>
    public static double BrixOfSpecificGravity(double apparentSpecificGravity)
    {
        double s = Guard.InRange(apparentSpecificGravity, 1, 1.17874);
        return Horner(s_brix, s);
    }

    /// <summary>
    /// Degrees Plato from the apparent specific gravity at 20 °C: ((135.997·s − 630.272)·s + 1111.14)·s − 616.868, of the brewing chemists.
    /// </summary>
    /// <param name="apparentSpecificGravity">s, from 1 to 1.083 (20 °P).</param>
    /// <returns>Degrees Plato. Worked number: 1.040 gives 9.9935.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="apparentSpecificGravity"/> is outside its range.</exception>
    public static double PlatoOfSpecificGravity(double apparentSpecificGravity)
    {
        double s = Guard.InRange(apparentSpecificGravity, 1, 1.083);
        return Horner(s_plato, s);
    }

    /// <summary>Degrees Brix from the refractive index at 20 °C: a polynomial of the fifth degree.</summary>
    /// <param name="refractiveIndex">n, from 1.333 to 1.504 (85 °Bx).</param>
    /// <returns>
    /// Degrees Brix, 0.013 to 0.026 below the table of 1974: it was fitted to a later one. Worked number: 1.44193 gives 59.98.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="refractiveIndex"/> is outside its range.</exception>
    public static double BrixOfRefractiveIndex(double refractiveIndex)
    {
        double n = Guard.InRange(refractiveIndex, 1.333, 1.504);
        return Horner(s_refraction, n);
    }

    private static double[] Of(string equation, params ReadOnlySpan<string> names)
    {
        CoefficientSet set = CoefficientTable.BuiltIn.Get(equation, Constituent.Sucrose);
        double[] values = new double[names.Length];
        for (int i = 0; i < values.Length; i++)
            values[i] = set[names[i]];
        return values;
    }

    private static double Horner(double[] coefficients, double x)
    {
        double sum = coefficients[^1];
        for (int i = coefficients.Length - 2; i >= 0; i--)
            sum = sum * x + coefficients[i];
        return sum;
    }
}
