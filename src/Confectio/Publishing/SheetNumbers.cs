using System.Globalization;

namespace Confectio.Publishing;

/// <summary>Writes numbers for people: a digit's place decides how many there are, a culture which mark stands before the decimals.</summary>
internal sealed class SheetNumbers
{
    // Below it a number is read without a mark between its thousands.
    private const double LeastGrouped = 10_000;

    private const int MostDecimals = 15;

    private readonly NumberFormatInfo _format;
    private readonly bool _groups;

    private SheetNumbers(CultureInfo culture, bool groups)
    {
        // Some cultures set a mark of direction before the sign, which is hidden and would be shown as such.
        _format = (NumberFormatInfo)culture.NumberFormat.Clone();
        _format.NegativeSign = "-";
        _groups = groups;
    }

    /// <summary>A decimal point and no groups: what a program or the reader of phrases reads.</summary>
    public static SheetNumbers Invariant { get; } = new(CultureInfo.InvariantCulture, groups: false);

    /// <summary>The numbers of a culture; of none, the invariant ones.</summary>
    public static SheetNumbers Of(CultureInfo? culture, bool groups) => culture is null ? Invariant : new SheetNumbers(culture, groups);

    /// <summary>The number to the digit of a power of ten: tenths for -1, tens for 1.</summary>
    public string At(double value, int place)
    {
        if (place > 0)
        {
            double unit = Math.Pow(10, place);
            value = Math.Round(value / unit, MidpointRounding.AwayFromZero) * unit;
        }
        string kind = _groups && Math.Abs(value) >= LeastGrouped ? "N" : "F";
        string text = value.ToString(kind + Math.Clamp(-place, 0, MostDecimals).ToString(CultureInfo.InvariantCulture), _format);
        // What rounds to nothing has no sign.
        return text.AsSpan().IndexOfAnyInRange('1', '9') < 0 && text.StartsWith(_format.NegativeSign, StringComparison.Ordinal) ? text[_format.NegativeSign.Length..] : text;
    }

    /// <summary>The same of an amount: what is not nothing is not printed as nothing.</summary>
    public string Some(double value, int place)
    {
        string text = At(value, place);
        return value > 0 && text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? "under " + At(Math.Pow(10, place), place) : text;
    }

    /// <summary>At most so many decimals, without noughts behind.</summary>
    public string Short(double value, int decimals) => value.ToString("0." + new string('#', decimals), _format);

    /// <summary>The place of the last digit of a number that is nobody's conversion: its own where it has two decimals at most, otherwise <see cref="FinePlace"/>.</summary>
    public static int OwnPlace(double value)
    {
        value = Math.Abs(value);
        if (value is < 1e-9 or > 1e15)
            return 0;
        double hundredths = value * 100;
        if (Math.Abs(hundredths - Math.Round(hundredths)) <= 1e-9 * Math.Max(1, hundredths))
        {
            long whole = (long)Math.Round(hundredths);
            return whole % 100 == 0 ? 0 : whole % 10 == 0 ? -1 : -2;
        }
        return FinePlace(value);
    }

    /// <summary>Whole numbers from a hundred on, tenths from one, and two digits of what is below: as kitchen scales go.</summary>
    public static int FinePlace(double value) => Math.Abs(value) switch
    {
        >= 100 => 0,
        >= 1 => -1,
        > 0 => Math.Max(-9, (int)Math.Floor(Math.Log10(Math.Abs(value))) - 1),
        _ => 0,
    };
}
