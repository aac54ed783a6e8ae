using Confectio.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Confectio.Benchmarks;

/// <summary>A seeded formula problem: shares that add up to one, targets up to 15 % off the base, no line more than 30 % above it.</summary>
internal static class RandomProblem
{
    public static LeastSquaresProblem Make(int lines, int targets, int seed)
    {
        Random random = new(seed);
        double[] share = new double[lines], row = new double[lines];
        for (int j = 0; j < lines; j++)
            share[j] = random.NextDouble() + 0.05;
        double sum = share.Sum();
        LeastSquaresProblem problem = new(lines);
        for (int j = 0; j < lines; j++)
            share[j] /= sum;
        for (int t = 0; t < targets; t++)
        {
            double value = 0;
            for (int j = 0; j < lines; j++)
            {
                row[j] = random.NextDouble();
                value += row[j] * share[j];
            }
            problem.AddTarget(row, value * (1 + 0.3 * (random.NextDouble() - 0.5)), weight: 100);
        }
        for (int j = 0; j < lines; j++)
        {
            problem.Prior[j] = 0.2 / share[j];
            problem.Centre[j] = share[j];
            problem.Lower[j] = 0;
            problem.Upper[j] = 1.3 * share[j];
            row[j] = 1;
        }
        problem.AddRow(row, 1, 1);
        return problem;
    }

    public static (Matrix<double> Stacked, Vector<double> Right) Stack(LeastSquaresProblem problem)
    {
        int n = problem.Variables, m = problem.Targets;
        Matrix<double> stacked = Matrix<double>.Build.Dense(m + n, n);
        Vector<double> right = Vector<double>.Build.Dense(m + n);
        for (int t = 0; t < m; t++)
        {
            for (int j = 0; j < n; j++)
                stacked[t, j] = problem.TargetRow(t)[j];
            right[t] = problem.TargetValues[t];
        }
        for (int j = 0; j < n; j++)
        {
            stacked[m + j, j] = problem.Prior[j];
            right[m + j] = problem.Prior[j] * problem.Centre[j];
        }
        return (stacked, right);
    }
}
