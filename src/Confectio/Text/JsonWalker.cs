using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Confectio.Text;

/// <summary>
/// Walks through a JSON text value by value, and knows the path of each. At what it refuses it stops, and says why and where.
/// </summary>
internal ref struct JsonWalker
{
    private readonly Stack<Container> _open = new();
    private readonly ReadOnlySpan<byte> _utf8;
    private readonly int _maxDepth;
    private Utf8JsonReader _reader;
    private int? _stop;

    public JsonWalker(ReadOnlySpan<byte> utf8, int maxDepth)
    {
        _utf8 = utf8;
        _maxDepth = maxDepth;
        // One more than is allowed, so that we come to see it.
        _reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = maxDepth + 1 });
    }

    /// <summary>Where the present token begins, or what is no token, in bytes from the start.</summary>
    public readonly int Offset => _stop ?? (int)_reader.TokenStartIndex;

    /// <summary>Why it stopped before the end; <see langword="null"/> where it did not.</summary>
    public string? Refusal { get; private set; }

    /// <summary>Whether the present token is the name of a member.</summary>
    public readonly bool IsName => _reader.TokenType == JsonTokenType.PropertyName;

    /// <summary>Whether the present token is a value, or begins one.</summary>
    public readonly bool IsValue => _reader.TokenType is not (JsonTokenType.PropertyName or JsonTokenType.EndObject
        or JsonTokenType.EndArray);

    /// <summary>What the present token is.</summary>
    public readonly JsonTokenType Kind => _reader.TokenType;

    /// <summary>The present text or number as it reads; of another token its characters.</summary>
    public readonly string Value => _reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName ? _reader.GetString()! : Encoding.UTF8.GetString(_reader.ValueSpan);

    /// <summary>The path of the present value, such as <c>$.lines[2].grams</c>.</summary>
    public readonly string Path
    {
        get
        {
            StringBuilder path = new("$");
            // A container that has only just been opened names no member of its own yet.
            foreach (Container container in _open.Reverse())
                container.AppendTo(path);
            return path.ToString();
        }
    }

    /// <summary>Goes to the next token; false at the end, and where it stopped.</summary>
    public bool Read()
    {
        try
        {
            if (!_reader.Read())
                return false;
        }
        catch (JsonException e)
        {
            // The reader of the platform knows the place; its words are for programmers, and another version has others.
            _stop = OffsetOf(e.LineNumber ?? 0, e.BytePositionInLine ?? 0);
            return Refuse(Rune.DecodeFromUtf8(_utf8[_stop.Value..], out Rune rune, out _) == System.Buffers.OperationStatus.Done
                ? $"{Excerpt.Of(rune.ToString())} cannot stand here in JSON" : "the text ends before it is complete");
        }
        switch (_reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                return Text() is string name && (_open.Peek().TryEnter(name) || Refuse($"the member {Excerpt.Of(name)} stands twice"));
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                _open.Pop();
                return true;
        }
        if (_open.TryPeek(out Container? parent))
            parent.CountValue();
        switch (_reader.TokenType)
        {
            case JsonTokenType.StartObject or JsonTokenType.StartArray when _open.Count == _maxDepth:
                return Refuse(string.Create(CultureInfo.InvariantCulture,
                    $"it goes deeper than {_maxDepth} objects or arrays in one another"));
            case JsonTokenType.StartObject or JsonTokenType.StartArray:
                _open.Push(new Container(_reader.TokenType == JsonTokenType.StartObject));
                break;
            case JsonTokenType.Number when !_reader.TryGetDouble(out double number) || !double.IsFinite(number):
                return Refuse("the number is too large");
            case JsonTokenType.String when _reader.ValueIsEscaped:
                return Text() is not null;
        }
        return true;
    }

    /// <summary>Puts a member behind a path: with a point, or in brackets where its name is none of ours.</summary>
    public static void AppendMember(StringBuilder path, string name)
    {
        if (name is { Length: > 0 and <= 40 } && name.All(char.IsAsciiLetterOrDigit))
            path.Append('.').Append(name);
        else
            path.Append('[').Append(Excerpt.Of(name)).Append(']');
    }

    private string? Text()
    {
        try
        {
            return _reader.GetString()!;
        }
        catch (InvalidOperationException)
        {
            Refuse("the escape of half a character stands alone");
            return null;
        }
    }

    private bool Refuse(string why)
    {
        Refusal = why;
        return false;
    }

    private readonly int OffsetOf(long line, long byteInLine)
    {
        int offset = 0;
        for (; line > 0 && _utf8[offset..].IndexOf((byte)'\n') is int end and >= 0; line--)
            offset += end + 1;
        return offset + (int)byteInLine;
    }

    /// <summary>An object or array whose end has not come: the names it had so far, or how many values.</summary>
    private sealed class Container(bool isObject)
    {
        private readonly HashSet<string>? _names = isObject ? new HashSet<string>(StringComparer.Ordinal) : null;
        private string? _name;
        private int _index = -1;

        public bool TryEnter(string name)
        {
            _name = name;
            return _names!.Add(name);
        }

        public void CountValue() => _index++;

        public void AppendTo(StringBuilder path)
        {
            if (_names is null && _index >= 0)
                path.Append('[').Append(_index).Append(']');
            else if (_name is not null)
                AppendMember(path, _name);
        }
    }
}
