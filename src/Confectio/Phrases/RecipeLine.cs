using System.Globalization;

namespace Confectio.Phrases;

/// <summary>A line of a recipe: its number, and what stands on it.</summary>
public sealed class RecipeLine
{
    internal RecipeLine(int number, Phrase phrase) => (Number, Phrase) = (number, phrase);

    /// <summary>The line of the text, counted from 1.</summary>
    public int Number { get; }

    /// <summary>What stands on it.</summary>
    public Phrase Phrase { get; }

    /// <summary>The phrase with its number, such as <c>line 3: 1 cup unsalted butter, softened</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"line {Number}: {Phrase}");
}
