using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Textures;

/// <summary>The volume that a formula makes: whipped from its composition, or by one cup of it on the scales.</summary>
/// <remarks>
/// V = m/ρ, and ρ = ρ0/(1 + overrun/100) with ρ0 by the composition at 20 °C, which is taken as good to 2 %, an estimate. A weighed cup needs neither. What stays in bowls and bags
/// is not taken off. Worked number: 300 g of icing sugar and butter two to one, whipped as buttercream: 314 mL, from 247 to 383.
/// </remarks>
public sealed class IcingYield
{
    /// <summary>The least density of an icing, g/mL.</summary>
    internal const double MinimumDensity = 0.05;

    /// <summary>The greatest density of an icing, g/mL.</summary>
    internal const double MaximumDensity = 2;

    // How far volumes that add up may be from the truth, and a level cup above what is free of air.
    private const double ModelError = 0.02, TooHeavy = 1.05;

    private IcingYield(Formula formula, Spread density, IcingAir? air)
    {
        Formula = formula;
        Air = air;
        GramsPerMillilitre = density;
        Spread grams = Spread.Sum(formula.Lines.Select(line => KeyValuePair.Create(line.Ingredient.Id, line.Grams))) - Spread.Exactly(formula.BoiledOffGrams);
        Spread least = new(Math.Max(0, grams.Low), grams.Likely, grams.High, grams.Basis);
        Millilitres = least * new Spread(1 / density.High, 1 / density.Likely, 1 / density.Low, density.Basis);
        AirFreeGramsPerMillilitre = Foam.Of(formula).AirFreeGramsPerMillilitre;
        List<string> cautions = [];
        if (air is not null)
            cautions.Add($"Whipped from its composition, and not weighed: the overrun of {air.Key.Replace('-', ' ')} is {air.Provenance.Evidence.ToWord().Replace('-', ' ')}. Weigh one level cup and it is exact.");
        else if (density.Likely > TooHeavy * AirFreeGramsPerMillilitre)
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"The measure weighs {density.Likely:0.00} g/mL, and without any air the formula has {AirFreeGramsPerMillilitre:0.00}: it was heaped, or it is no such measure. Weigh it again, level."));
        Cautions = cautions;
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>The sort of icing whose air was taken; <see langword="null"/> where a measure was weighed.</summary>
    public IcingAir? Air { get; }

    /// <summary>The density without air by the composition, g/mL.</summary>
    public double AirFreeGramsPerMillilitre { get; }

    /// <summary>The density, g/mL.</summary>
    public Spread GramsPerMillilitre { get; }

    /// <summary>The volume, mL: as sure as the density and the masses of the lines.</summary>
    public Spread Millilitres { get; }

    /// <summary>What the answer takes for granted, in sentences.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>The volume in cups.</summary>
    /// <param name="system">Whose cups.</param>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    public Spread Cups(MeasuringSystem system) => Millilitres / Guard.NotNull(system).MillilitresPer(KitchenUnit.Cup);

    /// <summary>What a formula makes when it is whipped as a sort of icing is.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="air">How much air it takes up.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IcingYield Of(Formula formula, IcingAir air)
    {
        double free = Foam.Of(Guard.NotNull(formula)).AirFreeGramsPerMillilitre;
        Spread overrun = Guard.NotNull(air).OverrunPercent;
        return new IcingYield(formula, new Spread(free * (1 - ModelError) / (1 + overrun.High / 100), free / (1 + overrun.Likely / 100),
            free * (1 + ModelError) / (1 + overrun.Low / 100), SpreadBasis.Judged), air);
    }

    /// <summary>What a formula makes by one measure of it, filled level and weighed.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="grams">What the icing in the measure weighs, g, from 0.001 to 1e6.</param>
    /// <param name="measure">The measure, a volume such as 1 cup.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>The volume, with no spread but that of the lines. Worked number: 1000 g of which a US cup weighs 200 g are 5 cups.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The measure is no volume, or the system lacks its unit.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range, or such a density outside 0.05 to 2 g/mL.</exception>
    public static IcingYield OfWeighed(Formula formula, double grams, Amount measure, MeasuringSystem system)
    {
        Guard.NotNull(formula);
        Guard.InRange(grams, 1e-3, 1e6);
        Guard.NotNull(system);
        double millilitres = measure.IsVolume ? measure.Millilitres(system)
            : throw new ArgumentException($"{nameof(measure)} was {measure}; a volume such as 1 cup is expected.", nameof(measure));
        Guard.InRange(grams, MinimumDensity * millilitres, MaximumDensity * millilitres);
        return new IcingYield(formula, Spread.Exactly(grams / millilitres), null);
    }

    /// <summary>One line, such as <c>314 mL (247 to 383) at 0.95 g/mL</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Millilitres.Likely:0} mL{(Millilitres.High > Millilitres.Low ? $" ({Millilitres.Low:0} to {Millilitres.High:0})" : "")} at {GramsPerMillilitre.Likely:0.00} g/mL{(Air is null ? ", by a weighed measure" : "")}");
}
