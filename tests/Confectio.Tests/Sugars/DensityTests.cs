using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Densities of sucrose and of everything else that dissolves, against published tables.</summary>
public sealed class DensityTests
{
    public static TheoryData<double> Temperatures => [.. Enumerable.Range(0, 21).Select(i => 5.0 * i)];

    // 1e-9 of a gram in a litre is rounding: fifteen terms of a thousand at most.
    [Theory]
    [MemberData(nameof(Temperatures))]
    public void SucroseIsThePolynomial(double celsius) => Assert.All(Enumerable.Range(0, 101), percent =>
    {
        double expected = SucrosePolynomial.Density(percent / 100.0, celsius);
        Assert.Equal(expected, 1000 * SucroseSolution.GramsPerMillilitre(percent / 100.0, celsius), 1e-9);
        Assert.Equal(expected, 1000 * Brix.FromPercent(percent).GramsPerMillilitre(celsius), 1e-9);
        Assert.Equal(expected, 1000 * SugarSolution.OfSucrose(percent / 100.0).GramsPerMillilitre(celsius), 1e-9);
    });

    [Theory] // kg/m3: the equation of Bettin and Spieweck after Kell, worked out by another program to 1e-4
    [InlineData(0, 999.8395)]
    [InlineData(4, 999.9720)]
    [InlineData(20, 998.2031)]
    [InlineData(25, 997.0433)]
    [InlineData(100, 958.3449)]
    public void WaterIsThatOfTheStandard(double celsius, double expected) =>
        Assert.Equal(expected, 1000 * SugarSolution.PureWater.GramsPerMillilitre(celsius), 1e-4);

    [Theory] // kg/m3: the polynomial worked out by another program to 0.01
    [InlineData(0.10, 20, 1038.12)]
    [InlineData(0.30, 20, 1127.03)]
    [InlineData(0.50, 20, 1229.65)]
    [InlineData(0.60, 20, 1286.61)]
    [InlineData(0.70, 20, 1347.48)]
    [InlineData(0.80, 20, 1412.20)]
    [InlineData(0.85, 20, 1445.94)]
    [InlineData(0.60, 60, 1264.68)]
    [InlineData(0.65, 100, 1268.25)]
    [InlineData(0.85, 100, 1398.40)]
    [InlineData(0.40, 0, 1183.19)]
    public void SucroseIsThatOfAnotherProgram(double fraction, double celsius, double expected) =>
        Assert.Equal(expected, 1000 * SucroseSolution.GramsPerMillilitre(fraction, celsius), 0.0051);

    [Theory] // syrups as a pastry kitchen mixes them; the expected values as above
    [InlineData(1, 1, 1229.65)]
    [InlineData(2, 1, 1326.75)]
    public void SyrupByPartsOfSugarAndWater(double sugar, double water, double expected) =>
        Assert.Equal(expected, 1000 * SugarSolution.OfSucrose(sugar / (sugar + water)).GramsPerMillilitre(20), 0.0051);

    // CRC Handbook, 102nd ed. 2021, four decimals (half a unit is 5e-5). The bounds of sucrose are the known distance of the polynomial
    // from the handbook, which grows with strength. The others are what is left of short equations that were fitted to the same rows:
    // glucose bends away in its last row, lactose wanders by 5e-4 from row to row, glycerol has a kink near 52 %, mannitol stands for
    // all polyols with one number.
    [Theory]
    [InlineData("sucrose", 0, 50, 1.6e-4)]
    [InlineData("sucrose", 51, 80, 6e-4)]
    [InlineData("sucrose", 81, 84, 9e-4)]
    [InlineData("D-glucose", 0, 56, 2.7e-4)]
    [InlineData("D-glucose", 57, 60, 5e-4)]
    [InlineData("D-fructose", 0, 48, 6e-5)]
    [InlineData("glycerol", 0, 48, 1.6e-4)]
    [InlineData("glycerol", 49, 100, 2.2e-4)]
    [InlineData("lactose", 0, 18, 5.3e-4)]
    [InlineData("maltose", 16, 56, 3.1e-4)]
    [InlineData("D-mannitol", 0, 12, 2e-4)]
    [InlineData("citric acid", 0, 30, 1.5e-4)]
    public void EverySoluteIsAsDenseAsInTheHandbook(string solute, double from, double to, double bound) =>
        Syrups.Within(bound, Rows(solute).Where(row => row.MassPercent >= from && row.MassPercent <= to), Off);

    // Named disagreements. The handbook's rows of maltose from 2 to 12 % drift: the 10 % row (marked suspect in the file) makes 0.613 mL/g of
    // the sugar, the 20 % row 0.622; they were left out of the fit, which reads up to 0.00093 below them. At 60 % the handbook's series
    // bends down (steps of 0.0222, 0.0222 and then 0.0217): the fit ends at 56 % and reads 0.0018 above it.
    [Fact]
    public void MaltoseInTheHandbookDriftsAtBothEnds()
    {
        Syrups.Within(9.4e-4, Rows("maltose").Where(row => row.MassPercent <= 12), Off);
        Assert.InRange(Off(Rows("maltose").Single(row => row.Suspect is not null)), -9e-4, -7e-4);
        Assert.InRange(Off(Rows("maltose").Single(row => row.MassPercent == 60)), 1.6e-3, 1.8e-3);
    }

    [Theory] // CRC Handbook, 102nd ed. 2021: one row each, within half a unit of the third decimal
    [InlineData("D-glucose", 50, 1.2235)]
    [InlineData("D-fructose", 40, 1.1769)]
    [InlineData("maltose", 50, 1.2304)]
    [InlineData("glycerol", 60, 1.1530)]
    public void OneRowOfEach(string solute, double percent, double published) =>
        Assert.Equal(published, Syrups.Of(Syrups.Named(solute), percent / 100).GramsPerMillilitre(20), 5e-4);

    // Heat only makes a syrup thinner, and more solids only make it heavier. Water alone is heaviest at 4 °C.
    [Fact]
    public void DensityRisesWithSolidsAndFallsWithHeat() => Assert.All(Enumerable.Range(0, 99), percent =>
    {
        for (int celsius = 5; celsius <= 95; celsius += 5)
        {
            double here = SucroseSolution.GramsPerMillilitre(percent / 100.0, celsius);
            Assert.True(here < SucroseSolution.GramsPerMillilitre((percent + 1) / 100.0, celsius));
            Assert.True(here > SucroseSolution.GramsPerMillilitre(percent / 100.0, celsius + 5));
        }
    });

    private static IEnumerable<AqueousRow> Rows(string solute) => SugarOracles.Aqueous.Where(row => row.Solute == solute);

    private static double Off(AqueousRow row) => Syrups.Of(row).GramsPerMillilitre(20) - row.DensityGramsPerMillilitre;
}
