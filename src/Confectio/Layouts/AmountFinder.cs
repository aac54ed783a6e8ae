using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>Finds the amounts in a text, from left to right. Time grows with the length of the text.</summary>
internal static class AmountFinder
{
    private static readonly string[] s_levels = ["level", "flat", "full"];
    private static readonly string[] s_notLevels = ["heaped", "heaping", "rounded", "scant", "generous", "mounded", "overflowing", "scanty", "good", "big", "small"];

    public static void Find(ReadOnlySpan<char> text, AmountReading reading, List<FoundAmount> found)
    {
        int position = 0;
        while (position < text.Length)
        {
            if (!StartsNumber(text, position))
            {
                position = NextStart(text, position);
                continue;
            }
            if (TryRead(text, position, reading, out FoundAmount amount))
            {
                found.Add(amount);
                position = amount.End;
            }
            else
            {
                position = AfterToken(text, position);
            }
        }
    }

    /// <summary>Reads the amount that starts at a place, with "level" or "heaped" between number and unit or before both.</summary>
    private static bool TryRead(ReadOnlySpan<char> text, int start, AmountReading reading, out FoundAmount found)
    {
        // An amount is short; what stands farther away is no part of it, and a text of many numbers stays linear.
        ReadOnlySpan<char> near = text[start..Math.Min(text.Length, start + 64)];
        AmountReader reader = new(near, reading) { StopsAtOtherKind = true };
        if (reader.TryRead(out Amount amount) && EndsWord(near, reader.Position))
        {
            found = OfFood(near, start, reader.Position, amount, reading) ?? new FoundAmount(start, start + reader.Position, amount, AmountManner.Level);
            return true;
        }
        found = default;
        AmountReader number = new(near, reading);
        if (!number.TryReadQuantity(out _))
            return false;
        int at = number.Position;
        while (at < near.Length && near[at] == ' ')
            at++;
        int word = at;
        while (word < near.Length && char.IsAsciiLetter(near[word]))
            word++;
        AmountManner manner = AmountManner.Level;
        if (IsOneOf(near[at..word], s_notLevels))
            manner = AmountManner.NotLevel;
        else if (!IsOneOf(near[at..word], s_levels))
            return false;
        string without = string.Concat(near[..at], near[word..].TrimStart());
        int left = near.Length - without.Length;
        AmountReader again = new(without, reading) { StopsAtOtherKind = true };
        if (!again.TryRead(out amount) || !EndsWord(without, again.Position))
            return false;
        found = new FoundAmount(start, start + again.Position + left, amount, manner);
        return true;
    }

    /// <summary>"5 eggs" and "5 egg whites" count pieces by the name of the food, which is left to be read as its name.</summary>
    private static FoundAmount? OfFood(ReadOnlySpan<char> near, int start, int end, Amount amount, AmountReading reading)
    {
        if (amount.PartCount > 1 || amount.Part(0).Piece is not ("egg" or "white" or "yolk") || amount.IsRange)
            return null;
        AmountReader number = new(near, reading);
        if (!number.TryReadQuantity(out Fraction count))
            return null;
        ReadOnlySpan<char> rest = near[end..].TrimStart();
        string piece = rest.StartsWith("white", StringComparison.OrdinalIgnoreCase) ? "white" : rest.StartsWith("yolk", StringComparison.OrdinalIgnoreCase) ? "yolk" : amount.Part(0).Piece!;
        return new FoundAmount(start, start + number.Position, Amount.OfPieces(count, piece), AmountManner.Level);
    }

    private static bool EndsWord(ReadOnlySpan<char> text, int end) => end >= text.Length || char.IsWhiteSpace(text[end - 1]) || !char.IsLetterOrDigit(text[end]) && text[end] != '%';

    private static bool IsOneOf(ReadOnlySpan<char> word, string[] words)
    {
        foreach (string candidate in words)
        {
            if (word.Equals(candidate, StringComparison.OrdinalIgnoreCase))
                return true;
        }
        return false;
    }

    private static bool StartsNumber(ReadOnlySpan<char> text, int i)
    {
        // The 7 of "200g/7oz" and the 200 of ".......200 g" are numbers of their own; those of "1/7" and "1.7" are not.
        if (i > 0 && (char.IsLetterOrDigit(text[i - 1]) || (text[i - 1] is '.' or '/' && i > 1 && char.IsAsciiDigit(text[i - 2]))))
            return false;
        char c = text[i];
        if (char.IsAsciiDigit(c) || AmountWriter.TryVulgar(c, out _))
            return true;
        if (!char.IsAsciiLetter(c))
            return false;
        int end = i;
        while (end < text.Length && char.IsAsciiLetter(text[end]))
            end++;
        return NumberWords.TryNumber(text[i..end], out _) || NumberWords.TryPart(text[i..end], out _);
    }

    private static int NextStart(ReadOnlySpan<char> text, int i)
    {
        // A word counts as a whole, so that the "one" of "scone" is no number.
        bool letter = char.IsLetter(text[i]);
        i++;
        while (letter && i < text.Length && char.IsLetter(text[i]))
            i++;
        return i;
    }

    private static int AfterToken(ReadOnlySpan<char> text, int i)
    {
        int start = i;
        while (i < text.Length && (char.IsLetterOrDigit(text[i]) || text[i] is '/' or '.' or ','))
            i++;
        return Math.Max(i, start + 1);
    }
}
