using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>Formulas from labels: truth known, label made from it by rounding.</summary>
public sealed class LabelEstimateTests
{
    private static readonly FormulaPart[] s_parts = [FormulaPart.Fat, FormulaPart.Sugars, FormulaPart.Protein, FormulaPart.Water];

    [Theory]
    [InlineData(1)]
    [InlineData(0.1)]
    [InlineData(0.01)]
    public void TheTruthIsWithinTheRange(double unit)
    {
        Random random = new(3);
        IReadOnlyList<Ingredient> foods = Pantry.StandardReference.All;
        for (int i = 0; i < 150; i++)
        {
            Ingredient[] chosen = [.. foods.OrderBy(_ => random.Next()).Take(random.Next(1, 6))];
            double[] truth = [.. chosen.Select(_ => random.NextDouble() + 0.01).OrderDescending()];
            double sum = truth.Sum();
            truth = [.. truth.Select(share => 100 * share / sum)];
            LabelFigure[] label = [.. s_parts.Select(part => LabelFigure.Of(part,
                Math.Clamp(Math.Round(chosen.Select((food, j) => part.FractionIn(food) * truth[j]).Sum() / unit) * unit, 0, 100), unit))];
            LabelEstimate estimate = LabelEstimate.Of(chosen, label, compositionsVary: false);
            Assert.True(estimate.Fits, $"{i}");
            for (int j = 0; j < chosen.Length; j++)
            {
                Spread range = estimate.Shares[j].Range!.Value;
                Assert.True(truth[j] >= range.Low - 1e-6 && truth[j] <= range.High + 1e-6, $"{i}: {estimate.Shares[j]}, truth {truth[j]}");
                Assert.True(j == 0 || estimate.Shares[j].Percent <= estimate.Shares[j - 1].Percent + 1e-9);
            }
            Assert.Equal(100, estimate.Shares.Sum(share => share.Percent), 1e-9);
        }
    }

    [Fact]
    public void CompositionsThatVaryWidenTheRange()
    {
        IngredientTable foods = Pantry.StandardReference;
        Ingredient[] list = [foods.Food("19335"), foods.Food("19350"), foods.Food("01053")];
        LabelFigure[] label = [LabelFigure.Of(FormulaPart.Fat, 7.4, 0.1), LabelFigure.Of(FormulaPart.Sugars, 73.5, 0.1)];
        Spread narrow = LabelEstimate.Of(list, label, compositionsVary: false).Shares[2].Range!.Value, wide = LabelEstimate.Of(list, label).Shares[2].Range!.Value;
        Assert.True(wide.Low < narrow.Low && wide.High > narrow.High, $"{narrow} {wide}");
    }

    [Fact]
    public void ALabelThatNoFormulaFitsIsSaid()
    {
        IngredientTable foods = Pantry.StandardReference;
        // More fat than any of them has.
        LabelEstimate estimate = LabelEstimate.Of([foods.Food("19335"), foods.Food("01053")], [LabelFigure.Of(FormulaPart.Fat, 60, 1)]);
        Assert.False(estimate.Fits);
        Assert.All(estimate.Shares, share => Assert.Null(share.Range));
        Assert.True(estimate.Misses[0] < 0);
    }

    [Fact]
    public void WaterThatBoiledOffIsFoundToo()
    {
        // Syrup: 70 sugar and 60 water boiled down to 100 g hold 0.998 x 70 of sugar and the rest water.
        IngredientTable foods = Pantry.StandardReference;
        LabelEstimate estimate = LabelEstimate.Of([foods.Food("19335"), foods.Food("14429")],
            [LabelFigure.Of(FormulaPart.Sugars, 69.9, 0.1), LabelFigure.Of(FormulaPart.Water, 30, 0.1)], mostBoiledOffPercent: 50, compositionsVary: false);
        Assert.True(estimate.Fits);
        Assert.True(estimate.Shares[0].Range!.Value.Contains(70));
        Assert.True(estimate.Shares[1].Range!.Value.Contains(60));
    }

    [Fact]
    public void BadLabelsAreRefused()
    {
        Ingredient sugar = Pantry.StandardReference.Food("19335");
        LabelFigure figure = LabelFigure.Of(FormulaPart.Sugars, 99, 1);
        Assert.Throws<ArgumentOutOfRangeException>(() => LabelFigure.Of(FormulaPart.Sugars, 101, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => LabelFigure.Of(FormulaPart.Sugars, double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => LabelFigure.Of(FormulaPart.Sugars, 10, 0));
        Assert.Throws<ArgumentException>(() => LabelEstimate.Of([], [figure]));
        Assert.Throws<ArgumentException>(() => LabelEstimate.Of([sugar, sugar], [figure]));
        Assert.Throws<ArgumentException>(() => LabelEstimate.Of([sugar], []));
        Assert.Throws<ArgumentOutOfRangeException>(() => LabelEstimate.Of([sugar], [figure], mostBoiledOffPercent: -1));
    }

    // A null among the figures or the ingredients is named; it was a null reference.
    [Fact]
    public void ANullInAListIsNamed()
    {
        Ingredient sugar = IngredientTable.BuiltIn.Get("granulated sugar");
        Assert.Throws<ArgumentException>("figures", () => LabelEstimate.Of([sugar], [null!]));
        Assert.Throws<ArgumentException>("ingredients", () => LabelEstimate.Of([sugar, null!], [LabelFigure.Of(FormulaPart.Fat, 60, 1)]));
    }
}
