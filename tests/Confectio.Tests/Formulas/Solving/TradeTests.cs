using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Numerics;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>What the demands leave open, told as trades; each is made, and what was asked is counted again from the compositions.</summary>
public sealed class TradeTests
{
    // By hand: cream is 40 % fat and 60 % water, so 5 g of it are 2 g of fat and 3 g of water.
    private static readonly IngredientTable s_foods = Pantry.Table(("fat", 0, 100, 0, 0), ("cream", 60, 40, 0, 0), ("water", 100, 0, 0, 0), ("one", 0, 0, 0, 100), ("two", 0, 0, 0, 100));

    [Fact]
    public void CreamIsTradedForFatAndWater()
    {
        SolvedFormula answer = FormulaProblem.StartingFrom(s_foods.Formula("x", ("fat", 200), ("cream", 500), ("water", 300))).WithTarget(FormulaPart.Fat, 0.4)
            .WithLimit(s_foods.Food("cream"), 100, 600).Solve();
        Trade trade = Assert.Single(answer.DegreesOfFreedom.Trades);
        Assert.Equal(["ifat", "icream", "iwater"], trade.Ingredients.Select(food => food.Name));
        Assert.Equal([20, -50, 30], trade.Grams.Select(grams => Math.Round(grams, 9)));
        // Cream goes from 500 down to 100 g by 50 g, and up to 600 g.
        Assert.Equal(8, trade.TimesOn, 1e-9);
        Assert.Equal(2, trade.TimesBack, 1e-9);
        Assert.Equal(0, trade.BoiledOffGrams);
        Assert.Equal("20 g of ifat and 30 g of iwater for 50 g of icream: up to 400 g of icream out, where icream at least 100 g stops it; or up to 100 g of icream in, where icream at most 600 g stops it",
            trade.Sentence);
    }

    [Fact]
    public void TwoSugarsAreTradedGramForGram()
    {
        SolvedFormula answer = FormulaProblem.StartingFrom(s_foods.Formula("x", ("one", 100), ("two", 50), ("fat", 50))).WithTarget(FormulaPart.Sugars, 0.6).Solve();
        Trade trade = Assert.Single(answer.DegreesOfFreedom.Trades);
        Assert.Equal(["ione", "itwo"], trade.Ingredients.Select(food => food.Name));
        Assert.Equal(0, trade.Grams.Sum(), 1e-12);
        // All that is sugar: 120 g, and either may be all of it.
        Assert.Equal(120, Math.Abs(trade.Grams[0]) * (trade.TimesOn + trade.TimesBack), 1e-9);
    }

    [Fact]
    public void WaterIsTradedAgainstTheTimeOnTheFire()
    {
        SolvedFormula answer = FormulaProblem.StartingFrom(s_foods.Formula("x", ("one", 100), ("water", 60))).WithTotal(120).WithFixed(s_foods.Food("one"), 100)
            .WithBoilOff(20, 200).Solve();
        Assert.Equal(1, answer.DegreesOfFreedom.Count);
        Trade trade = Assert.Single(answer.DegreesOfFreedom.Trades);
        Assert.Equal("iwater", Assert.Single(trade.Ingredients).Name);
        Assert.Equal(trade.BoiledOffGrams, trade.Grams[0], 1e-9);
        Assert.Contains("of water boiled off", trade.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void WhereAllIsFixedNothingIsTraded()
    {
        SolvedFormula answer = FormulaProblem.StartingFrom(s_foods.Formula("x", ("one", 100), ("fat", 50))).WithTarget(FormulaPart.Sugars, 0.6).Solve();
        Assert.Equal(0, answer.DegreesOfFreedom.Count);
        Assert.Empty(answer.DegreesOfFreedom.Trades);
        SolvedFormula none = FormulaProblem.StartingFrom(s_foods.Formula("x", ("one", 100), ("fat", 50))).WithRequirement(FormulaPart.Sugars, 0.9, 1).WithLimit(s_foods.Food("fat"), 40).Solve();
        Assert.Equal(SolutionStatus.Impossible, none.Status);
        Assert.Empty(none.DegreesOfFreedom.Trades);
    }

    // The cost decided, and no demand did: that was told as "the demands fix every mass".
    [Fact]
    public void WhatOnlyTheCostDecidedIsOpen()
    {
        SolvedFormula answer = FormulaProblem.StartingFrom(s_foods.Formula("x", ("one", 100), ("two", 50), ("fat", 50))).WithTarget(FormulaPart.Sugars, 0.6)
            .WithCost(s_foods.Food("one"), 2).WithCost(s_foods.Food("two"), 1).Preferring(Preference.LeastCost).Solve();
        Assert.Equal([0, 120, 80], answer.Grams.Select(grams => Math.Round(grams, 9)));
        Assert.Equal(1, answer.DegreesOfFreedom.Count);
        Trade trade = Assert.Single(answer.DegreesOfFreedom.Trades);
        Assert.Equal(0, trade.TimesBack);
        Assert.Equal(120, trade.Grams[0] * trade.TimesOn, 1e-9);
        Assert.EndsWith("not the other way: no ione is left", trade.Sentence, StringComparison.Ordinal);
    }

    // Water activity is no straight line in the masses: what its slope leaves open changes it a little farther on, and is not told. Caster and
    // granulated sugar are the same sugar.
    [Fact]
    public void WhatBendsIsNotTraded()
    {
        IngredientTable table = IngredientTable.BuiltIn;
        FormulaProperty activity = SugarProperties.WaterActivity(25);
        SolvedFormula answer = FormulaProblem.StartingFrom(Formula.Of("Fennmarsh Hall syrup", [FormulaLine.Of(table.Get("granulated sugar"), 300), FormulaLine.Of(table.Get("caster sugar"), 200),
            FormulaLine.Of(table.Get("invert sugar"), 100), FormulaLine.Of(table.Get("glycerine"), 20), FormulaLine.Of(table.Get("water"), 380)])).WithPropertyTarget(activity, 0.9).Solve();
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        Assert.Contains(answer.DegreesOfFreedom.Trades, trade => trade.Ingredients.Select(food => food.Name).Order().SequenceEqual(["caster sugar", "granulated sugar"]));
        double was = SugarSolution.Of(answer.ToFormula()).WaterActivity(25).Likely;
        foreach (Trade trade in answer.DegreesOfFreedom.Trades)
        {
            foreach (double times in (double[])[trade.TimesOn, trade.TimesOn / 3, -trade.TimesBack])
            {
                double[] grams = After(answer, trade, times);
                Formula after = Formula.Of("x", answer.Problem.Ingredients.Select((food, j) => FormulaLine.Of(food, Math.Max(0, grams[j]))).Where(line => line.Grams.Likely > 0));
                Assert.Equal(was, SugarSolution.Of(after).WaterActivity(25).Likely, 1e-6);
            }
        }
    }

    // The full trial of 20 000: CONFECTIO_TRADE_CASES sets another number.
    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable("CONFECTIO_TRADE_CASES"), out int cases) ? cases : 600;

    [Fact]
    public void AfterEveryTradeWhatWasAskedIsWhatItWas()
    {
        Random random = new(20261129);
        int trades = 0, open = 0;
        List<string> wrong = [];
        for (int i = 0; i < Cases; i++)
        {
            string json = PastryProblemTests.Draw(random);
            if (FormulaProblem.ReadJson(json, IngredientTable.BuiltIn).Told(out _) is not FormulaProblem problem || problem.Solve() is not { Status: SolutionStatus.Solved } answer)
                continue;
            DegreesOfFreedom freedom = answer.DegreesOfFreedom;
            open += freedom.Count > 0 ? 1 : 0;
            Assert.InRange(freedom.Trades.Count, 0, Math.Min(3, freedom.Count));
            foreach (Trade trade in freedom.Trades)
            {
                trades++;
                double[] was = Figures(problem, [.. answer.Grams], answer.BoiledOffGrams, out _);
                foreach (double times in (double[])[trade.TimesOn, trade.TimesOn / 2, -trade.TimesBack, -trade.TimesBack / 3])
                {
                    double[] grams = After(answer, trade, times);
                    double boiled = answer.BoiledOffGrams + times * trade.BoiledOffGrams;
                    double[] figures = Figures(problem, grams, boiled, out double broken);
                    if (grams.Min() < -1e-7 * grams.Sum() || boiled < -1e-7 * grams.Sum())
                        wrong.Add($"{i}: a mass below nothing after {times} of {trade}: {json}");
                    if (broken > 1e-6)
                        wrong.Add($"{i}: {broken:g3} broken after {times} of {trade}: {json}");
                    if (was.Zip(figures).Any(pair => pair.First != pair.Second && !(Math.Abs(pair.First - pair.Second) <= 1e-6 * Math.Max(1, Math.Abs(pair.First)))))
                        wrong.Add($"{i}: {string.Join(' ', was)} became {string.Join(' ', figures)} after {times} of {trade}: {json}");
                }
                // One step farther and something gives: a mass, or what must be kept.
                double[] beyond = After(answer, trade, trade.TimesOn * 1.01);
                double above = answer.BoiledOffGrams + trade.TimesOn * 1.01 * trade.BoiledOffGrams;
                Figures(problem, beyond, above, out double gave);
                if (beyond.Min() > -1e-9 && above > -1e-9 && gave < 1e-9)
                    wrong.Add($"{i}: nothing ends {trade}: {json}");
            }
        }
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {trades}: {string.Join("\n", wrong.Take(6))}");
        Assert.True(trades > Cases / 4 && open > Cases / 8, $"{trades} trades, {open} open");
    }

    private static double[] After(SolvedFormula answer, Trade trade, double times)
    {
        double[] grams = [.. answer.Grams];
        for (int k = 0; k < trade.Ingredients.Count; k++)
            grams[answer.Problem.Ingredients.ToList().IndexOf(trade.Ingredients[k])] += times * trade.Grams[k];
        return grams;
    }

    // The share of every target, and by how much the worst of what must be kept is broken, relative to its end; from the compositions.
    private static double[] Figures(FormulaProblem problem, double[] grams, double boiledOff, out double broken)
    {
        double worst = 0;
        List<double> figures = [];
        foreach (Demand demand in problem.Demands)
        {
            double low, high, value;
            switch (demand)
            {
                case Demand.Share share:
                    (low, high, value) = (share.LowFraction, share.HighFraction, Of(share.Part) / Of(share.Of));
                    if (share.IsTarget)
                        figures.Add(value);
                    if (share.IsTarget || !double.IsFinite(value))
                        continue;
                    break;
                case Demand.IngredientMass mass:
                    (low, high, value) = (mass.LowGrams, mass.HighGrams, Of(FormulaPart.OfIngredient(mass.Ingredient)));
                    if (mass.MayBeLeftOut && value < 1e-9)
                        continue;
                    break;
                case Demand.Ratio ratio:
                    // Grams of the first beside what the second asks for: nothing of both keeps every ratio.
                    double second = Of(FormulaPart.OfIngredient(ratio.To));
                    (low, high, value) = (ratio.LowRatio * second, ratio.HighRatio * second, Of(FormulaPart.OfIngredient(ratio.Ingredient)));
                    break;
                case Demand.Total total:
                    (low, high, value) = (total.LowGrams, total.HighGrams, Of(FormulaPart.Everything));
                    break;
                case Demand.BoilOff asked:
                    (low, high, value) = (asked.LowGrams, asked.HighGrams, boiledOff);
                    break;
                default:
                    continue;
            }
            worst = Math.Max(worst, Math.Max(low - value, value - high) / Math.Max(1, Math.Abs(value)));
        }
        // A free total has ends too: from a hundredth to a hundred times of the base. And no more water boils off than there is.
        double whole = Of(FormulaPart.Everything);
        worst = Math.Max(worst, -Of(FormulaPart.Water) / Math.Max(1, whole));
        if (!problem.Demands.OfType<Demand.Total>().Any())
            worst = Math.Max(worst, Math.Max(problem.FreeRange.LowGrams - whole, whole - problem.FreeRange.HighGrams) / Math.Max(1, whole));
        broken = worst;
        return [.. figures];

        double Of(FormulaPart part)
        {
            double sum = -part.FractionOfBoiledOffWater * boiledOff;
            for (int j = 0; j < grams.Length; j++)
                sum += part.FractionIn(problem.Ingredients[j]) * grams[j];
            return sum;
        }
    }

    // Of a row of ones every pair is a direction of its own; of two rows every three are.
    [Fact]
    public void TheSimplestDirectionsAreThoseOfTheFewest()
    {
        double[][] pairs = [.. NullSpace.Of([[1, 1, 1, 1]], 4).Simplest()];
        Assert.Equal(6, pairs.Count(direction => direction.Count(value => value != 0) == 2));
        Assert.All(pairs, direction => Assert.Equal(0, direction.Sum(), 1e-12));
        double[][] threes = [.. NullSpace.Of([[1, 1, 1, 1], [1, 2, 3, 5]], 4).Simplest()];
        Assert.Equal(4, threes.Count(direction => direction.Count(value => value != 0) == 3));
        Assert.All(threes, direction => Assert.Equal(0, direction[0] + 2 * direction[1] + 3 * direction[2] + 5 * direction[3], 1e-12));
        // With 60 unknowns and six rows there are no small ones, and too many to look at: each dimension still has one.
        Random random = new(7);
        double[][] rows = [.. Enumerable.Range(0, 6).Select(_ => Enumerable.Range(0, 60).Select(_ => random.NextDouble()).ToArray())];
        double[][] all = [.. NullSpace.Of(rows, 60).Simplest()];
        Assert.Equal(54, all.Length);
        Assert.All(all, direction => Assert.All(rows, row => Assert.Equal(0, row.Zip(direction, (a, b) => a * b).Sum(), 1e-9)));
        Assert.All(all, direction => Assert.InRange(direction.Count(value => value != 0), 1, 7));
    }
}
