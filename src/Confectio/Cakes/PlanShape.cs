using System.Globalization;
using Confectio.Numerics;

namespace Confectio.Cakes;

/// <summary>
/// The outline of a cake, a tin or a tier seen from above: its area, its length round, and what it becomes when a coat makes it larger.
/// </summary>
/// <remarks>
/// Of a cake with straight walls only two figures of the plan matter, whatever its shape: with the area A, the length round P and the height h the top is A,
/// the side is P·h and the volume is A·h (<see cref="CakeBody.Prism"/>).
/// A plan stands on its centroid: <see cref="Outline"/> has it at 0, and <see cref="Contains(PlanShape)"/> puts one on the other.
/// </remarks>
public sealed class PlanShape
{
    /// <summary>The shortest length that a plan may have, cm.</summary>
    public const double LeastCentimetres = 0.001;

    /// <summary>The longest length that a plan may have, cm.</summary>
    public const double MostCentimetres = 10_000;

    /// <summary>The most corners of a polygon.</summary>
    public const int MostPoints = 10_000;

    private const int MostLobes = 1000;

    // Corners that turn less than this are smooth: it is what an angle of a few roundings looks like.
    private const double Smooth = 1e-9;

    // Where two plans touch, this share of the size decides for "inside".
    private const double Touching = 1e-9;

    private const int Samples = 4096;

    // Counter-clockwise round the centroid; empty for an oval, which is its two half axes.
    private readonly PlanEdge[] _edges;
    private readonly double _halfWidth, _halfLength;

    // What sharp corners have more than rounded ones, for a thickness of 1.
    private readonly double _cornerExcess;

    // How far a plan without notches can shrink before one of its edges is gone.
    private readonly double _keepsEdges;

    private PlanShape(string name, double halfWidth, double halfLength)
    {
        Name = name;
        _edges = [];
        (_halfWidth, _halfLength) = (halfWidth, halfLength);
        AreaSquareCentimetres = Math.PI * halfWidth * halfLength;
        PerimeterCentimetres = Ellipse.Perimeter(halfWidth, halfLength);
        (WidthCentimetres, LengthCentimetres) = (2 * halfWidth, 2 * halfLength);
        IsConvex = true;
    }

    private PlanShape(string name, IReadOnlyList<PlanEdge> edges)
    {
        Name = name;
        _edges = Centred(edges);
        double left = double.MaxValue, bottom = double.MaxValue, right = -double.MaxValue, top = -double.MaxValue;
        IsConvex = true;
        _keepsEdges = double.MaxValue;
        double before = Turn(_edges[^1], _edges[0]);
        for (int i = 0; i < _edges.Length; i++)
        {
            PlanEdge edge = _edges[i];
            AreaSquareCentimetres += edge.Area;
            PerimeterCentimetres += edge.Length;
            double turn = Turn(edge, _edges[(i + 1) % _edges.Length]);
            IsConvex &= turn >= -Smooth;
            if (turn > Smooth)
                _cornerExcess += Math.Tan(turn / 2) - turn / 2;
            // Inside, a side loses t·tan(τ/2) at each corner, and a smooth arc its radius; an arc that ends in a corner is left to the general way.
            double corners = Math.Tan(Math.Max(before, 0) / 2) + Math.Tan(Math.Max(turn, 0) / 2);
            double keeps = !edge.IsArc ? corners > 0 ? edge.Length / corners : double.MaxValue : Math.Max(before, turn) <= Smooth ? edge.Radius : 0;
            (_keepsEdges, before) = (Math.Min(_keepsEdges, keeps), turn);
            (double Left, double Bottom, double Right, double Top) box = edge.Box;
            (left, bottom, right, top) = (Math.Min(left, box.Left), Math.Min(bottom, box.Bottom), Math.Max(right, box.Right), Math.Max(top, box.Top));
        }
        (WidthCentimetres, LengthCentimetres) = (right - left, top - bottom);
    }

    /// <summary>What kind of shape it is, such as <c>round</c> or <c>heart</c>.</summary>
    public string Name { get; }

    /// <summary>The area A, cm².</summary>
    public double AreaSquareCentimetres { get; }

    /// <summary>The length round P, cm.</summary>
    public double PerimeterCentimetres { get; }

    /// <summary>How far it reaches from left to right, cm.</summary>
    public double WidthCentimetres { get; }

    /// <summary>How far it reaches from front to back, cm.</summary>
    public double LengthCentimetres { get; }

    /// <summary>Whether it has no notch: a heart, a petal and some polygons have one or more.</summary>
    public bool IsConvex { get; }

    /// <summary>A round: A = π·d²/4, P = π·d.</summary>
    /// <param name="diameterCentimetres">The diameter d, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: 20 cm across has 314.16 cm² and 62.83 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameterCentimetres"/> is outside its range.</exception>
    public static PlanShape Round(double diameterCentimetres) => OfRound(Guard.InRange(diameterCentimetres, LeastCentimetres, MostCentimetres));

    /// <summary>A square with sharp corners.</summary>
    /// <param name="sideCentimetres">The side, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: a side of 20 cm has 400 cm² and 80 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sideCentimetres"/> is outside its range.</exception>
    public static PlanShape Square(double sideCentimetres) => OfSquare(Guard.InRange(sideCentimetres, LeastCentimetres, MostCentimetres));

    /// <summary>A rectangle, such as a sheet, with corners sharp or rounded: A = w·l − (4 − π)·r², P = 2(w + l) − (8 − 2π)·r.</summary>
    /// <param name="widthCentimetres">The width w, cm, from 0.001 to 10 000.</param>
    /// <param name="lengthCentimetres">The length l, cm, from 0.001 to 10 000.</param>
    /// <param name="cornerRadiusCentimetres">The radius r of the corners, cm, from 0 to half of the shorter side; up to 1e-9 of that side it counts as 0.</param>
    /// <returns>The plan. Worked number: 33 by 23 cm with corners of 2 cm has 755.57 cm² and 108.57 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape Rectangle(double widthCentimetres, double lengthCentimetres, double cornerRadiusCentimetres = 0)
    {
        Guard.InRange(widthCentimetres, LeastCentimetres, MostCentimetres);
        Guard.InRange(lengthCentimetres, LeastCentimetres, MostCentimetres);
        Guard.InRange(cornerRadiusCentimetres, 0, Math.Min(widthCentimetres, lengthCentimetres) / 2);
        return new PlanShape("rectangle", RectangleEdges(widthCentimetres, lengthCentimetres, cornerRadiusCentimetres));
    }

    /// <summary>An oval that is an ellipse: A = π·w·l/4, and P by the arithmetic-geometric mean, exact where the usual short formulas are not.</summary>
    /// <param name="widthCentimetres">The width w, cm, from 0.001 to 10 000.</param>
    /// <param name="lengthCentimetres">The length l, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: 30 by 20 cm has 471.24 cm² and 79.33 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>A tin whose long sides are straight is no ellipse: it is a rectangle with corners of half its width. Source: Abramowitz and Stegun (1964), 17.6.</remarks>
    public static PlanShape Oval(double widthCentimetres, double lengthCentimetres) => new("oval",
        Guard.InRange(widthCentimetres, LeastCentimetres, MostCentimetres) / 2, Guard.InRange(lengthCentimetres, LeastCentimetres, MostCentimetres) / 2);

    /// <summary>A regular polygon by its size across flats f: A = k·f²·tan(π/k)/4, P = k·f·tan(π/k).</summary>
    /// <param name="sides">The number k of sides, from 3 to 10 000.</param>
    /// <param name="acrossCentimetres">
    /// The size f across flats, cm, from 0.001 to 10 000: twice the distance from the middle to a side. With an even number of sides that is the distance of
    /// two opposite sides; with an odd number nothing on the cake is that long.
    /// </param>
    /// <returns>The plan, with a side in front. Worked number: a hexagon 20 cm across flats has 346.41 cm² and 69.28 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape RegularPolygonAcrossFlats(int sides, double acrossCentimetres)
    {
        Guard.InRange(sides, 3, MostPoints);
        return Regular(sides, Guard.InRange(acrossCentimetres, LeastCentimetres, MostCentimetres) / 2 / Math.Cos(Math.PI / sides));
    }

    /// <summary>A regular polygon by its size across corners.</summary>
    /// <param name="sides">The number k of sides, from 3 to 10 000.</param>
    /// <param name="acrossCentimetres">The size across corners, cm, from 0.001 to 10 000: the diameter of the circle through the corners.</param>
    /// <returns>
    /// The plan, with a side in front. Worked number: a hexagon 20 cm across corners has 259.81 cm², a quarter less than one of 20 cm across flats: ask
    /// which of the two the seller of a tin means.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape RegularPolygonAcrossCorners(int sides, double acrossCentimetres)
    {
        Guard.InRange(sides, 3, MostPoints);
        return Regular(sides, Guard.InRange(acrossCentimetres, LeastCentimetres, MostCentimetres) / 2);
    }

    /// <summary>A heart by its width, as tins are sold: a square on its corner with half a disc on each of its two far sides.</summary>
    /// <param name="widthCentimetres">The width, cm, from 0.001 to 10 000: 1.7071 sides of the square.</param>
    /// <returns>The plan. Worked number: 25.4 cm (10 in) wide has a square of 14.879 cm, 395.26 cm² and 76.50 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="widthCentimetres"/> is outside its range.</exception>
    public static PlanShape Heart(double widthCentimetres) =>
        new("heart", HeartEdges(Guard.InRange(widthCentimetres, LeastCentimetres, MostCentimetres) / (1 + Math.Sqrt(0.5))));

    /// <summary>A heart made of a square and a round cut in half: A = s²(1 + π/4), P = s(2 + π), width s(1 + 1/√2), length s(3/√8 + 1/2).</summary>
    /// <param name="sideCentimetres">The side s of the square and diameter of the round, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: a side of 15 cm has 401.71 cm², 77.12 cm round, and is 25.61 cm wide.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="sideCentimetres"/> is outside its range.</exception>
    public static PlanShape HeartOfSquare(double sideCentimetres) => new("heart", HeartEdges(Guard.InRange(sideCentimetres, LeastCentimetres, MostCentimetres)));

    /// <summary>A petal tin: a regular polygon of k sides with half a disc on each: A = s²(k·cot(π/k)/4 + k·π/8), P = k·π·s/2.</summary>
    /// <param name="lobes">The number k of lobes, from 3 to 1000.</param>
    /// <param name="lobeWidthCentimetres">The width s of a lobe from notch to notch, cm, from 0.001 to 10 000.</param>
    /// <returns>
    /// The plan, with a lobe at the back. With an even number of lobes it is s(cot(π/k) + 1) across. Worked number: 6 lobes of 10 cm have 495.43 cm² and
    /// 94.25 cm round, 27.32 cm across.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape Petal(int lobes, double lobeWidthCentimetres)
    {
        Guard.InRange(lobes, 3, MostLobes);
        double radius = Guard.InRange(lobeWidthCentimetres, LeastCentimetres, MostCentimetres) / 2, apothem = radius / Math.Tan(Math.PI / lobes);
        PlanEdge[] edges = new PlanEdge[lobes];
        for (int i = 0; i < lobes; i++)
        {
            double angle = Math.PI / 2 + 2 * Math.PI * i / lobes;
            edges[i] = PlanEdge.Arc(apothem * Math.Cos(angle), apothem * Math.Sin(angle), radius, angle - Math.PI / 2, Math.PI);
        }
        return new PlanShape("petal", edges);
    }

    /// <summary>Any outline of straight sides.</summary>
    /// <param name="points">
    /// From 3 to 10 000 corners in order, either way round, each coordinate from −10 000 to 10 000 cm. The last may repeat the first.
    /// </param>
    /// <returns>The plan, moved so that its centroid is at 0. Worked number: (0, 0), (30, 0), (30, 20), (10, 20), (10, 30) and (0, 30) enclose 700 cm².</returns>
    /// <exception cref="ArgumentNullException"><paramref name="points"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few or too many corners, two in a row are one, the sides cross or touch one another, or they enclose nothing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is outside its range.</exception>
    public static PlanShape Polygon(IEnumerable<PlanPoint> points)
    {
        List<PlanPoint> corners = [.. Guard.NotNull(points).Take(MostPoints + 2)];
        if (corners.Count > 1 && corners[0] == corners[^1])
            corners.RemoveAt(corners.Count - 1);
        if (corners.Count is < 3 or > MostPoints)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(points)} has {(corners.Count > MostPoints ? $"more than {MostPoints}" : $"{corners.Count}")} corners; it must have from 3 to {MostPoints}."), nameof(points));
        foreach (PlanPoint corner in corners)
        {
            Guard.InRange(corner.XCentimetres, -MostCentimetres, MostCentimetres, nameof(points));
            Guard.InRange(corner.YCentimetres, -MostCentimetres, MostCentimetres, nameof(points));
        }
        PlanEdge[] edges = PolygonEdges(corners);
        // About the first corner, so that a small plan far from 0 keeps its digits.
        PlanEdge[] near = [.. edges.Select(edge => edge.Moved(-edges[0].X0, -edges[0].Y0))];
        double area = near.Sum(edge => edge.Area), perimeter = near.Sum(edge => edge.Length);
        PolygonCheck.Refuse(near, nameof(points));
        if (!(Math.Abs(area) > 1e-12 * perimeter * perimeter && perimeter >= LeastCentimetres))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(points)} enclose {Math.Abs(area):R} cm², which is nothing."), nameof(points));
        if (area < 0)
        {
            corners.Reverse();
            near = [.. PolygonEdges(corners).Select(edge => edge.Moved(-edges[0].X0, -edges[0].Y0))];
        }
        return new PlanShape("polygon", near);
    }

    /// <summary>The same shape in another size.</summary>
    /// <param name="factor">What every length is multiplied by, from 0.001 to 1000; areas by its square.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is outside its range, or the width or length of what comes out is.</exception>
    public PlanShape Scaled(double factor)
    {
        Guard.InRange(factor, 0.001, 1000);
        return Resized(Guard.InRange(factor, ScaleLimits.Low, ScaleLimits.High));
    }

    /// <summary>The factors that keep its width and length within the range of a length; 1 is always one of them.</summary>
    internal (double Low, double High) ScaleLimits =>
        (Math.Min(1, LeastCentimetres / Math.Min(WidthCentimetres, LengthCentimetres)), Math.Max(1, MostCentimetres / Math.Max(WidthCentimetres, LengthCentimetres)));

    /// <summary>The same shape in any size.</summary>
    internal PlanShape Resized(double factor)
    {
        return _edges.Length == 0 ? new PlanShape(Name, factor * _halfWidth, factor * _halfLength)
            : new PlanShape(Name, [.. _edges.Select(edge => edge.Scaled(factor))]);
    }

    /// <summary>The plan grown outward by a thickness on all sides, with rounded corners.</summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <returns>
    /// What it becomes. Without notches, by Steiner: A + P·t + π·t² and P + 2π·t. Notches fill, and what would lie in them twice is counted once.
    /// Worked number: a square of 20 cm grown by 1 cm has 483.14 cm²; the area times thickness of its walls alone would make it 480.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    /// <remarks>Source: Steiner (1840), on parallel curves; notches by the boundary of the union of all that grows, so exact as well, however far they close.</remarks>
    public OffsetPlan Offset(double thicknessCentimetres)
    {
        Guard.InRange(thicknessCentimetres, 0, 1000);
        (double area, double perimeter) = Grown(thicknessCentimetres);
        return new OffsetPlan(thicknessCentimetres, CoatEdge.Rounded, area, perimeter, !IsConvex && thicknessCentimetres > 0, isExact: true);
    }

    /// <summary>The plan grown outward by a thickness on all sides, with corners as sharp as its own.</summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <returns>
    /// What it becomes: every corner that turns by the angle τ has t²·(tan(τ/2) − τ/2) more than a rounded one. Worked number: a square of 20 cm grown by
    /// 1 cm has 484 cm². A polygon with notches is not exact: its sharp corners may run into one another.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    public OffsetPlan SharpOffset(double thicknessCentimetres)
    {
        Guard.InRange(thicknessCentimetres, 0, 1000);
        (double area, double perimeter) = Grown(thicknessCentimetres, 0);
        return new OffsetPlan(thicknessCentimetres, CoatEdge.Sharp, area, perimeter, !IsConvex && thicknessCentimetres > 0, SharpIsExact);
    }

    /// <summary>What is left of the plan when a band of even width along its edge is taken away: the points that lie at least so far inside.</summary>
    /// <param name="thicknessCentimetres">The width t of the band, cm, from 0 to 1000.</param>
    /// <returns>
    /// What is left; nothing at last. Without notches and rounder than t it is A − P·t + π·t². What falls apart is counted together. Worked number: a square of 20 cm
    /// has 324 cm² inside a band of 1 cm, whose corners are sharp inside.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    /// <remarks>It is the floor of a dam of icing along the edge, and the path of a border that lies on the top.</remarks>
    public InsetPlan Inset(double thicknessCentimetres)
    {
        (double area, double perimeter) = Shrunk(Guard.InRange(thicknessCentimetres, 0, 1000));
        return new InsetPlan(thicknessCentimetres, area, perimeter, AreaSquareCentimetres - area);
    }

    /// <summary>Whether another plan that stands on this one, centroid on centroid and not turned, lies wholly inside. Touching is inside.</summary>
    /// <param name="other">The other plan.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public bool Contains(PlanShape other) => Contains(other, 0, 0, 0);

    /// <summary>Whether another plan that stands on this one lies wholly inside. Touching is inside.</summary>
    /// <param name="other">The other plan.</param>
    /// <param name="rightCentimetres">How far its centroid is to the right of this one's, cm, from −10 000 to 10 000.</param>
    /// <param name="backCentimetres">How far its centroid is further back, cm, from −10 000 to 10 000.</param>
    /// <param name="turnedDegrees">How far it is turned counter-clockwise, degrees, from −360 to 360.</param>
    /// <returns>
    /// Exact, within 1e-9 of the size, where one of the two is round (and the other no oval), and where both have straight sides only. Else at least 4096
    /// points of the outline are looked at, which misses no part that sticks out by more than about a millionth of the size, or at a notch a thousandth.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public bool Contains(PlanShape other, double rightCentimetres, double backCentimetres, double turnedDegrees = 0)
    {
        Guard.NotNull(other);
        Guard.InRange(rightCentimetres, -MostCentimetres, MostCentimetres);
        Guard.InRange(backCentimetres, -MostCentimetres, MostCentimetres);
        Guard.InRange(turnedDegrees, -360, 360);
        return Holds(other, rightCentimetres, backCentimetres, turnedDegrees, new OutlineWork());
    }

    /// <summary>The outline as a closed line of points, for drawing: counter-clockwise, the centroid at 0, the last point not the first again.</summary>
    /// <param name="points">How many points, from 3 to 1 000 000; at least one for each side or arc.</param>
    /// <returns>The points. All corners are among them; between corners they are spread over the arcs, or over the sides where there is no arc.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="points"/> is outside its range.</exception>
    public IReadOnlyList<PlanPoint> Outline(int points)
    {
        Guard.InRange(points, Math.Max(3, _edges.Length), 1_000_000);
        PlanPoint[] outline = new PlanPoint[points];
        if (_edges.Length == 0)
        {
            for (int i = 0; i < points; i++)
                outline[i] = new PlanPoint(_halfWidth * Math.Cos(2 * Math.PI * i / points), _halfLength * Math.Sin(2 * Math.PI * i / points));
            return outline;
        }
        bool arcs = Array.Exists(_edges, edge => edge.IsArc);
        double all = _edges.Sum(edge => arcs && !edge.IsArc ? 0 : edge.Length), passed = 0;
        int extra = points - _edges.Length, given = 0, next = 0;
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
        return outline;
    }

    /// <summary>The kind and the size, such as <c>heart, 25.4 × 23.22 cm</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name}, {WidthCentimetres:0.##} × {LengthCentimetres:0.##} cm");

    /// <summary>Whether a sharp coat is exact: a heart has one sharp corner and a petal none, far from their notches; a polygon's may run into one another.</summary>
    internal bool SharpIsExact => IsConvex || Name != "polygon";

    /// <summary>The edges, counter-clockwise; none of an oval.</summary>
    internal ReadOnlySpan<PlanEdge> Edges => _edges;

    /// <summary>The turn to the left from the end of one edge to the start of the next, radians, from −π to π.</summary>
    internal static double Turn(in PlanEdge edge, in PlanEdge next) => Math.IEEERemainder(next.StartDirection - edge.EndDirection, 2 * Math.PI);

    /// <summary>Whether another plan lies inside, within a budget of work.</summary>
    internal bool Holds(PlanShape other, double right, double back, double turnedDegrees, OutlineWork work)
    {
        double tolerance = Touching * Math.Max(WidthCentimetres, LengthCentimetres), cos = Math.Cos(turnedDegrees * Math.PI / 180), sin = Math.Sin(turnedDegrees * Math.PI / 180);
        work.Take(_edges.Length + other._edges.Length);
        if (IsRound && other._edges.Length > 0)
        {
            // In the other's own frame.
            double x = -(cos * right + sin * back), y = sin * right - cos * back;
            return other._edges.Max(edge => edge.FarthestFrom(x, y)) <= _edges[0].Radius + tolerance;
        }
        if (other.IsRound && _edges.Length > 0)
            return IsWithin(right, back, tolerance - other._edges[0].Radius);
        // Most tiers stand well inside: the smallest round about the other's centroid that holds it lies inside this one.
        if (other._edges.Length > 0 && _edges.Length > 0 && IsWithin(right, back, -other._edges.Max(edge => edge.FarthestFrom(0, 0))))
            return true;

        int samples = Math.Max(Samples, 2 * other._edges.Length);
        foreach (PlanPoint point in other.Outline(samples))
        {
            work.Take(_edges.Length);
            if (!IsWithin(right + cos * point.XCentimetres - sin * point.YCentimetres, back + sin * point.XCentimetres + cos * point.YCentimetres, tolerance))
                return false;
        }
        // The tip of a notch of this one may stand between two points of the other.
        for (int i = 0; i < _edges.Length; i++)
        {
            if (Turn(_edges[i], _edges[(i + 1) % _edges.Length]) >= -Smooth)
                continue;
            work.Take(other._edges.Length);
            double x = _edges[i].X1 - right, y = _edges[i].Y1 - back;
            if (other.IsWithin(cos * x + sin * y, cos * y - sin * x, -tolerance * (1 + 1e-12)))
                return false;
        }
        return true;
    }

    /// <summary>A round of any diameter: what a coat has made larger may be past the longest length of a plan.</summary>
    internal static PlanShape OfRound(double diameter) => new("round", [PlanEdge.Arc(0, 0, diameter / 2, -Math.PI / 2, 2 * Math.PI)]);

    /// <summary>A square of any side.</summary>
    internal static PlanShape OfSquare(double side) => new("square", RectangleEdges(side, side, 0));

    /// <summary>The area and the length round after growing by a thickness.</summary>
    internal (double Area, double Perimeter) Grown(double thickness, OutlineWork? work = null) => IsConvex || thickness == 0
        ? (AreaSquareCentimetres + thickness * (PerimeterCentimetres + Math.PI * thickness), PerimeterCentimetres + 2 * Math.PI * thickness)
        : MovedOutline.Measure(_edges, thickness, Math.Max(WidthCentimetres, LengthCentimetres), work ?? new OutlineWork());

    /// <summary>
    /// The area and the length round after growing by a sharp coat and then by a rounded one. A corner that turns by τ has t²·(tan(τ/2) − τ/2) more when it is
    /// sharp, and 2t·(tan(τ/2) − τ/2) more of straight edge for the rounded coat to grow from.
    /// </summary>
    internal (double Area, double Perimeter) Grown(double sharp, double rounded, OutlineWork? work = null)
    {
        (double area, double perimeter) = Grown(sharp + rounded, work);
        return (area + _cornerExcess * sharp * (sharp + 2 * rounded), perimeter + 2 * _cornerExcess * sharp);
    }

    /// <summary>The area and the length round of what is left inside a band.</summary>
    internal (double Area, double Perimeter) Shrunk(double thickness, OutlineWork? work = null)
    {
        if (thickness == 0)
            return (AreaSquareCentimetres, PerimeterCentimetres);
        if (_edges.Length == 0)
            return Ellipse.Inset(_halfWidth, _halfLength, thickness);
        // A band as wide as half of the plan leaves nothing.
        if (2 * thickness >= Math.Min(WidthCentimetres, LengthCentimetres))
            return (0, 0);
        if (IsConvex && thickness <= _keepsEdges)
        {
            double turning = Math.PI + _cornerExcess;
            return (AreaSquareCentimetres - thickness * (PerimeterCentimetres - turning * thickness), PerimeterCentimetres - 2 * turning * thickness);
        }
        (double area, double perimeter) = MovedOutline.Measure(_edges, -thickness, Math.Max(WidthCentimetres, LengthCentimetres), work ?? new OutlineWork());
        return (Math.Max(area, 0), perimeter);
    }

    private bool IsRound => _edges.Length == 1;

    // Whether a point is outside by no more than a distance, or, below 0, inside by at least as much. Of an oval, only about the distance. The distance is measured
    // where it matters: of most points it is enough that they are inside.
    private bool IsWithin(double x, double y, double distance)
    {
        if (_edges.Length == 0)
            return (PlanEdge.Hypotenuse(x / _halfWidth, y / _halfLength) - 1) * Math.Min(_halfWidth, _halfLength) <= distance;
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

    private static PlanShape Regular(int sides, double radius)
    {
        PlanPoint[] corners = new PlanPoint[sides];
        for (int i = 0; i < sides; i++)
        {
            double angle = -Math.PI / 2 + (2 * i - 1) * Math.PI / sides;
            corners[i] = new PlanPoint(radius * Math.Cos(angle), radius * Math.Sin(angle));
        }
        string name = sides switch { 3 => "triangle", 4 => "square", 5 => "pentagon", 6 => "hexagon", 8 => "octagon", _ => "regular polygon" };
        return new PlanShape(name, PolygonEdges(corners));
    }

    private static PlanEdge[] PolygonEdges(IReadOnlyList<PlanPoint> corners)
    {
        PlanEdge[] edges = new PlanEdge[corners.Count];
        for (int i = 0; i < edges.Length; i++)
        {
            PlanPoint from = corners[i], to = corners[(i + 1) % edges.Length];
            edges[i] = PlanEdge.Line(from.XCentimetres, from.YCentimetres, to.XCentimetres, to.YCentimetres);
        }
        return edges;
    }

    private static List<PlanEdge> RectangleEdges(double width, double length, double radius)
    {
        double x = width / 2, y = length / 2;
        // A rounding within what counts as touching is none: a sharp coat keeps such a corner sharp, and in another size it would be an arc of no length.
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

    private static PlanEdge[] HeartEdges(double side)
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
