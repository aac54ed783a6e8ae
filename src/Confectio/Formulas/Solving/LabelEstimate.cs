using Confectio.Ingredients;
using Confectio.Numerics;
using Confectio.Sources;

namespace Confectio.Formulas.Solving;

/// <summary>
/// A formula estimated from a nutrition label and the list of ingredients, which stand in descending order of their mass when they
/// were used (Regulation (EU) No 1169/2011, Article 18; 21 CFR 101.4). It comes with how wide the answer is, because a label says
/// less than it seems to: rounding to 0.1 g alone can move an ingredient by more than a point.
/// </summary>
/// <remarks>
/// The estimate is the least-squares fit to the printed figures, each weighed by its rounding. Its range is exact: the least and
/// the most of each ingredient over all formulas, in the order of the list, whose figures round to the printed ones.
/// </remarks>
public sealed class LabelEstimate
{
    private LabelEstimate(IReadOnlyList<LabelShare> shares, double boiledOffPercent, IReadOnlyList<double> misses, bool fits)
    {
        Shares = shares;
        BoiledOffPercent = boiledOffPercent;
        Misses = misses;
        Fits = fits;
    }

    /// <summary>The ingredients, in the order of the list.</summary>
    public IReadOnlyList<LabelShare> Shares { get; }

    /// <summary>The estimate of the water that boiled off, g for 100 g of the finished product.</summary>
    public double BoiledOffPercent { get; }

    /// <summary>For every figure: by how much the estimate is outside what rounds to it, g in 100 g; 0 inside.</summary>
    public IReadOnlyList<double> Misses { get; }

    /// <summary>Whether there is a formula whose figures all round to the printed ones, given what the compositions may vary.</summary>
    public bool Fits { get; }

    /// <summary>Estimates.</summary>
    /// <param name="ingredients">The ingredients in the order of the list, from 1 to 40, none of them twice.</param>
    /// <param name="figures">The figures of the label, at least one.</param>
    /// <param name="mostBoiledOffPercent">How much water may have boiled off, g for 100 g of the finished product, from 0 to 1000.</param>
    /// <param name="compositionsVary">
    /// Whether the range counts in what each composition may vary (<see cref="CompositionSpread"/>, two standard uncertainties)
    /// besides the rounding of the label.
    /// </param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mostBoiledOffPercent"/> is outside its range.</exception>
    /// <exception cref="ArgumentException">
    /// There are no ingredients or figures, or an ingredient comes twice, or there are more than 40.
    /// </exception>
    public static LabelEstimate Of(
        IReadOnlyList<Ingredient> ingredients, IReadOnlyList<LabelFigure> figures, double mostBoiledOffPercent = 0,
            bool compositionsVary = true)
    {
        int count = Guard.NotNull(ingredients).Count;
        if (count is < 1 or > 40)
            throw new ArgumentException($"{nameof(ingredients)} has {count} ingredients; from 1 to 40 are expected.", nameof(ingredients));
        if (ingredients.Any(ingredient => ingredient is null))
            throw new ArgumentException($"{nameof(ingredients)} has a null in it.", nameof(ingredients));
        if (ingredients.Distinct().Count() < count)
            throw new ArgumentException($"{nameof(ingredients)} has an ingredient twice.", nameof(ingredients));
        if (Guard.NotNull(figures).Count == 0)
            throw new ArgumentException($"{nameof(figures)} is empty; a label has at least one figure.", nameof(figures));
        if (figures.Any(figure => figure is null))
            throw new ArgumentException($"{nameof(figures)} has a null in it.", nameof(figures));
        Guard.InRange(mostBoiledOffPercent, 0, 1000);

        double[][] coefficients = [.. figures.Select(figure => Coefficients(figure.Part, ingredients))];
        double[] extra = new double[figures.Count];
        double[] x = Fit(figures, coefficients, count, mostBoiledOffPercent, centre: null);
        if (compositionsVary)
        {
            for (int k = 0; k < extra.Length; k++)
                extra[k] = 2 * Uncertainty(coefficients[k], ingredients, x);
        }
        (double[] low, double[] high, double[]? middle) = Extremes(figures, coefficients, extra, count, mostBoiledOffPercent);
        // Where the figures leave a choice, the estimate is the one nearest to the middle of all that fits.
        if (middle is not null)
            x = Fit(figures, coefficients, count, mostBoiledOffPercent, middle);

        LabelShare[] shares = new LabelShare[count];
        for (int j = 0; j < count; j++)
        {
            Spread? range = middle is null ? null : new Spread(Math.Min(low[j], x[j]), x[j], Math.Max(high[j], x[j]), SpreadBasis.Models);
            shares[j] = new LabelShare(ingredients[j], x[j], range);
        }
        double[] misses = [.. figures.Select((figure, k) => Miss(figure, coefficients[k], x))];
        return new LabelEstimate(shares, mostBoiledOffPercent > 0 ? -x[count] : 0, misses, middle is not null);
    }

    private static double[] Coefficients(FormulaPart part, IReadOnlyList<Ingredient> ingredients) =>
        [.. ingredients.Select(part.FractionIn), part.FractionOfBoiledOffWater];

    private static double Miss(LabelFigure figure, double[] coefficients, double[] x)
    {
        double value = 0;
        for (int j = 0; j < x.Length; j++)
            value += coefficients[j] * x[j];
        return value < figure.Low ? value - figure.Low : value > figure.High ? value - figure.High : 0;
    }

    private static double Uncertainty(double[] coefficients, IReadOnlyList<Ingredient> ingredients, double[] x)
    {
        double sum = 0;
        for (int j = 0; j < ingredients.Count; j++)
        {
            double one = x[j] * CompositionSpread.StandardUncertainty(ingredients[j], coefficients[j]);
            sum += one * one;
        }
        return Math.Sqrt(sum);
    }

    private static double[] Fit(IReadOnlyList<LabelFigure> figures, double[][] coefficients, int count, double boilOff, double[]? centre)
    {
        RankedProblem problem = new(count + (boilOff > 0 ? 1 : 0));
        Order(problem.Conditions, count, boilOff);
        for (int j = 0; j < problem.Conditions.Variables; j++)
        {
            problem.Conditions.Prior[j] = 1;
            problem.Conditions.Centre[j] = centre?[j] ?? (j < count ? 100.0 / count : 0);
        }
        for (int k = 0; k < figures.Count; k++)
            problem.AddTarget(coefficients[k], figures[k].GramsPer100, figures[k].GramsPer100, 2 / figures[k].RoundingUnit, 1);
        RankedSolver solver = new();
        // Descending order and a sum always leave a formula: 100 g of the first ingredient alone, if need be.
        if (solver.Solve(problem) != SolveStatus.Optimal)
            throw new InvalidOperationException("The fit to the label was not decided.");
        return solver.Solution.ToArray();
    }

    private static void Order(LeastSquaresProblem conditions, int count, double boilOff)
    {
        double[] row = new double[conditions.Variables];
        Array.Fill(row, 1);
        conditions.AddRow(row, 100, 100);
        for (int j = 0; j + 1 < count; j++)
        {
            Array.Clear(row);
            (row[j], row[j + 1]) = (1, -1);
            conditions.AddRow(row, 0, double.PositiveInfinity);
        }
        conditions.Lower[..count].Clear();
        if (boilOff > 0)
            (conditions.Lower[count], conditions.Upper[count]) = (-boilOff, 0);
    }

    // The least and the most of every ingredient: linear programmes. Their answers' mean fits too, and lies well inside.
    private static (double[] Low, double[] High, double[]? Middle) Extremes(
        IReadOnlyList<LabelFigure> figures, double[][] coefficients, double[] extra, int count, double boilOff)
    {
        LeastSquaresProblem problem = new(count + (boilOff > 0 ? 1 : 0));
        Order(problem, count, boilOff);
        for (int k = 0; k < figures.Count; k++)
            problem.AddRow(coefficients[k], figures[k].Low - extra[k], figures[k].High + extra[k]);
        problem.Prior[..problem.Variables].Fill(0.01);
        problem.Centre[..count].Fill(100.0 / count);
        double[] low = new double[count], high = new double[count], middle = new double[problem.Variables];
        DualActiveSet kernel = new();
        double[] one = new double[problem.Variables];
        for (int j = 0; j < count; j++)
        {
            Array.Clear(one);
            one[j] = 1;
            foreach (int sign in stackalloc[] { 1, -1 })
            {
                if (LeastCost.Extreme(kernel, problem, one, sign) is not double end)
                    return (low, high, null);
                (sign > 0 ? low : high)[j] = end;
                for (int i = 0; i < middle.Length; i++)
                    middle[i] += kernel.Solution[i] / (2 * count);
            }
        }
        return (low, high, middle);
    }

    /// <summary>The shares, and whether they fit the label.</summary>
    public override string ToString() => $"{string.Join(", ", Shares)}{(Fits ? "" : "; the label is not met")}";
}
