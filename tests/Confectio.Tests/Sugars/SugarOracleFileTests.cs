using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>
/// The files of <c>Oracles/sugar-solutions</c> are whole: rows counted, series that can only rise do rise, and a few figures compared with
/// what was read by hand beside them. Nothing of the library is tested here.
/// </summary>
public sealed class SugarOracleFileTests
{
    public static TheoryData<string, int> Files => new()
    {
        { "c440-table-114.csv", 96 },
        { "gnu-units-boiling.csv", 92 },
        { "textbook-boiling.csv", 12 },
        { "if97-saturation.csv", 6 + 75 + 200 },
        { "icumsa-1974-refractive-index.csv", 96 },
        { "crc-aqueous-20c.csv", 136 },
        { "iso-1743-glucose-syrup.csv", 11 },
        { "viscosity-by-temperature.csv", 21 },
        { "sucrose-solubility.csv", 21 },
        { "other-solubility.csv", 16 },
        { "boiling-water-altitude.csv", 15 },
        { "baume-145.csv", 6 },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void AFileSaysWhereItComesFromAndHasItsRows(string file, int rows)
    {
        string[] lines = SugarOracles.Lines(file);
        int comments = lines.TakeWhile(line => line.StartsWith("# ", StringComparison.Ordinal)).Count();
        Assert.True(comments >= 3, "source, columns and how it was seen");
        Assert.Equal(rows, lines.Length - comments - 1);
        Assert.All(lines.Skip(comments), line => Assert.Matches("^[a-zA-Z0-9]", line));
    }

    [Fact]
    public void NoFileIsUnread() =>
        Assert.Equal(
            Files.Select(file => file.Data.Item1).Order(StringComparer.Ordinal),
            Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Oracles", "sugar-solutions"), "*.csv")
                .Select(Path.GetFileName).Order(StringComparer.Ordinal));

    // NBS Circular 440 (Bates 1942), Table 114, as GNU Units carries it: every whole per cent, with the differences of neighbours nearly alike.
    [Fact]
    public void SpecificGravity()
    {
        Assert.Equal(Enumerable.Range(0, 96).Select(i => (double)i), SugarOracles.C440Table114.Select(row => row.Percent));
        Assert.Equal(1.00000, SugarOracles.C440Table114[0].SpecificGravity);
        Assert.Equal(1.04003, SugarOracles.C440Table114[10].SpecificGravity);
        Assert.Equal(1.17874, SugarOracles.C440Table114[40].SpecificGravity);
        Assert.Equal(1.28909, SugarOracles.C440Table114[60].SpecificGravity);
        Assert.Equal(1.51876, SugarOracles.C440Table114[95].SpecificGravity);
        Smooth([.. SugarOracles.C440Table114.Select(row => row.SpecificGravity)], 7e-5);
    }

    // GNU Units prints the formula of its table in the comment above it; four decimals.
    [Fact]
    public void BoilingPointElevationIsTheFormulaThatGnuUnitsNames()
    {
        Rising(SugarOracles.GnuUnitsBoiling.Select(row => row.Percent));
        Rising(SugarOracles.GnuUnitsBoiling.Select(row => row.ElevationKelvin));
        Assert.Equal((0, 0), SugarOracles.GnuUnitsBoiling[0]);
        Assert.Contains((60, 2.9400), SugarOracles.GnuUnitsBoiling);
        Assert.Contains((85, 13.9982), SugarOracles.GnuUnitsBoiling);
        Assert.Equal((99.7, 76.7867), SugarOracles.GnuUnitsBoiling[^1]);
        Assert.All(SugarOracles.GnuUnitsBoiling, row =>
        {
            double w = row.Percent, x = w / 342.3 / (w / 342.3 + (100 - w) / 18.02);
            double elevation = ((1 + 0.48851085 * x * x * (1 - 1.0038 * x - 0.24653 * x * x)) / (1 + 0.08592964 * Math.Log(1 - x)) - 1) * 326.28;
            Assert.Equal(elevation, row.ElevationKelvin, 5e-5);
        });
    }

    [Fact]
    public void TextbookBoiling()
    {
        Rising(SugarOracles.TextbookBoiling.Select(row => row.Celsius));
        Rising(SugarOracles.TextbookBoiling.Select(row => row.Percent));
        Assert.Equal((100, 30), SugarOracles.TextbookBoiling[0]);
        Assert.Contains((112, 80), SugarOracles.TextbookBoiling);
        Assert.Equal((171, 99.6), SugarOracles.TextbookBoiling[^1]);
    }

    // IAPWS-IF97 (2007), Tables 35 and 36, where they were read: nine digits.
    [Fact]
    public void SaturationStandsAtTheCheckPointsOfTheRelease()
    {
        IReadOnlyList<SaturationRow> rows = SugarOracles.Saturation;
        Assert.Equal([300, 500, 600], rows.Take(3).Select(row => row.Kelvin));
        Assert.Equal([0.1, 1, 10], rows.Skip(3).Take(3).Select(row => row.Megapascals));
        Assert.Equal([null, 2.63889776, null, null, null, 584.149488], rows.Take(6).Select(row => row.Published));
        Assert.Equal(2.63889776, rows[1].Megapascals, 5e-9);
        Assert.Equal(584.149488, rows[5].Kelvin, 5e-7);
        Assert.All(rows.Skip(6), row => Assert.Null(row.Published));
    }

    [Fact]
    public void SaturationHasTemperaturesThenPressures()
    {
        List<SaturationRow> temperatures = [.. SugarOracles.Saturation.Skip(6).TakeWhile(row => row.GivenKelvin)];
        List<SaturationRow> pressures = [.. SugarOracles.Saturation.Skip(6 + 75)];
        Assert.Equal(75, temperatures.Count);
        Assert.All(pressures, row => Assert.False(row.GivenKelvin));
        Assert.Equal(273.16, temperatures[0].Kelvin);
        Assert.Equal(643.15, temperatures[^1].Kelvin);
        Assert.Equal(0.0006113, pressures[0].Megapascals);
        Assert.Equal(0.2, pressures[^1].Megapascals);
        foreach (List<SaturationRow> part in new[] { temperatures, pressures })
        {
            Rising(part.Select(row => row.Kelvin));
            Rising(part.Select(row => row.Megapascals));
        }
    }

    // ICUMSA 1974: five decimals to 85 %.
    [Fact]
    public void RefractiveIndex()
    {
        Assert.Equal(Enumerable.Range(0, 96).Select(i => (double)i), SugarOracles.Icumsa1974.Select(row => row.Percent));
        Assert.All(SugarOracles.Icumsa1974, row => Assert.Equal(row.Percent <= 85, row.Official));
        Assert.Equal(1.33299, SugarOracles.Icumsa1974[0].RefractiveIndex);
        Assert.Equal(1.36384, SugarOracles.Icumsa1974[20].RefractiveIndex);
        Assert.Equal(1.39986, SugarOracles.Icumsa1974[40].RefractiveIndex);
        Assert.Equal(1.45348, SugarOracles.Icumsa1974[65].RefractiveIndex);
        Assert.Equal(1.49071, SugarOracles.Icumsa1974[80].RefractiveIndex);
        Assert.Equal(1.5320, SugarOracles.Icumsa1974[95].RefractiveIndex);
        Smooth([.. SugarOracles.Icumsa1974.Where(row => row.Official).Select(row => row.RefractiveIndex)], 3.5e-5);
    }

    // CRC Handbook, 102nd edition (2021). The molar masses (g/mol) tie per cent to molality, row by row: the handbook's own, in two decimals.
    // It quotes three, but its molalities follow from two (glycerol 96 %: 260.615 from 92.09; 92.094 would make 260.604).
    [Theory]
    [InlineData("citric acid", 12, 192.12)]
    [InlineData("D-fructose", 17, 180.16)]
    [InlineData("D-glucose", 21, 180.16)]
    [InlineData("D-mannitol", 6, 182.17)]
    [InlineData("glycerol", 29, 92.09)]
    [InlineData("lactose", 8, 342.30)]
    [InlineData("maltose", 21, 342.30)]
    [InlineData("sucrose", 22, 342.30)]
    public void AqueousSolutions(string solute, int count, double gramsPerMole)
    {
        List<AqueousRow> rows = [.. SugarOracles.Aqueous.Where(row => row.Solute == solute)];
        Assert.Equal(count, rows.Count);
        Rising(rows.Select(row => row.MassPercent));
        Rising(rows.Select(row => row.DensityGramsPerMillilitre));
        Rising(rows.Select(row => row.RefractiveIndex));
        Rising(rows.Select(row => row.FreezingPointDepressionKelvin).OfType<double>());
        Rising(rows.Select(row => row.ViscosityMillipascalSeconds).OfType<double>());
        foreach (AqueousRow row in rows)
        {
            // Pure glycerol has no water to be dissolved in.
            Assert.Equal(row.MassPercent < 100, row.Molality.HasValue);
            // Half of the third decimal.
            if (row.Molality is double molality)
                Assert.Equal(1000 * row.MassPercent / (100 - row.MassPercent) / gramsPerMole, molality, 5.001e-4);
        }
    }

    [Fact]
    public void AqueousSolutionsReadByHand()
    {
        AqueousRow Row(string solute, double percent) => SugarOracles.Aqueous.Single(row => row.Solute == solute && row.MassPercent == percent);
        Assert.Equal(new AqueousRow("sucrose", 40, 1.948, 1.1765, 1.3999, 4.45, 6.162, null), Row("sucrose", 40));
        Assert.Equal(new AqueousRow("sucrose", 84, 15.337, 1.4383, 1.501, null, null, null), Row("sucrose", 84));
        Assert.Equal(new AqueousRow("D-glucose", 50, 5.551, 1.2235, 1.4181, null, 11.884, null), Row("D-glucose", 50));
        Assert.Equal(new AqueousRow("D-fructose", 40, 3.7, 1.1769, 1.3985, null, 5.046, null), Row("D-fructose", 40));
        Assert.Equal(new AqueousRow("glycerol", 100, null, 1.2611, 1.4735, null, 1460, null), Row("glycerol", 100));
        Assert.Equal(
            [("maltose", 10d, "density_grams_per_millilitre"), ("sucrose", 32d, "viscosity_millipascal_seconds")],
            SugarOracles.Aqueous.Where(row => row.Suspect is not null).Select(row => (row.Solute, row.MassPercent, row.Suspect!)));
    }

    // ISO 1743 in GOST R 50546-93. One misprint and two cells that were not read are blank.
    [Fact]
    public void GlucoseSyrup()
    {
        Rising(SugarOracles.GlucoseSyrup.Select(row => row.DryPercent));
        Rising(SugarOracles.GlucoseSyrup.Select(row => row.At20));
        Rising(SugarOracles.GlucoseSyrup.Select(row => row.At30));
        Rising(SugarOracles.GlucoseSyrup.Select(row => row.At45).OfType<double>());
        Rising(SugarOracles.GlucoseSyrup.Select(row => row.At60).OfType<double>());
        Assert.All(SugarOracles.GlucoseSyrup, row => Rising(new double?[] { row.At60, row.At45, row.At30, row.At20 }.OfType<double>()));
        Assert.Equal((40, 1.40319, 1.40163, 1.39894, 1.39592), SugarOracles.GlucoseSyrup[4]);
        Assert.Equal((66, 1.46251, 1.46066, null, 1.45450), SugarOracles.GlucoseSyrup[9]);
        Assert.Equal((68, 1.46762, 1.46576, null, null), SugarOracles.GlucoseSyrup[10]);
        // Water is water: the same figure as ICUMSA's at 0 %.
        Assert.Equal(SugarOracles.Icumsa1974[0].RefractiveIndex, SugarOracles.GlucoseSyrup[0].At20);
    }

    // CRC Handbook, an older edition.
    [Fact]
    public void Viscosity()
    {
        Assert.Equal(Enumerable.Range(0, 21).Select(i => 5.0 * i), SugarOracles.Viscosity.Select(row => row.Celsius));
        Rising(SugarOracles.Viscosity.Reverse().Select(row => row.Percent20).OfType<double>());
        Rising(SugarOracles.Viscosity.Reverse().Select(row => row.Percent40));
        Rising(SugarOracles.Viscosity.Reverse().Select(row => row.Percent60));
        Assert.All(SugarOracles.Viscosity, row => Assert.Equal(row.Celsius <= 85, row.Percent20.HasValue));
        Assert.Equal((0, 3.804, 14.77, 238), SugarOracles.Viscosity[0]);
        Assert.Equal((60, 0.808, 1.982, 9.83), SugarOracles.Viscosity[12]);
        Assert.Equal((100, null, 0.96, 3.34), SugarOracles.Viscosity[20]);
    }

    // Antokolskaya (1964) in Mohos (2010), Table A2.2; an older CRC Handbook. The two columns say the same thing in two units.
    [Fact]
    public void SucroseSolubility()
    {
        Assert.Equal(Enumerable.Range(0, 21).Select(i => 5.0 * i), SugarOracles.SucroseSolubility.Select(row => row.Celsius));
        Rising(SugarOracles.SucroseSolubility.Select(row => row.GramsPer100GramsWater));
        Rising(SugarOracles.SucroseSolubility.Select(row => row.MassPercent).OfType<double>());
        Assert.Equal((20, 203.9, 67.09), SugarOracles.SucroseSolubility[4]);
        Assert.Equal((100, 487.2, 82.97), SugarOracles.SucroseSolubility[20]);
        Assert.Equal([15, 65], SugarOracles.SucroseSolubility.Where(row => row.MassPercent is null).Select(row => row.Celsius));
        foreach ((double celsius, double grams, double? percent) in SugarOracles.SucroseSolubility)
        {
            // Half a unit of the last place in either column; the README names 30 °C, which prints 68.8 for 68.74.
            if (percent is double printed)
                Assert.Equal(100 * grams / (100 + grams), printed, celsius == 30 ? 0.061 : 0.011);
        }
    }

    // Gillis (1924) and Hudson in Lowe, Experimental Cookery. Again two units of one thing.
    [Fact]
    public void OtherSolubility()
    {
        Assert.Equal(["maltose", "lactose"], SugarOracles.OtherSolubility.Select(row => row.Sugar).Distinct());
        foreach (string sugar in new[] { "maltose", "lactose" })
        {
            Rising(SugarOracles.OtherSolubility.Where(row => row.Sugar == sugar).Select(row => row.Celsius));
            Rising(SugarOracles.OtherSolubility.Where(row => row.Sugar == sugar).Select(row => row.MassPercent));
            Rising(SugarOracles.OtherSolubility.Where(row => row.Sugar == sugar).Select(row => row.GramsPer100GramsWater));
            Assert.Equal(8, SugarOracles.OtherSolubility.Count(row => row.Sugar == sugar));
        }
        Assert.Contains(("maltose", 21.0, 44.1, 78.9), SugarOracles.OtherSolubility);
        Assert.Contains(("lactose", 25, 17.8, 21.6), SugarOracles.OtherSolubility);
        foreach ((string sugar, double celsius, double percent, double grams) in SugarOracles.OtherSolubility)
        {
            // The per cents have one decimal. The README names maltose at 29.6 °C, whose 93.2 g belong to 48.2 %.
            Assert.Equal(100 * grams / (100 + grams), percent, sugar == "maltose" && celsius == 29.6 ? 0.25 : 0.06);
        }
    }

    // NOAA, and the USDA's Complete Guide to Home Canning.
    [Fact]
    public void BoilingWater()
    {
        Rising(SugarOracles.BoilingWater.Select(row => row.Feet));
        Rising(SugarOracles.BoilingWater.Reverse().Select(row => row.NoaaFahrenheit).OfType<double>());
        Rising(SugarOracles.BoilingWater.Reverse().Select(row => row.UsdaFahrenheit).OfType<double>());
        Assert.Equal(11, SugarOracles.BoilingWater.Count(row => row.NoaaFahrenheit is not null));
        Assert.Equal(11, SugarOracles.BoilingWater.Count(row => row.UsdaFahrenheit is not null));
        Assert.Equal((0, 212, 212), SugarOracles.BoilingWater[0]);
        Assert.Contains((3000, null, 206.7), SugarOracles.BoilingWater);
        Assert.Contains((10000, 193.6, 194.7), SugarOracles.BoilingWater);
        Assert.Equal((15000, 184.1, null), SugarOracles.BoilingWater[^1]);
    }

    // Mohos (2010), Table A2.1.
    [Fact]
    public void Baume() =>
        Assert.Equal([(10, 5.57), (15, 8.34), (60, 32.49), (65, 35.04), (80, 42.47), (85, 44.86)], SugarOracles.Baume145);

    private static void Rising(IEnumerable<double> values)
    {
        double[] series = [.. values];
        Assert.NotEmpty(series);
        Assert.All(series.Zip(series.Skip(1)), pair => Assert.True(pair.First < pair.Second, $"{pair.First} before {pair.Second}"));
    }

    // A wrong digit in an evenly spaced table shows in its second differences.
    private static void Smooth(double[] series, double largest)
    {
        Rising(series);
        for (int i = 1; i < series.Length - 1; i++)
            Assert.InRange(series[i + 1] - 2 * series[i] + series[i - 1], -largest, largest);
    }
}
