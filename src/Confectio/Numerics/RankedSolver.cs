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

    // A range missed by less than this part of its tolerance is met, and what is passed on is the range.
    private const double MetInTolerances = 1e-9;

    // What a share is a share of is at least this much of the whole: of nothing there is no share.
    private const double LeastWhole = 1e-4;

    private const int LeastBoxes = 10;

    // A bound within a ten-millionth of the best is the best: the search itself ends at a hundred-millionth.
    private const double Closed = 1e-7;

    private const double RoundingOfPull = 1e-12;

    // A target of 0 % that is met is summed from nothing: a millionth of a tolerance stands in.
    private const double LeastTerms = 1e-6;

    private const double CostOfAbsent = 1e15; // in squares of tolerances

    private const double FirstPull = 0.1, LeastPull = 1e-2, MostPull = 1e4, PullGivesWay = 0.3;

    // Beyond a step of this many tolerances none is drawn out.
    private const double FarStep = 1e-2;

    private const int MostSteps = 200;

    // The workspace of 200 lines is a megabyte, which is not kept for the one question that needed it.
    private const int LargestKept = 64;

    [ThreadStatic]
    private static RankedSolver? t_spare;

    private static readonly double[] s_rooms = [0, 1e-9, 1e-8, 1e-7];

    private readonly DualActiveSet _kernel = new();
    private readonly LeastSquaresProblem _level = new(1), _bare = new(1);
    private RankedProblem _problem = null!;
    private double[] _x = [], _work = [], _rowMultipliers = [], _boundMultipliers = [];
    private double[] _heldLow = [], _heldHigh = [];
    private sbyte[] _binds = [];
    private int[] _bindsFrom = [];
    private readonly double[] _objectives = new double[RankedProblem.MostPriorities + 1];
    private readonly List<RankedLevel> _kept = [];
    private int _levels;
    private bool[] _isAbsent = [], _isFixed = [];
    private double _pull; // towards the place from which the shares are taken, against its largest mass
    private double _leastFirm; // a pull of less was too weak in this level
    private double _room; // by which what was handed down gives way, in tolerances
    private int _floors; // shares, in order of priority, whose whole is held above nothing

    /// <summary>How much less the targets could be missed at most, over all levels, in squares of tolerances; 0 where it is proved.</summary>
    public double Shortfall { get; private set; }

    /// <summary>
    /// How many boxes the searches of what is solved from now on may look at, all together; each may look at a few whatever was used up.
    /// </summary>
    public int BoxesLeft { get; set; } = int.MaxValue;

    /// <summary>Whether the levels are kept as they were solved, for the tangent.</summary>
    public bool KeepsLevels { get; set; }

    /// <summary>The levels of the last problem, where they are kept.</summary>
    public IReadOnlyList<RankedLevel> Levels => _kept;

    /// <summary>Whether a share has no value because the conditions leave nothing of what it is a share of.</summary>
    public bool IsAbsent(int target) => _isAbsent[target];

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

    /// <summary>A workspace: that of the thread's last solve, or of a solve within a solve one of its own.</summary>
    public static RankedSolver Take()
    {
        RankedSolver? spare = t_spare;
        t_spare = null;
        return spare ?? new RankedSolver();
    }

    /// <summary>Lets go of the problem and keeps the memory for the next one; of a large problem it keeps nothing.</summary>
    public void GiveBack()
    {
        bool isLarge = _x.Length > LargestKept;
        _problem = null!;
        _kept.Clear();
        KeepsLevels = false;
        BoxesLeft = int.MaxValue;
        if (!isLarge)
            t_spare = this;
    }

    /// <summary>Solves the problem.</summary>
    public SolveStatus Solve(RankedProblem problem)
    {
        _problem = problem;
        Reserve();
        Check = default;
        _levels = _floors = 0;
        _kept.Clear();
        Shortfall = 0;
        int last = problem.LastPriority;
        if (problem.LastWord == LastWord.TradedAgainstTargets)
            last = Math.Max(last - 1, 0);
        bool first = true;
        for (int priority = 1; priority <= last; priority++)
        {
            if (!HasTargets(priority))
                continue;
            SolveStatus status = SolveLevelWithRoom(priority, isLast: false, first);
            if (status != SolveStatus.Optimal)
                return first ? status : SolveStatus.Undecided;
            Hold(priority);
            first = false;
        }
        SolveStatus end = SolveLevelWithRoom(last + 1, isLast: true, first);
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
        // A share that was handed down takes three rows at most: its ends, and that there is something of its whole.
        if (_rowMultipliers.Length < conditions.Rows + 3 * _problem.Targets)
            _rowMultipliers = new double[conditions.Rows + 3 * _problem.Targets];
        if (_binds.Length < count)
        {
            _binds = new sbyte[count];
            _bindsFrom = new int[count];
        }
        if (_heldLow.Length < _problem.Targets)
        {
            _heldLow = new double[_problem.Targets];
            _heldHigh = new double[_problem.Targets];
            _isAbsent = new bool[_problem.Targets];
            _isFixed = new bool[_problem.Targets];
        }
        _isAbsent.AsSpan().Clear();
        for (int t = 0; t < _problem.Targets; t++)
            _isFixed[t] = _problem[t].IsShare && IsFixed(t);
        _binds.AsSpan().Clear();
        _bindsFrom.AsSpan().Clear();
    }

    // A share that no unknown moves, such as the lactose of the one ingredient that has any: its miss is what it is, and counted in it
    // would drown what can be moved.
    private bool IsFixed(int target)
    {
        LeastSquaresProblem conditions = _problem.Conditions;
        ReadOnlySpan<double> part = _problem.Coefficients(target), whole = _problem.Whole(target);
        int first = -1;
        for (int j = 0; j < part.Length; j++)
        {
            if ((conditions.Lower[j] == 0 && conditions.Upper[j] == 0) || (part[j] == 0 && whole[j] == 0))
                continue;
            if (first < 0)
                first = j;
            else if (Math.Abs(part[j] * whole[first] - part[first] * whole[j]) > 1e-13 * Math.Abs(part[first] * whole[j]))
                return false;
        }
        return true;
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

    // What is handed down is rounded, and several such values may pin the answer to one point that no longer exists by the last digits.
    // Then each of them gives way by a billionth of its tolerance, and if need be by a little more.
    private SolveStatus SolveLevelWithRoom(int level, bool isLast, bool isFirst)
    {
        SolveStatus status = SolveStatus.Undecided;
        foreach (double room in s_rooms)
        {
            _room = room;
            status = SolveLevel(level, isLast);
            if (isFirst || status == SolveStatus.Optimal)
                break;
        }
        _room = 0;
        return status;
    }

    private SolveStatus SolveLevel(int level, bool isLast)
    {
        double[]? point = null;
        if (HasShares(level, isLast))
        {
            SolveStatus found = FindPlace(level, isLast, out point);
            if (found != SolveStatus.Optimal)
                return found;
        }
        bool byCost = isLast && _problem.LastWord == LastWord.LeastCost && _problem.Conditions.Cost.ContainsAnyExcept(0);
        SolveStatus status = SolveFrom(point, level, isLast, LeastPull, byCost);
        _kernel.Solution.CopyTo(_x);
        if (status != SolveStatus.Optimal)
            return status;
        // The level at the place has other answers as good as it, for which the slopes are not: the place stands.
        if (point is not null)
            StandAt(point, level, isLast);
        Span<double> rows = _rowMultipliers.AsSpan(0, _level.Rows), bounds = _boundMultipliers.AsSpan(0, _level.Variables);
        _kernel.CopyRowMultipliers(rows);
        _kernel.CopyBoundMultipliers(bounds);
        OptimalityCheck check = OptimalityCheck.Of(_level, _x, rows, bounds, withPrior: !byCost, LeastTerms);
        double objective = point is null ? check.Objective : Objective(level, isLast, Solution);
        bool isMet = !isLast && objective <= MetInTolerances * MetInTolerances;
        if (isMet)
        {
            // Targets that are met cannot be missed by less: nothing pulls, and what the multipliers have is rounding.
            rows.Clear();
            bounds.Clear();
            Build(_bare, level, isLast, null, withTargets: false);
            check = OptimalityCheck.Of(_bare, Solution, rows, bounds);
        }
        Check = check.After(Check);
        for (int t = 0; t < _problem.Targets; t++)
            objective += _isFixed[t] && !_isAbsent[t] && Stands(t, level, isLast) ? _problem[t].SquaredMiss(_problem.Value(t, Solution)) / 2 : 0;
        // A share of nothing is no share: that is worse than any miss.
        for (int t = 0; t < _problem.Targets; t++)
            objective += _isAbsent[t] && Stands(t, level, isLast) ? CostOfAbsent : 0;
        _objectives[_levels++] = objective;
        int count = _problem.Conditions.Rows;
        double rounding = Rounding();
        if (KeepsLevels)
            _kept.Add(new RankedLevel(level, isLast, isMet, Pulls(rows), Pulls(bounds[.._problem.Conditions.Variables])));
        for (int k = 0; k < count; k++)
            Note(k, _kernel.SideOfRow(k), rows[k], rounding, level);
        for (int j = 0; j < _problem.Conditions.Variables; j++)
            Note(count + j, _kernel.SideOfBound(j), bounds[j], rounding, level);
        return status;

        double[] Pulls(ReadOnlySpan<double> multipliers)
        {
            double[] pulls = multipliers.ToArray();
            foreach (ref double pull in pulls.AsSpan())
                pull = Math.Abs(pull) <= rounding ? 0 : pull;
            return pulls;
        }
    }

    private void StandAt(double[] place, int level, bool isLast)
    {
        place.CopyTo(_x, 0);
        int slack = place.Length;
        for (int t = 0; t < _problem.Targets; t++)
        {
            RankedProblem.Target target = _problem[t];
            if (!Belongs(t, level, isLast) || _isAbsent[t] || target.Low == target.High)
                continue;
            double value = _problem.Value(t, place);
            _x[slack++] = Math.Clamp(value, target.Low, target.High) - (target.IsShare ? value : 0);
        }
    }

    // The best place of a level whose targets are shares of something that moves. There the shares are as good as linear: the
    // level as it stands at that place gives the answer, the multipliers and the check.
    private SolveStatus FindPlace(int level, bool isLast, out double[]? found)
    {
        double[] place = new double[_problem.Conditions.Variables];
        found = place;
        _leastFirm = 0;
        SolveStatus status = Nearest(level, place);
        if (status != SolveStatus.Optimal)
            return status;
        for (int t = 0; t < _problem.Targets; t++)
        {
            if (_problem[t].IsShare && Stands(t, level, isLast))
                _isAbsent[t] = !CanHaveWhole(t, level, place);
        }
        _floors = level;
        if (!HasShares(level, isLast, thatMove: true))
        {
            found = null;
            return SolveStatus.Optimal;
        }
        status = Nearest(level, place);
        if (status != SolveStatus.Optimal)
            return status == SolveStatus.Infeasible ? SolveStatus.Undecided : status;
        double merit = Descend(level, isLast, place);
        Build(_bare, level, isLast, place, withTargets: false);
        List<int> targets = [];
        for (int t = 0; t < _problem.Targets; t++)
        {
            if (Belongs(t, level, isLast) && !_isAbsent[t])
                targets.Add(t);
        }
        ShareSearch search = new(_problem, _bare, targets, place, merit, BoxesLeft);
        search.Run((start, best) =>
        {
            foreach (int target in targets)
            {
                if (_problem[target].IsShare && LeastSquaresProblem.Evaluate(_problem.Whole(target), start).Value < LeastWhole / 10)
                    return double.PositiveInfinity;
            }
            // The first step is taken as it comes: it keeps the conditions to the last digits, which the place of a box need not.
            if (SolveFrom(start, level, isLast, FirstPull) != SolveStatus.Optimal)
                return double.PositiveInfinity;
            _kernel.Solution[..start.Length].CopyTo(start);
            return Descend(level, isLast, start);
        });
        BoxesLeft = Math.Max(BoxesLeft - search.Boxes, LeastBoxes);
        search.Best.CopyTo(place, 0);
        Descend(level, isLast, place);
        merit = Settle(level, isLast, place);
        double open = merit - search.Bound;
        Shortfall = Math.Max(Shortfall, open <= Closed * merit + 1e-12 ? 0 : open);
        return SolveStatus.Optimal;
    }

    // Whether there can be anything of what a share is a share of.
    private bool CanHaveWhole(int target, int level, ReadOnlySpan<double> place)
    {
        double[] row = new double[place.Length];
        double least = Floor(target, row);
        if (LeastSquaresProblem.Evaluate(row, place).Value >= least)
            return true;
        Build(_level, level, isLast: false, null, withTargets: false);
        _level.Prior[..row.Length].Fill(1);
        if (LeastCost.Extreme(_kernel, _level, row, -1) is double most)
            return most >= least;
        // How much there can be at most was not decided; whether there can be as much as that is the lesser question.
        _level.AddRow(row, least, double.PositiveInfinity);
        return _kernel.Solve(_level) != SolveStatus.Infeasible;
    }

    // The place nearest to the centre that meets the conditions and what was handed down.
    private SolveStatus Nearest(int level, Span<double> x)
    {
        Build(_level, level, isLast: false, null, withTargets: false);
        _problem.Conditions.Prior[..x.Length].CopyTo(_level.Prior);
        SolveStatus status = _kernel.Solve(_level);
        _kernel.Solution[..x.Length].CopyTo(x);
        return status;
    }

    /// <summary>
    /// Walks downhill: the shares are replaced by their slopes (Gauss and Newton), and of the way to the answer of that level as much is
    /// taken as makes the misses less.
    /// </summary>
    private double Descend(int level, bool isLast, double[] x)
    {
        double merit = Objective(level, isLast, x);
        double[] next = new double[x.Length], between = new double[x.Length];
        double pull = FirstPull;
        for (int step = 0; step < MostSteps && merit > 0; step++, pull = Math.Max(pull * PullGivesWay, LeastPull))
        {
            if (SolveFrom(x, level, isLast, pull * Near(merit)) != SolveStatus.Optimal)
                return merit;
            _kernel.Solution[..x.Length].CopyTo(next);
            double share = 1, found = Objective(level, isLast, next);
            while (!(found < merit) && share > 1e-6)
            {
                share /= 3;
                for (int j = 0; j < x.Length; j++)
                    between[j] = x[j] + share * (next[j] - x[j]);
                found = Objective(level, isLast, between);
            }
            if (!(found < merit))
                return merit;
            (share == 1 ? next : between).CopyTo(x, 0);
            if (merit - found <= 1e-15 * merit)
                return found;
            merit = found;
        }
        return merit;
    }

    // Solves a level with the shares as they stand at a place. Of a whole of nearly nothing a share is so steep that conditions look like
    // one another beside it: a stronger pull towards the place makes them tell apart, and at the best it pulls nothing.
    private SolveStatus SolveFrom(ReadOnlySpan<double> place, int level, bool isLast, double pull, bool byCost = false)
    {
        for (_pull = Math.Max(pull, _leastFirm); ; _pull *= 100)
        {
            Build(_level, level, isLast, place);
            SolveStatus status = byCost ? LeastCost.Solve(_kernel, _level) : _kernel.Solve(_level);
            if (status == SolveStatus.Optimal || place.IsEmpty || isLast || _pull > MostPull)
                return status;
            // Where a weak pull failed the next steps begin with this one.
            _leastFirm = Math.Max(_leastFirm, _pull);
        }
    }

    // A miss of a thousandth of a tolerance pulls a thousandth as hard: the pull towards the place gives way with it, or nothing would move
    // (Fan and Yuan, Computing 74 (2005) 23-39).
    private static double Near(double merit) => Math.Clamp(Math.Sqrt(2 * merit), 1e-6, 1);

    // Steps until the shares stand still: near the best the misses are too flat to tell by them where it is. Far from its targets a share
    // bends by more than its slope tells, so whole steps swing past the best or stop short of it, by the same part each time: from two
    // steps it is known (the secant rule), and the next goes the whole way. What is taken is a kernel's answer, which keeps the conditions
    // to the last digits.
    private double Settle(int level, bool isLast, double[] x)
    {
        double merit = Objective(level, isLast, x), least = double.PositiveInfinity, part = 1;
        double[] here = [.. x], best = [.. x], step = new double[_problem.Targets], last = new double[_problem.Targets];
        for (int pass = 0, since = 0; pass < MostSteps && since < 8; pass++, since++)
        {
            if (SolveFrom(here, level, isLast, LeastPull * Near(merit)) != SolveStatus.Optimal)
                break;
            ReadOnlySpan<double> next = _kernel.Solution[..here.Length];
            double moved = 0, along = 0, square = 0;
            for (int t = 0; t < _problem.Targets; t++)
            {
                if (!_problem[t].IsShare || !Belongs(t, level, isLast) || _isAbsent[t])
                    continue;
                step[t] = _problem[t].Weight * (_problem.Value(t, next) - _problem.Value(t, here));
                moved = Math.Max(moved, Math.Abs(step[t]));
                along += step[t] * last[t];
                square += last[t] * last[t];
            }
            if (moved < least)
            {
                (least, since) = (moved, 0);
                next.CopyTo(best);
            }
            if (moved <= 1e-14)
                break;
            if (pass > 0)
                part = Math.Clamp(part / Math.Max(1 - along / square, 1e-3), 1e-3, moved < FarStep ? 20 : 1);
            for (int j = 0; j < here.Length; j++)
                here[j] += part * (next[j] - here[j]);
            step.CopyTo(last, 0);
        }
        double found = Objective(level, isLast, best);
        if (!(found <= merit * (1 + 1e-9) + 1e-18))
            return merit;
        best.CopyTo(x, 0);
        return found;
    }

    // What the targets of a level cost at a place, and where it is the last the prior too.
    private double Objective(int level, bool isLast, ReadOnlySpan<double> x)
    {
        double sum = 0;
        for (int t = 0; t < _problem.Targets; t++)
        {
            if (!Belongs(t, level, isLast) || _isAbsent[t])
                continue;
            sum += _problem[t].SquaredMiss(_problem.Value(t, x));
        }
        LeastSquaresProblem conditions = _problem.Conditions;
        for (int j = 0; isLast && j < x.Length; j++)
        {
            double far = conditions.Prior[j] * (x[j] - conditions.Centre[j]);
            sum += far * far;
        }
        return sum / 2;
    }

    private bool HasShares(int level, bool isLast, bool thatMove = false)
    {
        for (int t = 0; t < _problem.Targets; t++)
        {
            if (_problem[t].IsShare && !_isAbsent[t] && (thatMove ? Belongs(t, level, isLast) : Stands(t, level, isLast)))
                return true;
        }
        return false;
    }

    // What rounding may leave of a pull: a little of the largest that anything in the level could have.
    private double Rounding()
    {
        double largest = 0;
        for (int t = 0; t < _level.Targets; t++)
        {
            double coefficient = 0, terms = Math.Abs(_level.TargetValues[t]);
            for (int j = 0; j < _level.Variables; j++)
            {
                coefficient = Math.Max(coefficient, Math.Abs(_level.TargetRow(t)[j]));
                terms = Math.Max(terms, Math.Abs(_level.TargetRow(t)[j] * _x[j]));
            }
            largest = Math.Max(largest, coefficient * terms);
        }
        for (int j = 0; j < _level.Variables; j++)
            largest = Math.Max(largest, Math.Max(Math.Abs(_level.Cost[j]),
                _level.Prior[j] * _level.Prior[j] * Math.Max(Math.Abs(_x[j]), Math.Abs(_level.Centre[j]))));
        return RoundingOfPull * largest;
    }

    // A condition binds where it bore weight: in this level, or in one above, whose values it went into.
    private void Note(int condition, int side, double multiplier, double rounding, int level)
    {
        if (side == 0 || Math.Abs(multiplier) <= rounding || _bindsFrom[condition] != 0)
            return;
        _binds[condition] = (sbyte)side;
        _bindsFrom[condition] = level;
    }

    // Point: where the shares are replaced by their slopes.
    private void Build(LeastSquaresProblem into, int level, bool isLast, ReadOnlySpan<double> point, bool withTargets = true)
    {
        LeastSquaresProblem conditions = _problem.Conditions;
        int n = conditions.Variables, extra = 0;
        for (int t = 0; withTargets && t < _problem.Targets; t++)
        {
            if (Belongs(t, level, isLast) && !_isAbsent[t] && _problem[t].Low < _problem[t].High)
                extra++;
        }
        into.StartFrom(conditions, extra);
        if (isLast)
        {
            conditions.Prior[..n].CopyTo(into.Prior);
            if (_problem.LastWord == LastWord.LeastCost)
                conditions.Cost[..n].CopyTo(into.Cost);
        }
        else if (!point.IsEmpty)
        {
            // A weak pull towards the place (Levenberg, Quarterly of Applied Mathematics 2 (1944) 164-168): at the best it pulls nothing,
            // and on the way it keeps what the shares do not tell apart from drifting and the conditions from drowning in rounding.
            double largest = 0;
            foreach (double entry in point)
                largest = Math.Max(largest, Math.Abs(entry));
            into.Prior[..n].Fill(_pull / largest);
            point.CopyTo(into.Centre);
        }
        Span<double> row = _work.AsSpan(0, n + extra);
        row.Clear();
        int slack = n;
        for (int t = 0; t < _problem.Targets; t++)
        {
            RankedProblem.Target target = _problem[t];
            if (_isAbsent[t])
                continue;
            if (target.IsShare && target.Priority <= _floors)
                into.AddRow(row, Floor(t, row), double.PositiveInfinity);
            if (!Belongs(t, level, isLast))
            {
                if (target.Priority < level && !_isFixed[t])
                    HandDown(into, t, row);
                continue;
            }
            if (!withTargets)
                continue;
            double at = 0;
            if (target.IsShare)
            {
                _problem.Slope(t, point, row);
                at = _problem.Value(t, point);
            }
            else
            {
                _problem.Coefficients(t).CopyTo(row);
            }
            if (target.Low == target.High)
                into.AddTarget(row, target.Low - at, target.Weight);
            else
                into.AddTargetWithin(row, target.Low - at, target.High - at, target.Weight, slack++);
        }
    }

    // Of nothing there is no share: so there is something of it, by the whole. Answers with the low end of the row.
    private double Floor(int target, Span<double> row)
    {
        _problem.Whole(target).CopyTo(row);
        if (_problem.MovingTotal is not double[] total)
            return LeastWhole;
        for (int j = 0; j < total.Length; j++)
            row[j] -= LeastWhole * total[j];
        return 0;
    }

    private void HandDown(LeastSquaresProblem into, int target, Span<double> row)
    {
        into.IsHandedDown = true;
        ReadOnlySpan<double> part = _problem.Coefficients(target);
        double room = _room / _problem[target].Weight, low = _heldLow[target] - room, high = _heldHigh[target] + room;
        if (!_problem[target].IsShare)
        {
            part.CopyTo(row);
            into.AddRow(row, low, high);
            return;
        }
        // A share of what it is is linear: part - share x whole = 0; a range takes two.
        ReadOnlySpan<double> whole = _problem.Whole(target);
        if (double.IsFinite(low))
        {
            RankedProblem.Against(part, low, whole, row);
            into.AddRow(row, 0, low == high ? 0 : double.PositiveInfinity);
        }
        if (low != high && double.IsFinite(high))
        {
            RankedProblem.Against(part, high, whole, row);
            into.AddRow(row, double.NegativeInfinity, 0);
        }
    }

    private bool Stands(int target, int level, bool isLast) =>
        isLast ? _problem[target].Priority >= level : _problem[target].Priority == level;

    private bool Belongs(int target, int level, bool isLast) => !_isFixed[target] && Stands(target, level, isLast);

    // Passes the values of a level's targets on to the levels below, as conditions.
    private void Hold(int priority)
    {
        ReadOnlySpan<double> x = Solution;
        for (int t = 0; t < _problem.Targets; t++)
        {
            RankedProblem.Target target = _problem[t];
            if (target.Priority != priority)
                continue;
            if (_isAbsent[t])
                continue;
            double value = _problem.Value(t, x);
            double size = LeastSquaresProblem.Evaluate(_problem.Coefficients(t), x).Terms;
            if (target.IsShare)
                size /= LeastSquaresProblem.Evaluate(_problem.Whole(t), x).Value;
            double off = Math.Max(target.Low - value, value - target.High);
            if (off <= Met * Math.Max(size, Math.Abs(double.IsFinite(target.Low) ? target.Low : target.High)))
                (_heldLow[t], _heldHigh[t]) = (target.Low, target.High);
            // A range met to within rounding stays a range: handed on as one value it would take all room from what comes after.
            else if (target.Low < target.High && off * target.Weight <= MetInTolerances)
                (_heldLow[t], _heldHigh[t]) = (Math.Min(target.Low, value), Math.Max(target.High, value));
            // What was missed cannot be missed by less, whatever else is wanted: so it is kept from being missed by more, which is the
            // same and leaves rounding a side to go to.
            else
                (_heldLow[t], _heldHigh[t]) = value < target.Low ? (value, target.High) : (target.Low, value);
        }
    }
}
