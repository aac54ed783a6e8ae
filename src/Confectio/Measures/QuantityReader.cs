using System.Globalization;

namespace Confectio.Measures;

/// <summary>
/// The one reader of a number with its unit, the same in every culture: whole numbers, decimals with a point or a comma, fractions, mixed
/// numbers and number words. No copy of the text is made, and nothing is thrown: a failure is a reason.
/// </summary>
internal static class QuantityReader
{
    // No number that a double can have is written longer than this: 24 characters and the unit.
    private const int Longest = 60;

    /// <summary>Reads one number and one unit, which take the whole text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="units">The units that are known here.</param>
    /// <param name="signed">Whether the number may have a sign.</param>
    /// <param name="thousands">
    /// Whether a comma before three digits stands between thousands, as in 5,200 ft; otherwise it is refused.
    /// </param>
    /// <param name="value">In the fixed unit of the quantity; finite or +infinity.</param>
    /// <returns>What is wrong with the text, or null.</returns>
    public static string? Read(ReadOnlySpan<char> text, ReadOnlySpan<UnitWord> units, bool signed, bool thousands, out double value)
    {
        value = 0;
        text = text.Trim();
        if (Refusal(text) is { } refusal)
            return refusal;
        bool isNegative = signed && text[0] is '-' or '\u2212';
        if (signed && text[0] is '-' or '\u2212' or '+')
            text = text[1..];
        if (ReadNumber(text, thousands, out Number number, out int end) is { } reason)
            return reason;
        ReadOnlySpan<char> word = text[end..].Trim();
        if (word.IsEmpty)
            return "the unit is missing";
        if (!TryFind(word, units, out UnitWord unit))
            return "the unit is not known";
        value = number.In(unit, isNegative) + 0.0;
        return null;
    }

    /// <summary>Reads numbers with units that fall, such as 12 min 30 s; the value is their sum.</summary>
    /// <param name="text">The text.</param>
    /// <param name="units">The units, which fall.</param>
    /// <param name="value">In the fixed unit of the quantity; finite or +infinity.</param>
    /// <returns>What is wrong with the text, or null.</returns>
    public static string? ReadSum(ReadOnlySpan<char> text, ReadOnlySpan<UnitWord> units, out double value)
    {
        value = 0;
        text = text.Trim();
        if (Refusal(text) is { } refusal)
            return refusal;
        double last = double.PositiveInfinity, sum = 0;
        while (!text.IsEmpty)
        {
            if (ReadNumber(text, false, out Number number, out int end) is { } reason)
                return reason;
            text = text[end..].TrimStart();
            int next = text.IndexOfAnyInRange('0', '9');
            ReadOnlySpan<char> word = (next < 0 ? text : text[..next]).Trim();
            if (word.IsEmpty)
                return "the unit is missing";
            if (!TryFind(word, units, out UnitWord unit))
                return "the unit is not known";
            if (!(unit.Times < last))
                return "each unit must be smaller than the one before it";
            last = unit.Times;
            sum += number.In(unit, false);
            text = next < 0 ? [] : text[next..];
        }
        value = sum;
        return null;
    }

    private static string? Refusal(ReadOnlySpan<char> text) => text.IsEmpty ? "it is empty" : text.Length > Longest ? "it is too long"
        : null;

    private static bool TryFind(ReadOnlySpan<char> word, ReadOnlySpan<UnitWord> units, out UnitWord unit)
    {
        // "9-inch" stands before a noun.
        if (word[0] == '-' && word.Length > 1 && char.IsAsciiLetter(word[1]))
            word = word[1..];
        if (word[^1] == '.' && word.Length > 1 && char.IsAsciiLetter(word[^2]))
            word = word[..^1];
        foreach (UnitWord one in units)
        {
            if (!word.Equals(one.Word, StringComparison.OrdinalIgnoreCase))
                continue;
            unit = one;
            return true;
        }
        unit = default;
        return false;
    }

    // Decimals as a double, so that all the digits that one can have are read back; the rest as a fraction, as amounts are read.
    private static string? ReadNumber(ReadOnlySpan<char> text, bool thousands, out Number number, out int end)
    {
        number = default;
        int whole = DigitsFrom(text, 0), mark = -1;
        end = whole;
        if (thousands && ReadThousands(text, whole, out double grouped, out int groupsEnd))
        {
            (number, end) = (new Number(default, grouped), groupsEnd);
            return null;
        }
        if (end < text.Length && text[end] is '.' or ',')
        {
            int decimals = DigitsFrom(text, end + 1);
            if (decimals > end + 1)
                (mark, end) = (end, decimals);
        }
        if (mark >= 0 && end + 1 < text.Length && text[end] is '.' or ',' && char.IsAsciiDigit(text[end + 1]))
            return "a number has at most one decimal mark and nothing between thousands";
        bool isThree = mark is >= 1 and <= 3 && end - mark == 4 && text[0] != '0';
        if (isThree && text[mark] == ',')
            return "a comma before three digits may stand between thousands or for a decimal point";
        if (isThree && thousands)
            return "a point before three digits may stand between thousands or for a decimal point";
        bool isSmall = IsExponent(text, end, out int exponentEnd) && whole > 0;
        end = isSmall ? exponentEnd : end;
        if (mark < 0 && !isSmall)
        {
            AmountReader reader = new(text, AmountReading.DecimalPoint);
            bool isRead = reader.TryReadQuantity(out Fraction fraction);
            end = reader.Position;
            number = new Number(fraction, 0);
            return isRead ? null : reader.Reason;
        }
        Span<char> digits = stackalloc char[Longest];
        text[..end].CopyTo(digits);
        if (mark >= 0)
            digits[mark] = '.';
        number = new Number(default, double.Parse(digits[..end], NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture));
        return null;
    }

    // 5,200 or 12,345.5: a comma before each three digits, and a point after them at most.
    private static bool ReadThousands(ReadOnlySpan<char> text, int whole, out double value, out int end)
    {
        (value, end) = (0, whole);
        if (whole is < 1 or > 3 || text[0] == '0')
            return false;
        while (end < text.Length && text[end] == ',' && DigitsFrom(text, end + 1) == end + 4)
            end += 4;
        if (end == whole)
            return false;
        if (end + 1 < text.Length && text[end] == '.' && char.IsAsciiDigit(text[end + 1]))
            end = DigitsFrom(text, end + 1);
        return double.TryParse(text[..end], NumberStyles.AllowThousands | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
            out value);
    }

    private static int DigitsFrom(ReadOnlySpan<char> text, int from)
    {
        while (from < text.Length && char.IsAsciiDigit(text[from]))
            from++;
        return from;
    }

    // As a double is written that is below 1e-5.
    private static bool IsExponent(ReadOnlySpan<char> text, int from, out int end)
    {
        end = from;
        if (from + 2 >= text.Length || text[from] is not ('E' or 'e') || text[from + 1] is not ('-' or '+'))
            return false;
        end = DigitsFrom(text, from + 2);
        return end > from + 2;
    }

    // A fraction, or a value where there were decimals.
    private readonly record struct Number(Fraction Fraction, double Value)
    {
        // Of a fraction the numerator first: the only rounding is that of the division.
        public double In(UnitWord unit, bool isNegative)
        {
            double sign = isNegative ? -1 : 1;
            return Value > 0 ? (sign * Value + unit.Before) * unit.Times / unit.Per
                : (sign * Fraction.Numerator + unit.Before * Fraction.Denominator) * unit.Times / (unit.Per * Fraction.Denominator);
        }
    }
}
