using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Xunit;

namespace Confectio.Tests.Ingredients.Names;

/// <summary>
/// Names as people print them, against what a pastry cook means by each: lists that were written before there was a reader of names
/// (Oracles/names, common practice). No wrong match at all; every name of the first two lists is read.
/// </summary>
public sealed class PrintedNameTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    [Theory]
    [InlineData("names-as-printed.csv", 121)]
    [InlineData("more-names.csv", 322)]
    [InlineData("traps.csv", 619)]
    [InlineData("fresh-names.csv", 921)]
    [InlineData("new-foods.csv", 60)]
    public void EveryNameMeansWhatACookMeans(string file, int count)
    {
        PrintedName[] names = PrintedName.ReadAll(file);
        Assert.Equal(count, names.Length);
        Assert.Empty(names.Where(name => !name.IsMetBy(s_table.MatchName(name.Text))).Select(name => $"{name} <> {Shown(s_table.MatchName(name.Text))}"));
    }

    [Fact]
    public void WhereThereIsNoFoodTheReasonIsSaid() => Assert.All(
        new[] { "names-as-printed.csv", "more-names.csv", "traps.csv" }.SelectMany(PrintedName.ReadAll).Select(name => s_table.MatchName(name.Text)),
        match => Assert.Equal(match.Ingredient is null, match.Reason.Length > 0));

    internal static string Shown(NameMatch match) =>
        $"{match.Ingredient?.Id ?? "none"} {match.Packing} [{string.Join("; ", match.Between.Select(food => food.Id))}] {match.Reason}";
}
