namespace Confectio.Ingredients;

/// <summary>The words for allergens in the data tables: <c>milk</c>, and <c>tree-nut:almond</c> for nuts.</summary>
internal static class AllergenText
{
    private const string Nut = "tree-nut:";

    public static bool TryRead(ReadOnlySpan<char> word, out Allergen allergen)
    {
        bool nut = word.StartsWith(Nut, StringComparison.OrdinalIgnoreCase);
        ReadOnlySpan<char> name = nut ? word[Nut.Length..] : word;
        // Enum.TryParse would also take numbers, and would merge "egg,wheat" into another allergen altogether.
        return Enum.TryParse(name, ignoreCase: true, out allergen) && name.IndexOfAnyExceptInRange('A', 'z') < 0
            && nut == AllergenWord.IsTreeNut(allergen);
    }
}
