using Confectio.Heat;
using Confectio.Safety;
using Confectio.Sources;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>
/// The log reduction over a log of temperatures: the general method, L = 10^((T − T_ref)/z), summed in closed form on straight lines of temperature. Expected
/// values are closed forms written here, arithmetic of the trapezoid, and a quadrature that knows nothing of the bends.
/// </summary>
public sealed class LethalityIntegralTests
{
    private const double Wider = 1e-12;

    [Theory]
    [InlineData(60, 1, 10, 60, 7)]
    [InlineData(60, 1.7231, 5.5556, 60, 11.2)]
    [InlineData(55, 0.55, 4.6, 58.3, 3.5)]
    [InlineData(121.1, 0.2, 10, 115, 20)]
    public void AConstantTemperatureIsTheTimeOverD(double reference, double minutes, double z, double celsius, double held)
    {
        double expected = held * Math.Pow(10, (celsius - reference) / z) / minutes;
        Spread found = KineticSet.Of("own", reference, minutes, z).Unbroken(Readings.Of((3, celsius), (3 + held / 3, celsius), (3 + held, celsius)));
        Assert.Equal(expected, found.Likely, 1e-12 * expected);
        Assert.Equal(found.Likely, found.Low);
        Assert.Equal(found.Likely, found.High);
    }

    // A linear ramp: z/(r·D·ln 10)·(10^((T₂ − T_ref)/z) − 10^((T₁ − T_ref)/z)), r in K a minute.
    [Theory]
    [InlineData(50, 60, 10, 3.90865)]
    [InlineData(60, 50, 10, 3.90865)]
    [InlineData(20, 72, 13, double.NaN)]
    [InlineData(60, 60.0001, 5, double.NaN)]
    public void ALinearRampIsItsClosedForm(double from, double to, double minutes, double printed)
    {
        const double Reference = 60, D = 1, Z = 10;
        double rate = (to - from) / minutes;
        double expected = Z / (rate * D * Math.Log(10)) * (Math.Pow(10, (to - Reference) / Z) - Math.Pow(10, (from - Reference) / Z));
        double found = KineticSet.Of("own", Reference, D, Z).Unbroken(Readings.Of((0, from), (minutes, to))).Likely;
        // The difference of powers in the closed form loses digits where they are nearly the same: over 1e-4 K some five of them.
        Assert.Equal(expected, found, (Math.Abs(to - from) < 1 ? 1e-9 : 1e-12) * expected);
        if (!double.IsNaN(printed))
            Assert.Equal(printed, found, 1e-5);
    }

    // Readings cannot share an instant, so that a step is a rise in a millionth of a minute: what it adds is less than that times the higher rate.
    [Fact]
    public void AStepIsTheSumOfItsLevels()
    {
        const double Instant = 1e-6;
        KineticSet set = KineticSet.Of("own", 60, 1, 5);
        double found = set.Unbroken(Readings.Of((0, 50), (4, 50), (4 + Instant, 65), (6, 65), (6 + Instant, 55), (9, 55))).Likely;
        double expected = 4 * 0.01 + 2 * 10 + 3 * 0.1;
        Assert.Equal(expected, found, 2 * Instant * 10);
    }

    // A ramp through both ends of a set: nothing below 55 °C, as at 65 above it; between, the closed form.
    [Fact]
    public void ARampThroughTheEndsOfASet()
    {
        KineticSet set = KineticSet.Of("own", 60, 2, 8, 55, 65);
        double expected = 1 / 2.0 * (8 / Math.Log(10) * (Math.Pow(10, 5 / 8.0) - Math.Pow(10, -5 / 8.0)) + 15 * Math.Pow(10, 5 / 8.0));
        Assert.Equal(expected, set.Unbroken(Readings.Of((0, 20), (60, 80))).Likely, 1e-12 * expected);
        Assert.Equal(expected, set.Unbroken(Readings.Of((0, 80), (60, 20))).Likely, 1e-12 * expected);
    }

    // 56, 58, 60, 60 and 58 °C a minute apart, D 1 min at 60 °C, z 5. The rule of worksheets: half of the ends and all of the others, of
    // 10^(−0.8), 10^(−0.4), 1, 1, 10^(−0.4). Straight lines of temperature: 5/(2·ln 10) times the differences, and one minute at 60.
    [Fact]
    public void BothRulesOnFiveReadings()
    {
        KineticSet set = KineticSet.Of("own", 60, 1, 5);
        RandomLog log = new([(0, 56), (1, 58), (2, 60), (3, 60), (4, 58)]);
        double a = Math.Pow(10, -0.8), b = Math.Pow(10, -0.4), perRise = 5 / (2 * Math.Log(10));
        Assert.Equal(a / 2 + b + 1 + 1 + b / 2, set.UnbrokenTrapezoid(Readings.Of(log.Pairs)), 1e-12);
        Assert.Equal(perRise * (b - a + (1 - b) + (1 - b)) + 1, set.Unbroken(Readings.Of(log.Pairs)).Likely, 1e-12);
        Assert.Equal(2.67641, set.UnbrokenTrapezoid(Readings.Of(log.Pairs)), 1e-5);
        Assert.Equal(2.56716, set.Unbroken(Readings.Of(log.Pairs)).Likely, 1e-5);
    }

    // FAO Fisheries Technical Paper 285 (Warne 1988): rates every 5 minutes that add up to 2.925 and end in nought give F₀ = 14.6 minutes (14.625); the part while
    // heating, to a last rate of 0.776, 8.6 (8.65). The temperatures are not printed: the rates between are ours, chosen to have the printed sums of 2.925 and 1.342.
    [Fact]
    public void TheTrapezoidOfACanOfFish()
    {
        double[] heating = [0.1, 0.442, 0.8], cooling = [0.5, 0.307];
        Assert.Equal(1.342, heating.Sum(), 1e-12);
        Assert.Equal(2.925, heating.Sum() + 0.776 + cooling.Sum(), 1e-12);
        // With D of one minute the reduction is F₀; the rate is nought below the range.
        KineticSet set = KineticSet.Of("F₀", 121.1, 1, 10, 100);
        (double, double)[] pairs = [.. new[] { 0.0 }.Concat(heating).Append(0.776).Concat(cooling).Append(0).Select((rate, i) => (5.0 * i, rate == 0 ? 99 : 121.1 + 10 * Math.Log10(rate)))];
        double all = set.UnbrokenTrapezoid(Readings.Of(pairs));
        Assert.Equal(14.625, all, 1e-9);
        Assert.Equal(14.6, all, 0.05);
        double part = set.UnbrokenTrapezoid(Readings.Of(pairs[..5]));
        Assert.Equal(8.65, part, 1e-9);
        // Printed 8.6: the half is rounded down.
        Assert.Equal(8.6, part, 0.05 + 1e-9);
    }

    [Fact]
    public void NoneOrOneReadingIsNothing()
    {
        KineticSet set = KineticSet.Get("garibaldi-white");
        Assert.Equal(default, set.LogReduction([]));
        Assert.Equal(default, set.Unbroken(Readings.Of((0, 60))));
        Assert.Equal(0, set.LogReductionByTrapezoid([]));
        Assert.Equal(0, set.UnbrokenTrapezoid(Readings.Of((0, 60))));
    }

    // Temperatures a bit apart are a level, whatever the bit: also next to nought, where it is the smallest number there is.
    [Theory]
    [InlineData(60)]
    [InlineData(1)]
    [InlineData(1e-300)]
    [InlineData(0)]
    public void ABitOfTemperatureIsALevel(double celsius)
    {
        KineticSet set = KineticSet.Of("own", 60, 1, 10);
        double level = set.Unbroken(Readings.Of((0, celsius), (2, celsius))).Likely;
        Assert.Equal(level, set.Unbroken(Readings.Of((0, celsius), (2, Math.BitIncrement(celsius)))).Likely, 1e-12 * level);
    }

    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 400)]
    public void ItIsTheQuadratureOfTheRate(RandomLog log, RandomSet set)
    {
        double expected = Quadrature(log, set.Rate);
        // Where a log only touches the lowest temperature of a set the sum is nought, and the quadrature has an instant of about 1e-16 of the log.
        double instant = 1e-13 * log.Pairs[^1].Minutes * log.Pairs.Max(pair => set.Rate(pair.Celsius));
        Assert.Equal(expected, set.Set.Unbroken(Readings.Of(log.Pairs)).Likely, 1e-8 * expected + instant);
    }

    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 300)]
    public void ItAddsUpOverPartsOfALog(RandomLog log, RandomSet set, ushort at)
    {
        int cut = at % log.Pairs.Length;
        Spread whole = Of(set, log.Pairs), first = Of(set, log.Pairs[..(cut + 1)]), second = Of(set, log.Pairs[cut..]);
        Assert.Equal(whole.Likely, first.Likely + second.Likely, Wider * whole.Likely);
        Assert.Equal(whole.Low, first.Low + second.Low, Wider * whole.Low);
        Assert.Equal(whole.High, first.High + second.High, Wider * whole.High);
    }

    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 300)]
    public void ItDoesNotChangeWithReadingsOnTheStraightLines(RandomLog log, RandomSet set, byte parts)
    {
        int count = parts % 7 + 2;
        List<(double, double)> dense = [log.Pairs[0]];
        for (int i = 1; i < log.Pairs.Length; i++)
        {
            ((double m, double c), (double minutes, double celsius)) = (log.Pairs[i - 1], log.Pairs[i]);
            for (int k = 1; k < count; k++)
                dense.Add((m + (minutes - m) * k / count, c + (celsius - c) * k / count));
            dense.Add((minutes, celsius));
        }
        Spread plain = Of(set, log.Pairs), resampled = Of(set, [.. dense]);
        // A reading between is rounded to a bit of its temperature. Where the rate jumps, at the lowest temperature of a set, that moves the jump: of the whole time at
        // the hottest it is less than 1e-13, however little of the log is above the jump.
        double hottest = log.Pairs.Max(pair => pair.Celsius), bit = set.Set.DecimalReductionMinutes(hottest) is Spread d ? 1e-13 * log.Pairs[^1].Minutes / d.Low : 0;
        Assert.Equal(plain.Likely, resampled.Likely, Wider * plain.Likely + bit);
        Assert.Equal(plain.Low, resampled.Low, Wider * plain.Low + bit);
        Assert.Equal(plain.High, resampled.High, Wider * plain.High + bit);
    }

    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 300)]
    public void AWarmerLogIsNeverLess(RandomLog log, RandomSet set, byte[] tenths)
    {
        (double, double)[] warmer = [.. log.Pairs.Select((pair, i) => (pair.Minutes, pair.Celsius + (tenths.Length == 0 ? 0 : tenths[i % tenths.Length] / 10.0)))];
        Spread cold = Of(set, log.Pairs), warm = Of(set, warmer);
        Assert.True(warm.Likely >= cold.Likely * (1 - Wider));
        Assert.True(warm.Low >= cold.Low * (1 - Wider));
        Assert.True(warm.High >= cold.High * (1 - Wider));
    }

    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 200)]
    public void EveryBuiltInSetHasLowLikelyAndHighInOrder(RandomLog log) => Assert.All(KineticSet.All, set =>
    {
        Spread logs = set.Unbroken(Readings.Of(log.Pairs));
        Assert.True(logs.Low >= 0 && logs.Low <= logs.Likely && logs.Likely <= logs.High);
        // The trapezoid is of the likely D; on a level it is the same sum.
        double celsius = log.Pairs[0].Celsius;
        Assert.Equal(set.Unbroken(Readings.Of((0, celsius), (3, celsius))).Likely, set.UnbrokenTrapezoid(Readings.Of((0, celsius), (3, celsius))), 1e-9);
    });

    // 10^T is convex: where no end of the set is crossed its chord lies above it.
    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 200)]
    public void TheTrapezoidSaysMoreThanTheStraightLine(RandomLog log)
    {
        KineticSet set = KineticSet.Of("own", 60, 1, 5);
        double exact = set.Unbroken(Readings.Of(log.Pairs)).Likely;
        Assert.True(set.UnbrokenTrapezoid(Readings.Of(log.Pairs)) >= exact * (1 - Wider));
    }

    // The log of a probe and the set have one sum.
    [Property(Arbitrary = [typeof(LethalityGenerators)], MaxTest = 50)]
    public void ALogAndASetHaveOneSum(RandomLog log, RandomSet set) => Assert.Equal(Of(set, log.Pairs), Readings.Log(log.Pairs).LogReduction(set.Set));

    private static Spread Of(RandomSet set, (double, double)[] pairs) => set.Set.Unbroken(Readings.Of(pairs));

    private static double Quadrature(RandomLog log, Func<double, double> rate)
    {
        double sum = 0;
        for (int i = 1; i < log.Pairs.Length; i++)
        {
            ((double m, double c), (double minutes, double celsius)) = (log.Pairs[i - 1], log.Pairs[i]);
            double Of(double share) => rate(c + (celsius - c) * share);
            double most = Math.Max(Of(0), Of(1));
            if (most == 0)
                continue;
            const int Panels = 32;
            double mean = 0;
            for (int k = 0; k < Panels; k++)
            {
                double from = k / (double)Panels, to = (k + 1) / (double)Panels;
                mean += Simpson(Of, from, to, Of(from), Of((from + to) / 2), Of(to), 1e-12 * most / Panels, 52);
            }
            sum += mean * (minutes - m);
        }
        return sum;
    }

    // Simpson's rule, halved until it agrees with itself: blind to bends and jumps, which it only finds by halving.
    private static double Simpson(Func<double, double> f, double from, double to, double a, double middle, double b, double tolerance, int depth)
    {
        double centre = (from + to) / 2, left = f((from + centre) / 2), right = f((centre + to) / 2), step = to - from;
        double coarse = step / 6 * (a + 4 * middle + b), fine = step / 12 * (a + 4 * left + 2 * middle + 4 * right + b);
        return depth == 0 || Math.Abs(fine - coarse) <= 15 * tolerance
            ? fine + (fine - coarse) / 15
            : Simpson(f, from, centre, a, left, middle, tolerance / 2, depth - 1) + Simpson(f, centre, to, middle, right, b, tolerance / 2, depth - 1);
    }
}
