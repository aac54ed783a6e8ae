using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// By how much foods that were weighed in two packings are heavier in the one than in the other (table packing_ratios.csv): what is known of
/// a packing that nobody weighed, beyond how near it is.
/// </summary>
internal static class PackingRatios
{
    internal const string FileName = "packing_ratios.csv";

    private static readonly Row[] s_rows = ReadBuiltIn();

    /// <summary>The measured ratio from one packing to another; false where fewer than two foods have both.</summary>
    /// <param name="class">The class of food.</param>
    /// <param name="from">The packing that was weighed.</param>
    /// <param name="to">The packing that is asked for.</param>
    /// <param name="steps">What so many steps would widen without any ratio: the least that the class says before a food does.</param>
    /// <param name="logRatio">The logarithm of the mean ratio.</param>
    /// <param name="logUncertainty">How far the next food may be from it, by the rule of figures that disagree (<see cref="FigureSpread"/>).</param>
    /// <param name="foods">How many foods have both.</param>
    public static bool TryGet(IngredientClass @class, Packing from, Packing to, double steps, out double logRatio, out double logUncertainty,
        out int foods)
    {
        foreach (Row row in s_rows)
        {
            bool forth = row.From == from && row.To == to;
            if (row.Class != @class || !forth && !(row.From == to && row.To == from))
                continue;
            logRatio = forth ? row.LogRatio : -row.LogRatio;
            logUncertainty = FigureSpread.OfTheNext(row.Foods.Length, row.LogDeviation, steps);
            foods = row.Foods.Length;
            return true;
        }
        (logRatio, logUncertainty, foods) = (0, 0, 0);
        return false;
    }

    /// <summary>All rows.</summary>
    internal static IReadOnlyList<Row> All => s_rows;

    /// <summary>Reads a table of ratios.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    internal static Row[] Read(TextReader text)
    {
        List<Row> rows = [];
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            IngredientClass @class = fields.Enum<IngredientClass>("class");
            Packing from = ReadPacking(fields, "from"), to = ReadPacking(fields, "to");
            double ratio = fields.RequiredNumber("ratio", 0.05, 20), deviation = fields.RequiredNumber("log_standard_deviation", 0, 2);
            string[] foods = fields.Required("foods").Split('|', StringSplitOptions.RemoveEmptyEntries);
            if (foods.Length < 2)
                fields.Problem("foods", "one food says nothing of how foods differ; two at least are expected");
            if (PackingNearness.Steps(@class, from, to) is null)
                fields.Problem("to", $"{from.ToWord()} says nothing of {to.ToWord()}");
            rows.Add(new Row(@class, from, to, Math.Log(Math.Max(ratio, 0.05)), deviation, foods));
        }, ["class", "from", "to", "ratio", "log_standard_deviation", "foods"]);
        return [.. rows];
    }

    private static Packing ReadPacking(RowFields fields, string column)
    {
        if (!PackingText.TryRead(fields.Required(column), out Packing packing))
            fields.Problem(column, $"{Excerpt.Of(fields.Word(column))} is not a packing");
        return packing;
    }

    private static Row[] ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }

    /// <summary>One pair of packings.</summary>
    internal sealed record Row(IngredientClass Class, Packing From, Packing To, double LogRatio, double LogDeviation, string[] Foods);
}
