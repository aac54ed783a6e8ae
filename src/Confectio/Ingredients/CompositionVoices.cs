using System.Numerics;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>Why two tables print different figures for a food, as it was judged by reading both.</summary>
internal enum CompositionCause
{
    /// <summary>One holds more water; what else differs for that reason agrees at the same dry matter.</summary>
    Moisture,

    /// <summary>One has more fat, by its name or the standard of its country.</summary>
    Fat,

    /// <summary>What its makers put in.</summary>
    Recipe,

    /// <summary>Kinds, places and harvests of what grew.</summary>
    Variety,

    /// <summary>What is counted, and how: printed as itself in one, the rest to 100 in the other.</summary>
    Counting,
}

/// <summary>What another food table prints for a food of ours.</summary>
/// <param name="Fractions">Its mass fractions by place; null where it does not print one.</param>
/// <param name="Provenance">Where it stands.</param>
/// <param name="Causes">Why the tables differ; empty where they differ little.</param>
/// <param name="Why">The same in a sentence.</param>
internal sealed record CompositionVoice(double?[] Fractions, Provenance Provenance, IReadOnlyList<CompositionCause> Causes, string Why);

/// <summary>
/// What another food table prints for a food of the built-in one (composition_voices.csv), read when a spread first asks.
/// </summary>
internal static class CompositionVoices
{
    private const string FileName = "composition_voices.csv";

    private static readonly string[] s_columns = Constituents.ByPlace(constituent => Constituents.WordOf(constituent).Replace('-',
        '_') + "_percent");

    private static readonly Lazy<Dictionary<string, CompositionVoice>> s_voices = new(ReadBuiltIn);

    /// <summary>All of them by the id of the food, in the order of the table.</summary>
    public static IReadOnlyDictionary<string, CompositionVoice> All => s_voices.Value;

    /// <summary>
    /// By how much the other table has more of some constituents together (a bit for each <see cref="Constituent"/>), as a mass fraction.
    /// What it does not print counts as equal; a food that it does not have, or whose composition is another's, differs by 0.
    /// </summary>
    public static double Difference(Ingredient ingredient, uint constituents)
    {
        // A food of a user's own table may have the id of one of ours; the other voice is about ours.
        if (!s_voices.Value.TryGetValue(ingredient.Id, out CompositionVoice? voice)
            || !IngredientTable.BuiltIn.TryGet(ingredient.Id, out Ingredient? known)
                || !ReferenceEquals(known.Composition, ingredient.Composition))
        {
            return 0;
        }
        double sum = 0;
        for (uint left = constituents; left != 0; left &= left - 1)
        {
            int place = BitOperations.TrailingZeroCount(left);
            sum += (voice.Fractions[place] - ingredient.Composition[Constituents.At(place)]) ?? 0;
        }
        return sum;
    }

    /// <summary>
    /// Whether a voice is far from ours: by 0.5 g in 100 g at least, and by more than the kind of evidence allows (<see
    /// cref="CompositionSpread"/>), so that it widens the spread.
    /// </summary>
    public static bool IsFarApart(Ingredient ingredient, CompositionVoice voice, Constituent constituent)
    {
        double ours = ingredient.Composition[constituent];
        return voice.Fractions[Constituents.PlaceOf(constituent)] is double theirs && Math.Abs(theirs - ours) >= 0.005 - 1e-12
            && Math.Abs(theirs - ours) / Math.Sqrt(2) > CompositionSpread.StandardUncertainty(ingredient, ours);
    }

    /// <summary>Reads a table of other voices, by the id of the food.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    internal static Dictionary<string, CompositionVoice> Read(TextReader text)
    {
        Dictionary<string, CompositionVoice> voices = new(StringComparer.Ordinal);
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            double?[] fractions = new double?[Constituents.Count];
            for (int place = 0; place < fractions.Length; place++)
            {
                // A column that is not there is a constituent that nobody compared.
                if (table.Find(s_columns[place]) >= 0)
                    fractions[place] = fields.Number(s_columns[place], 0, 100) / 100;
            }
            List<CompositionCause> causes = [];
            foreach (string word in fields.Word("cause").Split('|', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                if (EnumWords.TryRead(word, StringComparison.Ordinal, out CompositionCause cause))
                    causes.Add(cause);
                else
                    fields.Problem("cause", EnumWords.NoneOf<CompositionCause>(word));
            }
            if (causes.Count > 0 != fields.Word("why").Length > 0)
                fields.Problem("why", "a cause and why it is taken for one go together");
            Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), "");
            if (!voices.TryAdd(fields.Required("ingredient"), new CompositionVoice(fractions, provenance, causes, fields.Word("why"))))
                fields.Problem("ingredient", $"{Excerpt.Of(fields.Word("ingredient"))} stands twice");
        }, ["ingredient"]);
        return voices;
    }

    private static Dictionary<string, CompositionVoice> ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }
}
