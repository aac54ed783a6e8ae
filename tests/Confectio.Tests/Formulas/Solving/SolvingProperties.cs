using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>Random problems, seeded: what must hold of every answer, whatever it is.</summary>
public sealed class SolvingProperties
{
    private static readonly FormulaPart[] s_parts = [FormulaPart.Fat, FormulaPart.Sugars, FormulaPart.Water, FormulaPart.Protein];

    private static FormulaProblem Draw(Random random, out Formula formula)
    {
        IReadOnlyList<Ingredient> foods = Pantry.StandardReference.All;
        Ingredient[] chosen = [.. foods.OrderBy(_ => random.Next()).Take(random.Next(2, 9))];
        formula = Formula.Of("random", chosen.Select(food => FormulaLine.Of(food, 1 + 500 * random.NextDouble())));
        FormulaProblem problem = FormulaProblem.StartingFrom(formula);
        for (int t = random.Next(4); t > 0; t--)
        {
            FormulaPart part = s_parts[random.Next(s_parts.Length)];
            FormulaPart of = random.Next(4) == 0 ? FormulaPart.WaterPhase : FormulaPart.Everything;
            if (!chosen.Any(food => part.FractionIn(food) > 0) || !chosen.Any(food => of.FractionIn(food) > 0))
                continue;
            double at = random.NextDouble() * 0.6, width = random.Next(2) * 0.1 * random.NextDouble();
            problem = random.Next(4) == 0
                ? problem.WithRequirement(part, at / 2, Math.Min(1, at / 2 + 0.4), of)
                : problem.WithTargetRange(part, at, at + width, of, 0.01, random.Next(1, 4));
        }
        foreach (Ingredient food in chosen)
        {
            if (random.Next(3) == 0)
                problem = problem.WithLimit(food, 200 * random.NextDouble(), 200 + 400 * random.NextDouble());
        }
        if (chosen.Length > 2 && random.Next(3) == 0)
            problem = problem.WithRatioRange(chosen[0], chosen[1], 0.5, 3);
        if (random.Next(4) == 0)
            problem = problem.WithBoilOff(0, 200);
        return random.Next(3) switch
        {
            0 => problem.TradingCloseness(0.02),
            1 => problem.WithCost(chosen[0], 3).WithCost(chosen[^1], 8).Preferring(Preference.LeastCost),
            _ => problem,
        };
    }

    [Fact]
    public void EveryAnswerKeepsWhatMustBeKeptAndIsProved()
    {
        Random random = new(20261125);
        Dictionary<SolutionStatus, int> seen = [];
        for (int i = 0; i < 1500; i++)
        {
            FormulaProblem problem = Draw(random, out Formula formula);
            SolvedFormula answer = problem.Solve();
            seen[answer.Status] = seen.GetValueOrDefault(answer.Status) + 1;
            if (answer.Status == SolutionStatus.Solved)
            {
                // A billionth of a gram in a kilogram, or of the whole in a share.
                Assert.All(answer.Results.Where(result => result.Demand is not Demand.Share { IsTarget: true }),
                    result => Assert.True(Math.Abs(result.MissedBy!.Value) <= 1e-11 * Math.Max(1, Math.Abs(result.Achieved!.Value)), $"{i}: {result} {result.MissedBy!.Value:R}"));
                Assert.True(answer.Certificate!.Holds, $"{i}: {answer.Certificate.Violation} {answer.Certificate.Stationarity} {answer.Certificate.WrongSign} {answer.Certificate.Complementarity}");
                Assert.Equal(formula.TotalGrams, answer.ToFormula().TotalGrams, 1e-12 * formula.PutInGrams * 10);
                Assert.All(answer.Grams, grams => Assert.True(grams >= 0));
            }
            else
            {
                Assert.True(answer.Status == SolutionStatus.Impossible, $"{i}: {answer.Status}: {string.Join("; ", problem.Demands)}; base {string.Join(", ", formula.Lines.Select(line => line.Ingredient.Id + " " + line.Grams.Likely))} {problem.Preference}");
                Assert.NotEmpty(answer.Conflict!.Demands);
            }
        }
        Assert.True(seen[SolutionStatus.Solved] > 600 && seen[SolutionStatus.Impossible] > 20, string.Join(", ", seen));
    }

    [Fact]
    public void NoNeighbourDoesBetter()
    {
        // Every feasible step from the answer must make the traded objective worse; the objective is written out here anew.
        Random random = new(7);
        for (int i = 0; i < 300; i++)
        {
            IReadOnlyList<Ingredient> foods = Pantry.StandardReference.All;
            Ingredient[] chosen = [.. foods.OrderBy(_ => random.Next()).Take(5)];
            double[] start = [.. chosen.Select(_ => 50 + 300 * random.NextDouble())];
            double total = start.Sum(), fat = 0.2 + 0.3 * random.NextDouble(), sugars = 0.1 + 0.4 * random.NextDouble();
            SolvedFormula answer = FormulaProblem.StartingFrom(Formula.Of("x", chosen.Select((food, j) => FormulaLine.Of(food, start[j]))))
                .WithTargetIf(FormulaPart.Fat, fat, chosen).WithTargetIf(FormulaPart.Sugars, sugars, chosen).TradingCloseness(0.05).Solve();
            double best = Objective([.. answer.Grams]);
            for (int attempt = 0; attempt < 40; attempt++)
            {
                int from = random.Next(5), to = random.Next(5);
                double[] other = [.. answer.Grams];
                double grams = Math.Min(other[from], Math.Pow(10, -3 + 4 * random.NextDouble()));
                other[from] -= grams;
                other[to] += grams;
                Assert.True(Objective(other) >= best - 1e-9, $"{i}: moving {grams} g from {chosen[from]} to {chosen[to]} is better");
            }

            double Objective(double[] x)
            {
                double Miss(FormulaPart part, double target) => chosen.Any(food => part.FractionIn(food) > 0)
                    ? (chosen.Select((food, j) => part.FractionIn(food) * x[j]).Sum() / total - target) / 0.01 : 0;
                double far = x.Select((grams, j) => Math.Pow((grams - start[j]) / (0.5 * start[j]), 2)).Sum();
                return (Math.Pow(Miss(FormulaPart.Fat, fat), 2) + Math.Pow(Miss(FormulaPart.Sugars, sugars), 2) + 0.05 * far) / 2;
            }
        }
    }

    [Fact]
    public void AConflictHasNoSuperfluousMember()
    {
        Random random = new(99);
        int checkedConflicts = 0;
        for (int i = 0; i < 2000 && checkedConflicts < 60; i++)
        {
            FormulaProblem problem = Draw(random, out _);
            SolvedFormula answer = problem.Solve();
            if (answer.Status != SolutionStatus.Impossible || answer.Conflict!.Demands.Any(demand => demand is Demand.BoilOff))
                continue;
            checkedConflicts++;
            foreach (Demand left in answer.Conflict.Demands)
                Assert.True(Without(problem, answer.Conflict.Demands, left).Solve().Status == SolutionStatus.Solved, $"{i}: {left} is superfluous in {answer.Conflict}");
        }
        Assert.True(checkedConflicts >= 20, $"{checkedConflicts}");
    }

    private static FormulaProblem Without(FormulaProblem problem, IReadOnlyList<Demand> kept, Demand left)
    {
        FormulaProblem others = FormulaProblem.Of(problem.Name, 1, []);
        foreach (Ingredient ingredient in problem.Ingredients)
            others = others.WithIngredient(ingredient, 100);
        others = others.WithFreeTotal();
        // What boils off is not blamed: so it may be what it will.
        if (problem.Demands.Any(demand => demand is Demand.BoilOff))
            others = others.WithBoilOff(0, 1e9);
        foreach (Demand demand in kept.Where(demand => demand != left))
        {
            others = demand switch
            {
                Demand.Total total => others.WithTotal(total.LowGrams),
                Demand.IngredientMass mass => others.WithLimit(mass.Ingredient, Math.Max(0, mass.LowGrams), Math.Min(1e12, mass.HighGrams)),
                Demand.Share share => others.WithRequirement(share.Part, Math.Max(0, share.LowFraction), Math.Min(1, share.HighFraction), share.Of),
                Demand.Ratio ratio => others.WithRatioRange(ratio.Ingredient, ratio.To, ratio.LowRatio, ratio.HighRatio),
                _ => others,
            };
        }
        return others;
    }

    [Fact]
    public void SensitivityIsADifferenceOfAnswersAndEndsWhereAnotherLimitBinds()
    {
        SolvedFormula answer = GoldenFormulaTests.F1().Solve();
        foreach (Demand.Share demand in answer.Problem.Demands.OfType<Demand.Share>().Where(share => share.IsTarget))
        {
            Sensitivity sensitivity = answer.SensitivityTo(demand);
            Assert.InRange(demand.LowFraction, sensitivity.ValidFrom, sensitivity.ValidTo);
            // The answer is linear in a target while the same limits bind: any two answers within the range give the same slope.
            double near = sensitivity.ValidTo - (sensitivity.ValidTo - demand.LowFraction) * 0.1;
            SolvedFormula there = Moved(answer.Problem, demand, near).Solve();
            for (int j = 0; j < answer.Grams.Count; j++)
                Assert.Equal(answer.Grams[j] + sensitivity.GramsPerUnit[j] * 100 * (near - demand.LowFraction), there.Grams[j], 1e-7);
            // Every gram put in comes out elsewhere: the total is given.
            Assert.Equal(0, sensitivity.GramsPerUnit.Sum(), 1e-9);
            // Just past the end the picture is another: what binds has changed, or which lines are used.
            SolvedFormula past = Moved(answer.Problem, demand, sensitivity.ValidTo + 1e-6).Solve();
            Assert.NotEqual(Kind(answer), Kind(past));
        }

        static string Kind(SolvedFormula answer) => string.Join('|', answer.Binding.Select(binding => binding.ToString()).Order(StringComparer.Ordinal))
            + string.Concat(answer.Grams.Select(grams => grams == 0 ? '0' : '1'))
            + string.Concat(answer.Results.Where(result => result.Demand is Demand.Share { IsTarget: true }).Select(result => Math.Sign(Math.Round(result.MissedBy!.Value, 10))));

        static FormulaProblem Moved(FormulaProblem problem, Demand demand, double to)
        {
            FormulaProblem moved = GoldenFormulaTests.GanacheWithinLimits();
            foreach (Demand.Share other in problem.Demands.OfType<Demand.Share>().Where(share => share.IsTarget))
                moved = moved.WithTarget(other.Part, other == demand ? to : other.LowFraction);
            return moved.TradingCloseness(0.04);
        }
    }

    [Fact]
    public void SensitivityOfAWideOpenEndIsRefused()
    {
        SolvedFormula answer = GoldenFormulaTests.F1().Solve();
        Demand limit = answer.Problem.Demands.OfType<Demand.IngredientMass>().First(mass => double.IsNegativeInfinity(mass.LowGrams));
        Assert.Throws<ArgumentException>(() => answer.SensitivityTo(limit, ofLowEnd: true));
        Assert.Throws<ArgumentException>(() => answer.SensitivityTo(GoldenFormulaTests.F1().Demands[0]));
    }
}

internal static class ProblemSteps
{
    /// <summary>A target, where an ingredient can touch it.</summary>
    public static FormulaProblem WithTargetIf(this FormulaProblem problem, FormulaPart part, double fraction, Ingredient[] foods) =>
        foods.Any(food => part.FractionIn(food) > 0) ? problem.WithTarget(part, fraction) : problem;
}
