using System.Globalization;

namespace Confectio.Sugars;

/// <summary>A number and a unit as text, the same in every culture: no thousands separators, a decimal point.</summary>
internal static class UnitText
{
    public static bool TryRead(ReadOnlySpan<char> text, ReadOnlySpan<char> unit, out double value)
    {
        text = text.Trim();
        value = 0;
        return text.EndsWith(unit, StringComparison.OrdinalIgnoreCase) && double.TryParse(text[..^unit.Length].Trim(),
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }
}
