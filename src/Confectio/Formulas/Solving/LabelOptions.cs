namespace Confectio.Formulas.Solving;

/// <summary>How a food is made of its label.</summary>
public sealed class LabelOptions
{
    /// <summary>What the spreads count in: the rounding and the tolerance of the law, unless it says otherwise.</summary>
    public LabelSpread Spread { get; init => field = Guard.Defined(value, nameof(Spread)); }

    /// <summary>
    /// The id of the food, lower-case letters, digits and hyphens; <see langword="null"/> for one of its name. With the id of a food of a
    /// table it takes that food's place and keeps its weights (<see cref="Ingredients.IngredientTable.With(Ingredients.Ingredient)"/>).
    /// </summary>
    public string? Id { get; init; }

    /// <summary>
    /// How much water may have boiled off of what is listed, g for 100 g of the finished food, from 0 to 1000: a list says what went into
    /// the bowl. Where nothing fits without it, boiling off is allowed, and said.
    /// </summary>
    public double MaximumBoiledOffPercent { get; init => field = Guard.InRange(value, 0, 1000, nameof(MaximumBoiledOffPercent)); }

    /// <summary>What the spreads count in, and how much water may have boiled off.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"{(Spread == LabelSpread.Rounding ? "rounding" : "rounding and tolerance")}, at most {MaximumBoiledOffPercent:0.##} % boiled off");

    internal static LabelOptions Default { get; } = new();
}
