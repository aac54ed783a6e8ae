using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>One ingredient for others.</summary>
public sealed class ReplacementTests
{
    private static readonly IngredientTable s_foods = Pantry.Table(
        ("butter", 17.94, 81.11, 0.85, 0.06), ("shortening", 0, 100, 0, 0), ("water", 100, 0, 0, 0), ("powder", 3.16, 0.77, 36.16, 51.98), ("sugar", 0.02, 0, 0, 99.8));

    private static readonly Formula s_icing = s_foods.Formula("icing", ("sugar", 500), ("butter", 300));

    [Fact]
    public void ShorteningAndWaterForButterAtEqualFatAndWater()
    {
        Replacement replacement = Replacement.Of(s_icing, s_foods.Food("butter"), 100, [s_foods.Food("shortening"), s_foods.Food("water")], [FormulaPart.Fat, FormulaPart.Water]);
        // 100 g of butter hold 81.11 g of fat and 17.94 g of water; shortening is all fat, water all water.
        Assert.Equal(81.11, replacement.Added[0].Grams.Likely, 1e-12 * 100);
        Assert.Equal(17.94, replacement.Added[1].Grams.Likely, 1e-12 * 100);
        Assert.True(replacement.IsExact);
        Assert.Equal(200, (replacement.After.GramsOf(s_foods.Food("butter")) ?? 0), 1e-12 * 200);
        Assert.Equal(800 - 100 + 81.11 + 17.94, replacement.After.TotalGrams, 1e-12 * 800);
        foreach (FormulaPart part in new[] { FormulaPart.Fat, FormulaPart.Water })
            Assert.Equal(Grams(s_icing, part), Grams(replacement.After, part), 1e-12 * 800);
    }

    [Fact]
    public void WhatCannotBeKeptIsSaid()
    {
        Replacement replacement = Replacement.Of(s_icing, s_foods.Food("butter"), 300, [s_foods.Food("shortening")], [FormulaPart.Fat, FormulaPart.Water]);
        Assert.Equal(0.8111 * 300, replacement.Added[0].Grams.Likely, 1e-9);
        Assert.False(replacement.IsExact);
        Assert.True(replacement.Kept[0].IsKept);
        Assert.Equal("water: 53.82 g out, 0 g in", replacement.Kept[1].ToString());
        Assert.Null(replacement.After.GramsOf(s_foods.Food("butter")));
    }

    [Fact]
    public void MassesAndConstituentsAreConserved()
    {
        Random random = new(5);
        for (int i = 0; i < 500; i++)
        {
            double grams = 300 * random.NextDouble() + 1e-3;
            Replacement replacement = Replacement.Of(s_icing, s_foods.Food("butter"), Math.Min(grams, 300),
                [s_foods.Food("shortening"), s_foods.Food("water"), s_foods.Food("powder")], [FormulaPart.Fat, FormulaPart.Water, FormulaPart.Protein]);
            Assert.True(replacement.IsExact);
            Assert.Equal(s_icing.TotalGrams - Math.Min(grams, 300) + replacement.Added.Sum(line => line.Grams.Likely), replacement.After.TotalGrams, 1e-12 * 1000);
            foreach (FormulaPart part in new[] { FormulaPart.Fat, FormulaPart.Water, FormulaPart.Protein })
                Assert.Equal(Grams(s_icing, part), Grams(replacement.After, part), 1e-12 * 1000);
        }
    }

    [Fact]
    public void BadReplacementsAreRefused()
    {
        Ingredient butter = s_foods.Food("butter"), water = s_foods.Food("water");
        Assert.Throws<ArgumentOutOfRangeException>(() => Replacement.Of(s_icing, butter, 301, [water], [FormulaPart.Fat]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Replacement.Of(s_icing, butter, double.NaN, [water], [FormulaPart.Fat]));
        Assert.Throws<ArgumentException>(() => Replacement.Of(s_icing, water, 1, [butter], [FormulaPart.Fat]));
        Assert.Throws<ArgumentException>(() => Replacement.Of(s_icing, butter, 1, [], [FormulaPart.Fat]));
        Assert.Throws<ArgumentException>("keeping", () => Replacement.Of(s_icing, butter, 1, [water], [null!]));
        Assert.Throws<ArgumentException>("incoming", () => Replacement.Of(s_icing, butter, 1, [null!], [FormulaPart.Fat]));
        Assert.Throws<ArgumentException>(() => Replacement.Of(s_icing, butter, 1, [butter], [FormulaPart.Fat]));
        Assert.Throws<ArgumentException>(() => Replacement.Of(s_icing, butter, 1, [water], []));
    }

    private static double Grams(Formula formula, FormulaPart part) =>
        formula.Lines.Sum(line => part.FractionIn(line.Ingredient) * line.Grams.Likely) - part.FractionOfBoiledOffWater * formula.BoiledOffGrams;

    // 100 g of water, of which 80 g boil off, and and oil for half of the water at equal mass: what is left is less than what boils off.
    [Fact]
    public void LessWaterThanBoilsOffIsLaidToTheGramsThatWereSaid()
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Ingredient water = table.Get("water"), oil = table.Get("vegetable oil");
        Formula boiled = Formula.Of("f", [FormulaLine.Of(table.Get("granulated sugar"), 100), FormulaLine.Of(water, 100)], 80);
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>("grams", () => Replacement.Of(boiled, water, 50, [oil], [FormulaPart.Everything]));
        Assert.Equal(50.0, thrown.ActualValue);
        // 50 g of water of 99.90 % and 0.02 g of the sugar's.
        Assert.StartsWith("grams was 50; the formula would have 49.97 g of water, and 80 g boil off.", thrown.Message, StringComparison.Ordinal);
        Assert.Equal(10, Replacement.Of(boiled, water, 10, [oil], [FormulaPart.Everything]).Added[0].Grams.Likely, 1e-9);
    }

    // Water has no fat: at equal fat nothing comes in for all of it, and a formula of nothing is none.
    [Fact]
    public void NothingLeftIsLaidToTheGramsThatWereSaid()
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Ingredient water = table.Get("water");
        Assert.StartsWith("grams was 100; nothing of the formula would be left", Assert.Throws<ArgumentOutOfRangeException>("grams",
            () => Replacement.Of(Formula.Of("f", [FormulaLine.Of(water, 100)]), water, 100, [table.Get("vegetable oil")], [FormulaPart.Fat])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALineTooManyIsLaidToTheFormula()
    {
        IngredientTable table = IngredientTable.BuiltIn;
        Ingredient water = table.Get("water");
        Formula full = Formula.Of("f", Enumerable.Repeat(FormulaLine.Of(water, 1), 1000));
        Assert.Contains("1001 lines", Assert.Throws<ArgumentException>("formula", () => Replacement.Of(full, water, 1, [table.Get("vegetable oil")], [FormulaPart.Everything])).Message, StringComparison.Ordinal);
    }
}
