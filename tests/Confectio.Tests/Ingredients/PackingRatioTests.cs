using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>The ratios of packings, worked again from the densities of the foods that have both, and each food left out in turn.</summary>
public sealed class PackingRatioTests
{
    private static double LogRatio(string food, PackingRatios.Row row)
    {
        Ingredient known = IngredientTable.BuiltIn.Get(food);
        return Published(known, row.To) - Published(known, row.From);
    }

    // The geometric mean of the published figures, one a source: that of its largest measure.
    private static double Published(Ingredient food, Packing packing)
    {
        BulkDensity density = food.Density(packing);
        Assert.All(density.ContributingFigures, figure => Assert.True(figure.Provenance.Evidence is Evidence.Measured or Evidence.Compiled or Evidence.Computed, $"{food} {figure}"));
        return density.ContributingFigures.Average(figure => Math.Log(figure.Grams.Likely
            / figure.Amount.Millilitres(figure.MeasuringSystem ?? MeasuringSystem.Metric)));
    }

    [Fact]
    public void RatiosAreThoseOfTheFoodsThatHaveBoth()
    {
        foreach (PackingRatios.Row row in PackingRatios.All)
        {
            double[] logs = [.. row.Foods.Select(food => LogRatio(food, row))];
            double mean = logs.Average(), deviation = Math.Sqrt(logs.Sum(log => (log - mean) * (log - mean)) / (logs.Length - 1));
            // Three decimals stand in the table.
            Assert.Equal(mean, row.LogRatio, 0.001);
            Assert.Equal(deviation, row.LogDeviation, 0.001);
            Assert.All(row.Foods, food => Assert.Equal(row.Class, IngredientTable.BuiltIn.Get(food).Class));
        }
    }

    /// <summary>
    /// Each food of a pair is foretold from the others: 2v must hold it about 95 times in 100, and the mean ratio be nearer than the packing
    /// taken as it is. The figures are printed. Fats have no row: packed and melted differ by less than fats do, so that a ratio adds nothing.
    /// </summary>
    [Fact]
    public void AFoodThatWasLeftOutIsForetoldByTheOthers()
    {
        int all = 0, held = 0, heldAsItIs = 0;
        double errors = 0, errorsAsItIs = 0;
        foreach (PackingRatios.Row row in PackingRatios.All)
        {
            double width = PackingNearness.Steps(row.Class, row.From, row.To)!.Value * PackingNearness.WidthOf(row.Class);
            foreach (string food in row.Foods)
            {
                double truth = LogRatio(food, row);
                double[] others = [.. row.Foods.Where(other => other != food).Select(other => LogRatio(other, row))];
                double off = Math.Abs(truth - others.Average());
                all++;
                held += off <= 2 * FigureSpread.OfAKitchen(others, width) ? 1 : 0;
                heldAsItIs += Math.Abs(truth) <= 2 * width ? 1 : 0;
                errors += off * off;
                errorsAsItIs += truth * truth;
            }
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{held} of {all} held, as it is {heldAsItIs}; root mean square {Math.Sqrt(errors / all):0.000}, as it is {Math.Sqrt(errorsAsItIs / all):0.000}");
        // Missed are almonds and strawberries sliced, each foretold from the other alone: 92 % of 26.
        Assert.True(held >= 24 && held > heldAsItIs, $"{held} of {all}, as it is {heldAsItIs}");
        Assert.True(errors < 0.75 * errorsAsItIs);
    }

    [Fact]
    public void ARatioIsTakenAndSaid()
    {
        // A nut that was weighed chopped and not ground: pecans. USDA SR: hazelnuts 75/115, walnuts 80/117; √ of the product 0.668.
        Ingredient pecans = IngredientTable.BuiltIn.Get("pecans");
        Assert.False(pecans.TryGetDensity(Packing.Ground, out _));
        BulkDensity ground = pecans.NearestDensity(Packing.Ground);
        Assert.Equal(Packing.Chopped, ground.TakenFrom);
        Assert.Equal(Math.Sqrt(75.0 / 115 * 80 / 117), ground.GramsPerMillilitre.Likely / pecans.Density(Packing.Chopped).GramsPerMillilitre.Likely, 0.001);
        Assert.True(ground.LogUncertainty > pecans.Density(Packing.Chopped).LogUncertainty);
        Conversion conversion = Conversion.Of(pecans, Packing.Ground, MeasuringSystem.UsCustomary);
        Assert.Contains("Nobody weighed pecans ground; chopped was taken times 0.67, as 2 foods that were weighed both ways have it, and the spread widened.", conversion.Cautions);
        // And in what a line of a recipe assumes.
        Assert.Contains(Kitchen.UsCustomary.Convert("1 cup ground pecans").Assumed, sentence => sentence.Contains("chopped was taken times 0.67", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("powder,sifted,spooned,1.1,0.1,one", "two at least")]
    [InlineData("powder,sifted,melted,1.1,0.1,one|two", "says nothing")]
    [InlineData("powder,sifted,glorp,1.1,0.1,one|two", "not a packing")]
    [InlineData("powder,sifted,spooned,NaN,0.1,one|two", "not a number")]
    public void ABadRowIsRefused(string row, string words) => Assert.Contains(words,
        Assert.Throws<InvalidOperationException>(() => PackingRatios.Read(new StringReader("class,from,to,ratio,log_standard_deviation,foods\n" + row + "\n"))).Message, StringComparison.Ordinal);
}
