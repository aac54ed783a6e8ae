namespace Confectio.Ingredients.Names;

/// <summary>Folds the letters of a word and its plural, the same in every culture.</summary>
internal static class WordFold
{
    /// <summary>Longer words are in no name.</summary>
    public const int Longest = 40;

    // The letters from U+00C0 to U+017F without their accents; a blank is a letter of two, or a sign.
    private const string Plain =
        "aaaaaa ceeeeiiiidnooooo ouuuuy  aaaaaa ceeeeiiiidnooooo ouuuuy yaaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiii  jjkkkllllll  "
            + "llnnnnnn nnoooooo  rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

    /// <summary>
    /// The letter in lower case without its accent, and a second one where it is written with two (œ); '\0' for what is no letter or digit.
    /// </summary>
    public static char Of(char c, out char second)
    {
        second = '\0';
        if (c < 0x80)
            return c is >= 'a' and <= 'z' or >= '0' and <= '9' ? c : c is >= 'A' and <= 'Z' ? (char)(c | 0x20) : '\0';
        if (c is >= '\u00C0' and <= '\u017F' && Plain[c - 0xC0] is char plain and not ' ')
            return plain;
        switch (c)
        {
            case 'Æ' or 'æ':
                second = 'e';
                return 'a';
            case 'Œ' or 'œ':
                second = 'e';
                return 'o';
            case 'ß':
                second = 's';
                return 's';
            // Superscripts are digits to the framework, and footnotes here.
            default:
                return char.IsLetter(c) ? char.ToLowerInvariant(c) : '\0';
        }
    }

    /// <summary>
    /// How long a folded word is in the singular; its last letter is changed where need be. English by its endings: what it does to a word
    /// that is no plural (molasses) it does wherever that word stands.
    /// </summary>
    public static int Singular(Span<char> word)
    {
        int length = word.Length;
        if (length < 4 || word[^1] != 's' || word[^2] is 's' or 'u' or 'i')
            return length;
        ReadOnlySpan<char> read = word;
        if (length > 4 && read.EndsWith("ies", StringComparison.Ordinal))
        {
            word[^3] = 'y';
            return length - 2;
        }
        return length > 4 && (read.EndsWith("sses", StringComparison.Ordinal) || read.EndsWith("shes", StringComparison.Ordinal)
            || read.EndsWith("ches", StringComparison.Ordinal) || read.EndsWith("xes", StringComparison.Ordinal)
            || read.EndsWith("oes", StringComparison.Ordinal)) ? length - 2 : length - 1;
    }
}
