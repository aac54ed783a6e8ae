using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients.Names;

/// <summary>Numbers the words of names and descriptors, and takes a text apart into them.</summary>
internal sealed class NameWords
{
    /// <summary>What more tokens have is a sentence, and no name.</summary>
    public const int MostTokens = 40;

    /// <summary>The words that part alternatives.</summary>
    private const string Or = "or";

    private static readonly Lazy<(string Written, string[] Reads)[]> s_spellings = new(ReadSpellings);

    private static readonly string[] s_lengths = ["cm", "mm", "inches", "inch", "in.", "\""];

    private readonly List<string> _words = [""];
    private readonly List<uint> _letters = [0];
    private string?[] _keys = new string?[2048];
    private ushort[][] _ids = new ushort[2048][];
    private int _used;

    /// <summary>Numbers the spellings of spellings.csv.</summary>
    public NameWords()
    {
        foreach ((string written, string[] reads) in s_spellings.Value)
            Put(written, [.. reads.Select(Number)]);
        OrId = Number(Or);
        AndId = Number("and");
        ThenId = Number("then");
        ButId = Number("but");
        PercentId = Number("%");
        // What no word is spelt.
        DegreeId = Number("\u00B0C");
        LengthId = Number("1 cm");
    }

    public ushort OrId { get; }

    public ushort AndId { get; }

    public ushort ThenId { get; }

    public ushort ButId { get; }

    public ushort PercentId { get; }

    /// <summary>Any temperature.</summary>
    public ushort DegreeId { get; }

    /// <summary>Any length.</summary>
    public ushort LengthId { get; }

    /// <summary>Every word that has a number, as it is spelt here.</summary>
    public IReadOnlyList<string> All => _words;

    /// <summary>Which letters each of them has, as <see cref="LettersOf"/> says.</summary>
    public IReadOnlyList<uint> Letters => _letters;

    /// <summary>
    /// Which letters a word has, a bit each; some share one. A slip of the finger takes away one of them at most, and adds one at most.
    /// </summary>
    public static uint LettersOf(ReadOnlySpan<char> word)
    {
        uint letters = 0;
        foreach (char c in word)
            letters |= 1u << (c & 31);
        return letters;
    }

    /// <summary>Takes a text apart. New words get numbers only where <paramref name="learn"/> is set.</summary>
    /// <returns>How many tokens, or -1 where there are more than a name has.</returns>
    public int Read(ReadOnlySpan<char> text, Span<NameToken> tokens, bool learn = false)
    {
        int count = 0, at = 0;
        Span<char> word = stackalloc char[WordFold.Longest + 4];
        while (at < text.Length)
        {
            char c = text[at];
            if (WordFold.Of(c, out _) != '\0')
            {
                int start = at;
                if (Figure(text[at..], out ushort figure) is int taken and > 0)
                {
                    at += taken;
                    if (!Add(new NameToken(NameTokenKind.Word, figure, (short)start, (short)taken), tokens, ref count))
                        return -1;
                    continue;
                }
                int length = Word(text, ref at, word);
                if (!AddWord(word[..length], length > WordFold.Longest, start, at - start, tokens, ref count, learn))
                    return -1;
                continue;
            }
            at++;
            NameTokenKind? kind = Mark(text, at - 1);
            bool ok = kind switch
            {
                null when c is '%' => AddWord("%", false, at - 1, 1, tokens, ref count, learn),
                null when c is '&' or '+' => AddWord("and", false, at - 1, 1, tokens, ref count, learn),
                null when IsIgnored(c) => true,
                null => AddWord([], true, at - 1, 1, tokens, ref count, learn),
                NameTokenKind mark => Add(new NameToken(mark, mark == NameTokenKind.Slash ? OrId : (ushort)0, (short)(at - 1), 1), tokens,
                    ref count),
            };
            if (!ok)
                return -1;
        }
        return count;
    }

    /// <summary>
    /// How long a temperature (40 °C) or a length (1 cm) is that stands here; 0 where none does. Any of them is one word.
    /// </summary>
    private int Figure(ReadOnlySpan<char> text, out ushort word)
    {
        int at = 0;
        word = LengthId;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || at > 0 && text[at] is '.' or ',' or '/' or '-' or '\u2013'))
            at++;
        if (at == 0)
            return 0;
        while (at < text.Length && text[at] is ' ' or '\u00A0' or '\u202F')
            at++;
        ReadOnlySpan<char> unit = text[at..];
        if (!unit.IsEmpty && unit[0] is '\u00B0' or '\u00BA')
        {
            int letter = unit.Length > 1 && unit[1] is ' ' ? 2 : 1;
            word = DegreeId;
            return letter < unit.Length && unit[letter] is 'C' or 'F' && Ends(unit, letter + 1) ? at + letter + 1 : 0;
        }
        foreach (string length in s_lengths)
        {
            if (unit.StartsWith(length, StringComparison.OrdinalIgnoreCase) && Ends(unit, length.Length))
                return at + length.Length;
        }
        return 0;
    }

    private static bool Ends(ReadOnlySpan<char> text, int at) => at >= text.Length || !char.IsLetterOrDigit(text[at]);

    /// <summary>
    /// The end of a word: letters, or digits with a decimal point between. Apostrophes and points in it, and the slash of A/P, are only
    /// left out.
    /// </summary>
    private static int Word(ReadOnlySpan<char> text, ref int at, Span<char> word)
    {
        bool digits = char.IsAsciiDigit(text[at]);
        int length = 0;
        for (; at < text.Length; at++)
        {
            char c = text[at], f = WordFold.Of(c, out char second);
            if (f == '\0')
            {
                if (IsAccent(c))
                    continue;
                if (at + 1 >= text.Length)
                    break;
                char next = text[at + 1];
                // "A/P flour": two single letters with a slash are one abbreviation.
                if (c is '/' && length == 1 && !digits && WordFold.Of(next, out _) != '\0' && !char.IsAsciiDigit(next)
                    && (at + 2 >= text.Length || WordFold.Of(text[at + 2], out _) == '\0'))
                    continue;
                if (digits ? c is '.' or ',' && char.IsAsciiDigit(next) : c is '.' or '\'' or '\u2019' or '\u02BC' or '`' or '\u00AD'
                    && WordFold.Of(next, out _) != '\0' && !char.IsAsciiDigit(next))
                {
                    if (!digits)
                        continue;
                    f = '.';
                }
                else
                {
                    break;
                }
            }
            else if (char.IsAsciiDigit(f) != digits)
            {
                break;
            }
            if (length <= WordFold.Longest)
                word[length++] = f;
            if (second != '\0' && length <= WordFold.Longest)
                word[length++] = second;
        }
        return length;
    }

    private bool AddWord(ReadOnlySpan<char> word, bool isUnknown, int start, int length, Span<NameToken> tokens, ref int count, bool learn)
    {
        ReadOnlySpan<ushort> ids = isUnknown ? default : Find(word, learn);
        if (ids.IsEmpty)
            return Add(new NameToken(NameTokenKind.Word, 0, (short)start, (short)length), tokens, ref count);
        foreach (ushort id in ids)
        {
            if (!Add(new NameToken(id == OrId ? NameTokenKind.Slash : NameTokenKind.Word, id, (short)start, (short)length), tokens,
                ref count))
                return false;
        }
        return true;
    }

    private static bool Add(NameToken token, Span<NameToken> tokens, ref int count)
    {
        if (count >= Math.Min(MostTokens, tokens.Length))
            return false;
        tokens[count++] = token;
        return true;
    }

    private static NameTokenKind? Mark(ReadOnlySpan<char> text, int at)
    {
        switch (text[at])
        {
            case '(' or '[' or '{':
                return NameTokenKind.Open;
            case ')' or ']' or '}':
                return NameTokenKind.Close;
            case '/' or '\\':
                return NameTokenKind.Slash;
            case ',' or ';' or ':' or '|':
                return NameTokenKind.Comma;
            // A hyphen joins words; a dash with a blank beside it parts them.
            case '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212':
                bool joins = at > 0 && at + 1 < text.Length && !char.IsWhiteSpace(text[at - 1]) && !char.IsWhiteSpace(text[at + 1]);
                return joins ? null : NameTokenKind.Comma;
            default:
                return null;
        }
    }

    /// <summary>Blanks, footnote marks, bullets, quotation marks and accents written apart say nothing of the food.</summary>
    private static bool IsIgnored(char c) => char.IsWhiteSpace(c) || IsAccent(c)
        || c is '*' or '.' or '\'' or '"' or '`' or '#' or '-' or '_' or '\u00B4'
        or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212'
        or '\u2018' or '\u2019' or '\u201C' or '\u201D' or '\u201E' or '\u02BC' or '\u00AB' or '\u00BB'
        or '\u2020' or '\u2021' or '\u00A7' or '\u00B6' or '\u00AE' or '\u2122' or '\u00A9' or '\u00B9' or '\u00B2' or '\u00B3' or '\u00B0'
        or (>= '\u2070' and <= '\u2079') or '\u2022' or '\u00B7' or '\u25CF' or '\u25AA' or '\u25E6' or '\u2023' or '\u2026'
        or '\u200B' or '\u200C' or '\u200D' or '\u2060' or '\uFEFF' or '\u00AD';

    private static bool IsAccent(char c) => c is >= '\u0300' and <= '\u036F';

    /// <summary>The numbers of a folded word, by its singular and its spelling; none where it is new.</summary>
    private ReadOnlySpan<ushort> Find(ReadOnlySpan<char> word, bool learn)
    {
        Span<char> singular = stackalloc char[WordFold.Longest + 1];
        word.CopyTo(singular);
        singular = singular[..WordFold.Singular(singular[..word.Length])];
        int place = Place(singular);
        if (_keys[place] is not null)
            return _ids[place];
        return learn ? new ReadOnlySpan<ushort>([Number(singular.ToString())]) : default;
    }

    private ushort Number(string word)
    {
        int place = Place(word);
        if (_keys[place] is not null)
            return _ids[place][0];
        ushort id = checked((ushort)_words.Count);
        _words.Add(word);
        _letters.Add(LettersOf(word));
        Put(word, [id]);
        return id;
    }

    private void Put(string word, ushort[] ids)
    {
        if (_used * 2 >= _keys.Length)
            Grow();
        int place = Place(word);
        if (_keys[place] is null)
            _used++;
        _keys[place] = word;
        _ids[place] = ids;
    }

    private void Grow()
    {
        (string?[] keys, ushort[][] ids) = (_keys, _ids);
        _keys = new string?[keys.Length * 2];
        _ids = new ushort[keys.Length * 2][];
        for (int i = 0; i < keys.Length; i++)
        {
            if (keys[i] is not string word)
                continue;
            int place = Place(word);
            _keys[place] = word;
            _ids[place] = ids[i];
        }
    }

    private int Place(ReadOnlySpan<char> word)
    {
        uint hash = 2166136261;
        foreach (char c in word)
            hash = (hash ^ c) * 16777619;
        int mask = _keys.Length - 1, place = (int)(hash ^ hash >> 15) & mask;
        while (_keys[place] is string known && !word.SequenceEqual(known))
            place = place + 1 & mask;
        return place;
    }

    private static (string, string[])[] ReadSpellings()
    {
        List<(string, string[])> all = [];
        EmbeddedTable.Read("spellings.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add((fields.Required("written"), fields.Required("reads").Split(' ')));
        });
        return [.. all];
    }
}
