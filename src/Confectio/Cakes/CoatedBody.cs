namespace Confectio.Cakes;

/// <summary>
/// A body with the coats that are on it so far. A sharp coat makes a larger body of the same kind; a rounded one lies over it, and a sharp one over that fills
/// its edges out.
/// </summary>
internal sealed class CoatedBody
{
    // Of straight walls the plan, how far a sharp coat made it larger, and the height with it; of all others a body that is larger.
    private readonly PlanShape? _plan;
    private readonly CakeBody _body;
    private readonly double _sharp, _height, _rounded;

    public CoatedBody(CakeBody body)
        : this(body, body.StraightPlan, 0, body.HeightCentimetres, 0)
    {
    }

    private CoatedBody(CakeBody body, PlanShape? plan, double sharp, double height, double rounded)
    {
        (_body, _plan, _sharp, _height, _rounded) = (body, plan, sharp, height, rounded);
    }

    /// <summary>The volume of the body and its coats. It is worked out where it is asked for: a picture asks for the outline alone, and with notches this is most of the work.</summary>
    public double Millilitres(OutlineWork work) => _plan is PlanShape straight
        ? straight.Grown(_sharp, 0, work).Area * _height + CakeBody.RoundedPrism(straight, _sharp, _height, _rounded, work) : _body.VolumeMillilitres + _body.RoundedMillilitres(_rounded, work);

    /// <summary>The body that the last rounded coats lie on: larger than the bare one where sharp coats came first, but not of straight walls on any plan.</summary>
    public CakeBody Core => _body;

    /// <summary>How far sharp coats have moved the plan of straight walls outward.</summary>
    public double SharpCentimetres => _sharp;

    /// <summary>The height with sharp coats.</summary>
    public double CoreHeightCentimetres => _height;

    /// <summary>The thickness of the rounded coats that came last.</summary>
    public double RoundedCentimetres => _rounded;

    /// <summary>The height with the coats.</summary>
    public double HeightCentimetres => _height + _rounded;

    /// <summary>The diameter of the hole that the coats leave in a ring, cm; else 0.</summary>
    public double HoleCentimetres => Math.Max(_body.HoleCentimetres - 2 * _rounded, 0);

    public CoatedBody With(CakeCoat coat)
    {
        double t = coat.ThicknessCentimetres;
        if (t == 0)
            return this;
        if (coat.Edge == CoatEdge.Rounded)
            return new CoatedBody(_body, _plan, _sharp, _height, _rounded + t);
        double side = _rounded + (coat.Place == CoatPlace.Top ? 0 : t), top = _rounded + (coat.Place == CoatPlace.Side ? 0 : t);
        if (_plan is not null)
            return new CoatedBody(_body, _plan, _sharp + side, _height + top, 0);
        CakeBody grown = _body.Grown(side, top);
        return new CoatedBody(grown, null, 0, grown.HeightCentimetres, 0);
    }

    /// <summary>The area and length of the outline at the foot, grown outward by a distance; <see langword="null"/> where it stands on a point.</summary>
    public (double Area, double Perimeter)? Foot(double outward, OutlineWork work)
    {
        if (_plan is not null)
            return Moved(_plan, _sharp, _rounded + outward, work);
        if (_body.IsBall)
        {
            // The grown ball, cut by the table as far below or above its middle as the ball itself; a cap ends in a rounding.
            double radius = _body.BallCentimetres / 2, above = _body.HeightCentimetres - radius;
            double foot = above >= 0 ? Math.Sqrt(Math.Max((radius + _rounded) * (radius + _rounded) - above * above, 0))
                : Math.Sqrt(Math.Max(radius * radius - above * above, 0)) + _rounded;
            return foot > 0 ? Round(foot + outward) : null;
        }
        return Moved(_body.Footprint!, 0, _rounded + outward, work);
    }

    /// <summary>The area and length of the outline of the top, grown outward by a distance; <see langword="null"/> where there is no flat top.</summary>
    public (double Area, double Perimeter)? TopEdge(double outward, OutlineWork work)
    {
        PlanShape? top = _body.IsRing ? _body.Footprint : _body.Top;
        return _plan is not null ? Moved(_plan, _sharp, _rounded + outward, work) : top is null ? null : Moved(top, 0, _rounded + outward, work);
    }

    // Grown where it is outside, shrunk where it is inside; where a border runs inside a sharp coat its corners are as sharp.
    private static (double Area, double Perimeter) Moved(PlanShape plan, double sharp, double outward, OutlineWork work)
    {
        double all = sharp + outward;
        return all < 0 ? plan.Shrunk(-all, work) : outward >= 0 ? plan.Grown(sharp, outward, work) : plan.Grown(all, 0, work);
    }

    private static (double Area, double Perimeter) Round(double radius) => (Math.PI * radius * radius, 2 * Math.PI * radius);
}
