using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Uncertainty;
using FsCheck;
using FsCheck.Fluent;
using Xunit;

namespace Confectio.Tests.Keeping;

/// <summary>How long food keeps: the printed rules and times as printed, the documented readings beside the models, and nothing surer than it is.</summary>
public sealed class KeepingTests
{
    private static Formula Of(string name, params (string Food, double Grams)[] lines) =>
        Formula.Of(name, lines.Select(line => FormulaLine.Of(IngredientTable.BuiltIn.Get(line.Food), line.Grams)));

    // A Swiss meringue buttercream of 1 cup of sugar, 4 large whites, 3 sticks and 5 tablespoons of butter; a ganache of 1 cup of cream, 12 oz of chips and
    // 2 tablespoons each of salted butter and sugar: laboratory readings for a cottage-food association in Texas, 9 December 2011, one sample each.
    private static readonly Formula s_buttercream = Of("M1", ("granulated sugar", 200), ("egg white", 132), ("unsalted butter", 410), ("vanilla extract", 4.2)),
        s_ganache = Of("M2", ("heavy cream", 238), ("salted butter", 28.4), ("granulated sugar", 25), ("semisweet chocolate chips", 340));

    // Two parts of icing sugar and one of cream cheese: University of Minnesota Extension.
    private static readonly Formula s_creamCheese = Of("tip", ("icing sugar", 200), ("cream cheese", 100));

    [Fact] // K04 to K06, worked by hand with Norrish's equation from the compositions of USDA SR
    public void TheActivityOfTheDocumentedIcingsIsThatOfTheModelsAndNotOfTheReading()
    {
        Spread buttercream = KeepingAnswer.Of(s_buttercream).WaterActivity!.Value, ganache = KeepingAnswer.Of(s_ganache).WaterActivity!.Value;
        Assert.InRange(buttercream.Likely, 0.931 - 0.006, 0.931 + 0.006);
        Assert.InRange(ganache.Likely, 0.899 - 0.025, 0.899 + 0.006); // 0.875 with lactose and 20 g of water boiled off
        // The readings of 0.85 lie outside: a documented disagreement. They are told with the kind of food and change nothing.
        Assert.True(buttercream.Low > 0.85 && ganache.Low > 0.85);
        Assert.Contains("0.85", KeptFood.Get("meringue-buttercream").Note, StringComparison.Ordinal);
        Assert.Contains("0.85", KeptFood.Get("ganache").Note, StringComparison.Ordinal);
        KeepingAnswer tip = KeepingAnswer.Of(s_creamCheese);
        Assert.True(tip.IsSaturated);
        Assert.InRange(0.847, tip.WaterActivity!.Value.Low, tip.WaterActivity.Value.High);
    }

    [Theory] // Food Code 1-201.10, table B; C41 to C47 stand in the tests of the table itself (ControlTests)
    [InlineData(7.83, ControlNeed.ProductAssessment)]
    [InlineData(null, ControlNeed.ProductAssessment)]
    [InlineData(4.1, ControlNeed.NotByTheTable)]
    public void TheHighestActivityAndTheHighestAcidityDecide(double? ph, ControlNeed need) =>
        Assert.Equal(need, KeepingAnswer.Of(s_buttercream, ph is double value ? Spread.Exactly(value) : null).Control);

    [Fact]
    public void AnUnknownAcidityShutsNothingOutAndARangeCountsByItsWorseEnd()
    {
        Spread range = new(4.0, 4.3, 4.7, SpreadBasis.Sources);
        Assert.Equal(ControlNeed.ProductAssessment, KeepingAnswer.Of(s_buttercream, range).Control);
        Assert.Contains("pH being unknown", KeepingAnswer.Of(s_buttercream).ControlSentence, StringComparison.Ordinal);
        GrowthLimit salmonella = GrowthLimit.All.First(limit => limit.Organism == "Salmonella");
        Assert.True(salmonella.MayGrow(new Spread(0.92, 0.935, 0.95, SpreadBasis.Models)));
        Assert.False(salmonella.MayGrow(Spread.Exactly(0.93)));
        Assert.False(salmonella.MayGrow(Spread.Exactly(0.99), Spread.Exactly(3.5)));
    }

    [Fact] // K06 and K07: the rule of 65 % counts fat against the icing; half a part of butter changes the answer and not the water
    public void TheRuleOfSixtyFiveIsARuleAndTheWaterActivityIsAnother()
    {
        Formula withButter = Of("tip with butter", ("icing sugar", 200), ("cream cheese", 100), ("unsalted butter", 50));
        Assert.Equal(ColdRuleVerdict.MayStandOut, Verdict(s_creamCheese, "ksu-65"));
        Assert.Equal(ColdRuleVerdict.KeepCold, Verdict(withButter, "ksu-65"));
        Assert.True(KeepingAnswer.Of(withButter).IsSaturated);
        // A model cannot tell 0.847 from 0.85: the rule that needs it asks for a measurement.
        Assert.Equal(ColdRuleVerdict.TestFirst, Verdict(s_creamCheese, "umn-brix"));
        Assert.Equal(ColdRuleVerdict.KeepCold, Verdict(s_buttercream, "ksu-65"));
        Assert.Equal(ColdRuleVerdict.KeepCold, Verdict(s_ganache, "uk-fsa"));
        Assert.Equal(ColdRuleVerdict.MayStandOut, Verdict(Of("crusting", ("white shortening", 250), ("icing sugar", 500), ("water", 30)), "connecticut"));
        Assert.Equal(ColdRuleVerdict.TestFirst, Verdict(Of("butter", ("unsalted butter", 250), ("icing sugar", 500)), "connecticut"));
    }

    [Theory]
    [InlineData("cream-cheese-frosting", "icing sugar 200; cream cheese 100; unsalted butter 100")]
    [InlineData("ganache", "heavy cream 200; semisweet chocolate chips 200")]
    [InlineData("american-buttercream", "unsalted butter 200; icing sugar 400; whole milk 20")]
    [InlineData("american-buttercream", "white shortening 200; icing sugar 400; water 20")]
    [InlineData("royal-icing", "icing sugar 500; egg white 90")]
    [InlineData("whipped-cream", "heavy cream 500; icing sugar 50")]
    [InlineData("plain-cake", "plain flour 200; egg 200; granulated sugar 200; unsalted butter 200")]
    public void AFormulaLooksLikeWhatItIs(string key, string lines) => Assert.Equal(key, KeptFood.LooksLike(Of(key,
        [.. lines.Split("; ").Select(line => (line[..line.LastIndexOf(' ')], double.Parse(line[(line.LastIndexOf(' ') + 1)..], System.Globalization.CultureInfo.InvariantCulture)))]))?.Food.Key);

    [Fact]
    public void TheStrictestDecidesAndNothingIsKeptOutThatARuleKeepsCold()
    {
        foreach (Formula formula in new[] { s_buttercream, s_ganache, s_creamCheese, Of("butter", ("unsalted butter", 250), ("icing sugar", 500)) })
        {
            KeepingAnswer answer = KeepingAnswer.Of(formula);
            PlaceVerdict counter = answer.Places[0];
            bool isKeptCold = answer.Control == ControlNeed.ProductAssessment || answer.Rules.Any(rule => rule.Verdict is ColdRuleVerdict.KeepCold or ColdRuleVerdict.TestFirst);
            Assert.Equal(isKeptCold, counter.Days == 0);
            double? days = answer.Places[1].Days;
            Assert.All(answer.Times.Concat(answer.IngredientTimes).Where(time => time is { Place: KeepingPlace.Refrigerator, IsSuitable: true, HighDays: not null }),
                time => Assert.True(days <= time.HighDays, $"{formula.Name}: {days} days against {time}"));
        }
        // Raw white keeps 2 to 4 days by itself, and so a meringue buttercream of it no longer.
        Assert.Equal(2, KeepingAnswer.Of(s_buttercream).Places[1].Days);
    }

    // Food Code 3-501.17, recalled: ready-to-eat food that needs control is used within seven days. A month of butter by itself, or ten days of cream, is no time of a cake or a ganache.
    [Fact]
    public void WhatNeedsControlIsMarkedSevenDaysAndAnIngredientIsABoundAndNoTime()
    {
        Assert.Equal(7, KeepingAnswer.Of(s_ganache).Places[1].Days);
        PlaceVerdict cake = KeepingAnswer.Of(Of("cake", ("plain flour", 200), ("unsalted butter", 200), ("granulated sugar", 200), ("whole milk", 200))).Places[1];
        Assert.True(cake.Days <= 7, cake.Sentence);
        PlaceVerdict sour = KeepingAnswer.Of(s_ganache, Spread.Exactly(4.1)).Places[1];
        Assert.Equal(10, sour.Days);
        Assert.Contains("no longer than its heavy cream: 10 days", sour.Sentence, StringComparison.Ordinal);
        Assert.Contains("of the food itself no time is printed", sour.Sentence, StringComparison.Ordinal);
    }

    [Fact] // the caution of the formula says two hours of egg that was made up with water, and no place may say weeks beside it
    public void DriedEggThatIsMadeUpIsKeptColdHoweverRoyalIcingIsKeptByHabit()
    {
        PlaceVerdict counter = KeepingAnswer.Of(Of("royal", ("icing sugar", 454), ("dried egg white", 12), ("water", 75))).Places[0];
        Assert.Equal(0, counter.Days);
        Assert.Contains("2 weeks", counter.Sentence, StringComparison.Ordinal);
        Assert.Contains("two hours", counter.Sentence, StringComparison.Ordinal);
    }

    [Fact] // rules on frostings say nothing of a cake; those on cakes do
    public void RulesOnFrostingsAreNotReadOfACake()
    {
        KeepingAnswer cake = KeepingAnswer.Of(Of("cake", ("plain flour", 200), ("unsalted butter", 200), ("granulated sugar", 200), ("egg", 200)));
        Assert.All(cake.Rules.Where(rule => !rule.Rule.Key.StartsWith("uk-fsa", StringComparison.Ordinal)), rule => Assert.Equal(ColdRuleVerdict.DoesNotSay, rule.Verdict));
        Assert.Equal(0, cake.Places[0].Days);
    }

    [Fact]
    public void WhatHasNoActivityIsTakenAsNeedingControl()
    {
        KeepingAnswer dry = KeepingAnswer.Of(Of("fat", ("white shortening", 100)));
        Assert.Null(dry.WaterActivity);
        Assert.NotEqual("", dry.WhyNoActivity);
        Assert.Equal(ControlNeed.ProductAssessment, dry.Control);
        Assert.Contains("not known", dry.ControlSentence, StringComparison.Ordinal);
    }

    [Fact]
    public void EverySentenceOnKeepingHasASourceAndNoneCallsAnythingSafe()
    {
        Assert.All(KeepingTime.All, time => Assert.NotEqual("named by the table it came with", time.Provenance.Source.Note));
        Assert.All(ColdRule.All, rule => Assert.NotEqual("named by the table it came with", rule.Provenance.Source.Note));
        Assert.All(GrowthLimit.All, limit => Assert.NotEqual("named by the table it came with", limit.Provenance.Source.Note));
        Assert.All(KeptFood.All, food => Assert.True(food.Times.Count > 0, food.Key));
        // What was recalled is never said to be published.
        Assert.All(KeepingTime.All.Where(time => time.Provenance.Note.Contains("From memory", StringComparison.Ordinal)),
            time => Assert.Equal(Evidence.CommonPractice, time.Provenance.Evidence));
        foreach (Formula formula in new[] { s_buttercream, s_ganache, s_creamCheese })
        {
            KeepingAnswer answer = KeepingAnswer.Of(formula, Spread.Exactly(4.1));
            string all = string.Join(' ', answer.Places) + answer.ControlSentence + string.Join(' ', answer.Rules);
            Assert.DoesNotContain("safe", all, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void WhereTheTableAsksForNothingRawEggIsStillNamed()
    {
        KeepingAnswer meringue = KeepingAnswer.Of(Of("meringue", ("egg white", 300), ("granulated sugar", 600)));
        Assert.Equal(ControlNeed.NotByTheTable, meringue.Control);
        Assert.Contains("Salmonella", meringue.ControlSentence, StringComparison.Ordinal);
        Assert.Equal(0, meringue.Places[0].Days);
        Assert.DoesNotContain("Salmonella", KeepingAnswer.Of(Of("crusting", ("white shortening", 250), ("icing sugar", 500), ("water", 30))).ControlSentence, StringComparison.Ordinal);
    }

    // Two laboratory readings of a class test with salted butter, University of Minnesota Extension, March 2019: 0.81 with water, 0.80 with half-and-half. The models without salt
    // have 0.845; salt takes half of what parts them, and the high end, which decides, stays.
    [Theory]
    [InlineData("water", 44, 0.81)]
    [InlineData("half-and-half", 45, 0.80)]
    public void SaltLowersTheLikelyValueAndNotTheEndThatDecides(string liquid, double grams, double reading)
    {
        Formula Frosting(string butter) => Of("cookie dough", (butter, 170), ("icing sugar", 240), ("brown sugar", 110), (liquid, grams), ("semisweet chocolate chips", 128), ("plain flour", 63));
        Spread salted = KeepingAnswer.Of(Frosting("salted butter")).WaterActivity!.Value, plain = KeepingAnswer.Of(Frosting("unsalted butter")).WaterActivity!.Value;
        Assert.True(salted.Likely < plain.Likely - 0.008 && salted.Likely > reading, $"{salted} and {plain} against {reading}");
        Assert.InRange(salted.Likely, reading, reading + 0.05);
        Assert.Equal(plain.High, salted.High, 0.002);
    }

    [Fact] // K08 and K09: table B of the Food Code at the readings and at what the models say of the same formula, and fillings of fruit with ample water
    public void TheDocumentedPairsOfActivityAndAcidity()
    {
        Assert.Equal(ControlNeed.NotByTheTable, TimeTemperatureControl.Of(0.85, 7.83)); // K08, first half: the reading
        Assert.Equal(ControlNeed.ProductAssessment, TimeTemperatureControl.Of(0.931, 7.83)); // K08, second half: the model
        Assert.Equal(ControlNeed.ProductAssessment, KeepingAnswer.Of(s_buttercream, Spread.Exactly(7.83)).Control);
        Formula filling = Of("lemon filling", ("lemon juice", 100), ("water", 300), ("granulated sugar", 200));
        Assert.True(KeepingAnswer.Of(filling).WaterActivity!.Value.Low > 0.92);
        Assert.Equal([ControlNeed.NotByTheTable, ControlNeed.ProductAssessment, ControlNeed.ProductAssessment], // K09: lemon, orange, apricot (USDA ARS, pH of selected foods)
            new[] { 3.24, 4.65, 5.43 }.Select(ph => KeepingAnswer.Of(filling, Spread.Exactly(ph)).Control));
    }

    // Where it is kept changes nothing of what the table asks of the food, though a saturated syrup has more active water in the cold; and no colder place is given fewer days.
    [Fact]
    public void AColderPlaceIsNeverWorse() => Prop.ForAll(Gen.Choose(0, 4).ToArbitrary(), Gen.Choose(50, 900).ToArbitrary(), Gen.Choose(0, 300).ToArbitrary(), (kind, sugar, more) =>
    {
        Formula formula = kind switch
        {
            0 => Of("butter", ("unsalted butter", 250), ("icing sugar", sugar), ("whole milk", more)),
            1 => Of("shortening", ("white shortening", 250), ("icing sugar", sugar), ("water", 1 + more)),
            2 => Of("ganache", ("heavy cream", 100 + more), ("semisweet chocolate chips", sugar)),
            3 => Of("royal", ("icing sugar", sugar), ("egg white", 10 + more)),
            _ => Of("cheese", ("cream cheese", 50 + more), ("icing sugar", sugar)),
        };
        ControlNeed[] needs = [.. new double[] { 0, 4, 15, 20, 25, 35 }.Select(celsius => KeepingAnswer.Of(formula, roomCelsius: celsius).Control)];
        Assert.Single(needs.Distinct());
        PlaceVerdict[] places = [.. KeepingAnswer.Of(formula).Places];
        Assert.True(places[1].Days is not double cold || places[0].Days is not double counter || cold >= counter, $"{places[0]}; {places[1]}");
        // A freezer that does not suit the food is told so and has no days.
        Assert.True(places[2].Days is not > 0 || places[1].Days is not double refrigerated || places[2].Days >= refrigerated, $"{places[1]}; {places[2]}");
    }).QuickCheckThrowOnFailure();

    [Fact]
    public void WhatIsBoiledAndStaysClearIsToldBesideWhatItsCrystalsWouldMakeOfIt()
    {
        Formula caramel = Formula.Of("caramel", Of("", ("granulated sugar", 300), ("glucose syrup 42 DE", 300), ("sweetened condensed milk", 300), ("water", 100)).Lines, 165);
        KeepingAnswer answer = KeepingAnswer.Of(caramel);
        Assert.True(answer.WaterActivityUngrained!.Value.High < answer.WaterActivity!.Value.Likely);
        // Nothing boils off of a buttercream: its crystals were never dissolved.
        Assert.Null(KeepingAnswer.Of(s_creamCheese).WaterActivityUngrained);
        Assert.Null(KeepingAnswer.Of(s_buttercream).WaterActivityUngrained);
    }

    [Theory] // of a food, a pH is from 0 to 14: the most acid juice has 2, old white 9.7
    [InlineData(0)]
    [InlineData(14)]
    public void TheEndsOfAcidityAreTaken(double ph) => Assert.NotEqual("", KeepingAnswer.Of(s_ganache, Spread.Exactly(ph)).ControlSentence);

    [Fact]
    public void BadInputIsNamed()
    {
        foreach (double ph in new[] { 15.0, -1, -0.001, 14.001, 1e300 })
        {
            Assert.Contains("from 0 to 14", Assert.Throws<ArgumentOutOfRangeException>("ph", () => KeepingAnswer.Of(s_ganache, Spread.Exactly(ph))).Message, StringComparison.Ordinal);
            Assert.Throws<ArgumentOutOfRangeException>("ph", () => GrowthLimit.All[0].MayGrow(Spread.Exactly(0.9), Spread.Exactly(ph)));
            Assert.Throws<ArgumentOutOfRangeException>("ph", () => TimeTemperatureControl.Of(0.9, ph));
            Assert.Throws<ArgumentOutOfRangeException>("ph", () => TimeTemperatureControl.OfHeatedAndPackaged(0.9, ph));
            Assert.Throws<ArgumentOutOfRangeException>("ph", () => KineticSet.All[0].AppliesTo(FoodMatrix.EggWhite, 0.9, out _, Spread.Exactly(ph)));
        }
        Assert.Throws<ArgumentOutOfRangeException>("roomCelsius", () => KeepingAnswer.Of(s_ganache, roomCelsius: double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("roomCelsius", () => KeepingAnswer.Of(s_ganache, roomCelsius: 88)); // a room in °F
        Assert.Throws<ArgumentOutOfRangeException>("roomCelsius", () => RoomAir.Of(88, 0.6)); // a room in °F
        Assert.Throws<ArgumentOutOfRangeException>("relativeHumidity", () => RoomAir.Of(22, 1.2)); // 120 %
        Assert.Throws<ArgumentNullException>(() => KeepingAnswer.Of(null!));
        Assert.Contains("royal-icing", Assert.Throws<ArgumentException>(() => KeptFood.Get("glaze")).Message, StringComparison.Ordinal);
    }

    [Fact] // until sucrose no longer dissolves more of it lowers the activity, and from there on nothing but the trace of salt that the sugar brings does
    public void ActivityFallsWithSugarUntilSaturationAndThenStays() => Prop.ForAll(Gen.Choose(20, 900).ToArbitrary(), Gen.Choose(5, 300).ToArbitrary(), (sugar, more) =>
    {
        KeepingAnswer less = KeepingAnswer.Of(Of("less", ("granulated sugar", sugar), ("water", 200), ("unsalted butter", 100))),
            greater = KeepingAnswer.Of(Of("more", ("granulated sugar", sugar + more), ("water", 200), ("unsalted butter", 100)));
        double from = less.WaterActivity!.Value.Likely, to = greater.WaterActivity!.Value.Likely;
        // Salt by the equation as it is printed: a = exp(−2·φ·m·M), φ 0.93, m in mol/kg of water, M 0.018015 kg/mol.
        double salt = more * FormulaPart.Salt.FractionIn(IngredientTable.BuiltIn.Get("granulated sugar")) / 58.44 / Balance.Of(less.Formula)[FormulaPart.Water].Grams.Likely * 1000;
        Assert.True(less.IsSaturated ? Math.Abs(to - from * Math.Exp(-2 * 0.93 * salt * 0.018015)) <= 1e-7 : to <= from + 1e-12, $"{sugar} g: {from}, {sugar + more} g: {to}");
        Assert.True(!less.IsSaturated || greater.IsSaturated);
    }).QuickCheckThrowOnFailure();

    private static ColdRuleVerdict Verdict(Formula formula, string rule) => KeepingAnswer.Of(formula).Rules.Single(answer => answer.Rule.Key == rule).Verdict;
}
