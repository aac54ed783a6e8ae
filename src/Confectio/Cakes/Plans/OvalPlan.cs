using Confectio.Numerics;

namespace Confectio.Cakes.Plans;

/// <summary>An oval that is an ellipse: two half axes, and no edge that is a line or an arc.</summary>
internal sealed class OvalPlan : PlanShape
{
    private readonly double _halfWidth, _halfLength;

    public OvalPlan(double halfWidth, double halfLength)
    {
        (_halfWidth, _halfLength) = (halfWidth, halfLength);
        AreaSquareCentimetres = Math.PI * halfWidth * halfLength;
        PerimeterCentimetres = Ellipse.Perimeter(halfWidth, halfLength);
        (WidthCentimetres, LengthCentimetres) = (2 * halfWidth, 2 * halfLength);
        IsConvex = true;
    }

    public static ShapeWord Word { get; } = ShapeWord.OfPlan("oval", ["width", "length"],
        sizes => PlanShape.Oval(sizes.Length("width"), sizes.Length("length")));

    public override string Name => "oval";

    internal override int EdgeCount => 0;

    internal override PlanShape Resized(double factor) => new OvalPlan(factor * _halfWidth, factor * _halfLength);

    internal override void Draw(IOutlinePen pen)
    {
        pen.Start(_halfWidth, 0);
        pen.HalfOval(_halfWidth, _halfLength, -_halfWidth, 0);
        pen.HalfOval(_halfWidth, _halfLength, _halfWidth, 0);
    }

    // About the distance only, which at 0 is exact.
    internal override bool IsWithin(double x, double y, double distance) =>
        (PlanEdge.Hypotenuse(x / _halfWidth, y / _halfLength) - 1) * Math.Min(_halfWidth, _halfLength) <= distance;

    // Neither has a closed form.
    internal override double? FarthestFrom(double x, double y) => null;

    internal override bool? HasRoom(double x, double y, double radius) => null;

    private protected override (double Area, double Perimeter) Inside(double thickness, OutlineWork? work) =>
        Ellipse.Inset(_halfWidth, _halfLength, thickness);

    private protected override void Trace(PlanPoint[] outline)
    {
        for (int i = 0; i < outline.Length; i++)
        {
            double angle = 2 * Math.PI * i / outline.Length;
            outline[i] = new PlanPoint(_halfWidth * Math.Cos(angle), _halfLength * Math.Sin(angle));
        }
    }
}
