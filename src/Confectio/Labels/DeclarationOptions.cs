using Confectio.Ingredients;

namespace Confectio.Labels;

/// <summary>What a list of ingredients takes up besides the formula.</summary>
public sealed class DeclarationOptions
{
    internal static DeclarationOptions Default { get; } = new();

    /// <summary>The ingredients whose parts are known, and parts of the product that are made apart; at most 100.</summary>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="ArgumentException">There are more than 100.</exception>
    public IReadOnlyList<CompoundIngredient> Compounds { get; init => field = Checked(value, nameof(Compounds)); } = [];

    /// <summary>The ingredients of which the quantity is declared (Article 22 of Regulation (EU) 1169/2011): those that the name or a picture of the food speaks of.</summary>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="ArgumentException">There are more than 100.</exception>
    public IReadOnlyList<Ingredient> Quantified { get; init => field = Checked(value, nameof(Quantified)); } = [];

    /// <summary>The parts of the product that are made apart of which the quantity is declared, by their names.</summary>
    /// <exception cref="ArgumentNullException">The list or an entry is null.</exception>
    /// <exception cref="ArgumentException">There are more than 100.</exception>
    public IReadOnlyList<string> QuantifiedParts { get; init => field = Checked(value, nameof(QuantifiedParts)); } = [];

    /// <summary>
    /// Whether what is little comes last behind a note: in the United States <c>contains 2 % or less of</c> (21 CFR 101.4(a)(2)); in the European Union under 2 % may stand in any order
    /// behind the rest (Annex VII, part A, from memory), and stays in its own here.
    /// </summary>
    public bool GathersSmall { get; init; }

    /// <summary>
    /// The table whose names are used where the law has none of its own: <see cref="IngredientTable.WithAmericanNames"/> for an American label; those of the formula's own table unless stated.
    /// </summary>
    public IngredientTable? Names { get; init; }

    /// <summary>How many compounds and quantities are told.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"{Compounds.Count} compounds, {Quantified.Count + QuantifiedParts.Count} quantities{(GathersSmall ? ", what is little gathered" : "")}");

    private static T[] Checked<T>(IReadOnlyList<T> value, string name) where T : class
    {
        Guard.NotNull(value, name);
        return value.Count <= 100 ? [.. value.Select(one => Guard.NotNull(one, name))] : throw new ArgumentException($"{name} has {value.Count}; at most 100 are expected.", name);
    }
}
