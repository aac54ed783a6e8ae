using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>The short equations that are widely printed: good where they are let, and refused where they are not.</summary>
public sealed class PrintedEquationTests
{
    // Against the table that it was fitted to (Circular 440, Table 114): from 1 °Bx on within 0.0017. Water itself it calls −0.0048.
    [Fact]
    public void BrixIsThatOfTable114To40() => Syrups.Within(0.0017,
        SugarOracles.C440Table114.Where(row => row.Percent is >= 1 and <= 40),
        row => PrintedEquations.BrixOfSpecificGravity(row.SpecificGravity) - row.Percent);

    [Fact]
    public void PlatoIsThatOfTable114To20() => Syrups.Within(0.0022,
        SugarOracles.C440Table114.Where(row => row.Percent is >= 1 and <= 20),
        row => PrintedEquations.PlatoOfSpecificGravity(row.SpecificGravity) - row.Percent);

    // Beyond 40 °Bx the polynomial, written out here, leaves the table: 0.14 too high at 60, 1.07 at 80. So it is refused there.
    [Theory]
    [InlineData(60, 0.14, 0.005)]
    [InlineData(80, 1.07, 0.005)]
    public void BrixIsRefusedWhereItGoesWrong(int percent, double tooHigh, double tolerance)
    {
        double s = SugarOracles.C440Table114[percent].SpecificGravity;
        Assert.Equal(tooHigh, 182.4601 * s * s * s - 775.6821 * s * s + 1262.7794 * s - 669.5622 - percent, tolerance);
        Assert.Throws<ArgumentOutOfRangeException>("apparentSpecificGravity", () => PrintedEquations.BrixOfSpecificGravity(s));
        Assert.Throws<ArgumentOutOfRangeException>("apparentSpecificGravity", () => PrintedEquations.PlatoOfSpecificGravity(s));
    }

    // The polynomial for the refractive index fits a later table of ICUMSA: it reads 0.013 to 0.027 below that of 1974, and never above it.
    [Fact]
    public void BrixOfRefractiveIndexIsALittleBelowTheTableOf1974() => Assert.All(
        SugarOracles.Icumsa1974.Where(row => row.Official && row.RefractiveIndex >= 1.333),
        row => Assert.InRange(PrintedEquations.BrixOfRefractiveIndex(row.RefractiveIndex) - row.Percent, -0.027, -0.013));

    [Fact]
    public void BrixOfOneRefractiveIndex() => Assert.Equal(59.98, PrintedEquations.BrixOfRefractiveIndex(1.44193), 0.005);

    // Above 85 °Bx the table is not ICUMSA's own any more, and the polynomial is 0.07 out at 95: refused.
    [Fact]
    public void BrixOfRefractiveIndexEndsWithTheOfficialTable() => Assert.Throws<ArgumentOutOfRangeException>("refractiveIndex",
        () => PrintedEquations.BrixOfRefractiveIndex(SugarOracles.Icumsa1974[86].RefractiveIndex));
}
