namespace Confectio.Text;

/// <summary>
/// A bound on number formats that a caller hands in: "F100000000" asks for a text of 100 million characters, and gets it.
/// </summary>
internal static class NumberFormat
{
    /// <summary>More digits than any double has.</summary>
    private const int Longest = 32;

    private const int MostDigits = 99;

    /// <summary>The format itself, where it is short enough and asks for at most 99 digits.</summary>
    /// <exception cref="FormatException">It is longer than 32 characters, or asks for more digits.</exception>
    public static string Checked(string format)
    {
        ReadOnlySpan<char> digits = format.AsSpan();
        if (digits.Length > 0 && char.IsAsciiLetter(digits[0]) && digits[1..].IndexOfAnyExceptInRange('0', '9') < 0)
            digits = digits[1..].TrimStart('0');
        else
            digits = default;
        return format.Length <= Longest && (digits.Length < 2
            || (digits.Length == 2 && int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture) <= MostDigits))
            ? format
            : throw new FormatException($"The number format {Excerpt.Of(format)} is longer than 32 characters or asks for more than 99 "
                + $"digits.");
    }
}
