using System.Reflection;
using Confectio.Cakes;
using Confectio.Tests.Consistency;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>What is no cake is refused by name, value and range; what is a strange one is drawn to the reader's eye, and keeps its volumes.</summary>
public sealed class CakeRefusalTests
{
    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e6)]
    public void BadNumbersAreRefusedByName(double bad)
    {
        CakeTier tier = Tier(20);
        Cake cake = Cake.Of("", [tier]);
        PlanShapeTests.RefusedLength("thickness", bad, () => CakeCoat.Of("icing", Cm(bad)));
        PlanShapeTests.RefusedLength("thickness", bad, () => CakeFilling.Of("icing", Cm(bad)));
        PlanShapeTests.RefusedLength("width", bad, () => CakeFilling.Of("icing", Cm(1)).InDam("icing", Cm(bad)));
        PlanShapeTests.RefusedLength("width", bad, () => CakeBorder.Of("icing", BorderKind.Shells, Cm(bad), BorderPlace.Foot));
        PlanShapeTests.RefusedLength("pool", bad, () => CakeDrip.Of("icing", Cm(bad)));
        PlanShapeTests.Refused("factor", bad, () => tier.Scaled(bad));
        PlanShapeTests.Refused("factor", bad, () => cake.Scaled(bad));
        PlanShapeTests.Refused("factor", bad, () => tier.WithCoats("icing", bad));
        PlanShapeTests.Refused("factor", bad, () => cake.WithCoats("icing", bad));
        PlanShapeTests.RefusedLength("thickness", bad, () => IcingCover.Of(1000).MaximumRoundCentimetres(Cm(10), Cm(bad))!);
        PlanShapeTests.RefusedLength("height", bad, () => IcingCover.Of(1000).MaximumRoundCentimetres(Cm(bad), Cm(1))!);
        PlanShapeTests.Refused("heightCentimetres", bad, () => tier.Body.MillilitresBelow(bad));
        if (bad == -1)
            return;
        string place = bad is 1e6 ? "at" : "xCentimetres";
        PlanShapeTests.Refused(place, bad, () => tier.Placed(new PlanPoint(bad, 0)));
        PlanShapeTests.Refused(place == "at" ? place : "yCentimetres", bad, () => tier.Placed(new PlanPoint(0, bad)));
        PlanShapeTests.Refused("turnedDegrees", bad, () => tier.Placed(new PlanPoint(0, 0), bad));
    }

    [Fact]
    public void SizesOfNothingAreRefused()
    {
        PlanShapeTests.RefusedLength("diameter", 0, () => PlanShape.Round(Cm(0)));
        PlanShapeTests.RefusedLength("height", 0, () => CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(0)));
        PlanShapeTests.RefusedLength("width", 0, () => CakeBorder.Of("icing", BorderKind.Shells, Cm(0), BorderPlace.Foot));
        PlanShapeTests.Refused("factor", 0, () => Tier(20).Scaled(0));
        // A coat of nothing is one.
        Assert.Equal(0, Cake.Of("", [Tier(20).Coated(CakeCoat.Of("icing", Cm(0)))]).Cover().TotalMillilitres);
        Assert.Throws<ArgumentOutOfRangeException>("layers", () => Tier(20).Filled(CakeFilling.Of("jam", Cm(0.5)), 0));
        Assert.Throws<ArgumentOutOfRangeException>("count", () => Cupcakes.Flat("icing", -1, Cm(6), Cm(0.5)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData(101)]
    public void NamesThatAreNoneAreRefused(object name)
    {
        string icing = name as string ?? new string('x', (int)name);
        Assert.Throws<ArgumentException>("icing", () => CakeCoat.Of(icing, Cm(0.5)));
        Assert.Throws<ArgumentException>("icing", () => Cupcakes.Flat(icing, 1, Cm(6), Cm(0.5)));
    }

    [Fact]
    public void ATierLargerThanTheOneBelowIsRefused()
    {
        string message = Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", [Tier(20), Tier(10), Tier(15)])).Message;
        Assert.Contains("tier 3 (round, 15 × 15 cm, 10 cm high) cannot stand on tier 2 (round, 10 × 10 cm, 10 cm high): it does not lie wholly inside its top", message, StringComparison.Ordinal);
        // One that overhangs too.
        Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", [Tier(20), Tier(10).Placed(new PlanPoint(5.1, 0))]));
        Assert.Equal(2, Cake.Of("", [Tier(20), Tier(10).Placed(new PlanPoint(5, 0))]).Tiers.Count);
        Assert.Equal(2, Cake.Of("", [Tier(10), Tier(20).Raised()]).Tiers.Count);
        Assert.Contains("has no flat top", Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", [CakeTier.Of(CakeBody.HalfBall(Cm(20))), Tier(5)])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoHundredTiersAreRefusedAndAnEndlessRowToo()
    {
        Assert.Contains("more than 50", Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", Enumerable.Range(0, 200).Select(i => Tier(220 - i)))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", Endless()));
        Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", []));
        Assert.Throws<ArgumentException>("coats", () => Tier(20).Coated(Enumerable.Repeat(CakeCoat.Of("icing", Cm(0.1)), 101)));
        static IEnumerable<CakeTier> Endless()
        {
            while (true)
                yield return Tier(20);
        }
    }

    // 12, 9 and 6 meant as inches and said in centimetres: a wedding cake for dolls.
    [Fact]
    public void InchesSaidAsCentimetresAreSeen()
    {
        CakeFinding finding = Assert.Single(Cake.Of("", [Tier(12), Tier(9), Tier(6)]).Cover().Findings);
        Assert.Equal(CakeFindingKind.SmallForCentimetres, finding.Kind);
        Assert.Contains("were 12 in meant?", finding.Text, StringComparison.Ordinal);
        Assert.Empty(Cake.Of("", [Tier(12 * 2.54), Tier(9 * 2.54), Tier(6 * 2.54)]).Cover().Findings);
        // And centimetres said as inches.
        Assert.Equal(CakeFindingKind.LargeForInches, Assert.Single(Cake.Of("", [Tier(30 * 2.54)]).Cover().Findings).Kind);
    }

    // A slot of 2 cm in a square of 20 cm, 10 cm deep: a coat of 1.5 cm closes it, and its walls do not count twice.
    [Fact]
    public void ACoatThickerThanTheNotchFillsItOnce()
    {
        PlanShape slot = PlanShape.Polygon([new(0, 0), new(20, 0), new(20, 20), new(11, 20), new(11, 10), new(9, 10), new(9, 20), new(0, 20)]);
        Cake cake = Cake.Of("", [CakeTier.Of(CakeBody.Prism(slot, Cm(10))).Coated(CakeCoat.Of("icing", Cm(1.5)))]);
        CakeCoverage coverage = cake.Cover();
        CakeFinding finding = Assert.Single(coverage.Findings, finding => finding.Kind == CakeFindingKind.CoatFillsNotch);
        Assert.Contains("notches of the polygon", finding.Text, StringComparison.Ordinal);
        // By hand, at the foot: the square grown by 1.5 cm, less what is left of the mouth: nothing below the old edge, above it the part between two quarter rounds.
        double grown = 400 + 80 * 1.5 + Math.PI * 2.25, mouth = 2 * 1.5 - (Math.Sqrt(1.25) + 2.25 * Math.Asin(1 / 1.5));
        Assert.Equal(grown - mouth, slot.Offset(1.5).AreaSquareCentimetres, 1e-9);
        // The whole is the coat of the square and what the slot takes, 2 by 10 by 10 cm, less the dip over the slot, which is at most 1.5 cm deep, and in its mouth.
        double square = CakeBody.Prism(PlanShape.Square(Cm(20)), Cm(10)).CoatMillilitres(1.5);
        Assert.InRange(coverage.TotalMillilitres, square + 200 - 2 * 10 * 1.5 - 11.5 * mouth, square + 200);
        // 5 mm leave 1 cm of the slot open, and it is said all the same that its corners fill.
        Assert.Contains(Cake.Of("", [CakeTier.Of(CakeBody.Prism(slot, Cm(10))).Coated(CakeCoat.Of("icing", Cm(0.5)))]).Cover().Findings, found => found.Kind == CakeFindingKind.CoatFillsNotch);
    }

    [Fact]
    public void StrangeThicknessesAndLayersAreSeen()
    {
        Assert.Equal(CakeFindingKind.UnusualThickness, Assert.Single(Cake.Of("", [Tier(20).Coated(CakeCoat.Of("icing", Cm(6)))]).Cover().Findings).Kind);
        Assert.Equal(CakeFindingKind.ThinLayers, Assert.Single(Cake.Of("", [Tier(20).Filled(CakeFilling.Of("jam", Cm(0.9)), 11)]).Cover().Findings).Kind);
        Assert.Equal(CakeFindingKind.SwirlIsOverfull, Assert.Single(Cake.Of("", [], [Cupcakes.Swirled("icing", 1, Swirl.UpCone(Cm(6), Cm(3.5), 20, Cm(1.2)))]).Cover().Findings).Kind);
    }

    // 6.5 cm of icing on cupcakes of 0.5 cm: the width was given as the thickness.
    [Fact]
    public void AWidthGivenAsAThicknessIsSeen()
    {
        CakeFinding finding = Assert.Single(Cake.Of("", [], [Cupcakes.Flat("icing", 12, Cm(0.5), Cm(6.5))]).Cover().Findings);
        Assert.Equal(CakeFindingKind.UnusualThickness, finding.Kind);
        Assert.Contains("a coat of 65 mm", finding.Text, StringComparison.Ordinal);
        Assert.Empty(Cake.Of("", [], [Cupcakes.Flat("icing", 12, Cm(6.5), Cm(0.5))]).Cover().Findings);
    }

    // Numbers side by side can change places and nobody sees it. The coordinates of a point are in the order of mathematics.
    [Fact]
    public void NoCallTakesTwoNumbersSideBySide()
    {
        static bool IsNumber(Type type) => type == typeof(double) || type == typeof(double?);
        MethodBase[] calls =
        [
            .. typeof(Cake).Assembly.GetTypes().Where(type => type.IsVisible && type.Namespace == typeof(Cake).Namespace && type != typeof(PlanPoint))
                .SelectMany(type => type.GetMethods().Cast<MethodBase>().Concat(type.GetConstructors())),
        ];
        Assert.Contains(calls, call => call.GetParameters().Any(parameter => parameter.ParameterType == typeof(CakeLength)));
        Assert.DoesNotContain(calls, call => call.GetParameters().Zip(call.GetParameters().Skip(1))
            .Any(pair => IsNumber(pair.First.ParameterType) && IsNumber(pair.Second.ParameterType)));
    }

    [Fact]
    public void WhatHasNoEdgeHasNoBorder()
    {
        CakeTier ball = CakeTier.Of(CakeBody.Ball(Cm(20)));
        Assert.Throws<ArgumentException>("borders", () => ball.Bordered(CakeBorder.Of("icing", BorderKind.Shells, Cm(1), BorderPlace.Foot)));
        Assert.Throws<ArgumentException>("borders", () => ball.Bordered(CakeBorder.Of("icing", BorderKind.Shells, Cm(1), BorderPlace.TopEdge)));
        Assert.Throws<ArgumentException>("coats", () => ball.Coated(CakeCoat.Of("icing", Cm(1), CoatEdge.Rounded, CoatPlace.Top)));
        Assert.Throws<ArgumentException>("drip", () => ball.Dripped(CakeDrip.Of("icing", Cm(0.3))));
        string message = Assert.Throws<ArgumentException>("layers", () => Tier(20).Filled(CakeFilling.Of("jam", Cm(5)), 3)).Message;
        Assert.Contains("are 10 cm together, and the tier is 10 cm high", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void MessagesAreTheSameInEveryCulture(string culture)
    {
        string expected = Message();
        Cultures.In(culture, () => Assert.Equal(expected, Message()));
        static string Message() => Assert.Throws<ArgumentException>("tiers", () => Cake.Of("", [Tier(20.5), Tier(30.25)])).Message
            + string.Join("", Cake.Of("", [Tier(8.5).Coated(CakeCoat.Of("icing", Cm(2.75)))]).Cover().Findings);
    }

    private static CakeTier Tier(double diameter) => CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(diameter)), Cm(10)));
}
