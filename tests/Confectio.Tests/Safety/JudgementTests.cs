using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Safety;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Safety;

/// <summary>Which study speaks of which mix: the water activity decides, sets that disagree stand side by side, and where none applies there is no number.</summary>
public sealed class JudgementTests
{
    private static readonly Ingredient s_sugar = IngredientTable.BuiltIn.Get("granulated sugar");

    private static readonly string[] s_plainWhite = ["garibaldi-white", "palumbo-white-78", "palumbo-white-93"];

    // White held at 56.7 °C for 3.5 minutes, which is the regulation's 134 °F. Garibaldi and others (1969): D 0.55 min at 55 °C and z 4.6, so 15 log. Palumbo and
    // others (1996): D 3.60 (pH 7.8) and 1.08 min (pH 9.3) at 56.6 °C, so 1.0 and 3.4. Fifteenfold, in one food.
    [Fact]
    public void PlainWhiteAt567HasAnswersThatDisagree()
    {
        LethalityJudgement judgement = LethalityJudgement.Of(Readings.Log((0, 56.7), (3.5, 56.7)), FoodMatrix.EggWhite, Spread(0.997));
        Assert.True(judgement.HasAnswer);
        double garibaldi = judgement.Log.LogReduction(KineticSet.Get("garibaldi-white")).Likely, high = Logs(judgement, "palumbo-white-93"), low = Logs(judgement, "palumbo-white-78");
        Assert.Equal(3.5 / (0.55 * Math.Pow(10, -1.7 / 4.6)), garibaldi, 1e-9);
        Assert.Equal(3.5 / (1.08 * Math.Pow(10, -0.1 / 4.6)), high, 1e-9);
        Assert.Equal(3.5 / (3.60 * Math.Pow(10, -0.1 / 4.6)), low, 1e-9);
        Assert.InRange(garibaldi / low, 14, 16);
        // Beyond seven nobody counted, and fifteen are not said.
        Assert.Equal("garibaldi-white: at least 7 log", Finding(judgement, "garibaldi-white").ToString());
        // Schuman and Sheldon (1997), pH 8.2: 7.99 min at 55.1 °C and 1.00 at 58.3.
        // 3.5 min by the upper envelope of Doyle and Mazzotta (2000), log D = 11.7 - 0.188·56.7: the lowest, and so the answer.
        Assert.Equal("doyle-mazzotta", judgement.Minimum!.Set.Key);
        Assert.Equal(3.5 / Math.Pow(10, 11.7 - 0.188 * 56.7), judgement.Minimum.LogReduction!.Value.Likely, 1e-6);
        Assert.StartsWith("The lowest of the 6 studies that apply says 0.32 (", judgement.Headline, StringComparison.Ordinal);
        double schuman = 3.5 / (7.99 * Math.Pow(1.00 / 7.99, 1.6 / 3.2));
        Assert.Equal(schuman, Logs(judgement, "schuman-white"), 1e-9);
        // Nothing is averaged away: all three are in the text, each by its key.
        Assert.All(s_plainWhite, key => Assert.Contains(key, judgement.ToString(), StringComparison.Ordinal));
        Assert.Equal(KineticSet.All.OrderBy(set => set.Key), judgement.Findings.Select(finding => finding.Set).OrderBy(set => set.Key));
        // The lowest first.
        double[] lows = [.. judgement.Findings.Where(finding => finding.Applies).Select(finding => finding.LogReduction!.Value.Low)];
        Assert.Equal(lows.Order(), lows);
    }

    // Norrish's equation, x_w·exp(−6.47·x_s²), with the constant from memory: 2 parts of sugar to one of white with 87.57 % water (USDA SR, 01124).
    [Theory]
    [InlineData(0.5, 0.966)]
    [InlineData(1.0, 0.924)]
    [InlineData(1.25, 0.901)]
    [InlineData(1.5, 0.878)]
    [InlineData(2.0, 0.829)]
    public void TheWaterActivityOfAMeringueIsThatOfItsSyrup(double sugarPerWhite, double rounded)
    {
        double sucrose = sugarPerWhite / 342.2965, water = 0.8757 / 18.01528, x = sucrose / (sucrose + water);
        double norrish = (1 - x) * Math.Exp(-6.47 * x * x);
        Assert.Equal(rounded, norrish, 0.001);
        Spread found = HeatedMix.WaterActivity(Mix("egg white", sugarPerWhite), 75);
        // The models of the library differ by about this much at these strengths, and the ingredients have a little glucose and moisture.
        Assert.Equal(norrish, found.Likely, 0.012);
        Assert.True(found.Low <= found.Likely && found.Likely <= found.High);
        Assert.InRange(norrish, found.Low - 0.003, found.High + 0.003);
    }

    // Sugar that is not dissolved does not count: cold, two to one is a saturated syrup between crystals, and warm it is stronger.
    [Fact]
    public void UndissolvedSugarDoesNotLowerTheActivity()
    {
        Formula swiss = Mix("egg white", 2);
        double cold = HeatedMix.WaterActivity(swiss, 20).Likely, warm = HeatedMix.WaterActivity(swiss, 60).Likely;
        Assert.True(cold > warm + 0.005);
        // Saturated sucrose at 20 to 25 °C is at 0.84 to 0.86: from memory, so only its neighbourhood is asked.
        Assert.InRange(cold, 0.83, 0.87);
        Assert.Equal(cold, HeatedMix.WaterActivity(Mix("egg white", 4), 20).Likely, 1e-3);
    }

    [Fact]
    public void AMixWithoutSugarIsNearlyWater() => Assert.InRange(HeatedMix.WaterActivity(Mix("egg white", 0), 60).Likely, 0.995, 1);

    // Two to one at 71 °C for 5 minutes: sets of plain white would promise a hundred log and are silent. Mattick and others (2001) answers.
    [Fact]
    public void ASwissMeringueIsJudgedByMattickAndByNoPlainWhite()
    {
        LethalityJudgement judgement = Judge("egg white", 2, 71, 5, FoodMatrix.EggWhite);
        Assert.Equal(["mattick"], judgement.Findings.Where(finding => finding.Applies).Select(finding => finding.Set.Key));
        Assert.All(judgement.Findings.Where(finding => finding.Set.Matter == FoodMatrix.EggWhite), finding =>
        {
            Assert.False(finding.Applies);
            Assert.Null(finding.LogReduction);
            Assert.Contains("water activity", finding.Why, StringComparison.Ordinal);
            Assert.Contains("sugar protects", finding.Why, StringComparison.Ordinal);
            // It names the activity: the likely one, or the low end that keeps the set from being used.
            string[] named = [.. new[] { judgement.WaterActivity.Likely, judgement.WaterActivity.Low }.Select(value => FormattableString.Invariant($"{value:0.000}"))];
            Assert.Contains(named, value => finding.Why.Contains(value, StringComparison.Ordinal));
            Assert.DoesNotContain(" log", finding.ToString(), StringComparison.Ordinal);
        });
        // 9.5 min at 65 and 1.2 at 74 °C for 3 log, straight in the logarithm.
        double perLog = 9.5 * Math.Pow(1.2 / 9.5, 6 / 9.0) / 3;
        Assert.Equal(5 / perLog, judgement.Log.LogReduction(KineticSet.Get("mattick")).Likely, 1e-3 * 5 / perLog);
        // The fall was measured to 3 log, and no further is promised.
        Assert.Equal(3, Logs(judgement, "mattick"));
        Assert.True(Finding(judgement, "mattick").IsBeyondMeasured);
        Assert.Equal(1 / perLog, Logs(Judge("egg white", 2, 71, 1, FoodMatrix.EggWhite), "mattick"), 1e-3 / perLog);
        Assert.True(KineticSet.Get("garibaldi-white").Unbroken(Readings.Of((0, 71), (5, 71))).Likely > 100);
    }

    // One to one has a water activity of 0.92, between all the studies that are built in: no number, and a sentence that says so.
    [Theory]
    [InlineData(1.0)]
    [InlineData(1.25)]
    public void AOneToOneMixHasNoAnswer(double sugarPerWhite)
    {
        LethalityJudgement judgement = Judge("egg white", sugarPerWhite, 71, 30, FoodMatrix.EggWhite);
        Assert.False(judgement.HasAnswer);
        Assert.All(judgement.Findings, finding => Assert.Null(finding.LogReduction));
        Assert.DoesNotContain(judgement.ToString(), char.IsDigit);
        Assert.Contains("there is no number", judgement.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void NoSetOfOneMatterSpeaksOfAnother()
    {
        FoodMatrix[] eggs = [FoodMatrix.EggWhite, FoodMatrix.EggYolk, FoodMatrix.WholeEgg];
        for (int i = 0; i <= 100; i++)
        {
            foreach (FoodMatrix matter in Enum.GetValues<FoodMatrix>())
            {
                LethalityJudgement judgement = LethalityJudgement.Of(Readings.Log((0, 60), (1, 60)), matter, Spread(i / 100.0));
                Assert.All(judgement.Findings.Where(finding => finding.Applies), finding => Assert.Contains(finding.Set.Matter, new[] { matter, FoodMatrix.Food }));
                if (eggs.Contains(matter))
                    Assert.DoesNotContain(judgement.Findings, finding => finding.Applies && finding.Set.Matter == FoodMatrix.Beef);
                Assert.All(judgement.Findings, finding => Assert.Equal(finding.Applies, finding.LogReduction is not null));
                Assert.Equal(judgement.Findings.Any(finding => finding.Applies), judgement.HasAnswer);
            }
        }
        Assert.Equal("measured in egg yolk, which this is not", Finding(LethalityJudgement.Of(Readings.Log((0, 60), (1, 60)), FoodMatrix.EggWhite, Spread(1)), "garibaldi-yolk").Why);
    }

    // The mix that a study was made in is a mix that it speaks of. Garibaldi and others (1969) had 10 % of sucrose in white, whole egg and yolk.
    [Theory]
    [InlineData("egg white", FoodMatrix.EggWhite, "garibaldi-white-sucrose")]
    [InlineData("whole egg", FoodMatrix.WholeEgg, "garibaldi-whole-sucrose")]
    [InlineData("egg yolk", FoodMatrix.EggYolk, "garibaldi-yolk-sucrose")]
    public void AStudyWithTenPerCentOfSucroseSpeaksOfTenPerCentOfSucrose(string egg, FoodMatrix matter, string key)
    {
        // 10 g in 100 g of the mix, and 10 g to 100 g of egg: the paper is read for D, and not for which of the two it was.
        Assert.All((double[])[1 / 9.0, 0.1], sugarPerEgg =>
        {
            // The study's own acidity, as the person states it.
            LethalityJudgement judgement = Judge(egg, sugarPerEgg, 60, 1, matter, matter == FoodMatrix.EggWhite ? 9.2 : null);
            Assert.True(Finding(judgement, key).Applies, Finding(judgement, key).Why);
        });
    }

    // In the same mix the plain set would promise 2.2, 2.2 and 10 times as much, by the paper's own comparison.
    [Theory]
    [InlineData("egg white", FoodMatrix.EggWhite, "garibaldi-white")]
    [InlineData("egg white", FoodMatrix.EggWhite, "palumbo-white-78")]
    [InlineData("egg white", FoodMatrix.EggWhite, "palumbo-white-93")]
    [InlineData("whole egg", FoodMatrix.WholeEgg, "garibaldi-whole")]
    [InlineData("egg yolk", FoodMatrix.EggYolk, "garibaldi-yolk")]
    public void APlainSetDoesNotSpeakOfTenPerCentOfSucrose(string egg, FoodMatrix matter, string key) =>
        Assert.All((double[])[1 / 9.0, 0.1], sugarPerEgg => Assert.False(Finding(Judge(egg, sugarPerEgg, 60, 1, matter), key).Applies));

    // Nor does a study with 10 % speak of 23: 30 g of sugar to 100 g of egg. Alvarez and others (2003) have D rise thirtyfold from a water activity near 1 to 0.96
    // in sucrose.
    [Theory]
    [InlineData("egg white", FoodMatrix.EggWhite, "garibaldi-white-sucrose")]
    [InlineData("whole egg", FoodMatrix.WholeEgg, "garibaldi-whole-sucrose")]
    [InlineData("egg yolk", FoodMatrix.EggYolk, "garibaldi-yolk-sucrose")]
    public void AStudyWithTenPerCentDoesNotSpeakOfTwentyThree(string egg, FoodMatrix matter, string key) => Assert.False(Finding(Judge(egg, 0.3, 60, 1, matter), key).Applies);

    // And a plain set speaks of egg with nothing added.
    [Theory]
    [InlineData("egg white", FoodMatrix.EggWhite, "garibaldi-white")]
    [InlineData("egg white", FoodMatrix.EggWhite, "palumbo-white-78")]
    [InlineData("egg white", FoodMatrix.EggWhite, "palumbo-white-93")]
    [InlineData("whole egg", FoodMatrix.WholeEgg, "garibaldi-whole")]
    [InlineData("egg yolk", FoodMatrix.EggYolk, "garibaldi-yolk")]
    public void APlainSetSpeaksOfPlainEgg(string egg, FoodMatrix matter, string key) => Assert.True(Finding(Judge(egg, 0, 60, 1, matter), key).Applies);

    // More sugar never brings a set of a plain egg back.
    [Fact]
    public void ASetOnceLeftBehindDoesNotComeBack()
    {
        HashSet<string> gone = [];
        for (double sugar = 0; sugar <= 3; sugar += 0.05)
        {
            foreach (LethalityFinding finding in Judge("egg white", sugar, 60, 1, FoodMatrix.EggWhite).Findings.Where(finding => finding.Set.Matter == FoodMatrix.EggWhite))
            {
                Assert.False(finding.Applies && gone.Contains(finding.Set.Key));
                if (!finding.Applies)
                    gone.Add(finding.Set.Key);
            }
        }
        Assert.Equal(5, gone.Count);
    }

    // Where the activity is in doubt and its low end lies outside a set, the set may promise too much: it must not be used without a word.
    [Fact]
    public void ASetThatFailsAtTheLowEndOfTheActivityIsNotUsed() => Assert.False(Finding(
        LethalityJudgement.Of(Readings.Log((0, 58), (5, 58)), FoodMatrix.EggWhite, new Spread(0.93, 0.985, 0.99)), "garibaldi-white").Applies);

    [Fact]
    public void TheEndsOfARangeBelongToIt()
    {
        Assert.All(KineticSet.All, set =>
        {
            Assert.True(set.AppliesTo(set.Matter, set.LowWaterActivity, out string why));
            Assert.NotEqual("", why);
            Assert.True(set.AppliesTo(set.Matter, set.HighWaterActivity, out _));
            Assert.False(set.AppliesTo(set.Matter, Math.BitDecrement(set.LowWaterActivity), out why));
            Assert.Contains("promise too much", why, StringComparison.Ordinal);
            if (set.HighWaterActivity < 1)
                Assert.False(set.AppliesTo(set.Matter, Math.BitIncrement(set.HighWaterActivity), out why));
        });
    }

    // Fresh white is 7.6 to 8.2, stored white 9.2 and more: the studies of old white, in which heat kills fifteen times as quickly, never answer for it alone.
    [Theory]
    [InlineData(7.6, 8.2, new[] { "palumbo-white-78", "schuman-white" })]
    [InlineData(9.2, 9.2, new[] { "garibaldi-white", "garibaldi-white-sucrose", "palumbo-white-93" })]
    [InlineData(7.6, 9.3, new[] { "garibaldi-white", "garibaldi-white-sucrose", "palumbo-white-78", "palumbo-white-93", "schuman-white" })]
    [InlineData(4.0, 4.0, new string[0])] // with acid
    [InlineData(6.5, 9.3, new string[0])] // no study reaches the low end
    public void TheAcidityDecidesWhichWhiteWasMeant(double low, double high, string[] keys)
    {
        LethalityJudgement judgement = LethalityJudgement.Of(Readings.Log((0, 57), (3.5, 57)), FoodMatrix.EggWhite, Spread(0.998), new Spread(low, low, high));
        Assert.Equal(keys, judgement.Findings.Where(finding => finding.Applies && finding.Set.Matter == FoodMatrix.EggWhite).Select(finding => finding.Set.Key).Order());
        Assert.True(judgement.IsPhStated);
    }

    [Fact]
    public void WhiteOfUnknownAgeIsNeverJudgedByTheQuickStudyAlone()
    {
        for (int i = 970; i <= 1000; i++)
        {
            LethalityJudgement judgement = LethalityJudgement.Of(Readings.Log((0, 57), (3.5, 57)), FoodMatrix.EggWhite, Spread(i / 1000.0));
            Assert.False(judgement.IsPhStated);
            LethalityFinding[] white = [.. judgement.Findings.Where(finding => finding.Applies && finding.Set.Matter == FoodMatrix.EggWhite)];
            Assert.True(white.Length == 0 || white.Any(finding => finding.Set.LowPh <= 7.6));
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-0.1)]
    [InlineData(14.1)]
    public void AnImpossibleAcidityIsRefused(double ph)
    {
        if (double.IsNaN(ph))
            Assert.Throws<ArgumentOutOfRangeException>(() => Spread(ph));
        else
            Assert.Throws<ArgumentOutOfRangeException>(nameof(ph), () => LethalityJudgement.Of(Readings.Log((0, 57), (3.5, 57)), FoodMatrix.EggWhite, Spread(0.998), Spread(ph)));
    }

    [Fact]
    public void ALogThatNeverGetsHotIsNoughtAndNotNothing()
    {
        LethalityJudgement judgement = LethalityJudgement.Of(Readings.Log((0, 20), (60, 40)), FoodMatrix.EggWhite, Spread(0.998));
        Assert.True(judgement.HasAnswer);
        Assert.All(judgement.Findings.Where(finding => finding.Applies), finding => Assert.Equal(default(Spread), finding.LogReduction));
    }

    [Fact]
    public void AJudgementKeepsWhatItJudged()
    {
        ProbeLog log = Readings.Log((0, 65), (9.5, 65));
        LethalityJudgement judgement = LethalityJudgement.Of(log, FoodMatrix.EggWhite, Spread(0.86));
        Assert.Same(log, judgement.Log);
        Assert.Equal(FoodMatrix.EggWhite, judgement.Matter);
        Assert.Equal(Spread(0.86), judgement.WaterActivity);
        // 9.5 minutes at 65 °C: 3 log predicted for the model solutions, Mattick and others (2001), Table 7; 3/14.5 by the study in sucrose, recalled.
        Assert.Equal("mattick: 0.21 to at least 3 log (Mattick et al. 2001) Local codes and licensed practice decide.", judgement.ToString());
        Assert.Contains("predicted for water with glucose and fructose", judgement.Headline, StringComparison.Ordinal);
    }

    private static Formula Mix(string egg, double sugarPerEgg)
    {
        FormulaLine white = FormulaLine.Of(IngredientTable.BuiltIn.Get(egg), 100);
        return Formula.Of("Fennmarsh mix", sugarPerEgg == 0 ? [white] : [white, FormulaLine.Of(s_sugar, 100 * sugarPerEgg)]);
    }

    private static LethalityJudgement Judge(string egg, double sugarPerEgg, double celsius, double minutes, FoodMatrix matter, double? ph = null) =>
        LethalityJudgement.Of(Readings.Log((0, celsius), (minutes, celsius)), matter, HeatedMix.WaterActivity(Mix(egg, sugarPerEgg), celsius), ph is double value ? Spread(value) : null);

    private static Spread Spread(double value) => new(value, value, value);

    private static LethalityFinding Finding(LethalityJudgement judgement, string key) => judgement.Findings.Single(finding => finding.Set.Key == key);

    private static double Logs(LethalityJudgement judgement, string key) => Finding(judgement, key).LogReduction!.Value.Likely;
}
