using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Specific heat and viscosity against published equations and tables.</summary>
public sealed class HeatAndViscosityTests
{
    [Theory] // kJ/(kg K): the equation that is used, after Bubník and others (1995), by another program
    [InlineData(0.60, 20, 2.77)]
    [InlineData(0.20, 20, 3.71)]
    [InlineData(0.60, 80, 3.04)]
    public void SpecificHeat(double fraction, double celsius, double expected) =>
        Assert.Equal(expected, SugarSolution.OfSucrose(fraction).SpecificHeat(celsius), 0.03);

    // An equation of a sugar engineer's program (attributed there to the food institute of Kyiv): c = 4218 + 2.8·t·lg(t/100) − B·(29.73 −
    // 0.07536·t − 0.046·P) J/(kg K). Three equations in use were seen to agree within 0.7 % where syrups are.
    [Theory]
    [InlineData(20)]
    [InlineData(50)]
    [InlineData(80)]
    public void SpecificHeatByAnotherEquation(double celsius) => Assert.All(Enumerable.Range(1, 14).Select(i => 5.0 * i), percent =>
    {
        double other = (4218 + 2.8 * celsius * Math.Log10(celsius / 100) - percent * (29.73 - 0.07536 * celsius - 0.046 * 100)) / 1000;
        Assert.Equal(other, SugarSolution.OfSucrose(percent / 100).SpecificHeat(celsius), 0.007 * other);
    });

    // mPa s at 20 °C; CRC Handbook, 102nd ed. 2021, and an older edition for 60 °C. Génotelle's equation claims about 1 %.
    [Theory]
    [InlineData(20, 20, 1.945)]
    [InlineData(40, 20, 6.162)]
    [InlineData(60, 20, 58.487)]
    [InlineData(70, 20, 481.561)]
    [InlineData(60, 60, 9.83)]
    public void FiveRowsOfTheHandbook(double percent, double celsius, double published) =>
        Assert.Equal(published, Viscosity(percent, celsius), 0.04 * published);

    // All rows of the handbook of 2021. The one that its file marks as suspect (32 %: 3.762, where the series wants about 3.59) stands by itself.
    [Fact]
    public void ViscosityAt20IsThatOfTheHandbook()
    {
        Syrups.Within(0.032,
            SugarOracles.Aqueous.Where(row => row.Solute == "sucrose" && row.ViscosityMillipascalSeconds is not null && row.Suspect is null), Off);
        AqueousRow suspect = SugarOracles.Aqueous.Single(row => row.Suspect == "viscosity_millipascal_seconds");
        Assert.InRange(Off(suspect), -0.03, -0.02);
        Assert.Equal(3.59, Viscosity(suspect.MassPercent, 20), 0.04 * 3.59);

        static double Off(AqueousRow row) => Viscosity(row.MassPercent, 20) / row.ViscosityMillipascalSeconds!.Value - 1;
    }

    // All rows of an older handbook by temperature. From 20 to 70 °C within 6 %. Named disagreements: the equation is 14 % above 60 % syrup
    // at 0 °C and 11 % at 15 °C; 8 % above 20 % syrup at 85 °C and 40 % syrup at 100 °C; and the handbook's column of 40 % jumps up and
    // down by 10 % at 5, 10 and 15 °C. The same handbook has 56.5 for 60 % at 20 °C where the one of 2021 has 58.5.
    [Theory]
    [InlineData(20, 0, 15, 0.054)]
    [InlineData(20, 20, 50, 0.02)]
    [InlineData(20, 55, 70, 0.052)]
    [InlineData(20, 75, 85, 0.083)]
    [InlineData(40, 0, 15, 0.116)]
    [InlineData(40, 20, 70, 0.029)]
    [InlineData(40, 75, 100, 0.078)]
    [InlineData(60, 0, 15, 0.139)]
    [InlineData(60, 20, 20, 0.058)]
    [InlineData(60, 25, 100, 0.019)]
    public void ViscosityByTemperature(double percent, double from, double to, double bound) => Syrups.Within(bound,
        SugarOracles.Viscosity.Select(row => (row.Celsius, Published: percent switch { 20 => row.Percent20, 40 => row.Percent40, _ => row.Percent60 }))
            .Where(row => row.Published is not null && row.Celsius >= from && row.Celsius <= to),
        row => Viscosity(percent, row.Celsius) / row.Published!.Value - 1);

    [Fact]
    public void ASyrupIsThickerColdAndStrong() => Assert.All(Enumerable.Range(0, 85), percent =>
    {
        for (int celsius = 0; celsius <= 90; celsius += 10)
        {
            Assert.True(Viscosity(percent, celsius) < Viscosity(percent + 1, celsius));
            Assert.True(Viscosity(percent, celsius) > Viscosity(percent, celsius + 10));
        }
    });

    private static double Viscosity(double percent, double celsius) => SugarSolution.OfSucrose(percent / 100).ViscosityMillipascalSeconds(celsius);
}
