namespace Confectio.Phrases;

/// <summary>Eggs, whites and yolks, which are counted by the word that is their name.</summary>
internal static class EggWords
{
    /// <summary>The piece that the first words of a text name; <see langword="null"/> where they name none.</summary>
    /// <param name="text">The text, from the word on.</param>
    /// <param name="length">How many characters the words take, with the space before them.</param>
    public static string? At(ReadOnlySpan<char> text, out int length)
    {
        string? piece = One(text, out length);
        if (piece is "egg" && One(text[length..], out int more) is "white" or "yolk")
        {
            piece = One(text[length..], out more);
            length += more;
        }
        return piece;
    }

    private static string? One(ReadOnlySpan<char> text, out int length)
    {
        int start = 0;
        while (start < text.Length && char.IsWhiteSpace(text[start]))
            start++;
        length = start;
        while (length < text.Length && char.IsLetter(text[length]))
            length++;
        ReadOnlySpan<char> word = text[start..length];
        return Is(word, "egg") ? "egg" : Is(word, "white") ? "white" : Is(word, "yolk") ? "yolk" : null;
    }

    private static bool Is(ReadOnlySpan<char> word, ReadOnlySpan<char> noun) => word.Equals(noun, StringComparison.OrdinalIgnoreCase)
        || word.Length == noun.Length + 1 && (word[^1] | 0x20) == 's' && word[..^1].Equals(noun, StringComparison.OrdinalIgnoreCase);
}
