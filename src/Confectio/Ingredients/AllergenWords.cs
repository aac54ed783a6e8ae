using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// The words of an English list of ingredients that name an allergen (table allergen_words.csv). A word that is in no row names none that is
/// known here, which does not say that there is none.
/// </summary>
internal static class AllergenWords
{
    private const string FileName = "allergen_words.csv";

    private static readonly Lazy<Dictionary<string, Row>> s_words = new(ReadBuiltIn);

    /// <summary>What the words of a text name, each once; and whether nuts are named of which the kind is not said.</summary>
    public static (IReadOnlyList<Allergen> Allergens, bool NutsOfUnknownKind) In(string text)
    {
        List<Allergen> found = [];
        bool nuts = false;
        string[] words = Words(text);
        for (int i = 0; i < words.Length; i++)
        {
            string before = i > 0 ? words[i - 1] : "", behind = i + 1 < words.Length ? words[i + 1] : "";
            // "Gluten-free" names what is not said to be in it. It does not take away what another word says.
            if (behind == "free" || before == "free" || before == "from" && i > 1 && words[i - 2] == "free")
                continue;
            nuts |= words[i] is "nut" or "nuts" && before is not ("brazil" or "pine" or "tiger" or "coco");
            if (words[i] is "nut" or "nuts" && before == "brazil" && !found.Contains(Allergen.Brazil))
                found.Add(Allergen.Brazil);
            if (words[i] == "cream" && behind == "of" || !s_words.Value.TryGetValue(words[i], out Row row) || row.UnlessAfter.Contains(before))
                continue;
            foreach (Allergen allergen in row.Allergens.Where(allergen => !found.Contains(allergen)))
                found.Add(allergen);
        }
        return (found, nuts);
    }

    /// <summary>Reads a table of words.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    internal static Dictionary<string, Row> Read(TextReader text)
    {
        Dictionary<string, Row> words = new(StringComparer.Ordinal);
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            List<Allergen> allergens = [];
            foreach (string word in fields.Required("allergens").Split('|'))
            {
                if (AllergenText.TryRead(word, out Allergen allergen))
                    allergens.Add(allergen);
                else
                    fields.Problem("allergens", $"{Excerpt.Of(word)} is not an allergen");
            }
            HashSet<string> unless = [.. fields.Word("unless_after").Split('|', StringSplitOptions.RemoveEmptyEntries)];
            foreach (string word in fields.Required("words").Split('|'))
            {
                // A word of two rows, as shellfish, has the allergens of both.
                words[word] = words.TryGetValue(word, out Row known)
                    ? new Row([.. known.Allergens.Union(allergens)], [.. known.UnlessAfter.Intersect(unless)]) : new Row(allergens, unless);
            }
        }, ["words", "allergens", "unless_after"]);
        return words;
    }

    private static string[] Words(string text)
    {
        char[] letters = text.ToLowerInvariant().ToCharArray();
        for (int i = 0; i < letters.Length; i++)
        {
            if (!char.IsLetterOrDigit(letters[i]))
                letters[i] = ' ';
        }
        return new string(letters).Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }

    private static Dictionary<string, Row> ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }

    /// <summary>What a word names, and behind which words it does not.</summary>
    internal readonly record struct Row(IReadOnlyList<Allergen> Allergens, HashSet<string> UnlessAfter);
}
