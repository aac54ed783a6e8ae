namespace Confectio.Cakes.Bodies;

/// <summary>A body that sharp coats have made into a larger one of its form, and what is rounded over that.</summary>
internal sealed class CoatedForm : CoatedBody
{
    private readonly FormBody _bare, _core;

    /// <param name="bare">The bare body.</param>
    /// <param name="core">What sharp coats have made of it.</param>
    /// <param name="rounded">The thickness of the rounded coats that came last, cm.</param>
    public CoatedForm(FormBody bare, FormBody core, double rounded)
        : base(rounded) => (_bare, _core) = (bare, core);

    public override double HeightCentimetres => _core.HeightCentimetres + RoundedCentimetres;

    public override double OutwardCentimetres => (_core.CoatedFromCentimetres - _bare.CoatedFromCentimetres) / 2 + RoundedCentimetres;

    public override double HoleCentimetres => Math.Max(_core.HoleCentimetres - 2 * RoundedCentimetres, 0);

    public override double Millilitres(OutlineWork work) => _core.VolumeMillilitres + _core.RoundedMillilitres(RoundedCentimetres, work);

    public override (double Area, double Perimeter)? Foot(double outward, OutlineWork work) =>
        _core.CoatedFoot(RoundedCentimetres, outward, work);

    public override (double Area, double Perimeter)? TopEdge(double outward, OutlineWork work) =>
        _core.TopRim is PlanShape rim ? Moved(rim, 0, RoundedCentimetres + outward, work) : null;

    public override void Draw(ISectionPen pen, double left, double right) =>
        _core.DrawCoated(pen, _bare.WidestCut.WidthCentimetres, left, right, RoundedCentimetres);

    private protected override CoatedBody Rounded(double thickness) => new CoatedForm(_bare, _core, thickness);

    private protected override CoatedBody Sharpened(double side, double top) => new CoatedForm(_bare, _core.Grown(side, top), 0);
}
