using System.Numerics;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// What another food table prints for a food of the built-in one (composition_voices.csv), read when a spread first asks.
/// </summary>
internal static class CompositionVoices
{
    private const string FileName = "composition_voices.csv";

    private static readonly string[] s_columns = Constituents.ByPlace(constituent => Constituents.WordOf(constituent).Replace('-',
        '_') + "_percent");

    private static readonly Lazy<Dictionary<string, double?[]>> s_voices = new(ReadBuiltIn);

    /// <summary>
    /// By how much the other table has more of some constituents together (a bit for each <see cref="Constituent"/>), as a mass fraction.
    /// What it does not print counts as equal; a food that it does not have, or whose composition is another's, differs by 0.
    /// </summary>
    public static double Difference(Ingredient ingredient, uint constituents)
    {
        // A food of a user's own table may have the id of one of ours; the other voice is about ours.
        if (!s_voices.Value.TryGetValue(ingredient.Id, out double?[]? voice)
            || !IngredientTable.BuiltIn.TryGet(ingredient.Id, out Ingredient? known)
                || !ReferenceEquals(known.Composition, ingredient.Composition))
        {
            return 0;
        }
        double sum = 0;
        for (uint left = constituents; left != 0; left &= left - 1)
        {
            int place = BitOperations.TrailingZeroCount(left);
            sum += (voice[place] - ingredient.Composition[Constituents.At(place)]) ?? 0;
        }
        return sum;
    }

    /// <summary>Reads a table of other voices, by the id of the food.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    internal static Dictionary<string, double?[]> Read(TextReader text)
    {
        Dictionary<string, double?[]> voices = new(StringComparer.Ordinal);
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            double?[] voice = new double?[Constituents.Count];
            for (int place = 0; place < voice.Length; place++)
            {
                // A column that is not there is a constituent that nobody compared.
                if (table.Find(s_columns[place]) >= 0)
                    voice[place] = fields.Number(s_columns[place], 0, 100) / 100;
            }
            if (!voices.TryAdd(fields.Required("ingredient"), voice))
                fields.Problem("ingredient", $"{Excerpt.Of(fields.Word("ingredient"))} stands twice");
        }, ["ingredient"]);
        return voices;
    }

    private static Dictionary<string, double?[]> ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }
}
