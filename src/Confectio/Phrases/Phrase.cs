using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Phrases;

/// <summary>
/// What stands on a line of a recipe: an amount, a name before or behind it, the same amount in a bracket, how it is packed and prepared,
/// and the remarks. Every part points at its place; what was assumed is said, and what was not understood is listed.
/// </summary>
/// <remarks>
/// Worked example: <c>1 cup (2 sticks; 227 g) unsalted butter, softened</c> is 1 cup, once more as 2 sticks and as 227 g, of unsalted
/// butter, softened. Nothing is guessed in silence: a pinch, a heaped spoon or an egg of no stated size has a line in
/// <see cref="Assumed"/>. Nothing is thrown for what stands in the text.
/// </remarks>
public sealed class Phrase
{
    /// <summary>A line that is longer is not read: 1000 characters.</summary>
    public const int LongestText = 1000;

    internal Phrase(string text, PhraseKind kind) => (Text, Kind) = (text, kind);

    /// <summary>The whole text.</summary>
    public string Text { get; }

    /// <summary>What kind of line it is. Only an ingredient has an amount, a name and what follows from them.</summary>
    public PhraseKind Kind { get; }

    /// <summary>The amount; <see langword="null"/> where there is none, or none that can be read.</summary>
    public WrittenAmount? Amount { get; internal init; }

    /// <summary>The same amount in other measures, such as the grams in a bracket; empty where there is none.</summary>
    public IReadOnlyList<WrittenAmount> SecondAmounts { get; internal init; } = [];

    /// <summary>The name as it stands in the text, without packing and preparation; empty where there is none.</summary>
    public string Name { get; internal init; } = "";

    /// <summary>The ingredient; <see langword="null"/> where the name is not known or means two.</summary>
    public Ingredient? Ingredient { get; internal init; }

    /// <summary>How the measure is filled; <see langword="null"/> where the text does not say.</summary>
    public Packing? Packing { get; internal init; }

    /// <summary>What is done to the ingredient and changes no figure, such as <c>at room temperature</c>.</summary>
    public IReadOnlyList<string> Preparation { get; internal init; } = [];

    /// <summary>Whether it may be left out.</summary>
    public bool IsOptional { get; internal init; }

    /// <summary>Whether the amount is left to taste or need.</summary>
    public bool IsToTaste { get; internal init; }

    /// <summary>Whether more is needed than the amount says, such as <c>plus extra for dusting</c>.</summary>
    public bool HasExtra { get; internal init; }

    /// <summary>Whether it is used in more than one place.</summary>
    public bool IsDivided { get; internal init; }

    /// <summary>What the text does not say and was taken, a sentence each.</summary>
    public IReadOnlyList<string> Assumed { get; internal init; } = [];

    /// <summary>What was not understood.</summary>
    public IReadOnlyList<PhrasePart> Unread { get; internal init; } = [];

    /// <summary>All parts that were understood and those that were not, in the order of the text; none overlaps another.</summary>
    public IReadOnlyList<PhrasePart> Parts { get; internal init; } = [];

    /// <summary>What is wrong: figures that contradict each other, what cannot be read and why.</summary>
    public IReadOnlyList<Problem> Problems { get; internal init; } = [];

    /// <summary>
    /// A second ingredient in the same text, as in <c>1 tsp each baking powder and salt</c>; <see langword="null"/> where there is none.
    /// </summary>
    public Phrase? Also { get; internal init; }

    /// <summary>Whether the kind follows only from capitals and signs, because nobody knows the name.</summary>
    internal bool IsKindGuessed { get; init; }

    /// <summary>Where the figure begins that is most likely wrong; -1 where none is named.</summary>
    internal int Suspect { get; init; } = -1;

    /// <summary>Whether it is an ingredient of which everything was understood.</summary>
    public bool IsRead => Kind == PhraseKind.Ingredient && Ingredient is not null && Unread.Count == 0 && (Also is null || Also.IsRead);

    /// <summary>Reads a line. The text is read the same in every culture.</summary>
    /// <param name="text">The line; of a text with more lines, only what one line would say is understood.</param>
    /// <param name="table">The ingredients.</param>
    /// <param name="options">How it is read; <see langword="null"/> for <see cref="PhraseOptions.Default"/>.</param>
    /// <returns>The phrase. It is never <see langword="null"/>, and a text of which nothing is understood is a phrase too.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> or <paramref name="table"/> is null.</exception>
    public static Phrase Read(string text, IngredientTable table, PhraseOptions? options = null) =>
        PhraseReader.Read(Guard.NotNull(text), Guard.NotNull(table), options ?? PhraseOptions.Default, 1, suggests: true);

    /// <summary>The amount and the ingredient, or the text where it is none.</summary>
    public override string ToString() => Kind != PhraseKind.Ingredient || Ingredient is null ? Text
        : (Amount is WrittenAmount amount ? amount + " " : "") + Ingredient.Name + (Packing is Packing packing ? ", " + packing.ToWord()
            : "");
}
