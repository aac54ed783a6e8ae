using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas.Solving;

/// <summary>
/// Worked examples of dairy teaching. Milk solids not fat stand in the protein column here: only their sum matters. The exact
/// answers are of the two, three or four linear equations, solved by hand with fractions.
/// </summary>
public sealed class MixingExampleTests
{
    private static readonly FormulaPart s_fat = FormulaPart.Fat, s_solidsNotFat = FormulaPart.Protein, s_sugar = FormulaPart.Sugars;

    // Mixes a given mass of one stream with another to a share of fat; answers the mass of the second.
    private static double Add(double fatOfFirst, double kilograms, double fatOfSecond, double wanted)
    {
        IngredientTable foods = Pantry.Table(("a", 0, fatOfFirst, 0, 0), ("b", 0, fatOfSecond, 0, 0));
        SolvedFormula answer = FormulaProblem.StartingFrom(foods.Formula("mix", ("a", 1000 * kilograms)))
            .WithIngredient(foods.Food("b")).WithFixed(foods.Food("a"), 1000 * kilograms).WithFreeTotal()
            .WithRequirement(s_fat, wanted, wanted).Solve();
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        return answer.Grams[1] / 1000;
    }

    // University of Guelph, dairy science and technology education, standardisation problems 1 and 2.
    [Fact]
    public void CreamIsStandardisedWithSkimMilk() => Assert.Equal(40, Add(40, 160, 0, 0.32), 1e-9);

    [Fact]
    public void MilkIsStandardisedWithCream() => Assert.Equal(120, Add(4, 500, 35, 0.10), 1e-9);

    // A public-domain dairy primer: 30 % cream into 500 lb of 3 % milk gives 5 %, in parts 2 : 25. Pounds serve as kilograms.
    [Fact]
    public void CreamGoesIntoMilkInTwoPartsToTwentyFive() => Assert.Equal(500 * 2.0 / 25, Add(3, 500, 30, 0.05), 1e-9);

    // Milk of 6 and skim milk of 0.1 % to 3.5 %: 3.4 parts in 5.9, published.
    [Fact]
    public void TwoMilksGiveOne() => Assert.Equal(2.5 / 3.4, Add(6, 1, 0.1, 0.035), 1e-9);

    [Fact]
    public void ThreeUnknownsOfAMixAreExact()
    {
        // An agricultural magazine's worked mix, fat 12 and solids not fat 10 in the 85.3 parts of 100 that dairy supplies. The article
        // prints 26.17, 54.987 and 4.143, whose powder is 2.6 % off its own equations; the exact answer is 14257/545, 210211/3815, 30819/7630.
        IngredientTable foods = Pantry.Table(("cream", 0, 38.5, 5.5, 0), ("milk", 0, 3.5, 8.5, 0), ("powder", 0, 0, 96, 0));
        SolvedFormula answer = FormulaProblem.Of("mix", 85.3, foods.All)
            .WithTarget(s_fat, 12 / 85.3).WithTarget(s_solidsNotFat, 10 / 85.3).Solve();
        Assert.Equal(14257.0 / 545, answer.GramsOf(foods.Food("cream")), 1e-9);
        Assert.Equal(210211.0 / 3815, answer.GramsOf(foods.Food("milk")), 1e-9);
        Assert.Equal(30819.0 / 7630, answer.GramsOf(foods.Food("powder")), 1e-9);
        Assert.Equal(26.17, answer.GramsOf(foods.Food("cream")), 0.02);
        Assert.Equal(54.987, answer.GramsOf(foods.Food("milk")), 0.12);
        Assert.Equal(4.143, answer.GramsOf(foods.Food("powder")), 0.12);
    }

    [Fact]
    public void IceCreamMixOfTheSerumPointMethod()
    {
        // Goff, University of Guelph, ice cream mix calculations, problem 3: fat 18, solids not fat 9.5, sucrose 15, stabiliser 0.4, yolk 1;
        // printed 4.08 kg of skim powder and 79.52 kg of milk and cream together.
        IngredientTable foods = Pantry.Table(("powder", 0, 0, 97, 0), ("milk", 0, 3.5, 8.685, 0), ("cream", 0, 30, 6.3, 0), ("dry", 0, 0, 0, 100));
        SolvedFormula answer = FormulaProblem.Of("mix", 100, foods.All).WithFixed(foods.Food("dry"), 15 + 0.4 + 1)
            .WithTarget(s_fat, 0.18).WithTarget(s_solidsNotFat, 0.095).Solve();
        double powder = answer.GramsOf(foods.Food("powder")), milk = answer.GramsOf(foods.Food("milk")), cream = answer.GramsOf(foods.Food("cream"));
        Assert.Equal(4.08, powder, 0.01);
        Assert.Equal(79.52, milk + cream, 0.01);
        // The three equations, solved by elimination: 4.0864, 22.0909, 57.4227.
        Assert.Equal(4.0864, powder, 5e-5);
        Assert.Equal(22.0909, milk, 5e-5);
        Assert.Equal(57.4227, cream, 5e-5);
    }

    [Fact]
    public void IceCreamMixWithCondensedMilk()
    {
        // The same, problem 5: fat 14, solids not fat 10, sucrose 15, stabiliser 0.5; printed 23.58, 5.10, 35.69 and 35.13 kg.
        IngredientTable foods = Pantry.Table(("cond", 0, 8, 20, 42), ("sucrose", 0, 0, 0, 100), ("cream", 0, 30, 6.3, 0), ("milk", 0, 4, 8.64, 0), ("stab", 0, 0, 0, 0));
        SolvedFormula answer = FormulaProblem.Of("mix", 100, foods.All).WithFixed(foods.Food("stab"), 0.5)
            .WithTarget(s_fat, 0.14).WithTarget(s_solidsNotFat, 0.10).WithTarget(s_sugar, 0.15).Solve();
        double[] printed = [23.58, 5.10, 35.69, 35.13], exact = [23.5806, 5.0961, 35.6947, 35.1285];
        for (int j = 0; j < printed.Length; j++)
        {
            Assert.Equal(printed[j], answer.Grams[j], 0.005);
            Assert.Equal(exact[j], answer.Grams[j], 5e-5);
        }
    }

    [Fact]
    public void DryingReachesAsMuchWaterAsProtein()
    {
        // A published exercise: 2000 lb at 68 % water and 15 % protein dried until both are equal leave 940 lb.
        IngredientTable foods = Pantry.Table(("meat", 68, 0, 15, 0));
        SolvedFormula answer = FormulaProblem.StartingFrom(foods.Formula("dried", ("meat", 2000))).WithFixed(foods.Food("meat"), 2000)
            .WithFreeTotal().WithBoilOff(0, 2000).WithRequirement(FormulaPart.Water, 1, 1, of: FormulaPart.Protein).Solve();
        Assert.Equal(SolutionStatus.Solved, answer.Status);
        Assert.Equal(940, answer.ToFormula().TotalGrams, 1e-9);
    }

    [Fact]
    public void TwoGrindsMakeOneAndItsPrice()
    {
        // A published exercise: grinds of 10 and 25 % fat make 1000 lb of 20 %; at 0.99 and 0.79 a pound the mix costs 0.85667 a pound.
        IngredientTable foods = Pantry.Table(("lean", 0, 10, 0, 0), ("fat", 0, 25, 0, 0));
        SolvedFormula answer = FormulaProblem.Of("mix", 1000, foods.All).WithTarget(s_fat, 0.20)
            .WithCost(foods.Food("lean"), 990).WithCost(foods.Food("fat"), 790).Solve();
        Assert.Equal(1000.0 / 3, answer.Grams[0], 1e-9);
        Assert.Equal(2000.0 / 3, answer.Grams[1], 1e-9);
        Assert.Equal(0.85667, answer.Cost / 1000, 5e-6);
    }

    [Fact]
    public void NoMixIsRicherThanItsRichestPart()
    {
        IngredientTable foods = Pantry.Table(("cream", 0, 35, 0, 0), ("milk", 0, 4, 0, 0));
        SolvedFormula answer = FormulaProblem.Of("mix", 1000, foods.All).WithRequirement(s_fat, 0.40, 1).Solve();
        Assert.Equal(SolutionStatus.Impossible, answer.Status);
        Assert.Equal(1000, answer.Grams[0], 1e-9);
        Assert.Contains("fat at least 40 %", answer.Conflict!.Sentence, StringComparison.Ordinal);
    }
}
