using Confectio.Heat;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>What holds for every mix.</summary>
[Properties(Arbitrary = [typeof(HeatGenerators)], MaxTest = 300)]
public sealed class HeatBalanceProperties
{
    // Energy is conserved: to 1e-9 of the heat that a kelvin of the mix is, which is a billionth of a degree.
    [Property]
    public void NothingIsLeftOver(KitchenMix mix)
    {
        HeatBalance balance = mix.Balance;
        if (balance.ResidualKilojoules is double residual)
            Assert.Equal(0, residual, 1e-9 * Kilograms(mix) * 4.2);
        else
            Assert.NotEmpty(balance.FinalTemperature.Reason);
    }

    // The heat that each line takes up on its way to the landing, and the sugar that dissolves, added up one by one by another way, is the heat that comes in.
    [Property]
    public void WhatTheLinesTakeUpAddsUpToWhatComesIn(KitchenMix mix)
    {
        HeatBalance balance = HeatBalance.Of(mix.Lines, mix.Loss, mix.Water, SugarDissolves.None);
        if (balance.FinalTemperature.Value is not { Likely: var landing } || mix.Lines.Any(line => landing > line.MaximumCelsius || landing < line.MinimumCelsius))
            return;
        double sum = mix.Lines.Sum(line =>
        {
            (double sensible, double melting) = line.HeatTo(landing, mix.Water);
            return sensible + melting;
        });
        Assert.Equal(-mix.Loss, sum, 1e-8 * Kilograms(mix));
    }

    [Property]
    public void TheOrderDoesNotMatter(KitchenMix mix)
    {
        HeatBalance balance = mix.Balance, other = (mix with { Lines = [.. Enumerable.Reverse(mix.Lines)] }).Balance;
        Assert.Equal(balance.FinalTemperature.Value is null, other.FinalTemperature.Value is null);
        if (balance.FinalTemperature.Value is { } landing)
        {
            Assert.Equal(landing.Likely, other.FinalTemperature.Value!.Value.Likely, 1e-9);
            Assert.Equal(landing.Low, other.FinalTemperature.Value.Value.Low, 1e-8);
            Assert.Equal(landing.High, other.FinalTemperature.Value.Value.High, 1e-8);
        }
    }

    // A line cut in two parts of the same temperature is the same line.
    [Property]
    public void ALineCutInTwoIsTheSame(KitchenMix mix)
    {
        HeatBalance one = HeatBalance.Of(mix.Lines, 0, mix.Water, mix.Sugar), two = HeatBalance.Of([.. mix.Lines, .. mix.Lines], 0, mix.Water, mix.Sugar);
        Assert.Equal(one.FinalTemperature.Value is null, two.FinalTemperature.Value is null);
        if (one.FinalTemperature.Value is { } landing)
            Assert.Equal(landing.Likely, two.FinalTemperature.Value!.Value.Likely, 1e-9);
    }

    // Without loss, ice and dissolving sugar each line's heat rises with temperature, melting fat too, so the mix is between the coldest and the warmest.
    [Property]
    public void ItLandsBetweenTheColdestAndTheWarmest(KitchenMix mix)
    {
        double coldest = mix.Lines.Min(line => line.Celsius), warmest = mix.Lines.Max(line => line.Celsius);
        Assert.InRange(HeatBalance.Of(mix.Lines, 0, mix.Water, SugarDissolves.None).FinalTemperature.Value!.Value.Likely, coldest - 1e-9, warmest + 1e-9);
        // Dissolving sugar cools: never above the warmest.
        if (HeatBalance.Of(mix.Lines, 0, mix.Water, mix.Sugar).FinalTemperature.Value is { } landing)
            Assert.True(landing.Likely <= warmest + 1e-9);
    }

    [Property]
    public void MoreHeatLandsHigherAndMoreSugarDissolvedLower(KitchenMix mix, PositiveInt more)
    {
        if (mix.Balance.FinalTemperature.Value is not { } landing)
            return;
        if (HeatBalance.Of(mix.Lines, mix.Loss - more.Get / 100.0, mix.Water, mix.Sugar).FinalTemperature.Value is { } warmer)
            Assert.True(warmer.Likely > landing.Likely);
        if (HeatBalance.Of(mix.Lines, mix.Loss, mix.Water, SugarDissolves.None).FinalTemperature.Value is { } none
            && HeatBalance.Of(mix.Lines, mix.Loss, mix.Water, SugarDissolves.AsMuchAsCan).FinalTemperature.Value is { } some)
            Assert.True(some.Likely <= none.Likely + 1e-9);
    }

    [Property]
    public void AWarmerLineLandsHigher(KitchenMix mix, byte place, byte share)
    {
        int index = place % mix.Lines.Length;
        HeatLine line = mix.Lines[index];
        HeatLine[] lines = [.. mix.Lines];
        lines[index] = line.At(line.Celsius + share / 255.0 * (line.MaximumCelsius - line.Celsius));
        if (mix.Balance.FinalTemperature.Value is { } landing && HeatBalance.Of(lines, mix.Loss, mix.Water, mix.Sugar).FinalTemperature.Value is { } warmer)
            Assert.True(warmer.Likely >= landing.Likely - 1e-9);
    }

    [Property]
    public void TheNeededTemperatureLandsOnTheTarget(KitchenMix mix, byte place, byte share)
    {
        int index = place % mix.Lines.Length;
        HeatBalance balance = mix.Balance;
        double target = balance.MinimumCelsius + share / 255.0 * (balance.MaximumCelsius - balance.MinimumCelsius);
        HeatAnswer needed = balance.NeededCelsius(index, target);
        if (needed.Value is not { Likely: var celsius })
        {
            Assert.NotEmpty(needed.Reason);
            return;
        }
        HeatLine[] lines = [.. mix.Lines];
        lines[index] = lines[index].At(celsius);
        HeatBalance again = HeatBalance.Of(lines, mix.Loss, mix.Water, mix.Sugar);
        // A line of a few grams among kilograms has to be known to many more digits than the target.
        double tolerance = 1e-9 * Math.Max(1, Kilograms(mix) / (lines[index].Grams / 1000));
        if (again.MaximumCelsius >= target)
            Assert.Equal(target, again.FinalTemperature.Value!.Value.Likely, tolerance);
    }

    // What is needed for where it lands anyway is what it has.
    [Property]
    public void TheTemperatureThatItHasIsNeededForWhereItLands(KitchenMix mix, byte place)
    {
        int index = place % mix.Lines.Length;
        HeatBalance balance = mix.Balance;
        if (balance.FinalTemperature.Value is not { } landing)
            return;
        double heavier = Kilograms(mix) / (mix.Lines[index].Grams / 1000);
        if (balance.NeededCelsius(index, landing.Likely).Value is { } needed)
            Assert.Equal(mix.Lines[index].Celsius, needed.Likely, 1e-8 * Math.Max(1, heavier) * 10);
    }

    [Property]
    public void IceAndColdWaterLandOnTheTarget(KitchenMix mix, byte share, byte cold)
    {
        HeatBalance balance = mix.Balance;
        double target = Math.Max(0, balance.MinimumCelsius) + share / 256.0 * (balance.MaximumCelsius - Math.Max(0, balance.MinimumCelsius)), ice = -cold / 255.0 * 40;
        if (balance.IceToAdd(target, ice).Value is { Likely: var grams })
        {
            HeatBalance iced = HeatBalance.Of([.. mix.Lines, HeatLine.Ice(grams).At(ice)], mix.Loss, mix.Water, mix.Sugar);
            Assert.Equal(target, iced.FinalTemperature.Value!.Value.Likely, 1e-8);
        }
        else
        {
            Assert.True(balance.FinalTemperature.Value is null || balance.FinalTemperature.Value.Value.Likely <= target + 1e-9);
        }
        double water = cold / 256.0 * Math.Min(100, target);
        if (water < target && balance.WaterToAdd(target, water).Value is { Likely: var added })
        {
            // Pure water, as the balance has it: ice that has melted and warmed on the way, with the heat for that coming in.
            HeatLine[] lines = [.. mix.Lines, HeatLine.Ice(added).At(0)];
            double melt = added / 1000 * 335, warm = added / 1000 * Warm(water, mix.Water);
            HeatBalance watered = HeatBalance.Of(lines, mix.Loss - melt - warm, mix.Water, mix.Sugar);
            Assert.Equal(target, watered.FinalTemperature.Value!.Value.Likely, 1e-8 * Math.Max(1, added / mix.Lines.Sum(line => line.Grams)));
        }
    }

    // The equation of Choi and Okos integrated by hand.
    private static double Warm(double t, WaterHeat water) => (water == WaterHeat.Ashrae ? 4.1289 : 4.1762) * t - 9.0864e-5 * t * t / 2 + 5.4731e-6 * t * t * t / 3;

    [Property]
    public void TheSpreadIsAboutTheLikely(KitchenMix mix)
    {
        if (mix.Balance.FinalTemperature.Value is not { } landing)
            return;
        Assert.InRange(landing.Likely, landing.Low, landing.High);
        Assert.InRange(landing.Low, mix.Balance.MinimumCelsius - 1e-9, 150);
        Assert.InRange(landing.High, landing.Low, 150);
    }

    private static double Kilograms(KitchenMix mix) => mix.Lines.Sum(line => line.Grams) / 1000;
}
