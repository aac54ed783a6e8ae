using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients.Names;

/// <summary>
/// One row of unclear_names.csv: a name that means more foods than one, or a food that the table lacks and that looks like one it has.
/// </summary>
internal sealed record UnclearName(string Name, string[] Between, string Reason)
{
    private static readonly Lazy<UnclearName[]> s_all = new(Read);

    public static IReadOnlyList<UnclearName> All => s_all.Value;

    private static UnclearName[] Read()
    {
        List<UnclearName> all = [];
        EmbeddedTable.Read("unclear_names.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add(new UnclearName(fields.Required("name"),
                fields.Word("between").Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
                    fields.Required("reason")));
        });
        return [.. all];
    }
}
