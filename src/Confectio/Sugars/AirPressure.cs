using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>
/// The pressure of the air over the pot, which decides where water and syrup boil: from the altitude, from a barometer, or from the
/// kettle. <see langword="default"/> is the standard pressure at sea level, 101.325 kPa.
/// </summary>
/// <remarks>
/// Altitude goes through the standard atmosphere of ISO 2533:1975, p = 101.325·(1 − 0.0065·H/288.15)^5.25588 kPa, where H = r·z/(r + z)
/// is the geopotential altitude of the height z, both in metres, and r = 6 356 766 m. Weather moves the true pressure by about ±2 kPa
/// around it, which moves boiling water by ±0.6 °C; a kettle or a barometer tells more.
/// Text is a number and a unit: kPa, hPa, mbar, mmHg or inHg.
/// </remarks>
[JsonConverter(typeof(AirPressureJsonConverter))]
public readonly struct AirPressure : IEquatable<AirPressure>, IComparable<AirPressure>, ISpanFormattable, ISpanParsable<AirPressure>
{
    /// <summary>The lowest pressure, kPa; a vacuum pan cooks above it.</summary>
    public const double MinimumKilopascals = 1;

    /// <summary>The highest pressure, kPa; pressure cookers stay below it.</summary>
    public const double MaximumKilopascals = 200;

    /// <summary>The lowest altitude, m: below any shore.</summary>
    public const double MinimumMetres = -500;

    /// <summary>The highest altitude, m: above any kitchen.</summary>
    public const double MaximumMetres = 9000;

    internal const double MetresPerFoot = 0.3048;

    private static readonly CoefficientSet s_air = CoefficientTable.BuiltIn.Get("standard-atmosphere", "air");

    private static readonly double s_standard = s_air["pressure"], s_earthRadiusMetres = s_air["radius"],
        s_seaLevelKelvin = s_air["temperature"],
        s_lapseKelvinPerMetre = s_air["lapse"], s_exponent = s_air["gravity"] / (s_air["gas-constant"] * s_lapseKelvinPerMetre);

    private readonly double _kilopascals; // 0 in the default

    private AirPressure(double kilopascals) => _kilopascals = kilopascals;

    /// <summary>The standard pressure at sea level, 101.325 kPa.</summary>
    public static AirPressure SeaLevel => default;

    /// <summary>The pressure, kPa.</summary>
    public double Kilopascals => _kilopascals == 0 ? s_standard : _kilopascals;

    /// <summary>Where water boils, °C, by IAPWS-IF97, region 4. Worked number: 84.307 kPa gives 94.90.</summary>
    public double WaterBoilsCelsius => SaturatedWater.BoilingCelsius(Kilopascals);

    /// <summary>
    /// The altitude at which the standard atmosphere has this pressure, m. It is what rules of thumb ask for; on a day of
    /// low pressure it is above the true one. Below 0 at pressures above the standard one; pressures far from any kitchen give altitudes
    /// far from any.
    /// </summary>
    public double StandardAltitudeMetres
    {
        get
        {
            double geopotential = GeopotentialOfPressure(Kilopascals);
            return s_earthRadiusMetres * geopotential / (s_earthRadiusMetres - geopotential);
        }
    }

    /// <summary>A pressure in kilopascals, as a barometer in the kitchen shows it.</summary>
    /// <param name="kilopascals">The pressure, kPa, from 1 to 200.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kilopascals"/> is outside its range.</exception>
    public static AirPressure FromKilopascals(double kilopascals) =>
        new(Guard.InRange(kilopascals, MinimumKilopascals, MaximumKilopascals));

    /// <summary>A pressure in hectopascals or millibars, as a barometer in the kitchen shows it.</summary>
    /// <param name="hectopascals">The pressure, hPa, from 10 to 2000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="hectopascals"/> is outside its range.</exception>
    public static AirPressure FromHectopascals(double hectopascals) =>
        new(Guard.InRange(hectopascals, 10 * MinimumKilopascals, 10 * MaximumKilopascals) / 10);

    /// <summary>The pressure of the standard atmosphere at an altitude in metres.</summary>
    /// <param name="metres">The height above the sea, m, from −500 to 9000.</param>
    /// <returns>The pressure. Worked number: 1600 m gives 83.53 kPa, where water boils at 94.65 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="metres"/> is outside its range.</exception>
    public static AirPressure FromAltitudeMetres(double metres) => new(AtHeight(Guard.InRange(metres, MinimumMetres, MaximumMetres)));

    /// <summary>The pressure of the standard atmosphere at an altitude in feet.</summary>
    /// <param name="feet">The height above the sea, ft of 0.3048 m, from −1640 to 29 527.</param>
    /// <returns>The pressure. Worked number: 5000 ft gives 84.31 kPa.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="feet"/> is outside its range.</exception>
    public static AirPressure FromAltitudeFeet(double feet) => new(AtHeight(Guard.InRange(feet, -1640, 29527) * MetresPerFoot));

    /// <summary>
    /// The pressure in the kitchen from a weather report. Reports give the pressure reduced to sea level (an altimeter setting):
    /// high towns are never told their own.
    /// </summary>
    /// <param name="reportedKilopascals">The reported pressure, kPa, from 85 to 110.</param>
    /// <param name="metres">The height of the kitchen above the sea, m, from −500 to 9000.</param>
    /// <returns>
    /// The pressure of the standard atmosphere that is raised or lowered until it has the reported pressure at the sea.
    /// Worked number: 101.325 kPa reported at 1600 m is 83.53 kPa in the kitchen.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static AirPressure FromWeatherReport(double reportedKilopascals, double metres)
    {
        Guard.InRange(reportedKilopascals, 85, 110);
        Guard.InRange(metres, MinimumMetres, MaximumMetres);
        return new AirPressure(AtGeopotential(GeopotentialOfHeight(metres) + GeopotentialOfPressure(reportedKilopascals)));
    }

    /// <summary>The pressure from the kettle: where pure water is seen to boil, by a thermometer that can be trusted.</summary>
    /// <param name="celsius">The temperature of the boiling water, °C, from 60 to 120.</param>
    /// <returns>The pressure. Worked number: 95 °C gives 84.61 kPa.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static AirPressure FromBoilingWater(double celsius) => new(SaturatedWater.PressureKilopascals(Guard.InRange(celsius, 60, 120)));

    /// <summary>Reads a number and its unit, such as <c>84 kPa</c> or <c>24.9 inHg</c>; the same in every culture.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="FormatException">The text is no pressure from 1 to 200 kPa.</exception>
    public static AirPressure Parse(ReadOnlySpan<char> text) => Read(text, out AirPressure pressure) is not { } reason ? pressure
        : throw new FormatException($"{Excerpt.Of(text)} is not a pressure: {reason}. A number from 1 to 200 kPa with its unit was "
            + $"expected "
            + "(kPa, hPa, mbar, mmHg or inHg), such as 84 kPa.");

    /// <summary>Reads a number and its unit; the same in every culture.</summary>
    /// <param name="text">The text.</param>
    /// <param name="pressure">The pressure; the default where the text is none.</param>
    /// <returns>Whether the text is a pressure from 1 to 200 kPa.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out AirPressure pressure) => Read(text, out pressure) is null;

    // The provider is not used: reading is the same in every culture. The interfaces are implemented explicitly so that nobody is told to
    // pass one.
    static AirPressure IParsable<AirPressure>.Parse(string s, IFormatProvider? provider) => Parse(Guard.NotNull(s).AsSpan());

    static AirPressure ISpanParsable<AirPressure>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<AirPressure>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out AirPressure result) =>
        TryParse(s.AsSpan(), out result);

    static bool ISpanParsable<AirPressure>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out AirPressure result) =>
        TryParse(s, out result);

    /// <summary>Compares the pressures.</summary>
    public int CompareTo(AirPressure other) => Kilopascals.CompareTo(other.Kilopascals);

    /// <inheritdoc/>
    public bool Equals(AirPressure other) => Kilopascals.Equals(other.Kilopascals);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is AirPressure other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Kilopascals.GetHashCode();

    /// <summary>Invariant text, such as <c>84.31 kPa</c>.</summary>
    public override string ToString() => ToString(null);

    /// <summary>Invariant text with the number in the given format.</summary>
    /// <param name="format">A standard number format, or <see langword="null"/> for two decimals.</param>
    public string ToString(string? format) => Kilopascals.ToString(Text.NumberFormat.Checked(format ?? "0.00"),
        CultureInfo.InvariantCulture) + " kPa";

    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(ToString(format.IsEmpty ? null : format.ToString()), destination, out charsWritten);

    /// <summary>Whether two pressures are the same.</summary>
    public static bool operator ==(AirPressure left, AirPressure right) => left.Equals(right);

    /// <summary>Whether two pressures differ.</summary>
    public static bool operator !=(AirPressure left, AirPressure right) => !left.Equals(right);

    /// <summary>Whether the left pressure is lower.</summary>
    public static bool operator <(AirPressure left, AirPressure right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left pressure is higher.</summary>
    public static bool operator >(AirPressure left, AirPressure right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left pressure is lower or the same.</summary>
    public static bool operator <=(AirPressure left, AirPressure right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left pressure is higher or the same.</summary>
    public static bool operator >=(AirPressure left, AirPressure right) => left.CompareTo(right) >= 0;

    // What is wrong with the text, or null.
    private static string? Read(ReadOnlySpan<char> text, out AirPressure pressure)
    {
        pressure = default;
        string? reason = QuantityText.ReadKilopascals(text, out double kilopascals);
        if (reason is null && !(kilopascals >= MinimumKilopascals && kilopascals <= MaximumKilopascals))
            reason = "it is outside 1 to 200 kPa";
        if (reason is null)
            pressure = new AirPressure(kilopascals);
        return reason;
    }

    private static double AtHeight(double metres) => AtGeopotential(GeopotentialOfHeight(metres));

    private static double GeopotentialOfHeight(double metres) => s_earthRadiusMetres * metres / (s_earthRadiusMetres + metres);

    private static double AtGeopotential(double metres) => s_standard * Math.Pow(1 - s_lapseKelvinPerMetre * metres / s_seaLevelKelvin,
        s_exponent);

    private static double GeopotentialOfPressure(double kilopascals) =>
        s_seaLevelKelvin / s_lapseKelvinPerMetre * (1 - Math.Pow(kilopascals / s_standard, 1 / s_exponent));
}
