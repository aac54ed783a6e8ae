namespace Confectio.Cakes.Plans;

/// <summary>
/// A heart: a square on its corner with half a disc on each of its two far sides. Its one sharp corner is far from its notch.
/// </summary>
internal sealed class HeartPlan : EdgedPlan
{
    /// <param name="side">The side of the square, cm.</param>
    public HeartPlan(double side)
        : this(Edges(side))
    {
    }

    private HeartPlan(PlanEdge[] edges)
        : base(edges)
    {
    }

    public static ShapeWord Word { get; } = ShapeWord.OfPlan("heart", ["width"], sizes => PlanShape.Heart(sizes.Length("width")));

    public override string Name => "heart";

    private protected override PlanShape With(PlanEdge[] edges) => new HeartPlan(edges);

    private static PlanEdge[] Edges(double side)
    {
        double corner = side * Math.Sqrt(0.5), centre = corner / 2;
        return
        [
            PlanEdge.Line(0, -corner, corner, 0),
            PlanEdge.Arc(centre, centre, side / 2, -Math.PI / 4, Math.PI),
            PlanEdge.Arc(-centre, centre, side / 2, Math.PI / 4, Math.PI),
            PlanEdge.Line(-corner, 0, 0, -corner),
        ];
    }
}
