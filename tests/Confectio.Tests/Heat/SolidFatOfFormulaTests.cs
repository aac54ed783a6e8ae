using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Uncertainty;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>The solid fat of a formula: the sum over its fats by hand, what was published of mixtures, and what must hold of any.</summary>
public sealed class SolidFatOfFormulaTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    // What the curves have at their points (solid_fat.csv) and the fat of the foods (ingredients.csv, USDA SR), added up by hand.
    [Fact]
    public void AFormulaHasWhatItsFatsAddUpTo()
    {
        SolidFat butter = Of(25, ("unsalted butter", 200));
        Assert.Equal(11.5, butter.PercentOfFat!.Value.Likely, 1e-9);
        Assert.Equal(11.5 * 0.8111, butter.PercentOfFormula!.Value.Likely, 1e-9);
        SolidFat both = Of(25, ("unsalted butter", 100), ("lard", 100));
        Assert.Equal((81.11 * 11.5 + 100 * 13) / 181.11, both.PercentOfFat!.Value.Likely, 1e-9);
        Assert.Equal((81.11 * 8.5 + 100 * 8) / 181.11, both.PercentOfFat.Value.Low, 1e-9);
        Assert.Equal((81.11 * 14.5 + 100 * 18) / 181.11, both.PercentOfFat.Value.High, 1e-9);
        // The curve of lard is recalled, so nothing made of it is surer.
        Assert.Equal(Evidence.FromMemory, both.Evidence);
        Assert.Equal(SpreadBasis.Judged, both.PercentOfFat.Value.Basis);
        Assert.Equal(["lard", "milk-fat"], both.Fats.Select(fat => fat.Curve.Key));
        // Sugar and water change the whole and not the fat.
        SolidFat icing = Of(25, ("unsalted butter", 100), ("icing sugar", 200), ("water", 20));
        Assert.Equal(11.5, icing.PercentOfFat!.Value.Likely, 1e-9);
        Assert.Equal(11.5 * 81.11 / 320, icing.PercentOfFormula!.Value.Likely, 1e-9);
    }

    // Milk chocolate: its milk fat as milk fat, the rest as cocoa butter.
    [Fact]
    public void MilkFatInChocolateIsMilkFat()
    {
        Ingredient couverture = s_table.Get("couverture-milk-34");
        double milk = couverture.Composition.MilkFat, fat = couverture.Composition[Constituent.Fat];
        Assert.True(milk > 0 && milk < fat);
        Assert.Equal((milk * 21 + (fat - milk) * 76) / fat, Of(20, ("couverture-milk-34", 500)).PercentOfFat!.Value.Likely, 1e-9);
    }

    // Viriato and others (2018), abstract: anhydrous milk fat with 30, 40 and 50 % high-oleic sunflower oil has below 32 % solid at 10 °C and above 10 % at 21 °C. The plain sum of
    // 70 : 30 is 36.4 % at 10 °C: the range must reach what was measured, and the caution must say why.
    [Theory]
    [InlineData(70)]
    [InlineData(60)]
    [InlineData(50)]
    public void MilkFatWithOilReachesWhatWasMeasured(double milkFat)
    {
        Ingredient ghee = s_table.Get("ghee");
        double grams = milkFat / ghee.Composition[Constituent.Fat];
        SolidFat cold = Of(10, ("ghee", grams), ("oil-vegetable", 100 - milkFat)), warm = Of(21, ("ghee", grams), ("oil-vegetable", 100 - milkFat));
        Assert.True(cold.PercentOfFat!.Value.Low < 32);
        Assert.True(warm.PercentOfFat!.Value.High > 10);
        Assert.Contains(cold.Cautions, caution => caution.Contains("liquid oil dissolves some of the solid fat", StringComparison.Ordinal)
            && caution.Contains("Viriato", StringComparison.Ordinal));
    }

    [Fact]
    public void FatsThatSoftenEachOtherAreSaid()
    {
        SolidFat ganache = Of(20, ("couverture-dark-55", 200), ("heavy cream", 200));
        double sum = ganache.Fats.Sum(fat => fat.Grams * fat.Percent.Low) / ganache.FatGrams;
        Assert.Equal(0.7 * sum, ganache.PercentOfFat!.Value.Low, 1e-9);
        Assert.Contains(ganache.Cautions, caution => caution.Contains("milk fat softens cocoa butter", StringComparison.Ordinal));
        Assert.Contains(ganache.Cautions, caution => caution.Contains("tempered", StringComparison.Ordinal));
        // The palm and palm kernel of Int. J. Food Sci. Nutr. (1996): a eutectic.
        Assert.Contains(Of(10, ("oil-palm", 60), ("oil-palm-kernel", 40)).Cautions, caution => caution.Contains("eutectic", StringComparison.Ordinal));
        Assert.DoesNotContain(Of(20, ("unsalted butter", 100), ("lard", 100)).Cautions, caution => caution.Contains("ideal", StringComparison.Ordinal));
        // A trace of butter in a kilogram of chocolate softens nothing that could be told.
        Assert.DoesNotContain(Of(20, ("couverture-dark-55", 1000), ("heavy cream", 10)).Cautions, caution => caution.Contains("ideal", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatHasNoCurveIsNotTakenForLiquid()
    {
        SolidFat known = Of(20, ("unsalted butter", 100)), yolks = Of(20, ("unsalted butter", 100), ("egg yolk", 100));
        double yolk = yolks.FatGrams - yolks.KnownFatGrams;
        Assert.True(yolk > 20);
        Assert.Equal("egg yolk", Assert.Single(yolks.WithoutCurve).Name);
        Assert.Equal(known.PercentOfFat!.Value.Likely, yolks.PercentOfFat!.Value.Likely, 1e-9);
        Assert.Equal(81.11 * 14.6 / (81.11 + yolk), yolks.PercentOfFat.Value.Low, 1e-9);
        Assert.Equal((81.11 * 29.6 + 100 * yolk) / (81.11 + yolk), yolks.PercentOfFat.Value.High, 1e-9);
        Assert.Contains(yolks.Cautions, caution => caution.Contains("no known melting curve: egg yolk", StringComparison.Ordinal));
        Assert.Null(Of(20, ("egg yolk", 100)).PercentOfFat);
        Assert.Null(Of(20, ("granulated sugar", 100)).PercentOfFat);
        Assert.Contains("There is no fat in it.", Of(20, ("granulated sugar", 100)).Cautions);
    }

    [Fact]
    public void ACurveOfYourOwnStandsOnTop()
    {
        Ingredient butter = s_table.Get("unsalted butter");
        Formula formula = Formula.Of("", [FormulaLine.Of(butter, 100)]);
        SolidFatCurve own = SolidFatCurve.Of("Fennmarsh butter", [new(10, new Spread(40, 44, 48)), new(30, new Spread(2, 4, 6))], new Spread(75, 80, 90));
        FatCurves curves = FatCurves.BuiltIn.With(butter, own);
        Assert.Equal(44, formula.SolidFat(10, curves).PercentOfFat!.Value.Likely, 1e-9);
        Assert.Equal("own", Assert.Single(formula.SolidFat(10, curves).Fats).Method);
        // Outside its points it is flat, and that is said.
        Assert.Equal(4, formula.SolidFat(35, curves).PercentOfFat!.Value.Likely, 1e-9);
        Assert.Contains(formula.SolidFat(35, curves).Cautions, caution => caution.Contains("goes on flat", StringComparison.Ordinal));
        Assert.Equal(28, formula.SolidFat(20, FatCurves.BuiltIn.WithMilkFat(SolidFatCurve.Get("milk-fat-winter"))).PercentOfFat!.Value.Likely, 1e-9);
        Assert.Equal(21, formula.SolidFat(20).PercentOfFat!.Value.Likely, 1e-9);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-41)]
    [InlineData(151)]
    public void ATemperatureOutsideTheRangeIsRefused(double celsius) => Assert.Throws<ArgumentOutOfRangeException>(nameof(celsius),
        () => Formula.Of("", [FormulaLine.Of(s_table.Get("lard"), 100)]).SolidFat(celsius));

    // A blend lies between its parts; the ends of the range do too, but for what is judged to be lost in mixing; and it never rises as it warms.
    [Property(MaxTest = 300)]
    public void ABlendLiesBetweenItsPartsAndFallsAsItWarms(byte first, byte second, byte third, NonNegativeInt share, byte temperature)
    {
        string[] fats = ["unsalted butter", "lard", "shortening-palm", "shortening-white", "cocoa-butter", "oil-coconut", "oil-palm-kernel", "oil-vegetable", "margarine-stick", "couverture-milk-34"];
        double grams = 1 + share.Get % 500, celsius = temperature / 4.0;
        (string, double)[] lines = [(fats[first % fats.Length], 100), (fats[second % fats.Length], grams), (fats[third % fats.Length], 50)];
        SolidFat blend = Of(celsius, lines);
        Spread[] parts = [.. blend.Fats.Select(fat => fat.Percent)];
        Spread percent = blend.PercentOfFat!.Value;
        Assert.InRange(percent.Likely, parts.Min(part => part.Likely) - 1e-9, parts.Max(part => part.Likely) + 1e-9);
        Assert.InRange(percent.High, parts.Min(part => part.High) - 1e-9, parts.Max(part => part.High) + 1e-9);
        Assert.InRange(percent.Low, 0.7 * parts.Min(part => part.Low) - 1e-9, parts.Max(part => part.Low) + 1e-9);
        Spread warmer = Of(celsius + 1, lines).PercentOfFat!.Value;
        Assert.True(warmer.Low <= percent.Low + 1e-9 && warmer.Likely <= percent.Likely + 1e-9 && warmer.High <= percent.High + 1e-9);
    }

    private static SolidFat Of(double celsius, params (string Food, double Grams)[] lines) =>
        Formula.Of("", [.. lines.Select(line => FormulaLine.Of(s_table.Get(line.Food), line.Grams))]).SolidFat(celsius);
}
