using Confectio.Ingredients;
using Confectio.Phrases;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Phrases;

public sealed class RecipeTextTests
{
    [Fact]
    public void AProblemSaysItsLineAndCharacter()
    {
        Reading<RecipeText> read = RecipeText.Read("Fudge\n\n2 cups sugar\n1 cup unobtainium\n1 cup (7 oz, 340 g) honey\n", IngredientTable.BuiltIn);
        Assert.True(read.TryGet(out RecipeText? recipe));
        Assert.Equal([(4, 7), (5, 8)], read.Problems.Select(problem => (problem.Line, problem.Character)));
        Assert.Equal([3, 4, 5], recipe.Ingredients.Select(line => line.Number));
        Assert.Contains("3 ingredients", recipe.Layout, StringComparison.Ordinal);
    }

    [Fact]
    public void BehindAMethodNothingIsAnIngredient()
    {
        Reading<RecipeText> read = RecipeText.Read("Ingredients\n100 g sugar\nMethod\n100 g sugar goes in first.\nbutter the tin\nsugar\n", IngredientTable.BuiltIn);
        Assert.True(read.TryGet(out RecipeText? recipe));
        Assert.Equal([2], recipe.Ingredients.Select(line => line.Number));
    }

    [Fact]
    public void ALongTextIsCutAndItIsSaid()
    {
        Reading<RecipeText> read = RecipeText.Read(string.Concat(Enumerable.Repeat("1 g sugar\n", 10_001)) + new string('x', 5_000_000), IngredientTable.BuiltIn);
        Assert.True(read.TryGet(out RecipeText? recipe));
        Assert.Equal(10_000, recipe.Lines.Count);
        Assert.Contains("10000", Assert.Single(read.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingIsARecipeToo()
    {
        Assert.True(RecipeText.Read("", IngredientTable.BuiltIn).TryGet(out RecipeText? recipe));
        Assert.Empty(recipe.Lines);
    }
}
