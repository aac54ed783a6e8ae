using System.Globalization;
using System.Numerics;
using Confectio.Measures;
using Confectio.Tests.Properties;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>The fewest fills, against an exhaustive table of every volume that so many fills can hold.</summary>
public sealed class PracticalMeasureTests
{
    // What the search allows on top for the rounding of the volume asked for, relative to it.
    private const double Rounding = 1e-12;

    private static readonly MeasuringTools[] s_sets =
        [.. MeasuringSystem.All.Where(system => system.Defines(KitchenUnit.Cup)).SelectMany(system => new[] { MeasuringTools.Usual(system), MeasuringTools.Full(system) })];

    // Worked by hand from the published sizes (US cup 236.5882365, label cup 240, metric cup 250, tablespoon 15, teaspoon 5 mL).
    [Theory]
    [InlineData("us-customary", 400, 0.02, "1 2/3 cups", 3)]
    [InlineData("us-customary", 236.5882365, 0, "1 cup", 1)]
    [InlineData("us-customary", 354.88235475, 0, "1 1/2 cups", 2)]
    [InlineData("us-customary", 34.50245115625, 0, "2 Tbsp + 1 tsp", 3)]
    [InlineData("us-labelling", 80, 0, "1/3 cup", 1)]
    [InlineData("us-labelling", 140, 0, "1/3 cup + 1/4 cup", 2)]
    [InlineData("us-labelling", 615, 0, "2 1/2 cups + 1 Tbsp", 4)]
    [InlineData("metric", 520, 0.001, "2 cups + 1 Tbsp + 1 tsp", 4)]
    [InlineData("metric", 520, 0.01, "2 cups + 1 Tbsp", 3)]
    [InlineData("metric", 0.7, 0.2, "1/8 tsp", 1)]
    [InlineData("australian", 270, 0, "1 cup + 1 Tbsp", 2)]
    [InlineData("japanese", 300, 0, "1 1/2 cups", 2)]
    public void FindsTheMeasureACookWouldTake(string key, double millilitres, double allowed, string amount, int fills)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        PracticalMeasure? found = PracticalMeasure.Find(millilitres, MeasuringTools.Usual(system), allowed);
        Assert.NotNull(found);
        Assert.Equal(amount, found.Amount.ToString());
        Assert.Equal(fills, found.Fills);
        Assert.Equal(millilitres, found.WantedMillilitres);
        Assert.Equal(allowed, found.AllowedError);
        Assert.Equal(Amount.Parse(amount).Millilitres(system), found.Millilitres, 1e-12 * millilitres);
    }

    [Fact]
    public void SaysHowFarOffItIs()
    {
        // Five thirds of a US cup are 394.3137275 mL: 1.4215... % short of 400.
        PracticalMeasure found = PracticalMeasure.Find(400, MeasuringTools.Usual(MeasuringSystem.UsCustomary))!;
        Assert.Equal(394.3137275 / 400 - 1, found.RelativeError, 1e-12);
        Assert.Equal("1 2/3 cups (-1.4 %)", found.ToString());
        Assert.Equal(0.02, found.AllowedError);
        // Over: a metric teaspoon for 4.9 mL is 2.0 % more; exact: no sign.
        Assert.Equal("1 tsp (+2.0 %)", PracticalMeasure.Find(4.9, MeasuringTools.Usual(MeasuringSystem.Metric), 0.03)!.ToString());
        Assert.Equal("1 tsp (0.0 %)", PracticalMeasure.Find(5, MeasuringTools.Usual(MeasuringSystem.Metric), 0.03)!.ToString());
    }

    [Fact]
    public void TheFullSetHasTwoThirds()
    {
        PracticalMeasure found = PracticalMeasure.Find(160, MeasuringTools.Full(MeasuringSystem.UsLabelling), 0)!;
        Assert.Equal((1, "2/3 cup"), (found.Fills, found.Amount.ToString()));
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 60)]
    public void FillsAreFewestAndNearest(SmallVolume volume, byte error)
    {
        double allowed = new[] { 0, 0.001, 0.005, 0.02, 0.05, 0.1, 0.25, 0.5 }[error % 8];
        foreach (MeasuringTools tools in s_sets)
            CheckAgainstEveryFilling(volume.Millilitres, tools, allowed);
    }

    [Property(Arbitrary = [typeof(MeasureGenerators)], MaxTest = 60)]
    public void ToolsOfOnesOwnToo(SmallVolume volume, byte a, byte b, byte c)
    {
        // Sizes with gaps between their multiples, where much cannot be filled at all.
        decimal[] sizes = [.. new[] { 7 + (a % 90), 20 + (b % 90), 50.5m + (c % 90) }.Distinct()];
        MeasuringTools tools = MeasuringTools.Of(MeasuringSystem.Metric, [.. sizes.Select(size => Amount.Of(Fraction.FromDecimal(size), KitchenUnit.Millilitre))]);
        foreach (double allowed in new[] { 0, 0.002, 0.02, 0.1 })
        {
            CheckAgainstEveryFilling(volume.Millilitres, tools, allowed);
            CheckAgainstEveryFilling(Math.Round(volume.Millilitres) + 1, tools, allowed);
        }
    }

    [Fact]
    public void EveryWholeMillilitreToACup()
    {
        foreach (MeasuringTools tools in s_sets)
        {
            for (int millilitres = 1; millilitres <= 250; millilitres += 3)
                CheckAgainstEveryFilling(millilitres, tools, 0.02);
        }
    }

    [Fact]
    public void NothingWhereNothingFits()
    {
        MeasuringTools usual = MeasuringTools.Usual(MeasuringSystem.Metric);
        // The smallest spoon holds 0.625 mL: a hundredth of a millilitre cannot be measured, and 0.9 mL only within a third.
        Assert.Null(PracticalMeasure.Find(0.01, usual, 0.5));
        Assert.Null(PracticalMeasure.Find(0.9, usual, 0.02));
        Assert.NotNull(PracticalMeasure.Find(0.9, usual, 0.31));
        Assert.Null(PracticalMeasure.Find(100, MeasuringTools.Of(MeasuringSystem.Metric, Amount.Of(1, KitchenUnit.Cup)), 0.5));
        Assert.Null(PracticalMeasure.Find(1000.1, usual, 0));
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.001)]
    [InlineData(1e-6)]
    [InlineData(1e-9)]
    [InlineData(0)]
    public void LargeVolumesAreFilledWithinTheError(double allowed)
    {
        foreach (MeasuringTools tools in s_sets)
        {
            foreach (double millilitres in new[] { 1000, 1000.1, 3785.411784, 12_345.678, 99_999.99, 500_000, 999_999.7, 1_000_000 })
            {
                PracticalMeasure? found = PracticalMeasure.Find(millilitres, tools, allowed);
                if (found is null)
                    continue;
                Assert.True(Math.Abs(found.RelativeError) <= allowed + Rounding * 2, $"{millilitres} mL, {tools.MeasuringSystem}: {found}");
                Assert.InRange(found.Fills, 1, (int)(millilitres / 0.6) + 1);
            }
        }
    }

    [Fact]
    public void ManyToolsOfNearlyOneSizeAreSettled()
    {
        MeasuringTools tools = MeasuringTools.Of(MeasuringSystem.Metric,
            [.. Enumerable.Range(0, 64).Select(i => Amount.Of(new Fraction(10_000 + i, 100), KitchenUnit.Millilitre))]);
        // 50 of the largest are 5031.5 mL and 51 of the smallest 5100: between them nothing can be filled.
        Assert.Null(PracticalMeasure.Find(5070, tools, 0.001));
        Assert.Equal(50, PracticalMeasure.Find(5030, tools, 0)!.Fills);
        // 980 000 mL take 9739 fills of the largest and fewer cannot hold them.
        PracticalMeasure large = PracticalMeasure.Find(1_000_000, tools, 0.02)!;
        Assert.Equal(9739, large.Fills);
        Assert.Equal(9739 * 100.63, large.Millilitres, 1e-6);
    }

    [Fact]
    public void AnOddRemainderIsSettled()
    {
        // All but the largest hold tens: 9003 needs seven of 1999 for its 3, which is already too much; 13 993 is those seven.
        MeasuringTools tools = MeasuringTools.Of(MeasuringSystem.Metric,
            [.. new[] { 1999, 500, 200, 100, 80, 50, 40, 20, 10 }.Select(size => Amount.Of(size, KitchenUnit.Millilitre))]);
        Assert.Null(PracticalMeasure.Search(9003, tools, 0, out bool settled));
        Assert.True(settled);
        Assert.Equal(7, PracticalMeasure.Find(13_993, tools, 0)!.Fills);
    }

    [Fact]
    public void OddToolsEndAndSayThatTheSearchDidNot()
    {
        // Cups of 236.5882365 mL beside spoons of whole millilitres share only 1e-7 mL: 236.7 mL within a millionth had no end.
        MeasuringTools odd = MeasuringTools.Of(MeasuringSystem.UsCustomary,
            [.. MeasuringTools.Usual(MeasuringSystem.UsCustomary).Tools.Select(tool => Amount.Of(tool.Low, tool.Unit)),
            .. new[] { 100, 250, 5, 1, 15 }.Select(size => Amount.Of(size, KitchenUnit.Millilitre)), Amount.Of(new(5, 2), KitchenUnit.Millilitre)]);
        foreach (double allowed in (double[])[1e-6, 0, 1e-4, 0.02])
        {
            PracticalMeasure? found = PracticalMeasure.Search(236.7, odd, allowed, out bool settled);
            Assert.Equal(found?.IsFewest ?? settled, settled);
            if (found is not null)
                Assert.InRange(Math.Abs(found.Millilitres - 236.7), 0, 236.7 * (allowed + 2 * Rounding));
        }
        PracticalMeasure? usual = PracticalMeasure.Search(236.7, odd, 0.02, out bool isSettled);
        Assert.True(isSettled);
        Assert.Equal(1, usual!.Fills); // a cup
    }

    [Fact]
    public void TwentyOddToolsEnd()
    {
        MeasuringTools odd = MeasuringTools.Of(MeasuringSystem.Metric,
            [.. Enumerable.Range(0, 20).Select(i => Amount.Of(new(1_000_003L + 7919L * i * i, 100_000), KitchenUnit.Millilitre))]);
        PracticalMeasure? found = PracticalMeasure.Search(1000, odd, 1e-4, out bool settled);
        Assert.Equal(found?.IsFewest ?? settled, settled);
        if (found is not null)
            Assert.InRange(Math.Abs(found.Millilitres - 1000), 0, 0.1 + 1e-9);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(-1)]
    [InlineData(0)]
    [InlineData(0.0099)]
    [InlineData(1_000_000.1)]
    [InlineData(1e308)]
    public void RefusesAVolumeOutsideItsRange(double millilitres)
    {
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(nameof(millilitres),
            () => PracticalMeasure.Find(millilitres, MeasuringTools.Usual(MeasuringSystem.Metric)));
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"was {millilitres:R}; it must be from 0.01 to 1000000"), thrown.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-0.001)]
    [InlineData(0.501)]
    [InlineData(1e308)]
    public void RefusesAnErrorOutsideItsRange(double allowed) => Assert.Throws<ArgumentOutOfRangeException>("allowedError",
        () => PracticalMeasure.Find(100, MeasuringTools.Usual(MeasuringSystem.Metric), allowed));

    [Fact]
    public void ToolsAreNeeded() => Assert.Throws<ArgumentNullException>("tools", () => PracticalMeasure.Find(100, null!));

    [Fact]
    public void BothEndsOfTheRangeAreIn()
    {
        MeasuringTools own = MeasuringTools.Of(MeasuringSystem.Metric, Amount.Of(new(1, 100), KitchenUnit.Millilitre), Amount.Of(1000, KitchenUnit.Litre));
        Assert.Equal(1, PracticalMeasure.Find(0.01, own, 0)!.Fills);
        Assert.Equal(1, PracticalMeasure.Find(1_000_000, own, 0)!.Fills);
        // 0.5 below a megalitre of hundredths: the largest count there can be.
        MeasuringTools tiny = MeasuringTools.Of(MeasuringSystem.Metric, Amount.Of(new(1, 100), KitchenUnit.Millilitre));
        Assert.Equal(50_000_000, PracticalMeasure.Find(1_000_000, tiny, 0.5)!.Fills);
    }

    private static void CheckAgainstEveryFilling(double millilitres, MeasuringTools tools, double allowed)
    {
        PracticalMeasure? found = PracticalMeasure.Find(millilitres, tools, allowed);
        (int Fills, double Error)? best = FillEverything(millilitres, tools, allowed);
        string what = string.Create(CultureInfo.InvariantCulture, $"{millilitres:R} mL within {allowed} of {tools.MeasuringSystem}: {found}, best {best}");
        Assert.True(found is null == best is null, what);
        if (found is null || best is null)
            return;
        Assert.True(Math.Abs(found.Millilitres - millilitres) <= millilitres * (allowed + 2 * Rounding), what);
        Assert.True(found.Fills == best.Value.Fills, what);
        Assert.True(Math.Abs(Math.Abs(found.Millilitres - millilitres) - best.Value.Error) <= 1e-9, what);
        // The amount is what the fills hold, stands largest unit first, and reads back.
        Assert.Equal(found.Millilitres, found.Amount.Millilitres(tools.MeasuringSystem), 1e-11 * millilitres);
        for (int i = 1; i < found.Amount.PartCount; i++)
            Assert.True(tools.MeasuringSystem.MillilitresPer(found.Amount.Part(i - 1).Unit) >= tools.MeasuringSystem.MillilitresPer(found.Amount.Part(i).Unit), what);
        Assert.True(Amount.Parse(found.Amount.ToString()) == found.Amount, what);
    }

    // The fewest fills of every volume up to the limit, one by one, on the grid that all the tools share.
    private static (int Fills, double Error)? FillEverything(double millilitres, MeasuringTools tools, double allowed)
    {
        Fraction[] volumes = [.. tools.Tools.Select(tool => tool.Low * tools.MeasuringSystem.ExactMillilitresPer(tool.Unit))];
        BigInteger denominator = volumes.Aggregate(BigInteger.One, (all, v) => all * v.Denominator / BigInteger.GreatestCommonDivisor(all, v.Denominator));
        BigInteger[] whole = [.. volumes.Select(v => v.Numerator * denominator / v.Denominator)];
        BigInteger common = whole.Aggregate(BigInteger.GreatestCommonDivisor);
        int[] sizes = [.. whole.Select(size => (int)(size / common))];
        double grid = (double)common / (double)denominator;

        int top = (int)Math.Floor(millilitres * (1 + allowed + Rounding) / grid);
        int[] fewest = new int[top + 1];
        for (int sum = 1; sum <= top; sum++)
        {
            fewest[sum] = int.MaxValue;
            foreach (int size in sizes)
            {
                if (size <= sum && fewest[sum - size] < int.MaxValue)
                    fewest[sum] = Math.Min(fewest[sum], fewest[sum - size] + 1);
            }
        }
        (int Fills, double Error)? best = null;
        for (int sum = 1; sum <= top; sum++)
        {
            if (fewest[sum] == int.MaxValue || sum * grid < millilitres * (1 - allowed - Rounding))
                continue;
            (int, double) here = (fewest[sum], Math.Abs(sum * grid - millilitres));
            if (best is null || here.CompareTo(best.Value) < 0)
                best = here;
        }
        return best;
    }
}
