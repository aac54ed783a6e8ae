using System.Globalization;
using Confectio.Eggs;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Textures;
using Xunit;

namespace Confectio.Tests.Eggs;

/// <summary>The size classes, what is in an egg of each, and the way from eggs to grams and cups and back.</summary>
public sealed class EggSizeTests
{
    // The ounce of 1959: 453.59237 g over 16, exactly.
    private const double Ounce = 28.349523125;

    private static readonly EggSize s_usLarge = EggSizeSystem.Get("us").Size("large");

    public static TheoryData<string> Sizes => [.. EggSizeSystem.All.SelectMany(system => system.Sizes.Select(size => $"{system.Key}/{size.Key}"))];

    // AMS 56 (2000): ounces a dozen; grams an egg by arithmetic, to the third decimal.
    [Theory]
    [InlineData("jumbo", 30, 70.874)]
    [InlineData("extra large", 27, 63.786)]
    [InlineData("large", 24, 56.699)]
    [InlineData("medium", 21, 49.612)]
    [InlineData("small", 18, 42.524)]
    [InlineData("peewee", 15, 35.437)]
    public void UsClassesBeginAtTheMinimumOfTheDozen(string name, double ounces, double grams)
    {
        EggSize size = EggSizeSystem.Get("US").Size(name);
        Assert.Equal(ounces, size.MinimumOuncesPerDozen);
        Assert.Equal(grams, size.LowGrams!.Value, 5e-4);
        Assert.Equal(ounces * Ounce / 12, size.LowGrams.Value, 1e-12);
        Assert.Equal("ams-56", size.Provenance.Source.Key);
    }

    // Regulation (EC) 589/2008, class A: XL 73 g and more, L 63 to below 73, M 53 to below 63, S below 53.
    [Theory]
    [InlineData(200, "xl")]
    [InlineData(73.0, "xl")]
    [InlineData(72.99, "l")]
    [InlineData(63.0, "l")]
    [InlineData(62.99, "m")]
    [InlineData(53.0, "m")]
    [InlineData(52.99, "s")]
    [InlineData(1, "s")]
    public void EuClassesAreHalfOpen(double grams, string key) => Assert.Equal(key, EggSizeSystem.Get("eu").Classify(grams)!.Key);

    [Theory]
    [InlineData("us", 35.4, null)]
    [InlineData("us", 36, "peewee")]
    [InlineData("us", 56.69, "medium")]
    [InlineData("us", 56.70, "large")]
    [InlineData("us", 90, "jumbo")]
    [InlineData("japan", 39.99, null)] // gross ranges from memory
    [InlineData("japan", 40, "ss")]
    [InlineData("japan", 58, "m")]
    [InlineData("japan", 75.99, "ll")]
    [InlineData("japan", 76, null)]
    public void AnEggOutsideTheClassesHasNone(string system, double grams, string? key) => Assert.Equal(key, EggSizeSystem.Get(system).Classify(grams)?.Key);

    [Fact]
    public void TheSameNameIsAnotherEggElsewhere()
    {
        EggSize eu = EggSizeSystem.Get("eu").Size("large"), japan = EggSizeSystem.Get("japan").Size("l");
        Assert.Equal("US large", s_usLarge.ToString());
        Assert.Equal("EU large", eu.ToString());
        Assert.Equal("Japan L", japan.ToString());
        Assert.Same(eu, EggSizeSystem.Get("EU").Size("L"));
        // 60 g is large in the United States and medium in the Union and in Japan.
        Assert.Equal("US large", EggSizeSystem.Get("us").Classify(60)!.ToString());
        Assert.Equal("EU medium", EggSizeSystem.Get("eu").Classify(60)!.ToString());
        Assert.Equal("Japan M", EggSizeSystem.Get("japan").Classify(60)!.ToString());
    }

    // USDA Standard Reference: large 50 g without shell, white 33, yolk 17; AMS 56: 56.70 g with it. Shares 11.8, 58.2 and 30.0 %.
    [Fact]
    public void TheLargeEggOfTheFoodTables()
    {
        Assert.Equal(50, s_usLarge.Grams(EggPart.Whole).Likely);
        Assert.Equal(33, s_usLarge.Grams(EggPart.White).Likely);
        Assert.Equal(17, s_usLarge.Grams(EggPart.Yolk).Likely);
        double whole = s_usLarge.WithShell.Likely;
        Assert.Equal(11.8, 100 * s_usLarge.Grams(EggPart.Shell).Likely / whole, 0.05);
        Assert.Equal(58.2, 100 * s_usLarge.Grams(EggPart.White).Likely / whole, 0.05);
        Assert.Equal(30.0, 100 * s_usLarge.Grams(EggPart.Yolk).Likely / whole, 0.05);
        Assert.Equal(Evidence.Compiled, s_usLarge.ProvenanceOf(EggPart.White).Evidence);
        // The table of weights has the same figures, read by another reader.
        Assert.Equal(33, IngredientTable.BuiltIn.Get("egg-white").Piece("large").Grams.Likely);
        Assert.Equal(17, IngredientTable.BuiltIn.Get("egg-yolk").Piece("large").Grams.Likely);
    }

    // USDA Standard Reference, NDB 01123: grams without shell; white 33/50 and yolk 17/50 of them.
    [Theory]
    [InlineData("small", 38, 25.08, 12.92)]
    [InlineData("medium", 44, 29.04, 14.96)]
    [InlineData("extra-large", 56, 36.96, 19.04)]
    [InlineData("jumbo", 63, 41.58, 21.42)]
    public void TheOtherUsClassesShareTheWholeEggAsTheLargeOne(string key, double whole, double white, double yolk)
    {
        EggSize size = EggSizeSystem.Get("us").Size(key);
        Assert.Equal(whole, size.Grams(EggPart.Whole).Likely);
        Assert.Equal(white, size.Grams(EggPart.White).Likely, 1e-9);
        Assert.Equal(yolk, size.Grams(EggPart.Yolk).Likely, 1e-9);
        Assert.Equal(Evidence.Computed, size.ProvenanceOf(EggPart.White).Evidence);
        Assert.Equal(whole, IngredientTable.BuiltIn.Get("egg-whole").Piece(size.Name).Grams.Likely);
    }

    // Hyogo Prefectural centre: white and yolk in grams by class. Its own percentages of M, L and LL are of eggs of 61, 67 and 73 g.
    [Theory]
    [InlineData("ss", 28, 10, null, null)]
    [InlineData("s", 31, 13, null, null)]
    [InlineData("ms", 34, 16, null, null)]
    [InlineData("m", 37, 18, 60.7, 29.2)]
    [InlineData("l", 41, 19, 61.2, 29.0)]
    [InlineData("ll", 45, 21, 61.8, 28.4)]
    public void JapaneseWhitesAndYolksAreThoseThatWereWeighed(string key, double white, double yolk, double? whitePercent, double? yolkPercent)
    {
        EggSize size = EggSizeSystem.Get("japan").Size(key);
        Assert.Equal(white, size.Grams(EggPart.White).Likely);
        Assert.Equal(yolk, size.Grams(EggPart.Yolk).Likely);
        Assert.Equal(Evidence.Measured, size.ProvenanceOf(EggPart.White).Evidence);
        Assert.Equal(Evidence.Compiled, size.Provenance.Evidence); // notice of the ministry, 1 June 1971
        Assert.Equal(Evidence.Computed, size.ProvenanceOf(EggPart.Shell).Evidence);
        // A gram rounded to half of one, on an egg of 60 to 70 g, is 0.8 of a per cent.
        if (whitePercent is double w)
            Assert.Equal(w, 100 * white / size.WithShell.Likely, 0.8);
        if (yolkPercent is double y)
            Assert.Equal(y, 100 * yolk / size.WithShell.Likely, 0.8);
    }

    [Fact]
    public void WhiteOfAJapaneseMediumEggIsTwoThirdsOfWhatIsEaten()
    {
        EggSize size = EggSizeSystem.Get("japan").Size("m");
        Assert.Equal(0.673, size.Grams(EggPart.White).Likely / size.Grams(EggPart.Whole).Likely, 5e-4); // 37/55
    }

    // The middle of the class, 68 and 58 g, times the mean of the published shares: white (60 + 63 + 58 + 58.2)/4, yolk (30 + 27.5 + 31 + 30)/4.
    [Theory]
    [InlineData("l", 68)]
    [InlineData("m", 58)]
    [InlineData("xl", 78)] // taken as wide as the next
    [InlineData("s", 48)]
    public void EuClassesAreSharedByTheMeanOfTheSources(string key, double middle)
    {
        EggSize size = EggSizeSystem.Get("eu").Size(key);
        Assert.Equal(middle, size.WithShell.Likely);
        Assert.Equal(middle * 0.598, size.Grams(EggPart.White).Likely, 1e-9);
        Assert.Equal(middle * 0.29625, size.Grams(EggPart.Yolk).Likely, 1e-9);
        // One of the four shares is common practice, so nothing made of their mean was published.
        Assert.Equal(Evidence.Estimated, size.ProvenanceOf(EggPart.White).Evidence);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void ThePartsOfAnEggAddUp(string name)
    {
        EggSize size = SizeOf(name);
        Assert.Equal(size.Grams(EggPart.Whole).Likely, size.Grams(EggPart.White).Likely + size.Grams(EggPart.Yolk).Likely, 1e-9);
        Assert.Equal(size.WithShell.Likely, size.Grams(EggPart.Whole).Likely + size.Grams(EggPart.Shell).Likely, 1e-9);
        Assert.True(size.Describe().Length > 20);
        // The likely shell is within what the sources print: 8.1 to 12.4 % (Japan Poultry Association).
        Assert.InRange(100 * size.Grams(EggPart.Shell).Likely / size.WithShell.Likely, 8.1, 12.4);
    }

    [Fact]
    public void ClassesFollowWithoutAGap() => Assert.All(EggSizeSystem.All, system =>
        Assert.All(system.Sizes.Skip(1).Zip(system.Sizes), pair => Assert.Equal(pair.Second.LowGrams, pair.First.HighGrams)));

    // Britannica 10/60/30, Cotterill and Geiger 1977 9.5/63/27.5, handbooks 11/58/31, USDA 11.8/58.2/30.0; Japan Poultry Association 8.1-12.4, 57.0-63.4, 28.0-30.6.
    [Theory]
    [InlineData(EggPart.Shell, 8.1, 10.575, 12.4)]
    [InlineData(EggPart.White, 57.0, 59.8, 63.4)]
    [InlineData(EggPart.Yolk, 27.5, 29.625, 31)]
    [InlineData(EggPart.Whole, 87.6, 89.425, 91.9)]
    public void TheSharesOfTheSources(EggPart part, double low, double mean, double high)
    {
        Spread range = EggFraction.RangeOf(part);
        Assert.Equal(low, range.Low, 1e-9);
        Assert.Equal(mean, range.Likely, 1e-9);
        Assert.Equal(high, range.High, 1e-9);
    }

    [Fact]
    public void EverySourceOfSharesAddsUpToAHundred() => Assert.All(EggFraction.All.Where(fraction => fraction.Percent is not null).GroupBy(fraction => fraction.Provenance.Source.Key),
        source => Assert.Equal(100, source.Sum(fraction => fraction.Percent!.Value), 1e-9));

    // 6 whites of 33 g are 198 g (USDA); the cup of 243 g is printed for white, and 102.98 g fill 100 mL by Choi and Okos: 0.81 of a US cup.
    [Fact]
    public void EggsBecomeGramsAndCups()
    {
        EggCount six = EggCount.Of(6, s_usLarge);
        Assert.Equal(198, six.Grams(EggPart.White).Likely, 1e-9);
        Assert.Equal(300, six.Grams(EggPart.Whole).Likely, 1e-9);
        Assert.Equal(198 / 243.0, six.Cups(Forms.FreshWhite, MeasuringSystem.UsCustomary).Likely, 0.002);
        Assert.Equal(6, six.EggsToBreak);
        Assert.Equal("6 US large eggs", six.ToString());
        Assert.Equal("1 US large egg", EggCount.Of(1, s_usLarge).ToString());
        PracticalMeasure measure = six.InMeasures(Forms.FreshWhite, MeasuringSystem.UsCustomary)!;
        Assert.InRange(measure.Millilitres, 0.98 * 192.5, 1.02 * 192.5);
        Assert.Equal(0, EggCount.Of(0, s_usLarge).Grams(EggPart.White).Likely);
        Assert.Null(EggCount.Of(0, s_usLarge).InMeasures(Forms.FreshWhite, MeasuringSystem.UsCustomary));
    }

    // USDA SR: a cup of whites, 243 g, beside 33 g a large white is 7.36 of them.
    [Fact]
    public void ACupOfWhitesTakesSevenOrEightLargeEggs()
    {
        EggCount count = EggCount.FromAmount(Amount.Parse("1 cup"), Forms.FreshWhite, s_usLarge, MeasuringSystem.UsCustomary);
        Assert.Equal(243 / 33.0, count.Eggs.Likely, 0.02);
        Assert.Equal(8, count.EggsToBreak);
        Assert.True(count.Eggs.Low < count.Eggs.Likely && count.Eggs.Likely < count.Eggs.High);
        Assert.Equal(4.86, EggCount.FromGrams(243, EggPart.Whole, s_usLarge).Eggs.Likely, 1e-9); // "4.86 large", as the table prints it
    }

    // AMS 56 large: an egg is from 56.699 to below 63.786 g, and white from 57.0 to 63.4 % of it (Japan Poultry Association). The fewest are the heaviest, the most the lightest.
    [Fact]
    public void TheEndsOfTheEggsThatAMassTakes()
    {
        Spread eggs = EggCount.FromGrams(250, EggPart.White, s_usLarge).Eggs;
        Assert.Equal(250 / (63.786 * 0.634), eggs.Low, 0.001);
        Assert.Equal(250 / 33.0, eggs.Likely, 1e-9);
        Assert.Equal(250 / (56.699 * 0.570), eggs.High, 0.001);
    }

    // USDA SR prints 243 g a US cup of 236.5882365 mL: 1.0271 g/mL.
    [Fact]
    public void TheNominalCupOfWhite()
    {
        WeightFact cup = Assert.Single(IngredientTable.BuiltIn.Get("egg-white").Weights, fact => fact.Provenance.Source.Key == "usda-sr" && fact.Packing is not null);
        Assert.Equal(1.0271, cup.Grams.Likely / MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.Cup), 5e-5);
    }

    // Choi and Okos (1986) at 20 °C with the composition of NDB 01124 worked out by hand: 1029.8 kg/m3.
    [Fact]
    public void TheAirFreeWhite() => Assert.Equal(1.0298, IngredientTable.BuiltIn.Get("egg-white").Composition.AirFreeGramsPerMillilitre, 0.001);

    [Fact]
    public void AnUnknownSystemOrSizeIsAnsweredWithThoseThereAre()
    {
        string systems = Assert.Throws<ArgumentException>("name", () => EggSizeSystem.Get("south-africa")).Message;
        Assert.Contains("us, eu, japan", systems, StringComparison.Ordinal);
        string sizes = Assert.Throws<ArgumentException>("name", () => EggSizeSystem.Get("eu").Size("jumbo")).Message;
        Assert.Contains("xl, l, m, s", sizes, StringComparison.Ordinal);
        Assert.False(EggSizeSystem.TryGet("", out _));
        Assert.False(EggSizeSystem.Get("us").TryGetSize("xl", out _));
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    public void TheCultureChangesNothing(string name)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
            // LARGE and MINI have the letter that Turkish treats apart.
            Assert.Equal("US medium: 49.6 to below 56.7 g, white 29.0 g, yolk 15.0 g", EggSizeSystem.Get("US").Size("MEDIUM").Describe());
            Assert.Equal("EU small: below 53 g, white 28.7 g, yolk 14.2 g", EggSizeSystem.Get("eu").Size("S").Describe());
            Assert.Equal("7.58 US large eggs", EggCount.FromGrams(250, EggPart.White, s_usLarge).ToString());
            Assert.Same(Forms.DriedWhite, Forms.Get("DRIED-WHITE"));
            Assert.Same(Meringue.Italian, Meringue.Get("ITALIAN"));
            Assert.Same(ReconstitutionRule.All[0], ReconstitutionRule.Get("TWELVE-EIGHTY-EIGHT"));
            Assert.Equal("100 g fresh egg white: 13.59 g dried egg white + 86.41 g water, 12.43 % solids", EggReplacement.Of(Forms.FreshWhite, 100, Forms.DriedWhite).ToString());
            Assert.Equal("dried egg white, 6.5 % moisture (93.50 % solids)", Forms.DriedWhite.WithMoisture(0.065).ToString());
            Assert.Equal("0.147 g/mL, overrun 600 %, air 85.7 %", Foam.Of(1.03).ToTimes(7).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static EggSize SizeOf(string name) => EggSizeSystem.Get(name.Split('/')[0]).Size(name.Split('/')[1]);
}
