using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>The turns of a swirl seen from the side, or a rosette.</summary>
internal static class SwirlFromTheSide
{
    public static void Draw(SvgCanvas canvas, double pixels, double x, double ground, Swirl swirl, string colour)
    {
        double bead = swirl.LineWidthCentimetres, foot = swirl.FootDiameterCentimetres;
        if (swirl.HeightCentimetres <= bead)
        {
            canvas.Rectangle(x - pixels * foot / 2, ground - pixels * bead, pixels * foot, pixels * bead, colour, pixels * bead / 2);
            return;
        }
        int turns = Math.Clamp((int)Math.Ceiling(swirl.Turns), 1, 12);
        double each = swirl.HeightCentimetres / turns;
        for (int i = 0; i < turns; i++)
        {
            double wide = Math.Max(foot * (1 - (double)i / turns), Math.Min(bead, foot)), y = ground - pixels * each * (i + 1);
            canvas.Rectangle(x - pixels * wide / 2, y, pixels * wide, pixels * each, colour, pixels * Math.Min(each, wide) / 2);
        }
    }
}
