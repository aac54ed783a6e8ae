using BenchmarkDotNet.Attributes;
using Confectio.Cards;
using Confectio.Ingredients;
using Confectio.Phrases;
using Confectio.Text;
using Confectio.Vetting;

namespace Confectio.Benchmarks;

/// <summary>
/// A line read, a card of seven lines read from text and from a page's recipe data, a card vetted, and a thousand cards read and vetted. The
/// peer only looks for degrees with one regular expression.
/// </summary>
[MemoryDiagnoser]
public partial class VettingCards
{
    private const string Text = """
        House buttercream
        Makes 24 portions of 40 g

        1 cup (227 g) unsalted butter, softened
        4 cups (480 g) icing sugar, sifted
        1/2 cup (120 g) cream cheese
        2 Tbsp (30 g) whole milk
        1 Tbsp (21 g) honey
        2 tsp (9 g) vanilla extract
        1/4 tsp (1.5 g) salt

        Method
        1. Warm the milk to 104°F (40°C) with the honey.
        2. Beat everything until pale. Keep in the refrigerator at 40°F (4°C).

        Contains: milk.
        """;

    private const string Page = """
        <html><head><script type="application/ld+json">{"@context":"https://schema.org","@type":"Recipe","name":"House buttercream","recipeYield":"24 portions of 40 g",
        "recipeIngredient":["1 cup (227 g) unsalted butter, softened","4 cups (480 g) icing sugar, sifted","1/2 cup (120 g) cream cheese","2 Tbsp (30 g) whole milk","1 Tbsp (21 g) honey","2 tsp (9 g) vanilla extract","1/4 tsp (1.5 g) salt"],
        "recipeInstructions":[{"@type":"HowToStep","text":"Warm the milk to 104°F (40°C) with the honey."},{"@type":"HowToStep","text":"Keep in the refrigerator at 40°F (4°C)."}],"description":"Contains: milk."}</script></head><body></body></html>
        """;

    private readonly IngredientTable _table = IngredientTable.BuiltIn;
    private Reading<PrintedCard> _card = null!;

    [GlobalSetup]
    public void Setup() => _card = PrintedCard.Read(Text, _table);

    [Benchmark(Baseline = true)]
    public int DegreesAlone() => Degrees().Count(Text);

    [Benchmark]
    public Phrase LineRead() => Phrase.Read("4 cups (480 g) icing sugar, sifted", _table);

    [Benchmark]
    public Reading<PrintedCard> CardRead() => PrintedCard.Read(Text, _table);

    [Benchmark]
    public Reading<PrintedCard> PageRead() => PrintedCard.Read(Page, _table);

    [Benchmark]
    public CardVerdict? CardVetted() => CardVetter.Vet(_card);

    [Benchmark]
    public int ThousandCardsReadAndVetted()
    {
        int findings = 0;
        for (int i = 0; i < 1000; i++)
            findings += CardVetter.Vet(PrintedCard.Read(Text, _table))!.Findings.Count;
        return findings;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"\d+\s?°[FC]")]
    private static partial System.Text.RegularExpressions.Regex Degrees();
}
