using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>
/// Conflicts where lines may be left out: each is infeasible as a whole over all choices, and feasible with any one of its members left out.
/// The judge is the solver asked anew, with the members and nothing else.
/// </summary>
public sealed class ConflictTests
{
    // The full trial of 1 000: CONFECTIO_CONFLICT_CASES sets another number.
    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable("CONFECTIO_CONFLICT_CASES"), out int cases) ? cases : 60;

    [Fact]
    public void EveryMemberOfAConflictIsNeededOverAllChoices() => Check(new Random(20261205), (problem, _) => problem);

    [Fact]
    public void EveryMemberOfAConflictIsNeededWhateverIsAsked() => Check(new Random(20261207), WithAsks);

    // At most so many of some, grams of a part, and a ceiling on cost.
    private static FormulaProblem WithAsks(FormulaProblem problem, Random random)
    {
        foreach (Ingredient food in problem.Ingredients)
            problem = problem.WithCost(food, random.Next(1, 12));
        if (random.Next(2) == 0)
        {
            Ingredient[] some = [.. problem.Ingredients.Take(random.Next(2, 4))];
            bool hasLow = random.Next(2) == 0;
            problem = problem.WithSomeOf(some, random.Next(1, some.Length), hasLow ? random.Next(2) : 0, hasLow ? 30 : 0, random.Next(2) == 0 ? 150 : double.PositiveInfinity);
        }
        if (random.Next(2) == 0)
            problem = problem.WithMass(FormulaPart.OfIngredients("two", problem.Ingredients[0], problem.Ingredients[1]), 200 + random.Next(300));
        if (random.Next(2) == 0)
            problem = problem.WithCostCeiling(1 + 4 * random.NextDouble());
        return problem;
    }

    private static void Check(Random random, Func<FormulaProblem, Random, FormulaProblem> ask)
    {
        int looked = 0;
        for (int i = 0; looked < Cases && i < 100 * Cases; i++)
        {
            FormulaProblem problem = ask(Draw(random), random);
            SolvedFormula answer = problem.Solve();
            if (answer.Status != SolutionStatus.Impossible)
                continue;
            looked++;
            IReadOnlyList<Demand> conflict = answer.Conflict!.Demands;
            Assert.True(Only(problem, conflict).Solve().Status == SolutionStatus.Impossible, $"{i}: {answer.Conflict} can be met: {string.Join("; ", problem.Demands)}");
            foreach (Demand left in conflict)
                Assert.True(Only(problem, [.. conflict.Where(demand => demand != left)]).Solve().Status == SolutionStatus.Solved, $"{i}: {left} is superfluous in {answer.Conflict}; {string.Join("; ", problem.Demands)}");
            foreach (Demand.IngredientMass choice in problem.Demands.OfType<Demand.IngredientMass>().Where(mass => mass.MayBeLeftOut))
                Assert.True(answer.GramsOf(choice.Ingredient) is double grams && (grams <= 1e-9 || (grams >= choice.LowGrams - 1e-6 && grams <= choice.HighGrams + 1e-6)), $"{i}: {answer}: {choice}");
            foreach (Demand.SomeOf choice in problem.Demands.OfType<Demand.SomeOf>())
            {
                double[] used = [.. choice.Ingredients.Select(answer.GramsOf).Where(grams => grams > 1e-9)];
                Assert.True(used.Length <= choice.AtMost && used.Length >= choice.AtLeast && Array.TrueForAll(used, grams => grams >= choice.LowGrams - 1e-6 && grams <= choice.HighGrams + 1e-6), $"{i}: {answer}: {choice}");
            }
        }
        Assert.Equal(Cases, looked);
    }

    private static FormulaProblem Draw(Random random)
    {
        Ingredient[] chosen = [.. Pantry.StandardReference.All.OrderBy(_ => random.Next()).Take(random.Next(3, 6))];
        FormulaProblem problem = FormulaProblem.StartingFrom(Formula.Of("x", chosen.Select(food => FormulaLine.Of(food, 50 + Math.Round(300 * random.NextDouble())))));
        for (int j = 0; j < chosen.Length; j++)
        {
            problem = random.Next(3) switch
            {
                0 => problem.WithOptional(chosen[j], 20 + random.Next(100), 150 + random.Next(200)),
                1 => random.Next(2) == 0 ? problem.WithLimit(chosen[j], 20 + random.Next(100)) : problem.WithLimit(chosen[j], 0, 100 + random.Next(200)),
                _ => problem,
            };
        }
        foreach (FormulaPart part in new[] { FormulaPart.Fat, FormulaPart.Sugars, FormulaPart.Water })
        {
            if (!chosen.Any(food => part.FractionIn(food) > 0) || random.Next(2) == 0)
                continue;
            problem = random.Next(2) == 0 ? problem.WithRequirement(part, 0.1 + 0.4 * random.NextDouble(), double.PositiveInfinity) : problem.WithRequirement(part, 0, 0.05 + 0.2 * random.NextDouble());
        }
        return problem;
    }

    // The same foods with these demands and no others; every demand has one end, but for the total and the choices.
    private static FormulaProblem Only(FormulaProblem problem, IReadOnlyList<Demand> kept)
    {
        FormulaProblem others = FormulaProblem.Of(problem.Name, 1, []);
        foreach (Ingredient ingredient in problem.Ingredients)
            others = others.WithIngredient(ingredient, 100);
        foreach (Candidate candidate in problem.Candidates.Where(candidate => candidate.PricePerKilogram is not null))
            others = others.WithCost(candidate.Ingredient, candidate.CostPerKilogram);
        others = others.WithFreeTotal();
        foreach (Demand demand in kept)
        {
            others = demand switch
            {
                Demand.Total total => others.WithTotal(total.LowGrams),
                Demand.IngredientMass { MayBeLeftOut: true } mass => others.WithOptional(mass.Ingredient, mass.LowGrams, mass.HighGrams),
                Demand.IngredientMass mass => others.WithLimit(mass.Ingredient, Math.Max(0, mass.LowGrams), Math.Min(1e12, mass.HighGrams)),
                Demand.Share share => others.WithRequirement(share.Part, Math.Max(0, share.LowFraction), share.HighFraction, share.Of),
                Demand.SomeOf some => others.WithSomeOf(some.Ingredients, some.AtMost, some.AtLeast, some.LowGrams, some.HighGrams),
                Demand.PartMass mass => others.WithMass(mass.Part, Math.Max(0, mass.LowGrams), mass.HighGrams),
                Demand.UnitCost cost => others.WithCostCeiling(cost.MostPerKilogram),
                _ => others,
            };
        }
        return others;
    }
}
