using System.Text;
using Confectio.Text;

namespace Confectio.Publishing;

/// <summary>Words that somebody else wrote, made fit for paper: nothing in them is hidden, and nothing turns what stands beside them round.</summary>
internal static class SafeText
{
    /// <summary>No name is longer on paper.</summary>
    public const int LongestName = 200;

    /// <summary>
    /// The text on one line: blanks of any kind and length become one space; what cannot be seen, turns the direction of writing round or is
    /// no character becomes U+FFFD.
    /// </summary>
    public static string Of(string text)
    {
        if (IsPlain(text))
            return text;
        StringBuilder clean = new(text.Length);
        bool blank = false;
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (Rune.IsWhiteSpace(rune))
            {
                blank = clean.Length > 0;
                continue;
            }
            if (blank)
                clean.Append(' ');
            blank = false;
            clean.Append(VisibleText.IsHidden(rune) ? Rune.ReplacementChar : rune);
        }
        return clean.ToString();
    }

    /// <summary>The text on one line, cut where it is longer than a name may be.</summary>
    public static string Name(string text) => Cut(Of(text), LongestName);

    /// <summary>The text as it may stand in a document of several lines: line feeds stay.</summary>
    public static string Lines(string text) => string.Join('\n', text.Split('\n').Select(Of));

    /// <summary>Whether some of it is written from right to left, so that figures beside it would move.</summary>
    public static bool RunsLeft(string text)
    {
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (rune.Value is (>= 0x0590 and <= 0x08FF) or (>= 0xFB1D and <= 0xFDFF) or (>= 0xFE70 and <= 0xFEFC) or (>= 0x10800 and <= 0x10FFF) or (>= 0x1E800 and <= 0x1EFFF))
                return true;
        }
        return false;
    }

    private static string Cut(string text, int longest)
    {
        if (text.Length <= longest)
            return text;
        int end = char.IsHighSurrogate(text[longest - 2]) ? longest - 2 : longest - 1;
        return text[..end] + "…";
    }

    // Nearly every name is.
    private static bool IsPlain(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (c is < ' ' or > '~' || (c == ' ' && (i == 0 || i == text.Length - 1 || text[i - 1] == ' ')))
                return false;
        }
        return true;
    }
}
