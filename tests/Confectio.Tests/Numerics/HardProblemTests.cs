using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>
/// Small problems that once went wrong, most of them found at random (<see cref="FuzzTests"/>) and cut down. Each expected answer is
/// arithmetic that fits in the comment beside it.
/// </summary>
public sealed class HardProblemTests
{
    private const double Free = double.PositiveInfinity;

    // x1 is at least 0.44, so -0.12 x1 is at most -0.0528.
    [Fact]
    public void ARowThatABoundContradictsUnderACost() => AssertImpossible(Problem(2,
        targets: [([-0.0005896924997631503, 0.35], 0)], rows: [(0.32, [0, -0.12], Free)],
        bounds: [(0.27, 0.81), (0.44, 0.4448552333958704)], cost: [0.45, 0]));

    // -0.26 x1 + 0.16 x2 - 0.66 x3 is at least 0.0208 - 0.1424 + 0.2112 = 0.0896.
    [Fact]
    public void ARowThatThreeBoundsContradictUnderACost() => AssertImpossible(Problem(4,
        rows: [(-Free, [0, -0.26, 0.16, -0.66], -0.03)],
        bounds: [(-0.01, 0.71), (-0.59, -0.08), (-0.89, -0.55), (-0.32, -0.32)], cost: [0, 0, 0.81, 0], prior: [0.12, 0, 0, 0]));

    // The row is at least 0.3094 + 0.2331 - 0.2967 = 0.2458.
    [Fact]
    public void ARowThatAFixedUnknownContradicts() => AssertImpossible(Problem(4,
        rows: [(-Free, [0.34, 0.63, -0.43, 0], 0.16)],
        bounds: [(0.91, 0.91), (0.37, 1.1), (-0.12, 0.69), (-0.83, -0.64)], cost: [0, 0, 0.93, 0], prior: [0, 0, 0, 0.05]));

    // The row is at most -0.1148 + 0.595 - 0.1881 = 0.2921.
    [Fact]
    public void ARowThatTwoFixedUnknownsContradict() => AssertImpossible(Problem(3,
        rows: [(0.32, [-0.14, 0.85, -0.19], Free)],
        bounds: [(0.82, 0.82), (0.25, 0.7), (0.99, 0.99)], cost: [0, 0.19, 0], prior: [0, 0, 0.17]));

    // The row is at least 0.567 + 0.0252 - 0.00009; the small coefficient makes its normal nearly a sum of the bounds'.
    [Fact]
    public void ASmallCoefficientInAContradiction() => AssertImpossible(Problem(5,
        targets: [([0.5925526449422132, 0.4038435450772957, -0.73, 0.1425998570130207, 0.98], 0)],
        rows: [(-Free, [0.63, 0.36, 0, 0, 8.871452887015963E-05], 0.19)],
        bounds: [(0.9, Free), (0.07, Free), (0.46, Free), (-0.11, 0.71), (-0.99, Free)], prior: [1, 1, 1.02413812157425, 1, 1], centre: [0, 0, 0, -0.66, 0]));

    // The row is at least -0.0001 + 0.2021 + 0.6049.
    [Fact]
    public void ASmallCoefficientInAContradictedEquality() => AssertImpossible(Problem(4,
        rows: [(-0.4404578671979056, [-5.3438823695017845E-05, 0, -0.36068420734288364, 0.6797103116659962], -0.4404578671979056), (-Free, [0, -0.84, 0, 0], 1.74)],
        bounds: [(-Free, 0.95), (-Free, Free), (-0.5603296521866367, -0.5603296521866367), (0.89, Free)],
        prior: [1, 1, 0.24127457504685718, 0.1989109402284543]));

    // Both unknowns of the first row are above zero, the second in another unit.
    [Fact]
    public void AContradictionBetweenUnits() => AssertImpossible(Problem(3,
        rows: [(-Free, [0, 55.80827535438081, 1.42], 0), (-38.64, [-539.64, 0, 0], Free)],
        bounds: [(-Free, Free), (0, Free), (1.0329232693044907E-06, Free)], prior: [1, 1, 501202.42], centre: [0, 0, 3.4530731941710075E-06]));

    // Twice the first row is -4 x0 - 4 x1 = 2, so that the second gives x2 = -3: x1 has nothing to do with it.
    [Fact]
    public void AContradictionBesideAFreeDirection() => AssertImpossible(Problem(3,
        targets: [([0, 0, -2], 0)], rows: [(1, [-2, -2, 0], 1), (-1, [-4, -4, 1], -1)],
        bounds: [(-Free, Free), (-3, Free), (3, Free)], prior: [0, 0, 0]));

    // Of the rows, x1 is at most 2 + 2 (x0 + x2) and that at most 2 - 2.
    [Fact]
    public void AContradictionOfInequalitiesBesideAFreeDirection() => AssertImpossible(Problem(3,
        targets: [([0, 1, 0], 4)], rows: [(1, [-1, 0, -1], Free), (-Free, [-2, 1, -2], 2)],
        bounds: [(-Free, Free), (3, Free), (-1, Free)], prior: [0, 0, 0]));

    // One unknown, and a cost that falls towards its upper bound.
    [Fact]
    public void ASmallCostGoesAllTheWay() => AssertOptimal(-0.00016289530329538504 * 1.31,
        Problem(1, bounds: [(0.54, 1.31)], cost: [-0.00016289530329538504], prior: [0]));

    // Per unit of the row x0 costs 0.94366 and x1 0.94384: as much of x0 as there may be, and the rest x1 = (0.16 - 0.61 x 0.34) / 0.85.
    [Fact]
    public void ACostNearlyParallelToARow() => AssertOptimal(0.5756322916483656 * 0.34 + 0.8022606614056327 * (0.16 - 0.61 * 0.34) / 0.85,
        Problem(2, rows: [(0.16, [0.61, 0.85], Free)], bounds: [(-0.42, 0.34), (-0.29, 0.11)],
            cost: [0.5756322916483656, 0.8022606614056327], prior: [0, 0]));

    // The second row is the target's own: it keeps -2 x1 - x2 at -1, 3 below the target.
    [Fact]
    public void ATargetHeldByItsOwnRow() => AssertOptimal(4.5, Problem(3,
        targets: [([0, -2, -1], 2)], rows: [(2, [1, 0, -2], 2), (-Free, [0, -2, -1], -1)],
        bounds: [(-Free, Free), (-Free, Free), (-Free, Free)], prior: [0, 0, 0]));

    // -x0 is at most -1 and x2 - x1 at most 0.
    [Fact]
    public void ATargetHeldByARowAndABound() => AssertOptimal(4.5, Problem(4,
        targets: [([-1, -1, 1, 0], 2)], rows: [(-Free, [0, -1, 1, 0], 0), (8, [4, -6, 0, -2], 8)],
        bounds: [(1, Free), (-Free, Free), (-Free, Free), (-Free, Free)], prior: [0, 0, 0, 0]));

    private static void AssertOptimal(double objective, LeastSquaresProblem problem)
    {
        KernelAnswer answer = KernelAnswer.Of(problem);
        Assert.Equal(SolveStatus.Optimal, answer.Status);
        Assert.True(answer.Check.Worst <= 1e-10);
        Assert.Equal(objective, answer.Check.Objective, 1e-10 * Math.Abs(objective));
    }

    // The proof holds, and speaks of nothing that is not needed: without any one member there is an answer to the rest of them.
    private static void AssertImpossible(LeastSquaresProblem problem)
    {
        KernelAnswer answer = KernelAnswer.Of(problem);
        Assert.Equal(SolveStatus.Infeasible, answer.Status);
        Assert.True(FarkasOracle.HoldsInDoubles(problem, answer.RowProof, answer.BoundProof));
        // Whether there is an answer is asked without a cost, which nothing might bound.
        problem.Cost.Clear();
        problem.Prior[..problem.Variables].Fill(1);
        for (int k = 0; k < problem.Rows; k++)
        {
            if (answer.RowProof[k] == 0)
                (problem.RowLow[k], problem.RowHigh[k]) = (-Free, Free);
        }
        for (int j = 0; j < problem.Variables; j++)
        {
            if (!(answer.BoundProof[j] > 0))
                problem.Lower[j] = -Free;
            if (!(answer.BoundProof[j] < 0))
                problem.Upper[j] = Free;
        }
        for (int k = 0; k < problem.Rows; k++)
        {
            (double low, double high) = (problem.RowLow[k], problem.RowHigh[k]);
            (problem.RowLow[k], problem.RowHigh[k]) = (-Free, Free);
            Assert.True(answer.RowProof[k] == 0 || KernelAnswer.Of(problem).Status == SolveStatus.Optimal, $"row {k} is not needed");
            (problem.RowLow[k], problem.RowHigh[k]) = (low, high);
        }
        for (int j = 0; j < problem.Variables; j++)
        {
            (double low, double high) = (problem.Lower[j], problem.Upper[j]);
            (problem.Lower[j], problem.Upper[j]) = (-Free, Free);
            Assert.True(answer.BoundProof[j] == 0 || KernelAnswer.Of(problem).Status == SolveStatus.Optimal, $"the bound of x{j} is not needed");
            (problem.Lower[j], problem.Upper[j]) = (low, high);
        }
    }

    private static LeastSquaresProblem Problem(int variables, (double Low, double High)[] bounds, (double[] Row, double Value)[]? targets = null,
        (double Low, double[] Row, double High)[]? rows = null, double[]? cost = null, double[]? prior = null, double[]? centre = null)
    {
        LeastSquaresProblem problem = new(variables);
        foreach ((double[] row, double value) in targets ?? [])
            problem.AddTarget(row, value);
        foreach ((double low, double[] row, double high) in rows ?? [])
            problem.AddRow(row, low, high);
        for (int j = 0; j < variables; j++)
            (problem.Lower[j], problem.Upper[j]) = bounds[j];
        cost?.CopyTo(problem.Cost);
        prior?.CopyTo(problem.Prior);
        centre?.CopyTo(problem.Centre);
        return problem;
    }
}
