using System.Buffers;

namespace Confectio.Layouts;

/// <summary>What stands in one place of a document: the text, without the blanks and marks round it, and where it starts.</summary>
internal readonly record struct TableCell(int Line, int Column, string Text)
{
    /// <summary>The characters of numbers that are not words.</summary>
    public static readonly SearchValues<char> Digits = SearchValues.Create("0123456789½¼¾⅓⅔⅛⅜⅝⅞");

    public bool IsBlank => Text.Length == 0;

    /// <summary>Whether it holds a number that is not a word.</summary>
    public bool HasDigit => Text.AsSpan().ContainsAny(Digits);
}
