using Confectio.Cakes;
using Confectio.Cakes.Bodies;

namespace Confectio.Pictures;

/// <summary>A body as it is cut from left to right at its widest, in centimetres over its own foot, drawn at a place and a scale.</summary>
internal sealed class SectionOutline : ISectionPen
{
    private readonly CakeBody _body;
    private readonly double _left, _right, _centre, _ground, _pixels;
    private readonly List<string> _coated = [];

    /// <param name="placed">The tier, of which the bare body is drawn and what its coats make of it.</param>
    /// <param name="centre">Where its middle is, pixels from the left.</param>
    /// <param name="ground">Where its foot is, pixels from the top.</param>
    /// <param name="pixels">Pixels per centimetre.</param>
    public SectionOutline(PlacedTier placed, double centre, double ground, double pixels)
    {
        (_body, _centre, _ground, _pixels) = (placed.Tier.Body, centre, ground, pixels);
        (_left, _right, _, _) = placed.Reach;
    }

    public double X(double centimetres) => _centre + _pixels * centimetres;

    public double Y(double centimetres) => _ground - _pixels * centimetres;

    /// <summary>From where to where the bare body goes at a height, cm from its middle; two stretches of a ring.</summary>
    public (double From, double To)[] At(double z) => _body.CutAt(z, _left, _right);

    /// <summary>A slab of the bare body between two heights, or its outermost part on both sides.</summary>
    public IEnumerable<string> Slab(double from, double to, double? edgeWidth = null)
    {
        int steps = _body.SidePieces, parts = At(from).Length;
        for (int part = 0; part < parts; part++)
        {
            List<(double Left, double Right, double Z)> cuts = [];
            for (int i = 0; i <= steps; i++)
            {
                double z = from + (to - from) * i / steps;
                (double left, double right) = At(z)[part];
                cuts.Add((left, right, z));
            }
            if (edgeWidth is not double width)
            {
                yield return Polygon(cuts, cut => cut.Left, cut => cut.Right);
                continue;
            }
            yield return Polygon(cuts, cut => cut.Left, cut => Math.Min(cut.Left + width, cut.Right));
            yield return Polygon(cuts, cut => Math.Max(cut.Right - width, cut.Left), cut => cut.Right);
        }
    }

    /// <summary>The whole of a coated body; good until the next one is asked for.</summary>
    public IReadOnlyList<string> Coated(CoatedBody coated)
    {
        _coated.Clear();
        coated.Draw(this, _left, _right);
        return _coated;
    }

    // Grown by a rounded coat that ends on the table: up the right side, over the top, down the left.
    public void Walls(double footLeft, double footRight, double topLeft, double topRight, double height, double rounded)
    {
        (double footX, double footZ, double topX, double topZ, bool arc) = Side(footRight, topRight, height, rounded);
        (double footX2, double footZ2, double topX2, double topZ2, bool arc2) = Side(-footLeft, -topLeft, height, rounded);
        string path = (arc ? $"M {Place(footRight + rounded, 0)}{Arc(rounded, footX, footZ)}" : $"M {Place(footX, footZ)}")
            + $" L {Place(topX, topZ)}";
        path += rounded > 0
            ? $"{Arc(rounded, topRight, height + rounded)} L {Place(topLeft, height + rounded)}{Arc(rounded, -topX2, topZ2)}"
            : $" L {Place(-topX2, topZ2)}";
        path += $" L {Place(-footX2, footZ2)}" + (arc2 ? Arc(rounded, footLeft - rounded, 0) : "");
        _coated.Add(path + " Z");
    }

    // Where the right wall starts and ends once it has moved outward; a wall that narrows starts over the rounding of its foot.
    private static (double FootX, double FootZ, double TopX, double TopZ, bool Arc) Side(double x0, double x1, double height,
        double rounded)
    {
        double slant = Math.Sqrt((x0 - x1) * (x0 - x1) + height * height), outward = rounded * height / slant, rise =
            rounded * (x0 - x1) / slant;
        double from = Math.Max(rise, 0);
        return (x0 + outward + (x1 - x0) * (from - rise) / height, from, x1 + outward, height + rise, rise > 0);
    }

    public void Dome(double radius, double height, double rounded)
    {
        double middle = height - radius, all = radius + rounded;
        if (middle >= 0)
        {
            double foot = Math.Sqrt(Math.Max(all * all - middle * middle, 0));
            _coated.Add($"M {Place(foot, 0)}{Arc(all, 0, height + rounded)}{Arc(all, -foot, 0)} Z");
            return;
        }
        double rim = Math.Sqrt(Math.Max(radius * radius - middle * middle, 0)), x = rim * all / radius, z = -middle * rounded / radius;
        string right = rounded > 0 ? $"M {Place(rim + rounded, 0)}{Arc(rounded, x, z)}" : $"M {Place(rim, 0)}";
        _coated.Add($"{right}{Arc(all, 0, height + rounded)}{Arc(all, -x, z)}{(rounded > 0 ? Arc(rounded, -rim - rounded, 0) : "")} Z");
    }

    // Up the right side and down the left.
    private string Polygon(List<(double Left, double Right, double Z)> cuts, Func<(double Left, double Right, double Z), double> left,
        Func<(double Left, double Right, double Z), double> right)
    {
        IEnumerable<string> down = cuts.AsEnumerable().Reverse().Select(cut => Place(left(cut), cut.Z));
        return $"M {string.Join(" L ", cuts.Select(cut => Place(right(cut), cut.Z)).Concat(down))} Z";
    }

    private string Arc(double radius, double x, double z) => SvgCanvas.Arc(_pixels * radius, X(x), Y(z));

    private string Place(double x, double z) => SvgCanvas.Point(X(x), Y(z));
}
