using Confectio.Ingredients;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>The part of the fat that is milk fat, in a table of your own.</summary>
public sealed class MilkFatTests
{
    private const string Header = "id,name,class,default_packing,source,kind,water_percent,fat_percent,milk_fat_percent\n";

    private static (IngredientTable Table, IReadOnlyList<Problem> Problems) Read(string waterFatAndMilkFat, string header = Header)
    {
        IngredientTable table = IngredientTable.Empty.LayerIngredients(
            new StringReader(header + "blend,blend,fat,packed,own,measured," + waterFatAndMilkFat + "\n")).Told(out IReadOnlyList<Problem> problems)!;
        return (table, problems);
    }

    [Theory]
    [InlineData("20,80,30", 0.3)]
    [InlineData("20,80,80", 0.8)]
    [InlineData("20,80,0", 0)]
    [InlineData("20,80,", 0)] // a blank is none
    [InlineData("20,80", 0)]
    public void ItIsReadBesideTheFatAndDoesNotCountTwice(string percents, double milkFat)
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Read(percents);
        Assert.Empty(problems);
        Composition made = table.Get("blend").Composition;
        Assert.Equal((milkFat, 0.8, 1.0), (made.MilkFat, made[Constituent.Fat], made.Sum));
    }

    [Fact]
    public void WithoutTheColumnThereIsNone()
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Read("20,80", Header.Replace(",milk_fat_percent", "", StringComparison.Ordinal));
        Assert.Empty(problems);
        Assert.Equal(0, table.Get("blend").Composition.MilkFat);
    }

    [Theory]
    [InlineData("20,80,80.01", "the milk fat, 80.01 %, is more than the fat, 80 %")]
    [InlineData("20,80,80.0001", "the milk fat, 80.0001 %, is more than the fat, 80 %")]
    [InlineData("100,0,5", "the milk fat, 5 %, is more than the fat, 0 %")]
    [InlineData("20,80,-1", "'-1'")]
    [InlineData("20,80,101", "'101'")]
    [InlineData("20,80,NaN", "'NaN'")]
    [InlineData("20,80,some", "'some'")]
    public void MoreMilkFatThanFatOrNoNumberIsAProblem(string percents, string says)
    {
        (IngredientTable table, IReadOnlyList<Problem> problems) = Read(percents);
        Problem problem = Assert.Single(problems);
        Assert.Equal((2, "milk_fat_percent"), (problem.Line, problem.Column));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Empty(table.All);
    }

    [Fact]
    public void AFatThatCannotBeReadIsTheOnlyProblem() =>
        Assert.Equal("fat_percent", Assert.Single(Read("20,much,30").Problems).Column);

    [Fact]
    public void ItIsReportedBesideAnotherMistakeOfTheRow() =>
        Assert.Equal(["water_percent", "milk_fat_percent"], Read("20,40,41").Problems.Select(problem => problem.Column));
}
