using System.Globalization;
using Confectio.Cakes.Bodies;
using Confectio.Cakes.Plans;

namespace Confectio.Cakes;

/// <summary>
/// The body of a cake or a tier that stands on a table: its top, its side, its volume, and what a coat of even thickness takes.
/// </summary>
/// <remarks>
/// A coat goes over the top and the side and ends on the table. The base is not coated, and 1 cm³ is 1 mL.
/// Every form is a class of its own, made by a method that is named as the trade names the form. The family is closed: a coat has to know
/// how each one grows.
/// </remarks>
public abstract class CakeBody
{
    private const double LeastBall = 2 * PlanShape.MinimumCentimetres;

    private protected CakeBody()
    {
    }

    /// <summary>What it is called, such as <c>heart</c>, <c>tapered round</c> or <c>ball</c>.</summary>
    public abstract string Name { get; }

    /// <summary>The height h, cm.</summary>
    public double HeightCentimetres { get; private protected init; }

    /// <summary>The outline on the table; <see langword="null"/> for a ball on no flat. Of a ring it is the outer round.</summary>
    public PlanShape? Footprint { get; private protected init; }

    /// <summary>
    /// The flat top on which another tier can stand; <see langword="null"/> where there is none, as on a ball, a cone or a ring.
    /// </summary>
    public PlanShape? Top { get; private protected init; }

    /// <summary>The area on the table, cm²; of a ring without its hole.</summary>
    public double FootprintAreaSquareCentimetres { get; private protected init; }

    /// <summary>The area of the flat top, cm²; 0 for a ball, whose dome is all side.</summary>
    public double TopAreaSquareCentimetres { get; private protected init; }

    /// <summary>The area of the side, cm²; of a ring the outer and the inner one.</summary>
    public double SideAreaSquareCentimetres { get; private protected init; }

    /// <summary>What a coat covers, cm²: top and side.</summary>
    public double CoatedAreaSquareCentimetres => TopAreaSquareCentimetres + SideAreaSquareCentimetres;

    /// <summary>The volume, mL.</summary>
    public double VolumeMillilitres { get; private protected init; }

    /// <summary>A body with straight walls on any plan: top A, side P·h, volume A·h.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="height">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: a round of 20 cm, 10 cm high: 314.16 cm², 628.32 cm² and 3141.6 mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="height"/> is outside its range.</exception>
    public static CakeBody Prism(PlanShape plan, CakeLength height) => new PrismBody(Guard.NotNull(plan), height.Checked());

    /// <summary>A round or square tier with sloping walls; <paramref name="top"/> null makes a cone or a pyramid.</summary>
    /// <param name="foot">The outline on the table: a round or a square.</param>
    /// <param name="top">
    /// The outline at the top, of the same shape; a round may be wider than its foot, a square may not. <see langword="null"/> for a point.
    /// </param>
    /// <param name="height">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>
    /// The body: round, with a side of π(R + r)·√((R − r)² + h²) and a volume of π·h(R² + R·r + r²)/3; or square, with 2(a + b)·√(((a −
    /// b)/2)² + h²) and h(a² + a·b + b²)/3. Worked number: rounds of 20 and 16 cm, 6 cm high: side 357.65 cm², volume 1533.1 mL.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="foot"/> is null.</exception>
    /// <exception cref="ArgumentException">The two are not both rounds or both squares.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody Tapered(PlanShape foot, PlanShape? top, CakeLength height)
    {
        CakeLength wide = CakeLength.FromCentimetres(Guard.NotNull(foot).WidthCentimetres);
        CakeLength above = CakeLength.FromCentimetres(top?.WidthCentimetres ?? 0);
        if (foot.IsRound && top is not { IsRound: false })
            return TaperedRound(wide, above, height);
        if (foot.IsSquare && top is not { IsSquare: false })
        {
            above.Within(0, wide.Centimetres, nameof(top));
            return TaperedSquare(wide, above, height);
        }
        throw new ArgumentException($"{nameof(top)} was {top?.ToString() ?? "a point"} and {nameof(foot)} {foot}; two rounds or two "
            + $"squares "
            + "were expected.", nameof(top));
    }

    /// <summary>A slice of a ball on its flat, such as a dome: dome 2π·R·h, volume π·h²(3R − h)/3.</summary>
    /// <param name="ball">The outline of the whole ball from above: a round of 2R, from 0.002 to 10 000 cm.</param>
    /// <param name="height">The height h, cm, from 0.001 to 2R.</param>
    /// <returns>The body. Worked number: 4 cm of a ball of 20 cm stand on 16 cm, with 251.33 cm² and 435.63 mL.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ball"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="ball"/> is no round.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody Dome(PlanShape ball, CakeLength height) =>
        Cap(CakeLength.FromCentimetres(RoundOf(ball, nameof(ball)) / 2), height);

    /// <summary>A ring with straight walls, from a tube tin: top π(R² − r²), sides 2π(R + r)·h.</summary>
    /// <param name="outline">The round outside.</param>
    /// <param name="hole">The round of the hole, smaller than that outside.</param>
    /// <param name="height">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 24 and 8 cm, 9 cm high: top 402.12 cm², sides 904.78 cm², volume 3619.1 mL.</returns>
    /// <exception cref="ArgumentNullException">An outline is null.</exception>
    /// <exception cref="ArgumentException">An outline is no round.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody Ring(PlanShape outline, PlanShape hole, CakeLength height)
    {
        double outer = RoundOf(outline, nameof(outline));
        CakeLength inner = CakeLength.FromCentimetres(RoundOf(hole, nameof(hole)));
        inner.Within(0, Math.BitDecrement(outer), nameof(hole));
        return Ring(CakeLength.FromCentimetres(outer), inner, height);
    }

    private static double RoundOf(PlanShape plan, string name) => Guard.NotNull(plan, name).IsRound ? plan.WidthCentimetres
        : throw new ArgumentException($"{name} was {plan}; a round was expected.", name);

    /// <summary>A round tier with sloping walls: side π(R + r)·√((R − r)² + h²), volume π·h(R² + R·r + r²)/3.</summary>
    /// <param name="bottomDiameter">The diameter at the table, cm, from 0.001 to 10 000.</param>
    /// <param name="topDiameter">The diameter at the top, cm, from 0 (a cone) to 10 000; a tier may widen upward.</param>
    /// <param name="height">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>
    /// The body. Worked number: 20 and 16 cm, 6 cm high: side 357.65 cm², volume 1533.1 mL; a straight one of 18 cm would have 1526.8 mL.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static CakeBody TaperedRound(CakeLength bottomDiameter, CakeLength topDiameter, CakeLength height) =>
        new TaperedRoundBody(bottomDiameter.Checked(), topDiameter.Within(0, PlanShape.MaximumCentimetres), height.Checked());

    /// <summary>A square tier with sloping walls: side 2(a + b)·√(((a − b)/2)² + h²), volume h(a² + a·b + b²)/3.</summary>
    /// <param name="bottomSide">The side a at the table, cm, from 0.001 to 10 000.</param>
    /// <param name="topSide">The side b at the top, cm, from 0 (a pyramid) to that at the table.</param>
    /// <param name="height">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 20 and 14 cm, 4 cm high: side 340 cm² and volume 1168 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static CakeBody TaperedSquare(CakeLength bottomSide, CakeLength topSide, CakeLength height) =>
        new TaperedSquareBody(bottomSide.Checked(), topSide.Within(0, bottomSide.Centimetres), height.Checked());

    /// <summary>A half ball on its flat: dome 2π·R², volume 2π·R³/3.</summary>
    /// <param name="diameter">The diameter, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 20 cm across: 628.32 cm² and 2094.4 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="diameter"/> is outside its range.</exception>
    public static CakeBody HalfBall(CakeLength diameter)
    {
        double across = diameter.Within(LeastBall, PlanShape.MaximumCentimetres);
        return new BallBody(across, across / 2);
    }

    /// <summary>A ball that stands on a flat: the whole less the cap under the flat.</summary>
    /// <param name="diameter">The diameter of the ball, cm, from 0.002 to 10 000.</param>
    /// <param name="flatDiameter">The diameter of the flat it stands on, cm, from 0 to that of the ball.</param>
    /// <returns>
    /// The body. Worked number: 20 cm on a flat of 12 cm is 18 cm high, with 1130.97 cm² and 4071.5 mL; on no flat 1256.6 cm² and 4188.8
    /// mL.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static CakeBody Ball(CakeLength diameter, CakeLength flatDiameter = default)
    {
        double across = diameter.Within(LeastBall, PlanShape.MaximumCentimetres), flat = flatDiameter.Within(0, across);
        return new BallBody(across, across / 2 + Math.Sqrt((across - flat) * (across + flat)) / 2);
    }

    /// <summary>A slice of a ball on its flat, such as a dome: dome 2π·R·h, volume π·h²(3R − h)/3.</summary>
    /// <param name="ballRadius">The radius R of the ball, cm, from 0.001 to 5000.</param>
    /// <param name="height">The height h, cm, from 0.001 to twice the radius.</param>
    /// <returns>The body. Worked number: 4 cm of a ball of 10 cm radius stand on 16 cm, with 251.33 cm² and 435.63 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static CakeBody Cap(CakeLength ballRadius, CakeLength height)
    {
        double diameter = 2 * ballRadius.Within(PlanShape.MinimumCentimetres, PlanShape.MaximumCentimetres / 2);
        return new BallBody(diameter, height.Within(PlanShape.MinimumCentimetres, diameter));
    }

    /// <summary>A ring with straight walls, from a tube tin: top π(R² − r²), sides 2π(R + r)·h.</summary>
    /// <param name="outerDiameter">The diameter outside, cm, from 0.001 to 10 000.</param>
    /// <param name="innerDiameter">The diameter of the hole, cm, from 0 to less than that outside.</param>
    /// <param name="height">The height h, cm, from 0.001 to 10 000.</param>
    /// <returns>The body. Worked number: 24 and 8 cm, 9 cm high: top 402.12 cm², sides 904.78 cm², volume 3619.1 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static CakeBody Ring(CakeLength outerDiameter, CakeLength innerDiameter, CakeLength height)
    {
        double outer = outerDiameter.Checked();
        return new RingBody(outer, innerDiameter.Within(0, Math.BitDecrement(outer)), height.Checked());
    }

    /// <summary>The same body in another size.</summary>
    /// <param name="factor">What every length is multiplied by, from 0.001 to 1000: areas by its square, the volume by its cube.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="factor"/> is outside its range, or a length of what comes out is.
    /// </exception>
    public CakeBody Scaled(double factor)
    {
        Guard.InRange(factor, 0.001, 1000);
        return Resized(Guard.InRange(factor, ScaleLimits.Low, ScaleLimits.High));
    }

    /// <summary>
    /// What lies below a height: what a tin of this form holds when it is filled so high, or a layer when the cake is cut there.
    /// </summary>
    /// <param name="heightCentimetres">The height z over the table, cm, from 0 to that of the body.</param>
    /// <returns>mL. Worked number: of a half ball of 20 cm the lower 5 cm have 1439.9 mL, more than two thirds.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="heightCentimetres"/> is outside its range.</exception>
    public double MillilitresBelow(double heightCentimetres) => Below(Guard.InRange(heightCentimetres, 0, HeightCentimetres));

    /// <summary>
    /// Area times thickness: the usual estimate of a coat, which leaves out the edges: low on any body without notches that does not widen
    /// upward.
    /// </summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <returns>mL. Worked number: a round of 20 cm, 12 cm high, with 0.6 cm: 640.885 mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="thicknessCentimetres"/> is outside its range.</exception>
    public double ThinCoatMillilitres(double thicknessCentimetres) =>
        CoatedAreaSquareCentimetres * Guard.InRange(thicknessCentimetres, 0, 1000);

    /// <summary>The volume of a coat of even thickness over top and side, down to the table.</summary>
    /// <param name="thicknessCentimetres">The thickness t, cm, from 0 to 1000.</param>
    /// <param name="edge">How it goes round the edges.</param>
    /// <returns>
    /// mL. For a plan without notches, rounded: A·t + h(P·t + π·t²) + π·P·t²/4 + 2π·t³/3. Worked number: a round of 20 cm, 12 cm high, with
    /// 0.6 cm: 672.674 mL rounded and 677.755 mL sharp; area times thickness is 5.4 % below the latter.
    /// A heart, a petal or a polygon with notches is integrated over the rounding of its top edge: to about 1e-9, or 1e-4 of the edge where
    /// a notch closes on the way. Sharp, a polygon with notches gets an upper bound (<see cref="PlanShape.SharpOffset"/>). The hole of a
    /// ring narrows and at last closes.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// Rounded is what is no farther than t from the body; the foot of a flat dome has a small bulge by that, and sharp it runs on to the
    /// table. Source: Steiner (1840) and Pappus.
    /// </remarks>
    public double CoatMillilitres(double thicknessCentimetres, CoatEdge edge = CoatEdge.Rounded) =>
        CoatMillilitres(Guard.InRange(thicknessCentimetres, 0, 1000), Guard.Defined(edge), new OutlineWork());

    /// <summary>Its name and size, such as <c>heart, 25.4 × 23.22 cm, 8 cm high</c>.</summary>
    public sealed override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{FormText}, {HeightCentimetres:0.##} cm high");

    /// <summary>
    /// The outline of the widest cut through it that lies flat: of a tapered one its wider end, of a ball its middle, of a ring the outer
    /// round.
    /// </summary>
    internal virtual PlanShape WidestCut =>
        Top is not null && Top.AreaSquareCentimetres > Footprint!.AreaSquareCentimetres ? Top : Footprint!;

    /// <summary>The area of the widest cut through it that lies flat, cm²; of a ring without its hole.</summary>
    internal virtual double WidestCutSquareCentimetres => Math.Max(FootprintAreaSquareCentimetres, TopAreaSquareCentimetres);

    /// <summary>How wide it looks: the larger side of its foot, of a ball that bulges over its foot the bulge.</summary>
    internal virtual double AcrossCentimetres => Footprint?.AcrossCentimetres ?? 0;

    /// <summary>Whether it has a top apart from its side, so that one of them can be coated alone.</summary>
    internal virtual bool HasTopApart => true;

    /// <summary>
    /// The outline along the edge of the top, where a border runs and a glaze ends; <see langword="null"/> where there is no such edge.
    /// </summary>
    internal virtual PlanShape? TopRim => Top;

    /// <summary>The outline whose notches a coat fills on its side; <see langword="null"/> where there are none.</summary>
    internal virtual PlanShape? Notched => null;

    /// <summary>The outline of a hole through it; <see langword="null"/> where there is none.</summary>
    internal virtual PlanShape? Hole => null;

    /// <summary>
    /// The outline of the top where it is seen inside or outside that of the foot from above; else <see langword="null"/>.
    /// </summary>
    internal virtual PlanShape? TopLine => null;

    /// <summary>How many corners or arcs its plan has, at least 1.</summary>
    internal int Corners => Math.Max(Footprint?.EdgeCount ?? 1, 1);

    /// <summary>How many straight pieces a drawing makes of its side.</summary>
    internal virtual int SidePieces => 1;

    /// <summary>The factors that keep every length of it within the range of a length.</summary>
    internal abstract (double Low, double High) ScaleLimits { get; }

    /// <summary>Its kind and its size without the height.</summary>
    private protected abstract string FormText { get; }

    /// <summary>It with no coat on it yet.</summary>
    internal abstract CoatedBody Uncoated();

    /// <summary>The outline at a height, of a ring the outer one; <see langword="null"/> where it is narrower than a plan may be.</summary>
    internal abstract PlanShape? PlanAt(double z);

    /// <summary>The same body in any size.</summary>
    private protected abstract CakeBody Resized(double factor);

    /// <summary>What lies below a height that it has.</summary>
    private protected abstract double Below(double z);

    /// <summary>A rounded coat.</summary>
    internal abstract double RoundedMillilitres(double t, OutlineWork work);

    /// <summary>A sharp coat.</summary>
    private protected abstract double SharpMillilitres(double t, OutlineWork work);

    /// <summary>The volume of a coat within a budget of work.</summary>
    internal double CoatMillilitres(double t, CoatEdge edge, OutlineWork work) =>
        edge == CoatEdge.Rounded ? RoundedMillilitres(t, work) : SharpMillilitres(t, work);

    /// <summary>What a tin of this form holds when it is filled to a height.</summary>
    internal virtual double HeldMillilitres(double height) => MillilitresBelow(Math.Min(height, HeightCentimetres));

    /// <summary>The area of a band of a width along the edges at a height: of a dam, in a ring along both of its edges.</summary>
    internal virtual double BandAt(double z, double width, OutlineWork work) =>
        PlanAt(z) is PlanShape plan ? plan.AreaSquareCentimetres - plan.Shrunk(width, work).Area : 0;

    /// <summary>
    /// From where to where it goes at a height when it is cut from left to right, where it goes from left to right at its widest.
    /// </summary>
    internal virtual (double From, double To)[] CutAt(double z, double left, double right)
    {
        double share = ShareAt(z);
        return [(share * left, share * right)];
    }

    /// <summary>Its size in words, the height apart.</summary>
    internal abstract string Size(ISizeWords words);

    /// <summary>How wide it is at a height, as a share of its widest.</summary>
    private protected virtual double ShareAt(double z) => (PlanAt(z)?.WidthCentimetres ?? 0) / WidestCut.WidthCentimetres;

    /// <summary>The limits of a factor that keep the least and the largest of lengths in range.</summary>
    private protected static (double Low, double High) Limits(double least, double largest) =>
        (Math.Min(1, PlanShape.MinimumCentimetres / least), Math.Max(1, PlanShape.MaximumCentimetres / largest));
}
