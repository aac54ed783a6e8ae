using Confectio.Ingredients;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>The ingredients of the built-in table as solutions, and the figures of chemistry and law that they must keep.</summary>
public sealed class SugarIngredientTests
{
    private static readonly Constituent[] s_all = Enum.GetValues<Constituent>();

    // All but fats and oils without water have something. The fractions are those of the table over what of it dissolves.
    [Fact]
    public void EveryIngredientWithWaterOrSugarsIsASolution() => Assert.All(IngredientTable.BuiltIn.All, item =>
    {
        Composition composition = item.Composition;
        double kept = composition[Constituent.Water] + SugarGenerators.Dissolving.Sum(part => composition[part]);
        if (kept == 0)
        {
            Assert.Throws<ArgumentException>("ingredient", () => SugarSolution.Of(item));
            return;
        }
        SugarSolution solution = SugarSolution.Of(item);
        Assert.Equal(1, s_all.Sum(part => solution[part]), 1e-14);
        Assert.All(SugarGenerators.Dissolving.Append(Constituent.Water), part => Assert.Equal(composition[part] / kept, solution[part], 1e-12));
        // Two glucose syrups of the table add up to 100.01 % by their rounding: nothing is left out of them.
        Assert.Equal(Math.Max(0, 1 - kept), solution.LeftOut, 1e-12);
        Assert.InRange(kept, 0, 1.0001 + 1e-12);
        Assert.InRange(solution.HigherSaccharidesMolarMass, 504, 20000);
    });

    // 21 CFR 168.120: glucose sirup has at least 70.0 % solids and a dextrose equivalent of at least 20.0. All of the table that go by the name.
    [Fact]
    public void GlucoseSyrupsKeepTheStandardOfIdentity()
    {
        List<Ingredient> syrups = [.. IngredientTable.BuiltIn.All.Where(ingredient =>
            ingredient.Id.StartsWith("syrup-glucose", StringComparison.Ordinal) || ingredient.Id.StartsWith("syrup-corn", StringComparison.Ordinal))];
        Assert.True(syrups.Count >= 8);
        Assert.All(syrups, syrup =>
        {
            Assert.True(1 - syrup.Composition[Constituent.Water] >= 0.70, syrup.Id);
            Assert.True(syrup.DextroseEquivalent >= 20.0, syrup.Id);
        });
    }

    // 21 CFR 168.111: dextrose monohydrate has at least 90.0 % solids, of a dextrose equivalent of at least 99.5. By molar masses it is
    // 180.156/198.171 = 0.9091 glucose.
    [Fact]
    public void DextroseMonohydrate()
    {
        SugarSolution dextrose = SugarSolution.Of(IngredientTable.BuiltIn.Get("dextrose monohydrate"));
        Assert.Equal(180.156 / 198.171, dextrose[Constituent.Glucose], 2e-4);
        Assert.True(dextrose.Solids >= 0.900);
        Assert.True(dextrose[Constituent.Glucose] / dextrose.Solids >= 0.995);
    }

    // White and others (1962), USDA Technical Bulletin 1261: 17.2 % water in the mean, 13.4 to 22.9 %. USDA SR Legacy 19296: 17.10.
    [Fact]
    public void Honey()
    {
        Ingredient honey = IngredientTable.BuiltIn.Get("honey");
        Assert.Equal(17.10, 100 * honey.Composition[Constituent.Water], 1e-9);
        Assert.Equal(17.2, 100 * honey.Composition[Constituent.Water], 0.15);
        Assert.InRange(100 * SugarSolution.Of(honey).Water, 13.4, 22.9);
        // Honey at 0.5 to 0.6 was seen only as a figure of the trade.
        Assert.InRange(SugarSolution.Of(honey).WaterActivityAllDissolved(), 0.5, 0.65);
    }

    // Every molecule of a glucose syrup has one reducing end and dextrose equivalents are counted in the dry solids, ash and all: a gram of
    // them has DE/18 015.6 moles of ends. Syrups with fructose or sucrose beside are counted by their ends, not by their molecules.
    [Fact]
    public void TheDextroseEquivalentIsTheNumberOfReducingEnds()
    {
        List<Ingredient> syrups = [.. IngredientTable.BuiltIn.All.Where(ingredient => ingredient.DextroseEquivalent is not null)];
        Assert.True(syrups.Count >= 9);
        Assert.All(syrups, syrup =>
        {
            Composition composition = syrup.Composition;
            double ends = (composition[Constituent.Glucose] + composition[Constituent.Fructose]) / 180.156
                + (composition[Constituent.Maltose] + composition[Constituent.Lactose]) / 342.30
                + composition[Constituent.HigherSaccharides] / SugarSolution.Of(syrup).HigherSaccharidesMolarMass;
            double solids = 1 - composition[Constituent.Water];
            Assert.Equal(syrup.DextroseEquivalent!.Value, 18015.6 * ends / solids, 1e-9);
        });
    }

    // 43 °Bé commercial, 42 DE: 1.4078 against water of 60 °F (0.99904 g/mL) makes 1.4064 g/mL at 60 °C; about 1.415 at 100 °F (tertiary).
    // The volume of the higher saccharides was set by this syrup at 20 °C, so that only the temperature is tested: 0.003 apart.
    [Fact]
    public void GlucoseSyrupOf43CommercialDegrees()
    {
        SugarSolution syrup = SugarSolution.Of(IngredientTable.BuiltIn.Get("glucose syrup 42 DE"));
        Assert.Equal(BaumeScale.CommercialSpecificGravity(43) * 0.99904, syrup.GramsPerMillilitre(60), 0.003);
        Assert.Equal(1.415, syrup.GramsPerMillilitre(37.78), 0.004);
    }

    // Chemistry: 100 g of sucrose and 5.26 g of water are 105.26 g of invert sugar.
    [Fact]
    public void InvertSugarOf100Grams()
    {
        SugarSolution inverted = Syrups.Of(Constituent.Sucrose, 0.5).Inverted(1);
        Assert.Equal(105.26, 200 * (inverted[Constituent.Glucose] + inverted[Constituent.Fructose]), 0.01);
        Assert.Equal(0, inverted[Constituent.Sucrose], 1e-15);
    }

    // CRC Handbook, 102nd ed. 2021: sucrose 342.296, glucose and fructose 180.155, glycerol 92.094, citric acid 192.124 g/mol.
    [Theory]
    [InlineData(Constituent.Sucrose, 342.296)]
    [InlineData(Constituent.Maltose, 342.296)]
    [InlineData(Constituent.Lactose, 342.296)]
    [InlineData(Constituent.Glucose, 180.155)]
    [InlineData(Constituent.Fructose, 180.155)]
    [InlineData(Constituent.Glycerol, 92.094)]
    [InlineData(Constituent.Acids, 192.124)]
    [InlineData(Constituent.Polyols, 182.171)]
    public void MolarMasses(Constituent solute, double published) => Assert.Equal(published, Syrups.Of(solute, 0.5).MeanMolarMass, 0.01);
}
