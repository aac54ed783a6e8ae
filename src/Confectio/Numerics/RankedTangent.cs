namespace Confectio.Numerics;

/// <summary>One level of a cascade as it was solved: what bore weight in it.</summary>
/// <param name="Priority">Its priority; one more than the last for the last word.</param>
/// <param name="IsLast">Whether it has the prior.</param>
/// <param name="IsMet">Whether its targets are met, so that nothing bears weight.</param>
/// <param name="Rows">The multipliers of the conditions, and after them of the values handed down, in the order of their targets.</param>
/// <param name="Bounds">The multipliers of the bounds.</param>
internal sealed record RankedLevel(int Priority, bool IsLast, bool IsMet, double[] Rows, double[] Bounds);

/// <summary>
/// How the answer of a cascade moves with its data, from the levels as they were solved and without solving another problem: where the
/// same conditions bear weight, each level is a least-squares problem with equalities, and its derivative is one more with the derivatives
/// of the ends as data (Jittorntrum, Mathematical Programming Study 21 (1984) 127-138). How far that goes is the ratio test of the simplex
/// method: until a slack condition has no room left, a multiplier none, or a miss is none.
/// </summary>
internal sealed class RankedTangent
{
    // Beside 1, the size of the masses, a room or a speed below this is rounding.
    private const double Rounding = 1e-9;

    private readonly RankedSolver _solver;
    private readonly RankedProblem _problem, _moved;
    private readonly double _by;
    private readonly double[] _x, _slope, _valueSlope;

    private RankedTangent(RankedSolver solver, RankedProblem problem, RankedProblem moved, double by)
    {
        (_solver, _problem, _moved, _by) = (solver, problem, moved, by);
        _x = solver.Solution.ToArray();
        _slope = new double[_x.Length];
        _valueSlope = new double[problem.Targets];
    }

    /// <summary>How the unknowns move.</summary>
    public ReadOnlySpan<double> Slope => _slope;

    /// <summary>How far back the same holds, 0 or more; infinite where it has no end.</summary>
    public double Back { get; private set; } = double.PositiveInfinity;

    /// <summary>How far ahead.</summary>
    public double Ahead { get; private set; } = double.PositiveInfinity;

    /// <summary>
    /// The tangent; null where the answer stands at a kink, or data other than the ends of conditions and targets move.
    /// </summary>
    /// <param name="solver">It has just solved the problem, and kept the levels.</param>
    /// <param name="problem">The problem.</param>
    /// <param name="moved">The same problem with its data moved in the direction that is asked about.</param>
    /// <param name="by">How far they were moved, other than 0.</param>
    public static RankedTangent? Of(RankedSolver solver, RankedProblem problem, RankedProblem moved, double by)
    {
        if (problem.LastWord == LastWord.LeastCost || !HaveTheSameCoefficients(problem, moved))
            return null;
        RankedTangent tangent = new(solver, problem, moved, by);
        return tangent.Differentiate() && tangent.Measure() ? tangent : null;
    }

    private static bool HaveTheSameCoefficients(RankedProblem one, RankedProblem other)
    {
        LeastSquaresProblem a = one.Conditions, b = other.Conditions;
        if (a.Rows != b.Rows || one.Targets != other.Targets || !a.Prior.SequenceEqual(b.Prior) || !a.Centre.SequenceEqual(b.Centre))
            return false;
        for (int k = 0; k < a.Rows; k++)
        {
            if (!a.Row(k).SequenceEqual(b.Row(k)))
                return false;
        }
        for (int t = 0; t < one.Targets; t++)
        {
            if (one[t].IsShare || one[t].Weight != other[t].Weight || !one.Coefficients(t).SequenceEqual(other.Coefficients(t)))
                return false;
        }
        return true;
    }

    // How fast an end moves. An end that there is not does not move.
    private double Speed(double from, double to) => from == to ? 0 : (to - from) / _by;

    private double LowSpeed(int target) => Speed(_problem[target].Low, _moved[target].Low);

    private double HighSpeed(int target) => Speed(_problem[target].High, _moved[target].High);

    private double RowSpeed(int row, bool low) => low ? Speed(_problem.Conditions.RowLow[row], _moved.Conditions.RowLow[row])
        : Speed(_problem.Conditions.RowHigh[row], _moved.Conditions.RowHigh[row]);

    private double BoundSpeed(int variable, bool low) => low ? Speed(_problem.Conditions.Lower[variable], _moved.Conditions.Lower[variable])
        : Speed(_problem.Conditions.Upper[variable], _moved.Conditions.Upper[variable]);

    // Below 0 where a target is missed from below, above 0 from above, 0 where it is met.
    private int Side(int target)
    {
        double value = _problem.Value(target, _x), size = 1 / _problem[target].Weight;
        return value < _problem[target].Low - Rounding * size ? -1 : value > _problem[target].High + Rounding * size ? 1 : 0;
    }

    private bool Differentiate()
    {
        DualActiveSet kernel = new();
        LeastSquaresProblem conditions = _problem.Conditions;
        int n = _x.Length;
        LeastSquaresProblem tangent = new(n);
        double[] rowMultipliers = new double[conditions.Rows + _problem.Targets], boundMultipliers = new double[n];
        // What bore weight in a level is pinned in those below, whatever sign its multiplier has there.
        HashSet<int> pinnedRows = [], pinnedBounds = [];
        foreach (RankedLevel level in _solver.Levels)
        {
            if (!level.IsMet || level.IsLast)
            {
                List<(int Row, double Multiplier)> carried = Build(tangent, level);
                if (kernel.Solve(tangent) != SolveStatus.Optimal)
                    return false;
                kernel.CopyRowMultipliers(rowMultipliers);
                kernel.CopyBoundMultipliers(boundMultipliers);
                for (int k = 0; k < carried.Count; k++)
                {
                    if (carried[k].Row >= 0 && pinnedRows.Add(carried[k].Row))
                        Ends(carried[k].Multiplier, rowMultipliers[k]);
                }
                for (int j = 0; j < n; j++)
                {
                    if (level.Bounds[j] != 0 && conditions.Lower[j] < conditions.Upper[j] && pinnedBounds.Add(j))
                        Ends(level.Bounds[j], boundMultipliers[j]);
                }
                kernel.Solution[..n].CopyTo(_slope);
            }
            for (int t = 0; t < _problem.Targets && !level.IsLast; t++)
            {
                if (_problem[t].Priority != level.Priority)
                    continue;
                _valueSlope[t] = Side(t) == 0 ? LowSpeed(t) : LeastSquaresProblem.Evaluate(_problem.Coefficients(t), _slope).Value;
            }
        }
        return true;
    }

    // The level with what bears weight in it held to the speed of its end. Tells the multiplier of every row it has, and of which row of the
    // level it is; -1 of one whose multiplier may have either sign.
    private List<(int Row, double Multiplier)> Build(LeastSquaresProblem into, RankedLevel level)
    {
        LeastSquaresProblem conditions = _problem.Conditions;
        List<(int, double)> carried = [];
        into.Reset(_x.Length);
        into.IsHandedDown = true;
        if (level.IsLast)
            conditions.Prior[.._x.Length].CopyTo(into.Prior);
        for (int j = 0; j < _x.Length; j++)
        {
            if (level.Bounds[j] != 0 || conditions.Lower[j] == conditions.Upper[j])
                into.Lower[j] = into.Upper[j] = BoundSpeed(j, level.Bounds[j] >= 0);
        }
        for (int k = 0; k < conditions.Rows; k++)
        {
            bool isOne = conditions.RowLow[k] == conditions.RowHigh[k];
            if (level.Rows[k] != 0 || isOne)
                Hold(conditions.Row(k), RowSpeed(k, level.Rows[k] >= 0), isOne ? -1 : k, level.Rows[k]);
        }
        int row = conditions.Rows;
        for (int t = 0; t < _problem.Targets; t++)
        {
            RankedProblem.Target target = _problem[t];
            if (target.Priority < level.Priority)
            {
                bool isRange = Side(t) == 0 && target.Low < target.High;
                double multiplier = level.Rows[row];
                if (!isRange)
                    Hold(_problem.Coefficients(t), _valueSlope[t], -1, 0);
                else if (multiplier != 0)
                    Hold(_problem.Coefficients(t), multiplier > 0 ? LowSpeed(t) : HighSpeed(t), conditions.Rows + t, multiplier);
                row++;
            }
            else if (level.IsLast || target.Priority == level.Priority)
            {
                int side = Side(t);
                if (target.Low == target.High || side != 0)
                    into.AddTarget(_problem.Coefficients(t), side <= 0 ? LowSpeed(t) : HighSpeed(t), target.Weight);
            }
        }
        return carried;

        void Hold(ReadOnlySpan<double> coefficients, double speed, int of, double multiplier)
        {
            into.AddRow(coefficients, speed, speed);
            carried.Add((of, multiplier));
        }
    }

    // What is so far from zero and moves at such a speed.
    private void Ends(double value, double speed)
    {
        if (value == 0 || speed == 0)
            return;
        double at = -value / speed;
        if (at > 0)
            Ahead = Math.Min(Ahead, at);
        else
            Back = Math.Min(Back, -at);
    }

    private bool Measure()
    {
        LeastSquaresProblem conditions = _problem.Conditions;
        for (int k = 0; k < conditions.Rows; k++)
        {
            if (!IsHeld(k, isBound: false) && conditions.RowLow[k] < conditions.RowHigh[k]
                && !(HasRoom(conditions.Row(k), conditions.RowLow[k], RowSpeed(k, low: true))
                    && HasRoom(conditions.Row(k), conditions.RowHigh[k], RowSpeed(k, low: false))))
                return false;
        }
        double[] one = new double[_x.Length];
        for (int j = 0; j < _x.Length; j++)
        {
            if (IsHeld(j, isBound: true) || conditions.Lower[j] == conditions.Upper[j])
                continue;
            one[j] = 1;
            if (!(HasRoom(one, conditions.Lower[j], BoundSpeed(j, low: true)) && HasRoom(one, conditions.Upper[j], BoundSpeed(j, low: false))))
                return false;
            one[j] = 0;
        }
        for (int t = 0; t < _problem.Targets; t++)
        {
            int side = Side(t);
            RankedProblem.Target target = _problem[t];
            ReadOnlySpan<double> row = _problem.Coefficients(t);
            if (side < 0)
                Ends(_problem.Value(t, _x) - target.Low, LeastSquaresProblem.Evaluate(row, _slope).Value - LowSpeed(t));
            else if (side > 0)
                Ends(_problem.Value(t, _x) - target.High, LeastSquaresProblem.Evaluate(row, _slope).Value - HighSpeed(t));
            else if (target.Low < target.High && !IsHeldRange(t) && !(HasRoom(row, target.Low, LowSpeed(t)) && HasRoom(row, target.High, HighSpeed(t))))
                return false;
            // A value that is met and moves off it by itself is at a kink.
            else if (target.Low == target.High && side == 0
                && Math.Abs(LeastSquaresProblem.Evaluate(row, _slope).Value - LowSpeed(t)) > Rounding * Math.Max(1, Math.Abs(LowSpeed(t))))
                return false;
        }
        return true;
    }

    private bool IsHeld(int at, bool isBound)
    {
        foreach (RankedLevel level in _solver.Levels)
        {
            if (!level.IsMet && (isBound ? level.Bounds : level.Rows)[at] != 0)
                return true;
        }
        return false;
    }

    private bool IsHeldRange(int target)
    {
        foreach (RankedLevel level in _solver.Levels)
        {
            if (level.Priority <= _problem[target].Priority || level.IsMet)
                continue;
            int row = _problem.Conditions.Rows;
            for (int t = 0; t < target; t++)
                row += _problem[t].Priority < level.Priority ? 1 : 0;
            if (level.Rows[row] != 0)
                return true;
        }
        return false;
    }

    // Whether a slack end has room, or is not neared; notes where that ends.
    private bool HasRoom(ReadOnlySpan<double> row, double end, double endSpeed)
    {
        if (!double.IsFinite(end))
            return true;
        double room = LeastSquaresProblem.Evaluate(row[.._x.Length], _x).Value - end;
        (double value, double terms) = LeastSquaresProblem.Evaluate(row[.._x.Length], _slope);
        double speed = value - endSpeed;
        if (Math.Abs(speed) <= Rounding * Math.Max(terms, Math.Abs(endSpeed)))
            return true;
        if (Math.Abs(room) <= Rounding * Math.Max(1, Math.Abs(end)))
            return false;
        Ends(room, speed);
        return true;
    }
}
