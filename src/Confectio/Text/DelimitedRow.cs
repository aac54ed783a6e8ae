namespace Confectio.Text;

/// <summary>One row of a <see cref="DelimitedTable"/>: its line number and its fields, trimmed.</summary>
internal readonly ref struct DelimitedRow
{
    private readonly RowCells _cells;

    public DelimitedRow(RowCells cells, int line)
    {
        _cells = cells;
        Line = line;
    }

    /// <summary>The line of the text, counted from 1.</summary>
    public int Line { get; }

    /// <summary>How many fields the row has.</summary>
    public int Count => _cells.Count;

    /// <summary>A field, trimmed; empty where the row is too short or the column is absent (-1).</summary>
    public ReadOnlySpan<char> this[int column] => (uint)column < (uint)_cells.Count ? _cells[column].Trim() : default;
}
