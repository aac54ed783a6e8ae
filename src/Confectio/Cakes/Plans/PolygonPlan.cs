using System.Globalization;

namespace Confectio.Cakes.Plans;

/// <summary>Any outline of straight sides. Of one with notches sharp corners may run into one another.</summary>
internal sealed class PolygonPlan : EdgedPlan
{
    private PolygonPlan(PlanEdge[] edges)
        : base(edges)
    {
    }

    public static ShapeWord Word { get; } = ShapeWord.OfPlan("polygon", ["outline"], sizes => PlanShape.Polygon(sizes.Outline("outline")));

    public override string Name => "polygon";

    internal override bool SharpIsExact => IsConvex;

    /// <summary>The sides between corners.</summary>
    public static PlanEdge[] Sides(IReadOnlyList<PlanPoint> corners)
    {
        PlanEdge[] edges = new PlanEdge[corners.Count];
        for (int i = 0; i < edges.Length; i++)
        {
            PlanPoint from = corners[i], to = corners[(i + 1) % edges.Length];
            edges[i] = PlanEdge.Line(from.XCentimetres, from.YCentimetres, to.XCentimetres, to.YCentimetres);
        }
        return edges;
    }

    /// <summary>The polygon of corners that a caller gave under a name, or a refusal.</summary>
    public static PolygonPlan Of(IEnumerable<PlanPoint> points, string name)
    {
        List<PlanPoint> corners = [.. points.Take(MaximumPoints + 2)];
        if (corners.Count > 1 && corners[0] == corners[^1])
            corners.RemoveAt(corners.Count - 1);
        if (corners.Count is < 3 or > MaximumPoints)
        {
            string count = corners.Count > MaximumPoints ? $"more than {MaximumPoints}" : $"{corners.Count}";
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{name} has {count} corners; it must have from 3 to {MaximumPoints}."), name);
        }
        foreach (PlanPoint corner in corners)
        {
            Guard.InRange(corner.XCentimetres, -MaximumCentimetres, MaximumCentimetres, name);
            Guard.InRange(corner.YCentimetres, -MaximumCentimetres, MaximumCentimetres, name);
        }
        PlanEdge[] near = Near(corners);
        double area = near.Sum(edge => edge.Area), perimeter = near.Sum(edge => edge.Length);
        PolygonCheck.Refuse(near, name);
        if (!(Math.Abs(area) > 1e-12 * perimeter * perimeter && perimeter >= MinimumCentimetres))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{name} enclose {Math.Abs(area):R} cm², which is nothing."), name);
        if (area < 0)
        {
            double x = corners[0].XCentimetres, y = corners[0].YCentimetres;
            corners.Reverse();
            near = Near(corners, x, y);
        }
        return new PolygonPlan(near);
    }

    private protected override PlanShape With(PlanEdge[] edges) => new PolygonPlan(edges);

    private static PlanEdge[] Near(List<PlanPoint> corners) => Near(corners, corners[0].XCentimetres, corners[0].YCentimetres);

    // About one corner, so that a small plan far from 0 keeps its digits.
    private static PlanEdge[] Near(List<PlanPoint> corners, double x, double y) => [.. Sides(corners).Select(edge => edge.Moved(-x, -y))];
}
