using System.Globalization;

namespace Confectio.Sugars;

/// <summary>A number and a unit as text, the same in every culture: no thousands separators, a decimal point.</summary>
internal static class UnitText
{
    public static bool TryRead(ReadOnlySpan<char> text, ReadOnlySpan<char> unit, out double value)
    {
        text = text.Trim();
        value = 0;
        return text.EndsWith(unit, StringComparison.OrdinalIgnoreCase) && TryReadNumber(text[..^unit.Length], out value);
    }

    /// <summary>A number before a unit. The unit is cut off already, the blank before it not.</summary>
    public static bool TryReadNumber(ReadOnlySpan<char> text, out double value) =>
        double.TryParse(text.Trim(), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);

    public static bool TryWrite(string text, Span<char> destination, out int charsWritten)
    {
        bool fits = text.TryCopyTo(destination);
        charsWritten = fits ? text.Length : 0;
        return fits;
    }
}
