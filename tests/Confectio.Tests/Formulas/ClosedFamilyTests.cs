using System.Reflection;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas;

/// <summary>
/// A family is an abstract base and sealed children, and nobody outside can add to it: what a member is, is its class and no word
/// beside it.
/// </summary>
public sealed class ClosedFamilyTests
{
    private static readonly Ingredient s_butter = IngredientTable.BuiltIn.Get("unsalted butter");
    private static readonly Ingredient s_sugar = IngredientTable.BuiltIn.Get("granulated sugar");

    [Theory]
    [InlineData(typeof(Demand), 6)]
    [InlineData(typeof(FormulaProperty), 4)]
    [InlineData(typeof(FormulaPart), 5)]
    [InlineData(typeof(CakeBody), 5)]
    [InlineData(typeof(PlanShape), 8)]
    public void OnlyTheLibraryAddsToAFamily(Type family, int leastChildren)
    {
        Assert.True(family.IsAbstract);
        Assert.All(family.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic),
            constructor => Assert.True(constructor.IsPrivate || constructor.IsFamilyAndAssembly));
        Type[] children = [.. family.Assembly.GetTypes().Where(family.IsAssignableFrom).Where(type => !type.IsAbstract)];
        Assert.True(children.Length >= leastChildren, string.Join(", ", children.Select(child => child.Name)));
        Assert.All(children, child => Assert.True(child.IsSealed));
        Assert.DoesNotContain(family.GetProperties(), property => property.PropertyType.IsEnum);
        Assert.DoesNotContain(family.Assembly.GetTypes(), type => type.IsEnum && type.Name == family.Name + "Kind");
    }

    [Fact]
    public void EveryDemandHasItsEndsInItsOwnUnit()
    {
        FormulaProblem problem = FormulaProblem.Of("Fennmarsh Hall", 1000, [s_butter, s_sugar])
            .WithTarget(FormulaPart.Fat, 0.36, priority: 2).WithRequirement(FormulaPart.Sugars, 0.1, 1).WithLimit(s_butter, 0, 600)
            .WithFixed(s_sugar, 400).WithOptional(s_sugar, 5, 500).WithRatioRange(s_butter, s_sugar, 0.5, 2).WithBoilOff(0, 20);
        Assert.Collection(problem.Demands,
            demand => Assert.Equal((1000, 1000), Assert.IsType<Demand.Total>(demand) is var total ? (total.LowGrams, total.HighGrams) : default),
            demand =>
            {
                Demand.Share target = Assert.IsType<Demand.Share>(demand);
                Assert.Equal((FormulaPart.Fat, FormulaPart.Everything), (target.Part, target.Of));
                Assert.Equal((0.36, 0.36), (target.LowFraction, target.HighFraction));
                Assert.True(target.IsTarget);
                Assert.Equal((0.01, 2), (target.Tolerance, target.Priority));
            },
            demand =>
            {
                Demand.Share requirement = Assert.IsType<Demand.Share>(demand);
                // No sugars are above the whole: that end is none.
                Assert.Equal((0.1, double.PositiveInfinity), (requirement.LowFraction, requirement.HighFraction));
                Assert.False(requirement.IsTarget);
                Assert.Null(requirement.Tolerance);
                Assert.Null(requirement.Priority);
            },
            demand =>
            {
                Demand.IngredientMass limit = Assert.IsType<Demand.IngredientMass>(demand);
                Assert.Equal((s_butter, double.NegativeInfinity, 600), (limit.Ingredient, limit.LowGrams, limit.HighGrams));
                Assert.False(limit.IsFixed || limit.MayBeLeftOut);
            },
            demand => Assert.True(Assert.IsType<Demand.IngredientMass>(demand) is { IsFixed: true, MayBeLeftOut: false, LowGrams: 400, HighGrams: 400 }),
            demand => Assert.True(Assert.IsType<Demand.IngredientMass>(demand) is { IsFixed: false, MayBeLeftOut: true, LowGrams: 5, HighGrams: 500 }),
            demand =>
            {
                Demand.Ratio ratio = Assert.IsType<Demand.Ratio>(demand);
                Assert.Equal((s_butter, s_sugar, 0.5, 2), (ratio.Ingredient, ratio.To, ratio.LowRatio, ratio.HighRatio));
            },
            demand => Assert.True(Assert.IsType<Demand.BoilOff>(demand) is { LowGrams: 0, HighGrams: 20 }));
        Assert.Equal(
            [
                "a total of 1000 g", "fat 36 %", "sugars at least 10 %", "unsalted butter at most 600 g", "granulated sugar 400 g",
                "granulated sugar left out or from 5 to 500 g", "unsalted butter from 0.5 to 2 times granulated sugar",
                "water boiled off from 0 to 20 g",
            ], problem.Demands.Select(demand => demand.Sentence));
    }

    [Fact]
    public void WithOtherEndsADemandIsElseTheSame()
    {
        FormulaProblem problem = FormulaProblem.Of("Fennmarsh Hall", 1000, [s_butter, s_sugar])
            .WithTargetRange(FormulaPart.Fat, 0.3, 0.4, FormulaPart.Solids, 0.02, 3).WithFixed(s_sugar, 400).WithOptional(s_butter, 5, 500)
            .WithRatioRange(s_butter, s_sugar, 0.5, 2).WithBoilOff(0, 20);
        Assert.All(problem.Demands, demand =>
        {
            Demand moved = demand.Between(0.25, 0.75);
            Assert.Equal((0.25, 0.75), (moved.LowEnd, moved.HighEnd));
            Assert.Equal(demand.GetType(), moved.GetType());
            Demand back = moved.Between(demand.LowEnd, demand.HighEnd);
            Assert.All(demand.GetType().GetProperties(), property => Assert.Equal(property.GetValue(demand), property.GetValue(back)));
        });
    }
}
