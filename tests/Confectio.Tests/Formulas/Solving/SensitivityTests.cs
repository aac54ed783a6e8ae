using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>
/// How an answer moves with an end of a demand, against the answers themselves: within the range that is told they lie on one straight line,
/// and beyond its ends they leave it or another limit binds.
/// </summary>
public sealed class SensitivityTests
{
    private static readonly string[] s_foods =
    [
        "heavy cream", "whole milk", "unsalted butter", "granulated sugar", "powdered sugar", "egg white", "egg yolk", "cake flour",
        "cocoa powder", "semisweet chocolate chips", "glucose syrup", "honey", "nonfat dry milk", "shortening", "almonds", "water",
    ];

    private static readonly FormulaPart[] s_parts =
        [FormulaPart.Fat, FormulaPart.Sugars, FormulaPart.Water, FormulaPart.Protein, FormulaPart.Solids, FormulaPart.MilkFat];

    // CONFECTIO_TANGENT_CASES sets another number; 5 000 take a minute.
    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable("CONFECTIO_TANGENT_CASES"), out int cases) ? cases : 150;

    [Fact]
    public void WithinTheRangeTheAnswersLieOnTheLineAndPastItAnotherKindOfAnswerBegins()
    {
        Random random = new(20261129);
        int told = 0, bent = 0, ends = 0, early = 0;
        List<string> wrong = [];
        for (int i = 0; i < Cases; i++)
        {
            FormulaProblem problem = Draw(random);
            SolvedFormula answer = problem.Solve();
            if (answer.Status != SolutionStatus.Solved)
                continue;
            foreach (Demand demand in problem.Demands)
            {
                bool low = double.IsFinite(demand.LowEnd);
                if (demand is Demand.Total)
                    continue;
                Sensitivity sensitivity = answer.SensitivityTo(demand, low);
                told++;
                double at = low ? demand.LowEnd : demand.HighEnd, unit = demand is Demand.Share ? 100 : 1, width = sensitivity.ValidTo - sensitivity.ValidFrom;
                if (width < 1e-7)
                    continue; // at a kink
                foreach (double share in new[] { 0.03, 0.25, 0.5, 0.75, 0.97 })
                {
                    double place = sensitivity.ValidFrom + share * width;
                    SolvedFormula there = Moved(problem, demand, low, place).Solve();
                    for (int j = 0; j < answer.Grams.Count; j++)
                    {
                        double expected = answer.Grams[j] + sensitivity.GramsPerUnit[j] * unit * (place - at);
                        if (!(Math.Abs(there.Grams[j] - expected) <= 1e-5 * problem.Solve().Grams.Sum() * Math.Max(1, width)))
                        {
                            wrong.Add($"{i}: {demand} at {place}: {there.Grams[j]} for {expected}: {sensitivity}: {answer}: {string.Join("; ", problem.Demands)}");
                            bent++;
                            break;
                        }
                    }
                }
                foreach (int direction in new[] { -1, 1 })
                {
                    double end = direction < 0 ? sensitivity.ValidFrom : sensitivity.ValidTo, past = end + direction * 1e-4 * (demand is Demand.Share ? 1 : 100);
                    if (past <= 0 || (demand is Demand.Share && past >= 1) || past > 2 * at || (!demand.IsOneValue && (low ? past > demand.HighEnd : past < demand.LowEnd)))
                        continue;
                    ends++;
                    SolvedFormula there = Moved(problem, demand, low, past).Solve();
                    bool isOnLine = there.Status == SolutionStatus.Solved;
                    for (int j = 0; j < answer.Grams.Count && isOnLine; j++)
                        isOnLine = Math.Abs(there.Grams[j] - answer.Grams[j] - sensitivity.GramsPerUnit[j] * unit * (past - at)) <= 1e-7;
                    if (isOnLine && ProblemSolver.Signature(there) == ProblemSolver.Signature(answer))
                        early++;
                }
            }
        }
        Assert.True(wrong.Count == 0, $"{bent} of {told}: {string.Join("\n", wrong.Take(6))}");
        Assert.True(told > Cases, $"{told} sensitivities");
        // An end that nothing marks may be where what bears weight changes and the line does not.
        Assert.True(early <= ends / 50, $"{early} of {ends} ends have nothing past them");
    }

    [Fact]
    public void EveryPlaceOfAnExplorationIsTheAnswerOfItsOwnProblem()
    {
        Ingredient butter = IngredientTable.BuiltIn.Get("unsalted butter"), sugar = IngredientTable.BuiltIn.Get("icing sugar"), milk = IngredientTable.BuiltIn.Get("whole milk");
        FormulaProblem With(double fat) => FormulaProblem.Of("buttercream", 1000, []).WithIngredient(butter, 400).WithIngredient(sugar, 540)
            .WithIngredient(milk, 60).WithCost(butter, 9).WithCost(sugar, 2).WithCost(milk, 1).WithTarget(FormulaPart.Fat, fat);
        SolvedFormula answer = With(0.34).Solve();
        Demand demand = answer.Problem.Demands.OfType<Demand.Share>().Single();
        double[] places = [0.30, 0.34, 0.38, 0.99];
        IReadOnlyList<SolvedFormula> explored = answer.Explore(demand, places);
        for (int i = 0; i < places.Length; i++)
        {
            SolvedFormula own = With(places[i]).Solve();
            Assert.Equal(own.Grams, explored[i].Grams);
            Assert.Equal(own.Cost, explored[i].Cost);
            // The table's butter has 81.11 % fat, its milk 3.3 %, its sugar none: counted by hand from the masses.
            Assert.Equal(explored[i].Results.Single(result => result.Demand is Demand.Share).Achieved!.Value,
                explored[i].Grams[0] * FormulaPart.Fat.FractionIn(butter) / 1000 + explored[i].Grams[2] * FormulaPart.Fat.FractionIn(milk) / 1000, 1e-12);
            // The total is given: what goes in here comes out there.
            double moved = new[] { 400.0, 540, 60 }.Zip(explored[i].Grams, (house, grams) => Math.Abs(grams - house)).Sum() / 2;
            Assert.Equal(moved, explored[i].MovedGrams, 1e-9);
        }
        Assert.True(explored[0].Cost < explored[1].Cost && explored[1].Cost < explored[2].Cost);
        Assert.Throws<ArgumentOutOfRangeException>(() => answer.Explore(demand, [0.3, 1.1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => answer.Explore(demand, [double.NaN]));
        Assert.Throws<ArgumentException>(() => answer.Explore(demand, []));
        Assert.Throws<ArgumentException>(() => answer.Explore(With(0.2).Demands[^1], [0.3]));
    }

    private static FormulaProblem Moved(FormulaProblem problem, Demand demand, bool low, double to) => problem.Replacing(demand,
        demand.Between(low || demand.IsOneValue ? to : demand.LowEnd, !low || demand.IsOneValue ? to : demand.HighEnd));

    private static FormulaProblem Draw(Random random)
    {
        Ingredient[] foods = [.. s_foods.OrderBy(_ => random.Next()).Take(random.Next(3, 9)).Select(IngredientTable.BuiltIn.Get)];
        double[] grams = [.. foods.Select(_ => random.Next(6) == 0 ? 0 : Math.Round(5 + 400 * random.NextDouble()))];
        grams[0] += 50;
        FormulaProblem problem = FormulaProblem.Of("drawn", grams.Sum(), []);
        for (int j = 0; j < foods.Length; j++)
            problem = problem.WithIngredient(foods[j], grams[j]);
        for (int t = random.Next(1, 4); t > 0; t--)
        {
            FormulaPart part = s_parts[random.Next(s_parts.Length)];
            if (foods.All(food => part.FractionIn(food) == 0))
                continue;
            double share = random.Next(1, 60) / 100.0;
            int priority = random.Next(1, 3);
            problem = random.Next(3) == 0 ? problem.WithTargetRange(part, share, share + 0.05, priority: priority) : problem.WithTarget(part, share, priority: priority);
        }
        for (int j = 0; j < foods.Length; j++)
        {
            if (random.Next(3) == 0)
                problem = problem.WithLimit(foods[j], Math.Floor(grams[j] / 2), Math.Ceiling(grams[j] * 1.3) + 10);
        }
        if (random.Next(3) == 0 && foods.Any(food => FormulaPart.Fat.FractionIn(food) > 0))
            problem = problem.WithRequirement(FormulaPart.Fat, 0.05, 0.35);
        return random.Next(3) == 0 ? problem.TradingCloseness(0.02) : problem;
    }
}
