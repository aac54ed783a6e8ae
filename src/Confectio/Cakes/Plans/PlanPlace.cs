namespace Confectio.Cakes.Plans;

/// <summary>
/// Where a plan stands on another: how far its centroid is to the right and to the back, and how far it is turned counter-clockwise.
/// </summary>
internal readonly struct PlanPlace(double right, double back, double turnedDegrees)
{
    private readonly double _right = right, _back = back;
    private readonly double _cos = Math.Cos(turnedDegrees * Math.PI / 180), _sin = Math.Sin(turnedDegrees * Math.PI / 180);

    /// <summary>A point of the plan as the one below sees it.</summary>
    public (double X, double Y) Below(double x, double y) => (_right + _cos * x - _sin * y, _back + _sin * x + _cos * y);

    /// <summary>A point of the one below as the plan sees it.</summary>
    public (double X, double Y) Above(double x, double y)
    {
        double dx = x - _right, dy = y - _back;
        return (_cos * dx + _sin * dy, _cos * dy - _sin * dx);
    }
}
