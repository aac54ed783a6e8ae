using Confectio.Ingredients;

namespace Confectio.Sugars;

/// <summary>Dry sucrose crystals.</summary>
internal static class CrystallineSucrose
{
    private static readonly CoefficientSet s_crystal = CoefficientTable.BuiltIn.Get("specific-heat-crystal", Constituent.Sucrose);

    private static readonly double s_kilocalorie = s_crystal["kilocalorie"], s_c0 = s_crystal["c0"], s_c1 = s_crystal["c1"];

    /// <summary>The specific heat of the crystals: 4.1868·(0.2712 + 0.00103·t) kJ/(kg·K), Mohos (2010).</summary>
    /// <param name="celsius">The temperature t, °C, from 0 to 100.</param>
    /// <returns>kJ/(kg·K). Worked number: 20 °C gives 1.222. Dissolved, the same sugar has about a half more.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static double SpecificHeat(double celsius) => s_kilocalorie * (s_c0 + s_c1 * Guard.InRange(celsius, 0, 100));
}
