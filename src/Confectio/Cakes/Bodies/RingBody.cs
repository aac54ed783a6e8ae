using System.Globalization;
using Confectio.Cakes.Plans;

namespace Confectio.Cakes.Bodies;

/// <summary>A ring with straight walls. Its top is flat, and yet nothing can stand on it.</summary>
internal sealed class RingBody : FormBody
{
    private readonly double _outer, _inner;

    /// <param name="outer">The diameter outside, cm.</param>
    /// <param name="inner">The diameter of the hole, cm; 0 where coats have closed it.</param>
    /// <param name="height">The height, cm.</param>
    public RingBody(double outer, double inner, double height)
    {
        (_outer, _inner, HeightCentimetres) = (outer, inner, height);
        double area = Math.PI * (outer / 2 * (outer / 2) - inner / 2 * (inner / 2));
        FootprintAreaSquareCentimetres = TopAreaSquareCentimetres = area;
        SideAreaSquareCentimetres = Math.PI * (outer + inner) * height;
        VolumeMillilitres = area * height;
        Footprint = RoundPlan.OrNone(outer);
    }

    public static ShapeWord Word { get; } = ShapeWord.OfBody("ring", ["outerDiameter", "innerDiameter", "height"], sizes =>
    {
        CakeLength height = sizes.Length("height");
        return CakeBody.Ring(sizes.Length("outerDiameter"), sizes.Length("innerDiameter"), height);
    });

    public override string Name => "ring";

    public override double HoleCentimetres => _inner;

    internal override PlanShape? TopRim => Footprint;

    internal override PlanShape? Hole => RoundPlan.OrNone(_inner);

    internal override (double Low, double High) ScaleLimits =>
        Limits(Math.Min(_outer, HeightCentimetres), Math.Max(_outer, HeightCentimetres));

    private protected override string FormText =>
        string.Create(CultureInfo.InvariantCulture, $"{Name}, {_outer:0.##} and {_inner:0.##} cm");

    internal override PlanShape? PlanAt(double z) => new RoundPlan(_outer);

    public override FormBody Grown(double side, double top) =>
        new RingBody(_outer + 2 * side, Math.Max(_inner - 2 * side, 0), HeightCentimetres + top);

    internal override double BandAt(double z, double width, OutlineWork work)
    {
        double outer = _outer / 2, inner = _inner / 2, half = (outer - inner) / 2;
        return width >= half ? FootprintAreaSquareCentimetres : 2 * Math.PI * width * (outer + inner);
    }

    internal override (double From, double To)[] CutAt(double z, double left, double right) => [(left, -_inner / 2), (_inner / 2, right)];

    public override void DrawCoated(ISectionPen pen, double widest, double left, double right, double rounded)
    {
        double outer = Footprint!.WidthCentimetres / 2, inner = _inner / 2;
        pen.Walls(-outer, -inner, -outer, -inner, HeightCentimetres, rounded);
        pen.Walls(inner, outer, inner, outer, HeightCentimetres, rounded);
    }

    internal override double RoundedMillilitres(double t, OutlineWork work)
    {
        double outer = _outer / 2, inner = _inner / 2, height = HeightCentimetres, left = Math.Max(inner - t, 0);
        // All that is inside the outer coat, less the hole that is left: beside the body, and over it, where a closed hole opens at a
        // height.
        double closed = t > inner ? Math.Sqrt((t - inner) * (t + inner)) : 0;
        double full = Math.PI * outer * outer * height + Math.PI * (2 * outer + t) * t * height + Rounding(outer, t, 0, t);
        return full - Math.PI * left * left * height - Rounding(inner, t, closed, t, -1) - VolumeMillilitres;
    }

    internal override string Size(ISizeWords words) => $"{words.Of(Footprint!.WidthCentimetres)}, hole {words.Of(_inner)}";

    private protected override CakeBody Resized(double factor) =>
        new RingBody(factor * _outer, factor * _inner, factor * HeightCentimetres);

    private protected override double Below(double z) => FootprintAreaSquareCentimetres * z;
}
