using BenchmarkDotNet.Attributes;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;

namespace Confectio.Benchmarks;

/// <summary>Reading a printed name. The peer is the look-up of a name as it stands.</summary>
[MemoryDiagnoser]
public class ReadingNames
{
    private readonly IngredientTable _table = IngredientTable.BuiltIn;

    [GlobalSetup]
    public void FirstName() => _table.MatchName("cold unsalted butter, softened");

    [Benchmark(Baseline = true)]
    public bool LookUp() => _table.TryGet("granulated sugar", out _);

    [Benchmark]
    public NameMatch AsItStands() => _table.MatchName("granulated sugar");

    [Benchmark]
    public NameMatch Turned() => _table.MatchName("Sugar - granulated*");

    [Benchmark]
    public NameMatch WithAPacking() => _table.MatchName("unsalted butter, softened");

    [Benchmark]
    public NameMatch SecondName() => _table.MatchName("caster (superfine) sugar");

    [Benchmark]
    public NameMatch TwoFoods() => _table.MatchName("butter/margarine");

    [Benchmark]
    public NameMatch Unknown() => _table.MatchName("digestive biscuit crumbs");
}
