using Confectio.Ingredients;
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
    public void AreNamed(string row, params Reason[] reasons)
    {
        RowFinding finding = Tables.Vet([.. Tables.RightByStandardReference, row]).Rows[^1];
        Assert.True(finding.Verdict != Verdict.Agrees, finding.ToString());
        Assert.Contains(finding.Reason!.Value, reasons);
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
