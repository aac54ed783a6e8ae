using UnitsNet;

namespace Confectio.Measures;

/// <summary>
/// To and from the quantities of UnitsNet, for applications that use them. This is the only place that reads one, always
/// through its base-unit property: every other path allocates and costs ten times more.
/// </summary>
public static class UnitsNetAdapter
{
    /// <summary>The volume of an amount; of a range, the middle.</summary>
    /// <param name="amount">An amount that is a volume.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <exception cref="ArgumentException">The amount is not a volume, or the system lacks the unit.</exception>
    public static Volume ToVolume(this Amount amount, MeasuringSystem system) => Volume.FromMilliliters(amount.Millilitres(system));

    /// <summary>The mass of an amount; of a range, the middle.</summary>
    /// <param name="amount">An amount that is a mass.</param>
    /// <param name="system">Whose ounce.</param>
    /// <exception cref="ArgumentException">The amount is not a mass.</exception>
    public static Mass ToMass(this Amount amount, MeasuringSystem system) => Mass.FromGrams(amount.Grams(system));

    internal static double MillilitresOf(Volume volume) => volume.CubicMeters * 1e6;

    internal static double GramsOf(Mass mass) => mass.Kilograms * 1e3;
}
