namespace Confectio.Text;

/// <summary>
/// A table as the assembly carries it, with where each row begins, so that a row is read when somebody asks for it. No line is blank, which
/// a test holds.
/// </summary>
internal sealed class CarriedRows
{
    private readonly byte[] _text;
    private readonly int[] _ends;

    public CarriedRows(string fileName, byte[] text)
    {
        FileName = fileName;
        _text = text;
        List<int> ends = [];
        for (int at = 0; at < _text.Length; at = ends[^1] + 1)
        {
            int length = _text.AsSpan(at).IndexOf((byte)'\n');
            ends.Add(length < 0 ? _text.Length : at + length);
        }
        _ends = ends.ToArray();
        LineCells cells = new();
        Take(0, cells);
        Table = DelimitedTable.HeaderOf(cells, 1);
    }

    public string FileName { get; }

    /// <summary>The header.</summary>
    public DelimitedTable Table { get; }

    /// <summary>How many rows stand below the header.</summary>
    public int Count => _ends.Length - 1;

    /// <summary>A row, counted from 0. Its fields are valid until the cells take up another.</summary>
    public DelimitedRow Row(int row, LineCells cells)
    {
        Take(row + 1, cells);
        return new DelimitedRow(cells, row + 2);
    }

    private void Take(int line, LineCells cells)
    {
        int start = line == 0 ? 0 : _ends[line - 1] + 1;
        cells.Take(_text.AsSpan(start, _ends[line] - start));
    }
}
