using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>Least cost as a linear programme.</summary>
public sealed class LeastCostTests
{
    // A published exercise of a teaching page: 21 x + 7 y is least with 70 x + 21 y >= 168, 9 x + 7 y >= 27, 7 x + y >= 14, x, y >= 0. The
    // page prints (18/11, 28/11) and 52; it overlooks the corner of the first two conditions, (87/43, 54/43), at 2205/43 = 51.28.
    [Fact]
    public void TheCornerThatThePageOverlooksIsFound()
    {
        LeastSquaresProblem problem = new(2);
        problem.Lower.Clear();
        problem.Prior[..2].Fill(1);
        (problem.Cost[0], problem.Cost[1]) = (21, 7);
        problem.AddRow([70, 21], 168, double.PositiveInfinity);
        problem.AddRow([9, 7], 27, double.PositiveInfinity);
        problem.AddRow([7, 1], 14, double.PositiveInfinity);
        DualActiveSet kernel = new();
        Assert.Equal(SolveStatus.Optimal, LeastCost.Solve(kernel, problem));
        Assert.Equal(87.0 / 43, kernel.Solution[0], 1e-12);
        Assert.Equal(54.0 / 43, kernel.Solution[1], 1e-12);
    }

    // Infeasible sample of the documentation of R's limSolve, function linp: no x, y >= 0 meet all three.
    [Fact]
    public void AProgrammeWithoutAnAnswerIsProvedToHaveNone()
    {
        LeastSquaresProblem problem = new(2);
        problem.Lower.Clear();
        problem.Prior[..2].Fill(1);
        problem.Cost[0] = 1;
        problem.AddRow([-1, -1], double.NegativeInfinity, -3);
        problem.AddRow([-1, 1], double.NegativeInfinity, -1);
        problem.AddRow([1, 2], double.NegativeInfinity, 2);
        Assert.Equal(SolveStatus.Infeasible, LeastCost.Solve(new DualActiveSet(), problem));
    }
}
