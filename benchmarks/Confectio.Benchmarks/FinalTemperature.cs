using BenchmarkDotNet.Attributes;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Uncertainty;

namespace Confectio.Benchmarks;

/// <summary>
/// Where a mix of twelve lines lands. The peer is what a worksheet does: the mean of the temperatures weighted by heat capacity, with neither melting fat nor
/// dissolving sugar nor a spread.
/// </summary>
[MemoryDiagnoser]
public class FinalTemperature
{
    private static readonly (string Name, double Grams, double Celsius)[] s_mix =
    [
        ("egg white", 210, 45), ("granulated sugar", 385, 24), ("unsalted butter", 470, 14), ("white shortening", 120, 20), ("heavy cream", 80, 5),
        ("whole milk", 60, 5), ("cream cheese", 150, 8), ("icing sugar", 200, 22), ("glucose syrup", 60, 24), ("instant coffee powder", 6, 20),
        ("table salt", 3, 20), ("water", 30, 60),
    ];

    private readonly HeatLine[] _lines = [.. s_mix.Select(line => HeatLine.Of(IngredientTable.BuiltIn.Get(line.Name), line.Grams).At(line.Celsius))];
    private readonly double[] _heats = [.. s_mix.Select(line => ThermalProperties.Of(IngredientTable.BuiltIn.Get(line.Name), 20).SpecificHeat)];

    [Benchmark(Baseline = true)]
    public double WeightedMean()
    {
        double heat = 0, capacity = 0;
        for (int i = 0; i < s_mix.Length; i++)
        {
            heat += s_mix[i].Grams * _heats[i] * s_mix[i].Celsius;
            capacity += s_mix[i].Grams * _heats[i];
        }
        return heat / capacity;
    }

    [Benchmark]
    public Spread? Landing() => HeatBalance.Of(_lines).FinalTemperature.Value;
}
