using Confectio.Numerics;

namespace Confectio.Tests.Numerics;

/// <summary>One solve of the kernel, copied out of its workspace.</summary>
internal sealed class KernelAnswer
{
    private KernelAnswer(LeastSquaresProblem problem, DualActiveSet solver)
    {
        Status = solver.Solve(problem);
        X = solver.Solution.ToArray();
        RowMultipliers = new double[problem.Rows];
        BoundMultipliers = new double[problem.Variables];
        solver.CopyRowMultipliers(RowMultipliers);
        solver.CopyBoundMultipliers(BoundMultipliers);
        RowProof = solver.RowProof.ToArray();
        BoundProof = solver.BoundProof.ToArray();
        RowSides = [.. Enumerable.Range(0, problem.Rows).Select(solver.SideOfRow)];
        BoundSides = [.. Enumerable.Range(0, problem.Variables).Select(solver.SideOfBound)];
        Check = OptimalityCheck.Of(problem, X, RowMultipliers, BoundMultipliers);
    }

    public SolveStatus Status { get; }

    public double[] X { get; }

    public double[] RowMultipliers { get; }

    public double[] BoundMultipliers { get; }

    public double[] RowProof { get; }

    public double[] BoundProof { get; }

    public int[] RowSides { get; }

    public int[] BoundSides { get; }

    public OptimalityCheck Check { get; }

    public static KernelAnswer Of(LeastSquaresProblem problem) => new(problem, new DualActiveSet());

    /// <summary>The multiplier of a condition of an oracle, by its name there.</summary>
    public double Multiplier(OracleProblem oracle, string condition) => condition[..2] switch
    {
        "lo" => Math.Max(BoundMultipliers[Position(condition, 2)], 0),
        "hi" => Math.Max(-BoundMultipliers[Position(condition, 2)], 0),
        _ => RowMultipliers[oracle.Equalities.Length + Position(condition, 1)],
    };

    /// <summary>The conditions held at an end, by their names in the oracle; equalities apart.</summary>
    public IEnumerable<string> Held(OracleProblem oracle)
    {
        for (int k = oracle.Equalities.Length; k < RowSides.Length; k++)
        {
            if (RowSides[k] != 0)
                yield return $"G{k - oracle.Equalities.Length}";
        }
        for (int j = 0; j < BoundSides.Length; j++)
        {
            if (BoundSides[j] != 0)
                yield return BoundSides[j] > 0 ? $"lo{j}" : $"hi{j}";
        }
    }

    private static int Position(string condition, int from) => int.Parse(condition.AsSpan(from), System.Globalization.CultureInfo.InvariantCulture);
}
