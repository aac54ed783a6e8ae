using BenchmarkDotNet.Attributes;
using Confectio.Cakes;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;

namespace Confectio.Benchmarks;

/// <summary>
/// Outlines of many corners grown by a coat of 6 mm. The peer is the buffer of NetTopologySuite with eight chords to a quarter round, its usual number: ours
/// measures the grown outline with its arcs. Few rounds, because the peer takes half a minute for the star of 10 000 corners.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(warmupCount: 1, iterationCount: 5)]
public class GrowingOutlines
{
    private readonly BufferParameters _usual = new();
    private PlanShape _plan = null!;
    private Polygon _there = null!;

    public enum Outline
    {
        /// <summary>5000 notches of 1 mm on a round of 30 cm: far below the coat, so that every corner is near to 120 others.</summary>
        Star,

        /// <summary>A round of 30 cm with corners at random within 0.1 mm, as a scan gives it.</summary>
        Scan,
    }

    [Params(1000, 10_000)]
    public int Corners { get; set; }

    [Params(Outline.Star, Outline.Scan)]
    public Outline Kind { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        PlanPoint[] points = [.. Enumerable.Range(0, Corners).Select(i =>
        {
            double radius = Kind == Outline.Star ? i % 2 == 0 ? 15 : 14.9 : 15 + 0.01 * random.NextDouble(), angle = 2 * Math.PI * i / Corners;
            return new PlanPoint(radius * Math.Cos(angle), radius * Math.Sin(angle));
        })];
        _plan = PlanShape.Polygon(points);
        _there = new Polygon(new LinearRing([.. points.Append(points[0]).Select(point => new Coordinate(point.XCentimetres, point.YCentimetres))]));
        if (Math.Abs(Grown() / GrownThere() - 1) > 0.01)
            throw new InvalidOperationException("The two grew to different areas.");
    }

    [Benchmark]
    public double Grown() => _plan.Offset(0.6).AreaSquareCentimetres;

    [Benchmark(Baseline = true)]
    public double GrownThere() => _there.Buffer(0.6, _usual).Area;
}
