using Confectio.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>What must hold of every problem that has one answer: the numbers come from a seed, the curvature is never singular.</summary>
public sealed class KernelProperties
{
    // Random numbers of size 1 and a prior of at least 0.05: the condition number is at most some 10⁴, and 10⁴ roundings of 1e-16 each.
    private const double Rounding = 1e-10;

    [Property(MaxTest = 2000)]
    public void TheOrderOfUnknownsAndRowsDoesNotMatter(int seed)
    {
        LeastSquaresProblem problem = new FuzzProblems().Make(Hardship.None, seed);
        Random random = new(seed);
        int[] unknowns = Shuffled(random, problem.Variables), rows = Shuffled(random, problem.Rows), targets = Shuffled(random, problem.Targets);
        LeastSquaresProblem turned = new(problem.Variables);
        foreach (int t in targets)
            turned.AddTarget(Pick(problem.TargetRow(t), unknowns), problem.TargetValues[t]);
        foreach (int k in rows)
            turned.AddRow(Pick(problem.Row(k), unknowns), problem.RowLow[k], problem.RowHigh[k]);
        Pick(problem.Prior, unknowns).CopyTo(turned.Prior);
        Pick(problem.Centre, unknowns).CopyTo(turned.Centre);
        Pick(problem.Lower, unknowns).CopyTo(turned.Lower);
        Pick(problem.Upper, unknowns).CopyTo(turned.Upper);
        KernelAnswer answer = KernelAnswer.Of(problem), other = KernelAnswer.Of(turned);
        Assert.Equal(answer.Status, other.Status);
        if (answer.Status == SolveStatus.Optimal)
            AssertNear(Pick(answer.X, unknowns), other.X);
    }

    [Property(MaxTest = 2000)]
    public void TheUnitOfARowDoesNotMatter(int seed)
    {
        LeastSquaresProblem problem = new FuzzProblems().Make(Hardship.None, seed);
        KernelAnswer answer = KernelAnswer.Of(problem);
        Random random = new(seed);
        for (int k = 0; k < problem.Rows; k++)
        {
            // Times a power of two nothing is rounded.
            double factor = Math.ScaleB(1, random.Next(-20, 21));
            foreach (ref double entry in problem.Row(k))
                entry *= factor;
            problem.RowLow[k] *= factor;
            problem.RowHigh[k] *= factor;
        }
        KernelAnswer other = KernelAnswer.Of(problem);
        Assert.Equal(answer.Status, other.Status);
        if (answer.Status == SolveStatus.Optimal)
            AssertNear(answer.X, other.X);
    }

    [Property(MaxTest = 2000)]
    public void ARedundantRowDoesNotMatter(int seed)
    {
        LeastSquaresProblem problem = new FuzzProblems().Make(Hardship.None, seed);
        KernelAnswer answer = KernelAnswer.Of(problem);
        if (problem.Rows < 2)
            return;
        // A row once more, and a sum of two rows within the sum of their ends.
        double[] once = problem.Row(0).ToArray(), sum = [.. problem.Row(0).ToArray().Zip(problem.Row(1).ToArray(), (a, b) => a + b)];
        problem.AddRow(once, problem.RowLow[0], problem.RowHigh[0]);
        problem.AddRow(sum, problem.RowLow[0] + problem.RowLow[1], problem.RowHigh[0] + problem.RowHigh[1]);
        KernelAnswer other = KernelAnswer.Of(problem);
        Assert.Equal(answer.Status, other.Status);
        if (answer.Status == SolveStatus.Optimal)
            AssertNear(answer.X, other.X);
    }

    [Property(MaxTest = 2000)]
    public void NoPossiblePointIsBetter(int seed)
    {
        LeastSquaresProblem problem = new FuzzProblems().Make(seed % 2 == 0 ? Hardship.None : Hardship.NoPrior, seed);
        KernelAnswer answer = KernelAnswer.Of(problem);
        if (answer.Status != SolveStatus.Optimal)
            return;
        Random random = new(seed);
        for (int trial = 0; trial < 5; trial++)
        {
            // A random point brought to the nearest possible one. That it is possible is checked, so the solver may find it.
            LeastSquaresProblem nearest = new(problem.Variables);
            for (int k = 0; k < problem.Rows; k++)
                nearest.AddRow(problem.Row(k), problem.RowLow[k], problem.RowHigh[k]);
            problem.Lower.CopyTo(nearest.Lower);
            problem.Upper.CopyTo(nearest.Upper);
            for (int j = 0; j < problem.Variables; j++)
            {
                nearest.Prior[j] = 1;
                nearest.Centre[j] = answer.X[j] + Math.Pow(10, -4 * random.NextDouble()) * (2 * random.NextDouble() - 1);
            }
            KernelAnswer point = KernelAnswer.Of(nearest);
            Assert.Equal(SolveStatus.Optimal, point.Status);
            Assert.True(point.Check.PrimalViolation <= 1e-12);
            double best = answer.Check.Objective, there = OptimalityCheck.Of(problem, point.X, new double[problem.Rows], new double[problem.Variables]).Objective;
            Assert.True(best <= there + Rounding * Math.Max(1, Math.Abs(there)), $"{best:R} against {there:R}");
        }
    }

    private static void AssertNear(double[] expected, double[] actual)
    {
        double size = Math.Max(1, expected.Max(Math.Abs));
        for (int j = 0; j < expected.Length; j++)
            Assert.Equal(expected[j], actual[j], Rounding * size);
    }

    private static double[] Pick(ReadOnlySpan<double> from, int[] order)
    {
        double[] picked = new double[order.Length];
        for (int i = 0; i < order.Length; i++)
            picked[i] = from[order[i]];
        return picked;
    }

    private static int[] Shuffled(Random random, int count)
    {
        int[] order = [.. Enumerable.Range(0, count)];
        random.Shuffle(order);
        return order;
    }
}
