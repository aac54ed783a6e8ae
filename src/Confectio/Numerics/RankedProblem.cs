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
    private double[] _coefficients = [];

    public RankedProblem(int variables) => Conditions = new LeastSquaresProblem(variables);

    /// <summary>The rows, the bounds, the prior, the centre and the cost. It has no targets of its own.</summary>
    public LeastSquaresProblem Conditions { get; }

    public LastWord LastWord { get; set; }

    public int Targets => _targets.Count;

    /// <summary>The last priority that a target has; 0 without targets.</summary>
    public int LastPriority { get; private set; }

    /// <summary>
    /// Adds the target low ≤ coefficients·x ≤ high. Inside it costs nothing; outside it costs ½ (weight x distance)².
    /// </summary>
    public void AddTarget(ReadOnlySpan<double> coefficients, double low, double high, double weight, int priority)
    {
        int n = Conditions.Variables;
        if (_coefficients.Length < (_targets.Count + 1) * n)
            Array.Resize(ref _coefficients, Math.Max((_targets.Count + 1) * n, 2 * _coefficients.Length));
        coefficients[..n].CopyTo(_coefficients.AsSpan(_targets.Count * n));
        _targets.Add(new Target(low, high, weight, Guard.InRange(priority, 1, MostPriorities)));
        LastPriority = Math.Max(LastPriority, priority);
    }

    public ReadOnlySpan<double> Coefficients(int target) => _coefficients.AsSpan(target * Conditions.Variables, Conditions.Variables);

    public Target this[int target] => _targets[target];

    /// <summary>What a target asks for, without its coefficients.</summary>
    internal readonly struct Target(double low, double high, double weight, int priority)
    {
        public double Low { get; } = low;

        public double High { get; } = high;

        public double Weight { get; } = weight;

        public int Priority { get; } = priority;
    }
}
