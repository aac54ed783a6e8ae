namespace Confectio.Numerics;

/// <summary>
/// A least-squares problem whose unknowns are whole numbers of steps, xᵢ = stepᵢ kᵢ, expanded about its optimum without the grid.
/// Unknowns that cannot move are gone, and where the sum is exact one more completes it.
/// </summary>
/// <remarks>
/// At any x̂, objective(x) = objective(x̂) + ∇·(x − x̂) + ½‖M(k − k̂)‖². With the multipliers of an optimum the middle term is
/// one price per unknown: 0 where x̂ is free, and pointing into the box where a bound holds it. Every price is therefore a cost of
/// at least 0 for each unknown by itself, which a mere ½‖Mk − b‖² would never know of. Nothing is trusted: at any other x̂ and
/// multipliers the same sum is a lower bound by weak duality, only a weaker one.
/// </remarks>
internal sealed class GridModel
{
    /// <summary>What may be missing to a row, relative to the terms it is summed from: data and solved numbers are rounded.</summary>
    public const double RowTolerance = 1e-10;

    /// <summary>What may be missing to a whole number of steps, in steps: 0.3 is three steps of 0.1.</summary>
    public const double StepTolerance = 1e-9;

    // Half an ulp for each of some hundred operations, relative to the terms that cancel in a residual.
    private const double Rounded = 1e-13;

    // Steps are looked upon as multiples of the finest one divided by a number up to this.
    private const int LargestDenominator = 1000;

    private readonly LeastSquaresProblem _problem;
    private readonly double[] _steps, _fixed, _low, _high, _optimum, _rowMultipliers, _boundMultipliers;
    private readonly double? _total;
    private readonly List<GridRow> _rows = [];
    private int[] _moving = [];
    private int _completing = -1;
    private double _completingUnits = 1;

    private GridModel(LeastSquaresProblem problem, ReadOnlySpan<double> steps, double? total)
    {
        int n = problem.Variables;
        _problem = problem;
        _steps = steps.ToArray();
        _total = total;
        _fixed = new double[n];
        _low = new double[n];
        _high = new double[n];
        _optimum = new double[n];
        _rowMultipliers = new double[problem.Rows + 1];
        _boundMultipliers = new double[n];
    }

    /// <summary>The unknowns that are searched.</summary>
    public int Count => _moving.Length;

    /// <summary>One step of each searched unknown, as the targets and the prior see it: the columns of M.</summary>
    public double[][] Columns { get; private set; } = [];

    /// <summary>k̂: the optimum without the grid, in steps.</summary>
    public double[] Centre { get; private set; } = [];

    /// <summary>The least number of steps of each searched unknown.</summary>
    public double[] Lowest { get; private set; } = [];

    /// <summary>The largest number of steps.</summary>
    public double[] Highest { get; private set; } = [];

    /// <summary>What a step away from k̂ costs; the sign says in which direction.</summary>
    public double[] Prices { get; private set; } = [];

    /// <summary>The least of price x (k − k̂) between the limits; 0 but for rounding.</summary>
    public double[] LeastCosts { get; private set; } = [];

    /// <summary>No point is better than this.</summary>
    public double RootBound { get; private set; }

    /// <summary>What rounding leaves of an objective.</summary>
    public double Rounding { get; private set; }

    /// <summary>
    /// Conditions on k, tolerance included: the rows of the problem, and last the limits of the unknown that completes the sum.
    /// </summary>
    public IReadOnlyList<GridRow> Rows => _rows;

    /// <summary>
    /// The exact sum in whole units: Σ unitsᵢ kᵢ plus a multiple of <see cref="CompletingUnits"/> is this. Null where there is none.
    /// </summary>
    public double? WholeSum { get; private set; }

    /// <summary>The step of the unknown that completes the sum, in units.</summary>
    public double CompletingUnits => _completingUnits;

    /// <summary>The step of each searched unknown, in units of the sum.</summary>
    public double[] Units { get; private set; } = [];

    private double SumLeft { get; set; }

    /// <summary>Reads a problem; null where it is plain already that no grid point meets the conditions.</summary>
    public static GridModel? TryCreate(LeastSquaresProblem problem, ReadOnlySpan<double> steps, double? total)
    {
        GridModel model = new(problem, steps, total);
        return model.SetLimits() && model.Relax() && model.SetSum() && model.SetRows() ? model.Expand() : null;
    }

    /// <summary>½‖Ax − b‖² + ½‖D(x − x₀)‖² + c·x, from the problem as stated.</summary>
    public double Objective(ReadOnlySpan<double> x)
    {
        double objective = 0;
        for (int t = 0; t < _problem.Targets; t++)
        {
            (double residual, _) = LeastSquaresProblem.Evaluate(_problem.TargetRow(t), x);
            residual -= _problem.TargetValues[t];
            objective += residual * residual / 2;
        }
        for (int i = 0; i < x.Length; i++)
        {
            double held = _problem.Prior[i] * (x[i] - _problem.Centre[i]);
            objective += held * held / 2 + _problem.Cost[i] * x[i];
        }
        return objective;
    }

    /// <summary>The point with these numbers of steps, the sum completed; false where it breaks a condition.</summary>
    public bool TryComplete(ReadOnlySpan<double> k, Span<double> x)
    {
        _fixed.CopyTo(x);
        double left = SumLeft;
        for (int c = 0; c < k.Length; c++)
        {
            if (k[c] < Lowest[c] || k[c] > Highest[c])
                return false;
            x[_moving[c]] = k[c] * _steps[_moving[c]];
            if (_completing >= 0)
                left -= k[c] * Units[c];
        }
        if (_completing >= 0)
        {
            double last = Math.Round(left / _completingUnits);
            double missing = Math.Abs(left - last * _completingUnits);
            if (missing > (WholeSum is null ? StepTolerance : 0) || last < _low[_completing] || last > _high[_completing])
                return false;
            x[_completing] = last * _steps[_completing];
        }
        for (int r = 0; r < _problem.Rows; r++)
        {
            (double value, double terms) = LeastSquaresProblem.Evaluate(_problem.Row(r), x);
            if (value < _problem.RowLow[r] - RowTolerance * terms || value > _problem.RowHigh[r] + RowTolerance * terms)
                return false;
        }
        return true;
    }

    // The limits in whole steps. An unknown whose limits are one value stays there, on the grid or off it.
    private bool SetLimits()
    {
        int n = _problem.Variables;
        double least = 0;
        for (int i = 0; i < n; i++)
            least += _problem.Lower[i];
        List<int> moving = [];
        for (int i = 0; i < n; i++)
        {
            double lower = _problem.Lower[i], upper = _problem.Upper[i];
            if (lower > upper)
                return false;
            _fixed[i] = lower;
            if (lower == upper)
                continue;
            if (_total is { } total)
                upper = Math.Min(upper, total - (least - lower));
            _low[i] = Math.Ceiling(lower / _steps[i] - StepTolerance);
            _high[i] = Math.Floor(upper / _steps[i] + StepTolerance);
            if (_low[i] > _high[i])
                return false;
            _fixed[i] = _low[i] * _steps[i];
            if (_low[i] < _high[i])
                moving.Add(i);
        }
        _moving = [.. moving];
        return true;
    }

    // An optimum of the problem without its grid, between the limits of the grid.
    private bool Relax()
    {
        int n = _problem.Variables;
        LeastSquaresProblem relaxed = new(n);
        for (int t = 0; t < _problem.Targets; t++)
            relaxed.AddTarget(_problem.TargetRow(t), _problem.TargetValues[t]);
        for (int r = 0; r < _problem.Rows; r++)
            relaxed.AddRow(_problem.Row(r), _problem.RowLow[r], _problem.RowHigh[r]);
        if (_total is { } total)
        {
            double[] ones = new double[n];
            Array.Fill(ones, 1);
            relaxed.AddRow(ones, total, total);
        }
        _problem.Prior.CopyTo(relaxed.Prior);
        _problem.Centre.CopyTo(relaxed.Centre);
        _problem.Cost.CopyTo(relaxed.Cost);
        for (int i = 0; i < n; i++)
            (relaxed.Lower[i], relaxed.Upper[i]) = (LeastValue(i), MostValue(i));
        DualActiveSet kernel = new();
        SolveStatus status = kernel.Solve(relaxed);
        if (status == SolveStatus.Infeasible)
            return false;
        ReadOnlySpan<double> x = status == SolveStatus.Optimal ? kernel.Solution : relaxed.Centre;
        for (int i = 0; i < n; i++)
            _optimum[i] = Math.Clamp(x[i], LeastValue(i), MostValue(i));
        if (status == SolveStatus.Optimal)
        {
            kernel.CopyRowMultipliers(_rowMultipliers.AsSpan(0, relaxed.Rows));
            kernel.CopyBoundMultipliers(_boundMultipliers);
        }
        return true;
    }

    // Chooses the unknown that completes the sum, and the unit in which the sum is done in whole numbers.
    private bool SetSum()
    {
        if (_total is not { } total)
            return true;
        double left = total, size = Math.Abs(total);
        for (int i = 0; i < _fixed.Length; i++)
        {
            left -= IsFixed(i) ? _fixed[i] : 0;
            size += IsFixed(i) ? Math.Abs(_fixed[i]) : 0;
        }
        if (_moving.Length == 0)
            return Math.Abs(left) <= StepTolerance * size;

        // The finest step completes most sums; of several, the unknown with most room on both sides leaves the others most.
        double room = 0;
        foreach (int i in _moving)
        {
            double own = Math.Min(_optimum[i] / _steps[i] - _low[i], _high[i] - _optimum[i] / _steps[i]);
            if (_completing < 0 || _steps[i] < _steps[_completing] || _steps[i] == _steps[_completing] && own > room)
                (_completing, room) = (i, own);
        }
        _moving = [.. _moving.Where(i => i != _completing)];
        _optimum[_completing] = left - _moving.Sum(i => _optimum[i]);

        double finest = _steps[_completing];
        int denominator = 1;
        while (denominator <= LargestDenominator && !Array.TrueForAll(_moving, i => IsWhole(_steps[i] / finest * denominator)))
            denominator++;
        if (denominator > LargestDenominator)
        {
            Units = [.. _moving.Select(i => _steps[i] / finest)];
            SumLeft = left / finest;
            return true;
        }
        double unit = finest / denominator;
        Units = [.. _moving.Select(i => Math.Round(_steps[i] / unit))];
        _completingUnits = denominator;
        WholeSum = SumLeft = Math.Round(left / unit);
        // A sum that is no whole number of units is made by no point.
        return Math.Abs(left / unit - SumLeft) <= StepTolerance * Math.Max(1, size / unit);

        static bool IsWhole(double value) => value >= 0.5 && Math.Abs(value - Math.Round(value)) <= StepTolerance * value;
    }

    private bool SetRows()
    {
        int n = _problem.Variables;
        for (int r = 0; r < _problem.Rows; r++)
        {
            ReadOnlySpan<double> row = _problem.Row(r);
            double own = _completing < 0 ? 0 : row[_completing], constant = _completing < 0 ? 0 : own * _total!.Value;
            for (int i = 0; i < n; i++)
                constant += IsFixed(i) ? (row[i] - own) * _fixed[i] : 0;
            double[] coefficients = new double[_moving.Length];
            for (int c = 0; c < coefficients.Length; c++)
                coefficients[c] = (row[_moving[c]] - own) * _steps[_moving[c]];
            double slack = RowTolerance * LargestTerms(row);
            _rows.Add(new GridRow(coefficients, _problem.RowLow[r] - constant - slack, _problem.RowHigh[r] - constant + slack));
        }
        if (_completing >= 0)
        {
            double slack = StepTolerance * _completingUnits;
            _rows.Add(new GridRow(Units, SumLeft - _completingUnits * _high[_completing] - slack,
                SumLeft - _completingUnits * _low[_completing] + slack));
        }
        // A row that nothing within the limits meets.
        return _rows.TrueForAll(row =>
        {
            double least = 0, most = 0;
            for (int c = 0; c < _moving.Length; c++)
            {
                double a = row.Coefficients[c] * _low[_moving[c]], b = row.Coefficients[c] * _high[_moving[c]];
                least += Math.Min(a, b);
                most += Math.Max(a, b);
            }
            return least <= row.High && most >= row.Low;
        });
    }

    private GridModel Expand()
    {
        int n = _problem.Variables;
        RootBound = Objective(_optimum);
        double size = Math.Abs(RootBound);
        double[] gradient = new double[n];
        for (int i = 0; i < n; i++)
            gradient[i] = _problem.Prior[i] * _problem.Prior[i] * (_optimum[i] - _problem.Centre[i]) + _problem.Cost[i];
        for (int t = 0; t < _problem.Targets; t++)
        {
            (double residual, double terms) = LeastSquaresProblem.Evaluate(_problem.TargetRow(t), _optimum);
            residual -= _problem.TargetValues[t];
            for (int i = 0; i < n; i++)
                gradient[i] += residual * _problem.TargetRow(t)[i];
            size += (terms + Math.Abs(_problem.TargetValues[t])) * (terms + Math.Abs(_problem.TargetValues[t])) / 2;
        }
        Rounding = Rounded * size;

        // multiplier x (value − end) is at least 0 wherever the row is met, so it may be split off and left out.
        for (int r = 0; r < _problem.Rows; r++)
        {
            double multiplier = _rowMultipliers[r], end = multiplier > 0 ? _problem.RowLow[r] : _problem.RowHigh[r];
            if (multiplier == 0 || !double.IsFinite(end))
                continue;
            ReadOnlySpan<double> row = _problem.Row(r);
            for (int i = 0; i < n; i++)
                gradient[i] -= multiplier * row[i];
            RootBound += multiplier * (end - LeastSquaresProblem.Evaluate(row,
                _optimum).Value) - Math.Abs(multiplier) * RowTolerance * LargestTerms(row);
        }
        double common = 0;
        if (_completing >= 0)
        {
            double multiplier = _boundMultipliers[_completing], end = multiplier > 0 ? LeastValue(_completing) : MostValue(_completing);
            common = gradient[_completing] - multiplier;
            RootBound += multiplier * (end - _optimum[_completing]);
        }

        // An unknown held at its bound at a price comes after the free ones, the dearest last: the search begins at the end.
        double[] price = new double[n];
        foreach (int i in _moving)
            price[i] = (gradient[i] - common) * _steps[i];
        double[] units = new double[n];
        for (int c = 0; c < Units.Length; c++)
            units[_moving[c]] = Units[c];
        int[] order = [.. Enumerable.Range(0, Count).OrderBy(c => Math.Abs(price[_moving[c]]))];
        for (int r = 0; r < _rows.Count; r++)
            _rows[r] = new GridRow([.. order.Select(c => _rows[r].Coefficients[c])], _rows[r].Low, _rows[r].High);
        _moving = [.. order.Select(c => _moving[c])];
        Units = [.. _moving.Select(i => units[i])];
        Prices = [.. _moving.Select(i => price[i])];
        Columns = [.. _moving.Select(Column)];
        Centre = [.. _moving.Select(i => _optimum[i] / _steps[i])];
        Lowest = [.. _moving.Select(i => _low[i])];
        Highest = [.. _moving.Select(i => _high[i])];
        LeastCosts = new double[Count];
        for (int c = 0; c < Count; c++)
            LeastCosts[c] = Math.Min(Prices[c] * (Lowest[c] - Centre[c]), Prices[c] * (Highest[c] - Centre[c]));
        RootBound += LeastCosts.Sum();
        return this;
    }

    private double[] Column(int variable)
    {
        int targets = _problem.Targets;
        double step = _steps[variable];
        double[] column = new double[targets + _problem.Variables];
        for (int t = 0; t < targets; t++)
            column[t] = step * (_problem.TargetRow(t)[variable] - (_completing < 0 ? 0 : _problem.TargetRow(t)[_completing]));
        column[targets + variable] = step * _problem.Prior[variable];
        if (_completing >= 0)
            column[targets + _completing] = -step * _problem.Prior[_completing];
        return column;
    }

    private bool IsFixed(int variable) => _low[variable] == _high[variable];

    private double LeastValue(int variable) => _fixed[variable];

    private double MostValue(int variable) => IsFixed(variable) ? _fixed[variable] : _high[variable] * _steps[variable];

    private double LargestTerms(ReadOnlySpan<double> row)
    {
        double terms = 0;
        for (int i = 0; i < _fixed.Length; i++)
            terms += Math.Abs(row[i]) * Math.Max(Math.Abs(LeastValue(i)), Math.Abs(MostValue(i)));
        return terms;
    }
}
