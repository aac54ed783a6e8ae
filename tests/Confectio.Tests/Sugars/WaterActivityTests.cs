using Confectio.Ingredients;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>The activity of water: equations by their authors' names, models of solutions, and freezing points as an independent witness.</summary>
public sealed class WaterActivityTests
{
    [Theory] // Norrish (1966); the constants are those of Chirife and others (1982), from memory, but that of glycerol, which was read (PMC2836749, Table 3)
    [InlineData(Constituent.Sucrose, 0.50, 342.30, 6.47, 0.9348)]
    [InlineData(Constituent.Glucose, 0.30, 180.156, 2.25, 0.9553)]
    [InlineData(Constituent.Glycerol, 0.20, 92.094, 1.16, 0.9510)]
    public void NorrishIsHisEquation(Constituent solute, double fraction, double molarMass, double constant, double expected)
    {
        Assert.Equal(expected, WaterActivity.Norrish((1 - fraction) / 18.015, fraction / molarMass, constant), 5e-4);
        Assert.Equal(expected, Syrups.Of(solute, fraction).WaterActivityAllDissolved(25, WaterActivityModel.Norrish), 5e-4);
        double x = fraction / molarMass / (fraction / molarMass + (1 - fraction) / 18.015);
        Assert.Equal((1 - x) * Math.Exp(-constant * x * x), Syrups.Of(solute, fraction).WaterActivityAllDissolved(25, WaterActivityModel.Norrish), 1e-12);
    }

    [Theory] // three models, two of them published equations worked out by another program: 0.8947 and 0.8953; 0.8511 and 0.8506
    [InlineData(0.60, 0.895, 0.003)]
    [InlineData(0.67, 0.851, 0.004)]
    public void SucroseByThreeModels(double fraction, double expected, double tolerance) => Assert.All(
        [WaterActivityModel.StarzakPeacock, WaterActivityModel.StarzakMathlouthi, WaterActivityModel.Norrish],
        model => Assert.Equal(expected, SugarSolution.OfSucrose(fraction).WaterActivityAllDissolved(25, model), tolerance));

    // Per cent, Norrish, Starzak and Peacock, Starzak and Mathlouthi (from memory), Zobrist: the published equations by another program,
    // four decimals. Robinson and Stokes (1961) as remembered gives 0.9940, 0.9753, 0.9349, 0.8949 and 0.8515 at 10, 30, 50, 60 and 67 %:
    // from memory, so that it says only that roads which were remembered and read apart meet; nothing is asserted by it.
    [Theory]
    [InlineData(5, 0.9972, 0.9972, 0.9972, 0.9995)]
    [InlineData(10, 0.9940, 0.9939, 0.9939, 0.9982)]
    [InlineData(20, 0.9859, 0.9858, 0.9857, 0.9926)]
    [InlineData(30, 0.9749, 0.9746, 0.9743, 0.9817)]
    [InlineData(40, 0.9589, 0.9585, 0.9579, 0.9633)]
    [InlineData(50, 0.9348, 0.9341, 0.9330, 0.9339)]
    [InlineData(60, 0.8953, 0.8947, 0.8934, 0.8876)]
    [InlineData(67, 0.8506, 0.8511, 0.8501, 0.8399)]
    [InlineData(70, 0.8243, 0.8258, 0.8255, 0.8139)]
    [InlineData(80, 0.6793, 0.6928, 0.7004, 0.6914)]
    [InlineData(90, 0.3478, 0.4202, 0.4648, 0.4702)]
    public void SucroseByFourModels(double percent, double norrish, double peacock, double mathlouthi, double zobrist)
    {
        SugarSolution syrup = SugarSolution.OfSucrose(percent / 100);
        Assert.Equal(norrish, syrup.WaterActivityAllDissolved(25, WaterActivityModel.Norrish), 6e-5);
        Assert.Equal(peacock, syrup.WaterActivityAllDissolved(), 6e-5);
        Assert.Equal(mathlouthi, syrup.WaterActivityAllDissolved(25, WaterActivityModel.StarzakMathlouthi), 6e-5);
        Assert.Equal(zobrist, WaterActivity.Zobrist(Brix.FromPercent(percent), 25), 6e-5);
        Assert.Equal(syrup.WaterActivityAllDissolved(), SucroseSolution.WaterActivity(percent / 100, 25), 1e-12);
    }

    // Saturated at 25 °C sucrose is 67.47 % (Vavrinecz). Three models meet there; 0.843 to 0.86 is what laboratories give, from memory.
    [Fact]
    public void SaturatedSucrose() => Assert.All(
        [WaterActivityModel.StarzakPeacock, WaterActivityModel.StarzakMathlouthi, WaterActivityModel.Norrish],
        model => Assert.Equal(0.847, SugarSolution.OfSucrose(0.6747).WaterActivityAllDissolved(25, model), 0.006));

    // Zobrist and others (2011), as a program of aerosol chemistry has it; the temperature term is 0 at 298.15 K.
    [Fact]
    public void ZobristIsTheirEquation() => Assert.Equal(0.6914, WaterActivity.Zobrist(Brix.FromPercent(80), 25), 5e-4);

    [Theory] // from memory: 1/(1 + 0.27·0.5) and 1.04 − 0.10·2 + 0.0045·4 are only arithmetic
    [InlineData(0.5, 0.8811)]
    public void MoneyAndBorn(double moles, double expected) => Assert.Equal(expected, WaterActivity.MoneyBorn(moles), 5e-5);

    [Fact]
    public void Grover() => Assert.Equal(0.858, WaterActivity.Grover(2), 1e-12);

    // By definition a product.
    [Fact]
    public void RossIsAProduct()
    {
        Assert.Equal(0.855, WaterActivity.Ross(0.90, 0.95), 1e-9);
        Assert.Equal(1, WaterActivity.Ross());
    }

    // Each solute alone in all the water, by Norrish, multiplied.
    [Fact]
    public void RossOfASolutionIsTheProductOfItsSolutes()
    {
        SugarSolution mixture = Syrups.Mixture(0.40, Constituent.Glucose, 0.25);
        double sucrose = WaterActivity.Norrish(0.35 / 18.015, 0.40 / 342.30, 6.47), glucose = WaterActivity.Norrish(0.35 / 18.015, 0.25 / 180.156, 2.25);
        Assert.Equal(WaterActivity.Ross(sucrose, glucose), mixture.WaterActivityAllDissolved(25, WaterActivityModel.Ross), 1e-12);
        Assert.Equal(0.8537, mixture.WaterActivityAllDissolved(25, WaterActivityModel.Ross), 1e-4);
    }

    // 40 sucrose, 25 glucose, 35 water: another program has 0.8382 by Norrish's rule (Σ √Kᵢ·xᵢ)² and 0.8537 by Ross. The spread of 0.02 is
    // how well a mixture is known: the rules of the trade lie inside or a hair outside it.
    [Fact]
    public void AMixtureByAllModels()
    {
        SugarSolution mixture = Syrups.Mixture(0.40, Constituent.Glucose, 0.25);
        double norrish = mixture.WaterActivityAllDissolved(25, WaterActivityModel.Norrish), ross = mixture.WaterActivityAllDissolved(25, WaterActivityModel.Ross);
        Assert.Equal(0.8382, norrish, 1e-4);
        Assert.InRange(mixture.WaterActivityAllDissolved(), norrish, ross);
        Assert.InRange(mixture.WaterActivityAllDissolved(25, WaterActivityModel.StarzakMathlouthi), norrish, ross);
        Assert.All([WaterActivityModel.MoneyBorn, WaterActivityModel.Grover], model => Assert.Equal(norrish, mixture.WaterActivityAllDissolved(25, model), 0.02));
    }

    [Fact] // one solute is its own mixture, however heavy; a maltodextrin of 10 DE is far heavier than any sugar
    public void OneSoluteIsTheSameByRossAndByNorrish() => Assert.All([1000.0, 2269.0, 20000.0], molarMass =>
    {
        SugarSolution dextrin = SugarSolution.FromFractions(
            new Dictionary<Constituent, double> { [Constituent.HigherSaccharides] = 0.4, [Constituent.Water] = 0.6 }, molarMass);
        Assert.Equal(dextrin.WaterActivityAllDissolved(25, WaterActivityModel.Norrish), dextrin.WaterActivityAllDissolved(25, WaterActivityModel.Ross), 1e-14);
    });

    // Ice and solution in balance: d ln a/dT = ΔH/(R·T²) with ΔH = 6008 + 38·(T − T₀) J/mol, so that ln a = −(6008/R)·(1/T − 1/T₀) +
    // (38/R)·(T₀/T − 1 − ln(T₀/T)), T₀ = 273.15 K and T = T₀ less the depression of the CRC Handbook (102nd ed. 2021). Nothing of it comes
    // from measured activities. The handbook rounds to 0.01 K, 1e-4 of activity. Norrish's constants are those of 25 °C.
    [Theory]
    [InlineData("sucrose", 0, 32, 4e-4)]
    [InlineData("sucrose", 33, 40, 1.3e-3)]
    [InlineData("D-glucose", 0, 20, 2e-4)]
    [InlineData("D-glucose", 21, 30, 8e-4)]
    [InlineData("D-fructose", 0, 28, 6e-4)]
    [InlineData("maltose", 0, 28, 6e-4)]
    [InlineData("maltose", 29, 40, 3e-3)]
    [InlineData("lactose", 0, 8, 1e-4)]
    [InlineData("D-mannitol", 0, 12, 1e-4)]
    public void NorrishAgreesWithFreezingPoints(string solute, double from, double to, double bound) => Syrups.Within(bound,
        Frozen(solute).Where(row => row.MassPercent >= from && row.MassPercent <= to),
        row => Syrups.Of(row).WaterActivityAllDissolved(25, WaterActivityModel.Norrish) - FromFreezing(row));

    // Named disagreements. Glycerol at 40 % freezes at -15.5 °C, forty kelvins from where its constant holds: 0.0114 too high, already
    // 0.0026 at 20 %. Maltose at 44 % is 0.004 too high. Citric acid by its constant (from memory) is 0.007 too low at 30 %.
    [Theory]
    [InlineData("glycerol", 20, 0.0023, 0.0029)]
    [InlineData("glycerol", 40, 0.0105, 0.0120)]
    [InlineData("maltose", 44, 0.0035, 0.0045)]
    [InlineData("citric acid", 20, -0.0018, -0.0011)]
    [InlineData("citric acid", 30, -0.0075, -0.0065)]
    public void NorrishLeavesFreezingPointsWhereItIsCold(string solute, double percent, double low, double high) =>
        Assert.InRange(Syrups.Of(Frozen(solute).Single(row => row.MassPercent == percent)).WaterActivityAllDissolved(25, WaterActivityModel.Norrish)
            - FromFreezing(Frozen(solute).Single(row => row.MassPercent == percent)), low, high);

    // The default model moves with temperature. At 0 °C, nearer to the ice, sucrose is within 4e-4 of it up to 40 %.
    [Fact]
    public void TheDefaultModelAgreesWithFreezingPointsOfSucrose() =>
        Syrups.Within(4e-4, Frozen("sucrose"), row => Syrups.Of(row).WaterActivityAllDissolved(0) - FromFreezing(row));

    [Theory] // the formula by itself, as another program has it
    [InlineData("D-glucose", 10, 0.9887)]
    [InlineData("D-glucose", 30, 0.9546)]
    [InlineData("sucrose", 40, 0.9577)]
    [InlineData("glycerol", 40, 0.8597)]
    public void TheFormulaForFreezing(string solute, double percent, double expected) =>
        Assert.Equal(expected, FromFreezing(Frozen(solute).Single(row => row.MassPercent == percent)), 1e-4);

    private static IEnumerable<AqueousRow> Frozen(string solute) =>
        SugarOracles.Aqueous.Where(row => row.Solute == solute && row.FreezingPointDepressionKelvin is not null);

    private static double FromFreezing(AqueousRow row)
    {
        const double Melting = 273.15, Gas = 8.314462618;
        double ratio = Melting / (Melting - row.FreezingPointDepressionKelvin!.Value);
        return Math.Exp(-6008 / (Gas * Melting) * (ratio - 1) + 38 / Gas * (ratio - 1 - Math.Log(ratio)));
    }
}
