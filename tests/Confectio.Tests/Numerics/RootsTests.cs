using Confectio.Numerics;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>Zeros of rising functions that are rough in their last bits.</summary>
public sealed class RootsTests
{
    [Fact]
    public void WithoutAZeroBetweenThemTheEndIsGiven()
    {
        Assert.Equal(2, Roots.Rising(x => x, 2, 5));
        Assert.Equal(-5, Roots.Rising(x => x + 5, -5, 5));
        Assert.Equal(5, Roots.Rising(x => x - 9, 2, 5));
        Assert.Equal(5, Roots.Rising(x => x - 5, 2, 5));
    }

    // Cubes and a bend: the zero is known.
    [Property(MaxTest = 300)]
    public void TheZeroIsFound(ushort place, byte bend)
    {
        double zero = place / 655.36, slope = 1 + bend;
        Assert.Equal(zero, Roots.Rising(x => x < zero ? x - zero : slope * (x - zero), -1, 101), 1e-12);
        Assert.Equal(zero, Roots.Rising(x => (x - zero) * (1 + (x - zero) * (x - zero) / 1e4), -1, 101), 1e-12);
    }

    // A function that is only good to so many digits: what is named lies within its steps.
    [Property(MaxTest = 300)]
    public void ARoughFunctionHasAZeroToo(ushort place, byte roughness)
    {
        double zero = place / 655.36, step = Math.Pow(10, -14 + roughness % 8);
        Assert.Equal(zero, Roots.Rising(x => Math.Round((x - zero) / step) * step, -1, 101), step + 1e-12);
    }

    // A leap over zero is where it leaps.
    [Fact]
    public void ALeapIsFound() => Assert.Equal(3, Roots.Rising(x => x < 3 ? -1 : 1, 0, 100), 1e-12);
}
