using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;

namespace Confectio.Measures;

/// <summary>
/// Which cup, spoon, fluid ounce and weighed ounce are meant. There is no ambient default: whoever turns a cup into
/// millilitres says whose cup it is.
/// </summary>
/// <remarks>
/// Volumes are exact fractions of a millilitre. One US customary cup is 231 in³ / 16 = 236.5882365 mL
/// (NIST Handbook 44, Appendix C); one imperial half pint is 4.54609 L / 16 = 284.130625 mL (UK Weights and Measures Act 1985).
/// </remarks>
public sealed class MeasuringSystem
{
    private const int UnitCount = (int)KitchenUnit.Piece;

    private readonly Fraction[] _exact = new Fraction[UnitCount];
    private readonly double[] _perUnit = new double[UnitCount];
    private readonly Source?[] _sources = new Source?[UnitCount];
    private readonly string?[] _cautions = new string?[UnitCount];

    private MeasuringSystem(string key, string name, string family)
    {
        Key = key;
        Name = name;
        Family = family;
        Source pound = Bibliography.Get("intl-yard-pound-1959");
        Define(KitchenUnit.Gram, 1, pound);
        Define(KitchenUnit.Kilogram, 1000, pound);
        Define(KitchenUnit.Pound, Fraction.FromDecimal(453.59237m), pound);
        Define(KitchenUnit.Ounce, Fraction.FromDecimal(453.59237m) / 16, pound);
        Define(KitchenUnit.Millilitre, 1, pound);
        Define(KitchenUnit.Litre, 1000, pound);
    }

    /// <summary>US customary: cup 236.5882365 mL, tablespoon 1/16 and teaspoon 1/48 of it, fluid ounce 29.5735295625 mL.</summary>
    public static MeasuringSystem UsCustomary { get; } = BuildUsCustomary();

    /// <summary>
    /// US nutrition labelling, 21 CFR 101.9(b)(5)(viii): teaspoon 5, tablespoon 15, cup 240, fluid ounce 30 mL, and a weighed ounce of 28
    /// g. It defines no pint, quart or gallon.
    /// </summary>
    public static MeasuringSystem UsLabelling { get; } = BuildUsLabelling();

    /// <summary>Metric: cup 250, tablespoon 15, dessertspoon 10, teaspoon 5 mL.</summary>
    public static MeasuringSystem Metric { get; } = BuildMetric("metric", "metric (250/15/5)", 250, 15, "metric", "metric-spoons",
        dessertspoon: true);

    /// <summary>Australian: cup 250, tablespoon 20, dessertspoon 10, teaspoon 5 mL.</summary>
    public static MeasuringSystem Australian { get; } = BuildMetric("australian", "Australian (250/20/5)", 250, 20, "metric",
        "au-metric-cup", dessertspoon: true);

    /// <summary>
    /// British imperial: half-pint cup 284.130625 mL, fluid ounce 28.4130625 mL. The spoons are legacy measures and ambiguous.
    /// </summary>
    public static MeasuringSystem Imperial { get; } = BuildImperial();

    /// <summary>Japanese: cup 200, tablespoon 15, teaspoon 5 mL.</summary>
    public static MeasuringSystem Japanese { get; } = BuildMetric("japanese", "Japanese (200/15/5)", 200, 15, "japanese", "jp-cup",
        dessertspoon: false);

    /// <summary>
    /// Decilitre kitchens of northern Europe: a decilitre measure, tablespoon 15, teaspoon 5 mL. They have no cup; decilitres are
    /// millilitres in every system.
    /// </summary>
    public static MeasuringSystem Decilitre { get; } = BuildMetric("decilitre", "decilitre (dl/15/5)", null, 15, "decilitre",
        "metric-spoons", dessertspoon: false);

    /// <summary>
    /// What nobody's kitchen decides: grams, millilitres, pounds, and the ounce of 28.349523125 g, as every system but US labelling has it.
    /// It has no cup and no spoon, so that a measure which needs a kitchen is refused and not taken for somebody's.
    /// </summary>
    internal static MeasuringSystem OfNobody { get; } = new("units", "grams and millilitres", "");

    /// <summary>The seven systems.</summary>
    public static IReadOnlyList<MeasuringSystem> All { get; } = [UsCustomary, UsLabelling, Metric, Australian, Imperial, Japanese,
        Decilitre];

    /// <summary>The key that scripts and machine output use, such as <c>us-customary</c>.</summary>
    public string Key { get; }

    /// <summary>The name for a reader.</summary>
    public string Name { get; }

    /// <summary>
    /// Systems whose cups are the same to a kitchen share a family: <c>us</c> (236.6 and 240), <c>metric</c> (250), <c>imperial</c> (284),
    /// <c>japanese</c> (200), <c>decilitre</c> (none).
    /// </summary>
    public string Family { get; }

    /// <summary>
    /// How far a household measure may hold more or less than it says, as a fraction: 0.05, a limit of the old American
    /// standard for household measures (from memory).
    /// </summary>
    public const double ToolTolerance = 0.05;

    /// <summary>The system of a key.</summary>
    /// <param name="key">The key, such as <c>us-customary</c>; case does not matter.</param>
    /// <param name="system">The system, or <see langword="null"/>.</param>
    /// <returns>Whether the key is one of the seven.</returns>
    public static bool TryGet(ReadOnlySpan<char> key, [NotNullWhen(true)] out MeasuringSystem? system)
    {
        foreach (MeasuringSystem candidate in All)
        {
            if (key.Equals(candidate.Key, StringComparison.OrdinalIgnoreCase))
            {
                system = candidate;
                return true;
            }
        }
        system = null;
        return false;
    }

    /// <summary>
    /// Whether this system has the unit. Every system has the units of mass, the millilitre and the litre; none has a piece.
    /// </summary>
    /// <param name="unit">The unit.</param>
    public bool Defines(KitchenUnit unit) => (uint)unit < UnitCount && _sources[(int)unit] is not null;

    /// <summary>The millilitres in one of a unit of volume, rounded once from <see cref="ExactMillilitresPer"/>.</summary>
    /// <param name="unit">A unit of volume.</param>
    /// <returns>Millilitres; 236.5882365 for a US customary cup.</returns>
    /// <exception cref="ArgumentException">The unit is not a volume, or this system does not have it.</exception>
    public double MillilitresPer(KitchenUnit unit)
    {
        RequireVolume(unit);
        return _perUnit[(int)unit];
    }

    /// <summary>The exact millilitres in one of a unit of volume.</summary>
    /// <param name="unit">A unit of volume.</param>
    /// <returns>Millilitres; 473176473/2000000 for a US customary cup.</returns>
    /// <exception cref="ArgumentException">The unit is not a volume, or this system does not have it.</exception>
    public Fraction ExactMillilitresPer(KitchenUnit unit)
    {
        RequireVolume(unit);
        return _exact[(int)unit];
    }

    /// <summary>The grams in one of a unit of mass. An ounce is 28.349523125 g, and 28 g in US nutrition labelling.</summary>
    /// <param name="unit">A unit of mass.</param>
    /// <returns>Grams.</returns>
    /// <exception cref="ArgumentException">The unit is not a mass.</exception>
    public double GramsPer(KitchenUnit unit)
    {
        if (!unit.IsMass())
            throw new ArgumentException($"{unit} is not a unit of mass.", nameof(unit));
        return _perUnit[(int)unit];
    }

    /// <summary>The text that defines a unit.</summary>
    /// <param name="unit">A unit that this system has.</param>
    /// <returns>The source.</returns>
    /// <exception cref="ArgumentException">This system does not have the unit.</exception>
    public Source SourceOf(KitchenUnit unit) => Defines(unit) ? _sources[(int)unit]! : throw NotDefined(unit);

    /// <summary>
    /// What to know before trusting a unit of this system, such as the legacy British tablespoon; <see langword="null"/> where there is
    /// nothing.
    /// </summary>
    /// <param name="unit">The unit.</param>
    public string? CautionFor(KitchenUnit unit) => Defines(unit) ? _cautions[(int)unit] : null;

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private void RequireVolume(KitchenUnit unit)
    {
        if (!unit.IsVolume())
            throw new ArgumentException($"{unit} is not a unit of volume.", nameof(unit));
        if (_sources[(int)unit] is null)
            throw NotDefined(unit);
    }

    private ArgumentException NotDefined(KitchenUnit unit) =>
        new($"The {Name} measuring system has no {unit.ToWord()}; a system that has one: " +
            $"{string.Join(", ", All.Where(system => system.Defines(unit)).Select(system => system.Key))}.", nameof(unit));

    private void Define(KitchenUnit unit, Fraction amount, Source source, string? caution = null)
    {
        _exact[(int)unit] = amount;
        _perUnit[(int)unit] = amount.ToDouble();
        _sources[(int)unit] = source;
        _cautions[(int)unit] = caution;
    }

    private static MeasuringSystem BuildUsCustomary()
    {
        MeasuringSystem system = new("us-customary", "US customary", "us");
        Source handbook = Bibliography.Get("nist-hb44");
        // 1 in = 2.54 cm exactly, 1 gal = 231 cubic inches.
        Fraction gallon = 231 * Fraction.FromDecimal(16.387064m);
        system.Define(KitchenUnit.Gallon, gallon, handbook);
        system.Define(KitchenUnit.Quart, gallon / 4, handbook);
        system.Define(KitchenUnit.Pint, gallon / 8, handbook);
        system.Define(KitchenUnit.Cup, gallon / 16, handbook);
        system.Define(KitchenUnit.FluidOunce, gallon / 128, handbook);
        system.Define(KitchenUnit.Tablespoon, gallon / 256, handbook);
        system.Define(KitchenUnit.Teaspoon, gallon / 768, handbook);
        system.Define(KitchenUnit.Dessertspoon, gallon / 384, Bibliography.Get("trade"),
            "No US standard has a dessertspoon; two teaspoons is common practice.");
        return system;
    }

    private static MeasuringSystem BuildUsLabelling()
    {
        MeasuringSystem system = new("us-labelling", "US labelling", "us");
        Source rule = Bibliography.Get("cfr-21-101-9");
        const string Caution = "Defined for nutrition labelling only.";
        system.Define(KitchenUnit.Teaspoon, 5, rule, Caution);
        system.Define(KitchenUnit.Tablespoon, 15, rule, Caution);
        system.Define(KitchenUnit.Cup, 240, rule, Caution);
        system.Define(KitchenUnit.FluidOunce, 30, rule, Caution);
        system.Define(KitchenUnit.Ounce, 28, rule, Caution);
        return system;
    }

    private static MeasuringSystem BuildMetric(
        string key, string name, int? cup, int tablespoon, string family, string sourceKey, bool dessertspoon)
    {
        MeasuringSystem system = new(key, name, family);
        Source source = Bibliography.Get(sourceKey);
        if (cup is int millilitres)
            system.Define(KitchenUnit.Cup, millilitres, source);
        system.Define(KitchenUnit.Tablespoon, tablespoon, source);
        system.Define(KitchenUnit.Teaspoon, 5, source);
        if (dessertspoon)
            system.Define(KitchenUnit.Dessertspoon, 10, Bibliography.Get("trade"), "A dessertspoon of 10 mL is common practice.");
        return system;
    }

    private static MeasuringSystem BuildImperial()
    {
        MeasuringSystem system = new("imperial", "imperial", "imperial");
        Source act = Bibliography.Get("uk-si-1985-imperial");
        Source trade = Bibliography.Get("trade");
        Fraction gallon = Fraction.FromDecimal(4546.09m);
        system.Define(KitchenUnit.Gallon, gallon, act);
        system.Define(KitchenUnit.Quart, gallon / 4, act);
        system.Define(KitchenUnit.Pint, gallon / 8, act);
        system.Define(KitchenUnit.FluidOunce, gallon / 160, act);
        system.Define(KitchenUnit.Cup, gallon / 16, trade, "The imperial cup is half a pint by custom; no law defines it.");
        const string Spoons = "The legacy British tablespoon is ambiguous: 17.76 mL (5/8 fl oz, used here), 14.2, 28.4 and 15 mL are all "
            + "reported.";
        Fraction tablespoon = gallon / 160 * new Fraction(5, 8);
        system.Define(KitchenUnit.Tablespoon, tablespoon, trade, Spoons);
        system.Define(KitchenUnit.Teaspoon, tablespoon / 3, trade, Spoons);
        system.Define(KitchenUnit.Dessertspoon, tablespoon * new Fraction(2, 3), trade, Spoons);
        return system;
    }
}
