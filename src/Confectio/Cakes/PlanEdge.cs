namespace Confectio.Cakes;

/// <summary>
/// A straight line or an arc of an outline that runs counter-clockwise. All arcs turn to the left, so all of them bulge outward: an arc
/// that bulges inward does not occur in a plan, nor in what grows from it.
/// </summary>
internal readonly record struct PlanEdge
{
    private PlanEdge(double x0, double y0, double x1, double y1, double centreX, double centreY, double radius, double from, double sweep)
    {
        (X0, Y0, X1, Y1) = (x0, y0, x1, y1);
        (CentreX, CentreY, Radius, From, Sweep) = (centreX, centreY, radius, from, sweep);
    }

    public double X0 { get; }

    public double Y0 { get; }

    public double X1 { get; }

    public double Y1 { get; }

    public double CentreX { get; }

    public double CentreY { get; }

    /// <summary>The radius of an arc; 0 for a straight line.</summary>
    public double Radius { get; }

    /// <summary>The angle at which an arc begins, radians.</summary>
    public double From { get; }

    /// <summary>The angle that an arc covers, radians, above 0 to 2π.</summary>
    public double Sweep { get; }

    public bool IsArc => Radius > 0;

    public double Length => IsArc ? Radius * Sweep : Hypotenuse(X1 - X0, Y1 - Y0);

    /// <summary>The direction at the start, radians.</summary>
    public double StartDirection => IsArc ? From + Math.PI / 2 : Math.Atan2(Y1 - Y0, X1 - X0);

    /// <summary>The direction at the end, radians.</summary>
    public double EndDirection => IsArc ? From + Sweep + Math.PI / 2 : Math.Atan2(Y1 - Y0, X1 - X0);

    /// <summary>The turn to the left from the end of it to the start of the next edge, radians, from −π to π.</summary>
    public double TurnTo(in PlanEdge next) => Math.IEEERemainder(next.StartDirection - EndDirection, 2 * Math.PI);

    /// <summary>Its share of the area inside a closed outline, by Green: half the integral of x·dy − y·dx.</summary>
    public double Area => IsArc
        ? 0.5 * Radius * (Radius * Sweep
            + CentreX * (Math.Sin(From + Sweep) - Math.Sin(From)) - CentreY * (Math.Cos(From + Sweep) - Math.Cos(From)))
        : 0.5 * (X0 * Y1 - X1 * Y0);

    public (double Left, double Bottom, double Right, double Top) Box
    {
        get
        {
            double left = Math.Min(X0, X1), right = Math.Max(X0, X1), bottom = Math.Min(Y0, Y1), top = Math.Max(Y0, Y1);
            if (IsArc)
            {
                right = Covers(0) ? CentreX + Radius : right;
                top = Covers(Math.PI / 2) ? CentreY + Radius : top;
                left = Covers(Math.PI) ? CentreX - Radius : left;
                bottom = Covers(-Math.PI / 2) ? CentreY - Radius : bottom;
            }
            return (left, bottom, right, top);
        }
    }

    public static PlanEdge Line(double x0, double y0, double x1, double y1) => new(x0, y0, x1, y1, 0, 0, 0, 0, 0);

    public static PlanEdge Arc(double centreX, double centreY, double radius, double from, double sweep) => new(
        centreX + radius * Math.Cos(from), centreY + radius * Math.Sin(from), centreX + radius * Math.Cos(from + sweep), centreY
            + radius * Math.Sin(from + sweep),
        centreX, centreY, radius, from, sweep);

    /// <summary>
    /// The same edge, ending exactly where the next one starts: an arc ends a rounding off, and a ray through that gap would miss the
    /// outline.
    /// </summary>
    public PlanEdge JoinedTo(in PlanEdge next) => new(X0, Y0, next.X0, next.Y0, CentreX, CentreY, Radius, From, Sweep);

    public static double Hypotenuse(double x, double y) => Math.Sqrt(x * x + y * y);

    public PlanEdge Moved(double x, double y) => new(X0 + x, Y0 + y, X1 + x, Y1 + y, CentreX + x, CentreY + y, Radius, From, Sweep);

    public PlanEdge Scaled(double factor) =>
        new(X0 * factor, Y0 * factor, X1 * factor, Y1 * factor, CentreX * factor, CentreY * factor, Radius * factor, From, Sweep);

    /// <summary>The same edge, further out by a distance.</summary>
    public PlanEdge Outward(double distance)
    {
        if (IsArc)
            return Arc(CentreX, CentreY, Radius + distance, From, Sweep);
        double length = Length, x = (Y1 - Y0) / length * distance, y = (X0 - X1) / length * distance;
        return Line(X0 + x, Y0 + y, X1 + x, Y1 + y);
    }

    /// <summary>A point of it, from 0 at the start to 1 at the end.</summary>
    public (double X, double Y) At(double share)
    {
        if (!IsArc)
            return (X0 + share * (X1 - X0), Y0 + share * (Y1 - Y0));
        double angle = From + share * Sweep;
        return (CentreX + Radius * Math.Cos(angle), CentreY + Radius * Math.Sin(angle));
    }

    public PlanEdge Part(double from, double to)
    {
        if (IsArc)
            return Arc(CentreX, CentreY, Radius, From + from * Sweep, (to - from) * Sweep);
        (double x0, double y0) = At(from);
        (double x1, double y1) = At(to);
        return Line(x0, y0, x1, y1);
    }

    /// <summary>
    /// How far along an arc an angle is, as a share of its sweep: 0 to 1 on it, and for an angle off it the nearer side of that range.
    /// </summary>
    public double ShareOfAngle(double angle)
    {
        double past = Math.IEEERemainder(angle - From, 2 * Math.PI);
        if (past < 0)
            past += 2 * Math.PI;
        // Off the arc: count it before the start if that is nearer than the end.
        if (past > Sweep && past - Sweep > 2 * Math.PI - past)
            past -= 2 * Math.PI;
        return past / Sweep;
    }

    public double DistanceTo(double x, double y)
    {
        if (IsArc)
        {
            double share = ShareOfAngle(Math.Atan2(y - CentreY, x - CentreX));
            if (share is >= 0 and <= 1)
                return Math.Abs(Hypotenuse(x - CentreX, y - CentreY) - Radius);
            return Math.Min(Hypotenuse(x - X0, y - Y0), Hypotenuse(x - X1, y - Y1));
        }
        double dx = X1 - X0, dy = Y1 - Y0, along = Math.Clamp(((x - X0) * dx + (y - Y0) * dy) / (dx * dx + dy * dy), 0, 1);
        return Hypotenuse(x - X0 - along * dx, y - Y0 - along * dy);
    }

    /// <summary>
    /// Whether it is nearer to a point than a distance. No point of an arc is nearer than its whole circle, which is found without an
    /// angle.
    /// </summary>
    public bool IsNearer(double x, double y, double distance) =>
        (!IsArc || Math.Abs(Hypotenuse(x - CentreX, y - CentreY) - Radius) < distance) && DistanceTo(x, y) < distance;

    /// <summary>The distance of its farthest point.</summary>
    public double FarthestFrom(double x, double y)
    {
        double farthest = Math.Max(Hypotenuse(x - X0, y - Y0), Hypotenuse(x - X1, y - Y1));
        // The far side of the circle is opposite to the point.
        return IsArc && Covers(Math.Atan2(CentreY - y, CentreX - x)) ? Hypotenuse(x - CentreX, y - CentreY) + Radius : farthest;
    }

    /// <summary>
    /// Whether a ray to the right from a point crosses the chord, or the point lies between chord and arc, but not both: each turns inside
    /// into outside.
    /// </summary>
    public bool Flips(double x, double y)
    {
        bool crosses = Y0 > y != Y1 > y && x < X0 + (y - Y0) / (Y1 - Y0) * (X1 - X0);
        return crosses ^ (IsArc && Hypotenuse(x - CentreX, y - CentreY) < Radius && IsBeyondChord(x, y, crosses));
    }

    // To the right of the chord. The answer agrees with that on the ray to the last digit: both turn over on the chord, which is inside the
    // plan.
    private bool IsBeyondChord(double x, double y, bool crosses)
    {
        if (Sweep >= 2 * Math.PI)
            return true;
        if (Y0 > y != Y1 > y)
            return Y1 > Y0 ? !crosses : crosses;
        // A ray through a corner counts as just above it, so a point on a level chord does too.
        return Y0 == Y1 && y == Y0 ? X1 < X0 : (X1 - X0) * (y - Y0) - (Y1 - Y0) * (x - X0) < 0;
    }

    private bool Covers(double angle) => ShareOfAngle(angle) is >= 0 and <= 1;
}
