using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Textures;
using FsCheck;
using FsCheck.Fluent;
using Xunit;

namespace Confectio.Tests.Textures;

/// <summary>Crust, grit and water between layers: soft bands, published thresholds, and no verdict where the models do not give one.</summary>
public sealed class CrustTests
{
    private static Formula Read(string text) => Formula.ParseText("icing", text, IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);

    // ICE-09: 4 to 1 crusts, 1.2 to 1 does not; the formula of Corriher (BakeWise, 2008: 113 g of butter, 95 g of emulsified shortening, 454 g of sugar, 30 mL of milk, 15 mL of syrup;
    // 2.18 to its fat ingredients, 2.43 to its fat), which does not crust, stands where nothing is told, with both reasons that hold it back.
    [Fact]
    public void TheBandIsSoft()
    {
        Assert.Equal(CrustOutlook.Likely, IcingCrust.Of(Read("400 g icing sugar\n100 g white shortening\n20 g water")).Outlook);
        Assert.Equal(CrustOutlook.Unlikely, IcingCrust.Of(Read("120 g icing sugar\n100 g white shortening\n20 g water")).Outlook);
        IcingCrust open = IcingCrust.Of(Read("113 g unsalted butter\n95 g high-ratio shortening\n454 g icing sugar\n31 g whole milk\n21 g light corn syrup"));
        Assert.Equal(CrustOutlook.Uncertain, open.Outlook);
        Assert.Equal(2.43, open.SugarsToFat!.Value, 0.06); // counted on the sugars of icing sugar without its starch, and with those of the syrup
        Assert.Equal(3, open.Reasons.Count);
        Assert.Contains(open.Reasons, reason => reason.Contains("hold water", StringComparison.Ordinal));
        Assert.Contains(open.Reasons, reason => reason.Contains("Emulsified", StringComparison.Ordinal));
        Assert.All(open.Reasons, reason => Assert.Matches("estimated|memory|common practice", reason));
    }

    // The same shortening, emulsified, holds a likely crust back; a curd of which all the sugar dissolves has nothing to grow.
    [Fact]
    public void WhatHoldsACrustBack()
    {
        Assert.Equal(CrustOutlook.Uncertain, IcingCrust.Of(Read("400 g icing sugar\n100 g high-ratio shortening\n20 g water")).Outlook);
        Assert.Equal(CrustOutlook.Uncertain, IcingCrust.Of(Read("400 g icing sugar\n100 g white shortening\n20 g water\n30 g glycerine")).Outlook);
        Assert.Equal(CrustOutlook.Uncertain, IcingCrust.Of(Read("100 g granulated sugar\n20 g unsalted butter\n200 g water")).Outlook);
    }

    // ICE-11: 454 g of icing sugar and 80 g of white are 13.3 % water (by hand: 80 x 0.8757 + 454 x 0.0023 = 71.1 of 534 g). Of the sugar, 444 g, 199 g of sucrose dissolve in 100 g of
    // water at 20 °C (Vavrinecz, 66.6 %), so that some 303 g stay: common practice of royal icing and fondant, and no crust over fat.
    [Fact]
    public void RoyalIcingSetsWithoutFat()
    {
        Formula royal = Read("454 g icing sugar\n80 g egg white");
        Assert.Equal(13.3, 100 * Balance.Of(royal)[FormulaPart.Water].Fraction.Likely, 0.05);
        IcingCrust crust = IcingCrust.Of(royal);
        Assert.Equal(CrustOutlook.Likely, crust.Outlook);
        Assert.Equal(444 - 71.1 * 1.995, crust.ExcessSugarGrams, 4.0);
        Assert.Contains("no crust over a soft cream", Assert.Single(crust.Reasons), StringComparison.Ordinal);
        Assert.True(IcingCrust.Of(royal, 60).ExcessSugarGrams < crust.ExcessSugarGrams);
        Assert.Equal(CrustOutlook.Unlikely, IcingCrust.Of(Read("100 g water")).Outlook);
        // The 0.02 g of water in granulated sugar hold 0.04 g of it.
        Assert.Equal(99.76, IcingCrust.Of(Read("100 g granulated sugar\n100 g white shortening")).ExcessSugarGrams, 0.01);
    }

    [Fact]
    public void MoreSugarNeverLowersTheBand() => Prop.ForAll(Gen.Choose(0, 500).ToArbitrary(), Gen.Choose(1, 300).ToArbitrary(), Gen.Choose(0, 60).ToArbitrary(), (fat, water, syrup) =>
    {
        CrustOutlook last = CrustOutlook.Unlikely;
        double excess = 0;
        for (int sugar = 10; sugar <= 3000; sugar += sugar)
        {
            IcingCrust crust = IcingCrust.Of(Read($"{sugar} g icing sugar\n{fat} g white shortening\n{water} g water\n{syrup} g glucose syrup 42 DE"));
            Assert.True(crust.Outlook >= last && crust.ExcessSugarGrams >= excess);
            (last, excess) = (crust.Outlook, crust.ExcessSugarGrams);
        }
    }).QuickCheckThrowOnFailure();

    // ICE-12: Imai, Hatae and Shimada 1995, size times concentration for half of the people: 6.0, 19.7, 26.7, 30.7, 42.1.
    [Fact]
    public void GritByTheStudy()
    {
        Assert.Equal([6.0, 19.7, 26.7, 30.7, 42.1], GritThreshold.All.Select(one => one.Product));
        Assert.False(GritThreshold.Get("hard-gel").IsReached(30, 1));
        Assert.True(GritThreshold.Get("aqueous").IsReached(30, 1));
        Assert.True(GritThreshold.Get("aqueous").IsReached(6.01, 1));
        Assert.False(GritThreshold.Get("aqueous").IsReached(5.99, 1));
    }

    [Fact] // ICE-13: Breen and others 2019, 19 against 26 µm were told apart; what is just noticed is about 5 µm
    public void ChocolateOfTwoFinenesses()
    {
        Assert.True(GritThreshold.AreToldApart(19, 26) && GritThreshold.AreToldApart(26, 19));
        Assert.False(GritThreshold.AreToldApart(19, 22));
    }

    // Fruit is nearly water, a buttercream saturated sugar: which way it goes every pastry cook knows.
    [Fact]
    public void FruitWeepsIntoTheIcingAbove()
    {
        Formula fruit = Read("100 g raspberries"), icing = Read("200 g icing sugar\n100 g unsalted butter"), meringue = Read("200 g granulated sugar\n100 g egg white");
        Assert.Equal(WaterMove.Up, LayerWater.Between(icing, fruit).Move);
        Assert.Equal(WaterMove.Up, LayerWater.Between(meringue, fruit).Move);
        Assert.Equal(WaterMove.Down, LayerWater.Between(fruit, icing).Move);
        Assert.Equal(WaterMove.NotTold, LayerWater.Between(icing, icing).Move);
        Assert.Equal(WaterMove.NotTold, LayerWater.Between(icing, Read("100 g white shortening")).Move);
        Assert.Contains("lower layer is not known", LayerWater.Between(icing, Read("100 g white shortening")).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void WaterBetweenTurnsRoundWithTheLayers() => Prop.ForAll(Gen.Choose(1, 400).ToArbitrary(), Gen.Choose(1, 400).ToArbitrary(), (one, other) =>
    {
        Formula first = Read($"{one} g granulated sugar\n100 g water"), second = Read($"{other} g granulated sugar\n100 g water");
        LayerWater there = LayerWater.Between(first, second), back = LayerWater.Between(second, first);
        Assert.Equal(there.Difference!.Value.Likely, -back.Difference!.Value.Likely, 1e-12);
        Assert.Equal(there.Move switch { WaterMove.Up => WaterMove.Down, WaterMove.Down => WaterMove.Up, _ => WaterMove.NotTold }, back.Move);
        // Sugar that no longer dissolves moves nothing.
        if (one > 220 && other > 220)
            Assert.Equal(WaterMove.NotTold, there.Move);
    }).QuickCheckThrowOnFailure();
}
