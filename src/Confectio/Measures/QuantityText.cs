using System.Globalization;
using Confectio.Text;

namespace Confectio.Measures;

/// <summary>
/// The readers of quantities as people write them: <c>240F</c>, <c>5,200 ft</c>, <c>30.1 inHg</c>, <c>12 min 30 s</c>, <c>1.4 kg</c>. One
/// for each quantity, the same in every culture; each number comes back in the unit that its method names.
/// </summary>
/// <remarks>
/// A number is whole, a decimal with a point or a comma, a fraction or a mixed number, and its unit is never guessed. A comma before three
/// digits may stand between thousands or for a decimal point and is refused; between the thousands of metres and feet it is read. Nothing
/// here asks whether the quantity makes sense where it is used: that is for who uses it.
/// </remarks>
public static class QuantityText
{
    /// <summary>What none of these quantities is larger than, in its own unit.</summary>
    internal const double Most = 1e12;

    private const double AbsoluteZero = -273.15;

    /// <summary>Centimetres. Inches by the agreement of 1959 on the yard.</summary>
    internal static readonly UnitWord[] CentimetreUnits =
    [
        new("cm", 1, 1), new("centimetre", 1, 1), new("centimetres", 1, 1), new("centimeter", 1, 1), new("centimeters", 1, 1),
        new("mm", 1, 10), new("millimetre", 1, 10), new("millimetres", 1, 10), new("millimeter", 1, 10), new("millimeters", 1, 10),
        new("in", 254, 100), new("inch", 254, 100), new("inches", 254, 100), new("\"", 254, 100), new("\u2033", 254, 100),
        new("\u201D", 254, 100),
    ];

    /// <summary>Kilopascals. The conventional millimetre and inch of mercury.</summary>
    internal static readonly UnitWord[] KilopascalUnits =
    [
        new("kPa", 1, 1), new("hPa", 1, 10), new("mbar", 1, 10), new("mmHg", 0.133322387415, 1), new("mm Hg", 0.133322387415, 1),
        new("inHg", 3.386389, 1), new("in Hg", 3.386389, 1),
    ];

    private static readonly UnitWord[] s_metres =
    [
        new("m", 1, 1), new("metre", 1, 1), new("metres", 1, 1), new("meter", 1, 1), new("meters", 1, 1),
        new("km", 1000, 1), new("ft", 3048, 10000), new("foot", 3048, 10000), new("feet", 3048, 10000),
        .. CentimetreUnits.Select(unit => unit with { Per = 100 * unit.Per }),
    ];

    private static readonly UnitWord[] s_celsius =
    [
        .. Degrees("C", 1, 0), .. Degrees("celsius", 1, 0), .. Degrees("F", 1.8, -32), .. Degrees("fahrenheit", 1.8, -32),
        new("\u2103", 1, 1), new("\u2109", 1, 1.8, -32),
    ];

    private static readonly UnitWord[] s_seconds =
    [
        new("d", 86400, 1), new("day", 86400, 1), new("days", 86400, 1),
        new("h", 3600, 1), new("hr", 3600, 1), new("hrs", 3600, 1), new("hour", 3600, 1), new("hours", 3600, 1),
        new("min", 60, 1), new("mins", 60, 1), new("minute", 60, 1), new("minutes", 60, 1),
        new("s", 1, 1), new("sec", 1, 1), new("secs", 1, 1), new("second", 1, 1), new("seconds", 1, 1),
    ];

    /// <summary>Reads a temperature, such as <c>240F</c>, <c>116 °C</c>, <c>-18 °C</c> or <c>240 degrees F</c>.</summary>
    /// <param name="text">The text.</param>
    /// <returns>°C, from −273.15 to 1e12; °F by (F − 32)/1.8. Worked number: <c>240F</c> is 115.56.</returns>
    /// <exception cref="FormatException">The text is no temperature; the message says what was read and what was expected.</exception>
    public static double ParseCelsius(ReadOnlySpan<char> text) => ReadCelsius(text, out double celsius) is { } reason
        ? throw Refusal(text, "a temperature", reason, "A number with °C or °F", "116 °C or 240 °F") : celsius;

    /// <summary>Reads a temperature; see <see cref="ParseCelsius"/>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="celsius">The temperature, °C; 0 where the text is none.</param>
    /// <returns>Whether the text is a temperature.</returns>
    public static bool TryParseCelsius(ReadOnlySpan<char> text, out double celsius) => ReadCelsius(text, out celsius) is null;

    /// <summary>Reads a length or an altitude, such as <c>9 in</c>, <c>22.9 cm</c>, <c>1600 m</c> or <c>5,200 ft</c>.</summary>
    /// <param name="text">
    /// The text. A comma before three digits stands between thousands; a point there, as in <c>1.600 m</c>, may be meant so too, and is
    /// refused.
    /// </param>
    /// <returns>m, from −1e12 to 1e12. Worked number: <c>5200 ft</c> is 1584.96.</returns>
    /// <exception cref="FormatException">The text is no length; the message says what was read and what was expected.</exception>
    public static double ParseMetres(ReadOnlySpan<char> text) => ReadMetres(text, out double metres) is { } reason
        ? throw Refusal(text, "a length", reason, "A number with m, cm, mm, km, in or ft", "1600 m, 5200 ft or 9 1/2 in") : metres;

    /// <summary>Reads a length or an altitude; see <see cref="ParseMetres"/>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="metres">The length, m; 0 where the text is none.</param>
    /// <returns>Whether the text is a length.</returns>
    public static bool TryParseMetres(ReadOnlySpan<char> text, out double metres) => ReadMetres(text, out metres) is null;

    /// <summary>Reads a pressure, such as <c>101.3 kPa</c>, <c>1013 hPa</c>, <c>30.1 inHg</c> or <c>760 mmHg</c>.</summary>
    /// <param name="text">The text.</param>
    /// <returns>kPa, from 0 to 1e12. Worked number: <c>30.1 inHg</c> is 101.93, at 3.386389 kPa each.</returns>
    /// <exception cref="FormatException">The text is no pressure; the message says what was read and what was expected.</exception>
    public static double ParseKilopascals(ReadOnlySpan<char> text) => ReadKilopascals(text, out double kilopascals) is { } reason
        ? throw Refusal(text, "a pressure", reason, "A number with kPa, hPa, mbar, mmHg or inHg", "84 kPa or 30.1 inHg") : kilopascals;

    /// <summary>Reads a pressure; see <see cref="ParseKilopascals"/>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="kilopascals">The pressure, kPa; 0 where the text is none.</param>
    /// <returns>Whether the text is a pressure.</returns>
    public static bool TryParseKilopascals(ReadOnlySpan<char> text, out double kilopascals) =>
        ReadKilopascals(text, out kilopascals) is null;

    /// <summary>Reads a duration, such as <c>12 min 30 s</c>, <c>1 h 5 min</c>, <c>90 s</c> or <c>1:30:00</c>.</summary>
    /// <param name="text">
    /// The text. A clock has hours, minutes and seconds: <c>1:30</c> may be of hours or of minutes and is refused.
    /// </param>
    /// <returns>s, from 0 to 1e12. Worked number: <c>12 min 30 s</c> is 750.</returns>
    /// <exception cref="FormatException">The text is no duration; the message says what was read and what was expected.</exception>
    public static double ParseSeconds(ReadOnlySpan<char> text) => ReadSeconds(text, out double seconds) is { } reason
        ? throw Refusal(text, "a duration", reason, "Numbers with d, h, min or s, or h:mm:ss,", "12 min 30 s or 1:30:00") : seconds;

    /// <summary>Reads a duration; see <see cref="ParseSeconds"/>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="seconds">The duration, s; 0 where the text is none.</param>
    /// <returns>Whether the text is a duration.</returns>
    public static bool TryParseSeconds(ReadOnlySpan<char> text, out double seconds) => ReadSeconds(text, out seconds) is null;

    /// <summary>Reads one mass, such as <c>600 g</c>, <c>1.4 kg</c> or <c>1 lb 4 oz</c>, as <see cref="Amount"/> reads it.</summary>
    /// <param name="text">The text. A range is no one mass.</param>
    /// <returns>g, from 0 to 1e12. Worked number: <c>1 lb 4 oz</c> is 566.99.</returns>
    /// <exception cref="FormatException">The text is no mass; the message says what was read and what was expected.</exception>
    public static double ParseGrams(ReadOnlySpan<char> text)
    {
        Amount amount = Amount.Parse(text);
        return GramsOf(amount, out double grams) is { } reason
            ? throw Refusal(text, "a mass", reason, "A number with g, kg, oz or lb", "600 g or 1.5 kg") : grams;
    }

    /// <summary>Reads one mass; see <see cref="ParseGrams"/>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="grams">The mass, g; 0 where the text is none.</param>
    /// <returns>Whether the text is a mass.</returns>
    public static bool TryParseGrams(ReadOnlySpan<char> text, out double grams)
    {
        grams = 0;
        return Amount.TryParse(text, out Amount amount) && GramsOf(amount, out grams) is null;
    }

    internal static string? ReadKilopascals(ReadOnlySpan<char> text, out double kilopascals) =>
        Checked(QuantityReader.Read(text, KilopascalUnits, signed: false, thousands: false, out kilopascals), 0, ref kilopascals);

    private static string? ReadCelsius(ReadOnlySpan<char> text, out double celsius)
    {
        string? reason = QuantityReader.Read(text, s_celsius, signed: true, thousands: false, out celsius);
        // −459.67 °F is absolute zero, and its last bit may be below.
        if (reason is null && celsius < AbsoluteZero && celsius > AbsoluteZero - 1e-9)
            celsius = AbsoluteZero;
        return Checked(reason, AbsoluteZero, ref celsius);
    }

    private static string? ReadMetres(ReadOnlySpan<char> text, out double metres) =>
        Checked(QuantityReader.Read(text, s_metres, signed: true, thousands: true, out metres), -Most, ref metres);

    private static string? ReadSeconds(ReadOnlySpan<char> text, out double seconds)
    {
        ReadOnlySpan<char> clock = text.Trim();
        string? reason = clock.Length <= 20 && clock.Contains(':') ? ReadClock(clock, out seconds)
            : QuantityReader.ReadSum(text, s_seconds, out seconds);
        return Checked(reason, 0, ref seconds);
    }

    private static string? ReadClock(ReadOnlySpan<char> text, out double seconds)
    {
        seconds = 0;
        Span<Range> parts = stackalloc Range[4];
        int count = text.Split(parts, ':');
        if (count == 2)
            return "it may be of hours and minutes or of minutes and seconds";
        if (count != 3 || text[parts[1]].Length != 2 || text[parts[2]].Length != 2
            || !TryWhole(text[parts[0]], out int hours) || !TryWhole(text[parts[1]], out int minutes)
                || !TryWhole(text[parts[2]], out int rest)
            || minutes > 59 || rest > 59)
            return "a clock has hours, minutes below 60 and seconds below 60";
        seconds = 3600.0 * hours + 60 * minutes + rest;
        return null;
    }

    private static bool TryWhole(ReadOnlySpan<char> text, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);

    private static string? GramsOf(in Amount amount, out double grams)
    {
        grams = 0;
        if (!amount.IsMass)
            return "it is no mass";
        if (amount.IsRange)
            return "it is a range";
        // An ounce of mass is 28.349523125 g; the 28 g of US labelling are for labels.
        grams = amount.Grams(MeasuringSystem.OfNobody);
        return Checked(null, 0, ref grams);
    }

    private static string? Checked(string? reason, double low, ref double value)
    {
        if (reason is null && !(value >= low && value <= Most))
            reason = value < low ? "it is below all that can be" : "the number is too large";
        if (reason is not null)
            value = 0;
        return reason;
    }

    private static UnitWord[] Degrees(string letter, double per, double before) =>
    [
        new(letter, 1, per, before), new($"\u00B0{letter}", 1, per, before), new($"\u00B0 {letter}", 1, per, before),
        new($"\u00BA{letter}", 1, per, before), new($"deg {letter}", 1, per, before), new($"degree {letter}", 1, per, before),
        new($"degrees {letter}", 1, per, before),
    ];

    private static FormatException Refusal(ReadOnlySpan<char> text, string what, string reason, string expected, string such) =>
        new($"{Excerpt.Of(text)} is not {what}: {reason}. {expected} was expected, such as {such}.");
}
