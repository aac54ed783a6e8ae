using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;

namespace Confectio.Benchmarks;

/// <summary>
/// Judging whole tables beside Sep only reading the same text: what is above the peer is judgement. Rows are likely weights in
/// US cups with a few per cent of scatter, one in ten doubled.
/// </summary>
[MemoryDiagnoser]
public class VettingTables
{
    private string _csv = "";

    [Params(1_000, 10_000, 100_000)]
    public int Rows { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        Ingredient[] ingredients = [.. IngredientTable.BuiltIn.All.Where(ingredient => ingredient.Densities.Count > 0)];
        string[] measures = ["1 cup", "1/2 cup", "1/4 cup", "3/4 cup", "1 Tbsp", "2 tsp"];
        StringBuilder text = new("ingredient,measure,packing,grams\n");
        for (int i = 0; i < Rows; i++)
        {
            Ingredient ingredient = ingredients[random.Next(ingredients.Length)];
            BulkDensity density = ingredient.Densities[random.Next(ingredient.Densities.Count)];
            string measure = measures[random.Next(measures.Length)];
            double grams = Amount.Parse(measure).Millilitres(MeasuringSystem.UsCustomary) * density.GramsPerMillilitre.Likely
                * Math.Exp(0.03 * (random.NextDouble() - 0.5)) * (random.Next(10) == 0 ? 2 : 1);
            text.Append(CultureInfo.InvariantCulture, $"\"{ingredient.Name}\",{measure},{density.Packing.ToWord()},{grams:0.0}\n");
        }
        _csv = text.ToString();
        // The peer and we must read the same rows, and the rows must be worth judging.
        TableVerdict verdict = Vet();
        if (verdict.Rows.Count != Rows || SepReads() != Rows || verdict.Count(Verdict.Wrong) + verdict.Count(Verdict.Impossible) < Rows / 20)
            throw new InvalidOperationException("The benchmark's table was not read as it was written.");
    }

    [Benchmark(Baseline = true)]
    public int SepReads() => SepPeer.Rows(_csv);

    [Benchmark]
    public TableVerdict Vet() => ConversionTableVetter.Vet(new StringReader(_csv), IngredientTable.BuiltIn);
}
