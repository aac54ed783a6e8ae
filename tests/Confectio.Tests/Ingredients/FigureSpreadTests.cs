using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>What a few published figures say of a kitchen that nobody weighed: coverage by simulation, seed 17; the figures are printed.</summary>
public sealed class FigureSpreadTests
{
    private const int Runs = 40_000;

    /// <summary>
    /// Figures and a kitchen from one distribution, whose variance is drawn as the class has it. The rule covers 95 % at any n; with the
    /// technique of the class as the least, more. The random-effects rule (Paule and Mandel 1982) with 2u covers far less of so few.
    /// </summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 0.72)]
    [InlineData(3, 0.83)]
    [InlineData(5, 0.90)]
    public void AKitchenIsCovered(int figures, double pauleMandelAtMost)
    {
        Random random = new(17);
        const double technique = 0.06, rounding = 0.003;
        int rule = 0, floored = 0, pauleMandel = 0;
        double[] logs = new double[figures];
        for (int run = 0; run < Runs; run++)
        {
            double chi = 0;
            for (int i = 0; i < FigureSpread.Freedom; i++)
                chi += Math.Pow(WeighingsTests.Normal(random), 2);
            double tau = FigureSpread.Before(technique) * Math.Sqrt(FigureSpread.Freedom / chi);
            for (int i = 0; i < figures; i++)
                logs[i] = tau * WeighingsTests.Normal(random);
            double kitchen = Math.Abs(tau * WeighingsTests.Normal(random) - logs.Average()), u = FigureSpread.OfAKitchen(logs, technique);
            rule += kitchen <= 2 * u ? 1 : 0;
            floored += kitchen <= 2 * Math.Max(u, technique) ? 1 : 0;
            if (figures > 1)
            {
                // Of equal weights the rule has a closed form: τ² is what the squares have more than the rounding explains.
                double squares = logs.Sum(log => Math.Pow(log - logs.Average(), 2)) / (figures - 1), between = Math.Max(0, squares - rounding * rounding);
                pauleMandel += kitchen <= 2 * Math.Sqrt(between + (between + rounding * rounding) / figures) ? 1 : 0;
            }
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{figures} figures: {100.0 * rule / Runs:0.0} %, with the least {100.0 * floored / Runs:0.0} %, Paule-Mandel {100.0 * pauleMandel / Runs:0.0} %");
        // The standard error of a share of 40 000 is 0.11 %.
        Assert.InRange((double)rule / Runs, 0.945, 0.955);
        Assert.True(floored >= rule);
        Assert.True((double)pauleMandel / Runs <= pauleMandelAtMost);
    }

    // By hand: T of one; ln(205/187)²/2 = 0.00422, (4 × 0.010187² + 0.00422)/5 = 0.000928, × 1.5, root × 2.5706/2 = 0.04794.
    [Fact]
    public void TheWorkedNumberIsThatOfTheDocumentation()
    {
        Assert.Equal(0.02, FigureSpread.OfAKitchen([0.3], 0.02), 1e-12);
        Assert.Equal(0.04794, FigureSpread.OfAKitchen([Math.Log(205), Math.Log(187)], 0.02), 1e-5);
        BulkDensity shortening = IngredientTable.BuiltIn.Get("white shortening").Density(Packing.Packed);
        Assert.Equal(177.9, shortening.GramsPerMillilitre.Low * 236.5882365, 0.05);
        Assert.Equal(215.5, shortening.GramsPerMillilitre.High * 236.5882365, 0.05);
    }

    // Figures that agree do not show that cooks do: the class's technique is the least.
    [Fact]
    public void FiguresThatAgreeDoNotNarrowBelowTheTechnique()
    {
        foreach (Ingredient food in IngredientTable.BuiltIn.All)
        {
            foreach (BulkDensity density in food.Densities)
                Assert.True(density.LogUncertainty >= TechniqueSpreads.For(food.Class, density.Packing) - 1e-12, $"{food}: {density}");
        }
    }

    // The more two figures differ the wider, and the mean stays.
    [Fact]
    public void FiguresThatDisagreeWiden()
    {
        double before = 0;
        foreach (double apart in (double[])[0, 0.01, 0.05, 0.1, 0.3, 1])
        {
            double u = FigureSpread.OfAKitchen([0, apart], 0.02);
            Assert.True(u > before);
            before = u;
        }
        // However little the class would bring, two figures lie within the spread of their own.
        Assert.True(2 * before > 0.5);
    }
}
