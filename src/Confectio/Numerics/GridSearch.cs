namespace Confectio.Numerics;

/// <summary>
/// The best point of a grid: a closest-vector search, depth first, the values of each coordinate in order of their cost (Schnorr
/// and Euchner, Mathematical Programming 66 (1994) 181-199), cut off where the cost so far is that of the best point found.
/// </summary>
/// <remarks>
/// Its first leaf is Babai's point. At most nodes the search stops: the cheapest value that each coordinate on the path has not
/// tried yet bounds all that was not seen. Half of the nodes go to a search in short coordinates, which nearly always ends; where
/// it does not, the other half go to coordinates that keep to the limits better, which find a point where the short ones get lost
/// between the limits. All memory is taken at the start.
/// </remarks>
internal sealed class GridSearch
{
    /// <summary>The nodes after which the search stops: some 20 ms.</summary>
    public const int DefaultMostNodes = 200_000;

    /// <summary>The most unknowns.</summary>
    public const int MostVariables = 200;

    internal const double LargestSteps = 1e9;
    private const double Short = 1, KeepingToLimits = 10;

    private readonly GridModel _model;
    private readonly GridCoordinates _in;
    private readonly int _count, _rowCount, _mostNodes;
    private readonly double _atLeast;

    // Of every coordinate: its value, how far it is from the centre, the limits that are left to it, what was tried of it.
    private readonly double[] _z, _offset, _low, _high, _middle, _up, _down;
    private readonly double[] _shift;                   // Σ R (z − centre) over the coordinates after it
    private readonly double[] _cost, _sumLeft;          // of it and the coordinates after it
    private readonly double[] _coefficients, _done;     // of every row, coordinate by coordinate
    private readonly double[] _leastOpen, _mostOpen;    // what the coordinates before it can still add to every row
    private readonly double[] _k, _x, _best;
    private double _bestValue;
    private int _nodes;

    private GridSearch(GridModel model, GridCoordinates coordinates, int variables, double atLeast, int mostNodes, GridSearch? earlier)
    {
        _model = model;
        _in = coordinates;
        _mostNodes = mostNodes;
        _atLeast = atLeast;
        int count = _count = model.Count, rows = _rowCount = coordinates.Rows.Length;
        _z = new double[count];
        _offset = new double[count];
        _low = new double[count];
        _high = new double[count];
        _middle = new double[count];
        _up = new double[count];
        _down = new double[count];
        _shift = new double[count];
        _cost = new double[count + 1];
        _sumLeft = new double[count + 1];
        _coefficients = new double[count * rows];
        _done = new double[(count + 1) * rows];
        _leastOpen = new double[(count + 1) * rows];
        _mostOpen = new double[(count + 1) * rows];
        for (int j = 0; j < count; j++)
        {
            for (int r = 0; r < rows; r++)
            {
                double c = coordinates.Rows[r].Coefficients[j], a = c * coordinates.Lowest[j], b = c * coordinates.Highest[j];
                _coefficients[j * rows + r] = c;
                _leastOpen[(j + 1) * rows + r] = _leastOpen[j * rows + r] + Math.Min(a, b);
                _mostOpen[(j + 1) * rows + r] = _mostOpen[j * rows + r] + Math.Max(a, b);
            }
        }
        _k = new double[count];
        _x = new double[variables];
        _best = earlier?._best ?? new double[variables];
        _bestValue = earlier?._bestValue ?? double.PositiveInfinity;
        _nodes = earlier?._nodes ?? 0;
    }

    /// <summary>
    /// Minimises the objective of a problem over xᵢ = stepᵢ kᵢ, kᵢ whole, within its bounds and rows.
    /// </summary>
    /// <param name="problem">
    /// The problem. An unknown whose bounds are equal stays at that value, on the grid or off it. Other bounds are finite; with a
    /// total, an upper bound may be infinite. A row may be missed by 1e-10 of the terms it is summed from.
    /// </param>
    /// <param name="steps">The step of each unknown, above 0; 0 is allowed where the bounds are equal.</param>
    /// <param name="total">
    /// What the unknowns add up to, to 1e-9 of the amounts; whole multiples of one unit are added without rounding. Null for no condition.
    /// </param>
    /// <param name="atLeast">A lower bound of the objective known otherwise, such as the optimum without the grid.</param>
    /// <param name="mostNodes">Where the search stops, 1 up.</param>
    public static GridAnswer Solve(
        LeastSquaresProblem problem, ReadOnlySpan<double> steps, double? total = null, double atLeast = double.NegativeInfinity,
            int mostNodes = DefaultMostNodes)
    {
        Check(problem, steps, total);
        Guard.InRange(atLeast, double.NegativeInfinity, double.MaxValue);
        Guard.InRange(mostNodes, 1, int.MaxValue);
        GridModel? model = GridModel.TryCreate(problem, steps, total);
        if (model is null)
            return NoPoint(0);
        GridCoordinates coordinates = new(model, Short);
        if (!coordinates.SumIsDivisible)
            return NoPoint(0);
        GridSearch search = new(model, coordinates, problem.Variables, atLeast, mostNodes / 2, null);
        double open = search.Run();
        if (double.IsFinite(open))
        {
            search = new GridSearch(model, new GridCoordinates(model, KeepingToLimits), problem.Variables, atLeast, mostNodes, search);
            open = Math.Max(open, search.Run());
        }
        double[]? x = double.IsFinite(search._bestValue) ? search._best : null;
        if (double.IsFinite(open))
            return new GridAnswer(GridStatus.Capped, x, search._bestValue, Math.Min(open, search._bestValue), search._nodes);
        return x is null ? NoPoint(search._nodes) : new GridAnswer(GridStatus.Proven, x, search._bestValue, search._bestValue,
            search._nodes);
    }

    private static GridAnswer NoPoint(int nodes) => new(GridStatus.NoGridPoint, null, double.PositiveInfinity, double.PositiveInfinity,
        nodes);

    // Returns the least bound of what was left open; infinite where nothing was.
    private double Run()
    {
        _cost[_count] = _model.RootBound;
        _sumLeft[_count] = _model.WholeSum ?? 0;
        if (_count == 0)
        {
            Complete();
            return double.PositiveInfinity;
        }
        int level = _count - 1;
        Enter(level);
        while (true)
        {
            double cost = Next(level, out double z);
            if (cost >= _bestValue - _model.Rounding)
            {
                if (++level == _count)
                    return double.PositiveInfinity;
                continue;
            }
            if (_nodes == _mostNodes)
            {
                for (int after = level + 1; after < _count; after++)
                    cost = Math.Min(cost, Next(after, out _));
                return cost;
            }
            _nodes++;
            Take(level, z, cost);
            if (level == 0)
                Complete();
            else
                Enter(--level);
        }
    }

    private void Take(int level, double z, double cost)
    {
        if (z == _up[level])
            _up[level]++;
        else
            _down[level]--;
        _z[level] = z;
        _cost[level] = cost;
        _offset[level] = z - _in.Centre[level];
        _sumLeft[level] = _sumLeft[level + 1] - _in.SumUnits[level] * z;
        int at = level * _rowCount;
        for (int r = 0; r < _rowCount; r++)
            _done[at + r] = _done[at + _rowCount + r] + _coefficients[at + r] * z;
    }

    private void Complete()
    {
        _in.ToSteps(_z, _k);
        if (!_model.TryComplete(_k, _x))
            return;
        double value = _model.Objective(_x);
        if (value < _bestValue)
        {
            _bestValue = value;
            _x.CopyTo(_best, 0);
        }
    }

    // What the coordinates after it leave open to this one, and where its cost is least.
    private void Enter(int level)
    {
        double low = _in.Lowest[level], high = _in.Highest[level];
        GridRow[] rows = _in.Rows;
        int at = level * _rowCount;
        for (int r = 0; r < rows.Length; r++)
        {
            double c = _coefficients[at + r];
            if (c == 0)
                continue;
            double done = _done[at + _rowCount + r];
            double a = (rows[r].Low - done - _mostOpen[at + r]) / c, b = (rows[r].High - done - _leastOpen[at + r]) / c;
            low = Math.Max(low, Math.Min(a, b));
            high = Math.Min(high, Math.Max(a, b));
        }
        low = _low[level] = Math.Ceiling(low - GridModel.StepTolerance);
        high = _high[level] = Math.Floor(high + GridModel.StepTolerance);

        double[] root = _in.Root[level];
        double shift = 0;
        for (int j = level + 1; j < _count; j++)
            shift += root[j] * _offset[j];
        _shift[level] = shift;
        double curvature = root[level] * root[level], descent = -(shift * root[level] + _in.Slopes[level]);
        // Without curvature the cost is a straight line, or the same everywhere.
        double away = curvature > 0 ? descent / curvature : descent == 0 ? 0 : Math.CopySign(double.PositiveInfinity, descent);
        double middle = Math.Max(Math.Min(_in.Centre[level] + away, high), low);
        _middle[level] = middle;
        _down[level] = Math.Floor(middle);
        _up[level] = _down[level] + 1;
    }

    // The cheapest value that was not tried yet, and the cost so far with it; infinite where all were. It is not taken yet.
    private double Next(int level, out double z)
    {
        double middle = _middle[level], modulus = _in.Moduli[level];
        while (true)
        {
            bool canRise = _up[level] <= _high[level], canFall = _down[level] >= _low[level];
            bool rise = canRise && (!canFall || _up[level] - middle < middle - _down[level]);
            z = rise ? _up[level] : _down[level];
            if (!canRise && !canFall)
                return double.PositiveInfinity;
            if (modulus == 0 || (_sumLeft[level + 1] - _in.SumUnits[level] * z) % modulus == 0)
                break;
            if (rise)
                _up[level]++;
            else
                _down[level]--;
        }
        double away = z - _in.Centre[level], across = _shift[level] + _in.Root[level][level] * away;
        double cost = _cost[level + 1] + across * across / 2 + (_in.Slopes[level] * away - _in.LeastCosts[level]);
        return Math.Max(cost, _atLeast);
    }

    private static void Check(LeastSquaresProblem problem, ReadOnlySpan<double> steps, double? total)
    {
        Guard.NotNull(problem);
        int n = Guard.InRange(problem.Variables, 1, MostVariables);
        if (steps.Length != n)
            throw new ArgumentException($"There are {steps.Length} steps for {n} unknowns.", nameof(steps));
        if (total is { } sum)
            Guard.Finite(sum, nameof(total));
        double least = 0;
        for (int i = 0; i < n; i++)
            least += problem.Lower[i];
        for (int i = 0; i < n; i++)
        {
            double lower = Guard.Finite(problem.Lower[i], nameof(problem.Lower));
            double upper = problem.Upper[i];
            if (total is { } sumOfAll && upper == double.PositiveInfinity)
                upper = sumOfAll - (least - lower);
            Guard.Finite(upper, nameof(problem.Upper));
            double step = Guard.InRange(steps[i], 0, double.MaxValue, nameof(steps));
            if (lower != upper)
                Guard.InRange(step, Math.Max(Math.Abs(lower), Math.Abs(upper)) / LargestSteps + double.Epsilon, double.MaxValue,
                    nameof(steps));
            Guard.InRange(problem.Prior[i], 0, double.MaxValue, nameof(problem.Prior));
            Guard.Finite(problem.Centre[i], nameof(problem.Centre));
            Guard.Finite(problem.Cost[i], nameof(problem.Cost));
        }
        for (int t = 0; t < problem.Targets; t++)
        {
            Guard.Finite(problem.TargetValues[t], nameof(problem.TargetValues));
            foreach (double coefficient in problem.TargetRow(t))
                Guard.Finite(coefficient, nameof(problem.TargetRow));
        }
        for (int r = 0; r < problem.Rows; r++)
        {
            Guard.InRange(problem.RowLow[r], double.NegativeInfinity, problem.RowHigh[r], nameof(problem.RowLow));
            foreach (double coefficient in problem.Row(r))
                Guard.Finite(coefficient, nameof(problem.Row));
        }
    }
}
