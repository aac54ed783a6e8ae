using System.Globalization;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>What may be asked, what is refused, and what an answer says of itself.</summary>
public sealed class FormulaProblemTests
{
    private static readonly IngredientTable s_foods = Pantry.StandardReference;
    private static readonly Ingredient s_chocolate = s_foods.Food("19903"), s_cream = s_foods.Food("01053"), s_butter = s_foods.Food("01145"), s_sugar = s_foods.Food("19335");

    private static FormulaProblem Start() => FormulaProblem.StartingFrom(s_foods.Formula("test", ("19903", 500), ("01053", 400), ("01145", 100)));

    public static TheoryData<string, Func<FormulaProblem>> Refused => new()
    {
        { "fraction was NaN", () => Start().WithTarget(FormulaPart.Fat, double.NaN) },
        { "from 0 to 1", () => Start().WithTarget(FormulaPart.Fat, 36) },
        { "high was 0.2; it must be from 0.3 to 1", () => Start().WithTargetRange(FormulaPart.Fat, 0.3, 0.2) },
        { "tolerance was 0; it must be from 1E-06 to 1", () => Start().WithTarget(FormulaPart.Fat, 0.3, tolerance: 0) },
        { "priority was 5; it must be from 1 to 4", () => Start().WithTarget(FormulaPart.Fat, 0.3, priority: 5) },
        { "highGrams was 10; it must be from 20", () => Start().WithLimit(s_cream, 20, 10) },
        { "lowGrams was -1", () => Start().WithLimit(s_cream, -1, 10) },
        { "lowGrams was -∞", () => Start().WithLimit(s_cream, double.NegativeInfinity, 10) },
        { "'i19335' is not one of the ingredients of the problem", () => Start().WithLimit(s_sugar, 0, 10) },
        { "is in the problem already", () => Start().WithIngredient(s_cream) },
        { "is the ingredient itself; a ratio needs two", () => Start().WithRatio(s_cream, s_cream, 1) },
        { "totalGrams was 0", () => FormulaProblem.Of("x", 0, [s_cream]) },
        { "none of the 3 ingredients holds any", () => Start().WithTarget(FormulaPart.Of(Constituent.Alcohol), 0.1) },
        { "weight was Infinity", () => Start().TradingCloseness(double.PositiveInfinity) },
        { "highGrams was NaN", () => Start().WithBoilOff(0, double.NaN) },
        { "perKilogram was -1", () => Start().WithCost(s_cream, -1) },
        { "is not one of the Preference values", () => Start().Preferring((Preference)7) },
    };

    [Theory]
    [MemberData(nameof(Refused), DisableDiscoveryEnumeration = true)]
    public void ABadDemandIsRefusedByNameValueAndRange(string words, Func<FormulaProblem> ask)
    {
        ArgumentException refused = Assert.ThrowsAny<ArgumentException>(ask);
        Assert.Contains(words.Replace("∞", "Infinity", StringComparison.Ordinal), refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AProblemIsNotChangedByAskingMoreOfIt()
    {
        FormulaProblem start = Start();
        start.WithTarget(FormulaPart.Fat, 0.3).WithLimit(s_cream, 0, 10).WithFreeTotal();
        Assert.IsType<Demand.Total>(Assert.Single(start.Demands));
    }

    [Fact]
    public void WithoutDemandsTheAnswerIsTheBase()
    {
        SolvedFormula answer = Start().Solve();
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        Assert.Equal([500, 400, 100], answer.Grams.Select(grams => Math.Round(grams, 9)));
        Assert.Equal(2, answer.DegreesOfFreedom.Count);
        Assert.Empty(answer.Binding);
    }

    [Fact]
    public void ALimitWithOneEndIsSaidWithOne()
    {
        FormulaProblem problem = Start().WithLimit(s_cream, 20).WithLimit(s_butter, 0, 60).WithLimit(s_chocolate, 300, 600);
        Assert.Equal(["a total of 1000 g", "i01053 at least 20 g", "i01145 at most 60 g", "i19903 from 300 to 600 g"], problem.Demands.Select(demand => demand.Sentence));
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("fa-IR")]
    public void SentencesAreTheSameInEveryCulture(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            FormulaProblem problem = Start().WithTarget(FormulaPart.Fat, 0.3625).WithRatioRange(s_cream, s_butter, 0.5, 1.5);
            Assert.Equal("fat 36.25 %", problem.Demands[1].Sentence);
            Assert.Equal("i01053 from 0.5 to 1.5 times i01145", problem.Demands[2].Sentence);
            Assert.Equal("fat 36.25 %: 38.31 % (2.06 above)", problem.Solve().Results[1].ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void TwoLimitsOnOneIngredientThatCrossCollide()
    {
        SolvedFormula answer = Start().WithLimit(s_cream, 450, 500).WithLimit(s_cream, 0, 300).Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        Assert.Equal("i01053 at least 450 g and i01053 at most 300 g cannot all be met", answer.Conflict!.Sentence);
        // The closest lies between them.
        Assert.InRange(answer.GramsOf(s_cream), 300 - 1e-6, 450 + 1e-6);
    }

    [Fact]
    public void AnEarlierPriorityIsNeverWorseForALaterOne()
    {
        FormulaProblem first = Start().WithTarget(FormulaPart.Fat, 0.60, priority: 1).WithLimit(s_butter, 0, 300);
        FormulaProblem both = first.WithTarget(FormulaPart.Sugars, 0.30, priority: 2);
        DemandResult alone = first.Solve().Results.Single(result => result.Demand is Demand.Share { IsTarget: true });
        DemandResult[] together = [.. both.Solve().Results.Where(result => result.Demand is Demand.Share { IsTarget: true })];
        Assert.Equal(alone.Achieved!.Value, together[0].Achieved!.Value, 1e-12);
        // The sugars then get the most that is left: chocolate, for butter is at its limit and fat is what it is.
        DemandResult sugarsFirst = first.WithTarget(FormulaPart.Sugars, 0.30, priority: 1).Solve().Results[^1];
        Assert.True(Math.Abs(sugarsFirst.MissedBy!.Value) <= Math.Abs(together[1].MissedBy!.Value) + 1e-12);
    }

    [Fact]
    public void ATargetRangeCostsNothingInside()
    {
        SolvedFormula inside = Start().WithTargetRange(FormulaPart.Fat, 0.35, 0.50).Solve();
        Assert.Equal([500, 400, 100], inside.Grams.Select(grams => Math.Round(grams, 6)));
        SolvedFormula outside = Start().WithTargetRange(FormulaPart.Fat, 0.45, 0.50).Solve();
        Assert.Equal(0.45, outside.Results[^1].Achieved!.Value, 1e-9);
    }

    [Fact]
    public void AShareOfAPhaseIsAShareOfThatPhase()
    {
        // Sugar at 62 % of the water phase: sugars / (sugars + water), for these foods.
        FormulaPart syrup = FormulaPart.WaterPhase;
        SolvedFormula answer = FormulaProblem.StartingFrom(s_foods.Formula("fondant", ("19335", 500), ("14429", 500)))
            .WithTarget(FormulaPart.Sugars, 0.62, of: syrup).Solve();
        double sugars = 0.998 * answer.Grams[0], water = 0.0002 * answer.Grams[0] + 0.999 * answer.Grams[1];
        Assert.Equal(0.62, sugars / (sugars + water), 1e-12);
    }

    [Fact]
    public void AFreeTotalKeepsAGivenLineAndFollowsTheShares()
    {
        SolvedFormula answer = Start().WithFreeTotal().WithFixed(s_cream, 600).WithRequirement(FormulaPart.OfIngredient(s_cream), 0.40, 0.40).Solve();
        Assert.Equal(600, answer.GramsOf(s_cream), 1e-9);
        Assert.Equal(1500, answer.ToFormula().TotalGrams, 1e-6);
    }

    [Fact]
    public void OptionalIngredientsAreTriedInAndOut()
    {
        FormulaProblem problem = Start().WithIngredient(s_sugar).WithOptional(s_sugar, 50, 200).WithTarget(FormulaPart.Sugars, 0.20);
        SolvedFormula answer = problem.Solve();
        double grams = answer.GramsOf(s_sugar);
        Assert.True(grams is 0 or (>= 50 and <= 200), $"{grams} g");
        // Both choices, each solved on its own; the target is met either way, so the nearer to the base wins.
        SolvedFormula without = Start().WithTarget(FormulaPart.Sugars, 0.20).Solve();
        SolvedFormula with = Start().WithIngredient(s_sugar).WithLimit(s_sugar, 50, 200).WithTarget(FormulaPart.Sugars, 0.20).Solve();
        double Far(SolvedFormula to) => new[] { (s_chocolate, 500.0), (s_cream, 400), (s_butter, 100) }.Sum(line => Math.Pow((to.GramsOf(line.Item1) - line.Item2) / line.Item2, 2));
        double sugarAlone = Math.Pow(50 / 1.0, 2); // a line the base has none of counts as if it had a thousandth of the total
        Assert.Equal(Far(without) < Far(with) + sugarAlone ? 0 : with.GramsOf(s_sugar), grams, 1e-9);
    }

    [Fact]
    public void MoreWaterThanThereIsCannotBoilOff()
    {
        SolvedFormula answer = Start().WithBoilOff(500, 600).WithTotal(400).WithLimit(s_butter, 0, 50).WithLimit(s_chocolate, 500).WithLimit(s_cream, 0, 400).Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        Assert.Contains("water boiled off", answer.Conflict!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoEqualSugarsAreParted0nlyByTheBase()
    {
        IngredientTable foods = Pantry.Table(("one", 0, 0, 0, 100), ("two", 0, 0, 0, 100), ("fat", 0, 100, 0, 0));
        SolvedFormula answer = FormulaProblem.StartingFrom(foods.Formula("x", ("one", 100), ("two", 50), ("fat", 50))).WithTarget(FormulaPart.Sugars, 0.6).Solve();
        Assert.Equal(1, answer.DegreesOfFreedom.Count);
        Assert.Equal(["ione", "itwo"], answer.DegreesOfFreedom.Ingredients.Select(ingredient => ingredient.Name));
        Assert.Equal(100, answer.GramsOf(foods.Food("fat")) + 20, 1e-9);
    }

    [Fact]
    public void AProblemNamesWhatIsTooMuch()
    {
        FormulaProblem problem = Start();
        for (int i = problem.Demands.Count; i < FormulaProblem.MaximumDemands; i++)
            problem = problem.WithLimit(s_cream, 0, 500);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => problem.WithLimit(s_cream, 0, 500));
        Assert.Contains("at most 400 demands", refused.Message, StringComparison.Ordinal);
        Assert.Equal(SolutionStatus.Solved, problem.Solve().Status);
    }

    [Fact]
    public void AtLeastHasNoHiddenMost()
    {
        // The base has 1200 % as much cream as there is sugar: that is at least 50 %, and nothing is to change.
        SolvedFormula answer = FormulaProblem.StartingFrom(s_foods.Formula("x", ("01053", 600), ("19335", 50)))
            .WithRequirement(FormulaPart.OfIngredient(s_cream), 0.5, double.PositiveInfinity, of: FormulaPart.OfIngredient(s_sugar)).Solve();
        Assert.Equal([600, 50], answer.Grams.Select(grams => Math.Round(grams, 9)));
        Assert.Equal("i01053 at least 50 % of the i19335", answer.Problem.Demands[1].Sentence);
        SolvedFormula read = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"heavy cream","baseGrams":600},{"ingredient":"granulated sugar","baseGrams":50}],
            "requirements":[{"part":"heavy cream","of":"granulated sugar","lowPercent":50}]}
            """, IngredientTable.BuiltIn).Solve();
        Assert.Equal([600, 50], read.Grams.Select(grams => Math.Round(grams, 9)));
    }

    [Fact]
    public void SugarMayBeMoreThanTheFlour()
    {
        // A high-ratio cake: sugar 120 % of the flour, in per cent in the text and in what is said of it.
        SolvedFormula answer = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"cake flour","baseGrams":400},{"ingredient":"granulated sugar","baseGrams":400},{"ingredient":"whole milk","baseGrams":300}],
            "targets":[{"part":"granulated sugar","of":"cake flour","percent":120}]}
            """, IngredientTable.BuiltIn).Solve();
        Assert.Equal(1.2, answer.Grams[1] / answer.Grams[0], 1e-9);
        Assert.Equal("granulated sugar 120 % of the cake flour: 120 %", answer.Results[1].ToString());
        FormatException refused = Assert.Throws<FormatException>(() => FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"cake flour","baseGrams":400}],"targets":[{"part":"cake flour","of":"everything","percent":120}]}
            """, IngredientTable.BuiltIn));
        Assert.Contains("percent was 120; from 0 to 100 per cent of everything", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AConflictWithChoicesIsOneOfAllChoices()
    {
        // Butter or none of it: more than 60 % fat can be had of neither choice, and the cream has no part in it.
        FormulaProblem problem = Start().WithOptional(s_butter, 50, 100).WithLimit(s_cream, 100).WithRequirement(FormulaPart.Fat, 0.60, 1);
        SolvedFormula answer = problem.Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        // Without the limit on butter it can be met: so it is a part of the conflict, and said for both choices.
        Assert.Contains("with i01145 or without", answer.Conflict!.Sentence, StringComparison.Ordinal);
        Assert.Contains(answer.Conflict.Demands, demand => demand is Demand.IngredientMass { MayBeLeftOut: true });
        // The closest formula has none of it or at least 50 g.
        Assert.True(answer.GramsOf(s_butter) is 0 or (>= 50 - 1e-9 and <= 100 + 1e-9), $"{answer.GramsOf(s_butter)}");

        // And where the choice has no part in it, it is not blamed.
        SolvedFormula other = Start().WithOptional(s_butter, 50, 100).WithLimit(s_cream, 1200).Solve();
        Assert.Equal("a total of 1000 g and i01053 at least 1200 g cannot all be met", other.Conflict!.Sentence);
    }

    [Fact]
    public void ATotalMayBeARange()
    {
        SolvedFormula answer = Start().WithTotalRange(1200, 1500).Solve();
        Assert.InRange(answer.Grams.Sum(), 1200 - 1e-6, 1500 + 1e-6);
        // Nearest to the base: as little more as may be.
        Assert.Equal(1200, answer.Grams.Sum(), 1e-6);
        Assert.Equal("a total from 1200 to 1500 g", answer.Problem.Demands[0].Sentence);
    }

    [Fact]
    public void NothingToChooseFromIsSaid() =>
        Assert.Throws<InvalidOperationException>(() => FormulaProblem.Of("x", 100, []).Solve());
}
