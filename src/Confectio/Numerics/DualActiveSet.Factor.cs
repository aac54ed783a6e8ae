namespace Confectio.Numerics;

// How a solve begins: memory, the factor of the curvature, the optimum without conditions.
internal sealed partial class DualActiveSet
{
    private const int VectorCount = 10;

    private void Begin(LeastSquaresProblem problem)
    {
        _problem = problem;
        _n = problem.Variables;
        _ld = problem.Stride;
        _rowCount = problem.Rows;
        Steps = Passes = 0;
        _proximal = false;
        Reserve();
        for (int k = 0; k < _rowCount; k++)
            _equality[k] = IsOneValue(problem.RowLow[k], problem.RowHigh[k]);
        Span<double> lower = problem.Lower, upper = problem.Upper;
        for (int j = 0; j < _n; j++)
            _equality[_rowCount + j] = IsOneValue(lower[j], upper[j]);
        problem.Centre.CopyTo(PullCentre);
    }

    // The optimum without conditions. Of a singular curvature: with a pull towards the centre, or towards the last pass.
    private void FindStart(double share)
    {
        _active = 0;
        _leastOutside = 1;
        _lastMoved = double.PositiveInfinity;
        _side.AsSpan(0, _rowCount + _n).Clear();
        _problem.Prior.CopyTo(Curve);
        Pull.Clear();
        if (_proximal || !Factor(_problem.Centre))
        {
            _proximal = true;
            AddPull(share);
            Span<double> centre = Shift;
            for (int j = 0; j < _n; j++)
            {
                double prior = _problem.Prior[j] / Curve[j], pull = Pull[j] / Curve[j];
                centre[j] = prior * prior * _problem.Centre[j] + pull * pull * PullCentre[j];
            }
            Factor(centre);
        }
        MeasureRows();
        SolveWithoutConditions();
    }

    // A low end above a high one is a contradiction that has no proof of two conditions; whoever states the problem must see it.
    private static bool IsOneValue(double low, double high) =>
        low <= high ? low == high : throw new ArgumentException("The low end of a condition is above its high end.");

    private void Reserve()
    {
        int square = _n * _ld, conditions = _rowCount + _n;
        if (_vectors.Length < VectorCount * _ld)
        {
            _vectors = new double[VectorCount * _ld];
            _rootInverse = new double[_ld];
            _triDiagonal = new double[_ld];
            _triInverse = new double[_ld];
            _multipliers = new double[_ld];
            _cosine = new double[_ld];
            _sine = new double[_ld];
            _activeCondition = new int[_ld];
        }
        if (_root.Length < square)
        {
            _root = new double[square];
            _basis = new double[square];
            _tri = new double[square];
        }
        if (_normalLength.Length < conditions)
        {
            _normalLength = new double[conditions];
            _proof = new double[conditions];
            _equality = new bool[conditions];
            _side = new sbyte[conditions];
        }
        int rows = Vectors.Padded(_problem.Targets);
        if (_columns.Length < rows * _n)
            _columns = new double[rows * _n];
        if (_tail.Length < rows)
            _tail = new double[rows];
    }

    // The prior is diagonal, so a reflection of column k meets one entry of R and the targets' rows only: 2 m n² operations.
    // R comes with a positive diagonal; Work receives R times the optimum without conditions and without cost.
    private bool Factor(ReadOnlySpan<double> centre)
    {
        int m = _problem.Targets, rows = Vectors.Padded(m);
        Span<double> columns = _columns.AsSpan(0, rows * _n), tail = _tail.AsSpan(0, rows), curve = Curve, right = Work;
        columns.Clear();
        tail.Clear();
        _problem.TargetValues.CopyTo(tail);
        for (int t = 0; t < m; t++)
        {
            ReadOnlySpan<double> row = _problem.TargetRow(t);
            for (int j = 0, at = t; j < _n; j++, at += rows)
                columns[at] = row[j];
        }
        Span<double> lengths = _normalLength.AsSpan(_rowCount, _n);
        for (int j = 0; j < _n; j++)
        {
            ReadOnlySpan<double> column = columns.Slice(j * rows, rows);
            lengths[j] = Math.Sqrt(curve[j] * curve[j] + Vectors.Dot(column, column));
        }
        _root.AsSpan(0, _n * _ld).Clear();
        right.Clear();
        for (int k = 0; k < _n; k++)
        {
            ReadOnlySpan<double> pivot = columns.Slice(k * rows, rows);
            double length = Math.Sqrt(curve[k] * curve[k] + Vectors.Dot(pivot, pivot));
            if (!(length > lengths[k] / SingularAbove))
                return false;
            double head = curve[k] + length, beta = 1 / (length * head);
            _rootInverse[k] = 1 / length;
            Span<double> turns = Z[(k + 1).._n];
            Vectors.Reflect(columns[((k + 1) * rows)..], pivot, beta, turns);
            for (int j = 0, at = k + (k + 1) * _ld; j < turns.Length; j++, at += _ld)
                _root[at] = turns[j] * head;
            double held = curve[k] * centre[k], turned = beta * (head * held + Vectors.Dot(pivot, tail));
            right[k] = turned * head - held;
            Vectors.AddScaled(tail, -turned, pivot);
        }
        return Invert(lengths);
    }

    // J = R⁻¹ by columns, each from those before it. The largest (length of a column of A and D) x (length of the same row of J) is
    // the condition number after the best scaling of that column: where it is too large the curvature says nothing of that unknown.
    private bool Invert(Span<double> lengths)
    {
        Span<double> sums = Z;
        sums.Clear();
        for (int j = 0; j < _n; j++)
        {
            Span<double> column = Column(j);
            int above = Vectors.Padded(j);
            Vectors.Combine(column[..above], _root.AsSpan(j * _ld, j), _basis, _ld);
            column[above..].Clear();
            double inverse = _rootInverse[j];
            for (int i = 0; i < j; i++)
            {
                double value = column[i] *= -inverse;
                sums[i] += value * value;
            }
            column[j] = inverse;
            sums[j] += inverse * inverse;
        }
        double worst = 0;
        for (int j = 0; j < _n; j++)
        {
            double inverse = Math.Sqrt(sums[j]);
            worst = Math.Max(worst, lengths[j] * inverse);
            lengths[j] = inverse;
        }
        _dependent = Math.Clamp(DependentPerCondition * worst, Dependent, MostDependent);
        return _proximal || worst < SingularAbove;
    }

    private void AddPull(double share)
    {
        Span<double> pull = Pull, curve = Curve, work = Work;
        work.Clear();
        for (int t = 0; t < _problem.Targets; t++)
        {
            ReadOnlySpan<double> row = _problem.TargetRow(t);
            for (int j = 0; j < _n; j++)
                work[j] = Math.Max(work[j], Math.Abs(row[j]));
        }
        double largest = 0;
        for (int j = 0; j < _n; j++)
        {
            // A cost pulls too: as a curvature would that spends it within the unknown's own range.
            double range = _problem.Upper[j] - _problem.Lower[j], reach = double.IsFinite(range) && range > 0 ? range
                : Math.Max(Math.Abs(_problem.Centre[j]), 1);
            work[j] = Math.Max(Math.Max(work[j], curve[j]), Math.Sqrt(Math.Abs(_problem.Cost[j]) / reach));
            largest = Math.Max(largest, work[j]);
        }
        if (largest == 0)
            largest = 1 / share;
        for (int j = 0; j < _n; j++)
        {
            // An unknown that nothing touches takes the scale of the others.
            double own = work[j];
            pull[j] = share * (own > 0 ? own : largest);
            curve[j] = Math.Sqrt(curve[j] * curve[j] + pull[j] * pull[j]);
        }
    }

    private void MeasureRows()
    {
        for (int k = 0; k < _rowCount; k++)
        {
            Project(k, 1);
            _normalLength[k] = Math.Sqrt(SumOfSquares(D[.._n]));
        }
    }

    private void SolveWithoutConditions()
    {
        Span<double> x = X, scale = Scale;
        Vectors.Combine(x, Work[.._n], _basis, _ld);
        if (_problem.Cost[.._n].ContainsAnyExcept(0.0))
        {
            Span<double> shift = Shift;
            shift.Clear();
            for (int j = 0; j < _n; j++)
                Vectors.AddScaled(shift, -Vectors.Dot(Column(j), _problem.Cost), Column(j));
            Vectors.AddScaled(x, 1, shift);
        }
        scale.Clear();
        Vectors.RaiseToMagnitude(scale, x);
    }
}
