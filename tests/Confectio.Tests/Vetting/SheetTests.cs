using Confectio.Ingredients;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Vetting;

/// <summary>
/// Ten sheets as teachers, a mill, a school, an extension office, kitchens of four countries and a hotel print them, of the invented Fennmarsh
/// Hall: figures as such sheets have them (USDA SR for American cups, the metric standard cup for Australian ones, THL for Nordic decilitres, all
/// from memory), each with its planted mistakes. They were written before the vetter was asked, but for the double cream of the
/// seventh, whose first figure was our own mistake.
/// </summary>
public sealed class SheetTests
{
    public static TheoryData<string, int, int, string> Sheets => new()
    {
        // name, rows, the fewest of them that are judged, and the planted rows as line:measure reason.
        { "01-teacher-handout.txt", 14, 14, "11:1 cup digits-swapped; 15:1 tsp spoon-swap" },
        { "02-mill.csv", 18, 14, "11:1 cup unexplained; 12:1 cup halved-or-doubled" },
        { "03-school.md", 27, 27, "10:1 Tbsp spoon-swap; 13:1 cup halved-or-doubled" },
        { "04-extension.html", 12, 11, "9:1 cup cup-counted-as-eight-ounces" },
        { "05-australian.txt", 39, 39, "7:1 cup unexplained; 14:1 Tbsp unexplained; 17:1 cup halved-or-doubled" },
        { "06-nordic.txt", 45, 45, "12:1 Tbsp digits-swapped; 15:1 tsp unexplained" },
        { "07-postcard.txt", 15, 14, "9:1 Tbsp unexplained; 16:6 oz digits-swapped" },
        { "08-chocolate.tsv", 15, 15, "6:1/4 cup digits-swapped; 15:1 cup digits-swapped" },
        { "09-club.csv", 19, 15, "10:1 cup unexplained" },
        { "10-hotel.txt", 15, 15, "9:1 L digits-swapped; 15:1 L decimal-shift" },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public void WhatWasPlantedIsFoundAndNothingElse(string name, int rows, int judged, string planted)
    {
        TableVerdict verdict = Vet(name);
        TestContext.Current.TestOutputHelper?.WriteLine(verdict.System + "\n" + string.Join('\n', verdict.Rows.Where(row => row.Verdict != Verdict.Agrees)));
        Assert.Empty(verdict.Problems);
        Assert.Equal(rows, verdict.Rows.Count);
        Assert.True(rows - verdict.Count(Verdict.Unknown) >= judged, $"{verdict.Count(Verdict.Unknown)} unknown");
        Assert.Equal(planted, string.Join("; ", verdict.Wrong.Select(row => $"{row.Line}:{row.Amount} {row.Reason!.Value.ToCode()}")));
    }

    /// <summary>A table says which measures it has, in its headings or above them, and is judged by those.</summary>
    [Theory]
    [InlineData("03-school.md", "metric")]
    [InlineData("05-australian.txt", "australian")]
    [InlineData("06-nordic.txt", "decilitre")]
    public void WhatTheTableSaysOfItsMeasuresIsHeard(string name, string system)
    {
        TableVerdict verdict = Vet(name);
        Assert.Equal(system, verdict.System!.Best.Key);
        Assert.True(verdict.System.IsDistinguishable);
    }

    /// <summary>Columns of litres rounded to 10 g lie near multiples of anything: no weight of an ounce is learnt from them.</summary>
    [Fact]
    public void NoOunceIsLearntFromFiguresThatAreRoundedToTenGrams() => Assert.Equal("10 g", Vet("10-hotel.txt").RoundingGrid);

    /// <summary>4 oz is printed as 115 g and 8 oz as 225 in every British kitchen, 1 oz as 25 g where all is rounded to 25.</summary>
    [Theory]
    [InlineData("flour,4 oz,115", Verdict.Agrees)]
    [InlineData("flour,8 oz,225", Verdict.Agrees)]
    [InlineData("flour,1 oz,30", Verdict.Agrees)]
    [InlineData("flour,1 oz,25", Verdict.Agrees, "flour,2 oz,50", "flour,6 oz,175", "flour,8 oz,225", "flour,12 oz,350", "flour,1 lb,450")]
    [InlineData("flour,4 oz,120", Verdict.Wrong)]
    [InlineData("flour,6 oz,107", Verdict.Wrong)]
    [InlineData("flour,8 oz,252", Verdict.Wrong)]
    public void MassesAreRoundedAsKitchensRoundThem(string row, Verdict expected, params string[] others)
    {
        TableVerdict verdict = ConversionTableVetter.Vet(new StringReader("ingredient,measure,grams\n" + row + "\n" + string.Join('\n', others)), IngredientTable.BuiltIn);
        Assert.Equal(expected, verdict.Rows[0].Verdict);
        Assert.All(verdict.Rows.Skip(1), other => Assert.Equal(Verdict.Agrees, other.Verdict));
    }

    private static TableVerdict Vet(string name) =>
        ConversionTableVetter.Vet(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Vetting", "Sheets", name)), IngredientTable.BuiltIn);
}
