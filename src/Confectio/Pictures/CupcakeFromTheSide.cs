using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>A cupcake in its paper case with its swirl or its flat coat.</summary>
internal static class CupcakeFromTheSide
{
    /// <summary>How high the paper case is drawn, cm.</summary>
    public static double CaseHeight(Cupcakes one) => 0.65 * one.TopDiameterCentimetres;

    public static void Draw(SvgCanvas canvas, double pixels, double x, double ground, Cupcakes one, string colour)
    {
        double half = pixels * one.TopDiameterCentimetres / 2, low = 0.76 * half, rim = ground - pixels * CaseHeight(one);
        canvas.Path($"M {SvgCanvas.Point(x - low, ground)} L {SvgCanvas.Point(x + low, ground)} "
            + $"L {SvgCanvas.Point(x + half, rim)} L {SvgCanvas.Point(x - half, rim)} Z",
            IcingColours.Paper, SvgCanvas.Ink, 0.6);
        if (one.Swirl is Swirl swirl)
        {
            SwirlFromTheSide.Draw(canvas, pixels, x, rim, swirl, colour);
            return;
        }
        double r = one.TopDiameterCentimetres / 2;
        if (one.DomeCentimetres > 0)
        {
            double ball = (r * r + one.DomeCentimetres * one.DomeCentimetres) / (2 * one.DomeCentimetres);
            canvas.Path(Lens(x, rim, half + pixels * one.ThicknessCentimetres / 2,
                pixels * (one.DomeCentimetres + one.ThicknessCentimetres), pixels * (ball + one.ThicknessCentimetres)), colour,
                SvgCanvas.Ink, 0.6);
            canvas.Path(Lens(x, rim, half, pixels * one.DomeCentimetres, pixels * ball), IcingColours.Sponge, SvgCanvas.Ink, 0.6);
        }
        else
        {
            canvas.Rectangle(x - half, rim - pixels * one.ThicknessCentimetres, 2 * half, pixels * one.ThicknessCentimetres, colour);
        }
    }

    private static string Lens(double x, double y, double half, double high, double radius) =>
        $"M {SvgCanvas.Point(x + half, y)}{SvgCanvas.Arc(radius, x, y - high)}{SvgCanvas.Arc(radius, x - half, y)} Z";
}
