using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>The list of the room's equations: complete, and honest about what is from memory.</summary>
public sealed class EquationTests
{
    [Fact]
    public void KeysAreUniqueAndFindTheirEquation()
    {
        Assert.Equal(Equation.All.Count, Equation.All.Select(equation => equation.Key).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.True(Equation.All.Count >= 20);
        Assert.All(Equation.All, equation =>
        {
            Assert.Same(equation, Equation.Get(equation.Key));
            Assert.Same(equation, Equation.Get($" {equation.Key.ToUpperInvariant()} "));
            Assert.Equal($"{equation.Quantity}: {equation.Range}", equation.ToString());
        });
    }

    [Fact]
    public void EveryFieldIsFilled() => Assert.All(Equation.All, equation => Assert.All(
        [equation.Key, equation.Quantity, equation.Form, equation.Range, equation.Basis, equation.FitError, equation.Provenance.Source.Citation],
        text =>
        {
            Assert.False(string.IsNullOrWhiteSpace(text), equation.Key);
            Assert.Equal(text.Trim(), text);
        }));

    [Fact]
    public void FromMemoryIsTheSourceMemory()
    {
        Assert.All(Equation.All, equation =>
        {
            Assert.Equal(equation.Provenance.Evidence == Evidence.FromMemory, equation.Provenance.Source.Key == "memory");
            // What is recalled says whose it is.
            if (equation.Provenance.Evidence == Evidence.FromMemory)
                Assert.NotEmpty(equation.Provenance.Note);
        });
        Assert.Equal(Evidence.FromMemory, Equation.Get("activity-starzak-mathlouthi").Provenance.Evidence);
        Assert.Equal(Evidence.Estimated, Equation.Get("solubility-mixtures").Provenance.Evidence);
    }

    [Theory] // what the classes of the room rest on
    [InlineData("solubility-sucrose", "vavrinecz-1962")]
    [InlineData("inversion", "vukov-1965")]
    [InlineData("specific-heat-crystal", "mohos-2010")]
    [InlineData("density-sucrose", "icumsa-sps4")]
    [InlineData("saturation-line", "iapws-if97")]
    public void AnEquationNamesItsSource(string key, string source) => Assert.Equal(source, Equation.Get(key).Provenance.Source.Key);

    [Fact]
    public void AnUnknownKeyListsThoseThereAre()
    {
        string message = Assert.Throws<ArgumentException>("key", () => Equation.Get("phlogiston")).Message;
        Assert.Contains("'phlogiston'", message, StringComparison.Ordinal);
        Assert.All(Equation.All, equation => Assert.Contains(equation.Key, message, StringComparison.Ordinal));
    }

    // Mohos (2010): 0.2712 + 0.00103·t kcal/(kg·°C), 1.222 kJ/(kg·K) at 20 °C and 1.243 at 25.
    [Theory]
    [InlineData(0, 1.1355)] // 4.1868·0.2712
    [InlineData(20, 1.222)]
    [InlineData(25, 1.243)]
    public void TheHeatOfCrystals(double celsius, double expected) => Assert.Equal(expected, CrystallineSucrose.SpecificHeat(celsius), 0.0006);

    // Water in it takes up heat the more: between the crystals and water, whatever the strength, and more when it is warm.
    [Fact]
    public void CrystalsTakeUpLessHeatThanSyrup()
    {
        Assert.All([0.0, 20, 60, 100], celsius => Assert.All([0.1, 0.5, 0.9], fraction =>
            Assert.InRange(SugarSolution.OfSucrose(fraction).SpecificHeat(celsius), CrystallineSucrose.SpecificHeat(celsius), 4.19)));
        Assert.True(CrystallineSucrose.SpecificHeat(100) > CrystallineSucrose.SpecificHeat(0));
    }
}
