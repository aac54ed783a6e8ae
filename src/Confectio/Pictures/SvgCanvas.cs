using System.Globalization;
using System.Text;

namespace Confectio.Pictures;

/// <summary>
/// Writes shapes and text as SVG 1.1: invariant numbers, escaped text, and no ids, which pictures on one page would share.
/// </summary>
internal sealed class SvgCanvas
{
    public const string Ink = "#4a3b2e";

    private const string Font = "Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif";

    private readonly StringBuilder _shapes = new();

    /// <summary>A number with at most two decimals, and never a minus before zero.</summary>
    public static string Number(double value)
    {
        string text = value.ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>A point in the data of a path.</summary>
    public static string Point(double x, double y) => $"{Number(x)} {Number(y)}";

    /// <summary>An arc to a point in the data of a path: of a round, at most half of it, counter-clockwise as it is seen.</summary>
    public static string Arc(double radius, double x, double y) => $" A {Point(radius, radius)} 0 0 0 {Point(x, y)}";

    /// <summary>
    /// Text as XML may hold it: what no XML can hold is shown as what cannot be shown, and so is what turns the direction of writing round,
    /// by which a name would change how the figures beside it are read.
    /// </summary>
    public static string Escape(string text)
    {
        StringBuilder escaped = new(text.Length + 16);
        foreach (Rune rune in text.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\t' or '\n' or '\r' => escaped.Append(' '),
                < ' ' or (>= 0x7F and <= 0x9F) or 0x2028 or 0x2029 or 0xFFFE or 0xFFFF => escaped.Append('\uFFFD'),
                0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => escaped.Append('\uFFFD'),
                _ => escaped.Append(rune.ToString()),
            };
        }
        return escaped.ToString();
    }

    /// <summary>About how wide text is, never too little: the letters of the widest of the usual fonts.</summary>
    public static double WidthOf(string text, double size)
    {
        double em = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            em += rune.Value switch
            {
                ' ' or 'i' or 'j' or 'l' or 'I' or 'f' or 't' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' or '(' or ')' => 0.4,
                'm' or 'w' or 'M' or 'W' or '%' or '@' => 1,
                < 0x80 => char.IsAsciiLetterUpper((char)rune.Value) ? 0.78 : 0.65,
                < 0x1100 => 0.75,
                _ => 1.2,
            };
        }
        return em * size;
    }

    /// <summary>Text, cut where it would be wider than there is room.</summary>
    public static string Fit(string text, double size, double width)
    {
        if (text.Length <= 1000 && WidthOf(text, size) <= width)
            return text;
        double left = width - WidthOf("…", size);
        StringBuilder kept = new();
        foreach (Rune rune in text.EnumerateRunes())
        {
            left -= WidthOf(rune.ToString(), size);
            if (left < 0)
                break;
            kept.Append(rune.ToString());
        }
        return kept.ToString().TrimEnd() + "…";
    }

    public void Path(string data, string fill, string stroke = "none", double width = 0, string more = "") =>
        _shapes.Append(CultureInfo.InvariantCulture,
        $"<path d=\"{data}\" fill=\"{fill}\" stroke=\"{stroke}\""
        + $"{(stroke == "none" ? "" : $" stroke-width=\"{Number(width)}\"")}{more}/>\n");

    public void Rectangle(double x, double y, double width, double height, string fill, double corner = 0) =>
        _shapes.Append(CultureInfo.InvariantCulture,
        $"<rect x=\"{Number(x)}\" y=\"{Number(y)}\" width=\"{Number(width)}\" height=\"{Number(height)}\""
        + $"{(corner > 0 ? $" rx=\"{Number(corner)}\"" : "")} "
        + $"fill=\"{fill}\" stroke=\"{Ink}\" stroke-width=\"0.6\"/>\n");

    public void Circle(double x, double y, double radius, string fill) => _shapes.Append(CultureInfo.InvariantCulture,
        $"<circle cx=\"{Number(x)}\" cy=\"{Number(y)}\" r=\"{Number(radius)}\" fill=\"{fill}\" stroke=\"{Ink}\" stroke-width=\"0.6\"/>\n");

    public void Line(double x0, double y0, double x1, double y1, double width = 0.8) => _shapes.Append(CultureInfo.InvariantCulture,
        $"<line x1=\"{Number(x0)}\" y1=\"{Number(y0)}\" x2=\"{Number(x1)}\" y2=\"{Number(y1)}\" "
        + $"stroke=\"{Ink}\" stroke-width=\"{Number(width)}\"/>\n");

    public void Text(double x, double y, string text, double size, string anchor = "start", bool bold = false, bool upward = false) =>
        _shapes.Append(CultureInfo.InvariantCulture,
        $"<text x=\"{Number(x)}\" y=\"{Number(y)}\" font-size=\"{Number(size)}\""
        + $"{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")}{(bold ? " font-weight=\"bold\"" : "")}"
        + $"{(upward ? $" transform=\"rotate(-90 {Number(x)} {Number(y)})\"" : "")}>{Escape(text)}</text>\n");

    /// <summary>A line that measures a length, with a tick at each end.</summary>
    public void Measure(double x0, double y0, double x1, double y1)
    {
        Line(x0, y0, x1, y1);
        double across = x0 == x1 ? 4 : 0, along = x0 == x1 ? 0 : 4;
        Line(x0 - across, y0 - along, x0 + across, y0 + along);
        Line(x1 - across, y1 - along, x1 + across, y1 + along);
    }

    /// <summary>The whole picture.</summary>
    public string Whole(double width, double height, double shownWidth, string title, string description) =>
        string.Create(CultureInfo.InvariantCulture,
        $"""
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {Number(width)} {Number(height)}" width="{Number(shownWidth)}" height="{Number(shownWidth * height / width)}" role="img" font-family="{Font}" fill="{Ink}">
        <title>{Escape(title)}</title>
        <desc>{Escape(description)}</desc>
        <rect width="100%" height="100%" fill="#ffffff"/>
        {_shapes}</svg>

        """).ReplaceLineEndings("\n");
}
