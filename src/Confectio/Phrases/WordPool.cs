namespace Confectio.Phrases;

/// <summary>Words in lower case without making a string for those that readers ask about.</summary>
internal static class WordPool
{
    private const int Longest = 24;

    private static readonly string[] s_known =
    [
        "of", "or", "and", "plus", "for", "to", "if", "as", "the", "a", "x", "each", "extra", "more", "about", "optional", "divided",
            "butter", "sugar", "flour",
        "egg", "eggs", "white", "whites", "yolk", "yolks", "icing", "caster", "granulated", "powdered", "brown", "unsalted", "cream",
            "milk", "water", "salt",
        "vanilla", "cocoa", "with", "in", "at", "large", "small", "medium", "juice", "zest", "taste", "softened", "melted", "sifted",
            "packed", "chopped", "finely",
    ];

    // The words that were met last, at first the usual ones: a reader asks more than once about each word of a line. Threads may overwrite
    // one another's; what is found is compared before it is handed out.
    private static readonly string?[] s_last = Build();

    public static string Lower(ReadOnlySpan<char> word)
    {
        if (word.Length > Longest)
            return word.ToString().ToLowerInvariant();
        Span<char> lower = stackalloc char[Longest];
        lower = lower[..word.Length];
        for (int i = 0; i < word.Length; i++)
            lower[i] = char.IsAsciiLetterUpper(word[i]) ? (char)(word[i] | 0x20) : char.ToLowerInvariant(word[i]);
        int place = Hash(lower);
        string? last = s_last[place];
        return last is not null && lower.SequenceEqual(last) ? last : s_last[place] = lower.ToString();
    }

    private static int Hash(ReadOnlySpan<char> word) => ((word[0] * 31) + (word[^1] * 7) + word.Length + (word.Length > 2 ? word[2] * 131
        : 0)) & 511;

    private static string?[] Build()
    {
        string?[] table = new string?[512];
        foreach (string word in s_known)
            table[Hash(word)] ??= word;
        return table;
    }
}
