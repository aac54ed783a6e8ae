using System.Diagnostics.CodeAnalysis;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>The words by which a kitchen asks for food without an allergen, and what each of them means.</summary>
internal static class AllergenWord
{
    private static readonly Allergen[] s_treeNuts = [Allergen.Almond, Allergen.Hazelnut, Allergen.Walnut, Allergen.Pecan, Allergen.Pistachio,
        Allergen.Cashew, Allergen.Macadamia, Allergen.Brazil];

    // Who asks for no nuts is seldom glad of peanuts, and who asks for no gluten may not have wheat.
    private static readonly Dictionary<string, Allergen[]> s_groups = new(StringComparer.OrdinalIgnoreCase)
    {
        ["dairy"] = [Allergen.Milk], ["nuts"] = [.. s_treeNuts, Allergen.Peanut], ["tree-nuts"] = s_treeNuts, ["tree nuts"] = s_treeNuts,
        ["gluten"] = [Allergen.Gluten, Allergen.Wheat], ["shellfish"] = [Allergen.Crustaceans, Allergen.Molluscs], ["soya"] = [Allergen.Soy],
        ["eggs"] = [Allergen.Egg], ["peanuts"] = [Allergen.Peanut], ["almonds"] = [Allergen.Almond], ["hazelnuts"] = [Allergen.Hazelnut],
        ["walnuts"] = [Allergen.Walnut], ["pecans"] = [Allergen.Pecan], ["pistachios"] = [Allergen.Pistachio], ["cashews"] = [Allergen.Cashew],
        ["macadamias"] = [Allergen.Macadamia], ["sulfites"] = [Allergen.Sulphites],
    };

    /// <summary>The nuts that grow on trees.</summary>
    public static IReadOnlyList<Allergen> TreeNuts => s_treeNuts;

    /// <summary>The words, for a message.</summary>
    public static string All => string.Join(", ", Enum.GetValues<Allergen>().Select(Of).Concat(["dairy", "nuts", "tree-nuts", "shellfish"]));

    /// <summary>The word of one allergen.</summary>
    public static string Of(Allergen allergen) => EnumWords.Of(allergen, ' ');

    /// <summary>Whether it is a nut of a tree.</summary>
    public static bool IsTreeNut(Allergen allergen) => Array.IndexOf(s_treeNuts, allergen) >= 0;

    /// <summary>What a word means.</summary>
    public static bool TryRead(string text, [NotNullWhen(true)] out string? word, [NotNullWhen(true)] out IReadOnlyList<Allergen>? allergens)
    {
        word = text.Trim().ToLowerInvariant();
        if (s_groups.TryGetValue(word, out Allergen[]? group))
        {
            allergens = group;
            return true;
        }
        foreach (Allergen allergen in Enum.GetValues<Allergen>())
        {
            if (Of(allergen) == word)
            {
                allergens = [allergen];
                return true;
            }
        }
        (word, allergens) = (null, null);
        return false;
    }
}
