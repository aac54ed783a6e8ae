using BenchmarkDotNet.Attributes;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Phrases;

namespace Confectio.Benchmarks;

/// <summary>Reading a line of a recipe. The peer is the reading of the name in it, which somebody else has cut out.</summary>
[MemoryDiagnoser]
public class ReadingPhrases
{
    private readonly IngredientTable _table = IngredientTable.BuiltIn;

    [GlobalSetup]
    public void FirstPhrase()
    {
        if (!OneAmount().IsRead || !TwoAmounts().IsRead || !Count().IsRead || !Preparation().IsRead || UnknownName().IsRead
            || Instruction().Kind != PhraseKind.Instruction)
            throw new InvalidOperationException("The benchmark's phrases were not read as they are meant.");
    }

    [Benchmark(Baseline = true)]
    public NameMatch NameOnly() => _table.MatchName("unsalted butter, softened");

    [Benchmark]
    public Phrase OneAmount() => Phrase.Read("2 cups all-purpose flour", _table);

    [Benchmark]
    public Phrase TwoAmounts() => Phrase.Read("1 cup (2 sticks; 227 g) unsalted butter, softened", _table);

    [Benchmark]
    public Phrase Count() => Phrase.Read("3 large egg whites", _table);

    [Benchmark]
    public Phrase Preparation() => Phrase.Read("100 g unsalted butter, cubed and chilled", _table);

    [Benchmark]
    public Phrase UnknownName() => Phrase.Read("200 g digestive biscuit crumbs", _table);

    [Benchmark]
    public Phrase Instruction() => Phrase.Read("Whisk the whites to soft peaks and add the sugar by the spoon.", _table);
}
