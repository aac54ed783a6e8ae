using System.Globalization;
using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Sugars;

/// <summary>
/// Whether the sucrose of a syrup will crystallise at a temperature, and how much of it: the saturation of sucrose with all the other
/// sugars that are in the water.
/// </summary>
/// <remarks>
/// Sucrose alone follows Vavrinecz (docs/tables/equations.md). With others in the water it is saturated where its activity is that
/// of the saturated pure solution, ln xₛ − (√Kₛ − Σ √Kᵢ·xᵢ)² with mole fractions x and Norrish's constants K: what his rule for the water
/// says of the sucrose (Gibbs and Duhem). The constants are those of 25 °C. No table of such mixtures was at hand, so that this is a model
/// and no measurement: take a supersaturation of a mixture as good to ±0.1 up to 80 % solids, and beyond as a direction only. The answer
/// says where the end is, not how soon it comes. Crystals have no water in them; the rest of the syrup stays as it is.
/// </remarks>
public sealed class Crystallisation
{
    /// <summary>The supersaturation up to which crystals hardly form of themselves: common practice.</summary>
    public const double MetastableLimit = 1.2;

    /// <summary>The supersaturation above which crystals form of themselves: common practice.</summary>
    public const double LabileLimit = 1.3;

    private Crystallisation(SugarSolution syrup, double celsius)
    {
        Syrup = syrup;
        Celsius = celsius;
        SaturatedSucrosePerWater = Saturation(syrup, celsius);
        double sucrose = syrup[Constituent.Sucrose];
        CrystalFraction = Math.Max(0, sucrose - SaturatedSucrosePerWater * syrup.Water);
        Supersaturation = sucrose / (SaturatedSucrosePerWater * syrup.Water);
        Equilibrium = CrystalFraction > 0 ? syrup.WithoutSucrose(CrystalFraction) : syrup;
    }

    /// <summary>The syrup, all of it dissolved.</summary>
    public SugarSolution Syrup { get; }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    /// <summary>Grams of sucrose that a gram of water holds with the other sugars as they are in the syrup.</summary>
    public double SaturatedSucrosePerWater { get; }

    /// <summary>
    /// The sucrose in a gram of water over what it can hold; 1 is saturated. Worked number: 75 % sucrose at 20 °C gives 1.496.
    /// </summary>
    public double Supersaturation { get; }

    /// <summary>Where the syrup, all of it dissolved, sets to a glass: what decides of hard candy and caramel.</summary>
    public GlassTransition Glass => GlassTransition.Of(Syrup, Celsius);

    /// <summary>What is to be expected.</summary>
    public CrystalOutlook Outlook => Supersaturation <= 1 ? CrystalOutlook.Undersaturated
        : Glass.State == GlassState.Glass ? CrystalOutlook.Glass
        : Supersaturation <= MetastableLimit ? CrystalOutlook.Metastable
        : Supersaturation <= LabileLimit ? CrystalOutlook.Intermediate : CrystalOutlook.Labile;

    /// <summary>
    /// Grams of crystals from a gram of syrup, when all has crystallised that will. Worked number: 75 % sucrose at 20 °C gives 0.249.
    /// </summary>
    public double CrystalFraction { get; }

    /// <summary>The syrup between the crystals, when all has crystallised that will.</summary>
    public SugarSolution Equilibrium { get; }

    /// <summary>The outlook of a syrup at a temperature.</summary>
    /// <param name="syrup">The syrup, with sucrose or without.</param>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>The outlook. Worked number: 80 % solids, half of them invert sugar, at 20 °C: supersaturation 1.55.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="syrup"/> is null.</exception>
    /// <exception cref="ArgumentException">The syrup has no water: nothing is dissolved in it.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static Crystallisation Of(SugarSolution syrup, double celsius)
    {
        Guard.InRange(celsius, Solubility.MinimumCelsius, Solubility.MaximumCelsius);
        return Guard.NotNull(syrup).Water > 0 ? new Crystallisation(syrup, celsius)
            : throw new ArgumentException($"{nameof(syrup)} has no water; in a solution its fraction is above 0.", nameof(syrup));
    }

    /// <summary>
    /// The lowest temperature at which all the sucrose of a syrup is dissolved: heat to it before the boil, or the last grains seed the
    /// batch.
    /// </summary>
    /// <param name="syrup">The syrup.</param>
    /// <returns>
    /// Degrees Celsius, from 0, or <see langword="null"/> where even at 100 °C some stays: it needs more water, or dissolves on the boil
    /// above 100 °C. Worked number: 600 g of sugar and 200 g of water: 63.3.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="syrup"/> is null.</exception>
    /// <exception cref="ArgumentException">The syrup has no water: nothing is dissolved in it.</exception>
    public static double? DissolvedAtCelsius(SugarSolution syrup)
    {
        if (Of(syrup, Solubility.MaximumCelsius).Supersaturation > 1)
            return null;
        double perWater = syrup[Constituent.Sucrose] / syrup.Water;
        return Roots.Rising(celsius => Saturation(syrup, celsius) - perWater, Solubility.MinimumCelsius, Solubility.MaximumCelsius);
    }

    /// <summary>
    /// How far another sugar is from its own saturation in the water of the syrup, as if it were alone there; the true one is lower.
    /// </summary>
    /// <param name="sugar">
    /// The sugar, such as <see cref="Constituent.Lactose"/>, which makes condensed milk sandy, or <see cref="Constituent.Glucose"/>.
    /// </param>
    /// <returns>Grams over what the water holds; <see langword="null"/> where its solubility is not known at this temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sugar"/> is not a defined value.</exception>
    public double? SupersaturationAlone(Constituent sugar)
    {
        if (Guard.Defined(sugar) != Constituent.Sucrose && !Solubility.Points.Any(point => point.Sugar == sugar))
            return null;
        (double low, double high) = Solubility.RangeOf(sugar);
        if (Celsius < low || Celsius > high)
            return null;
        double saturated = Solubility.Of(sugar, Celsius);
        return Syrup[sugar] / Syrup.Water / (saturated / (1 - saturated));
    }

    /// <summary>One line, such as <c>supersaturation 1.50 at 20 °C: labile, 24.9 % of the syrup would crystallise</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"supersaturation {Supersaturation:0.00} at {Celsius:0.#} °C: {Outlook.ToString().ToLowerInvariant()}")
        + (Outlook == CrystalOutlook.Glass ? string.Create(CultureInfo.InvariantCulture,
            $" (Tg {Glass.TransitionCelsius.Low:0} to {Glass.TransitionCelsius.High:0} °C): it grains only when warm or damp")
        : CrystalFraction > 0 ? string.Create(CultureInfo.InvariantCulture,
            $", {100 * CrystalFraction:0.0} % of the syrup would crystallise") + Thick() : "");

    // Within 50 K of its transition a syrup is so thick that the end may be long in coming; how long is not said.
    private string Thick() => Glass.Above.Likely < 50
        ? string.Create(CultureInfo.InvariantCulture, $", slowly: {Math.Abs(Glass.Above.Likely):0} K "
            + $"{(Glass.Above.Likely < 0 ? "below" : "above")} its glass transition") : "";

    // Grams of sucrose in a gram of water. With the other solutes and the water in a fixed proportion, of which m = Σ √Kᵢ·nᵢ/Σ n is the
    // mean, the condition is ln x − (1 − x)²·(√K − m)², which rises with the mole fraction x of the sucrose.
    private static double Saturation(SugarSolution syrup, double celsius)
    {
        double root = Math.Sqrt(Solutes.SucroseNorrish), pure = Solubility.Sucrose(celsius);
        double moles = syrup.Water / Solutes.WaterMolarMass, roots = 0;
        for (int i = 1; i < syrup.Fractions.Length; i++)
        {
            double n = syrup.Fractions[i] / Solutes.MolarMass(i, syrup.HigherSaccharidesMolarMass);
            moles += n;
            roots += n * Math.Sqrt(Solutes.Norrish(i, syrup.HigherSaccharidesMolarMass));
        }
        // Alone, sucrose is as in the equation, to the last bit.
        if (roots == 0)
            return pure / (1 - pure);
        double sucrose = pure / Solutes.SucroseMolarMass, alone = sucrose / (sucrose + (1 - pure) / Solutes.WaterMolarMass);
        double target = LogActivity(alone, root), strength = root - roots / moles;
        double x = Roots.Rising(at => LogActivity(at, strength) - target, 1e-9, 1 - 1e-9);
        return x / (1 - x) * moles * Solutes.SucroseMolarMass / syrup.Water;
    }

    private static double LogActivity(double x, double strength) => Math.Log(x) - (1 - x) * (1 - x) * strength * strength;
}
