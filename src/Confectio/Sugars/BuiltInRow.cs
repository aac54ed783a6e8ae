using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>What every table that the room carries has in its rows.</summary>
internal static class BuiltInRow
{
    public static Provenance ProvenanceOf(DelimitedTable table, DelimitedRow row)
    {
        string kind = row[table.Find("kind")].ToString();
        return EvidenceText.TryRead(kind, out Evidence evidence)
            ? new Provenance(Bibliography.Get(row[table.Find("source")].ToString()), evidence, row[table.Find("locator")].ToString(), row[table.Find("note")].ToString())
            : throw new InvalidOperationException($"'{kind}' is not a kind of evidence.");
    }

    public static void MustBeFine(string table, List<TableProblem> problems)
    {
        if (problems.Count > 0)
            throw new InvalidOperationException($"{table}: {problems[0]}");
    }
}
