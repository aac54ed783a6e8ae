using Confectio.Ingredients;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>An ingredient by its names. A miss is a miss.</summary>
public sealed class LookupTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    [Theory]
    [InlineData("sugar-icing")] // id
    [InlineData("icing sugar")] // name
    [InlineData("powdered sugar")] // alias
    [InlineData("Icing Sugar")]
    [InlineData("  ICING \t SUGAR ")]
    [InlineData("icing\u00A0sugar")]
    public void AnIdANameAndAnAliasFindTheSame(string name) => Assert.Equal("sugar-icing", s_table.Get(name).Id);

    [Theory]
    [InlineData("sugar, granulated", "sugar-granulated")]
    [InlineData("Sugar ,  granulated", "sugar-granulated")]
    [InlineData("sugar; granulated", "sugar-granulated")]
    [InlineData("crème fraîche", "creme-fraiche")]
    [InlineData("CRÈME FRAÎCHE", "creme-fraiche")]
    [InlineData("creme fraiche", "creme-fraiche")]
    [InlineData("cre\u0300me frai\u0302che", "creme-fraiche")] // the same letters, their accents written apart
    [InlineData("confectioners' sugar", "sugar-icing")]
    [InlineData("confectioners\u2019 sugar", "sugar-icing")]
    [InlineData("confectioners` sugar", "sugar-icing")]
    [InlineData("CONFECTIONERS\u02BC SUGAR", "sugar-icing")]
    public void CaseAccentsApostrophesCommasAndSpacesDoNotMatter(string name, string id) => Assert.Equal(id, s_table.Get(name).Id);

    [Fact]
    public void EveryNameOfEveryIngredientFindsIt() => Assert.All(s_table.All, food =>
    {
        Assert.Same(food, s_table.Get(food.Id));
        Assert.Same(food, s_table.Get(food.Name));
        foreach (IngredientName alias in food.Aliases)
            Assert.Same(food, s_table.Get(alias.Text));
    });

    [Theory]
    [InlineData("granulated suger", "granulated sugar")]
    [InlineData("grnaulated sugar", "granulated sugar")]
    [InlineData("unsalted buter", "unsalted butter")]
    [InlineData("sugar of icing", "icing sugar")]
    public void AMissSuggestsAndNeverMatches(string asked, string near)
    {
        Assert.False(s_table.TryGet(asked, out Ingredient? none));
        Assert.Null(none);
        Assert.Contains(near, s_table.Suggest(asked));
        ArgumentException refused = Assert.Throws<ArgumentException>("name", () => s_table.Get(asked));
        Assert.Contains($"'{asked}'", refused.Message, StringComparison.Ordinal);
        Assert.Contains(near, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData(",")]
    [InlineData("sugar granulated extra")]
    [InlineData("icingsugar")]
    [InlineData("water\0")]
    [InlineData("wäter!")]
    public void ANameThatIsNotKnownIsNotGuessed(string name) => Assert.False(s_table.TryGet(name, out _));

    [Fact]
    public void ALongTextIsNoName()
    {
        Assert.False(s_table.TryGet("water" + new string(' ', 300) + "melon", out _));
        Assert.False(s_table.TryGet("water" + new string(',', 300) + "x", out _));
        Assert.False(s_table.TryGet(new string('x', 1_000_000), out _));
        Assert.Empty(s_table.Suggest(new string('x', 1_000_000)));
        Assert.True(Assert.Throws<ArgumentException>("name", () => s_table.Get(new string('x', 1_000_000))).Message.Length < 200);
        Assert.Equal("water", s_table.Get(new string(' ', 1000) + "water" + new string(' ', 1000)).Id);
    }

    [Fact]
    public void SuggestionsAreFewAndOfDifferentIngredients()
    {
        Assert.Throws<ArgumentOutOfRangeException>("most", () => s_table.Suggest("sugar", 0));
        Assert.Throws<ArgumentOutOfRangeException>("most", () => s_table.Suggest("sugar", 21));
        Assert.Throws<ArgumentNullException>("name", () => s_table.Suggest(null!));
        Assert.True(s_table.Suggest("brown sugar dark", 20).Count is > 1 and <= 20);
        Assert.Distinct(s_table.Suggest("brown sugar dark", 20));
        Assert.Single(s_table.Suggest("brown sugar dark", 1));
    }

    [Property]
    public bool AnyTextIsEitherANameOrAMiss(string? text)
    {
        string name = text ?? "";
        bool found = s_table.TryGet(name, out Ingredient? food);
        return found == (food is not null) && s_table.Suggest(name).Count <= 3;
    }

    [Property]
    public bool FoldingTwiceIsFoldingOnce(string? text)
    {
        string key = NameKey.Of(text ?? "");
        return NameKey.Of(key) == key;
    }
}
