using BenchmarkDotNet.Attributes;
using Confectio.Cakes;
using Confectio.Icings;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;

namespace Confectio.Benchmarks;

/// <summary>
/// A plan of three tiers as the example has them, a thousand cakes in a loop, and the outline of 10 000 corners grown by a coat. The peer of the outline is the
/// buffer of NetTopologySuite with eight chords to a quarter round, its usual number: ours measures the grown outline with its arcs.
/// </summary>
[MemoryDiagnoser]
public class CoveringCakes
{
    private readonly Icing[] _icings = [Icing.Of("buttercream", 0.85), Icing.Of("jam", 1.35)];
    private readonly MixerBowl _bowl = MixerBowl.OfQuarts(5, 0.7);
    private readonly Cake[] _cakes = new Cake[1000];
    private readonly BufferParameters _usual = new();
    private Cake _wedding = null!;
    private PlanShape _star = null!;
    private Polygon _starThere = null!;

    [GlobalSetup]
    public void Setup()
    {
        _wedding = Wedding(1);
        Random random = new(1);
        for (int i = 0; i < _cakes.Length; i++)
            _cakes[i] = Wedding(0.7 + 0.6 * random.NextDouble());
        // A star of 5000 small notches on a round of 30 cm.
        PlanPoint[] points = [.. Enumerable.Range(0, 10_000).Select(i => new PlanPoint((i % 2 == 0 ? 15 : 14.9) * Math.Cos(Math.PI * i / 5000), (i % 2 == 0 ? 15 : 14.9) * Math.Sin(Math.PI * i / 5000)))];
        _star = PlanShape.Polygon(points);
        _starThere = new Polygon(new LinearRing([.. points.Append(points[0]).Select(point => new Coordinate(point.XCentimetres, point.YCentimetres))]));
        if (Math.Abs(StarGrows() / StarGrowsThere() - 1) > 0.01)
            throw new InvalidOperationException("The two grew to different areas.");
    }

    [Benchmark]
    public IcingPlan ThreeTiers() => IcingPlan.Of(Wedding(1), _icings, 0.08, _bowl);

    [Benchmark]
    public CakeCoverage ThreeTiersCovered() => _wedding.Cover();

    // What a worksheet does: area times thickness, tier by tier, the tops and sides of rounds.
    [Benchmark]
    public double ThreeTiersOnAWorksheet()
    {
        double sum = 0;
        foreach (CakeTier tier in _wedding.Tiers)
        {
            double d = tier.Body.Footprint!.WidthCentimetres, h = tier.Body.HeightCentimetres;
            sum += (Math.PI * d * d / 4 + Math.PI * d * h) * 0.7;
        }
        return sum;
    }

    [Benchmark]
    public double AThousandCakes()
    {
        double sum = 0;
        foreach (Cake cake in _cakes)
            sum += IcingPlan.Of(cake, _icings, 0.08, _bowl).Needs[0].TakenGrams;
        return sum;
    }

    [Benchmark]
    public double StarGrows() => _star.Offset(0.6).AreaSquareCentimetres;

    [Benchmark]
    public double StarGrowsThere() => _starThere.Buffer(0.6, _usual).Area;

    private static Cake Wedding(double factor) => Cake.Of("wedding", [Tier(12 * factor), Tier(9 * factor), Tier(6 * factor)], [Cupcakes.Swirled("buttercream", 24, Swirl.UpCone(6, 3.5, 3, 1.2))]);

    private static CakeTier Tier(double inches) => CakeTier.Of(CakeBody.Prism(PlanShape.Round(inches * CakeLength.CentimetresPerInch), 10.16))
        .Filled(CakeFilling.Of("jam", 0.4).InDam("buttercream", 1), 3).Coated(CakeCoat.Of("buttercream", 0.2), CakeCoat.Of("buttercream", 0.5, CoatEdge.Sharp))
        .Bordered(CakeBorder.Of("buttercream", BorderKind.Shells, 1.2, BorderPlace.Foot, 1.25));
}
