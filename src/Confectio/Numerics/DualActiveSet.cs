namespace Confectio.Numerics;

/// <summary>
/// The dual active-set method of Goldfarb and Idnani (Mathematical Programming 27 (1983) 1-33) on the square root of the
/// curvature: it starts at the optimum without conditions and takes up violated conditions one at a time, each multiplier always
/// at hand, until none is violated or a contradiction is proved.
/// </summary>
/// <remarks>
/// <para>
/// The triangle R with R'R = D² + A'A comes from Householder reflections of the targets into the diagonal prior; A'A is never
/// formed. Columns are worked on whole (<see cref="Vectors"/>): the basis J with JJ' = (R'R)⁻¹ is kept column by column, taking up
/// a condition is one reflection of its free columns, letting one go is a chain of rotations.
/// </para>
/// <para>
/// Where the targets and the prior leave the curvature singular, a weak pull towards the last pass is added and the passes
/// repeated until they settle (proximal point method): the answer is then one of the optima, near the centre.
/// </para>
/// <para>An object is a workspace: a second solve of the same size or smaller allocates nothing. It is not safe for two threads.</para>
/// </remarks>
internal sealed partial class DualActiveSet
{
    /// <summary>
    /// A condition whose normal keeps less than this share of its length outside the active ones depends on them. Where the
    /// curvature is badly conditioned the basis itself is rounded by more, and so is the share.
    /// </summary>
    private const double Dependent = 1e-12, MostDependent = 1e-9, DependentPerCondition = 1e-14;

    /// <summary>
    /// The same against all that a normal is summed from: the active normals with their shares, whose rounding it carries.
    /// </summary>
    private const double DependentOfSum = 1e-14;

    /// <summary>
    /// Where a normal that was taken up stood out of the others by less than this, an answer hangs on rounding: it is then
    /// held against the problem as stated before it is given out.
    /// </summary>
    private const double NearlyDependent = 1e-5;

    /// <summary>What rounding may leave of a condition, relative to the terms it is summed from.</summary>
    private const double Feasible = 1e-13;

    /// <summary>Conditions that contradict each other by less than this, relative, are taken as agreeing: data are rounded.</summary>
    private const double Agreeing = 1e-10;

    /// <summary>How exact the ends of a condition are that were handed down from another solve.</summary>
    private const double HandedDown = 1e-12;

    /// <summary>Beyond this condition number the curvature counts as singular.</summary>
    private const double SingularAbove = 1e11;

    /// <summary>
    /// The weight of the proximal pull, relative to the largest coefficient of a column. A weak pull settles soon, in a few passes,
    /// and a strong one keeps the basis well conditioned; where one fails the next is tried.
    /// </summary>
    private static readonly double[] s_pulls = [1e-4, 1e-2, 1e-5, 1e-6, 1e-7];

    private const int MostPassesOfOnePull = 15;

    private LeastSquaresProblem _problem = null!;
    private int _n, _ld, _rowCount, _active;

    private double[] _columns = [];        // A by columns while it is reflected into R
    private double[] _root = [];           // R by columns, its diagonal apart
    private double[] _rootInverse = [];    // 1 / diagonal of R
    private double[] _basis = [];          // J by columns
    private double[] _tri = [];            // the triangle of the active normals by columns, its diagonal apart
    private double[] _triDiagonal = [], _triInverse = [];
    private double[] _vectors = [];        // the vectors below, one after the other
    private double[] _tail = [];

    private double[] _multipliers = [];    // of the active conditions, in the order they were taken up
    private double[] _proof = [], _cosine = [], _sine = [];
    private double[] _normalLength = [];   // |J'n| of every condition: its length in the metric of the problem
    private int[] _activeCondition = [];
    private bool[] _equality = [];          // of every condition: both ends are one
    private sbyte[] _side = [];            // of every condition: 0 free, +1 held at its low end, -1 at its high end, 2 redundant
    private bool _proximal;
    private double _dependent, _leastOutside, _lastMoved;

    private Span<double> X => Vector(0);

    private Span<double> D => Vector(1);

    private Span<double> Z => Vector(2);

    private Span<double> R => Vector(3);

    private Span<double> Scale => Vector(4);

    private Span<double> Curve => Vector(5);

    private Span<double> Pull => Vector(6);

    private Span<double> PullCentre => Vector(7);

    private Span<double> Work => Vector(8);

    private Span<double> Shift => Vector(9);

    /// <summary>How many conditions were taken up or let go.</summary>
    public int Steps { get; private set; }

    /// <summary>How many passes a singular curvature took; 0 where it is not singular.</summary>
    public int Passes { get; private set; }

    /// <summary>How many conditions hold with equality and carry the answer.</summary>
    public int ActiveCount => _active;

    /// <summary>The answer, or where the search stopped.</summary>
    public ReadOnlySpan<double> Solution => X[.._n];

    /// <summary>
    /// Solves the problem.
    /// </summary>
    public SolveStatus Solve(LeastSquaresProblem problem)
    {
        Begin(problem);
        int most = 200 + 20 * (_n + _rowCount);
        foreach (double pull in s_pulls)
        {
            FindStart(pull);
            SolveStatus? status = Run(Steps + most);
            if (status is SolveStatus found && (found != SolveStatus.Undecided || !_proximal))
                return found;
        }
        return SolveStatus.Undecided;
    }

    // Null: the passes do not settle with this pull.
    private SolveStatus? Run(int most)
    {
        if (!HoldEqualities())
            return Contradiction();
        for (int passes = 0; ; passes++)
        {
            if (!Descend(most))
                return Steps > most ? SolveStatus.Undecided : Contradiction();
            Refine();
            if (Settled() && !Select(out _, out _) && !Reopen(passes))
                return Finish();
            if (Steps > most)
                return SolveStatus.Undecided;
            if (_proximal && passes == MostPassesOfOnePull)
                return null;
        }
    }

    /// <summary>The multipliers of the rows of C: above 0 where the low end holds, below 0 where the high end does.</summary>
    public void CopyRowMultipliers(Span<double> target) => CopyMultipliers(target[.._rowCount], 0);

    /// <summary>The multipliers of the bounds: above 0 where the lower one holds, below 0 where the upper one does.</summary>
    public void CopyBoundMultipliers(Span<double> target) => CopyMultipliers(target[.._n], _rowCount);

    /// <summary>+1 where a row is held at its low end, -1 at its high end, else 0.</summary>
    public int SideOfRow(int row) => SideOf(row);

    /// <summary>+1 where an unknown is held at its lower bound, -1 at its upper one, else 0.</summary>
    public int SideOfBound(int variable) => SideOf(_rowCount + variable);

    private int SideOf(int condition) => _side[condition] is 1 or -1 ? _side[condition] : 0;

    private void CopyMultipliers(Span<double> target, int first)
    {
        target.Clear();
        for (int k = 0; k < _active; k++)
        {
            int condition = _activeCondition[k] - first;
            if (condition >= 0 && condition < target.Length)
                target[condition] = _side[_activeCondition[k]] * _multipliers[k];
        }
    }

    // Takes up violated conditions until none is left. False: a contradiction, or too many steps.
    private bool Descend(int most)
    {
        while (Select(out int condition, out int side))
        {
            if (Steps > most || !TakeUp(condition, side))
                return false;
        }
        return true;
    }

    private bool HoldEqualities()
    {
        for (int k = 0; k < _rowCount + _n; k++)
        {
            // An equality is taken up from the side on which it is violated, so that its step goes forward.
            if (_equality[k] && !TakeUp(k, Slack(k, 1) <= 0 ? 1 : -1))
                return false;
        }
        return true;
    }

    /// <summary>The condition most violated in the metric of the problem: the step to it is the longest.</summary>
    private bool Select(out int condition, out int side)
    {
        condition = -1;
        side = 0;
        double worst = 0;
        ReadOnlySpan<double> x = X, scale = Scale;
        ReadOnlySpan<double> lower = _problem.Lower, upper = _problem.Upper;
        ReadOnlySpan<double> lengths = _normalLength.AsSpan(_rowCount);
        ReadOnlySpan<sbyte> sides = _side.AsSpan(_rowCount);
        for (int j = 0; j < lower.Length; j++)
        {
            double below = lower[j] - x[j], above = x[j] - upper[j], violation = Math.Max(below, above);
            // The weighing comes first: nearly every bound is respected, and a division costs as much as the whole test.
            if (violation > worst * lengths[j] && violation > Feasible * scale[j] && sides[j] == 0)
            {
                worst = violation / lengths[j];
                condition = _rowCount + j;
                side = below >= above ? 1 : -1;
            }
        }
        for (int k = 0; k < _rowCount; k++)
        {
            if (_side[k] != 0)
                continue;
            ReadOnlySpan<double> row = _problem.Row(k);
            double value = Vectors.Dot(row, x), below = _problem.RowLow[k] - value, above = value - _problem.RowHigh[k];
            double violation = Math.Max(below, above);
            if (violation > 0 && violation > worst * _normalLength[k] && violation > Feasible * Magnitude(k))
            {
                worst = _normalLength[k] > 0 ? violation / _normalLength[k] : double.MaxValue;
                condition = k;
                side = below >= above ? 1 : -1;
            }
        }
        return condition >= 0;
    }

    // What a condition's value is summed from, at the largest the search has seen: rounding is relative to it.
    private double Magnitude(int condition) => Magnitude(condition, Scale);

    private double Magnitude(int condition, ReadOnlySpan<double> x)
    {
        if (condition >= _rowCount)
            return Math.Abs(x[condition - _rowCount]);
        ReadOnlySpan<double> row = _problem.Row(condition);
        double sum = 0;
        for (int j = 0; j < _n; j++)
            sum += Math.Abs(row[j] * x[j]);
        return sum;
    }

    // An unknown that the active conditions leave at zero is still off by the rounding of the others: measured in the metric of the
    // problem, in which they compare.
    private double MagnitudeInMetric(int condition) => Math.Max(Magnitude(condition), LengthOfAnswer() * _normalLength[condition]);

    private double AllowedContradiction(int condition)
    {
        double allowed = Agreeing * MagnitudeInMetric(condition);
        if (!_problem.IsHandedDown)
            return allowed;
        // Ends that another solve found are rounded, and a normal that is a sum of theirs carries that, each by its share.
        double sum = 0;
        for (int k = 0; k < _active; k++)
            sum += Math.Abs(R[k]) * Magnitude(_activeCondition[k]);
        return Math.Max(allowed, HandedDown * sum);
    }

    private double LengthOfAnswer()
    {
        double largest = 0;
        for (int j = 0; j < _n; j++)
            largest = Math.Max(largest, Scale[j] / _normalLength[_rowCount + j]);
        return largest;
    }

    // How far inside its end a condition is; below zero where it is violated.
    private double Slack(int condition, int side)
    {
        double value, end;
        if (condition < _rowCount)
        {
            value = Vectors.Dot(_problem.Row(condition), X);
            end = side > 0 ? _problem.RowLow[condition] : _problem.RowHigh[condition];
        }
        else
        {
            int j = condition - _rowCount;
            value = X[j];
            end = side > 0 ? _problem.Lower[j] : _problem.Upper[j];
        }
        return side * (value - end);
    }

    // Moves along the dual until the condition holds, letting go what stands in the way. False: it contradicts the active ones.
    private bool TakeUp(int condition, int side)
    {
        double slack = Slack(condition, side), multiplier = 0;
        Project(condition, side);
        Span<double> d = D, z = Z;
        double outside = SumOfSquares(d[_active.._n]), length = outside + SumOfSquares(d[.._active]);
        // The step in the unknowns is a sum of the free columns.
        Vectors.Combine(z, d[_active.._n], _basis.AsSpan(_active * _ld), _ld);
        while (true)
        {
            Steps++;
            ExpressByActive(d);
            double noise = Math.Max(_dependent * Math.Sqrt(length), DependentOfSum * (Math.Sqrt(length) + LengthOfSum()));
            bool dependent = outside <= noise * noise;
            double block = LargestDualStep(noise, out int leaving);
            double step = block;
            if (dependent)
            {
                double allowed = leaving >= 0 && !_equality[condition] ? Feasible * MagnitudeInMetric(condition)
                    : AllowedContradiction(condition);
                if (-slack <= allowed)
                {
                    _side[condition] = 2;
                    return true;
                }
                if (leaving < 0)
                {
                    WriteProof(condition, side);
                    return false;
                }
            }
            else
            {
                step = Math.Min(block, -slack / outside);
                if (step > 0)
                {
                    Move(step);
                    slack += step * outside;
                }
                step = Math.Max(step, 0);
            }
            multiplier += step;
            Span<double> u = _multipliers;
            for (int k = 0; k < _active; k++)
            {
                u[k] -= step * R[k];
                if (u[k] < 0 && !_equality[_activeCondition[k]])
                    u[k] = 0;
            }
            if (leaving < 0 || (!dependent && step < block))
            {
                Append(condition, side, multiplier, outside);
                return true;
            }
            LetGo(leaving, d);
            outside += d[_active] * d[_active];
            Vectors.AddScaled(z, d[_active], Column(_active));
        }
    }

    // The length of all that a normal is a sum of, as far as it is one.
    private double LengthOfSum()
    {
        double sum = 0;
        for (int k = 0; k < _active; k++)
            sum += Math.Abs(R[k]) * _normalLength[_activeCondition[k]];
        return sum;
    }

    private void Move(double step)
    {
        Span<double> x = X, z = Z, scale = Scale;
        Vectors.AddScaled(x, step, z);
        Vectors.RaiseToMagnitude(scale, x);
    }

    // d = J'n
    private void Project(int condition, int side)
    {
        Span<double> d = D;
        if (condition < _rowCount)
        {
            ReadOnlySpan<double> row = _problem.Row(condition);
            for (int j = 0; j < _n; j++)
                d[j] = side * Vectors.Dot(row, Column(j));
        }
        else
        {
            int at = condition - _rowCount;
            ReadOnlySpan<double> basis = _basis;
            for (int j = 0; j < _n; j++, at += _ld)
                d[j] = side * basis[at];
        }
    }

    // r: the normal written as a sum of the active normals, as far as it can be.
    private void ExpressByActive(ReadOnlySpan<double> d)
    {
        Span<double> r = R;
        d[.._active].CopyTo(r);
        r[_active..].Clear();
        SolveTriangle(r);
    }

    private void SolveTriangle(Span<double> r)
    {
        for (int j = _active - 1; j >= 0; j--)
        {
            double value = r[j] *= _triInverse[j];
            int length = Vectors.Padded(j);
            Vectors.AddScaled(r[..length], -value, _tri.AsSpan(j * _ld, length));
        }
    }

    private void SolveTransposedTriangle(Span<double> r)
    {
        for (int j = 0; j < _active; j++)
        {
            int length = Vectors.Padded(j);
            // The triangle's columns are zero from the diagonal on, so what stands there in r does not count.
            r[j] = (r[j] - Vectors.Dot(r[..length], _tri.AsSpan(j * _ld, length))) * _triInverse[j];
        }
    }

    private double LargestDualStep(double noise, out int leaving)
    {
        double best = double.PositiveInfinity;
        leaving = -1;
        ReadOnlySpan<double> r = R, u = _multipliers;
        for (int k = 0; k < _active; k++)
        {
            // What is only rounding must not let a condition go.
            if (r[k] <= 0 || r[k] * _normalLength[_activeCondition[k]] <= noise || _equality[_activeCondition[k]])
                continue;
            double ratio = u[k] / r[k];
            if (ratio < best)
            {
                best = ratio;
                leaving = k;
            }
        }
        return best;
    }

    // One reflection turns the free part of d into a single entry, and the free columns of J with it.
    private void Append(int condition, int side, double multiplier, double outside)
    {
        int q = _active;
        Span<double> d = D, z = Z, tri = _tri.AsSpan(q * _ld, _ld);
        _leastOutside = Math.Min(_leastOutside, outside / (outside + SumOfSquares(d[..q])));
        double norm = Math.Sqrt(outside), sign = d[q] < 0 ? -1 : 1;
        double beta = 1 / (norm * (norm + Math.Abs(d[q])));
        // J₂v = z ± |d₂| times the first free column, and z is at hand: the reflection costs one pass instead of two.
        Span<double> first = Column(q), along = Work;
        z.CopyTo(along);
        Vectors.AddScaled(along, sign * norm, first);
        Vectors.AddOuter(_basis.AsSpan((q + 1) * _ld, (_n - q - 1) * _ld), along, -beta, d[(q + 1).._n]);
        Vectors.Scale(first, 1 / norm, z);
        d[..q].CopyTo(tri);
        tri[q..].Clear();
        _triDiagonal[q] = norm;
        _triInverse[q] = 1 / norm;
        _multipliers[q] = multiplier;
        _activeCondition[q] = condition;
        _side[condition] = (sbyte)side;
        _active++;
    }

    // Takes a column out of the triangle; rotations close the gap, and d turns with them.
    private void LetGo(int leaving, Span<double> d)
    {
        _side[_activeCondition[leaving]] = 0;
        for (int k = leaving + 1; k < _active; k++)
        {
            Span<double> column = _tri.AsSpan(k * _ld, _ld);
            for (int i = leaving; i < k - 1; i++)
            {
                (double c, double s) = (_cosine[i], _sine[i]);
                (column[i], column[i + 1]) = (c * column[i] + s * column[i + 1], c * column[i + 1] - s * column[i]);
            }
            double over = column[k - 1], under = _triDiagonal[k], length = Math.Sqrt(over * over + under * under);
            (_cosine[k - 1], _sine[k - 1]) = (over / length, under / length);
            _triDiagonal[k - 1] = length;
            _triInverse[k - 1] = 1 / length;
            column[k - 1] = 0;
            column.CopyTo(_tri.AsSpan((k - 1) * _ld, _ld));
            _multipliers[k - 1] = _multipliers[k];
            _activeCondition[k - 1] = _activeCondition[k];
        }
        int chain = _active - 1 - leaving;
        Vectors.RotateChain(_basis.AsSpan(leaving * _ld, (chain + 1) * _ld), _ld, _cosine.AsSpan(leaving, chain),
            _sine.AsSpan(leaving, chain));
        for (int i = leaving; i < _active - 1; i++)
            (d[i], d[i + 1]) = (_cosine[i] * d[i] + _sine[i] * d[i + 1], _cosine[i] * d[i + 1] - _sine[i] * d[i]);
        _active--;
    }

    private Span<double> Column(int j) => _basis.AsSpan(j * _ld, _ld);

    private Span<double> Vector(int which) => _vectors.AsSpan(which * _ld, _ld);

    private static double SumOfSquares(ReadOnlySpan<double> values)
    {
        double even = 0, odd = 0;
        int i = 0;
        for (; i + 2 <= values.Length; i += 2)
        {
            even += values[i] * values[i];
            odd += values[i + 1] * values[i + 1];
        }
        if (i < values.Length)
            even += values[i] * values[i];
        return even + odd;
    }
}
