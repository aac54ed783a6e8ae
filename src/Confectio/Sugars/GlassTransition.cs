using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Sugars;

/// <summary>
/// Where a syrup sets to a glass: Tg of its sugars by the rule of Fox, 1/Tg = Σ w/Tgᵢ in kelvin, lowered by its water after Gordon and
/// Taylor,
/// Tg = (s·Tgₛ + k·w·Tg_w)/(s + k·w), with mass fractions s of solids and w of water and Tg_w = −135 °C.
/// </summary>
/// <remarks>
/// The constant k is that of the food literature, water second: 3 to 8. Texts that put the glass former second print its inverse. Tg and k
/// are from memory: dry onset of sucrose 62 °C and k 4.7, glucose 31 and 4.5, fructose 5 and 3.8, maltose 87 and 6.0, lactose 101 and 6.7,
/// sorbitol −9 and 3.4 (after Roos 1993), water after Johari and others (1987). What stands for higher saccharides, glycerol and acids is
/// an estimate. The range is an estimate too: 5 K to either side of the dry sugars, more above for higher saccharides, and k a tenth less
/// to 15 % more. Fat, protein and salt have no part in it, and what the surface takes up from damp air lowers it there.
/// </remarks>
public sealed class GlassTransition
{
    private static readonly CoefficientSet s_water = Of(Constituent.Water), s_higher = Of(Constituent.HigherSaccharides);

    // °C of the dry solute and k with water, by place; that of the higher saccharides is at their usual molar mass.
    private static readonly (double Celsius, double K)[] s_solutes = Dry();

    private static readonly double s_waterCelsius = s_water["celsius"], s_error = s_water["error"], s_leastK = s_water["least-k"],
        s_mostK = s_water["most-k"];

    private static readonly double s_fall = s_higher["fall"], s_lowHigher = s_higher["low-error"], s_highHigher = s_higher["high-error"],
        s_usualMolarMass = Substance.MolarMassOf(Constituent.HigherSaccharides);

    private GlassTransition(SugarSolution syrup, double celsius)
    {
        Celsius = celsius;
        double likely = Of(syrup, 0, 0, 1);
        TransitionCelsius = new Spread(Math.Min(likely, Of(syrup, -s_error, s_lowHigher, s_mostK)), likely,
            Math.Max(likely, Of(syrup, s_error, s_highHigher, s_leastK)), SpreadBasis.Models);
    }

    /// <summary>The temperature of the syrup, °C.</summary>
    public double Celsius { get; }

    /// <summary>The glass transition Tg, °C.</summary>
    public Spread TransitionCelsius { get; }

    /// <summary>T − Tg, K: below 0 a glass, and the more above it the softer and stickier.</summary>
    public Spread Above => Spread.Exactly(Celsius) - TransitionCelsius;

    /// <summary>What that means, by the high end of <see cref="Above"/>: the softest it may be.</summary>
    public GlassState State => Above.High <= 0 ? GlassState.Glass : Above.High <= 10 ? GlassState.Softening : Above.High <= 20
        ? GlassState.Sticky : GlassState.Flowing;

    /// <summary>The glass transition of a syrup beside its temperature, everything being dissolved.</summary>
    /// <param name="syrup">The syrup, boiled hard or not.</param>
    /// <param name="celsius">Its temperature, °C, from −50 to 220.</param>
    /// <returns>The answer. Worked number: sucrose with 3 % of water has Tg 37 °C, from 30 to 44.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="syrup"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static GlassTransition Of(SugarSolution syrup, double celsius) => new(Guard.NotNull(syrup), Guard.InRange(celsius, -50, 220));

    /// <summary>One line, such as <c>Tg 37 °C (30 to 44), at 20 °C 17 K below: glass</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"Tg {TransitionCelsius.Likely:0} °C ({TransitionCelsius.Low:0} to {TransitionCelsius.High:0}), at {Celsius:0.#} °C ")
        + string.Create(CultureInfo.InvariantCulture,
            $"{Math.Abs(Above.Likely):0} K {(Above.Likely <= 0 ? "below" : "above")}: {State.ToString().ToLowerInvariant()}");

    private static CoefficientSet Of(Constituent constituent) => CoefficientTable.BuiltIn.Get("glass-transition", constituent);

    private static (double Celsius, double K)[] Dry()
    {
        (double Celsius, double K)[] dry = new (double, double)[Solutes.Count];
        for (int i = 0; i < dry.Length; i++)
            dry[i] = (Of(Solutes.Constituents[i])["celsius"], Of(Solutes.Constituents[i])["k"]);
        return dry;
    }

    private static double Of(SugarSolution syrup, double dryError, double higherError, double factor)
    {
        double inverse = 0, k = 0;
        for (int i = 0; i < s_solutes.Length; i++)
        {
            double share = syrup.Fractions[i];
            double dry = s_solutes[i].Celsius;
            dry = i == Solutes.HigherSaccharides
                ? dry + s_fall * (1 / s_usualMolarMass - 1 / syrup.HigherSaccharidesMolarMass) + higherError
                : dry + dryError;
            inverse += share / (dry + SaturatedWater.ZeroCelsius);
            k += share * s_solutes[i].K;
        }
        if (!(inverse > 0))
            return s_waterCelsius;
        double solids = syrup.Solids, glass = solids / inverse - SaturatedWater.ZeroCelsius, wet = factor * k / solids * syrup.Water;
        return (solids * glass + wet * s_waterCelsius) / (solids + wet);
    }
}
