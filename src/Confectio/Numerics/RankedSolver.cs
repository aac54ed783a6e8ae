namespace Confectio.Numerics;

/// <summary>
/// Solves a <see cref="RankedProblem"/> as a cascade. Each level finds the values its targets take at best, which are unique even
/// where the answer is not; those values then become conditions of the levels below. Priorities are never imitated with weights:
/// beyond a ratio of about 10⁴ the digits go.
/// </summary>
/// <remarks>A workspace, like <see cref="DualActiveSet"/>.</remarks>
internal sealed class RankedSolver
{
    // A target met to this, relative to what it is summed from, is met: its own value is passed on, without rounding.
    private const double Met = 1e-12;

    private readonly DualActiveSet _kernel = new();
    private readonly LeastSquaresProblem _level = new(1);
    private RankedProblem _problem = null!;
    private double[] _x = [], _work = [], _rowMultipliers = [], _boundMultipliers = [];
    private double[] _heldLow = [], _heldHigh = [];
    private sbyte[] _binds = [];
    private int[] _bindsFrom = [];
    private readonly double[] _objectives = new double[RankedProblem.MostPriorities + 1];
    private int _levels;

    /// <summary>The answer; where the conditions contradict each other, where the search stopped.</summary>
    public ReadOnlySpan<double> Solution => _x.AsSpan(0, _problem.Conditions.Variables);

    /// <summary>The check of all levels: the worst figures of any, the gap of the last.</summary>
    public OptimalityCheck Check { get; private set; }

    /// <summary>The objective of every level that was solved, in order; equal problems have as many.</summary>
    public ReadOnlySpan<double> LevelObjectives => _objectives.AsSpan(0, _levels);

    /// <summary>The proof over the rows, where the conditions contradict each other.</summary>
    public ReadOnlySpan<double> RowProof => _kernel.RowProof;

    /// <summary>The proof over the bounds.</summary>
    public ReadOnlySpan<double> BoundProof => _kernel.BoundProof;

    /// <summary>+1 where a row binds at its low end, -1 at its high end, else 0.</summary>
    public int SideOfRow(int row) => _binds[row];

    /// <summary>+1 where an unknown is held at its lower bound, -1 at its upper one, else 0.</summary>
    public int SideOfBound(int variable) => _binds[_problem.Conditions.Rows + variable];

    /// <summary>The first level at which a row bore weight: a priority, or one more than the last for the last word; 0 for none.</summary>
    public int LevelOfRow(int row) => _bindsFrom[row];

    /// <summary>The first level at which a bound bore weight.</summary>
    public int LevelOfBound(int variable) => _bindsFrom[_problem.Conditions.Rows + variable];

    /// <summary>Solves the problem.</summary>
    public SolveStatus Solve(RankedProblem problem)
    {
        _problem = problem;
        Reserve();
        Check = default;
        _levels = 0;
        int last = problem.LastPriority;
        if (problem.LastWord == LastWord.TradedAgainstTargets)
            last = Math.Max(last - 1, 0);
        bool first = true;
        for (int priority = 1; priority <= last; priority++)
        {
            if (!HasTargets(priority))
                continue;
            SolveStatus status = SolveLevel(priority, isLast: false);
            if (status != SolveStatus.Optimal)
                return first ? status : SolveStatus.Undecided;
            Hold(priority);
            first = false;
        }
        SolveStatus end = SolveLevel(last + 1, isLast: true);
        // The levels above left their own answer, so a contradiction here can only be rounding.
        return end == SolveStatus.Infeasible && !first ? SolveStatus.Undecided : end;
    }

    private void Reserve()
    {
        LeastSquaresProblem conditions = _problem.Conditions;
        int n = conditions.Variables, most = n + _problem.Targets, count = conditions.Rows + n;
        if (_x.Length < most)
        {
            _x = new double[most];
            _work = new double[most];
            _boundMultipliers = new double[most];
        }
        if (_rowMultipliers.Length < conditions.Rows + _problem.Targets)
            _rowMultipliers = new double[conditions.Rows + _problem.Targets];
        if (_binds.Length < count)
        {
            _binds = new sbyte[count];
            _bindsFrom = new int[count];
        }
        if (_heldLow.Length < _problem.Targets)
        {
            _heldLow = new double[_problem.Targets];
            _heldHigh = new double[_problem.Targets];
        }
        _binds.AsSpan().Clear();
        _bindsFrom.AsSpan().Clear();
    }

    private bool HasTargets(int priority)
    {
        for (int t = 0; t < _problem.Targets; t++)
        {
            if (_problem[t].Priority == priority)
                return true;
        }
        return false;
    }

    private SolveStatus SolveLevel(int level, bool isLast)
    {
        Build(level, isLast);
        bool byCost = isLast && _problem.LastWord == LastWord.LeastCost;
        SolveStatus status = byCost ? LeastCost.Solve(_kernel, _level) : _kernel.Solve(_level);
        _kernel.Solution.CopyTo(_x);
        if (status != SolveStatus.Optimal)
            return status;
        Span<double> rows = _rowMultipliers.AsSpan(0, _level.Rows), bounds = _boundMultipliers.AsSpan(0, _level.Variables);
        _kernel.CopyRowMultipliers(rows);
        _kernel.CopyBoundMultipliers(bounds);
        Check = OptimalityCheck.Of(_level, _x, rows, bounds, withPrior: !byCost).After(Check);
        _objectives[_levels++] = Check.Objective;
        int count = _problem.Conditions.Rows;
        for (int k = 0; k < count; k++)
            Note(k, _kernel.SideOfRow(k), rows[k], level);
        for (int j = 0; j < _problem.Conditions.Variables; j++)
            Note(count + j, _kernel.SideOfBound(j), bounds[j], level);
        return status;
    }

    // A condition binds where it bore weight: in this level, or in one above, whose values it went into.
    private void Note(int condition, int side, double multiplier, int level)
    {
        if (side == 0 || multiplier == 0 || _bindsFrom[condition] != 0)
            return;
        _binds[condition] = (sbyte)side;
        _bindsFrom[condition] = level;
    }

    private void Build(int level, bool isLast)
    {
        LeastSquaresProblem conditions = _problem.Conditions;
        int n = conditions.Variables, extra = 0;
        for (int t = 0; t < _problem.Targets; t++)
        {
            if (Belongs(t, level, isLast) && _problem[t].Low < _problem[t].High)
                extra++;
        }
        _level.Reset(n + extra);
        conditions.Lower.CopyTo(_level.Lower);
        conditions.Upper.CopyTo(_level.Upper);
        conditions.Centre[..n].CopyTo(_level.Centre);
        if (isLast)
        {
            conditions.Prior[..n].CopyTo(_level.Prior);
            if (_problem.LastWord == LastWord.LeastCost)
                conditions.Cost[..n].CopyTo(_level.Cost);
        }
        Span<double> row = _work.AsSpan(0, n + extra);
        row.Clear();
        for (int k = 0; k < conditions.Rows; k++)
        {
            conditions.Row(k)[..n].CopyTo(row);
            _level.AddRow(row, conditions.RowLow[k], conditions.RowHigh[k]);
        }
        int slack = n;
        for (int t = 0; t < _problem.Targets; t++)
        {
            RankedProblem.Target target = _problem[t];
            _problem.Coefficients(t).CopyTo(row);
            if (!Belongs(t, level, isLast))
            {
                if (target.Priority < level)
                {
                    _level.AddRow(row, _heldLow[t], _heldHigh[t]);
                    _level.IsHandedDown = true;
                }
            }
            else if (target.Low == target.High)
            {
                _level.AddTarget(row, target.Low, target.Weight);
            }
            else
            {
                // A place within the range stands in for the value aimed at: no cost inside, a quadratic one outside.
                _level.Lower[slack] = target.Low;
                _level.Upper[slack] = target.High;
                row[slack] = -1;
                _level.AddTarget(row, 0, target.Weight);
                row[slack++] = 0;
            }
        }
    }

    private bool Belongs(int target, int level, bool isLast) =>
        isLast ? _problem[target].Priority >= level : _problem[target].Priority == level;

    // Passes the values of a level's targets on to the levels below, as conditions.
    private void Hold(int priority)
    {
        ReadOnlySpan<double> x = Solution;
        for (int t = 0; t < _problem.Targets; t++)
        {
            RankedProblem.Target target = _problem[t];
            if (target.Priority != priority)
                continue;
            (double value, double size) = LeastSquaresProblem.Evaluate(_problem.Coefficients(t), x);
            double off = Math.Max(target.Low - value, value - target.High);
            bool met = off <= Met * Math.Max(size, Math.Abs(double.IsFinite(target.Low) ? target.Low : target.High));
            _heldLow[t] = met ? target.Low : value;
            _heldHigh[t] = met ? target.High : value;
        }
    }
}
