namespace Confectio.Cakes.Bodies;

/// <summary>
/// Straight walls on any plan with coats: how far sharp ones have moved the plan outward, the height with those, and what is rounded over
/// that.
/// </summary>
internal sealed class CoatedPrism : CoatedBody
{
    private readonly PlanShape _plan;
    private readonly double _sharp, _height;

    public CoatedPrism(PlanShape plan, double height)
        : this(plan, 0, height, 0)
    {
    }

    private CoatedPrism(PlanShape plan, double sharp, double height, double rounded)
        : base(rounded) => (_plan, _sharp, _height) = (plan, sharp, height);

    public override double HeightCentimetres => _height + RoundedCentimetres;

    public override double OutwardCentimetres => _sharp + RoundedCentimetres;

    public override double Millilitres(OutlineWork work) =>
        _plan.Grown(_sharp, 0, work).Area * _height + PrismBody.Rounded(_plan, _sharp, _height, RoundedCentimetres, work);

    public override (double Area, double Perimeter)? Foot(double outward, OutlineWork work) =>
        Moved(_plan, _sharp, RoundedCentimetres + outward, work);

    public override (double Area, double Perimeter)? TopEdge(double outward, OutlineWork work) => Foot(outward, work);

    public override void Draw(ISectionPen pen, double left, double right) =>
        pen.Walls(left - _sharp, right + _sharp, left - _sharp, right + _sharp, _height, RoundedCentimetres);

    private protected override CoatedBody Rounded(double thickness) => new CoatedPrism(_plan, _sharp, _height, thickness);

    private protected override CoatedBody Sharpened(double side, double top) => new CoatedPrism(_plan, _sharp + side, _height + top, 0);
}
