using Confectio.Tests.Uncertainty;
using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Confectio.Units;
using UnitsNet;
using Xunit;

namespace Confectio.Tests.Conversions;

/// <summary>Volume to mass and back, with the spread and the cautions.</summary>
public sealed class ConversionTests
{
    private const double Cup = 236.5882365; // NIST Handbook 44: 231 cubic inches / 16

    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;
    private static readonly Conversion[] s_all =
        [.. s_table.All.SelectMany(food => food.Densities.Select(density => Conversion.Of(food, density.Packing, MeasuringSystem.UsCustomary)))];

    private static Conversion Of(string name, Packing packing, ConversionOptions? options = null) =>
        Conversion.Of(s_table.Get(name), packing, MeasuringSystem.UsCustomary, options);

    // -------------------------------------------------------------------------------------------------- worked numbers

    [Fact]
    public void OneAndAHalfCupsOfSiftedIcingSugar()
    {
        // By hand from USDA SR 19336 (100 g a cup) and Home Economics Research Report 41 (95 g): √9500 x 1.5 = 146.202 g;
        // u² = 0.06² + (0.5/95)²/3 = 0.06008²; e^-2u = 0.88678.
        ConvertedMass mass = Of("icing sugar", Packing.Sifted).ToMass(Amount.Parse("1 1/2 cups"));
        Assert.Equal(146.202, mass.Grams.Likely, 0.001);
        Assert.Equal(129.65, mass.Grams.Low, 0.01);
        Assert.Equal(164.87, mass.Grams.High, 0.01);
        Assert.Equal(146.202 * 0.060077, mass.Grams.StandardUncertainty, 0.001);
        Assert.Equal("146.2 g (129.6 to 164.9)", mass.ToString());
    }

    [Theory]
    [InlineData("granulated sugar", Packing.Levelled, "1 cup", 197.990)] // √(200 x 196): USDA SR 19335, Report 41
    [InlineData("granulated sugar", Packing.Levelled, "2 Tbsp", 24.749)] // an eighth of it
    [InlineData("brown sugar", Packing.Packed, "1/2 cup", 107.726)] // √(220 x 211)/2: USDA SR 19334, Report 41
    [InlineData("table salt", Packing.Levelled, "1 tsp", 6.083)] // 292/48: USDA SR 02047
    [InlineData("cream of tartar", Packing.Levelled, "1/8 tsp", 0.375)] // 3.0/8: USDA SR 18373
    public void MassesAreThoseOfTheFigures(string name, Packing packing, string amount, double grams) =>
        Assert.Equal(grams, Of(name, packing).ToMass(Amount.Parse(amount)).Grams.Likely, 0.001);

    [Fact]
    public void AVolumeIsTheMassOverTheDensity()
    {
        // 500 g at 200 g a cup (turbinado sugar, 202 g: USDA SR 19908) is 500/202 of a cup.
        ConvertedVolume volume = Of("turbinado sugar", Packing.Levelled).ToVolume(500.0);
        Assert.Equal(500.0 / 202 * Cup, volume.Millilitres.Likely, 1e-9);
        Assert.Equal((volume.Millilitres.Low, volume.Millilitres.Likely, volume.Millilitres.High), volume.Millilitres.Ends());
    }

    // Published checks. Egg white: USDA SR 01124. Frosting: USDA SR 19230, 33 g in 2 tablespoons. Plain flour: Home Economics Research Report 41.
    [Theory]
    [InlineData("1 cup", "243", 1.0271, 0.0005)]
    [InlineData("2 Tbsp", "33", 1.1159, 0.0005)]
    [InlineData("1 cup", "126", 0.5326, 0.0001)]
    public void ThePublishedFigureGivesThePublishedDensity(string amount, string grams, double density, double tolerance)
    {
        IngredientTable table = s_table.LayerWeights(new StringReader(
            $"ingredient,amount,system,packing,grams,kind,source\nwater,{amount},us-customary,whipped,{grams},compiled,usda-sr\n")).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        Conversion conversion = Conversion.Of(table.Get("water"), Packing.Whipped, MeasuringSystem.UsCustomary);
        Assert.Equal(density, conversion.ToMass(1.0).Grams.Likely, tolerance);
        Assert.Equal(double.Parse(grams, CultureInfo.InvariantCulture), conversion.ToMass(Amount.Parse(amount)).Grams.Likely, 1e-9);
    }

    // One gram a millilitre turns the measure itself into grams.
    [Theory]
    [InlineData("us-customary", "1 cup", 236.5882365)] // NIST Handbook 44, Appendix C
    [InlineData("us-customary", "1 Tbsp", 14.78676478125)]
    [InlineData("us-customary", "1 tsp", 4.92892159375)]
    [InlineData("us-labelling", "1 cup", 240)] // 21 CFR 101.9(b)(5)(viii)
    [InlineData("us-labelling", "1 Tbsp", 15)]
    [InlineData("us-labelling", "1 tsp", 5)]
    [InlineData("australian", "1 Tbsp", 20)] // Standards Association of Australia: 4 teaspoons
    [InlineData("australian", "4 tsp", 20)]
    [InlineData("metric", "1 Tbsp", 15)] // New Zealand: 3 teaspoons
    [InlineData("metric", "3 tsp", 15)]
    [InlineData("imperial", "1/2 pint", 284.130625)] // UK Weights and Measures Act 1985
    [InlineData("imperial", "1 cup", 284.130625)] // half a pint by custom
    public void TheMeasureIsThatOfItsSystem(string key, string amount, double millilitres)
    {
        IngredientTable table = s_table.LayerWeights(new StringReader(
            "ingredient,amount,packing,grams,kind,source\nwater,1000 mL,whipped,1000.000,measured,own\n")).Told(out _)!;
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        Assert.Equal(millilitres, Conversion.Of(table.Get("water"), Packing.Whipped, system).ToMass(Amount.Parse(amount)).Grams.Likely, 1e-9);
    }

    // ------------------------------------------------------------------------------------------------------ properties

    private static Arbitrary<(Conversion By, double Value)> Cases { get; } = (
        from conversion in Gen.Elements(s_all)
        from mantissa in Gen.Choose(1, 1_000_000)
        from power in Gen.Choose(-6, 4) // there and back stays below the upper limit of 1e12
        select (conversion, mantissa * Math.Pow(10, power))).ToArbitrary();

    [Property(MaxTest = 500)]
    public Property AVolumeThereAndBackIsTheSame() => Prop.ForAll(Cases, item =>
        Math.Abs((item.By.ToVolume(item.By.ToMass(item.Value).Grams.Likely).Millilitres.Likely / item.Value) - 1) <= 1e-12
        && Math.Abs((item.By.ToMass(item.By.ToVolume(item.Value).Millilitres.Likely).Grams.Likely / item.Value) - 1) <= 1e-12);

    [Property(MaxTest = 500)]
    public Property MoreVolumeIsMoreMass() => Prop.ForAll(Cases, item =>
    {
        ConvertedMass less = item.By.ToMass(item.Value), more = item.By.ToMass(item.Value * 1.001);
        return less.Grams.Low < more.Grams.Low && less.Grams.Likely < more.Grams.Likely && less.Grams.High < more.Grams.High;
    });

    [Property(MaxTest = 500)]
    public Property LowLikelyAndHighRise() => Prop.ForAll(Cases, item =>
    {
        ConvertedMass mass = item.By.ToMass(item.Value);
        ConvertedVolume volume = item.By.ToVolume(item.Value);
        return mass.Grams.Low < mass.Grams.Likely && mass.Grams.Likely < mass.Grams.High && mass.Grams.StandardUncertainty > 0
            && volume.Millilitres.Low < volume.Millilitres.Likely && volume.Millilitres.Likely < volume.Millilitres.High
            && mass.Grams.Contains(mass.Grams.Likely);
    });

    [Property(MaxTest = 500)]
    public Property TheEndsOfAVolumeAreTheOtherEndsOfTheDensity() => Prop.ForAll(Cases, item =>
    {
        ConvertedVolume volume = item.By.ToVolume(item.Value);
        return Math.Abs((item.By.ToMass(volume.Millilitres.Low).Grams.High / item.Value) - 1) <= 1e-12
            && Math.Abs((item.By.ToMass(volume.Millilitres.High).Grams.Low / item.Value) - 1) <= 1e-12;
    });

    [Theory]
    [InlineData(1.0000001e12)]
    [InlineData(1e308)]
    [InlineData(double.PositiveInfinity)]
    public void AnAmountBeyondAnyKitchenIsRefused(double value)
    {
        Conversion conversion = Of("granulated sugar", Packing.Levelled);
        Assert.Contains("from 0 to 1000000000000", Assert.Throws<ArgumentOutOfRangeException>("millilitres", () => conversion.ToMass(value)).Message, StringComparison.Ordinal);
        Assert.Contains("from 0 to 1000000000000", Assert.Throws<ArgumentOutOfRangeException>("grams", () => conversion.ToVolume(value)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingWeighsNothing()
    {
        Conversion conversion = Of("granulated sugar", Packing.Levelled);
        Assert.Equal(new Spread(0, 0, 0), conversion.ToMass(0.0).Grams);
        Assert.Equal(new Spread(0, 0, 0), conversion.ToVolume(0.0).Millilitres);
        Assert.Equal("0 g", default(ConvertedMass).ToString());
        Assert.Equal("0 mL", default(ConvertedVolume).ToString());
        Assert.Null(default(ConvertedMass).By);
    }

    // ------------------------------------------------------------------------------------------------------ the spread

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.2)]
    [InlineData(0.001)]
    public void TheToleranceOfTheToolIsARectangle(double tolerance)
    {
        // JCGM 100:2008, 4.3.7: half-width a, u = a/√3; 5.1.2 for the sum of squares.
        Conversion plain = Of("granulated sugar", Packing.Levelled), wide = Of("granulated sugar", Packing.Levelled, new ConversionOptions { ToolTolerance = tolerance });
        Assert.Equal(plain.Density.LogUncertainty, plain.LogUncertainty, 1e-15);
        Assert.Equal(Math.Sqrt(Math.Pow(plain.LogUncertainty, 2) + (tolerance * tolerance / 3)), wide.LogUncertainty, 1e-15);
        ConvertedMass before = plain.ToMass(Cup), after = wide.ToMass(Cup);
        Assert.Equal(before.Grams.Likely, after.Grams.Likely);
        Assert.True(after.Grams.Low < before.Grams.Low && after.Grams.High > before.Grams.High);
        Assert.Equal(after.Grams.Likely * Math.Exp(2 * wide.LogUncertainty), after.Grams.High, 1e-9);
        Assert.Equal(after.Grams.Likely * Math.Exp(-2 * wide.LogUncertainty), after.Grams.Low, 1e-9);
    }

    [Fact]
    public void HouseholdToolsMayBeFivePercentOff()
    {
        Assert.Equal(0.05, ConversionOptions.HouseholdTools.ToolTolerance);
        Assert.Equal(0, ConversionOptions.Default.ToolTolerance);
    }

    [Fact]
    public void TheSpreadIsNeverNarrowerThanTheFigures()
    {
        foreach (Conversion conversion in s_all)
        {
            Assert.All(conversion.Density.ContributingFigures, voice =>
            {
                Spread mass = conversion.ToMass(voice.Millilitres).Grams;
                Assert.True(mass.Low <= voice.Grams.Low * (1 + 1e-12) && mass.High >= voice.Grams.High * (1 - 1e-12));
            });
        }
    }

    // Monte Carlo of the model itself (JCGM 101:2008): ln-normal density, rectangular tool, 1e5 draws of a fixed seed.
    [Theory]
    [InlineData("icing sugar", Packing.Sifted, 0.0)]
    [InlineData("icing sugar", Packing.Spooned, 0.05)]
    [InlineData("granulated sugar", Packing.Levelled, 0.05)]
    [InlineData("walnuts", Packing.Chopped, 0.2)]
    [InlineData("whole milk", Packing.Levelled, 0.05)]
    public void TheUncertaintyIsThatOfAMonteCarlo(string name, Packing packing, double tolerance)
    {
        const int Draws = 100_000;
        Conversion conversion = Of(name, packing, new ConversionOptions { ToolTolerance = tolerance });
        double ownDensity = conversion.Density.LogUncertainty, u = conversion.LogUncertainty;
        Random random = new(101_2008);
        double[] logs = new double[Draws];
        for (int i = 0; i < Draws; i++)
        {
            double normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            logs[i] = (ownDensity * normal) + Math.Log(1 + (tolerance * ((2 * random.NextDouble()) - 1)));
        }
        double mean = logs.Average(), deviation = Math.Sqrt(logs.Sum(value => (value - mean) * (value - mean)) / (Draws - 1));

        // The deviation of 1e5 draws is good to 0.25 %; the logarithm of a rectangle of 0.2 is 1.3 % wider than the rectangle.
        Assert.Equal(1, deviation / u, 0.01 + (0.35 * tolerance * tolerance));

        Array.Sort(logs);
        double low = logs[(int)(0.025 * Draws)], high = logs[(int)(0.975 * Draws)];
        // 95 % of a normal lies within 1.96 u and we give 2 u. A rectangle is shorter in the tails: alone it would end at 1.65 u
        // (0.95 √3). So the limits are met within 0.1 u where the density rules, and the tool makes them at most 0.4 u wide.
        double share = tolerance * tolerance / 3 / (u * u), allowed = share < 0.5 ? 0.15 : 0.4;
        Assert.InRange(high, (2 - allowed) * u, 2.02 * u);
        // On the low side the logarithm of the rectangle is longer, by half the square of the tolerance.
        Assert.InRange(-low, (2 - allowed) * u, (2.02 * u) + (tolerance * tolerance / 2));
    }

    [Fact]
    public void ARangeTakesInBothItsEnds()
    {
        Conversion conversion = Of("granulated sugar", Packing.Levelled);
        ConvertedMass range = conversion.ToMass(Amount.Parse("2-3 tsp")), two = conversion.ToMass(Amount.Parse("2 tsp")), three = conversion.ToMass(Amount.Parse("3 tsp"));
        Assert.Equal((two.Grams.Likely + three.Grams.Likely) / 2, range.Grams.Likely, 1e-12);
        Assert.Equal(two.Grams.Low, range.Grams.Low, 1e-12);
        Assert.Equal(three.Grams.High, range.Grams.High, 1e-12);
        double width = (three.Grams.Likely - two.Grams.Likely) / Math.Sqrt(12); // JCGM 100:2008, 4.3.7
        Assert.Equal(Math.Sqrt(Math.Pow(range.Grams.Likely * conversion.LogUncertainty, 2) + (width * width)), range.Grams.StandardUncertainty, 1e-12);
    }

    // ------------------------------------------------------------------------------------------ pieces, masses, systems

    [Fact]
    public void PiecesWeighWhatTheIngredientSays()
    {
        Conversion butter = Conversion.Of(s_table.Get("unsalted butter"), MeasuringSystem.UsCustomary);
        Assert.Equal((225, 226, 227), butter.ToMass(Amount.Parse("2 sticks")).Grams.Ends()); // USDA SR 01145: 113 g a stick
        Assert.Equal(56.5, butter.ToMass(Amount.Parse("1/2 stick")).Grams.Likely);
        Assert.Equal(99, Conversion.Of(s_table.Get("egg white"), MeasuringSystem.Metric).ToMass(Amount.OfPieces(3, "large")).Grams.Likely); // USDA SR 01124: 33 g
        Assert.Throws<ArgumentException>("piece", () => butter.ToMass(Amount.Parse("1 large")));
    }

    [Fact]
    public void AMassPassesThrough()
    {
        Conversion sugar = Of("granulated sugar", Packing.Levelled);
        ConvertedMass mass = sugar.ToMass(Amount.Parse("250 g"));
        Assert.Equal((250.0, 250.0, 250.0, 0.0), (mass.Grams.Low, mass.Grams.Likely, mass.Grams.High, mass.Grams.StandardUncertainty));
        Assert.Null(mass.By);
        Assert.Equal(453.59237, sugar.ToMass(Amount.Parse("1 lb")).Grams.Likely, 1e-12); // international pound of 1959
        Assert.Equal((100, 150, 200), sugar.ToMass(Amount.Parse("100-200 g")).Grams.Ends());
    }

    [Fact]
    public void AUnitThatTheSystemLacksIsAnError()
    {
        Conversion labelling = Conversion.Of(s_table.Get("water"), MeasuringSystem.UsLabelling);
        Assert.Contains("has no pint", Assert.Throws<ArgumentException>(() => labelling.ToMass(Amount.Parse("1 pint"))).Message, StringComparison.Ordinal);
        Assert.Equal(labelling.ToMass(1.0).Grams.Likely * 240, labelling.ToMass(Amount.Parse("1 cup")).Grams.Likely, 1e-9);
    }

    [Fact]
    public void QuantitiesOfUnitsNetGoThroughTheSameNumbers()
    {
        Conversion sugar = Of("granulated sugar", Packing.Levelled);
        Assert.Equal(sugar.ToMass(Cup).Grams.Likely, sugar.ToMass(Volume.FromMilliliters(Cup)).Grams.Likely, 1e-9);
        Assert.Equal(sugar.ToVolume(500.0).Millilitres.Likely, sugar.ToVolume(Mass.FromKilograms(0.5)).Millilitres.Likely, 1e-9);
        Assert.Equal(sugar.ToMass(Cup).Grams.Likely, sugar.ToMass(Cup).ToMass().Grams, 1e-9);
        Assert.Equal(sugar.ToVolume(500.0).Millilitres.Likely, sugar.ToVolume(500.0).ToVolume().Milliliters, 1e-9);
    }

    [Fact]
    public void MeasuresComeNearTheMass()
    {
        Conversion sugar = Of("turbinado sugar", Packing.Levelled); // 202 g a cup
        PracticalMeasure measure = sugar.ToMeasures(303, MeasuringTools.Usual(MeasuringSystem.UsCustomary))!;
        Assert.Equal(Amount.Parse("1 1/2 cups").Millilitres(MeasuringSystem.UsCustomary), measure.Millilitres, 1e-9);
        Assert.Equal(2, measure.Fills);
        Assert.Throws<ArgumentException>("tools", () => sugar.ToMeasures(303, MeasuringTools.Usual(MeasuringSystem.Metric)));
        Assert.Throws<ArgumentNullException>("tools", () => sugar.ToMeasures(303, null!));
    }

    [Fact]
    public void TheLimitsOfMeasuresBelongToThem()
    {
        foreach (Conversion conversion in s_all)
        {
            double one = conversion.ToMass(1.0).Grams.Likely;
            Assert.Null(Record.Exception(() => conversion.ToMeasures(0.01 * one, MeasuringTools.Usual(MeasuringSystem.UsCustomary))));
        }
    }

    [Fact]
    public void ADensityThatIsNotKnownIsAnErrorThatListsThoseThatAre()
    {
        Assert.Contains("known packings: levelled", Assert.Throws<ArgumentException>("packing", () => Of("granulated sugar", Packing.Whipped)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("ingredient", () => Conversion.Of(null!, MeasuringSystem.Metric));
        Assert.Throws<ArgumentNullException>("system", () => Conversion.Of(s_table.Get("water"), null!));
    }

    // ----------------------------------------------------------------------------------------------------------- cautions

    [Fact]
    public void AnAssumedPackingIsSaid()
    {
        Conversion assumed = Conversion.Of(s_table.Get("icing sugar"), MeasuringSystem.UsCustomary), stated = Of("icing sugar", Packing.Spooned);
        Assert.True(assumed.PackingWasAssumed);
        Assert.Equal("The packing was not stated; spooned was assumed. Known packings: sifted, spooned, packed.", Assert.Single(assumed.Cautions));
        Assert.False(stated.PackingWasAssumed);
        Assert.Empty(stated.Cautions);
        Assert.Same(assumed.Cautions, assumed.Cautions);
    }

    [Fact]
    public void NothingIsAssumedWhereThereIsOnePackingOnly() =>
        Assert.False(Conversion.Of(s_table.Get("granulated sugar"), MeasuringSystem.UsCustomary).PackingWasAssumed);

    [Theory]
    [InlineData("icing sugar", Packing.Packed, true)] // an estimate
    [InlineData("caster sugar", Packing.Levelled, true)] // from memory
    [InlineData("granulated sugar", Packing.Levelled, false)] // published, beside one from memory
    [InlineData("medium invert syrup", Packing.Levelled, false)] // computed from a published analysis
    [InlineData("golden syrup", Packing.Levelled, true)] // worked out from a recalled composition
    public void ADensityWithoutAPublishedFigureIsSaid(string name, Packing packing, bool cautioned) =>
        Assert.Equal(cautioned, Of(name, packing).Cautions.Any(caution => caution.StartsWith("No published figure", StringComparison.Ordinal)));

    [Fact]
    public void TheCautionsOfTheMeasuresAreSaidOnce()
    {
        Ingredient sugar = s_table.Get("granulated sugar");
        Assert.Equal("Defined for nutrition labelling only.", Assert.Single(Conversion.Of(sugar, MeasuringSystem.UsLabelling).Cautions));
        Assert.Contains(Conversion.Of(sugar, MeasuringSystem.Imperial).Cautions, caution => caution.Contains("tablespoon is ambiguous", StringComparison.Ordinal));
        Assert.Empty(Conversion.Of(sugar, MeasuringSystem.Metric).Cautions);
    }

    // ------------------------------------------------------------------------------------------------------------ columns

    [Fact]
    public void AColumnIsItsSinglesToTheLastBit()
    {
        Random random = new(7);
        foreach (Conversion conversion in new[] { Of("icing sugar", Packing.Sifted), Of("honey", Packing.Levelled), Of("walnuts", Packing.Chopped) })
        {
            for (int length = 0; length <= 67; length++)
            {
                double[] values = [.. Enumerable.Range(0, length).Select(_ => random.NextDouble() * Math.Pow(10, random.Next(-6, 7)))];
                double[] grams = new double[length + 3], millilitres = new double[length + 3];
                Array.Fill(grams, -1);
                Array.Fill(millilitres, -1);
                conversion.ToGrams(values, grams);
                conversion.ToMillilitres(values, millilitres);
                for (int i = 0; i < length; i++)
                {
                    Assert.Equal(BitConverter.DoubleToInt64Bits(conversion.ToMass(values[i]).Grams.Likely), BitConverter.DoubleToInt64Bits(grams[i]));
                    Assert.Equal(BitConverter.DoubleToInt64Bits(conversion.ToVolume(values[i]).Millilitres.Likely), BitConverter.DoubleToInt64Bits(millilitres[i]));
                }
                Assert.All(grams[length..].Concat(millilitres[length..]), untouched => Assert.Equal(-1, untouched));

                double[] inPlace = [.. values];
                conversion.ToGrams(inPlace, inPlace);
                Assert.Equal(grams[..length], inPlace);
                inPlace = [.. values];
                conversion.ToMillilitres(inPlace, inPlace);
                Assert.Equal(millilitres[..length], inPlace);
            }
        }
    }

    [Fact]
    public void AColumnThatIsTooShortIsRefusedBeforeAnythingIsWritten()
    {
        Conversion sugar = Of("granulated sugar", Packing.Levelled);
        double[] room = [-1, -1];
        ArgumentException refused = Assert.Throws<ArgumentException>("grams", () => sugar.ToGrams(new double[3], room));
        Assert.Contains("room for 2 values; 3 are needed", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("millilitres", () => sugar.ToMillilitres(new double[3], room));
        Assert.Equal([-1, -1], room);
    }

    [Fact]
    public void AColumnPassesWhatIsNotANumberOn()
    {
        double[] grams = new double[5];
        Of("granulated sugar", Packing.Levelled).ToGrams([1, double.NaN, 2, 3, double.PositiveInfinity], grams);
        Assert.Equal(double.NaN, grams[1]);
        Assert.Equal(double.PositiveInfinity, grams[4]);
        Assert.Equal(2 * grams[0], grams[2]);
    }

    [Fact]
    public void ASingleConversionAllocatesNothing()
    {
        Conversion sugar = Of("granulated sugar", Packing.Levelled);
        Amount amount = Amount.Parse("1 1/2 cups");
        double sum = sugar.ToMass(1.0).Grams.Likely + sugar.ToMass(amount).Grams.Likely;
        Assert.Equal(0, Allocated.Least(() =>
        {
            for (int i = 0; i < 1000; i++)
                sum += sugar.ToMass((double)i).Grams.Likely + sugar.ToMass(amount).Grams.Likely + sugar.ToVolume((double)i).Millilitres.Likely;
        }));
        Assert.True(sum > 0);
    }

    // ----------------------------------------------------------------------------------------------------------- cultures

    [Fact]
    public void TextIsTheSameInEveryCulture()
    {
        CultureInfo home = CultureInfo.CurrentCulture;
        CultureInfo odd = (CultureInfo)CultureInfo.InvariantCulture.Clone(); // for machines that know one culture only
        odd.NumberFormat.NumberDecimalSeparator = "·";
        odd.NumberFormat.NegativeSign = "~";
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            string[] expected = Texts();
            Assert.Equal("1.5 (-0.5 to 2.5)", expected[0]);
            foreach (CultureInfo culture in CultureInfo.GetCultures(CultureTypes.AllCultures).Append(odd))
            {
                CultureInfo.CurrentCulture = culture;
                Assert.Equal(expected, Texts());
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = home;
        }
    }

    private static readonly IngredientTable s_one = IngredientTable.Empty.LayerIngredients(
        new StringReader("id,name,class,default_packing,water_percent,source,kind\nwater,water,liquid,levelled,100,own,measured\n")).Told(out _)!;

    private static string[] Texts()
    {
        Ingredient sugar = s_table.Get("ICING SUGAR"); // the Turkish i too
        Conversion conversion = Conversion.Of(sugar, Packing.Sifted, MeasuringSystem.UsCustomary);
        IngredientTable table = s_one.LayerWeights(new StringReader(
            "ingredient,amount,system,packing,grams,kind,source\nwater,1 cup,us-customary,whipped,-1.5,measured,own\nwater,1 cup,us-customary,WHIPPED,1.5,MEASURED,own\n")).Told(out IReadOnlyList<Problem> problems)!;
        return
        [
            new Spread(-0.5, 1.5, 2.5).ToString(), conversion.ToString(), conversion.ToMass(354.88).ToString(), conversion.ToVolume(500.5).ToString(),
            conversion.Density.ToString(), conversion.Density.ContributingFigures[0].ToString(), problems.Single().ToString(), table.Get("water").Density(Packing.Whipped).ToString(),
            string.Join("|", Conversion.Of(sugar, MeasuringSystem.Imperial).Cautions),
            Record.Exception(() => conversion.ToMass(-1.5))!.Message.Split('\n')[0],
            Record.Exception(() => new ConversionOptions { ToolTolerance = 0.25 })!.Message.Split('\n')[0],
        ];
    }

    [Fact]
    public void EqualityIsThatOfTheNumbersAndTheConversion()
    {
        Conversion one = Of("granulated sugar", Packing.Levelled), other = Of("granulated sugar", Packing.Levelled);
        Assert.True(one.ToMass(100.0) == one.ToMass(100.0));
        Assert.True(one.ToMass(100.0) != one.ToMass(101.0));
        Assert.True(one.ToMass(100.0) == other.ToMass(100.0)); // made twice, it is the same conversion
        Assert.True(one.Equals(other));
        Conversion wider = Conversion.Of(one.Ingredient, Packing.Levelled, one.MeasuringSystem, ConversionOptions.HouseholdTools);
        Assert.True(one.ToMass(0.0) != wider.ToMass(0.0)); // the same numbers by another conversion
        Assert.True(one.ToVolume(100.0) == one.ToVolume(100.0));
        Assert.True(one.ToVolume(100.0) == other.ToVolume(100.0));
        Assert.Equal(one.ToMass(100.0).GetHashCode(), one.ToMass(100.0).GetHashCode());
    }
}
