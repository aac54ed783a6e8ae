namespace Confectio.Numerics;

/// <summary>How a search over a grid ended.</summary>
internal enum GridStatus
{
    /// <summary>No point of the grid that meets the conditions is better.</summary>
    Proven,

    /// <summary>The search reached its cap; the lower bound says how much better another point can be.</summary>
    Capped,

    /// <summary>No point of the grid meets the conditions.</summary>
    NoGridPoint,
}

/// <summary>What a search over a grid found.</summary>
internal sealed class GridAnswer
{
    public GridAnswer(GridStatus status, double[]? x, double value, double lowerBound, int nodes)
    {
        Status = status;
        X = x;
        Value = value;
        LowerBound = lowerBound;
        Nodes = nodes;
    }

    public GridStatus Status { get; }

    /// <summary>The best point found; null where none was.</summary>
    public IReadOnlyList<double>? X { get; }

    /// <summary>The objective at <see cref="X"/>, evaluated from the problem as stated; infinite without a point.</summary>
    public double Value { get; }

    /// <summary>No point of the grid that meets the conditions has a smaller objective, up to rounding.</summary>
    public double LowerBound { get; }

    /// <summary>
    /// How much better a point that was not seen can be: 0 where the answer is proven, infinite without a point at the cap.
    /// </summary>
    public double Gap => Status == GridStatus.Capped ? Value - LowerBound : 0;

    /// <summary>How many values of coordinates were tried.</summary>
    public int Nodes { get; }
}
