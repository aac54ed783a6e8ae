using System.Globalization;
using Confectio.Cooking;
using Confectio.Ingredients;
using Confectio.Sugars;
using Confectio.Tests.Consistency;
using Xunit;

namespace Confectio.Tests.Sugars;

/// <summary>Bad numbers and bad text in the room of sugars: refused at once, by name, value and range, the same in every culture.</summary>
public sealed class SugarBadInputTests
{
    private static readonly SugarSolution s_syrup = SugarSolution.OfSucrose(0.6), s_strong = SugarSolution.OfSucrose(0.99);

    // The call; its parameter; the range that is stated; a number just outside at either end.
    public static TheoryData<string, Action<double>, string, double, double> Ranges => new()
    {
        { "kPa", value => AirPressure.FromKilopascals(value), "kilopascals", 1, 200 },
        { "hPa", value => AirPressure.FromHectopascals(value), "hectopascals", 10, 2000 },
        { "m", value => AirPressure.FromAltitudeMetres(value), "metres", -500, 9000 },
        { "ft", value => AirPressure.FromAltitudeFeet(value), "feet", -1640, 29527 },
        { "report", value => AirPressure.FromWeatherReport(value, 0), "reportedKilopascals", 85, 110 },
        { "report m", value => AirPressure.FromWeatherReport(101, value), "metres", -500, 9000 },
        { "kettle", value => AirPressure.FromBoilingWater(value), "celsius", 60, 120 },
        { "p(T)", value => SaturatedWater.PressureKilopascals(value), "celsius", 0, 373.946 },
        { "T(p)", value => SaturatedWater.BoilingCelsius(value), "kilopascals", 0.611212677, 22064 },
        { "Bx", value => Brix.FromPercent(value), "percent", 0, 100 },
        { "fraction", value => Brix.FromFraction(value), "fraction", 0, 1 },
        { "sg", value => Brix.FromSpecificGravity(value), "specificGravity", 1, Brix.FromPercent(100).SpecificGravity },
        { "apparent", value => Brix.FromApparentSpecificGravity(value), "apparentSpecificGravity", 1, Brix.FromPercent(100).ApparentSpecificGravity },
        { "Bé", value => Brix.FromBaume(value), "degrees", 0, 51 },
        { "Bé of a scale", value => Brix.FromBaume(value, BaumeScale.Rational), "degrees", 0, 51 },
        { "density t", value => Brix.FromGramsPerMillilitre(1.2, value), "celsius", 0, 100 },
        { "density", value => Brix.FromPercent(50).GramsPerMillilitre(value), "celsius", 0, 100 },
        { "commercial", value => BaumeScale.CommercialSpecificGravity(value), "degrees", 1, 60 },
        { "modulus", value => BaumeScale.Modulus145.FromSpecificGravity(value), "specificGravity", 1, 3 },
        { "degrees", value => BaumeScale.Modulus145.ToSpecificGravity(value), "degrees", 0, 90 },
        { "hydrometer t", value => Hydrometer.MadeFor(20).Reading(Brix.FromPercent(60), value), "celsius", 0, 100 },
        { "hydrometer t0", value => Hydrometer.MadeFor(value), "celsius", 0, 60 },
        { "sucrose", value => SugarSolution.OfSucrose(value), "fraction", 0, 1 },
        { "solids", value => s_syrup.WithSolids(value), "solids", 0, 1 },
        { "share", value => s_syrup.Inverted(value), "share", 0, 1 },
        { "rho", value => s_syrup.GramsPerMillilitre(value), "celsius", 0, 100 },
        { "n", value => s_syrup.RefractiveIndex(value), "celsius", 0, 80 },
        { "reading", value => s_syrup.RefractometerReading(value), "celsius", 0, 80 },
        { "c", value => s_syrup.SpecificHeat(value), "celsius", 0, 120 },
        { "eta", value => s_syrup.ViscosityMillipascalSeconds(value), "celsius", 0, 100 },
        { "aw", value => s_syrup.WaterActivityAllDissolved(value), "celsius", 0, 220 },
        { "boiling w", value => SucroseSolution.BoilingCelsius(value, 101), "fraction", 0, 0.98 },
        { "boiling p", value => SucroseSolution.BoilingCelsius(0.5, value), "kilopascals", 1, 200 },
        { "aw w", value => SucroseSolution.WaterActivity(value, 25), "fraction", 0, 0.98 },
        { "aw t", value => SucroseSolution.WaterActivity(0.5, value), "celsius", 0, 220 },
        { "rho w", value => SucroseSolution.GramsPerMillilitre(value, 20), "fraction", 0, 1 },
        { "rho t", value => SucroseSolution.GramsPerMillilitre(0.5, value), "celsius", 0, 100 },
        { "mix", value => SugarSolution.Mix(s_syrup, value, s_syrup, 1), "firstGrams", 0, 1e12 },
        { "mix second", value => SugarSolution.Mix(s_syrup, 1, s_syrup, value), "secondGrams", 0, 1e12 },
        { "grams", value => SugarSolution.FromGrams(Parts((Constituent.Sucrose, value), (Constituent.Water, 1))), "grams", 0, 1e12 },
        { "molar mass", value => SugarSolution.FromGrams(Parts((Constituent.Water, 1)), value), "higherSaccharidesMolarMass", 504, 20000 },
        { "zobrist t", value => WaterActivity.Zobrist(Brix.FromPercent(50), value), "celsius", -60, 60 },
        { "money", value => WaterActivity.MoneyBorn(value), "molesPer100Grams", 0, 20 },
        { "grover", value => WaterActivity.Grover(value), "sucroseEquivalent", 0.41, 11 },
        { "norrish", value => WaterActivity.Norrish(1, 1, value), "constant", 0, 20 },
        { "printed n", value => PrintedEquations.BrixOfRefractiveIndex(value), "refractiveIndex", 1.333, 1.504 },
        { "printed sg", value => PrintedEquations.BrixOfSpecificGravity(value), "apparentSpecificGravity", 1, 1.17874 },
        { "printed plato", value => PrintedEquations.PlatoOfSpecificGravity(value), "apparentSpecificGravity", 1, 1.083 },
        { "own stage", value => CookingStage.Of("warm", value, 220), "lowCelsius", 100, 220 },
        { "own stage high", value => CookingStage.Of("warm", 120, value), "highCelsius", 120, 220 },
        { "thermometer", value => Thermometer.FromBoilingWater(value, AirPressure.SeaLevel), "readingCelsius", 60, 130 },
        { "target", value => Thermometer.TargetByBoilingWater(value, 95), "targetCelsius", 100, 220 },
        { "reading at", value => Thermometer.FromBoilingWater(100, AirPressure.SeaLevel).ToTrue(value), "readingCelsius", -50, 400 },
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
            string message = string.Create(CultureInfo.InvariantCulture, $"{parameter} was {value:R}; it must be from {low:R} to {high:R}.");
            Assert.StartsWith(message, thrown.Message, StringComparison.Ordinal);
        });
        // The ends themselves are in the range.
        action(low);
        action(high);
    }

    [Fact]
    public void ADefinedModelIsAskedFor()
    {
        Assert.Throws<ArgumentOutOfRangeException>("model", () => s_syrup.BoilingCelsius(AirPressure.SeaLevel, (BoilingModel)7));
        Assert.Throws<ArgumentOutOfRangeException>("model", () => s_syrup.WaterActivityAllDissolved(25, (WaterActivityModel)7));
        Assert.Throws<ArgumentOutOfRangeException>("model", () => SucroseSolution.BoilingCelsius(0.5, 101, (BoilingModel)(-1)));
        Assert.Throws<ArgumentOutOfRangeException>("constituent", () => s_syrup[(Constituent)99]);
    }

    [Theory]
    [InlineData(0.5, 0.4, "0.9")]
    [InlineData(0.5, 0.51, "1.01")]
    [InlineData(0.5, 0.50000202, "1.000002")]
    public void FractionsThatDoNotAddUpAreRefused(double sucrose, double water, string sum)
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>("fractions",
            () => SugarSolution.FromFractions(Parts((Constituent.Sucrose, sucrose), (Constituent.Water, water))));
        Assert.Contains(sum, thrown.Message, StringComparison.Ordinal);
        Assert.Contains(nameof(SugarSolution.FromGrams), thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FractionsWithinAMillionthAddUp() =>
        Assert.Equal(1, SugarSolution.FromFractions(Parts((Constituent.Sucrose, 0.5), (Constituent.Water, 0.5000005))).Solids * 2, 1e-6);

    [Fact]
    public void TwiceTheSameSubstanceIsRefused() => Assert.Contains("Sucrose twice", Assert.Throws<ArgumentException>("grams",
        () => SugarSolution.FromGrams(Parts((Constituent.Sucrose, 1), (Constituent.Water, 1), (Constituent.Sucrose, 1)))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(Constituent.Fat)]
    [InlineData(Constituent.Protein)]
    [InlineData(Constituent.Starch)]
    [InlineData(Constituent.Fibre)]
    [InlineData(Constituent.Alcohol)]
    [InlineData(Constituent.Salt)]
    [InlineData(Constituent.OtherAsh)]
    [InlineData(Constituent.Other)]
    public void WhatDoesNotDissolveIsRefusedByName(Constituent constituent)
    {
        Assert.Contains(constituent.ToString(), Assert.Throws<ArgumentException>("grams",
            () => SugarSolution.FromGrams(Parts((constituent, 1), (Constituent.Water, 1)))).Message, StringComparison.Ordinal);
        Assert.Equal(0, s_syrup[constituent]);
    }

    [Fact]
    public void NothingIsNoSolution()
    {
        Assert.Throws<ArgumentException>("grams", () => SugarSolution.FromGrams([]));
        Assert.Throws<ArgumentException>("grams", () => SugarSolution.FromGrams(Parts((Constituent.Sucrose, 0))));
        Assert.Throws<ArgumentException>("firstGrams", () => SugarSolution.Mix(s_syrup, 0, s_syrup, 0));
        Assert.Throws<InvalidOperationException>(() => SugarSolution.PureWater.WithSolids(0.1));
        Assert.Throws<InvalidOperationException>(() => SugarSolution.PureWater.BoilingAt(105, AirPressure.SeaLevel));
    }

    [Fact]
    public void NullIsRefusedByName()
    {
        Assert.Throws<ArgumentNullException>("grams", () => SugarSolution.FromGrams(null!));
        Assert.Throws<ArgumentNullException>("fractions", () => SugarSolution.FromFractions(null!));
        Assert.Throws<ArgumentNullException>("first", () => SugarSolution.Mix(null!, 1, s_syrup, 1));
        Assert.Throws<ArgumentNullException>("second", () => SugarSolution.Mix(s_syrup, 1, null!, 1));
        Assert.Throws<ArgumentNullException>("scale", () => Brix.FromBaume(30, null!));
        Assert.Throws<ArgumentNullException>("scale", () => s_syrup.RefractometerReading().ToBaume(null!));
        Assert.Throws<ArgumentNullException>("name", () => CookingStage.Get(null!));
        Assert.Throws<ArgumentNullException>("name", () => CookingStage.Of(null!, 110, 120));
        Assert.Throws<ArgumentException>("name", () => CookingStage.Of(" \t", 110, 120));
    }

    // A solution may be as strong as it likes; what cannot be worked out of it says how far it can.
    [Fact]
    public void BeyondTheEquationsTheLimitIsSaid()
    {
        Says("98 %", () => s_strong.BoilingCelsius(AirPressure.SeaLevel));
        Says("98 %", () => s_strong.WaterActivityAllDissolved());
        Says("98 %", () => s_strong.BoilingCelsius(AirPressure.SeaLevel));
        Says("85 %", () => SugarSolution.OfSucrose(0.8501).ViscosityMillipascalSeconds(20));
        Says("95", () => SugarSolution.OfSucrose(0.9501).RefractometerReading());
        Assert.Null(Brix.FromPercent(95.01).RefractiveIndex);
        Says("0.41", () => SugarSolution.OfSucrose(0.2).WaterActivityAllDissolved(25, WaterActivityModel.Grover));
        Says("water", () => SugarSolution.OfSucrose(0.98).Inverted(1));
        // What is still within it is answered.
        Assert.True(SugarSolution.OfSucrose(0.85).ViscosityMillipascalSeconds(20) > 1000);
        Assert.Equal(95, SugarSolution.OfSucrose(0.95).RefractometerReading().Percent, 1e-8);
        Assert.True(SugarSolution.OfSucrose(0.98).BoilingCelsius(AirPressure.SeaLevel).Likely > 150);

        static void Says<T>(string limit, Func<T> call) =>
            Assert.Contains(limit, Assert.Throws<InvalidOperationException>(() => { call(); }).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NoSyrupBoilsBelowWater()
    {
        AirPressure up = AirPressure.FromAltitudeMetres(1600);
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => s_syrup.BoilingAt(94, up));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => SucroseSolution.FractionBoilingAt(99, 101.325));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => SucroseSolution.FractionBoilingAt(160, 101.325));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => CookingStage.StagesAt(94, up));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => CookingStage.StagesAt(221, up));
        Assert.Throws<ArgumentOutOfRangeException>("lowCelsius", () => CookingStage.Of("warm", 80, 90));
    }

    [Fact]
    public void AColumnThatIsTooShortIsRefused() =>
        Assert.Throws<ArgumentException>("celsius", () => SucroseSolution.BoilingCelsius([0.1, 0.2], 101, new double[1]));

    [Fact]
    public void EquivalentsThatDoNotGoWithTheSugarsAreRefused()
    {
        Assert.Throws<ArgumentException>("dextroseEquivalent", () => HigherSaccharides.MolarMass(42, 0.40, 0.40));
        Assert.Throws<ArgumentException>("dextroseEquivalent", () => HigherSaccharides.MolarMass(20, 0.20, 0.10));
        Assert.Throws<ArgumentOutOfRangeException>("dextroseEquivalent", () => HigherSaccharides.MolarMass(100, 0.19, 0.14));
        Assert.Throws<ArgumentOutOfRangeException>("glucose", () => HigherSaccharides.MolarMass(42, 1.1, 0));
        Assert.Throws<ArgumentOutOfRangeException>("maltose", () => HigherSaccharides.MolarMass(42, 0.5, 0.6));
    }

    [Theory]
    [InlineData("65 °Bx", 65)]
    [InlineData("65.5°Bx", 65.5)]
    [InlineData("  65 bx ", 65)]
    [InlineData("65 Brix", 65)]
    [InlineData("0 °Bx", 0)]
    public void TextOfAStrengthIsTheSameInEveryCulture(string text, double expected) => InEveryCulture(() =>
    {
        Assert.Equal(expected, Brix.Parse(text).Percent, 1e-12);
        Assert.Equal("65.50 °Bx", Brix.FromPercent(65.5).ToString());
        Assert.Equal(65.5, Brix.Parse(Brix.FromPercent(65.5).ToString()).Percent);
        Assert.Equal(55.17, Brix.Parse("30 °Bé").Percent, 0.01);
        Assert.Equal("84.31 kPa", AirPressure.FromKilopascals(84.31).ToString());
        Assert.Equal(84.31, AirPressure.Parse("84.31 kPa").Kilopascals, 1e-12);
        Assert.Equal(84.31, AirPressure.Parse("84.31 KPA").Kilopascals, 1e-12);
        Assert.Contains("was 0.5;", Assert.Throws<ArgumentOutOfRangeException>(() => AirPressure.FromKilopascals(0.5)).Message, StringComparison.Ordinal);
        Assert.Equal("60.5 % solids: sucrose 60.5, water 39.5", SugarSolution.OfSucrose(0.605).ToString());
    });

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("65")]
    [InlineData("°Bx")]
    [InlineData("65,500 °Bx")] // which may be meant as either // a decimal comma; it might be a thousand
    [InlineData("1,065 °Bx")]
    [InlineData("65 % Bx")]
    [InlineData("65 kPa")]
    [InlineData("NaN °Bx")]
    [InlineData("Infinity °Bx")]
    [InlineData("1e1 °Bx")]
    [InlineData("-1 °Bx")]
    [InlineData("101 °Bx")]
    [InlineData("52 °Bé")]
    [InlineData("٦٥ °Bx")]
    [InlineData("65 °Bx 65 °Bx")]
    public void WhatIsNoStrengthIsRefused(string text) => InEveryCulture(() =>
    {
        Assert.False(Brix.TryParse(text, out Brix none));
        Assert.Equal(default, none);
        Assert.Contains("°Bx", Assert.Throws<FormatException>(() => Brix.Parse(text)).Message, StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("")]
    [InlineData("84")]
    [InlineData("kPa")]
    [InlineData("84,325 kPa")] // which may be meant as either
    [InlineData("1.013,25 hPa")]
    [InlineData("1,013.25 hPa")]
    [InlineData("10 bar")]
    [InlineData("14.7 psi")]
    [InlineData("1 atm")]
    [InlineData("0 kPa")]
    [InlineData("-84 kPa")]
    [InlineData("201 kPa")]
    [InlineData("NaN kPa")]
    [InlineData("84 kPaa")]
    [InlineData("84 k Pa")]
    public void WhatIsNoPressureIsRefused(string text) => InEveryCulture(() =>
    {
        Assert.False(AirPressure.TryParse(text, out AirPressure none));
        Assert.Equal(default, none);
        Assert.Contains("kPa", Assert.Throws<FormatException>(() => AirPressure.Parse(text)).Message, StringComparison.Ordinal);
    });

    // Ten million characters are refused without being repeated in the message, and at once.
    [Fact]
    public void AHugeTextIsQuotedShort()
    {
        string digits = new('9', 10_000_000), letters = new('x', 10_000_000);
        Assert.All([digits + " kPa", letters, digits, new string(' ', 10_000_000)], text =>
        {
            Assert.True(Assert.Throws<FormatException>(() => AirPressure.Parse(text)).Message.Length < 500);
            Assert.True(Assert.Throws<FormatException>(() => Brix.Parse(text + "Bx")).Message.Length < 500);
        });
        Assert.True(Assert.Throws<ArgumentException>(() => CookingStage.Get(letters)).Message.Length < 500);
    }

    private static void InEveryCulture(Action action) => Cultures.InEach(["", "tr-TR", "de-DE", "ar-SA", "fa-IR"], action);

    // A list, not a dictionary: a substance may be named twice.
    private static List<KeyValuePair<Constituent, double>> Parts(params (Constituent Part, double Grams)[] parts) =>
        [.. parts.Select(part => KeyValuePair.Create(part.Part, part.Grams))];
}
