using Confectio.Icings;
using Confectio.Tests.Cakes;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Icings;

/// <summary>Whipped densities beside USDA cups and arithmetic done by hand.</summary>
public sealed class IcingDensityTests
{
    private const double Cup = 236.5882365;

    // USDA SR: whipped cream of 238 g a cup liquid (heavy, fluid) is 120 g a cup whipped; butter of 227 g a cup is 151 g a cup whipped. The overrun by hand.
    [Theory]
    [InlineData(238, 120, 98.33)]
    [InlineData(227, 151, 50.33)]
    public void TheCupsOfTheFoodTables(double plain, double whipped, double overrun)
    {
        double before = IcingDensity.FromMeasure(plain, Cup), after = IcingDensity.FromMeasure(whipped, Cup);
        Assert.Equal(whipped / Cup, after, 1e-15);
        Assert.Equal(overrun, 100 * (before / after - 1), 0.005);
        Assert.Equal(after, IcingDensity.FromOverrun(before, 100 * (plain / whipped - 1)), 1e-12);
    }

    // By hand: 1.288 g/mL without air, whipped to 0.900.
    [Fact]
    public void OverrunByHand() => Assert.Equal(0.9, IcingDensity.FromOverrun(1.288, 43.1), 0.0005);

    // A cup of water at 20 °C holds 0.9982 g/mL (IAPWS, rounded).
    [Fact]
    public void SpecificGravityIsToWater() => Assert.Equal(0.85 * 0.9982, IcingDensity.FromSpecificGravity(0.85), 1e-15);

    [Property(MaxTest = 200)]
    public void MoreOverrunIsLighter(ushort seed)
    {
        Random random = new(seed);
        double free = 0.5 + 1.5 * random.NextDouble(), overrun = 900 * random.NextDouble(), more = overrun + 10 * random.NextDouble() + 0.01;
        Assert.True(IcingDensity.FromOverrun(free, more) < IcingDensity.FromOverrun(free, overrun));
        Assert.Equal(free, IcingDensity.FromOverrun(free, 0), 1e-15);
        Assert.Equal(free, IcingDensity.FromOverrun(free, overrun) * (1 + overrun / 100), 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void BadNumbersAreRefused(double bad)
    {
        PlanShapeTests.Refused("grams", bad, () => IcingDensity.FromMeasure(bad, 100));
        PlanShapeTests.Refused("millilitres", bad, () => IcingDensity.FromMeasure(100, bad));
        PlanShapeTests.Refused("specificGravity", bad, () => IcingDensity.FromSpecificGravity(bad));
        PlanShapeTests.Refused("airFreeGramsPerMillilitre", bad, () => IcingDensity.FromOverrun(bad, 50));
        PlanShapeTests.Refused("gramsPerMillilitre", bad, () => Icing.Of("icing", bad));
    }

    // A density that no icing has is a mistake of grams or of the cup.
    [Fact]
    public void ACupOfLeadIsRefused() => PlanShapeTests.Refused("grams", 2500, () => IcingDensity.FromMeasure(2500, Cup));
}
