using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>An ingredient that a problem may use.</summary>
internal sealed class Candidate(Ingredient ingredient, double baseGrams)
{
    public Ingredient Ingredient { get; } = ingredient;

    public double BaseGrams { get; } = baseGrams;

    /// <summary>The price of a kilogram; 0 where none was given.</summary>
    public double CostPerKilogram { get; init; }
}
