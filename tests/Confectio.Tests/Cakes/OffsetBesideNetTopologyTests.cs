using Confectio.Cakes;
using FsCheck.Xunit;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using Xunit;

namespace Confectio.Tests.Cakes;

/// <summary>
/// Growing and shrinking beside the buffer of NetTopologySuite, a general library of planar geometry, and beside lines that are scanned. Its arcs are chords of
/// a 400th of a quarter, so its grown area is short by up to δ²/6 of the arcs' own. It joins turns to the inside within a thousandth of the
/// distance, by which its areas are off by some 1e-5; the scanned lines side with ours.
/// </summary>
public sealed class OffsetBesideNetTopologyTests
{
    private const int Chords = 400;

    [Property(MaxTest = 300)]
    public void AnyStarGrowsAndShrinksAsThere(ushort seed)
    {
        Random random = new(seed);
        int corners = random.Next(3, 40);
        Beside(Star(random, corners), 0.02 + 4 * random.NextDouble());
    }

    // Every line across what is grown is a union of stretches: of the plan, of a disc round each corner and of a strip along each side. 100 000 lines.
    [Theory]
    [InlineData(8, 36, 1.595457782286898)]
    [InlineData(3, 12, 0.6)]
    [InlineData(5, 25, 3)]
    public void ScannedLines(int seed, int corners, double t)
    {
        PlanPoint[] points = Star(new Random(seed), corners);
        PlanShape plan = PlanShape.Polygon(points);
        double low = points.Min(point => point.YCentimetres) - t, high = points.Max(point => point.YCentimetres) + t, step = (high - low) / 100_000, grown = 0, left = 0;
        List<(double From, double To)> inside = [], band = [];
        for (int line = 0; line < 100_000; line++)
        {
            Scan(points, t, low + (line + 0.5) * step, inside, band);
            double beside = Covered([.. band]), all = Covered([.. inside, .. band]);
            grown += all * step;
            // What is inside and not in the band.
            left += (all - beside) * step;
        }
        // The ends of discs, where a stretch begins as a root, cost some step^1.5 each.
        Assert.Equal(grown, plan.Offset(t).AreaSquareCentimetres, 1e-6 * grown);
        Assert.Equal(left, plan.Inset(t).AreaSquareCentimetres, 1e-6 * grown);
    }

    private static void Scan(PlanPoint[] points, double t, double y, List<(double From, double To)> inside, List<(double From, double To)> band)
    {
        inside.Clear();
        band.Clear();
        List<double> crossings = [];
        for (int i = 0; i < points.Length; i++)
        {
            PlanPoint a = points[i], b = points[(i + 1) % points.Length];
            double dx = b.XCentimetres - a.XCentimetres, dy = b.YCentimetres - a.YCentimetres, length = Math.Sqrt(dx * dx + dy * dy), nx = t * dy / length, ny = -t * dx / length;
            if (a.YCentimetres > y != b.YCentimetres > y)
                crossings.Add(a.XCentimetres + (y - a.YCentimetres) / dy * dx);
            double off = y - a.YCentimetres;
            if (Math.Abs(off) < t)
                band.Add((a.XCentimetres - Math.Sqrt(t * t - off * off), a.XCentimetres + Math.Sqrt(t * t - off * off)));
            (double X, double Y)[] strip = [(a.XCentimetres + nx, a.YCentimetres + ny), (b.XCentimetres + nx, b.YCentimetres + ny), (b.XCentimetres - nx, b.YCentimetres - ny), (a.XCentimetres - nx, a.YCentimetres - ny)];
            double[] walls = [.. Enumerable.Range(0, 4).Select(j => (From: strip[j], To: strip[(j + 1) % 4])).Where(wall => wall.From.Y > y != wall.To.Y > y)
                .Select(wall => wall.From.X + (y - wall.From.Y) / (wall.To.Y - wall.From.Y) * (wall.To.X - wall.From.X))];
            if (walls.Length == 2)
                band.Add((walls.Min(), walls.Max()));
        }
        crossings.Sort();
        for (int i = 0; i + 1 < crossings.Count; i += 2)
            inside.Add((crossings[i], crossings[i + 1]));
    }

    private static double Covered((double From, double To)[] stretches)
    {
        Array.Sort(stretches);
        double sum = 0, end = double.MinValue;
        foreach ((double from, double to) in stretches)
        {
            sum += Math.Max(to - Math.Max(from, end), 0);
            end = Math.Max(end, to);
        }
        return sum;
    }

    private static PlanPoint[] Star(Random random, int corners) => [.. Enumerable.Range(0, corners).Select(i =>
    {
        double angle = 2 * Math.PI * (i + 0.8 * random.NextDouble()) / corners, radius = 2 + 13 * random.NextDouble();
        return new PlanPoint(radius * Math.Cos(angle), radius * Math.Sin(angle));
    })];

    // Walks with many notches, some of which close from their mouths on and leave a hole inside.
    [Theory]
    [InlineData(1.01)]
    [InlineData(2.5)]
    [InlineData(5)]
    public void CombsAndHooksCloseAsThere(double t)
    {
        Beside([new(0, 0), new(30, 0), new(30, 20), new(26, 20), new(26, 4), new(22, 4), new(22, 20), new(18, 20), new(18, 4), new(14, 4), new(14, 20), new(0, 20)], t);
        // A hook: a room of 12 cm with a mouth of 3 cm.
        Beside([new(0, 0), new(20, 0), new(20, 20), new(11.5, 20), new(11.5, 16), new(16, 16), new(16, 4), new(4, 4), new(4, 16), new(8.5, 16), new(8.5, 20), new(0, 20)], t);
    }

    private static void Beside(PlanPoint[] points, double t)
    {
        PlanShape plan = PlanShape.Polygon(points);
        Polygon there = new(new LinearRing([.. points.Append(points[0]).Select(point => new Coordinate(point.XCentimetres, point.YCentimetres))]));
        BufferParameters parameters = new(Chords) { SimplifyFactor = 0 };
        // The arcs of all corners together turn as often as the corners do.
        double turns = 2 * Math.PI * points.Length, step = Math.PI / 2 / Chords, tolerance = 0.5 * t * t * turns * step * step / 6 + 1e-4 * plan.AreaSquareCentimetres;
        Assert.Equal(there.Buffer(t, parameters).Area, plan.Offset(t).AreaSquareCentimetres, tolerance);
        Assert.Equal(there.Buffer(-t, parameters).Area, plan.Inset(t).AreaSquareCentimetres, tolerance);
    }
}
