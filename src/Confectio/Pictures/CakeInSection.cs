using System.Globalization;
using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>
/// A tier cut through its middle: its coats, its layers and fillings, what is poured, piped and set on it, and its number and size.
/// </summary>
internal sealed class CakeInSection
{
    public const double TextSize = 10;

    private readonly SvgCanvas _canvas;
    private readonly IcingColours _colours;
    private readonly PlacedTier _placed;
    private readonly PlacedTier? _next;
    private readonly SectionOutline _outline;
    private readonly double _pixels;
    private readonly string _size;

    /// <param name="canvas">What is drawn on.</param>
    /// <param name="colours">The colours.</param>
    /// <param name="placed">The tier.</param>
    /// <param name="next">The tier that stands on it, if any.</param>
    /// <param name="pixels">Pixels per centimetre.</param>
    /// <param name="middle">Where the middle of its stack is, pixels from the left.</param>
    /// <param name="ground">Where the table is, pixels from the top.</param>
    /// <param name="size">Its size in words.</param>
    public CakeInSection(SvgCanvas canvas, IcingColours colours, PlacedTier placed, PlacedTier? next, double pixels, double middle,
        double ground, string size)
    {
        (_canvas, _colours, _placed, _next, _pixels, _size) = (canvas, colours, placed, next, pixels, size);
        _outline = new SectionOutline(placed, middle + pixels * placed.Right, ground - pixels * placed.Height, pixels);
    }

    public void Draw()
    {
        CakeTier tier = _placed.Tier;
        for (int i = tier.Coats.Count; i >= 1; i--)
        {
            foreach (string path in _outline.Coated(_placed.Coats[i]))
                _canvas.Path(path, _colours[tier.Coats[i - 1].Icing], SvgCanvas.Ink, 0.6);
        }
        foreach (string path in _outline.Coated(_placed.Coats[0]))
            _canvas.Path(path, IcingColours.Sponge, SvgCanvas.Ink, 0.6);
        for (int i = 0; i < tier.Fillings.Count; i++)
        {
            CakeFilling filling = tier.Fillings[i];
            double from = tier.FillingFrom(i), to = from + filling.ThicknessCentimetres;
            foreach (string path in _outline.Slab(from, to))
                _canvas.Path(path, _colours[filling.Icing], SvgCanvas.Ink, 0.4);
            if (filling.DamIcing is not string dam)
                continue;
            foreach (string path in _outline.Slab(from, to, filling.DamWidthCentimetres))
                _canvas.Path(path, _colours[dam], SvgCanvas.Ink, 0.4);
        }
        Poured();
        foreach (CakeBorder border in tier.Borders)
            Border(border);
        Pieces();
        Within();
    }

    // The pool of a drip on the top and a drip at either side.
    private void Poured()
    {
        if (_placed.Tier.Drip is not CakeDrip drip)
            return;
        string colour = _colours[drip.Icing];
        double top = _placed.Coated.HeightCentimetres, bow = drip.DripWidthCentimetres / 2;
        (double left, double right) = TopEdge();
        if (drip.Drips > 0)
        {
            double length = Math.Min(drip.DripLengthCentimetres, top) * _pixels;
            foreach (double x in (double[])[left - bow, right])
                _canvas.Rectangle(_outline.X(x), _outline.Y(top + drip.PoolCentimetres), _pixels * bow, length
                    + _pixels * drip.PoolCentimetres, colour, _pixels * bow / 2);
        }
        foreach ((double from, double to) in _outline.At(_placed.Tier.Body.HeightCentimetres))
            _canvas.Rectangle(_outline.X(from - _placed.Outward), _outline.Y(top + drip.PoolCentimetres),
                _pixels * (to - from + 2 * _placed.Outward), _pixels * drip.PoolCentimetres, colour);
    }

    private void Border(CakeBorder border)
    {
        double radius = border.WidthCentimetres / 2, pixels = _pixels * radius, foot = _placed.Outward;
        string colour = _colours[border.Icing];
        if (border.Place == BorderPlace.TopEdge)
        {
            (double from, double to) = TopEdge();
            double top = _placed.Coated.HeightCentimetres;
            foreach (double x in (double[])[from + radius, to - radius])
            {
                if (border.Kind == BorderKind.FullRound)
                    _canvas.Circle(_outline.X(x), _outline.Y(top + radius), pixels, colour);
                else
                    _canvas.Path(HalfDisc(_outline.X(x + radius), _outline.Y(top), _outline.X(x - radius), _outline.Y(top), pixels), colour,
                        SvgCanvas.Ink, 0.6);
            }
            return;
        }
        (double left, double right) = (_outline.At(0)[0].From - foot, _outline.At(0)[^1].To + foot);
        if (border.Kind == BorderKind.FullRound)
        {
            _canvas.Circle(_outline.X(left - radius), _outline.Y(radius), pixels, colour);
            _canvas.Circle(_outline.X(right + radius), _outline.Y(radius), pixels, colour);
            return;
        }
        _canvas.Path(HalfDisc(_outline.X(left), _outline.Y(2 * radius), _outline.X(left), _outline.Y(0), pixels), colour, SvgCanvas.Ink,
            0.6);
        _canvas.Path(HalfDisc(_outline.X(right), _outline.Y(0), _outline.X(right), _outline.Y(2 * radius), pixels), colour, SvgCanvas.Ink,
            0.6);
    }

    // One piece at either end of the top, where the next tier leaves room.
    private void Pieces()
    {
        CakeTier tier = _placed.Tier;
        if (tier.Pieces.FirstOrDefault(pieces => pieces.Count > 0) is not PipedPieces pieces)
            return;
        double across = pieces.Piece.FootDiameterCentimetres
            + pieces.Piece.LineWidthCentimetres * (pieces.Piece.HeightCentimetres > pieces.Piece.LineWidthCentimetres ? 0 : 1);
        double inside = _placed.Border(BorderPlace.TopEdge)?.WidthCentimetres ?? 0;
        (double from, double to) = TopEdge();
        (from, to) = (from + inside, to - inside);
        double room = to - from;
        if (_next is not null)
            room = Math.Min(_next.Right - _placed.Right + _next.Reach.Left - _next.Beside - from,
                to - (_next.Right - _placed.Right + _next.Reach.Right + _next.Beside));
        if (room < across)
            return;
        double top = _placed.Coated.HeightCentimetres + (tier.Drip?.PoolCentimetres ?? 0);
        SwirlFromTheSide.Draw(_canvas, _pixels, _outline.X(from + across / 2), _outline.Y(top), pieces.Piece, _colours[pieces.Icing]);
        if (pieces.Count > 1 && (_next is not null || room >= 2 * across))
            SwirlFromTheSide.Draw(_canvas, _pixels, _outline.X(to - across / 2), _outline.Y(top), pieces.Piece, _colours[pieces.Icing]);
    }

    // The number of the tier and its width, in a layer where they fit.
    private void Within()
    {
        CakeTier tier = _placed.Tier;
        double layer = tier.LayerCentimetres, low = tier.Layers / 2 == 0 ? 0
            : tier.FillingFrom(tier.Layers / 2 - 1) + tier.Fillings[tier.Layers / 2 - 1].ThicknessCentimetres;
        double middle = low + layer / 2;
        (double From, double To)[] parts = _outline.At(middle);
        (double from, double to) = parts[0];
        if (_pixels * layer < TextSize + 1)
            return;
        string number = string.Create(CultureInfo.InvariantCulture, $"{_placed.Number}"), full = $"{number}:  {_size}";
        double room = _pixels * (to - from) - 6;
        string? text = parts.Length == 1 && SvgCanvas.WidthOf(full, TextSize) <= room ? full : SvgCanvas.WidthOf(number, TextSize) <= room
            ? number : null;
        if (text is not null)
            _canvas.Text(_outline.X((from + to) / 2), _outline.Y(middle) + 0.35 * TextSize, text, TextSize, "middle");
    }

    // From where to where the coated top goes, cm from the middle of the tier.
    private (double From, double To) TopEdge()
    {
        (double From, double To)[] parts = _outline.At(_placed.Tier.Body.HeightCentimetres);
        return (parts[0].From - _placed.Outward, parts[^1].To + _placed.Outward);
    }

    private static string HalfDisc(double x0, double y0, double x1, double y1, double radius) =>
        $"M {SvgCanvas.Point(x0, y0)}{SvgCanvas.Arc(radius, x1, y1)} Z";
}
