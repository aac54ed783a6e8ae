using Confectio.Cakes.Plans;

namespace Confectio.Cakes.Bodies;

/// <summary>A frustum of a cone, or a cone.</summary>
internal sealed class TaperedRoundBody : TaperedBody
{
    public TaperedRoundBody(double lower, double upper, double height)
        : base(lower, upper, height)
    {
        double lowerRadius = lower / 2, upperRadius = upper / 2;
        FootprintAreaSquareCentimetres = Math.PI * lowerRadius * lowerRadius;
        TopAreaSquareCentimetres = Math.PI * upperRadius * upperRadius;
        SideAreaSquareCentimetres = Math.PI * (lowerRadius + upperRadius) * PlanEdge.Hypotenuse((lower - upper) / 2, height);
        VolumeMillilitres = Frustum(lowerRadius, upperRadius, height);
    }

    public static ShapeWord Word { get; } = ShapeWord.OfBody("tapered-round", ["bottomDiameter", "topDiameter", "height"], sizes =>
    {
        CakeLength height = sizes.Length("height");
        return CakeBody.TaperedRound(sizes.Length("bottomDiameter"), sizes.Length("topDiameter"), height);
    });

    public override string Name => "tapered round";

    internal override double RoundedMillilitres(double t, OutlineWork work)
    {
        double lower = Lower / 2, upper = Upper / 2, height = HeightCentimetres, slant = PlanEdge.Hypotenuse(lower - upper, height);
        double rise = t * (lower - upper) / slant, outward = t * height / slant;
        // From the table: the rounding of the foot (where it narrows), the side moved outward, the rounding of the top edge. Where it
        // widens, the side and at last the rounding are cut off by the table.
        double sideFrom = Math.Max(rise, 0), sideTo = Math.Max(height + rise, 0);
        double At(double z) => lower + outward + (upper - lower) * (z - rise) / height;
        double volume = rise > 0 ? Rounding(lower, t, 0, rise) : 0;
        if (sideTo > sideFrom)
            volume += Frustum(At(sideFrom), At(sideTo), sideTo - sideFrom);
        return volume + Rounding(upper, t, sideTo - height, t) - VolumeMillilitres;
    }

    private protected override double Below(double z) => Frustum(Lower / 2, WidthAt(z) / 2, z);

    private protected override PlanShape? CutOf(double width) => RoundPlan.OrNone(width);

    private protected override FormBody With(double lower, double upper, double height) => new TaperedRoundBody(lower, upper, height);

    private static double Frustum(double lowerRadius, double upperRadius, double height) =>
        Math.PI * height * (lowerRadius * lowerRadius + lowerRadius * upperRadius + upperRadius * upperRadius) / 3;
}
