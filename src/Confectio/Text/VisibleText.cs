using System.Globalization;
using System.Text;

namespace Confectio.Text;

/// <summary>A text of a stranger as it may stand in an answer: nothing in it begins a line, moves a cursor, turns the direction of writing round or cannot be seen.</summary>
internal static class VisibleText
{
    /// <summary>The text with every such character shown as what cannot be shown (U+FFFD); emoji and letters of every script stay.</summary>
    public static string Of(string text)
    {
        bool isPlain = true;
        foreach (char c in text)
            isPlain &= c is >= ' ' and < '\u007F';
        if (isPlain)
            return text;
        StringBuilder shown = new(text.Length);
        // A lone half of a pair comes out of this as U+FFFD.
        foreach (Rune rune in text.EnumerateRunes())
        {
            shown.Append(IsHidden(rune) ? Rune.ReplacementChar : rune);
        }
        return shown.ToString();
    }

    /// <summary>Whether a character controls, turns the direction of writing round, cannot be seen, or is none.</summary>
    public static bool IsHidden(Rune rune) => rune.Value is 0x034F or 0x115F or 0x1160 or 0x3164 or 0xFFA0
        || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
            or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned;
}
