using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>What stands beside the masses of an answer: what the base had, what it costs, cups and spoons.</summary>
public sealed class AnswerSheetTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static FormulaProblem Syrup() => FormulaProblem.StartingFrom(Formula.Of("Fennmarsh Hall syrup",
        [FormulaLine.Of(s_table.Get("granulated sugar"), 600), FormulaLine.Of(s_table.Get("water"), 500)], 100));

    // By hand: 600 g of sugar of 99.8 % sucrose in 1000 g are 59.88 %, and that is what the base had, whatever is asked.
    [Fact]
    public void WhatTheBaseHadStandsBesideWhatWasAsked()
    {
        SolvedFormula answer = Syrup().WithTarget(FormulaPart.Sugars, 0.5).WithBoilOff(0, 300).Solve();
        Assert.Equal([1000, 0.5988, 100], answer.BaseResults.Select(result => Math.Round(result.Achieved!.Value, 6)));
        Assert.False(answer.BaseResults[1].IsMet);
        Assert.Empty(FormulaProblem.Of("x", 100, [s_table.Get("water")]).Solve().BaseResults);
    }

    // Missing is not zero: without a price there is no cost, and what has none is named; a price of 0 is a price.
    [Fact]
    public void WhatHasNoPriceIsNamed()
    {
        Ingredient sugar = s_table.Get("granulated sugar"), water = s_table.Get("water");
        Assert.Null(Syrup().Solve().FullCost);
        Assert.Null(Syrup().Solve().BaseCost);
        FormulaCost some = Syrup().WithCost(sugar, 2).Solve().FullCost!;
        Assert.Equal((1.2, 1.2), (Math.Round(some.Total, 9), Math.Round(some.PerKilogram, 9))); // 600 g at 2 the kilogram, and it makes 1000 g
        Assert.Equal([water], some.WithoutPrice);
        Assert.Equal("1.20, 1.20 the kilogram, without water", some.ToString());
        Assert.Empty(Syrup().WithCost(sugar, 2).WithCost(water, 0).Solve().FullCost!.WithoutPrice);
        SolvedFormula changed = Syrup().WithCost(sugar, 2).WithTarget(FormulaPart.Sugars, 0.499).WithBoilOff(0, 300).Solve();
        Assert.Equal(1.2, changed.BaseCost!.Total, 1e-9);
        Assert.Equal(1.0, changed.FullCost!.Total, 1e-6); // 500 g of sugar
        Assert.Equal(1.0, changed.Round(RoundingGrid.Grams(5)).FullCost!.Total, 0.011);
    }

    // A US cup is 236.588 mL (NIST Handbook 44), and the table's granulated sugar about 200 g of it; whatever is said holds what it says.
    [Fact]
    public void CupsHoldWhatTheySay()
    {
        Ingredient sugar = s_table.Get("granulated sugar");
        LineMeasure cup = LineMeasure.Of(sugar, Conversion.Of(sugar, MeasuringSystem.UsCustomary).ToMass(236.588).Grams.Likely, MeasuringSystem.UsCustomary)!;
        Assert.Equal(Amount.Of(1, KitchenUnit.Cup), cup.Amount);
        int found = 0;
        foreach (Ingredient food in s_table.All.Where(food => food.Densities.Count > 0))
        {
            foreach (double grams in (double[])[0.3, 2, 35, 185, 470, 1500])
            {
                if (LineMeasure.Of(food, grams, MeasuringSystem.Metric) is not LineMeasure measure)
                    continue;
                found++;
                Assert.Equal(grams, measure.Grams, 0.05 * grams * (1 + 1e-9));
                Assert.Equal(FormulaLine.Of(food, measure.Amount, MeasuringSystem.Metric).Grams.Likely, measure.Grams, 1e-9 * grams);
            }
        }
        Assert.True(found > 500, $"{found}");
        // Nobody weighed a cup of it; nothing; a tonne.
        Assert.Null(LineMeasure.Of(s_table.All.First(food => food.Densities.Count == 0), 100, MeasuringSystem.Metric));
        Assert.Null(LineMeasure.Of(sugar, 0, MeasuringSystem.Metric));
        Assert.Null(LineMeasure.Of(sugar, 1e12, MeasuringSystem.Metric));
        Assert.Throws<ArgumentOutOfRangeException>(() => LineMeasure.Of(sugar, double.NaN, MeasuringSystem.Metric));
    }

    [Fact]
    public void TheProofSaysWhatIsProved()
    {
        const string Head = "Proved: no formula of these ingredients that keeps what must be kept ";
        Assert.Equal(Head + "is nearer to the formula it started from.", Syrup().Solve().Certificate!.Sentence);
        FormulaProblem asked = Syrup().WithTarget(FormulaPart.Sugars, 0.5).WithBoilOff(0, 300);
        Assert.Equal(Head + "meets the targets better, and of those that meet them as well none is nearer to the formula it started from.", asked.Solve().Certificate!.Sentence);
        Assert.Equal(Head + "meets the targets better, and of those that meet them as well none costs less.",
            asked.WithCost(s_table.Get("granulated sugar"), 1).Preferring(Preference.LeastCost).Solve().Certificate!.Sentence);
        // Without prices nothing is cheaper than anything, and nothing is said of cost.
        Assert.DoesNotContain("costs", asked.Preferring(Preference.LeastCost).Solve().Certificate!.Sentence, StringComparison.Ordinal);
        Assert.Contains("together", asked.TradingCloseness().Solve().Certificate!.Sentence, StringComparison.Ordinal);
        // Shares of what moves: far away another formula may meet them as well.
        Assert.Equal(Head + "meets the targets better.", Syrup().WithTarget(FormulaPart.Sugars, 0.5, FormulaPart.Water).WithBoilOff(0, 300).Solve().Certificate!.Sentence);
    }
}
