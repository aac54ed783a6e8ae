namespace Confectio.Cakes.Bodies;

/// <summary>A body that a sharp coat makes into a larger one of its own form: every one but straight walls on any plan.</summary>
internal abstract class FormBody : CakeBody
{
    /// <summary>The diameter of a hole through it, cm; 0 where there is none.</summary>
    public virtual double HoleCentimetres => 0;

    /// <summary>The width beyond which coats reach at its foot, cm; of a ball its own.</summary>
    public virtual double CoatedFromCentimetres => Footprint!.WidthCentimetres;

    internal sealed override CoatedBody Uncoated() => new CoatedForm(this, this, 0);

    /// <summary>The body inside a sharp coat, so thick on its side and so thick on its top.</summary>
    public abstract FormBody Grown(double side, double top);

    /// <summary>
    /// The area and length of the outline at the foot of a rounded coat, grown outward by a distance; <see langword="null"/> where it
    /// stands on a point.
    /// </summary>
    public virtual (double Area, double Perimeter)? CoatedFoot(double rounded, double outward, OutlineWork work) =>
        CoatedBody.Moved(Footprint!, 0, rounded + outward, work);

    /// <summary>Draws it cut through with a rounded coat.</summary>
    /// <param name="pen">What it is drawn with.</param>
    /// <param name="widest">How wide the bare body is at its widest, cm.</param>
    /// <param name="left">How far that reaches to the left of the middle, below 0, cm.</param>
    /// <param name="right">How far it reaches to the right, cm.</param>
    /// <param name="rounded">The thickness of the coat, cm.</param>
    public abstract void DrawCoated(ISectionPen pen, double widest, double left, double right, double rounded);

    private protected sealed override double SharpMillilitres(double t, OutlineWork work) =>
        Grown(t, t).VolumeMillilitres - VolumeMillilitres;

    /// <summary>
    /// The integral of π(radius + side·√(t² − u²))²: the discs of the rounding of an edge, at the height u over it.
    /// </summary>
    private protected static double Rounding(double radius, double t, double from, double to, int side = 1)
    {
        double Indefinite(double u)
        {
            double bow = u * Math.Sqrt(Math.Max(t * t - u * u, 0)) + t * t * Math.Asin(Math.Clamp(u / t, -1, 1));
            return radius * radius * u + side * radius * bow + t * t * u - u * u * u / 3;
        }
        return t == 0 ? 0 : Math.PI * (Indefinite(to) - Indefinite(from));
    }
}
