using System.Text.Json;
using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>
/// Formulas over USDA SR28 compositions as bare matrices, against answers found and proved in rational arithmetic
/// (Oracles/least-squares). Multipliers there and here: gradient = Σ multiplier x normal, so that of an upper bound is taken with a minus.
/// </summary>
public sealed class FormulaMatrixTests
{
    private const double NanoGram = 1e-9;

    [Theory]
    [InlineData("F1")]
    [InlineData("F2")]
    [InlineData("F3")]
    [InlineData("F5")]
    [InlineData("F9")]
    [InlineData("F10")]
    public void TheExactAnswerIsReached(string name)
    {
        OracleProblem oracle = OracleProblem.Formula(name);
        KernelAnswer answer = KernelAnswer.Of(oracle.ForKernel());
        Assert.Equal(SolveStatus.Optimal, answer.Status);
        double[] expected = OracleProblem.Doubles(oracle.Answer);
        double error = expected.Zip(answer.X, (x, y) => Math.Abs(x - y)).Max();
        Assert.True(error <= Math.Min(NanoGram, 1e-10 * expected.Max(Math.Abs)), $"{name}: off by {error:E2}");
        Assert.True(oracle.StrictlyComplementary || name == "F3");
        Assert.Equal(oracle.Active.Keys.Order(), answer.Held(oracle).Order());

        double largest = oracle.EqualityMultipliers.Concat(oracle.Active.Values).Select(Math.Abs).DefaultIfEmpty().Max();
        // The matrices are rounded to doubles, so a multiplier can be no better than the rounding of the gradient it balances: 1e-15
        // of its terms, and as many terms as there are rows.
        double tolerance = Math.Max(1e-9 * largest, 1e-14 * oracle.GradientAtAnswer().Terms);
        for (int k = 0; k < oracle.Equalities.Length; k++)
            Assert.Equal(oracle.EqualityMultipliers[k], answer.RowMultipliers[k], tolerance);
        foreach ((string condition, _, _) in oracle.Conditions())
            Assert.Equal(oracle.Active.GetValueOrDefault(condition), answer.Multiplier(oracle, condition), tolerance);
        (double value, double terms) = oracle.ObjectiveAt(answer.X);
        Assert.Equal(oracle.Objective, value, 1e-14 * terms);
        Assert.True(answer.Check.Worst <= 1e-12, $"{name}: {answer.Check.Worst:E2}");
    }

    // F4: fat at least 40 % and water at least 33 % of 1000 g of ganache, within the bounds of F1.
    private static LeastSquaresProblem F4()
    {
        LeastSquaresProblem problem = OracleProblem.Formula("F1").ForKernel();
        LeastSquaresProblem impossible = new(problem.Variables);
        for (int t = 0; t < problem.Targets; t++)
            impossible.AddTarget(problem.TargetRow(t), problem.TargetValues[t]);
        // Grams per gram: USDA SR28, numbers 19903, 01053, 01145, 19350, 19296.
        impossible.AddRow([0.3831, 0.37, 0.8111, 0.002, 0], 400, double.PositiveInfinity);
        impossible.AddRow([0.0125, 0.5771, 0.1794, 0.2281, 0.171], 330, double.PositiveInfinity);
        impossible.AddRow([1, 1, 1, 1, 1], 1000, 1000);
        problem.Lower.CopyTo(impossible.Lower);
        problem.Upper.CopyTo(impossible.Upper);
        return impossible;
    }

    // The proof that stands in the oracle: of rows above zero for the low end, of upper bounds below zero here.
    private static (double[] Rows, double[] Bounds) OracleProof()
    {
        JsonElement item = OracleProblem.Read("formula_problems.json").EnumerateArray().Single(entry => entry.GetProperty("id").GetString() == "F4_infeasible");
        JsonElement farkas = item.GetProperty("farkas");
        double Of(JsonElement of, string name) => ExactFraction.Parse(of.GetProperty(name).GetString()!).ToDouble();
        return ([Of(farkas, "G0"), Of(farkas, "G1"), Of(item, "farkas_eq_sum")], [0, -Of(farkas, "hi1"), -Of(farkas, "hi2"), -Of(farkas, "hi3"), 0]);
    }

    // What of F4 a proof speaks of, and nothing else.
    private static LeastSquaresProblem Only(double[] rows, double[] bounds)
    {
        LeastSquaresProblem problem = F4();
        for (int k = 0; k < rows.Length; k++)
        {
            if (rows[k] == 0)
                (problem.RowLow[k], problem.RowHigh[k]) = (double.NegativeInfinity, double.PositiveInfinity);
        }
        for (int j = 0; j < bounds.Length; j++)
        {
            if (!(bounds[j] > 0))
                problem.Lower[j] = double.NegativeInfinity;
            if (!(bounds[j] < 0))
                problem.Upper[j] = double.PositiveInfinity;
        }
        return problem;
    }

    private static double[] Without(double[] proof, int member) => [.. proof.Select((value, at) => at == member ? 0 : value)];

    [Fact]
    public void AnImpossibleGanacheIsProvedImpossible()
    {
        LeastSquaresProblem problem = F4();
        KernelAnswer answer = KernelAnswer.Of(problem);
        Assert.Equal(SolveStatus.Infeasible, answer.Status);
        Assert.True(InfeasibilityProof.Holds(problem, answer.RowProof, answer.BoundProof));
    }

    [Fact]
    public void TheConditionsOfAProofContradictEachOtherOnlyAllTogether()
    {
        // Two proofs: the kernel's and the oracle's. They need not be the same: the ganache is impossible in more than one way.
        KernelAnswer answer = KernelAnswer.Of(F4());
        foreach ((double[] rows, double[] bounds) in new[] { (answer.RowProof, answer.BoundProof), OracleProof() })
        {
            LeastSquaresProblem whole = Only(rows, bounds);
            Assert.Equal(SolveStatus.Infeasible, KernelAnswer.Of(whole).Status);
            Assert.True(InfeasibilityProof.Holds(whole, rows, bounds));
            for (int k = 0; k < rows.Length; k++)
            {
                if (rows[k] != 0)
                    AssertBroken(Without(rows, k), bounds);
            }
            for (int j = 0; j < bounds.Length; j++)
            {
                if (bounds[j] != 0)
                    AssertBroken(rows, Without(bounds, j));
            }
        }

        static void AssertBroken(double[] rows, double[] bounds)
        {
            LeastSquaresProblem rest = Only(rows, bounds);
            Assert.Equal(SolveStatus.Optimal, KernelAnswer.Of(rest).Status);
            Assert.False(InfeasibilityProof.Holds(rest, rows, bounds));
        }
    }

    [Fact]
    public void AProofWithATurnedSignOrOfNothingDoesNotHold()
    {
        (double[] rows, double[] bounds) = OracleProof();
        Assert.True(InfeasibilityProof.Holds(F4(), rows, bounds));
        for (int k = 0; k < rows.Length; k++)
        {
            double[] turned = [.. rows];
            turned[k] = -rows[k];
            Assert.False(InfeasibilityProof.Holds(Only(rows, bounds), turned, bounds));
        }
        Assert.False(InfeasibilityProof.Holds(F4(), new double[3], new double[5]));
    }
}
