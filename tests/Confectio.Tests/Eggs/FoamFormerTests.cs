using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using FsCheck;
using FsCheck.Fluent;
using Xunit;

namespace Confectio.Tests.Eggs;

/// <summary>Foam formers in place of white by the spoons of the kitchen: common practice, and what changes is said.</summary>
public sealed class FoamFormerTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static Formula Meringue(double sugar, double white) => Formula.ParseText("meringue", FormattableString.Invariant($"{sugar} g granulated sugar\n{white} g egg white"), s_table, MeasuringSystem.UsCustomary);

    // Common practice: a tablespoon of meringue powder and two of water a white; two tablespoons of aquafaba. A US tablespoon is 14.787 mL, a white 33 g (USDA SR).
    [Fact]
    public void TheSpoonsOfTheKitchen()
    {
        FoamFormerReplacement powder = FoamFormer.Get("meringue-powder").Replace(33, s_table), beans = FoamFormer.Get("aquafaba").Replace(99, s_table);
        Assert.Equal(2 * 14.787, powder.WaterGrams.Likely, 0.2);
        Assert.Equal(14.787, powder.Grams.Likely / s_table.Get("meringue powder").NearestDensity(Packing.Spooned).GramsPerMillilitre.Likely, 0.01);
        Assert.True(powder.Grams.Low < powder.Grams.Likely && powder.Grams.Likely < powder.Grams.High);
        Assert.Equal(6 * 14.787, beans.Grams.Likely / s_table.Get("aquafaba").NearestDensity(Packing.Levelled).GramsPerMillilitre.Likely, 0.05);
        Assert.Equal(0, beans.WaterGrams.Likely);
        Assert.True(powder.SugarGrams > 1 && beans.SugarGrams < 2);
    }

    [Fact]
    public void WhatChangesIsSaidAndNothingIsCalledPublished() => Assert.All(FoamFormer.All, former =>
    {
        Assert.Equal(Evidence.CommonPractice, former.Provenance.Evidence);
        foreach (string word in (string[])["egg", "vegan", "solids"])
            Assert.Contains(former.Changes, change => change.Contains(word, StringComparison.Ordinal));
    });

    [Fact]
    public void AllergensGoWithTheWhiteOrStay()
    {
        Assert.DoesNotContain(Allergen.Egg, FoamFormer.Get("aquafaba").Replace(100, s_table).In(Meringue(200, 100)).Allergens);
        Assert.Contains(Allergen.Egg, FoamFormer.Get("meringue-powder").Replace(100, s_table).In(Meringue(200, 100)).Allergens);
        Assert.Contains(Allergen.Egg, FoamFormer.Get("aquafaba").Replace(50, s_table).In(Meringue(200, 100)).Allergens);
    }

    [Fact]
    public void MassIsConserved() => Prop.ForAll(Gen.Choose(1, 1000).ToArbitrary(), Gen.Choose(1, 500).ToArbitrary(), Gen.Choose(1, 100).ToArbitrary(), (sugar, white, percent) =>
    {
        Formula before = Meringue(sugar, white);
        foreach (FoamFormer former in FoamFormer.All)
        {
            FoamFormerReplacement replaced = former.Replace(white * percent / 100.0, s_table);
            Formula after = replaced.In(before);
            Assert.Equal(before.TotalGrams - replaced.WhiteGrams + replaced.Grams.Likely + replaced.WaterGrams.Likely, after.TotalGrams, 1e-9 * before.TotalGrams + 1e-9);
            Assert.Equal(Balance.Of(before)[FormulaPart.Sugars].Grams.Likely - 0.0071 * replaced.WhiteGrams + replaced.SugarGrams, Balance.Of(after)[FormulaPart.Sugars].Grams.Likely, 0.001 * replaced.WhiteGrams + 1e-6);
        }
    }).QuickCheckThrowOnFailure();

    [Fact]
    public void BadInputIsNamed()
    {
        Assert.Throws<ArgumentException>("formula", () => FoamFormer.Get("aquafaba").Replace(101, s_table).In(Meringue(200, 100)));
        Assert.Throws<ArgumentOutOfRangeException>("whiteGrams", () => FoamFormer.Get("aquafaba").Replace(double.NaN, s_table));
        Assert.Contains("meringue-powder", Assert.Throws<ArgumentException>(() => FoamFormer.Get("gelatine")).Message, StringComparison.Ordinal);
    }
}
