using Confectio.Cards;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Tests.Cards;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>Each mistake that a card can have, on a card of its own; the expected figures are worked out beside it.</summary>
public sealed class CardVetterTests
{
    private static CardVerdict Vet(string text, CardVettingOptions? options = null) => CardVetter.Vet(PrintedCardTests.Read(text), options);

    private static CardFinding Single(string text, CardIssue issue, CardVettingOptions? options = null)
    {
        CardFinding[] mistakes = [.. Vet(text, options).Findings.Where(finding => finding.Severity != FindingSeverity.Note)];
        CardFinding finding = Assert.Single(mistakes);
        Assert.Equal(issue, finding.Issue);
        return finding;
    }

    private const string Good = "House icing\nMakes 24 portions of 40 g\n\n1 cup (227 g) unsalted butter\n4 cups (480 g) icing sugar, sifted\n1 cup (240 g) cream cheese\n2 Tbsp (30 g) whole milk\n\nMethod\n1. Keep in the refrigerator at 40°F (4°C).\n\nContains: milk.\n";

    [Fact]
    public void AGoodCardHasNoFinding()
    {
        CardVerdict verdict = Vet(Good);
        Assert.Empty(verdict.Findings);
        Assert.Equal(4, verdict.JudgedLines);
    }

    [Fact]
    public void ACupCountedAsEightOuncesIsFoundAtItsFigure()
    {
        // 8 oz of 28.35 g are 227 g; a cup of honey is 12 oz in every table that prints it.
        CardFinding finding = Single("Honey cake\n1 cup (227 g) honey\n1 cup (200 g) granulated sugar\n1 cup (237 g) water\n1 cup (125 g) all-purpose flour\n", CardIssue.Measures);
        Assert.Equal("cup-counted-as-eight-ounces", finding.Cause);
        Assert.Equal((2, 8, 5), (finding.Place.Line, finding.Place.Column, finding.Place.Length));
        Assert.Equal("227 g", finding.Stands);
        Assert.InRange(finding.ProbabilityRight!.Value, 0, 0.05);
        Assert.Contains("340", finding.Expected, StringComparison.Ordinal);
    }

    [Theory]
    // 1 Tbsp is 14.8 mL in the United States, 15 elsewhere, 20 in Australia, 17.8 of old: never 5.
    [InlineData("1 Tbsp (5 ml) vanilla extract", "spoon-swap")]
    // Half a cup is 100 to 142 mL in any system.
    [InlineData("1/2 cup (240 ml) whole milk", "halved-or-doubled")]
    public void TwoVolumesThatFitInNoCupsAreFound(string line, string cause) => Assert.Equal(cause, Single("Icing\n250 g butter\n" + line + "\n", CardIssue.Volumes).Cause);

    [Theory]
    [InlineData("2 tablespoons (40 ml) lemon juice")]
    [InlineData("1 cup (240 ml) whole milk")]
    [InlineData("1 cup (250 ml) whole milk")]
    [InlineData("3/4 cup (180 ml) whole milk")]
    public void TwoVolumesThatFitInSomeCupsAreRight(string line) => Assert.Empty(Vet("Icing\n250 g butter\n" + line + "\n").Findings);

    [Theory]
    [InlineData("Bake at 177°F (350°C).", CardIssue.Temperature, "columns-swapped")]
    // 350 / 1.8 = 194: the 32 was left out.
    [InlineData("Bake at 350°F (194°C).", CardIssue.Temperature, "point-as-difference")]
    // 5 / 1.8 = 2.8, and (5 - 32) / 1.8 = -15.
    [InlineData("It may fall by 5°F (-15°C) meanwhile.", CardIssue.Temperature, "difference-as-point")]
    [InlineData("Preheat the oven to 350 °C.", CardIssue.Process, "other-unit")]
    [InlineData("Keep in the refrigerator at 40 °C.", CardIssue.Process, "other-unit")]
    [InlineData("Cook to soft ball, 116 °F.", CardIssue.Stage, "other-unit")]
    [InlineData("Cook the syrup to hard crack, 240 °F (116 °C).", CardIssue.Stage, "unexplained")]
    public void ATemperatureIsHeldAgainstItsPairAndItsProcess(string step, CardIssue issue, string cause) =>
        Assert.Equal(cause, Single($"Cake\n250 g butter\n\nMethod\n1. {step}\n", issue).Cause);

    [Theory]
    [InlineData("Bake at 350°F (180°C).")]
    [InlineData("Preheat the oven to 180C/160C Fan/350F/Gas 4.")]
    [InlineData("It may fall by 5°F (3°C) meanwhile.")]
    [InlineData("Boil the syrup to 118-120 °C (244-248 °F), firm ball.")]
    [InlineData("Melt to 115°F (46°C). Cool to 82°F (28°C). Re-warm to 88-90°F (31-32°C).")]
    [InlineData("Bake the chocolate cake at 350°F.")]
    [InlineData("Add 2 C sugar and bake.")]
    [InlineData("Cook the caramel to 245°F (118°C).")]
    [InlineData("Freeze the layers, then bake at 325 °F (160 °C).")]
    [InlineData("Dry overnight in the oven at 80 °C (175 °F).")]
    public void AGoodTemperatureIsNoFinding(string step) => Assert.Empty(Vet($"Cake\n250 g butter\n\nMethod\n1. {step}\n").Findings);

    [Fact]
    public void AStageOfSeaLevelInAHighKitchenIsFound()
    {
        const string Fudge = "Fudge\n3 cups (600 g) granulated sugar\n1 cup (238 g) heavy cream\n\nMethod\n1. Cook to soft ball, 238 °F (114 °C).\n";
        Assert.Empty(Vet(Fudge).Findings);
        // An extension rule: 2 °F lower for each 1000 ft, so 10.5 °F at 5280 ft: 238 is 227.5.
        CardFinding finding = Single(Fudge.Replace("Fudge\n", "Fudge (elevation 5,280 ft)\n", StringComparison.Ordinal), CardIssue.StageAltitude);
        Assert.Contains("1609 m", finding.Explanation, StringComparison.Ordinal);
        Single(Fudge, CardIssue.StageAltitude, new CardVettingOptions { Pressure = AirPressure.FromAltitudeMetres(1600) });
        Assert.Empty(Vet(Fudge.Replace("Fudge\n", "Fudge (elevation 5,280 ft)\n", StringComparison.Ordinal).Replace("238 °F (114 °C)", "228 °F (109 °C)", StringComparison.Ordinal)).Findings);
    }

    private const string Shares = "Fondant\nIngredient\t%\tWeight\nIcing sugar\t78.0\t780 g\nGlucose syrup\t12.0\t120 g\nGlycerine\t2.0\t20 g\nGelatine\t1.0\t10 g\nWater\t5.0\t50 g\nWhite shortening\t2.0\t20 g\nTotal\t100.0\t1000 g\n";

    [Theory]
    [InlineData("Icing sugar\t78.0", "Icing sugar\t87.0", CardIssue.Percent, "digits-swapped")]
    [InlineData("Water\t5.0", "Water\t50.0", CardIssue.Percent, "decimal-shift")]
    [InlineData("100.0\t1000", "100.0\t1300", CardIssue.Total, "unexplained")]
    [InlineData("100.0\t1000", "90.0\t1000", CardIssue.PercentSum, "unexplained")]
    public void SharesAndSumsAreHeldAgainstTheLines(string right, string wrong, CardIssue issue, string cause)
    {
        Assert.Empty(Vet(Shares).Findings);
        Assert.Equal(cause, Single(Shares.Replace(right, wrong, StringComparison.Ordinal), issue).Cause);
    }

    // Baker's percentages have the flour at 100 and add up to more.
    [Fact]
    public void BakersPercentagesHaveTheirOwnBasis() => Assert.Empty(Vet(PrintedCardTests.Hand("07-bakers-percent.txt")).Findings);

    [Theory]
    [InlineData("Yield: 1.2 kg", CardIssue.Yield)]
    [InlineData("Yield: 480 g", CardIssue.Yield)]
    [InlineData("Makes 48 portions of 40 g", CardIssue.Portions)]
    [InlineData("Makes 12 portions of 40 g", CardIssue.Portions)]
    public void WhatItMakesIsHeldAgainstWhatGoesIn(string fact, CardIssue issue) => Single(Good.Replace("Makes 24 portions of 40 g", fact, StringComparison.Ordinal), issue);

    [Theory]
    [InlineData("Yield: about 950 g")]
    [InlineData("Yield: 0.9 kg")]
    [InlineData("Makes 24 portions of 38 g")]
    [InlineData("Serves 8-10")]
    [InlineData("Makes 4 cups")]
    public void AGoodYieldIsNoFinding(string fact) => Assert.Empty(Vet(Good.Replace("Makes 24 portions of 40 g", fact, StringComparison.Ordinal)).Findings);

    // Dried white of 8 % moisture: 1 to 7 has 92 / 8 = 11.5 % solids, 1 to 3 has 23, 7 to 1 has 80; fresh white has 12.
    [Theory]
    [InlineData("Use 1 part egg white powder to 7 parts water.", true)]
    [InlineData("Dissolve 12 g dried egg white in 88 g water.", true)]
    [InlineData("For each white use 2 tsp egg white powder + 2 Tbsp water.", true)]
    [InlineData("3 Tbsp meringue powder with 6 Tbsp water for the egg whites.", true)]
    [InlineData("Use 1 part egg white powder to 3 parts water.", false)]
    [InlineData("Use 7 parts egg white powder to 1 part water.", false)]
    [InlineData("For each white use 2 Tbsp egg white powder + 2 Tbsp water.", false)]
    public void DriedEggIsHeldAgainstItsSolids(string step, bool isGood)
    {
        string card = $"Meringue\n150 g egg white\n300 g sugar\n\nMethod\n1. {step}\n";
        if (isGood)
            Assert.Empty(Vet(card).Findings);
        else
            Single(card, CardIssue.PowderRatio);
    }

    [Theory]
    [InlineData("Dairy-free.", CardIssue.AllergenContradicted, "milk")]
    [InlineData("Contains no milk.", CardIssue.AllergenContradicted, "milk")]
    [InlineData("Vegan", CardIssue.AllergenContradicted, "milk")]
    [InlineData("Free from nuts and milk.", CardIssue.AllergenContradicted, "milk")]
    [InlineData("Contains: none of the major allergens.", CardIssue.AllergenContradicted, "milk")]
    [InlineData("Contains: soy.", CardIssue.AllergenMissing, "milk")]
    [InlineData("Allergens: wheat, egg", CardIssue.AllergenMissing, "milk")]
    public void AllergensAreHeldAgainstTheIngredients(string label, CardIssue issue, string allergen) =>
        Assert.Equal(allergen, Single(Good.Replace("Contains: milk.", label, StringComparison.Ordinal), issue).Cause);

    [Theory]
    [InlineData("Contains: milk. Free from egg.")]
    [InlineData("Contains: almond, milk.")]
    [InlineData("May contain traces of nuts.")]
    [InlineData("If you need it dairy-free, use a margarine.")]
    [InlineData("Milk, egg.")]
    public void AGoodLabelIsNoFinding(string label) => Assert.DoesNotContain(Vet(Good.Replace("Contains: milk.", label, StringComparison.Ordinal)).Findings, finding => finding.Severity != FindingSeverity.Note);

    // Nothing that is not said is taken for agreement.
    [Fact]
    public void ACardWithoutALabelIsToldWhatItsIngredientsHave() =>
        Assert.Contains(Vet(Good.Replace("Contains: milk.", "", StringComparison.Ordinal)).NotJudged, sentence => sentence.Contains("milk", StringComparison.Ordinal) && sentence.Contains("labels", StringComparison.Ordinal));

    [Fact]
    public void ADoubtThatOnlyTheLabelSettlesIsANote()
    {
        CardFinding finding = Assert.Single(Vet("Bark\n200 g dark chocolate\n\nDairy-free.\n").Findings);
        Assert.Equal(FindingSeverity.Note, finding.Severity);
        Assert.Contains("label of the pack", finding.Explanation, StringComparison.Ordinal);
    }

    // 71 °C (160 °F) is the household guidance for dishes with egg; no table of pasteurisation goes below 55 °C.
    [Theory]
    [InlineData("Whisk the whites to 120°F (49°C); they are safe then.", true)]
    [InlineData("Heat the egg whites to 140 °F: that pasteurizes them.", true)]
    [InlineData("Heat the egg whites to 160 °F (71 °C): that makes them safe.", false)]
    [InlineData("Heat the egg whites to 120°F (49°C), which does not make them safe.", false)]
    [InlineData("Heat the egg whites to 140 °F (60 °C) for 4 minutes to pasteurize them, and ask your inspector.", false)]
    public void EggThatIsCalledSafeTooCoolIsFound(string step, bool isFound) =>
        Assert.Equal(isFound, Vet($"Meringue\n150 g egg white\n300 g sugar\n\nMethod\n1. {step}\n").Findings.Any(finding => finding.Issue == CardIssue.UnsafeTemperature));

    // 9 x 8 + 4 x 19 = 148 kcal; 148 x 4.184 = 619 kJ. 100 g of the three have 26 g of fat (230 x 0.81 / 720).
    [Theory]
    [InlineData("Calories 148", "Calories 148", null)]
    [InlineData("Calories 148", "Calories 248", CardIssue.Energy)]
    [InlineData("619 kJ", "1619 kJ", CardIssue.Energy)]
    [InlineData("fat 8 g", "fat 18 g", CardIssue.Nutrition)]
    [InlineData("Sugars 19 g", "Sugars 29 g", CardIssue.Nutrition)]
    public void NutritionIsHeldAgainstItselfAndTheIngredients(string right, string wrong, CardIssue? issue)
    {
        CardFinding[] findings = [.. Vet(PrintedCardTests.Hand("14-nutrition-text.txt").Replace(right, wrong, StringComparison.Ordinal)).Findings];
        if (issue is null)
            Assert.Empty(findings);
        else
            Assert.Contains(findings, finding => finding.Issue is CardIssue.Energy or CardIssue.Nutrition);
    }

    [Fact]
    public void OneSystemIsFoundForTheWholeCard()
    {
        // Cups of 250 mL: 250 g of water, 312 g of milk by 1 1/4 cups would be 250 mL x 1.25 x 1.03 = 322.
        CardVerdict verdict = Vet("Pudding\n1 cup (250 g) water\n2 cups (515 g) whole milk\n1 cup (210 g) granulated sugar\n1 Tbsp (15 g) water\n");
        Assert.Empty(verdict.Findings);
        Assert.Equal("metric", verdict.System!.Family);
        Assert.Equal(MeasuringSystem.Metric, verdict.System.Best);
    }

    [Fact]
    public void EveryIssueHasACodeAndHelp()
    {
        Assert.All(Enum.GetValues<CardIssue>(), issue =>
        {
            Assert.Matches("^[a-z]+(-[a-z]+)*$", issue.ToCode());
            Assert.EndsWith(".", issue.ToHelp(), StringComparison.Ordinal);
            Assert.Equal(issue.ToString().ToLowerInvariant(), issue.ToCode().Replace("-", "", StringComparison.Ordinal));
        });
    }

    [Fact]
    public void TheGravestComeFirst()
    {
        CardVerdict verdict = Vet("Cake\n1 cup (227 g) honey\n1 cup (200 g) sugar\n1 cup (237 g) whole milk\n\nMethod\n1. Bake at 177°F (350°C).\n\nDairy-free.\n");
        Assert.Equal(CardIssue.AllergenContradicted, verdict.Findings[0].Issue);
        Assert.True(verdict.HasMistakes);
    }
}
