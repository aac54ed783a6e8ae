using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>Small random problems against every active set there is (<see cref="ActiveSetEnumeration"/>).</summary>
public sealed class BruteForceTests
{
    // The answers of well conditioned problems of size 1 to 10; the acceptance of the published problems.
    private const double Accuracy = 1e-10;

    [Theory]
    [InlineData(2, 4000)]
    [InlineData(3, 2000)]
    [InlineData(4, 200)]
    public void DegenerateProblemsOfWholeNumbersAreSolvedExactly(int mostVariables, int count)
    {
        int infeasible = 0, singular = 0;
        for (int seed = 0; seed < count; seed++)
        {
            LeastSquaresProblem problem = WholeNumbers(new Random(seed), mostVariables);
            double[]? expected = ActiveSetEnumeration.Exact(problem);
            bool unique = ActiveSetEnumeration.StrictlyConvex(problem);
            infeasible += expected is null ? 1 : 0;
            singular += unique ? 0 : 1;
            Compare(problem, expected, unique, $"whole numbers, at most {mostVariables} unknowns, seed {seed}");
        }
        // Without these the test would show less than it says.
        Assert.InRange(infeasible, count / 20, count / 2);
        Assert.InRange(singular, count / 20, count / 2);
    }

    [Theory]
    [InlineData(4000)]
    public void ProblemsOfRealNumbersAreSolved(int count)
    {
        int infeasible = 0;
        for (int seed = 0; seed < count; seed++)
        {
            LeastSquaresProblem problem = RealNumbers(new Random(seed));
            double[]? expected = ActiveSetEnumeration.InDoubles(problem);
            infeasible += expected is null ? 1 : 0;
            Compare(problem, expected, true, $"real numbers, seed {seed}");
        }
        Assert.InRange(infeasible, count / 100, count / 2);
    }

    private static void Compare(LeastSquaresProblem problem, double[]? expected, bool unique, string which)
    {
        KernelAnswer answer = KernelAnswer.Of(problem);
        Assert.True((expected is null ? SolveStatus.Infeasible : SolveStatus.Optimal) == answer.Status, $"{which}: {answer.Status}");
        if (expected is null)
            return;
        double size = Math.Max(1, expected.Max(Math.Abs));
        for (int j = 0; unique && j < expected.Length; j++)
            Assert.True(Math.Abs(expected[j] - answer.X[j]) <= Accuracy * size, $"{which}: x{j} = {answer.X[j]:R}, expected {expected[j]:R}");
        (double best, double terms) = Objective(problem, expected);
        (double reached, _) = Objective(problem, answer.X);
        Assert.True(Math.Abs(best - reached) <= Accuracy * Math.Max(1, terms), $"{which}: objective {reached:R}, expected {best:R}");
        for (int k = 0; k < problem.Rows; k++)
        {
            double value = 0;
            for (int j = 0; j < problem.Variables; j++)
                value += problem.Row(k)[j] * answer.X[j];
            Assert.InRange(value, problem.RowLow[k] - Accuracy * size, problem.RowHigh[k] + Accuracy * size);
        }
        // Bounds hold to the last bit.
        for (int j = 0; j < problem.Variables; j++)
            Assert.InRange(answer.X[j], problem.Lower[j], problem.Upper[j]);
    }

    private static (double Value, double Terms) Objective(LeastSquaresProblem problem, double[] x)
    {
        double value = 0, terms = 0;
        for (int t = 0; t < problem.Targets; t++)
        {
            double residual = -problem.TargetValues[t];
            for (int j = 0; j < x.Length; j++)
                residual += problem.TargetRow(t)[j] * x[j];
            value += residual * residual / 2;
        }
        for (int j = 0; j < x.Length; j++)
        {
            double held = problem.Prior[j] * (x[j] - problem.Centre[j]);
            value += held * held / 2 + problem.Cost[j] * x[j];
            terms += Math.Abs(problem.Cost[j] * x[j]);
        }
        return (value, Math.Abs(value) + terms);
    }

    // Ties, duplicate rows and columns, fixed unknowns, dependent and contradictory equalities.
    private static LeastSquaresProblem WholeNumbers(Random random, int mostVariables)
    {
        int n = random.Next(1, mostVariables + 1), targets = random.Next(0, 4), rows = random.Next(0, 4);
        LeastSquaresProblem problem = new(n);
        int twin = random.Next(3) == 0 ? random.Next(n) : -1;
        for (int t = 0; t < targets; t++)
            problem.AddTarget(Row(), random.Next(-4, 5));
        bool held = random.Next(2) == 0, priced = random.Next(3) == 0;
        for (int j = 0; j < n; j++)
        {
            problem.Prior[j] = held ? random.Next(1, 3) : 0;
            problem.Centre[j] = random.Next(-3, 4);
            problem.Cost[j] = priced ? random.Next(-2, 3) : 0;
        }
        for (int k = 0; k < rows; k++)
        {
            (double low, double high) = Ends(false);
            if (k > 0 && random.Next(4) == 0)
                problem.AddRow(problem.Row(k - 1), low, high);
            else
                problem.AddRow(Row(), low, high);
        }
        bool open = ActiveSetEnumeration.StrictlyConvex(problem);
        for (int j = 0; j < n; j++)
        {
            (problem.Lower[j], problem.Upper[j]) = Ends(!open);
        }
        return problem;

        double[] Row()
        {
            double[] row = new double[n];
            for (int j = 0; j < n; j++)
                row[j] = random.Next(2) == 0 ? 0 : random.Next(-2, 3);
            if (twin > 0)
                row[twin] = row[0];
            return row;
        }

        (double, double) Ends(bool finite)
        {
            int low = random.Next(-3, 3);
            return random.Next(finite ? 3 : 6) switch
            {
                0 => (low, low),
                1 or 2 => (low, low + random.Next(1, 4)),
                3 => (low, double.PositiveInfinity),
                4 => (double.NegativeInfinity, low),
                _ => (double.NegativeInfinity, double.PositiveInfinity),
            };
        }
    }

    private static LeastSquaresProblem RealNumbers(Random random)
    {
        int n = random.Next(1, 7), rows = random.Next(0, 4), left = 9;
        LeastSquaresProblem problem = new(n);
        for (int t = random.Next(0, n + 2); t > 0; t--)
            problem.AddTarget(Row(), 2 * Real());
        for (int j = 0; j < n; j++)
        {
            problem.Prior[j] = random.Next(205, 1229) / 1024d;
            problem.Centre[j] = 2 * Real();
            problem.Cost[j] = random.Next(3) == 0 ? Real() : 0;
        }
        for (int k = 0; k < rows; k++)
        {
            (double low, double high) = Ends();
            problem.AddRow(Row(), low, high);
        }
        for (int j = 0; j < n; j++)
        {
            (problem.Lower[j], problem.Upper[j]) = Ends();
        }
        return problem;

        // Multiples of 1/1024, which a decimal holds exactly: the oracle corrects its answer in decimals.
        double Real() => random.Next(-1024, 1025) / 1024d;

        double[] Row()
        {
            double[] row = new double[n];
            for (int j = 0; j < n; j++)
                row[j] = Real();
            return row;
        }

        // Nine ends at most in all: every set of them is tried.
        (double, double) Ends()
        {
            double low = Real();
            int kind = random.Next(6), ends = kind switch { 0 => 0, 1 => 2, _ => 1 };
            if (left < ends)
                return (double.NegativeInfinity, double.PositiveInfinity);
            left -= ends;
            return kind switch
            {
                0 => (double.NegativeInfinity, double.PositiveInfinity),
                1 => (low, low + random.Next(1, 1025) / 1024d),
                2 when random.Next(2) == 0 => (low, low),
                2 or 3 => (double.NegativeInfinity, low),
                _ => (low, double.PositiveInfinity),
            };
        }
    }
}
