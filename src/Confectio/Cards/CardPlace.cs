using System.Globalization;

namespace Confectio.Cards;

/// <summary>Where something stands on a card: the line, the character, and how many characters it takes.</summary>
public sealed class CardPlace
{
    internal CardPlace(int line, int column, int length, string? path) => (Line, Column, Length, Path) = (line, column, length, path);

    /// <summary>The line of the text, counted from 1; LF, CR and CR LF end a line.</summary>
    public int Line { get; }

    /// <summary>The character of the line, counted from 1 in UTF-16 code units.</summary>
    public int Column { get; }

    /// <summary>How many characters of that line it takes; 0 where only the beginning is known.</summary>
    public int Length { get; }

    /// <summary>The path in JSON, such as <c>$.recipeIngredient[2]</c>; <see langword="null"/> where the card is no JSON.</summary>
    public string? Path { get; }

    /// <summary>The place, such as <c>line 4, column 21</c>, with its path where it has one.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"line {Line}, column {Column}{(Path is null ? "" : $" ({Path})")}");
}
