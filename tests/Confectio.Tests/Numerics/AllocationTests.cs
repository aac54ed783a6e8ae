using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>The solver is a workspace: after the first solve of a size, another allocates nothing.</summary>
public sealed class AllocationTests
{
    private const int Unknowns = 12, Rows = 6;

    [Theory]
    [InlineData("with a prior", true)]
    [InlineData("of singular curvature", true)]
    [InlineData("with a cost", true)]
    [InlineData("impossible", false)]
    public void ASecondSolveAllocatesNothing(string kind, bool possible)
    {
        DualActiveSet solver = new();
        LeastSquaresProblem problem = new(Unknowns);
        double[] coefficients = new double[Unknowns], rowMultipliers = new double[Rows], boundMultipliers = new double[Unknowns];
        SolveStatus status = default;
        OptimalityCheck check = default;
        long allocated = long.MaxValue;
        // The first round makes room; the others are of the same size and of other numbers. The runtime allocates now and then itself.
        for (int round = 0; round < 5 && allocated > 0; round++)
        {
            Random random = new(round);
            long before = GC.GetAllocatedBytesForCurrentThread();
            Fill(problem, random, coefficients, kind);
            status = solver.Solve(problem);
            solver.CopyRowMultipliers(rowMultipliers);
            solver.CopyBoundMultipliers(boundMultipliers);
            check = OptimalityCheck.Of(problem, solver.Solution, rowMultipliers, boundMultipliers);
            allocated = Math.Min(allocated, GC.GetAllocatedBytesForCurrentThread() - before);
        }
        Assert.Equal(possible ? SolveStatus.Optimal : SolveStatus.Infeasible, status);
        Assert.True(!possible || check.Worst <= 1e-10);
        Assert.Equal(kind is "of singular curvature" or "with a cost", solver.Passes > 0);
        Assert.Equal(0, allocated);
    }

    [Fact]
    public void ASmallerProblemFitsInTheSameRoom()
    {
        DualActiveSet solver = new();
        LeastSquaresProblem problem = new(Unknowns);
        double[] coefficients = new double[Unknowns];
        Fill(problem, new Random(1), coefficients, "with a prior");
        solver.Solve(problem);
        LeastSquaresProblem smaller = new(Unknowns - 5);
        Fill(smaller, new Random(2), coefficients, "with a prior");
        Assert.Equal(0, Allocated.Least(() => solver.Solve(smaller)));
        Assert.Equal(SolveStatus.Optimal, solver.Solve(smaller));
    }

    private static void Fill(LeastSquaresProblem problem, Random random, double[] coefficients, string kind)
    {
        int n = problem.Variables;
        problem.Reset(n);
        for (int t = 0; t < 4; t++)
        {
            FillRow();
            problem.AddTarget(coefficients, 0.3 * n);
        }
        // Within bounds of 0 to 1 every row of shares can be anything from 0 to a quarter of the unknowns.
        for (int k = 0; k < Rows; k++)
        {
            FillRow();
            if (k == 0)
                problem.AddRow(coefficients, 0.1, 0.1);
            else
                problem.AddRow(coefficients, kind == "impossible" && k == Rows - 1 ? n : 0, kind == "impossible" && k == Rows - 1 ? 2 * n : 0.3 * n);
        }
        for (int j = 0; j < n; j++)
        {
            (problem.Lower[j], problem.Upper[j]) = (0, 1);
            problem.Prior[j] = kind is "of singular curvature" or "with a cost" ? 0 : 0.5;
            problem.Centre[j] = random.NextDouble();
            problem.Cost[j] = kind == "with a cost" ? random.NextDouble() : 0;
        }

        void FillRow()
        {
            for (int j = 0; j < n; j++)
                coefficients[j] = random.NextDouble();
        }
    }
}
