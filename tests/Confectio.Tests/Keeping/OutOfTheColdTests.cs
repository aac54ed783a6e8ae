using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Keeping;
using FsCheck;
using FsCheck.Fluent;
using Xunit;

namespace Confectio.Tests.Keeping;

/// <summary>Out of the refrigerator and the freezer: Newton's law by hand, and the cautions that go with thawing.</summary>
public sealed class OutOfTheColdTests
{
    private static KeepingAnswer Answer(params (string Food, double Grams)[] lines) =>
        KeepingAnswer.Of(Formula.Of("icing", lines.Select(line => FormulaLine.Of(IngredientTable.BuiltIn.Get(line.Food), line.Grams))));

    private static readonly KeepingAnswer s_butter = Answer(("unsalted butter", 1000)), s_crusting = Answer(("white shortening", 250), ("icing sugar", 500), ("water", 30)),
        s_cheese = Answer(("cream cheese", 200), ("icing sugar", 400));

    // A litre as a tub as wide as it is high: V = π·d³/4, d = 10.84 cm with lid and bottom 1.5·π·d² = 0.0554 m². Water of 1 kg takes 4.18 kJ/K. By hand.
    [Fact]
    public void TheMinutesAreThoseOfNewton()
    {
        KeepingAnswer water = Answer(("water", 1000));
        OutOfTheCold cold = OutOfTheCold.Of(water, KeepingPlace.Refrigerator, RoomAir.Of(22, 0.60));
        double d = Math.Cbrt(4e-3 / Math.PI), area = 1.5 * Math.PI * d * d, share = (22 - cold.Air.DewPointCelsius) / (22 - 4);
        double Minutes(double transfer) => -Math.Log(share) * 4180 / (transfer * area) / 60;
        Assert.Equal(Minutes(15), cold.MinutesToDewPoint.Low, 0.02 * Minutes(15));
        Assert.Equal(Minutes(5), cold.MinutesToDewPoint.High, 0.02 * Minutes(5));
        Assert.Equal(13.9, cold.Air.DewPointCelsius, 0.1);
    }

    // Frozen water takes 335 kJ/kg (Earle and Earle) at 0 °C before it goes on: a kilogram of it through 0.0554 m² at 22 K.
    [Fact]
    public void WhatIsFrozenMeltsFirst()
    {
        OutOfTheCold frozen = OutOfTheCold.Of(Answer(("water", 1000)), KeepingPlace.Freezer, RoomAir.Of(22, 0.60));
        double d = Math.Cbrt(4e-3 / Math.PI), melting = 335e3 / (5 * 1.5 * Math.PI * d * d * 22) / 60;
        Assert.InRange(frozen.MinutesToDewPoint.High, melting + 200, melting + 1000);
        // Without water nothing melts.
        Spread dry = OutOfTheCold.Of(Answer(("white shortening", 1000)), KeepingPlace.Freezer, RoomAir.Of(22, 0.60)).MinutesToDewPoint;
        Assert.Equal(3, dry.High / dry.Low, 1e-9);
    }

    [Fact]
    public void ThawingIsInTheColdAndTheTimeInTheWarmCounts()
    {
        OutOfTheCold frozen = OutOfTheCold.Of(s_cheese, KeepingPlace.Freezer, RoomAir.Of(24, 0.70));
        Assert.Contains("Food Code 3-501.13", frozen.ThawingSentence, StringComparison.Ordinal);
        Assert.Contains("refrigerator", frozen.ThawingSentence, StringComparison.Ordinal);
        Assert.Contains("two hours in all", frozen.ThawingSentence, StringComparison.Ordinal);
        Assert.Contains("cooler or drier room", frozen.ThawingSentence, StringComparison.Ordinal);
        Assert.Contains("one hour in all", OutOfTheCold.Of(s_cheese, KeepingPlace.Refrigerator, RoomAir.Of(34, 0.50)).ThawingSentence, StringComparison.Ordinal);
        // Shortening, sugar and a little water are kept cold by the strictest rule, whatever the others say: the sentence goes by the strictest.
        Assert.Equal(s_crusting.Places[0].Days == 0, OutOfTheCold.Of(s_crusting, KeepingPlace.Refrigerator, RoomAir.Of(22, 0.60)).ThawingSentence.Contains("two hours", StringComparison.Ordinal));
        Assert.Contains("drops settle on the wrapping", frozen.CondensationSentence, StringComparison.Ordinal);
    }

    [Fact]
    public void InDryAirNothingSettles()
    {
        OutOfTheCold dry = OutOfTheCold.Of(s_butter, KeepingPlace.Refrigerator, RoomAir.Of(20, 0.20));
        Assert.False(dry.Sweats);
        Assert.Equal(0, dry.MinutesToDewPoint.High);
        Assert.Contains("no water settles", dry.CondensationSentence, StringComparison.Ordinal);
    }

    [Fact] // damper air at one temperature never shortens the wait; a colder room of the same humidity never sweats where a warmer does not
    public void DamperIsNeverSooner() => Prop.ForAll(Gen.Choose(50, 450).ToArbitrary(), Gen.Choose(5, 90).ToArbitrary(), Gen.Choose(1, 9).ToArbitrary(), (tenths, percent, more) =>
    {
        double celsius = tenths / 10.0;
        foreach (KeepingPlace place in new[] { KeepingPlace.Refrigerator, KeepingPlace.Freezer })
        {
            OutOfTheCold less = OutOfTheCold.Of(s_cheese, place, RoomAir.Of(celsius, percent / 100.0)), damper = OutOfTheCold.Of(s_cheese, place, RoomAir.Of(celsius, (percent + more) / 100.0));
            Assert.True(damper.MinutesToDewPoint.High >= less.MinutesToDewPoint.High && damper.MinutesToDewPoint.Low >= less.MinutesToDewPoint.Low);
            Assert.True(less.Sweats || !OutOfTheCold.Of(s_cheese, place, RoomAir.Of(Math.Max(4.1, celsius - more), percent / 100.0)).Sweats);
            Assert.True(less.MinutesToDewPoint.Low >= 0 && double.IsFinite(less.MinutesToDewPoint.High));
        }
    }).QuickCheckThrowOnFailure();

    [Fact]
    public void BadInputIsNamed()
    {
        RoomAir air = RoomAir.Of(22, 0.6);
        Assert.Throws<ArgumentNullException>("keeping", () => OutOfTheCold.Of(null!, KeepingPlace.Freezer, air));
        Assert.Throws<ArgumentNullException>("air", () => OutOfTheCold.Of(s_butter, KeepingPlace.Freezer, null!));
        Assert.Throws<ArgumentException>("from", () => OutOfTheCold.Of(s_butter, KeepingPlace.Counter, air));
        Assert.Throws<ArgumentOutOfRangeException>("from", () => OutOfTheCold.Of(s_butter, (KeepingPlace)9, air));
        Assert.Contains("from above 4 to 50", Assert.Throws<ArgumentException>("air", () => OutOfTheCold.Of(s_butter, KeepingPlace.Freezer, RoomAir.Of(3, 0.6))).Message, StringComparison.Ordinal);
    }
}
