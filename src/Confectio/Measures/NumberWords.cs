namespace Confectio.Measures;

/// <summary>The words for small numbers and for parts of one. Case does not matter.</summary>
internal static class NumberWords
{
    private static readonly string[] s_numbers = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
        "twelve"];

    /// <summary>One to twelve; "a" and "an" are one.</summary>
    public static bool TryNumber(ReadOnlySpan<char> word, out int value)
    {
        value = 0;
        if (word.Equals("a", StringComparison.OrdinalIgnoreCase) || word.Equals("an", StringComparison.OrdinalIgnoreCase))
            value = 1;
        for (int i = 0; i < s_numbers.Length && value == 0; i++)
        {
            if (word.Equals(s_numbers[i], StringComparison.OrdinalIgnoreCase))
                value = i + 1;
        }
        return value != 0;
    }

    /// <summary>How many of the named part make one: two for "half" and "halves".</summary>
    public static bool TryPart(ReadOnlySpan<char> word, out int parts)
    {
        if (word.Length > 4 && (word[^1] | 0x20) == 's')
            word = word[..^1];
        parts = word.Equals("half", StringComparison.OrdinalIgnoreCase) || word.Equals("halve", StringComparison.OrdinalIgnoreCase) ? 2
            : word.Equals("third", StringComparison.OrdinalIgnoreCase) ? 3
            : word.Equals("quarter", StringComparison.OrdinalIgnoreCase) ? 4
            : word.Equals("eighth", StringComparison.OrdinalIgnoreCase) ? 8
            : 0;
        return parts != 0;
    }
}
