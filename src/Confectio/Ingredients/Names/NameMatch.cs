using Confectio.Text;

namespace Confectio.Ingredients.Names;

/// <summary>What a printed name means: a food with what is said of its packing and preparation, two foods, or none, and why.</summary>
/// <remarks>
/// A word that changes the food is never dropped. Where the words leave a doubt there is no food: <see cref="Reason"/> says why.
/// Worked example: "unsalted butter, softened" is unsalted butter, softened; "2% milk" is none; "fondant" means two.
/// </remarks>
public sealed class NameMatch
{
    private readonly IngredientTable _table;
    private readonly NameMiss _miss;
    private readonly string? _detail;

    internal NameMatch(IngredientTable table, string text, NameMiss miss, string? detail)
    {
        _table = table;
        Text = text;
        _miss = miss;
        _detail = detail;
    }

    /// <summary>The name as it was handed in.</summary>
    public string Text { get; }

    /// <summary>The food; <see langword="null"/> where there is none, and where the name means two.</summary>
    public Ingredient? Ingredient { get; internal init; }

    /// <summary>
    /// The packing that the name says, such as sifted; <see langword="null"/> where it says none. Of two, such as "softened, chopped",
    /// the first; the other stands in <see cref="Preparation"/>.
    /// </summary>
    public Packing? Packing { get; internal init; }

    /// <summary>
    /// Words that say what was done with the food or which size it is, as they stand in the name: toasted, cubed, medium.
    /// </summary>
    public IReadOnlyList<string> Preparation { get; internal init; } = [];

    /// <summary>Words that change nothing about this food, as they stand in the name: cold, organic, unbleached.</summary>
    public IReadOnlyList<string> Ignored { get; internal init; } = [];

    /// <summary>The foods that the name means, where it means more than one; else empty.</summary>
    public IReadOnlyList<Ingredient> Between { get; internal init; } = [];

    /// <summary>Whether the name is known and means more foods than one, or another food than its words seem to say.</summary>
    internal bool IsUnclear => _miss is NameMiss.Unclear or NameMiss.TwoNames or NameMiss.TwoReadings or NameMiss.Percent
        or NameMiss.ChangesFood;

    /// <summary>
    /// How many letters were taken as slips of the finger: 0, unless the caller accepted slips. See
    /// <see cref="IngredientTable.MatchName(string, int)"/>.
    /// </summary>
    public int SpellingDistance { get; internal init; }

    /// <summary>
    /// What the name may have meant, were some letters of it slips: the nearest first, none where there is a food. They are looked for
    /// anew whenever they are asked for, which takes longer than the match.
    /// </summary>
    public IReadOnlyList<NameSuggestion> Suggestions =>
        Ingredient is null && _miss is NameMiss.UnknownWord or NameMiss.NoSuchFood ? SpellingSearch.Of(Text, _table.Names) : [];

    /// <summary>Why there is no food, as a sentence; empty where there is one.</summary>
    public string Reason => _miss switch
    {
        NameMiss.None => "",
        NameMiss.Empty => "There is no name.",
        NameMiss.TooLong => "The text is longer than a name.",
        NameMiss.Measure => $"{Excerpt.Of(_detail)} is a measure: it belongs to an amount, not to a name.",
        NameMiss.UnknownWord => $"No food of the table has {Excerpt.Of(_detail)} in its name.",
        NameMiss.Percent => $"{Excerpt.Of(_detail)} changes the food, and the table has none of that name.",
        NameMiss.ChangesFood => $"{Excerpt.Of(_detail)} changes the food, and the table has none of that name.",
        NameMiss.NoSuchFood => $"No food of the table is called {Excerpt.Of(Text.AsSpan().Trim())}.",
        NameMiss.Unclear => $"It does not say which food: {_detail}.",
        NameMiss.TwoNames => $"It names more than one food: {string.Join(", ", Between.Select(food => food.Name))}.",
        NameMiss.TwoReadings => "The words can be read as different foods.",
        NameMiss.PartUnknown => "It names more than one food, and not each of them is in the table.",
        _ => throw new InvalidOperationException($"{_miss} has no sentence."),
    };

    /// <summary>The name and what it means, such as <c>flour, sifted: plain flour, sifted</c>.</summary>
    public override string ToString() =>
        $"{Text}: {Ingredient?.Name ?? Reason}{(Packing is Packing packing ? ", " + packing.ToWord() : "")}";
}
