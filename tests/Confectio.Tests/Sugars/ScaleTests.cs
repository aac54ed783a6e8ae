using Confectio.Sources;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Degrees Brix, Plato and Baumé and the specific gravities between them.</summary>
public sealed class ScaleTests
{
    // NBS Circular 440 (Bates 1942), Table 114, all 96 rows. It is older than the polynomial: the known difference of the two grows from 1.9e-4
    // at 60 °Bx to 6.1e-4 at 87 to 90 °Bx. Not rounding, and not ours to smooth away.
    [Theory]
    [InlineData(0, 60, 1.9e-4)]
    [InlineData(61, 70, 3.6e-4)]
    [InlineData(71, 95, 6.1e-4)]
    public void SpecificGravityIsThatOfTable114(double from, double to, double bound) =>
        Syrups.Within(bound, Table114(from, to), row => Brix.FromPercent(row.Percent).ApparentSpecificGravity - row.SpecificGravity);

    [Theory] // the same difference in degrees
    [InlineData(0, 60, 0.032)]
    [InlineData(61, 70, 0.058)]
    [InlineData(71, 95, 0.090)]
    public void StrengthIsThatOfTable114(double from, double to, double bound) =>
        Syrups.Within(bound, Table114(from, to), row => Brix.FromApparentSpecificGravity(row.SpecificGravity).Percent - row.Percent);

    [Theory] // two rows by themselves
    [InlineData(40, 1.17874, 0.0002)]
    [InlineData(60, 1.28909, 0.0003)]
    public void TwoRowsOfTable114(double percent, double published, double tolerance) =>
        Assert.Equal(published, Brix.FromPercent(percent).ApparentSpecificGravity, tolerance);

    // Plato is Table 114 itself: a row comes back as its own per cent within the 0.005 that is claimed.
    [Fact]
    public void PlatoIsTable114() =>
        Syrups.Within(0.005, Table114(0, 95), row => Brix.FromApparentSpecificGravity(row.SpecificGravity).Plato - row.Percent);

    // Wikipedia, Brix: an apparent specific gravity of 1.040 is 9.99249 % by ICUMSA's tables, 9.99325 °Bx by the bureau's.
    [Fact]
    public void TheExampleThatEverybodyQuotes()
    {
        Assert.Equal(9.99249, Brix.FromApparentSpecificGravity(1.040).Percent, 0.001);
        Assert.Equal(9.99325, PrintedEquations.BrixOfSpecificGravity(1.040), 0.001);
        Assert.Equal(9.99359, PrintedEquations.PlatoOfSpecificGravity(1.040), 0.001);
    }

    // Mohos 2010, Table A2.1, whose figures are those of Circular 440: the same difference as above is 0.01 °Bé to 60 °Bx and 0.04 at 85.
    [Theory]
    [InlineData(0, 15, 0.01)]
    [InlineData(16, 60, 0.02)]
    [InlineData(61, 65, 0.03)]
    [InlineData(66, 85, 0.05)]
    public void BaumeIsThatOfTheHandbook(double from, double to, double bound) => Syrups.Within(bound,
        SugarOracles.Baume145.Where(row => row.Percent >= from && row.Percent <= to), row => Brix.FromPercent(row.Percent).Baume - row.Baume);

    // From Table 114's own figures put into vacuum (air 1.2 kg/m3), the handbook's two decimals come out exactly: so it is the specific gravity
    // in vacuum that degrees Baumé go by. By the apparent one 60 °Bx would be 32.52.
    [Fact]
    public void BaumeGoesByTheSpecificGravityInVacuum() => Assert.All(SugarOracles.Baume145, row =>
    {
        double apparent = SugarOracles.C440Table114[(int)row.Percent].SpecificGravity, water = SucrosePolynomial.Water(20);
        double inVacuum = (apparent * (water - 1.2) + 1.2) / water;
        Assert.Equal(row.Baume, BaumeScale.Modulus145.FromSpecificGravity(inVacuum), 0.0051);
    });

    // 145 - 145/1.2609 and back is arithmetic.
    [Fact]
    public void BaumeFromItsDefinition()
    {
        Assert.Equal(30.00, BaumeScale.Modulus145.FromSpecificGravity(1.2609), 0.01);
        Assert.Equal(145.0 / 115, BaumeScale.Modulus145.ToSpecificGravity(30), 1e-12);
        Assert.All(BaumeScale.All, scale => Assert.Equal(0, scale.FromSpecificGravity(1)));
    }

    [Theory] // on the basis of the polynomial, worked out by another program
    [InlineData(30, 55.17, 0.01)]
    [InlineData(36, 66.85, 0.01)]
    public void StrengthFromBaume(double degrees, double expected, double tolerance)
    {
        double percent = Brix.FromBaume(degrees).Percent;
        Assert.Equal(expected, percent, tolerance);
        Assert.Equal(145 / (145 - degrees), SucrosePolynomial.Density(percent / 100, 20) / SucrosePolynomial.Water(20), 1e-12);
    }

    // Each scale compares the syrup with water of its own temperature. Where the moduli come from is said by their provenance: 145, 144 and
    // 146.78 are GNU Units', 144.3 is from memory and must say so.
    [Theory]
    [InlineData(145, 20)]
    [InlineData(144.3, 15)]
    [InlineData(146.78, 17.5)]
    [InlineData(144, 15)]
    public void EveryScaleIsItsModulusAtItsTemperature(double modulus, double celsius)
    {
        BaumeScale scale = BaumeScale.All.Single(scale => scale.Modulus == modulus);
        Assert.Equal(celsius, scale.ReferenceCelsius);
        Assert.Equal(modulus == 144.3, scale.Provenance.Evidence == Evidence.FromMemory);
        for (int percent = 0; percent <= 95; percent += 5)
        {
            double ratio = SucrosePolynomial.Density(percent / 100.0, celsius) / SucrosePolynomial.Water(celsius);
            double degrees = Brix.FromPercent(percent).ToBaume(scale);
            Assert.Equal(modulus - modulus / ratio, degrees, 1e-10);
            // Where the density hardly rises a last bit of it is a few of the strength.
            Assert.Equal(percent, Brix.FromBaume(degrees, scale).Percent, 1e-9);
        }
    }

    // Commercial degrees of glucose syrup: what a spindle of modulus 145 shows at 140 °F against water of 60 °F, plus one. The figures by another
    // program from that definition.
    [Theory]
    [InlineData(42, 1.3942)]
    [InlineData(43, 1.4078)]
    [InlineData(44, 1.4216)]
    [InlineData(45, 1.4356)]
    public void CommercialDegrees(double degrees, double expected) =>
        Assert.Equal(expected, BaumeScale.CommercialSpecificGravity(degrees), 5.1e-5);

    [Fact]
    public void EveryWayBackLeadsHome() => Assert.All(Enumerable.Range(0, 1001), i =>
    {
        // To the very end of the scale.
        Brix strength = Brix.FromPercent(i / 10.0);
        Assert.Equal(strength.Percent, Brix.FromSpecificGravity(strength.SpecificGravity).Percent, 1e-9);
        Assert.Equal(strength.Percent, Brix.FromApparentSpecificGravity(strength.ApparentSpecificGravity).Percent, 1e-9);
        Assert.Equal(strength.Percent, Brix.FromGramsPerMillilitre(strength.GramsPerMillilitre(60), 60).Percent, 1e-9);
    });

    private static IEnumerable<(double Percent, double SpecificGravity)> Table114(double from, double to) =>
        SugarOracles.C440Table114.Where(row => row.Percent >= from && row.Percent <= to);
}
