using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>
/// The degrees of freedom of an answer: what the demands do not fix, so that only the base, or the cost, decides. A limit that only
/// keeps the formula from its base, or from costing less, fixes nothing: one may move away from it.
/// </summary>
public sealed class DegreesOfFreedom
{
    private readonly Func<IReadOnlyList<Trade>>? _trades;

    internal DegreesOfFreedom(int count, IReadOnlyList<Ingredient> ingredients, Func<IReadOnlyList<Trade>>? trades = null)
    {
        Count = count;
        Ingredients = ingredients;
        _trades = trades;
    }

    /// <summary>
    /// In how many independent ways the formula could change while every target gets what it got and everything that must be kept is kept;
    /// 0 where all is fixed.
    /// </summary>
    public int Count { get; }

    /// <summary>The ingredients that would change.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; }

    /// <summary>
    /// The simplest of those ways, in which the fewest ingredients move: at most three, none of them made up of the others. There may be
    /// fewer than <see cref="Count"/>: where several limits meet, a way may have no room.
    /// </summary>
    public IReadOnlyList<Trade> Trades => field ??= _trades?.Invoke() ?? [];

    /// <summary>In words.</summary>
    public override string ToString() => Count == 0
        ? "the demands fix every mass"
        : $"the demands leave {Count} {(Count == 1 ? "way" : "ways")} to change "
            + $"{string.Join(", ", Ingredients.Select(ingredient => ingredient.Name))}; there only the base or the cost decides";
}
