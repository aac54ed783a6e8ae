using Confectio.Formulas;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Troubles;

/// <summary>A cause of a trouble: what it is, the signs of it, and what helps.</summary>
public sealed class TroubleCause
{
    private static readonly TroubleCause[] s_all = ReadBuiltIn();

    private TroubleCause(string key, string says, string[] troubles, string[] needs, string remedy, string words, TroubleSign[] signs)
    {
        Key = key;
        Says = says;
        Troubles = troubles;
        Needs = needs;
        Remedy = remedy;
        Words = words;
        Signs = signs;
    }

    /// <summary>All the causes.</summary>
    public static IReadOnlyList<TroubleCause> All => s_all;

    /// <summary>The key, such as <c>cold-fat</c>.</summary>
    public string Key { get; }

    /// <summary>What is the matter, as the end of a sentence.</summary>
    public string Says { get; }

    /// <summary>The signs, the best grounded first: the first that has a figure decides, the others are told beside it.</summary>
    public IReadOnlyList<TroubleSign> Signs { get; }

    /// <summary>What helps, in words; the quantities come from the formula.</summary>
    public string Words { get; }

    /// <summary>The keys of the troubles that it is a cause of.</summary>
    internal IReadOnlyList<string> Troubles { get; }

    /// <summary>How the quantity of the remedy is found: <c>warm-workable</c>, <c>add:liquid</c>; empty where there is none.</summary>
    internal string Remedy { get; }

    private string[] Needs { get; }

    /// <summary>What is the matter.</summary>
    public override string ToString() => Says;

    /// <summary>Whether a formula is one that the cause is about.</summary>
    internal bool IsAbout(TroubleParts parts) =>
        Needs.All(need => need.StartsWith('-') ? !parts.Has(need[1..]) : parts.Has(need))
        && Signs.Any(sign => sign.Figure?.IsOf(parts) ?? true);

    private static TroubleCause[] ReadBuiltIn()
    {
        List<(string Key, string Says, string Troubles, string Needs, string Remedy, string Words, TroubleSign Sign)> rows = [];
        EmbeddedTable.Read("troubles.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string figure = fields.Word("figure"), key = fields.Required("cause");
            if (figure.Length > 0 && TroubleFigure.Find(figure) is null)
                fields.Problem("figure", $"{Excerpt.Of(figure)} is no figure");
            double begins = 0, clear = 0;
            if (figure.Length > 0)
            {
                begins = fields.RequiredNumber("begins", -100, 1000);
                clear = fields.RequiredNumber("clear", -100, 1000);
                if (begins == clear)
                    fields.Problem("clear", "it is where the rule begins; it says which way the figure goes");
            }
            foreach (string need in fields.Word("needs").Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (!TroubleParts.IsKnown(need.TrimStart('-')))
                    fields.Problem("needs", $"{Excerpt.Of(need)} is nothing that a formula has");
            }
            rows.Add((key, fields.Word("says"), fields.Required("troubles"), fields.Word("needs"), fields.Word("remedy"), fields.Word("words"),
                new TroubleSign(TroubleFigure.Find(figure), begins, clear, fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")))));
        });
        // What a cause is stands in the first row of it.
        return
        [
            .. rows.GroupBy(row => row.Key).Select(group => new TroubleCause(group.Key, group.First().Says, group.First().Troubles.Split('|'),
                group.First().Needs.Split(' ', StringSplitOptions.RemoveEmptyEntries), group.First().Remedy, group.First().Words, [.. group.Select(row => row.Sign)])),
        ];
    }
}
