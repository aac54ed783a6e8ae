using Confectio.Numerics;
using FsCheck.Xunit;
using MathNet.Numerics.Distributions;
using Xunit;

namespace Confectio.Tests.Numerics;

public sealed class NormalDistributionTests
{
    // The oracle is MathNet's normal distribution function.
    [Property(MaxTest = 2000)]
    public void BetweenIsTheDifferenceOfTheDistributionFunction(double a, double b)
    {
        double low = Math.IEEERemainder(a, 8), high = low + Math.Abs(Math.IEEERemainder(b, 6));
        if (double.IsNaN(low) || double.IsNaN(high))
            return;
        // On the right tail the difference of numbers near one loses all digits, so the oracle is taken on the left.
        double expected = low > 0 ? Normal.CDF(0, 1, -low) - Normal.CDF(0, 1, -high) : Normal.CDF(0, 1, high) - Normal.CDF(0, 1, low);
        // Within five standard deviations the truncated series is good to 1e-3; further out only the magnitude matters.
        Assert.Equal(expected, NormalDistribution.Between(low, high), Math.Max(1e-9, 1e-3 * expected));
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.3)]
    [InlineData(0.39)]
    [InlineData(0.41)]
    [InlineData(1.19)]
    [InlineData(1.21)]
    [InlineData(3.0)]
    public void StepsAddWhatBetweenSaysAtEachStep(double width)
    {
        const double Start = 4.7, Step = 0.9, Weight = 0.37;
        double[] target = new double[12];
        Array.Fill(target, 0.25);
        new NormalSteps().AddBetween(target, Weight, Start, Start + width, Step);
        for (int i = 0; i < target.Length; i++)
        {
            double low = Start - i * Step, high = low + width;
            double expected = low > 0 ? Normal.CDF(0, 1, -low) - Normal.CDF(0, 1, -high) : Normal.CDF(0, 1, high) - Normal.CDF(0, 1, low);
            // 1 % far out, where the remarks promise it; 1e-4 in the middle.
            double tolerance = (Math.Abs(low + width / 2) > 3 ? 1e-2 : 2e-4) * expected;
            Assert.Equal(expected, (target[i] - 0.25) / Weight, Math.Max(tolerance, 1e-14));
        }
    }
}
