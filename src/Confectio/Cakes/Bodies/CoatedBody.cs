namespace Confectio.Cakes.Bodies;

/// <summary>
/// A body with the coats that are on it so far. A sharp coat makes a larger body of the same kind; a rounded one lies over it, and a sharp
/// one over that fills its edges out.
/// </summary>
internal abstract class CoatedBody
{
    private protected CoatedBody(double rounded) => RoundedCentimetres = rounded;

    /// <summary>The thickness of the rounded coats that came last.</summary>
    public double RoundedCentimetres { get; }

    /// <summary>The height with the coats.</summary>
    public abstract double HeightCentimetres { get; }

    /// <summary>How far the coats reach beyond the body at its foot.</summary>
    public abstract double OutwardCentimetres { get; }

    /// <summary>The diameter of the hole that the coats leave, cm; 0 where there is none.</summary>
    public virtual double HoleCentimetres => 0;

    /// <summary>
    /// The volume of the body and its coats. It is worked out where it is asked for: a picture asks for the outline alone, and with notches
    /// this is most of the work.
    /// </summary>
    public abstract double Millilitres(OutlineWork work);

    /// <summary>
    /// The area and length of the outline at the foot, grown outward by a distance; <see langword="null"/> where it stands on a point.
    /// </summary>
    public abstract (double Area, double Perimeter)? Foot(double outward, OutlineWork work);

    /// <summary>
    /// The area and length of the edge of the top, grown outward by a distance; <see langword="null"/> where there is none.
    /// </summary>
    public abstract (double Area, double Perimeter)? TopEdge(double outward, OutlineWork work);

    /// <summary>Draws it cut through, where the bare body reaches so far to the left (below 0) and right at its widest.</summary>
    public abstract void Draw(ISectionPen pen, double left, double right);

    public CoatedBody With(CakeCoat coat)
    {
        double t = coat.ThicknessCentimetres;
        if (t == 0)
            return this;
        if (coat.Edge == CoatEdge.Rounded)
            return Rounded(RoundedCentimetres + t);
        double side = coat.Place == CoatPlace.Top ? 0 : t, top = coat.Place == CoatPlace.Side ? 0 : t;
        return Sharpened(RoundedCentimetres + side, RoundedCentimetres + top);
    }

    /// <summary>
    /// The area and length of a plan that is grown where it is outside and shrunk where it is inside; where a border runs inside a sharp
    /// coat its corners are as sharp.
    /// </summary>
    public static (double Area, double Perimeter) Moved(PlanShape plan, double sharp, double outward, OutlineWork work)
    {
        double all = sharp + outward;
        return all < 0 ? plan.Shrunk(-all, work) : outward >= 0 ? plan.Grown(sharp, outward, work) : plan.Grown(all, 0, work);
    }

    /// <summary>With rounded coats of a thickness in all.</summary>
    private protected abstract CoatedBody Rounded(double thickness);

    /// <summary>Grown by a sharp coat, so thick on its side and so thick on its top, that takes in what was rounded.</summary>
    private protected abstract CoatedBody Sharpened(double side, double top);
}
