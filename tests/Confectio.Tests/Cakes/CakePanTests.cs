using Confectio.Cakes;
using Confectio.Sources;
using FsCheck.Xunit;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>Tins, portions and institutional usage, beside what the trade and two government recipes print.</summary>
public sealed class CakePanTests
{
    private const double Inch = 2.54, Cup = 236.5882365;

    // By hand: πd²h/4 and w·l·h in cubic inches of 16.387064 mL.
    [Theory]
    [InlineData("9 by 13 in", 234)]
    [InlineData("9 in round", Math.PI * 20.25 * 2)]
    [InlineData("8 in square", 128)]
    [InlineData("12 muffin cups", 12 * Math.PI * 1.890625 * 1.5)]
    public void TheBrimByGeometry(string name, double cubicInches)
    {
        PanFigure figure = Assert.Single(PanFigure.All, figure => figure.Pan.Name == name);
        Assert.Equal(cubicInches * 16.387064, figure.GeometricMillilitres, 1e-12 * figure.GeometricMillilitres);
    }

    // The trade's cups (common practice, several public tables that agree) are within 15 % of the nominal geometry. A muffin cup is named by its mouth and tapers
    // to a narrower bottom than any of the others: it is outside.
    [Fact]
    public void TheTradeIsWithinAFifthOfGeometry() => Assert.All(PanFigure.All, figure =>
    {
        Assert.Equal(figure.PrintedCups * Cup, figure.PrintedMillilitres, 1e-9 * figure.PrintedMillilitres);
        Assert.Equal(Evidence.CommonPractice, figure.Provenance.Evidence);
        if (figure.Pan.Name == "12 muffin cups")
            Assert.InRange(figure.PrintedOverGeometric, 0.80, 0.82);
        else
            Assert.InRange(figure.PrintedOverGeometric, 0.85, 1.15);
        Assert.Contains(figure.Pan.Name, figure.ToString(), StringComparison.Ordinal);
    });

    // A sheet that an institution cuts into so many has so many by its area. Rounds of 8 in and more are within 12 % of the ends of what the trade says; of the 6 in
    // round it says a third less at the low end, as a small round is cut with rests.
    [Fact]
    public void PortionsAsTheyAreCutAndAsTheTradeSays() => Assert.All(PortionFigure.All, figure =>
    {
        double count = figure.Portion.CountOn(CakeBody.Prism(figure.Plan, Cm(4 * Inch)));
        if (figure.Provenance.Evidence == Evidence.Compiled)
        {
            Assert.Equal(figure.Low, figure.Portion.WholeCountOn(CakeBody.Prism(figure.Plan, Cm(4 * Inch))));
            Assert.Equal(figure.Low, figure.High);
        }
        else
        {
            Assert.Equal("round", figure.Plan.Name);
            Assert.Equal(Evidence.CommonPractice, figure.Provenance.Evidence);
            Assert.InRange(count, figure.Plan.WidthCentimetres > 7 * Inch ? 0.88 * figure.Low : figure.Low, 1.12 * figure.High);
        }
    });

    // Two sheets of 18 by 26 in: NAVEDTRA 14163, 6 by 9; USDA school recipes of 1988, 5 by 10.
    [Fact]
    public void APortionIsCalledByItsSizeAlone()
    {
        Assert.Equal(["3 × 2.89 in (7.62 × 7.34 cm)", "3.6 × 2.6 in (9.14 × 6.6 cm)", "1 × 2 in (2.54 × 5.08 cm)"], PortionFigure.All.Select(figure => figure.Portion.ToString()).Distinct());
        Assert.Equal("round, 25.4 × 25.4 cm: 38 to 42 of 1 × 2 in (2.54 × 5.08 cm)", PortionFigure.All.Single(figure => figure.High == 42).ToString());
        Assert.Equal("1.5 × 2 in (3.81 × 5.08 cm)", Portion.OneAndAHalfByTwoInches.ToString());
    }

    [Fact]
    public void PortionsByHand()
    {
        Assert.Equal(Math.PI * 25 / 2, Portion.OneByTwoInches.CountOn(Round(10)), 1e-12);
        Assert.Equal(24, Portion.OneAndAHalfByTwoInches.CountOn(CakeBody.Prism(PlanShape.Rectangle(Cm(9 * Inch), Cm(8 * Inch)), Cm(5))), 1e-12);
        // The widest cut: of a tapered tier its wider end, of a ball its middle, of a ring what is there.
        Assert.Equal(Math.PI * 16 / 2, Portion.OneByTwoInches.CountOn(CakeBody.TaperedRound(Cm(6 * Inch), Cm(8 * Inch), Cm(10))), 1e-12);
        Assert.Equal(Math.PI * 16 / 2, Portion.OneByTwoInches.CountOn(CakeBody.Ball(Cm(8 * Inch))), 1e-12);
        Assert.Equal(Math.PI * 16 / 2, Portion.OneByTwoInches.CountOn(CakeBody.HalfBall(Cm(8 * Inch))), 1e-12);
        Assert.Equal(Math.PI * (16 - 1) / 2, Portion.OneByTwoInches.CountOn(CakeBody.Ring(Cm(8 * Inch), Cm(2 * Inch), Cm(10))), 1e-12);
        // A cap of half its radius: (2Rh − h²)π.
        Assert.Equal(Math.PI * 12 / 2, Portion.OneByTwoInches.CountOn(CakeBody.Cap(Cm(4 * Inch), Cm(2 * Inch))), 1e-12);
        Cake cake = Cake.Of("", [CakeTier.Of(Round(12)), CakeTier.Of(Round(9)), CakeTier.Of(Round(6))]);
        Assert.Equal(56 + 31 + 14, cake.Portions(Portion.OneByTwoInches));
        Assert.Equal(37 + 21 + 9, cake.Portions(Portion.OneAndAHalfByTwoInches));
        Assert.Equal(4, Portion.Of(Cm(5), Cm(5)).CountOn(CakeBody.Prism(PlanShape.Square(Cm(10)), Cm(3))), 1e-12);
    }

    // United States Department of Defense, card G-047: 2 cups for a 9 in cake of two layers, filling, top and side; the card states no height. USDA school recipes of 1988:
    // 4 cups for the top of an 18 by 26 in sheet. The thickness was worked out of these by hand.
    [Fact]
    public void InstitutionalUsage()
    {
        IcingUsage round = IcingUsage.All[0], sheet = IcingUsage.All[1];
        Assert.Equal("dod-g-047", round.Provenance.Source.Key);
        Assert.Equal(1368.1, round.IcedSquareCentimetres(3 * Inch), 0.1);
        Assert.Equal(3.458, round.MeanMillimetres.Likely, 0.005);
        Assert.Equal(3.05, round.MeanMillimetres.Low, 0.005);
        Assert.Equal(3.71, round.MeanMillimetres.High, 0.005);
        Assert.Equal("usda-school-1988", sheet.Provenance.Source.Key);
        Assert.Equal(3.134, sheet.MeanMillimetres.Likely, 0.005);
        Assert.Equal(0, sheet.MeanMillimetres.High - sheet.MeanMillimetres.Low);
        Assert.Equal("18 by 26 in sheet: 4 cups, 3.1 mm", sheet.ToString());
        Assert.All(IcingUsage.All, usage => Assert.Equal(Evidence.Compiled, usage.Provenance.Evidence));
    }

    // The same cake as a cake: what its coats and filling take at the mean thickness is what the card allows, and a coat that goes round the edges a little more.
    [Fact]
    public void ACakeWithThatCoatTakesWhatTheCardAllows()
    {
        IcingUsage usage = IcingUsage.All[0];
        double t = usage.MeanMillimetres.Likely / 10;
        Cake cake = Cake.Of("card", [CakeTier.Of(Round(9, 3)).Filled(CakeFilling.Of("icing", Cm(t)), 2).Coated(CakeCoat.Of("icing", Cm(t)))]);
        double takes = cake.Cover().Millilitres("icing");
        Assert.InRange(takes, usage.PrintedMillilitres, 1.03 * usage.PrintedMillilitres);
        Assert.Equal(usage.PrintedMillilitres, cake.Cover().Parts.Sum(part => part.ThinMillilitres ?? part.Millilitres), 1e-9 * takes);
    }

    [Fact]
    public void BatterByHand()
    {
        CakePan nine = CakePan.Of(Round(9, 2), "9 in round"), eight = CakePan.Of(Round(8, 2)), square = CakePan.Of(CakeBody.Prism(PlanShape.Square(Cm(8 * Inch)), Cm(2 * Inch))),
            sheet = CakePan.Of(CakeBody.Prism(PlanShape.Rectangle(Cm(9 * Inch), Cm(13 * Inch)), Cm(2 * Inch)));
        Assert.Equal(81.0 / 64, eight.FactorTo(nine), 1e-12);
        Assert.Equal(117.0 / 64, square.FactorTo(sheet), 1e-12);
        Assert.Equal(117.0 / 64, square.FactorAsHighTo(sheet, Cm(3)), 1e-12);
        Assert.Equal(0.5 * nine.BrimMillilitres, nine.BatterMillilitres(CakePan.MinimumUsualFill), 1e-9);
        Assert.Equal(2 * nine.BrimMillilitres / 3, nine.BatterMillilitres(CakePan.MaximumUsualFill), 1e-9);
        Assert.Equal("9 in round, 2085 mL", nine.ToString());
        // A tin of 20 cm that widens to 24 cm is 22 cm wide half way up.
        CakePan flared = CakePan.Of(CakeBody.TaperedRound(Cm(20), Cm(24), Cm(6)));
        Assert.Equal(Math.PI * 3 / 3 * (100 + 110 + 121), flared.BatterMillilitres(0.5), 1e-9);
        // As high as 3 cm in the flared tin and in a straight one of 20 cm.
        Assert.Equal(300.0 / 331, flared.FactorAsHighTo(CakePan.Of(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(6))), Cm(3)), 1e-12);
        // The mould of a half ball holds in its lower 5 cm, on the dome, the cap π·5²(30 − 5)/3.
        CakePan mould = CakePan.Of(CakeBody.HalfBall(Cm(20)));
        Assert.Equal(Math.PI * 25 * 25 / 3, mould.BatterMillilitres(0.5), 1e-9);
        CakePan measured = CakePan.Measured(2000, Cm(5));
        Assert.Equal(1000, measured.BatterMillilitres(0.5));
        Assert.Equal(0.25, measured.FillOf(500));
        Assert.Equal("tin of 2000 mL, 2000 mL", measured.ToString());
    }

    [Property(MaxTest = 200)]
    public void FillingRisesAndIsReadBack(ushort seed)
    {
        Random random = new(seed);
        double a = 5 + 20 * random.NextDouble(), b = 5 + 20 * random.NextDouble(), h = 2 + 10 * random.NextDouble(), fill = random.NextDouble(), k = 0.5 + random.NextDouble();
        CakeBody body = random.Next(6) switch
        {
            0 => CakeBody.TaperedRound(Cm(a), Cm(b), Cm(h)),
            1 => CakeBody.TaperedSquare(Cm(Math.Max(a, b)), Cm(Math.Min(a, b)), Cm(h)),
            2 => CakeBody.HalfBall(Cm(a)),
            3 => CakeBody.Ball(Cm(a), Cm(0.5 * a)),
            4 => CakeBody.Ring(Cm(a), Cm(0.3 * a), Cm(h)),
            _ => CakeBody.Prism(PlanShape.Heart(Cm(a)), Cm(h)),
        };
        CakePan pan = CakePan.Of(body), other = CakePan.Of(body.Scaled(k));
        double batter = pan.BatterMillilitres(fill);
        Assert.Equal(fill, pan.FillOf(batter), 1e-7);
        Assert.True(pan.BatterMillilitres(Math.Min(fill + 0.01, 1)) >= batter);
        Assert.Equal(body.VolumeMillilitres, pan.BatterMillilitres(1), 1e-12 * body.VolumeMillilitres);
        Assert.Equal(0, pan.BatterMillilitres(0), 1e-9 * body.VolumeMillilitres);
        Assert.Equal(k * k * k, pan.FactorTo(other), 1e-12 * k * k * k);
        Assert.Equal(1, pan.FactorTo(other) * other.FactorTo(pan), 1e-14);
        Assert.Equal(k * k * k * batter, other.BatterMillilitres(fill), 1e-9 * other.BrimMillilitres);
    }

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(1.0001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void BadFillsAreRefused(double bad) => PlanShapeTests.Refused("fill", bad, () => CakePan.Of(Round(9)).BatterMillilitres(bad));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void BadSizesAreRefused(double bad)
    {
        PlanShapeTests.Refused("brimMillilitres", bad, () => CakePan.Measured(bad, Cm(5)));
        PlanShapeTests.RefusedLength("depth", bad, () => CakePan.Measured(1000, Cm(bad)));
        PlanShapeTests.RefusedLength("height", bad, () => CakePan.Of(Round(9, 2)).FactorAsHighTo(CakePan.Of(Round(8, 3)), Cm(bad)));
        PlanShapeTests.RefusedLength("width", bad, () => Portion.Of(Cm(bad), Cm(2)));
        PlanShapeTests.RefusedLength("length", bad, () => Portion.Of(Cm(2), Cm(bad)));
        PlanShapeTests.Refused("heightCentimetres", bad == 0 ? 101 : bad, () => IcingUsage.All[0].IcedSquareCentimetres(bad == 0 ? 101 : bad));
    }

    [Fact]
    public void MoreThanTheTinHoldsIsRefused()
    {
        CakePan pan = CakePan.Of(Round(9, 2));
        PlanShapeTests.Refused("millilitres", 3000, () => pan.FillOf(3000));
        PlanShapeTests.RefusedLength("height", 5.2, () => pan.FactorAsHighTo(CakePan.Of(Round(9, 3)), Cm(5.2)));
    }

    private static CakeBody Round(double inches, double high = 4) => CakeBody.Prism(PlanShape.Round(Cm(inches * Inch)), Cm(high * Inch));
}
