namespace Confectio.Numerics;

/// <summary>
/// The best of targets that are shares of something that moves, with a proof. A share p·x / d·x is a fraction: its misses may have
/// several valleys, so a place from which no step helps is not yet the best. The search splits the range of every share r and of every
/// whole D = d·x, and in each box replaces p·x = r D by the four planes that enclose it (McCormick, Mathematical Programming 10 (1976)
/// 147-175); that is a convex problem for the kernel, and its answer is a bound of all answers in the box. A box whose bound is no
/// better than the best found is done.
/// </summary>
/// <remarks>
/// Shares do not change where everything is multiplied, so where nothing fixes a size the unknowns are taken per unit of the whole
/// (Charnes and Cooper, Naval Research Logistics Quarterly 9 (1962) 181-186): y = x / whole, t = 1 / whole. Where all targets are shares
/// of one and the same part that is all: the problem is convex as it stands, and the first box is the last.
/// </remarks>
internal sealed class ShareSearch
{
    /// <summary>How many boxes are looked at before the search says how far it came.</summary>
    public const int MostBoxes = 1500;

    // Bounds that are within this of the best, relative and in squares of tolerances, are no better.
    private const double Relative = 1e-8, Absolute = 1e-13;

    // The most units of anything: a free total goes to a hundred of them.
    private const double LargestUnits = 1000;

    private readonly RankedProblem _problem;
    private readonly LeastSquaresProblem _conditions, _box = new(1);
    private readonly DualActiveSet _kernel = new();
    private readonly List<int> _shares = [], _linear = [];
    private readonly List<double[]> _wholes = [];
    private readonly List<int> _wholeOf = [];
    private readonly double[]? _per;
    private readonly int _x; // unknowns of the problem
    private readonly int _mostBoxes;

    public ShareSearch(RankedProblem problem, LeastSquaresProblem conditions, List<int> targets, double[] start, double merit, int mostBoxes)
    {
        _problem = problem;
        _mostBoxes = Math.Min(mostBoxes, MostBoxes);
        _x = start.Length;
        Best = [.. start];
        Merit = merit;
        foreach (int target in targets)
            (problem[target].IsShare ? _shares : _linear).Add(target);
        bool held = conditions.Prior.ContainsAnyExcept(0);
        ReadOnlySpan<double> first = problem.Whole(_shares[0]);
        bool isOneWhole = _linear.Count == 0 && !held;
        foreach (int share in _shares)
            isOneWhole &= problem.Whole(share).SequenceEqual(first);
        double[]? per = held ? null : isOneWhole ? first.ToArray() : problem.MovingTotal;
        _per = per;
        _conditions = per is null ? conditions : PerUnitOf(conditions, per, _x);
        foreach (int share in _shares)
        {
            double[] whole = [.. problem.Whole(share), .. _per is not null ? [0.0] : Array.Empty<double>()];
            int at = _wholes.FindIndex(other => other.AsSpan().SequenceEqual(whole));
            if (at < 0)
            {
                at = _wholes.Count;
                _wholes.Add(whole);
            }
            _wholeOf.Add(at);
        }
    }

    /// <summary>The best place found.</summary>
    public double[] Best { get; private set; }

    /// <summary>What its targets cost.</summary>
    public double Merit { get; private set; }

    /// <summary>No place costs less than this.</summary>
    public double Bound { get; private set; }

    /// <summary>How many boxes were looked at.</summary>
    public int Boxes { get; private set; }

    /// <summary>Searches.</summary>
    /// <param name="descend">
    /// Walks downhill from a place, which it changes; answers with what its targets cost, where that is less than the second argument.
    /// </param>
    public void Run(Func<double[], double, double> descend)
    {
        Bound = 0;
        if (IsDone(0))
            return;
        PriorityQueue<Box, double> open = new();
        open.Enqueue(FirstBox(), 0);
        while (open.TryDequeue(out Box? box, out double bound))
        {
            Bound = bound;
            if (IsDone(bound) || Boxes >= _mostBoxes || box.IsSettled)
                return;
            Boxes++;
            if (Relax(box, bound, descend) is not (double below, int share, bool isWhole, double at))
                continue;
            if (IsDone(below))
                continue;
            if (share < 0)
            {
                // The planes cannot come closer: nothing is left to split, and where it is the lowest nothing more is known.
                open.Enqueue(box with { IsSettled = true }, below);
                continue;
            }
            (Box low, Box high) = box.Split(isWhole ? _wholeOf[share] : share, isWhole, at);
            open.Enqueue(low, below);
            open.Enqueue(high, below);
        }
        Bound = Merit;
    }

    private bool IsDone(double bound) => bound >= Merit * (1 - Relative) - Absolute;

    // The range of every whole over all that is allowed, and of every share what could be better than the best found.
    private Box FirstBox()
    {
        double[] wholeLow = new double[_wholes.Count], wholeHigh = new double[_wholes.Count];
        for (int i = 0; i < _wholes.Count; i++)
        {
            // What everything is taken per unit of is one of it.
            if (_per is not null && _wholes[i].AsSpan(0, _x).SequenceEqual(_per))
            {
                wholeLow[i] = wholeHigh[i] = 1;
                continue;
            }
            // Where the kernel does not decide, the widest there can be.
            double low = Extreme(_wholes[i], 1) ?? 0, high = Extreme(_wholes[i], -1) ?? _wholes[i].Max() * LargestUnits;
            // Rounding must not cut off the best.
            (wholeLow[i], wholeHigh[i]) = (Math.Max(low * (1 - 1e-9), 1e-9), high * (1 + 1e-9));
        }
        double[] shareLow = new double[_shares.Count], shareHigh = new double[_shares.Count];
        for (int i = 0; i < _shares.Count; i++)
        {
            RankedProblem.Target target = _problem[_shares[i]];
            double reach = Math.Sqrt(2 * Merit) / target.Weight * (1 + 1e-9);
            (double least, double most) = RangeOfShare(i, wholeLow[_wholeOf[i]]);
            shareLow[i] = Math.Max(target.Low - reach, least);
            shareHigh[i] = Math.Min(target.High + reach, most);
            if (shareLow[i] > shareHigh[i])
                shareLow[i] = shareHigh[i] = Math.Clamp(target.Low, least, most);
        }
        return new Box(shareLow, shareHigh, wholeLow, wholeHigh);
    }

    // Least or most of a sum over all that is allowed; null where the kernel does not decide it.
    private double? Extreme(ReadOnlySpan<double> sum, int sign)
    {
        Start(0);
        _box.Prior[.._conditions.Variables].Fill(1);
        _box.Centre.Clear();
        return LeastCost.Extreme(_kernel, _box, sum[.._conditions.Variables], sign);
    }

    // The least and the most a share can be (Dinkelbach, Management Science 13 (1967) 492-498): a little wider than found, or the widest
    // where it does not settle.
    private (double Least, double Most) RangeOfShare(int share, double leastWhole)
    {
        int n = _conditions.Variables;
        double[] part = new double[n], difference = new double[n];
        _problem.Coefficients(_shares[share]).CopyTo(part);
        double[] whole = _wholes[_wholeOf[share]];
        double[] ends = new double[2];
        foreach (int sign in stackalloc[] { 1, -1 })
        {
            double at = _problem.Value(_shares[share], Best);
            for (int pass = 0; ; pass++)
            {
                for (int j = 0; j < n; j++)
                    difference[j] = part[j] - at * whole[j];
                if (pass == 40 || Extreme(difference, sign) is not double beyond)
                {
                    at = sign > 0 ? 0 : (Extreme(part, -1) ?? 1e9) / leastWhole;
                    break;
                }
                double all = LeastSquaresProblem.Evaluate(whole, _kernel.Solution[..n]).Value;
                if (sign * beyond >= -1e-13 || all <= 0)
                    break;
                at += beyond / all;
            }
            ends[sign > 0 ? 0 : 1] = at - sign * 1e-10 * Math.Max(1, Math.Abs(at));
        }
        return (Math.Max(ends[0], 0), ends[1]);
    }

    // Solves a box. Null: nothing in it is allowed. Else its bound, and where to split it: a share of ours, -1 where nothing is left.
    private (double Bound, int Share, bool IsWhole, double At)? Relax(Box box, double known, Func<double[], double, double> descend)
    {
        int n = _conditions.Variables, shares = _shares.Count, slack = n + shares;
        int ranges = _shares.Concat(_linear).Count(target => _problem[target].Low < _problem[target].High);
        Start(shares + ranges);
        double[] row = new double[slack + ranges];
        double trivial = 0;
        for (int i = 0; i < _wholes.Count; i++)
        {
            _wholes[i].CopyTo(row, 0);
            _box.AddRow(row, box.WholeLow[i], box.WholeHigh[i]);
            Array.Clear(row);
        }
        for (int i = 0; i < shares; i++)
        {
            RankedProblem.Target target = _problem[_shares[i]];
            double a = box.ShareLow[i], b = box.ShareHigh[i], l = box.WholeLow[_wholeOf[i]], u = box.WholeHigh[_wholeOf[i]];
            // What is nearest to the range within [a, b].
            trivial += target.SquaredMiss(a > target.High ? a : Math.Min(b, target.Low)) / 2;
            _box.Lower[n + i] = a;
            _box.Upper[n + i] = b;
            _box.Centre[n + i] = (a + b) / 2;
            Plane(i, a, l, low: true);
            Plane(i, b, u, low: true);
            Plane(i, b, l, low: false);
            Plane(i, a, u, low: false);
            row[n + i] = 1;
            AddTarget(target, row, ref slack);
            row[n + i] = 0;
        }
        foreach (int target in _linear)
        {
            _problem.Coefficients(target).CopyTo(row);
            AddTarget(_problem[target], row, ref slack);
            Array.Clear(row);
        }
        SolveStatus status = _kernel.Solve(_box);
        if (status == SolveStatus.Infeasible)
            return null;
        double bound = Math.Max(known, trivial);
        if (status != SolveStatus.Optimal)
            return Widest(box, bound);
        ReadOnlySpan<double> y = _kernel.Solution;
        // A little below: what rounding may leave of it.
        bound = Math.Max(bound, Cost(y) * (1 - 1e-10));
        double[] place = new double[_x];
        double size = _per is not null ? y[_x] : 1;
        for (int j = 0; j < _x; j++)
            place[j] = y[j] / size;
        (int worst, double error) = (-1, 0);
        for (int i = 0; i < shares; i++)
        {
            double all = LeastSquaresProblem.Evaluate(_wholes[_wholeOf[i]], y[..n]).Value;
            double off = _problem[_shares[i]].Weight * Math.Abs(_problem.Value(_shares[i], place) - y[n + i]);
            if (all > 0 && off > error)
                (worst, error) = (i, off);
        }
        double chosen = worst < 0 ? 0 : y[n + worst];
        double wholeChosen = worst < 0 ? 0 : LeastSquaresProblem.Evaluate(_wholes[_wholeOf[worst]], y[..n]).Value;
        if (descend(place, Merit) is double merit && merit < Merit)
            (Best, Merit) = (place, merit);
        if (worst < 0 || error < 1e-12)
            return (bound, -1, false, 0);
        return SplitOf(box, bound, worst, chosen, wholeChosen);

        void Plane(int i, double share, double whole, bool low)
        {
            // p·y - share D - whole r against -share whole.
            _problem.Coefficients(_shares[i]).CopyTo(row);
            double[] d = _wholes[_wholeOf[i]];
            for (int j = 0; j < n; j++)
                row[j] -= share * d[j];
            row[n + i] = -whole;
            _box.AddRow(row, low ? -share * whole : double.NegativeInfinity, low ? double.PositiveInfinity : -share * whole);
            Array.Clear(row);
        }

        double Cost(ReadOnlySpan<double> y)
        {
            double sum = 0;
            for (int i = 0; i < shares; i++)
                sum += _problem[_shares[i]].SquaredMiss(y[n + i]);
            foreach (int target in _linear)
                sum += _problem[target].SquaredMiss(_problem.Value(target, y[.._x]));
            for (int j = 0; j < n; j++)
                sum += Math.Pow(_conditions.Prior[j] * (y[j] - _conditions.Centre[j]), 2);
            return sum / 2;
        }
    }

    private void AddTarget(RankedProblem.Target target, double[] row, ref int slack)
    {
        if (target.Low == target.High)
            _box.AddTarget(row, target.Low, target.Weight);
        else
            _box.AddTargetWithin(row, target.Low, target.High, target.Weight, slack++);
    }

    // The share or its whole, whichever range is the wider by its own size; not too near an end.
    private (double, int, bool, double) SplitOf(Box box, double bound, int share, double shareAt, double wholeAt)
    {
        int whole = _wholeOf[share];
        double a = box.ShareLow[share], b = box.ShareHigh[share], l = box.WholeLow[whole], u = box.WholeHigh[whole];
        double shareWidth = (b - a) / Math.Max(b, 1e-6), wholeWidth = (u - l) / u;
        if (Math.Min(shareWidth, wholeWidth) <= 1e-9)
            return (bound, -1, false, 0);
        bool isWhole = wholeWidth > shareWidth;
        (double low, double high, double at) = isWhole ? (l, u, wholeAt) : (a, b, shareAt);
        double middle = isWhole && low > 0 && high > 10 * low ? Math.Sqrt(low * high) : (low + high) / 2;
        return (bound, share, isWhole, Math.Clamp((at + middle) / 2, low + 0.1 * (high - low), high - 0.1 * (high - low)));
    }

    private (double, int, bool, double) Widest(Box box, double bound)
    {
        int widest = 0;
        for (int i = 1; i < _shares.Count; i++)
        {
            if (box.ShareHigh[i] - box.ShareLow[i] > box.ShareHigh[widest] - box.ShareLow[widest])
                widest = i;
        }
        int whole = _wholeOf[widest];
        return SplitOf(box, bound, widest, (box.ShareLow[widest] + box.ShareHigh[widest]) / 2,
            (box.WholeLow[whole] + box.WholeHigh[whole]) / 2);
    }

    // The box without its planes: the conditions, and so many unknowns more.
    private void Start(int extra)
    {
        _box.StartFrom(_conditions, extra);
        _conditions.Prior[.._conditions.Variables].CopyTo(_box.Prior);
        _box.IsHandedDown = _conditions.IsHandedDown;
    }

    // The same conditions of y = x / whole and t = 1 / whole: low ≤ c·x is c·y - low t ≥ 0.
    private static LeastSquaresProblem PerUnitOf(LeastSquaresProblem conditions, double[] whole, int n)
    {
        LeastSquaresProblem per = new(n + 1);
        double[] row = new double[n + 1];
        per.Lower[n] = 0;
        per.IsHandedDown = conditions.IsHandedDown;
        whole.CopyTo(row, 0);
        per.AddRow(row, 1, 1);
        for (int k = 0; k < conditions.Rows; k++)
        {
            conditions.Row(k)[..n].CopyTo(row);
            Add(conditions.RowLow[k], conditions.RowHigh[k]);
        }
        for (int j = 0; j < n; j++)
        {
            double lower = conditions.Lower[j], upper = conditions.Upper[j];
            if (lower == 0)
                per.Lower[j] = 0;
            if (upper == 0)
                per.Upper[j] = 0;
            Array.Clear(row);
            row[j] = 1;
            Add(lower == 0 && upper != 0 ? double.NegativeInfinity : lower, upper == 0 && lower != 0 ? double.PositiveInfinity : upper);
            per.Centre[j] = conditions.Centre[j];
        }
        per.Centre[n] = 1;
        return per;

        void Add(double low, double high)
        {
            if (low == high)
            {
                row[n] = -low;
                per.AddRow(row, 0, 0);
                return;
            }
            if (double.IsFinite(low))
            {
                row[n] = -low;
                per.AddRow(row, 0, double.PositiveInfinity);
            }
            if (double.IsFinite(high))
            {
                row[n] = -high;
                per.AddRow(row, double.NegativeInfinity, 0);
            }
        }
    }

    private sealed record Box(double[] ShareLow, double[] ShareHigh, double[] WholeLow, double[] WholeHigh)
    {
        public bool IsSettled { get; init; }

        public (Box Low, Box High) Split(int index, bool isWhole, double at)
        {
            double[] high = [.. isWhole ? WholeHigh : ShareHigh], low = [.. isWhole ? WholeLow : ShareLow];
            high[index] = at;
            low[index] = at;
            return isWhole ? (this with { WholeHigh = high }, this with { WholeLow = low })
                : (this with { ShareHigh = high }, this with { ShareLow = low });
        }
    }
}
