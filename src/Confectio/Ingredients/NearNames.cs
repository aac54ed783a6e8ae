namespace Confectio.Ingredients;

/// <summary>Finds names that a miss may have meant. It only suggests; nothing is ever matched by it.</summary>
internal static class NearNames
{
    public static IReadOnlyList<string> Of(string key, IReadOnlyDictionary<string, Ingredient> names, int most)
    {
        if (key.Length is 0 or > 60)
            return [];
        string[] words = key.Split(' ');
        Dictionary<Ingredient, double> best = [];
        foreach ((string name, Ingredient ingredient) in names)
        {
            double distance = Distance(key, words, name);
            if (distance < 1 && (!best.TryGetValue(ingredient, out double known) || distance < known))
                best[ingredient] = distance;
        }
        return [.. best.OrderBy(pair => pair.Value).ThenBy(pair => pair.Key.Name, StringComparer.Ordinal).Take(most).Select(pair => pair.Key.Name)];
    }

    /// <summary>Below 1 is near: edits against a third of the length, or the share of words that the two do not have in common.</summary>
    private static double Distance(string key, string[] words, string name)
    {
        double allowed = Math.Max(1, Math.Max(key.Length, name.Length) / 3.0);
        double letters = Math.Abs(key.Length - name.Length) > allowed ? 1 : Edits(key, name) / (allowed + 0.5);
        string[] others = name.Split(' ', '-');
        int common = words.Count(word => word.Length > 1 && Array.IndexOf(others, word) >= 0);
        double wordwise = common == 0 ? 1 : 1 - 2.0 * common / (words.Length + others.Length) + 0.2;
        return Math.Min(letters, wordwise);
    }

    /// <summary>Optimal string alignment: insertions, deletions, substitutions and swaps of neighbours.</summary>
    private static int Edits(string a, string b)
    {
        int[,] d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }
        return d[a.Length, b.Length];
    }
}
