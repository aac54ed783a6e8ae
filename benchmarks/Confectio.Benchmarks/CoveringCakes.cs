using BenchmarkDotNet.Attributes;
using Confectio.Cakes;
using Confectio.Icings;

namespace Confectio.Benchmarks;

/// <summary>
/// A plan of three tiers as the example has them, and a thousand cakes in a loop. The peer is a worksheet, which knows no edges, fillings
/// or batches.
/// </summary>
[MemoryDiagnoser]
public class CoveringCakes
{
    private readonly Icing[] _icings = [Icing.Of("buttercream", 0.85), Icing.Of("jam", 1.35)];
    private readonly MixerBowl _bowl = MixerBowl.OfQuarts(5, 0.7);
    private readonly Cake[] _cakes = new Cake[1000];
    private Cake _wedding = null!;

    [GlobalSetup]
    public void Setup()
    {
        _wedding = Wedding(1);
        Random random = new(1);
        for (int i = 0; i < _cakes.Length; i++)
            _cakes[i] = Wedding(0.7 + 0.6 * random.NextDouble());
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

    private static Cake Wedding(double factor) =>
        Cake.Of("wedding", [Tier(12 * factor), Tier(9 * factor), Tier(6 * factor)],
        [Cupcakes.Swirled("buttercream", 24,
        Swirl.UpCone(CakeLength.FromCentimetres(6), CakeLength.FromCentimetres(3.5), 3, CakeLength.FromCentimetres(1.2)))]);

    private static CakeTier Tier(double inches) =>
        CakeTier.Of(CakeBody.Prism(PlanShape.Round(CakeLength.FromInches(inches)), CakeLength.FromCentimetres(10.16)))
        .Filled(CakeFilling.Of("jam", CakeLength.FromMillimetres(4)).InDam("buttercream", CakeLength.FromCentimetres(1)),
            3)
        .Coated(CakeCoat.Of("buttercream", CakeLength.FromMillimetres(2)), CakeCoat.Of("buttercream", CakeLength.FromMillimetres(5), CoatEdge.Sharp))
        .Bordered(CakeBorder.Of("buttercream", BorderKind.Shells, CakeLength.FromCentimetres(1.2), BorderPlace.Foot, 1.25));
}
