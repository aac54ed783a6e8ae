using System.Globalization;
using System.Text;
using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>
/// Random problems by the ten thousand. Every one must end in an optimum or in a proof of contradiction; what proves either is
/// checked on the problem as stated. <c>CONFECTIO_FUZZ=1000000</c> in the environment makes a long run of it, and
/// <c>CONFECTIO_FUZZ_SEED</c> another one.
/// </summary>
public sealed class FuzzTests(ITestOutputHelper output)
{
    private const int Usual = 60_000;

    // The acceptance of an answer.
    private const double Accuracy = 1e-10;

    [Fact]
    public void EveryProblemEndsInAnOptimumOrAProof()
    {
        int count = Setting("CONFECTIO_FUZZ", Usual), first = Setting("CONFECTIO_FUZZ_SEED", 0);
        Hardship[] hardships = Enum.GetValues<Hardship>();
        Tally[] tallies = [.. hardships.Select(hardship => new Tally(hardship))];
        DualActiveSet solver = new();
        FuzzProblems problems = new();
        double[] rows = new double[FuzzProblems.MostRows], bounds = new double[FuzzProblems.MostVariables];
        for (int i = 0; i < count; i++)
        {
            int kind = i % hardships.Length, seed = unchecked(first + i);
            LeastSquaresProblem problem = problems.Make(hardships[kind], seed);
            tallies[kind].Add(problem, solver, seed, rows.AsSpan(0, problem.Rows), bounds.AsSpan(0, problem.Variables));
        }
        string report = $"{count} problems from seed {first}\n" + string.Join("\n", tallies.Select(tally => tally.ToString()));
        output.WriteLine(report);
        TestContext.Current.SendDiagnosticMessage(report);
        Assert.True(tallies.All(tally => tally.Clean), report);
        // Without both endings in number the run would show less than it says.
        Assert.All(tallies, tally => Assert.InRange(tally.Infeasible, tally.Count / 50, tally.Count * 4 / 5));
    }

    // The one legitimate reason to be undecided: nothing bounds the cost, and an optimum does not exist.
    [Fact]
    public void ACostThatNothingBoundsIsUndecided()
    {
        LeastSquaresProblem problem = new(2);
        problem.Cost[0] = 1;
        problem.AddTarget([0, 1], 3);
        Assert.Equal(SolveStatus.Undecided, new DualActiveSet().Solve(problem));
        problem.Lower[0] = -5;
        DualActiveSet solver = new();
        Assert.Equal(SolveStatus.Optimal, solver.Solve(problem));
        Assert.Equal(-5, solver.Solution[0]);
        Assert.Equal(3, solver.Solution[1], 1e-12);
    }

    private static int Setting(string name, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int value) ? value : otherwise;

    private sealed class Tally(Hardship hardship)
    {
        private readonly StringBuilder _seeds = new();
        private int _undecided, _roundings, _wrong, _rejected, _steps, _passes, _seedOfWorst;
        private double _worst, _shareOfLimit;

        public int Count { get; private set; }

        public int Infeasible { get; private set; }

        // A search that comes near the limit of steps is close to going in circles. Rows that differ by a billionth may leave the kernel
        // undecided, one problem in a thousand at most; an answer or a proof must be right even there.
        public bool Clean => _undecided <= (hardship == Hardship.AlmostParallel ? Count / 1000 : 0) && _roundings <= Count / 500
            && _wrong == 0 && _rejected == 0 && _shareOfLimit < 0.5;

        public void Add(LeastSquaresProblem problem, DualActiveSet solver, int seed, Span<double> rows, Span<double> bounds)
        {
            Count++;
            SolveStatus status = solver.Solve(problem);
            _steps = Math.Max(_steps, solver.Steps);
            _passes = Math.Max(_passes, solver.Passes);
            _shareOfLimit = Math.Max(_shareOfLimit, solver.Steps / (1000.0 + 40 * (problem.Variables + problem.Rows)));
            switch (status)
            {
                case SolveStatus.Optimal:
                    solver.CopyRowMultipliers(rows);
                    solver.CopyBoundMultipliers(bounds);
                    double worst = Worst(problem, solver.Solution, rows, bounds);
                    if (!(worst <= _worst))
                        (_worst, _seedOfWorst) = (worst, seed);
                    if (!(worst <= Accuracy))
                        Note(ref _wrong, "wrong", seed);
                    break;
                case SolveStatus.Infeasible:
                    Infeasible++;
                    bool proved = hardship is Hardship.Degenerate or Hardship.DegenerateWithoutPrior
                        ? FarkasOracle.HoldsExactly(problem, solver.RowProof, solver.BoundProof)
                        : FarkasOracle.HoldsInDoubles(problem, solver.RowProof, solver.BoundProof);
                    if (!proved)
                        Note(ref _rejected, "rejected", seed);
                    break;
                default:
                    if ((hardship is Hardship.NearlyParallel or Hardship.AlmostParallel) && HangsOnRounding(problem))
                        _roundings++;
                    else
                        Note(ref _undecided, "undecided", seed);
                    break;
            }
        }

        // The check of an answer is relative to what there is. Where the answer is 0 or nothing pulls, as with every target met, that is
        // nothing but rounding. All numbers but those of Scale are of size 1, so what is left is then small by itself.
        private double Worst(LeastSquaresProblem problem, ReadOnlySpan<double> x, ReadOnlySpan<double> rows, ReadOnlySpan<double> bounds)
        {
            OptimalityCheck check = OptimalityCheck.Of(problem, x, rows, bounds);
            if (hardship == Hardship.Scale || check.Worst <= Accuracy)
                return check.Worst;
            double violation = Math.Min(check.PrimalViolation, Violation(problem, x)), rest = LeftOfGradient(problem, x, rows, bounds);
            bool pulled = rows.ContainsAnyExceptInRange(-Accuracy, Accuracy) || bounds.ContainsAnyExceptInRange(-Accuracy, Accuracy);
            return Math.Max(Math.Max(violation, rest), pulled ? Math.Max(check.WrongSign, check.Complementarity) : 0);
        }

        private static double Violation(LeastSquaresProblem problem, ReadOnlySpan<double> x)
        {
            double worst = 0;
            for (int k = 0; k < problem.Rows; k++)
            {
                double value = 0;
                for (int j = 0; j < x.Length; j++)
                    value += problem.Row(k)[j] * x[j];
                worst = Math.Max(worst, Math.Max(problem.RowLow[k] - value, value - problem.RowHigh[k]));
            }
            for (int j = 0; j < x.Length; j++)
                worst = Math.Max(worst, Math.Max(problem.Lower[j] - x[j], x[j] - problem.Upper[j]));
            return worst;
        }

        private static double LeftOfGradient(LeastSquaresProblem problem, ReadOnlySpan<double> x, ReadOnlySpan<double> rows, ReadOnlySpan<double> bounds)
        {
            double rest = 0;
            for (int j = 0; j < x.Length; j++)
            {
                double entry = problem.Prior[j] * problem.Prior[j] * (x[j] - problem.Centre[j]) + problem.Cost[j] - bounds[j];
                for (int k = 0; k < problem.Rows; k++)
                    entry -= rows[k] * problem.Row(k)[j];
                for (int t = 0; t < problem.Targets; t++)
                {
                    double residual = -problem.TargetValues[t];
                    for (int i = 0; i < x.Length; i++)
                        residual += problem.TargetRow(t)[i] * x[i];
                    entry += residual * problem.TargetRow(t)[j];
                }
                rest = Math.Max(rest, Math.Abs(entry));
            }
            return rest;
        }

        // Rows so nearly parallel that the last bits of their ends are what they contradict each other by: with ends wider by a few of
        // those bits there is an answer. Then to be undecided is right.
        private static bool HangsOnRounding(LeastSquaresProblem problem)
        {
            const double Bits = 1e-12;
            for (int k = 0; k < problem.Rows; k++)
            {
                problem.RowLow[k] -= Bits;
                problem.RowHigh[k] += Bits;
            }
            return new DualActiveSet().Solve(problem) == SolveStatus.Optimal;
        }

        public override string ToString() => string.Create(CultureInfo.InvariantCulture,
            $"{hardship}: {Count} problems, {Infeasible} infeasible, {_rejected} proofs rejected, {_undecided} undecided and {_roundings} more that hang on rounding, {_wrong} wrong, worst {_worst:E1} (seed {_seedOfWorst}), at most {_steps} steps ({_shareOfLimit:P0} of the limit) and {_passes} passes{_seeds}");

        private void Note(ref int of, string what, int seed)
        {
            if (of++ < 5)
                _seeds.Append(CultureInfo.InvariantCulture, $"; {what}: seed {seed}");
        }
    }
}
