using System.Globalization;
using BenchmarkDotNet.Attributes;
using Confectio.Measures;
using UnitsNet;

namespace Confectio.Benchmarks;

/// <summary>Reading a written amount. The peer is UnitsNet's volume parser, which reads decimals only, so it gets "1.5 l".</summary>
[MemoryDiagnoser]
public class ReadingAmounts
{
    private readonly string _cups = "1 1/2 cups";
    private readonly string _litres = "1.5 l";
    private readonly string _vulgar = "1½ c.";
    private readonly string _sum = "2 Tbsp + 1 tsp";

    [Benchmark(Baseline = true)]
    public bool UnitsNetVolume() => Volume.TryParse(_litres, CultureInfo.InvariantCulture, out _);

    [Benchmark]
    public bool OneAndAHalfCups() => Amount.TryParse(_cups, out _);

    [Benchmark]
    public bool Litres() => Amount.TryParse(_litres, out _);

    [Benchmark]
    public bool VulgarFraction() => Amount.TryParse(_vulgar, out _);

    [Benchmark]
    public bool SumOfTwo() => Amount.TryParse(_sum, out _);
}
