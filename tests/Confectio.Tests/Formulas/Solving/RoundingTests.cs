using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>Answers rounded to practical measures.</summary>
public sealed class RoundingTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static FormulaProblem Buttercream() => FormulaProblem.StartingFrom(Formula.Of("Fennmarsh Hall buttercream",
        [
            FormulaLine.Of(s_table.Get("egg white"), 210), FormulaLine.Of(s_table.Get("granulated sugar"), 385),
            FormulaLine.Of(s_table.Get("unsalted butter"), 470), FormulaLine.Of(s_table.Get("table salt"), 3),
        ])).WithTarget(FormulaPart.Fat, 0.36).WithTarget(FormulaPart.Sugars, 0.355);

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(0.5)]
    public void EveryLineIsAWholeMultipleAndTheTotalStands(double step)
    {
        FormulaProblem problem = Buttercream().WithFixed(s_table.Get("table salt"), 3);
        RoundedFormula rounded = problem.Solve().Round(RoundingGrid.Grams(step));
        foreach (FormulaLine line in rounded.Formula!.Lines.Where(line => line.Ingredient.Id != "salt-table"))
            Assert.Equal(Math.Round(line.Grams.Likely / step), line.Grams.Likely / step, 1e-12);
        Assert.Equal(1068, rounded.Formula!.TotalGrams, step == 5 ? 5 : 1e-12 * 1068);
        Assert.True(rounded.IsProven);
        Assert.True(rounded.LowerBound <= rounded.Value!.Value + 1e-12);
    }

    [Fact]
    public void SpoonsAreNamedAndWeighWhatTheNameWeighs()
    {
        RoundedFormula rounded = Buttercream().Solve().Round(RoundingGrid.Spoons(MeasuringSystem.UsCustomary));
        foreach (FormulaLine line in rounded.Formula!.Lines)
        {
            Assert.NotNull(line.AsWritten);
            // The written amount, converted anew, is the line's mass.
            FormulaLine again = FormulaLine.Of(line.Ingredient, line.AsWritten.Value, MeasuringSystem.UsCustomary);
            Assert.Equal(line.Grams.Likely, again.Grams.Likely, 1e-9);
        }
        for (int j = 0; j < rounded.Grams.Count; j++)
            Assert.Equal(rounded.Grams[j], (rounded.Formula!.GramsOf(s_table.All.First(food => food == Buttercream().Ingredients[j])) ?? 0), 1e-9);
    }

    [Fact]
    public void AGridTooCoarseForTheDemandsSaysWhatItBroke()
    {
        RoundedFormula rounded = Buttercream().WithRequirement(FormulaPart.Fat, 0.3595, 0.3605).Solve().Round(RoundingGrid.Grams(100));
        Assert.Contains(rounded.Results, result => !result.IsMet);
        Assert.All(rounded.Grams, grams => Assert.Equal(Math.Round(grams / 100), grams / 100, 1e-9));
    }

    [Fact]
    public void AClosestFormulaIsRoundedAsItIs()
    {
        SolvedFormula answer = Buttercream().WithRequirement(FormulaPart.Fat, 0.42, 1).WithRequirement(FormulaPart.Sugars, 0.38, 1).WithLimit(s_table.Get("egg white"), 200).Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        RoundedFormula rounded = answer.Round(RoundingGrid.Grams(1));
        for (int j = 0; j < answer.Grams.Count; j++)
            Assert.Equal(answer.Grams[j], rounded.Grams[j], 2.0);
    }

    [Fact]
    public void StepsOutsideTheirRangeAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundingGrid.Grams(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundingGrid.Grams(double.NaN));
        Assert.Throws<ArgumentNullException>(() => RoundingGrid.Spoons(null!));
    }

    // 4 g on a grid of 10 g: nothing is left, and that is said. It threw, "a formula has at least one line".
    [Fact]
    public void AGridTooCoarseForTheFormulaLeavesNothingAndSaysSo()
    {
        RoundedFormula rounded = Read("""{"ingredient":"vanilla extract","baseGrams":2},{"ingredient":"table salt","baseGrams":2}""").Solve().Round(RoundingGrid.Grams(10));
        Assert.Null(rounded.Formula);
        Assert.All(rounded.Grams, grams => Assert.Equal(0, grams));
    }

    // Masses from a trace to thousands of tonnes, on grids from a milligram to a tonne: an answer each time, and no number that is none.
    [Theory]
    [InlineData("""{"ingredient":"egg white","baseGrams":2400000000},{"ingredient":"granulated sugar","baseGrams":400}""", 5)]
    [InlineData("""{"ingredient":"egg white","baseGrams":2400000000},{"ingredient":"granulated sugar","baseGrams":400}""", 0.001)]
    [InlineData("""{"ingredient":"egg white","baseGrams":1e-8},{"ingredient":"granulated sugar","baseGrams":5e-324}""", 5)]
    [InlineData("""{"ingredient":"egg white","baseGrams":210},{"ingredient":"granulated sugar","baseGrams":385}""", 1e6)]
    public void RoundingAnswersAtTheExtremes(string ingredients, double step)
    {
        RoundedFormula rounded = Read(ingredients).Solve().Round(RoundingGrid.Grams(step));
        Assert.All(rounded.Grams, grams => Assert.True(double.IsFinite(grams) && grams >= 0));
        Assert.True(rounded.Gap is null or >= 0, $"{rounded.Gap}");
        Assert.True(rounded.Value is not double value || double.IsFinite(value));
    }

    // A ratio to an ingredient that was rounded away is no number: it was infinite.
    [Fact]
    public void ARatioToNothingIsAbsent()
    {
        RoundedFormula rounded = FormulaProblem.StartingFrom(Formula.Of("Fennmarsh Hall", [FormulaLine.Of(s_table.Get("granulated sugar"), 100), FormulaLine.Of(s_table.Get("table salt"), 1)]))
            .WithRatioRange(s_table.Get("granulated sugar"), s_table.Get("table salt"), 90, 110).WithTotal(100).Solve().Round(RoundingGrid.Grams(10));
        DemandResult ratio = rounded.Results.Single(result => result.Demand is Demand.Ratio);
        Assert.Null(ratio.Achieved);
        Assert.Null(ratio.MissedBy);
        Assert.False(ratio.IsMet);
        Assert.Contains("there is nothing of", ratio.ToString(), StringComparison.Ordinal);
    }

    private static FormulaProblem Read(string ingredients) => FormulaProblem.ParseJson($$"""{"confectioProblem":1,"name":"Fennmarsh Hall","ingredients":[{{ingredients}}]}""", s_table);
}
