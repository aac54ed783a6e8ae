using Confectio.Cooking;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Tests.Sugars;
using Xunit;

namespace Confectio.Tests.Cooking;

/// <summary>The cooking stages: what sources print, what that is elsewhere, and how strong the syrup is.</summary>
public sealed class StageTests
{
    [Theory] // Colorado State University Extension: the rule of thumb, 2 °F per 1000 ft
    [InlineData(0, 234, 240)]
    [InlineData(5000, 224, 230)]
    [InlineData(7500, 219, 225)]
    public void TheRuleOfThumbIsThatOfTheExtensionService(double feet, double low, double high)
    {
        StageTarget target = CookingStage.Get("soft-ball").At(AirPressure.FromAltitudeFeet(feet));
        Assert.Equal(low, target.Low.RuleOfThumbFahrenheit, 1e-6);
        Assert.Equal(high, target.High.RuleOfThumbFahrenheit, 1e-6);
    }

    // The same service and McGee (2004): 2 °F for every 1000 feet, whatever the stage.
    [Fact]
    public void TheRuleOfThumbIsTwoDegreesFor1000Feet() => Assert.All(CookingStage.All, stage =>
    {
        StageTarget sea = stage.At(AirPressure.SeaLevel), up = stage.At(AirPressure.FromAltitudeFeet(1000));
        Assert.Equal(-2, up.Low.RuleOfThumbFahrenheit - sea.Low.RuleOfThumbFahrenheit, 1e-6);
        Assert.Equal(-2, up.High.RuleOfThumbFahrenheit - sea.High.RuleOfThumbFahrenheit, 1e-6);
    });

    // From the two equations by another program: at 85 % the rule is right within half a degree Fahrenheit at 5000 to 7500 feet (it takes off
    // 10 and 15, the syrup 9.8 and 14.7); at 95 % it is 1.0 and 1.4 too small (11.0 and 16.4).
    [Theory]
    [InlineData(85, 5000, -9.8)]
    [InlineData(85, 7500, -14.7)]
    [InlineData(95, 5000, -11.0)]
    [InlineData(95, 7500, -16.4)]
    public void TheRuleOfThumbBesideTheSyrup(double percent, double feet, double expected)
    {
        double celsius = SucroseSolution.BoilingCelsius(percent / 100, 101.325);
        StageEnd end = CookingStage.Of("here", celsius, celsius).At(AirPressure.FromAltitudeFeet(feet)).Low;
        // Each expected value is the difference of two figures of one decimal.
        Assert.Equal(expected, end.Fahrenheit - Syrups.ToFahrenheit(celsius), 0.11);
        Assert.Equal(-2 * feet / 1000 - expected, 1.8 * end.RuleOfThumbError, 0.11);
    }

    [Fact]
    public void AtSeaLevelATargetIsWhatIsPrinted() => Assert.All(CookingStage.All, stage =>
    {
        StageTarget target = stage.At(AirPressure.SeaLevel);
        Assert.Equal(stage.LowFahrenheit, target.Low.Fahrenheit, 1e-6);
        Assert.Equal(stage.HighFahrenheit, target.High.Fahrenheit, 1e-6);
        Assert.Equal(stage.LowFahrenheit, target.Low.RuleOfThumbFahrenheit, 1e-6);
        Assert.Equal(0, target.Low.RuleOfThumbError, 1e-6);
    });

    // Of one strength from sea level up, whatever is dissolved.
    [Theory]
    [InlineData(-300)]
    [InlineData(1600)]
    [InlineData(3000)]
    public void ATargetHasTheStrengthOfSeaLevel(double metres)
    {
        AirPressure here = AirPressure.FromAltitudeMetres(metres);
        SugarSolution[] mixes =
            [SugarSolution.OfSucrose(0.5), Syrups.Mixture(0.5, Constituent.Glucose, 0.1), Syrups.Mixture(0.5, Constituent.HigherSaccharides, 0.2)];
        Assert.All(mixes, mix => Assert.All(CookingStage.All.Where(stage => stage.HighFahrenheit <= 300), stage => Assert.All(Ends(stage.At(here, mix)), end =>
        {
            Assert.NotNull(end.Solution);
            Assert.Equal(end.SeaLevelCelsius, end.Solution.BoilingCelsius(AirPressure.SeaLevel).Likely, 1e-7);
            Assert.Equal(end.Celsius, end.Solution.BoilingCelsius(here).Likely, 1e-9);
            Assert.Equal(metres < 0, end.Celsius > end.SeaLevelCelsius);
            Assert.Equal(mix.Purity, end.Solution.Purity, 1e-12);
            Assert.Equal(end.Solution.Solids, end.Solids!.Value.Likely, 1e-12);
        })));
    }

    // Bullock-Prado 2011, Exploratorium, Wikipedia and the trade print 80, 85, 87, 90 or 92 and 95 % of sugar. Sucrose that boils in the
    // printed range is within 2 points of them, by either model, for every source and stage below hard crack.
    [Fact]
    public void NominalStrengthIsWithinTwoPointsOfTheSyrup()
    {
        int seen = 0;
        foreach (CookingStage stage in CookingStage.All.Where(stage => stage.Key is not ("hard-crack" or "caramel")))
        {
            foreach (StageFigure figure in stage.Figures.Where(figure => figure.SugarPercent is not null))
            {
                foreach (BoilingModel model in Enum.GetValues<BoilingModel>())
                {
                    Assert.InRange(figure.SugarPercent!.Value, Percent(figure.LowFahrenheit, model) - 2, Percent(figure.HighFahrenheit!.Value, model) + 2);
                    seen++;
                }
            }
        }
        Assert.Equal(2 * 15, seen);
    }

    // A named disagreement: the 99 % of hard crack. Sucrose that boils at 300 °F has 96.9 or 97.9 % by the two equations, one to two points
    // less, and at 309 97.9. Our own table says so where it gives the figure.
    [Fact]
    public void The99PercentOfHardCrackIsOneToTwoPointsTooMuch()
    {
        Assert.All(CookingStage.Get("hard crack").Figures.Where(figure => figure.SugarPercent is not null), figure => Assert.Equal(99, figure.SugarPercent));
        Assert.InRange(99 - Percent(300, BoilingModel.StarzakPeacock), 1, 2.2);
        Assert.InRange(99 - Percent(300, BoilingModel.StarzakMathlouthi), 1, 2.2);
        Assert.InRange(99 - Percent(309, BoilingModel.StarzakPeacock), 1, 2.2);
        Assert.Contains("97", CookingStage.Get("hard crack").Figures[0].Provenance.Note, StringComparison.Ordinal);
    }

    // Side by side every source is in the neighbourhood: within 10 °F of the range of the trade. Named exceptions: Escoffier (1907) and
    // McGee (2004) let the thread begin at 215 °F, and what they call caramel goes on to black.
    [Fact]
    public void TheSourcesAreNeighbours() => Assert.All(CookingStage.All, stage =>
    {
        Assert.NotEmpty(stage.Figures);
        Assert.Equal((stage.LowFahrenheit, stage.HighFahrenheit), (stage.Figures[0].LowFahrenheit, stage.Figures[0].HighFahrenheit));
        Assert.Equal(Evidence.CommonPractice, stage.Figures[0].Provenance.Evidence);
        double below = stage.Key == "thread" ? 15 : 10, above = stage.Key == "caramel" ? 60 : 10;
        Assert.All(stage.Figures, figure =>
        {
            Assert.InRange(figure.LowFahrenheit, stage.LowFahrenheit - below, stage.HighFahrenheit + above);
            Assert.InRange(figure.HighFahrenheit ?? figure.LowFahrenheit, figure.LowFahrenheit, stage.HighFahrenheit + above);
            Assert.False(string.IsNullOrEmpty(figure.PrintedAs));
        });
        if (stage.Key is not ("thread" or "caramel"))
            Assert.True(stage.Figures.Select(figure => figure.Provenance.Source).Distinct().Count() >= 4);
    });

    [Fact] // what was read at the sources, °F
    public void FiguresReadByHand()
    {
        Assert.Equal(["thread", "soft-ball", "firm-ball", "hard-ball", "soft-crack", "hard-crack", "caramel"], CookingStage.All.Select(stage => stage.Key));
        Assert.Equal((236, 236), Figure("soft-ball", "escoffier-1907"));
        Assert.Equal((248, 248), Figure("firm-ball", "escoffier-1907"));
        Assert.Equal((285, 285), Figure("soft-crack", "escoffier-1907"));
        Assert.Equal((315, 315), Figure("hard-crack", "escoffier-1907"));
        Assert.Equal((235, 240), Figure("soft-ball", "mcgee-2004"));
        Assert.Equal((250, 265), Figure("hard-ball", "mcgee-2004")); // prints 240 beside 121 °C
        Assert.Equal((235, 240), Figure("soft-ball", "bullock-prado-2011"));
        Assert.Equal((270, 290), Figure("soft-crack", "bullock-prado-2011"));
        Assert.Equal((295, 309), Figure("hard-crack", "wikipedia-candy"));
        Assert.Equal((234, 240), Figure("soft-ball", "csu-altitude"));
        Assert.Equal((244, null), Figure("firm-ball", "csu-altitude"));
    }

    [Fact]
    public void ATemperatureFindsItsStage()
    {
        Assert.All(CookingStage.All, stage =>
        {
            double middle = (stage.LowCelsius + stage.HighCelsius) / 2;
            Assert.Contains(stage, CookingStage.StagesAt(middle, AirPressure.SeaLevel));
        });
        Assert.Equal(["soft ball", "firm ball"], CookingStage.StagesAt(Syrups.ToCelsius(242), AirPressure.SeaLevel).Select(stage => stage.Name));
        Assert.Empty(CookingStage.StagesAt(101, AirPressure.SeaLevel));
        // A mile up 229 °F is soft ball, where at the sea it would not yet be a thread.
        AirPressure up = AirPressure.FromAltitudeFeet(5280);
        Assert.Equal(["soft ball"], CookingStage.StagesAt(Syrups.ToCelsius(229), up).Select(stage => stage.Name));
        Assert.Empty(CookingStage.StagesAt(Syrups.ToCelsius(229), AirPressure.SeaLevel));
    }

    // The table has sources in the gaps of the trade's ranges: soft ball to 241 °F and firm ball from 245, hard crack from 295.
    [Theory]
    [InlineData(116.5, "soft ball", "firm ball")]
    [InlineData(120.5, "firm ball", "hard ball")]
    [InlineData(131, "hard ball", "soft crack")]
    [InlineData(146, "soft crack", "hard crack")]
    [InlineData(157, "hard crack", "caramel")]
    public void BetweenTwoStagesBothAreNamed(double celsius, string lower, string upper)
    {
        Assert.Equal([lower, upper], CookingStage.StagesAt(celsius, AirPressure.SeaLevel).Select(stage => stage.Name));
        // Beyond the last there is no other.
        Assert.Empty(CookingStage.StagesAt(200, AirPressure.SeaLevel));
    }

    // However hot, between the first and the last stage some stage is named, and never more than two.
    [Fact]
    public void NoTemperatureBetweenFirstAndLastIsWithoutAStage()
    {
        AirPressure up = AirPressure.FromAltitudeMetres(1600);
        for (double celsius = CookingStage.All[0].At(up).Low.Celsius + 1e-3; celsius < CookingStage.All[^1].At(up).High.Celsius; celsius += 0.7)
            Assert.InRange(CookingStage.StagesAt(celsius, up).Count, 1, 2);
    }

    // Above the strength where measurements end sugar melts and browns, which the air has no part in.
    [Fact]
    public void CaramelIsWhereItIsEverywhere()
    {
        StageTarget target = CookingStage.Get("caramel").At(AirPressure.FromAltitudeMetres(3000));
        Assert.All(Ends(target), end =>
        {
            Assert.Null(end.Solution);
            Assert.Null(end.Solids);
            Assert.Equal(end.SeaLevelCelsius, end.Celsius, 1e-12);
        });
    }

    // 310 °F, the top of hard crack, is 0.26 K above where 98 % sucrose boils (154.19 °C), the end of the measurements. It is syrup all the same
    // and moves with the altitude: at 95 % and more the rule of thumb is a degree or two too small (see above), and so it is here.
    [Fact]
    public void TheTopOfHardCrackMovesWithTheAltitude()
    {
        StageTarget target = CookingStage.Get("hard crack").At(AirPressure.FromAltitudeFeet(5000));
        Assert.Equal(300, target.High.RuleOfThumbFahrenheit, 1e-6);
        Assert.InRange(target.High.Fahrenheit, 297, 299.5);
        Assert.Equal(0.98, target.High.Solution!.Solids, 1e-9);
        // The bottom is inside the measurements. 97 % boils at 300.9 °F at the sea and at 289.4 here, by another program: 300 is 0.9 °F less.
        Assert.Equal(288.5, target.Low.Fahrenheit, 0.1);
    }

    // However high the kitchen, the low end stays below the high one, and a stage below the next.
    [Theory]
    [InlineData(0)]
    [InlineData(1500)]
    [InlineData(4000)]
    public void StagesKeepTheirOrder(double metres)
    {
        StageTarget[] targets = [.. CookingStage.All.Select(stage => stage.At(AirPressure.FromAltitudeMetres(metres)))];
        Assert.All(targets, target => Assert.True(target.Low.Celsius < target.High.Celsius));
        Assert.All(targets.Zip(targets.Skip(1)), pair => Assert.True(pair.First.High.Celsius <= pair.Second.Low.Celsius + 1e-9));
    }

    [Fact]
    public void AStageOfYourOwn()
    {
        CookingStage stage = CookingStage.Of("  fondant of Fennmarsh Hall ", 114, 116);
        Assert.Equal("fondant of Fennmarsh Hall", stage.Name);
        Assert.Equal((114, 116), (Math.Round(stage.LowCelsius, 10), Math.Round(stage.HighCelsius, 10)));
        Assert.Empty(stage.Figures);
        Assert.Equal(100 * SucroseSolution.FractionBoilingAt(114, 101.325), 100 * stage.At(AirPressure.FromAltitudeMetres(1200)).Low.Solution!.Solids, 1e-7);
    }

    [Fact]
    public void AStageIsFoundByKeyOrName()
    {
        Assert.Same(CookingStage.Get("soft-ball"), CookingStage.Get(" Soft BALL "));
        Assert.False(CookingStage.TryGet("medium rare", out CookingStage? none));
        Assert.Null(none);
        ArgumentException thrown = Assert.Throws<ArgumentException>("name", () => CookingStage.Get("medium rare"));
        Assert.Contains("soft-ball", thrown.Message, StringComparison.Ordinal);
    }

    [Theory] // what must be known at the stove
    [InlineData("burn")]
    [InlineData("cool running water for 20 minutes, no ice")]
    [InlineData("children")]
    [InlineData("boil up")]
    public void TheCautionIsThere(string word) =>
        Assert.Contains(word, CookingStage.Caution, StringComparison.Ordinal);

    private static double Percent(double fahrenheit, BoilingModel model) =>
        100 * SucroseSolution.FractionBoilingAt(Syrups.ToCelsius(fahrenheit), 101.325, model);

    private static StageEnd[] Ends(StageTarget target) => [target.Low, target.High];

    private static (double, double?) Figure(string stage, string source)
    {
        StageFigure figure = CookingStage.Get(stage).Figures.Single(figure => figure.Provenance.Source.Key == source);
        return (figure.LowFahrenheit, figure.HighFahrenheit);
    }
}
