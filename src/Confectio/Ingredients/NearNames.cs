using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>Finds names that a miss may have meant. It only suggests; nothing is ever matched by it.</summary>
/// <remarks>Nothing is allocated for a name that is not near: a table of strangers may miss on every line.</remarks>
internal static class NearNames
{
    /// <summary>Longer names are not looked for, neither here nor there.</summary>
    private const int Longest = EditDistance.Longest;

    private const int MostWords = Longest / 2 + 1;

    public static IReadOnlyList<string> Of(string key, IReadOnlyDictionary<string, Ingredient> names, int most)
    {
        if (key.Length is 0 or > Longest)
            return [];
        Dictionary<Ingredient, double> best = [];
        foreach ((string name, Ingredient ingredient) in names)
        {
            double distance = Distance(key, name);
            if (distance < 1 && (!best.TryGetValue(ingredient, out double known) || distance < known))
                best[ingredient] = distance;
        }
        return [.. best.OrderBy(pair => pair.Value).ThenBy(pair => pair.Key.Name,
            StringComparer.Ordinal).Take(most).Select(pair => pair.Key.Name)];
    }

    /// <summary>Below 1 is near: edits against a third of the length, or the share of words that the two do not have in common.</summary>
    private static double Distance(string key, string name)
    {
        double allowed = Math.Max(1, Math.Max(key.Length, name.Length) / 3.0);
        double letters = name.Length > Longest || Math.Abs(key.Length - name.Length) > allowed ? 1
            : EditDistance.Of(key, name) / (allowed + 0.5);
        Span<Range> words = stackalloc Range[MostWords], others = stackalloc Range[MostWords];
        words = words[..key.AsSpan().Split(words, ' ')];
        others = others[..name.AsSpan().SplitAny(others, " -")];
        int common = 0;
        foreach (Range word in words)
        {
            ReadOnlySpan<char> letter = key.AsSpan(word);
            if (letter.Length > 1 && HasWord(name, others, letter))
                common++;
        }
        double wordwise = common == 0 ? 1 : 1 - 2.0 * common / (words.Length + others.Length) + 0.2;
        return Math.Min(letters, wordwise);
    }

    private static bool HasWord(ReadOnlySpan<char> name, ReadOnlySpan<Range> words, ReadOnlySpan<char> word)
    {
        foreach (Range other in words)
        {
            if (name[other].SequenceEqual(word))
                return true;
        }
        return false;
    }
}
