using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>The words for a packing in tables and kitchens.</summary>
public static class PackingText
{
    private static readonly string[] s_words = EnumWords.All<Packing>('-');

    private static readonly (string Word, Packing Packing)[] s_synonyms =
    [
        ("level", Packing.Levelled), ("leveled", Packing.Levelled), ("fluid", Packing.Levelled), ("unwhipped", Packing.Levelled),
        ("unsifted", Packing.Spooned), ("spooned and levelled", Packing.Spooned), ("spooned and leveled", Packing.Spooned),
        ("dipped", Packing.Scooped), ("dip and sweep", Packing.Scooped),
        ("unpacked", Packing.Loose), ("not packed", Packing.Loose), ("loosely packed", Packing.Loose), ("lightly packed", Packing.Loose),
        ("firmly packed", Packing.Packed), ("tightly packed", Packing.Packed),
        ("soft", Packing.Softened), ("halves", Packing.Halved), ("shelled", Packing.Whole), ("puréed", Packing.Pureed),
            ("flakes", Packing.Flaked), ("shredded", Packing.Grated),
        ("mini", Packing.Miniature), ("miniatures", Packing.Miniature),
    ];

    /// <summary>How many packings there are.</summary>
    internal static int Count => s_words.Length;

    /// <summary>Every word that is read.</summary>
    internal static IEnumerable<string> Words => s_words.Concat(s_synonyms.Select(synonym => synonym.Word));

    /// <summary>The table word of a packing, such as <c>sifted</c>.</summary>
    /// <param name="packing">The packing.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="packing"/> is not a defined value.</exception>
    public static string ToWord(this Packing packing) => s_words[(int)Guard.Defined(packing)];

    /// <summary>
    /// Whether it is something done to the food that may be done before or after it is measured, unlike how the measure is filled.
    /// </summary>
    internal static bool IsDone(this Packing packing) => packing is Packing.Sifted or Packing.Melted or Packing.Whipped
        or Packing.Halved or Packing.Chopped or Packing.Sliced
        or Packing.Slivered or Packing.Ground or Packing.Grated or Packing.Pureed;

    /// <summary>Reads a table word or a kitchen synonym, such as <c>unsifted</c> for spooned; case does not matter.</summary>
    /// <param name="text">The text.</param>
    /// <param name="packing">The packing, where the text is one.</param>
    /// <returns>Whether the text is a packing.</returns>
    public static bool TryRead(ReadOnlySpan<char> text, out Packing packing)
    {
        text = text.Trim();
        for (int i = 0; i < s_words.Length; i++)
        {
            if (text.Equals(s_words[i], StringComparison.OrdinalIgnoreCase))
            {
                packing = (Packing)i;
                return true;
            }
        }
        foreach ((string word, Packing meaning) in s_synonyms)
        {
            if (text.Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                packing = meaning;
                return true;
            }
        }
        packing = default;
        return false;
    }
}
