using Confectio.Cakes;
using FsCheck.Xunit;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>What a cake takes, against closed forms written out here, counts of cells, and identities.</summary>
public sealed class CakeCoverageTests
{
    private const string Cream = "cream", Jam = "jam", Glaze = "glaze";

    // A crumb coat that follows the edges, a sharp coat over it and fondant over both: each is the difference of two solids. Steiner and the cylinder by hand.
    [Fact]
    public void CoatsOverOneAnother()
    {
        CakeCoverage cover = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(12))).Coated(
            CakeCoat.Of(Cream, Cm(0.2)), CakeCoat.Of(Cream, Cm(0.4), CoatEdge.Sharp), CakeCoat.Of("fondant", Cm(0.3)))]).Cover();
        double bare = Cylinder(10, 12), crumb = bare + Steiner(10, 12, 0.2), sharp = Cylinder(10.6, 12.6), fondant = sharp + Steiner(10.6, 12.6, 0.3);
        Assert.Equal([crumb - bare, sharp - crumb, fondant - sharp], cover.Parts.Select(part => part.Millilitres), (a, b) => Math.Abs(a - b) < 1e-9);
        // Area times thickness, as most people reckon.
        Assert.Equal([0.2, 0.4, 0.3], cover.Parts.Select(part => part.ThinMillilitres!.Value / (Math.PI * 100 + Math.PI * 240)), (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void TopAndSideAlone()
    {
        CakeTier square = CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(20)), Cm(10)));
        Assert.Equal(400 * 0.5, One(square, CakeCoat.Of(Cream, Cm(0.5), place: CoatPlace.Top)), 1e-9);
        Assert.Equal((441 - 400) * 10, One(square, CakeCoat.Of(Cream, Cm(0.5), place: CoatPlace.Side)), 1e-9);
        // Both, one after the other, are the sharp box; in either order.
        CakeCoat top = CakeCoat.Of(Cream, Cm(0.3), place: CoatPlace.Top), side = CakeCoat.Of(Jam, Cm(0.5), place: CoatPlace.Side);
        Assert.Equal(21 * 21 * 10.3 - 4000, Total(square.Coated(top, side)), 1e-9);
        Assert.Equal(21 * 21 * 10.3 - 4000, Total(square.Coated(side, top)), 1e-9);
        // A top that narrows by 0.2 a centimetre of height goes on narrowing.
        CakeTier tapered = CakeTier.Of(CakeBody.TaperedRound(Cm(24), Cm(20), Cm(10)));
        Assert.Equal(Math.PI * 0.5 * (100 + 10 * 9.9 + 9.9 * 9.9) / 3, One(tapered, CakeCoat.Of(Cream, Cm(0.5), place: CoatPlace.Top)), 1e-9);
        double outward = 0.5 * Math.Sqrt(1.04);
        Assert.Equal(Math.PI * 10 / 3 * (Square(12 + outward) + (12 + outward) * (10 + outward) + Square(10 + outward) - 144 - 120 - 100),
            One(tapered, CakeCoat.Of(Cream, Cm(0.5), place: CoatPlace.Side)), 1e-9);
        CakeTier ring = CakeTier.Of(CakeBody.Ring(Cm(20), Cm(6), Cm(8)));
        Assert.Equal(Math.PI * (100 - 9) * 0.4, One(ring, CakeCoat.Of(Cream, Cm(0.4), place: CoatPlace.Top)), 1e-9);
        Assert.Equal(Math.PI * 8 * (Square(10.4) - Square(2.6) - 100 + 9), One(ring, CakeCoat.Of(Cream, Cm(0.4), place: CoatPlace.Side)), 1e-9);
        Assert.Throws<ArgumentException>(() => CakeTier.Of(CakeBody.HalfBall(Cm(20))).Coated(CakeCoat.Of(Cream, Cm(0.5), place: CoatPlace.Top)));
    }

    // A heart has notches and a sharp tip. What a rounded coat over a sharp one covers beyond a rounded one of both thicknesses is counted round the tip: no farther
    // than the rounded one from the square that the sharp one leaves there, and farther than both from the tip, which is the nearest point of the heart.
    [Theory]
    [InlineData(0.8, 0.5)]
    [InlineData(2, 1)]
    public void ARoundedCoatOverASharpOneOnAHeart(double sharp, double rounded)
    {
        PlanShape heart = PlanShape.HeartOfSquare(Cm(10));
        const int Cells = 2000;
        double most = sharp + rounded, cell = most / Cells, counted = 0;
        for (int i = 0; i < Cells; i++)
        {
            for (int j = 0; j < Cells; j++)
            {
                // From the tip along the two outward normals, which are at right angles; before the normals the nearest points are on the straight sides.
                double u = (i + 0.5) * cell, v = (j + 0.5) * cell, beyondU = Math.Max(u - sharp, 0), beyondV = Math.Max(v - sharp, 0);
                if (beyondU * beyondU + beyondV * beyondV <= rounded * rounded && u * u + v * v > most * most)
                    counted += cell * cell;
            }
        }
        // Two edges of some 3000 cells each, counted by chance: 4·0.5·√6000 cells.
        Assert.Equal(counted, heart.Grown(sharp, rounded).Area - heart.Grown(most).Area, 160 * cell * cell);
        // The solid: the sharp prism, and the rounded coat as slices of such areas.
        double slices = 0;
        const int Count = 2000;
        for (int i = 0; i < Count; i++)
        {
            double z = (i + 0.5) * rounded / Count;
            slices += rounded / Count * heart.Grown(sharp, Math.Sqrt(rounded * rounded - z * z)).Area;
        }
        double expected = heart.Grown(sharp, rounded).Area * (8 + sharp) + slices - heart.Grown(sharp, 0).Area * (8 + sharp);
        CakeCoverage cover = Cake.Of("", [CakeTier.Of(CakeBody.Prism(heart, Cm(8))).Coated(CakeCoat.Of(Cream, Cm(sharp), CoatEdge.Sharp), CakeCoat.Of(Jam, Cm(rounded)))]).Cover();
        // The middle rule with 2000 slices of a root is good to 1e-5 of the slices.
        Assert.Equal(expected, cover.Millilitres(Jam), 1e-5 * slices);
    }

    [Fact]
    public void LayersAndFillingsMakeUpTheBody()
    {
        foreach (CakeBody body in Bodies())
        {
            CakeTier tier = CakeTier.Of(body).Filled(CakeFilling.Of(Jam, Cm(0.5)), 4);
            double layers = 0, z = 0;
            for (int i = 0; i < 4; i++)
            {
                layers += Slab(body, z, z + tier.LayerCentimetres);
                z += tier.LayerCentimetres + 0.5;
            }
            Assert.Equal(body.VolumeMillilitres, layers + Total(tier), 1e-9 * body.VolumeMillilitres);
        }
    }

    // Simpson over the sections; the volume below a height knows closed forms only.
    [Fact]
    public void WhatLiesBelowAHeightIsTheSumOfItsSections()
    {
        foreach (CakeBody body in Bodies())
        {
            double top = 0.7 * body.HeightCentimetres, sum = 0;
            const int Steps = 2000;
            for (int i = 0; i <= Steps; i++)
            {
                double z = i * top / Steps, area = (body.PlanAt(z)?.AreaSquareCentimetres ?? 0) - (body.Hole?.AreaSquareCentimetres ?? 0);
                sum += (i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2) * area;
            }
            Assert.Equal(sum * top / Steps / 3, body.MillilitresBelow(top), 1e-9 * body.VolumeMillilitres);
            Assert.Equal(body.VolumeMillilitres, body.MillilitresBelow(body.HeightCentimetres), 1e-12 * body.VolumeMillilitres);
            Assert.Equal(0, body.MillilitresBelow(0), 1e-12 * body.VolumeMillilitres);
        }
    }

    [Fact]
    public void DamsByHand()
    {
        CakeFilling filling = CakeFilling.Of(Jam, Cm(0.6)).InDam(Cream, Cm(1.5));
        CakeCoverage round = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(10))).Filled(filling, 2)]).Cover();
        Assert.Equal(0.6 * Math.PI * (100 - 8.5 * 8.5), round.Millilitres(Cream), 1e-9);
        Assert.Equal(0.6 * Math.PI * 8.5 * 8.5, round.Millilitres(Jam), 1e-9);
        CakeCoverage square = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(20)), Cm(10))).Filled(filling, 2)]).Cover();
        Assert.Equal(0.6 * (400 - 17 * 17), square.Millilitres(Cream), 1e-9);
        // In a ring along both edges: what is left lies between 4.5 and 8.5 cm.
        CakeCoverage ring = Cake.Of("", [CakeTier.Of(CakeBody.Ring(Cm(20), Cm(6), Cm(10))).Filled(filling, 2)]).Cover();
        Assert.Equal(0.6 * Math.PI * (8.5 * 8.5 - 4.5 * 4.5), ring.Millilitres(Jam), 1e-9);
        // Where the tier narrows by 1 cm in 2, the filling lies from 4.5 to 5.5 cm, and in its middle the radius is 9.5: a band that is even along the slope has the mean of
        // its ends there, (9.75² − 8.25² + 9.25² − 7.75²)/2.
        CakeCoverage tapered = Cake.Of("", [CakeTier.Of(CakeBody.TaperedRound(Cm(24), Cm(14), Cm(10))).Filled(CakeFilling.Of(Jam, Cm(1)).InDam(Cream, Cm(1.5)), 2)]).Cover();
        Assert.Equal(Math.PI * (9.75 * 9.75 - 8.25 * 8.25 + 9.25 * 9.25 - 7.75 * 7.75) / 2, tapered.Millilitres(Cream), 1e-9);
        Assert.Equal(Math.PI * (9.75 * 9.75 + 9.75 * 9.25 + 9.25 * 9.25) / 3, tapered.TotalMillilitres, 1e-9);
        // A dam wider than the cake is all there is.
        CakeCoverage wide = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(20)), Cm(10))).Filled(CakeFilling.Of(Jam, Cm(0.6)).InDam(Cream, Cm(11)), 2)]).Cover();
        Assert.Equal(0.6 * 400, wide.Millilitres(Cream), 1e-9);
        Assert.Equal(0, wide.Millilitres(Jam), 1e-9);
    }

    [Fact]
    public void BordersRunOnTheCoats()
    {
        CakeTier round = CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(10))).Coated(CakeCoat.Of("coat", Cm(0.5)));
        double Border(BorderKind kind, BorderPlace place) => Cake.Of("", [round.Bordered(CakeBorder.Of(Cream, kind, Cm(1), place))]).Cover().Millilitres(Cream);
        // Pappus on the coated radius of 10.5.
        Assert.Equal(Math.PI / 8 * 2 * Math.PI * (10.5 + 4 * 0.5 / (3 * Math.PI)), Border(BorderKind.HalfRound, BorderPlace.Foot), 1e-9);
        Assert.Equal(Math.PI / 4 * 2 * Math.PI * 11, Border(BorderKind.FullRound, BorderPlace.Foot), 1e-9);
        Assert.Equal(Math.PI / 12 * 2 * Math.PI * 10.5, Border(BorderKind.Shells, BorderPlace.Foot), 1e-9);
        Assert.Equal(Math.PI / 8 * 2 * Math.PI * 10, Border(BorderKind.HalfRound, BorderPlace.TopEdge), 1e-9);
        // On the bare square of 20 cm the middle of a border of 1 cm runs on a square of 19 cm.
        CakeCoverage square = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Square(Cm(20)), Cm(10))).Bordered(CakeBorder.Of(Cream, BorderKind.FullRound, Cm(1), BorderPlace.TopEdge))]).Cover();
        Assert.Equal(Math.PI / 4 * 76, square.Millilitres(Cream), 1e-9);
        // A ball of 20 cm on a flat of 12 cm under 1 cm of coat meets the table where the ball of 22 cm does.
        CakeCoverage ball = Cake.Of("", [CakeTier.Of(CakeBody.Ball(Cm(20), Cm(12))).Coated(CakeCoat.Of("coat", Cm(1))).Bordered(CakeBorder.Of(Cream, BorderKind.Shells, Cm(1), BorderPlace.Foot))]).Cover();
        Assert.Equal(Math.PI / 12 * 2 * Math.PI * Math.Sqrt(121 - 64), ball.Millilitres(Cream), 1e-9);
        Assert.Throws<ArgumentException>(() => CakeTier.Of(CakeBody.HalfBall(Cm(20))).Bordered(CakeBorder.Of(Cream, BorderKind.Shells, Cm(1), BorderPlace.TopEdge)));
        Assert.Throws<ArgumentException>(() => CakeTier.Of(CakeBody.Ball(Cm(20))).Bordered(CakeBorder.Of(Cream, BorderKind.Shells, Cm(1), BorderPlace.Foot)));
    }

    [Fact]
    public void DripsAndCupcakesByHand()
    {
        CakeTier tier = CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(10))).Coated(CakeCoat.Of(Cream, Cm(0.5), CoatEdge.Sharp)).Dripped(CakeDrip.Of(Glaze, Cm(0.3), 24, Cm(1), Cm(5)));
        // A half cylinder of 4.5 cm and a quarter of a ball, both of radius 0.5.
        Assert.Equal(0.3 * Math.PI * 10.5 * 10.5 + 24 * (Math.PI * 0.25 / 2 * 4.5 + Math.PI * 0.125 / 3), Cake.Of("", [tier]).Cover().Millilitres(Glaze), 1e-9);
        // On a ring a coat narrows the hole, sharp or rounded, and the pool goes from one outline to the other.
        foreach (CoatEdge edge in Enum.GetValues<CoatEdge>())
        {
            CakeTier ring = CakeTier.Of(CakeBody.Ring(Cm(24), Cm(8), Cm(9))).Coated(CakeCoat.Of(Cream, Cm(0.5), edge)).Dripped(CakeDrip.Of(Glaze, Cm(0.3)));
            Assert.Equal(0.3 * Math.PI * (12.5 * 12.5 - 3.5 * 3.5), Cake.Of("", [ring]).Cover().Millilitres(Glaze), 1e-9);
        }
        // The shell over a slice of a ball: of the half ball of 6 cm, half of the shell between two balls.
        Assert.Equal(2 * Math.PI / 3 * (Math.Pow(3.5, 3) - 27), Cupcakes.Flat(Cream, 1, Cm(6), Cm(0.5)).Domed(Cm(3)).MillilitresEach, 1e-12);
        Assert.Equal(Math.PI * 9 * 0.5, Cupcakes.Flat(Cream, 1, Cm(6), Cm(0.5)).MillilitresEach, 1e-12);
        CakeCoverage cupcakes = Cake.Of("", [], [Cupcakes.Flat(Cream, 12, Cm(6), Cm(0.5)), Cupcakes.Swirled(Jam, 10, Swirl.UpCone(Cm(6), Cm(3.5), 3, Cm(1.2)))]).Cover();
        Assert.Equal(12 * Math.PI * 4.5, cupcakes.Millilitres(Cream), 1e-9);
        Assert.Equal(327.64, cupcakes.Millilitres(Jam), 0.01); // ten of the reference's 32.764 mL
        Assert.Equal(0, cupcakes.Millilitres(Glaze));
    }

    // Three tiers inside one another: what is seen is the sides and the bottom tier's plan.
    [Fact]
    public void AStackShowsItsSidesAndTheLowestPlan()
    {
        CakeTier[] tiers = [.. ((double[])[30, 22, 15]).Select(d => CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(d)), Cm(10))).Coated(CakeCoat.Of(Cream, Cm(0.5), CoatEdge.Sharp)))];
        CakeCoverage coated = Cake.Of("", tiers).Cover(), bare = Cake.Of("", tiers, hiddenTops: HiddenTop.Bare).Cover();
        Assert.Equal(Math.PI * (30 + 22 + 15) * 10 + Math.PI * 225, coated.ExposedSquareCentimetres, 1e-9);
        Assert.Equal(Math.PI * (121 + 56.25), coated.HiddenSquareCentimetres, 1e-9);
        Assert.Equal(coated.HiddenSquareCentimetres * 0.5, coated.HiddenMillilitres, 1e-9);
        Assert.Equal(coated.TotalMillilitres - coated.HiddenMillilitres, bare.TotalMillilitres, 1e-9);
        CakeCoverage apart = Cake.Of("", tiers.Select(tier => tier.Raised()), hiddenTops: HiddenTop.Bare).Cover();
        Assert.Equal(0, apart.HiddenSquareCentimetres);
        Assert.Equal(coated.TotalMillilitres, apart.TotalMillilitres, 1e-9);
    }

    [Property(MaxTest = 200)]
    public void WhatIsSeenIsNeverMoreThanTheSum(ushort seed)
    {
        Cake cake = RandomCakes.Of(seed);
        CakeCoverage cover = cake.Cover();
        Assert.InRange(cover.ExposedSquareCentimetres, 0, cake.Tiers.Sum(tier => tier.Body.CoatedAreaSquareCentimetres) * (1 + 1e-12));
        Assert.All(cover.Parts, part => Assert.InRange(part.Millilitres, 0, double.MaxValue));
        Assert.Equal(cover.TotalMillilitres, cover.Icings.Sum(cover.Millilitres), 1e-9 * Math.Max(1, cover.TotalMillilitres));
        // Whatever the tiers are filled with was inside them.
        Assert.InRange(cover.Parts.Where(part => part.Kind is CoverageKind.Filling or CoverageKind.Dam).Sum(part => part.Millilitres), 0, cover.BodyMillilitres);
    }

    // Bodies, places and coats k times as large: areas grow as k², volumes as k³. Only coats, for the rest keeps its size.
    [Property(MaxTest = 200)]
    public void ACakeScales(ushort seed, byte share)
    {
        double k = 0.5 + share / 100.0;
        Cake cake = RandomCakes.Of(seed, coatsOnly: true), scaled = cake.Scaled(k).WithCoats(Cream, k).WithCoats(Jam, k);
        CakeCoverage before = cake.Cover(), after = scaled.Cover();
        Assert.Equal(k * k * before.ExposedSquareCentimetres, after.ExposedSquareCentimetres, 1e-9 * after.ExposedSquareCentimetres);
        Assert.Equal(k * k * k * before.TotalMillilitres, after.TotalMillilitres, 1e-9 * Math.Max(1, after.TotalMillilitres));
    }

    [Property(MaxTest = 60)]
    public void ForwardAndBackIsTheSameCake(ushort seed)
    {
        Cake cake = RandomCakes.Of(seed);
        CakeCoverage cover = cake.Cover();
        double millilitres = cover.Millilitres(Cream);
        if (millilitres < 1)
            return;
        IcingCover reach = IcingCover.Of(millilitres);
        bool grows = cover.Parts.Any(part => part.Icing == Cream && part.Kind is CoverageKind.Coat or CoverageKind.Border or CoverageKind.Filling or CoverageKind.Dam && part.Millilitres > 1e-6);
        if (grows && cake.Tiers.Count > 0)
            Assert.Equal(1, reach.MaximumScale(cake, Cream)!.Value, 1e-7);
        if (cake.Tiers.Any(tier => tier.Coats.Any(coat => coat.Icing == Cream && coat.ThicknessCentimetres > 0)))
            Assert.Equal(1, reach.CoatFactor(cake, Cream)!.Value, 1e-6);
    }

    [Fact]
    public void TheWayBackByHand()
    {
        IcingCover reach = IcingCover.Of(Cylinder(10.6, 12.6) - Cylinder(10, 12));
        Assert.Equal(0.6, reach.CoatThicknessCentimetres(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(12)), CoatEdge.Sharp), 1e-12);
        Assert.Equal(20, reach.MaximumRoundCentimetres(Cm(12), Cm(0.6), CoatEdge.Sharp)!.Value, 1e-9);
        Assert.Null(IcingCover.Of(0.01).MaximumRoundCentimetres(Cm(12), Cm(0.6)));
        Swirl swirl = Swirl.Rosette(Cm(3), 1.5, Cm(0.8));
        Assert.Equal(7, IcingCover.Of(7 * swirl.Millilitres).Pieces(swirl));
        Assert.Equal(6, IcingCover.Of(6.999 * swirl.Millilitres).Pieces(swirl));
        Assert.Equal(12, IcingCover.Of(12.5 * Math.PI * 4.5).CupcakesLike(Cupcakes.Flat(Cream, 1, Cm(6), Cm(0.5))));
        // Nothing depends on the size of the tiers, and there is no coat: no answer.
        Cake cupcakes = Cake.Of("", [], [Cupcakes.Flat(Cream, 12, Cm(6), Cm(0.5))]);
        Assert.Null(IcingCover.Of(1000).MaximumScale(cupcakes, Cream));
        Assert.Null(IcingCover.Of(1000).CoatFactor(cupcakes, Cream));
        // Not even for the shells of the foot.
        Cake shells = Cake.Of("", [CakeTier.Of(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(10))).Coated(CakeCoat.Of(Cream, Cm(0.5))).Bordered(CakeBorder.Of(Cream, BorderKind.Shells, Cm(1), BorderPlace.Foot))]);
        Assert.Null(IcingCover.Of(1).CoatFactor(shells, Cream));
    }

    private static double Square(double x) => x * x;

    private static double Cylinder(double radius, double height) => Math.PI * radius * radius * height;

    private static double Steiner(double r, double h, double t) =>
        Math.PI * r * r * t + Math.PI * h * (2 * r * t + t * t) + Math.PI * (Math.PI * r * t * t / 2 + 2 * t * t * t / 3);

    private static double Slab(CakeBody body, double from, double to) => body.MillilitresBelow(Math.Min(to, body.HeightCentimetres)) - body.MillilitresBelow(from);

    private static double One(CakeTier tier, CakeCoat coat) => Total(tier.Coated(coat));

    private static double Total(CakeTier tier) => Cake.Of("", [tier]).Cover().TotalMillilitres;

    private static IEnumerable<CakeBody> Bodies() =>
    [
        CakeBody.Prism(PlanShape.Heart(Cm(25)), Cm(9)), CakeBody.TaperedRound(Cm(24), Cm(18), Cm(11)), CakeBody.TaperedRound(Cm(14), Cm(22), Cm(11)), CakeBody.TaperedSquare(Cm(22), Cm(12), Cm(10)),
        CakeBody.HalfBall(Cm(24)), CakeBody.Ball(Cm(20), Cm(12)), CakeBody.Cap(Cm(15), Cm(6)), CakeBody.Ring(Cm(24), Cm(8), Cm(9)),
    ];
}
