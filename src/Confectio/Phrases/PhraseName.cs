using Confectio.Ingredients;

namespace Confectio.Phrases;

/// <summary>What the words of a name are: the ingredient, its packing, its preparation.</summary>
internal static class PhraseName
{
    public const int MostWords = 4;

    public static bool TryMatch(string name, IngredientTable table, out Ingredient? ingredient, out Packing? packing, out List<string>? preparation)
    {
        packing = null;
        preparation = null;
        if (table.TryGet(name, out ingredient))
            return true;
        string[] words = name.Split([' ', '\t', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        int from = 0, to = words.Length;
        bool cut = true;
        while (cut && from < to)
        {
            cut = false;
            for (int count = Math.Min(MostWords, to - from - 1); count >= 1 && !cut; count--)
            {
                foreach (bool front in (ReadOnlySpan<bool>)[true, false])
                {
                    string piece = string.Join(' ', front ? words[from..(from + count)] : words[(to - count)..to]);
                    if (TryPacking(piece, out Packing read))
                        packing ??= read;
                    else if (IsPreparation(piece))
                        (preparation ??= []).Insert(0, piece);
                    else if (piece is not ("and" or "the"))
                        continue;
                    if (front)
                        from += count;
                    else
                        to -= count;
                    cut = true;
                    break;
                }
            }
            if (cut && table.TryGet(string.Join(' ', words[from..to]), out ingredient))
                return true;
        }
        ingredient = null;
        return false;
    }

    public static bool TryPacking(ReadOnlySpan<char> words, out Packing packing)
    {
        if (PackingText.TryRead(words, out packing))
            return true;
        if (words.Equals("sifted after measuring", StringComparison.OrdinalIgnoreCase))
        {
            packing = Packing.Spooned;
            return true;
        }
        if (words.Equals("finely chopped", StringComparison.OrdinalIgnoreCase) || words.Equals("roughly chopped", StringComparison.OrdinalIgnoreCase)
            || words.Equals("coarsely chopped", StringComparison.OrdinalIgnoreCase))
        {
            packing = Packing.Chopped;
            return true;
        }
        return false;
    }

    public static PhrasePartKind? KindOf(ReadOnlySpan<char> words) => TryPacking(words, out _) ? PhrasePartKind.Packing
        : IsPreparation(words) ? PhrasePartKind.Preparation : null;

    public static bool IsPreparation(ReadOnlySpan<char> words)
    {
        Span<char> lower = stackalloc char[32];
        if (words.Length > lower.Length)
            return StartsAsPreparation(words);
        int length = words.ToLowerInvariant(lower);
        return lower[..length] is "cold" or "cubed" or "cold and cubed" or "diced" or "beaten" or "lightly beaten" or "separated" or "at room temperature" or "room temperature"
            or "room temp" or "chilled" or "warm" or "warmed" or "hot" or "hulled" or "blanched" or "toasted" or "roasted lightly" or "aged" or "finely grated" or "peeled"
            or "fresh" or "strained" or "boiling" or "boiled" or "free-range" or "pure" or "divided"
            || StartsAsPreparation(words);
    }

    public static bool IsAside(ReadOnlySpan<char> words) => words.StartsWith("from ", StringComparison.OrdinalIgnoreCase) || words.StartsWith("preferably ", StringComparison.OrdinalIgnoreCase)
        || words.StartsWith("ideally ", StringComparison.OrdinalIgnoreCase) || words.StartsWith("see ", StringComparison.OrdinalIgnoreCase);

    private static bool StartsAsPreparation(ReadOnlySpan<char> words) => words.StartsWith("cut ", StringComparison.OrdinalIgnoreCase)
        || words.StartsWith("slaked ", StringComparison.OrdinalIgnoreCase) || words.StartsWith("stirred ", StringComparison.OrdinalIgnoreCase)
        || words.StartsWith("softened to ", StringComparison.OrdinalIgnoreCase);
}
