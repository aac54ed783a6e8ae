namespace Confectio.Numerics;

/// <summary>
/// Least cost on the kernel: minimise c·x + (ε/2)‖D(x − x₀)‖². For a linear programme a small enough ε gives an exact optimum of
/// the programme, the one nearest to x₀ (Mangasarian and Meyer, SIAM Journal on Control and Optimization 17 (1979) 745-752).
/// Whether ε was small enough is not guessed: the active normals must carry the cost itself with multipliers of the right sign,
/// which proves the answer optimal for the programme by duality.
/// </summary>
internal static class LeastCost
{
    private const int MostTries = 10;

    /// <summary>Solves; the problem's prior is D and is left as it was.</summary>
    public static SolveStatus Solve(DualActiveSet kernel, LeastSquaresProblem problem)
    {
        double cost = 0, held = 0;
        for (int j = 0; j < problem.Variables; j++)
        {
            cost = Math.Max(cost, Math.Abs(problem.Cost[j]));
            held = Math.Max(held, problem.Prior[j]);
        }
        if (cost == 0)
            return kernel.Solve(problem);
        // From the pull of the prior equal to the cost's, downwards.
        double share = Math.Sqrt(1e-2 * cost) / Math.Max(held, double.Epsilon);
        for (int attempt = 0; attempt < MostTries; attempt++, share /= 5)
        {
            Scale(problem.Prior, share);
            SolveStatus status = kernel.Solve(problem);
            bool proved = status == SolveStatus.Optimal && kernel.CarriesCost();
            Scale(problem.Prior, 1 / share);
            if (status != SolveStatus.Optimal || proved)
                return status;
        }
        return SolveStatus.Undecided;
    }

    /// <summary>
    /// The least (1) or the most (-1) of a sum over what the conditions allow; the place is the kernel's solution. Null where that is not
    /// decided. The cost of the problem is left clear.
    /// </summary>
    public static double? Extreme(DualActiveSet kernel, LeastSquaresProblem problem, ReadOnlySpan<double> sum, int sign)
    {
        for (int j = 0; j < sum.Length; j++)
            problem.Cost[j] = sign * sum[j];
        SolveStatus status = Solve(kernel, problem);
        problem.Cost.Clear();
        return status == SolveStatus.Optimal ? LeastSquaresProblem.Evaluate(sum, kernel.Solution[..sum.Length]).Value : null;
    }

    private static void Scale(Span<double> prior, double factor)
    {
        foreach (ref double entry in prior)
            entry *= factor;
    }
}
