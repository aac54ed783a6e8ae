using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>
/// Published constrained least-squares and quadratic problems (Oracles/least-squares). The exact answers are proved in rational
/// arithmetic; what the sources print is checked beside them.
/// </summary>
public sealed class PublishedProblemTests
{
    private static readonly Lazy<OracleProblem[]> s_problems = new(OracleProblem.Published);

    // Typed from the sources: the answer as printed, half a unit of its last digit, and the objective as printed (or what it is from).
    private static readonly Dictionary<string, (double[] X, double Rounding)> s_printed = new()
    {
        ["LH23_line"] = ([0.62132, 0.37868], 0.5e-5),
        ["GI83"] = ([0.5, 1.5], 0),
        ["QP_quadprog_doc"] = ([0.4761905, 1.0476190, 2.0952381], 0.5e-7),
        ["SCIPY_BVLS_2"] = ([0.448427311733504, 0], 0.5e-15),
        ["SCIPY_BVLS_3"] = ([-0.105560998682388, -5], 0.5e-15),
        ["SCIPY_BVLS_5"] = ([0.005236663400791, -4], 0.5e-15),
        ["SCIPY_BVLS_rankdef1"] = ([-0.1, -0.1], 0),
        ["LIMSOLVE_1_ls"] = ([-1.1621621, 0.8378378, 4.8918918], 1e-7),     // cut, not rounded
        ["LIMSOLVE_2_ineq"] = ([2.04142012, -0.47928994, 0.04142012], 0.5e-8),
        ["MATLAB_lsqlin_bounds"] = ([-0.1000, -0.1000, 0.2152, 0.3502], 0.5e-4),
        ["ZIMM_BVLS_11"] = ([1, 2, -1, 3, -4], 0),
        ["ZIMM_BVLS_21"] = ([1, 2, -1, 3, -4], 0),
        ["ZIMM_BCLS_12"] = ([1, 2, -1, 3, -4], 0),
        ["ZIMM_BCLS_21"] = ([1, 2, -1, 3, -4], 0),
        ["HS21"] = ([2, 0], 0),
        ["HS35"] = ([4d / 3, 7d / 9, 4d / 9], 0),
        ["HS51"] = ([1, 1, 1, 1, 1], 0),
        ["HS53"] = ([-33d / 43, 11d / 43, 27d / 43, -5d / 43, 11d / 43], 0),
    };

    private static readonly Dictionary<string, (double Objective, double Rounding)> s_printedObjective = new()
    {
        ["LH23_line"] = (0.33823 * 0.33823 / 2, 0.33823 * 0.5e-5),          // printed: the norm of the residuals
        ["GI83"] = (6.5, 0),
        ["QP_quadprog_doc"] = (-2.380952, 0.5e-6),
        ["LIMSOLVE_1_ls"] = (10.81081 / 2, 0.25e-5),                        // printed: the sum of squares
        ["LIMSOLVE_2_ineq"] = (38.17751 / 2, 0.25e-5),
        ["HS21"] = (-99.96, 0),
        ["HS35"] = (1d / 9, 0),
        ["HS51"] = (0, 0),
        ["HS53"] = (176d / 43, 0),
        ["GENHS28"] = (0.927173694, 0.5e-9),
    };

    private static readonly Dictionary<string, (double[] Multipliers, double Rounding)> s_printedMultipliers = new()
    {
        ["GI83"] = ([5], 0),
        ["QP_quadprog_doc"] = ([0, 0.2380952, 2.0952381], 0.5e-7),
    };

    public static TheoryData<string> Ids() => [.. s_problems.Value.Select(problem => problem.Id)];

    private static OracleProblem Problem(string id) => s_problems.Value.Single(problem => problem.Id == id);

    // The oracle itself: conditions exactly met, signs right, and a gradient that its multipliers balance. They are given as doubles.
    [Theory]
    [MemberData(nameof(Ids))]
    public void TheOracleProvesItsAnswer(string id)
    {
        OracleProblem oracle = Problem(id);
        for (int k = 0; k < oracle.Equalities.Length; k++)
            Assert.Equal(0, oracle.SlackAtAnswer(oracle.Equalities[k], oracle.EqualityValues[k]).Sign);
        (double[] rest, double terms) = oracle.GradientAtAnswer();
        for (int k = 0; k < oracle.Equalities.Length; k++)
        {
            for (int j = 0; j < rest.Length; j++)
                rest[j] -= oracle.EqualityMultipliers[k] * oracle.Equalities[k][j].ToDouble();
        }
        foreach ((string name, ExactFraction[] normal, ExactFraction end) in oracle.Conditions())
        {
            int slack = oracle.SlackAtAnswer(normal, end).Sign;
            Assert.True(slack >= 0, name);
            double multiplier = oracle.Active.GetValueOrDefault(name);
            Assert.True(multiplier >= 0 && (multiplier == 0 || slack == 0), name);
            for (int j = 0; j < rest.Length; j++)
                rest[j] -= multiplier * normal[j].ToDouble();
        }
        Assert.All(rest, entry => Assert.InRange(Math.Abs(entry), 0, 1e-14 * Math.Max(terms, 1)));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void AnswerAndObjectiveAreTheExactOnes(string id)
    {
        OracleProblem oracle = Problem(id);
        KernelAnswer answer = KernelAnswer.Of(oracle.ForKernel());
        Assert.Equal(SolveStatus.Optimal, answer.Status);
        double[] expected = OracleProblem.Doubles(oracle.Answer);
        double size = expected.Max(Math.Abs), error = expected.Zip(answer.X, (x, y) => Math.Abs(x - y)).Max() / size;
        // The acceptance; a well conditioned problem comes within some 1e-15.
        Assert.True(error <= 1e-10, $"{id}: off by {error:E2} of the largest entry");
        // The objective takes the error of x times the gradient, which is at most its terms.
        (double value, double terms) = oracle.ObjectiveAt(answer.X);
        Assert.True(Math.Abs(value - oracle.Objective) <= 1e-10 * terms, $"{id}: objective {value:R}, expected {oracle.Objective:R}");
        Assert.True(answer.Check.Worst <= 1e-12, $"{id}: {answer.Check.Worst:E2}");
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void MultipliersAreTheExactOnes(string id)
    {
        OracleProblem oracle = Problem(id);
        KernelAnswer answer = KernelAnswer.Of(oracle.ForKernel());
        double largest = oracle.EqualityMultipliers.Concat(oracle.Active.Values).Select(Math.Abs).DefaultIfEmpty().Max();
        // Where nothing pulls, all that is left is the rounding of the gradient.
        double tolerance = 1e-9 * (largest > 0 ? largest : oracle.GradientAtAnswer().Terms), worst = 0;
        for (int k = 0; k < oracle.Equalities.Length; k++)
            worst = Math.Max(worst, Math.Abs(answer.RowMultipliers[k] - oracle.EqualityMultipliers[k]));
        foreach ((string name, _, _) in oracle.Conditions())
            worst = Math.Max(worst, Math.Abs(answer.Multiplier(oracle, name) - oracle.Active.GetValueOrDefault(name)));
        Assert.True(worst <= tolerance, $"{id}: a multiplier off by {worst:E2}, allowed {tolerance:E2}");
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void TheActiveSetIsTheListedOne(string id)
    {
        OracleProblem oracle = Problem(id);
        // A condition that holds with equality and does not pull may be held or not: then there is no one active set.
        Assert.SkipUnless(oracle.StrictlyComplementary, "degenerate: a condition with equality and without a multiplier");
        Assert.Equal(oracle.Active.Keys.Order(), KernelAnswer.Of(oracle.ForKernel()).Held(oracle).Order());
    }

    [Fact]
    public void OnlyTheSlatecProblemsAreDegenerate() =>
        Assert.Equal(["ZIMM_BCLS_12", "ZIMM_BCLS_21", "ZIMM_BVLS_11"],
            s_problems.Value.Where(problem => !problem.StrictlyComplementary).Select(problem => problem.Id).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Ids))]
    public void WhatTheSourcePrintsIsReached(string id)
    {
        // Two sources print nothing: "as lstsq" in one, a computed answer in the other.
        Assert.SkipWhen(id is "SCIPY_BVLS_0" or "LIMSOLVE_nnls", "the source prints no answer");
        OracleProblem oracle = Problem(id);
        KernelAnswer answer = KernelAnswer.Of(oracle.ForKernel());
        Assert.True(s_printed.ContainsKey(id) || s_printedObjective.ContainsKey(id));
        if (s_printed.TryGetValue(id, out var printed))
        {
            // What is printed exactly is reached to the kernel's own accuracy.
            for (int j = 0; j < printed.X.Length; j++)
                Assert.Equal(printed.X[j], answer.X[j], printed.Rounding + 1e-12);
        }
        if (s_printedObjective.TryGetValue(id, out var objective))
            Assert.Equal(objective.Objective, oracle.ObjectiveAt(answer.X).Value, objective.Rounding + 1e-12);
        if (s_printedMultipliers.TryGetValue(id, out var multipliers))
        {
            for (int k = 0; k < multipliers.Multipliers.Length; k++)
                Assert.Equal(multipliers.Multipliers[k], answer.RowMultipliers[k], multipliers.Rounding + 1e-12);
        }
    }
}
