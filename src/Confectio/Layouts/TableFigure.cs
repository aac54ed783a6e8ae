using System.Globalization;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Layouts;

/// <summary>
/// A number as a table prints it, with its unit: the value, how far it may be from what was meant by its last digit or its range, and its
/// decimals, because a mistake is made in print.
/// </summary>
internal readonly record struct TableFigure
{
    private TableFigure(double value, double resolution, int decimals, FigureUnit unit, double width, TableCell cell) =>
        (Value, Resolution, Decimals, Unit, Width, Line, Column) = (value, resolution, (sbyte)decimals, unit, width, cell.Line,
            cell.Column);

    /// <summary>The number in its own unit; of a range, the middle.</summary>
    public double Value { get; }

    /// <summary>The width in which the meant number lies round <see cref="Value"/>: the unit of the last digit, more of a range.</summary>
    public double Resolution { get; }

    /// <summary>Decimal places; -1 where the number was printed as a fraction or a range.</summary>
    public sbyte Decimals { get; }

    /// <summary>The unit.</summary>
    public FigureUnit Unit { get; init; }

    /// <summary>From the low to the high end of a range; 0 of a number that is none.</summary>
    public double Width { get; }

    /// <summary>The two ends of a range as figures of their own.</summary>
    public (TableFigure Low, TableFigure High) Ends
    {
        get
        {
            TableCell place = new(Line, Column, "");
            double resolution = Resolution - Width;
            return (new(Value - Width / 2, resolution, -1, Unit, 0, place), new(Value + Width / 2, resolution, -1, Unit, 0, place));
        }
    }

    /// <summary>The line it stands on.</summary>
    public int Line { get; }

    /// <summary>The character of the line at which its cell starts, counted from 1.</summary>
    public int Column { get; }

    /// <summary>One of a unit: the pound of "cups to the pound", whose rounding is that of the number of cups.</summary>
    public static TableFigure One(FigureUnit unit, double resolution, TableCell cell) => new(1, resolution, -1, unit, 0, cell);

    /// <summary>A figure that another reader read.</summary>
    public static TableFigure Of(double value, double resolution, int decimals, FigureUnit unit, double width, TableCell cell) =>
        new(value, resolution, decimals, unit, width, cell);

    /// <summary>
    /// Reads a number with an optional unit: <c>125</c>, <c>12.5 g</c>, <c>4 1/4</c>, <c>4¼ oz</c>, <c>1,250</c>, <c>120-130</c>,
    /// <c>225 to 230</c>, <c>about 340</c>, <c>5/6</c>.
    /// </summary>
    /// <param name="cell">The cell.</param>
    /// <param name="text">The part of it to read.</param>
    /// <param name="unit">The unit of the column.</param>
    /// <param name="reading">The decimal mark.</param>
    /// <param name="figure">The figure.</param>
    public static bool TryRead(TableCell cell, ReadOnlySpan<char> text, FigureUnit unit, AmountReading reading, out TableFigure figure)
    {
        figure = default;
        text = WithoutAbout(Unmarked(text));
        if (text.Length is 0 or > 40)
            return false;
        ReadOnlySpan<char> low = WithoutUnit(text, ref unit);
        int sign = RangeSign(low, out int length);
        ReadOnlySpan<char> high = default;
        if (sign > 0)
        {
            FigureUnit first = unit;
            high = low[(sign + length)..].TrimStart();
            low = WithoutUnit(low[..sign].TrimEnd(), ref first);
        }
        // Of grams 5/6 is "5 or 6"; of ounces it would be five sixths, which nobody prints. A half, a third, a quarter, an eighth are.
        else if (low.IndexOf('/') is > 0 and int slash && low.IndexOf(' ') < 0 && IsRangeOfWholes(low[..slash], low[(slash + 1)..]))
        {
            high = low[(slash + 1)..];
            low = low[..slash];
        }
        if (!TryNumber(low, reading, out double value, out double resolution, out int decimals))
            return false;
        double width = 0;
        if (!high.IsEmpty)
        {
            if (!TryNumber(high, reading, out double top, out double topResolution, out _) || top < value)
                return false;
            width = top - value;
            // Each end is a figure of its own, rounded as such.
            resolution = width + Math.Min(resolution, topResolution);
            value += width / 2;
            decimals = width > 0 ? -1 : decimals;
        }
        figure = new TableFigure(value, resolution, decimals, unit, width, cell);
        return true;
    }

    /// <summary>A dash, "n/a" and their like: the table says that it has no figure here.</summary>
    public static bool IsNone(ReadOnlySpan<char> text) =>
        Unmarked(text) is "" or "-" or "–" or "—" or "--" or "." or "..." or "…" or "n/a" or "N/A" or "na" or "NA" or "n.a." or "nil"
            or "none" or "x" or "?";

    /// <summary>Footnote marks behind a text say nothing of the amount.</summary>
    public static ReadOnlySpan<char> Unmarked(ReadOnlySpan<char> text) => text.Trim().TrimEnd("*†‡§¹²³⁴⁵⁶⁷⁸⁹#").Trim();

    /// <summary>The number and its unit.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.###} {Unit.Word()}");

    private static ReadOnlySpan<char> WithoutAbout(ReadOnlySpan<char> text)
    {
        foreach (string word in (ReadOnlySpan<string>)["approximately", "approx.", "approx", "about", "around", "roughly", "circa", "abt.",
            "abt", "ca.", "ca", "c.", "~", "≈", "="])
        {
            if (text.StartsWith(word, StringComparison.OrdinalIgnoreCase)
                && (text.Length == word.Length || !char.IsAsciiLetter(text[word.Length]) || !char.IsAsciiLetter(word[^1])))
                return text[word.Length..].TrimStart();
        }
        return text;
    }

    private static ReadOnlySpan<char> WithoutUnit(ReadOnlySpan<char> text, scoped ref FigureUnit unit)
    {
        ReadOnlySpan<char> bare = text.EndsWith(".") ? text[..^1] : text;
        int letters = bare.Length;
        while (letters > 0 && char.IsAsciiLetter(bare[letters - 1]))
            letters--;
        if (letters == bare.Length || !FigureUnits.TryGet(bare[letters..], out FigureUnit printed))
            return text;
        unit = printed;
        return bare[..letters].TrimEnd();
    }

    private static int RangeSign(ReadOnlySpan<char> text, out int length)
    {
        length = 1;
        for (int i = 1; i + 1 < text.Length; i++)
        {
            if (text[i] is '-' or '‐' or '‑' or '‒' or '–' or '—' or '~')
            {
                // "1-1/2" is a mixed number, as printed tables have it.
                return text[i] == '-' && text[(i + 1)..].IndexOf('/') > 0 && text[..i].IndexOf('/') < 0 ? -1 : i;
            }
            if (text[i] == ' ')
            {
                foreach (string word in (ReadOnlySpan<string>)[" to ", " or "])
                {
                    if (text[i..].StartsWith(word, StringComparison.OrdinalIgnoreCase))
                    {
                        length = word.Length;
                        return i;
                    }
                }
            }
        }
        return -1;
    }

    private static bool IsRangeOfWholes(ReadOnlySpan<char> low, ReadOnlySpan<char> high) =>
        int.TryParse(low, NumberStyles.None, CultureInfo.InvariantCulture, out int first)
        && int.TryParse(high, NumberStyles.None, CultureInfo.InvariantCulture, out int second) && second > first
            && second is not (2 or 3 or 4 or 8 or 16);

    private static bool TryNumber(ReadOnlySpan<char> text, AmountReading reading, out double value, out double resolution, out int decimals)
    {
        value = resolution = 0;
        decimals = -1;
        text = text.Trim();
        if (TryDecimal(text, reading, out value, out decimals))
        {
            resolution = Math.Pow(10, -decimals);
            return true;
        }
        AmountReader reader = new(text, reading);
        if (!reader.TryReadQuantity(out Fraction fraction) || reader.Position < text.Length)
            return false;
        value = fraction.ToDouble();
        resolution = 1.0 / fraction.Denominator;
        decimals = -1;
        return true;
    }

    /// <summary>Digits with at most one decimal mark, and thousands parted by the other mark, a blank or an apostrophe.</summary>
    private static bool TryDecimal(ReadOnlySpan<char> text, AmountReading reading, out double value, out int decimals)
    {
        (char mark, char other) = reading == AmountReading.DecimalComma ? (',', '.') : ('.', ',');
        value = 0;
        decimals = 0;
        Span<char> digits = stackalloc char[24];
        int count = 0, point = -1, group = -1;
        for (int i = 0; i < text.Length && count < 18; i++)
        {
            char c = text[i];
            if (char.IsAsciiDigit(c))
            {
                digits[count++] = c;
                group += group >= 0 ? 1 : 0;
            }
            else if (c == mark && point < 0 && i + 1 < text.Length && group is -1 or 3)
            {
                point = count;
                group = -1;
            }
            else if ((c == other || c is ' ' or '\u00A0' or '\u202F' or '\'' or '’') && point < 0 && count > 0
                && (group < 0 ? count <= 3 : group == 3))
            {
                group = 0;
            }
            else
            {
                return false;
            }
        }
        if (count is 0 or 18 || group is not (-1 or 3))
            return false;
        decimals = point < 0 ? 0 : count - point;
        value = long.Parse(digits[..count], NumberStyles.None, CultureInfo.InvariantCulture) / Math.Pow(10, decimals);
        return true;
    }
}
