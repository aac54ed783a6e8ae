using System.Numerics.Tensors;
using BenchmarkDotNet.Attributes;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Benchmarks;

/// <summary>A column of volumes to masses. The peer is TensorPrimitives.Multiply by the same density.</summary>
[MemoryDiagnoser]
public class ColumnConversion
{
    private readonly Conversion _conversion = Conversion.Of(IngredientTable.BuiltIn.Get("icing sugar"), Packing.Sifted, MeasuringSystem.UsCustomary);
    private double[] _millilitres = [];
    private double[] _grams = [];

    [Params(1_000, 1_000_000)]
    public int Rows { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        _millilitres = [.. Enumerable.Range(0, Rows).Select(_ => 1000 * random.NextDouble())];
        _grams = new double[Rows];
    }

    [Benchmark(Baseline = true)]
    public void TensorMultiply() => TensorPrimitives.Multiply(_millilitres, _conversion.Density.GramsPerMillilitre.Likely, _grams);

    [Benchmark]
    public void ToGrams() => _conversion.ToGrams(_millilitres, _grams);
}
