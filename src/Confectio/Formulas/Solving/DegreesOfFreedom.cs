using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>The degrees of freedom of an answer: what the demands do not fix, so that only the base, or the cost, decides.</summary>
public sealed class DegreesOfFreedom
{
    internal DegreesOfFreedom(int count, IReadOnlyList<Ingredient> ingredients)
    {
        Count = count;
        Ingredients = ingredients;
    }

    /// <summary>
    /// In how many independent ways the formula could change without any target or binding demand noticing; 0 where all is fixed.
    /// </summary>
    public int Count { get; }

    /// <summary>The ingredients that would change.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; }

    /// <summary>In words.</summary>
    public override string ToString() => Count == 0
        ? "the demands fix every mass"
        : $"the demands leave {Count} {(Count == 1 ? "way" : "ways")} to change "
            + $"{string.Join(", ", Ingredients.Select(ingredient => ingredient.Name))}; there only the base or the cost decides";
}
