using Confectio.Ingredients;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>Rows with more than one mass: each is held against the others and against the measure. Weights by USDA SR: honey 339 g a cup, sugar 200.</summary>
public sealed class FigurePairTests
{
    private const string Header = "ingredient,measure,packing,grams,ounces\n";

    private static readonly string s_right = string.Join('\n', Tables.RightByStandardReference.Select(row => row.Split('|'))
        .Select(parts => $"{parts[0]},{parts[1]},{(parts.Length == 4 ? parts[2] : "")},{parts[^1]},")) + "\n";

    [Theory]
    [InlineData("honey,1 cup,,340,7", RowFigure.SecondMass, "7 oz (198 g) is wrong")]
    [InlineData("honey,1 cup,,198,12", RowFigure.Mass, "198 g is wrong")]
    [InlineData("honey,1 cup (7 oz),,340,", RowFigure.SecondMass, "7 oz (198 g) is wrong")]
    [InlineData("honey,1 cup (340 g),,340,7", RowFigure.SecondMass, "7 oz (198 g) is wrong")]
    [InlineData("honey,1 cup (430 g),,340,12", RowFigure.ThirdMass, "430 g is wrong")]
    [InlineData("moon dust,1 cup (100 g),,140,5", RowFigure.ThirdMass, "100 g is wrong")]
    public void TheFigureThatAgreesWithNoneIsNamed(string row, RowFigure suspect, string says)
    {
        RowFinding finding = Last(row);
        Assert.Equal(Verdict.Wrong, finding.Verdict);
        Assert.Equal(suspect, finding.Suspect);
        Assert.Contains(says, finding.Explanation, StringComparison.Ordinal);
        Assert.True(finding.ProbabilityRight <= 0.08);
    }

    [Theory]
    [InlineData("honey,1 cup,,340,12")]
    [InlineData("honey,1 cup (12 oz),,339,")]
    [InlineData("sugar,1 cup (7 oz),,200,7")]
    [InlineData("sugar,1 cup (16 tablespoons),,200,")]
    public void FiguresThatAgreeSayNothing(string row)
    {
        RowFinding finding = Last(row);
        Assert.Equal(Verdict.Agrees, finding.Verdict);
        Assert.Null(finding.Suspect);
    }

    /// <summary>Twice 200 g is 400 g, and both masses say so: the cup was two.</summary>
    [Fact]
    public void WhereTheMassesAgreeTheMeasureIsNamed()
    {
        RowFinding finding = Last("sugar,1 cup,,400,14");
        Assert.Equal(Reason.HalvedOrDoubled, finding.Reason);
        Assert.Equal(RowFigure.Measure, finding.Suspect);
        Assert.Contains("the measure is most likely wrong", finding.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoMassesThatContradictEachOtherUnderAnUnknownNameAreSaidWithoutBlame()
    {
        RowFinding finding = Last("moon dust,1 cup,,140,12");
        Assert.Equal(Verdict.Wrong, finding.Verdict);
        Assert.Null(finding.Suspect);
        Assert.Equal([12 * 28.349523125], finding.OtherPrintedGrams);
        Assert.Contains("does not tell", finding.Explanation, StringComparison.Ordinal);
    }

    private static RowFinding Last(string row)
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader(Header + s_right + row + "\n"), IngredientTable.BuiltIn);
        Assert.Empty(verdict.Problems);
        return verdict.Rows[^1];
    }
}
