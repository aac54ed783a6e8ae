using System.Text;
using System.Text.RegularExpressions;
using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>A statement of a typed line: a name, a measure, and what it weighs.</summary>
internal readonly record struct LineStatement(string Name, FoundAmount Measure, List<FoundAmount> Masses);

/// <summary>
/// Reads a line as a person types it, whichever of name, measure and weight comes first: <c>1 cup sugar = 200 g</c>,
/// <c>Butter: 1 cup is 227 g</c>, <c>200 g flour ... 1 2/3 cups</c>, <c>flour, 4 cups to the pound</c>, <c>1 cup (200 g / 7 oz) sugar</c>.
/// </summary>
internal static partial class TypedLine
{
    private const string Signs = " \t\u00A0.…·•_=:;,-–—|/~≈→>*\"†‡";

    // What stands between a food and its amounts, and is no part of its name.
    private static readonly string[] s_leading = ["is", "are", "equal", "equals", "weigh", "weighs", "make", "makes", "give", "gives",
        "about", "approximately",
        "approx", "around", "roughly", "circa", "c", "ca", "or", "of", "to", "the", "and", "in", "each", "per", "at"];

    private static readonly string[] s_trailing = ["is", "are", "equal", "equals", "weigh", "weighs", "make", "makes", "give", "gives",
        "about", "approximately",
        "approx", "around", "roughly", "circa", "ca", "or", "of", "to", "at", "and"];

    /// <summary>A line with its "to the pound" written as the amount that it is.</summary>
    public static string Plain(string text) => Labels().Replace(PerPound().Replace(text, match => " = 1 " + match.Groups["unit"].Value),
        match => new string(' ', match.Length));

    /// <summary>The statements of a line.</summary>
    /// <param name="text">The line without bullets, <see cref="Plain"/>.</param>
    /// <param name="reading">The decimal mark.</param>
    /// <param name="found">The amounts that stand in it.</param>
    public static List<LineStatement> Read(string text, AmountReading reading, List<FoundAmount> found)
    {
        found.Clear();
        AmountFinder.Find(text, reading, found);
        List<LineStatement> statements = [];
        BracketState brackets = new(text);
        int from = 0;
        for (int i = 0; i < found.Count;)
        {
            int first = i;
            bool measure = false, mass = false;
            int end = i;
            // A statement goes on until it has a measure and a weight and the next amount is a measure again.
            while (end < found.Count && !(measure && mass && found[end].IsMeasure && !brackets.IsOpenAt(found[end].Start)))
            {
                measure |= found[end].IsMeasure;
                mass |= !found[end].IsMeasure;
                end++;
            }
            int until = end < found.Count ? Border(text, found, end, nameFirst: IsNameFirst(text, from, found[first].Start)) : text.Length;
            if (Make(text, from, until, found, first, end) is { } statement)
                statements.Add(statement);
            from = until;
            i = end;
        }
        return statements;
    }

    /// <summary>What a line without a whole statement has of one.</summary>
    public static (string Name, FoundAmount? Measure, List<FoundAmount> Masses)? Incomplete(string text, List<FoundAmount> found)
    {
        if (!found.Exists(one => !one.IsBare))
            return null;
        int measure = found.FindIndex(one => one.IsMeasure);
        return (Name(text, 0, text.Length, found, 0, found.Count), measure < 0 ? null : found[measure], found.FindAll(one => one.IsMass));
    }

    private static bool IsNameFirst(string text, int from, int amount) => Name(text, from, amount, [], 0, 0).Length > 0;

    // Where the next statement begins: before its name, where names come first, and at its amount, where amounts do.
    private static int Border(string text, List<FoundAmount> found, int next, bool nameFirst)
    {
        int last = found[next - 1].End, start = found[next].Start;
        if (!nameFirst)
            return start;
        int sign = text.AsSpan(last, start - last).IndexOfAny(";|");
        return sign < 0 ? last : last + sign + 1;
    }

    private static LineStatement? Make(string text, int from, int until, List<FoundAmount> found, int first, int end)
    {
        FoundAmount? measure = null;
        List<FoundAmount> masses = [];
        for (int i = first; i < end; i++)
        {
            if (found[i].IsMass)
                masses.Add(found[i]);
            else if (found[i].IsMeasure)
                measure ??= found[i];
        }
        // "1 cup sugar = 200": the unit is that of the whole sheet. A number elsewhere is part of the name.
        for (int i = first; i < end && masses.Count == 0 && measure is not null; i++)
        {
            if (found[i].IsBare && (IsAfterSign(text, found[i].Start) || IsLastBehind(text, found, i))
                && (i + 1 == end || found[i + 1].IsMeasure))
                masses.Add(found[i]);
        }
        // "1/2 lb butter = 227 g": the first is what is weighed.
        if (measure is null && masses.Count > 1 && first == 0)
        {
            measure = masses[0];
            masses.RemoveAt(0);
        }
        string name = Name(text, from, until, found, first, end);
        return measure is { } amount && masses.Count > 0 && name.Length > 0 ? new LineStatement(name, amount, masses) : null;
    }

    /// <summary>What is left of a stretch when its amounts and the signs between them are taken away.</summary>
    private static string Name(string text, int from, int until, List<FoundAmount> found, int first, int end)
    {
        StringBuilder name = new();
        int position = from;
        for (int i = first; i <= end; i++)
        {
            int stop = i < end ? found[i].Start : until;
            if (stop > position)
            {
                string part = Trimmed(text[position..stop]);
                if (part.Length > 0)
                    name.Append(name.Length > 0 ? ", " : "").Append(part);
            }
            // A number that is no amount belongs to the name: "00 flour", "64 % couverture".
            if (i < end && (!found[i].IsBare || IsAfterSign(text, found[i].Start) || IsLastBehind(text, found, i)))
                position = Math.Max(position, found[i].End);
            else if (i < end)
                position = found[i].Start;
        }
        return WithoutLooseBrackets(name.ToString());
    }

    // Word by word from both ends, so that a line of a million joiners costs its length.
    private static string Trimmed(string part)
    {
        ReadOnlySpan<char> left = part;
        while (true)
        {
            int before = left.Length;
            left = left.Trim(Signs);
            int word = 0;
            while (word < left.Length && IsWordPart(left[word]))
                word++;
            if (IsOneOf(left[..word], s_leading) && !left[word..].TrimStart(' ').StartsWith("%"))
                left = left[word..];
            word = left.Length;
            while (word > 0 && IsWordPart(left[word - 1]))
                word--;
            if (IsOneOf(left[word..], s_trailing))
                left = left[..word];
            if (left.Length == before)
                return left.Length == part.Length ? part : left.ToString();
        }
    }

    private static bool IsOneOf(ReadOnlySpan<char> word, string[] words)
    {
        foreach (string known in words)
        {
            if (word.Equals(known, StringComparison.OrdinalIgnoreCase))
                return true;
        }
        return false;
    }

    private static bool IsWordPart(char c) => char.IsLetterOrDigit(c) || c == '_';

    private static string WithoutLooseBrackets(string text)
    {
        text = EmptyBrackets().Replace(text, " ");
        int open = text.IndexOfAny(['(', '[']), close = text.LastIndexOfAny([')', ']']);
        if (open < 0 && close < 0)
            return Trimmed(text);
        int depth = 0;
        StringBuilder kept = new();
        for (int i = 0; i < text.Length; i++)
        {
            bool opens = text[i] is '(' or '[', closes = text[i] is ')' or ']';
            if (closes && depth == 0)
                continue;
            if (opens && i > close)
                continue;
            depth += opens ? 1 : closes ? -1 : 0;
            kept.Append(text[i]);
        }
        return Trimmed(EmptyBrackets().Replace(kept.ToString(), " "));
    }

    /// <summary>"butter 1 cup 227": nothing stands between the measure and the number, and nothing behind it.</summary>
    private static bool IsLastBehind(string text, List<FoundAmount> found, int i) => i > 0 && found[i - 1].IsMeasure
        && text.AsSpan(found[i - 1].End, found[i].Start - found[i - 1].End).IsWhiteSpace() && text.AsSpan(found[i].End).IsWhiteSpace();

    private static bool IsAfterSign(string text, int at)
    {
        ReadOnlySpan<char> before = text.AsSpan(0, at).TrimEnd();
        return before.EndsWith("=") || before.EndsWith("..") || before.EndsWith("…") || before.EndsWith(":") || before.EndsWith("-")
            || before.EndsWith("–") || before.EndsWith("—")
            || text.AsSpan(0, at).EndsWith("   ") || text.AsSpan(0, at).EndsWith("\t");
    }

    [GeneratedRegex(@"\b(?:to|in|per|makes?|equals?) (?:the|a|an|one|each)? ?(?<unit>lb|pound|kg|kilo|kilogram|ounce|oz|cup|tablespoon|tbsp|teaspoon|tsp)\b|\bper (?<unit>lb|pound|kg|kilo|kilogram|ounce|oz|cup|tablespoon|tbsp|teaspoon|tsp)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PerPound();

    [GeneratedRegex(@"\b(?:ingredient|item|food|measure|amount|quantity|volume|weight|mass) *:",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Labels();

    [GeneratedRegex(@"[(\[][\s/,;=|]*[)\]]", RegexOptions.CultureInvariant)]
    private static partial Regex EmptyBrackets();

    /// <summary>Whether a bracket is open, asked from left to right: each character is looked at once.</summary>
    private ref struct BracketState(ReadOnlySpan<char> text)
    {
        private readonly ReadOnlySpan<char> _text = text;
        private int _seen;
        private bool _isOpen;

        public bool IsOpenAt(int at)
        {
            for (; _seen < at; _seen++)
                _isOpen = _text[_seen] is '(' or '[' || (_isOpen && _text[_seen] is not (')' or ']'));
            return _isOpen;
        }
    }
}
