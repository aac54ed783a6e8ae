using System.Globalization;
using Confectio.Cakes.Plans;

namespace Confectio.Cakes;

/// <summary>
/// The outline of a cake, a tin or a tier seen from above: its area, its length round, and what it becomes when a coat makes it larger.
/// </summary>
/// <remarks>
/// Of a cake with straight walls only two figures of the plan matter, whatever its shape: with the area A, the length round P and the
/// height h the top is A, the side is P·h and the volume is A·h (<see cref="CakeBody.Prism"/>).
/// Every shape is a class of its own, made by a method that is named as the trade names the shape. The family is closed: a coat has to know
/// how each one grows.
/// A plan stands on its centroid: <see cref="Outline"/> has it at 0, and <see cref="Contains(PlanShape)"/> puts one on the other.
/// </remarks>
public abstract class PlanShape
{
    /// <summary>The shortest length that a plan may have, cm.</summary>
    public const double MinimumCentimetres = 0.001;

    /// <summary>The longest length that a plan may have, cm.</summary>
    public const double MaximumCentimetres = 10_000;

    /// <summary>The most corners of a polygon.</summary>
    public const int MaximumPoints = 10_000;

    /// <summary>Where two plans touch, this share of the size decides for "inside".</summary>
    internal const double Touching = 1e-9;

    private const int MostLobes = 1000, Samples = 4096;

    private protected PlanShape()
    {
    }

    /// <summary>What it is called, such as <c>round</c> or <c>heart</c>.</summary>
    public abstract string Name { get; }

    /// <summary>The area A, cm².</summary>
    public double AreaSquareCentimetres { get; private protected init; }

    /// <summary>The length round P, cm.</summary>
    public double PerimeterCentimetres { get; private protected init; }

    /// <summary>How far it reaches from left to right, cm.</summary>
    public double WidthCentimetres { get; private protected init; }

    /// <summary>How far it reaches from front to back, cm.</summary>
    public double LengthCentimetres { get; private protected init; }

    /// <summary>Whether it has no notch: a heart, a petal and some polygons have one or more.</summary>
    public bool IsConvex { get; private protected init; }

    /// <summary>A round: A = π·d²/4, P = π·d.</summary>
    /// <param name="diameter">The diameter d, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: 20 cm across has 314.16 cm² and 62.83 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameter"/> is outside its range.</exception>
    public static PlanShape Round(CakeLength diameter) => new RoundPlan(diameter.Checked());

    /// <summary>A square with sharp corners.</summary>
    /// <param name="side">The side, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: a side of 20 cm has 400 cm² and 80 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="side"/> is outside its range.</exception>
    public static PlanShape Square(CakeLength side) => new SquarePlan(side.Checked());

    /// <summary>A rectangle, such as a sheet, with corners sharp or rounded: A = w·l − (4 − π)·r², P = 2(w + l) − (8 − 2π)·r.</summary>
    /// <param name="width">The width w, cm, from 0.001 to 10 000.</param>
    /// <param name="length">The length l, cm, from 0.001 to 10 000.</param>
    /// <param name="cornerRadius">
    /// The radius r of the corners, cm, from 0 to half of the shorter side; up to 1e-9 of that side it counts as 0.
    /// </param>
    /// <returns>The plan. Worked number: 33 by 23 cm with corners of 2 cm has 755.57 cm² and 108.57 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape Rectangle(CakeLength width, CakeLength length, CakeLength cornerRadius = default)
    {
        double across = width.Checked(), along = length.Checked();
        return new RectanglePlan(across, along, cornerRadius.Within(0, Math.Min(across, along) / 2));
    }

    /// <summary>
    /// An oval that is an ellipse: A = π·w·l/4, and P by the arithmetic-geometric mean, exact where the usual short formulas are not.
    /// </summary>
    /// <param name="width">The width w, cm, from 0.001 to 10 000.</param>
    /// <param name="length">The length l, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: 30 by 20 cm has 471.24 cm² and 79.33 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// A tin whose long sides are straight is no ellipse: it is a rectangle with corners of half its width. Source: Abramowitz and Stegun
    /// (1964), 17.6.
    /// </remarks>
    public static PlanShape Oval(CakeLength width, CakeLength length) => new OvalPlan(width.Checked() / 2, length.Checked() / 2);

    /// <summary>A regular polygon by its size across flats f: A = k·f²·tan(π/k)/4, P = k·f·tan(π/k).</summary>
    /// <param name="sides">The number k of sides, from 3 to 10 000.</param>
    /// <param name="across">
    /// The size f across flats, cm, from 0.001 to 10 000: twice the distance from the middle to a side. With an even number of sides that
    /// is the distance of two opposite sides; with an odd number nothing on the cake is that long.
    /// </param>
    /// <returns>The plan, with a side in front. Worked number: a hexagon 20 cm across flats has 346.41 cm² and 69.28 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape RegularPolygonAcrossFlats(int sides, CakeLength across)
    {
        Guard.InRange(sides, 3, MaximumPoints);
        return new RegularPlan(sides, across.Checked() / 2 / Math.Cos(Math.PI / sides));
    }

    /// <summary>A regular polygon by its size across corners.</summary>
    /// <param name="sides">The number k of sides, from 3 to 10 000.</param>
    /// <param name="across">
    /// The size across corners, cm, from 0.001 to 10 000: the diameter of the circle through the corners.
    /// </param>
    /// <returns>
    /// The plan, with a side in front. Worked number: a hexagon 20 cm across corners has 259.81 cm², a quarter less than one of 20 cm
    /// across flats: ask which of the two the seller of a tin means.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape RegularPolygonAcrossCorners(int sides, CakeLength across)
    {
        Guard.InRange(sides, 3, MaximumPoints);
        return new RegularPlan(sides, across.Checked() / 2);
    }

    /// <summary>A heart by its width, as tins are sold: a square on its corner with half a disc on each of its two far sides.</summary>
    /// <param name="width">The width, cm, from 0.001 to 10 000: 1.7071 sides of the square.</param>
    /// <returns>The plan. Worked number: 25.4 cm (10 in) wide has a square of 14.879 cm, 395.26 cm² and 76.50 cm round.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="width"/> is outside its range.</exception>
    public static PlanShape Heart(CakeLength width) => new HeartPlan(width.Checked() / (1 + Math.Sqrt(0.5)));

    /// <summary>
    /// A heart made of a square and a round cut in half: A = s²(1 + π/4), P = s(2 + π), width s(1 + 1/√2), length s(3/√8 + 1/2).
    /// </summary>
    /// <param name="side">The side s of the square and diameter of the round, cm, from 0.001 to 10 000.</param>
    /// <returns>The plan. Worked number: a side of 15 cm has 401.71 cm², 77.12 cm round, and is 25.61 cm wide.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="side"/> is outside its range.</exception>
    public static PlanShape HeartOfSquare(CakeLength side) => new HeartPlan(side.Checked());

    /// <summary>A petal tin: a regular polygon of k sides with half a disc on each: A = s²(k·cot(π/k)/4 + k·π/8), P = k·π·s/2.</summary>
    /// <param name="lobes">The number k of lobes, from 3 to 1000.</param>
    /// <param name="lobeWidth">The width s of a lobe from notch to notch, cm, from 0.001 to 10 000.</param>
    /// <returns>
    /// The plan, with a lobe at the back. With an even number of lobes it is s(cot(π/k) + 1) across. Worked number: 6 lobes of 10 cm have
    /// 495.43 cm² and 94.25 cm round, 27.32 cm across.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PlanShape Petal(int lobes, CakeLength lobeWidth)
    {
        Guard.InRange(lobes, 3, MostLobes);
        return new PetalPlan(lobes, lobeWidth.Checked() / 2);
    }

    /// <summary>Any outline of straight sides.</summary>
    /// <param name="points">
    /// From 3 to 10 000 corners in order, either way round, each coordinate from −10 000 to 10 000 cm. The last may repeat the first.
    /// </param>
    /// <returns>
    /// The plan, moved so that its centroid is at 0. Worked number: (0, 0), (30, 0), (30, 20), (10, 20), (10, 30) and (0, 30) enclose 700
    /// cm².
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="points"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// There are too few or too many corners, two in a row are one, the sides cross or touch one another, or they enclose nothing.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is outside its range.</exception>
    public static PlanShape Polygon(IEnumerable<PlanPoint> points) => PolygonPlan.Of(Guard.NotNull(points), nameof(points));

    /// <summary>The same shape in another size.</summary>
    /// <param name="factor">What every length is multiplied by, from 0.001 to 1000; areas by its square.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="factor"/> is outside its range, or the width or length of what comes out is.
    /// </exception>
    public PlanShape Scaled(double factor)
    {
        Guard.InRange(factor, 0.001, 1000);
        return Resized(Guard.InRange(factor, ScaleLimits.Low, ScaleLimits.High));
    }

    /// <summary>The plan grown outward by a thickness on all sides, with rounded corners.</summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <returns>
    /// What it becomes. Without notches, by Steiner: A + P·t + π·t² and P + 2π·t. Notches fill, and what would lie in them twice is counted
    /// once. Worked number: a square of 20 cm grown by 1 cm has 483.14 cm²; the area times thickness of its walls alone would make it 480.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    /// <remarks>
    /// Source: Steiner (1840), on parallel curves; notches by the boundary of the union of all that grows, so exact as well, however far
    /// they close.
    /// </remarks>
    internal OffsetPlan Offset(double thicknessCentimetres)
    {
        Guard.InRange(thicknessCentimetres, 0, 1000);
        (double area, double perimeter) = Grown(thicknessCentimetres);
        return new OffsetPlan(thicknessCentimetres, CoatEdge.Rounded, area, perimeter, !IsConvex
            && thicknessCentimetres > 0, isExact: true);
    }

    /// <summary>The plan grown outward by a thickness on all sides, with corners as sharp as its own.</summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <returns>
    /// What it becomes: every corner that turns by the angle τ has t²·(tan(τ/2) − τ/2) more than a rounded one. Worked number: a square of
    /// 20 cm grown by 1 cm has 484 cm². A polygon with notches is not exact: its sharp corners may run into one another.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    internal OffsetPlan SharpOffset(double thicknessCentimetres)
    {
        Guard.InRange(thicknessCentimetres, 0, 1000);
        (double area, double perimeter) = Grown(thicknessCentimetres, 0);
        return new OffsetPlan(thicknessCentimetres, CoatEdge.Sharp, area, perimeter, !IsConvex && thicknessCentimetres > 0, SharpIsExact);
    }

    /// <summary>
    /// What is left of the plan when a band of even width along its edge is taken away: the points that lie at least so far inside.
    /// </summary>
    /// <param name="thicknessCentimetres">The width t of the band, cm, from 0 to 1000.</param>
    /// <returns>
    /// What is left; nothing at last. Without notches and rounder than t it is A − P·t + π·t². What falls apart is counted together. Worked
    /// number: a square of 20 cm has 324 cm² inside a band of 1 cm, whose corners are sharp inside.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    /// <remarks>It is the floor of a dam of icing along the edge, and the path of a border that lies on the top.</remarks>
    internal InsetPlan Inset(double thicknessCentimetres)
    {
        (double area, double perimeter) = Shrunk(Guard.InRange(thicknessCentimetres, 0, 1000));
        return new InsetPlan(thicknessCentimetres, area, perimeter, AreaSquareCentimetres - area);
    }

    /// <summary>
    /// Whether another plan that stands on this one, centroid on centroid and not turned, lies wholly inside. Touching is inside.
    /// </summary>
    /// <param name="other">The other plan.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public bool Contains(PlanShape other) => Contains(other, default);

    /// <summary>Whether another plan that stands on this one lies wholly inside. Touching is inside.</summary>
    /// <param name="other">The other plan.</param>
    /// <param name="at">Where its centroid is, seen from this one's: to the right and to the back, each from −10 000 to 10 000 cm.</param>
    /// <param name="turnedDegrees">How far it is turned counter-clockwise, degrees, from −360 to 360.</param>
    /// <returns>
    /// Exact, within 1e-9 of the size, where one of the two is round (and the other no oval), and where both have straight sides only. Else
    /// at least 4096 points of the outline are looked at, which misses no part that sticks out by more than about a millionth of the size,
    /// or at a notch a thousandth.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public bool Contains(PlanShape other, PlanPoint at, double turnedDegrees = 0)
    {
        Guard.NotNull(other);
        Guard.InRange(at.XCentimetres, -MaximumCentimetres, MaximumCentimetres, nameof(at));
        Guard.InRange(at.YCentimetres, -MaximumCentimetres, MaximumCentimetres, nameof(at));
        Guard.InRange(turnedDegrees, -360, 360);
        return Holds(other, at.XCentimetres, at.YCentimetres, turnedDegrees, new OutlineWork());
    }

    /// <summary>
    /// The outline as a closed line of points, for drawing: counter-clockwise, the centroid at 0, the last point not the first again.
    /// </summary>
    /// <param name="points">How many points, from 3 to 1 000 000; at least one for each side or arc.</param>
    /// <returns>
    /// The points. All corners are among them; between corners they are spread over the arcs, or over the sides where there is no arc.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="points"/> is outside its range.</exception>
    public IReadOnlyList<PlanPoint> Outline(int points)
    {
        PlanPoint[] outline = new PlanPoint[Guard.InRange(points, Math.Max(3, EdgeCount), 1_000_000)];
        Trace(outline);
        return outline;
    }

    /// <summary>Its name and size, such as <c>heart, 25.4 × 23.22 cm</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Name}, {WidthCentimetres:0.##} × {LengthCentimetres:0.##} cm");

    /// <summary>How many lines and arcs the outline has; 0 where it has neither.</summary>
    internal abstract int EdgeCount { get; }

    /// <summary>Whether walls that slope may stand on it as on a round.</summary>
    internal virtual bool IsRound => false;

    /// <summary>Whether walls that slope may stand on it as on a square.</summary>
    internal virtual bool IsSquare => false;

    /// <summary>The larger of its width and length, cm.</summary>
    internal double AcrossCentimetres => Math.Max(WidthCentimetres, LengthCentimetres);

    /// <summary>Whether a sharp coat is exact: it is where no sharp corner is near a notch.</summary>
    internal virtual bool SharpIsExact => true;

    /// <summary>The factors that keep its width and length within the range of a length; 1 is always one of them.</summary>
    internal (double Low, double High) ScaleLimits =>
        (Math.Min(1, MinimumCentimetres / Math.Min(WidthCentimetres, LengthCentimetres)),
            Math.Max(1, MaximumCentimetres / AcrossCentimetres));

    /// <summary>The same shape in any size.</summary>
    internal abstract PlanShape Resized(double factor);

    /// <summary>Draws the outline.</summary>
    internal abstract void Draw(IOutlinePen pen);

    /// <summary>Its size in words: of most a width and a length.</summary>
    internal virtual string Size(ISizeWords words) => words.Pair(WidthCentimetres, LengthCentimetres);

    /// <summary>The area and the length round after growing by a thickness: without notches by Steiner.</summary>
    internal virtual (double Area, double Perimeter) Grown(double thickness, OutlineWork? work = null) =>
        (AreaSquareCentimetres + thickness * (PerimeterCentimetres + Math.PI * thickness), PerimeterCentimetres + 2 * Math.PI * thickness);

    /// <summary>The area and the length round after growing by a sharp coat and then by a rounded one.</summary>
    internal virtual (double Area, double Perimeter) Grown(double sharp, double rounded, OutlineWork? work = null) =>
        Grown(sharp + rounded, work);

    /// <summary>The area and the length round of what is left inside a band.</summary>
    internal (double Area, double Perimeter) Shrunk(double thickness, OutlineWork? work = null) =>
        thickness == 0 ? (AreaSquareCentimetres, PerimeterCentimetres) : Inside(thickness, work);

    /// <summary>Whether another plan lies inside, within a budget of work.</summary>
    internal bool Holds(PlanShape other, double right, double back, double turnedDegrees, OutlineWork work)
    {
        double tolerance = Touching * AcrossCentimetres;
        PlanPlace place = new(right, back, turnedDegrees);
        work.Take(EdgeCount + other.EdgeCount);
        if ((HoldsAtOnce(other, place, tolerance) ?? other.LiesAtOnceIn(this, right, back, tolerance)) is bool known)
            return known;
        foreach (PlanPoint point in other.Outline(Math.Max(Samples, 2 * other.EdgeCount)))
        {
            work.Take(EdgeCount);
            (double x, double y) = place.Below(point.XCentimetres, point.YCentimetres);
            if (!IsWithin(x, y, tolerance))
                return false;
        }
        // The tip of a notch of this one may stand between two points of the other.
        return KeepsNotchesOutOf(other, place, tolerance, work);
    }

    /// <summary>Whether a point is outside by no more than a distance, or, below 0, inside by at least as much.</summary>
    internal abstract bool IsWithin(double x, double y, double distance);

    /// <summary>How far its farthest point is from a point; <see langword="null"/> where that cannot be told exactly.</summary>
    internal abstract double? FarthestFrom(double x, double y);

    /// <summary>Whether a round about a point lies inside; <see langword="null"/> where that cannot be told exactly.</summary>
    internal abstract bool? HasRoom(double x, double y, double radius);

    /// <summary>Whether another plan lies inside, where this shape can tell without looking at its outline point by point.</summary>
    private protected virtual bool? HoldsAtOnce(PlanShape other, in PlanPlace place, double tolerance) => null;

    /// <summary>Whether it lies inside another plan, where this shape can tell without looking at its outline point by point.</summary>
    private protected virtual bool? LiesAtOnceIn(PlanShape outer, double right, double back, double tolerance) => null;

    /// <summary>Whether no tip of a notch of it lies inside another plan that stands on it.</summary>
    private protected virtual bool KeepsNotchesOutOf(PlanShape other, in PlanPlace place, double tolerance, OutlineWork work) => true;

    /// <summary>The area and the length round of what is left inside a band that is there.</summary>
    private protected abstract (double Area, double Perimeter) Inside(double thickness, OutlineWork? work);

    /// <summary>Fills in points of the outline.</summary>
    private protected abstract void Trace(PlanPoint[] outline);
}
