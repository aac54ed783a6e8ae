using System.Text;

namespace Confectio.Text;

/// <summary>
/// The fields of one line of a table that the assembly carries. Those tables are of one kind (commas, UTF-8, no line break in a field), so
/// they need no parser that finds out what a stranger's text is, and a program that only converts never loads and compiles one.
/// </summary>
internal sealed class LineCells : RowCells
{
    private char[] _text = new char[1024];
    private int[] _starts = new int[64];
    private int[] _ends = new int[64];
    private int _count;

    public override int Count => _count;

    public override ReadOnlySpan<char> this[int column] => _text.AsSpan(_starts[column], _ends[column] - _starts[column]);

    /// <summary>Whether the last field began with a quotation mark that nothing closed.</summary>
    public bool HasOpenQuote { get; private set; }

    /// <summary>Whether there is nothing on the line.</summary>
    public bool IsBlank => _count == 1 && this[0].Trim().IsEmpty;

    /// <summary>Takes up a line of UTF-8.</summary>
    public void Take(ReadOnlySpan<byte> line)
    {
        if (line.Length > _text.Length)
            _text = new char[line.Length];
        Split(Encoding.UTF8.GetChars(line, _text));
    }

    /// <summary>Takes up a line.</summary>
    public void Take(ReadOnlySpan<char> line)
    {
        if (line.Length > _text.Length)
            _text = new char[line.Length];
        line.CopyTo(_text);
        Split(line.Length);
    }

    private void Split(int length)
    {
        _count = 0;
        HasOpenQuote = false;
        int at = 0;
        do
        {
            if (_count == _starts.Length)
            {
                Array.Resize(ref _starts, 2 * _count);
                Array.Resize(ref _ends, 2 * _count);
            }
            int end = _starts[_count] = at;
            if (at < length && _text[at] == '"')
            {
                // The marks are taken out in place; a mark within the field is doubled.
                for (at++; at < length && (_text[at] != '"' || at + 1 < length && _text[at + 1] == '"'); at++)
                {
                    at += _text[at] == '"' ? 1 : 0;
                    _text[end++] = _text[at];
                }
                HasOpenQuote |= at++ >= length;
            }
            Span<char> rest = _text.AsSpan(at, Math.Max(0, length - at));
            int comma = rest.IndexOf(',');
            rest = comma < 0 ? rest : rest[..comma];
            if (end < at)
                rest.CopyTo(_text.AsSpan(end));
            _ends[_count++] = end + rest.Length;
            at += rest.Length;
        }
        while (at++ < length);
    }
}
