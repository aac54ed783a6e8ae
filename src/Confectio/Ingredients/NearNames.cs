namespace Confectio.Ingredients;

/// <summary>Finds names that a miss may have meant. It only suggests; nothing is ever matched by it.</summary>
/// <remarks>Nothing is allocated for a name that is not near: a table of strangers may miss on every line.</remarks>
internal static class NearNames
{
    /// <summary>Longer names are not looked for, neither here nor there.</summary>
    private const int Longest = 60;

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
        return [.. best.OrderBy(pair => pair.Value).ThenBy(pair => pair.Key.Name, StringComparer.Ordinal).Take(most).Select(pair => pair.Key.Name)];
    }

    /// <summary>Below 1 is near: edits against a third of the length, or the share of words that the two do not have in common.</summary>
    private static double Distance(string key, string name)
    {
        double allowed = Math.Max(1, Math.Max(key.Length, name.Length) / 3.0);
        double letters = name.Length > Longest || Math.Abs(key.Length - name.Length) > allowed ? 1 : Edits(key, name) / (allowed + 0.5);
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

    /// <summary>Optimal string alignment: insertions, deletions, substitutions and swaps of neighbours. Three rows are enough.</summary>
    private static int Edits(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        Span<int> before = stackalloc int[Longest + 1], last = stackalloc int[Longest + 1], row = stackalloc int[Longest + 1];
        for (int j = 0; j <= b.Length; j++)
            last[j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(last[j], row[j - 1]) + 1, last[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
            }
            Span<int> free = before;
            before = last;
            last = row;
            row = free;
        }
        return last[b.Length];
    }
}
