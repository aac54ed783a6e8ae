using Confectio.Cakes;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Pictures;
using Confectio.Tests.Cakes;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Icings;

/// <summary>What an attack with strange sizes broke: each is answered with figures, or refused by the name of what was given.</summary>
public sealed class HostileOrderTests
{
    // Steep bodies that a sharp coat or another size takes past the longest length, a border of more than 10 km, and corners of 5e-324 cm. They ended in errors that named
    // an argument nobody had given: "diameterCentimetres was 10009.4", "pathCentimetres was NaN".
    [Theory]
    [InlineData(""" "shape":"tapered-round","bottomDiameter":"202 cm","topDiameter":"15 cm","height":"10 cm" """)]
    [InlineData(""" "shape":"tapered-round","bottomDiameter":"5752.918094281535 cm","topDiameter":"15 cm","height":"10 cm" """)]
    [InlineData(""" "shape":"tapered-square","bottomSide":"1000 cm","topSide":"15 cm","height":"10 cm" """)]
    [InlineData(""" "shape":"tapered-square","bottomSide":"900 cm","topSide":"15 cm","height":"10 cm" """)]
    [InlineData(""" "shape":"oval","width":"10000 cm","length":"30 cm","height":"10 cm" """)]
    [InlineData(""" "shape":"rectangle","width":"20 cm","length":"30 cm","cornerRadius":"5e-324 cm","height":"10 cm" """)]
    [InlineData(""" "shape":"rectangle","width":"20 cm","length":"30 cm","cornerRadius":"1e-15 cm","height":"10 cm" """)]
    [InlineData(""" "shape":"half-ball","diameter":"10000 cm" """)]
    [InlineData(""" "shape":"ring","outerDiameter":"10000 cm","innerDiameter":"9999.999 cm","height":"0.001 cm" """)]
    public void StrangeSizesAreAnswered(string members)
    {
        bool ball = members.Contains("ball", StringComparison.Ordinal);
        string more = ball ? "" : """
            ,"layers":2,"filling":{"icing":"a","thickness":"0.0001 mm"},"borders":[{"icing":"a","kind":"shells","width":"1 cm"},{"icing":"a","kind":"half-round","width":"1 cm","place":"top-edge"}],
            "drip":{"icing":"a","pool":"2 mm","drips":12}
            """;
        IcingOrder order = IcingOrder.ParseJson($$"""{"confectioOrder":1,"tiers":[{ {{members}},"coats":[{"icing":"a","thickness":"5 mm","edge":"sharp"},{"icing":"a","thickness":"2 mm"}]{{more}} }],"icings":[{"name":"a","gramsPerMillilitre":0.9}]}""", IngredientTable.BuiltIn);
        IcingNeed need = Assert.Single(order.Plan().Needs);
        Assert.InRange(need.Millilitres, 1, 1e12);
        Assert.DoesNotContain("NaN", CakePicture.Svg(order.Cake), StringComparison.Ordinal);
        IcingCover reach = order.Icings[0].CoverFrom(0.7 * need.PlannedGrams.Likely);
        if (reach.MaximumScale(order.Cake, "a") is double scale)
            Assert.Equal(reach.Millilitres, order.Cake.Scaled(scale).Cover().TotalMillilitres, 1e-6 * reach.Millilitres);
        if (reach.CoatFactor(order.Cake, "a") is double factor)
            Assert.Equal(reach.Millilitres, order.Cake.WithCoats("a", factor).Cover().TotalMillilitres, 1e-6 * reach.Millilitres);
    }

    // The corners of 1e-15 cm leave the rectangle what it is: 20 by 30 cm.
    [Theory]
    [InlineData(5e-324)]
    [InlineData(1e-306)]
    [InlineData(1e-15)]
    public void CornersLostInRoundingAreSharp(double radius)
    {
        PlanShape plan = PlanShape.Rectangle(Cm(20), Cm(30), Cm(radius));
        Assert.Equal(21.0 * 31, plan.SharpOffset(0.5).AreaSquareCentimetres, 1e-9);
        Assert.Equal(18.0 * 28, plan.Inset(1).AreaSquareCentimetres, 1e-9);
        Assert.Equal(0.2 * 0.3, plan.Scaled(0.01).AreaSquareCentimetres, 1e-12);
    }

    // In the tier that stands on it a place is turned back before it is looked up, which takes it past the longest length.
    [Fact]
    public void APlaceBeyondTheLongestLengthIsOutsideAndNoError()
    {
        string message = Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", [Tier(20).Placed(new PlanPoint(0, 0), 45), Tier(10).Placed(new PlanPoint(10_000, 10_000))])).Message;
        Assert.Contains("it does not lie wholly inside its top", message, StringComparison.Ordinal);
    }

    // What comes out of an argument is refused by the name of that argument.
    [Fact]
    public void RefusalsNameWhatWasGiven()
    {
        CakeTier filled = Tier(20).Filled(CakeFilling.Of("jam", Cm(4)), 2).Coated(CakeCoat.Of("cream", Cm(60)));
        Assert.Throws<ArgumentException>("layers", () => Tier(20).Filled(CakeFilling.Of("jam", Cm(4)), 9));
        Assert.Throws<ArgumentException>("factor", () => filled.Scaled(0.1));
        Assert.Throws<ArgumentException>("factor", () => Cake.Of("", [filled]).Scaled(0.1));
        Assert.Contains("it must be from 0 to 1.6666666666666667, or coat of cream, 600 mm", Assert.Throws<ArgumentOutOfRangeException>("factor", () => filled.WithCoats("cream", 2)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("factor", () => Cake.Of("", [filled]).WithCoats("cream", 2));
        PlanShapeTests.Refused("factor", 2, () => PlanShape.Round(Cm(6000)).Scaled(2));
        PlanShapeTests.Refused("factor", 2, () => CakeBody.Prism(PlanShape.Round(Cm(6000)), Cm(10)).Scaled(2));
    }

    [Fact]
    public void APictureOfAHugeStackHasItsLengths()
    {
        string svg = CakePicture.Svg(Cake.Of("", Enumerable.Repeat(CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(10_000)), Cm(10_000))).Coated(Enumerable.Repeat(CakeCoat.Of("cream", Cm(100)), 100)), 50)
            .Select((tier, i) => i == 0 ? tier : tier.Placed(new PlanPoint(0, 0)))));
        Assert.Contains("in)", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
    }

    // Of a formula with a trace of egg a batch with one egg would be without end: refused where it is said. Short of that, what is left over may be a thousand tonnes.
    [Fact]
    public void ATraceOfEggIsRefusedAndHugeRestsAreCovered()
    {
        Formula Egg(double grams) => Formula.Of("", [FormulaLine.Of(IngredientTable.BuiltIn.Get("egg white"), grams), FormulaLine.Of(IngredientTable.BuiltIn.Get("unsalted butter"), 1000)]);
        EggSize large = EggSizeSystem.Get("us").Size("large");
        foreach (double trace in (double[])[1e-306, 1e-300, 1e-9])
            Assert.Contains("a batch with one egg would be more than 1000000000 g", Assert.Throws<ArgumentException>("part", () => Icing.Of("cream", 0.05, Egg(trace)).InWholeEggs(large)).Message, StringComparison.Ordinal);
        Icing icing = Icing.Of("cream", 0.05, Egg(1e-4)).InWholeEggs(large);
        IcingNeed need = IcingPlan.Of(Cake.Of("", [Tier(20).Coated(CakeCoat.Of("cream", Cm(0.5)))]), [icing], 0).Need("cream");
        Assert.Equal(1, need.Batches[0].Eggs);
        // 1000 g of butter to 1e-4 g of white, and some 33 g of white in an egg.
        Assert.InRange(need.LeftOverGrams, 2e8, 5e8);
        Assert.Equal(need.LeftOverGrams / 0.05, need.LeftOverCover!.Millilitres, 1);
        // More than 1e9 mL is reached as well, and the least covers no more than it is.
        Assert.Equal(2e10, Icing.Of("cream", 0.05).CoverFrom(1e9).Millilitres, 1);
        Assert.Equal(0.05, Icing.Of("cream", 2).CoverFrom(1, 0.9).Millilitres, 1e-12);
    }

    [Fact]
    public void ACakeThatTakesMoreThanAThousandTonnesIsRefused()
    {
        Cake cake = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(10_000)), Cm(10_000))).Coated(CakeCoat.Of("cream", Cm(100)))]);
        Assert.Contains("of cream; at most 1000000000 g are planned", Assert.Throws<ArgumentException>("cake", () => IcingPlan.Of(cake, [Icing.Of("cream", 1)], 0)).Message, StringComparison.Ordinal);
    }

    // The smallest amounts there are: still one batch, and nothing that is not a number.
    [Theory]
    [InlineData(5e-324)]
    [InlineData(1e-306)]
    [InlineData(1e-20)]
    public void AVanishingCoatIsOneBatch(double thickness)
    {
        IcingNeed need = IcingPlan.Of(Cake.Of("", [], [Cupcakes.Flat("cream", 1, Cm(6), Cm(thickness))]), [Icing.Of("cream", 0.8)], 0, MixerBowl.OfQuarts(5, 0.7)).Need("cream");
        Assert.All(need.Batches, batch => Assert.Equal(1, batch.Count));
        Assert.True(double.IsFinite(need.MadeGrams) && need.MadeGrams >= 0);
        Assert.Null(need.LeftOverCover);
    }

    // A border whose middle has nowhere to run takes nothing, and nothing is not zero in silence.
    [Fact]
    public void ABorderWithoutRoomIsSaid()
    {
        Cake cake = Cake.Of("", [Tier(12).Bordered(CakeBorder.Of("cream", BorderKind.HalfRound, Cm(13), BorderPlace.TopEdge))]);
        CakeFinding finding = Assert.Single(cake.Cover().Findings);
        Assert.Equal(CakeFindingKind.BorderHasNoRoom, finding.Kind);
        Assert.Equal("Tier 1: a half round on the top edge of cream is too wide for where it runs; nothing of it is planned.", finding.Text);
        Assert.Empty(Cake.Of("", [Tier(12).Bordered(CakeBorder.Of("cream", BorderKind.HalfRound, Cm(5), BorderPlace.TopEdge))]).Cover().Findings);
    }

    private static CakeTier Tier(double diameter) => CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(diameter)), Cm(10)));
}
