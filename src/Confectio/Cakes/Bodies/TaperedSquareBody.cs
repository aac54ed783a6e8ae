using Confectio.Cakes.Plans;

namespace Confectio.Cakes.Bodies;

/// <summary>A frustum of a square pyramid, or a pyramid.</summary>
internal sealed class TaperedSquareBody : TaperedBody
{
    public TaperedSquareBody(double lower, double upper, double height)
        : base(lower, upper, height)
    {
        FootprintAreaSquareCentimetres = lower * lower;
        TopAreaSquareCentimetres = upper * upper;
        SideAreaSquareCentimetres = 2 * (lower + upper) * PlanEdge.Hypotenuse((lower - upper) / 2, height);
        VolumeMillilitres = Frustum(lower, upper, height);
    }

    public static ShapeWord Word { get; } = ShapeWord.OfBody("tapered-square", ["bottomSide", "topSide", "height"], sizes =>
    {
        CakeLength height = sizes.Length("height");
        return CakeBody.TaperedSquare(sizes.Length("bottomSide"), sizes.Length("topSide"), height);
    });

    public override string Name => "tapered square";

    internal override double RoundedMillilitres(double t, OutlineWork work)
    {
        // Faces, edges and corners apart. Up from the table the directions at the corners make up a half ball.
        double half = (Lower - Upper) / 2, lean = Math.Atan2(half, HeightCentimetres), sine = Math.Sin(lean);
        double slopes = 4 * Math.Sqrt(HeightCentimetres * HeightCentimetres + 2 * half * half) * Math.Acos(sine * sine);
        double edges = 4 * Upper * (Math.PI / 2 - lean) + 4 * Lower * lean + slopes;
        return t * (CoatedAreaSquareCentimetres + t * (edges / 2 + 2 * Math.PI * t / 3));
    }

    private protected override double Below(double z) => Frustum(Lower, WidthAt(z), z);

    private protected override PlanShape? CutOf(double width) => width >= PlanShape.MinimumCentimetres ? new SquarePlan(width) : null;

    private protected override FormBody With(double lower, double upper, double height) => new TaperedSquareBody(lower, upper, height);

    private static double Frustum(double lower, double upper, double height) =>
        height * (lower * lower + lower * upper + upper * upper) / 3;
}
