using Confectio.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>The curve that bends without leaving the points between which it stands.</summary>
public sealed class MonotoneCurveTests
{
    // Fritsch and Butland (1984), equal steps: the slope at an inner point is the harmonic mean of the secants beside it, 2·1·3/(1 + 3) = 1.5; at the end it is that of the
    // parabola through three points, (3·1 − 3)/2 = 0. Hermite's form half way: (0 + 1)/2 + (0 − 1.5)/8.
    [Fact]
    public void ItIsTheCurveOfFritschAndButland()
    {
        MonotoneCurve curve = new([0, 1, 2], [0, 1, 4]);
        Assert.Equal(0.5 + (0 - 1.5) / 8, curve.At(0.5), 1e-12);
        // At the other end (3·3 − 1)/2 = 4: (1 + 4)/2 + (1.5 − 4)/8.
        Assert.Equal(2.5 + (1.5 - 4) / 8, curve.At(1.5), 1e-12);
    }

    [Fact]
    public void TwoPointsAreAStraightLine()
    {
        MonotoneCurve line = new([0, 10], [1, 2]);
        Assert.Equal(1.25, line.At(2.5), 1e-15);
        Assert.Equal((1.0, 2.0), (line.At(-1), line.At(11)));
    }

    [Property(MaxTest = 300)]
    public void ItFallsWhereThePointsFall(byte[] drops, byte place)
    {
        double[] x = [.. Enumerable.Range(0, drops.Length + 2).Select(i => i + i % 3 * 0.3)], y = new double[x.Length];
        y[0] = 100;
        for (int i = 1; i < y.Length; i++)
            y[i] = y[i - 1] - (i <= drops.Length ? drops[i - 1] / 100.0 : 0);
        MonotoneCurve curve = new(x, y);
        double first = -1 + place / 255.0 * (x[^1] + 2), second = first + 0.01;
        Assert.True(curve.At(second) <= curve.At(first) + 1e-12);
        Assert.InRange(curve.At(first), y[^1], y[0]);
        Assert.All(x.Zip(y), point => Assert.Equal(point.Second, curve.At(point.First)));
    }
}
