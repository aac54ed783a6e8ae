using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>What a formula developer asks besides shares: grams of a part. The judge is arithmetic on the compositions, or the same said as shares.</summary>
public sealed class AskTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static FormulaProblem Start(params (string Name, double Grams)[] lines) => FormulaProblem.StartingFrom(
        Formula.Of("x", lines.Select(line => FormulaLine.Of(s_table.Get(line.Name), line.Grams))));

    private static double Grams(SolvedFormula answer, FormulaPart part) =>
        answer.Problem.Ingredients.Zip(answer.Grams, (food, grams) => part.FractionIn(food) * grams).Sum();

    [Fact]
    public void TwoFloursTogetherKeepWithinGrams()
    {
        FormulaPart flours = FormulaPart.OfIngredients("all flours", s_table.Get("cake flour"), s_table.Get("all-purpose flour"));
        SolvedFormula answer = Start(("cake flour", 250), ("all-purpose flour", 250), ("granulated sugar", 300), ("egg", 200))
            .WithMass(flours, 300, 350).Solve();
        // The nearest to the base takes both flours down alike.
        Assert.Equal([175, 175], answer.Grams.Take(2).Select(grams => Math.Round(grams, 8)));
        Assert.Equal("all flours at most 350 g", Assert.Single(answer.Binding).ToString());
        Assert.Equal("all flours from 300 to 350 g: 350 g", answer.Results[^1].ToString());
    }

    [Fact]
    public void GramsOfAFixedTotalAreTheShareOfIt()
    {
        // With a given total so many grams are so large a share: the same problem said twice has one answer.
        Random random = new(20261206);
        FormulaPart[] parts = [FormulaPart.Fat, FormulaPart.Sugars, FormulaPart.Water];
        for (int i = 0; i < 300; i++)
        {
            (string, double)[] lines = [.. new[] { "heavy cream", "unsalted butter", "granulated sugar", "cocoa powder", "egg" }.Select(name => (name, 20 + 300 * random.NextDouble()))];
            double total = lines.Sum(line => line.Item2);
            FormulaProblem inGrams = Start(lines), inShares = inGrams;
            foreach (FormulaPart part in parts)
            {
                double at = 0.05 + 0.3 * random.NextDouble(), width = 0.1 * random.NextDouble();
                (inGrams, inShares) = random.Next(3) switch
                {
                    0 => (inGrams.WithMass(part, at * total, (at + width) * total), inShares.WithRequirement(part, at, at + width)),
                    1 => (inGrams.WithMassTarget(part, at * total, (at + width) * total), inShares.WithTargetRange(part, at, at + width)),
                    _ => (inGrams, inShares),
                };
            }
            SolvedFormula one = inGrams.Solve(), other = inShares.Solve();
            Assert.Equal(other.Status, one.Status);
            Assert.All(one.Grams.Zip(other.Grams), pair => Assert.Equal(pair.Second, pair.First, 1e-6));
            Assert.Equal(other.Conflict?.Demands.Count, one.Conflict?.Demands.Count);
        }
    }

    [Fact]
    public void AFreeTotalGrowsToTheGramsThatAreAsked()
    {
        // 120 g of fat of butter at 81.11 % (USDA SR 28, NDB 01145) is 147.95 g of it; sugar has none.
        SolvedFormula answer = Start(("unsalted butter", 100), ("granulated sugar", 100)).WithFreeTotal().WithMass(FormulaPart.Fat, 120).Solve();
        Assert.Equal(120 / 0.8111, answer.Grams[0], 1e-6);
        Assert.Equal(120, Grams(answer, FormulaPart.Fat), 1e-9);
        // Ten thousand times what the base has of it is out of no range.
        SolvedFormula large = Start(("unsalted butter", 1), ("granulated sugar", 1)).WithFreeTotal().WithMass(FormulaPart.Fat, 12000).Solve();
        Assert.Equal(12000, Grams(large, FormulaPart.Fat), 1e-6);
    }

    [Fact]
    public void GramsThatCannotBeHadCollideAndTheClosestFormulaComesNear()
    {
        SolvedFormula answer = Start(("unsalted butter", 300), ("granulated sugar", 100)).WithLimit(s_table.Get("unsalted butter"), 0, 200)
            .WithMass(FormulaPart.Fat, 180).Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        Assert.Equal("fat at least 180 g and unsalted butter at most 200 g cannot all be met", answer.Conflict!.Sentence);
        Assert.Equal(200, answer.Grams[0], 1e-6);
    }

    [Fact]
    public void RoundingKeepsTheGramsOfAPart()
    {
        FormulaProblem problem = Start(("heavy cream", 211), ("semisweet chocolate chips", 307), ("unsalted butter", 53)).WithMass(FormulaPart.Fat, 222, 224);
        RoundedFormula rounded = problem.Solve().Round(RoundingGrid.Grams(5));
        Assert.InRange(problem.Ingredients.Zip(rounded.Grams, (food, grams) => food.Composition[Constituent.Fat] * grams).Sum(), 222, 224);
        Assert.All(rounded.Results, result => Assert.True(result.IsMet || result.IsAsNearAsSteps, result.ToString()));
    }

    [Fact]
    public void WhatBoilsOffComesOffTheRoundedSharesWheneverTheTotalWasAsked()
    {
        // The same problem with its total asked first or last is rounded to the same.
        FormulaProblem first = Start(("heavy cream", 303), ("granulated sugar", 402), ("glucose syrup", 97)).WithTotal(650).WithBoilOff(0, 300)
            .WithTarget(FormulaPart.Water, 0.12).WithMass(FormulaPart.Water, 60, 90);
        FormulaProblem last = first.WithTotal(650);
        Assert.IsType<Demand.Total>(last.Demands[^1]);
        RoundedFormula one = first.Solve().Round(RoundingGrid.Grams(10)), other = last.Solve().Round(RoundingGrid.Grams(10));
        Assert.Equal(one.Grams, other.Grams);
        Assert.InRange(Math.Abs(first.Ingredients.Zip(one.Grams, (food, grams) => food.Composition[Constituent.Water] * grams).Sum() - one.BoiledOffGrams - 78), 0, 3.25);
    }

    [Fact]
    public void GramsInAFileAreGramsInTheProblem()
    {
        FormulaProblem read = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"cake flour","baseGrams":250},{"ingredient":"all-purpose flour","baseGrams":250},{"ingredient":"unsalted butter","baseGrams":300}],
            "groups":[{"name":"all flours","ingredients":["cake flour","all-purpose flour"]}],
            "requirements":[{"part":"all flours","lowGrams":300,"highGrams":350},{"part":"fat","lowGrams":120}],
            "targets":[{"part":"water","grams":90,"toleranceGrams":2,"priority":2}]}
            """, s_table);
        Assert.Equal(["a total of 800 g", "water 90 g", "all flours from 300 to 350 g", "fat at least 120 g"], read.Demands.Select(demand => demand.Sentence));
        Demand.PartMass target = read.Demands.OfType<Demand.PartMass>().First(mass => mass.IsTarget);
        Assert.Equal((2, 2), (target.ToleranceGrams, target.Priority));
    }

    [Fact]
    public void BadGramsAreRefusedByName()
    {
        FormulaProblem problem = Start(("unsalted butter", 100), ("granulated sugar", 100));
        Assert.Throws<ArgumentOutOfRangeException>("lowGrams", () => problem.WithMass(FormulaPart.Fat, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("highGrams", () => problem.WithMass(FormulaPart.Fat, 350, 300));
        Assert.Throws<ArgumentOutOfRangeException>("toleranceGrams", () => problem.WithMassTarget(FormulaPart.Fat, 10, 20, 0));
        Assert.Throws<ArgumentException>("part", () => problem.WithMass(FormulaPart.Alcohol, 1));
    }
}
