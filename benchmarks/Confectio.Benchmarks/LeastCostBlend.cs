using BenchmarkDotNet.Attributes;
using Confectio.Numerics;
using Google.OrTools.LinearSolver;

namespace Confectio.Benchmarks;

/// <summary>
/// The cheapest blend of six ingredients (USDA SR28 compositions, invented prices) with fat, water, sugars and protein within
/// limits. The peer is the simplex method GLOP of OR-Tools, native code. Both build their model and solve it; both find 9.26073.
/// Needs <c>-p:BesideOrTools=true</c>, and runs in this process because the tool's own build would not know that.
/// </summary>
[InProcess]
[MemoryDiagnoser]
public class LeastCostBlend
{
    private static readonly double[] s_cost = [0.0140, 0.0062, 0.0095, 0.0035, 0.0090, 0.0055];
    private static readonly double[] s_most = [600, 420, 100, 120, 60, 300];
    private static readonly double[][] s_rows =
    [
        [1, 1, 1, 1, 1, 1],
        [0.3831, 0.37, 0.8111, 0.002, 0, 0.087],
        [0.0125, 0.5771, 0.1794, 0.2281, 0.171, 0.2716],
        [0.3671, 0.0279, 0.0006, 0.7677, 0.8212, 0.544],
        [0.0612, 0.0205, 0.0085, 0, 0.003, 0.0791],
    ];
    private static readonly double[] s_low = [1000, 340, 190, double.NegativeInfinity, 38];
    private static readonly double[] s_high = [1000, 380, 230, 340, double.PositiveInfinity];

    private readonly DualActiveSet _kernel = new();
    private readonly LeastSquaresProblem _problem = new(6);

    [GlobalSetup]
    public void Check()
    {
        foreach (double cost in new[] { Kernel(), Glop() })
        {
            if (Math.Abs(cost - 9.2607301183846881) > 1e-9)
                throw new InvalidOperationException($"The cost is {cost:R}.");
        }
    }

    [Benchmark(Baseline = true)]
    public double Glop()
    {
        using Solver solver = Solver.CreateSolver("GLOP");
        Variable[] x = [.. s_most.Select((most, j) => solver.MakeNumVar(0, most, "x" + j))];
        for (int k = 0; k < s_rows.Length; k++)
        {
            Constraint row = solver.MakeConstraint(s_low[k], s_high[k]);
            for (int j = 0; j < x.Length; j++)
                row.SetCoefficient(x[j], s_rows[k][j]);
        }
        Objective objective = solver.Objective();
        for (int j = 0; j < x.Length; j++)
            objective.SetCoefficient(x[j], s_cost[j]);
        objective.SetMinimization();
        solver.Solve();
        return objective.Value();
    }

    [Benchmark]
    public double Kernel()
    {
        _problem.Reset(6);
        for (int j = 0; j < 6; j++)
        {
            _problem.Lower[j] = 0;
            _problem.Upper[j] = s_most[j];
            _problem.Cost[j] = s_cost[j];
            _problem.Centre[j] = s_most[j] / 2;
            _problem.Prior[j] = 2 / s_most[j];
        }
        for (int k = 0; k < s_rows.Length; k++)
            _problem.AddRow(s_rows[k], s_low[k], s_high[k]);
        LeastCost.Solve(_kernel, _problem);
        double cost = 0;
        for (int j = 0; j < 6; j++)
            cost += s_cost[j] * _kernel.Solution[j];
        return cost;
    }
}
