namespace Confectio.Formulas.Solving;

/// <summary>An end of a demand that is to stand elsewhere. Where the demand asks for one value, both of its ends move.</summary>
internal readonly struct MovedEnd
{
    private readonly FormulaProblem _problem;
    private readonly Demand _demand;

    /// <exception cref="ArgumentException">The demand is not one of the problem, or has no such end.</exception>
    public MovedEnd(FormulaProblem problem, Demand demand, bool ofLowEnd)
    {
        (_problem, _demand) = (problem, demand);
        if (!problem.Demands.Contains(demand))
            throw new ArgumentException($"{nameof(demand)} '{demand}' is not a demand of the problem.", nameof(demand));
        Now = ofLowEnd ? demand.LowEnd : demand.HighEnd;
        if (!double.IsFinite(Now) || !demand.HasMovableEnds)
            throw new ArgumentException($"{nameof(demand)} '{demand}' has no {(ofLowEnd ? "low" : "high")} end.", nameof(demand));
        MovesLow = ofLowEnd || demand.IsOneValue;
        MovesHigh = !ofLowEnd || demand.IsOneValue;
    }

    /// <summary>Where it stands.</summary>
    public double Now { get; }

    /// <summary>Whether the low end moves.</summary>
    public bool MovesLow { get; }

    /// <summary>Whether the high end moves.</summary>
    public bool MovesHigh { get; }

    /// <summary>The problem with the end at a place.</summary>
    public FormulaProblem At(double place) => _problem.Replacing(_demand,
        _demand.Between(MovesLow ? place : _demand.LowEnd, MovesHigh ? place : _demand.HighEnd));
}
