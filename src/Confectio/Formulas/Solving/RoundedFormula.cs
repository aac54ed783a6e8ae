using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>An answer rounded to practical measures: every line by at most one step, by two only where what must be kept would break.</summary>
public sealed class RoundedFormula
{
    internal RoundedFormula(Formula? formula, IReadOnlyList<double> grams, double boiledOffGrams, IReadOnlyList<DemandResult> results,
        bool isProven, IReadOnlyList<Ingredient> vanished, FormulaCost? cost)
    {
        FullCost = cost;
        Formula = formula;
        Grams = grams;
        BoiledOffGrams = boiledOffGrams;
        Results = results;
        IsProven = isProven;
        Vanished = vanished;
    }

    /// <summary>
    /// The formula; its lines name the measures where the grid is one of spoons and cups. <see langword="null"/> where the grid is so
    /// coarse that no line is left.
    /// </summary>
    public Formula? Formula { get; }

    /// <summary>The mass of every ingredient of the problem, g, in order.</summary>
    public IReadOnlyList<double> Grams { get; }

    /// <summary>The water that boils off, g: so much as brings what is weighed to the total. It goes with these masses.</summary>
    public double BoiledOffGrams { get; }

    /// <summary>What each demand got. On a coarse grid not all that must be kept can be: the results say what was not.</summary>
    public IReadOnlyList<DemandResult> Results { get; }

    /// <summary>What the rounded masses cost; null where there are no prices.</summary>
    public FormulaCost? FullCost { get; }

    /// <summary>Whether it is proved that no formula within the same steps of every line does better.</summary>
    public bool IsProven { get; }

    /// <summary>Lines of the answer of which the steps leave nothing.</summary>
    public IReadOnlyList<Ingredient> Vanished { get; }

    /// <summary>The formula that was rounded, what of it vanished, and whether none within the steps is better.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Formula?.ToString() ?? "no formula"}"
        + $"{(Vanished.Count > 0 ? $", without {string.Join(", ", Vanished.Select(food => food.Name))}" : "")}"
        + $"{(IsProven ? ", none better within a step of each line" : "")}");
}
