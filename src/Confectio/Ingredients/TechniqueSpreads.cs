using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>What one careful cook to the next brings, by class and packing: the table spreads.csv, all estimates.</summary>
internal static class TechniqueSpreads
{
    private const string FileName = "spreads.csv";

    private static readonly Dictionary<(IngredientClass Class, Packing? Packing), double> s_spreads = ReadBuiltIn();

    /// <summary>The standard uncertainty of the logarithm of a density from technique alone.</summary>
    public static double For(IngredientClass @class, Packing packing) =>
        s_spreads.TryGetValue((@class, packing), out double named) ? named : s_spreads[(@class, null)];

    /// <summary>Reads a table that has a row for every class, and rows for packings that differ from it.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    internal static Dictionary<(IngredientClass Class, Packing? Packing), double> Read(TextReader text)
    {
        Dictionary<(IngredientClass Class, Packing? Packing), double> spreads = [];
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            IngredientClass @class = fields.Enum<IngredientClass>("class");
            string word = fields.Word("packing");
            Packing? packing = null;
            if (PackingText.TryRead(word, out Packing named))
                packing = named;
            else if (word.Length > 0)
                fields.Problem("packing", $"{Excerpt.Of(word)} is not a packing");
            if (!spreads.TryAdd((@class, packing), fields.RequiredNumber("log_standard_uncertainty", 0, 1)))
                fields.Problem("class", $"{Excerpt.Of(fields.Word("class"))} stands twice with this packing");
        }, ["class", "packing", "log_standard_uncertainty"], problems =>
        {
            foreach (IngredientClass @class in Enum.GetValues<IngredientClass>().Where(@class => !spreads.ContainsKey((@class, null))))
                problems.Add(new Problem(1, "class", $"there is no row of {EnumWords.Of(@class, '-')} for every packing"));
        });
        return spreads;
    }

    private static Dictionary<(IngredientClass Class, Packing? Packing), double> ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }
}
