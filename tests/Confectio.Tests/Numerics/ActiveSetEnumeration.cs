using Confectio.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Confectio.Tests.Numerics;

/// <summary>
/// The oracle without an idea: every set of at most n conditions held at an end, the optimality system of each solved, and the one
/// taken whose answer meets the other conditions and whose multipliers have the right signs. A convex problem has no other optimum.
/// </summary>
/// <remarks>
/// A strictly convex problem with an answer has such a set with independent normals; so has any problem within finite bounds on all
/// unknowns, at a corner of its optima. Where none is found the conditions contradict each other.
/// </remarks>
internal static class ActiveSetEnumeration
{
    // What rounding leaves of a condition or a sign, relative to the largest number found: in doubles, and after the correction.
    private const decimal Plausible = 1e-6m, Rounding = 1e-20m;

    private const double Largest = 1e10;

    /// <summary>In exact arithmetic, for a problem of small whole numbers. Null: infeasible.</summary>
    public static double[]? Exact(LeastSquaresProblem problem)
    {
        int n = problem.Variables;
        (double[,] curvature, double[] pull) = NormalForm(problem);
        double[]? answer = null;
        Visit(problem, held =>
        {
            int size = n + held.Count;
            Int128[,] system = new Int128[size, size + 1];
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                    system[i, j] = Whole(curvature[i, j]);
                system[i, size] = Whole(pull[i]);
            }
            for (int k = 0; k < held.Count; k++)
            {
                (double[] normal, double low, double high) = Condition(problem, held[k].Condition);
                for (int j = 0; j < n; j++)
                {
                    system[n + k, j] = Whole(normal[j]);
                    system[j, n + k] = -Whole(normal[j]);
                }
                system[n + k, size] = Whole(held[k].Side > 0 ? low : high);
            }
            Int128 denominator = WholeNumberElimination.Solve(system);
            if (denominator == 0)
                return false;
            int sign = Int128.Sign(denominator);
            for (int k = 0; k < held.Count; k++)
            {
                (_, double low, double high) = Condition(problem, held[k].Condition);
                if (low != high && Int128.Sign(system[n + k, size]) * sign * held[k].Side < 0)
                    return false;
            }
            for (int c = 0; c < problem.Rows + n; c++)
            {
                (double[] normal, double low, double high) = Condition(problem, c);
                Int128 value = 0;
                for (int j = 0; j < n; j++)
                    value += Whole(normal[j]) * system[j, size];
                if (double.IsFinite(low) && (value - Whole(low) * denominator) * sign < 0)
                    return false;
                if (double.IsFinite(high) && (Whole(high) * denominator - value) * sign < 0)
                    return false;
            }
            answer = new double[n];
            for (int j = 0; j < n; j++)
                answer[j] = (double)system[j, size] / (double)denominator;
            return true;
        });
        return answer;
    }

    /// <summary>The same in doubles, for random numbers that a decimal holds exactly: the answer is then corrected in decimals.</summary>
    public static double[]? InDoubles(LeastSquaresProblem problem)
    {
        int n = problem.Variables;
        (double[,] curvature, double[] pull) = NormalForm(problem);
        double[]? answer = null;
        Visit(problem, held =>
        {
            int size = n + held.Count;
            Matrix<double> system = Matrix<double>.Build.Dense(size, size);
            Vector<double> right = Vector<double>.Build.Dense(size);
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                    system[i, j] = curvature[i, j];
                right[i] = pull[i];
            }
            for (int k = 0; k < held.Count; k++)
            {
                (double[] normal, double low, double high) = Condition(problem, held[k].Condition);
                for (int j = 0; j < n; j++)
                {
                    system[n + k, j] = normal[j];
                    system[j, n + k] = -normal[j];
                }
                right[n + k] = held[k].Side > 0 ? low : high;
            }
            Vector<double> solution = system.Solve(right);
            // A set of dependent normals gives no answer, or one of the size of 1/rounding.
            if (!(solution.AbsoluteMaximum() < Largest) || !Meets(problem, held, [.. solution.Select(value => (decimal)value)], Plausible))
                return false;
            decimal[] corrected = CorrectedInDecimals(problem, held, system, solution);
            if (!Meets(problem, held, corrected, Rounding))
                return false;
            answer = [.. corrected.Take(n).Select(value => (double)value)];
            return true;
        });
        return answer;
    }

    // Whether the other conditions are met and the multipliers have the right signs.
    private static bool Meets(LeastSquaresProblem problem, List<(int Condition, int Side)> held, decimal[] solution, decimal rounding)
    {
        decimal allowed = rounding * Math.Max(1, solution.Max(Math.Abs));
        for (int k = 0; k < held.Count; k++)
        {
            (_, double low, double high) = Condition(problem, held[k].Condition);
            if (low != high && solution[problem.Variables + k] * held[k].Side < -allowed)
                return false;
        }
        for (int c = 0; c < problem.Rows + problem.Variables; c++)
        {
            (double[] normal, double low, double high) = Condition(problem, c);
            decimal value = 0;
            for (int j = 0; j < problem.Variables; j++)
                value += (decimal)normal[j] * solution[j];
            if ((double.IsFinite(low) && value < (decimal)low - allowed) || (double.IsFinite(high) && value > (decimal)high + allowed))
                return false;
        }
        return true;
    }

    // Steps of iterative refinement on the optimality system as stated, A'A in decimals too: the residuals lose nothing.
    private static decimal[] CorrectedInDecimals(LeastSquaresProblem problem, List<(int Condition, int Side)> held, Matrix<double> system, Vector<double> solution)
    {
        const int Steps = 6;
        int n = problem.Variables;
        var factor = system.LU();
        decimal[] x = [.. solution.Select(value => (decimal)value)];
        for (int step = 0; step < Steps; step++)
        {
            decimal[] rest = new decimal[x.Length];
            for (int t = 0; t < problem.Targets; t++)
            {
                ReadOnlySpan<double> row = problem.TargetRow(t);
                decimal residual = (decimal)problem.TargetValues[t];
                for (int j = 0; j < n; j++)
                    residual -= (decimal)row[j] * x[j];
                for (int j = 0; j < n; j++)
                    rest[j] += (decimal)row[j] * residual;
            }
            for (int j = 0; j < n; j++)
            {
                decimal prior = (decimal)problem.Prior[j];
                rest[j] += prior * prior * ((decimal)problem.Centre[j] - x[j]) - (decimal)problem.Cost[j];
            }
            for (int k = 0; k < held.Count; k++)
            {
                (double[] normal, double low, double high) = Condition(problem, held[k].Condition);
                rest[n + k] = (decimal)(held[k].Side > 0 ? low : high);
                for (int j = 0; j < n; j++)
                {
                    rest[j] += (decimal)normal[j] * x[n + k];
                    rest[n + k] -= (decimal)normal[j] * x[j];
                }
            }
            Vector<double> correction = factor.Solve(Vector<double>.Build.Dense(x.Length, i => (double)rest[i]));
            for (int i = 0; i < x.Length; i++)
                x[i] += (decimal)correction[i];
        }
        return x;
    }

    /// <summary>Whether A'A + D² has a determinant other than 0, for a problem of small whole numbers.</summary>
    public static bool StrictlyConvex(LeastSquaresProblem problem)
    {
        (double[,] curvature, _) = NormalForm(problem);
        Int128[,] system = new Int128[problem.Variables, problem.Variables + 1];
        for (int i = 0; i < problem.Variables; i++)
        {
            for (int j = 0; j < problem.Variables; j++)
                system[i, j] = Whole(curvature[i, j]);
        }
        return WholeNumberElimination.Solve(system) != 0;
    }

    // H = A'A + D² and A'b + D²x₀ - c.
    private static (double[,] Curvature, double[] Pull) NormalForm(LeastSquaresProblem problem)
    {
        int n = problem.Variables;
        double[,] curvature = new double[n, n];
        double[] pull = new double[n];
        for (int i = 0; i < n; i++)
        {
            double prior = problem.Prior[i] * problem.Prior[i];
            curvature[i, i] = prior;
            pull[i] = prior * problem.Centre[i] - problem.Cost[i];
            for (int t = 0; t < problem.Targets; t++)
            {
                ReadOnlySpan<double> row = problem.TargetRow(t);
                pull[i] += row[i] * problem.TargetValues[t];
                for (int j = 0; j < n; j++)
                    curvature[i, j] += row[i] * row[j];
            }
        }
        return (curvature, pull);
    }

    private static (double[] Normal, double Low, double High) Condition(LeastSquaresProblem problem, int condition)
    {
        if (condition < problem.Rows)
            return (problem.Row(condition).ToArray(), problem.RowLow[condition], problem.RowHigh[condition]);
        double[] unit = new double[problem.Variables];
        int j = condition - problem.Rows;
        unit[j] = 1;
        return (unit, problem.Lower[j], problem.Upper[j]);
    }

    // Calls back with every set of ends until one is taken.
    private static void Visit(LeastSquaresProblem problem, Func<List<(int Condition, int Side)>, bool> take)
    {
        List<(int, int)> held = [];
        From(0);

        bool From(int condition)
        {
            if (take(held))
                return true;
            if (held.Count == problem.Variables)
                return false;
            for (int c = condition; c < problem.Rows + problem.Variables; c++)
            {
                (_, double low, double high) = Condition(problem, c);
                for (int side = 1; side >= -1; side -= 2)
                {
                    if (!double.IsFinite(side > 0 ? low : high) || (side < 0 && low == high))
                        continue;
                    held.Add((c, side));
                    bool taken = From(c + 1);
                    held.RemoveAt(held.Count - 1);
                    if (taken)
                        return true;
                }
            }
            return false;
        }
    }

    private static Int128 Whole(double value) => checked((Int128)(long)value);
}
