using Confectio.Cakes.Plans;
using Confectio.Numerics;

namespace Confectio.Cakes.Bodies;

/// <summary>A body with straight walls on any plan.</summary>
internal sealed class PrismBody : CakeBody
{
    private readonly PlanShape _plan;

    public PrismBody(PlanShape plan, double height)
    {
        _plan = Footprint = Top = plan;
        HeightCentimetres = height;
        FootprintAreaSquareCentimetres = TopAreaSquareCentimetres = plan.AreaSquareCentimetres;
        SideAreaSquareCentimetres = plan.PerimeterCentimetres * height;
        VolumeMillilitres = plan.AreaSquareCentimetres * height;
    }

    public override string Name => _plan.Name;

    internal override PlanShape? Notched => _plan.IsConvex ? null : _plan;

    internal override (double Low, double High) ScaleLimits
    {
        get
        {
            ((double low, double high), (double Low, double High) plan) = (Limits(HeightCentimetres, HeightCentimetres), _plan.ScaleLimits);
            return (Math.Max(plan.Low, low), Math.Min(plan.High, high));
        }
    }

    private protected override string FormText => _plan.ToString();

    internal override CoatedBody Uncoated() => new CoatedPrism(_plan, HeightCentimetres);

    internal override PlanShape? PlanAt(double z) => _plan;

    internal override double RoundedMillilitres(double t, OutlineWork work) => Rounded(_plan, 0, HeightCentimetres, t, work);

    internal override string Size(ISizeWords words) => _plan.Size(words);

    /// <summary>A rounded coat over a part of a plan and a height that a sharp coat has made larger before.</summary>
    public static double Rounded(PlanShape plan, double sharp, double height, double t, OutlineWork work)
    {
        if (t == 0)
            return 0;
        (double area, double perimeter) = plan.Grown(sharp, 0, work);
        if (plan.IsConvex)
            return area * t + height * t * (perimeter + Math.PI * t) + t * t * (Math.PI * perimeter / 4 + 2 * Math.PI * t / 3);
        return height * (plan.Grown(sharp, t, work).Area - area) + OverTheTop(plan, sharp, t, work);
    }

    private protected override CakeBody Resized(double factor) => new PrismBody(_plan.Resized(factor), factor * HeightCentimetres);

    private protected override double Below(double z) => FootprintAreaSquareCentimetres * z;

    private protected override double SharpMillilitres(double t, OutlineWork work) =>
        _plan.Grown(t, 0, work).Area * (HeightCentimetres + t) - VolumeMillilitres;

    private protected override double ShareAt(double z) => 1;

    // At the height t·sin φ over the top the coat reaches t·cos φ beyond the plan.
    private static double OverTheTop(PlanShape plan, double sharp, double t, OutlineWork work) =>
        Quadrature.GaussLegendre(angle => t * Math.Cos(angle) * plan.Grown(sharp, t * Math.Cos(angle), work).Area, 0, Math.PI / 2, 24);
}
