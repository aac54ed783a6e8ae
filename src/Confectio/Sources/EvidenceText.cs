using Confectio.Text;

namespace Confectio.Sources;

/// <summary>The words that stand for an <see cref="Evidence"/> in the data tables and in machine output.</summary>
public static class EvidenceText
{
    // By the number of the kind.
    private static readonly string[] s_words = EnumWords.All<Evidence>('-');

    /// <summary>The table word of a kind of evidence, such as <c>common-practice</c>.</summary>
    /// <param name="evidence">The kind.</param>
    /// <returns>The word.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="evidence"/> is not a defined value.</exception>
    public static string ToWord(this Evidence evidence) => s_words[(int)Guard.Defined(evidence)];

    /// <summary>What a range of such a figure means: a judged one is no range of sources.</summary>
    internal static SpreadBasis BasisOfRange(this Evidence evidence) =>
        evidence is Evidence.Estimated or Evidence.CommonPractice or Evidence.FromMemory ? SpreadBasis.Judged : SpreadBasis.Sources;

    /// <summary>Reads a table word; case does not matter.</summary>
    /// <param name="word">The word, such as <c>from-memory</c>.</param>
    /// <param name="evidence">The kind, where the word is one.</param>
    /// <returns>Whether the word is one of the seven.</returns>
    public static bool TryRead(ReadOnlySpan<char> word, out Evidence evidence)
    {
        for (int i = 0; i < s_words.Length; i++)
        {
            if (word.Equals(s_words[i], StringComparison.OrdinalIgnoreCase))
            {
                evidence = (Evidence)i;
                return true;
            }
        }
        evidence = default;
        return false;
    }
}
