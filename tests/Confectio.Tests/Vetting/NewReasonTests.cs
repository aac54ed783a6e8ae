using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>Mistakes of handouts, each planted in a table that is right by USDA SR.</summary>
public sealed class NewReasonTests
{
    [Theory]
    // A stick of butter weighs 4 oz, a cup of it 8.
    [InlineData("butter|1 cup|packed|113.4", Reason.HalvedOrDoubled, Reason.PieceAsMeasure)]
    // 240 mL of cocoa powder are no 240 g.
    [InlineData("cocoa|1 cup|240", Reason.VolumeAsMass)]
    [InlineData("desiccated coconut|1 cup|237", Reason.VolumeAsMass)]
    // A quarter of a cup with the figure of the cup.
    [InlineData("granulated sugar|1/4 cup|200", Reason.OtherMeasure)]
    [InlineData("icing sugar|1/3 cup|spooned|120", Reason.OtherMeasure)]
    // A digit of 227, 339, 244 and 237 lost; one of 227 and 339 printed twice; two of 227 swapped.
    [InlineData("butter|1 cup|packed|27", Reason.DigitLost)]
    [InlineData("honey|1 cup|39", Reason.DigitLost)]
    [InlineData("whole milk|1 cup|44", Reason.DigitLost)]
    [InlineData("water|1 cup|27", Reason.DigitLost)]
    [InlineData("honey|1 cup|3339", Reason.DigitDoubled)]
    [InlineData("granulated sugar|1 cup|2200", Reason.DigitDoubled, Reason.DecimalShift)]
    [InlineData("butter|1 cup|packed|272", Reason.DigitsSwapped)]
    // A nought more or less is a mark that moved.
    [InlineData("butter|1 cup|packed|2270", Reason.DecimalShift)]
    [InlineData("granulated sugar|1 cup|20", Reason.DecimalShift)]
    public void AreNamed(string row, params Reason[] reasons)
    {
        RowFinding finding = Tables.Vet([.. Tables.RightByStandardReference, row]).Rows[^1];
        Assert.True(finding.Verdict != Verdict.Agrees, finding.ToString());
        Assert.Contains(finding.Reason!.Value, reasons);
    }

    /// <summary>
    /// Many charts print 312 g a cup of corn syrup, which is 11 oz; USDA SR has 341 g light (NDB 19350) and 328 dark (19349). It is wrong, and the finding
    /// says what may have been weighed.
    /// </summary>
    [Fact]
    public void SyrupThatStaysInTheCupIsGuessedAt()
    {
        RowFinding finding = Tables.Vet([.. Tables.RightByStandardReference, "light corn syrup|1 cup|312"]).Rows[^1];
        Assert.NotEqual(Verdict.Agrees, finding.Verdict);
        Assert.Contains("it is 11 oz, and so much may come out of a measure that is not scraped", finding.Explanation, StringComparison.Ordinal);
        Assert.DoesNotContain("scraped", Tables.Vet([.. Tables.RightByStandardReference, "light corn syrup|1 cup|200"]).Rows[^1].Explanation, StringComparison.Ordinal);
    }

    /// <summary>What pours finds its level: that it was levelled says nothing. That a powder was spooned does.</summary>
    [Theory]
    [InlineData("heavy cream|1 cup|238", "levelled", false)]
    [InlineData("whole milk|1 cup|244", "levelled", false)]
    [InlineData("plain flour|1 cup|125", "spooned", true)]
    [InlineData("heavy cream|1 cup|119", "whipped", true)]
    public void ThePackingThatWasTakenIsSaidWhereItSaysSomething(string row, string packing, bool said) =>
        Assert.Equal(said, Tables.Vet([.. Tables.RightByStandardReference, row]).Rows[^1].Explanation.Contains(packing, StringComparison.Ordinal));

    /// <summary>7.5 g a tablespoon of whey is a quarter of an ounce at 30 g, but nobody weighs so little in quarter ounces.</summary>
    [Fact]
    public void LessThanAnOunceIsNoThirtyGramOunce() =>
        Assert.DoesNotContain(Tables.Vet([.. Tables.RightByStandardReference, "dried sweet whey|1 cup|145", "dried sweet whey|1 Tbsp|7.5", "cocoa|1 Tbsp|7.5"]).Rows, row => row.Reason == Reason.ThirtyGramOunce);

    /// <summary>
    /// Cups that hold 16 oz of everything, in ounces alone: where cups are metric, so are the scales, and sugar at 2 cups a pound (227 g a cup; USDA SR
    /// has 200) is no cup of 250 mL.
    /// </summary>
    [Fact]
    public void ASheetInOuncesAloneIsOfNoMetricKitchen()
    {
        const string Ounces = "ingredient,measure,ounces\nbutter,2 cups,16\nplain flour,3 3/4 cups,16\nbrown sugar,2 1/4 cups,16\nshortening,2 1/3 cups,16\ngranulated sugar,2 1/4 cups,16\ncornflour,3 1/2 cups,16\n";
        SystemFinding system = ConversionTableVetter.Vet(new StringReader(Ounces), IngredientTable.BuiltIn).System!;
        Assert.True(system.Probabilities.First(one => one.System == MeasuringSystem.Metric).Probability < 0.05, system.ToString());
    }

    /// <summary>Two rows whose figures changed places: molasses 337, flour 125.</summary>
    [Fact]
    public void FiguresThatSlippedByARowAreNamed()
    {
        TableVerdict verdict = Tables.Vet([.. Tables.RightByStandardReference, "molasses|1 cup|122", "plain flour|1 cup|spooned|337", "whole milk|1 cup|244"]);
        Assert.All(verdict.Rows.Skip(Tables.RightByStandardReference.Length).Take(2), row =>
        {
            Assert.True(row.Verdict is Verdict.Wrong or Verdict.Impossible, row.ToString());
            Assert.Equal(Reason.RowSlip, row.Reason);
        });
    }

    /// <summary>A pound is so many cups: every row prints 16 oz, and none has it from the row above.</summary>
    [Fact]
    public void AColumnThatSaysTheSameEverywhereIsNotCopied()
    {
        const string Csv = "ingredient,measure,ounces\ngranulated sugar,2 1/4 cups,16\nplain flour,3 3/4 cups,16\nbutter,2 cups,16\ncocoa,2 cups,16\nhoney,1 1/3 cups,16\nicing sugar,4 cups,16\n";
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(Csv), IngredientTable.BuiltIn);
        Assert.DoesNotContain(verdict.Rows, row => row.Reason == Reason.CopiedRow);
        Assert.NotEqual(Verdict.Agrees, verdict.Rows[3].Verdict);
    }

    /// <summary>454 g and 450 g are both a pound.</summary>
    [Theory]
    [InlineData("flour|1 lb|450")]
    [InlineData("flour|1 lb|454")]
    [InlineData("flour|2 lb|900")]
    [InlineData("flour|1 oz|28")]
    public void PoundsAreRoundedAsTablesRoundThem(string row) => Assert.Equal(Verdict.Agrees, Tables.Vet([.. Tables.RightByStandardReference, row]).Rows[^1].Verdict);

    [Fact]
    public void HalfAKilogramIsNoPound() => Assert.NotEqual(Verdict.Agrees, Tables.Vet([.. Tables.RightByStandardReference, "flour|1 lb|500"]).Rows[^1].Verdict);
}
