using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Xunit;

namespace Confectio.Tests.Phrases;

/// <summary>
/// A word before the name is done before measuring, one behind it after measuring (common practice of American recipes, in which it
/// decides the mass: USDA SR 28 gives NDB 19336 120 g a cup and 100 g sifted, NDB 12155 117 g a cup chopped and 100 g in halves).
/// </summary>
public sealed class WordOrderTests
{
    [Theory]
    [InlineData("1 cup sifted icing sugar", Packing.Sifted)]
    [InlineData("1 cup icing sugar, sifted", null)]
    [InlineData("1 cup icing sugar (sifted)", null)]
    [InlineData("icing sugar, sifted: 1 cup", Packing.Sifted)]
    [InlineData("icing sugar, 1 cup, sifted", null)]
    [InlineData("1 cup chopped walnuts", Packing.Chopped)]
    [InlineData("1 cup walnuts, chopped", null)]
    [InlineData("1 cup walnuts, toasted and chopped", null)]
    [InlineData("1/2 cup melted butter", Packing.Melted)]
    [InlineData("1/2 cup butter, melted", null)]
    [InlineData("1 cup whipped heavy cream", Packing.Whipped)]
    [InlineData("1 cup heavy cream, whipped", null)]
    [InlineData("2 egg whites, stiffly beaten", null)]
    [InlineData("150 g walnuts, chopped", Packing.Chopped)]
    [InlineData("1 cup brown sugar, packed", Packing.Packed)]
    [InlineData("1 cup plain flour, spooned and levelled", Packing.Spooned)]
    [InlineData("1 cup butter, softened", Packing.Softened)]
    public void WhereAWordStandsSaysWhenItIsDone(string line, Packing? packing)
    {
        Phrase phrase = Phrase.Read(line, IngredientTable.BuiltIn);
        Assert.Equal(packing, phrase.Packing);
        Assert.Empty(phrase.Unread);
        if (packing is null)
            Assert.NotEmpty(phrase.Preparation);
        Assert.Equal(packing is null && phrase.Amount!.Value.Amount.IsVolume, phrase.Assumed.Any(sentence => sentence.Contains("measured first", StringComparison.Ordinal)));
    }

    [Fact]
    public void MeasuredThenSiftedWeighsMore() =>
        Assert.True(Kitchen.UsCustomary.Convert("1 cup icing sugar, sifted").Grams.Likely > 1.1 * Kitchen.UsCustomary.Convert("1 cup sifted icing sugar").Grams.Likely);

    [Fact]
    public void NobodySiftsButter() => Assert.Equal(Packing.Sifted, Phrase.Read("1 cup butter, sifted", IngredientTable.BuiltIn).Packing);

    [Theory]
    [InlineData("0,5 kg honey\n62,5 g egg whites\n1,5 dl water", 3)]
    [InlineData("Nougat\n0,5 kg honey\n1,500 g sugar", 1)]
    public void ARecipeWhoseDecimalsHaveACommaIsReadSo(string text, int read)
    {
        RecipeText recipe = RecipeText.Read(text, IngredientTable.BuiltIn).Told(out _)!;
        Assert.Contains("comma", recipe.Layout, StringComparison.Ordinal);
        Assert.True(recipe.Ingredients.Count(line => line.Phrase.IsRead && line.Phrase.Amount is not null) >= read);
    }

    [Fact]
    public void WhereBothMarksStandNeitherIsGuessed()
    {
        RecipeText recipe = RecipeText.Read("0,5 kg honey\n2.5 kg sugar", IngredientTable.BuiltIn).Told(out _)!;
        Assert.Equal("0,5 kg", recipe.Ingredients.First().Phrase.Unread.Single().Text);
        Assert.DoesNotContain("comma", recipe.Layout, StringComparison.Ordinal);
    }
}
