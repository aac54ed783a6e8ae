using System.Text;
using Confectio.Cakes;
using Confectio.Cakes.Plans;

namespace Confectio.Pictures;

/// <summary>The outline of a plan as the data of an SVG path, with its own arcs, and how far it reaches to the left and right.</summary>
internal sealed class OutlinePath : IOutlinePen
{
    private readonly StringBuilder _path = new();
    private readonly double _centreX, _centreY, _pixels, _turnedDegrees, _cos, _sin;

    private OutlinePath(double turnedDegrees, double centreX, double centreY, double pixels)
    {
        (_turnedDegrees, _centreX, _centreY, _pixels) = (turnedDegrees, centreX, centreY, pixels);
        double angle = turnedDegrees * Math.PI / 180;
        (_cos, _sin) = (Math.Cos(angle), Math.Sin(angle));
    }

    /// <summary>The path of a plan that is turned counter-clockwise and seen from above, y to the back.</summary>
    public static string Of(PlanShape plan, double turnedDegrees, double centreX, double centreY, double pixels)
    {
        OutlinePath path = new(turnedDegrees, centreX, centreY, pixels);
        plan.Draw(path);
        return path._path.Append(" Z").ToString();
    }

    /// <summary>
    /// How far a turned plan reaches to the left (below 0), to the right, to the front (below 0) and to the back of its centroid.
    /// </summary>
    public static (double Left, double Right, double Front, double Back) Reach(PlanShape plan, double turnedDegrees)
    {
        double angle = turnedDegrees * Math.PI / 180, cos = Math.Cos(angle), sin = Math.Sin(angle);
        double left = 0, right = 0, front = 0, back = 0;
        foreach (PlanPoint point in plan.Outline(Math.Max(720, plan.EdgeCount)))
        {
            double x = cos * point.XCentimetres - sin * point.YCentimetres, y = sin * point.XCentimetres + cos * point.YCentimetres;
            (left, right, front, back) = (Math.Min(left, x), Math.Max(right, x), Math.Min(front, y), Math.Max(back, y));
        }
        return (left, right, front, back);
    }

    public void Start(double x, double y) => _path.Append("M ").Append(Place(x, y));

    public void Line(double x, double y) => _path.Append(" L ").Append(Place(x, y));

    // At most half a round, for which no flag of a long way is needed.
    public void Arc(double radius, double x, double y)
    {
        (double toX, double toY) = At(x, y);
        _path.Append(SvgCanvas.Arc(_pixels * radius, toX, toY));
    }

    public void HalfOval(double halfWidth, double halfLength, double x, double y) => _path.Append(" A ")
        .Append(SvgCanvas.Point(_pixels * halfWidth, _pixels * halfLength)).Append(' ').Append(SvgCanvas.Number(-_turnedDegrees))
            .Append(" 0 0 ").Append(Place(x, y));

    private (double X, double Y) At(double x, double y) =>
        (_centreX + _pixels * (_cos * x - _sin * y), _centreY - _pixels * (_sin * x + _cos * y));

    private string Place(double x, double y)
    {
        (double toX, double toY) = At(x, y);
        return SvgCanvas.Point(toX, toY);
    }
}
