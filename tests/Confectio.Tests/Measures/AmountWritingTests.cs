using System.Globalization;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>How amounts are written, and what makes two of them equal.</summary>
public sealed class AmountWritingTests
{
    [Theory]
    [InlineData("1.5 c", "1 1/2 cups", "1½ cups")]
    [InlineData("1/2 c", "1/2 cup", "½ cup")]
    [InlineData("1 C", "1 cup", "1 cup")]
    [InlineData("0 c", "0 cup", "0 cup")]
    [InlineData("2 thirds of a cup", "2/3 cup", "⅔ cup")]
    [InlineData("5/16 cup", "5/16 cup", "5/16 cup")]
    [InlineData("1 5/16 cups", "1 5/16 cups", "1 5/16 cups")]
    [InlineData("2 tablespoons plus 1 teaspoon", "2 Tbsp + 1 tsp", "2 Tbsp + 1 tsp")]
    [InlineData("2 to 3 teaspoons", "2-3 tsp", "2-3 tsp")]
    [InlineData("1/2 to 3/4 c", "1/2 to 3/4 cup", "½ to ¾ cup")]
    [InlineData("1 to 1 1/2 c", "1 to 1 1/2 cups", "1 to 1½ cups")]
    [InlineData("1 1/2 to 2 c", "1 1/2-2 cups", "1½-2 cups")]
    [InlineData("1 pound 4 ounces", "1 lb + 4 oz", "1 lb + 4 oz")]
    [InlineData("1/4 kg", "0.25 kg", "0.25 kg")]
    [InlineData("1/3 kg", "1/3 kg", "⅓ kg")]
    [InlineData("2.5 dl", "250 mL", "250 mL")]
    [InlineData("1 mg", "0.001 g", "0.001 g")]
    [InlineData("8 fluid ounces", "8 fl oz", "8 fl oz")]
    [InlineData("2 pt", "2 pints", "2 pints")]
    [InlineData("2 qt", "2 quarts", "2 quarts")]
    [InlineData("2 gal", "2 gallons", "2 gallons")]
    [InlineData("3 stick", "3 sticks", "3 sticks")]
    [InlineData("2 large", "2 large", "2 large")]
    [InlineData("2 leaf", "2 leaf", "2 leaf")]
    [InlineData("1 1/2 sticks", "1 1/2 sticks", "1½ sticks")]
    public void WritesPlainAndVulgar(string text, string plain, string vulgar)
    {
        Amount amount = Amount.Parse(text);
        Assert.Equal(plain, amount.ToString());
        Assert.Equal(plain, amount.ToString("G"));
        Assert.Equal(plain, amount.ToString("g"));
        Assert.Equal(vulgar, amount.ToString("V"));
        Assert.Equal(vulgar, $"{amount:v}");
    }

    [Fact]
    public void FormatsIntoASpan()
    {
        Amount amount = Amount.Of(new(3, 2), KitchenUnit.Cup);
        Span<char> room = stackalloc char[10];
        Assert.True(((ISpanFormattable)amount).TryFormat(room, out int written, default, null));
        Assert.Equal("1 1/2 cups", room[..written].ToString());
        Assert.False(((ISpanFormattable)amount).TryFormat(room[..9], out written, default, null));
        Assert.Equal(0, written);
    }

    [Fact]
    public void RefusesAnotherFormat()
    {
        foreach (string format in new[] { "X", "GG", "0.0", "N2" })
            Assert.Contains($"'{format}'", Assert.Throws<FormatException>(() => default(Amount).ToString(format)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void DefaultIsZeroGrams()
    {
        Assert.Equal("0 g", default(Amount).ToString());
        Assert.Equal(Amount.Of(0, KitchenUnit.Gram), default);
        Assert.Equal("0 g", default(AmountPart).ToString());
        Assert.Equal(1, default(Amount).PartCount);
        Assert.True(default(Amount).IsMass);
    }

    [Fact]
    public void EqualityIsOfWhatIsWritten()
    {
        Assert.Equal(Amount.Parse("2/4 cup"), Amount.Parse("½ c."));
        Assert.True(Amount.Parse("1 cup") != Amount.Parse("16 Tbsp"));
        Assert.True(Amount.Parse("1 cup + 1 Tbsp") == Amount.Parse("1 c., 1 T"));
        Assert.NotEqual(Amount.Parse("1 cup + 1 Tbsp"), Amount.Parse("1 Tbsp + 1 cup"));
        Assert.NotEqual(Amount.Parse("1 cup"), Amount.Parse("1 cup + 1 Tbsp"));
        Assert.NotEqual(Amount.Parse("1 egg"), Amount.Parse("1 white"));
        Assert.NotEqual(Amount.Parse("2 tsp"), Amount.Parse("2-3 tsp"));
        Assert.Equal(Amount.Parse("2 cups"), Amount.Parse("2-2 cups"));
        Assert.False(Amount.Parse("1 cup").Equals("1 cup"));
    }

    [Fact]
    public void RefusesQuantitiesThatAreNone()
    {
        Assert.Equal("quantity", Assert.Throws<ArgumentOutOfRangeException>(() => Amount.Of(-1, KitchenUnit.Cup)).ParamName);
        Assert.Contains("-1/2", Assert.Throws<ArgumentOutOfRangeException>(() => Amount.Between(new(-1, 2), 1, KitchenUnit.Cup)).Message, StringComparison.Ordinal);
        Assert.Equal("high", Assert.Throws<ArgumentOutOfRangeException>(() => Amount.Between(2, 1, KitchenUnit.Cup)).ParamName);
        Assert.Contains("OfPieces", Assert.Throws<ArgumentException>("unit", () => Amount.Of(1, KitchenUnit.Piece)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("unit", () => Amount.Of(1, (KitchenUnit)99));
        Assert.Throws<ArgumentOutOfRangeException>("quantity", () => Amount.OfPieces(-1, "stick"));
        Assert.Throws<ArgumentNullException>("piece", () => Amount.OfPieces(1, null!));
        string message = Assert.Throws<ArgumentException>("piece", () => Amount.OfPieces(1, "blorp")).Message;
        Assert.Contains("'blorp'", message, StringComparison.Ordinal);
        Assert.Contains("extra large", message, StringComparison.Ordinal);
    }

    [Fact]
    public void PieceWordsAreReadInTheSingularAndThePlural()
    {
        Assert.Equal(18, PieceWords.All.Count);
        foreach (string word in PieceWords.All)
        {
            Assert.Equal(word, Amount.OfPieces(1, word.ToUpperInvariant()).Part(0).Piece);
            Assert.Equal(Amount.OfPieces(3, word), Amount.Parse(Amount.OfPieces(3, word).ToString()));
        }
        Assert.Equal("stick", Amount.OfPieces(2, "Sticks").Part(0).Piece);
        Assert.Throws<ArgumentException>(() => Amount.OfPieces(2, "larges"));
    }

    [Fact]
    public void UnitWordsReadBackAsTheirUnits()
    {
        foreach (KitchenUnit unit in Enum.GetValues<KitchenUnit>().Where(unit => unit != KitchenUnit.Piece))
            Assert.Equal(unit, Amount.Parse("1 " + unit.ToWord()).Part(0).Unit);
        Assert.Throws<ArgumentOutOfRangeException>(() => ((KitchenUnit)99).ToWord());
        Assert.All(Enum.GetValues<KitchenUnit>(), unit => Assert.Equal(unit != KitchenUnit.Piece, unit.IsMass() ^ unit.IsVolume()));
        Assert.False(((KitchenUnit)(-1)).IsMass());
        Assert.False(((KitchenUnit)(-1)).IsVolume());
    }
}
