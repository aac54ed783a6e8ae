namespace Confectio.Text;

/// <summary>
/// Stands between a text and the CSV parser so that one bad line costs one line. A parser that follows the quoting rules
/// takes everything after a forgotten quote as one field, to the end of the file; here a quote that is still open at the
/// end of its line is closed there, and a line longer than any table needs is cut. Both are noted for the caller to report.
/// The price: a quoted field cannot hold a line break, which no table of amounts needs.
/// A line with U+FFFD is passed on and noted too: what stood there was no text in the encoding that the caller read with.
/// A byte-order mark, spaces and empty lines before the first line with text are left out: the parser would look for its
/// separator there and, finding none, take the table as one column.
/// </summary>
internal sealed class LineGuard(TextReader inner) : TextReader
{
    /// <summary>Well below the longest row the parser's buffer can hold (16 Mi characters).</summary>
    public const int LongestLine = 4 * 1024 * 1024;

    private readonly char[] _buffer = new char[16 * 1024];
    private int _position;
    private int _filled;
    private bool _started;
    private bool _ended;
    private bool _quoteOpen;
    private bool _afterCarriageReturn;
    private int _lineLength;
    private bool _cut;
    private bool _garbled;
    private int _line = 1;

    /// <summary>How many lines were left out before the first line with text.</summary>
    public int SkippedLines { get; private set; }

    /// <summary>Lines whose quote was closed for them, in order.</summary>
    public Queue<int> OpenQuotes { get; } = new();

    /// <summary>Lines that were cut, in order.</summary>
    public Queue<int> CutLines { get; } = new();

    /// <summary>Lines with a character that stands for bytes that were no text, in order.</summary>
    public Queue<int> GarbledLines { get; } = new();

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read()
    {
        Span<char> one = stackalloc char[1];
        return Read(one) == 0 ? -1 : one[0];
    }

    public override int ReadBlock(Span<char> buffer)
    {
        int total = 0;
        while (total < buffer.Length && Read(buffer[total..]) is int got and > 0)
            total += got;
        return total;
    }

    public override int ReadBlock(char[] buffer, int index, int count) => ReadBlock(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        int written = 0;
        while (written < buffer.Length)
        {
            if (_position == _filled)
            {
                // Hand over what there is rather than wait for a slow stream to fill the caller's buffer.
                if (written > 0)
                    break;
                _filled = _ended ? 0 : inner.Read(_buffer, 0, _buffer.Length);
                _position = 0;
                if (_filled == 0)
                {
                    _ended = true;
                    if (!_quoteOpen)
                        break;
                    buffer[written++] = CloseQuote();
                    break;
                }
            }

            char c = _buffer[_position];
            if (!_started)
            {
                if (c is '\uFEFF' or ' ' or '\n' or '\r')
                {
                    CountLine(c);
                    _position++;
                    continue;
                }
                _started = true;
                SkippedLines = _line - 1;
            }
            if (c is '\n' or '\r')
            {
                if (_quoteOpen)
                {
                    buffer[written++] = CloseQuote();
                    continue;
                }
                CountLine(c);
                _lineLength = 0;
                _cut = false;
                _garbled = false;
            }
            else
            {
                _afterCarriageReturn = false;
                if (_lineLength == LongestLine)
                {
                    SkipRestOfLine();
                    continue;
                }
                _lineLength++;
                _quoteOpen ^= c == '"';
                if (c == '\uFFFD' && !_garbled)
                {
                    _garbled = true;
                    GarbledLines.Enqueue(_line);
                }
            }
            buffer[written++] = c;
            _position++;
        }
        return written;
    }

    // The length stays where it is, so that no line is long enough to count past the largest number and be let in again.
    private void SkipRestOfLine()
    {
        if (!_cut)
            CutLines.Enqueue(_line);
        _cut = true;
        int end = _buffer.AsSpan(_position, _filled - _position).IndexOfAny('\n', '\r');
        _position = end < 0 ? _filled : _position + end;
    }

    private void CountLine(char c)
    {
        if (c == '\r' || (c == '\n' && !_afterCarriageReturn))
            _line++;
        _afterCarriageReturn = c == '\r';
    }

    private char CloseQuote()
    {
        _quoteOpen = false;
        OpenQuotes.Enqueue(_line);
        return '"';
    }
}
