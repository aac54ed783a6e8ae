using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>
/// Problems over USDA SR28 compositions whose answers were found in exact rational arithmetic: the optimality system solved and
/// every sign and feasibility condition checked with fractions. They go through the public builder here; the same problems as bare
/// matrices are in Numerics/FormulaMatrixTests.
/// </summary>
public sealed class GoldenFormulaTests
{
    private const double NanoGram = 1e-9;

    private static readonly IngredientTable s_foods = Pantry.StandardReference;

    private static Ingredient Food(string number) => s_foods.Food(number);

    private static Formula Ganache() =>
        s_foods.Formula("ganache", ("19903", 480), ("01053", 400), ("01145", 40), ("19350", 50), ("19296", 30));

    internal static FormulaProblem GanacheWithinLimits() => FormulaProblem.StartingFrom(Ganache())
        .WithLimit(Food("19903"), 300, 600).WithLimit(Food("01053"), 200, 420).WithLimit(Food("01145"), 0, 60)
        .WithLimit(Food("19350"), 0, 80).WithLimit(Food("19296"), 0, 40);

    internal static FormulaProblem F1() => GanacheWithinLimits()
        .WithTarget(FormulaPart.Fat, 0.36).WithTarget(FormulaPart.Sugars, 0.30).WithTarget(FormulaPart.Water, 0.23).TradingCloseness(0.04);

    private static void AssertGrams(double[] expected, SolvedFormula answer)
    {
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        for (int j = 0; j < expected.Length; j++)
            Assert.True(Math.Abs(expected[j] - answer.Grams[j]) <= NanoGram, $"{answer.Problem.Ingredients[j]}: {answer.Grams[j]:R}, expected {expected[j]:R}");
        Assert.True(answer.Certificate!.Holds);
    }

    [Fact]
    public void GanacheTradesClosenessAgainstTargets()
    {
        SolvedFormula answer = F1().Solve();
        AssertGrams([511.5745643535054740989, 319.0747108243448513961, 49.35072482214967450498, 80, 40], answer);
        Assert.Equal(["i19350 at most 80 g", "i19296 at most 40 g"], answer.Binding.Select(binding => binding.ToString()));
        Assert.All(answer.Binding, binding => Assert.True(binding.CostsTargets));
        Assert.Equal(0.3542302315120811431348, answer.Results.Single(result => (result.Demand as Demand.Share)?.Part == FormulaPart.Fat).Achieved!.Value, 1e-12);
        Assert.True(answer.Certificate!.CertainToGrams < 0.001);
        Assert.Equal(0, answer.DegreesOfFreedom.Count);
    }

    [Fact]
    public void CustardMeetsItsTargetsAndStaysNearestToItsBase()
    {
        Formula custard = s_foods.Formula("custard",
            ("01077", 500), ("01053", 220), ("01091", 30), ("19335", 140), ("19350", 30), ("01125", 60), ("14429", 20));
        FormulaProblem problem = FormulaProblem.StartingFrom(custard)
            .WithLimit(Food("01077"), 0, 1000).WithLimit(Food("01053"), 0, 400).WithLimit(Food("01091"), 0, 60).WithLimit(Food("19335"), 0, 200)
            .WithLimit(Food("19350"), 0, 60).WithLimit(Food("01125"), 40, 80).WithLimit(Food("14429"), 0, 100)
            .WithTarget(FormulaPart.Fat, 0.12).WithTarget(FormulaPart.Sugars, 0.20).WithTarget(FormulaPart.Protein, 0.038);
        SolvedFormula answer = problem.Solve();
        AssertGrams(
            [497.9884618318507704642, 241.7548206841785767517, 24.67249203339141899506, 132.3390699131478533175, 29.84187859399360439083, 53.18925919922259015356, 20.21401774421518592719],
            answer);
        Assert.Empty(answer.Binding);
        // Seven lines, a total and three targets: three ways are left, which the base alone decides.
        Assert.Equal(3, answer.DegreesOfFreedom.Count);
        Assert.All(answer.Results.Where(result => result.Demand is Demand.Share { IsTarget: true }), result => Assert.Equal(0, result.MissedBy!.Value, 1e-14));
    }

    [Fact]
    public void FudgeFindsItsOwnBoilOff()
    {
        Formula fudge = Formula.Of("fudge",
            new (string Number, double Grams)[] { ("19335", 450), ("19350", 120), ("01053", 260), ("01095", 200), ("01145", 60), ("02047", 4), ("19165", 40) }
                .Select(line => FormulaLine.Of(Food(line.Number), line.Grams)), boiledOffGrams: 134);
        SolvedFormula answer = FormulaProblem.StartingFrom(fudge).WithBoilOff(0, 400)
            .WithLimit(Food("19335"), 0, 600).WithLimit(Food("19350"), 0, 200).WithLimit(Food("01053"), 0, 400).WithLimit(Food("01095"), 0, 300)
            .WithLimit(Food("01145"), 0, 120).WithLimit(Food("02047"), 0, 10).WithLimit(Food("19165"), 0, 60)
            .WithFixed(Food("02047"), 5).WithRatio(Food("19335"), Food("19350"), 4).WithRequirement(FormulaPart.Water, 0.08, 0.09)
            .WithTarget(FormulaPart.Sugars, 0.62).WithTarget(FormulaPart.Fat, 0.15).WithTarget(FormulaPart.Protein, 0.028)
            .TradingCloseness(0.01).Solve();
        AssertGrams([393.4971307217168908139, 98.37428268042922270348, 375.8251593837884501287, 300, 0, 5, 60], answer);
        Assert.Equal(232.6965727859345636461, answer.BoiledOffGrams, NanoGram);
        Assert.Equal(0.09, answer.Results.Single(result => result.Demand is Demand.Share { IsTarget: false }).Achieved!.Value, 1e-14);
        // The exact active set is the water's high end, the condensed milk's and the cocoa's; the ratio holds by its nature.
        Assert.Equal(["i01095 at most 300 g", "i19165 at most 60 g", "i19335 4 times i19350", "water at most 9 %"],
            answer.Binding.Select(binding => binding.ToString()).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void FatAndWaterThatCannotBothBeMetAreNamedWithTheLimitsToBlame()
    {
        FormulaProblem problem = GanacheWithinLimits().WithRequirement(FormulaPart.Fat, 0.40, 1).WithRequirement(FormulaPart.Water, 0.33, 1);
        SolvedFormula answer = problem.Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        Assert.Null(answer.Certificate);
        ConflictingDemands conflict = answer.Conflict!;
        // Irreducible: leave any one out and the others can be met; leave all others out and these still collide.
        foreach (Demand left in conflict.Demands)
            Assert.Equal(SolutionStatus.Solved, Keeping(problem, conflict.Demands.Where(demand => demand != left)).Solve().Status);
        Assert.Equal(SolutionStatus.Impossible, Keeping(problem, conflict.Demands).Solve().Status);
        // The least total violation, by a linear programme solved elsewhere: 6.849953450538 points, all of them water.
        Assert.Equal(-0.06849953450537918, answer.Results.Single(result => (result.Demand as Demand.Share)?.Part == FormulaPart.Water).MissedBy!.Value, 1e-12);
        Assert.Equal(0, answer.Results.Single(result => (result.Demand as Demand.Share)?.Part == FormulaPart.Fat).MissedBy!.Value, 1e-12);
        double[] closest = [511.3985830490685, 420, 60, 8.60141695093148, 0];
        for (int j = 0; j < closest.Length; j++)
            Assert.Equal(closest[j], answer.Grams[j], NanoGram);
        Assert.EndsWith("cannot all be met", conflict.Sentence, StringComparison.Ordinal);
    }

    private static FormulaProblem Keeping(FormulaProblem problem, IEnumerable<Demand> demands)
    {
        FormulaProblem kept = FormulaProblem.StartingFrom(Ganache());
        HashSet<Demand> wanted = [.. demands];
        if (!wanted.Any(demand => demand is Demand.Total))
            kept = kept.WithFreeTotal();
        foreach (Demand demand in problem.Demands.Where(wanted.Contains))
        {
            kept = demand switch
            {
                Demand.IngredientMass mass => kept.WithLimit(mass.Ingredient, Math.Max(0, mass.LowGrams), Math.Min(1e12, mass.HighGrams)),
                Demand.Share share => kept.WithRequirement(share.Part, share.LowFraction, Math.Min(share.HighFraction, 1), share.Of),
                _ => kept,
            };
        }
        return kept;
    }

    [Fact]
    public void LabelGivesTheFormulaBackWithinItsRounding()
    {
        // Truth 40/30/20/9.5/0.5; a label rounded to 0.1 g moves it by up to 1.4 points.
        double[] truth = [40, 30, 20, 9.5, 0.5];
        IngredientTable foods = Pantry.StandardReference;
        // Carbohydrate is a figure of this label; it is what is neither water, fat, protein nor ash, here kept as starch beside sugars.
        LabelEstimate estimate = LabelEstimate.Of(
            [foods.Food("19335"), foods.Food("19350"), foods.Food("01053"), foods.Food("01145"), foods.Food("02047")],
            [LabelFigure.Of(FormulaPart.Fat, 15.2, 0.1), LabelFigure.Of(FormulaPart.Sugars, 63.5, 0.1), LabelFigure.Of(FormulaPart.Protein, 0.5, 0.1), LabelFigure.Of(FormulaPart.Water, 20.1, 0.1)],
            compositionsVary: false);
        Assert.True(estimate.Fits);
        for (int j = 0; j < truth.Length; j++)
        {
            LabelShare share = estimate.Shares[j];
            Assert.True(share.Range!.Value.Contains(truth[j]), $"{share}, truth {truth[j]}");
            Assert.True(Math.Abs(share.Percent - truth[j]) < 1.5, $"{share}, truth {truth[j]}");
        }
        Assert.All(estimate.Misses, miss => Assert.Equal(0, miss, 1e-9));
    }

    [Fact]
    public void LeastCostIsTheLinearProgrammesAnswer()
    {
        // The prices are invented, per kilogram; the cost and its duals were found in exact arithmetic and by GLPK, GLOP and HiGHS.
        (string Number, double Price, double Most)[] lines = [("19903", 14, 600), ("01053", 6.2, 420), ("01145", 9.5, 100), ("19350", 3.5, 120), ("19296", 9, 60), ("01095", 5.5, 300)];
        FormulaProblem problem = FormulaProblem.Of("cheapest", 1000, lines.Select(line => Food(line.Number)));
        foreach ((string number, double price, double most) in lines)
            problem = problem.WithCost(Food(number), price).WithLimit(Food(number), 0, most);
        SolvedFormula answer = problem.WithRequirement(FormulaPart.Fat, 0.34, 0.38).WithRequirement(FormulaPart.Water, 0.19, 0.23)
            .WithRequirement(FormulaPart.Sugars, 0, 0.34).WithRequirement(FormulaPart.Protein, 0.038, 1).Preferring(Preference.LeastCost).Solve();
        AssertGrams([402.8029930911991627990, 252.7209672992788971562, 100, 120, 0, 124.4760396095219400448], answer);
        Assert.Equal(9.260730118384688111801, answer.Cost, 1e-12);
        Assert.Null(answer.Certificate!.CertainToGrams);
    }

    [Theory]
    // The brute force was run in floating point, which is good to some 5e-13 here; in fractions it is 0.7741578388888889.
    [InlineData(5, 0.7741578388893231, 510, 320, 50, 80, 40)]
    [InlineData(10, 0.7741578388893231, 510, 320, 50, 80, 40)]
    [InlineData(1, 0.770556900194606, 512, 319, 49, 80, 40)]
    public void RoundingIsTheBestOfAllByBruteForce(double step, double objective, double chocolate, double cream, double butter, double syrup, double honey)
    {
        double[] grams = [chocolate, cream, butter, syrup, honey];
        RoundedFormula rounded = F1().Solve().Round(RoundingGrid.Grams(step));
        Assert.True(rounded.IsProven);
        Assert.Equal(grams, rounded.Grams);
        // The objective of the brute force, written out here: misses in tolerances, and changes in halves of the base mass.
        FormulaProblem problem = F1();
        double sum = rounded.Results.Where(result => result.Demand is Demand.Share { IsTarget: true })
            .Sum(result => Math.Pow(result.MissedBy!.Value / ((Demand.Share)result.Demand).Tolerance!.Value, 2));
        for (int j = 0; j < grams.Length; j++)
        {
            double based = problem.BaseGramsOf(problem.Ingredients[j]);
            sum += problem.Closeness * Math.Pow((grams[j] - based) / (0.5 * Math.Max(based, 1)), 2);
        }
        Assert.Equal(objective, sum / 2, 1e-12);
    }
}
