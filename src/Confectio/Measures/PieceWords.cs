using System.Diagnostics.CodeAnalysis;

namespace Confectio.Measures;

/// <summary>
/// The words for counted pieces that the reader knows. The list is closed on purpose: an unknown word in a table is a
/// mistake to report, not a new piece. What a piece weighs is a fact of the ingredient.
/// </summary>
internal static class PieceWords
{
    // Adjectives (a "large" white) do not take an s; nouns do.
    private static readonly string[] s_nouns = ["stick", "pat", "packet", "envelope", "cube", "bar", "sheet", "leaf", "piece", "egg",
        "white", "yolk", "kernel"];
    private static readonly string[] s_sizes = ["small", "medium", "large", "extra large", "jumbo"];

    /// <summary>Every word, in the singular.</summary>
    public static IReadOnlyList<string> All { get; } = [.. s_nouns, .. s_sizes];

    internal static bool TakesPlural(string word) => Array.IndexOf(s_nouns, word) >= 0 && word != "leaf";

    internal static bool TryGet(ReadOnlySpan<char> text, [NotNullWhen(true)] out string? word)
    {
        foreach (string candidate in All)
        {
            if (text.Equals(candidate, StringComparison.OrdinalIgnoreCase)
                || (text.Length == candidate.Length + 1 && (text[^1] | 0x20) == 's' && TakesPlural(candidate)
                    && text[..^1].Equals(candidate, StringComparison.OrdinalIgnoreCase)))
            {
                word = candidate;
                return true;
            }
        }
        word = text.Equals("leaves", StringComparison.OrdinalIgnoreCase) ? "leaf" : null;
        return word is not null;
    }
}
