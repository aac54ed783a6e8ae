using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// Solves a problem with properties that are neither a sum nor a fraction of sums, such as the water activity: each is replaced by its
/// slope at a place, the problem that is left is solved within a reach of that place, and of the new place it goes on, as long as that
/// helps (sequential linear programming with a trust region; Fletcher and Sainz de la Maza, Mathematical Programming 43 (1989) 235-256).
/// From several starts, on every side of every kink. What stands still is the best nearby, to first order, and nothing is claimed of the rest.
/// </summary>
internal sealed class CurvedSearch
{
    private const int MostSteps = 60, MostPolish = 40, MostStarts = 12, LeastStarts = 3, AllStarts = 96, EnoughStarts = 5;

    // Masses are in units of the total: how far the first step may go, and the least that is worth one.
    private const double FirstReach = 0.25, LargestReach = 1, LeastReach = 1e-11;

    // In squares of tolerances: what an earlier level may get worse by while a later one gets better, at first; the slopes mend it.
    private const double FirstSlack = 1e-2, SlackGivesWay = 0.6;

    // A limit that is kept to this, in squares of tolerances, is kept: to a billionth, as an answer is measured.
    private const double Kept = 4e-15;

    // What is nearer than this is worth a last step or two.
    private const double NearlyKept = 1e-8;

    // The side of a kink is kept as well as a limit with this tolerance would be.
    private const double SideTolerance = 0.01;

    private const double WeakPull = 1e-3;

    private const int Cost = RankedProblem.MostPriorities + 1, Nearness = Cost + 1, Levels = Nearness + 1;

    private readonly FormulaProblem _problem;
    private readonly int[] _choice;
    private readonly int _mostStarts;
    private readonly Demand.Total _total;
    private readonly Assembly _plain;
    private readonly RankedSolver _solver;
    private readonly DualActiveSet _kernel = new();
    private readonly Demand.PropertyValue[] _demands;
    private readonly FormulaProperty[] _properties;
    private readonly double[][][] _sums;
    private readonly int _lastPriority;

    /// <summary>A search.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="choice">Which of its alternatives each choice has.</param>
    /// <param name="total">The total.</param>
    /// <param name="plain">The problem without the properties, which the solver has just solved.</param>
    /// <param name="solver">The solver.</param>
    public CurvedSearch(FormulaProblem problem, int[] choice, Demand.Total total, Assembly plain, RankedSolver solver)
    {
        (_problem, _choice, _total, _plain, _solver) = (problem, choice, total, plain, solver);
        // Of many choices each has fewer starts: all of them together stay within seconds.
        int choices = 1;
        foreach (Demand demand in problem.Demands)
            choices *= demand.Alternatives;
        _mostStarts = Math.Clamp(AllStarts / choices, LeastStarts, MostStarts);
        _demands = [.. problem.Curved];
        _properties = [.. _demands.Select(demand => demand.Asked).Distinct()];
        _sums = [.. _properties.Select(plain.SumsOf)];
        _lastPriority = Math.Max(plain.Ranked.LastPriority, _demands.Max(demand => demand.Priority ?? 0));
        Assembly = plain;
    }

    /// <summary>The problem with the slopes of the answer, which the solver was left with.</summary>
    public Assembly Assembly { get; private set; }

    /// <summary>The answer; where none was found that keeps the limits, the place that breaks them least.</summary>
    public double[] X { get; private set; } = [];

    /// <summary>How many starts were tried.</summary>
    public int Starts { get; private set; }

    /// <summary>How many of them came to the answer.</summary>
    public int Agreeing { get; private set; }

    /// <summary>By how much the limits are broken, in squares of tolerances.</summary>
    public double Breach { get; private set; } = double.PositiveInfinity;

    /// <summary>How much better the slopes at the answer say that it could still be, relative to its size; 0 where it stands still.</summary>
    public double Unsettled { get; private set; }

    /// <summary>Searches; optimal where the limits are kept, else undecided.</summary>
    public SolveStatus Run()
    {
        double[] plain = _solver.Solution.ToArray();
        X = plain;
        List<Place?> ends = [];
        Place? best = null;
        foreach (double[] start in StartsFrom(plain))
        {
            // Where the first ones all came to one answer, more of them would say no more.
            if (best is not null && ends.Count >= EnoughStarts && ends.TrueForAll(end => end is not null && IsSame(end, best)))
                break;
            Place? end = null;
            foreach (int[] pieces in AllPieces())
            {
                if (Descend(start, pieces) is Place place && (end is null || Verdict(place.Merit, end.Merit, 0) > 0))
                    end = place;
            }
            ends.Add(end);
            if (end is not null && (best is null || Verdict(end.Merit, best.Merit, 0) > 0))
                best = end;
        }
        Starts = ends.Count;
        if (best is null)
            return SolveStatus.Undecided;
        best = AcrossKinks(best);
        X = best.X;
        Breach = best.Merit[0];
        Agreeing = ends.Count(end => end is not null && IsSame(end, best));
        return Breach > NearlyKept ? SolveStatus.Undecided : Finish(ToItsLimits(best));
    }

    // Every side of every kink: for each property the piece that is meant.
    private IEnumerable<int[]> AllPieces()
    {
        int all = 1;
        foreach (FormulaProperty property in _properties)
            all *= property.Pieces;
        for (int choice = 0; choice < all; choice++)
        {
            int[] pieces = new int[_properties.Length];
            int rest = choice;
            for (int i = 0; i < pieces.Length; i++)
            {
                pieces[i] = rest % _properties[i].Pieces;
                rest /= _properties[i].Pieces;
            }
            yield return pieces;
        }
    }

    // What the rest of the problem says, the place nearest to the base, the most and the least of each line, and their middle.
    private List<double[]> StartsFrom(double[] plain)
    {
        LeastSquaresProblem conditions = _plain.Ranked.Conditions, box = new(plain.Length);
        List<double[]> starts = [plain], corners = [];
        box.StartFrom(conditions, 0);
        conditions.Prior[..plain.Length].CopyTo(box.Prior);
        if (_kernel.Solve(box) == SolveStatus.Optimal)
            starts.Add(_kernel.Solution[..plain.Length].ToArray());
        box.Prior[..plain.Length].Fill(1);
        double[] sum = new double[plain.Length];
        for (int j = 0; j < plain.Length && corners.Count < 2 * _mostStarts; j++)
        {
            foreach (int sign in stackalloc[] { -1, 1 })
            {
                sum[j] = 1;
                if (LeastCost.Extreme(_kernel, box, sum, sign) is not null)
                    corners.Add(_kernel.Solution[..plain.Length].ToArray());
                sum[j] = 0;
            }
        }
        if (corners.Count == 0)
            return starts;
        if (Distance(starts[0], starts[^1]) <= 1e-9)
            starts.RemoveRange(1, starts.Count - 1);
        double[] middle = new double[plain.Length];
        for (int j = 0; j < middle.Length; j++)
            middle[j] = corners.Average(corner => corner[j]);
        starts.Add(middle);
        // Not the corners themselves: there much is nothing, and some properties have no value.
        foreach (double[] corner in corners)
        {
            if (starts.Count >= _mostStarts)
                break;
            starts.Add([.. corner.Zip(middle, (at, mid) => 0.8 * at + 0.2 * mid)]);
        }
        return starts;
    }

    private Linearisation? SlopesAt(double[] x, int[] pieces) =>
        Linearisation.At([.. _properties.Select((property, i) => (property, _sums[i], pieces[i]))], x);

    private Place? Descend(double[] start, int[] pieces)
    {
        if (MeritOf(start, pieces) is not double[] merit || SlopesAt(start, pieces) is not Linearisation slopes)
            return null;
        double[] x = start;
        double reach = FirstReach, slack = FirstSlack;
        for (int step = 0; step < MostSteps && reach > LeastReach; step++, slack *= SlackGivesWay)
        {
            if (Step(x, slopes, reach) is not double[] next)
                break;
            double moved = Distance(x, next);
            int verdict = MeritOf(next, pieces) is double[] found ? Verdict(found, merit, slack) : -1;
            if (verdict > 0 && SlopesAt(next, pieces) is Linearisation there)
            {
                (x, merit, slopes) = (next, MeritOf(next, pieces)!, there);
                reach = moved > 0.9 * reach ? Math.Min(LargestReach, 2 * reach) : reach;
            }
            else if (moved <= LeastReach || verdict == 0)
            {
                break;
            }
            else
            {
                reach = moved / 4;
            }
        }
        return Polish(new Place(x, merit, pieces));
    }

    // Whole steps as long as they become shorter: where they end the slopes say that it stands still, to the last digits.
    private Place Polish(Place place)
    {
        double[] x = place.X;
        double last = double.PositiveInfinity;
        for (int step = 0; step < MostPolish; step++)
        {
            if (SlopesAt(x, place.Pieces) is not Linearisation slopes || Step(x, slopes, LargestReach) is not double[] next)
                break;
            double moved = Distance(x, next);
            if (!(moved < last) || MeritOf(next, place.Pieces) is null)
                break;
            (x, last) = (next, moved);
            if (moved <= 1e-13)
                break;
        }
        return last < 1e-4 && MeritOf(x, place.Pieces) is double[] merit && Verdict(merit, place.Merit, 1e-9) >= 0
            ? new Place(x, merit, place.Pieces) : place;
    }

    // The answer of the problem with slopes for its properties, within a reach; where the limits cannot be kept there, what breaks them least.
    private double[]? Step(double[] x, Linearisation slopes, double reach)
    {
        Assembly assembly = Assembly.Of(_problem, _choice, _total, slopes);
        Confine(assembly.Ranked.Conditions, x, reach);
        _solver.BoxesLeft = 0;
        if (_solver.Solve(assembly.Ranked) == SolveStatus.Optimal)
            return _solver.Solution.ToArray();
        LeastSquaresProblem restoring = new(x.Length);
        double[][] sides = [.. _properties.Select(slopes.SideOf).OfType<(double, double[] Slope, int)>().Select(side => side.Slope)];
        Demand.PropertyValue[] limits = [.. _demands.Where(demand => !demand.IsTarget)];
        restoring.StartFrom(_plain.Ranked.Conditions, limits.Length + sides.Length);
        Confine(restoring, x, reach);
        restoring.Prior[..x.Length].Fill(WeakPull);
        x.CopyTo(restoring.Centre);
        double[] row = new double[restoring.Variables];
        int standIn = x.Length;
        foreach (Demand.PropertyValue limit in limits)
        {
            (double value, double[] slope) = slopes.Of(limit.Asked);
            slope.CopyTo(row, 0);
            restoring.AddTargetWithin(row, limit.LowEnd - value, limit.HighEnd - value, 1 / limit.Asked.UsualTolerance, standIn++);
        }
        foreach (FormulaProperty property in _properties)
        {
            if (slopes.SideOf(property) is not (double value, double[] slope, int side))
                continue;
            slope.CopyTo(row, 0);
            restoring.AddTargetWithin(row, side > 0 ? -value : double.NegativeInfinity, side > 0 ? double.PositiveInfinity : -value,
                1 / SideTolerance, standIn++);
        }
        return _kernel.Solve(restoring) == SolveStatus.Optimal ? _kernel.Solution[..x.Length].ToArray() : null;
    }

    private static void Confine(LeastSquaresProblem conditions, double[] x, double reach)
    {
        for (int j = 0; j < x.Length; j++)
        {
            conditions.Lower[j] = Math.Max(conditions.Lower[j], Math.Min(x[j] - reach, conditions.Upper[j]));
            conditions.Upper[j] = Math.Min(conditions.Upper[j], Math.Max(x[j] + reach, conditions.Lower[j]));
        }
    }

    // At a kink the answer of one side may be no answer of the other.
    private Place AcrossKinks(Place best)
    {
        foreach (int[] pieces in AllPieces())
        {
            if (!pieces.AsSpan().SequenceEqual(best.Pieces) && Descend(best.X, pieces) is Place other && Verdict(other.Merit, best.Merit, 0) > 0)
                best = other;
        }
        return best;
    }

    // Solves once more where it stands, without a reach: what binds and what it costs are those of the answer.
    private SolveStatus Finish(Place place)
    {
        if (SlopesAt(place.X, place.Pieces) is not Linearisation slopes)
            return SolveStatus.Undecided;
        double[] x = place.X;
        if (place.Merit[0] > Kept || SolveAt(x, slopes) != SolveStatus.Optimal)
            return SolveStatus.Undecided;
        double[] solved = _solver.Solution.ToArray();
        if (Distance(solved, x) <= 1e-6 && MeritOf(solved, place.Pieces) is double[] end && end[0] <= Kept)
        {
            X = solved;
            return SolveStatus.Optimal;
        }
        // Another answer that the slopes take for better: by how much.
        double[] promised = Promised(solved, slopes), had = Promised(place.X, slopes);
        for (int level = 1; level < Levels; level++)
            Unsettled = Math.Max(Unsettled, (had[level] - promised[level]) / Math.Max(1e-3, had[level]));
        return SolveStatus.Optimal;
    }

    // Small steps until the limits are kept to the last digits: what a step leaves is the square of its length.
    private Place ToItsLimits(Place place)
    {
        double reach = 1e-3;
        for (int step = 0; step < 8 && SlopesAt(place.X, place.Pieces) is Linearisation slopes && Step(place.X, slopes, reach) is double[] next; step++)
        {
            double moved = Distance(place.X, next);
            if (MeritOf(next, place.Pieces) is not double[] merit || merit[0] > place.Merit[0]
                || (merit[0] == place.Merit[0] && Verdict(merit, place.Merit, 0) <= 0))
                break;
            place = new Place(next, merit, place.Pieces);
            reach = Math.Max(moved, 1e-9);
        }
        X = place.X;
        Breach = place.Merit[0];
        return place;
    }

    private SolveStatus SolveAt(double[] x, Linearisation slopes)
    {
        Assembly = Assembly.Of(_problem, _choice, _total, slopes);
        // Of equal costs the answer itself is the nearest.
        if (Assembly.Ranked.LastWord == LastWord.LeastCost)
            x.CopyTo(Assembly.Ranked.Conditions.Centre);
        _solver.BoxesLeft = 0;
        SolveStatus status = _solver.Solve(Assembly.Ranked);
        if (status == SolveStatus.Optimal)
            return status;
        // Where the slopes far away drown what is nearby in rounding, what is nearby decides.
        Confine(Assembly.Ranked.Conditions, x, FirstReach);
        return _solver.Solve(Assembly.Ranked);
    }

    // What the levels cost by the slopes.
    private double[] Promised(double[] x, Linearisation slopes) => Merit(x, demand =>
    {
        (double value, double[] slope) = slopes.Of(demand.Asked);
        return value + LeastSquaresProblem.Evaluate(slope, x).Value;
    }, _ => 0);

    // What the levels cost: the limits first, then the targets priority by priority, then the last word. Null where a property has no value.
    private double[]? MeritOf(double[] x, int[] pieces)
    {
        double[] merit = Merit(x, demand =>
        {
            int at = Array.IndexOf(_properties, demand.Asked);
            return demand.Asked.ValueOfPiece(pieces[at], Linearisation.Sums(_sums[at], x));
        }, i => _properties[i].Pieces == 1 ? 0 : Math.Max(0, (pieces[i] == 0 ? 1 : -1) * _properties[i].Side(Linearisation.Sums(_sums[i], x))));
        return Array.TrueForAll(merit, double.IsFinite) ? merit : null;
    }

    private double[] Merit(double[] x, Func<Demand.PropertyValue, double> valueOf, Func<int, double> overTheKink)
    {
        double[] merit = new double[Levels];
        RankedProblem ranked = _plain.Ranked;
        for (int t = 0; t < ranked.Targets; t++)
            merit[ranked[t].Priority] += ranked[t].SquaredMiss(ranked.Value(t, x)) / 2;
        foreach (Demand.PropertyValue demand in _demands)
        {
            double value = valueOf(demand), miss = (value < demand.LowEnd ? value - demand.LowEnd : value > demand.HighEnd ? value - demand.HighEnd
                : 0 * value) / (demand.Tolerance ?? demand.Asked.UsualTolerance);
            merit[demand.Priority ?? 0] += miss * miss / 2;
        }
        for (int i = 0; i < _properties.Length; i++)
        {
            double over = overTheKink(i) / SideTolerance;
            merit[0] += over * over / 2;
        }
        LeastSquaresProblem conditions = ranked.Conditions;
        bool isTraded = ranked.LastWord == LastWord.TradedAgainstTargets && _lastPriority > 0;
        for (int j = 0; j < x.Length; j++)
        {
            double far = conditions.Prior[j] * (x[j] - conditions.Centre[j]);
            merit[isTraded ? _lastPriority : Nearness] += far * far / 2;
            if (ranked.LastWord == LastWord.LeastCost)
                merit[Cost] += conditions.Cost[j] * x[j];
        }
        if (merit[0] <= Kept)
            merit[0] = 0;
        return merit;
    }

    // 1 where the first is better, -1 where it is worse, 0 where they are alike; an earlier level may be worse by the slack.
    private static int Verdict(double[] merit, double[] than, double slack)
    {
        for (int level = 0; level < Levels; level++)
        {
            double gain = than[level] - merit[level], least = 1e-9 * Math.Max(Math.Abs(than[level]), Math.Abs(merit[level])) + 1e-15;
            if (gain > least)
                return 1;
            if (gain < -Math.Max(least, slack))
                return -1;
        }
        return 0;
    }

    private static bool IsSame(Place place, Place best)
    {
        for (int level = 0; level < Levels; level++)
        {
            if (Math.Abs(place.Merit[level] - best.Merit[level]) > 1e-5 * Math.Max(place.Merit[level], best.Merit[level]) + 1e-8)
                return false;
        }
        return Distance(place.X, best.X) <= 1e-3;
    }

    private static double Distance(double[] a, double[] b)
    {
        double most = 0;
        for (int j = 0; j < a.Length; j++)
            most = Math.Max(most, Math.Abs(a[j] - b[j]));
        return most;
    }

    private sealed record Place(double[] X, double[] Merit, int[] Pieces);
}
