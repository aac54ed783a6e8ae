using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Publishing;
using Confectio.Text;
using Xunit;
using static Confectio.Tests.Publishing.Cards;

namespace Confectio.Tests.Publishing;

/// <summary>What stands on a line: its digits, its measures, and that the reader of phrases reads it again.</summary>
public sealed class CardLineTests
{
    // Foods of the table that are another food's name with a packing: "almonds, sliced" are the flaked almonds of the table to whoever reads it.
    private static readonly HashSet<(string, Packing)> s_otherFood = [("almonds", Packing.Sliced), ("almonds", Packing.Slivered), ("almonds", Packing.Ground), ("strawberries", Packing.Pureed)];

    [Theory]
    // 28.349523125 g to the ounce exactly (1959): 250 g is 8.8185 oz, 385 g 13.5805, 470 g 16.5788, 6 g 0.21164.
    [InlineData(250, "250 g (8.82 oz) granulated sugar")]
    [InlineData(385, "385 g (13.58 oz) granulated sugar")]
    [InlineData(470, "470 g (1 lb 0.58 oz) granulated sugar")]
    [InlineData(6, "6 g (0.21 oz) granulated sugar")] // half a gram of six is 8 %: hundredths of an ounce are 2 %, tenths 24 %
    [InlineData(12.5, "12.5 g (0.441 oz) granulated sugar")] // half of a tenth is 0.4 %; thousandths keep to it (0.11 %), hundredths (1.1 %) do not
    [InlineData(1000.0 / 3, "333 g (11.76 oz) granulated sugar")] // 11.758; a quotient: whole grams from a hundred on
    [InlineData(907.18474, "907 g (2 lb) granulated sugar")] // two pounds exactly
    public void WeighedLinesKeepTheirOwnDigitsAndOuncesHaveAsMany(double grams, string line) => Assert.Equal(line, Only(Line("granulated sugar", grams)).ToString());

    [Fact]
    public void AMeasuredLineIsNoFinerThanItsSpread()
    {
        CardLine line = Only(Line("icing sugar", "1 1/2 cups", MeasuringSystem.UsCustomary, Packing.Sifted), MeasuringSystem.UsCustomary);
        // 146.2 g (129.6 to 164.9) is the worked number of Conversion, u = 8.8 g: whole grams by GUM 7.2.6; 5.157 oz with u = 0.31: hundredths, as by SP 811 from 146 g.
        Assert.Equal("146 g (5.16 oz; 1 1/2 US cups) sifted icing sugar", line.ToString());
        Assert.Equal(146, line.PrintedGrams);
    }

    [Theory]
    // An ounce that is written whole is meant to the quarter (an estimate): 8 oz is 226.8 g, an eighth of an ounce 3.5 g.
    [InlineData("8 oz", "227 g (8 oz) unsalted butter, packed")]
    [InlineData("2 1/2 lb", "1130 g (2 1/2 lb) unsalted butter, packed")] // 1133.98 g; half an ounce is 14.2 g: tens
    [InlineData("0.25 kg", "250 g (8.82 oz) unsalted butter, packed")]
    public void AnAmountInOuncesStandsAsItIsWritten(string amount, string line) => Assert.Equal(line, Only(Line("unsalted butter", amount, MeasuringSystem.UsCustomary)).ToString());

    [Theory]
    [InlineData("60 tsp", "1 1/4 cups")] // 60/48 of a cup
    [InlineData("3 tsp", "1 Tbsp")]
    [InlineData("8 Tbsp", "1/2 cup")]
    [InlineData("12 Tbsp", "3/4 cup")]
    [InlineData("2 tsp", "2 tsp")]
    [InlineData("3/4 cup", "3/4 cup")]
    [InlineData("1 1/2 cups", "1 1/2 cups")]
    public void AWrittenMeasureIsFilledWithTheLargestTool(string written, string shown) =>
        Assert.Equal(Amount.Parse(shown), Only(Line("granulated sugar", written, MeasuringSystem.UsCustomary), MeasuringSystem.UsCustomary).Measures[0].Amount);

    [Fact]
    public void AnotherKitchensMeasureIsOfTheSameVolume()
    {
        // 1 US cup is 236.588 mL by definition; 250/15/5: a metric cup less a tablespoon is 235 mL, within 0.7 %.
        CardMeasure measure = Only(Line("granulated sugar", "1 cup", MeasuringSystem.UsCustomary), MeasuringSystem.Metric).Measures[0];
        Assert.InRange(measure.Amount!.Value.Millilitres(MeasuringSystem.Metric) / 236.5882365, 0.97, 1.03);
        Assert.Equal(measure.Amount!.Value.Millilitres(MeasuringSystem.Metric) / 236.5882365 - 1, measure.RelativeError, 1e-9);
    }

    [Theory]
    [InlineData(0.1, "it is less than 1/8 tsp")]
    [InlineData(50_000, "it is more than 20 times 1 cup")]
    public void WhereNoMeasureComesNearTheLineIsToBeWeighed(double grams, string reason)
    {
        CardLine line = Only(Line("table salt", grams), MeasuringSystem.UsCustomary);
        Assert.Null(line.Measures[0].Amount);
        Assert.Equal(reason, line.Measures[0].Reason);
        Assert.DoesNotContain("tsp", line.ToString(), StringComparison.Ordinal);
        Assert.Contains("weigh it", FormulaCard.Of(Formula.Of("", [line.Line]), new CardOptions { MeasuringSystems = [MeasuringSystem.UsCustomary] }).ToHtml(), StringComparison.Ordinal);
    }

    [Fact]
    public void NoMeasureIsFurtherOffThanAllowed()
    {
        foreach (Ingredient food in Table.All)
        {
            foreach (double grams in (double[])[2, 7.5, 33, 100, 454, 1000])
            {
                foreach (CardMeasure measure in Only(FormulaLine.Of(food, grams), [.. MeasuringSystem.All]).Measures.Where(measure => measure.Amount is not null))
                {
                    // The volume by the density itself, not by the card's way to it.
                    double volume = grams / food.NearestDensity(food.DefaultPacking).GramsPerMillilitre.Likely;
                    Assert.InRange(measure.Amount!.Value.Millilitres(measure.MeasuringSystem) / volume, 0.97 - 1e-9, 1.03 + 1e-9);
                }
            }
        }
    }

    // Must show 3, the side of what is written: every ingredient, every system alone and all together, both names.
    [Fact]
    public void TheReaderOfPhrasesReadsEveryLineAsTheSameWeightOfTheSameFood()
    {
        List<string> wrong = [];
        int lines = 0;
        MeasuringSystem[][] kitchens = [.. MeasuringSystem.All.Select(system => (MeasuringSystem[])[system]), [MeasuringSystem.UsCustomary, MeasuringSystem.Metric], [.. MeasuringSystem.All]];
        foreach (IngredientTable table in (IngredientTable[])[Table, Table.WithAmericanNames()])
        {
            foreach (Ingredient food in table.All)
            {
                foreach (MeasuringSystem[] systems in kitchens)
                {
                    foreach (FormulaLine line in (IEnumerable<FormulaLine>)[.. new[] { 3, 7, 100.0 / 3, 250, 1234.5 }.Select(grams => FormulaLine.Of(food, grams)),
                        .. food.Densities.Where(density => !s_otherFood.Contains((food.Id, density.Packing)))
                            .Select(density => FormulaLine.Of(food, Amount.Parse(systems[0].Defines(KitchenUnit.Cup) ? "1/2 cup" : "2 Tbsp"), systems[0], density.Packing)),
                        .. food.Pieces.Select(piece => FormulaLine.Of(food, Amount.OfPieces(2, piece.Piece), systems[0]))])
                    {
                        CardLine card = FormulaCard.Of(Formula.Of("", [line]), new CardOptions { MeasuringSystems = systems, Names = table }).Lines[0];
                        lines++;
                        Reading<Formula> reading = Formula.ReadText("", new StringReader(card.ToString()), table, systems[0]);
                        if (reading.Problems.Count > 0 || !reading.TryGet(out Formula? back) || back.Lines is not [{ } only] || only.Ingredient != food || Math.Abs(only.Grams.Likely - card.PrintedGrams) > 1e-9 * card.PrintedGrams)
                            wrong.Add($"{card}: {(reading.Problems.Count > 0 ? reading.Problems[0].Message : "another food or weight")}");
                    }
                }
            }
        }
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {lines}:\n{string.Join('\n', wrong.DistinctBy(line => line.Split(": ")[0]).Take(20))}");
        Assert.InRange(lines, 35_000, 200_000);
    }

    [Fact]
    public void AHeapedSpoonIsMeasuredAnewAndLevel()
    {
        // Heaped is 1.5 to 2.5 level measures (an estimate of the reader): two level tablespoons weigh the same, one does not.
        Formula heaped = Formula.ParseText("", "1 heaped Tbsp cocoa powder", Table, MeasuringSystem.UsCustomary);
        CardLine line = FormulaCard.Of(heaped, new CardOptions { MeasuringSystems = [MeasuringSystem.UsCustomary] }).Lines[0];
        Assert.Equal(Amount.Parse("2 Tbsp"), line.Measures[0].Amount);
        Assert.Empty(Phrase.Read(line.ToString(), Table).Problems);
    }

    [Fact]
    public void WithinAUnitTheLargerMeasureStandsFirst()
    {
        foreach (Ingredient food in Table.All.Where(food => food.Densities.Count > 0))
        {
            foreach (CardMeasure measure in Only(FormulaLine.Of(food, 290), SixSystems).Measures.Where(measure => measure.Amount is not null))
            {
                Amount amount = measure.Amount!.Value;
                for (int i = 1; i < amount.PartCount; i++)
                    Assert.True(amount.Part(i - 1).Unit != amount.Part(i).Unit || amount.Part(i - 1).Low > amount.Part(i).Low, amount.ToString());
            }
        }
    }

    [Fact]
    public void PiecesStandAsTheyAreWritten()
    {
        CardLine line = Only(Line("unsalted butter", "2 sticks", MeasuringSystem.UsCustomary), MeasuringSystem.UsCustomary);
        // A stick is 113 g (USDA SR28, 01145).
        Assert.StartsWith("226 g (", line.ToString(), StringComparison.Ordinal);
        Assert.Contains("; 2 sticks", line.ToString(), StringComparison.Ordinal);
        Assert.Contains("2 eggs", Of(Line("duck egg", "2 eggs", MeasuringSystem.UsCustomary)).ToHtml(), StringComparison.Ordinal);
        Phrase phrase = Phrase.Read(line.ToString(), Table);
        Assert.Equal("butter-unsalted", phrase.Ingredient!.Id);
        Assert.Empty(phrase.Problems);
    }
}
