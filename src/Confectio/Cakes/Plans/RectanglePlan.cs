namespace Confectio.Cakes.Plans;

/// <summary>A rectangle with corners sharp or rounded.</summary>
internal sealed class RectanglePlan : EdgedPlan
{
    public RectanglePlan(double width, double length, double cornerRadius)
        : base(Sides(width, length, cornerRadius))
    {
    }

    private RectanglePlan(PlanEdge[] edges)
        : base(edges)
    {
    }

    public static ShapeWord Word { get; } = ShapeWord.OfPlan("rectangle", ["width", "length", "cornerRadius"],
        sizes => PlanShape.Rectangle(sizes.Length("width"), sizes.Length("length"), sizes.Length("cornerRadius", default)));

    public override string Name => "rectangle";

    /// <summary>The sides and corners of a rectangle.</summary>
    public static List<PlanEdge> Sides(double width, double length, double radius)
    {
        double x = width / 2, y = length / 2;
        // A rounding within what counts as touching is none: a sharp coat keeps such a corner sharp, and in another size it would be an arc
        // of no length.
        if (radius <= Touching * Math.Min(width, length))
            radius = 0;
        double innerX = x - radius, innerY = y - radius;
        List<PlanEdge> edges = [];
        // A side that its corners have eaten up is left out.
        void Side(double x0, double y0, double x1, double y1)
        {
            if (x0 != x1 || y0 != y1)
                edges.Add(PlanEdge.Line(x0, y0, x1, y1));
        }
        void Corner(double centreX, double centreY, double from)
        {
            if (radius > 0)
                edges.Add(PlanEdge.Arc(centreX, centreY, radius, from, Math.PI / 2));
        }
        Side(-innerX, -y, innerX, -y);
        Corner(innerX, -innerY, -Math.PI / 2);
        Side(x, -innerY, x, innerY);
        Corner(innerX, innerY, 0);
        Side(innerX, y, -innerX, y);
        Corner(-innerX, innerY, Math.PI / 2);
        Side(-x, innerY, -x, -innerY);
        Corner(-innerX, -innerY, Math.PI);
        return edges;
    }

    private protected override PlanShape With(PlanEdge[] edges) => new RectanglePlan(edges);
}
