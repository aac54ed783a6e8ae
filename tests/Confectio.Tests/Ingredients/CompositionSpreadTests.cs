using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>The spread of a composition; the expected values are the stated rule, worked out here.</summary>
public sealed class CompositionSpreadTests
{
    // 0.01 g per 100 g is printed: half of it as a mass fraction, rectangular (GUM 4.3.7), squared.
    private const double RoundingVariance = 0.00005 * 0.00005 / 3;

    private static readonly Dictionary<Evidence, Ingredient> s_foods = Enum.GetValues<Evidence>().ToDictionary(kind => kind, Of);

    private static Ingredient Of(Evidence kind)
    {
        string text = $"id,name,class,default_packing,source,kind,water_percent\nfood,food,liquid,levelled,own,{kind.ToWord()},100\n";
        IngredientTable table = IngredientTable.Empty.LayerIngredients(new StringReader(text)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        return table.Get("food");
    }

    [Theory]
    [InlineData(Evidence.Measured, 0.05)]
    [InlineData(Evidence.Compiled, 0.05)]
    [InlineData(Evidence.Computed, 0.05)]
    [InlineData(Evidence.Fitted, 0.05)]
    [InlineData(Evidence.Estimated, 0.10)]
    [InlineData(Evidence.CommonPractice, 0.10)]
    [InlineData(Evidence.FromMemory, 0.10)]
    public void ItGoesByTheKindOfEvidence(Evidence kind, double relative)
    {
        foreach (double fraction in new[] { 0.0004, 0.03, 0.2, 0.5, 0.8111, 0.998 })
        {
            double part = relative * Math.Min(fraction, 1 - fraction);
            Assert.Equal(Math.Sqrt(part * part + RoundingVariance), CompositionSpread.StandardUncertainty(s_foods[kind], fraction), 1e-15);
        }
    }

    [Fact]
    public void TheWorkedNumberOfTheDocumentationHolds() => // 0.05 x (1 - 0.8111) = 0.009445
        Assert.Equal(0.0094, CompositionSpread.StandardUncertainty(IngredientTable.BuiltIn.Get("unsalted butter"), 0.8111), 5e-5);

    [Fact]
    public void ARefinedSubstanceHasAlmostNone() => // 0.05 x 0.002 = 0.0001, and 0.0000289 of rounding
        Assert.InRange(CompositionSpread.StandardUncertainty(IngredientTable.BuiltIn.Get("granulated sugar"), 0.998), 0.0001, 0.00011);

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    [InlineData(1.005)] // a printed composition may add up to a little more than 1
    [InlineData(1.02)]
    public void NothingAndTheWholeAreCertain(double fraction) =>
        Assert.All(s_foods.Values, food => Assert.Equal(0, CompositionSpread.StandardUncertainty(food, fraction)));

    [Fact]
    public void WhatIsThereIsAsUncertainAsWhatIsNot()
    {
        for (int tenThousandths = 1; tenThousandths < 10_000; tenThousandths++)
        {
            double fraction = tenThousandths / 10_000.0;
            double u = CompositionSpread.StandardUncertainty(s_foods[Evidence.Estimated], fraction);
            // 1 - fraction is off by half a unit in the last place of 1.
            Assert.Equal(CompositionSpread.StandardUncertainty(s_foods[Evidence.Estimated], 1 - fraction), u, 1e-15);
            Assert.InRange(u, Math.Sqrt(RoundingVariance), 0.0501); // 0.10 x 0.5 and a trace of rounding
        }
    }

    [Fact]
    public void EveryGroupOfABuiltInIngredientHasOne() => Assert.All(IngredientTable.BuiltIn.All, food =>
    {
        foreach (double fraction in new[] { food.Composition.Sugars, food.Composition.MilkFat, food.Composition.Sum, food.Composition.Sum - food.Composition[Constituent.Water] })
            Assert.InRange(CompositionSpread.StandardUncertainty(food, fraction), 0, 0.0501);
    });

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(1.0201)]
    [InlineData(81.11)] // a percentage
    [InlineData(double.NaN)]
    public void ANumberThatIsNoMassFractionIsRefused(double bad) =>
        Assert.Throws<ArgumentOutOfRangeException>("fraction", () => CompositionSpread.StandardUncertainty(s_foods[Evidence.Compiled], bad));

    [Fact]
    public void AMissingIngredientIsABadArgument() =>
        Assert.Throws<ArgumentNullException>("ingredient", () => CompositionSpread.StandardUncertainty(null!, 0.5));
}
