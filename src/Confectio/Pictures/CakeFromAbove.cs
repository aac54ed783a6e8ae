using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>A tier seen from above: its foot border, its coats, its top and what stands along its edge.</summary>
/// <remarks>A line of twice a thickness round an outline is the outline grown by it, with the corners that its joins have.</remarks>
internal sealed class CakeFromAbove
{
    private readonly SvgCanvas _canvas;
    private readonly IcingColours _colours;
    private readonly PlacedTier _placed;
    private readonly double _pixels, _x, _y;

    public CakeFromAbove(SvgCanvas canvas, IcingColours colours, PlacedTier placed, double pixels, double x, double y) =>
        (_canvas, _colours, _placed, _pixels, _x, _y) = (canvas, colours, placed, pixels, x, y);

    public void Draw()
    {
        CakeTier tier = _placed.Tier;
        PlanShape plan = tier.Body.WidestCut;
        string outline = OutlinePath.Of(plan, tier.TurnedDegrees, _x, _y, _pixels), hole = "";
        if (tier.Body.Hole is PlanShape open)
            hole = " " + OutlinePath.Of(open, 0, _x, _y, _pixels);
        string join = _placed.Coated.RoundedCentimetres > 0 ? " stroke-linejoin=\"round\""
            : " stroke-linejoin=\"miter\" stroke-miterlimit=\"20\"";
        double outward = _pixels * _placed.Outward;

        if (_placed.Border(BorderPlace.Foot) is CakeBorder foot)
            Band(outline, outward + _pixels * foot.WidthCentimetres, _colours[foot.Icing], " stroke-linejoin=\"round\"");
        string? side = tier.Coats.LastOrDefault(coat => coat.Place != CoatPlace.Top && coat.ThicknessCentimetres > 0)?.Icing;
        string? top = tier.Drip?.Icing
            ?? tier.Coats.LastOrDefault(coat => coat.Place != CoatPlace.Side && coat.ThicknessCentimetres > 0)?.Icing;
        string topColour = top is null ? IcingColours.Sponge : _colours[top];
        if (side is not null)
            Band(outline + hole, outward, _colours[side], join);
        _canvas.Path(outline + hole, topColour, SvgCanvas.Ink, 0.6, " fill-rule=\"evenodd\" stroke-dasharray=\"3 2\"");
        if (tier.Body.TopLine is PlanShape upper)
            _canvas.Path(OutlinePath.Of(upper, tier.TurnedDegrees, _x, _y, _pixels), "none", SvgCanvas.Ink, 0.6);
        double inside = TopBorder(plan, topColour);
        Pieces(plan, inside);
    }

    // An ink line round a band of colour.
    private void Band(string outline, double pixels, string colour, string join)
    {
        _canvas.Path(outline, SvgCanvas.Ink, SvgCanvas.Ink, 2 * pixels + 1.2, join + " fill-rule=\"evenodd\"");
        _canvas.Path(outline, colour, colour, 2 * pixels, join + " fill-rule=\"evenodd\"");
    }

    private double TopBorder(PlanShape plan, string topColour)
    {
        CakeBorder? border = _placed.Border(BorderPlace.TopEdge);
        double least = Math.Min(plan.WidthCentimetres, plan.LengthCentimetres);
        if (border is null || 2 * border.WidthCentimetres >= 0.9 * least)
            return border?.WidthCentimetres ?? 0;
        string ring = OutlinePath.Of(plan, _placed.Tier.TurnedDegrees, _x, _y, _pixels);
        string within = OutlinePath.Of(plan.Resized(1 - 2 * border.WidthCentimetres / least), _placed.Tier.TurnedDegrees, _x, _y, _pixels);
        _canvas.Path(ring, _colours[border.Icing], SvgCanvas.Ink, 0.6);
        _canvas.Path(within, topColour, SvgCanvas.Ink, 0.6);
        return border.WidthCentimetres;
    }

    // In a row along the edge, as many as fit side by side.
    private void Pieces(PlanShape plan, double inside)
    {
        double least = Math.Min(plan.WidthCentimetres, plan.LengthCentimetres);
        foreach (PipedPieces pieces in _placed.Tier.Pieces.Where(pieces => pieces.Count > 0))
        {
            double across = pieces.Piece.FootDiameterCentimetres, factor = 1 - (2 * inside + across) / least;
            inside += across;
            if (factor < 0.05)
                return;
            IReadOnlyList<PlanPoint> path = plan.Resized(factor).Outline(Math.Max(720, plan.EdgeCount));
            double length = 0;
            for (int i = 0; i < path.Count; i++)
                length += Distance(path[i], path[(i + 1) % path.Count]);
            int count = Math.Min(pieces.Count, Math.Max(1, (int)Math.Floor(length / across)));
            double passed = 0;
            for (int i = 0, next = 0; i < path.Count; i++)
            {
                PlanPoint from = path[i], to = path[(i + 1) % path.Count];
                double step = Distance(from, to);
                for (; next < count && next * length / count < passed + step; next++)
                {
                    double share = (next * length / count - passed) / step;
                    Piece(from.XCentimetres + share * (to.XCentimetres - from.XCentimetres), from.YCentimetres
                        + share * (to.YCentimetres - from.YCentimetres), across, _colours[pieces.Icing]);
                }
                passed += step;
            }
        }
    }

    private void Piece(double x, double y, double across, string colour)
    {
        double angle = _placed.Tier.TurnedDegrees * Math.PI / 180;
        double right = _x + _pixels * (Math.Cos(angle) * x - Math.Sin(angle) * y), down =
            _y - _pixels * (Math.Sin(angle) * x + Math.Cos(angle) * y);
        _canvas.Circle(right, down, _pixels * across / 2, colour);
        _canvas.Circle(right, down, _pixels * across / 6, colour);
    }

    private static double Distance(PlanPoint from, PlanPoint to) =>
        Math.Sqrt(Math.Pow(to.XCentimetres - from.XCentimetres, 2) + Math.Pow(to.YCentimetres - from.YCentimetres, 2));
}
