using System.Globalization;
using Confectio.Cakes;
using Confectio.Tests.Consistency;
using FsCheck.Xunit;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>Plans against their own outline, against one another, and grown.</summary>
public sealed class PlanShapeTests
{
    // An L, a C that can close to a ring, and a bottle whose neck closes before its belly.
    internal static readonly PlanShape s_l = Polygon(0, 0, 30, 0, 30, 20, 10, 20, 10, 30, 0, 30);

    internal static readonly PlanShape s_c = Polygon(0, 0, 20, 0, 20, 9, 15, 9, 15, 5, 5, 5, 5, 15, 15, 15, 15, 11, 20, 11, 20, 20, 0, 20);

    internal static readonly PlanShape s_slot = Polygon(0, 0, 20, 0, 20, 10, 11, 10, 11, 4, 9, 4, 9, 10, 0, 10);

    private static readonly Dictionary<string, PlanShape> s_all = new()
    {
        ["round"] = PlanShape.Round(Cm(20)),
        ["square"] = PlanShape.Square(Cm(18)),
        ["sheet"] = PlanShape.Rectangle(Cm(33), Cm(23), Cm(2)),
        ["stadium"] = PlanShape.Rectangle(Cm(33), Cm(23), Cm(11.5)),
        ["oval"] = PlanShape.Oval(Cm(30), Cm(12)),
        ["pentagon"] = PlanShape.RegularPolygonAcrossFlats(5, Cm(20)),
        ["hexagon"] = PlanShape.RegularPolygonAcrossCorners(6, Cm(20)),
        ["heart"] = PlanShape.Heart(Cm(25.4)),
        ["petal3"] = PlanShape.Petal(3, Cm(10)),
        ["petal6"] = PlanShape.Petal(6, Cm(10)),
        ["petal8"] = PlanShape.Petal(8, Cm(7)),
        ["L"] = s_l,
        ["C"] = s_c,
        ["slot"] = s_slot,
    };

    public static TheoryData<string> Names => [.. s_all.Keys];

    [Theory, MemberData(nameof(Names))]
    public void TheOutlineHasItsAreaAndLength(string name)
    {
        PlanShape plan = s_all[name];
        IReadOnlyList<PlanPoint> outline = plan.Outline(100_000);
        Assert.Equal(100_000, outline.Count);
        (double area, double perimeter, double x, double y) = Shoelace(outline);
        // A chord of a turn δ is short by δ²/24, and a round by δ²/6 in its area: with arcs of up to 8 half rounds δ is 8π/1e5 at most. An oval has its points
        // at other steps, up to 2.5 times as long. Counter-clockwise, or the area were below 0.
        double share = name.StartsWith("petal", StringComparison.Ordinal) ? Math.Pow(8 * Math.PI / 1e5, 2) / 6 : 2e-9;
        Assert.Equal(plan.AreaSquareCentimetres, area, share * area);
        Assert.Equal(plan.PerimeterCentimetres, perimeter, share * perimeter);
        Assert.Equal(0, x, 1e-8 * plan.WidthCentimetres);
        Assert.Equal(0, y, 1e-8 * plan.WidthCentimetres);
        Assert.Equal(plan.WidthCentimetres, outline.Max(p => p.XCentimetres) - outline.Min(p => p.XCentimetres), 1e-8 * plan.WidthCentimetres);
        Assert.Equal(plan.LengthCentimetres, outline.Max(p => p.YCentimetres) - outline.Min(p => p.YCentimetres), 1e-8 * plan.LengthCentimetres);
    }

    // Growing is checked on a grid: the share of its cells whose middle is no farther than t from the outline or inside it.
    [Theory, MemberData(nameof(Names))]
    public void GrowingIsWhatTheGridCounts(string name)
    {
        PlanShape plan = s_all[name];
        PlanPoint[] outline = [.. plan.Outline(1200)];
        foreach (double t in (double[])[0.5, 1.3, 3.1])
        {
            double counted = Count(outline, t);
            OffsetPlan grown = plan.Offset(t);
            // 400 x 400 cells: the edge crosses some 1500 of them, each right or wrong by chance: 3 standard errors of a cell's half times √1500 of 160 000
            // are 4e-4; the chords of 1200 points are short by less than 1e-4.
            Assert.Equal(counted, grown.AreaSquareCentimetres, 1e-3 * counted);
            Assert.True(grown.IsExact);
            Assert.Equal(!plan.IsConvex, grown.FillsNotches);
        }
    }

    [Theory, MemberData(nameof(Names))]
    public void TheAreaGrowsByItsLengthRound(string name)
    {
        // dA/dt = P(t), whatever closes on the way: a central difference, wrong by the third derivative times step squared.
        PlanShape plan = s_all[name];
        foreach (double t in (double[])[0.4, 0.9, 1.7, 2.9, 6.3])
        {
            double slope = (plan.Offset(t + 1e-4).AreaSquareCentimetres - plan.Offset(t - 1e-4).AreaSquareCentimetres) / 2e-4;
            Assert.Equal(slope, plan.Offset(t).PerimeterCentimetres, 1e-6 * slope);
            double steiner = plan.AreaSquareCentimetres + t * plan.PerimeterCentimetres + Math.PI * t * t;
            if (plan.IsConvex)
                Assert.Equal(steiner, plan.Offset(t).AreaSquareCentimetres, 1e-12 * steiner);
            else
                Assert.True(plan.Offset(t).AreaSquareCentimetres < steiner);
        }
    }

    [Fact]
    public void NotchesByHand()
    {
        // An L: strips of P·t, five quarter rounds, and in the notch the two strips lie on one another in a square of t².
        foreach (double t in (double[])[0.5, 2, 5])
            Assert.Equal(700 + 120 * t + 5 * Math.PI / 4 * t * t - t * t, s_l.Offset(t).AreaSquareCentimetres, 1e-9 * 1000);
        // A slot of 2 by 6 is gone at t = 1 and past it the plan grows as the rectangle of 20 by 10 but for the dip over the mouth of the slot, where the two
        // corners at the mouth are t away: 2t less the segment under two arcs.
        foreach (double t in (double[])[1.5, 3])
        {
            double dip = 2 * t - (Math.Sqrt(t * t - 1) + t * t * Math.Asin(1 / t));
            Assert.Equal(200 + 60 * t + Math.PI * t * t - dip, s_slot.Offset(t).AreaSquareCentimetres, 1e-9 * 1000);
        }
        // A C whose mouth of 2 has closed has a hole of (10 − 2t)² and is round it a square of 20, but for the dip at the mouth.
        double thick = 1.5, mouth = 2 * thick - (Math.Sqrt(thick * thick - 1) + thick * thick * Math.Asin(1 / thick));
        double hole = 49 + mouth; // The dip is on the inner side of the mouth as well.
        Assert.Equal(400 + 80 * thick + Math.PI * thick * thick - mouth - hole, s_c.Offset(thick).AreaSquareCentimetres, 1e-9 * 1000);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(40)]
    public void AHeartByHand(double t)
    {
        // The right half: a disc of s/2 + t about the middle of the upper side, as a sector from −45° to where it meets the axis; the triangle between that
        // point, the centre and the axis; below, the square with its strip; and an eighth of a round at the bottom corner.
        double s = 15, r = s / 2 + t, c = s / (2 * Math.Sqrt(2)), meets = Math.Acos(-c / r);
        double sector = 0.5 * r * r * (meets + Math.PI / 4), toAxis = 0.5 * c * r * Math.Sin(meets);
        double footX = c + r * Math.Sqrt(0.5), footY = c - r * Math.Sqrt(0.5), cornerX = t * Math.Sqrt(0.5), cornerY = -s * Math.Sqrt(0.5) - t * Math.Sqrt(0.5), low = -s * Math.Sqrt(0.5);
        double polygon = Math.Abs(Area((c, c), (0, c), (0, low), (cornerX, cornerY), (footX, footY)));
        double half = sector + toAxis + polygon + Math.PI * t * t / 8;
        Assert.Equal(2 * half, PlanShape.HeartOfSquare(Cm(s)).Offset(t).AreaSquareCentimetres, 1e-10 * half);
        double more = t * t * (1 - Math.PI / 4);
        OffsetPlan sharp = PlanShape.HeartOfSquare(Cm(s)).SharpOffset(t);
        Assert.Equal(2 * half + more, sharp.AreaSquareCentimetres, 1e-10 * half);
        Assert.True(sharp is { IsExact: true, FillsNotches: true });
    }

    [Fact]
    public void SharpCorners()
    {
        Assert.Equal(22 * 22, PlanShape.Square(Cm(20)).SharpOffset(1).AreaSquareCentimetres, 1e-10);
        Assert.Equal(88, PlanShape.Square(Cm(20)).SharpOffset(1).PerimeterCentimetres, 1e-10);
        // A hexagon of 20 across flats is one of 22.
        PlanShape larger = PlanShape.RegularPolygonAcrossFlats(6, Cm(22));
        Assert.Equal(larger.AreaSquareCentimetres, PlanShape.RegularPolygonAcrossFlats(6, Cm(20)).SharpOffset(1).AreaSquareCentimetres, 1e-10);
        Assert.Equal(larger.PerimeterCentimetres, PlanShape.RegularPolygonAcrossFlats(6, Cm(20)).SharpOffset(1).PerimeterCentimetres, 1e-10);
        Assert.Equal(PlanShape.Round(Cm(22)).AreaSquareCentimetres, PlanShape.Round(Cm(20)).SharpOffset(1).AreaSquareCentimetres, 1e-10);
        Assert.False(s_l.SharpOffset(1).IsExact);
        // Of an L it is exact all the same: five corners of t², and t² too much in the notch.
        Assert.Equal(700 + 120 + 5 - 1, s_l.SharpOffset(1).AreaSquareCentimetres, 1e-9);
    }

    [Fact]
    public void OneShapeInTwoWords()
    {
        Same(PlanShape.Square(Cm(20)), PlanShape.Rectangle(Cm(20), Cm(20)), 1e-14);
        Same(PlanShape.Round(Cm(20)), PlanShape.Rectangle(Cm(20), Cm(20), Cm(10)), 1e-14);
        Same(PlanShape.Round(Cm(20)), PlanShape.Oval(Cm(20), Cm(20)), 1e-14);
        Same(PlanShape.Square(Cm(20)), PlanShape.RegularPolygonAcrossFlats(4, Cm(20)), 1e-14);
        Same(PlanShape.Square(Cm(20)), Polygon(5, 5, 5, 25, 25, 25, 25, 5), 1e-14); // clockwise
        // 2000 sides: short by (π/k)²/6 and more, 1.6e-6 in the area.
        Same(PlanShape.Round(Cm(20)), PlanShape.RegularPolygonAcrossCorners(2000, Cm(20)), 2e-6);
        Assert.Equal(1.3333, PlanShape.RegularPolygonAcrossFlats(6, Cm(20)).AreaSquareCentimetres / PlanShape.RegularPolygonAcrossCorners(6, Cm(20)).AreaSquareCentimetres, 1e-4);
        // A pan of 10 in is a heart of 5.857 in.
        Assert.Equal(5.857, CakeLength.FromCentimetres(PlanShape.Heart(CakeLength.FromInches(10)).PerimeterCentimetres / (2 + Math.PI)).Inches, 1e-3);
    }

    // Twice as many sides are a quarter as far from the round, in area and length, from either side, with their coats; and a rectangle of equal sides is the square.
    [Property(MaxTest = 200)]
    public void ManySidesTendToTheRoundAndTheSquareIsARectangle(ushort seed)
    {
        Random random = new(seed);
        double across = 1 + 60 * random.NextDouble(), t = 2 * random.NextDouble();
        int sides = random.Next(20, 4000);
        PlanShape round = PlanShape.Round(Cm(across));
        foreach (Func<int, PlanShape> polygon in (Func<int, PlanShape>[])[n => PlanShape.RegularPolygonAcrossCorners(n, Cm(across)), n => PlanShape.RegularPolygonAcrossFlats(n, Cm(across))])
        {
            PlanShape some = polygon(sides), more = polygon(2 * sides);
            foreach (Func<PlanShape, double> size in (Func<PlanShape, double>[])[plan => plan.AreaSquareCentimetres, plan => plan.PerimeterCentimetres, plan => plan.Offset(t).AreaSquareCentimetres])
            {
                double far = size(some) - size(round), near = size(more) - size(round);
                // The next term of the series is (π/n)² of the first.
                Assert.Equal(far / 4, near, Math.Abs(far) * Math.Pow(Math.PI / sides, 2) + 1e-13 * size(round));
            }
        }
        double height = 1 + 20 * random.NextDouble();
        CakeBody square = CakeBody.Prism(PlanShape.Square(Cm(across)), Cm(height)), rectangle = CakeBody.Prism(PlanShape.Rectangle(Cm(across), Cm(across)), Cm(height));
        Assert.Equal(square.VolumeMillilitres, rectangle.VolumeMillilitres, 1e-14 * square.VolumeMillilitres);
        foreach (CoatEdge edge in Enum.GetValues<CoatEdge>())
            Assert.Equal(square.CoatMillilitres(t, edge), rectangle.CoatMillilitres(t, edge), 1e-12 * square.VolumeMillilitres);
    }

    [Property(MaxTest = 100)]
    public void SizesScale(ushort seed)
    {
        double k = Math.Exp((seed - 32768.0) / 10000);
        foreach (PlanShape plan in s_all.Values)
        {
            PlanShape scaled = plan.Scaled(k);
            Assert.Equal(k * k * plan.AreaSquareCentimetres, scaled.AreaSquareCentimetres, 1e-12 * k * k * plan.AreaSquareCentimetres);
            Assert.Equal(k * plan.PerimeterCentimetres, scaled.PerimeterCentimetres, 1e-12 * k * plan.PerimeterCentimetres);
            Assert.Equal(k * plan.WidthCentimetres, scaled.WidthCentimetres, 1e-12 * k * plan.WidthCentimetres);
            // Where pieces cross, the cuts round at another place in another size.
            Assert.Equal(k * k * plan.Offset(1).AreaSquareCentimetres, scaled.Offset(k).AreaSquareCentimetres, 1e-9 * k * k * plan.AreaSquareCentimetres);
            // The centroid of the others does not see all of their outline, so they do not stand in themselves.
            if (plan != s_l && plan != s_c && plan != s_slot)
                Assert.Equal(k < 1 + 1e-9, plan.Contains(scaled));
        }
    }

    [Property(MaxTest = 100)]
    public void AStarOfAnyPointsGrowsAsTheGridCounts(int seed)
    {
        Random random = new(seed);
        int corners = random.Next(3, 12);
        PlanPoint[] points = new PlanPoint[corners];
        for (int i = 0; i < corners; i++)
        {
            double angle = 2 * Math.PI * (i + 0.8 * random.NextDouble()) / corners, radius = 3 + 12 * random.NextDouble();
            points[i] = new PlanPoint(radius * Math.Cos(angle), radius * Math.Sin(angle));
        }
        // With few corners the middle may lie outside; the outline is simple all the same.
        PlanShape plan = PlanShape.Polygon(points);
        double t = 0.2 + 4 * random.NextDouble(), counted = Count([.. plan.Outline(corners)], t, 200);
        // 200 x 200 cells, some 800 of them on the edge.
        Assert.Equal(counted, plan.Offset(t).AreaSquareCentimetres, 4e-3 * counted);
        Assert.True(plan.SharpOffset(t).AreaSquareCentimetres >= plan.Offset(t).AreaSquareCentimetres);
    }

    [Fact]
    public void WhatStandsInside()
    {
        PlanShape round = PlanShape.Round(Cm(20)), square = PlanShape.Square(Cm(20));
        Assert.All(s_all.Values, plan => Assert.True(plan.Contains(plan)));
        Assert.True(square.Contains(round));
        Assert.False(round.Contains(square));
        // A square of 20/√2 just stands in a round of 20.
        Assert.True(round.Contains(PlanShape.Square(Cm(20 * Math.Sqrt(0.5)))));
        Assert.False(round.Contains(PlanShape.Square(Cm(14.1422))));
        Assert.True(square.Contains(PlanShape.Square(Cm(14.142)), new PlanPoint(0, 0), 45));
        Assert.False(square.Contains(PlanShape.Square(Cm(14.143)), new PlanPoint(0, 0), 45));
        Assert.True(round.Contains(PlanShape.Round(Cm(10)), new PlanPoint(5, 0)));
        Assert.False(round.Contains(PlanShape.Round(Cm(10)), new PlanPoint(3.6, 3.6)));
        Assert.True(PlanShape.Oval(Cm(30), Cm(20)).Contains(round));
        Assert.False(PlanShape.Oval(Cm(30), Cm(20)).Contains(PlanShape.Round(Cm(20.01))));
        Assert.True(PlanShape.Oval(Cm(30), Cm(20)).Contains(PlanShape.Oval(Cm(30), Cm(20)), new PlanPoint(0, 0), 180));
        Assert.False(PlanShape.Oval(Cm(30), Cm(20)).Contains(PlanShape.Oval(Cm(30), Cm(20)), new PlanPoint(0, 0), 90));
        // A slot of the lower plan that no corner of the upper one meets.
        Assert.False(s_slot.Contains(PlanShape.Rectangle(Cm(18), Cm(8))));
        // Beside the slot of a plan 20 by 10, of which 9 are left on either side: its centroid is (10, 776/188) from its corner.
        Assert.True(s_slot.Contains(PlanShape.Rectangle(Cm(8), Cm(8)), new PlanPoint(-5, 5 - 776.0 / 188 + 0.0)));
        // A heart of the same width does not hold a round of its length.
        Assert.False(PlanShape.Heart(Cm(20)).Contains(PlanShape.Round(Cm(18))));
        Assert.False(PlanShape.Round(Cm(20)).Contains(round, new PlanPoint(100, 0)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1e5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void BadLengthsAreRefusedByName(double bad)
    {
        RefusedLength("diameter", bad, () => PlanShape.Round(Cm(bad)));
        RefusedLength("side", bad, () => PlanShape.Square(Cm(bad)));
        RefusedLength("width", bad, () => PlanShape.Rectangle(Cm(bad), Cm(5)));
        RefusedLength("length", bad, () => PlanShape.Rectangle(Cm(5), Cm(bad)));
        RefusedLength("width", bad, () => PlanShape.Oval(Cm(bad), Cm(5)));
        RefusedLength("length", bad, () => PlanShape.Oval(Cm(5), Cm(bad)));
        RefusedLength("across", bad, () => PlanShape.RegularPolygonAcrossFlats(6, Cm(bad)));
        RefusedLength("across", bad, () => PlanShape.RegularPolygonAcrossCorners(6, Cm(bad)));
        RefusedLength("width", bad, () => PlanShape.Heart(Cm(bad)));
        RefusedLength("side", bad, () => PlanShape.HeartOfSquare(Cm(bad)));
        RefusedLength("lobeWidth", bad, () => PlanShape.Petal(5, Cm(bad)));
        Refused("factor", bad, () => PlanShape.Round(Cm(5)).Scaled(bad));
        if (bad == 0)
            return;
        RefusedLength("cornerRadius", bad, () => PlanShape.Rectangle(Cm(20), Cm(10), Cm(bad)));
        Refused("thicknessCentimetres", bad, () => PlanShape.Round(Cm(5)).Offset(bad));
        Refused("thicknessCentimetres", bad, () => PlanShape.Round(Cm(5)).SharpOffset(bad));
        if (bad is -1)
            return;
        string place = bad is 1e5 ? "at" : "xCentimetres";
        Refused(place, bad, () => PlanShape.Round(Cm(5)).Contains(PlanShape.Round(Cm(4)), new PlanPoint(bad, 0)));
        Refused(place == "at" ? place : "yCentimetres", bad, () => PlanShape.Round(Cm(5)).Contains(PlanShape.Round(Cm(4)), new PlanPoint(0, bad)));
        Refused("turnedDegrees", bad, () => PlanShape.Round(Cm(5)).Contains(PlanShape.Round(Cm(4)), new PlanPoint(0, 0), bad));
    }

    [Fact]
    public void BadPolygonsAreRefused()
    {
        RefusedLength("cornerRadius", 5.1, () => PlanShape.Rectangle(Cm(20), Cm(10), Cm(5.1)));
        Refused("sides", 2, () => PlanShape.RegularPolygonAcrossFlats(2, Cm(10)));
        Refused("sides", 10_001, () => PlanShape.RegularPolygonAcrossCorners(10_001, Cm(10)));
        Refused("lobes", 2, () => PlanShape.Petal(2, Cm(10)));
        Refused("points", 2, () => PlanShape.Round(Cm(10)).Outline(2));
        Refused("points", 11, () => s_c.Outline(11));
        Refused("xCentimetres", double.NaN, () => new PlanPoint(double.NaN, 0));
        Assert.Throws<ArgumentNullException>("points", () => PlanShape.Polygon(null!));
        Assert.Throws<ArgumentNullException>("other", () => PlanShape.Round(Cm(5)).Contains(null!));
        Bad("has 2 corners", 0, 0, 10, 0);
        Bad("has 2 corners", 0, 0, 10, 0, 0, 0);
        Bad("cross or touch", 0, 0, 10, 10, 10, 0, 0, 10); // a bow tie
        Bad("cross or touch", 0, 0, 10, 0, 5, 0); // no width
        Bad("cross or touch", 0, 0, 10, 0, 10, 10, 5, 0, 0, 10); // a corner on a side
        Bad("corners 2 and 3 are one point", 0, 0, 10, 0, 10, 0, 10, 10);
        Refused("points", 20_000, () => Polygon(0, 0, 20_000, 0, 0, 5));
        // More than anybody draws: refused before it is looked at.
        ArgumentException many = Assert.Throws<ArgumentException>("points", () => PlanShape.Polygon(Enumerable.Range(0, 3_000_000).Select(i => new PlanPoint(i, i * (double)i / 1000))));
        Assert.Contains("more than 10000 corners", many.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CulturesDoNotMatter()
    {
        Cultures.In("de-DE", () =>
        {
            Assert.Equal("heart, 25.4 × 23.22 cm", PlanShape.Heart(Cm(25.4)).ToString());
            Assert.Equal("round, 20.5 × 20.5 cm, 7.25 cm high", CakeBody.Prism(PlanShape.Round(Cm(20.5)), Cm(7.25)).ToString());
            Assert.Equal("tapered round, 20.5 and 16 cm, 6 cm high", CakeBody.TaperedRound(Cm(20.5), Cm(16), Cm(6)).ToString());
            Assert.Equal("29 cm of piped line, 32.8 mL", Swirl.UpCone(Cm(6), Cm(3.5), 3, Cm(1.2)).ToString());
            Assert.Equal("grown by 1.5 cm: 380.13 cm², 69.12 cm round", PlanShape.Round(Cm(19)).Offset(1.5).ToString());
            Assert.Contains("from 0 to 2.5 cm.", Assert.Throws<ArgumentOutOfRangeException>(() => PlanShape.Rectangle(Cm(5), Cm(6), Cm(3))).Message, StringComparison.Ordinal);
        });
    }

    internal static PlanShape Polygon(params double[] coordinates) => PlanShape.Polygon(coordinates.Chunk(2).Select(pair => new PlanPoint(pair[0], pair[1])));

    internal static void Refused(string name, double value, Func<object> act)
    {
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(name, act);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{name} was {value:R}; it must be from "), refusal.Message, StringComparison.Ordinal);
    }

    /// <summary>The same of a length; what is none at all is refused where it is made one.</summary>
    internal static void RefusedLength(string name, double value, Func<object> act)
    {
        bool isLength = value is >= 0 and <= CakeLength.MaximumCentimetres;
        string named = isLength ? name : "centimetres", unit = isLength ? " cm" : "";
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(named, act);
        string expected = string.Create(CultureInfo.InvariantCulture, $"{named} was {value:R}{unit}; it must be from ");
        Assert.Contains(expected, refusal.Message, StringComparison.Ordinal);
    }

    private static void Bad(string words, params double[] coordinates) =>
        Assert.Contains(words, Assert.Throws<ArgumentException>("points", () => Polygon(coordinates)).Message, StringComparison.Ordinal);

    private static void Same(PlanShape expected, PlanShape actual, double share)
    {
        Assert.Equal(expected.AreaSquareCentimetres, actual.AreaSquareCentimetres, share * expected.AreaSquareCentimetres);
        Assert.Equal(expected.PerimeterCentimetres, actual.PerimeterCentimetres, share * expected.PerimeterCentimetres);
        Assert.Equal(expected.Offset(1).AreaSquareCentimetres, actual.Offset(1).AreaSquareCentimetres, share * expected.AreaSquareCentimetres * 2);
    }

    private static double Area(params (double X, double Y)[] points) => Shoelace([.. points.Select(p => new PlanPoint(p.X, p.Y))]).Area;

    private static (double Area, double Perimeter, double X, double Y) Shoelace(IReadOnlyList<PlanPoint> points)
    {
        double area = 0, perimeter = 0, x = 0, y = 0;
        for (int i = 0; i < points.Count; i++)
        {
            PlanPoint a = points[i], b = points[(i + 1) % points.Count];
            double cross = (a.XCentimetres * b.YCentimetres - b.XCentimetres * a.YCentimetres) / 2;
            area += cross;
            x += cross * (a.XCentimetres + b.XCentimetres) / 3;
            y += cross * (a.YCentimetres + b.YCentimetres) / 3;
            perimeter += Math.Sqrt(Math.Pow(b.XCentimetres - a.XCentimetres, 2) + Math.Pow(b.YCentimetres - a.YCentimetres, 2));
        }
        return (area, perimeter, x / area, y / area);
    }

    private static double Count(PlanPoint[] outline, double t, int cells = 400)
    {
        // Turned by an angle that no side has: a side along the rows would be right or wrong with all its cells at once.
        (double sine, double cosine) = Math.SinCos(0.317);
        outline = [.. outline.Select(p => new PlanPoint(cosine * p.XCentimetres - sine * p.YCentimetres, sine * p.XCentimetres + cosine * p.YCentimetres))];
        double left = outline.Min(p => p.XCentimetres) - t, right = outline.Max(p => p.XCentimetres) + t;
        double bottom = outline.Min(p => p.YCentimetres) - t, top = outline.Max(p => p.YCentimetres) + t, dx = (right - left) / cells, dy = (top - bottom) / cells;
        bool[,] taken = new bool[cells, cells];
        // Row by row: inside by crossings, near by the distance of every side to the cells about it.
        for (int row = 0; row < cells; row++)
        {
            double y = bottom + (row + 0.5) * dy;
            double[] crossings = [.. Sides(outline).Where(s => s.A.YCentimetres > y != s.B.YCentimetres > y)
                .Select(s => s.A.XCentimetres + (y - s.A.YCentimetres) / (s.B.YCentimetres - s.A.YCentimetres) * (s.B.XCentimetres - s.A.XCentimetres)).Order()];
            for (int column = 0; column < cells; column++)
                taken[row, column] = crossings.Count(x => x < left + (column + 0.5) * dx) % 2 == 1;
        }
        foreach ((PlanPoint a, PlanPoint b) in Sides(outline))
        {
            double ux = b.XCentimetres - a.XCentimetres, uy = b.YCentimetres - a.YCentimetres, square = ux * ux + uy * uy;
            int firstColumn = Cell(Math.Min(a.XCentimetres, b.XCentimetres) - t - left, dx), lastColumn = Cell(Math.Max(a.XCentimetres, b.XCentimetres) + t - left, dx);
            int firstRow = Cell(Math.Min(a.YCentimetres, b.YCentimetres) - t - bottom, dy), lastRow = Cell(Math.Max(a.YCentimetres, b.YCentimetres) + t - bottom, dy);
            for (int row = firstRow; row <= lastRow; row++)
            {
                for (int column = firstColumn; column <= lastColumn; column++)
                {
                    if (taken[row, column])
                        continue;
                    double x = left + (column + 0.5) * dx - a.XCentimetres, y = bottom + (row + 0.5) * dy - a.YCentimetres, along = Math.Clamp((x * ux + y * uy) / square, 0, 1);
                    taken[row, column] = Math.Pow(x - along * ux, 2) + Math.Pow(y - along * uy, 2) <= t * t;
                }
            }
        }
        int Cell(double distance, double size) => Math.Clamp((int)(distance / size), 0, cells - 1);
        return taken.Cast<bool>().Count(cell => cell) * dx * dy;
    }

    private static IEnumerable<(PlanPoint A, PlanPoint B)> Sides(PlanPoint[] outline)
    {
        for (int i = 0; i < outline.Length; i++)
            yield return (outline[i], outline[(i + 1) % outline.Length]);
    }
}
