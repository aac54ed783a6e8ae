using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Labels;
using Confectio.Measures;
using Confectio.Sources;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Labels;

/// <summary>Servings of American labels and tolerances of European ones, at the edges of their rules.</summary>
public sealed class ServingTests
{
    // C58: 21 CFR 101.9(b)(5)(viii), a label's cup, tablespoon and teaspoon.
    [Theory]
    [InlineData(KitchenUnit.Cup, 240)]
    [InlineData(KitchenUnit.Tablespoon, 15)]
    [InlineData(KitchenUnit.Teaspoon, 5)]
    public void C58TheMeasuresOfALabel(KitchenUnit unit, double millilitres) => Assert.Equal(millilitres, MeasuringSystem.UsLabelling.MillilitresPer(unit));

    // FDA inspection guide, Attachment 6: under a teaspoon by quarters; whole teaspoons to a tablespoon; 1, 1 1/3, 1 1/2, 1 2/3, 2 tablespoons; whole tablespoons to a quarter of a cup; above,
    // quarters and thirds of a cup (recalled).
    [Theory]
    [InlineData(0.5, "1/4 tsp")]
    [InlineData(1.25, "1/4 tsp")]
    [InlineData(3.2, "3/4 tsp")]
    [InlineData(4.9, "1 tsp")]
    [InlineData(5, "1 tsp")]
    [InlineData(7.4, "1 tsp")]
    [InlineData(7.5, "2 tsp")]
    [InlineData(14.9, "3 tsp")]
    [InlineData(15, "1 Tbsp")]
    [InlineData(19, "1 1/3 Tbsp")]
    [InlineData(22.5, "1 1/2 Tbsp")]
    [InlineData(25.2, "1 2/3 Tbsp")]
    [InlineData(29.9, "2 Tbsp")]
    [InlineData(30, "2 Tbsp")]
    [InlineData(37.4, "2 Tbsp")]
    [InlineData(37.5, "3 Tbsp")]
    [InlineData(59.9, "4 Tbsp")]
    [InlineData(60, "1/4 cup")]
    [InlineData(79, "1/3 cup")]
    [InlineData(85, "1/3 cup")]
    [InlineData(118, "1/2 cup")]
    [InlineData(165, "2/3 cup")]
    [InlineData(180, "3/4 cup")]
    [InlineData(240, "1 cup")]
    [InlineData(330, "1 1/3 cups")]
    public void AServingInHouseholdMeasures(double millilitres, string measure) => Assert.Equal(Amount.Parse(measure), HouseholdServing.Of(millilitres).Amount);

    // Nothing is farther off than half the widest step of its class: a quarter of a teaspoon, a teaspoon, half a tablespoon to one, a tablespoon, a quarter of a cup.
    [Property(MaxTest = 1000)]
    public void AServingIsTheNearestOfItsClass(uint number)
    {
        double millilitres = 0.5 + number % 1_000_000 / 100.0;
        HouseholdServing serving = HouseholdServing.Of(millilitres);
        double half = millilitres < 5 ? 0.75 : millilitres < 15 ? 2.5 : millilitres < 30 ? 2.5 : millilitres < 60 ? 7.5 : 20;
        Assert.InRange(serving.Millilitres, millilitres - half - 1e-9, millilitres + half + 1e-9);
    }

    // 21 CFR 101.12(b), Table 2, by two restatements: 2 tablespoons of frosting since 2016. The vanilla frosting of USDA SR 19230 is 33 g in 2 US tablespoons, 1.116 g/mL.
    [Fact]
    public void AServingOfFrosting()
    {
        ReferenceAmount frosting = ReferenceAmount.Get("frosting");
        Assert.Equal(Amount.Parse("2 Tbsp"), frosting.Amount);
        Assert.Equal(30 * 33 / 29.5735295625, frosting.GramsAt(33 / 29.5735295625), 9);
        Assert.Equal("2 Tbsp (30 mL)", HouseholdServing.Of(frosting.Amount.Millilitres(MeasuringSystem.UsLabelling)).ToString());
        Assert.Equal(30, ReferenceAmount.Get("marshmallow").GramsAt(0.3));
        Assert.Throws<ArgumentException>("category", () => ReferenceAmount.Get("sausage"));
    }

    // K18: footnotes 6 to 8 of the table, 10 and 4 g in a cubic inch of 16.387064 mL: 0.6102 and 0.2441 g/mL.
    [Theory]
    [InlineData(0.6103, "cake-heavy", 125)]
    [InlineData(0.6102, "cake-medium", 80)]
    [InlineData(0.2442, "cake-medium", 80)]
    [InlineData(0.2440, "cake-light", 55)]
    public void K18TheClassOfACake(double density, string category, double grams)
    {
        Assert.Equal(category, ReferenceAmount.OfCake(density).Category);
        Assert.Equal(grams, ReferenceAmount.OfCake(density).GramsAt(density));
    }

    // What was recalled is told so, and what was read was not read in the regulation.
    [Fact]
    public void EveryAmountSaysHowItWasSeen() => Assert.All(ReferenceAmount.All, amount =>
        Assert.True(amount.Provenance.Evidence == Evidence.FromMemory || amount.Provenance.Note.Contains("not in the regulation", StringComparison.Ordinal), amount.ToString()));

    [Fact]
    public void AToleranceStandsBesideTheFigure()
    {
        Formula cream = Formula.ParseText("", "250 g unsalted butter\n500 g icing sugar", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        NutritionEstimate panel = NutritionEstimate.Of(cream, LabelRules.EuropeanUnion);
        Assert.Equal(0.2 * 100 * 250 * 0.8111 / 750, panel[LabelNutrient.Fat]!.ToleranceGrams!.Value, 6); // 27 g: 20 %
        Assert.Equal(8, panel[LabelNutrient.Sugars]!.ToleranceGrams);
        Assert.Null(panel[LabelNutrient.Kilojoules]!.ToleranceGrams);
        Assert.Null(NutritionEstimate.Of(cream, LabelRules.UnitedStates, 30)[LabelNutrient.Fat]!.ToleranceGrams);
    }

    // Commission guidance of December 2012, Table 1, from memory, at its edges.
    [Theory]
    [InlineData(LabelNutrient.Sugars, 9.9, 2.0)]
    [InlineData(LabelNutrient.Sugars, 10, 2.0)]
    [InlineData(LabelNutrient.Carbohydrate, 40, 8.0)]
    [InlineData(LabelNutrient.Carbohydrate, 64, 8.0)]
    [InlineData(LabelNutrient.Protein, 0, 2.0)]
    [InlineData(LabelNutrient.Fibre, 25, 5.0)]
    [InlineData(LabelNutrient.Fat, 9.9, 1.5)]
    [InlineData(LabelNutrient.Fat, 10, 2.0)]
    [InlineData(LabelNutrient.Fat, 41, 8.0)]
    [InlineData(LabelNutrient.Saturates, 3.9, 0.8)]
    [InlineData(LabelNutrient.Saturates, 5, 1.0)]
    [InlineData(LabelNutrient.Salt, 1.24, 0.375)]
    [InlineData(LabelNutrient.Salt, 1.25, 0.25)]
    [InlineData(LabelNutrient.Kilojoules, 50, null)]
    public void TolerancesOfTheEuropeanUnion(LabelNutrient nutrient, double declared, double? tolerance)
    {
        Assert.Equal(tolerance, LabelTolerance.Of(nutrient, declared) is double told ? Math.Round(told, 9) : null);
        Assert.Throws<ArgumentOutOfRangeException>("declaredGrams", () => LabelTolerance.Of(nutrient, 101));
    }
}
