namespace Confectio.Cakes.Plans;

/// <summary>A square with sharp corners.</summary>
internal sealed class SquarePlan : EdgedPlan
{
    /// <summary>A square of any side, cm.</summary>
    public SquarePlan(double side)
        : base(RectanglePlan.Sides(side, side, 0))
    {
    }

    private SquarePlan(PlanEdge[] edges)
        : base(edges)
    {
    }

    public static ShapeWord Word { get; } = ShapeWord.OfPlan("square", ["side"], sizes => PlanShape.Square(sizes.Length("side")));

    public override string Name => "square";

    internal override bool IsSquare => true;

    internal override string Size(ISizeWords words) => words.Of(WidthCentimetres);

    private protected override PlanShape With(PlanEdge[] edges) => new SquarePlan(edges);
}
