using System.Globalization;

namespace Confectio.Eggs;

/// <summary>A foam as air in a liquid: its density, its overrun and its share of air, which say the same in three ways.</summary>
/// <remarks>
/// With v the volume over that of the liquid: density = ρ/v, overrun = 100·(v − 1) per cent, air = 1 − 1/v. The air weighs nothing here; it
/// is 0.0012 g/mL.
/// </remarks>
internal sealed class EggFoam
{
    private EggFoam(double liquidGramsPerMillilitre, double times)
    {
        LiquidGramsPerMillilitre = liquidGramsPerMillilitre;
        Times = times;
    }

    /// <summary>The density of the liquid, g/mL.</summary>
    public double LiquidGramsPerMillilitre { get; }

    /// <summary>The volume of the foam over that of the liquid.</summary>
    public double Times { get; }

    /// <summary>The density of the foam, g/mL.</summary>
    public double GramsPerMillilitre => LiquidGramsPerMillilitre / Times;

    /// <summary>The overrun, per cent: what was gained in volume.</summary>
    public double OverrunPercent => 100 * (Times - 1);

    /// <summary>The share of the volume that is air, from 0 to 1.</summary>
    public double AirFraction => 1 - 1 / Times;

    /// <summary>A foam by its volume.</summary>
    /// <param name="liquidGramsPerMillilitre">The density of the liquid, g/mL, from 0.5 to 2.</param>
    /// <param name="times">The volume of the foam over that of the liquid, from 1 to 100.</param>
    /// <returns>The foam. Worked number: 7 times the liquid of 1.03 g/mL: 0.1471 g/mL, overrun 600 %, air 0.857.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static EggFoam Of(double liquidGramsPerMillilitre, double times)
    {
        Guard.InRange(liquidGramsPerMillilitre, 0.5, 2);
        return new EggFoam(liquidGramsPerMillilitre, Guard.InRange(times, 1, 100));
    }

    /// <summary>A foam by its density: a cup of it on the scales over the volume of the cup.</summary>
    /// <param name="liquidGramsPerMillilitre">The density of the liquid, g/mL, from 0.5 to 2.</param>
    /// <param name="foamGramsPerMillilitre">
    /// The density of the foam, g/mL, from a hundredth of that of the liquid to that of the liquid.
    /// </param>
    /// <returns>The foam. Worked number: 0.1471 g/mL of a liquid of 1.03 g/mL: 7 times the liquid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static EggFoam FromDensity(double liquidGramsPerMillilitre, double foamGramsPerMillilitre)
    {
        Guard.InRange(liquidGramsPerMillilitre, 0.5, 2);
        Guard.InRange(foamGramsPerMillilitre, liquidGramsPerMillilitre / 100, liquidGramsPerMillilitre);
        return new EggFoam(liquidGramsPerMillilitre, liquidGramsPerMillilitre / foamGramsPerMillilitre);
    }

    /// <summary>One line, such as <c>0.147 g/mL, overrun 600 %, air 85.7 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{GramsPerMillilitre:0.000} g/mL, overrun {OverrunPercent:0} %, air {100 * AirFraction:0.0} %");
}
