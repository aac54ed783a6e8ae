using BenchmarkDotNet.Attributes;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;

namespace Confectio.Benchmarks;

/// <summary>A verdict on a warm room, the most butter that holds, an afternoon, and the activity of the water of twelve lines.</summary>
[MemoryDiagnoser]
public class WarmRooms
{
    private readonly Formula _cream = Formula.ParseText("", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk", IngredientTable.BuiltIn, MeasuringSystem.Metric);

    private readonly Formula _twelve = Formula.ParseText("", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk\n60 g glucose syrup\n40 g honey\n20 g cocoa powder\n90 g egg white\n"
        + "100 g granulated sugar\n50 g heavy cream\n2 g salt\n80 g dark couverture 64 %\n5 g vanilla extract", IngredientTable.BuiltIn, MeasuringSystem.Metric);

    private readonly Ingredient _butter = IngredientTable.BuiltIn.Get("unsalted butter"), _shortening = IngredientTable.BuiltIn.Get("white shortening"),
        _water = IngredientTable.BuiltIn.Get("water");

    private readonly ThermometerReading[] _room = [.. Enumerable.Range(0, 10).Select(i => new ThermometerReading { Minutes = 60 * i, Celsius = 20 + i })];

    [Benchmark(Baseline = true)]
    public WarmRoom Verdict() => _cream.InWarmRoom(31);

    [Benchmark]
    public HoldingBlend MostButter() => _cream.MostThatHolds(_butter, _shortening, _water, 31);

    [Benchmark]
    public HoldingBlend MostButterSurely() => _cream.MostThatHolds(_butter, _shortening, _water, 31, surely: true);

    [Benchmark]
    public WarmAfternoon Afternoon() => _cream.InWarmAfternoon(_room, 18, WarmAfternoon.RateOfCake(20, 10, 5));

    [Benchmark]
    public object? ActivityOfTwelveLines() => SugarProperties.WaterActivity(25).SpreadOf(_twelve);
}
