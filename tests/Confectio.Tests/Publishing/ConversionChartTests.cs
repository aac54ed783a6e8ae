using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Publishing;
using Confectio.Sources;
using Confectio.Tests.Consistency;
using Confectio.Vetting;
using Xunit;
using static Confectio.Tests.Publishing.Cards;

namespace Confectio.Tests.Publishing;

/// <summary>The chart that this library would not call wrong.</summary>
public sealed class ConversionChartTests
{
    public static TheoryData<string, ChartRounding> Every
    {
        get
        {
            TheoryData<string, ChartRounding> data = new();
            foreach (MeasuringSystem system in MeasuringSystem.All)
            {
                foreach (ChartRounding rounding in Enum.GetValues<ChartRounding>())
                    data.Add(system.Key, rounding);
            }
            return data;
        }
    }

    // Must show 4: every food in every packing that was weighed, every system, every rounding; the vetter told whose cups, and not told.
    [Theory]
    [MemberData(nameof(Every))]
    public void TheVetterFlagsNoRow(string key, ChartRounding rounding)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        ConversionChart chart = ConversionChart.Of(Table.All.SelectMany(ChartFood.All), Measures(system), system, new ChartOptions { Rounding = rounding });
        Assert.InRange(chart.Rows.Count, 800, 3000);
        foreach (MeasuringSystem? told in (MeasuringSystem?[])[null, system])
        {
            TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(chart.ToCsv()), Table, new VettingOptions { System = told });
            Assert.Equal(chart.Rows.Count, verdict.Rows.Count);
            Assert.Empty(verdict.Problems);
            Assert.Empty(verdict.Rows.Where(row => row.Verdict != Verdict.Agrees).Select(row => $"{row.Amount} {row.Ingredient} {row.PrintedGrams}: {row.Explanation}"));
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void AChartOfOneFoodIsNotFlaggedEither(string key, ChartRounding rounding)
    {
        Assert.True(MeasuringSystem.TryGet(key, out MeasuringSystem? system));
        foreach (Ingredient food in Table.All.Where(food => food.Densities.Count > 0).Where((_, i) => i % 23 == 0))
        {
            ConversionChart chart = ConversionChart.Of(ChartFood.All(food), Measures(system), system, new ChartOptions { Rounding = rounding });
            TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(chart.ToCsv()), Table);
            Assert.Empty(verdict.Rows.Where(row => row.Verdict != Verdict.Agrees).Select(row => $"{row.Amount} {row.Ingredient} {row.PrintedGrams}: {row.Explanation}"));
        }
    }

    [Fact]
    public void TheOtherFormsAreReadAndNotFlagged()
    {
        ConversionChart chart = ConversionChart.Of(Table.All.Where(food => food.Densities.Count > 0).Take(60).Select(food => ChartFood.Of(food)), [Amount.Parse("1 cup"), Amount.Parse("1 Tbsp")], MeasuringSystem.UsCustomary);
        foreach (string form in (string[])[chart.ToMarkdown(), chart.ToHtml()])
        {
            TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(form), Table, new VettingOptions { System = MeasuringSystem.UsCustomary });
            Assert.Empty(verdict.Rows.Where(row => row.Verdict is not Verdict.Agrees and not Verdict.Unknown).Select(row => $"{row.Amount} {row.Ingredient} {row.PrintedGrams}: {row.Explanation}"));
            Assert.InRange(verdict.Rows.Count(row => row.Verdict == Verdict.Agrees), chart.Rows.Count * 9 / 10, chart.Rows.Count);
        }
    }

    [Fact]
    public void ARowIsTheFoodsLikelyWeightWithinHalfAStepAndItsRangeHoldsTheSpread()
    {
        foreach (ChartRounding rounding in Enum.GetValues<ChartRounding>())
        {
            ConversionChart chart = ConversionChart.Of(Table.All.SelectMany(ChartFood.All), Measures(MeasuringSystem.UsCustomary), MeasuringSystem.UsCustomary, new ChartOptions { Rounding = rounding });
            double unit = rounding == ChartRounding.QuarterOunce ? 28.349523125 : 1;
            foreach (ChartRow row in chart.Rows)
            {
                double grams = row.By.Ingredient.Density(row.By.Density.Packing).GramsPerMillilitre.Likely * row.Measure.Millilitres(MeasuringSystem.UsCustomary);
                Assert.Equal(grams / unit, row.Printed, row.Step / 2 + 1e-9);
                Assert.True(row.PrintedLow * unit <= row.Grams.Low + 1e-9 && row.PrintedHigh * unit >= row.Grams.High - 1e-9, row.ToString());
                // The rounding's own uncertainty is at most half of that of the weight, unless its digits say no more.
                double u = Math.Max(row.Grams.StandardUncertainty, (row.Grams.High - row.Grams.Low) / 4) / unit;
                Assert.True(row.Step / Math.Sqrt(12) <= u / 2 * (1 + 1e-9) || row.Step is 0.001 or 0.01, row.ToString());
            }
        }
    }

    [Theory]
    // 200 and 198 g a US cup (USDA SR28 19335 and others) with u near 2 %: 4.1 g a teaspoon with u near 0.09 g, so tenths and not fives.
    [InlineData("1 tsp", ChartRounding.FiveGrams, 0.1)]
    [InlineData("1 cup", ChartRounding.FiveGrams, 5)]
    [InlineData("1 tsp", ChartRounding.QuarterOunce, 0.001)] // u near 0.003 oz: √3·u is below a hundredth
    public void AWeightThatIsSurerIsRoundedFiner(string measure, ChartRounding rounding, double step)
    {
        ConversionChart chart = ConversionChart.Of([ChartFood.Of(Table.Get("granulated sugar"))], [Amount.Parse(measure)], MeasuringSystem.UsCustomary, new ChartOptions { Rounding = rounding });
        Assert.Equal(step, Assert.Single(chart.Rows).Step);
    }

    [Fact]
    public void TheCsvIsTheSameInEveryCultureAndSaysWhereItsFiguresComeFrom()
    {
        ConversionChart chart = ConversionChart.Of([ChartFood.Of(Table.Get("icing sugar"), Packing.Sifted)], [Amount.Parse("1 cup")], MeasuringSystem.UsCustomary);
        string csv = chart.ToCsv();
        Assert.StartsWith("ingredient,measure,packing,grams,range,source,evidence\nicing sugar,1 cup,sifted,97,86 to 110,", csv, StringComparison.Ordinal);
        Assert.EndsWith(",compiled\n", csv, StringComparison.Ordinal);
        Cultures.InEach(["tr-TR", "de-DE", "fa-IR"], () => Assert.Equal(csv, ConversionChart.Of([ChartFood.Of(Table.Get("icing sugar"), Packing.Sifted)], [Amount.Parse("1 cup")], MeasuringSystem.UsCustomary).ToCsv()));
    }

    [Fact]
    public void ARowIsNoSurerThanTheWorstOfItsFigures()
    {
        foreach (ChartRow row in ConversionChart.Of(Table.All.SelectMany(ChartFood.All), [Amount.Parse("1 cup")], MeasuringSystem.UsCustomary).Rows)
            Assert.All(row.By.Density.ContributingFigures, figure => Assert.True(figure.Provenance.Evidence <= row.Evidence));
    }

    [Fact]
    public void AFoodThatNobodyWeighedIsNamed()
    {
        Ingredient unweighed = Table.All.First(food => food.Densities.Count == 0);
        ConversionChart chart = ConversionChart.Of([ChartFood.Of(unweighed)], [Amount.Parse("1 cup")], MeasuringSystem.Metric);
        Assert.Empty(chart.Rows);
        Assert.Contains(unweighed.Name, Assert.Single(chart.NotKnown), StringComparison.Ordinal);
        Assert.Contains("nobody weighed", chart.ToText(), StringComparison.Ordinal);
        // A packing that was not weighed is taken from another, and the chart says so.
        Assert.Contains(ConversionChart.Of([ChartFood.Of(Table.Get("unsalted butter"), Packing.Softened)], [Amount.Parse("1 cup")], MeasuringSystem.Metric).Cautions, caution => caution.Contains("Nobody weighed unsalted butter softened", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatIsNoMeasureOfTheSystemIsRefused()
    {
        ChartFood food = ChartFood.Of(Table.Get("water"));
        Assert.Throws<ArgumentException>("measures", () => ConversionChart.Of([food], [Amount.Parse("100 g")], MeasuringSystem.Metric));
        Assert.Throws<ArgumentException>("measures", () => ConversionChart.Of([food], [Amount.Parse("1 cup")], MeasuringSystem.Decilitre));
        Assert.Throws<ArgumentException>("measures", () => ConversionChart.Of([food], [Amount.Parse("1-2 cups")], MeasuringSystem.Metric));
        Assert.Throws<ArgumentException>("measures", () => ConversionChart.Of([food], [default], MeasuringSystem.Metric));
        Assert.Throws<ArgumentException>("measures", () => ConversionChart.Of([food], [], MeasuringSystem.Metric));
        Assert.Throws<ArgumentException>("foods", () => ConversionChart.Of([], [Amount.Parse("1 cup")], MeasuringSystem.Metric));
        Assert.Throws<ArgumentException>("foods", () => ConversionChart.Of(Enumerable.Repeat(food, 10_001), [Amount.Parse("1 cup"), Amount.Parse("1 tsp")], MeasuringSystem.Metric));
    }

    [Fact]
    public void ACultureHasItsMark() => Assert.Matches(@" 4,[12] ", ConversionChart.Of([ChartFood.Of(Table.Get("granulated sugar"))], [Amount.Parse("1 tsp")], MeasuringSystem.UsCustomary,
        new ChartOptions { Culture = CultureInfo.GetCultureInfo("de-DE") }).ToText());

    private static Amount[] Measures(MeasuringSystem system) => [.. ((string[])["1 cup", "1/2 cup", "1/3 cup", "1/4 cup", "1 Tbsp", "1 tsp", "1/2 tsp"]).Select(text => Amount.Parse(text))
        .Where(amount => system.Defines(amount.Part(0).Unit)), .. system.Key == "decilitre" ? [Amount.Parse("1 dl")] : Array.Empty<Amount>()];
}
