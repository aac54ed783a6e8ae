using System.Globalization;
using Confectio.Ingredients;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>
/// The rule that makes a density of several figures, worked again from the figures themselves: geometric mean;
/// u² = max(technique, kitchens, ln(high/low)/√12 of a figure's own range, relative standard deviation)² + (half unit/√3)², JCGM 100:2008
/// 4.3.7, where kitchens is the moderated standard deviation of the figures (Smyth 2004) times half of Student's factor and √(1 + 1/n).
/// </summary>
public sealed class BulkDensityTests
{
    private const double Cup = 236.5882365; // NIST Handbook 44: 231 cubic inches / 16

    /// <summary>One figure of a source: grams, in how many millilitres, and what it says of its own uncertainty.</summary>
    private sealed record Figure(double Grams, double Millilitres, double HalfUnit, double Low = 0, double High = 0, double Deviation = 0);

    private static void AssertRule(string name, Packing packing, double technique, params Figure[] figures)
    {
        // Student's factors for 95 % and 5, 6, 7 degrees of freedom (GUM, table G.2, to more digits).
        double[] student = [2.570582, 2.446912, 2.364624];
        double product = 1, lowest = double.PositiveInfinity, highest = 0, sample = 0, rounding = 0, range = 0;
        foreach (Figure figure in figures)
        {
            product *= figure.Grams / figure.Millilitres;
            lowest = Math.Min(lowest, (figure.Low > 0 ? figure.Low : figure.Grams) / figure.Millilitres);
            highest = Math.Max(highest, (figure.High > 0 ? figure.High : figure.Grams) / figure.Millilitres);
            if (figure.Low > 0)
                range = Math.Max(range, Math.Log(figure.High / figure.Low) / Math.Sqrt(12));
            sample = Math.Max(sample, figure.Deviation / figure.Grams);
            rounding = Math.Max(rounding, figure.HalfUnit / figure.Grams);
        }
        double likely = Math.Pow(product, 1.0 / figures.Length);
        int n = figures.Length;
        double before = technique * Math.Sqrt(2) / student[0];
        double squares = figures.Sum(figure => Math.Pow(Math.Log(figure.Grams / figure.Millilitres / likely), 2));
        double kitchens = student[n - 1] / 2 * Math.Sqrt((5 * before * before + squares) / (n + 4)) * Math.Sqrt(1 + 1.0 / n);
        double spread = new[] { technique, n == 1 ? 0 : kitchens, range, sample }.Max();
        double u = Math.Sqrt((spread * spread) + (rounding * rounding / 3));

        BulkDensity density = IngredientTable.BuiltIn.Get(name).Density(packing);
        Assert.Equal(figures.Length, density.ContributingFigures.Count);
        Assert.Equal(likely, density.GramsPerMillilitre.Likely, 1e-12);
        Assert.Equal(u, density.LogUncertainty, 1e-8); // the factors above have seven digits
        Assert.Equal(Math.Min(lowest, likely / Math.Exp(2 * u)), density.GramsPerMillilitre.Low, 1e-7);
        Assert.Equal(Math.Max(highest, likely * Math.Exp(2 * u)), density.GramsPerMillilitre.High, 1e-7);
    }

    [Fact] // USDA SR 04615, 205 g; Home Economics Research Report 41, 187 g. They disagree: the gap between them rules.
    public void Shortening() => AssertRule("white shortening", Packing.Packed, 0.02, new Figure(205, Cup, 0.5), new Figure(187, Cup, 0.5));

    [Fact]
    public void ShorteningInNumbers()
    {
        // By hand: √(205 x 187) = 195.793 g; S = ln(205/187)²/2 = 0.004223; τ₀ = 0.02·√2/2.5706 = 0.011003; τ̂² = (5·τ₀² + S)/6 = 0.0008047;
        // 2.4469/2·τ̂·√1.5 = 0.04251; half a gram in 187 is 0.00154 more: u = 0.04253.
        BulkDensity density = IngredientTable.BuiltIn.Get("white shortening").Density(Packing.Packed);
        Assert.Equal(195.793, density.GramsPerMillilitre.Likely * Cup, 0.001);
        Assert.Equal(0.04253, density.LogUncertainty, 0.00001);
        Assert.Equal(179.83, density.GramsPerMillilitre.Low * Cup, 0.01);
        Assert.Equal(213.18, density.GramsPerMillilitre.High * Cup, 0.01);
    }

    [Fact] // USDA SR 19336, 120 g unsifted; Report 41, 113 g. The handbook range from memory is not heard.
    public void IcingSugarSpooned() => AssertRule("icing sugar", Packing.Spooned, 0.07, new Figure(120, Cup, 0.5), new Figure(113, Cup, 0.5));

    [Fact] // USDA SR 19335, 200 g; Report 41, 196 g
    public void GranulatedSugar() => AssertRule("granulated sugar", Packing.Levelled, 0.025, new Figure(200, Cup, 0.5), new Figure(196, Cup, 0.5));

    [Fact] // USDA SR 19334, 220 g packed; Report 41, 211 g
    public void BrownSugarPacked() => AssertRule("brown sugar", Packing.Packed, 0.03, new Figure(220, Cup, 0.5), new Figure(211, Cup, 0.5));

    [Fact] // USDA SR 19350, 341 g, n = 4, s = 3.839 g; Choi and Okos 1986 from the composition, 1.4002 g/mL
    public void LightCornSyrup() => AssertRule("light corn syrup", Packing.Levelled, 0.012,
        new Figure(341, Cup, 0.5, Deviation: 3.839), new Figure(140.02, 100, 0.005));

    [Fact] // USDA SR 19908, 202 g, n = 9, s = 5.76 g: one source, and its samples differ more than technique explains
    public void TurbinadoSugar() => AssertRule("turbinado sugar", Packing.Levelled, 0.025, new Figure(202, Cup, 0.5, Deviation: 5.76));

    [Fact] // a handbook range from memory, 780 to 850 kg/m3, and nothing else
    public void CasterSugar() => AssertRule("caster sugar", Packing.Levelled, 0.025, new Figure(81.4, 100, 0.05, 78, 85));

    [Fact] // estimate, 62 to 80
    public void IcingSugarPacked() => AssertRule("icing sugar", Packing.Packed, 0.05, new Figure(70, 100, 0.5, 62, 80));

    [Fact]
    public void TheLargestMeasureOfASourceSpeaksForIt()
    {
        // USDA SR 02047: 6 g a teaspoon (1.22 g/mL), 18 g a tablespoon, 292 g a cup (1.234 g/mL).
        BulkDensity salt = IngredientTable.BuiltIn.Get("table salt").Density(Packing.Levelled);
        Assert.Equal(3, salt.Facts.Count);
        Assert.Equal(292, Assert.Single(salt.ContributingFigures).Grams.Likely);
        Assert.Equal(292 / Cup, salt.GramsPerMillilitre.Likely, 1e-12);
    }

    [Fact]
    public void RememberedAndEstimatedFiguresSpeakOnlyWhereThereIsNoOther()
    {
        foreach (BulkDensity density in IngredientTable.BuiltIn.All.SelectMany(food => food.Densities))
        {
            bool published = density.Facts.Any(fact => fact.Provenance.Evidence is Evidence.Measured or Evidence.Compiled or Evidence.Computed or Evidence.Fitted);
            Assert.All(density.ContributingFigures, voice => Assert.Equal(published,
                voice.Provenance.Evidence is not (Evidence.Estimated or Evidence.FromMemory or Evidence.CommonPractice)));
            Assert.Distinct(density.ContributingFigures.Select(voice => voice.Provenance.Source.Key));
        }
    }

    [Fact] // USDA SR 01124: 243 g a cup, 243/236.588 = 1.0271 g/mL
    public void EggWhiteWeighs243GramsACup()
    {
        WeightFact cup = Assert.Single(IngredientTable.BuiltIn.Get("egg white").Density(Packing.Levelled).Facts, fact => fact.Provenance.Source.Key == "usda-sr");
        Assert.Equal(243, cup.Grams.Likely);
        Assert.Equal(1.0271, cup.Grams.Likely / cup.Millilitres, 0.0005);
    }

    // Water, fat, protein and the rest by Choi and Okos 1986 at 20 degC on the composition of USDA SR 01124, 01125, 01123, 01172, 01145, 01053.
    [Theory]
    [InlineData("egg white", 1029.8, 1.0)]
    [InlineData("egg yolk", 1036.9, 1.0)]
    [InlineData("whole egg", 1028.2, 1.0)]
    [InlineData("pasteurised liquid egg white", 1026.6, 1.0)]
    [InlineData("unsalted butter", 933.33, 0.05)]
    [InlineData("cream-heavy", 982.45, 0.05)]
    public void TheAirFreeDensityIsThatOfTheParts(string name, double kilogramsPerCubicMetre, double tolerance) =>
        Assert.Equal(kilogramsPerCubicMetre, IngredientTable.BuiltIn.Get(name).Composition.AirFreeGramsPerMillilitre * 1000, tolerance);

    [Fact]
    public void AComputedWeightIsTheAirFreeDensityOfItsComposition()
    {
        // The tables hold the model's value at 20 degC to two digits; glycerol is taken as 1.2611 g/mL (CRC Handbook).
        IEnumerable<(Ingredient Food, WeightFact Fact)> computed = IngredientTable.BuiltIn.All.SelectMany(food => food.Weights.Select(fact => (food, fact)))
            .Where(pair => pair.fact.Provenance.Source.Key == "choi-okos-1986" && pair.fact.Provenance.Locator.Contains("20 degC", StringComparison.Ordinal));
        Assert.All(computed, pair => Assert.Equal(pair.Food.Composition.AirFreeGramsPerMillilitre * 100, pair.Fact.Grams.Likely, 0.011));
    }

    [Theory] // USDA SR household weights; an egg has the spread of its size class besides (ChainOfEvidenceTests)
    [InlineData("unsalted butter", "stick", 113, 0.5)]
    [InlineData("unsalted butter", "sticks", 113, 0.5)]
    [InlineData("strawberries", "medium", 12, 0.5)]
    public void PiecesWeighWhatTheSourceSays(string name, string piece, double grams, double halfUnit)
    {
        PieceWeight weight = IngredientTable.BuiltIn.Get(name).Piece(piece);
        Assert.Equal(new Spread(grams - halfUnit, grams, grams + halfUnit), weight.Grams);
    }

    [Fact] // USDA SR 19903: bar of 112 g, n = 18, s = 4.916 g
    public void APieceThatVariesCarriesTwoStandardDeviations()
    {
        Spread bar = IngredientTable.BuiltIn.Get("chocolate-dark-60-69").Piece("bar").Grams;
        Assert.Equal(112 - (2 * 4.916), bar.Low, 1e-12);
        Assert.Equal(112 + (2 * 4.916), bar.High, 1e-12);
    }

    [Fact]
    public void APieceIsNeverLighterThanNothing()
    {
        IngredientTable table = IngredientTable.BuiltIn.LayerWeights(new StringReader(
            "ingredient,amount,grams,sd_grams,kind,source\nwalnuts,1 piece,5,4,measured,own scale\n")).OrThrow();
        Assert.Equal(new Spread(0, 5, 13), table.Get("walnuts").Piece("piece").Grams);
    }

    // A millilitre is the same in every kitchen: a density times millilitres is grams, without anybody's cups.
    [Fact]
    public void MillilitresBecomeGramsWithoutAMeasuringSystem()
    {
        foreach (string name in (string[])["icing sugar", "honey", "water"])
        {
            Ingredient ingredient = IngredientTable.BuiltIn.Get(name);
            Spread grams = ingredient.NearestDensity(ingredient.DefaultPacking).GramsPerMillilitre * 250;
            Assert.All(Confectio.Measures.MeasuringSystem.All, system =>
            {
                Spread converted = Confectio.Conversions.Conversion.Of(ingredient, system).ToMass(250.0).Grams;
                Assert.Equal(converted.Likely, grams.Likely, 1e-12 * grams.Likely);
                Assert.InRange(grams.Low, converted.Low * (1 - 1e-12), grams.Likely);
                Assert.InRange(grams.High, grams.Likely, converted.High * (1 + 1e-12));
            });
        }
    }

    [Fact]
    public void APackingOrAPieceThatIsNotKnownListsThoseThatAre()
    {
        Ingredient sugar = IngredientTable.BuiltIn.Get("icing sugar"), butter = IngredientTable.BuiltIn.Get("unsalted butter");
        Assert.False(sugar.TryGetDensity(Packing.Melted, out BulkDensity? none));
        Assert.Null(none);
        ArgumentException packing = Assert.Throws<ArgumentException>("packing", () => sugar.Density(Packing.Melted));
        Assert.Contains("known packings: sifted, spooned, packed.", packing.Message, StringComparison.Ordinal);
        ArgumentException piece = Assert.Throws<ArgumentException>("piece", () => butter.Piece("cube"));
        Assert.Contains("known pieces: pat, stick.", piece.Message, StringComparison.Ordinal);
        Assert.Contains("no pieces", Assert.Throws<ArgumentException>("piece", () => sugar.Piece("stick")).Message, StringComparison.Ordinal);
        Assert.False(butter.TryGetPiece("wheelbarrow", out _));
    }

    [Fact]
    public void TextIsShortAndNamesTheSources() => Assert.Equal("0.8276 (0.7601 to 0.9011) g/mL, packed; USDA SR28, HERR 41",
        IngredientTable.BuiltIn.Get("white shortening").Density(Packing.Packed).ToString());

    [Theory]
    [InlineData("unsifted", Packing.Spooned)]
    [InlineData(" DIPPED ", Packing.Scooped)]
    [InlineData("firmly packed", Packing.Packed)]
    [InlineData("leveled", Packing.Levelled)]
    [InlineData("purée", null)]
    [InlineData("puréed", Packing.Pureed)]
    [InlineData("5", null)]
    [InlineData("", null)]
    public void KitchenWordsForAPackingAreRead(string text, Packing? packing)
    {
        Assert.Equal(packing is not null, PackingText.TryRead(text, out Packing read));
        if (packing is not null)
            Assert.Equal(packing, read);
    }

    [Fact]
    public void EveryPackingHasAWordThatReadsBack()
    {
        foreach (Packing packing in Enum.GetValues<Packing>())
        {
            Assert.True(PackingText.TryRead(packing.ToWord(), out Packing read));
            Assert.Equal(packing, read);
            Assert.Equal(packing.ToString().ToLower(CultureInfo.InvariantCulture), packing.ToWord());
        }
    }
}
