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

    [Theory] // Food Code 1-201.10, table B; C41 to C48 stand in the tests of the table itself
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

    [Fact]
    public void BadInputIsNamed()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => KeepingAnswer.Of(s_ganache, Spread.Exactly(15)));
        Assert.Throws<ArgumentOutOfRangeException>(() => KeepingAnswer.Of(s_ganache, Spread.Exactly(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => KeepingAnswer.Of(s_ganache, celsius: double.NaN));
        Assert.Throws<ArgumentNullException>(() => KeepingAnswer.Of(null!));
        Assert.Contains("royal-icing", Assert.Throws<ArgumentException>(() => KeptFood.Get("glaze")).Message, StringComparison.Ordinal);
    }

    [Fact] // until sucrose no longer dissolves more of it lowers the activity, and from there on it changes nothing
    public void ActivityFallsWithSugarUntilSaturationAndThenStays() => Prop.ForAll(Gen.Choose(20, 900).ToArbitrary(), Gen.Choose(5, 300).ToArbitrary(), (sugar, more) =>
    {
        KeepingAnswer less = KeepingAnswer.Of(Of("less", ("granulated sugar", sugar), ("water", 200), ("unsalted butter", 100))),
            greater = KeepingAnswer.Of(Of("more", ("granulated sugar", sugar + more), ("water", 200), ("unsalted butter", 100)));
        double from = less.WaterActivity!.Value.Likely, to = greater.WaterActivity!.Value.Likely;
        Assert.True(less.IsSaturated ? Math.Abs(to - from) <= 1e-7 : to <= from + 1e-12, $"{sugar} g: {from}, {sugar + more} g: {to}");
        Assert.True(!less.IsSaturated || greater.IsSaturated);
    }).QuickCheckThrowOnFailure();

    private static ColdRuleVerdict Verdict(Formula formula, string rule) => KeepingAnswer.Of(formula).Rules.Single(answer => answer.Rule.Key == rule).Verdict;
}
