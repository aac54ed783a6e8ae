using Confectio.Cakes;
using FsCheck.Xunit;
using Xunit;
using static Confectio.Tests.Cakes.Lengths;

namespace Confectio.Tests.Cakes;

/// <summary>Bodies and their coats, against counts of cells and of random points that know only distances.</summary>
public sealed class CakeBodyTests
{
    // Of 1000 x 1000 cells some 3000 lie on the edge of a coat, and each counts or not by chance: √3000/2 cells of some 150 000 are 2e-4, and 4 times that
    // with the weight of the radius stays below this.
    private const double CellError = 1e-3;

    // Lower radius, upper radius, height: narrowing, straight, widening, a cone, and one so low and wide upward that the table cuts the side of its coat off.
    [Theory]
    [InlineData(10, 8, 6)]
    [InlineData(10, 10, 6)]
    [InlineData(8, 10, 6)]
    [InlineData(6, 0, 9)]
    [InlineData(4, 9, 1.5)]
    public void ATaperedRoundIsWhatTheCellsCount(double lower, double upper, double height)
    {
        CakeBody body = CakeBody.TaperedRound(Cm(2 * lower), Cm(2 * upper), Cm(height));
        foreach (double t in (double[])[0.8, 3])
        {
            double counted = Cells(Math.Max(lower, upper) + t, height + t, (r, z) => OutsideProfile(r, z, (lower, 0), (upper, height)) is > 0 and var d && d <= t);
            Assert.Equal(counted, body.CoatMillilitres(t), CellError * counted);
        }
    }

    [Theory]
    [InlineData(10, 10)]
    [InlineData(10, 4)]
    [InlineData(10, 0.5)]
    [InlineData(10, 17)]
    [InlineData(10, 20)]
    public void ABallIsWhatTheCellsCount(double radius, double height)
    {
        CakeBody body = CakeBody.Cap(Cm(radius), Cm(height));
        double middle = height - radius, foot = Math.Sqrt(Math.Max(radius * radius - middle * middle, 0));
        foreach (double t in (double[])[0.8, 3])
        {
            double counted = Cells(radius + t, height + t, (r, z) =>
            {
                double from = Math.Sqrt(r * r + (z - middle) * (z - middle));
                // The nearest point is on the ray from the middle of the ball, where that meets the dome above the table; else it is the rim.
                double d = from <= radius ? 0 : middle + (z - middle) * radius / from >= 0 ? from - radius : Math.Sqrt((r - foot) * (r - foot) + z * z);
                return d > 0 && d <= t;
            });
            Assert.Equal(counted, body.CoatMillilitres(t), CellError * counted);
        }
    }

    [Theory]
    [InlineData(12, 4, 9)]
    [InlineData(12, 0.5, 9)]
    [InlineData(8, 2.9, 3)]
    public void ARingIsWhatTheCellsCount(double outer, double inner, double height)
    {
        CakeBody body = CakeBody.Ring(Cm(2 * outer), Cm(2 * inner), Cm(height));
        foreach (double t in (double[])[0.8, 3])
        {
            double Beside(double r) => Math.Max(Math.Max(r - outer, inner - r), 0);
            double counted = Cells(outer + t, height + t, (r, z) => Math.Sqrt(Beside(r) * Beside(r) + Math.Pow(Math.Max(z - height, 0), 2)) is > 0 and var d && d <= t);
            Assert.Equal(counted, body.CoatMillilitres(t), CellError * counted);
            double sharp = Cells(outer + t, height + t, (r, z) => Beside(r) <= t && (Beside(r) > 0 || z > height));
            Assert.Equal(sharp, body.CoatMillilitres(t, CoatEdge.Sharp), CellError * sharp);
        }
    }

    [Theory]
    [InlineData(20, 14, 4, 1)]
    [InlineData(12, 4, 6, 3)]
    [InlineData(10, 0, 8, 2)]
    [InlineData(10, 10, 8, 2)]
    public void ATaperedSquareIsWhatRandomPointsCount(double lower, double upper, double height, double t)
    {
        CakeBody body = CakeBody.TaperedSquare(Cm(lower), Cm(upper), Cm(height));
        double half = lower / 2 + t;
        Counted(body.CoatMillilitres(t), half, half, height + t, (x, y, z) => OutsideSquare(Math.Abs(x), Math.Abs(y), z, lower / 2, upper / 2, height) is > 0 and var d && d <= t);
        // Sharp: between the faces, each moved outward by t.
        double narrows = (lower - upper) / 2 / height, outward = t * Math.Sqrt(1 + narrows * narrows), sharpHalf = lower / 2 + outward;
        Counted(body.CoatMillilitres(t, CoatEdge.Sharp), sharpHalf, sharpHalf, height + t, (x, y, z) =>
        {
            double side = Math.Max(Math.Abs(x), Math.Abs(y)) - lower / 2 + narrows * z;
            return side <= outward && (side > 0 || z > height);
        });
    }

    public static TheoryData<string> Notched => ["heart", "petal", "L", "slot"];

    [Theory, MemberData(nameof(Notched))]
    public void ABodyWithNotchesIsWhatRandomPointsCount(string name)
    {
        PlanShape plan = name switch { "heart" => PlanShape.Heart(Cm(20)), "petal" => PlanShape.Petal(5, Cm(8)), "L" => PlanShapeTests.s_l, _ => PlanShapeTests.s_slot };
        const double Height = 3, T = 2.5;
        PlanPoint[] outline = [.. plan.Outline(240)];
        double x = outline.Max(p => Math.Abs(p.XCentimetres)) + T, y = outline.Max(p => Math.Abs(p.YCentimetres)) + T;
        CakeBody body = CakeBody.Prism(plan, Cm(Height));
        Counted(body.CoatMillilitres(T), x, y, Height + T, (px, py, pz) =>
        {
            double over = Math.Max(pz - Height, 0), beside = OutsideOutline(outline, px, py);
            return (beside > 0 || over > 0) && beside * beside + over * over <= T * T;
        }, 100_000);
        Assert.True(body.CoatMillilitres(T, CoatEdge.Sharp) > body.CoatMillilitres(T));
        Assert.Equal(0, body.CoatMillilitres(0));
    }

    [Fact]
    public void OneBodyInTwoWords()
    {
        foreach (CoatEdge edge in Enum.GetValues<CoatEdge>())
        {
            foreach (double t in (double[])[0.3, 2, 11])
            {
                Same(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(9)), CakeBody.TaperedRound(Cm(20), Cm(20), Cm(9)), t, edge);
                Same(CakeBody.Prism(PlanShape.Square(Cm(20)), Cm(9)), CakeBody.TaperedSquare(Cm(20), Cm(20), Cm(9)), t, edge);
                Same(CakeBody.Prism(PlanShape.Round(Cm(20)), Cm(9)), CakeBody.Ring(Cm(20), Cm(0), Cm(9)), t, edge, hole: true);
                Same(CakeBody.HalfBall(Cm(20)), CakeBody.Cap(Cm(10), Cm(10)), t, edge);
                Same(CakeBody.HalfBall(Cm(20)), CakeBody.Ball(Cm(20), Cm(20)), t, edge);
                // Half a ball, grown, is half of a larger one.
                double half = 2 * Math.PI / 3 * (Math.Pow(10 + t, 3) - 1000);
                Assert.Equal(half, CakeBody.HalfBall(Cm(20)).CoatMillilitres(t, edge), 1e-11 * half);
            }
        }
    }

    [Property(MaxTest = 200)]
    public void CoatsGrowAndScaleAndAreNeverBelowAreaTimesThickness(ushort size, ushort taper, ushort tall, ushort thick)
    {
        double width = 5 + size / 2000.0, upper = width * taper / ushort.MaxValue, height = 1 + tall / 4000.0, t = 0.01 + thick / 20_000.0, k = 0.37;
        CakeBody[] bodies =
        [
            CakeBody.Prism(PlanShape.Round(Cm(width)), Cm(height)), CakeBody.Prism(PlanShape.Oval(Cm(width), Cm(upper + 1)), Cm(height)), CakeBody.Prism(PlanShape.RegularPolygonAcrossFlats(5, Cm(width)), Cm(height)),
            CakeBody.Prism(PlanShape.Rectangle(Cm(width), Cm(upper + 1)), Cm(height)), CakeBody.TaperedRound(Cm(width), Cm(upper), Cm(height)), CakeBody.TaperedSquare(Cm(width), Cm(upper), Cm(height)),
            CakeBody.HalfBall(Cm(width)), CakeBody.Ball(Cm(width), Cm(upper)), CakeBody.Cap(Cm(width), Cm(Math.Min(height, width))),
        ];
        CakeBody[] others = [CakeBody.TaperedRound(Cm(upper + 0.1), Cm(width), Cm(height)), CakeBody.Ring(Cm(width), Cm(0.9 * upper), Cm(height)), CakeBody.Prism(PlanShape.Heart(Cm(width)), Cm(height))];
        foreach (CakeBody body in (CakeBody[])[.. bodies, .. others])
        {
            double rounded = body.CoatMillilitres(t), sharp = body.CoatMillilitres(t, CoatEdge.Sharp), all = body.VolumeMillilitres + sharp;
            if (Array.IndexOf(bodies, body) >= 0)
                Assert.True(rounded >= body.ThinCoatMillilitres(t) - 1e-11 * all, body.ToString());
            // A cap has no sharper edge than its foot, which sharp leaves on the table farther out; what is cut from it by the table is never the other way.
            Assert.True(sharp >= rounded - 1e-11 * all, body.ToString());
            Assert.True(body.CoatMillilitres(1.01 * t) > rounded && body.CoatMillilitres(1.01 * t, CoatEdge.Sharp) > sharp, body.ToString());
            CakeBody scaled = body.Scaled(k);
            Assert.Equal(k * k * k * body.VolumeMillilitres, scaled.VolumeMillilitres, 1e-12 * body.VolumeMillilitres);
            Assert.Equal(k * k * body.CoatedAreaSquareCentimetres, scaled.CoatedAreaSquareCentimetres, 1e-12 * body.CoatedAreaSquareCentimetres);
            Assert.Equal(k * k * k * rounded, scaled.CoatMillilitres(k * t), 1e-9 * all);
            Assert.Equal(k * k * k * sharp, scaled.CoatMillilitres(k * t, CoatEdge.Sharp), 1e-9 * all);
            // A thin coat is area times thickness but for terms of t².
            Assert.Equal(body.CoatedAreaSquareCentimetres, body.CoatMillilitres(1e-5) / 1e-5, 1e-3 * body.CoatedAreaSquareCentimetres);
        }
    }

    [Fact]
    public void WhereATierCanStand()
    {
        Assert.Null(CakeBody.Ball(Cm(20)).Footprint);
        Assert.Null(CakeBody.Ball(Cm(20), Cm(12)).Top);
        Assert.Null(CakeBody.TaperedRound(Cm(20), Cm(0), Cm(9)).Top);
        Assert.Null(CakeBody.Ring(Cm(20), Cm(8), Cm(9)).Top);
        Assert.Equal(16, CakeBody.TaperedRound(Cm(20), Cm(16), Cm(6)).Top!.WidthCentimetres, 1e-12);
        Assert.True(CakeBody.TaperedRound(Cm(20), Cm(16), Cm(6)).Top!.Contains(CakeBody.HalfBall(Cm(16)).Footprint!));
        Assert.False(CakeBody.TaperedSquare(Cm(20), Cm(14), Cm(4)).Top!.Contains(CakeBody.Ring(Cm(15), Cm(4), Cm(6)).Footprint!));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1e5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void BadNumbersAreRefusedByName(double bad)
    {
        PlanShape plan = PlanShape.Round(Cm(20));
        CakeBody body = CakeBody.Prism(plan, Cm(9));
        PlanShapeTests.RefusedLength("height", bad, () => CakeBody.Prism(plan, Cm(bad)));
        PlanShapeTests.RefusedLength("bottomDiameter", bad, () => CakeBody.TaperedRound(Cm(bad), Cm(5), Cm(5)));
        PlanShapeTests.RefusedLength("topDiameter", bad, () => CakeBody.TaperedRound(Cm(5), Cm(bad), Cm(5)));
        PlanShapeTests.RefusedLength("height", bad, () => CakeBody.TaperedRound(Cm(5), Cm(5), Cm(bad)));
        PlanShapeTests.RefusedLength("bottomSide", bad, () => CakeBody.TaperedSquare(Cm(bad), Cm(5), Cm(5)));
        PlanShapeTests.RefusedLength("topSide", bad, () => CakeBody.TaperedSquare(Cm(5), Cm(bad), Cm(5)));
        PlanShapeTests.RefusedLength("height", bad, () => CakeBody.TaperedSquare(Cm(5), Cm(5), Cm(bad)));
        PlanShapeTests.RefusedLength("diameter", bad, () => CakeBody.HalfBall(Cm(bad)));
        PlanShapeTests.RefusedLength("diameter", bad, () => CakeBody.Ball(Cm(bad)));
        PlanShapeTests.RefusedLength("flatDiameter", bad, () => CakeBody.Ball(Cm(20), Cm(bad)));
        PlanShapeTests.RefusedLength("ballRadius", bad, () => CakeBody.Cap(Cm(bad), Cm(1)));
        PlanShapeTests.RefusedLength("height", bad, () => CakeBody.Cap(Cm(5), Cm(bad)));
        PlanShapeTests.RefusedLength("outerDiameter", bad, () => CakeBody.Ring(Cm(bad), Cm(1), Cm(5)));
        PlanShapeTests.RefusedLength("innerDiameter", bad, () => CakeBody.Ring(Cm(5), Cm(bad), Cm(5)));
        PlanShapeTests.Refused("thicknessCentimetres", bad, () => body.CoatMillilitres(bad));
        PlanShapeTests.Refused("thicknessCentimetres", bad, () => body.ThinCoatMillilitres(bad));
        PlanShapeTests.Refused("factor", bad, () => body.Scaled(bad));
        PlanShapeTests.RefusedLength("width", bad, () => PipedLine.HalfRoundMillilitres(plan, Cm(bad)));
        PlanShapeTests.RefusedLength("width", bad, () => PipedLine.HalfRoundMillilitres(Cm(60), Cm(bad)));
        PlanShapeTests.RefusedLength("width", bad, () => PipedLine.FullRoundMillilitres(plan, Cm(bad)));
        PlanShapeTests.RefusedLength("width", bad, () => PipedLine.FullRoundMillilitres(Cm(60), Cm(bad)));
        PlanShapeTests.RefusedLength("width", bad, () => PipedLine.ShellsMillilitres(Cm(60), Cm(bad)));
        PlanShapeTests.Refused("shellsPerWidth", bad, () => PipedLine.ShellsMillilitres(Cm(60), Cm(1), bad));
        PlanShapeTests.RefusedLength("footDiameter", bad, () => Swirl.UpCone(Cm(bad), Cm(3), 3, Cm(1)));
        PlanShapeTests.RefusedLength("height", bad, () => Swirl.UpCone(Cm(6), Cm(bad), 3, Cm(1)));
        PlanShapeTests.Refused("turns", bad, () => Swirl.UpCone(Cm(6), Cm(3), bad, Cm(1)));
        PlanShapeTests.RefusedLength("lineWidth", bad, () => Swirl.UpCone(Cm(6), Cm(3), 3, Cm(bad)));
        PlanShapeTests.RefusedLength("diameter", bad, () => Swirl.Rosette(Cm(bad), 3, Cm(1)));
        Assert.Throws<ArgumentNullException>("plan", () => CakeBody.Prism(null!, Cm(5)));
        Assert.Throws<ArgumentNullException>("plan", () => PipedLine.HalfRoundMillilitres(null!, Cm(5)));
        Assert.Throws<ArgumentOutOfRangeException>("edge", () => body.CoatMillilitres(1, (CoatEdge)7));
        PlanShapeTests.RefusedLength("innerDiameter", 5, () => CakeBody.Ring(Cm(5), Cm(5), Cm(5)));
        PlanShapeTests.RefusedLength("flatDiameter", 21, () => CakeBody.Ball(Cm(20), Cm(21)));
        PlanShapeTests.RefusedLength("topSide", 11, () => CakeBody.TaperedSquare(Cm(10), Cm(11), Cm(5)));
        if (bad is -1 or 1e5)
            return;
        PlanShapeTests.RefusedLength("path", bad, () => PipedLine.HalfRoundMillilitres(Cm(bad), Cm(1)));
    }

    private static void Same(CakeBody expected, CakeBody actual, double t, CoatEdge edge, bool hole = false)
    {
        Assert.Equal(expected.VolumeMillilitres, actual.VolumeMillilitres, 1e-12 * expected.VolumeMillilitres);
        Assert.Equal(expected.CoatedAreaSquareCentimetres, actual.CoatedAreaSquareCentimetres, 1e-12 * expected.CoatedAreaSquareCentimetres);
        Assert.Equal(hole ? null : expected.Top?.AreaSquareCentimetres, actual.Top?.AreaSquareCentimetres);
        double coat = expected.CoatMillilitres(t, edge);
        Assert.Equal(coat, actual.CoatMillilitres(t, edge), 1e-11 * coat);
    }

    // The volume of what turns round the axis, by cells of the half plane from the table up: each by a random point in it (fixed seed), since a wall along
    // the columns would be right or wrong with all its cells at once.
    private static double Cells(double radius, double height, Func<double, double, bool> taken)
    {
        const int Count = 1000;
        Random random = new(20_261_126);
        double sum = 0, dr = radius / Count, dz = height / Count;
        for (int i = 0; i < Count; i++)
        {
            for (int j = 0; j < Count; j++)
            {
                double r = (i + random.NextDouble()) * dr;
                if (taken(r, (j + random.NextDouble()) * dz))
                    sum += r;
            }
        }
        return 2 * Math.PI * sum * dr * dz;
    }

    // Random points of a fixed seed in a box on the table; four standard errors.
    private static void Counted(double actual, double halfX, double halfY, double height, Func<double, double, double, bool> taken, int points = 400_000)
    {
        Random random = new(20_261_126);
        int hits = 0;
        for (int i = 0; i < points; i++)
        {
            if (taken(halfX * (2 * random.NextDouble() - 1), halfY * (2 * random.NextDouble() - 1), height * random.NextDouble()))
                hits++;
        }
        double box = 4 * halfX * halfY * height, share = (double)hits / points;
        Assert.Equal(box * share, actual, 4 * box * Math.Sqrt(share * (1 - share) / points));
    }

    private static double OutsideProfile(double r, double z, (double R, double Z) foot, (double R, double Z) head)
    {
        if (z <= head.Z && r <= foot.R + (head.R - foot.R) * z / head.Z)
            return 0;
        double top = r <= head.R ? Math.Abs(z - head.Z) : double.MaxValue;
        return Math.Min(top, Segment(r, z, foot.R, foot.Z, head.R, head.Z));
    }

    private static double Segment(double x, double y, double x0, double y0, double x1, double y1)
    {
        double dx = x1 - x0, dy = y1 - y0, along = Math.Clamp(((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy), 0, 1);
        return Math.Sqrt(Math.Pow(x - x0 - along * dx, 2) + Math.Pow(y - y0 - along * dy, 2));
    }

    // In one quarter, above the table: the least distance to the slices of the body, each a square. It is convex over their heights, so a search by thirds finds it.
    private static double OutsideSquare(double x, double y, double z, double lower, double upper, double height)
    {
        double Slice(double at)
        {
            double half = lower + (upper - lower) * at / height, dx = Math.Max(x - half, 0), dy = Math.Max(y - half, 0);
            return Math.Sqrt(dx * dx + dy * dy + (z - at) * (z - at));
        }
        if (z <= height && Slice(z) == 0)
            return 0;
        double low = 0, high = height;
        for (int i = 0; i < 40; i++)
        {
            double third = (high - low) / 3;
            if (Slice(low + third) < Slice(high - third))
                high -= third;
            else
                low += third;
        }
        return Slice((low + high) / 2);
    }

    private static double OutsideOutline(PlanPoint[] outline, double x, double y)
    {
        bool inside = false;
        double least = double.MaxValue;
        for (int i = 0; i < outline.Length; i++)
        {
            PlanPoint a = outline[i], b = outline[(i + 1) % outline.Length];
            if (a.YCentimetres > y != b.YCentimetres > y
                && x < a.XCentimetres + (y - a.YCentimetres) / (b.YCentimetres - a.YCentimetres) * (b.XCentimetres - a.XCentimetres))
                inside = !inside;
            least = Math.Min(least, Segment(x, y, a.XCentimetres, a.YCentimetres, b.XCentimetres, b.YCentimetres));
        }
        return inside ? 0 : least;
    }
}
