using System.Globalization;
using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>Lays a cake out on a page: title, section and sizes, plan and icings, cupcakes.</summary>
internal sealed class CakeDrawing
{
    // Pixels of the page; what it is shown at is another matter.
    private const double Margin = 18, ForHeights = 34, ForStacks = 400, ForLabels = 300, Gap = 22, MostHigh = 540, MostPerCentimetre = 24;

    private const double TextSize = 12, RowHeight = 16, TitleSize = 17, SmallSize = 10;

    // With more tiers than this a label is one line; of more coats than this the rest is counted.
    private const int FewTiers = 6, FewCoats = 4;

    private readonly Cake _cake;
    private readonly CakeCoverage _coverage;
    private readonly PictureLengths _lengths;
    private readonly IReadOnlyList<PlacedTier> _placed;
    private readonly IcingColours _colours;
    private readonly SvgCanvas _canvas = new();
    private readonly double _pixels;
    private readonly (double Left, double Right, double Front, double Back, double Top)[] _stacks;
    private readonly double[] _middles;
    private readonly double _labelsAt;

    public CakeDrawing(Cake cake, PictureLengths lengths)
    {
        (_cake, _lengths) = (cake, lengths);
        _coverage = cake.Cover();
        _colours = new IcingColours(_coverage);
        _placed = PlacedTier.Of(cake);
        _stacks = [.. _placed.GroupBy(tier => tier.Stack).Select(stack => (stack.Min(tier => tier.Right + tier.Reach.Left - tier.Beside),
            stack.Max(tier => tier.Right + tier.Reach.Right + tier.Beside), stack.Min(tier => tier.Back + tier.Reach.Front - tier.Beside),
            stack.Max(tier => tier.Back + tier.Reach.Back + tier.Beside), stack.Max(tier => tier.Top)))];
        double wide = _stacks.Sum(stack => stack.Right - stack.Left), high = _stacks.Select(stack => stack.Top).DefaultIfEmpty(0).Max();
        double deep = _stacks.Select(stack => stack.Back - stack.Front).DefaultIfEmpty(0).Max();
        double cupcake = cake.Cupcakes.Select(one => one.TopDiameterCentimetres).DefaultIfEmpty(0).Max();
        _pixels = Smallest(MostPerCentimetre, ForStacks / wide, MostHigh / high, MostHigh / deep, 100 / cupcake);
        // A stack is at least as wide as what is written under it.
        double x = Margin + ForHeights;
        _middles = new double[_stacks.Length];
        for (int i = 0; i < _stacks.Length; i++)
        {
            double width = _pixels * (_stacks[i].Right - _stacks[i].Left), slot = Math.Max(width, SvgCanvas.WidthOf(Across(i), SmallSize));
            _middles[i] = x + (slot - width) / 2 - _pixels * _stacks[i].Left;
            x += slot + Gap;
        }
        _labelsAt = _stacks.Length == 0 ? Margin : Math.Max(x, Margin + ForHeights + 200);
    }

    public string Draw(double shownWidth)
    {
        double width = _labelsAt + (_stacks.Length == 0 ? 2 * ForLabels : ForLabels) + Margin;
        string title = _cake.Name.Trim().Length > 0 ? _cake.Name : "Cake";
        double y = Margin + TitleSize;
        _canvas.Text(Margin, y, SvgCanvas.Fit(title, TitleSize * 1.05, width - 2 * Margin), TitleSize, bold: true);
        y += 20;
        double column = Legend(_labelsAt, Labels(y));
        if (_stacks.Length > 0)
            y = Plan(Section(y));
        y = Cupcakes(Math.Max(y, column) + 22, width);
        return _canvas.Whole(width, y + Margin, shownWidth, title,
            $"Section and plan. {string.Join(" ", _cake.Tiers.Select((tier, i) => string.Create(CultureInfo.InvariantCulture, $"Tier {i + 1}: {tier}.")))} {_coverage}.");
    }

    // The stacks on a table, the height over all at the left, the width with all coats under each.
    private double Section(double top)
    {
        _canvas.Text(Margin, top, "Section", TextSize, bold: true);
        double ground = top + 14 + Math.Max(_pixels * _stacks.Max(stack => stack.Top), SvgCanvas.WidthOf(Of(_stacks[0].Top), SmallSize));
        foreach (PlacedTier tier in _placed)
            Section(tier, ground);
        double left = Margin + ForHeights - 8, right = _labelsAt - Gap + 8;
        _canvas.Line(left, ground, right, ground, 1.4);
        _canvas.Measure(Margin + 16, ground - _pixels * _stacks[0].Top, Margin + 16, ground);
        // The text stands on the table where the cake is lower than the text is long.
        double half = Math.Max(_pixels * _stacks[0].Top, SvgCanvas.WidthOf(Of(_stacks[0].Top), SmallSize)) / 2;
        _canvas.Text(Margin + 10, ground - half, Of(_stacks[0].Top), SmallSize, "middle", upward: true);
        for (int i = 0; i < _stacks.Length; i++)
        {
            double from = _middles[i] + _pixels * _stacks[i].Left, to = _middles[i] + _pixels * _stacks[i].Right;
            _canvas.Measure(from, ground + 14, to, ground + 14);
            _canvas.Text((from + to) / 2, ground + 30, Across(i), SmallSize, "middle");
        }
        return ground + 56;
    }

    private void Section(PlacedTier placed, double ground)
    {
        CakeTier tier = placed.Tier;
        SectionOutline outline = new(tier.Body, tier.TurnedDegrees, _middles[placed.Stack] + _pixels * placed.Right, ground - _pixels * placed.Height, _pixels);
        for (int i = tier.Coats.Count; i >= 1; i--)
        {
            foreach (string path in outline.Coated(placed.Coats[i]))
                _canvas.Path(path, _colours[tier.Coats[i - 1].Icing], SvgCanvas.Ink, 0.6);
        }
        foreach (string path in outline.Coated(placed.Coats[0]))
            _canvas.Path(path, IcingColours.Sponge, SvgCanvas.Ink, 0.6);
        for (int i = 0; i < tier.Fillings.Count; i++)
        {
            CakeFilling filling = tier.Fillings[i];
            double from = tier.FillingFrom(i), to = from + filling.ThicknessCentimetres;
            foreach (string path in outline.Slab(from, to))
                _canvas.Path(path, _colours[filling.Icing], SvgCanvas.Ink, 0.4);
            if (filling.DamIcing is not string dam)
                continue;
            foreach (string path in outline.Slab(from, to, filling.DamWidthCentimetres))
                _canvas.Path(path, _colours[dam], SvgCanvas.Ink, 0.4);
        }
        Poured(placed, outline);
        foreach (CakeBorder border in tier.Borders)
            Border(placed, outline, border);
        Pieces(placed, outline);
        Within(placed, outline);
    }

    // The pool of a drip on the top and a drip at either side.
    private void Poured(PlacedTier placed, SectionOutline outline)
    {
        if (placed.Tier.Drip is not CakeDrip drip)
            return;
        string colour = _colours[drip.Icing];
        double top = placed.Coated.HeightCentimetres, bow = drip.DripWidthCentimetres / 2;
        (double left, double right) = TopEdge(placed, outline);
        if (drip.Drips > 0)
        {
            double length = Math.Min(drip.DripLengthCentimetres, top) * _pixels;
            foreach (double x in (double[])[left - bow, right])
                _canvas.Rectangle(outline.X(x), outline.Y(top + drip.PoolCentimetres), _pixels * bow, length + _pixels * drip.PoolCentimetres, colour, _pixels * bow / 2);
        }
        foreach ((double from, double to) in outline.At(placed.Tier.Body.HeightCentimetres))
            _canvas.Rectangle(outline.X(from - placed.Outward), outline.Y(top + drip.PoolCentimetres), _pixels * (to - from + 2 * placed.Outward), _pixels * drip.PoolCentimetres, colour);
    }

    private void Border(PlacedTier placed, SectionOutline outline, CakeBorder border)
    {
        double radius = border.WidthCentimetres / 2, pixels = _pixels * radius, foot = placed.Outward;
        string colour = _colours[border.Icing];
        if (border.Place == BorderPlace.TopEdge)
        {
            (double from, double to) = TopEdge(placed, outline);
            double top = placed.Coated.HeightCentimetres;
            foreach (double x in (double[])[from + radius, to - radius])
            {
                if (border.Kind == BorderKind.FullRound)
                    _canvas.Circle(outline.X(x), outline.Y(top + radius), pixels, colour);
                else
                    _canvas.Path(HalfDisc(outline.X(x + radius), outline.Y(top), outline.X(x - radius), outline.Y(top), pixels), colour, SvgCanvas.Ink, 0.6);
            }
            return;
        }
        (double left, double right) = (outline.At(0)[0].From - foot, outline.At(0)[^1].To + foot);
        if (border.Kind == BorderKind.FullRound)
        {
            _canvas.Circle(outline.X(left - radius), outline.Y(radius), pixels, colour);
            _canvas.Circle(outline.X(right + radius), outline.Y(radius), pixels, colour);
            return;
        }
        _canvas.Path(HalfDisc(outline.X(left), outline.Y(2 * radius), outline.X(left), outline.Y(0), pixels), colour, SvgCanvas.Ink, 0.6);
        _canvas.Path(HalfDisc(outline.X(right), outline.Y(0), outline.X(right), outline.Y(2 * radius), pixels), colour, SvgCanvas.Ink, 0.6);
    }

    // One piece at either end of the top, where the next tier leaves room.
    private void Pieces(PlacedTier placed, SectionOutline outline)
    {
        CakeTier tier = placed.Tier;
        if (tier.Pieces.FirstOrDefault(pieces => pieces.Count > 0) is not PipedPieces pieces)
            return;
        double across = pieces.Piece.FootDiameterCentimetres + pieces.Piece.BeadWidthCentimetres * (pieces.Piece.HeightCentimetres > pieces.Piece.BeadWidthCentimetres ? 0 : 1);
        double inside = tier.Borders.Where(border => border.Place == BorderPlace.TopEdge).Select(border => border.WidthCentimetres).DefaultIfEmpty(0).Max();
        (double from, double to) = TopEdge(placed, outline);
        (from, to) = (from + inside, to - inside);
        PlacedTier? next = _placed.FirstOrDefault(other => other.Number == placed.Number + 1 && other.Stack == placed.Stack);
        double room = to - from, right = to;
        if (next is not null)
            (room, right) = (Math.Min(next.Right - placed.Right + next.Reach.Left - next.Beside - from, to - (next.Right - placed.Right + next.Reach.Right + next.Beside)), to);
        if (room < across)
            return;
        double top = placed.Coated.HeightCentimetres + (tier.Drip?.PoolCentimetres ?? 0);
        Swirled(outline.X(from + across / 2), outline.Y(top), pieces.Piece, _colours[pieces.Icing]);
        if (pieces.Count > 1 && (next is not null || room >= 2 * across))
            Swirled(outline.X(right - across / 2), outline.Y(top), pieces.Piece, _colours[pieces.Icing]);
    }

    // The number of the tier and its width, in a layer where they fit.
    private void Within(PlacedTier placed, SectionOutline outline)
    {
        CakeTier tier = placed.Tier;
        double layer = tier.LayerCentimetres, low = tier.Layers / 2 == 0 ? 0 : tier.FillingFrom(tier.Layers / 2 - 1) + tier.Fillings[tier.Layers / 2 - 1].ThicknessCentimetres;
        double middle = low + layer / 2;
        (double from, double to) = outline.At(middle).MaxBy(part => part.To - part.From);
        if (tier.Body.IsRing)
            (from, to) = outline.At(middle)[0];
        if (_pixels * layer < SmallSize + 1)
            return;
        string number = string.Create(CultureInfo.InvariantCulture, $"{placed.Number}"), full = $"{number}:  {Size(tier.Body)}";
        double room = _pixels * (to - from) - 6;
        string? text = !tier.Body.IsRing && SvgCanvas.WidthOf(full, SmallSize) <= room ? full : SvgCanvas.WidthOf(number, SmallSize) <= room ? number : null;
        if (text is not null)
            _canvas.Text(outline.X((from + to) / 2), outline.Y(middle) + 0.35 * SmallSize, text, SmallSize, "middle");
    }

    private double Plan(double top)
    {
        _canvas.Text(Margin, top, "Plan", TextSize, bold: true);
        double deep = _pixels * _stacks.Max(stack => stack.Back - stack.Front);
        foreach (PlacedTier placed in _placed)
        {
            double middle = top + 12 + deep / 2 + _pixels * (_stacks[placed.Stack].Back + _stacks[placed.Stack].Front) / 2;
            new CakeFromAbove(_canvas, _colours, placed, _pixels, _middles[placed.Stack] + _pixels * placed.Right, middle - _pixels * placed.Back).Draw();
        }
        return top + 12 + deep;
    }

    private double Labels(double top)
    {
        double y = top;
        foreach ((string text, bool bold) in LabelRows())
        {
            _canvas.Text(_labelsAt, y, SvgCanvas.Fit(text, TextSize, ForLabels), TextSize, bold: bold);
            y += RowHeight;
        }
        return y;
    }

    private double Legend(double x, double top)
    {
        _canvas.Text(x, top, "Icings", TextSize, bold: true);
        double y = top;
        foreach (string icing in _coverage.Icings)
        {
            y += RowHeight + 2;
            string volume = string.Create(CultureInfo.InvariantCulture, $"{_coverage.Millilitres(icing):0} mL");
            _canvas.Rectangle(x, y - 10, 12, 12, _colours[icing]);
            _canvas.Text(x + 20, y, SvgCanvas.Fit(icing, TextSize, ForLabels - 110), TextSize);
            _canvas.Text(x + ForLabels - 10, y, volume, TextSize, "end");
        }
        if (_cake.Tiers.Count > 0)
        {
            y += RowHeight + 2;
            _canvas.Rectangle(x, y - 10, 12, 12, IcingColours.Sponge);
            _canvas.Text(x + 20, y, "cake", TextSize);
        }
        return y + 8;
    }

    private double Cupcakes(double top, double width)
    {
        if (_cake.Cupcakes.Count == 0)
            return top;
        const double Cell = 290;
        _canvas.Text(Margin, top, "Cupcakes, one of each kind", TextSize, bold: true);
        int perRow = Math.Max(1, (int)((width - 2 * Margin) / Cell));
        double high = Math.Max(_pixels * _cake.Cupcakes.Max(one => CaseHeight(one) + (one.Swirl?.HeightCentimetres ?? one.DomeCentimetres + one.ThicknessCentimetres)), 2 * RowHeight + 8);
        double y = top + 10;
        for (int i = 0; i < _cake.Cupcakes.Count; i++)
        {
            if (i % perRow == 0)
                y += high + (i == 0 ? 0 : 14);
            Cupcakes one = _cake.Cupcakes[i];
            double x = Margin + i % perRow * Cell, half = _pixels * one.TopDiameterCentimetres / 2;
            Cupcake(x + half, y, one);
            double text = x + 2 * half + 14;
            _canvas.Text(text, y - RowHeight - 2, string.Create(CultureInfo.InvariantCulture, $"{one.Count} of these, {one.MillilitresEach:0.#} mL each"), TextSize);
            _canvas.Text(text, y - 2, SvgCanvas.Fit(one.Icing, TextSize, Cell - (text - x) - 10), TextSize);
        }
        return y + 10;
    }

    private static double CaseHeight(Cupcakes one) => 0.65 * one.TopDiameterCentimetres;

    private void Cupcake(double x, double ground, Cupcakes one)
    {
        double half = _pixels * one.TopDiameterCentimetres / 2, low = 0.76 * half, rim = ground - _pixels * CaseHeight(one);
        string colour = _colours[one.Icing];
        _canvas.Path(string.Create(CultureInfo.InvariantCulture,
            $"M {SvgCanvas.Number(x - low)} {SvgCanvas.Number(ground)} L {SvgCanvas.Number(x + low)} {SvgCanvas.Number(ground)} L {SvgCanvas.Number(x + half)} {SvgCanvas.Number(rim)} L {SvgCanvas.Number(x - half)} {SvgCanvas.Number(rim)} Z"),
            IcingColours.Paper, SvgCanvas.Ink, 0.6);
        if (one.Swirl is Swirl swirl)
        {
            Swirled(x, rim, swirl, colour);
            return;
        }
        double r = one.TopDiameterCentimetres / 2;
        if (one.DomeCentimetres > 0)
        {
            double ball = (r * r + one.DomeCentimetres * one.DomeCentimetres) / (2 * one.DomeCentimetres);
            _canvas.Path(Lens(x, rim, half + _pixels * one.ThicknessCentimetres / 2, _pixels * (one.DomeCentimetres + one.ThicknessCentimetres), _pixels * (ball + one.ThicknessCentimetres)), colour, SvgCanvas.Ink, 0.6);
            _canvas.Path(Lens(x, rim, half, _pixels * one.DomeCentimetres, _pixels * ball), IcingColours.Sponge, SvgCanvas.Ink, 0.6);
        }
        else
        {
            _canvas.Rectangle(x - half, rim - _pixels * one.ThicknessCentimetres, 2 * half, _pixels * one.ThicknessCentimetres, colour);
        }
    }

    // The turns of a swirl seen from the side, or a rosette.
    private void Swirled(double x, double ground, Swirl swirl, string colour)
    {
        double bead = swirl.BeadWidthCentimetres, foot = swirl.FootDiameterCentimetres;
        if (swirl.HeightCentimetres <= bead)
        {
            _canvas.Rectangle(x - _pixels * foot / 2, ground - _pixels * bead, _pixels * foot, _pixels * bead, colour, _pixels * bead / 2);
            return;
        }
        int turns = Math.Clamp((int)Math.Ceiling(swirl.Turns), 1, 12);
        double each = swirl.HeightCentimetres / turns;
        for (int i = 0; i < turns; i++)
        {
            double wide = Math.Max(foot * (1 - (double)i / turns), Math.Min(bead, foot)), y = ground - _pixels * each * (i + 1);
            _canvas.Rectangle(x - _pixels * wide / 2, y, _pixels * wide, _pixels * each, colour, _pixels * Math.Min(each, wide) / 2);
        }
    }

    private List<(string Text, bool Bold)> LabelRows()
    {
        List<(string, bool)> rows = [];
        bool few = _placed.Count <= FewTiers;
        foreach (PlacedTier placed in _placed.Reverse())
        {
            CakeTier tier = placed.Tier;
            string size = Size(tier.Body), high = $"{Of(tier.Body.HeightCentimetres)} high";
            if (!few)
            {
                rows.Add((string.Create(CultureInfo.InvariantCulture, $"{placed.Number}: {tier.Body.Name} {size}"), false));
                continue;
            }
            rows.Add((string.Create(CultureInfo.InvariantCulture, $"{placed.Number}: {tier.Body.Name}{(tier.IsRaised ? ", by itself" : "")}"), true));
            rows.Add((size, false));
            rows.Add((tier.Layers == 1 ? high : string.Create(CultureInfo.InvariantCulture, $"{high}, {tier.Layers} layers"), false));
            if (tier.Fillings.Count > 0)
                rows.Add(("filled " + Several(tier.Fillings.Select(filling => LengthText.Thickness(filling.ThicknessCentimetres, _lengths))), false));
            rows.AddRange(tier.Coats.Take(FewCoats).Select(coat => ($"{coat.Name} {LengthText.Thickness(coat.ThicknessCentimetres, _lengths)}{On(coat.Place)}", false)));
            if (tier.Coats.Count > FewCoats)
                rows.Add((string.Create(CultureInfo.InvariantCulture, $"and {tier.Coats.Count - FewCoats} more coats"), false));
            rows.Add(("", false));
        }
        if (!few)
            rows.Add(("", false));
        return rows;
    }

    private static string On(CoatPlace place) => place switch { CoatPlace.Top => " on the top", CoatPlace.Side => " on the side", _ => "" };

    private string Size(CakeBody body)
    {
        if (body.IsBall)
            return Of(SectionOutline.Widest(body).WidthCentimetres);
        PlanShape foot = body.Footprint!;
        if (body.IsRing)
            return $"{Of(foot.WidthCentimetres)}, hole {Of(body.HoleCentimetres)}";
        if (body.StraightPlan is null)
            return $"{Of(foot.WidthCentimetres)} to {(body.Top is PlanShape top ? Of(top.WidthCentimetres) : "a point")}";
        return foot.Name is "round" or "square" ? Of(foot.WidthCentimetres) : LengthText.Pair(foot.WidthCentimetres, foot.LengthCentimetres, _lengths);
    }

    private static string Several(IEnumerable<string> texts)
    {
        string[] different = [.. texts.Distinct()];
        return different.Length == 1 ? different[0] : string.Join(", ", different);
    }

    // From where to where the coated top goes, cm from the middle of the tier.
    private static (double From, double To) TopEdge(PlacedTier placed, SectionOutline outline)
    {
        (double From, double To)[] parts = outline.At(placed.Tier.Body.HeightCentimetres);
        return (parts[0].From - placed.Outward, parts[^1].To + placed.Outward);
    }

    private string Of(double centimetres) => LengthText.Of(centimetres, _lengths);

    private string Across(int stack) => Of(_stacks[stack].Right - _stacks[stack].Left);

    private static double Smallest(params ReadOnlySpan<double> values)
    {
        double smallest = double.MaxValue;
        foreach (double value in values)
            smallest = value > 0 && value < smallest ? value : smallest;
        return smallest;
    }

    private static string HalfDisc(double x0, double y0, double x1, double y1, double radius) =>
        $"M {SvgCanvas.Number(x0)} {SvgCanvas.Number(y0)} A {SvgCanvas.Number(radius)} {SvgCanvas.Number(radius)} 0 0 0 {SvgCanvas.Number(x1)} {SvgCanvas.Number(y1)} Z";

    private static string Lens(double x, double y, double half, double high, double radius) =>
        $"M {SvgCanvas.Number(x + half)} {SvgCanvas.Number(y)} A {SvgCanvas.Number(radius)} {SvgCanvas.Number(radius)} 0 0 0 {SvgCanvas.Number(x)} {SvgCanvas.Number(y - high)} A {SvgCanvas.Number(radius)} {SvgCanvas.Number(radius)} 0 0 0 {SvgCanvas.Number(x - half)} {SvgCanvas.Number(y)} Z";
}
