using System.Globalization;

namespace Confectio.Cakes.Bodies;

/// <summary>A body with sloping walls, by its width at the table and at the top.</summary>
internal abstract class TaperedBody : FormBody
{
    private protected TaperedBody(double lower, double upper, double height)
    {
        (Lower, Upper, HeightCentimetres) = (lower, upper, height);
        Footprint = CutOf(lower);
        Top = CutOf(upper);
    }

    internal sealed override PlanShape? TopLine => Top;

    internal sealed override (double Low, double High) ScaleLimits =>
        Limits(Math.Min(Lower, HeightCentimetres), Math.Max(Math.Max(Lower, Upper), HeightCentimetres));

    private protected double Lower { get; }

    private protected double Upper { get; }

    private protected sealed override string FormText =>
        string.Create(CultureInfo.InvariantCulture, $"{Name}, {Lower:0.##} and {Upper:0.##} cm");

    internal sealed override PlanShape? PlanAt(double z) => CutOf(WidthAt(z));

    public sealed override FormBody Grown(double side, double top)
    {
        double narrows = (Lower - Upper) / 2 / HeightCentimetres, foot = Lower / 2 + side * Math.Sqrt(1 + narrows * narrows);
        double height = HeightCentimetres + top;
        // Over a cone the coat ends in a point below its own flat top.
        if (foot - narrows * height < 0)
            height = foot / narrows;
        return With(2 * foot, 2 * Math.Max(foot - narrows * height, 0), height);
    }

    public sealed override void DrawCoated(ISectionPen pen, double widest, double left, double right, double rounded)
    {
        double foot = (PlanAt(0)?.WidthCentimetres ?? 0) / widest, top = (PlanAt(HeightCentimetres)?.WidthCentimetres ?? 0) / widest;
        pen.Walls(foot * left, foot * right, top * left, top * right, HeightCentimetres, rounded);
    }

    internal sealed override string Size(ISizeWords words) =>
        $"{words.Of(Footprint!.WidthCentimetres)} to {(Top is PlanShape top ? words.Of(top.WidthCentimetres) : "a point")}";

    private protected sealed override CakeBody Resized(double factor) => With(factor * Lower, factor * Upper, factor * HeightCentimetres);

    private protected double WidthAt(double z) => Lower + (Upper - Lower) * (z / HeightCentimetres);

    /// <summary>The outline of a width; <see langword="null"/> where it is narrower than a plan may be.</summary>
    private protected abstract PlanShape? CutOf(double width);

    /// <summary>The same form with other sizes.</summary>
    private protected abstract FormBody With(double lower, double upper, double height);
}
