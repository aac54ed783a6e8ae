using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Measures;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Heat;

/// <summary>A cake in a room that changes, and the temperature at which a window is left, each found another way.</summary>
public sealed class WarmAfternoonTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private static readonly Formula s_butter = Cream(250, 0), s_half = Cream(125, 100), s_shortening = Cream(0, 200);

    private static readonly ThermometerReading[] s_july = [At(0, 21), At(180, 27), At(360, 31), At(540, 28)];

    // dT/dt = b·(R − T), by many small steps of Runge and Kutta.
    [Theory]
    [InlineData(0.007, 18)]
    [InlineData(0.02, 20)]
    [InlineData(0.09, 30)]
    public void ItFollowsTheRoomAsNewtonHasIt(double rate, double start)
    {
        WarmAfternoon day = s_butter.InWarmAfternoon(s_july, start, Spread.Exactly(rate));
        double celsius = start, step = 0.05;
        for (int i = 0; i < 540 / step; i++)
        {
            double minute = i * step;
            double k1 = rate * (Room(minute) - celsius), k2 = rate * (Room(minute + step / 2) - celsius - step / 2 * k1),
                k3 = rate * (Room(minute + step / 2) - celsius - step / 2 * k2), k4 = rate * (Room(minute + step) - celsius - step * k3);
            celsius += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
            if (i % 2000 == 0)
                Assert.Equal(celsius, day.CelsiusAt(Math.Min(540, minute + step)).Likely, 1e-4);
        }
        Assert.Equal(celsius, day.CelsiusAt(540).Likely, 1e-4);
    }

    [Fact]
    public void TheWorkedNumberOfTheClass() => Assert.Equal(32 - 5 + 5 * Math.Exp(-2.4),
        s_butter.InWarmAfternoon([At(0, 20), At(120, 32)], 20, Spread.Exactly(0.02)).CelsiusAt(120).Likely, 1e-9);

    // In a room that stays as it is, it is the body of one temperature of LumpedBody.
    [Fact]
    public void ARoomThatStaysIsThatOfLumpedBody()
    {
        WarmAfternoon day = s_butter.InWarmAfternoon([At(0, 31), At(200, 31)], 18, Spread.Exactly(0.03));
        LumpedBody body = LumpedBody.FromRate(0.03, At(0, 18), 31);
        Assert.All(Enumerable.Range(0, 21), i => Assert.Equal(body.CelsiusAfter(10 * i), day.CelsiusAt(10 * i).Likely, 1e-9));
        Assert.Equal(body.MinutesTo(day.Limit.UntilCelsius!.Value.Likely)!.Value, day.LikelyMinutes!.Value, 1e-6);
    }

    // Common practice: butter does not stand in a marquee of 31 °C, shortening does.
    [Fact]
    public void ButterIsInDoubtAndShorteningStands()
    {
        Spread rate = WarmAfternoon.RateOfCake(20, 10, 5);
        WarmAfternoon butter = s_butter.InWarmAfternoon(s_july, 18, rate), shortening = s_shortening.InWarmAfternoon(s_july, 18, rate);
        Assert.Equal(WindowAnswer.Doubtful, butter.Stands);
        Assert.True(butter.EarliestMinutes < butter.LikelyMinutes && butter.LatestMinutes is null && butter.MarginKelvins < 0 && butter.MarginPoints < 0);
        Assert.Equal(WindowAnswer.Yes, shortening.Stands);
        Assert.True(shortening.EarliestMinutes is null && shortening.LikelyMinutes is null);
        WarmAfternoon hot = s_butter.InWarmAfternoon([At(0, 36), At(600, 36)], 20, rate);
        Assert.Equal(WindowAnswer.No, hot.Stands);
        Assert.True(hot.EarliestMinutes <= hot.LikelyMinutes && hot.LikelyMinutes <= hot.LatestMinutes);
        // At the moment of likely leaving it is at the likely end of the window, by the middle rate.
        Assert.Equal(hot.Limit.UntilCelsius!.Value.Likely, hot.CelsiusAt(hot.LikelyMinutes!.Value).Likely, 1e-6);
        Assert.Contains(butter.Cautions, words => words.Contains("180 minutes apart", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatIsNotKnownIsNotJudged()
    {
        Formula yolk = Formula.Of("", [FormulaLine.Of(s_table.Get("egg yolk"), 100)]);
        WarmAfternoon day = yolk.InWarmAfternoon(s_july, 18, Spread.Exactly(0.02));
        Assert.Equal(WindowAnswer.NotJudged, day.Stands);
        Assert.Contains("nothing can be said", day.Why, StringComparison.Ordinal);
        Assert.All(FatWindow.All, window => Assert.Null(yolk.Until(window).UntilCelsius));
    }

    // The room of a day that is colder throughout is never worse.
    [Property(MaxTest = 100)]
    public void AColderAfternoonIsNeverWorse(byte[] day, byte butter, byte rate, byte colder)
    {
        double[] room = [.. (day ?? []).Take(6).Select(one => 10 + one % 30.0)];
        if (room.Length < 2)
            return;
        Formula cream = Cream(1 + butter, 1 + 0.8 * (255 - butter));
        Spread rates = new(0.004 + rate / 5000.0, 0.01 + rate / 2000.0, 0.02 + rate / 1000.0);
        WarmAfternoon Of(double less) => cream.InWarmAfternoon(room.Select((celsius, i) => At(60 * i, celsius - less)), 18 - less, rates);
        WarmAfternoon warm = Of(0), cold = Of(1 + colder % 5);
        Assert.True(Rank(cold.Stands) >= Rank(warm.Stands));
        Assert.True(cold.WarmestCelsius.High <= warm.WarmestCelsius.High && (warm.EarliestMinutes is not null || cold.EarliestMinutes is null));
        Assert.InRange(warm.WarmestCelsius.High, warm.CelsiusAt(60 * (room.Length - 1)).High - 1e-9, Math.Max(18, room.Max()) + 1e-9);
    }

    // A window is left where the verdict of a room turns, and that is asked of another piece.
    [Fact]
    public void AWindowIsLeftWhereTheVerdictTurns()
    {
        foreach (Formula cream in (Formula[])[s_butter, s_half, Cream(180, 50)])
        {
            Spread until = cream.Until(FatWindow.All.First(window => window.Use == "stands")).UntilCelsius!.Value;
            if (until.Low > 20)
            {
                Assert.Equal(WindowAnswer.Yes, cream.InWarmRoom(until.Low - 1e-6).Stands);
                Assert.Equal(WindowAnswer.Doubtful, cream.InWarmRoom(until.Low + 1e-6).Stands);
            }
            if (until.High < 40)
            {
                Assert.Equal(WindowAnswer.Doubtful, cream.InWarmRoom(until.High - 1e-6).Stands);
                Assert.Equal(WindowAnswer.No, cream.InWarmRoom(until.High + 1e-6).Stands);
            }
            Assert.Equal(10, cream.SolidFat(until.Likely).PercentOfFat!.Value.Likely, 1e-6);
        }
    }

    // More shortening in place of butter never lowers the temperature to which it holds: its curve lies above from 22 °C on.
    [Property(MaxTest = 60)]
    public void MoreShorteningNeverHoldsLess(byte one, byte other)
    {
        double less = Math.Min(one, other), more = Math.Max(one, other);
        FatWindow stands = FatWindow.All.First(window => window.Use == "stands");
        Spread with = Cream(1 + 255 - more, 0.8111 * more).Until(stands).UntilCelsius!.Value, without = Cream(1 + 255 - less, 0.8111 * less).Until(stands).UntilCelsius!.Value;
        Assert.True(with.Likely >= without.Likely - 1e-6);
    }

    // A disc of 20 cm and 10 cm: area π·0.1·0.3 m², volume π·0.001 m³; a coat of 5 mm.
    [Fact]
    public void TheRateOfACakeIsByHand()
    {
        Spread rate = WarmAfternoon.RateOfCake(20, 10, 5);
        Assert.Equal(60 * 5 * 30 / (500.0 * 2600), rate.Low, 1e-12);
        Assert.Equal(60 * 15 / (0.005 * 900 * 2200), rate.High, 1e-12);
        Assert.Equal(Math.Sqrt(rate.Low * rate.High), rate.Likely, 1e-12);
        Assert.Equal(SpreadBasis.Judged, rate.Basis);
        Assert.Throws<ArgumentOutOfRangeException>("across", () => WarmAfternoon.RateOfCake(2, 10, 5));
        Assert.Throws<ArgumentOutOfRangeException>("high", () => WarmAfternoon.RateOfCake(20, double.NaN, 5));
        Assert.Throws<ArgumentOutOfRangeException>("coat", () => WarmAfternoon.RateOfCake(20, 10, 31));
    }

    [Fact]
    public void BadInputIsRefused()
    {
        Spread rate = Spread.Exactly(0.02);
        ArgumentException fahrenheit = Assert.Throws<ArgumentException>("readings", () => s_butter.InWarmAfternoon([At(0, 70), At(60, 88)], 20, rate));
        Assert.Contains("another scale", fahrenheit.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("readings", () => s_butter.InWarmAfternoon([At(0, 21)], 20, rate));
        Assert.Throws<ArgumentException>("readings", () => s_butter.InWarmAfternoon([At(60, 21), At(0, 22)], 20, rate));
        Assert.Throws<ArgumentOutOfRangeException>("startCelsius", () => s_butter.InWarmAfternoon(s_july, 68, rate));
        Assert.Throws<ArgumentOutOfRangeException>("ratePerMinute", () => s_butter.InWarmAfternoon(s_july, 20, Spread.Exactly(0)));
        WarmAfternoon day = s_butter.InWarmAfternoon(s_july, 20, rate);
        Assert.Throws<ArgumentOutOfRangeException>("minutes", () => day.CelsiusAt(541));
        Assert.Throws<ArgumentOutOfRangeException>("minutes", () => day.RoomCelsiusAt(-1));
        Assert.Equal(24, day.RoomCelsiusAt(90), 1e-12);
    }

    private static int Rank(WindowAnswer answer) => answer switch { WindowAnswer.Yes => 2, WindowAnswer.Doubtful => 1, _ => 0 };

    private static double Room(double minutes) => minutes <= 180 ? 21 + 6 * minutes / 180 : minutes <= 360 ? 27 + 4 * (minutes - 180) / 180 : 31 - 3 * (minutes - 360) / 180;

    private static ThermometerReading At(double minutes, double celsius) => new() { Minutes = minutes, Celsius = celsius };

    private static Formula Cream(double butter, double shortening) => Formula.Of("", [FormulaLine.Of(s_table.Get("icing sugar"), 500),
        .. butter > 0 ? [FormulaLine.Of(s_table.Get("unsalted butter"), butter)] : Array.Empty<FormulaLine>(),
        .. shortening > 0 ? [FormulaLine.Of(s_table.Get("white shortening"), shortening)] : Array.Empty<FormulaLine>()]);
}
