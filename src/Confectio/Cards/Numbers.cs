using System.Globalization;
using Confectio.Measures;

namespace Confectio.Cards;

/// <summary>Reads the numbers of a card as they are printed: <c>1,250</c>, <c>1 600</c>, <c>12.5</c>, <c>12,5</c>, <c>3 1/2</c>.</summary>
internal static class Numbers
{
    /// <summary>A number for a pattern.</summary>
    public const string Pattern = @"(?:\d{1,3}(?:[ ,\u00A0\u202F]\d{3})+(?!\d)|\d{1,7}(?:[.,]\d{1,4})?(?:\s?[½⅓⅔¼¾⅛⅜⅝⅞]|\s\d/\d)?|[½⅓⅔¼¾⅛⅜⅝⅞])";

    /// <summary>What parts the ends of a range.</summary>
    public const string To = @"\s*(?:-|‐|‑|–|—|\bto\b|\bor\b)\s*";

    public static PrintedNumber? Read(ReadOnlySpan<char> text, bool comma)
    {
        text = text.Trim();
        Span<char> digits = stackalloc char[16];
        int count = 0, decimals = -1;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (char.IsAsciiDigit(c) && count < digits.Length)
            {
                digits[count++] = c;
                decimals += decimals >= 0 ? 1 : 0;
            }
            else if (c is ' ' or '\u00A0' or '\u202F' && IsGroup(text[(i + 1)..]) && decimals < 0)
            {
                continue;
            }
            else if (c is '.' or ',' && decimals < 0 && count > 0)
            {
                // A comma before three digits parts thousands, unless the card has decimal commas; a point never does here.
                if (c == ',' && !comma && IsGroup(text[(i + 1)..]) && !(count == 1 && digits[0] == '0'))
                    continue;
                decimals = 0;
            }
            else
            {
                AmountReader reader = new(text, comma ? AmountReading.DecimalComma : AmountReading.DecimalPoint);
                return reader.TryReadQuantity(out Fraction fraction) && reader.Position == text.Length
                    ? new PrintedNumber(fraction.ToDouble(), fraction.ToDouble(), 1.0 / Math.Min(fraction.Denominator, 8)) : null;
            }
        }
        if (count == 0 || !double.TryParse(digits[..count], NumberStyles.None, CultureInfo.InvariantCulture, out double whole))
            return null;
        double step = Math.Pow(10, -Math.Max(0, decimals));
        double value = double.Parse(string.Create(CultureInfo.InvariantCulture, $"{whole}e-{Math.Max(0, decimals)}"), CultureInfo.InvariantCulture);
        return new PrintedNumber(value, value, step);
    }

    public static PrintedNumber? Read(ReadOnlySpan<char> low, ReadOnlySpan<char> high, bool comma)
    {
        if (Read(low, comma) is not PrintedNumber first)
            return null;
        return high.IsEmpty || Read(high, comma) is not PrintedNumber second || second.Low < first.Low ? first
            : new PrintedNumber(first.Low, second.Low, Math.Min(first.Step, second.Step));
    }

    private static bool IsGroup(ReadOnlySpan<char> rest) => rest.Length >= 3 && char.IsAsciiDigit(rest[0]) && char.IsAsciiDigit(rest[1])
        && char.IsAsciiDigit(rest[2]) && (rest.Length == 3 || !char.IsAsciiDigit(rest[3]));
}
