using System.Globalization;

namespace Confectio.Tests.Sugars;

/// <summary>A row of water's saturation line: what went in, and what came out.</summary>
/// <param name="GivenKelvin">True where the temperature was given and the pressure came out.</param>
/// <param name="Kelvin">Temperature, K.</param>
/// <param name="Megapascals">Pressure, MPa.</param>
/// <param name="Published">What the release prints for the column that came out, nine digits; null where it was not read.</param>
internal sealed record SaturationRow(bool GivenKelvin, double Kelvin, double Megapascals, double? Published);

/// <summary>A row of the CRC Handbook's table of aqueous solutions, 20 °C.</summary>
internal sealed record AqueousRow(
    string Solute,
    double MassPercent,
    double? Molality,
    double DensityGramsPerMillilitre,
    double RefractiveIndex,
    double? FreezingPointDepressionKelvin,
    double? ViscosityMillipascalSeconds,
    string? Suspect);

/// <summary>
/// The files of <c>Oracles/sugar-solutions</c>, each row as it stands. The first lines of a file and the README there say what was
/// seen where. A blank is null, never 0.
/// </summary>
internal static class SugarOracles
{
    /// <summary>NBS Circular 440 (Bates 1942), Table 114: apparent specific gravity 20/20 °C, in air.</summary>
    public static IReadOnlyList<(double Percent, double SpecificGravity)> C440Table114 { get; } =
        Read("c440-table-114.csv", "brix_percent,apparent_specific_gravity_20_20", f => (Number(f[0]), Number(f[1])));

    /// <summary>GNU Units: closed form after Starzak and Peacock (1997), given by Saska (2002), water boiling at 100 °C.</summary>
    public static IReadOnlyList<(double Percent, double ElevationKelvin)> GnuUnitsBoiling { get; } =
        Read("gnu-units-boiling.csv", "sucrose_percent,boiling_point_elevation_kelvin", f => (Number(f[0]), Number(f[1])));

    /// <summary>A table in a comment of GNU Units, from a text it does not name.</summary>
    public static IReadOnlyList<(double Celsius, double Percent)> TextbookBoiling { get; } =
        Read("textbook-boiling.csv", "celsius,sucrose_percent", f => (Number(f[0]), Number(f[1])));

    /// <summary>IAPWS-IF97, region 4, by python3-iapws. The first six rows are the check points of the release.</summary>
    public static IReadOnlyList<SaturationRow> Saturation { get; } = Read("if97-saturation.csv", "given,kelvin,megapascals,published", f =>
        new SaturationRow(Word(f[0], "kelvin", "megapascals"), Number(f[1]), Number(f[2]), NumberOrNull(f[3])));

    /// <summary>ICUMSA 1974: refractive index at 20 °C. Not official beyond 85 %.</summary>
    public static IReadOnlyList<(double Percent, double RefractiveIndex, bool Official)> Icumsa1974 { get; } =
        Read("icumsa-1974-refractive-index.csv", "brix_percent,refractive_index_20c,official", f =>
            (Number(f[0]), Number(f[1]), Word(f[2], "yes", "no")));

    /// <summary>CRC Handbook, 102nd edition (2021), a selection of aqueous solutions at 20 °C.</summary>
    public static IReadOnlyList<AqueousRow> Aqueous { get; } = Read(
        "crc-aqueous-20c.csv",
        "solute,mass_percent,molality,density_grams_per_millilitre,refractive_index,freezing_point_depression_kelvin,"
            + "viscosity_millipascal_seconds,suspect",
        f => new AqueousRow(
            f[0], Number(f[1]), NumberOrNull(f[2]), Number(f[3]), Number(f[4]), NumberOrNull(f[5]), NumberOrNull(f[6]),
            f[7].Length == 0 ? null : f[7]));

    /// <summary>ISO 1743, first table: refractive index of glucose syrup at 20, 30, 45 and 60 °C.</summary>
    public static IReadOnlyList<(double DryPercent, double At20, double At30, double? At45, double? At60)> GlucoseSyrup { get; } = Read(
        "iso-1743-glucose-syrup.csv",
        "dry_substance_percent,refractive_index_20c,refractive_index_30c,refractive_index_45c,refractive_index_60c",
        f => (Number(f[0]), Number(f[1]), Number(f[2]), NumberOrNull(f[3]), NumberOrNull(f[4])));

    /// <summary>CRC Handbook, an older edition: viscosity of sucrose solutions, mPa s.</summary>
    public static IReadOnlyList<(double Celsius, double? Percent20, double Percent40, double Percent60)> Viscosity { get; } = Read(
        "viscosity-by-temperature.csv",
        "celsius,viscosity_20_percent_millipascal_seconds,viscosity_40_percent_millipascal_seconds,viscosity_60_percent_millipascal_seconds",
        f => (Number(f[0]), NumberOrNull(f[1]), Number(f[2]), Number(f[3])));

    /// <summary>Solubility of sucrose: Antokolskaya (1964) in g per 100 g of water, an older CRC Handbook in per cent.</summary>
    public static IReadOnlyList<(double Celsius, double GramsPer100GramsWater, double? MassPercent)> SucroseSolubility { get; } =
        Read("sucrose-solubility.csv", "celsius,grams_per_100_grams_water,mass_percent", f => (Number(f[0]), Number(f[1]), NumberOrNull(f[2])));

    /// <summary>Solubility of maltose, Gillis (1924), and final solubility of lactose, Hudson, as tabulated by Lowe.</summary>
    public static IReadOnlyList<(string Sugar, double Celsius, double MassPercent, double GramsPer100GramsWater)> OtherSolubility { get; } =
        Read("other-solubility.csv", "sugar,celsius,mass_percent,grams_per_100_grams_water", f => (f[0], Number(f[1]), Number(f[2]), Number(f[3])));

    /// <summary>Boiling point of water by altitude: NOAA, and the USDA's guide to canning.</summary>
    public static IReadOnlyList<(double Feet, double? NoaaFahrenheit, double? UsdaFahrenheit)> BoilingWater { get; } =
        Read("boiling-water-altitude.csv", "altitude_feet,noaa_fahrenheit,usda_canning_guide_fahrenheit", f =>
            (Number(f[0]), NumberOrNull(f[1]), NumberOrNull(f[2])));

    /// <summary>Mohos (2010), Table A2.1: degrees Baumé, modulus 145, the rows of two decimals.</summary>
    public static IReadOnlyList<(double Percent, double Baume)> Baume145 { get; } =
        Read("baume-145.csv", "brix_percent,baume_145", f => (Number(f[0]), Number(f[1])));

    /// <summary>The lines of a file, for tests of the files themselves.</summary>
    public static string[] Lines(string file) =>
        File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Oracles", "sugar-solutions", file));

    private static List<T> Read<T>(string file, string header, Func<string[], T> row)
    {
        string[] lines = [.. Lines(file).Where(line => !line.StartsWith('#'))];
        if (lines.Length == 0 || lines[0] != header)
            throw new InvalidDataException($"{file}: the columns should be {header}");
        int columns = header.Split(',').Length;
        List<T> rows = [];
        foreach (string line in lines.Skip(1))
        {
            string[] fields = line.Split(',');
            if (fields.Length != columns)
                throw new InvalidDataException($"{file}: {columns} fields expected: {line}");
            rows.Add(row(fields));
        }
        return rows;
    }

    // The stricter style: no thousands separator, so that a comma in the wrong place does not vanish.
    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static double? NumberOrNull(string text) => text.Length == 0 ? null : Number(text);

    private static bool Word(string text, string yes, string no) =>
        text == yes || (text == no ? false : throw new InvalidDataException($"{yes} or {no} expected: {text}"));
}
