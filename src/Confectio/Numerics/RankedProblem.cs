namespace Confectio.Numerics;

/// <summary>What decides between answers that meet the targets equally well.</summary>
internal enum LastWord
{
    /// <summary>Nearest to the centre, once all targets are as well met as they can be.</summary>
    NearestToCentre,

    /// <summary>The nearness joins the targets of the last priority and is traded against them.</summary>
    TradedAgainstTargets,

    /// <summary>Least cost, once all targets are as well met as they can be; among equal costs nearest to the centre.</summary>
    LeastCost,
}

/// <summary>
/// Targets in order of priority over one set of conditions: the targets of priority 1 are met as well as the conditions allow, then
/// those of priority 2 as well as that leaves room for, and so on; the last word has the prior or the cost.
/// </summary>
internal sealed class RankedProblem
{
    /// <summary>The most priorities that may be told apart.</summary>
    public const int MostPriorities = 4;

    private readonly List<Target> _targets = [];
    private double[] _coefficients = [], _wholes = [];

    public RankedProblem(int variables) => Conditions = new LeastSquaresProblem(variables);

    /// <summary>The rows, the bounds, the prior, the centre and the cost. It has no targets of its own.</summary>
    public LeastSquaresProblem Conditions { get; }

    public LastWord LastWord { get; set; }

    public int Targets => _targets.Count;

    /// <summary>The last priority that a target has; 0 without targets.</summary>
    public int LastPriority { get; private set; }

    /// <summary>
    /// The unknowns that make up the whole, where how much there is of it is not given: shares then do not ask for a size. Null where
    /// the whole is given.
    /// </summary>
    public double[]? MovingTotal { get; set; }

    /// <summary>
    /// Adds the target low ≤ coefficients·x ≤ high. Inside it costs nothing; outside it costs ½ (weight x distance)².
    /// </summary>
    public void AddTarget(ReadOnlySpan<double> coefficients, double low, double high, double weight, int priority)
    {
        int n = Conditions.Variables;
        Grow(ref _coefficients, (_targets.Count + 1) * n);
        coefficients[..n].CopyTo(_coefficients.AsSpan(_targets.Count * n));
        _targets.Add(new Target(low, high, weight, Guard.InRange(priority, 1, MostPriorities), isShare: false));
        LastPriority = Math.Max(LastPriority, priority);
    }

    /// <summary>
    /// Adds the target low ≤ part·x / whole·x ≤ high: a share of something that moves. It costs ½ (weight x distance)² of the share
    /// itself, which is no linear function of x and is not taken for one.
    /// </summary>
    public void AddShare(ReadOnlySpan<double> part, ReadOnlySpan<double> whole, double low, double high, double weight, int priority)
    {
        AddTarget(part, low, high, weight, priority);
        int n = Conditions.Variables, last = _targets.Count - 1;
        Grow(ref _wholes, _targets.Count * n);
        whole[..n].CopyTo(_wholes.AsSpan(last * n));
        _targets[last] = new Target(low, high, weight, priority, isShare: true);
    }

    /// <summary>What a share is a share of.</summary>
    public ReadOnlySpan<double> Whole(int target) => _wholes.AsSpan(target * Conditions.Variables, Conditions.Variables);

    /// <summary>What a target has at a place: its sum, or its share, which of nothing is beyond every number.</summary>
    public double Value(int target, ReadOnlySpan<double> x)
    {
        double value = LeastSquaresProblem.Evaluate(Coefficients(target), x).Value;
        if (!_targets[target].IsShare)
            return value;
        double whole = LeastSquaresProblem.Evaluate(Whole(target), x).Value;
        return whole > 0 ? value / whole : double.PositiveInfinity;
    }

    /// <summary>The slope of a target at a place: its coefficients, or how its share moves with every unknown.</summary>
    public void Slope(int target, ReadOnlySpan<double> x, Span<double> slope)
    {
        Coefficients(target).CopyTo(slope);
        if (!_targets[target].IsShare)
            return;
        ReadOnlySpan<double> whole = Whole(target);
        double all = LeastSquaresProblem.Evaluate(whole, x).Value;
        Against(Coefficients(target), Value(target, x), whole, slope);
        for (int j = 0; j < whole.Length; j++)
            slope[j] /= all;
    }

    /// <summary>part - share x whole: zero where the share is what it says.</summary>
    public static void Against(ReadOnlySpan<double> part, double share, ReadOnlySpan<double> whole, Span<double> row)
    {
        for (int j = 0; j < part.Length; j++)
        {
            double taken = share * whole[j];
            row[j] = part[j] - taken;
            // What is left of an ingredient that has the very share is rounding.
            if (Math.Abs(row[j]) <= 1e-13 * Math.Max(part[j], taken))
                row[j] = 0;
        }
    }

    public ReadOnlySpan<double> Coefficients(int target) => _coefficients.AsSpan(target * Conditions.Variables, Conditions.Variables);

    public Target this[int target] => _targets[target];

    /// <summary>What a target asks for, without its coefficients.</summary>
    internal readonly struct Target(double low, double high, double weight, int priority, bool isShare)
    {
        /// <summary>Whether it is a share of something that moves.</summary>
        public bool IsShare { get; } = isShare;

        /// <summary>The square of how far a value is outside, in units of the weight.</summary>
        public double SquaredMiss(double value)
        {
            double miss = Weight * (value < Low ? value - Low : value > High ? value - High : 0);
            return miss * miss;
        }

        public double Low { get; } = low;

        public double High { get; } = high;

        public double Weight { get; } = weight;

        public int Priority { get; } = priority;
    }

    private static void Grow(ref double[] array, int length)
    {
        if (array.Length < length)
            Array.Resize(ref array, Math.Max(length, 2 * array.Length));
    }
}
