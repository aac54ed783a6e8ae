using Confectio.Measures;

namespace Confectio.Cards;

/// <summary>What a text of a card is taken for before it is read.</summary>
internal enum SourceKind
{
    /// <summary>A line of which its words have to say what it is.</summary>
    Free,

    /// <summary>Said to be an ingredient by its place: a row of a table, a member of structured data.</summary>
    Ingredient,

    /// <summary>Said to be something to do.</summary>
    Instruction,

    /// <summary>The title.</summary>
    Title,

    /// <summary>Said to be a yield: <c>12 cupcakes</c>.</summary>
    Yield,

    /// <summary>No text: from here on lines may be ingredients, for a table of them begins.</summary>
    Opens,

    /// <summary>No text: from here on no line is an ingredient, for a table of parts begins.</summary>
    Closes,

    /// <summary>A blank line, which sets parts of a recipe apart.</summary>
    Blank,
}

/// <summary>
/// A line, a row of a table or a text of structured data, with the place of each of its characters on the card.
/// </summary>
internal sealed class SourceText
{
    private readonly CardDocument _document;
    private readonly int[]? _at;
    private readonly int _offset;
    private readonly string? _path;

    /// <param name="document">The card.</param>
    /// <param name="text">The text, without line ends.</param>
    /// <param name="at">Where each character stands in the document, -1 of what was put in; <see langword="null"/> where only the beginning is known.</param>
    /// <param name="offset">Where it begins.</param>
    /// <param name="kind">What it is taken for.</param>
    /// <param name="path">Its path in JSON.</param>
    public SourceText(CardDocument document, string text, int[]? at, int offset, SourceKind kind, string? path = null)
    {
        (_document, Text, _at, _offset, Kind, _path) = (document, text, at, offset, kind, path);
    }

    public string Text { get; }

    public SourceKind Kind { get; }

    public CardFigure? Percent { get; init; }

    /// <summary>The name of a row that has a percentage and no amount; <see langword="null"/> elsewhere.</summary>
    public string? ShareOf { get; init; }

    /// <summary>Columns of a measuring system that their heading names: amounts that begin from one to the other are its.</summary>
    public IReadOnlyList<(int From, int To, MeasuringSystem System)> Systems { get; init; } = [];

    public CardPlace At(int start, int length)
    {
        int offset = _offset, taken = 0;
        if (_at is not null)
        {
            int first = -1, last = -1;
            for (int i = start; i < Math.Min(start + length, _at.Length); i++)
            {
                if (_at[i] < 0)
                    continue;
                first = first < 0 ? _at[i] : Math.Min(first, _at[i]);
                last = Math.Max(last, _at[i]);
            }
            if (first >= 0)
                (offset, taken) = (first, last - first + 1);
        }
        else if (length > 0 && start + length <= Text.Length
            && _document.Find(Text.AsSpan(start, length), _offset, 2 * Text.Length + 200) is int found and >= 0)
        {
            (offset, taken) = (found, length);
        }
        (int line, int column, int left) = _document.Place(offset);
        return new CardPlace(line, column, Math.Min(taken, left), _path);
    }

    /// <summary>The same text taken for something else.</summary>
    public SourceText As(SourceKind kind) => new(_document, Text, _at, _offset, kind, _path) { Systems = Systems };

    /// <summary>The whole text without its percentage, which is kept beside it.</summary>
    public SourceText Without(int start, int length, CardFigure percent)
    {
        string text = string.Concat(Text.AsSpan(0, start), new string(' ', length), Text.AsSpan(start + length));
        return new SourceText(_document, text, _at, _offset, Kind, _path) { Percent = percent, Systems = Systems };
    }
}

/// <summary>The text of a card, and where its lines begin.</summary>
internal sealed class CardDocument
{
    private readonly List<int> _starts = [0];

    public CardDocument(string text)
    {
        Text = text;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
                _starts.Add(i + 1);
        }
    }

    public string Text { get; }

    public int LineCount => _starts.Count;

    /// <summary>Where a line begins, counted from 0, and how long it is without its end.</summary>
    public (int Start, int Length) Line(int index)
    {
        int start = _starts[index], end = index + 1 < _starts.Count ? _starts[index + 1] : Text.Length;
        while (end > start && Text[end - 1] is '\n' or '\r')
            end--;
        return (start, end - start);
    }

    /// <summary>The line and column of a character, counted from 1, and how many characters are left of its line.</summary>
    public (int Line, int Column, int Left) Place(int offset)
    {
        int index = _starts.BinarySearch(offset);
        index = index < 0 ? ~index - 1 : index;
        (int start, int length) = Line(index);
        return (index + 1, offset - start + 1, Math.Max(0, start + length - offset));
    }

    public int Offset(int line, int column) => line < 1 || line > _starts.Count ? 0 : Math.Min(Text.Length, _starts[line - 1] + Math.Max(0, column - 1));

    /// <summary>Where some words stand from a place on, within so many characters; -1 where they do not.</summary>
    public int Find(ReadOnlySpan<char> words, int from, int within)
    {
        ReadOnlySpan<char> rest = Text.AsSpan(Math.Min(from, Text.Length));
        int at = rest[..Math.Min(rest.Length, within)].IndexOf(words);
        return at < 0 ? -1 : from + at;
    }
}

/// <summary>Puts a text together of pieces of the document and of words of ours, and remembers where each character came from.</summary>
internal sealed class SourceBuilder(CardDocument document)
{
    private readonly System.Text.StringBuilder _text = new();
    private readonly List<int> _at = [];

    public int Length => _text.Length;

    public SourceBuilder Add(int offset, int length)
    {
        for (int i = offset; i < offset + length; i++)
        {
            _text.Append(document.Text[i]);
            _at.Add(i);
        }
        return this;
    }

    public void Add(char character, int at)
    {
        _text.Append(character);
        _at.Add(at);
    }

    public SourceBuilder Say(string words)
    {
        _text.Append(words);
        for (int i = 0; i < words.Length; i++)
            _at.Add(-1);
        return this;
    }

    public SourceText ToText(SourceKind kind, int offset, CardFigure? percent = null, IReadOnlyList<(int, int, MeasuringSystem)>? systems = null, string? shareOf = null) =>
        new(document, _text.ToString(), [.. _at], offset, kind) { Percent = percent, Systems = systems ?? [], ShareOf = shareOf };
}
