using Confectio.Ingredients;
using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Rounds an answer: of all formulas on the grid that keep what must be kept, the best by one objective. Ratios to one value and,
/// where the grid cannot make it, the total give way within a per cent; where still nothing on the grid keeps all the rest, that
/// gives way too and the results say so.
/// </summary>
internal static class Rounding
{
    private const double WeightOfNextPriority = 0.1;

    // Half a per cent off counts as much as missing a target by half its tolerance.
    private const double GivingWay = 0.01;

    public static RoundedFormula Of(SolvedFormula answer, RoundingGrid grid)
    {
        FormulaProblem problem = answer.Problem;
        double[] grams = [.. answer.Grams];
        bool[] use = [.. problem.Choices.Select(demand => answer.GramsOf(demand.Ingredient) > 0)];
        Assembly assembly = Assembly.Of(problem, use, problem.Total ?? problem.FreeRange);
        double unit = assembly.UnitGrams;
        RoundingGrid.Step[] steps = [.. problem.Candidates.Select((candidate, j) => grid.StepOf(candidate.Ingredient, answer.Grams[j]))];

        // From the strictest reading of the demands to the loosest; the first that the grid can follow decides.
        GridAnswer? found = null;
        bool isSolved = answer.Status == SolutionStatus.Solved;
        foreach ((bool exactTotal, bool firmRows) in new[] { (grid.MeasuringSystem is null, isSolved), (false, isSolved), (false, false) })
        {
            (LeastSquaresProblem rounding, double? total) = Pose(answer, assembly, exactTotal, firmRows);
            double[] sizes = [.. Enumerable.Range(0, rounding.Variables).Select(j => (j < steps.Length ? steps[j].Grams
                : grid.MeasuringSystem is null ? steps[0].Grams : 1) / unit)];
            Widen(rounding, sizes, assembly, answer);
            // Tonnes by the milligram: more steps than the search can tell apart. Every mass is then rounded by itself.
            if (sizes.Where((size, j) => Math.Max(Math.Abs(rounding.Lower[j]),
                Math.Abs(rounding.Upper[j])) > size * (GridSearch.LargestSteps / 2)).Any())
                break;
            found = GridSearch.Solve(rounding, sizes, total);
            // Nothing of everything keeps every ratio, and is no formula.
            if (found.X is IReadOnlyList<double> place && place.Take(steps.Length).Any(mass => mass > 0))
                break;
        }
        found ??= new GridAnswer(GridStatus.Capped, null, double.PositiveInfinity, double.NegativeInfinity, 0);
        double[] x = found.X is null ? [.. grams.Select(mass => mass / unit)] : [.. found.X];
        return Make(answer, assembly, steps, x, found);
    }

    private static (LeastSquaresProblem Problem, double? Total) Pose(SolvedFormula answer, Assembly assembly, bool exactTotal,
        bool firmRows)
    {
        RankedProblem ranked = assembly.Ranked;
        LeastSquaresProblem conditions = ranked.Conditions;
        int n = conditions.Variables;
        LeastSquaresProblem problem = new(n);
        double[] x = [.. answer.Grams.Select(grams => grams / assembly.UnitGrams), .. n > answer.Grams.Count
            ? [-answer.BoiledOffGrams / assembly.UnitGrams] : Array.Empty<double>()];
        bool isTraded = answer.Problem.Preference == Preference.ClosenessTraded;
        for (int j = 0; j < n; j++)
        {
            // Where closeness to the base came last the answer has had its say from the base; what is rounded stays near the answer.
            problem.Prior[j] = isTraded ? conditions.Prior[j] : Math.Sqrt(answer.Problem.Closeness) * Assembly.Hold(x[j]);
            problem.Centre[j] = isTraded ? conditions.Centre[j] : x[j];
            problem.Lower[j] = conditions.Lower[j];
            problem.Upper[j] = conditions.Upper[j];
        }
        for (int t = 0; t < ranked.Targets; t++)
        {
            RankedProblem.Target target = ranked[t];
            // Within a range the place the answer has is as good as any.
            double value = LeastSquaresProblem.Evaluate(ranked.Coefficients(t), x).Value;
            problem.AddTarget(ranked.Coefficients(t), answer.Status == SolutionStatus.Solved ? Math.Clamp(value, target.Low, target.High)
                : value, target.Weight * Math.Pow(WeightOfNextPriority, (target.Priority - 1) / 2.0));
        }
        double? total = null;
        for (int k = 0; k < conditions.Rows; k++)
        {
            Demand demand = assembly.Rows[k];
            ReadOnlySpan<double> row = conditions.Row(k)[..n];
            double low = conditions.RowLow[k], high = conditions.RowHigh[k];
            if (demand is Demand.Total && exactTotal)
                total = low;
            else if (answer.Status != SolutionStatus.Solved && demand is not Demand.Total)
                continue;
            else if (low == high || !firmRows)
                GiveWay(problem, row, x);
            else
                problem.AddRow(row, low, high);
        }
        return (problem, total);
    }

    // What gives way is still weighed: by how far it goes from where the answer has it.
    private static void GiveWay(LeastSquaresProblem problem, ReadOnlySpan<double> row, double[] x)
    {
        (double value, double size) = LeastSquaresProblem.Evaluate(row, x);
        problem.AddTarget(row, value, 1 / (GivingWay * Math.Max(size, 1e-3)));
    }

    // A search needs two ends. A line that the answer has none of stays out, and none grows to more than twice and ten steps.
    private static void Widen(LeastSquaresProblem problem, double[] sizes, Assembly assembly, SolvedFormula answer)
    {
        for (int j = 0; j < answer.Grams.Count; j++)
        {
            double x = answer.Grams[j] / assembly.UnitGrams;
            if (x == 0)
            {
                problem.Lower[j] = problem.Upper[j] = 0;
                continue;
            }
            problem.Upper[j] = Math.Min(problem.Upper[j], 2 * x + 10 * sizes[j]);
            // Limits that hold no grid point would end the search; the nearest place beside them is what a scale can show.
            if (problem.Lower[j] < problem.Upper[j] && Math.Floor(problem.Upper[j] / sizes[j] + 1e-9)
                < Math.Ceiling(problem.Lower[j] / sizes[j] - 1e-9))
                (problem.Lower[j], problem.Upper[j]) = (Math.Floor(x / sizes[j]) * sizes[j], Math.Ceiling(x / sizes[j]) * sizes[j]);
        }
    }

    private static RoundedFormula Make(SolvedFormula answer, Assembly assembly, RoundingGrid.Step[] steps, double[] x, GridAnswer found)
    {
        FormulaProblem problem = answer.Problem;
        List<FormulaLine> lines = [];
        double[] grams = new double[answer.Grams.Count];
        for (int j = 0; j < grams.Length; j++)
        {
            grams[j] = x[j] * assembly.UnitGrams;
            Ingredient ingredient = problem.Candidates[j].Ingredient;
            bool isGiven = problem.Demands.Any(demand => demand is Demand.IngredientMass { IsFixed: true } mass
                && mass.Ingredient.Equals(ingredient));
            // Whole steps, not what is left of them after dividing by the unit and multiplying again.
            if (!isGiven)
                grams[j] = Math.Round(grams[j] / steps[j].Grams) * steps[j].Grams;
            if (grams[j] > 0)
                lines.Add(isGiven ? FormulaLine.Of(ingredient, grams[j]) : steps[j].Line(ingredient, grams[j]));
        }
        double boiledOff = x.Length > grams.Length ? assembly.BoiledOffGrams(x) : answer.BoiledOffGrams;
        // Rounding down may leave less water than was to boil off.
        double boiled = Math.Min(boiledOff, Formula.WaterOf(lines));
        return new RoundedFormula(
            lines.Sum(line => line.Grams.Likely) - boiled > 0 ? Formula.Of(problem.Name, lines, boiled) : null, grams,
            DemandResult.Of(problem, grams, boiledOff), found.Status == GridStatus.Proven, found.Value, found.LowerBound, found.Nodes);
    }
}
