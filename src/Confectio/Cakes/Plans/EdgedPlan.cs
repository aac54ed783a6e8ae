namespace Confectio.Cakes.Plans;

/// <summary>A plan whose outline is made of straight lines and of arcs that bulge outward: every one but an oval.</summary>
internal abstract class EdgedPlan : PlanShape
{
    // Corners that turn less than this are smooth: it is what an angle of a few roundings looks like.
    private const double Smooth = 1e-9;

    // Counter-clockwise round the centroid.
    private readonly PlanEdge[] _edges;

    // What sharp corners have more than rounded ones, for a thickness of 1.
    private readonly double _cornerExcess;

    // How far a plan without notches can shrink before one of its edges is gone.
    private readonly double _keepsEdges;

    /// <param name="edges">The edges, counter-clockwise, round any point.</param>
    private protected EdgedPlan(IReadOnlyList<PlanEdge> edges)
    {
        _edges = Centred(edges);
        double left = double.MaxValue, bottom = double.MaxValue, right = -double.MaxValue, top = -double.MaxValue;
        double area = 0, perimeter = 0;
        bool isConvex = true;
        _keepsEdges = double.MaxValue;
        double before = _edges[^1].TurnTo(_edges[0]);
        for (int i = 0; i < _edges.Length; i++)
        {
            PlanEdge edge = _edges[i];
            area += edge.Area;
            perimeter += edge.Length;
            double turn = edge.TurnTo(_edges[(i + 1) % _edges.Length]);
            isConvex &= turn >= -Smooth;
            if (turn > Smooth)
                _cornerExcess += Math.Tan(turn / 2) - turn / 2;
            // Inside, a side loses t·tan(τ/2) at each corner, and a smooth arc its radius; an arc that ends in a corner is left to the
            // general way.
            double corners = Math.Tan(Math.Max(before, 0) / 2) + Math.Tan(Math.Max(turn, 0) / 2);
            double keeps = !edge.IsArc ? corners > 0 ? edge.Length / corners : double.MaxValue
                : Math.Max(before, turn) <= Smooth ? edge.Radius : 0;
            (_keepsEdges, before) = (Math.Min(_keepsEdges, keeps), turn);
            (double Left, double Bottom, double Right, double Top) box = edge.Box;
            (left, bottom) = (Math.Min(left, box.Left), Math.Min(bottom, box.Bottom));
            (right, top) = (Math.Max(right, box.Right), Math.Max(top, box.Top));
        }
        (AreaSquareCentimetres, PerimeterCentimetres, IsConvex) = (area, perimeter, isConvex);
        (WidthCentimetres, LengthCentimetres) = (right - left, top - bottom);
    }

    internal sealed override int EdgeCount => _edges.Length;

    /// <summary>A plan of this shape with other edges: its own in another size.</summary>
    private protected abstract PlanShape With(PlanEdge[] edges);

    internal sealed override PlanShape Resized(double factor) => With([.. _edges.Select(edge => edge.Scaled(factor))]);

    internal sealed override (double Area, double Perimeter) Grown(double thickness, OutlineWork? work = null) =>
        IsConvex || thickness == 0 ? base.Grown(thickness, work)
            : MovedOutline.Measure(_edges, thickness, AcrossCentimetres, work ?? new OutlineWork());

    // A corner that turns by τ has t²·(tan(τ/2) − τ/2) more when it is sharp, and 2t·(tan(τ/2) − τ/2) more of straight edge for the rounded
    // coat to grow from.
    internal sealed override (double Area, double Perimeter) Grown(double sharp, double rounded, OutlineWork? work = null)
    {
        (double area, double perimeter) = Grown(sharp + rounded, work);
        return (area + _cornerExcess * sharp * (sharp + 2 * rounded), perimeter + 2 * _cornerExcess * sharp);
    }

    internal sealed override void Draw(IOutlinePen pen)
    {
        (double startX, double startY) = _edges[0].At(0);
        pen.Start(startX, startY);
        foreach (PlanEdge edge in _edges)
        {
            if (!edge.IsArc)
            {
                pen.Line(edge.X1, edge.Y1);
                continue;
            }
            // Half an arc is at most half a round.
            (double middleX, double middleY) = edge.At(0.5);
            pen.Arc(edge.Radius, middleX, middleY);
            (double endX, double endY) = edge.At(1);
            pen.Arc(edge.Radius, endX, endY);
        }
    }

    private protected sealed override (double Area, double Perimeter) Inside(double thickness, OutlineWork? work)
    {
        // A band as wide as half of the plan leaves nothing.
        if (2 * thickness >= Math.Min(WidthCentimetres, LengthCentimetres))
            return (0, 0);
        if (IsConvex && thickness <= _keepsEdges)
        {
            double turning = Math.PI + _cornerExcess;
            return (AreaSquareCentimetres - thickness * (PerimeterCentimetres - turning * thickness),
                PerimeterCentimetres - 2 * turning * thickness);
        }
        (double area, double perimeter) = MovedOutline.Measure(_edges, -thickness, AcrossCentimetres, work ?? new OutlineWork());
        return (Math.Max(area, 0), perimeter);
    }

    private protected sealed override void Trace(PlanPoint[] outline)
    {
        bool arcs = Array.Exists(_edges, edge => edge.IsArc);
        double all = _edges.Sum(edge => arcs && !edge.IsArc ? 0 : edge.Length), passed = 0;
        int extra = outline.Length - _edges.Length, given = 0, next = 0;
        for (int i = 0; i < _edges.Length; i++)
        {
            PlanEdge edge = _edges[i];
            passed += arcs && !edge.IsArc ? 0 : edge.Length;
            int until = i == _edges.Length - 1 ? extra : (int)Math.Min(extra, Math.Round(passed / all * extra)), share = 1 + until - given;
            given = until;
            for (int j = 0; j < share; j++)
            {
                (double x, double y) = edge.At((double)j / share);
                outline[next++] = new PlanPoint(x, y);
            }
        }
    }

    internal sealed override double? FarthestFrom(double x, double y) => _edges.Max(edge => edge.FarthestFrom(x, y));

    internal sealed override bool? HasRoom(double x, double y, double radius) => IsWithin(x, y, -radius);

    // Most tiers stand well inside: the smallest round about this one's centroid that holds it lies inside the other.
    private protected override bool? LiesAtOnceIn(PlanShape outer, double right, double back, double tolerance) =>
        outer.HasRoom(right, back, _edges.Max(edge => edge.FarthestFrom(0, 0))) == true ? true : null;

    // The distance is measured where it matters: of most points it is enough that they are inside.
    internal sealed override bool IsWithin(double x, double y, double distance)
    {
        bool inside = false;
        foreach (ref readonly PlanEdge edge in _edges.AsSpan())
            inside ^= edge.Flips(x, y);
        if (inside == distance >= 0)
            return inside;
        double nearest = double.MaxValue;
        foreach (ref readonly PlanEdge edge in _edges.AsSpan())
            nearest = Math.Min(nearest, edge.DistanceTo(x, y));
        return inside ? -nearest <= distance : nearest <= distance;
    }

    private protected sealed override bool KeepsNotchesOutOf(PlanShape other, in PlanPlace place, double tolerance, OutlineWork work)
    {
        if (IsConvex)
            return true;
        for (int i = 0; i < _edges.Length; i++)
        {
            if (_edges[i].TurnTo(_edges[(i + 1) % _edges.Length]) >= -Smooth)
                continue;
            work.Take(other.EdgeCount);
            (double x, double y) = place.Above(_edges[i].X1, _edges[i].Y1);
            if (other.IsWithin(x, y, -tolerance * (1 + 1e-12)))
                return false;
        }
        return true;
    }

    private static PlanEdge[] Centred(IReadOnlyList<PlanEdge> edges)
    {
        double area = 0, x = 0, y = 0;
        foreach (PlanEdge edge in edges)
        {
            // The triangle to the chord, and what lies between chord and arc, whose centroid is on the middle ray of the arc.
            double triangle = 0.5 * (edge.X0 * edge.Y1 - edge.X1 * edge.Y0);
            area += triangle;
            x += triangle * (edge.X0 + edge.X1) / 3;
            y += triangle * (edge.Y0 + edge.Y1) / 3;
            if (!edge.IsArc)
                continue;
            double segment = 0.5 * edge.Radius * edge.Radius * (edge.Sweep - Math.Sin(edge.Sweep)), middle = edge.From + edge.Sweep / 2;
            double moment = 2 * Math.Pow(edge.Radius * Math.Sin(edge.Sweep / 2), 3) / 3;
            area += segment;
            x += segment * edge.CentreX + moment * Math.Cos(middle);
            y += segment * edge.CentreY + moment * Math.Sin(middle);
        }
        (x, y) = (x / area, y / area);
        double perimeter = edges.Sum(edge => edge.Length);
        // What is symmetrical stays so to the last digit.
        double dx = Math.Abs(x) < 1e-13 * perimeter ? 0 : -x, dy = Math.Abs(y) < 1e-13 * perimeter ? 0 : -y;
        PlanEdge[] moved = [.. edges.Select(edge => edge.Moved(dx, dy))];
        for (int i = 0; i < moved.Length; i++)
            moved[i] = moved[i].JoinedTo(moved[(i + 1) % moved.Length]);
        return moved;
    }
}
