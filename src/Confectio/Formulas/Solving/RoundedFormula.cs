namespace Confectio.Formulas.Solving;

/// <summary>An answer rounded to practical measures.</summary>
public sealed class RoundedFormula
{
    internal RoundedFormula(Formula? formula, IReadOnlyList<double> grams, IReadOnlyList<DemandResult> results, bool isProven, double value,
        double lowerBound, int nodes)
    {
        Formula = formula;
        Grams = grams;
        Results = results;
        IsProven = isProven;
        // A search that found nothing on the grid has no value, and one that was cut off at once no bound: absent, not infinite.
        Value = double.IsFinite(value) ? value : null;
        LowerBound = double.IsFinite(lowerBound) ? lowerBound : null;
        Nodes = nodes;
    }

    /// <summary>
    /// The formula; its lines name the measures where the grid is one of spoons and cups. <see langword="null"/> where the grid is so
    /// coarse that no line is left: 4 g on a grid of 10 g.
    /// </summary>
    public Formula? Formula { get; }

    /// <summary>The mass of every ingredient of the problem, g, in order.</summary>
    public IReadOnlyList<double> Grams { get; }

    /// <summary>What each demand got. On a coarse grid not all that must be kept can be: the results say what was not.</summary>
    public IReadOnlyList<DemandResult> Results { get; }

    /// <summary>Whether no formula on the grid is better.</summary>
    public bool IsProven { get; }

    /// <summary>
    /// The objective of the rounding: half the sum of the squared misses in tolerances (a tenth of the weight for each further priority)
    /// and of the changes from the base, weighed by <see cref="FormulaProblem.Closeness"/>. <see langword="null"/> where the search found
    /// no formula on the grid: then every mass is rounded by itself.
    /// </summary>
    public double? Value { get; }

    /// <summary>No formula on the grid has a smaller value than this; <see langword="null"/> where nothing is known.</summary>
    public double? LowerBound { get; }

    /// <summary>
    /// How much better another formula on the grid can be at most; 0 where the answer is proven, <see langword="null"/> where nothing is
    /// known.
    /// </summary>
    public double? Gap => IsProven ? 0 : Value - LowerBound;

    /// <summary>How many candidates the search looked at; it stops at 200 000.</summary>
    public int Nodes { get; }

    /// <summary>The formula that was rounded, and whether no better one is on the grid.</summary>
    public override string ToString() => $"{Formula?.ToString() ?? "no formula"}{(IsProven ? ", none better on the grid" : "")}";
}
