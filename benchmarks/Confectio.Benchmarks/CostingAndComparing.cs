using System.Text;
using BenchmarkDotNet.Attributes;
using Confectio.Comparisons;
using Confectio.Costs;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Labels;
using Confectio.Measures;

namespace Confectio.Benchmarks;

/// <summary>What a page about a formula asks for: its cost, its list of ingredients, a comparison, and a list of a thousand prices read.</summary>
[MemoryDiagnoser]
public class CostingAndComparing
{
    private Formula _july = null!, _winter = null!;
    private PriceList _prices = null!;
    private string _table = "";

    [GlobalSetup]
    public void Setup()
    {
        IngredientTable table = IngredientTable.BuiltIn;
        _july = Formula.ParseText("July", "250 g unsalted butter\n500 g icing sugar\n30 g whole milk\n1 tsp vanilla extract\n60 g egg white", table, MeasuringSystem.Metric);
        _winter = Formula.ParseText("winter", "300 g unsalted butter\n450 g icing sugar\n60 g heavy cream\n1 tsp vanilla extract", table, MeasuringSystem.Metric);
        StringBuilder rows = new("ingredient,pack,price,currency,date,waste\n");
        for (int i = 0; i < 1000; i++)
            rows.Append(System.Globalization.CultureInfo.InvariantCulture, $"\"{table.All[i % 300].Name}\",1 kg,{1 + i % 97}.{i % 10}5,EUR,{2020 + i / 300}-{1 + i / 300 % 12:00}-02,2%\n");
        _table = rows.ToString();
        _prices = ReadAThousandPrices();
    }

    [Benchmark]
    public PriceList ReadAThousandPrices() => PriceList.Read(new StringReader(_table), IngredientTable.BuiltIn, MeasuringSystem.Metric).TryGet(out PriceList? prices) ? prices : throw new FormatException();

    [Benchmark]
    public BatchCost Cost() => BatchCost.Of(_july, _prices);

    [Benchmark]
    public string DeclareIngredients() => IngredientDeclaration.Of(_july, LabelRules.EuropeanUnion).ToHtml();

    [Benchmark]
    public FormulaComparison Compare() => FormulaComparison.Of(_july, _winter);

    [Benchmark]
    public ScaledFormula ScaleIntoMeasures() => ScaledFormula.Of(_july, 2.37, MeasuringTools.Usual(MeasuringSystem.UsCustomary));
}
