using System.Reflection;

namespace Confectio.Text;

/// <summary>Opens the tables that the assembly carries.</summary>
internal static class EmbeddedTable
{
    public static TextReader Open(string fileName) => new StreamReader(OpenStream(fileName));

    /// <summary>The whole table as it stands, in UTF-8.</summary>
    public static byte[] Bytes(string fileName)
    {
        using Stream stream = OpenStream(fileName);
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static Stream OpenStream(string fileName) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream("Confectio.Data." + fileName)
            ?? throw new InvalidOperationException($"The assembly does not carry the table {fileName}.");

    /// <summary>
    /// Reads a whole table as <see cref="DelimitedTable.Read"/> does; <paramref name="open"/> gets the list for its problems too.
    /// </summary>
    /// <exception cref="InvalidOperationException">The table that was built in has a problem.</exception>
    public static void Read(string fileName, Func<DelimitedTable, ProblemList, DelimitedTable.RowReader?> open)
    {
        using TextReader text = Open(fileName);
        Read(text, fileName, open);
    }

    /// <summary>
    /// Reads a text as the table of that name, with its own list of columns and with what is to be checked when all rows are read.
    /// </summary>
    /// <exception cref="InvalidOperationException">The table has a problem.</exception>
    public static void Read(TextReader text, string fileName, Func<DelimitedTable, ProblemList, DelimitedTable.RowReader?> open,
        string[]? columns = null, Action<ProblemList>? end = null)
    {
        ProblemList problems = [];
        DelimitedTable.ReadCarried(text, problems, table =>
        {
            table.RequireColumns(columns ?? [], problems);
            return problems.Count > 0 ? null : open(table, problems);
        });
        if (problems.Count == 0)
            end?.Invoke(problems);
        if (problems.Count > 0)
            throw new InvalidOperationException($"{fileName}: {problems[0]}");
    }
}
