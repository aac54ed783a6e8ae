using System.Globalization;
using System.Text;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Sources;

namespace Confectio.Pictures;

/// <summary>
/// A chart of how much of the fat of a formula is solid against the temperature, with its range as a band, and under it at which temperatures it is within
/// the published windows: surely, in doubt, or not.
/// </summary>
public static class SolidFatPicture
{
    /// <summary>The coldest that is drawn, °C.</summary>
    public const double MinimumCelsius = 10;

    /// <summary>The warmest that is drawn, °C.</summary>
    public const double MaximumCelsius = 40;

    private const string AxisTitle = "in 100 g of its fat, %";

    // At 400 pixels of width a letter of 12 is 11.4 high.
    private const double Width = 420, Left = 44, Right = 402, Top = 52, Bottom = 250, Letter = 12, RowHeight = 19, Step = 0.25;

    /// <summary>The chart as SVG, a text that browsers, notebooks and word processors show.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="roomCelsius">The temperature of the room, which is marked, °C, from 10 to 40; none where nothing is said.</param>
    /// <param name="curves">Whose curves: the built-in ones where none are given.</param>
    /// <returns>
    /// SVG 1.1 on a white ground with no script and no reference to anything outside it. Windows are judged from 20 to 40 °C, as in <see cref="WarmRoom"/>.
    /// What is sure is filled and what is in doubt hatched, so that it reads without colour. Where no curve is known it says so.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="roomCelsius"/> is outside its range: 88 is of another scale.</exception>
    public static string Svg(Formula formula, double? roomCelsius = null, FatCurves? curves = null)
    {
        Guard.NotNull(formula);
        if (roomCelsius is double given)
            Guard.InRange(given, MinimumCelsius, MaximumCelsius, nameof(roomCelsius));
        SvgCanvas canvas = new();
        string name = formula.Name.Length > 0 ? formula.Name : "the formula";
        canvas.Text(8, 18, SvgCanvas.Fit($"Solid fat of {name}", Letter + 1, Width - 16), Letter + 1, bold: true);
        canvas.Text(8, 36, AxisTitle, Letter);
        SolidFat cold = formula.SolidFat(MinimumCelsius, curves);
        double most = Math.Max(20, 10 * Math.Ceiling((cold.PercentOfFat?.High ?? 20) / 10));
        bool isJudged = formula.Until(FatWindow.All[0], curves).NotJudgedWhy is null;
        Axes(canvas, most, isJudged);
        if (cold.PercentOfFat is null)
            canvas.Text((Left + Right) / 2, (Top + Bottom) / 2, "not known: no melting curve of its fat", Letter, "middle", bold: true);
        else
            Curve(canvas, formula, curves, most);
        double rows = Bottom + 46;
        if (isJudged)
            Rows(canvas, formula, curves, rows);
        else
            canvas.Text(8, rows + 13, cold.PercentOfFat is null ? "No window is judged." : "No window is judged: too much of it is cocoa butter.", Letter);
        double foot = rows + (isJudged ? FatWindow.All.Count : 1) * RowHeight + 8;
        if (roomCelsius is double room)
        {
            canvas.Path(string.Create(CultureInfo.InvariantCulture, $"M {SvgCanvas.Point(X(room), Top - 2)} V {SvgCanvas.Number(Bottom)}"), "none", SvgCanvas.Ink, 1.4,
                " stroke-dasharray=\"5 3\"");
            string label = string.Create(CultureInfo.InvariantCulture, $"room {room:0.#} °C");
            // Clear of the title of the axis, which stands on the same line.
            canvas.Text(Math.Clamp(X(room), 8 + SvgCanvas.WidthOf(AxisTitle, Letter) + 8 + SvgCanvas.WidthOf(label, Letter) / 2, Right - SvgCanvas.WidthOf(label, Letter) / 2), Top - 6, label, Letter, "middle", bold: true);
        }
        if (isJudged)
            Stands(canvas, roomCelsius);
        foreach (string line in Wrapped(Caption(formula, cold, curves, isJudged)))
        {
            foot += 15;
            canvas.Text(8, foot, line, Letter);
        }
        return canvas.Whole(Width, foot + 10, Width, $"Solid fat of {name} against temperature", Told(formula, roomCelsius, curves));
    }

    // On the side where the room is not, and over its line.
    private static void Stands(SvgCanvas canvas, double? roomCelsius)
    {
        string stands = string.Create(CultureInfo.InvariantCulture, $"stands from {FatWindow.All.First(window => window.Use == "stands").Low:0.#} % on");
        double wide = SvgCanvas.WidthOf(stands, Letter) + 8, at = roomCelsius > 30 ? X(WarmRoom.MinimumCelsius) + 3 : Right - wide - 3;
        canvas.Path(string.Create(CultureInfo.InvariantCulture, $"M {SvgCanvas.Point(at, Top + 3)} h {SvgCanvas.Number(wide)} v 17 h {SvgCanvas.Number(-wide)} Z"), "#eef3ea");
        canvas.Text(at + 4, Top + 16, stands, Letter);
    }

    private static double X(double celsius) => Left + (celsius - MinimumCelsius) / (MaximumCelsius - MinimumCelsius) * (Right - Left);

    private static double Y(double percent, double most) => Bottom - percent / most * (Bottom - Top);

    private static void Axes(SvgCanvas canvas, double most, bool isJudged)
    {
        // Where a buttercream was found to keep its shape, over the temperatures at which the two scales may be compared.
        double stands = FatWindow.All.First(window => window.Use == "stands").Low;
        if (isJudged)
            canvas.Path(string.Create(CultureInfo.InvariantCulture, $"M {SvgCanvas.Point(X(WarmRoom.MinimumCelsius), Top)} H {SvgCanvas.Number(Right)} V {SvgCanvas.Number(Y(stands, most))} H {SvgCanvas.Number(X(WarmRoom.MinimumCelsius))} Z"),
            "#eef3ea", "#9db08f", 0.8, " stroke-dasharray=\"2 2\"");
        canvas.Line(Left, Top, Left, Bottom);
        canvas.Line(Left, Bottom, Right, Bottom);
        for (double percent = 0; percent <= most; percent += most > 50 ? 20 : 10)
        {
            canvas.Line(Left - 4, Y(percent, most), Left, Y(percent, most));
            canvas.Text(Left - 7, Y(percent, most) + 4, percent.ToString("0", CultureInfo.InvariantCulture), Letter, "end");
        }
        for (double celsius = MinimumCelsius; celsius <= MaximumCelsius; celsius += 5)
        {
            canvas.Line(X(celsius), Bottom, X(celsius), Bottom + 4);
            canvas.Text(X(celsius), Bottom + 17, celsius.ToString("0", CultureInfo.InvariantCulture), Letter, "middle");
            canvas.Text(X(celsius), Bottom + 32, (celsius * 1.8 + 32).ToString("0", CultureInfo.InvariantCulture), Letter, "middle");
        }
        canvas.Text(8, Bottom + 17, "°C", Letter);
        canvas.Text(8, Bottom + 32, "°F", Letter);
    }

    private static void Curve(SvgCanvas canvas, Formula formula, FatCurves? curves, double most)
    {
        StringBuilder high = new(), low = new(), likely = new();
        int steps = (int)((MaximumCelsius - MinimumCelsius) / 0.5);
        for (int i = 0; i <= steps; i++)
        {
            double celsius = MinimumCelsius + 0.5 * i;
            Spread percent = formula.SolidFat(celsius, curves).PercentOfFat!.Value;
            string between = i == 0 ? "M " : " L ";
            high.Append(between).Append(SvgCanvas.Point(X(celsius), Y(percent.High, most)));
            likely.Append(between).Append(SvgCanvas.Point(X(celsius), Y(percent.Likely, most)));
            low.Insert(0, " L " + SvgCanvas.Point(X(celsius), Y(percent.Low, most)));
        }
        canvas.Path(high + low.ToString() + " Z", "#d9c2a0", "#8a6d3b", 0.7, " fill-opacity=\"0.6\"");
        canvas.Path(likely.ToString(), "none", SvgCanvas.Ink, 2.2);
    }

    private static void Rows(SvgCanvas canvas, Formula formula, FatCurves? curves, double top)
    {
        int steps = (int)((WarmRoom.MaximumCelsius - WarmRoom.MinimumCelsius) / Step);
        WarmRoom[] rooms = [.. Enumerable.Range(0, steps).Select(i => formula.InWarmRoom(WarmRoom.MinimumCelsius + (i + 0.5) * Step, curves))];
        for (int row = 0; row < FatWindow.All.Count; row++)
        {
            FatWindow window = FatWindow.All[row];
            double y = top + row * RowHeight;
            canvas.Text(8, y + 13, Label(window), Letter);
            canvas.Rectangle(X(WarmRoom.MinimumCelsius), y + 2, Right - X(WarmRoom.MinimumCelsius), RowHeight - 5, "#ffffff");
            for (int i = 0; i < steps;)
            {
                WindowAnswer answer = rooms[i].Windows[row].Value;
                int end = i;
                while (end < steps && rooms[end].Windows[row].Value == answer)
                    end++;
                double from = X(WarmRoom.MinimumCelsius + i * Step), to = X(WarmRoom.MinimumCelsius + end * Step);
                if (answer == WindowAnswer.Yes)
                    canvas.Rectangle(from, y + 2, to - from, RowHeight - 5, "#6f8a5d");
                else if (answer == WindowAnswer.Doubtful)
                {
                    canvas.Rectangle(from, y + 2, to - from, RowHeight - 5, "#f4efe4");
                    for (double x = from + 3; x < to - 1; x += 4)
                        canvas.Line(x, y + 3, x, y + RowHeight - 4, 0.5);
                }
                i = end;
            }
        }
    }

    private static string Label(FatWindow window) => window.Use
        + (window.Of.EndsWith("margarine", StringComparison.Ordinal) ? ", margarine" : window.Of.EndsWith("shortening", StringComparison.Ordinal) ? ", shortening" : "");

    private static string Caption(Formula formula, SolidFat cold, FatCurves? curves, bool isJudged)
    {
        Evidence? worst = cold.Evidence;
        for (double celsius = MinimumCelsius; celsius <= MaximumCelsius; celsius += 5)
        {
            if (formula.SolidFat(celsius, curves).Evidence is Evidence here && !(here < worst))
                worst = here;
        }
        return (isJudged ? "Bars: filled where surely within a window, hatched where in doubt, empty where not; judged from 20 to 40 °C. " : "")
            + (worst is Evidence kind ? $"Band: the range of the curves, of which the least sure is {kind.ToWord()}. " : "")
            + (cold.FatGrams - cold.KnownFatGrams > 0.005 * cold.FatGrams ? $"No curve is known of the fat of {cold.WithoutCurveNames}: the band allows for all and nothing of it. " : "")
            + (isJudged ? $"Windows: {string.Join(", ", FatWindow.All.Select(window => window.Provenance.Source.ShortName).Distinct())}, buttercreams of margarine and shortening. " : "") + "A direction and no promise."
            + string.Concat(cold.Cautions.Where(words => words.StartsWith("Not an ideal", StringComparison.Ordinal) || words.StartsWith("The curve", StringComparison.Ordinal)).Take(2).Select(words => " " + words));
    }

    private static string Told(Formula formula, double? room, FatCurves? curves)
    {
        IEnumerable<string> points = ((double[])[10, 18, 20, 24, 28, 31, 35, 40]).Select(celsius => formula.SolidFat(celsius, curves).ToString());
        return $"{string.Join("; ", points)}. {string.Join("; ", FatWindow.All.Select(window => formula.Until(window, curves) + $" ({window.Of})"))}."
            + (room is double celsius ? string.Create(CultureInfo.InvariantCulture, $" The room has {celsius:0.#} °C.") : "");
    }

    private static IEnumerable<string> Wrapped(string text)
    {
        StringBuilder line = new();
        foreach (string word in text.Split(' '))
        {
            if (line.Length > 0 && SvgCanvas.WidthOf(line + " " + word, Letter) > Width - 16)
            {
                yield return line.ToString();
                line.Clear();
            }
            line.Append(line.Length > 0 ? " " : "").Append(word);
        }
        yield return line.ToString();
    }
}
