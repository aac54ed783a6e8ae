using System.Globalization;
using nietras.SeparatedValues;

namespace Confectio.Text;

/// <summary>
/// Reads a table with named columns from delimited text: comma, semicolon or tab (found from the header line), quoted
/// fields, an optional byte-order mark, any length, a row at a time.
/// </summary>
internal sealed class DelimitedTable
{
    /// <summary>What a caller does with one row. The row's fields are valid only during the call.</summary>
    public delegate void RowReader(DelimitedRow row);

    private const string Empty = "the table is empty; a header line with the column names was expected";

    private readonly Dictionary<string, int> _columns = new(StringComparer.OrdinalIgnoreCase);

    private DelimitedTable(IReadOnlyList<string> header, int line)
    {
        Header = header;
        Line = line;
        for (int i = 0; i < header.Count; i++)
        {
            if (!_columns.TryAdd(header[i], i) && header[i].Length > 0)
                Repeated ??= header[i];
        }
    }

    /// <summary>The column names as written, trimmed.</summary>
    public IReadOnlyList<string> Header { get; }

    /// <summary>The line the header stands on, counted from 1.</summary>
    public int Line { get; }

    /// <summary>The first column name that stands twice, if one does.</summary>
    public string? Repeated { get; }

    /// <summary>The place of a column, or -1.</summary>
    public int Find(string name) => _columns.TryGetValue(name, out int index) ? index : -1;

    /// <summary>Notes a column that stands twice, and every required one that is missing, on the header's own line.</summary>
    public void RequireColumns(IEnumerable<string> names, ProblemList problems, string hint = "")
    {
        if (Repeated is not null)
            problems.Add(new Problem(Line, Repeated, "the column stands twice"));
        foreach (string name in names)
        {
            if (Find(name) < 0)
                problems.Add(new Problem(Line, name, "the column is missing" + hint));
        }
    }

    /// <summary>Notes that neither of two columns is there.</summary>
    public void RequireEither(string name, string other, ProblemList problems)
    {
        if (Find(name) < 0 && Find(other) < 0)
            problems.Add(new Problem(Line, name, $"the column is missing, and so is {other}; one of them is needed"));
    }

    /// <summary>
    /// Reads a whole table: <paramref name="open"/> is called once with the header and answers the reader of rows, or
    /// <see langword="null"/> to stop.
    /// </summary>
    public static void Read(TextReader text, ProblemList problems, Func<DelimitedTable, RowReader?> open)
    {
        LineGuard guard = new(text);
        using SepReader reader = Sep.Reader(options => options with
        {
            HasHeader = false, // a repeated column name must be our message, not an exception
            Unescape = true,
            Trim = SepTrim.Outer, // a blank before a quoted field is layout, not content
            DisableColCountCheck = true, // a short or a long row is one problem, not the end
            CultureInfo = CultureInfo.InvariantCulture,
        }).From(guard);

        SepCells cells = new(reader);
        RowReader? read = null;
        int line = 1;
        foreach (SepReader.Row row in reader)
        {
            // The parser's own number of the first row is off by one, so the lines are counted from where each row ends.
            int first = line + guard.SkippedLines;
            line = Math.Max(line + 1, row.LineNumberToExcl);
            if (IsBlank(row))
                continue;
            if (read is null)
            {
                read = open(HeaderOf(cells, first));
                if (read is null)
                    return;
                continue;
            }
            Report(guard, first, problems);
            read(new DelimitedRow(cells, first));
        }
        Report(guard, int.MaxValue, problems);
        if (read is null)
            problems.Add(new Problem(1, null, Empty));
    }

    /// <summary>Reads a table of the kind that the assembly carries (<see cref="LineCells"/>), as <see cref="Read"/> does others.</summary>
    public static void ReadCarried(TextReader text, ProblemList problems, Func<DelimitedTable, RowReader?> open)
    {
        LineCells cells = new();
        RowReader? read = null;
        for (int line = 1; text.ReadLine() is string words; line++)
        {
            cells.Take(words);
            if (cells.IsBlank)
                continue;
            if (cells.HasOpenQuote)
                problems.Add(new Problem(line, null, LineFlaws.OpenQuote));
            if (read is not null)
                read(new DelimitedRow(cells, line));
            else if ((read = open(HeaderOf(cells, line))) is null)
                return;
        }
        if (read is null)
            problems.Add(new Problem(1, null, Empty));
    }

    /// <summary>The table whose first row is being read.</summary>
    public static DelimitedTable HeaderOf(RowCells cells, int line)
    {
        string[] header = new string[cells.Count];
        for (int i = 0; i < header.Length; i++)
            header[i] = cells[i].Trim().ToString();
        return new DelimitedTable(header, line);
    }

    private static bool IsBlank(SepReader.Row row) => row.ColCount == 0 || (row.ColCount == 1 && row[0].Span.Trim().IsEmpty);

    /// <summary>The row that the parser stands at.</summary>
    private sealed class SepCells(SepReader reader) : RowCells
    {
        public override int Count => reader.Current.ColCount;

        public override ReadOnlySpan<char> this[int column] => reader.Current[column].Span;
    }

    private static void Report(LineGuard guard, int through, ProblemList problems)
    {
        while (guard.OpenQuotes.TryPeek(out int line) && line <= through)
        {
            guard.OpenQuotes.Dequeue();
            problems.Add(new Problem(line, null, LineFlaws.OpenQuote));
        }
        while (guard.CutLines.TryPeek(out int line) && line <= through)
        {
            guard.CutLines.Dequeue();
            problems.Add(new Problem(line, null, LineFlaws.Cut));
        }
        while (guard.GarbledLines.TryPeek(out int line) && line <= through)
        {
            guard.GarbledLines.Dequeue();
            problems.Add(new Problem(line, null, LineFlaws.Garbled));
        }
    }
}
