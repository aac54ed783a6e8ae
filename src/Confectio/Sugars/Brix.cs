using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>
/// A strength in degrees Brix: grams of sucrose in 100 g of solution, or, of another syrup, of the sucrose solution that an instrument
/// takes it for. <see langword="default"/> is 0, water.
/// </summary>
/// <remarks>
/// Densities are those of the PTB's polynomial (ICUMSA SPS-4). The older table of the National Bureau of Standards (Circular 440, 1942)
/// has the same specific gravity within 0.0002 up to 60 °Bx and 0.0006 up to 95, which is 0.03 and 0.09 °Bx; <see cref="Plato"/> is on it.
/// Air weighs 1.2 kg/m³ where apparent specific gravities are meant.
/// Text is a number and <c>°Bx</c> or <c>°Bé</c>; a Baumé degree is read on the scale of modulus 145.
/// </remarks>
[JsonConverter(typeof(BrixJsonConverter))]
public readonly struct Brix : IEquatable<Brix>, IComparable<Brix>, ISpanFormattable, ISpanParsable<Brix>
{
    private static readonly double s_air = CoefficientTable.BuiltIn.Get("weighing-in-air", "air")["density"];

    private static readonly CoefficientSet s_plato = CoefficientTable.BuiltIn.Get("plato", Constituent.Sucrose);

    private static readonly double s_p1 = s_plato["p1"], s_p2 = s_plato["p2"], s_p3 = s_plato["p3"], s_p4 = s_plato["p4"],
        s_p5 = s_plato["p5"], s_mostPlato = s_plato.Highest;

    private static readonly double s_water = SolutionDensity.Water(20);

    private static readonly UnitWord[] s_percent = [new("°Bx", 1, 1), new("Bx", 1, 1), new("°Brix", 1, 1), new("Brix", 1, 1)];

    private static readonly UnitWord[] s_baume =
        [new("°Bé", 1, 1), new("Bé", 1, 1), new("°Be", 1, 1), new("Be", 1, 1), new("Baumé", 1, 1), new("Baume", 1, 1)];

    private Brix(double percent) => Percent = percent;

    /// <summary>Grams in 100 g, from 0 to 100.</summary>
    public double Percent { get; }

    /// <summary>The mass fraction, from 0 to 1.</summary>
    public double Fraction => Percent / 100;

    /// <summary>The specific gravity at 20 °C against water of 20 °C, in vacuum. Worked number: 60 °Bx gives 1.28893.</summary>
    public double SpecificGravity => SolutionDensity.Sucrose(Fraction, 20) / s_water;

    /// <summary>The specific gravity at 20 °C against water of 20 °C, both weighed in air. Worked number: 40 °Bx gives 1.17885.</summary>
    public double ApparentSpecificGravity => (SolutionDensity.Sucrose(Fraction, 20) - s_air) / (s_water - s_air);

    /// <summary>Degrees Baumé of modulus 145. Worked number: 60 °Bx gives 32.50.</summary>
    public double Baume => ToBaume(BaumeScale.Modulus145);

    /// <summary>
    /// The refractive index at 20 °C of a sucrose solution of this strength; <see langword="null"/> above 95 °Bx, where the table ends.
    /// Worked number: 65 °Bx gives
    /// 1.45348.
    /// </summary>
    public double? RefractiveIndex => Fraction <= Refraction.MaximumSolids ? Refraction.OfSucrose(Fraction) : null;

    /// <summary>
    /// Degrees Plato: what the older table of densities (Circular 440, Table 114) calls the same density, up to 0.09 above degrees Brix.
    /// A polynomial fitted here to the difference, within 0.005 of the table's 96 rows. Worked number: 60 °Bx gives 60.03.
    /// </summary>
    public double Plato
    {
        get
        {
            double b = Math.Min(Percent, s_mostPlato);
            return Percent + b * (s_p1 + b * (s_p2 + b * (s_p3 + b * (s_p4 + b * s_p5))));
        }
    }

    /// <summary>A strength from per cent by mass.</summary>
    /// <param name="percent">Degrees Brix, from 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="percent"/> is outside its range.</exception>
    public static Brix FromPercent(double percent) => new(Guard.InRange(percent, 0, 100));

    /// <summary>A strength from a mass fraction.</summary>
    /// <param name="fraction">The mass fraction, from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fraction"/> is outside its range.</exception>
    public static Brix FromFraction(double fraction) => new(100 * Guard.InRange(fraction, 0, 1));

    /// <summary>A strength from a specific gravity at 20 °C against water of 20 °C, in vacuum.</summary>
    /// <param name="specificGravity">From 1 to 1.5547, that of 100 %.</param>
    /// <returns>The strength. Worked number: 1.2609 gives 55.17.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="specificGravity"/> is outside its range.</exception>
    public static Brix FromSpecificGravity(double specificGravity) =>
        FromDensity(Guard.InRange(specificGravity, 1, FromPercent(100).SpecificGravity) * s_water, 20);

    /// <summary>
    /// A strength from a specific gravity at 20 °C against water of 20 °C, both weighed in air, as a pycnometer gives it.
    /// </summary>
    /// <param name="apparentSpecificGravity">From 1 to 1.5554, that of 100 %.</param>
    /// <returns>The strength. Worked number: 1.040 gives 9.9923.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="apparentSpecificGravity"/> is outside its range.</exception>
    public static Brix FromApparentSpecificGravity(double apparentSpecificGravity) =>
        FromDensity(s_air + Guard.InRange(apparentSpecificGravity, 1, FromPercent(100).ApparentSpecificGravity) * (s_water - s_air), 20);

    /// <summary>A strength from degrees Baumé of modulus 145.</summary>
    /// <param name="degrees">Degrees Baumé at 20 °C, from 0 to 51.</param>
    /// <returns>The strength. Worked number: 30 gives 55.17, 36 gives 66.85.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="degrees"/> is outside its range.</exception>
    public static Brix FromBaume(double degrees) => FromBaume(degrees, BaumeScale.Modulus145);

    /// <summary>A strength from degrees Baumé of a scale.</summary>
    /// <param name="degrees">Degrees Baumé at the scale's temperature, from 0 to 51.</param>
    /// <param name="scale">The scale.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scale"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="degrees"/> is outside its range.</exception>
    public static Brix FromBaume(double degrees, BaumeScale scale)
    {
        double celsius = Guard.NotNull(scale).ReferenceCelsius;
        return FromDensity(scale.ToSpecificGravity(Guard.InRange(degrees, 0, 51)) * SolutionDensity.Water(celsius), celsius);
    }

    /// <summary>A strength from the refractive index at 20 °C: the inverse of the ICUMSA table of 1974.</summary>
    /// <param name="refractiveIndex">n for the sodium D line, from 1.33299 to 1.53182.</param>
    /// <returns>The strength. Worked number: 1.44193 gives 60.00.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="refractiveIndex"/> is outside its range.</exception>
    public static Brix FromRefractiveIndex(double refractiveIndex) =>
        FromFraction(Refraction.SucroseAt(Guard.InRange(refractiveIndex, Refraction.OfWater,
            Refraction.OfSucrose(Refraction.MaximumSolids))));

    /// <summary>A strength from a density.</summary>
    /// <param name="gramsPerMillilitre">The density in vacuum, g/mL, from that of water to that of 100 % at the temperature.</param>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>The strength. Worked number: 1.28661 at 20 °C gives 60.00.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static Brix FromGramsPerMillilitre(double gramsPerMillilitre, double celsius)
    {
        Guard.InRange(celsius, 0, 100);
        Guard.InRange(gramsPerMillilitre, SolutionDensity.Sucrose(0, celsius) / 1000, SolutionDensity.Sucrose(1, celsius) / 1000);
        return FromDensity(gramsPerMillilitre * 1000, celsius);
    }

    /// <summary>Reads a number and its unit, such as <c>65 °Bx</c> or <c>30 °Bé</c>; the same in every culture.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="FormatException">The text is no strength.</exception>
    public static Brix Parse(ReadOnlySpan<char> text) => TryParse(text, out Brix strength) ? strength
        : throw new FormatException($"{Excerpt.Of(text)} is not a strength; a number from 0 to 100 with °Bx, "
            + "or from 0 to 51 with °Bé, was expected.");

    /// <summary>Reads a number and its unit; the same in every culture.</summary>
    /// <param name="text">The text.</param>
    /// <param name="strength">The strength; the default where the text is none.</param>
    /// <returns>Whether the text is a strength.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out Brix strength)
    {
        strength = default;
        bool isBaume = QuantityReader.Read(text, s_percent, signed: false, thousands: false, out double value) is not null;
        if (isBaume && QuantityReader.Read(text, s_baume, signed: false, thousands: false, out value) is not null)
            return false;
        if (!(value <= (isBaume ? 51 : 100)))
            return false;
        strength = isBaume ? FromBaume(value) : new Brix(value);
        return true;
    }

    // The provider is not used: reading is the same in every culture. The interfaces are implemented explicitly so that nobody is told to
    // pass one.
    static Brix IParsable<Brix>.Parse(string s, IFormatProvider? provider) => Parse(Guard.NotNull(s).AsSpan());

    static Brix ISpanParsable<Brix>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Brix>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Brix result) =>
        TryParse(s.AsSpan(), out result);

    static bool ISpanParsable<Brix>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Brix result) => TryParse(s, out result);

    /// <summary>Degrees Baumé of a scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scale"/> is null.</exception>
    public double ToBaume(BaumeScale scale)
    {
        double celsius = Guard.NotNull(scale).ReferenceCelsius;
        return scale.Modulus - scale.Modulus * SolutionDensity.Water(celsius) / SolutionDensity.Sucrose(Fraction, celsius);
    }

    /// <summary>The density of a sucrose solution of this strength, g/mL.</summary>
    /// <param name="celsius">The temperature, °C, from 0 to 100.</param>
    /// <returns>Grams per millilitre. Worked number: 50 °Bx at 20 °C gives 1.22965.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public double GramsPerMillilitre(double celsius) => SolutionDensity.Sucrose(Fraction, Guard.InRange(celsius, 0, 100)) / 1000;

    /// <summary>Compares the strengths.</summary>
    public int CompareTo(Brix other) => Percent.CompareTo(other.Percent);

    /// <inheritdoc/>
    public bool Equals(Brix other) => Percent.Equals(other.Percent);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Brix other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Percent.GetHashCode();

    /// <summary>Invariant text, such as <c>65.00 °Bx</c>.</summary>
    public override string ToString() => ToString(null);

    /// <summary>Invariant text with the number in the given format.</summary>
    /// <param name="format">A standard number format, or <see langword="null"/> for two decimals.</param>
    public string ToString(string? format) => Percent.ToString(Text.NumberFormat.Checked(format ?? "0.00"),
        CultureInfo.InvariantCulture) + " °Bx";

    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        SpanText.TryWrite(ToString(format.IsEmpty ? null : format.ToString()), destination, out charsWritten);

    /// <summary>Whether two strengths are the same.</summary>
    public static bool operator ==(Brix left, Brix right) => left.Equals(right);

    /// <summary>Whether two strengths differ.</summary>
    public static bool operator !=(Brix left, Brix right) => !left.Equals(right);

    /// <summary>Whether the left strength is lower.</summary>
    public static bool operator <(Brix left, Brix right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left strength is higher.</summary>
    public static bool operator >(Brix left, Brix right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left strength is lower or the same.</summary>
    public static bool operator <=(Brix left, Brix right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left strength is higher or the same.</summary>
    public static bool operator >=(Brix left, Brix right) => left.CompareTo(right) >= 0;

    // The ends of a range are printed rounded, so that a density may be past its end by the last digits.
    private static Brix FromDensity(double kilogramsPerCubicMetre, double celsius) => FromFraction(SolutionDensity.SucroseAt(
        Math.Clamp(kilogramsPerCubicMetre, SolutionDensity.Sucrose(0, celsius), SolutionDensity.Sucrose(1, celsius)), celsius)!.Value);
}
