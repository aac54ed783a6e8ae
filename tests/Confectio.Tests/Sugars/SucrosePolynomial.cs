namespace Confectio.Tests.Sugars;

/// <summary>
/// The density of sucrose in water as ICUMSA SPS-4 (1998) has it after the PTB, summed term by term. The coefficients were read in two public programs
/// (a laboratory's viscosity function and a sugar house's property module), which agree but for 3 in the last digit of the fourth.
/// </summary>
internal static class SucrosePolynomial
{
    private static readonly double[][] s_rows =
    [
        [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890],
        [-46.2720, -7.1720, 1.1597, 5.1126, 17.5254],
        [59.7712, 7.2491, 12.3630, -35.4791],
        [-47.2207, -21.6977, 27.6301],
        [18.3184, 12.3081],
    ];

    /// <summary>kg/m³, 0 to 100 °C.</summary>
    public static double Water(double t) => (999.83952 + 16.952577 * t - 7.9905127e-3 * t * t - 46.241757e-6 * Math.Pow(t, 3) + 105.84601e-9 * Math.Pow(t, 4)
        - 281.03006e-12 * Math.Pow(t, 5)) / (1 + 16.887236e-3 * t);

    /// <summary>kg/m³, with w the mass fraction.</summary>
    public static double Density(double w, double t)
    {
        double sum = Water(t);
        for (int k = 0; k < s_rows.Length; k++)
        {
            for (int j = 0; j < s_rows[k].Length; j++)
                sum += Math.Pow((t - 20) / 100, k) * s_rows[k][j] * Math.Pow(w, j + 1);
        }
        return sum;
    }
}
