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
            FormulaLine.Of(s_table.Get("egg white"), 240), FormulaLine.Of(s_table.Get("granulated sugar"), 400),
            FormulaLine.Of(s_table.Get("unsalted butter"), 560), FormulaLine.Of(s_table.Get("table salt"), 2),
        ])).WithTarget(FormulaPart.Fat, 0.38).WithTarget(FormulaPart.Sugars, 0.33);

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(0.5)]
    public void EveryLineIsAWholeMultipleAndTheTotalStands(double step)
    {
        FormulaProblem problem = Buttercream().WithFixed(s_table.Get("table salt"), 2);
        RoundedFormula rounded = problem.Solve().Round(RoundingGrid.Grams(step));
        foreach (FormulaLine line in rounded.Formula.Lines.Where(line => line.Ingredient.Id != "salt-table"))
            Assert.Equal(Math.Round(line.Grams / step), line.Grams / step, 1e-12);
        Assert.Equal(1202, rounded.Formula.TotalGrams, step == 5 ? 5 : 1e-12 * 1202);
        Assert.True(rounded.IsProven);
        Assert.True(rounded.LowerBound <= rounded.Value + 1e-12);
    }

    [Fact]
    public void SpoonsAreNamedAndWeighWhatTheNameWeighs()
    {
        RoundedFormula rounded = Buttercream().Solve().Round(RoundingGrid.Spoons(MeasuringSystem.UsCustomary));
        foreach (FormulaLine line in rounded.Formula.Lines)
        {
            Assert.NotNull(line.AsWritten);
            // The written amount, converted anew, is the line's mass.
            FormulaLine again = FormulaLine.Of(line.Ingredient, line.AsWritten.Value, MeasuringSystem.UsCustomary);
            Assert.Equal(line.Grams, again.Grams, 1e-9);
        }
        for (int j = 0; j < rounded.Grams.Count; j++)
            Assert.Equal(rounded.Grams[j], rounded.Formula.GramsOf(s_table.All.First(food => food == Buttercream().Ingredients[j])), 1e-9);
    }

    [Fact]
    public void AGridTooCoarseForTheDemandsSaysWhatItBroke()
    {
        RoundedFormula rounded = Buttercream().WithRequirement(FormulaPart.Fat, 0.3795, 0.3805).Solve().Round(RoundingGrid.Grams(100));
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
}
