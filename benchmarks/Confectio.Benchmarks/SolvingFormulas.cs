using BenchmarkDotNet.Attributes;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;

namespace Confectio.Benchmarks;

/// <summary>A whole question through the public interface: three targets, five limits, the proof and what binds; and its rounding.</summary>
[MemoryDiagnoser]
public class SolvingFormulas
{
    private static readonly string[] s_foods = ["semisweet chocolate chips", "heavy cream", "unsalted butter", "glucose syrup", "honey"];

    private readonly FormulaProblem _problem;
    private readonly SolvedFormula _answer;

    public SolvingFormulas()
    {
        Ingredient[] foods = [.. s_foods.Select(IngredientTable.BuiltIn.Get)];
        double[] grams = [480, 400, 40, 50, 30], most = [600, 420, 60, 80, 40];
        FormulaProblem problem = FormulaProblem.StartingFrom(Formula.Of("ganache", foods.Select((food, j) => FormulaLine.Of(food, grams[j]))))
            .WithTarget(FormulaPart.Fat, 0.36).WithTarget(FormulaPart.Sugars, 0.30).WithTarget(FormulaPart.Water, 0.23);
        for (int j = 0; j < foods.Length; j++)
            problem = problem.WithLimit(foods[j], 0, most[j]);
        _problem = problem;
        _answer = problem.Solve();
    }

    [Benchmark(Baseline = true)]
    public SolvedFormula Solve() => _problem.Solve();

    [Benchmark]
    public RoundedFormula RoundToFiveGrams() => _answer.Round(RoundingGrid.Grams(5));

    [Benchmark]
    public Sensitivity Sensitivity() => _answer.SensitivityTo(_problem.Demands[1]);
}
