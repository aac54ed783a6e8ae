using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// How an answer moves with an end of a demand. The answer is piecewise smooth in the end, and linear for masses and for shares of
/// a given total: within the piece where the same demands bind, a difference of two answers is the derivative.
/// </summary>
internal static class SensitivitySearch
{
    private const int Bisections = 40;

    public static Sensitivity Of(SolvedFormula answer, Demand demand, bool ofLowEnd)
    {
        FormulaProblem problem = answer.Problem;
        MovedEnd end = new(problem, demand, ofLowEnd);
        if (answer.Status != SolutionStatus.Solved)
            throw new InvalidOperationException($"The problem is {answer.Status}; only an answer has a sensitivity.");
        double maximum = demand.MaximumEnd(end.Now);
        double lowest = end.MovesLow ? 0 : Math.Max(demand.LowEnd, 0), highest = end.MovesHigh ? maximum : Math.Min(demand.HighEnd, maximum);
        return ByTangent(answer, demand, ofLowEnd, end, lowest, highest) ?? ByAnswers(answer, demand, ofLowEnd, end, lowest, highest);
    }

    // Where only the ends of sums and masses move: from the answer itself.
    private static Sensitivity? ByTangent(SolvedFormula answer, Demand demand, bool ofLowEnd, MovedEnd end, double lowest, double highest)
    {
        FormulaProblem problem = answer.Problem;
        if (problem.TotalIsFree || demand is Demand.Total || problem.Choices.Any() || problem.IsCurved)
            return null;
        double at = end.Now, by = Math.Max(highest - at, at - lowest) / 1024 * (highest > at ? 1 : -1);
        if (by == 0)
            return null;
        Assembly assembly = Assembly.Of(problem, [], problem.Total!), moved = Assembly.Of(end.At(at + by), [], problem.Total!);
        RankedSolver solver = RankedSolver.Take();
        try
        {
            solver.KeepsLevels = true;
            if (solver.Solve(assembly.Ranked) != SolveStatus.Optimal
                || RankedTangent.Of(solver, assembly.Ranked, moved.Ranked, by) is not RankedTangent tangent)
                return null;
            double[] slope = new double[answer.Grams.Count];
            for (int j = 0; j < slope.Length; j++)
                slope[j] = tangent.Slope[j] * assembly.UnitGrams / demand.Factor;
            return new Sensitivity(demand, ofLowEnd, Math.Max(lowest, at - tangent.Back), Math.Min(highest, at + tangent.Ahead), slope);
        }
        finally
        {
            solver.GiveBack();
        }
    }

    /// <summary>By solving other problems: where a share of something that moves bends the answer, or it stands at a kink.</summary>
    private static Sensitivity ByAnswers(SolvedFormula answer, Demand demand, bool ofLowEnd, MovedEnd end, double lowest, double highest)
    {
        double at = end.Now;
        string kind = ProblemSolver.Signature(answer);
        double down = Reach(at - lowest, -1), up = Reach(highest - at, 1);
        double step = Math.Min(down, up) / 2;
        // At a kink one side only holds; the derivative is then that of the longer side. A side that is as short as the search is exact is none.
        (double from, double to) = step > 1e-5 * Math.Max(down, up) ? (at - step, at + step)
            : down > up ? (at - down / 2, at) : (at, at + up / 2);
        double[] slope = new double[answer.Grams.Count];
        if (to > from)
        {
            SolvedFormula low = At(from), high = At(to);
            for (int j = 0; j < slope.Length; j++)
                slope[j] = (high.Grams[j] - low.Grams[j]) / ((to - from) * demand.Factor);
        }
        return new Sensitivity(demand, ofLowEnd, at - down, at + up, slope);

        SolvedFormula At(double place) => end.At(place).Solve();

        double Reach(double farthest, int direction)
        {
            if (farthest <= 0 || IsSame(at + direction * farthest))
                return Math.Max(farthest, 0);
            double same = 0, other = farthest;
            for (int i = 0; i < Bisections && other - same > 1e-9 * farthest; i++)
            {
                double middle = (same + other) / 2;
                if (IsSame(at + direction * middle))
                    same = middle;
                else
                    other = middle;
            }
            return same;
        }

        bool IsSame(double place)
        {
            SolvedFormula there = At(place);
            return there.Status == SolutionStatus.Solved && ProblemSolver.Signature(there) == kind;
        }
    }
}
