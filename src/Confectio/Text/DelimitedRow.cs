using nietras.SeparatedValues;

namespace Confectio.Text;

/// <summary>One row of a <see cref="DelimitedTable"/>: its line number and its fields, trimmed.</summary>
internal readonly ref struct DelimitedRow
{
    private readonly SepReader.Row _row;

    public DelimitedRow(SepReader.Row row, int line)
    {
        _row = row;
        Line = line;
    }

    /// <summary>The line of the text, counted from 1.</summary>
    public int Line { get; }

    /// <summary>How many fields the row has.</summary>
    public int Count => _row.ColCount;

    /// <summary>A field, trimmed; empty where the row is too short or the column is absent (-1).</summary>
    public ReadOnlySpan<char> this[int column] =>
        (uint)column < (uint)_row.ColCount ? _row[column].Span.Trim() : default;
}
