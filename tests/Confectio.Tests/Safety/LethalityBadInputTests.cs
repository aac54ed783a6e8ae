using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Safety;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>Bad numbers where heat is judged: refused at once, by name, value and range, the same in every culture.</summary>
public sealed class LethalityBadInputTests
{
    private static readonly KineticSet s_set = KineticSet.Get("mattick");

    private static readonly ProbeLog s_log = Readings.Log((0, 20), (10, 60));

    private static readonly Formula s_white = Formula.Of("Fennmarsh white", [FormulaLine.Of(IngredientTable.BuiltIn.Get("egg white"), 100)]);

    // The call; its parameter; the range that is stated.
    public static TheoryData<string, Action<double>, string, double, double> Ranges => new()
    {
        { "own T", value => KineticSet.Of("own", value, 1, 5), "referenceCelsius", -50, 200 },
        { "own D", value => KineticSet.Of("own", 60, value, 5), "decimalReductionMinutes", 1e-9, 1e9 },
        { "own z", value => KineticSet.Of("own", 60, 1, value), "zKelvin", 1, 100 },
        { "own low", value => KineticSet.Of("own", 60, 1, 5, value), "lowCelsius", -50, 200 - 1e-6 },
        { "own high", value => KineticSet.Of("own", 60, 1, 5, 50, value), "highCelsius", 50 + 1e-6, 200 },
        // Of two temperatures the hotter has the shorter time, on whichever side the number is.
        { "z T1", value => KineticSet.ZKelvin(value, TimeSpan.FromMinutes(value < 60.5 ? 2 : 1), 60.5, TimeSpan.FromMinutes(1.5)), "firstCelsius", -50, 200 },
        { "z T2", value => KineticSet.ZKelvin(60.5, TimeSpan.FromMinutes(1.5), value, TimeSpan.FromMinutes(value < 60.5 ? 2 : 1)), "secondCelsius", -50, 200 },
        { "D(T)", value => s_set.DecimalReductionMinutes(value), "celsius", -50, 220 },
        { "applies", value => s_set.AppliesTo(FoodMatrix.EggWhite, value, out _), "waterActivity", 0, 1 },
        { "held", value => s_log.LongestMinutesAtOrAbove(value), "celsius", -60, 220 },
        { "A aw", value => TimeTemperatureControl.OfHeatedAndPackaged(value, 7), "waterActivity", 0, 1 },
        { "A pH", value => TimeTemperatureControl.OfHeatedAndPackaged(0.9, value), "ph", 0, 14 },
        { "B aw", value => TimeTemperatureControl.Of(value, 7), "waterActivity", 0, 1 },
        { "B pH", value => TimeTemperatureControl.Of(0.9, value), "ph", 0, 14 },
        { "mix", value => HeatedMix.WaterActivity(s_white, value), "celsius", 0, 100 },
    };

    [Theory]
    [MemberData(nameof(Ranges))]
    public void ANumberOutsideItsRangeIsRefusedByNameValueAndRange(string call, Action<double> action, string parameter, double low, double high)
    {
        Assert.NotEmpty(call);
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        try
        {
            double[] outside = [Math.BitDecrement(low), Math.BitIncrement(high), low - 1, high * 10, double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e300];
            Assert.All(outside, value =>
            {
                ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(parameter, () => action(value));
                Assert.Equal(value, thrown.ActualValue);
                string message = string.Create(CultureInfo.InvariantCulture, $"{parameter} was {value:R}; it must be from {low:R} to {high:R}.");
                Assert.StartsWith(message, thrown.Message, StringComparison.Ordinal);
            });
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
        // The ends themselves are in the range.
        action(low);
        action(high);
    }

    // A spread is finite and in order by itself; what is left is that it is an activity.
    [Theory]
    [InlineData(-0.01, 0.5, 0.9)]
    [InlineData(0.5, 0.9, 1.01)]
    [InlineData(2, 3, 4)]
    public void AnActivityOutsideNoughtToOneIsRefused(double low, double likely, double high) =>
        Assert.Throws<ArgumentOutOfRangeException>("waterActivity", () => LethalityJudgement.Of(s_log, FoodMatrix.EggWhite, new Spread(low, likely, high)));

    [Fact]
    public void TheEndsOfTheActivityAreInTheRange()
    {
        Assert.False(LethalityJudgement.Of(s_log, FoodMatrix.EggWhite, default).HasAnswer);
        Assert.True(LethalityJudgement.Of(s_log, FoodMatrix.EggWhite, new Spread(1, 1, 1)).HasAnswer);
    }

    [Fact]
    public void AMatterThatThereIsIsAskedFor()
    {
        Assert.Throws<ArgumentOutOfRangeException>("matter", () => LethalityJudgement.Of(s_log, (FoodMatrix)9, default));
        Assert.Throws<ArgumentOutOfRangeException>("matter", () => s_set.AppliesTo((FoodMatrix)(-1), 0.5, out _));
    }

    [Fact]
    public void NullIsRefusedByName()
    {
        Assert.Throws<ArgumentNullException>("key", () => KineticSet.Get(null!));
        Assert.Throws<ArgumentNullException>("key", () => KineticSet.TryGet(null!, out _));
        Assert.Throws<ArgumentNullException>("name", () => KineticSet.Of(null!, 60, 1, 5));
        Assert.Throws<ArgumentException>("name", () => KineticSet.Of(" \t", 60, 1, 5));
        Assert.Throws<ArgumentNullException>("key", () => HoldTimeTable.Get(null!));
        Assert.Throws<ArgumentNullException>("key", () => HoldTimeTable.TryGet(null!, out _));
        Assert.Throws<ArgumentNullException>("log", () => HoldTimeTable.All[0].Rows[0].IsHeldBy(null!));
        Assert.Throws<ArgumentNullException>("log", () => CoolingCheck.Of(null!));
        Assert.Throws<ArgumentNullException>("log", () => LethalityJudgement.Of(null!, FoodMatrix.EggWhite, default));
        Assert.Throws<ArgumentNullException>("formula", () => HeatedMix.WaterActivity(null!, 60));
        Assert.Throws<ArgumentNullException>("readings", () => ProbeLog.Of(null!));
        Assert.Throws<ArgumentNullException>("set", () => s_log.LogReduction(null!));
    }

    [Theory]
    [InlineData(60, 2, 60, 1)] // one temperature
    [InlineData(60, 2, 65, 2)] // one time
    [InlineData(60, 2, 60, 2)]
    [InlineData(60, 1, 65, 2)] // times that get longer with the heat are no kill by heat
    [InlineData(65, 2, 60, 1)]
    public void TwoPointsOfWhichTheHotterIsNotTheQuickerHaveNoZ(double first, double firstMinutes, double second, double secondMinutes)
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>("secondTime",
            () => KineticSet.ZKelvin(first, TimeSpan.FromMinutes(firstMinutes), second, TimeSpan.FromMinutes(secondMinutes)));
        Assert.Contains(FormattableString.Invariant($"{secondMinutes:R}"), thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ATimeThatIsNoneIsRefusedByName()
    {
        foreach (TimeSpan bad in (TimeSpan[])[TimeSpan.Zero, TimeSpan.FromMinutes(-1), TimeSpan.MaxValue])
        {
            Assert.Throws<ArgumentOutOfRangeException>("firstTime", () => KineticSet.ZKelvin(60, bad, 65, TimeSpan.FromMinutes(1)));
            Assert.Throws<ArgumentOutOfRangeException>("secondTime", () => KineticSet.ZKelvin(60, TimeSpan.FromMinutes(1), 65, bad));
            Assert.Throws<ArgumentOutOfRangeException>("decimalReduction", () => KineticSet.Of("own", 60, bad, 5));
        }
    }

    [Fact]
    public void ReadingsThatDoNotRiseAreRefused()
    {
        ProbeReading[] same = Readings.Of((0, 60), (1, 60), (1, 61)), back = Readings.Of((0, 60), (2, 60), (1.5, 20));
        Assert.Contains("number 3 is at 1 minutes, not after 1", Assert.Throws<ArgumentException>("readings", () => s_set.LogReduction(same)).Message, StringComparison.Ordinal);
        Assert.Contains("number 3 is at 1.5 minutes, not after 2", Assert.Throws<ArgumentException>("readings", () => s_set.LogReductionByTrapezoid(back)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFormulaWithoutWaterHasNoActivity() => Assert.Throws<ArgumentException>("formula",
        () => HeatedMix.WaterActivity(Formula.Of("Fennmarsh fat", [FormulaLine.Of(IngredientTable.BuiltIn.Get("vegetable shortening"), 100)]), 60));

    // Whatever the range allows gives a finite number: the hottest and the coldest, the slowest and the quickest set.
    [Theory]
    [InlineData(-50, 1e-9, 1)]
    [InlineData(200, 1e9, 1)]
    [InlineData(60, 1e-9, 100)]
    [InlineData(60, 1e9, 1)]
    public void EverySetThatIsAllowedGivesAFiniteNumber(double reference, double minutes, double z)
    {
        KineticSet set = KineticSet.Of("extreme", reference, minutes, z);
        ProbeReading[] readings = Readings.Of((-1e6, 0), (0, 220), (1e6, 220));
        Assert.True(double.IsFinite(set.LogReduction(readings).Likely));
        Assert.True(double.IsFinite(set.LogReductionByTrapezoid(readings)));
        Assert.NotNull(set.DecimalReductionMinutes(0));
    }
}
