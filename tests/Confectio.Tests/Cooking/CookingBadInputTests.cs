using System.Globalization;
using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;
using Xunit;

namespace Confectio.Tests.Cooking;

/// <summary>Bad input to the pot, the log, the crystals and the tables: refused at once, by name, value and range, the same in every culture.</summary>
public sealed class CookingBadInputTests
{
    private static readonly SugarSolution s_syrup = SugarSolution.OfSucrose(0.75);
    private static readonly SyrupPot s_pot = SyrupPot.Of(s_syrup, 800);
    private static readonly CookingLog s_log = CookingLog.Of(s_syrup, AirPressure.SeaLevel, [new(0, 20), new(10, 110)]);

    // The call; its parameter; the range that is stated.
    public static TheoryData<string, Action<double>, string, double, double> Ranges => new()
    {
        { "sucrose", value => Solubility.Sucrose(value), "celsius", 0, 100 },
        { "saturated", value => Solubility.SucroseSaturatedAtCelsius(value), "fraction", Solubility.Sucrose(0), Solubility.Sucrose(100) },
        { "maltose", value => Solubility.Of(Constituent.Maltose, value), "celsius", 0.6, 96.5 },
        { "lactose", value => Solubility.Of(Constituent.Lactose, value), "celsius", 0, 89 },
        { "fructose", value => Solubility.Of(Constituent.Fructose, value), "celsius", 20, 50 },
        { "crystals", value => Crystallisation.Of(s_syrup, value), "celsius", 0, 100 },
        { "rate t", value => Inversion.RatePerMinute(value, 3, 0.5), "celsius", 0, 160 },
        { "rate pH", value => Inversion.RatePerMinute(100, value, 0.5), "ph", 0, 9 },
        { "rate water", value => Inversion.RatePerMinute(100, 3, value), "waterGramsPerMillilitre", 0, 1 },
        { "share", value => Inversion.ShareAfter(value), "exposure", 0, 1e9 },
        { "reading m", value => _ = new ThermometerReading(value, 100), "minutes", -1e6, 1e6 },
        { "reading t", value => _ = new ThermometerReading(0, value), "celsius", -60, 220 },
        { "gap", value => CookingLog.Of(s_syrup, AirPressure.SeaLevel, [new(0, 20), new(1, 30)], value), "gapSeconds", 1, 1.2e8 },
        { "log", value => s_log.Inverted(value), "ph", 0, 9 },
        { "end", value => CookingLog.Of(s_syrup, AirPressure.SeaLevel, [new(0, 20), new(1, 30)]).End(value), "ph", 0, 9 },
        { "weighing", value => s_pot.Weighing(value), "grams", 600, 1e12 },
        { "progress", value => s_pot.CookToSolids(0.9).Progress(value), "gramsNow", 0, 1e12 },
        { "volume", value => s_pot.CookToSolids(0.9).Millilitres(value), "celsius", 0, 100 },
        { "crystal heat", value => CrystallineSucrose.SpecificHeat(value), "celsius", 0, 100 },
    };

    // Those that must be just above nothing.
    public static TheoryData<string, Action<double>, string, double> AboveZero => new()
    {
        { "pot", value => SyrupPot.Of(s_syrup, value), "grams", 1e12 },
        { "solids", value => s_pot.CookToSolids(value), "solids", 1 },
    };

    [Theory]
    [MemberData(nameof(Ranges))]
    public void ANumberOutsideItsRangeIsRefusedByNameValueAndRange(string call, Action<double> action, string parameter, double low, double high)
    {
        Assert.NotEmpty(call);
        double[] outside =
            [Math.BitDecrement(low), Math.BitIncrement(high), low - 1, high * 10, double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e300];
        Assert.All(outside, value =>
        {
            ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(parameter, () => action(value));
            Assert.Equal(value, thrown.ActualValue);
            Assert.StartsWith(string.Create(CultureInfo.InvariantCulture, $"{parameter} was {value:R}; it must be from {low:R} to {high:R}."), thrown.Message, StringComparison.Ordinal);
        });
        action(low);
        action(high);
    }

    [Theory]
    [MemberData(nameof(AboveZero))]
    public void NothingIsTooLittle(string call, Action<double> action, string parameter, double high)
    {
        Assert.NotEmpty(call);
        Assert.All([0, -1, Math.BitIncrement(high), double.NaN, double.PositiveInfinity, double.NegativeInfinity], value =>
            Assert.Contains("from 1E-09 to", Assert.Throws<ArgumentOutOfRangeException>(parameter, () => action(value)).Message, StringComparison.Ordinal));
        action(high);
    }

    [Fact]
    public void ATemperatureOfThePotIsBetweenWaterAndTheStrongestSyrup() => Assert.All([double.NaN, double.PositiveInfinity, -1, 0, 99, 155, 1e6], value =>
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => s_pot.CookTo(value, AirPressure.SeaLevel)));

    [Fact]
    public void ReadingsThatDoNotRiseInTimeAreRefused()
    {
        ArgumentException back = Assert.Throws<ArgumentException>("readings", () => CookingLog.Of(s_syrup, AirPressure.SeaLevel, [new(0, 20), new(10, 110), new(9.5, 112)]));
        Assert.Contains("number 3 is at 9.5 minutes, not after 10", back.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("readings", () => CookingLog.Of(s_syrup, AirPressure.SeaLevel, [new(0, 20), new(0, 20)]));
    }

    [Fact]
    public void TooFewAndTooManyReadingsAreRefused()
    {
        Assert.Contains("has 0;", Assert.Throws<ArgumentException>("readings", () => CookingLog.Of(s_syrup, AirPressure.SeaLevel, [])).Message, StringComparison.Ordinal);
        Assert.Contains("has 1;", Assert.Throws<ArgumentException>("readings", () => CookingLog.Of(s_syrup, AirPressure.SeaLevel, [new(0, 20)])).Message, StringComparison.Ordinal);
        Assert.Contains("more than 100000", Assert.Throws<ArgumentException>("readings", () => CookingLog.Of(s_syrup, AirPressure.SeaLevel, Readings(100_001))).Message, StringComparison.Ordinal);
        // An endless log is one of too many, and comes to an end.
        Assert.Throws<ArgumentException>("readings", () => CookingLog.Of(s_syrup, AirPressure.SeaLevel, Endless()));
        Assert.Equal(CookingLog.MaximumReadings, CookingLog.Of(s_syrup, AirPressure.SeaLevel, Readings(100_000)).Readings.Count);

        static IEnumerable<ThermometerReading> Readings(int count) => Enumerable.Range(0, count).Select(i => new ThermometerReading(i / 10.0, 50));

        static IEnumerable<ThermometerReading> Endless()
        {
            for (long i = 0; ; i++)
                yield return new ThermometerReading(i % 1000, 50);
        }
    }

    [Fact]
    public void ADrySyrupHasNoLogAndNoCrystals()
    {
        Assert.Throws<InvalidOperationException>(() => CookingLog.Of(SugarSolution.OfSucrose(1), AirPressure.SeaLevel, [new(0, 20), new(10, 120)]));
        Assert.Throws<ArgumentException>("syrup", () => Crystallisation.Of(SugarSolution.OfSucrose(1), 20));
        Assert.Throws<ArgumentException>("syrup", () => Crystallisation.DissolvedAtCelsius(SugarSolution.OfSucrose(1)));
        // A property answers: dry sugar is dissolved at no temperature.
        Assert.Null(SyrupPot.Of(SugarSolution.OfSucrose(1), 10).DissolvedAtCelsius);
        // 2 % of water cannot invert 98 % of sugar: it takes 5.2 %.
        CookingLog hard = CookingLog.Of(SugarSolution.OfSucrose(0.9), AirPressure.SeaLevel, [new(0, 120), new(100, 160)]);
        Assert.Contains("water", Assert.Throws<InvalidOperationException>(() => hard.End(1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ASugarWithoutATableIsRefusedByName()
    {
        Assert.All([Constituent.Water, Constituent.Glycerol, Constituent.Fat, Constituent.HigherSaccharides], part =>
        {
            ArgumentException thrown = Assert.Throws<ArgumentException>("sugar", () => Solubility.RangeOf(part));
            Assert.Contains(part.ToString(), thrown.Message, StringComparison.Ordinal);
            Assert.Contains("Maltose", thrown.Message, StringComparison.Ordinal);
            Assert.Throws<ArgumentException>("sugar", () => Solubility.Of(part, 20));
        });
        Assert.Throws<ArgumentOutOfRangeException>("sugar", () => Solubility.RangeOf((Constituent)99));
        Assert.Throws<ArgumentOutOfRangeException>("sugar", () => Solubility.Of((Constituent)(-1), 20));
        Assert.Throws<ArgumentOutOfRangeException>("sugar", () => Crystallisation.Of(s_syrup, 20).SupersaturationAlone((Constituent)99));
    }

    [Fact]
    public void NullIsRefusedByName()
    {
        Assert.Throws<ArgumentNullException>("syrup", () => Crystallisation.Of(null!, 20));
        Assert.Throws<ArgumentNullException>("syrup", () => Crystallisation.DissolvedAtCelsius(null!));
        Assert.Throws<ArgumentNullException>("syrup", () => CookingLog.Of(null!, AirPressure.SeaLevel, []));
        Assert.Throws<ArgumentNullException>("readings", () => CookingLog.Of(s_syrup, AirPressure.SeaLevel, null!));
        Assert.Throws<ArgumentNullException>("solution", () => SyrupPot.Of(null!, 10));
        Assert.Throws<ArgumentNullException>("formula", () => SyrupPot.Of(null!));
        Assert.Throws<ArgumentNullException>("stage", () => s_pot.CookTo(null!, AirPressure.SeaLevel));
        Assert.Throws<ArgumentNullException>("key", () => SweetnessTable.Get(null!));
        Assert.Throws<ArgumentNullException>("key", () => SweetnessTable.TryGet(null!, out _));
        Assert.Throws<ArgumentNullException>("key", () => Equation.Get(null!));
        Assert.Throws<ArgumentNullException>("ingredient", () => SweetnessTable.Get("joined").Of((Ingredient)null!));
        Assert.Throws<ArgumentNullException>("solution", () => SweetnessTable.Get("joined").Of((SugarSolution)null!));
        Assert.Throws<ArgumentNullException>("formula", () => SweetnessTable.Get("joined").Of((Formula)null!));
        Assert.Throws<ArgumentNullException>("ingredient", () => SweetnessTable.Get("joined").Part.FractionIn(null!));
    }

    // A Turk's capital of i is not I: keys are found all the same, and numbers have points.
    [Theory]
    [InlineData("")]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("fa-IR")]
    public void TextIsTheSameInEveryCulture(string name)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
            Assert.Equal("inversion", Equation.Get("INVERSION").Key);
            Assert.Equal("biester-1925", SweetnessTable.Get("BIESTER-1925").Key);
            Assert.False(SweetnessTable.TryGet("bıester-1925", out SweetnessTable? none)); // a dotless i
            Assert.Null(none);
            string message = Assert.Throws<ArgumentException>("key", () => SweetnessTable.Get("IĞDIR")).Message;
            Assert.All(SweetnessTable.All, table => Assert.Contains(table.Key, message, StringComparison.Ordinal));
            Assert.Contains("inversion", Assert.Throws<ArgumentException>("key", () => Equation.Get("ISI")).Message, StringComparison.Ordinal);
            Assert.Equal("12.5 min: 110.5 °C", new ThermometerReading(12.5, 110.5).ToString());
            Assert.Equal("supersaturation 1.50 at 20.5 °C", Crystallisation.Of(SugarSolution.OfSucrose(0.7515), 20.5).ToString().Split(':')[0]);
            Assert.Equal("693.5 g, 106.5 g of water gone", s_pot.CookTo(116, AirPressure.SeaLevel).ToString());
            Assert.Contains("was 0.5 ", Message(() => Solubility.Of(Constituent.Maltose, 0.5)) + " ", StringComparison.Ordinal);
            Assert.Equal("1.00 by joined", SweetnessTable.Get("joined").Of(SugarSolution.OfSucrose(1)).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        static string Message(Action action) => Assert.ThrowsAny<ArgumentException>(action).Message.Replace(';', ' ');
    }

    // Ten million characters are refused at once and quoted short.
    [Fact]
    public void AHugeNameIsQuotedShort()
    {
        string huge = new('x', 10_000_000);
        Assert.True(Assert.Throws<ArgumentException>("key", () => SweetnessTable.Get(huge)).Message.Length < 500);
        Assert.True(Assert.Throws<ArgumentException>("key", () => Equation.Get(huge)).Message.Length < 1500);
    }

    [Fact]
    public void AVeryLongHotLogHasAnAnswer() =>
        Assert.Equal(1, CookingLog.Of(s_syrup, AirPressure.SeaLevel, [new(0, 220), new(1e6, 220)]).Inverted(0).Likely, 1e-12);
}
