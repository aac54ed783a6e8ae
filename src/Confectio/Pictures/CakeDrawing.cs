using System.Globalization;
using Confectio.Cakes;

namespace Confectio.Pictures;

/// <summary>Lays a cake out on a page: title, section and sizes, plan and icings, cupcakes.</summary>
internal sealed class CakeDrawing
{
    // Pixels of the page; what it is shown at is another matter.
    private const double Margin = 18, ForHeights = 34, ForStacks = 400, ForLabels = 300, Gap = 22, MostHigh = 540, MostPerCentimetre = 24;

    private const double TextSize = 12, RowHeight = 16, TitleSize = 17, SmallSize = CakeInSection.TextSize;

    // With more tiers than this a label is one line; of more coats than this the rest is counted.
    private const int FewTiers = 6, FewCoats = 4;

    private readonly Cake _cake;
    private readonly CakeCoverage _coverage;
    private readonly LengthText _lengths;
    private readonly IReadOnlyList<PlacedTier> _placed;
    private readonly IcingColours _colours;
    private readonly SvgCanvas _canvas = new();
    private readonly double _pixels;
    private readonly (double Left, double Right, double Front, double Back, double Top)[] _stacks;
    private readonly double[] _middles;
    private readonly double _labelsAt;

    public CakeDrawing(Cake cake, PictureLengths lengths)
    {
        (_cake, _lengths) = (cake, new LengthText(lengths));
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
        string tiers = string.Join(" ", _cake.Tiers.Select((tier, i) => string.Create(CultureInfo.InvariantCulture,
            $"Tier {i + 1}: {tier}.")));
        return _canvas.Whole(width, y + Margin, shownWidth, title, $"Section and plan. {tiers} {_coverage}.");
    }

    // The stacks on a table, the height over all at the left, the width with all coats under each.
    private double Section(double top)
    {
        _canvas.Text(Margin, top, "Section", TextSize, bold: true);
        double ground = top + 14 + Math.Max(_pixels * _stacks.Max(stack => stack.Top), SvgCanvas.WidthOf(Of(_stacks[0].Top), SmallSize));
        foreach (PlacedTier tier in _placed)
        {
            PlacedTier? next = _placed.FirstOrDefault(other => other.Number == tier.Number + 1 && other.Stack == tier.Stack);
            new CakeInSection(_canvas, _colours, tier, next, _pixels, _middles[tier.Stack], ground, tier.Tier.Body.Size(_lengths)).Draw();
        }
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

    private double Plan(double top)
    {
        _canvas.Text(Margin, top, "Plan", TextSize, bold: true);
        double deep = _pixels * _stacks.Max(stack => stack.Back - stack.Front);
        foreach (PlacedTier placed in _placed)
        {
            double middle = top + 12 + deep / 2 + _pixels * (_stacks[placed.Stack].Back + _stacks[placed.Stack].Front) / 2;
            new CakeFromAbove(_canvas, _colours, placed, _pixels, _middles[placed.Stack]
                + _pixels * placed.Right, middle - _pixels * placed.Back).Draw();
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
        double high =
            Math.Max(_pixels * _cake.Cupcakes.Max(one => CupcakeFromTheSide.CaseHeight(one)
            + (one.Swirl?.HeightCentimetres ?? one.DomeCentimetres + one.ThicknessCentimetres)), 2 * RowHeight + 8);
        double y = top + 10;
        for (int i = 0; i < _cake.Cupcakes.Count; i++)
        {
            if (i % perRow == 0)
                y += high + (i == 0 ? 0 : 14);
            Cupcakes one = _cake.Cupcakes[i];
            double x = Margin + i % perRow * Cell, half = _pixels * one.TopDiameterCentimetres / 2;
            CupcakeFromTheSide.Draw(_canvas, _pixels, x + half, y, one, _colours[one.Icing]);
            double text = x + 2 * half + 14;
            _canvas.Text(text, y - RowHeight - 2,
                string.Create(CultureInfo.InvariantCulture, $"{one.Count} of these, {one.MillilitresEach:0.#} mL each"), TextSize);
            _canvas.Text(text, y - 2, SvgCanvas.Fit(one.Icing, TextSize, Cell - (text - x) - 10), TextSize);
        }
        return y + 10;
    }

    private List<(string Text, bool Bold)> LabelRows()
    {
        List<(string, bool)> rows = [];
        bool few = _placed.Count <= FewTiers;
        foreach (PlacedTier placed in _placed.Reverse())
        {
            CakeTier tier = placed.Tier;
            string size = tier.Body.Size(_lengths), high = $"{Of(tier.Body.HeightCentimetres)} high";
            if (!few)
            {
                rows.Add((string.Create(CultureInfo.InvariantCulture, $"{placed.Number}: {tier.Body.Name} {size}"), false));
                continue;
            }
            rows.Add((string.Create(CultureInfo.InvariantCulture,
                $"{placed.Number}: {tier.Body.Name}{(tier.IsRaised ? ", by itself" : "")}"), true));
            rows.Add((size, false));
            rows.Add((tier.Layers == 1 ? high : string.Create(CultureInfo.InvariantCulture, $"{high}, {tier.Layers} layers"), false));
            if (tier.Fillings.Count > 0)
                rows.Add(("filled "
                    + string.Join(", ", tier.Fillings.Select(filling => _lengths.Thickness(filling.ThicknessCentimetres)).Distinct()),
                    false));
            rows.AddRange(tier.Coats.Take(FewCoats)
                .Select(coat => ($"{coat.Name} {_lengths.Thickness(coat.ThicknessCentimetres)}{On(coat.Place)}", false)));
            if (tier.Coats.Count > FewCoats)
                rows.Add((string.Create(CultureInfo.InvariantCulture, $"and {tier.Coats.Count - FewCoats} more coats"), false));
            rows.Add(("", false));
        }
        if (!few)
            rows.Add(("", false));
        return rows;
    }

    private static string On(CoatPlace place) => place switch { CoatPlace.Top => " on the top", CoatPlace.Side => " on the side", _ => "" };

    private string Of(double centimetres) => _lengths.Of(centimetres);

    private string Across(int stack) => Of(_stacks[stack].Right - _stacks[stack].Left);

    private static double Smallest(params ReadOnlySpan<double> values)
    {
        double smallest = double.MaxValue;
        foreach (double value in values)
            smallest = value > 0 && value < smallest ? value : smallest;
        return smallest;
    }
}
