using System.Text;
using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>The outline of a plan as the data of an SVG path, with its own arcs, and how far it reaches to the left and right.</summary>
internal static class OutlinePath
{
    /// <summary>The path of a plan that is turned counter-clockwise and seen from above, y to the back.</summary>
    public static string Of(PlanShape plan, double turnedDegrees, double centreX, double centreY, double pixels)
    {
        double angle = turnedDegrees * Math.PI / 180, cos = Math.Cos(angle), sin = Math.Sin(angle);
        (double X, double Y) At(double x, double y) => (centreX + pixels * (cos * x - sin * y), centreY - pixels * (sin * x + cos * y));
        string Place(double x, double y) => SvgCanvas.Point(At(x, y).X, At(x, y).Y);
        StringBuilder path = new();
        if (plan.Edges.IsEmpty)
        {
            double a = plan.WidthCentimetres / 2, b = plan.LengthCentimetres / 2;
            string arc = $" A {SvgCanvas.Point(pixels * a, pixels * b)} {SvgCanvas.Number(-turnedDegrees)} 0 0 ";
            return path.Append("M ").Append(Place(a, 0)).Append(arc).Append(Place(-a, 0)).Append(arc).Append(Place(a, 0)).Append(" Z").ToString();
        }
        PlanEdge first = plan.Edges[0];
        path.Append("M ").Append(first.IsArc ? Place(OnArc(first, 0).X, OnArc(first, 0).Y) : Place(first.X0, first.Y0));
        foreach (PlanEdge edge in plan.Edges)
        {
            if (!edge.IsArc)
            {
                path.Append(" L ").Append(Place(edge.X1, edge.Y1));
                continue;
            }
            // Half an arc is at most half a round, for which no flag of a long way is needed.
            foreach (double share in (double[])[0.5, 1])
            {
                (double x, double y) = At(OnArc(edge, share).X, OnArc(edge, share).Y);
                path.Append(SvgCanvas.Arc(pixels * edge.Radius, x, y));
            }
        }
        return path.Append(" Z").ToString();
    }

    /// <summary>How far a turned plan reaches to the left (below 0), to the right, to the front (below 0) and to the back of its centroid.</summary>
    public static (double Left, double Right, double Front, double Back) Reach(PlanShape plan, double turnedDegrees)
    {
        double angle = turnedDegrees * Math.PI / 180, cos = Math.Cos(angle), sin = Math.Sin(angle);
        double left = 0, right = 0, front = 0, back = 0;
        foreach (PlanPoint point in plan.Outline(Math.Max(720, plan.Edges.Length)))
        {
            double x = cos * point.XCentimetres - sin * point.YCentimetres, y = sin * point.XCentimetres + cos * point.YCentimetres;
            (left, right, front, back) = (Math.Min(left, x), Math.Max(right, x), Math.Min(front, y), Math.Max(back, y));
        }
        return (left, right, front, back);
    }

    private static (double X, double Y) OnArc(in PlanEdge edge, double share)
    {
        double angle = edge.From + share * edge.Sweep;
        return (edge.CentreX + edge.Radius * Math.Cos(angle), edge.CentreY + edge.Radius * Math.Sin(angle));
    }
}
