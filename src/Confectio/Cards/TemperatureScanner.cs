using System.Text.RegularExpressions;

namespace Confectio.Cards;

/// <summary>Finds the temperatures of a text, pairs those that say the same in both scales, and tells differences from points.</summary>
internal static partial class TemperatureScanner
{
    public static IEnumerable<WrittenTemperature> Of(SourceText source, bool comma, bool needsSign)
    {
        string text = source.Text;
        List<TemperatureMark> marks = [];
        List<bool> weak = [];
        foreach (Match match in Reading().Matches(text))
        {
            bool sign = match.Groups["sign"].Success || match.Groups["word"].Success || match.Groups["first"].Success || match.Groups["unit"].Value is "℃" or "℉";
            if (needsSign && !sign)
                continue;
            if (Numbers.Read(match.Groups["low"].ValueSpan, match.Groups["high"].ValueSpan, comma) is not PrintedNumber number)
                continue;
            bool minus = match.Groups["minus"].Success;
            char unit = match.Groups["unit"].Value[0];
            marks.Add(new TemperatureMark(minus ? -number.High : number.Low, minus ? -number.Low : number.High, unit is 'F' or 'f' or '℉', match.Index, match.Length));
            weak.Add(!sign && number.High < 20 && unit == 'C');
        }
        for (int i = 0; i < marks.Count;)
        {
            int end = i + 1;
            while (end < marks.Count && Joins(text, marks[end - 1], marks[end]))
                end++;
            // A lone C behind a small number is a cup.
            if (!weak.GetRange(i, end - i).TrueForAll(isWeak => isWeak))
            {
                foreach (WrittenTemperature found in Pair(source, marks.GetRange(i, end - i)))
                    yield return found;
            }
            i = end;
        }
    }

    // Of a run such as 180C/160C fan/350F each degree Fahrenheit is held against the Celsius that agrees best.
    private static IEnumerable<WrittenTemperature> Pair(SourceText source, List<TemperatureMark> run)
    {
        List<TemperatureMark> celsius = run.FindAll(mark => !mark.IsFahrenheit);
        foreach (TemperatureMark f in run.FindAll(mark => mark.IsFahrenheit))
        {
            if (celsius.Count == 0)
            {
                yield return Made(source, f, null);
                continue;
            }
            int best = 0;
            for (int i = 1; i < celsius.Count; i++)
            {
                if (Miss(f, celsius[i]) < Miss(f, celsius[best]))
                    best = i;
            }
            TemperatureMark c = celsius[best];
            celsius.RemoveAt(best);
            yield return Made(source, f, c);
        }
        foreach (TemperatureMark c in celsius)
            yield return Made(source, null, c);
    }

    private static double Miss(TemperatureMark f, TemperatureMark c) => Math.Abs(f.Low - (c.Low * 1.8 + 32)) + Math.Abs(f.High - (c.High * 1.8 + 32));

    private static bool Joins(string text, TemperatureMark left, TemperatureMark right)
    {
        int from = left.Start + left.Length;
        return right.Start - from is >= 0 and <= 24 && Between().IsMatch(text.AsSpan(from, right.Start - from));
    }

    private static WrittenTemperature Made(SourceText source, TemperatureMark? f, TemperatureMark? c)
    {
        int start = Math.Min(f?.Start ?? int.MaxValue, c?.Start ?? int.MaxValue), end = Math.Max(End(f), End(c));
        (int from, int to) = Sentence(source.Text, start, end);
        ReadOnlySpan<char> before = source.Text.AsSpan(from, start - from), behind = source.Text.AsSpan(end, to - end);
        bool difference = Before().IsMatch(before) || Behind().IsMatch(behind);
        string sentence = source.Text[from..to];
        int lead = sentence.Length - sentence.TrimStart().Length;
        return new WrittenTemperature(f, c, difference, sentence.Trim(), start - from - lead, end - start, source.At(start, end - start)) { Text = source.Text };
    }

    private static int End(TemperatureMark? mark) => mark is TemperatureMark one ? one.Start + one.Length : 0;

    /// <summary>From the end of the sentence before to the end of its own. A point between digits or behind a short word ends none.</summary>
    internal static (int From, int To) Sentence(string text, int start, int end)
    {
        int from = start;
        while (from > 0 && !Ends(text, from - 1))
            from--;
        int to = end;
        while (to < text.Length && !Ends(text, to))
            to++;
        return (from, to);
    }

    private static bool Ends(string text, int at) => text[at] is ';' or '!' or '?' or '\n'
        || (text[at] == '.' && (at + 1 >= text.Length || char.IsWhiteSpace(text[at + 1])) && !(at > 2 && text[at - 2] is ' ' or '('));

    [GeneratedRegex(@"(?<![\w.,]|\d/)(?<minus>[-−–])?(?<low>\d{1,3}(?:[.,]\d)?)\s?(?<first>[°º˚]\s?[FC]?)?(?:\s*(?:-|‐|‑|–|—|\bto\b|\band\b|\bor\b)\s*(?<high>\d{1,3}(?:[.,]\d)?)\s?)?(?<sign>[°º˚]\s?|\s?degrees?\s|\s?deg\.?\s)?(?:(?<unit>[FC])(?![\w'’])|(?<unit>[℃℉])|(?<word>(?<unit>[Ff]ahrenheit|[Cc]elsius|FAHRENHEIT|CELSIUS|[Cc]entigrade)\b))",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Reading();

    [GeneratedRegex(@"^[\s/|(\[,=~≈:;)\]]*(?:or|equals|is|about|approx\.?|i\.e\.|that is|[Ff]an|[Cc]onventional|[Gg]as)?[\s/|(\[,=~≈:)\]]*$", RegexOptions.CultureInvariant)]
    private static partial Regex Between();

    [GeneratedRegex(@"(?:\b(?:by|within|per|every|another|further|extra|difference|rise|drop|fall|increase|decrease|raise|plus|minus)\b|±|\+/-|\+/−)(?:\s+(?:of|in|about|only|at least|at most|up to|no more than|more than|another|a|the|by|is|temperature|roughly|around|some|a further))*\s*$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Before();

    [GeneratedRegex(@"^[\s)\]]*(?:lower|higher|cooler|warmer|hotter|colder|less|more|below\s+(?:the|its|that|what|sea)|above\s+(?:the|its|that|what|boiling|sea)|under\s+(?:the|its)|over\s+(?:the|its)|of difference|difference|apart|steps?)\b",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Behind();
}
