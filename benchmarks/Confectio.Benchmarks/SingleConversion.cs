using BenchmarkDotNet.Attributes;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Units;
using UnitsNet;

namespace Confectio.Benchmarks;

/// <summary>
/// One volume to one mass. The peer is UnitsNet's Density * Volume, which gives a number; ours gives low, likely and high with
/// the source behind them.
/// </summary>
[MemoryDiagnoser]
public class SingleConversion
{
    private readonly Conversion _conversion = Conversion.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary);
    private readonly Amount _amount = Amount.Parse("1 1/2 cups");
    private readonly Density _density = Density.FromKilogramsPerCubicMeter(412);
    private readonly Volume _volume = Volume.FromMilliliters(354.88235475);
    private double _millilitres = 354.88235475;

    [Benchmark(Baseline = true)]
    public Mass UnitsNetDensityTimesVolume() => _density * _volume;

    [Benchmark]
    public ConvertedMass OfMillilitres() => _conversion.ToMass(_millilitres);

    [Benchmark]
    public ConvertedMass OfUnitsNetVolume() => _conversion.ToMass(_volume);

    [Benchmark]
    public ConvertedMass OfAmount() => _conversion.ToMass(_amount);

    [GlobalSetup]
    public void Setup() => _millilitres = _amount.Millilitres(MeasuringSystem.UsCustomary);
}
