using System.Net;
using System.Text;
using BenchmarkDotNet.Attributes;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Publishing;

namespace Confectio.Benchmarks;

/// <summary>
/// A card of seven lines in two kitchens, in each form, and a chart of a hundred foods. The peer writes the names and grams alone into a table
/// with StringBuilder and WebUtility.HtmlEncode: no ounces, measures, balance, allergens or cautions.
/// </summary>
[MemoryDiagnoser]
public class PrintingCards
{
    private readonly Formula _formula = Formula.ParseText("Fennmarsh Hall buttercream",
        "210 g egg white\n385 g granulated sugar\n470 g unsalted butter\n1 1/2 cups sifted icing sugar\n6 g instant coffee powder\n3 g table salt\n1 tsp vanilla extract", IngredientTable.BuiltIn, MeasuringSystem.UsCustomary);

    private readonly CardOptions _options = new() { MeasuringSystems = [MeasuringSystem.UsCustomary, MeasuringSystem.Metric], Portions = 24, Rules = LabelRules.EuropeanUnion };

    private readonly ChartFood[] _foods = [.. IngredientTable.BuiltIn.All.Where(food => food.Densities.Count > 0).Take(100).Select(food => ChartFood.Of(food))];

    private readonly Amount[] _measures = [Amount.Parse("1 cup"), Amount.Parse("1 Tbsp"), Amount.Parse("1 tsp")];

    private FormulaCard _card = null!;
    private ConversionChart _chart = null!;

    [GlobalSetup]
    public void Setup()
    {
        _card = MakeCard();
        _chart = MakeChart();
    }

    [Benchmark(Baseline = true)]
    public string NamesAndGramsAlone()
    {
        StringBuilder html = new("<table>");
        foreach (FormulaLine line in _formula.Lines)
            html.Append("<tr><th>").Append(WebUtility.HtmlEncode(line.Ingredient.Name)).Append("</th><td>").Append(line.Grams.Likely).Append(" g</td></tr>");
        return html.Append("</table>").ToString();
    }

    [Benchmark]
    public FormulaCard MakeCard() => FormulaCard.Of(_formula, _options);

    [Benchmark]
    public string CardToText() => _card.ToText();

    [Benchmark]
    public string CardToMarkdown() => _card.ToMarkdown();

    [Benchmark]
    public string CardToHtml() => _card.ToHtml();

    [Benchmark]
    public string CardToJsonLd() => _card.ToJsonLd();

    [Benchmark]
    public string CardToJson() => _card.ToJson();

    [Benchmark]
    public ConversionChart MakeChart() => ConversionChart.Of(_foods, _measures, MeasuringSystem.UsCustomary);

    [Benchmark]
    public string ChartToCsv() => _chart.ToCsv();

    [Benchmark]
    public string ChartToHtml() => _chart.ToHtml();
}
