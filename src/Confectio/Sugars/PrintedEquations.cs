namespace Confectio.Sugars;

/// <summary>
/// Short equations that are widely printed for degrees Brix and Plato, so that a sheet made with one can be checked. Each is held to the range where it
/// is good; <see cref="Brix"/> is better everywhere.
/// </summary>
public static class PrintedEquations
{
    /// <summary>Degrees Brix from the apparent specific gravity at 20 °C: ((182.4601·s − 775.6821)·s + 1262.7794)·s − 669.5622, fitted to the table of the National Bureau of Standards.</summary>
    /// <param name="apparentSpecificGravity">s, from 1 to 1.17874 (40 °Bx); at 60 °Bx it would read 0.14 too high, at 80 1.07.</param>
    /// <returns>Degrees Brix. Worked number: 1.040 gives 9.9934.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="apparentSpecificGravity"/> is outside its range.</exception>
    public static double BrixOfSpecificGravity(double apparentSpecificGravity)
    {
        double s = Guard.InRange(apparentSpecificGravity, 1, 1.17874);
        return ((182.4601 * s - 775.6821) * s + 1262.7794) * s - 669.5622;
    }

    /// <summary>Degrees Plato from the apparent specific gravity at 20 °C: ((135.997·s − 630.272)·s + 1111.14)·s − 616.868, of the brewing chemists.</summary>
    /// <param name="apparentSpecificGravity">s, from 1 to 1.083 (20 °P).</param>
    /// <returns>Degrees Plato. Worked number: 1.040 gives 9.9935.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="apparentSpecificGravity"/> is outside its range.</exception>
    public static double PlatoOfSpecificGravity(double apparentSpecificGravity)
    {
        double s = Guard.InRange(apparentSpecificGravity, 1, 1.083);
        return ((135.997 * s - 630.272) * s + 1111.14) * s - 616.868;
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
        return ((((11758.74 * n - 88885.21) * n + 270177.93) * n - 413145.80) * n + 318417.95) * n - 99127.4536;
    }
}
