using Confectio.Numerics;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Numerics;

public sealed class GridSearchTests
{
    // The search stops within 1e-13 of the squared terms of the targets, which are below 1e5 in the random problems.
    private const double Tolerance = 1e-8;

    // The oracle visits every point of the grid; the sum is checked in decimal numbers.
    [Property(MaxTest = 6000)]
    public void TheAnswerIsThatOfBruteForce(DoNotSize<int> seed)
    {
        SmallGrid grid = new(new Random(seed.Item));
        GridAnswer answer = GridSearch.Solve(grid.Problem, grid.Steps, grid.Total);
        double best = grid.Visit().DefaultIfEmpty(double.PositiveInfinity).Min();
        Assert.Equal(double.IsFinite(best) ? GridStatus.Proven : GridStatus.NoGridPoint, answer.Status);
        Assert.Equal(best, answer.Value, Tolerance);
        Assert.Equal(answer.Value, answer.LowerBound);
        Assert.Equal(0, answer.Gap);
        if (answer.X is null)
        {
            Assert.False(double.IsFinite(best));
            return;
        }
        double[] x = [.. answer.X];
        Assert.True(grid.Meets(x));
        Assert.Equal(Objective(grid.Problem, x), answer.Value, Tolerance);
        for (int i = 0; i < x.Length; i++)
            Assert.True(grid.Problem.Lower[i] == grid.Problem.Upper[i] ? x[i] == grid.Problem.Lower[i] : x[i] == Math.Round(x[i] / grid.Steps[i]) * grid.Steps[i]);
    }

    [Property(MaxTest = 1000)]
    public void WhereTheSearchIsStoppedNoPointIsBelowTheBound(DoNotSize<int> seed, byte nodes)
    {
        SmallGrid grid = new(new Random(seed.Item));
        GridAnswer answer = GridSearch.Solve(grid.Problem, grid.Steps, grid.Total, mostNodes: 1 + nodes % 20);
        double best = grid.Visit().DefaultIfEmpty(double.PositiveInfinity).Min();
        Assert.True(answer.LowerBound <= best + Tolerance);
        Assert.True(answer.Value >= best - Tolerance);
        Assert.True(answer.Gap >= 0);
        Assert.True(answer.Status != GridStatus.NoGridPoint || double.IsPositiveInfinity(best));
        Assert.True(answer.Status != GridStatus.Proven || Math.Abs(answer.Value - best) <= Tolerance);
        Assert.True(answer.Nodes <= 1 + nodes % 20);
    }

    [Property(MaxTest = 500)]
    public void TheOrderOfTheUnknownsDoesNotMatter(DoNotSize<int> seed)
    {
        SmallGrid grid = new(new Random(seed.Item));
        LeastSquaresProblem problem = grid.Problem, turned = new(problem.Variables);
        for (int t = 0; t < problem.Targets; t++)
            turned.AddTarget(Turn(problem.TargetRow(t)), problem.TargetValues[t]);
        for (int r = 0; r < problem.Rows; r++)
            turned.AddRow(Turn(problem.Row(r)), problem.RowLow[r], problem.RowHigh[r]);
        Turn(problem.Prior).CopyTo(turned.Prior);
        Turn(problem.Centre).CopyTo(turned.Centre);
        Turn(problem.Cost).CopyTo(turned.Cost);
        Turn(problem.Lower).CopyTo(turned.Lower);
        Turn(problem.Upper).CopyTo(turned.Upper);
        GridAnswer one = GridSearch.Solve(problem, grid.Steps, grid.Total), other = GridSearch.Solve(turned, Turn(grid.Steps), grid.Total);
        Assert.Equal(one.Status, other.Status);
        Assert.Equal(one.Value, other.Value, Tolerance);

        double[] Turn(ReadOnlySpan<double> values)
        {
            double[] copy = values[..problem.Variables].ToArray();
            Array.Reverse(copy);
            return copy;
        }
    }

    // Exact brute force over USDA SR28 compositions, in rational arithmetic.
    [Theory]
    [InlineData(5, 510, 320, 50, 0.7741578388888889)]
    [InlineData(10, 510, 320, 50, 0.7741578388888889)]
    [InlineData(1, 512, 319, 49, 0.7705569001944444)]
    public void AGanacheIsRoundedToTheBestWholeMeasures(double step, double chocolate, double cream, double butter, double objective)
    {
        double[] steps = [step, step, step, step, step];
        GridAnswer answer = GridSearch.Solve(Ganache(), steps, 1000);
        Assert.Equal(GridStatus.Proven, answer.Status);
        Assert.Equal([chocolate, cream, butter, 80, 40], answer.X!);
        // Residuals are differences of numbers near 37, so a few 1e-14 are lost.
        Assert.Equal(objective, answer.Value, 1e-12);
        // The optimum without the grid, from rational arithmetic, is no better point's objective.
        Assert.True(answer.Value >= 0.77027036363395149);
    }

    // The second best of the same brute force: the best has 510 g of chocolate, so it is out of reach from 511 g.
    [Fact]
    public void WithoutTheBestTheSecondBestIsFound()
    {
        LeastSquaresProblem problem = Ganache();
        problem.Lower[0] = 511;
        GridAnswer answer = GridSearch.Solve(problem, [5, 5, 5, 5, 5], 1000);
        Assert.Equal([515, 320, 45, 80, 40], answer.X!);
        Assert.Equal(0.7971932686111111, answer.Value, 1e-12);
    }

    [Fact]
    public void ABoundKnownOtherwiseIsTaken()
    {
        LeastSquaresProblem problem = Ganache();
        Assert.Equal(0.774, GridSearch.Solve(problem, [5, 5, 5, 5, 5], 1000, atLeast: 0.774, mostNodes: 1).LowerBound);
        GridAnswer proven = GridSearch.Solve(problem, [5, 5, 5, 5, 5], 1000, atLeast: 0.7741578388888889);
        Assert.Equal(GridStatus.Proven, proven.Status);
        Assert.Equal(0.7741578388888889, proven.Value, 1e-12);
    }

    // 16 ingredients, 6 targets, 5 g: too many points to visit. Every feasible point is an upper limit of the bound, and the
    // optimum without the grid, of which the bound must not fall short, is a lower one.
    [Theory]
    [InlineData(0.04, 200_000)]
    [InlineData(0.04, 40)]
    [InlineData(0, 2_000)]
    public void TheBoundOfSixteenIngredientsLiesBetweenTheRelaxationAndEveryPoint(double nearness, int nodes)
    {
        Random random = new(20);
        for (int instance = 0; instance < 20; instance++)
        {
            LeastSquaresProblem problem = Mixture(random, 16, 6, nearness);
            double[] steps = Enumerable.Repeat(5.0, 16).ToArray(), ones = Enumerable.Repeat(1.0, 16).ToArray();
            GridAnswer answer = GridSearch.Solve(problem, steps, 1000, mostNodes: nodes);
            Assert.NotNull(answer.X);
            Assert.Equal(1000, answer.X.Sum());
            Assert.Equal(Objective(problem, [.. answer.X]), answer.Value, 1e-9);
            Assert.True(answer.Gap >= 0 && answer.LowerBound <= answer.Value);
            // With the nearness of a preference nothing comes near the default cap.
            Assert.True(nodes != GridSearch.DefaultMostNodes || answer.Status == GridStatus.Proven);
            for (int trial = 0; trial < 200; trial++)
                Assert.True(answer.LowerBound <= Objective(problem, Neighbour(random, problem, [.. answer.X])) + 1e-9);

            problem.AddRow(ones, 1000, 1000);
            DualActiveSet kernel = new();
            if (kernel.Solve(problem) == SolveStatus.Optimal)
                Assert.True(answer.LowerBound >= Objective(problem, kernel.Solution.ToArray()) - 1e-9);
        }
    }

    [Fact]
    public void NodesAllocateNothing()
    {
        LeastSquaresProblem problem = Mixture(new Random(3), 16, 6, 0);
        double[] steps = Enumerable.Repeat(5.0, 16).ToArray();
        Measure(100);
        Measure(40_000);
        // Less than a byte for each of 40 000 nodes: the runtime itself allocates a few kilobytes when it recompiles what runs often.
        Assert.InRange(Measure(40_000) - Measure(100), -39_000, 39_000);

        long Measure(int nodes)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            GridAnswer answer = GridSearch.Solve(problem, steps, 1000, mostNodes: nodes);
            long after = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal(nodes, answer.Nodes);
            return after - before;
        }
    }

    // Sums by arithmetic on paper: 5 g steps make no 1003 g; 173.4 g of egg and steps of 5 g and 0.2 g make 1000 g; three times
    // 100/3 is 100; two spoons of 4.1 g and one of 12.3 g make 20.5 g, and 20.6 g is no sum of both.
    [Theory]
    [InlineData(5, 5, 0, 1003, false)]
    [InlineData(5, 5, 173.4, 1000, false)]
    [InlineData(5, 0.2, 173.4, 1000, true)]
    [InlineData(33.333333333333336, 33.333333333333336, 0, 100, true)]
    [InlineData(4.1, 12.3, 0, 20.5, true)]
    [InlineData(4.1, 12.3, 0, 20.6, false)]
    [InlineData(0.1, 0.3, 0.7, 1, true)]
    [InlineData(3.141592653589793, 1, 0, 7, true)]
    public void ASumIsMadeExactlyOrNotAtAll(double first, double second, double fixedAt, double total, bool possible)
    {
        LeastSquaresProblem problem = new(3);
        problem.AddTarget([1, -1, 0], total / 5);
        problem.Upper.Fill(total);
        problem.Lower.Clear();
        problem.Lower[2] = problem.Upper[2] = fixedAt;
        GridAnswer answer = GridSearch.Solve(problem, [first, second, 0], total);
        Assert.Equal(possible ? GridStatus.Proven : GridStatus.NoGridPoint, answer.Status);
        if (possible)
            Assert.Equal(total, answer.X!.Sum(), 1e-9 * total);
    }

    // Sugar to syrup 4 : 1, and a range that only one multiple meets: whole numbers, so the ends are met without rounding.
    [Fact]
    public void ARatioIsKeptExactly()
    {
        LeastSquaresProblem problem = new(3);
        problem.AddTarget([1, 1, 1], 487);
        problem.AddRow([-1, 4, 0], 0, 0);
        problem.AddRow([1, 0, 0], 385, 415);
        problem.Lower.Clear();
        problem.Upper.Fill(600);
        GridAnswer answer = GridSearch.Solve(problem, [5, 5, 5]);
        Assert.Equal(GridStatus.Proven, answer.Status);
        Assert.Equal(400, answer.X![0]);
        Assert.Equal(100, answer.X[1]);
        Assert.Equal(169, 2 * answer.Value, 1e-9); // 400 + 100 + 0 misses 487 by 13
    }

    [Fact]
    public void AnInfiniteUpperBoundIsWhatTheTotalLeaves()
    {
        LeastSquaresProblem problem = new(2);
        problem.AddTarget([1, 0], 62);
        problem.Lower.Fill(10);
        GridAnswer answer = GridSearch.Solve(problem, [5, 5], 100);
        Assert.Equal([60, 40], answer.X!);
        Assert.Throws<ArgumentOutOfRangeException>(() => GridSearch.Solve(problem, [5, 5]));
    }

    [Fact]
    public void OneUnknownAndNoFreedomAreGridsToo()
    {
        LeastSquaresProblem problem = new(1);
        problem.AddTarget([2], 7);
        problem.Lower[0] = problem.Upper[0] = 3.3;
        GridAnswer answer = GridSearch.Solve(problem, [0]);
        Assert.Equal([3.3], answer.X!);
        Assert.Equal(0.08, answer.Value, 1e-12); // (6.6 - 7)² / 2
        problem.Upper[0] = 4;
        Assert.Equal([4], GridSearch.Solve(problem, [1]).X!);
        problem.Upper[0] = 3.9;
        Assert.Equal(GridStatus.NoGridPoint, GridSearch.Solve(problem, [1]).Status);
        problem.Upper[0] = 3.1;
        Assert.Equal(GridStatus.NoGridPoint, GridSearch.Solve(problem, [1]).Status);
    }

    [Fact]
    public void BadArgumentsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => GridSearch.Solve(Ganache(), [5, 5, 5, 5]));
        Assert.Throws<ArgumentNullException>(() => GridSearch.Solve(null!, []));
        Refuse(p => { }, step: -1);
        Refuse(p => { }, step: 0);
        Refuse(p => { }, step: double.NaN);
        Refuse(p => { }, step: double.PositiveInfinity);
        Refuse(p => { }, total: double.NaN);
        Refuse(p => { }, nodes: 0);
        Refuse(p => { }, atLeast: double.NaN);
        Refuse(p => p.Lower[1] = double.NaN);
        Refuse(p => p.Upper[1] = double.NaN);
        Refuse(p => p.Lower[1] = double.NegativeInfinity);
        Refuse(p => p.Prior[1] = -1);
        Refuse(p => p.Centre[1] = double.NaN);
        Refuse(p => p.Cost[1] = double.PositiveInfinity);
        Refuse(p => p.TargetRow(1)[1] = double.NaN);
        Refuse(p => p.TargetValues[1] = double.NaN);
        Refuse(p => p.AddRow([1, 1, double.NaN, 1, 1], 0, 1));
        Refuse(p => p.AddRow([1, 1, 1, 1, 1], double.NaN, 1));
        Refuse(p => p.AddRow([1, 1, 1, 1, 1], 2, 1));

        static void Refuse(Action<LeastSquaresProblem> spoil, double step = 5, double total = 1000, int nodes = 100, double atLeast = 0)
        {
            LeastSquaresProblem problem = Ganache();
            spoil(problem);
            Assert.Throws<ArgumentOutOfRangeException>(() => GridSearch.Solve(problem, [5, 5, step, 5, 5], total, atLeast, nodes));
        }
    }

    // Dark chocolate 60-69 %, heavy whipping cream, unsalted butter, light corn syrup, honey (USDA SR28); fat, sugars and water of
    // 1000 g are to be 36, 30 and 23 % to a hundredth, near to the base.
    private static LeastSquaresProblem Ganache()
    {
        double[] centre = [480, 400, 40, 50, 30], lower = [300, 200, 0, 0, 0], upper = [600, 420, 60, 80, 40];
        LeastSquaresProblem problem = new(5);
        problem.AddTarget([0.3831, 0.37, 0.8111, 0.002, 0], 360, 0.1);
        problem.AddTarget([0.3671, 0.0279, 0.0006, 0.7677, 0.8212], 300, 0.1);
        problem.AddTarget([0.0125, 0.5771, 0.1794, 0.2281, 0.171], 230, 0.1);
        for (int i = 0; i < 5; i++)
        {
            problem.Prior[i] = 0.2 / (0.5 * centre[i]);
            problem.Centre[i] = centre[i];
            problem.Lower[i] = lower[i];
            problem.Upper[i] = upper[i];
        }
        return problem;
    }

    private static LeastSquaresProblem Mixture(Random random, int ingredients, int targets, double nearness)
    {
        double[] centre = [.. Enumerable.Range(0, ingredients).Select(_ => Math.Exp(3 * random.NextDouble()))];
        double whole = centre.Sum();
        LeastSquaresProblem problem = new(ingredients);
        for (int i = 0; i < ingredients; i++)
        {
            centre[i] *= 1000 / whole;
            problem.Centre[i] = centre[i];
            problem.Prior[i] = Math.Sqrt(nearness) / (0.5 * centre[i]);
            problem.Lower[i] = 5 * Math.Floor(0.4 * centre[i] / 5);
            problem.Upper[i] = 5 * Math.Ceiling(1.8 * centre[i] / 5);
        }
        for (int t = 0; t < targets; t++)
        {
            double[] shares = [.. Enumerable.Range(0, ingredients).Select(_ => random.NextDouble() < 0.3 ? 0 : random.NextDouble())];
            double now = shares.Zip(centre, (share, mass) => share * mass).Sum();
            problem.AddTarget(shares, now + 100 * (random.NextDouble() - 0.5), 0.1);
        }
        return problem;
    }

    // Some steps of 5 g moved from one unknown to another, as far as the bounds allow.
    private static double[] Neighbour(Random random, LeastSquaresProblem problem, double[] x)
    {
        for (int move = random.Next(1, 6); move > 0; move--)
        {
            int from = random.Next(x.Length), to = random.Next(x.Length);
            if (x[from] - 5 >= problem.Lower[from] && x[to] + 5 <= problem.Upper[to])
            {
                x[from] -= 5;
                x[to] += 5;
            }
        }
        return x;
    }

    private static double Objective(LeastSquaresProblem problem, double[] x)
    {
        double sum = 0;
        for (int t = 0; t < problem.Targets; t++)
        {
            double residual = problem.TargetRow(t).ToArray().Zip(x, (a, b) => a * b).Sum() - problem.TargetValues[t];
            sum += residual * residual / 2;
        }
        for (int i = 0; i < x.Length; i++)
            sum += Math.Pow(problem.Prior[i] * (x[i] - problem.Centre[i]), 2) / 2 + problem.Cost[i] * x[i];
        return sum;
    }

    /// <summary>A random grid small enough to visit every point: up to five unknowns of up to six steps.</summary>
    private sealed class SmallGrid
    {
        private static readonly decimal[] s_steps = [1, 2.5m, 5, 5, 5, 10, 4.1m, 12.3m, 0.1m];

        private readonly decimal[] _steps, _fixed;
        private readonly int[] _low, _high;
        private readonly decimal? _total;

        public SmallGrid(Random random)
        {
            int n = random.Next(1, 6);
            Problem = new LeastSquaresProblem(n);
            _steps = new decimal[n];
            _fixed = new decimal[n];
            _low = new int[n];
            _high = new int[n];
            bool oneStep = random.Next(2) == 0;
            decimal common = s_steps[random.Next(s_steps.Length)];
            int held = random.Next(3);
            double[] inside = new double[n];
            decimal sum = 0;
            for (int i = 0; i < n; i++)
            {
                _steps[i] = oneStep ? common : s_steps[random.Next(s_steps.Length)];
                _low[i] = random.Next(-3, 6);
                _high[i] = _low[i] + random.Next(0, 6);
                if (random.Next(8) == 0)
                {
                    _fixed[i] = random.Next(100) / 10m;
                    _low[i] = _high[i] = 0;
                    Problem.Lower[i] = Problem.Upper[i] = (double)_fixed[i];
                }
                else
                {
                    // Bounds that need not be on the grid; a single step is left where low and high are the same.
                    Problem.Lower[i] = (double)((_low[i] - 0.3m) * _steps[i]);
                    Problem.Upper[i] = (double)((_high[i] + 0.3m) * _steps[i]);
                }
                decimal value = Value(i, random.Next(_low[i], _high[i] + 1));
                inside[i] = (double)value;
                sum += value;
                Problem.Centre[i] = inside[i] + 10 * (random.NextDouble() - 0.5);
                Problem.Prior[i] = held == 0 || held == 1 && random.Next(2) == 0 ? 0 : 0.3 * random.NextDouble();
                Problem.Cost[i] = random.Next(4) == 0 ? random.NextDouble() - 0.5 : 0;
            }
            bool coarse = random.Next(4) == 0;
            for (int t = random.Next(0, 5); t > 0; t--)
            {
                // Coarse coefficients make equal columns, and so ties.
                double[] row = [.. inside.Select(_ => coarse ? random.Next(-1, 2) : random.NextDouble())];
                Problem.AddTarget(row, Dot(row, inside) + 20 * (random.NextDouble() - 0.5), 0.1 + random.NextDouble());
            }
            for (int r = random.Next(0, 3); r > 0; r--)
            {
                double[] row = [.. inside.Select(_ => random.NextDouble() - 0.3)];
                double middle = Dot(row, inside) + 3 * (random.NextDouble() - 0.5), width = 4 * random.NextDouble();
                Problem.AddRow(row, random.Next(4) == 0 ? double.NegativeInfinity : middle - width, random.Next(4) == 0 ? double.PositiveInfinity : middle + width);
            }
            if (random.Next(2) == 0)
                _total = sum + (random.Next(8) == 0 ? 0.7m : 0);
            Total = (double?)_total;
            Steps = [.. _steps.Select(step => (double)step)];
        }

        public LeastSquaresProblem Problem { get; }

        public double[] Steps { get; }

        public double? Total { get; }

        /// <summary>The objective of every point that meets the conditions.</summary>
        public IEnumerable<double> Visit()
        {
            int n = Steps.Length;
            int[] k = [.. _low];
            double[] x = new double[n];
            while (true)
            {
                decimal sum = 0;
                for (int i = 0; i < n; i++)
                {
                    decimal value = Value(i, k[i]);
                    sum += value;
                    x[i] = (double)value;
                }
                if ((_total is null || _total == sum) && MeetsRows(x))
                    yield return Objective(Problem, x);
                int at = 0;
                while (at < n && k[at] == _high[at])
                {
                    k[at] = _low[at];
                    at++;
                }
                if (at == n)
                    yield break;
                k[at]++;
            }
        }

        public bool Meets(double[] x) =>
            MeetsRows(x)
            && (_total is null || Math.Abs(x.Sum() - (double)_total) < 1e-9)
            && Enumerable.Range(0, x.Length).All(i => x[i] >= Problem.Lower[i] && x[i] <= Problem.Upper[i]);

        private decimal Value(int i, int k) => _fixed[i] + k * _steps[i];

        private bool MeetsRows(double[] x)
        {
            for (int r = 0; r < Problem.Rows; r++)
            {
                double value = Dot(Problem.Row(r).ToArray(), x);
                if (value < Problem.RowLow[r] - 1e-11 || value > Problem.RowHigh[r] + 1e-11)
                    return false;
            }
            return true;
        }

        private static double Dot(double[] a, double[] b) => a.Zip(b, (p, q) => p * q).Sum();
    }
}
