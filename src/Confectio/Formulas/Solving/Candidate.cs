using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>An ingredient that a problem may use.</summary>
internal sealed class Candidate(Ingredient ingredient, double baseGrams)
{
    public Ingredient Ingredient { get; } = ingredient;

    public double BaseGrams { get; } = baseGrams;

    /// <summary>The price of a kilogram; null where none was given, for what is not known is not free.</summary>
    public double? PricePerKilogram { get; init; }

    /// <summary>The price as it decides: what has none adds nothing, and the answer says so.</summary>
    public double CostPerKilogram => PricePerKilogram ?? 0;
}
