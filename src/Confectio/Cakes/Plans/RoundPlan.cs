namespace Confectio.Cakes.Plans;

/// <summary>A round: one arc.</summary>
internal sealed class RoundPlan : EdgedPlan
{
    private readonly double _radius;

    /// <summary>A round of any diameter, cm: what a coat has made larger may be past the longest length of a plan.</summary>
    public RoundPlan(double diameter)
        : this([PlanEdge.Arc(0, 0, diameter / 2, -Math.PI / 2, 2 * Math.PI)])
    {
    }

    private RoundPlan(PlanEdge[] edges)
        : base(edges) => _radius = edges[0].Radius;

    public static ShapeWord Word { get; } =
        ShapeWord.OfPlan("round", ["diameter"], sizes => PlanShape.Round(sizes.Length("diameter")));

    public override string Name => "round";

    internal override bool IsRound => true;

    /// <summary>A round of a diameter, cm; <see langword="null"/> where it is narrower than a plan may be.</summary>
    public static PlanShape? OrNone(double diameter) => diameter >= MinimumCentimetres ? new RoundPlan(diameter) : null;

    internal override string Size(ISizeWords words) => words.Of(WidthCentimetres);

    private protected override PlanShape With(PlanEdge[] edges) => new RoundPlan(edges);

    private protected override bool? HoldsAtOnce(PlanShape other, in PlanPlace place, double tolerance)
    {
        (double x, double y) = place.Above(0, 0);
        return other.FarthestFrom(x, y) is double farthest ? farthest <= _radius + tolerance : null;
    }

    private protected override bool? LiesAtOnceIn(PlanShape outer, double right, double back, double tolerance) =>
        outer.HasRoom(right, back, _radius - tolerance);
}
