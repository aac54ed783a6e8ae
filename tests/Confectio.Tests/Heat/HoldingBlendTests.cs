using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>The most butter that holds, against a search by hand that knows nothing of the solver.</summary>
public sealed class HoldingBlendTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static readonly Ingredient s_butter = s_table.Get("unsalted butter"), s_shortening = s_table.Get("white shortening"), s_cocoa = s_table.Get("cocoa butter"), s_water = s_table.Get("water");

    [Theory]
    [InlineData(31, "white shortening", false)]
    [InlineData(28, "white shortening", false)]
    [InlineData(31, "white shortening", true)]
    [InlineData(25, "white shortening", true)]
    [InlineData(30, "palm shortening", false)]
    public void IsTheMostButterOfAllBlends(double celsius, string firm, bool surely)
    {
        Ingredient other = s_table.Get(firm);
        HoldingBlend blend = Cream().MostThatHolds(s_butter, other, s_water, celsius, surely);
        // Of 0 to 250 g in steps of 0.05 g, fat for fat and water for water.
        double? most = null;
        for (int i = 0; i <= 5000; i++)
        {
            double butter = i * 0.05;
            if (Holds(Swapped(butter, other), celsius, surely))
                most = butter;
        }
        Assert.Equal(most is null, blend.Formula is null);
        if (most is double expected)
        {
            Assert.Equal(expected, blend.SoftGrams, 0.11);
            Assert.True(Holds(blend.Formula!, celsius, surely));
            Balance before = Balance.Of(Cream()), after = Balance.Of(blend.Formula!);
            Assert.Equal(before[FormulaPart.Fat].Grams.Likely, after[FormulaPart.Fat].Grams.Likely, 1e-6);
            Assert.Equal(before[FormulaPart.Water].Grams.Likely, after[FormulaPart.Water].Grams.Likely, 1e-6);
            Assert.Equal(500, blend.Formula!.GramsOf(s_table.Get("icing sugar"))!.Value, 1e-9);
        }
    }

    [Fact]
    public void WhatHoldsStaysAsItIs()
    {
        HoldingBlend blend = Cream().MostThatHolds(s_butter, s_shortening, s_water, 20);
        Assert.Equal(250, blend.SoftGrams, 1e-6);
        Assert.Equal(0, blend.FirmGrams, 1e-6);
        Assert.Contains("as it is", blend.Why, StringComparison.Ordinal);
    }

    // The windows were found for buttercreams without cocoa butter: of a blend with it they say nothing, hard as it may be.
    [Theory]
    [InlineData(28, false)]
    [InlineData(27, true)]
    public void NothingIsSaidOfCocoaButter(double celsius, bool surely)
    {
        HoldingBlend blend = Cream().MostThatHolds(s_butter, s_cocoa, s_water, celsius, surely);
        Assert.Null(blend.Formula);
        Assert.Contains("nothing can be said of", blend.Why, StringComparison.Ordinal);
        Assert.Contains("cocoa butter", blend.Why, StringComparison.Ordinal);
    }

    // At 38 °C coconut oil has melted: no blend with it holds, and that is said and not rounded to something.
    [Fact]
    public void WhereNothingHoldsItSaysSo()
    {
        HoldingBlend blend = Cream().MostThatHolds(s_butter, s_table.Get("coconut oil"), s_water, 38);
        Assert.Null(blend.Formula);
        Assert.Contains("no blend of", blend.Why, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => blend.SoftGrams);
        Assert.Throws<InvalidOperationException>(() => blend.FirmGrams);
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => Cream().MostThatHolds(s_butter, s_shortening, s_water, 88));
        Assert.Throws<ArgumentException>("firm", () => Cream().MostThatHolds(s_butter, s_butter, s_water, 31));
        Assert.Throws<ArgumentException>("water", () => Cream().MostThatHolds(s_butter, s_shortening, s_table.Get("whole milk"), 31));
        Assert.Throws<ArgumentException>("soft", () => Cream().MostThatHolds(s_cocoa, s_shortening, s_water, 31));
    }

    private static Formula Cream() => Formula.Of("Fennmarsh buttercream", [FormulaLine.Of(s_butter, 250), FormulaLine.Of(s_table.Get("icing sugar"), 500), FormulaLine.Of(s_table.Get("whole milk"), 30)]);

    private static bool Holds(Formula formula, double celsius, bool surely)
    {
        Spread percent = formula.SolidFat(celsius).PercentOfFat!.Value;
        return surely ? percent.Low >= 12 - 1e-9 : percent.Likely >= 10 - 1e-9;
    }

    private static Formula Swapped(double butter, Ingredient firm)
    {
        double given = 250 - butter, fat = given * s_butter.Composition[Constituent.Fat], water = given * s_butter.Composition[Constituent.Water];
        double grams = fat / firm.Composition[Constituent.Fat];
        return Formula.Of("", [.. Cream().Lines.Select(line => line.Ingredient == s_butter ? FormulaLine.Of(s_butter, butter) : line), FormulaLine.Of(firm, grams),
            FormulaLine.Of(s_table.Get("water"), water - grams * firm.Composition[Constituent.Water])]);
    }
}
