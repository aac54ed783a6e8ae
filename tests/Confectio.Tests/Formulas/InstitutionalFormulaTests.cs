using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Textures;
using Xunit;

namespace Confectio.Tests.Formulas;

/// <summary>
/// Formulas of public institutions, read as their cards print them, beside what the cards print and beside a sum done by hand with USDA SR: masses as printed, a cup of water 237 g,
/// 13 g of vanilla a tablespoon.
/// </summary>
public sealed class InstitutionalFormulaTests
{
    private static Formula Read(string name, string text) => Formula.ParseText(name, text, IngredientTable.BuiltIn.WithAmericanNames(), MeasuringSystem.UsCustomary);

    private static double Percent(Formula formula, FormulaPart part) => 100 * Balance.Of(formula)[part].Fraction.Likely;

    // ICE-01: sugar and butter two to one (Fernandes and others): fat 27.0, water 6.1, sugars 65.2 %.
    [Fact]
    public void SugarAndButterTwoToOne()
    {
        Formula formula = Read("two to one", "200 g powdered sugar\n100 g unsalted butter");
        Assert.Equal(27.0, Percent(formula, FormulaPart.Fat), 0.1);
        Assert.Equal(6.1, Percent(formula, FormulaPart.Water), 0.1);
        Assert.Equal(65.2, Percent(formula, FormulaPart.Sugars), 0.1);
    }

    // ICE-02: United States Department of Defense, card G-047, light butter cream: 3 1/4 qt. By hand 2760 g, fat 22.3, water 9.2, sugars 65.5 %, 0.897 g/mL as made and 1.306 without air.
    [Fact]
    public void TheLightButterCreamOfAnArmy()
    {
        Formula formula = Read("G-047", "12 oz margarine\n12 oz emulsified shortening\n4 lb powdered sugar\n3/4 tsp salt\n2 oz nonfat dry milk\n3/4 cup cold water\n2 tbsp vanilla extract");
        Assert.Equal(2760, formula.TotalGrams, 15.0);
        Assert.Equal(22.3, Percent(formula, FormulaPart.Fat), 0.2);
        Assert.Equal(9.2, Percent(formula, FormulaPart.Water), 0.3);
        Assert.Equal(65.5, Percent(formula, FormulaPart.Sugars), 0.3);
        double quarts = 3.25 * 946.352946;
        Assert.Equal(0.897, formula.TotalGrams / quarts, 0.01);
        Assert.Equal(1.306, Foam.Of(formula).GramsPerMillilitre, 0.01);
        IcingYield yield = IcingYield.Of(formula, IcingAir.Get("buttercream"));
        Assert.InRange(quarts, yield.Millilitres.Low, yield.Millilitres.High);
    }

    // ICE-03: Technical Manual TM 10-412 (2003), card G 022 01, orange butter cream: prints 2 3/4 qt, fat 463 g, carbohydrate 2302 g, 13074 kcal.
    [Fact]
    public void TheOrangeButterCreamOfTheManual()
    {
        Formula formula = Read("G 022 01", "1 1/4 lb butter\n5 lb powdered sugar\n1/4 oz salt\n1 1/8 oz orange zest\n8 3/4 oz orange juice");
        Balance balance = Balance.Of(formula);
        Assert.Equal(463, balance[FormulaPart.Fat].Grams.Likely, 463 * 0.01);
        double carbohydrate = balance[FormulaPart.Sugars].Grams.Likely + balance[FormulaPart.Starch].Grams.Likely;
        Assert.Equal(2302, carbohydrate, 2302 * 0.025);
        // By the factors of European labels, 4 and 9; the manual's are those of the food (3.87 of sugar, 8.79 of butter).
        Assert.Equal(13074, balance.Kilocalories, 13074 * 0.03);
        Assert.Equal(1.200, formula.TotalGrams / (2.75 * 946.352946), 0.01);
    }

    // USDA quantity recipes for schools, 1988, vanilla cream frosting: 4 cups. By hand 1187 g, fat 10.8, water 15.5, sugars 71.0 %, 1.254 g/mL as made and 1.358 without air.
    [Fact]
    public void TheVanillaFrostingOfTheSchools()
    {
        Formula formula = Read("vanilla cream frosting",
            "2 1/2 oz butter\n2 1/2 oz shortening\n1 lb 14 oz powdered sugar\n1/4 tsp salt\n1/4 cup instant nonfat dry milk\n1 tbsp vanilla extract\n1/2 cup + 3 tbsp water");
        Assert.Equal(1187, formula.TotalGrams, 8.0);
        Assert.Equal(10.8, Percent(formula, FormulaPart.Fat), 0.2);
        Assert.Equal(15.5, Percent(formula, FormulaPart.Water), 0.4);
        Assert.Equal(71.0, Percent(formula, FormulaPart.Sugars), 0.4);
        Assert.Equal(1.254, formula.TotalGrams / (4 * 236.5882365), 0.01);
        Assert.Equal(1.358, Foam.Of(formula).GramsPerMillilitre, 0.01);
    }

    // ICE-10: dark chocolate of 45 to 59 % and heavy cream, one to one: fat 34.1, water 29.3, sugars 25.3 %.
    [Fact]
    public void GanacheOneToOne()
    {
        Formula formula = Read("ganache", "100 g dark chocolate 45-59 % cocoa\n100 g heavy cream");
        Assert.Equal(34.1, Percent(formula, FormulaPart.Fat), 0.1);
        Assert.Equal(29.3, Percent(formula, FormulaPart.Water), 0.1);
        Assert.Equal(25.3, Percent(formula, FormulaPart.Sugars), 0.1);
    }
}
