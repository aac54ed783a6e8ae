using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>Checks the header of a data table.</summary>
internal static class TableColumns
{
    public static bool Check(DelimitedTable table, IEnumerable<string> required, IEnumerable<string> numbers, ProblemList problems)
    {
        long before = problems.Total;
        table.RequireColumns(required, problems);
        // A misspelt column of numbers would read as "has none of it": that must not pass in silence.
        foreach (string name in table.Header)
        {
            if (name.EndsWith("_percent", StringComparison.OrdinalIgnoreCase) && !numbers.Contains(name, StringComparer.OrdinalIgnoreCase))
                problems.Add(new Problem(table.Line, name, $"the column is not known; expected: {string.Join(", ", numbers)}"));
        }
        return problems.Total == before;
    }
}
