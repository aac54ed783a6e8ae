using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Confectio.Text;

/// <summary>
/// The members of one object of a JSON text. Each member is named where it is read, once: whatever has not been asked for when the object
/// is done is a mistake, with the names that were asked for and are near. What is missing or wrong is noted with its path, and reading goes
/// on.
/// </summary>
internal sealed class JsonFields
{
    private readonly JsonFields? _parent;
    private readonly string? _name;
    private readonly int _index;
    private readonly JsonElement _element;
    private readonly JsonMistakes _mistakes;
    private readonly int _firstAsked;
    private readonly long _before;
    private bool _isGivenUp;

    private JsonFields(JsonFields? parent, string? name, int index, JsonElement element, JsonMistakes mistakes)
    {
        (_parent, _name, _index, _element, _mistakes, _before) = (parent, name, index, element, mistakes, mistakes.Count);
        _firstAsked = mistakes.Asked.Count;
    }

    /// <summary>The outermost object.</summary>
    public static JsonFields Root(JsonElement element, JsonMistakes mistakes) => new(null, null, -1, element, mistakes);

    /// <summary>Whether nothing is wrong with this object, as far as it has been read.</summary>
    public bool IsGood => _mistakes.Count == _before;

    /// <summary>Whether it is still worth looking for what may have been meant by a name.</summary>
    public bool WantsNearNames => _mistakes.WantsNearNames;

    /// <summary>The path of a member, or of the object itself.</summary>
    public string PathOf(string? member)
    {
        StringBuilder path = new();
        AppendTo(path);
        if (member is not null)
            JsonWalker.AppendMember(path, member);
        return path.ToString();
    }

    /// <summary>Reads the object, and then notes the members that nobody asked for.</summary>
    public T? Read<T>(Func<JsonFields, T?> read) where T : class
    {
        if (_element.ValueKind is not (JsonValueKind.Object or JsonValueKind.Null))
        {
            Wrong(null, "an object is expected", ProblemCodes.WrongType);
            return null;
        }
        T? made = read(this);
        if (!_isGivenUp && _element.ValueKind == JsonValueKind.Object)
            RefuseOthers();
        // What is asked for of the object around this one comes next.
        _mistakes.Asked.RemoveRange(_firstAsked, _mistakes.Asked.Count - _firstAsked);
        return made;
    }

    /// <summary>Says no more of this object: it is not of a form that is known.</summary>
    public void GiveUp() => _isGivenUp = true;

    /// <summary>Notes a mistake at a member, or at the object itself.</summary>
    public void Wrong(string? member, string message, string code = ProblemCodes.WrongValue) => _mistakes.Add(this, member, code, message);

    /// <summary>Notes that a member is missing.</summary>
    public void Missing(string member, string? expected = null) =>
        Wrong(null, $"{member} is missing{(expected is null ? "" : $"; {expected}")}", ProblemCodes.Missing);

    /// <summary>Notes that a member is missing where nothing stands there.</summary>
    public void Need(string member, string? expected = null)
    {
        if (!Has(member))
            Missing(member, expected);
    }

    /// <summary>Whether the version is the one that is read; otherwise nothing more is said of the object.</summary>
    public bool IsVersion(string member, int version)
    {
        long before = _mistakes.Count;
        int? stated = Whole(member, string.Create(CultureInfo.InvariantCulture, $"the version is expected, which is {version}"));
        if (stated == version)
            return true;
        if (stated is not null)
            Wrong(member, string.Create(CultureInfo.InvariantCulture, $"version {stated} was read and {version} is expected"),
                ProblemCodes.WrongVersion);
        else if (_mistakes.Count == before)
            Missing(member, string.Create(CultureInfo.InvariantCulture,
                $"an object that begins with {{\"{member}\": {version} is expected"));
        GiveUp();
        return false;
    }

    /// <summary>Whether something stands at a member, be it right or wrong.</summary>
    public bool Has(string member) => TryFind(member, out _);

    /// <summary>A text, where there is one.</summary>
    public string? Text(string member, string expected = "a text is expected") =>
        Find(member, JsonValueKind.String, expected) is JsonElement value ? value.GetString() : null;

    /// <summary>A text that must be there.</summary>
    public string? NeededText(string member, string expected = "a text is expected")
    {
        Need(member);
        return Text(member, expected);
    }

    /// <summary>A number, where there is one.</summary>
    public double? Number(string member) => Find(member, JsonValueKind.Number, "a number is expected") is JsonElement value
        ? value.GetDouble() : null;

    /// <summary>A number that must be there.</summary>
    public double? NeededNumber(string member)
    {
        Need(member);
        return Number(member);
    }

    /// <summary>A whole number, where there is one.</summary>
    public int? Whole(string member, string expected = "a whole number is expected")
    {
        if (Find(member, JsonValueKind.Number, expected) is not JsonElement value)
            return null;
        if (value.TryGetInt32(out int whole))
            return whole;
        Wrong(member, expected, ProblemCodes.WrongType);
        return null;
    }

    /// <summary>A whole number that must be there.</summary>
    public int? NeededWhole(string member)
    {
        Need(member);
        return Whole(member);
    }

    /// <summary>Whether something is so; <see langword="false"/> where nothing is said.</summary>
    public bool Flag(string member)
    {
        if (!TryFind(member, out JsonElement value))
            return false;
        if (value.ValueKind is not (JsonValueKind.True or JsonValueKind.False))
            Wrong(member, "true or false is expected", ProblemCodes.WrongType);
        return value.ValueKind == JsonValueKind.True;
    }

    /// <summary>A value of an enum by its word, such as <c>top-edge</c>; so much where it is missing.</summary>
    public T Word<T>(string member, T missing) where T : struct, Enum => Word(member, missing, Enum.GetValues<T>());

    /// <summary>One of some values of an enum by its word; so much where it is missing.</summary>
    public T Word<T>(string member, T missing, T[] known) where T : struct, Enum
    {
        if (Text(member) is not string text)
            return missing;
        if (EnumWords.TryRead(text, StringComparison.Ordinal, out T value) && Array.IndexOf(known, value) >= 0)
            return value;
        Wrong(member, EnumWords.NoneOf(text, known), ProblemCodes.UnknownName);
        return missing;
    }

    /// <summary>What is made of an object; <see langword="null"/> where there is none or it is wrong.</summary>
    public T? Object<T>(string member, Func<JsonFields, T?> read) where T : class =>
        TryFind(member, out JsonElement value) ? new JsonFields(this, member, -1, value, _mistakes).Read(read) : null;

    /// <summary>
    /// What is made of the objects of an array; what is wrong is left out, and of an array that is too long all is, so that nobody is told
    /// of a million mistakes.
    /// </summary>
    public List<T> List<T>(string member, int most, Func<JsonFields, T?> read) where T : class
    {
        List<T> all = [];
        foreach (JsonFields fields in Elements(member, most))
        {
            if (fields._element.ValueKind == JsonValueKind.Null)
                fields.Wrong(null, "null was read and an object is expected", ProblemCodes.WrongType);
            else if (fields.Read(read) is T made)
                all.Add(made);
        }
        return all;
    }

    /// <summary>What is made of the objects of an array that must be there with one at least.</summary>
    public List<T> NeededList<T>(string member, int most, Func<JsonFields, T?> read) where T : class
    {
        if (!TryFind(member, out JsonElement value))
            Missing(member);
        else if (value.ValueKind == JsonValueKind.Array && value.GetArrayLength() is int count && (count == 0 || count > most))
        {
            Wrong(member, string.Create(CultureInfo.InvariantCulture, $"there are {count} {member}; from 1 to {most} are expected"),
                ProblemCodes.TooMany);
            return [];
        }
        return List(member, most, read);
    }

    /// <summary>The texts of an array, each with its place.</summary>
    public IEnumerable<(string Text, JsonFields At)> Texts(string member, int most)
    {
        foreach (JsonFields fields in Elements(member, most))
        {
            if (fields._element.ValueKind == JsonValueKind.String)
                yield return (fields._element.GetString()!, fields);
            else
                fields.Wrong(null, "a text is expected", ProblemCodes.WrongType);
        }
    }

    /// <summary>The pairs of numbers of an array; so many more than are told may stand there.</summary>
    public List<(double First, double Second)> Pairs(string member, int most, int slack, string expected)
    {
        List<(double, double)> all = [];
        foreach (JsonFields fields in Elements(member, most, slack))
        {
            JsonElement pair = fields._element;
            if (pair.ValueKind == JsonValueKind.Array && pair.GetArrayLength() == 2 && pair[0].ValueKind == JsonValueKind.Number
                && pair[1].ValueKind == JsonValueKind.Number)
                all.Add((pair[0].GetDouble(), pair[1].GetDouble()));
            else
                fields.Wrong(null, expected, ProblemCodes.WrongType);
        }
        return all;
    }

    /// <summary>How many elements an array has; 0 where there is none.</summary>
    public int Count(string member) => TryFind(member, out JsonElement value) && value.ValueKind == JsonValueKind.Array
        ? value.GetArrayLength() : 0;

    /// <summary>A sum over the objects of an array, before anything is made of them; nothing is noted.</summary>
    public long Sum(string member, Func<JsonFields, long> of)
    {
        long sum = 0;
        if (TryFind(member, out JsonElement array) && array.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement element in array.EnumerateArray())
                sum += of(new JsonFields(this, member, -1, element, new JsonMistakes()));
        }
        return sum;
    }

    /// <summary>What can be made of an object without a mistake; <see langword="null"/> with a mistake where it is refused.</summary>
    public T? Make<T>(Func<T> make, Func<ArgumentException, string?>? member = null) where T : class
    {
        if (!IsGood)
            return null;
        try
        {
            return make();
        }
        catch (ArgumentException e)
        {
            Refused(e, member?.Invoke(e));
            return null;
        }
    }

    /// <summary>Notes what was refused, without the name of the parameter that the platform adds.</summary>
    public void Refused(ArgumentException e, string? member = null) => Wrong(member, Guard.ReasonOf(e));

    private IEnumerable<JsonFields> Elements(string member, int most, int slack = 0)
    {
        if (Find(member, JsonValueKind.Array, "an array is expected") is not JsonElement array)
            yield break;
        int count = array.GetArrayLength(), index = 0;
        if (count > most + slack)
        {
            Wrong(member, string.Create(CultureInfo.InvariantCulture, $"there are {count}; at most {most} are expected"),
                ProblemCodes.TooMany);
            yield break;
        }
        foreach (JsonElement element in array.EnumerateArray())
            yield return new JsonFields(this, member, index++, element, _mistakes);
    }

    private JsonElement? Find(string member, JsonValueKind kind, string expected)
    {
        if (!TryFind(member, out JsonElement value))
            return null;
        if (value.ValueKind == kind)
            return value;
        Wrong(member, expected, ProblemCodes.WrongType);
        return null;
    }

    // A null is as if nothing stood there.
    private bool TryFind(string member, out JsonElement value)
    {
        List<string> asked = _mistakes.Asked;
        if (asked.IndexOf(member, _firstAsked) < 0)
            asked.Add(member);
        _mistakes.Heard?.Invoke(PathOf(null), member);
        value = default;
        return _element.ValueKind == JsonValueKind.Object && _element.TryGetProperty(member, out value)
            && value.ValueKind != JsonValueKind.Null;
    }

    private void RefuseOthers()
    {
        foreach (JsonProperty property in _element.EnumerateObject())
        {
            if (IsAskedFor(property))
                continue;
            string near = WantsNearNames ? NearTo(property.Name) : "";
            Wrong(property.Name, $"there is no such member{near}", ProblemCodes.UnknownMember);
        }
    }

    private bool IsAskedFor(JsonProperty property)
    {
        for (int i = _firstAsked; i < _mistakes.Asked.Count; i++)
        {
            if (property.NameEquals(_mistakes.Asked[i]))
                return true;
        }
        return false;
    }

    private string NearTo(string name)
    {
        if (name.Length > EditDistance.Longest)
            return "";
        string[] near = [.. _mistakes.Asked.Skip(_firstAsked).ToArray().Where(asked => !Has(asked))
            .Select(asked => (asked, Edits: EditDistance.Of(name, asked)))
            .Where(one => one.Edits <= Math.Max(1, Math.Max(name.Length, one.asked.Length) / 3))
            .OrderBy(one => one.Edits).Take(3).Select(one => one.asked)];
        return near.Length == 0 ? "" : $"; near names: {string.Join(", ", near)}";
    }

    private void AppendTo(StringBuilder path)
    {
        if (_parent is null)
        {
            path.Append('$');
            return;
        }
        _parent.AppendTo(path);
        JsonWalker.AppendMember(path, _name!);
        if (_index >= 0)
            path.Append('[').Append(_index).Append(']');
    }
}
