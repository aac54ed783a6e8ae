using System.Globalization;
using Confectio.Formulas.Solving;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Labels;

/// <summary>The rounding of nutrition panels at every edge of its rules.</summary>
public sealed class LabelRoundingTests
{
    // 21 CFR 101.9(c), as FDA's Food Labeling Guide, Appendix H (2009) and an inspection guide have it: C49 to C53, and the edges.
    [Theory]
    [InlineData(LabelNutrient.Kilocalories, 4.9, "0 kcal")] // C49
    [InlineData(LabelNutrient.Kilocalories, 47, "45 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 50, "50 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 54, "50 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 137.94, "140 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 2.4, "0 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 5, "5 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 47.4, "45 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 47.5, "50 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 50.1, "50 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 54.9, "50 kcal")]
    [InlineData(LabelNutrient.Kilocalories, 55, "60 kcal")]
    [InlineData(LabelNutrient.Fat, 0.49, "0 g")] // C50
    [InlineData(LabelNutrient.Fat, 4.7, "4.5 g")]
    [InlineData(LabelNutrient.Fat, 5.36, "5 g")]
    [InlineData(LabelNutrient.Fat, 0.5, "0.5 g")]
    [InlineData(LabelNutrient.Fat, 4.74, "4.5 g")]
    [InlineData(LabelNutrient.Fat, 4.75, "5 g")]
    [InlineData(LabelNutrient.Saturates, 4.99, "5 g")]
    [InlineData(LabelNutrient.Saturates, 5.4, "5 g")]
    [InlineData(LabelNutrient.TransFat, 5.5, "6 g")]
    [InlineData(LabelNutrient.Sodium, 4.9, "0 mg")] // C51
    [InlineData(LabelNutrient.Sodium, 60.72, "60 mg")]
    [InlineData(LabelNutrient.Sodium, 143, "140 mg")]
    [InlineData(LabelNutrient.Sodium, 5, "5 mg")]
    [InlineData(LabelNutrient.Sodium, 137.5, "140 mg")]
    [InlineData(LabelNutrient.Sodium, 140, "140 mg")]
    [InlineData(LabelNutrient.Sodium, 144.9, "140 mg")]
    [InlineData(LabelNutrient.Sodium, 145, "150 mg")]
    [InlineData(LabelNutrient.Cholesterol, 1.9, "0 mg")] // C52
    [InlineData(LabelNutrient.Cholesterol, 3, "less than 5 mg")]
    [InlineData(LabelNutrient.Cholesterol, 7, "5 mg")]
    [InlineData(LabelNutrient.Cholesterol, 2, "less than 5 mg")]
    [InlineData(LabelNutrient.Cholesterol, 5, "less than 5 mg")]
    [InlineData(LabelNutrient.Cholesterol, 7.4, "5 mg")]
    [InlineData(LabelNutrient.Cholesterol, 7.5, "10 mg")]
    [InlineData(LabelNutrient.Carbohydrate, 0.24, "0 g")] // C53
    [InlineData(LabelNutrient.Carbohydrate, 0.7, "less than 1 g")]
    [InlineData(LabelNutrient.Carbohydrate, 22.40, "22 g")]
    [InlineData(LabelNutrient.Fibre, 0.49, "0 g")]
    [InlineData(LabelNutrient.Sugars, 0.5, "less than 1 g")]
    [InlineData(LabelNutrient.AddedSugars, 0.99, "less than 1 g")]
    [InlineData(LabelNutrient.Protein, 0.7, "less than 1 g")]
    [InlineData(LabelNutrient.Protein, 1, "1 g")]
    [InlineData(LabelNutrient.Sugars, 1.49, "1 g")]
    [InlineData(LabelNutrient.Sugars, 1.5, "2 g")]
    public void TheUnitedStates(LabelNutrient nutrient, double value, string printed) => Assert.Equal(printed, LabelRounding.Print(nutrient, LabelRules.UnitedStates, value));

    // C54: 33 g of the vanilla frosting of USDA SR (19230): 418 kcal, 16.23 g of fat, 67.89 g of carbohydrate, 63.10 g of sugars, no protein, 184 mg of sodium in 100 g.
    [Theory]
    [InlineData(LabelNutrient.Kilocalories, 418, "140 kcal")]
    [InlineData(LabelNutrient.Fat, 16.23, "5 g")]
    [InlineData(LabelNutrient.Carbohydrate, 67.89, "22 g")]
    [InlineData(LabelNutrient.Sugars, 63.10, "21 g")]
    [InlineData(LabelNutrient.Protein, 0, "0 g")]
    [InlineData(LabelNutrient.Sodium, 184, "60 mg")]
    public void AServingOfFrosting(LabelNutrient nutrient, double per100, string printed) => Assert.Equal(printed, LabelRounding.Print(nutrient, LabelRules.UnitedStates, per100 * 0.33));

    // European Commission, guidance on tolerances (December 2012), section 6, as two restatements have it; K22.
    [Theory]
    [InlineData(LabelNutrient.Kilojoules, 372.5, "373 kJ")]
    [InlineData(LabelNutrient.Kilocalories, 89.4, "89 kcal")]
    [InlineData(LabelNutrient.Fat, 9.94, "9.9 g")]
    [InlineData(LabelNutrient.Fat, 9.96, "10.0 g")] // the figure that was not rounded has its step
    [InlineData(LabelNutrient.Fat, 10.4, "10 g")]
    [InlineData(LabelNutrient.Carbohydrate, 0.5, "0 g")]
    [InlineData(LabelNutrient.Sugars, 0.51, "0.5 g")]
    [InlineData(LabelNutrient.Saturates, 0.1, "0 g")]
    [InlineData(LabelNutrient.Saturates, 0.11, "0.1 g")]
    [InlineData(LabelNutrient.Salt, 0.0125, "0 g")] // K22
    [InlineData(LabelNutrient.Salt, 0.0126, "0.01 g")] // K22
    [InlineData(LabelNutrient.Salt, 0.013, "0.01 g")]
    [InlineData(LabelNutrient.Salt, 0.995, "1.00 g")]
    [InlineData(LabelNutrient.Salt, 1.04, "1.0 g")]
    public void TheEuropeanUnion(LabelNutrient nutrient, double value, string printed) => Assert.Equal(printed, LabelRounding.Print(nutrient, LabelRules.EuropeanUnion, value));

    // 21 CFR 101.9(d)(8), the printed examples (K20, K21), as quoted by others.
    [Theory]
    [InlineData(235, 4700, true, 6)]
    [InlineData(8, 18, true, 45)]
    [InlineData(8, 18, false, 44)]
    [InlineData(260, 1300, true, 20)]
    [InlineData(2, 20, true, 10)]
    public void DailyValues(double amount, double day, bool isMineral, int percent) => Assert.Equal(percent, LabelRounding.DailyValuePercent(100 * amount / day, isMineral));

    [Theory] // 21 CFR 101.9(b)(8), as quoted by others: 2 to 5 by halves, above by wholes
    [InlineData(3.3, "about 3.5")]
    [InlineData(4, "4")]
    [InlineData(12.6, "about 13")]
    [InlineData(5.4, "about 5")]
    public void Servings(double servings, string printed) => Assert.Equal(printed, LabelRounding.PrintServings(servings));

    // What is printed, read back as a panel, holds the value it was printed from: another piece with its own idea of the rules.
    [Property(MaxTest = 2000)]
    public void WhatIsPrintedReadsBackToTheValue(uint number, byte line, bool american)
    {
        LabelRules rules = american ? LabelRules.UnitedStates : LabelRules.EuropeanUnion;
        // A panel that is read has no such lines.
        LabelNutrient[] lines = [.. LabelRounding.Lines(rules).Where(nutrient => nutrient is not (LabelNutrient.AddedSugars or LabelNutrient.Cholesterol or LabelNutrient.TransFat))];
        LabelNutrient nutrient = lines[line % lines.Length];
        double value = number % 100_000 / 1000.0;
        PanelFigure figure = NutritionPanel.Of(rules, 50, (nutrient, LabelRounding.Print(nutrient, rules, value)))[nutrient]!;
        Assert.InRange(value, figure.Low - 1e-9, figure.High + 1e-9);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Assert.Throws<ArgumentException>("nutrient", () => LabelRounding.Print(LabelNutrient.Salt, LabelRules.UnitedStates, 1));
        Assert.Throws<ArgumentException>("nutrient", () => LabelRounding.Print(LabelNutrient.Cholesterol, LabelRules.EuropeanUnion, 1));
        Assert.Throws<ArgumentOutOfRangeException>("value", () => LabelRounding.Print(LabelNutrient.Fat, LabelRules.EuropeanUnion, -1));
        Assert.Throws<ArgumentOutOfRangeException>("value", () => LabelRounding.Print(LabelNutrient.Fat, LabelRules.EuropeanUnion, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("percent", () => LabelRounding.DailyValuePercent(double.PositiveInfinity, true));
        Assert.Throws<ArgumentOutOfRangeException>("servings", () => LabelRounding.PrintServings(0));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void IsTheSameInEveryCulture(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal("4.5 g", LabelRounding.Print(LabelNutrient.Fat, LabelRules.UnitedStates, 4.7));
            Assert.Equal("about 3.5", LabelRounding.PrintServings(3.3));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
