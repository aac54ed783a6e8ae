using Confectio.Baking;
using Confectio.Cakes;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Baking;

/// <summary>A cake in another tin: volumes by geometry, advice as the trade has it.</summary>
public sealed class TinSwapTests
{
    // (9/8)² = 1.265625 and, for the same batter, 25.4 mm · (8/9)² = 20.07 mm.
    [Fact]
    public void ARoundOf8InInOneOf9()
    {
        TinSwap swap = TinSwap.Of(Round(8, 2), Round(9, 2), 0.5);
        Assert.Equal(1.265625, swap.Factor, 1e-9);
        Assert.Equal(1.265625, swap.FactorAsDeep!.Value, 1e-9);
        Assert.Equal(0.5 * 64 / 81, swap.SameBatterFill!.Value, 1e-9);
        Assert.Contains(swap.Advice, words => words.Contains("20 mm deep for 25 mm", StringComparison.Ordinal) && words.Contains("about the same (common practice)", StringComparison.Ordinal));
    }

    // 8 in square to 9 by 13 in: 117/64 in area.
    [Fact]
    public void AsDeepInAShallowerTinIsTheAreas()
    {
        TinSwap swap = TinSwap.Of(CakePan.Of(CakeBody.Prism(PlanShape.Square(CakeLength.FromInches(8)), CakeLength.FromInches(3))),
            CakePan.Of(CakeBody.Prism(PlanShape.Rectangle(CakeLength.FromInches(9), CakeLength.FromInches(13)), CakeLength.FromInches(2))), 0.5, toIsGlass: true);
        Assert.Equal(117.0 / 64, swap.FactorAsDeep!.Value, 1e-9);
        Assert.Equal(117.0 / 64 * 2 / 3, swap.Factor, 1e-9);
        Assert.Contains(swap.Advice, words => words.Contains("three quarters of the time (common practice)", StringComparison.Ordinal));
        Assert.Contains(swap.Advice, words => words.Contains("25 °F (14 K) less hot (common practice)", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatRunsOverIsSaid()
    {
        Assert.Contains(TinSwap.Of(Round(9, 2), Round(8, 2), 0.66).Advice, words => words.Contains("may run over", StringComparison.Ordinal));
        TinSwap small = TinSwap.Of(Round(9, 3), Round(6, 2), 0.66);
        Assert.Null(small.SameBatterFill);
        Assert.Contains(small.Advice, words => words.Contains("does not go into", StringComparison.Ordinal));
        Assert.Contains(TinSwap.Of(Round(9, 2), Round(6, 4), 0.5).Advice, words => words.Contains("a quarter longer", StringComparison.Ordinal));
    }

    // There and back is the same formula, and the volume of the batter is kept.
    [Property(MaxTest = 100)]
    public void ThereAndBackIsOne(byte across, byte other, byte deep)
    {
        CakePan from = Round(4 + across % 10, 1 + deep % 4), to = Round(4 + other % 10, 2);
        TinSwap swap = TinSwap.Of(from, to, 0.5);
        Assert.Equal(1, swap.Factor * TinSwap.Of(to, from, 0.5).Factor, 1e-9);
        if (swap.SameBatterFill is double fill)
            Assert.Equal(swap.BatterMillilitres, to.BatterMillilitres(fill), 1e-6);
        else
            Assert.True(swap.BatterMillilitres > to.BrimMillilitres);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void WhatFillsNoTinIsRefused(double fill) => Assert.Throws<ArgumentOutOfRangeException>(nameof(fill), () => TinSwap.Of(Round(8, 2), Round(9, 2), fill));

    private static CakePan Round(double inches, double deep) => CakePan.Of(CakeBody.Prism(PlanShape.Round(CakeLength.FromInches(inches)), CakeLength.FromInches(deep)));
}
