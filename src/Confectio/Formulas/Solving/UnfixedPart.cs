using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>The part of an answer that the demands do not fix: there only the base, or the cost, decides.</summary>
public sealed class UnfixedPart
{
    internal UnfixedPart(int directions, IReadOnlyList<Ingredient> ingredients)
    {
        Directions = directions;
        Ingredients = ingredients;
    }

    /// <summary>In how many independent ways the formula could change without any target or binding demand noticing; 0 where all is fixed.</summary>
    public int Directions { get; }

    /// <summary>The ingredients that would change.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; }

    /// <summary>In words.</summary>
    public override string ToString() => Directions == 0
        ? "the demands fix every mass"
        : $"the demands leave {Directions} {(Directions == 1 ? "way" : "ways")} to change {string.Join(", ", Ingredients.Select(ingredient => ingredient.Name))}; there only the base or the cost decides";
}
