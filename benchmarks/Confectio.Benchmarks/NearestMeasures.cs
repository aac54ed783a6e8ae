using BenchmarkDotNet.Attributes;
using Confectio.Measures;

namespace Confectio.Benchmarks;

/// <summary>The fewest fills for a volume; there is no peer, so the sizes stand beside each other.</summary>
[MemoryDiagnoser]
public class NearestMeasures
{
    private readonly MeasuringTools _usual = MeasuringTools.Usual(MeasuringSystem.UsCustomary);
    private readonly MeasuringTools _full = MeasuringTools.Full(MeasuringSystem.UsCustomary);

    [Params(7.3, 400, 20_000)]
    public double Millilitres { get; set; }

    [Benchmark(Baseline = true)]
    public PracticalMeasure? UsualWithinTwoPerCent() => PracticalMeasure.Find(Millilitres, _usual);

    [Benchmark]
    public PracticalMeasure? FullWithinTwoPerMille() => PracticalMeasure.Find(Millilitres, _full, 0.002);
}
