
using System.Buffers;
using Confectio.Text;

namespace Confectio.Layouts;

/// <summary>Takes a text apart into lines of cells, each with its place. One pass, a line at a time, whatever the text is.</summary>
internal static class DocumentLines
{
    private const int MostCells = 256;

    /// <summary>No column of names is narrower.</summary>
    private const int LeastColumn = 8;

    private static readonly SearchValues<char> s_rule = SearchValues.Create("|-:+= \t");

    /// <summary>The lines of a text, blank ones too.</summary>
    public static IEnumerable<TableLine> Whole(string text)
    {
        foreach ((int line, int start, int length) in Lines(text))
            yield return new TableLine(line, [Cell(text, line, start, start, length)]) { Flaw = FlawOf(text, start, length) };
    }

    public static IEnumerable<TableLine> Of(string text, DocumentForm form) => form switch
    {
        DocumentForm.Comma => Parted(text, ','),
        DocumentForm.Semicolon => Parted(text, ';'),
        DocumentForm.Tab => Parted(text, '\t'),
        DocumentForm.Bar => Barred(text),
        DocumentForm.Blanks => Spaced(text),
        _ => Whole(text),
    };

    private static string? FlawOf(string text, int start, int length)
    {
        int end = start + length;
        if (length == LineGuard.LongestLine && end < text.Length && text[end] is not ('\n' or '\r'))
            return LineFlaws.Cut;
        return text.AsSpan(start, length).Contains('\uFFFD') ? LineFlaws.Garbled : null;
    }

    private static IEnumerable<(int Line, int Start, int Length)> Lines(string text)
    {
        int line = 1, start = 0;
        while (start < text.Length)
        {
            int end = text.AsSpan(start).IndexOfAny('\n', '\r');
            int length = end < 0 ? text.Length - start : end;
            yield return (line, start, Math.Min(length, LineGuard.LongestLine));
            start += length + 1;
            if (start < text.Length && text[start - 1] == '\r' && text[start] == '\n')
                start++;
            line++;
        }
    }

    // Quotes are closed at the end of their line: a forgotten one costs a line, not the rest of the table.
    private static IEnumerable<TableLine> Parted(string text, char separator)
    {
        List<TableCell> cells = [];
        foreach ((int line, int lineStart, int length) in Lines(text))
        {
            cells.Clear();
            string? open = null;
            int position = lineStart, end = lineStart + length;
            while (position <= end && cells.Count < MostCells)
            {
                int start = position;
                while (position < end && text[position] is ' ' or '\u00A0')
                    position++;
                if (position < end && text[position] == '"')
                {
                    int opened = ++position;
                    bool doubled = false;
                    while (position < end && (text[position] != '"' || (position + 1 < end && text[position + 1] == '"')))
                    {
                        doubled |= text[position] == '"';
                        position += text[position] == '"' ? 2 : 1;
                    }
                    TableCell cell = Cell(text, line, lineStart, opened, Math.Min(position, end) - opened);
                    if (position >= end)
                        open = LineFlaws.OpenQuote;
                    cells.Add(doubled ? cell with { Text = cell.Text.Replace("\"\"", "\"", StringComparison.Ordinal) } : cell);
                    int next = position < end ? text.AsSpan(position, end - position).IndexOf(separator) : -1;
                    position = next < 0 ? end + 1 : position + next + 1;
                }
                else
                {
                    int next = text.AsSpan(position, end - position).IndexOf(separator);
                    int stop = next < 0 ? end : position + next;
                    cells.Add(Cell(text, line, lineStart, start, stop - start));
                    position = stop + 1;
                }
            }
            yield return new TableLine(line, [.. cells]) { Flaw = open ?? FlawOf(text, lineStart, length) };
        }
    }

    private static IEnumerable<TableLine> Barred(string text)
    {
        List<TableCell> cells = [];
        foreach ((int line, int lineStart, int length) in Lines(text))
        {
            ReadOnlySpan<char> whole = text.AsSpan(lineStart, length).Trim();
            if (IsRule(whole))
                continue;
            cells.Clear();
            int position = lineStart, end = lineStart + length;
            if (whole.StartsWith("|"))
                position = text.IndexOf('|', lineStart) + 1;
            if (whole.EndsWith("|") && whole.Length > 1)
                end = text.LastIndexOf('|', end - 1, end - lineStart);
            while (position <= end && cells.Count < MostCells)
            {
                int next = position;
                while (next < end && (text[next] != '|' || text[next - 1] == '\\'))
                    next++;
                cells.Add(Cell(text, line, lineStart, position, next - position));
                position = next + 1;
            }
            yield return new TableLine(line, [.. cells]) { Flaw = FlawOf(text, lineStart, length) };
        }
    }

    private static IEnumerable<TableLine> Spaced(string text)
    {
        List<TableCell> cells = [];
        int least = int.MaxValue;
        foreach ((_, int lineStart, int length) in Lines(text))
        {
            if (!text.AsSpan(lineStart, length).IsWhiteSpace())
                least = Math.Min(least, Indent(text, lineStart, length));
        }
        foreach ((int line, int lineStart, int length) in Lines(text))
        {
            cells.Clear();
            int end = lineStart + length, start = lineStart;
            for (int i = lineStart; i < end && cells.Count < MostCells; i++)
            {
                if (text[i] == '\t' || (text[i] == ' ' && i + 1 < end && text[i + 1] is ' ' or '\t'))
                {
                    cells.Add(Cell(text, line, lineStart, start, i - start));
                    while (i + 1 < end && text[i + 1] is ' ' or '\t')
                        i++;
                    start = i + 1;
                }
            }
            if (start < end)
                cells.Add(Cell(text, line, lineStart, start, end - start));
            // Blanks before the first word are layout, not a column, but for a heading with nothing above the names: "         cup   grams".
            if (cells.Count > 1 && cells[0].IsBlank && (Indent(text, lineStart, length) - least < LeastColumn || HasDigit(text, lineStart, length)))
                cells.RemoveAt(0);
            yield return new TableLine(line, [.. cells]) { Flaw = FlawOf(text, lineStart, length) };
        }
    }

    private static int Indent(string text, int start, int length)
    {
        ReadOnlySpan<char> line = text.AsSpan(start, length);
        return length - line.TrimStart().Length;
    }

    private static bool HasDigit(string text, int start, int length) => text.AsSpan(start, length).IndexOfAnyInRange('0', '9') >= 0;

    /// <summary>The line below the heading of a table in Markdown.</summary>
    public static bool IsRule(ReadOnlySpan<char> line) => line.Length >= 3 && !line.ContainsAnyExcept(s_rule) && (line.Contains("--",
        StringComparison.Ordinal) || line.Contains("|-", StringComparison.Ordinal) || line.Contains("-|", StringComparison.Ordinal));

    // The marks of emphasis of Markdown, and blanks, are no part of what stands there.
    private static TableCell Cell(string text, int line, int lineStart, int start, int length)
    {
        int end = Math.Max(start, start + length);
        while (start < end && IsRim(text[start]))
            start++;
        while (end > start && IsRim(text[end - 1]))
            end--;
        string cell = start == end ? "" : text[start..end];
        return new TableCell(line, start - lineStart + 1, cell);
    }

    private static bool IsRim(char c) => char.IsWhiteSpace(c) || c is '_' or '`' or '\u200B' or '\uFEFF';
}
