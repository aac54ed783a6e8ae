using System.Text;
using System.Text.Json;

namespace Confectio.Text;

/// <summary>
/// Walks through a JSON text value by value, and knows the path of each. What it refuses is a <see cref="JsonException"/> without a
/// place.
/// </summary>
internal ref struct JsonWalker
{
    private readonly Stack<Container> _open = new();
    private Utf8JsonReader _reader;

    public JsonWalker(ReadOnlySpan<byte> utf8, int maxDepth)
    {
        _reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = maxDepth });
    }

    /// <summary>Where the present token begins, in bytes from the start.</summary>
    public readonly long Offset => _reader.TokenStartIndex;

    /// <summary>Whether the present token is the name of a member.</summary>
    public readonly bool IsName => _reader.TokenType == JsonTokenType.PropertyName;

    /// <summary>Whether the present token is a value, or begins one.</summary>
    public readonly bool IsValue => _reader.TokenType is not (JsonTokenType.PropertyName or JsonTokenType.EndObject
        or JsonTokenType.EndArray);

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

    /// <summary>Goes to the next token; false at the end.</summary>
    public bool Read()
    {
        if (!_reader.Read())
            return false;
        switch (_reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                string name = Text();
                if (!_open.Peek().TryEnter(name))
                    throw new JsonException($"the member {Excerpt.Of(name)} stands twice");
                return true;
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                _open.Pop();
                return true;
        }
        if (_open.TryPeek(out Container? parent))
            parent.CountValue();
        switch (_reader.TokenType)
        {
            case JsonTokenType.StartObject or JsonTokenType.StartArray:
                _open.Push(new Container(_reader.TokenType == JsonTokenType.StartObject));
                break;
            case JsonTokenType.Number when !_reader.TryGetDouble(out double number) || !double.IsFinite(number):
                throw new JsonException("the number is too large");
            case JsonTokenType.String when _reader.ValueIsEscaped:
                Text();
                break;
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

    private readonly string Text()
    {
        try
        {
            return _reader.GetString()!;
        }
        catch (InvalidOperationException)
        {
            throw new JsonException("the escape of half a character stands alone");
        }
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
