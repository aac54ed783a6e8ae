using System.Globalization;
using System.Text;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using BenchmarkDotNet.Attributes;
using Confectio.Ingredients;
using Confectio.Layouts;

namespace Confectio.Benchmarks;

/// <summary>
/// Reading a table without being told its layout. The peers only part the same text: Sep the delimited file into its fields, AngleSharp the
/// page into its elements. What is above them is finding the columns, the measures and the figures.
/// </summary>
[MemoryDiagnoser]
public class ReadingTables
{
    private readonly HtmlParser _parser = new();
    private string _csv = "";
    private string _html = "";

    // A page is read up to a thousand rows.
    [Params(100, 1_000)]
    public int Rows { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        IReadOnlyList<Ingredient> ingredients = IngredientTable.BuiltIn.All;
        string[] measures = ["1 cup", "1/2 cup", "1/4 cup", "3/4 cup", "1 Tbsp", "2 tsp"];
        StringBuilder csv = new("ingredient,measure,grams\n"),
            html = new("<html><body><table><tr><th>Ingredient</th><th>Measure</th><th>Grams</th></tr>\n");
        for (int i = 1; i < Rows; i++)
        {
            string name = ingredients[random.Next(ingredients.Count)].Name, measure = measures[random.Next(measures.Length)];
            int grams = random.Next(5, 400);
            csv.Append(CultureInfo.InvariantCulture, $"\"{name}\",{measure},{grams}\n");
            html.Append(CultureInfo.InvariantCulture, $"<tr><td>{name}</td><td>{measure}</td><td>{grams}</td></tr>\n");
        }
        (_csv, _html) = (csv.ToString(), html.Append("</table></body></html>\n").ToString());
        // The peers and we must see the same rows; the heading is one of theirs.
        if (Delimited() != Rows - 1 || Page() != Rows - 1 || SepReads() != Rows - 1 || AngleSharpParses() != Rows)
            throw new InvalidOperationException("The benchmark's tables were not read as they were written.");
    }

    [Benchmark(Baseline = true)]
    public int SepReads() => SepPeer.Rows(_csv);

    [Benchmark]
    public int Delimited() => Count(_csv);

    [Benchmark]
    public int AngleSharpParses()
    {
        using IHtmlDocument document = _parser.ParseDocument(_html);
        return document.QuerySelectorAll("tr").Length;
    }

    [Benchmark]
    public int Page() => Count(_html);

    private static int Count(string text) => TableText.Read(text).TryGet(out TableText? table) ? table.Rows.Count : 0;
}
