using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;

namespace Confectio.Textures;

/// <summary>Air in something whipped: its density, its overrun and its share of air, which say the same in three ways. It never changes; each step makes another.</summary>
/// <remarks>
/// With ρ0 the density without air and ρ that of the foam: overrun = 100·(ρ0/ρ − 1) per cent, air φ = 1 − ρ/ρ0, overrun = 100·φ/(1 − φ). The air weighs nothing here; it is
/// 0.0012 g/mL. Worked number: 1.288 g/mL whipped to 0.900 has an overrun of 43.1 % and 30.1 % of air.
/// </remarks>
public sealed class Foam
{
    // To which a specific gravity is referred: water at 20 °C, g/mL.
    private const double Water = 0.9982;

    private Foam(double airFree, double times)
    {
        AirFreeGramsPerMillilitre = airFree;
        Times = times;
    }

    /// <summary>The density without air, g/mL.</summary>
    public double AirFreeGramsPerMillilitre { get; }

    /// <summary>The volume over that without air.</summary>
    public double Times { get; }

    /// <summary>The density, g/mL.</summary>
    public double GramsPerMillilitre => AirFreeGramsPerMillilitre / Times;

    /// <summary>The density over that of water at 20 °C: a cup of it over the same cup of water, both on the scales.</summary>
    public double SpecificGravity => GramsPerMillilitre / Water;

    /// <summary>The overrun, per cent: what was gained in volume.</summary>
    public double OverrunPercent => 100 * (Times - 1);

    /// <summary>The share of the volume that is air, from 0 to 1.</summary>
    public double AirFraction => 1 - 1 / Times;

    /// <summary>What has no air in it yet.</summary>
    /// <param name="airFreeGramsPerMillilitre">The density without air, g/mL, from 0.5 to 2.</param>
    /// <returns>The foam without air. Worked number: <c>Foam.Of(1.03).ToTimes(7)</c> has 0.147 g/mL and an overrun of 600 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="airFreeGramsPerMillilitre"/> is outside its range.</exception>
    public static Foam Of(double airFreeGramsPerMillilitre) => new(Guard.InRange(airFreeGramsPerMillilitre, 0.5, 2), 1);

    /// <summary>A formula without air, at 20 °C by its composition (<see cref="HeatProperties.DensityWithoutAir"/>).</summary>
    /// <param name="formula">The formula.</param>
    /// <returns>The foam without air. Worked number: icing sugar and butter two to one by mass have 1.288 g/mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public static Foam Of(Formula formula) => new(ThermalProperties.Of(Guard.NotNull(formula), 20).GramsPerMillilitre, 1);

    /// <summary>The overrun by one cup, filled before and after whipping.</summary>
    /// <param name="plainGrams">What the cup holds before, g, from 0.001 to 1e6.</param>
    /// <param name="whippedGrams">What it holds after, g: from a hundredth of that to that.</param>
    /// <returns>Per cent: 100·(plain − whipped)/whipped. Worked number: 1090 g and 560 g: 94.6.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double OverrunOfCups(double plainGrams, double whippedGrams)
    {
        Guard.InRange(plainGrams, 1e-3, 1e6);
        Guard.InRange(whippedGrams, plainGrams / 100, plainGrams);
        return 100 * (plainGrams - whippedGrams) / whippedGrams;
    }

    /// <summary>The same at so many times its volume.</summary>
    /// <param name="times">The volume over that without air, from 1 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> is outside its range.</exception>
    public Foam ToTimes(double times) => new(AirFreeGramsPerMillilitre, Guard.InRange(times, 1, 100));

    /// <summary>The same at an overrun.</summary>
    /// <param name="overrunPercent">The overrun, per cent, from 0 to 9900.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="overrunPercent"/> is outside its range.</exception>
    public Foam ToOverrun(double overrunPercent) => new(AirFreeGramsPerMillilitre, 1 + Guard.InRange(overrunPercent, 0, 9900) / 100);

    /// <summary>The same at a share of air.</summary>
    /// <param name="airFraction">The share of the volume that is air, from 0 to 0.99.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="airFraction"/> is outside its range.</exception>
    public Foam ToAir(double airFraction) => new(AirFreeGramsPerMillilitre, 1 / (1 - Guard.InRange(airFraction, 0, 0.99)));

    /// <summary>The same at a density.</summary>
    /// <param name="foamGramsPerMillilitre">The density, g/mL, from a hundredth of that without air to that without air.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="foamGramsPerMillilitre"/> is outside its range.</exception>
    public Foam ToDensity(double foamGramsPerMillilitre) => new(AirFreeGramsPerMillilitre,
        AirFreeGramsPerMillilitre / Guard.InRange(foamGramsPerMillilitre, AirFreeGramsPerMillilitre / 100, AirFreeGramsPerMillilitre));

    /// <summary>The density with pieces stirred in that hold none of its air: 1/((1 − w)/ρ + w/ρ of the pieces).</summary>
    /// <param name="massPercent">The pieces, per cent of the whole by mass, from 0 to 95.</param>
    /// <param name="pieceGramsPerMillilitre">The density of the pieces, g/mL, from 0.1 to 3.</param>
    /// <returns>g/mL. Worked number: 1.1 g/mL at an overrun of 100 % with 9 % of pieces of 0.748 g/mL: 0.5634.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public double DensityWithPieces(double massPercent, double pieceGramsPerMillilitre)
    {
        double pieces = Guard.InRange(massPercent, 0, 95) / 100;
        return 1 / ((1 - pieces) / GramsPerMillilitre + pieces / Guard.InRange(pieceGramsPerMillilitre, 0.1, 3));
    }

    /// <summary>One line, such as <c>0.147 g/mL, overrun 600 %, air 85.7 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{GramsPerMillilitre:0.000} g/mL, overrun {OverrunPercent:0} %, air {100 * AirFraction:0.0} %");
}
