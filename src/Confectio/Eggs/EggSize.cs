using System.Globalization;
using Confectio.Sources;

namespace Confectio.Eggs;

/// <summary>A size class of eggs in one system: what an egg of it weighs with its shell, and its white, yolk and shell.</summary>
/// <remarks>
/// White and yolk are as printed, where they are: by the food tables of the United States for the large egg, by a centre in Japan for each
/// class there. The other classes of the United States share the printed whole egg as the large one does, 33 : 17. Else the likely mass of
/// the egg is multiplied by the mean of the published shares (docs/tables/egg-sizes.md). Low and high go from the lightest egg of
/// the class at the lowest published share to the heaviest at the highest. The likely egg is the middle of the class; in the United States,
/// where classes are minima of the dozen, it is the minimum, which is what the food tables' weights agree with. A class without an end is
/// taken as wide as its neighbour.
/// </remarks>
public sealed class EggSize
{
    private readonly Spread _white, _yolk, _whole, _shell;
    private readonly Provenance _parts;

    internal EggSize(EggSizeSystem system, EggSizeRow[] rows, int place, EggSizeRow? model)
    {
        EggSizeRow row = rows[place];
        SizeSystem = system;
        Key = row.Key;
        Name = row.Name;
        MinimumOuncesPerDozen = row.OuncesPerDozen;
        LowGrams = row.LowGrams;
        HighGrams = row.High ?? (place > 0 ? rows[place - 1].LowGrams : null);
        Provenance = row.Class;
        _parts = row.Parts;

        double low = LowGrams ?? HighGrams!.Value - Width(rows[place - 2], rows[place - 1]);
        double high = HighGrams ?? LowGrams!.Value + Width(rows[place], rows[place + 1]);
        double likely = row.OuncesPerDozen is null ? (low + high) / 2 : low;
        // An end that no text states is a guess.
        WithShell = new Spread(low, likely, high,
            LowGrams is null || HighGrams is null ? SpreadBasis.Judged : Provenance.Evidence.BasisOfRange());

        double white = row.White ?? row.Edible * (model?.White / model?.Edible) ?? likely * EggFraction.RangeOf(EggPart.White).Likely / 100;
        double yolk = row.Yolk ?? row.Edible * (model?.Yolk / model?.Edible) ?? likely * EggFraction.RangeOf(EggPart.Yolk).Likely / 100;
        // A printed whole gram is good to half of one.
        double half = row.White is null ? 0 : 0.5;
        _white = Around(white, EggPart.White, half);
        _yolk = Around(yolk, EggPart.Yolk, half);
        _whole = Around(row.Edible ?? white + yolk, EggPart.Whole, half);
        _shell = Around(likely - _whole.Likely, EggPart.Shell, half);
    }

    /// <summary>Whose size it is.</summary>
    public EggSizeSystem SizeSystem { get; }

    /// <summary>The key within the system, such as <c>large</c>.</summary>
    public string Key { get; }

    /// <summary>The name within the system, such as <c>extra large</c>.</summary>
    public string Name { get; }

    /// <summary>
    /// The least mass of an egg with its shell, g, which belongs to the class; <see langword="null"/> where there is none.
    /// </summary>
    public double? LowGrams { get; }

    /// <summary>Where the next class begins, g, which does not belong to this one; <see langword="null"/> where there is no next.</summary>
    public double? HighGrams { get; }

    /// <summary>
    /// The least mass of a dozen, avoirdupois ounces; <see langword="null"/> where the class is not defined by the dozen.
    /// </summary>
    public double? MinimumOuncesPerDozen { get; }

    /// <summary>The egg with its shell, g.</summary>
    public Spread WithShell { get; }

    /// <summary>Where the limits of the class come from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The mass of a part of one egg.</summary>
    /// <param name="part">The part.</param>
    /// <returns>Grams. Worked number: the white of a US large egg, 33 g, from 32.3 to 40.4.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="part"/> is not a defined value.</exception>
    public Spread Grams(EggPart part) => Guard.Defined(part) switch
    {
        EggPart.Whole => _whole,
        EggPart.White => _white,
        EggPart.Yolk => _yolk,
        _ => _shell,
    };

    /// <summary>Where the mass of a part comes from. The shell is what is left of the egg, and no better known than the class.</summary>
    /// <param name="part">The part.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="part"/> is not a defined value.</exception>
    public Provenance ProvenanceOf(EggPart part)
    {
        if (Guard.Defined(part) != EggPart.Shell)
            return _parts;
        return Provenance.Evidence == Evidence.FromMemory ? Provenance
            : new Provenance(_parts.Source, _parts.Evidence == Evidence.Estimated ? Evidence.Estimated : Evidence.Computed, _parts.Locator,
                "What white and yolk leave of the egg.");
    }

    /// <summary>The system and the name, such as <c>US extra large</c>.</summary>
    public override string ToString() => $"{SizeSystem.Name} {Name}";

    /// <summary>The class in a line, such as <c>EU large: 63 to below 73 g, white 40.7 g, yolk 20.1 g</c>.</summary>
    public string Describe()
    {
        string range = (LowGrams, HighGrams) switch
        {
            (double low, double high) => string.Create(CultureInfo.InvariantCulture, $"{low:0.#} to below {high:0.#} g"),
            (double low, null) => string.Create(CultureInfo.InvariantCulture, $"{low:0.#} g and above"),
            _ => string.Create(CultureInfo.InvariantCulture, $"below {HighGrams:0.#} g"),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{this}: {range}, white {_white.Likely:0.0} g, yolk {_yolk.Likely:0.0} g");
    }

    // The width of the class that begins at the second and ends at the first.
    private static double Width(EggSizeRow upper, EggSizeRow lower) => upper.LowGrams!.Value - lower.LowGrams!.Value;

    private Spread Around(double likely, EggPart part, double half)
    {
        Spread share = EggFraction.RangeOf(part);
        return new Spread(Math.Min(WithShell.Low * share.Low / 100, likely - half), likely,
            Math.Max(WithShell.High * share.High / 100, likely + half),
            Spread.Worse(Spread.Worse(WithShell.Basis, share.Basis), _parts.Evidence.BasisOfRange()));
    }
}
