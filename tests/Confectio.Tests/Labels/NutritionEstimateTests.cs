using System.Globalization;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Labels;
using Confectio.Measures;
using Confectio.Tests.Data;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Labels;

/// <summary>Nutrition panels of formulas, against printed energies, the law's own sum, and what must hold for all of them.</summary>
public sealed class NutritionEstimateTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    // C66: 10 g of carbohydrate, 5 g of fat and 1 g of protein: 89 kcal and 372 kJ by Regulation (EU) 1169/2011, Annex XIV. In 100 g, the rest water.
    [Fact]
    public void TheSumOfAnnexXiv()
    {
        Ingredient food = FoodLabel.Of("food", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Carbohydrate, "10 g"), (LabelNutrient.Sugars, "10 g"), (LabelNutrient.Fat, "5.0 g"),
            (LabelNutrient.Protein, "1.0 g"), (LabelNutrient.Fibre, "0 g"), (LabelNutrient.Salt, "0 g"))).Ingredient;
        NutritionEstimate panel = NutritionEstimate.Of(Formula.Of("", [FormulaLine.Of(food, 100)]), LabelRules.EuropeanUnion);
        Assert.Equal("372 kJ", panel[LabelNutrient.Kilojoules]!.Per100Grams.Printed);
        Assert.Equal("89 kcal", panel[LabelNutrient.Kilocalories]!.Per100Grams.Printed);
        Assert.Equal("10 g", panel[LabelNutrient.Carbohydrate]!.Per100Grams.Printed);
        Assert.Equal("5.0 g", panel[LabelNutrient.Fat]!.Per100Grams.Printed);
    }

    // USDA SR28 prints energies by specific factors (Atwater): those of sugar, fat and milk are near the general ones of 21 CFR 101.9(c)(1)(i)(B); cocoa, chocolate, nuts, egg
    // white, syrups, leavening, acid fruit and alcohol are not, and their rows do not follow.
    [Fact]
    public void EnergiesOfUsdaFoods()
    {
        Dictionary<string, double> printed = Tables.StandardReference.ToDictionary(row => row["ndb"], row => double.Parse(row["energy_kcal"], CultureInfo.InvariantCulture));
        List<string> off = [];
        int counted = 0;
        foreach (Ingredient food in s_table.All.Where(food => food.StandardReferenceNumber is { } number && printed.ContainsKey(number) && food.CompositionProvenance.Source.Key == "usda-sr"))
        {
            counted++;
            double kcal = NutritionEstimate.Of(Formula.Of("", [FormulaLine.Of(food, 100)]), LabelRules.UnitedStates, 100)[LabelNutrient.Kilocalories]!.Per100Grams.Value.Likely,
                usda = printed[food.StandardReferenceNumber!];
            if (Math.Abs(kcal - usda) > Math.Max(5, 0.05 * usda))
                off.Add(food.Id);
        }
        Assert.True(counted > 100);
        string[] follow = ["sugar-granulated", "sugar-icing", "butter-unsalted", "cream-heavy", "milk-whole", "shortening-white", "cream-cheese", "flour-plain", "egg-white", "egg-yolk"];
        Assert.DoesNotContain(off, id => follow.Contains(id));
        string[] doNot = ["cocoa-natural", "honey", "almonds", "hazelnuts", "chocolate-unsweetened", "syrup-corn-light", "baking-powder"];
        Assert.All(doNot, id => Assert.Contains(id, off));
        Assert.InRange(off.Count, 20, 45);
    }

    [Fact]
    public void AnAmericanServingOfButtercream()
    {
        Formula cream = Formula.ParseText("buttercream", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk", s_table, MeasuringSystem.Metric);
        NutritionEstimate panel = NutritionEstimate.Of(cream, LabelRules.UnitedStates, 35);
        // By hand: fat (202.775 + 0.975)/780·35 = 9.14 g; its saturates are 51.368 of butter and 1.865 of milk (USDA SR).
        Assert.Equal("9 g", panel[LabelNutrient.Fat]!.PerPortion!.Printed);
        Assert.Equal((250 * 0.51368 + 30 * 0.01865) / 780 * 35, panel[LabelNutrient.Saturates]!.PerPortion!.Value.Likely, 0.01);
        Assert.Equal(12, panel[LabelNutrient.Fat]!.ReferencePercent);
        Assert.Equal([LabelNutrient.TransFat, LabelNutrient.Cholesterol, LabelNutrient.AddedSugars], panel.NotKnown.Select(one => one.Nutrient));
        Assert.Contains("not a laboratory analysis", panel.ToString(), StringComparison.Ordinal);
        Assert.Empty(panel.TrafficLights);
    }

    // Common practice, and a fair test of the colours: every buttercream is red for fat, saturates and sugars.
    [Fact]
    public void EveryButtercreamIsRed()
    {
        Formula cream = Formula.ParseText("buttercream", "250 g unsalted butter\n500 g icing sugar", s_table, MeasuringSystem.Metric);
        Dictionary<LabelNutrient, TrafficLight> lights = NutritionEstimate.Of(cream, LabelRules.EuropeanUnion).TrafficLights.ToDictionary(light => light.Nutrient);
        Assert.All((LabelNutrient[])[LabelNutrient.Fat, LabelNutrient.Saturates, LabelNutrient.Sugars], nutrient =>
            Assert.Equal((LightColour.Red, LightColour.Red), (lights[nutrient].Lowest, lights[nutrient].Highest)));
        Assert.Equal(LightColour.Green, lights[LabelNutrient.Salt].Likely);
    }

    [Theory] // NHS, food labels: K23 and the edges
    [InlineData(LabelNutrient.Fat, 3.0, LightColour.Green)]
    [InlineData(LabelNutrient.Fat, 3.01, LightColour.Amber)]
    [InlineData(LabelNutrient.Fat, 17.5, LightColour.Amber)]
    [InlineData(LabelNutrient.Fat, 17.6, LightColour.Red)]
    [InlineData(LabelNutrient.Saturates, 1.5, LightColour.Green)]
    [InlineData(LabelNutrient.Saturates, 5.01, LightColour.Red)]
    [InlineData(LabelNutrient.Sugars, 22.5, LightColour.Amber)]
    [InlineData(LabelNutrient.Salt, 1.51, LightColour.Red)]
    public void ColoursAtTheirEdges(LabelNutrient nutrient, double grams, LightColour colour) => Assert.Equal(colour, TrafficLight.ColourOf(nutrient, grams));

    // What nobody tells is absent, and is no 0; a trace of it is within the range.
    [Fact]
    public void WhatIsNotKnownIsAbsent()
    {
        NutritionEstimate rice = NutritionEstimate.Of(Formula.ParseText("", "100 g high-ratio shortening\n100 g icing sugar", s_table, MeasuringSystem.Metric), LabelRules.EuropeanUnion);
        Assert.Null(rice[LabelNutrient.Saturates]);
        Assert.Contains(rice.NotKnown, one => one.Nutrient == LabelNutrient.Saturates && one.Why.Contains("shortening", StringComparison.Ordinal));
        NutritionEstimate trace = NutritionEstimate.Of(Formula.ParseText("", "100 g unsalted butter\n1 g raisins", s_table, MeasuringSystem.Metric), LabelRules.EuropeanUnion);
        Assert.NotNull(trace[LabelNutrient.Saturates]);
        // A label that does not tell its fibre makes that line absent.
        Ingredient biscuit = FoodLabel.Of("Fennmarsh biscuit", NutritionPanel.Parse("per 100 g\nfat 20 g\ncarbohydrate 65 g\nof which sugars 30 g\nprotein 6.0 g\nsalt 0.5 g", LabelRules.EuropeanUnion)).Ingredient;
        NutritionEstimate made = NutritionEstimate.Of(Formula.Of("", [FormulaLine.Of(biscuit, 100), FormulaLine.Of(s_table.Get("unsalted butter"), 50)]), LabelRules.EuropeanUnion);
        Assert.Null(made[LabelNutrient.Fibre]);
        Assert.Contains(made.NotKnown, one => one.Nutrient == LabelNutrient.Fibre && one.Why.Contains("Fennmarsh biscuit", StringComparison.Ordinal));
        Assert.NotNull(made[LabelNutrient.Fat]);
    }

    // Saturates are never more than the fat of a food, and their kind is told.
    [Fact]
    public void SaturatesAreWithinTheFat() => Assert.All(s_table.All, food =>
    {
        NutritionEstimate panel = NutritionEstimate.Of(Formula.Of("", [FormulaLine.Of(food, 100)]), LabelRules.EuropeanUnion);
        if (panel[LabelNutrient.Saturates] is { } saturates && panel[LabelNutrient.Fat] is { } fat)
            Assert.True(saturates.Per100Grams.Value.Likely <= fat.Per100Grams.Value.High + 0.06, food.Id);
    });

    // A portion is its share of 100 g; boiling off raises everything but the water by one factor; a part is never more than its whole.
    [Property(MaxTest = 200)]
    public void APortionIsItsShare(byte butter, byte sugar, byte milk, byte portion, byte gone)
    {
        Formula formula = Formula.Of("", [FormulaLine.Of(s_table.Get("unsalted butter"), 1 + butter), FormulaLine.Of(s_table.Get("icing sugar"), 1 + sugar), FormulaLine.Of(s_table.Get("whole milk"), 50 + milk)]);
        double grams = 1 + portion;
        NutritionEstimate panel = NutritionEstimate.Of(formula, LabelRules.EuropeanUnion, grams);
        Assert.All(panel.Lines, line => Assert.Equal(line.Per100Grams.Value.Likely * grams / 100, line.PerPortion!.Value.Likely, 1e-9));
        Balance balance = Balance.Of(formula);
        Assert.Equal(balance.KilojoulesPer100Grams, panel[LabelNutrient.Kilojoules]!.Per100Grams.Value.Likely, 1e-6);
        Assert.True(panel[LabelNutrient.Sugars]!.Per100Grams.Value.Likely <= panel[LabelNutrient.Carbohydrate]!.Per100Grams.Value.Likely + 1e-9);
        double lost = gone / 10.0, factor = formula.TotalGrams / (formula.TotalGrams - lost);
        NutritionEstimate boiled = NutritionEstimate.Of(Formula.Of("", formula.Lines, lost), LabelRules.EuropeanUnion, grams);
        Assert.Equal(panel[LabelNutrient.Fat]!.Per100Grams.Value.Likely * factor, boiled[LabelNutrient.Fat]!.Per100Grams.Value.Likely, 1e-9);
        Assert.Equal(panel[LabelNutrient.Saturates]!.Per100Grams.Value.Likely * factor, boiled[LabelNutrient.Saturates]!.Per100Grams.Value.Likely, 1e-9);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Formula butter = Formula.Of("", [FormulaLine.Of(s_table.Get("unsalted butter"), 100)]);
        Assert.Throws<ArgumentException>("portionGrams", () => NutritionEstimate.Of(butter, LabelRules.UnitedStates));
        Assert.Throws<ArgumentOutOfRangeException>("portionGrams", () => NutritionEstimate.Of(butter, LabelRules.UnitedStates, 0));
        Assert.Throws<ArgumentOutOfRangeException>("rules", () => NutritionEstimate.Of(butter, (LabelRules)9));
        Assert.Throws<ArgumentException>("nutrient", () => TrafficLight.ColourOf(LabelNutrient.Protein, 3));
        Assert.Throws<ArgumentOutOfRangeException>("gramsPer100", () => TrafficLight.ColourOf(LabelNutrient.Fat, 101));
    }
}
