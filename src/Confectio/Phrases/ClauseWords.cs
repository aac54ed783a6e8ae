using Confectio.Ingredients;
using Confectio.Ingredients.Names;

namespace Confectio.Phrases;

/// <summary>What a clause behind a name says that no row of descriptors.csv says as a whole.</summary>
internal static class ClauseWords
{
    private const int MostWords = 5;

    private const int LongestPacking = 30;

    // By their length, so that a text is asked about without making a string of it.
    private static readonly Lazy<string[][]> s_packings = new(() =>
    {
        string[] all = [.. Descriptor.All.Where(row => row.Meaning == DescriptorMeaning.Packing).Select(row => row.Words)
            .Concat(PackingText.Words).Distinct(StringComparer.OrdinalIgnoreCase)];
        return [.. Enumerable.Range(0, LongestPacking + 1).Select(length => Array.FindAll(all, words => words.Length == length))];
    });

    private static bool IsPacking(ReadOnlySpan<char> words)
    {
        foreach (string packing in s_packings.Value[words.Length])
        {
            if (words.Equals(packing, StringComparison.OrdinalIgnoreCase))
                return true;
        }
        return false;
    }

    /// <summary>Behind the words of a packing with which a text begins, the most that are one; 0 where it begins with none.</summary>
    public static int AfterPacking(ReadOnlySpan<char> text)
    {
        ReadOnlySpan<char> words = text.TrimStart();
        int before = text.Length - words.Length;
        int best = 0, at = 0;
        for (int i = 0; i < MostWords && at < words.Length; i++)
        {
            while (at < words.Length && !char.IsWhiteSpace(words[at]))
                at++;
            if (at <= LongestPacking && IsPacking(words[..at]))
                best = at;
            while (at < words.Length && char.IsWhiteSpace(words[at]))
                at++;
        }
        return best == 0 ? 0 : best + before;
    }

    /// <summary>Whether a clause changes no food, so that what stands before it may be a name by itself.</summary>
    public static bool IsHarmless(ReadOnlySpan<char> words) => IsPreparation(words) || IsAside(words) || AfterPacking(words) > 0;

    /// <summary>Whether it begins with something done to a food that leaves it what it is: "slaked in a little water".</summary>
    public static bool IsPreparation(ReadOnlySpan<char> words)
    {
        ReadOnlySpan<char> first = First(words, out int after);
        string word = first.Length is 0 or > 24 ? "" : WordPool.Lower(first);
        if (word is "finely" or "roughly" or "coarsely" or "lightly" or "freshly" or "thinly" or "gently" or "well" or "very" or "then"
            or "just" or "slightly" or "thoroughly"
            or "and")
            return after < words.Length && IsPreparation(words[after..].TrimStart());
        return word is "cut" or "slaked" or "stirred" or "softened" or "warmed" or "melted" or "toasted" or "cooled" or "mixed"
            or "dissolved" or "soaked" or "split" or "scraped"
            or "rinsed" or "drained" or "washed" or "beaten" or "whisked" or "separated" or "crushed" or "torn" or "quartered"
                or "cored" or "stoned" or "pitted" or "zested"
            or "juiced" or "squeezed" or "trimmed" or "cubed" or "diced" or "cold" or "chilled" or "warm" or "hot" or "hulled"
                or "blanched" or "grated" or "peeled" or "strained"
            or "thawed" or "defrosted" or "heated" or "boiled" or "brought" or "left" or "at" or "blended" or "crumbled" or "chopped"
                or "sliced" or "halved" or "sifted" or "sieved"
            or "packed" or "spooned" or "levelled" or "leveled" or "broken" or "kneaded" or "coloured" or "colored" or "tinted"
                or "scalded" or "whipped" or "loosened"
            or "kept" or "reserved" or "measured" or "weighed" or "rolled" or "skinned";
    }

    /// <summary>Whether it begins as a remark that names no food of its own: "from 2 lemons", "preferably organic".</summary>
    private static bool IsAside(ReadOnlySpan<char> words)
    {
        ReadOnlySpan<char> first = First(words, out _);
        return (first.Length is 0 or > 24 ? "" : WordPool.Lower(first)) is "from" or "preferably" or "ideally" or "see" or "such"
            or "not" or "any" or "your" or "the" or "i" or "we" or "make"
            or "use" or "about" or "depending" or "until" or "in" or "on" or "with" or "without" or "per" or "size" or "more" or "as"
                or "eg" or "ie" or "note" or "recipe";
    }

    private static ReadOnlySpan<char> First(ReadOnlySpan<char> words, out int after)
    {
        after = 0;
        while (after < words.Length && (char.IsLetter(words[after]) || (words[after] == '-' && after > 0)))
            after++;
        return words[..after];
    }
}
