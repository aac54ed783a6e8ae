using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>What one careful cook to the next brings, by class and packing: the table spreads.csv, all estimates.</summary>
internal static class TechniqueSpreads
{
    private const string FileName = "spreads.csv";

    // By class; of each what holds for every packing, and behind it what is known of one.
    private static readonly double?[][] s_spreads = ReadBuiltIn();

    /// <summary>The standard uncertainty of the logarithm of a density from technique alone.</summary>
    public static double For(IngredientClass @class, Packing packing) =>
        s_spreads[(int)@class][1 + (int)packing] ?? s_spreads[(int)@class][0]!.Value;

    /// <summary>Reads a table that has a row for every class, and rows for packings that differ from it.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    internal static double?[][] Read(TextReader text)
    {
        string[] classes = EnumWords.All<IngredientClass>('-');
        double?[][] spreads = new double?[classes.Length][];
        for (int i = 0; i < spreads.Length; i++)
            spreads[i] = new double?[1 + PackingText.Count];
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            IngredientClass @class = fields.Enum<IngredientClass>("class");
            string word = fields.Word("packing");
            int place = 0;
            if (PackingText.TryRead(word, out Packing named))
                place = 1 + (int)named;
            else if (word.Length > 0)
                fields.Problem("packing", $"{Excerpt.Of(word)} is not a packing");
            double known = fields.RequiredNumber("log_standard_uncertainty", 0, 1);
            if (spreads[(int)@class][place] is null)
                spreads[(int)@class][place] = known;
            else
                fields.Problem("class", $"{Excerpt.Of(fields.Word("class"))} stands twice with this packing");
        }, ["class", "packing", "log_standard_uncertainty"], problems =>
        {
            for (int i = 0; i < classes.Length; i++)
            {
                if (spreads[i][0] is null)
                    problems.Add(new Problem(1, "class", $"there is no row of {classes[i]} for every packing"));
            }
        });
        return spreads;
    }

    private static double?[][] ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }
}
