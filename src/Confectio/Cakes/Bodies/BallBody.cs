using System.Globalization;
using Confectio.Cakes.Plans;

namespace Confectio.Cakes.Bodies;

/// <summary>A ball or a part of one on a flat, by its diameter and what is over the table. It has no top apart from its side.</summary>
internal sealed class BallBody : FormBody
{
    private readonly double _diameter;

    public BallBody(double diameter, double height)
    {
        (_diameter, HeightCentimetres) = (diameter, height);
        FootprintAreaSquareCentimetres = Math.PI * height * (diameter - height);
        SideAreaSquareCentimetres = Math.PI * diameter * height;
        VolumeMillilitres = Slice(diameter / 2, height);
        Footprint = RoundPlan.OrNone(2 * Math.Sqrt(FootprintAreaSquareCentimetres / Math.PI));
    }

    public static ShapeWord Word { get; } = ShapeWord.OfBody("ball", ["diameter", "flatDiameter"],
        sizes => CakeBody.Ball(sizes.Length("diameter"), sizes.Length("flatDiameter", default)));

    public static ShapeWord HalfWord { get; } =
        ShapeWord.OfBody("half-ball", ["diameter"], sizes => CakeBody.HalfBall(sizes.Length("diameter")));

    public static ShapeWord CapWord { get; } = ShapeWord.OfBody("cap", ["ballRadius", "height"], sizes =>
    {
        CakeLength height = sizes.Length("height");
        return CakeBody.Cap(sizes.Length("ballRadius"), height);
    });

    public override string Name => HeightCentimetres == _diameter / 2 ? "half ball" : HeightCentimetres < _diameter / 2 ? "cap" : "ball";

    public override double CoatedFromCentimetres => _diameter;

    internal override PlanShape WidestCut => IsHalfAtLeast ? new RoundPlan(_diameter) : Footprint!;

    internal override double WidestCutSquareCentimetres =>
        IsHalfAtLeast ? Math.PI * _diameter * _diameter / 4 : FootprintAreaSquareCentimetres;

    internal override double AcrossCentimetres => Math.Max(base.AcrossCentimetres, Math.Min(_diameter, 2 * HeightCentimetres));

    internal override bool HasTopApart => false;

    internal override int SidePieces => 8;

    internal override (double Low, double High) ScaleLimits =>
        Limits(Math.Min(_diameter, HeightCentimetres), Math.Max(_diameter, HeightCentimetres));

    private protected override string FormText => string.Create(CultureInfo.InvariantCulture, $"{Name}, {_diameter:0.##} cm");

    // A cap may be no higher than its ball, so half of it is where the widest cut leaves the foot.
    private bool IsHalfAtLeast => HeightCentimetres >= _diameter / 2;

    internal override PlanShape? PlanAt(double z) =>
        RoundPlan.OrNone(2 * Math.Sqrt(Math.Max((HeightCentimetres - z) * (_diameter - HeightCentimetres + z), 0)));

    public override FormBody Grown(double side, double top) => new BallBody(_diameter + 2 * side, HeightCentimetres + top);

    // The mould of a ball stands on its dome.
    internal override double HeldMillilitres(double height) =>
        Math.Max(VolumeMillilitres - MillilitresBelow(Math.Max(HeightCentimetres - height, 0)), 0);

    public override (double Area, double Perimeter)? CoatedFoot(double rounded, double outward, OutlineWork work)
    {
        // The grown ball, cut by the table as far below or above its middle as the ball itself; a cap ends in a rounding.
        double radius = _diameter / 2, above = HeightCentimetres - radius;
        double foot = above >= 0 ? Math.Sqrt(Math.Max((radius + rounded) * (radius + rounded) - above * above, 0))
            : Math.Sqrt(Math.Max(radius * radius - above * above, 0)) + rounded;
        double all = foot + outward;
        return foot > 0 ? (Math.PI * all * all, 2 * Math.PI * all) : null;
    }

    public override void DrawCoated(ISectionPen pen, double widest, double left, double right, double rounded) =>
        pen.Dome(_diameter / 2, HeightCentimetres, rounded);

    internal override double RoundedMillilitres(double t, OutlineWork work)
    {
        double radius = _diameter / 2;
        if (HeightCentimetres >= radius)
            return Slice(radius + t, HeightCentimetres + t) - VolumeMillilitres;
        double cosine = (radius - HeightCentimetres) / radius, sine = Math.Sqrt(1 - cosine * cosine), foot = radius * sine;
        // The shell over the dome, and at the foot the part of a torus from the last ray of the ball down to the table.
        double shell = 2 * Math.PI * (1 - cosine) * t * (radius * radius + radius * t + t * t / 3);
        return shell + 2 * Math.PI * t * t * (foot * Math.Asin(cosine) / 2 + t * cosine / 3);
    }

    internal override string Size(ISizeWords words) => words.Of(WidestCut.WidthCentimetres);

    private protected override CakeBody Resized(double factor) => new BallBody(factor * _diameter, factor * HeightCentimetres);

    private protected override double Below(double z) => VolumeMillilitres - Slice(_diameter / 2, HeightCentimetres - z);

    private static double Slice(double radius, double height) => Math.PI * height * height * (3 * radius - height) / 3;
}
