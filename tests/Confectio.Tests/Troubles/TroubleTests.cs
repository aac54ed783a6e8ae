using System.Globalization;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Sources;
using Confectio.Textures;
using Confectio.Troubles;
using FsCheck;
using FsCheck.Fluent;
using Xunit;

namespace Confectio.Tests.Troubles;

/// <summary>What went wrong: the words of cooks, the figures behind the causes, the remedies by arithmetic of their own, and nothing told that is not known.</summary>
public sealed class TroubleTests
{
    private static readonly Formula s_meringue = Of("Swiss meringue buttercream", ("egg white", 150), ("granulated sugar", 300), ("unsalted butter", 400)),
        s_american = Of("American buttercream", ("unsalted butter", 250), ("icing sugar", 500), ("whole milk", 30)),
        s_ganache = Of("ganache", ("dark chocolate 70-85 % cocoa", 200), ("heavy cream", 100)),
        s_royal = Of("royal icing", ("icing sugar", 454), ("egg white", 150));

    private static Ingredient Food(string name) => IngredientTable.BuiltIn.Get(name);

    private static Formula Of(string name, params (string Food, double Grams)[] lines) => Formula.Of(name, lines.Select(line => FormulaLine.Of(Food(line.Food), line.Grams)));

    private static Diagnosis Of(Formula formula, string what, TroubleFacts? facts = null) => Diagnosis.Of(formula, Trouble.Named(what), facts);

    [Theory]
    [InlineData("curdled", "curdled")]
    [InlineData("it looks like cottage cheese", "curdled")]
    [InlineData("like scrambled egg", "curdled")]
    [InlineData("split", "split|curdled")]
    [InlineData("Broken!", "curdled|split")]
    [InlineData("broken ganache", "split")]
    [InlineData("it has separated", "split|curdled")]
    [InlineData("soup", "soupy")]
    [InlineData("runny", "soupy")]
    [InlineData("Too thin", "soupy")]
    [InlineData("it's too soft and won't stand", "soupy")]
    [InlineData("slumps", "soupy")]
    [InlineData("sandy", "grainy")]
    [InlineData("GRITTY", "grainy")]
    [InlineData("crystallized", "grainy")]
    [InlineData("rubbery", "tough")]
    [InlineData("flat", "deflated")]
    [InlineData("collapsed", "deflated")]
    [InlineData("won’t whip", "deflated")]
    [InlineData("lost volume", "deflated")]
    [InlineData("hard", "stiff")]
    [InlineData("can't pipe it", "stiff")]
    [InlineData("it cracks", "stiff")]
    [InlineData("skin", "crusted")]
    [InlineData("dried out", "crusted")]
    [InlineData("weeping", "weeping")]
    [InlineData("beads", "weeping")]
    [InlineData("sticky", "sweating")]
    [InlineData("condensation on it", "sweating")]
    [InlineData("oily", "greasy")]
    [InlineData("tastes of fat", "greasy")]
    [InlineData("flat and gritty", "deflated|grainy")]
    [InlineData("cottage-cheese", "curdled")]
    public void TheWordsOfACookAreTaken(string said, string troubles)
    {
        foreach (string culture in new[] { "", "tr-TR", "de-DE" })
        {
            CultureInfo before = CultureInfo.CurrentCulture;
            try
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                Assert.Equal(troubles, string.Join('|', Trouble.Named(said)));
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        }
    }

    [Theory]
    [InlineData("curdeld", "curdled")]
    [InlineData("runy", "runny")]
    [InlineData("greesy", "greasy")]
    [InlineData("deflatted", "deflated")]
    public void AWordThatIsNoneGetsTheNearest(string said, string near)
    {
        string message = Assert.Throws<ArgumentException>(() => Trouble.Named(said)).Message;
        Assert.Contains("perhaps " + near, message, StringComparison.Ordinal);
        Assert.Contains("weeping", message, StringComparison.Ordinal);
        Assert.False(Trouble.TryNamed(said, out _));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("!!!")]
    [InlineData("delicious")]
    public void WhatNamesNothingIsRefused(string said) => Assert.Throws<ArgumentException>("words", () => Trouble.Named(said));

    [Fact]
    public void EveryTroubleHasCausesEveryCauseASourceAndNothingFromMemoryIsCalledPublished()
    {
        Assert.Equal("crusted curdled deflated grainy greasy soupy split stiff sweating tough weeping", string.Join(' ', Trouble.All.Select(trouble => trouble.Key).Order(StringComparer.Ordinal)));
        Assert.All(Trouble.All, trouble => Assert.True(trouble.Causes.Count >= 2 && trouble.Words.Contains(trouble.Key), trouble.Key));
        Assert.All(TroubleCause.All, cause =>
        {
            Assert.NotEqual("", cause.Says);
            Assert.NotEmpty(cause.Signs);
            Assert.Contains(Trouble.All, trouble => trouble.Causes.Contains(cause));
            Assert.All(cause.Signs, sign => Assert.NotEqual("named by the table it came with", sign.Provenance.Source.Note));
            Assert.All(cause.Signs.Where(sign => sign.Provenance.Note.StartsWith("From memory", StringComparison.Ordinal)),
                sign => Assert.Equal(Evidence.CommonPractice, sign.Provenance.Evidence));
        });
    }

    // The mix of butter of 8 °C and meringue of 20 °C is between them; at 12.7 °C the curve of milk fat (52 % at 10, 37 at 15 °C, an estimate about published ranges) has 44 %.
    [Fact]
    public void ColdButterLeadsWithItsFigureAndItsRemedyLandsWhereItSays()
    {
        Diagnosis found = Of(s_meringue, "curdled", TroubleFacts.None.At("butter", 8).At("meringue", 20));
        Assert.Equal("cold-fat", found.Ranked[0].Cause.Key);
        Assert.Equal(TroubleStanding.SpeaksFor, found.Ranked[0].Standing);
        double mix = found.Mix!.Value.Likely;
        Assert.InRange(mix, 8, 20);
        Assert.Equal(52 - (mix - 10) / 5 * 15, found.Ranked[0].Figure!.Value.Likely, 2.5);
        Assert.Empty(found.NotTold);
        TroubleRemedy remedy = found.Ranked[0].Remedy;
        // Workable is 25 to 15 % solid: by the same curve 19 to 23 °C, which is where cooks want it.
        Assert.InRange(remedy.Celsius!.Value.Low, 18, 20);
        Assert.InRange(remedy.Celsius.Value.High, 22, 24);
        Assert.True(remedy.IsHeat);
        // Taken out, warmed to 35 °C and stirred back it lands there: by a balance of the two parts.
        double part = remedy.WarmedGrams!.Value;
        Formula warm = s_meringue.ScaleToMass(part), rest = s_meringue.ScaleToMass(850 - part);
        Spread landing = HeatBalance.Of([HeatLine.Of(warm).At(35), HeatLine.Of(rest).At(mix)]).FinalTemperature.Value!.Value;
        Assert.Equal(remedy.Celsius.Value.Likely, landing.Likely, 0.3);
        Assert.Contains(found.Cautions, caution => caution.Contains("two hours", StringComparison.Ordinal) || caution.Contains("two h", StringComparison.Ordinal));
        Assert.Contains(found.Cautions, caution => caution.Contains("cooks nothing", StringComparison.Ordinal));
        Assert.Contains("warm-fat", found.SpokenAgainst.Select(finding => finding.Cause.Key));
    }

    [Fact] // ice takes up 335 kJ/kg when it melts (Earle and Earle); the heat is counted here from the line itself
    public void AWarmCreamIsCooledByItsIce()
    {
        Diagnosis found = Of(s_meringue, "soup", TroubleFacts.None.At("mix", 30));
        Assert.Equal("warm-fat", found.Ranked[0].Cause.Key);
        TroubleRemedy remedy = found.Ranked[0].Remedy;
        (double sensible, double melting) = HeatLine.Of(s_meringue).At(30).HeatTo(remedy.Celsius!.Value.Likely);
        Assert.Equal(-(sensible + melting) / 335 * 1000, remedy.IceGrams!.Value, 2);
        Assert.False(remedy.IsHeat);
        Assert.Contains("around the bowl, not in it", remedy.Text, StringComparison.Ordinal);
    }

    // By hand from USDA SR: 200 g of chocolate with 42.63 % fat and 1.37 % water, 100 g of cream with 36.08 to 37 % fat and 57.7 % water: 2.0 of fat to 1 of water; x g more cream make 1.7.
    [Fact]
    public void ARichGanacheTakesTheCreamThatTheArithmeticSays()
    {
        double Fat(string food) => FormulaPart.Fat.FractionIn(Food(food));
        double Water(string food) => FormulaPart.Water.FractionIn(Food(food));
        double fat = 200 * Fat("dark chocolate 70-85 % cocoa") + 100 * Fat("heavy cream"), water = 200 * Water("dark chocolate 70-85 % cocoa") + 100 * Water("heavy cream");
        double cream = (fat - 1.7 * water) / (1.7 * Water("heavy cream") - Fat("heavy cream"));
        Assert.InRange(cream, 25, 38);
        Diagnosis found = Of(s_ganache, "split", TroubleFacts.None.At("mix", 26));
        Assert.Equal(["rich-ganache", "cold-ganache"], found.Ranked.Select(finding => finding.Cause.Key));
        Assert.Equal(fat / water, found.Ranked[0].Figure!.Value.Likely, 1e-9);
        Assert.Equal("heavy cream", found.Ranked[0].Remedy.StirredIn!.Name);
        Assert.Equal(cream, found.Ranked[0].Remedy.Grams!.Value.Likely, 1e-6);
        // Notter 2011: fell to 74 to 85 °F, reheat to 90 °F.
        Assert.Equal((26 - 29.4) / (23.3 - 29.4), found.Ranked[1].Past!.Value.Likely, 1e-9);
        Assert.Equal(32.2, found.Ranked[1].Remedy.Celsius!.Value.Likely);
    }

    [Fact] // medium royal icing has 20 to 23 g of water to 100 g of sugars; white is 87.6 % water (USDA SR)
    public void AThinIcingTakesTheSugarThatItsConsistencySays()
    {
        TroubleFinding thin = Of(s_royal, "runny").Ranked.Single(finding => finding.Cause.Key == "thin-icing");
        ConsistencyStep step = IcingConsistency.Of(s_royal, ConsistencySort.Get("royal-icing")).To(ConsistencyBand.Medium, Food("egg white"), Food("icing sugar"));
        Assert.Equal(step.Grams, thin.Remedy.Grams!.Value);
        double water = 150 * 0.8757 + 454 * FormulaPart.Water.FractionIn(Food("icing sugar")), sugars = 454 * FormulaPart.Sugars.FractionIn(Food("icing sugar"));
        Assert.Equal(100 * water / sugars - 23, thin.Figure!.Value.Likely, 0.1);
    }

    // Cream cheese 2, butter 1, icing sugar 4 has 18 % water and is no trouble; with milk it is, and takes (W − 0.20·M)/(0.20 − w) of icing sugar: by hand.
    [Fact]
    public void AWetCheeseFrostingTakesTheSugarThatTheArithmeticSays()
    {
        (string, double)[] usual = [("cream cheese", 200), ("unsalted butter", 100), ("icing sugar", 400)];
        Assert.DoesNotContain("wet-cheese", Of(Of("cheese", usual), "runny").Ranked.Select(finding => finding.Cause.Key));
        Formula wet = Of("wet", [.. usual, ("whole milk", 60)]);
        double water = Balance.Of(wet)[FormulaPart.Water].Grams.Likely, share = FormulaPart.Water.FractionIn(Food("icing sugar"));
        TroubleFinding found = Of(wet, "runny").Ranked.Single(finding => finding.Cause.Key == "wet-cheese");
        Assert.Equal((water - 0.20 * 760) / (0.20 - share), found.Remedy.Grams!.Value.Likely, 1e-3);
        // What would take more than half its weight is another formula, and no grams are told.
        TroubleFinding much = Of(Of("much", [.. usual, ("whole milk", 150)]), "runny").Ranked.Single(finding => finding.Cause.Key == "wet-cheese");
        Assert.Null(much.Remedy.Grams);
        Assert.Contains("begin another batch", much.Remedy.Text, StringComparison.Ordinal);
    }

    [Fact] // a packet of 7 g sets two cups, 473 mL: 1.5 to 100; by hand
    public void RatiosAreThoseOfTheFormula()
    {
        Diagnosis found = Of(Of("little gelatine", ("heavy cream", 500), ("icing sugar", 50), ("powdered gelatine", 2)), "soupy", TroubleFacts.None.At("mix", 18));
        TroubleFinding gelatine = found.Ranked.Single(finding => finding.Cause.Key == "little-gelatine");
        Assert.InRange(gelatine.Figure!.Value.Likely, 0.6, 0.75); // 2 g to 0.577 · 500 = 289 g
        Assert.Contains("warm-cream", found.Ranked.Select(finding => finding.Cause.Key));
    }

    [Fact] // 22 °C and 60 %: dew point 13.9 °C (Magnus)
    public void ColdCakeSweatsByTheDewPoint()
    {
        Diagnosis found = Of(s_american, "sticky", TroubleFacts.None.At("mix", 4).InRoom(RoomAir.Of(22, 0.60)));
        Assert.Equal("sweats", found.Ranked[0].Cause.Key);
        Assert.Equal(9.9, found.Ranked[0].Figure!.Value.Likely, 0.1);
        Assert.Contains("13.9 °C", found.Ranked[0].Remedy.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("sweats", Of(s_american, "sticky", TroubleFacts.None.At("mix", 20).InRoom(RoomAir.Of(22, 0.60))).Ranked.Select(finding => finding.Cause.Key));
    }

    [Fact] // Vavrinecz: the water of 150 g of white (131 g) holds 300 g of sucrose (2.28 g to a gram) from some 40 °C on
    public void SugarThatNeverDissolvedIsToldByTheTemperatureThatWasReached()
    {
        TroubleFinding grains = Of(s_meringue, "gritty", TroubleFacts.None.CookedTo(25)).Ranked.Single(finding => finding.Cause.Key == "undissolved");
        double water = 150 * 0.8757, at = 25 + grains.Figure!.Value.Likely, solubility = Confectio.Sugars.Solubility.Sucrose(at);
        Assert.Equal(300 / (300 + water), solubility, 0.002);
        Assert.Contains("undissolved", Of(s_meringue, "gritty", TroubleFacts.None.CookedTo(60)).SpokenAgainst.Select(finding => finding.Cause.Key));
        // What was warmed to 60 °C was no syrup that could be boiled too far.
        Assert.DoesNotContain(Of(s_meringue, "gritty", TroubleFacts.None.CookedTo(60)).CannotBeTold, finding => finding.Cause.Key == "hard-syrup");
        Assert.Equal("hard-syrup", Of(s_meringue, "gritty", TroubleFacts.None.CookedTo(126)).Ranked[0].Cause.Key);
        Assert.Contains(Of(s_meringue, "gritty", TroubleFacts.None.CookedTo(126)).Cautions, caution => caution.Contains("cool running water for 20 minutes", StringComparison.Ordinal));
    }

    [Fact] // soft ball is 112 to 116 °C: the rule begins at 115, within it; firm ball, 118 to 120, is past it
    public void AStageIsARangeAndNotItsMiddle()
    {
        TroubleFinding Weak(string stage)
        {
            Diagnosis found = Of(s_meringue, "soupy", TroubleFacts.None.CookedTo(Confectio.Cooking.CookingStage.Get(stage)));
            return found.Ranked.Concat(found.SpokenAgainst).Single(finding => finding.Cause.Key == "weak-syrup");
        }
        Assert.Equal(TroubleStanding.SpeaksFor, Weak("thread").Standing);
        Assert.Equal(TroubleStanding.InDoubt, Weak("soft-ball").Standing);
        Assert.Equal(TroubleStanding.SpeaksAgainst, Weak("hard-crack").Standing);
        Assert.Contains(" to ", Weak("soft-ball").For[0], StringComparison.Ordinal);
    }

    [Fact]
    public void WhereNothingIsKnownNothingIsRankedAndTheMeasurementsAreNamed()
    {
        Diagnosis found = Of(s_meringue, "curdled");
        Assert.Empty(found.Ranked);
        Assert.Contains("cold-fat", found.CannotBeTold.Select(finding => finding.Cause.Key));
        Assert.All(found.CannotBeTold, finding => Assert.True(finding.Past is null && finding.Figure is null && finding.For.Count == 0 && finding.Against.Count == 0));
        Assert.Contains(found.ToMeasure, measure => measure.Contains("temperature of the mix", StringComparison.Ordinal));
        Assert.Null(found.Mix);
        Assert.Contains("no cause can be told", found.ToString(), StringComparison.Ordinal);
        Assert.Contains("no probability", Diagnosis.HowRanked, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatWasNotToldWidensTheMixAndIsNeverTakenAsAnything()
    {
        Diagnosis all = Of(s_american, "stiff", TroubleFacts.None.At("butter", 8).At("icing sugar", 22).At("milk", 4)),
            some = Of(s_american, "stiff", TroubleFacts.None.At("butter", 8).At("milk", 4).InRoom(22)), warmer = Of(s_american, "stiff", TroubleFacts.None.At("icing sugar", 22));
        Spread sure = all.Mix!.Value, wide = some.Mix!.Value;
        Assert.True(wide.High - wide.Low > 3 * (sure.High - sure.Low) && wide.Low < sure.Likely && wide.High >= sure.Likely, $"{sure} and {wide}");
        Assert.Equal(["icing sugar"], some.NotTold);
        Assert.Contains("icing sugar nothing was told", some.MixSentence, StringComparison.Ordinal);
        Assert.Contains("4 °C", some.MixSentence, StringComparison.Ordinal);
        // Sugar is more than half: with it alone the rest is bounded by a kitchen. With butter alone and no room nothing is told.
        Assert.True(warmer.Mix!.Value.High - warmer.Mix.Value.Low > 5);
        Diagnosis little = Of(s_american, "stiff", TroubleFacts.None.At("butter", 8));
        Assert.Null(little.Mix);
        Assert.Contains("less than half", little.MixSentence, StringComparison.Ordinal);
    }

    [Fact]
    public void ATemperatureOfWhatIsNotThereIsRefused()
    {
        Assert.Contains("it has unsalted butter", Assert.Throws<ArgumentException>("facts", () => Of(s_american, "stiff", TroubleFacts.None.At("eggs", 20))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("facts", () => Of(s_american, "stiff", TroubleFacts.None.At("meringue", 20)));
        // Cocoa butter is butter by its name: which one is meant has to be said.
        Formula two = Of("two", ("cocoa butter", 50), ("salted butter", 200), ("icing sugar", 300));
        Assert.Contains("say which", Assert.Throws<ArgumentException>("facts", () => Of(two, "stiff", TroubleFacts.None.At("butter", 8))).Message, StringComparison.Ordinal);
        // The whites are in the meringue already.
        Assert.Contains("told twice", Assert.Throws<ArgumentException>("facts", () => Of(s_meringue, "stiff", TroubleFacts.None.At("meringue", 20).At("egg whites", 5))).Message, StringComparison.Ordinal);
        // Water of −5 °C is none.
        Assert.Throws<ArgumentException>("facts", () => Of(s_american, "stiff", TroubleFacts.None.At("milk", -5).At("butter", 8).At("icing sugar", 20)));
        Assert.Contains("cold-fat", Of(s_meringue, "curdled", TroubleFacts.None.At("fat", 8).At("Meringue", 10)).Ranked.Select(finding => finding.Cause.Key));
    }

    [Fact]
    public void BadInputIsNamed()
    {
        TroubleFacts none = TroubleFacts.None;
        foreach (double bad in new[] { double.NaN, double.PositiveInfinity, -41, 151, 1e300 })
            Assert.Contains("from -40 to 150", Assert.Throws<ArgumentOutOfRangeException>("celsius", () => none.At("mix", bad)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("roomCelsius", () => none.InRoom(88)); // a room in °F
        Assert.Throws<ArgumentOutOfRangeException>("relativeHumidity", () => none.InRoom(RoomAir.Of(24, 1.2)));
        Assert.Throws<ArgumentOutOfRangeException>("minutes", () => none.Beaten(-1));
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => none.CookedTo(244)); // 244 °F
        Assert.Throws<ArgumentOutOfRangeException>("gramsPerMillilitre", () => none.Weighing(190));
        Assert.Throws<ArgumentException>("part", () => none.At(" ", 20));
        Assert.Throws<ArgumentException>("part", () => none.At("mix", 20).At("MIX", 21));
        Assert.Throws<ArgumentNullException>("part", () => none.At(null!, 20));
        Assert.Throws<ArgumentNullException>("formula", () => Diagnosis.Of(null!, Trouble.All));
        Assert.Throws<ArgumentException>("troubles", () => Diagnosis.Of(s_royal, []));
        Assert.Throws<ArgumentNullException>("troubles", () => Diagnosis.Of(s_royal, [null!]));
    }

    // No fat, no water, sugar alone: an answer, and no figure that is none.
    [Theory]
    [InlineData("white shortening")]
    [InlineData("granulated sugar")]
    [InlineData("water")]
    [InlineData("egg white")]
    [InlineData("powdered gelatine")]
    public void AFormulaOfOneThingHasAnAnswer(string food)
    {
        Formula formula = Of(food, (food, 100));
        foreach (Trouble trouble in Trouble.All)
        {
            Diagnosis found = Diagnosis.Of(formula, [trouble], TroubleFacts.None.At("mix", 20).Beaten(5).InRoom(RoomAir.Of(22, 0.6)).CookedTo(118).Weighing(0.8));
            Assert.All(found.Ranked.Concat(found.SpokenAgainst), finding => Assert.True(double.IsFinite(finding.Past!.Value.Likely)));
            Assert.Contains(found.Cautions, caution => caution.Contains("Local codes", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void WhatIsRankedFallsInItsClassAndAColderMixIsNeverLessColdFat() => Prop.ForAll(Gen.Choose(20, 400).ToArbitrary(), Gen.Choose(1, 50).ToArbitrary(), Gen.Choose(0, 10).ToArbitrary(), (mix, colder, which) =>
    {
        Trouble trouble = Trouble.All[which];
        double at = mix / 10.0;
        Diagnosis found = Diagnosis.Of(s_meringue, [trouble], TroubleFacts.None.At("mix", at).InRoom(RoomAir.Of(24, 0.7)).Beaten(10));
        Assert.Equal(found.Ranked.OrderBy(finding => finding.Standing).ThenByDescending(finding => finding.Past!.Value.Likely).Select(finding => finding.Cause), found.Ranked.Select(finding => finding.Cause));
        Assert.All(found.Ranked, finding => Assert.True(finding.Past!.Value.High >= 0 && finding.For.Count > 0));
        Assert.All(found.SpokenAgainst, finding => Assert.True(finding.Past!.Value.High < 0));
        double? warm = Cold(at), cold = Cold(Math.Max(0, at - colder / 10.0));
        Assert.True(cold >= warm, $"{at} °C: {warm}, {colder} tenths colder: {cold}");

        static double? Cold(double celsius)
        {
            Diagnosis curdled = Diagnosis.Of(s_meringue, Trouble.Named("curdled"), TroubleFacts.None.At("mix", celsius));
            return curdled.Ranked.Concat(curdled.SpokenAgainst).First(finding => finding.Cause.Key == "cold-fat").Past?.Likely;
        }
    }).QuickCheckThrowOnFailure();

    [Fact]
    public void NothingIsPromisedAndTheTextIsTheSameInEveryCulture()
    {
        string Text()
        {
            Diagnosis found = Of(s_meringue, "curdled, weeping, sticky", TroubleFacts.None.At("butter", 8).At("meringue", 30.5).InRoom(RoomAir.Of(24, 0.7)).CookedTo(117.5));
            return string.Join('\n', found.Ranked.Concat(found.SpokenAgainst).Concat(found.CannotBeTold).SelectMany(finding => (IEnumerable<string>)
                [finding.ToString(), finding.Remedy.ToString(), .. finding.For, .. finding.Against]).Concat(found.Cautions).Append(found.Facts.ToString()).Append(found.MixSentence));
        }
        string invariant = Text();
        foreach (string word in new[] { "safe", "certainly", "guarantee", "always", "100 %" })
            Assert.DoesNotContain(word, invariant, StringComparison.OrdinalIgnoreCase);
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(invariant, Text());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
