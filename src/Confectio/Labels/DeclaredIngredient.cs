using System.Globalization;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Labels;

/// <summary>One ingredient of a list: its name by the law, what of it is emphasised, its own parts, its share.</summary>
public sealed class DeclaredIngredient
{
    internal DeclaredIngredient(string name, IReadOnlyList<Ingredient> ingredients, double? grams, IReadOnlyList<LabelWord> words)
    {
        Name = name;
        Ingredients = ingredients;
        Grams = grams;
        Words = words;
    }

    /// <summary>The name as the list has it, without an allergen that was added behind it.</summary>
    public string Name { get; }

    /// <summary>The ingredients that go by this name, such as granulated and caster sugar; empty of a part that is made apart, or that a pack lists.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; }

    /// <summary>What counts in the order, g: as it is put in; of water in the European Union what is left of it. <see langword="null"/> of a part that a pack lists.</summary>
    public double? Grams { get; }

    /// <summary>The name in runs of letters, those that name an allergen emphasised; an allergen that the name does not say stands behind it in brackets.</summary>
    public IReadOnlyList<LabelWord> Words { get; }

    /// <summary>Its own parts in their order; empty where it has none, or nobody knows them (<see cref="PartsAreKnown"/>).</summary>
    public IReadOnlyList<DeclaredIngredient> Parts { get; internal init; } = [];

    /// <summary>Whether its parts are told or it has none; false where its pack has to be read.</summary>
    public bool PartsAreKnown { get; internal init; } = true;

    /// <summary>What was put in for 100 g of the finished food, g, where it was asked for: above 100 where much has boiled off; with the spread of a measure.</summary>
    public Spread? Quantity { get; internal init; }

    /// <summary>The quantity as it is printed: <c>48 %</c>; empty where none was asked for, or where it is above 100 % and stands in a sentence.</summary>
    public string QuantityText => Quantity is { Likely: <= 100 } share ? Percent(share.Likely) : "";

    /// <summary>The name.</summary>
    public override string ToString() => VisibleText.Of(string.Concat(Words.Select(word => word.Text)));

    // Commission Notice 2017/C 393/05, from memory: whole numbers, below 5 to a tenth.
    internal static string Percent(double share) => share.ToString(share < 4.95 ? "0.0" : "0", CultureInfo.InvariantCulture) + " %";
}
