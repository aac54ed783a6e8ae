using Confectio.Textures;

namespace Confectio.Icings;

/// <summary>The density of a whipped icing, from what a kitchen can measure or knows.</summary>
/// <remarks>
/// With ρ0 the density without air: ρ = ρ0/(1 + overrun/100), and the share of air is 1 − ρ/ρ0. An icing says nothing of its own density: weigh a level cup of it.
/// </remarks>
public static class IcingDensity
{
    /// <summary>The least density of an icing, g/mL: whipped white alone has about 0.15.</summary>
    public const double Minimum = 0.05;

    /// <summary>The greatest density of an icing, g/mL: sucrose itself has 1.59.</summary>
    public const double Maximum = 2;

    /// <summary>The density of water at 20 °C, g/mL, to which a specific gravity is referred here.</summary>
    public const double WaterGramsPerMillilitre = 0.9982;

    /// <summary>By weighing a measure full of icing: mass over volume.</summary>
    /// <param name="grams">What the icing in the measure weighs, g, from 0.001 to 1e6.</param>
    /// <param name="millilitres">What the measure holds, mL, from 0.01 to 1e6.</param>
    /// <returns>g/mL. Worked number: 120 g in a US cup of 236.588 mL: 0.507, as of whipped cream in USDA SR.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An argument is outside its range, or the density that comes out is not from 0.05 to 2.
    /// </exception>
    internal static double FromMeasure(double grams, double millilitres)
    {
        Guard.InRange(grams, 0.001, 1e6);
        Guard.InRange(millilitres, 0.01, 1e6);
        Guard.InRange(grams, Minimum * millilitres, Maximum * millilitres);
        return grams / millilitres;
    }

    /// <summary>By specific gravity: a cup of the icing over the same cup of water, both on the scales.</summary>
    /// <param name="specificGravity">The ratio of the two masses, from 0.06 to 2.</param>
    /// <returns>g/mL: the ratio times that of water at 20 °C. Worked number: 0.85 is 0.848 g/mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="specificGravity"/> is outside its range.</exception>
    public static double FromSpecificGravity(double specificGravity) => Guard.InRange(specificGravity, 0.06, 2) * WaterGramsPerMillilitre;

    /// <summary>By overrun: what the icing has gained in volume.</summary>
    /// <param name="airFreeGramsPerMillilitre">The density without air, g/mL, from 0.5 to 2.</param>
    /// <param name="overrunPercent">The overrun, per cent, from 0 to 9900.</param>
    /// <returns>g/mL. Worked number: 1.288 g/mL whipped to an overrun of 43.1 %: 0.900.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static double FromOverrun(double airFreeGramsPerMillilitre, double overrunPercent) =>
        Foam.Of(airFreeGramsPerMillilitre).ToOverrun(overrunPercent).GramsPerMillilitre;
}
