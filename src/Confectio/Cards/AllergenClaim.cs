using Confectio.Ingredients;

namespace Confectio.Cards;

/// <summary>A sentence of a card about allergens: what it contains, or what it is said to be free from.</summary>
public sealed class AllergenClaim
{
    internal AllergenClaim(bool isFreeFrom, IReadOnlyList<Allergen> allergens, bool namesAllNuts, CardPlace place, string text) =>
        (IsFreeFrom, Allergens, NamesNuts, Place, Text) = (isFreeFrom, allergens, namesAllNuts, place, text);

    /// <summary>Whether the allergens are said to be absent; otherwise they are said to be in it.</summary>
    public bool IsFreeFrom { get; }

    /// <summary>The allergens that it names. Nuts without a kind are all tree nuts where they are said to be absent.</summary>
    public IReadOnlyList<Allergen> Allergens { get; }

    /// <summary>Whether it names nuts without their kind.</summary>
    public bool NamesNuts { get; }

    /// <summary>Where it stands.</summary>
    public CardPlace Place { get; }

    /// <summary>Its words.</summary>
    public string Text { get; }

    /// <summary>Its place and words.</summary>
    public override string ToString() => $"{Place}: {Text}";
}
