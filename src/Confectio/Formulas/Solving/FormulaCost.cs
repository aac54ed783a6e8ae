using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>What a formula costs by the prices that were given, and which of its ingredients have none.</summary>
public sealed class FormulaCost
{
    private FormulaCost(double total, double perKilogram, IReadOnlyList<Ingredient> withoutPrice)
    {
        Total = total;
        PerKilogram = perKilogram;
        WithoutPrice = withoutPrice;
    }

    /// <summary>The cost of all that has a price, in the currency of the prices.</summary>
    public double Total { get; }

    /// <summary>The same for a kilogram of what the formula makes, after boiling off.</summary>
    public double PerKilogram { get; }

    /// <summary>Ingredients of the formula of which no price was given: they are not in the cost, and it is at least what it says.</summary>
    public IReadOnlyList<Ingredient> WithoutPrice { get; }

    // Null where there is no price or no formula: that is not a cost of nothing.
    internal static FormulaCost? Of(FormulaProblem problem, IReadOnlyList<double> grams, double boiledOffGrams)
    {
        double makes = grams.Sum() - boiledOffGrams;
        if (!(makes > 0) || problem.Candidates.All(candidate => candidate.PricePerKilogram is null))
            return null;
        double total = problem.Candidates.Zip(grams, (candidate, mass) => candidate.CostPerKilogram * mass / 1000).Sum();
        return new FormulaCost(total, 1000 * total / makes,
            [.. problem.Candidates.Where((candidate, j) => candidate.PricePerKilogram is null && grams[j] > 0).Select(candidate => candidate.Ingredient)]);
    }

    /// <summary>The cost, and what is not in it: <c>4.21, 3.92 the kilogram, without egg white</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Total:0.00}, {PerKilogram:0.00} the kilogram")
        + (WithoutPrice.Count > 0 ? $", without {string.Join(", ", WithoutPrice.Select(food => food.Name))}" : "");
}
