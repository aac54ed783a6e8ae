using System.Text.RegularExpressions;

namespace Confectio.Cards;

/// <summary>A part of a line between bars, tabs, leaders or wide blanks.</summary>
internal readonly record struct CardCell(int Start, int Length)
{
    public int End => Start + Length;
}

/// <summary>How the cells of a line are set apart.</summary>
internal enum CellForm
{
    None,
    Bars,
    Tabs,
    Leaders,
    Blanks,
    Page,
}

/// <summary>Cuts a line into cells.</summary>
internal static partial class CardCells
{
    private const int MostCells = 24;

    public static CellForm Cut(string line, List<CardCell> cells)
    {
        cells.Clear();
        if (Bars(line, cells) && cells.Count > 1)
            return CellForm.Bars;
        foreach ((CellForm form, Regex parts) in (ReadOnlySpan<(CellForm, Regex)>)[(CellForm.Tabs, Tab()), (CellForm.Leaders, Leader()), (CellForm.Blanks, Blank())])
        {
            cells.Clear();
            int from = 0;
            foreach (ValueMatch match in parts.EnumerateMatches(line))
            {
                Add(line, from, match.Index, cells);
                from = match.Index + match.Length;
                if (cells.Count >= MostCells)
                    break;
            }
            Add(line, from, line.Length, cells);
            if (cells.Count > 1)
                return form;
        }
        return CellForm.None;
    }

    private static readonly System.Buffers.SearchValues<char> s_rule = System.Buffers.SearchValues.Create("-–—=_|:+*. \t");

    /// <summary>Whether a line only rules: dashes, equals signs, bars.</summary>
    public static bool IsRule(ReadOnlySpan<char> line) => line.Trim() is { Length: > 1 } rule && !rule.ContainsAnyExcept(s_rule);

    // An empty cell between two bars stays, so that the columns keep their order.
    private static bool Bars(string line, List<CardCell> cells)
    {
        int from = 0, bars = 0;
        for (int i = 0; i <= line.Length; i++)
        {
            if (i < line.Length && (line[i] != '|' || (i > 0 && line[i - 1] == '\\')))
                continue;
            bars += i < line.Length ? 1 : 0;
            if (cells.Count < MostCells && !((from == 0 || i == line.Length) && line.AsSpan(from, i - from).Trim().IsEmpty))
                cells.Add(Plain(line, Trimmed(line, from, i)));
            from = i + 1;
        }
        return bars > 0;
    }

    // Bold and italic of Markdown stand round a cell and say nothing.
    private static CardCell Plain(string line, CardCell cell)
    {
        int from = cell.Start, to = cell.End;
        while (from < to && line[from] is '*' or '_' or '`')
            from++;
        while (to > from && line[to - 1] is '*' or '_' or '`')
            to--;
        return Trimmed(line, from, to);
    }

    private static void Add(string line, int from, int to, List<CardCell> cells)
    {
        CardCell cell = Trimmed(line, from, to);
        if (cell.Length > 0)
            cells.Add(cell);
    }

    private static CardCell Trimmed(string line, int from, int to)
    {
        while (from < to && char.IsWhiteSpace(line[from]))
            from++;
        while (to > from && char.IsWhiteSpace(line[to - 1]))
            to--;
        return new CardCell(from, to - from);
    }

    [GeneratedRegex(@"\t+", RegexOptions.CultureInvariant)]
    private static partial Regex Tab();

    [GeneratedRegex(@"\s?(?:\.{3,}|…{1,}|(?:\. ){3,}|_{3,})\s?", RegexOptions.CultureInvariant)]
    private static partial Regex Leader();

    [GeneratedRegex(@"(?<=\S)[ \u00A0]{2,}(?=\S)", RegexOptions.CultureInvariant)]
    private static partial Regex Blank();
}
