using System.Reflection;

namespace Confectio.Text;

/// <summary>Opens the tables that the assembly carries.</summary>
internal static class EmbeddedTable
{
    public static TextReader Open(string fileName)
    {
        Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Confectio.Data." + fileName)
            ?? throw new InvalidOperationException($"The assembly does not carry the table {fileName}.");
        return new StreamReader(stream);
    }

    /// <summary>Reads a whole table as <see cref="DelimitedTable.Read"/> does; <paramref name="open"/> gets the list for its problems too.</summary>
    /// <exception cref="InvalidOperationException">The table that was built in has a problem.</exception>
    public static void Read(string fileName, Func<DelimitedTable, ProblemList, DelimitedTable.RowReader?> open)
    {
        ProblemList problems = [];
        using TextReader text = Open(fileName);
        DelimitedTable.Read(text, problems, table => open(table, problems));
        if (problems.Count > 0)
            throw new InvalidOperationException($"{fileName}: {problems[0]}");
    }
}
