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

    // --- allergens ---

    private static FormulaProblem DairyFree() => Start(("unsalted butter", 250), ("icing sugar", 500), ("whole milk", 30)).WithIngredient(s_table.Get("water"))
        .WithKept(FormulaPart.Fat).WithKept(FormulaPart.Sugars).FreeFrom("dairy");

    [Fact]
    public void ADairyFreeButtercreamHasTheFatOfTheTableWithoutMilk()
    {
        FormulaProblem problem = DairyFree().WithFoodsOf(s_table, FoodKind.Fats, ["milk"], [s_table.Get("lard")]);
        Ingredient[] fats = [.. problem.Ingredients.Skip(4)];
        Assert.All(fats, fat => Assert.True(!fat.Allergens.Contains(Allergen.Milk) && !fat.OftenContains.Contains(Allergen.Milk) && fat.Composition[Constituent.Fat] >= 0.75, fat.Name));
        Assert.DoesNotContain(s_table.Get("lard"), fats);
        Assert.Contains(s_table.Get("palm shortening"), fats);
        SolvedFormula answer = problem.WithSomeOf(fats, 1).Solve();
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        Assert.Equal(0, answer.GramsOf(s_table.Get("unsalted butter")));
        Assert.Equal(0, answer.GramsOf(s_table.Get("whole milk")));
        // By the handbook: butter 81.11 % fat and milk 3.25 % (USDA SR 28), so 250 and 30 g have 203.75 g, which is as much of a fat that is all fat.
        double fat = 250 * 0.8111 + 30 * 0.0325;
        Ingredient used = Assert.Single(fats, food => answer.GramsOf(food) > 0);
        Assert.Equal(fat / used.Composition[Constituent.Fat], answer.GramsOf(used), 1e-6);
        Assert.Equal(780, answer.Grams.Sum(), 1e-9);
        Assert.DoesNotContain(Allergen.Milk, answer.ToFormula().Allergens);
        Assert.Contains("No dairy: left out are unsalted butter, whole milk, which contain it.", answer.Remarks[0], StringComparison.Ordinal);
        Assert.Contains("read the label of your own. An allergen that is not listed here is not said to be absent", answer.Remarks[0], StringComparison.Ordinal);
        Assert.Contains("these would do as well", answer.Remarks[1], StringComparison.Ordinal);
        // Two foods with milk and eight fats that are not used: each demand binds once.
        Assert.Equal(answer.Binding.Count, answer.Binding.Select(binding => binding.ToString()).Distinct().Count());
        Assert.Contains("no dairy", answer.Binding.Select(binding => binding.ToString()));
    }

    [Fact]
    public void TheSameInAFileIsTheSame()
    {
        SolvedFormula read = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"unsalted butter","baseGrams":250},{"ingredient":"icing sugar","baseGrams":500},{"ingredient":"whole milk","baseGrams":30},{"ingredient":"water"}],
            "freeFrom":["dairy"],"chooseFrom":[{"kind":"fats","name":"new fats","except":["lard"],"atMost":1}],
            "requirements":[{"part":"fat","asInBase":true},{"part":"sugars","asInBase":true},{"part":"new fats","lowGrams":1}]}
            """, s_table).Solve();
        FormulaProblem problem = DairyFree().WithFoodsOf(s_table, FoodKind.Fats, ["milk"], [s_table.Get("lard")]);
        SolvedFormula built = problem.WithSomeOf(problem.Ingredients.Skip(4), 1).Solve();
        Assert.Equal(built.Grams.Select(grams => Math.Round(grams, 6)), read.Grams.Select(grams => Math.Round(grams, 6)));
    }

    [Fact]
    public void WhatManyMakesContainIsLeftOutUnlessItIsAllowedAndThenSaid()
    {
        FormulaProblem problem = Start(("semisweet chocolate chips", 300), ("cocoa powder", 100), ("coconut oil", 50));
        SolvedFormula strict = problem.FreeFrom(Allergen.Milk).Solve();
        Assert.Equal(0, strict.Grams[0]);
        Assert.Contains("left out are semisweet chocolate chips, which many makes contain", strict.Remarks[0], StringComparison.Ordinal);
        SolvedFormula loose = problem.FreeFrom(Allergen.Milk, alsoWhatOftenContains: false).Solve();
        Assert.Equal(300, loose.Grams[0], 1e-6);
        Assert.Contains("Allowed are semisweet chocolate chips, of which many makes contain it: only a make without it will do.", loose.Remarks[0], StringComparison.Ordinal);
    }

    [Fact]
    public void OfWhichNobodySaidTheAllergensIsNotFreeOfThem()
    {
        // A food of one's own in a table without the column, and a label without its list of ingredients.
        Ingredient own = Pantry.StandardReference.Food("19165");
        Assert.False(own.AllergensAreStated);
        SolvedFormula answer = FormulaProblem.StartingFrom(Formula.Of("x", [FormulaLine.Of(own, 100), FormulaLine.Of(s_table.Get("granulated sugar"), 100)])).FreeFrom(Allergen.Milk).Solve();
        Assert.Equal(0, answer.Grams[0]);
        Assert.Contains("i19165, of which nobody said what allergens they have", answer.Remarks[0], StringComparison.Ordinal);
        Assert.All(s_table.All, food => Assert.True(food.AllergensAreStated, food.Name));
    }

    [Fact]
    public void NutsArePeanutsTooAndNoAllergenGivesWay()
    {
        FormulaProblem problem = Start(("almonds", 100), ("peanut butter", 100), ("granulated sugar", 100)).FreeFrom("nuts");
        Assert.Equal([0, 0], problem.Solve().Grams.Take(2));
        // Asked for and forbidden: a conflict, and even the nearest formula has none of it.
        SolvedFormula answer = problem.WithLimit(s_table.Get("almonds"), 50).Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        Assert.Equal("almonds at least 50 g and no nuts cannot all be met", answer.Conflict!.Sentence);
        Assert.Equal([0, 0], answer.Grams.Take(2));
        Assert.Contains("milk, egg", Assert.Throws<ArgumentException>(() => problem.FreeFrom("fun")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => problem.Solve().SensitivityTo(problem.Demands[^1], ofLowEnd: false));
    }

    [Fact]
    public void OfWaterThatHasAllBoiledOffNothingIsLeft()
    {
        // Without the flour there is to be no water, and all of it boils off: what rounding leaves of it breaks no share of nothing.
        SolvedFormula answer = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"salt","baseGrams":433},{"ingredient":"nonfat dry milk","baseGrams":183,"mayBeLeftOut":true,"lowGrams":92,"highGrams":368},
            {"ingredient":"all-purpose flour","baseGrams":9,"highGrams":17}],"targets":[{"part":"fat","percent":0},{"part":"milk-fat","percent":14}],
            "requirements":[{"part":"water","of":"all-purpose flour","highPercent":106}],"boilOff":{"highGrams":50},"freeFrom":["gluten"]}
            """, s_table).Solve();
        Assert.Equal(0, answer.GramsOf(s_table.Get("all-purpose flour")));
        Assert.True(answer.BoiledOffGrams > 0);
        Assert.All(answer.Results.Where(result => result.Demand is Demand.Share { IsTarget: false }), result => Assert.True(result.IsMet, result.ToString()));
    }

    // --- cost ---

    [Fact]
    public void TheCeilingIsMetWhereTheCheapestFormulaMeetsIt()
    {
        // What a formula costs at least is what the search for the cheapest says: a ceiling above it can be kept, one below it cannot.
        Random random = new(20261208);
        string[] foods = ["heavy cream", "unsalted butter", "granulated sugar", "cocoa powder", "glucose syrup"];
        for (int i = 0; i < 200; i++)
        {
            FormulaProblem problem = Start([.. foods.Select(name => (name, Math.Round(20 + 300 * random.NextDouble())))]);
            foreach (Ingredient food in problem.Ingredients)
                problem = problem.WithCost(food, Math.Round(1 + 10 * random.NextDouble(), 2));
            problem = problem.WithRequirement(FormulaPart.Fat, 0.1 + 0.2 * random.NextDouble(), 1).WithRequirement(FormulaPart.Sugars, 0.2, 0.5);
            double total = problem.Solve().Grams.Sum(), least = problem.Preferring(Preference.LeastCost).Solve().Cost / total * 1000;
            SolvedFormula above = problem.WithCostCeiling(least * 1.001).Solve(), below = problem.WithCostCeiling(least * 0.999).Solve();
            Assert.Equal(SolutionStatus.Solved, above.Status);
            Assert.True(above.Cost / total * 1000 <= least * 1.001 * (1 + 1e-9));
            Assert.Equal(SolutionStatus.Impossible, below.Status);
            Assert.Contains(below.Conflict!.Demands, demand => demand is Demand.UnitCost);
            // And where the formula that was asked for costs less anyway, nothing changes.
            SolvedFormula dear = problem.WithCostCeiling(100).Solve();
            Assert.All(dear.Grams.Zip(problem.Solve().Grams), pair => Assert.Equal(pair.Second, pair.First, 1e-6));
        }
    }

    [Fact]
    public void ACeilingIsOfWhatIsMadeAndRoundingKeepsIt()
    {
        FormulaProblem problem = Start(("heavy cream", 310), ("granulated sugar", 405), ("unsalted butter", 103)).WithCost(s_table.Get("heavy cream"), 4).WithCost(s_table.Get("granulated sugar"), 1)
            .WithCost(s_table.Get("unsalted butter"), 9).WithTotal(700).WithBoilOff(0, 200).WithTarget(FormulaPart.Fat, 0.32).WithCostCeiling(3);
        SolvedFormula answer = problem.Solve();
        double[] price = [4, 1, 9];
        Assert.Equal(3, answer.Grams.Zip(price, (grams, each) => grams * each).Sum() / 700, 1e-9);
        Assert.Contains("cost at most 3 a kilogram", answer.Binding.Select(binding => binding.ToString()));
        RoundedFormula rounded = answer.Round(RoundingGrid.Grams(5));
        Assert.True(rounded.Grams.Zip(price, (grams, each) => grams * each).Sum() / (rounded.Grams.Sum() - rounded.BoiledOffGrams) <= 3 * (1 + 1e-8));
        Assert.Contains("cost at most 3 a kilogram: 3 a kilogram", answer.Results.Select(result => result.ToString()));
    }

    [Fact]
    public void AnUnknownPriceIsNoPriceOfNothing()
    {
        FormulaProblem problem = Start(("heavy cream", 300), ("water", 100), ("granulated sugar", 100)).WithCost(s_table.Get("heavy cream"), 4);
        Assert.Contains("water, granulated sugar have no price, and what is not known is not free", Assert.Throws<ArgumentException>(() => problem.WithCostCeiling(3)).Message, StringComparison.Ordinal);
        FormulaProblem priced = problem.WithCost(s_table.Get("water"), 0).WithCost(s_table.Get("granulated sugar"), 1);
        Assert.Equal(SolutionStatus.Solved, priced.WithCostCeiling(2).Solve().Status);
        Assert.Contains("unsalted butter has no price", Assert.Throws<InvalidOperationException>(() => priced.WithCostCeiling(2).WithIngredient(s_table.Get("unsalted butter")).Solve()).Message, StringComparison.Ordinal);
        FormatException refused = Assert.Throws<FormatException>(() => FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"heavy cream","baseGrams":100,"costPerKilogram":4},{"ingredient":"water","baseGrams":10}],"cost":{"mostPerKilogram":3}}
            """, s_table));
        Assert.Contains("($.cost.mostPerKilogram), the cost of a kilogram is not known: water has no price", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CostAndRatiosAreKeptAsInTheBase()
    {
        FormulaProblem problem = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"heavy cream","baseGrams":300,"costPerKilogram":4},{"ingredient":"semisweet chocolate chips","baseGrams":300,"costPerKilogram":9},{"ingredient":"unsalted butter","baseGrams":60,"costPerKilogram":8},{"ingredient":"glucose syrup","baseGrams":60,"costPerKilogram":2}],
            "targets":[{"part":"fat","percent":36}],"ratios":[{"ingredient":"glucose syrup","to":"unsalted butter","asInBase":true}],"cost":{"asInBase":true}}
            """, s_table);
        SolvedFormula answer = problem.Solve();
        Assert.Equal(answer.Grams[2], answer.Grams[3], 1e-9);
        double[] price = [4, 9, 8, 2];
        Assert.True(answer.Grams.Zip(price, (grams, each) => grams * each).Sum() <= (300 * 4 + 300 * 9 + 60 * 8 + 60 * 2) * (1 + 1e-9));
        Assert.Throws<ArgumentException>("to", () => Start(("heavy cream", 300)).WithIngredient(s_table.Get("water")).WithKeptRatio(s_table.Get("heavy cream"), s_table.Get("water")));
    }

    // --- at most so many ---

    [Fact]
    public void AtMostSoManyIsTheBestOfAllChoices()
    {
        // The judge takes what is not chosen out by hand, one choice after the other.
        Random random = new(20261209);
        string[] foods = ["heavy cream", "unsalted butter", "granulated sugar", "cocoa powder", "glucose syrup", "honey"];
        int narrowed = 0;
        for (int i = 0; i < 120; i++)
        {
            FormulaProblem problem = Start([.. foods.Select(name => (name, Math.Round(20 + 300 * random.NextDouble())))])
                .WithTarget(FormulaPart.Fat, 0.1 + 0.3 * random.NextDouble()).WithTarget(FormulaPart.Sugars, 0.2 + 0.3 * random.NextDouble()).WithRequirement(FormulaPart.Water, 0.05, 0.3)
                .TradingCloseness(0.05);
            Ingredient[] some = [.. problem.Ingredients.OrderBy(_ => random.Next()).Take(4)];
            int most = random.Next(1, 4);
            double low = random.Next(2) == 0 ? 0 : 40;
            SolvedFormula answer = problem.WithSomeOf(some, most, 0, low).Solve();
            double best = double.PositiveInfinity;
            for (int used = 0; used < 16; used++)
            {
                if (System.Numerics.BitOperations.PopCount((uint)used) > most)
                    continue;
                FormulaProblem one = problem;
                for (int k = 0; k < 4; k++)
                    one = (used >> k & 1) == 0 ? one.WithFixed(some[k], 0) : low > 0 ? one.WithLimit(some[k], low) : one;
                SolvedFormula there = one.Solve();
                if (there.Status == SolutionStatus.Solved)
                    best = Math.Min(best, Merit(there));
            }
            Assert.Equal(double.IsInfinity(best), answer.Status != SolutionStatus.Solved);
            if (answer.Status != SolutionStatus.Solved)
                continue;
            Assert.True(some.Count(food => answer.GramsOf(food) > 0) <= most);
            Assert.Equal(best, Merit(answer), 1e-7 * Math.Max(1, best));
            narrowed += Merit(answer) > Merit(problem.Solve()) + 1e-6 ? 1 : 0;
            // Rounding keeps the choice.
            RoundedFormula rounded = answer.Round(RoundingGrid.Grams(5));
            Assert.True(some.Count(food => rounded.Grams[problem.Ingredients.ToList().IndexOf(food)] > 0) <= most);
        }
        Assert.True(narrowed > 60, $"{narrowed}");

        static double Merit(SolvedFormula answer) => answer.Problem.Demands.OfType<Demand.Share>().Where(share => share.IsTarget).Sum(share =>
                Math.Pow((answer.Problem.Ingredients.Zip(answer.Grams, (food, grams) => share.Part.FractionIn(food) * grams).Sum() / answer.Grams.Sum() - share.LowFraction) / 0.01, 2) / 2)
            + 0.05 * answer.Problem.Ingredients.Zip(answer.Grams, (food, grams) => Math.Pow((grams - answer.Problem.BaseGramsOf(food)) / (0.5 * answer.Problem.BaseGramsOf(food)), 2) / 2).Sum();
    }

    [Fact]
    public void EitherThisOrThatIsSaidAndUsed()
    {
        FormulaProblem problem = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"heavy cream","baseGrams":300},{"ingredient":"semisweet chocolate chips","baseGrams":300},{"ingredient":"honey","baseGrams":20},{"ingredient":"glucose syrup","baseGrams":40}],
            "groups":[{"name":"soft sugars","ingredients":["honey","glucose syrup"]}],
            "choices":[{"ingredients":["soft sugars"],"atLeast":1,"atMost":1,"lowGrams":50,"highGrams":90}]}
            """, s_table);
        SolvedFormula answer = problem.Solve();
        // The nearest to the base: of syrup there is the most already.
        Assert.Equal([0, 50], answer.Grams.Skip(2).Select(grams => Math.Round(grams, 6)));
        Assert.Equal("exactly 1 of honey and glucose syrup 42 DE, from 50 to 90 g of each that is used", problem.Demands[^1].Sentence);
        SolvedFormula never = problem.WithLimit(s_table.Get("honey"), 10, 30).WithLimit(s_table.Get("glucose syrup"), 0, 40).Solve();
        Assert.Equal(SolutionStatus.Impossible, never.Status);
        Assert.Contains("exactly 1 of honey and glucose syrup 42 DE", never.Conflict!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void MoreChoicesThanCanBeTriedAreRefusedWithTheirNumber()
    {
        FormulaProblem problem = FormulaProblem.Of("x", 100, s_table.All.Take(40));
        // 40 x 39 x 38 / 6 = 9880.
        Assert.Contains("would make 9880 choices of what is used; all are tried, and at most 1024 may be", Assert.Throws<ArgumentException>("ingredients", () => problem.WithSomeOf(problem.Ingredients, 3)).Message, StringComparison.Ordinal);
        FormulaProblem two = problem.WithSomeOf(problem.Ingredients, 2); // 780
        Assert.Throws<ArgumentException>(() => two.WithOptional(problem.Ingredients[0], 1, 2));
        Assert.Throws<ArgumentOutOfRangeException>("atMost", () => problem.WithSomeOf(problem.Ingredients, 0));
        Assert.Throws<ArgumentOutOfRangeException>("atLeast", () => problem.WithSomeOf(problem.Ingredients, 2, 3));
        Assert.Throws<ArgumentException>("lowGrams", () => problem.WithSomeOf(problem.Ingredients, 1, 1));
    }

    // --- solids that are told food by food ---

    [Fact]
    public void MilkSolidsNotFatAreWhatTheHandbookLeaves()
    {
        // USDA SR 28: skimmed milk powder (NDB 01091) water 3.16, fat 0.77 %; whole milk (01077) 88.13 and 3.25 %; salted butter has its salt added.
        Assert.Equal(1 - 0.0316 - 0.0077, FormulaPart.MilkSolidsNotFat.FractionIn(s_table.Get("nonfat dry milk")), 1e-12);
        Assert.Equal(1 - 0.8813 - 0.0325, FormulaPart.MilkSolidsNotFat.FractionIn(s_table.Get("whole milk")), 1e-12);
        Assert.True(FormulaPart.MilkSolidsNotFat.FractionIn(s_table.Get("salted butter")) < 0.02);
        // Sweetened condensed milk by its standard of identity: at least 28 % total milk solids (21 CFR 131.120), of which the fat is at least 8 %.
        Ingredient condensed = s_table.Get("sweetened condensed milk");
        Assert.InRange(FormulaPart.MilkSolidsNotFat.FractionIn(condensed) + condensed.Composition.MilkFat, 0.28, 0.32);
        Assert.Equal(0, FormulaPart.MilkSolidsNotFat.FractionIn(s_table.Get("granulated sugar")));
        // The figure of the name, and of cocoa all that is dry.
        Assert.Equal(0.55, FormulaPart.CocoaSolids.FractionIn(s_table.Get("dark couverture 55 %")));
        Assert.Equal(0.137, FormulaPart.CocoaButter.FractionIn(s_table.Get("natural cocoa powder")), 1e-12);
    }

    [Fact]
    public void WhatIsNotKnownOfAFoodIsRefusedByItsName()
    {
        FormulaProblem problem = Start(("semisweet chocolate chips", 300), ("heavy cream", 300), ("salted block margarine", 20));
        Assert.Contains("of semisweet chocolate chips it is not known how much that is, and what is not known is not zero", Assert.Throws<ArgumentException>("part", () => problem.WithTarget(FormulaPart.CocoaSolids, 0.3)).Message, StringComparison.Ordinal);
        Assert.Contains("of semisweet chocolate chips, salted block margarine it is not known", Assert.Throws<ArgumentException>("part", () => problem.WithMass(FormulaPart.MilkSolidsNotFat, 10)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("ingredient", () => FormulaPart.CocoaSolids.FractionIn(s_table.Get("semisweet chocolate chips")));
        // A food of one's own of which nothing is said may have anything.
        Assert.Throws<ArgumentException>(() => FormulaPart.MilkSolidsNotFat.FractionIn(Pantry.StandardReference.Food("01077")));
    }

    [Fact]
    public void AnIceCreamMixHasItsMilkSolids()
    {
        // 11 % milk solids not fat and 10 % milk fat of cream, milk powder, sugar and water: three equations by hand.
        SolvedFormula answer = Start(("heavy cream", 270), ("nonfat dry milk", 90), ("granulated sugar", 150), ("water", 490))
            .WithRequirement(FormulaPart.MilkFat, 0.10, 0.10).WithRequirement(FormulaPart.MilkSolidsNotFat, 0.11, 0.11).WithFixed(s_table.Get("granulated sugar"), 150).Solve();
        double[,] m = { { 0.37, 0.0077 }, { 1 - 0.5771 - 0.37, 1 - 0.0316 - 0.0077 } };
        double d = m[0, 0] * m[1, 1] - m[0, 1] * m[1, 0], cream = (100 * m[1, 1] - 110 * m[0, 1]) / d, powder = (110 * m[0, 0] - 100 * m[1, 0]) / d;
        Assert.Equal([cream, powder, 150, 850 - cream - powder], answer.Grams, (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Contains("Milk solids not fat: counted food by food as the trade counts them, at worst common-practice; makers differ.", answer.Remarks);
    }

    [Fact]
    public void TheTableOfTracedSolidsIsWholeForCocoa()
    {
        string[] rows = [.. TracedSolids.ReadBuiltIn().Keys.Select(key => $"{key.Item1} {key.Item2}")];
        Assert.All(rows, row => Assert.Contains(row.Split(' ')[1], s_table.All.Select(food => food.Id)));
        // What has the fat of cocoa for its fat stands in both lists of cocoa.
        foreach (Ingredient food in s_table.All.Where(food => Confectio.Heat.IngredientFat.TryGet(food, out Confectio.Heat.IngredientFat? fat) && fat.Curve.Key == "cocoa-butter"))
        {
            Assert.Contains($"cocoa-solids {food.Id}", rows);
            Assert.Contains($"fat-of-cocoa {food.Id}", rows);
        }
        // No more solids than there are, and milk solids only where there is milk.
        foreach (Ingredient food in s_table.All)
        {
            foreach (FormulaPart part in FormulaPart.Traced.Where(part => part.IsKnownIn(food)))
                Assert.InRange(part.FractionIn(food), 0, FormulaPart.Solids.FractionIn(food) + 1e-9);
            if (FormulaPart.MilkSolidsNotFat.IsKnownIn(food) && FormulaPart.MilkSolidsNotFat.FractionIn(food) > 0)
                Assert.Contains(Allergen.Milk, food.Allergens);
            if (FormulaPart.CocoaButter.IsKnownIn(food))
                Assert.True(FormulaPart.CocoaButter.FractionIn(food) + food.Composition.MilkFat <= food.Composition[Constituent.Fat] + 1e-9, food.Name);
        }
    }

    // --- foods of one's own ---

    private const string Own = """
        {"confectioProblem":1,"ownIngredients":[{"name":"Hall praline","fatPercent":38,"sucrosePercent":48,"proteinPercent":8,"fibrePercent":4,"waterPercent":2,"allergens":["hazelnut"],"kind":"measured","source":"kitchen sheet 12"}ROOM],
        "ingredients":[{"ingredient":"Hall praline","baseGrams":300},{"ingredient":"dark couverture 64 %","baseGrams":200},{"ingredient":"coconut oil","baseGrams":20}],
        "targets":[{"part":"fat","percent":40}]MORE}
        """;

    private static FormulaProblem ReadOwn(string room = "", string more = "") =>
        FormulaProblem.ParseJson(Own.Replace("ROOM", room, StringComparison.Ordinal).Replace("MORE", more, StringComparison.Ordinal), s_table);

    [Fact]
    public void AFoodOfOnesOwnStandsBesideTheTables()
    {
        FormulaProblem problem = ReadOwn();
        Ingredient own = problem.Ingredients[0];
        Assert.Equal(("hall-praline", "Hall praline", 0.38), (own.Id, own.Name, own.Composition[Constituent.Fat]));
        Assert.Equal(Confectio.Sources.Evidence.Measured, own.CompositionProvenance.Evidence);
        SolvedFormula answer = problem.Solve();
        Assert.Equal(0.4 * 520, Grams(answer, FormulaPart.Fat), 1e-6);
        Assert.Contains(Allergen.Hazelnut, answer.ToFormula().Allergens);
        // Nuts are left out, the own one too.
        Assert.Equal(0, ReadOwn(more: ",\"freeFrom\":[\"nuts\"]").Solve().Grams[0]);
    }

    [Fact]
    public void AnOwnFoodOfWhichNobodySaidTheAllergensIsNotFreeOfThemAndThatIsSaid()
    {
        FormulaProblem problem = ReadOwn(""",{"name":"unsalted butter","waterPercent":16,"fatPercent":82,"otherPercent":2}""");
        Assert.Contains("Of unsalted butter nobody said what allergens it has: read its label.", problem.Remarks);
        Assert.Contains("unsalted butter is your own here, not the unsalted butter of the table.", problem.Remarks);
    }

    [Theory]
    [InlineData(",{}", "($.ownIngredients[1]), name is missing")]
    [InlineData(""",{"name":"x","fatPercent":50}""", "($.ownIngredients[1]), the constituents add up to 50 %; 99 to 101 % is expected")]
    [InlineData(""",{"name":"x","fatPercent":-1}""", "fatPercent was -1; from 0 to 100 is expected")]
    [InlineData(""",{"name":"x","fatPercent":100,"allergens":["milk"]}""", "milkFatPercent is missing")]
    [InlineData(""",{"name":"x","fatPercent":50,"waterPercent":50,"milkFatPercent":60}""", "at most the fat, 50 %, is expected")]
    [InlineData(""",{"name":"x","fatPercent":100,"allergens":["fun"]}""", "'fun' is no allergen")]
    [InlineData(""",{"name":"x","fatPercent":100,"allergens":["soy"],"oftenContains":["soy"]}""", "soy stands in allergens already")]
    [InlineData(""",{"name":"hall PRALINE","fatPercent":100}""", "'hall PRALINE' is an own ingredient already")]
    [InlineData(""",{"name":"x","fatPercent":100,"vitaminPercent":1}""", "vitaminPercent")]
    [InlineData(""",{"name":"...","fatPercent":100}""", "makes no id")]
    public void ABadOwnFoodIsRefusedWithItsPlace(string room, string words) =>
        Assert.Contains(words, Assert.Throws<FormatException>(() => ReadOwn(room)).Message, StringComparison.Ordinal);

    // --- words ---

    private static FormulaPart PartOf(string word, string food)
    {
        FormulaProblem problem = FormulaProblem.ParseJson($"{{\"confectioProblem\":1,\"ingredients\":[{{\"ingredient\":\"{food}\",\"baseGrams\":100}}],\"requirements\":[{{\"part\":\"{word}\",\"lowGrams\":0,\"highGrams\":500}}]}}", s_table);
        return problem.Demands.OfType<Demand.PartMass>().Single().Part;
    }

    [Fact]
    public void EveryWordThatAnAnswerPrintsReadsBackAsWhatItMeant()
    {
        foreach (FormulaPart part in FormulaPart.All.Concat(FormulaPart.Traced))
        {
            Ingredient food = s_table.All.First(food => part.IsKnownIn(food) && part.FractionIn(food) > 0);
            Assert.Equal(part, PartOf(part.Word, food.Id));
            Assert.Equal(part, PartOf(part.Name, food.Id));
        }
        // Of every food the id stands in the JSON, the name in the sentences.
        foreach (Ingredient food in s_table.All)
        {
            FormulaPart part = FormulaPart.OfIngredient(food);
            Assert.Equal(part, PartOf(part.Word, food.Id));
            Assert.Equal(part, PartOf(part.Name, food.Id));
            Assert.Equal(part, PartOf("ingredient:" + food.Id, food.Name));
            Assert.Equal(food, FormulaProblem.ParseJson($"{{\"confectioProblem\":1,\"ingredients\":[{{\"ingredient\":\"{food.Name}\",\"baseGrams\":1}}]}}", s_table).Ingredients[0]);
        }
    }

    [Fact]
    public void SaltIsTheConstituentAndItIsSaid()
    {
        FormulaProblem problem = FormulaProblem.ParseJson("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"salted butter","baseGrams":500},{"ingredient":"salt","baseGrams":5}],"groups":[{"name":"All the fats","ingredients":["salted butter"]}],
            "targets":[{"part":"salt","percent":2},{"part":"ingredient:salt","percent":1,"priority":2},{"part":"all-the-fats","percent":90,"priority":3}]}
            """, s_table);
        Demand.Share[] shares = [.. problem.Demands.OfType<Demand.Share>()];
        Assert.Equal([FormulaPart.Salt, FormulaPart.OfIngredient(s_table.Get("table salt"))], shares.Take(2).Select(share => share.Part));
        Assert.Equal("All the fats", shares[2].Part.Name);
        Assert.Equal(["'salt' was read as the constituent, whatever ingredient it is in; the ingredient table salt is written ingredient:salt-table."], problem.Solve().Remarks);
        Assert.Equal("the ingredient water", FormulaPart.OfIngredient(s_table.Get("water")).Name);
    }

    [Fact]
    public void TheWordOfAnAllergenReadsBack() => Assert.All(Enum.GetValues<Allergen>(), allergen =>
    {
        Demand.FreeFrom free = Start(("water", 1)).FreeFrom(allergen).Demands.OfType<Demand.FreeFrom>().Single();
        Assert.Equal([allergen], free.Allergens.Take(1));
        Assert.Equal(free.Allergens, Start(("water", 1)).FreeFrom(free.Word).Demands.OfType<Demand.FreeFrom>().Single().Allergens);
    });

    // --- rounding, by brute force ---

    [Fact]
    public void RoundingKeepsAllThatIsAskedWhereTheBoxHasAPlaceForIt()
    {
        Random random = new(20261210);
        string[] foods = ["heavy cream", "unsalted butter", "granulated sugar", "cocoa powder", "glucose syrup", "honey"];
        int looked = 0, bound = 0;
        for (int i = 0; i < 300; i++)
        {
            FormulaProblem problem = Start([.. foods.OrderBy(_ => random.Next()).Take(5).Select(name => (name, 5.0 * random.Next(20, 90)))]);
            double total = problem.Ingredients.Sum(problem.BaseGramsOf);
            foreach (Ingredient food in problem.Ingredients)
                problem = problem.WithCost(food, random.Next(1, 12));
            FormulaPart two = FormulaPart.OfIngredients("two", problem.Ingredients[0], problem.Ingredients[1]);
            double has = problem.BaseGramsOf(problem.Ingredients[0]) + problem.BaseGramsOf(problem.Ingredients[1]);
            problem = problem.WithMass(two, random.Next(2) == 0 ? 0 : Math.Round(has * 0.9), Math.Round(has * 0.97)).WithMassTarget(FormulaPart.Sugars, total * 0.3, total * 0.31)
                .WithCostCeiling(problem.Candidates.Sum(candidate => candidate.CostPerKilogram * candidate.BaseGrams) / total * 1.01)
                .WithSomeOf(problem.Ingredients.Skip(2), 2, 1, 40);
            SolvedFormula answer = problem.Solve();
            if (answer.Status != SolutionStatus.Solved)
                continue;
            RoundedFormula rounded = answer.Round(RoundingGrid.Grams(5));
            Assert.True(rounded.IsProven);
            (double breach, double miss) ours = Key([.. rounded.Grams]), best = (double.PositiveInfinity, double.PositiveInfinity);
            foreach (double[] place in Box([.. answer.Grams.Select(grams => RoundingGrid.Grams(5).StepOf(problem.Ingredients[0], grams).Grams)], [.. answer.Grams]))
                best = Key(place).CompareTo(best) < 0 ? Key(place) : best;
            if (best.breach > 1e-6)
                continue;
            looked++;
            bound += answer.Binding.Any(binding => binding.Demand is Demand.PartMass or Demand.UnitCost) ? 1 : 0;
            Assert.True(ours.breach <= 1e-6 && ours.miss <= best.miss + 1e-9 * Math.Max(1, best.miss), $"{i}: {answer}; {rounded}: {ours} for {best}");

            // Grams beyond what must be kept, and the squared miss of the target.
            (double, double) Key(double[] grams)
            {
                double pair = grams[0] + grams[1], cost = problem.Candidates.Zip(grams, (candidate, mass) => candidate.CostPerKilogram * mass).Sum();
                Demand.PartMass asked = problem.Demands.OfType<Demand.PartMass>().First(mass => !mass.IsTarget);
                double breach = Math.Abs(grams.Sum() - total) + Math.Max(0, asked.LowGrams - pair) + Math.Max(0, pair - asked.HighGrams)
                    + Math.Max(0, cost - problem.Demands.OfType<Demand.UnitCost>().Single().MostPerKilogram * grams.Sum() - 1e-6)
                    + grams.Skip(2).Where(mass => mass > 0).Sum(mass => Math.Max(0, 40 - mass));
                double sugars = problem.Ingredients.Zip(grams, (food, mass) => food.Composition.Sugars * mass).Sum();
                return (breach <= 1e-6 ? 0 : breach, Math.Pow(Math.Max(0, Math.Max(0.3 * total - sugars, sugars - 0.31 * total)) / (total / 100), 2) / 2);
            }
        }
        Assert.True(looked > 60 && bound > 30, $"{looked} {bound}");
    }

    [Fact]
    public void AtMostIsKeptInRoundingAsAtLeastIs()
    {
        // Butter and sugar with at most 40 % fat, which is met at its end: 5 g of butter more would break it.
        FormulaProblem problem = Start(("unsalted butter", 600), ("granulated sugar", 400)).WithRequirement(FormulaPart.Fat, 0, 0.40);
        RoundedFormula rounded = problem.Solve().Round(RoundingGrid.Grams(10));
        Assert.Equal(490, rounded.Grams[0]); // 493.2 g exactly; the nearest whole total would be 490 and 510
        Assert.All(rounded.Results, result => Assert.True(result.IsMet, result.ToString()));
        FormulaProblem dear = Start(("unsalted butter", 600), ("granulated sugar", 400)).WithRatioRange(s_table.Get("unsalted butter"), s_table.Get("granulated sugar"), 0, 0.981);
        RoundedFormula kept = dear.Solve().Round(RoundingGrid.Grams(10));
        Assert.True(kept.Grams[0] / kept.Grams[1] <= 0.981 * (1 + 1e-9));
    }

    [Fact]
    public void WhatBoilsOffOfATotalThatMovesComesOffTheRoundedShares()
    {
        // 100 g boil off of a total that is a range: the share of water is of what is left in the pot, before rounding and after.
        Random random = new(20261211);
        int looked = 0;
        for (int i = 0; i < 200; i++)
        {
            double[] based = [5 * random.Next(50, 90), 5 * random.Next(50, 90), 5 * random.Next(10, 40)];
            double at = 0.15 + 0.1 * random.NextDouble();
            FormulaProblem problem = Start(("heavy cream", based[0]), ("granulated sugar", based[1]), ("glucose syrup", based[2])).WithTotalRange(based.Sum() - 250, based.Sum())
                .WithBoilOff(100, 100).WithTarget(FormulaPart.Water, at, tolerance: 0.001);
            SolvedFormula answer = problem.Solve();
            if (answer.Status != SolutionStatus.Solved)
                continue;
            RoundedFormula rounded = answer.Round(RoundingGrid.Grams(10));
            double best = Box([.. answer.Grams.Select(grams => RoundingGrid.Grams(10).StepOf(problem.Ingredients[0], grams).Grams)], [.. answer.Grams])
                .Where(place => place.Sum() - 100 >= based.Sum() - 250 && place.Sum() - 100 <= based.Sum()).Select(Miss).DefaultIfEmpty(double.PositiveInfinity).Min();
            if (double.IsInfinity(best))
                continue;
            looked++;
            Assert.True(Miss([.. rounded.Grams]) <= best + 1e-9 * Math.Max(1, best), $"{i}: {answer}; {rounded}: {Miss([.. rounded.Grams])} for {best}");

            double Miss(double[] grams) => Math.Pow(((problem.Ingredients.Zip(grams, (food, mass) => food.Composition[Constituent.Water] * mass).Sum() - 100) / (grams.Sum() - 100) - at) / 0.001, 2);
        }
        Assert.True(looked > 100, $"{looked}");
    }

    // The two steps beside every line.
    private static IEnumerable<double[]> Box(double[] steps, double[] grams)
    {
        double[][] beside = [.. grams.Select((mass, j) =>
        {
            double count = mass / steps[j];
            return mass == 0 ? [0.0] : Math.Abs(count - Math.Round(count)) < 1e-9
                ? [.. new[] { Math.Round(count) - 1, Math.Round(count), Math.Round(count) + 1 }.Select(k => k * steps[j])] : (double[])[Math.Floor(count) * steps[j], Math.Ceiling(count) * steps[j]];
        })];
        int all = beside.Aggregate(1, (product, choices) => product * choices.Length);
        for (int at = 0; at < all; at++)
        {
            double[] place = new double[grams.Length];
            for (int j = 0, rest = at; j < grams.Length; rest /= beside[j].Length, j++)
                place[j] = beside[j][rest % beside[j].Length];
            yield return place;
        }
    }

    // --- energy, sweetness, and what is kept as in the base ---

    private static FormulaProblem Read(string json) => Kitchen.UsCustomary.ReadProblem(System.Text.Encoding.UTF8.GetBytes(json)).OrThrow();

    [Fact]
    public void EnergyIsThatOfTheRegulation()
    {
        // Regulation (EU) No 1169/2011, Annex XIV, by hand: butter 81.11 x 9 + 0.85 x 4 + 0.06 x 4 kcal, sugar 99.8 x 4, of USDA SR 28. Mixed to
        // 500 kcal in 100 g there is one answer.
        double butter = 81.11 * 9 + 0.85 * 4 + 0.06 * 4, sugar = 99.8 * 4, share = (500 - sugar) / (butter - sugar);
        SolvedFormula answer = Read("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"unsalted butter","baseGrams":500},{"ingredient":"granulated sugar","baseGrams":500}],
            "propertyLimits":[{"property":"energy","value":500}]}
            """).Solve();
        Assert.Equal(1000 * share, answer.Grams[0], 1e-6);
        Assert.Equal("energy 500 kcal in 100 g: 500 kcal in 100 g", answer.Results[^1].ToString());
        // The kilojoules have factors of their own: 37, 17 and 17.
        double ofButter = 81.11 * 37 + 0.85 * 17 + 0.06 * 17, ofSugar = 99.8 * 17;
        SolvedFormula joules = Read("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"unsalted butter","baseGrams":500},{"ingredient":"granulated sugar","baseGrams":500}],
            "propertyTargets":[{"property":"energy-kilojoules","value":2000}]}
            """).Solve();
        Assert.Equal(1000 * (2000 - ofSugar) / (ofButter - ofSugar), joules.Grams[0], 1e-6);
        Assert.True(joules.Certificate!.IsBest);
    }

    [Fact]
    public void EnergyIsOfWhatIsMadeAfterBoilingOff()
    {
        SolvedFormula answer = Start(("granulated sugar", 300), ("water", 200)).WithFreeTotal().WithFixed(s_table.Get("granulated sugar"), 300).WithFixed(s_table.Get("water"), 200)
            .WithBoilOff(0, 200).WithPropertyLimit(FormulaProperties.Energy, 300, 300).Solve();
        // 300 g of sugar have 1197.6 kcal, which is 300 in 100 g of 399.2 g.
        Assert.Equal(500 - 1197.6 / 3, answer.BoiledOffGrams, 1e-6);
        Assert.Throws<ArgumentException>("property", () => Start(("water", 100)).WithPropertyLimit(FormulaProperties.Energy, 0, 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => Start(("granulated sugar", 100)).WithPropertyLimit(FormulaProperties.Energy, 0, 901));
    }

    [Fact]
    public void AsSweetAsTheBaseWithAnotherSugar()
    {
        // Half of the sucrose gives way to dextrose; as sweet as before by a table of 1925, in which glucose has 0.74 of sucrose.
        Confectio.Sugars.SweetnessTable table = Confectio.Sugars.SweetnessTable.Get("biester-1925");
        FormulaProblem problem = Start(("granulated sugar", 200), ("heavy cream", 800)).WithIngredient(s_table.Get("dextrose")).WithFixed(s_table.Get("granulated sugar"), 100)
            .WithKeptProperty(Confectio.Sugars.SugarProperties.Sweetness(table));
        SolvedFormula answer = problem.Solve();
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        double Sweet(IEnumerable<double> grams) => problem.Ingredients.Zip(grams, (food, mass) => table.Of(food).Value.Likely * mass).Sum();
        Assert.Equal(Sweet([200, 800, 0]), Sweet(answer.Grams), 1e-6);
        Assert.True(answer.GramsOf(s_table.Get("dextrose")) > 100);
        // The same words in a file, by the joined table.
        SolvedFormula read = Read("""
            {"confectioProblem":1,"ingredients":[{"ingredient":"granulated sugar","baseGrams":200,"fixedGrams":100},{"ingredient":"heavy cream","baseGrams":800},{"ingredient":"dextrose"}],
            "propertyLimits":[{"property":"sweetness","asInBase":true}]}
            """).Solve();
        Confectio.Sugars.SweetnessTable joined = Confectio.Sugars.SweetnessTable.Get("joined");
        Assert.Equal(joined.Of(Formula.Of("x", [FormulaLine.Of(s_table.Get("granulated sugar"), 200), FormulaLine.Of(s_table.Get("heavy cream"), 800)])).Value.Likely,
            joined.Of(read.ToFormula()).Value.Likely, 1e-9);
    }

    [Fact]
    public void TheActivityOfTheWaterIsKeptAsItWillStand()
    {
        Formula based = Formula.Of("x", [FormulaLine.Of(s_table.Get("heavy cream"), 300), FormulaLine.Of(s_table.Get("glucose syrup"), 100), FormulaLine.Of(s_table.Get("granulated sugar"), 100)]);
        FormulaProperty activity = Confectio.Sugars.SugarProperties.WaterActivity(25);
        SolvedFormula answer = FormulaProblem.StartingFrom(based).WithFixed(s_table.Get("glucose syrup"), 60).WithKeptProperty(activity).Solve();
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        Assert.Equal(activity.ValueOf(based)!.Value, activity.ValueOf(answer.ToFormula())!.Value, 0.001 + 1e-6);
        Assert.Throws<ArgumentException>("property", () => FormulaProblem.Of("x", 100, [s_table.Get("water")]).WithKeptProperty(activity));
    }

    [Theory]
    [InlineData("""{"property":"energy","value":400,"celsius":20}""", "energy is asked at nothing")]
    [InlineData("""{"property":"energy","value":1000}""", "value was 1000; from 0 to 900 kcal in 100 g is expected")]
    [InlineData("""{"property":"energy","asInBase":true,"value":1}""", "or asInBase alone")]
    public void ABadEnergyIsRefusedWithItsPlace(string limit, string words)
    {
        FormatException refused = Assert.Throws<FormatException>(() => Read($"{{\"confectioProblem\":1,\"ingredients\":[{{\"ingredient\":\"granulated sugar\",\"baseGrams\":100}}],\"propertyLimits\":[{limit}]}}"));
        Assert.Contains("($.propertyLimits[0]", refused.Message, StringComparison.Ordinal);
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }
}
