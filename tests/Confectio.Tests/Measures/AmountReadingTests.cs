using Confectio.Tests.Properties;
using Confectio.Measures;
using Xunit;

namespace Confectio.Tests.Measures;

/// <summary>Which texts are amounts, and which; and what is said of the others.</summary>
public sealed class AmountReadingTests
{
    [Theory]
    // whole numbers, fractions, mixed numbers, decimals
    [InlineData("1 cup", 1, 1, KitchenUnit.Cup)]
    [InlineData("0 g", 0, 1, KitchenUnit.Gram)]
    [InlineData("1/3 cup", 1, 3, KitchenUnit.Cup)]
    [InlineData("2/4 cup", 1, 2, KitchenUnit.Cup)]
    [InlineData("5/4 cups", 5, 4, KitchenUnit.Cup)]
    [InlineData("1 1/2 cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1-1/2 cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1-½ cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1½ c.", 3, 2, KitchenUnit.Cup)]
    [InlineData("1 ½ cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1 and 1/2 cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1 and ½ cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("¾ tsp", 3, 4, KitchenUnit.Teaspoon)]
    [InlineData("¼tsp", 1, 4, KitchenUnit.Teaspoon)]
    [InlineData("⅓ cup", 1, 3, KitchenUnit.Cup)]
    [InlineData("⅔ cup", 2, 3, KitchenUnit.Cup)]
    [InlineData("⅛ tsp", 1, 8, KitchenUnit.Teaspoon)]
    [InlineData("⅝ cup", 5, 8, KitchenUnit.Cup)]
    [InlineData("⅒ oz", 1, 10, KitchenUnit.Ounce)]
    [InlineData("1.5 cups", 3, 2, KitchenUnit.Cup)]
    [InlineData(".5 tsp", 1, 2, KitchenUnit.Teaspoon)]
    [InlineData("0.125 tsp", 1, 8, KitchenUnit.Teaspoon)]
    [InlineData("1.050 kg", 21, 20, KitchenUnit.Kilogram)]
    [InlineData("9223372036854775807 g", long.MaxValue, 1, KitchenUnit.Gram)]
    // the fraction slash U+2044 and the division slash U+2215
    [InlineData("1\u20442 cup", 1, 2, KitchenUnit.Cup)]
    [InlineData("1 1\u20442 cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1\u22152 cup", 1, 2, KitchenUnit.Cup)]
    // no-break, thin, narrow no-break and ideographic spaces, tabs, spaces around
    [InlineData("1\u00A01/2\u00A0cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1\u2009½\u2009cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("454\u202Fg", 454, 1, KitchenUnit.Gram)]
    [InlineData("2\u3000cups", 2, 1, KitchenUnit.Cup)]
    [InlineData(" \t1  cup \n", 1, 1, KitchenUnit.Cup)]
    // words
    [InlineData("two cups", 2, 1, KitchenUnit.Cup)]
    [InlineData("Twelve OUNCES", 12, 1, KitchenUnit.Ounce)]
    [InlineData("eleven g", 11, 1, KitchenUnit.Gram)]
    [InlineData("a cup", 1, 1, KitchenUnit.Cup)]
    [InlineData("an ounce", 1, 1, KitchenUnit.Ounce)]
    [InlineData("half a cup", 1, 2, KitchenUnit.Cup)]
    [InlineData("half cup", 1, 2, KitchenUnit.Cup)]
    [InlineData("a half cup", 1, 2, KitchenUnit.Cup)]
    [InlineData("one-half cup", 1, 2, KitchenUnit.Cup)]
    [InlineData("a quarter of a cup", 1, 4, KitchenUnit.Cup)]
    [InlineData("half an ounce", 1, 2, KitchenUnit.Ounce)]
    [InlineData("one third cup", 1, 3, KitchenUnit.Cup)]
    [InlineData("two-thirds cup", 2, 3, KitchenUnit.Cup)]
    [InlineData("three quarters of a cup", 3, 4, KitchenUnit.Cup)]
    [InlineData("three quarters of an ounce", 3, 4, KitchenUnit.Ounce)]
    [InlineData("2 thirds of a cup", 2, 3, KitchenUnit.Cup)]
    [InlineData("three eighths cup", 3, 8, KitchenUnit.Cup)]
    [InlineData("one and a half cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("1 and a half cups", 3, 2, KitchenUnit.Cup)]
    [InlineData("two and a quarter cups", 9, 4, KitchenUnit.Cup)]
    [InlineData("two and ¼ cups", 9, 4, KitchenUnit.Cup)]
    // every spelling of the units
    [InlineData("2 c", 2, 1, KitchenUnit.Cup)]
    [InlineData("2 C.", 2, 1, KitchenUnit.Cup)]
    [InlineData("2CUPS", 2, 1, KitchenUnit.Cup)]
    [InlineData("1 T", 1, 1, KitchenUnit.Tablespoon)]
    [InlineData("1 t", 1, 1, KitchenUnit.Teaspoon)]
    [InlineData("1 T.", 1, 1, KitchenUnit.Tablespoon)]
    [InlineData("1 t.", 1, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 Tbsp", 2, 1, KitchenUnit.Tablespoon)]
    [InlineData("2 tbsp.", 2, 1, KitchenUnit.Tablespoon)]
    [InlineData("2 Tbs", 2, 1, KitchenUnit.Tablespoon)]
    [InlineData("2 Tb", 2, 1, KitchenUnit.Tablespoon)]
    [InlineData("2 tbsps", 2, 1, KitchenUnit.Tablespoon)]
    [InlineData("2 tblsp", 2, 1, KitchenUnit.Tablespoon)]
    [InlineData("2 tablespoons", 2, 1, KitchenUnit.Tablespoon)]
    [InlineData("1 Tablespoon", 1, 1, KitchenUnit.Tablespoon)]
    [InlineData("2 tsp.", 2, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 tsps", 2, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 teaspoons", 2, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 dsp", 2, 1, KitchenUnit.Dessertspoon)]
    [InlineData("2 dessertspoons", 2, 1, KitchenUnit.Dessertspoon)]
    [InlineData("8 oz", 8, 1, KitchenUnit.Ounce)]
    [InlineData("8 oz.", 8, 1, KitchenUnit.Ounce)]
    [InlineData("8 fl oz", 8, 1, KitchenUnit.FluidOunce)]
    [InlineData("8 fl. oz.", 8, 1, KitchenUnit.FluidOunce)]
    [InlineData("1 fl.oz.", 1, 1, KitchenUnit.FluidOunce)]
    [InlineData("8 floz", 8, 1, KitchenUnit.FluidOunce)]
    [InlineData("8 oz fl", 8, 1, KitchenUnit.FluidOunce)]
    [InlineData("8 oz. fl.", 8, 1, KitchenUnit.FluidOunce)]
    [InlineData("8 fluid ounces", 8, 1, KitchenUnit.FluidOunce)]
    [InlineData("1 lb", 1, 1, KitchenUnit.Pound)]
    [InlineData("2 lbs.", 2, 1, KitchenUnit.Pound)]
    [InlineData("2 pounds", 2, 1, KitchenUnit.Pound)]
    [InlineData("454 g", 454, 1, KitchenUnit.Gram)]
    [InlineData("454g", 454, 1, KitchenUnit.Gram)]
    [InlineData("454 grams", 454, 1, KitchenUnit.Gram)]
    [InlineData("1 kg", 1, 1, KitchenUnit.Kilogram)]
    [InlineData("1.5 kilos", 3, 2, KitchenUnit.Kilogram)]
    [InlineData("500 mg", 1, 2, KitchenUnit.Gram)]
    [InlineData("250 mL", 250, 1, KitchenUnit.Millilitre)]
    [InlineData("250 ml", 250, 1, KitchenUnit.Millilitre)]
    [InlineData("250 cc", 250, 1, KitchenUnit.Millilitre)]
    [InlineData("5 cl", 50, 1, KitchenUnit.Millilitre)]
    [InlineData("2 dl", 200, 1, KitchenUnit.Millilitre)]
    [InlineData("2.5 dL", 250, 1, KitchenUnit.Millilitre)]
    [InlineData("250 millilitres", 250, 1, KitchenUnit.Millilitre)]
    [InlineData("1 l", 1, 1, KitchenUnit.Litre)]
    [InlineData("1 L", 1, 1, KitchenUnit.Litre)]
    [InlineData("1.5 liters", 3, 2, KitchenUnit.Litre)]
    [InlineData("1 pt", 1, 1, KitchenUnit.Pint)]
    [InlineData("2 pints", 2, 1, KitchenUnit.Pint)]
    [InlineData("1 qt.", 1, 1, KitchenUnit.Quart)]
    [InlineData("2 quarts", 2, 1, KitchenUnit.Quart)]
    [InlineData("1 gal", 1, 1, KitchenUnit.Gallon)]
    [InlineData("2 gallons", 2, 1, KitchenUnit.Gallon)]
    public void ReadsOneQuantity(string text, long numerator, long denominator, KitchenUnit unit) =>
        Reads(text, Amount.Of(new Fraction(numerator, denominator), unit));

    [Theory]
    [InlineData("2-3 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 - 3 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2\u20133 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 \u2013 3 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2\u20143 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2\u20103 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2\u20113 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 to 3 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 or 3 tsp", 2, 1, 3, 1, KitchenUnit.Teaspoon)]
    [InlineData("two to three cups", 2, 1, 3, 1, KitchenUnit.Cup)]
    [InlineData("1/2-3/4 cup", 1, 2, 3, 4, KitchenUnit.Cup)]
    [InlineData("½-¾ cup", 1, 2, 3, 4, KitchenUnit.Cup)]
    [InlineData("1/2 to 1 cup", 1, 2, 1, 1, KitchenUnit.Cup)]
    [InlineData("1-1/2 to 2 cups", 3, 2, 2, 1, KitchenUnit.Cup)]
    [InlineData("1-1 1/2 cups", 1, 1, 3, 2, KitchenUnit.Cup)]
    [InlineData("1 1/2\u20132 cups", 3, 2, 2, 1, KitchenUnit.Cup)]
    [InlineData("0-1/2 tsp", 0, 1, 1, 2, KitchenUnit.Teaspoon)]
    [InlineData("0-½ tsp", 0, 1, 1, 2, KitchenUnit.Teaspoon)]
    [InlineData("2 to 3 dl", 200, 1, 300, 1, KitchenUnit.Millilitre)]
    [InlineData("100-150 g", 100, 1, 150, 1, KitchenUnit.Gram)]
    public void ReadsARange(string text, long low, long lowOver, long high, long highOver, KitchenUnit unit)
    {
        Amount expected = Amount.Between(new(low, lowOver), new(high, highOver), unit);
        Reads(text, expected);
        Assert.True(expected.IsRange);
    }

    [Theory]
    [InlineData("2 Tbsp + 1 tsp", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 Tbsp+1 tsp", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 Tbsp and 1 tsp", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 Tbsp plus 1 tsp", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 Tbsp & 1 tsp", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 Tbsp, 1 tsp", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("2 Tbsp plus one tsp", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("2T 1t", 2, KitchenUnit.Tablespoon, 1, KitchenUnit.Teaspoon)]
    [InlineData("1 lb 4 oz", 1, KitchenUnit.Pound, 4, KitchenUnit.Ounce)]
    [InlineData("1 lb. 4 oz.", 1, KitchenUnit.Pound, 4, KitchenUnit.Ounce)]
    [InlineData("1lb4oz", 1, KitchenUnit.Pound, 4, KitchenUnit.Ounce)]
    [InlineData("1 cup 2 fl oz", 1, KitchenUnit.Cup, 2, KitchenUnit.FluidOunce)]
    public void ReadsASumOfTwo(string text, int first, KitchenUnit firstUnit, int second, KitchenUnit secondUnit)
    {
        Amount amount = Amount.Parse(text);
        Assert.Equal(2, amount.PartCount);
        Assert.Equal(Amount.Of(first, firstUnit).Part(0), amount.Part(0));
        Assert.Equal(Amount.Of(second, secondUnit).Part(0), amount.Part(1));
        Assert.False(amount.IsRange);
        Assert.Throws<ArgumentOutOfRangeException>(() => amount.Part(2));
        Assert.Throws<ArgumentOutOfRangeException>(() => amount.Part(-1));
    }

    [Theory]
    [InlineData("3 sticks", 3, 1, "stick")]
    [InlineData("1/2 stick", 1, 2, "stick")]
    [InlineData("a STICK", 1, 1, "stick")]
    [InlineData("2 pats", 2, 1, "pat")]
    [InlineData("1 packet", 1, 1, "packet")]
    [InlineData("4 egg", 4, 1, "egg")]
    [InlineData("3 whites", 3, 1, "white")]
    [InlineData("2 yolks", 2, 1, "yolk")]
    [InlineData("an egg", 1, 1, "egg")]
    [InlineData("1 large", 1, 1, "large")]
    [InlineData("1 extra large", 1, 1, "extra large")]
    [InlineData("1 Extra  Large", 1, 1, "extra large")]
    [InlineData("2 jumbo", 2, 1, "jumbo")]
    [InlineData("3 leaf", 3, 1, "leaf")]
    public void ReadsPieces(string text, long numerator, long denominator, string word)
    {
        Amount expected = Amount.OfPieces(new(numerator, denominator), word);
        Reads(text, expected);
        Assert.True(expected.IsPiece && !expected.IsMass && !expected.IsVolume);
        Assert.Equal(word, expected.Part(0).Piece);
    }

    [Fact]
    public void ReadsEightPartsAndRefusesNine()
    {
        Assert.Equal(8, Amount.Parse(string.Join(" + ", Enumerable.Repeat("1 cup", 8))).PartCount);
        Refuses(string.Join(" + ", Enumerable.Repeat("1 cup", 9)), "at most 8 parts");
    }

    [Theory]
    [InlineData("1,5 dl", 150, 1, KitchenUnit.Millilitre)]
    [InlineData("0,25 l", 1, 4, KitchenUnit.Litre)]
    [InlineData(",5 dl", 50, 1, KitchenUnit.Millilitre)]
    [InlineData("1 1/2 dl", 150, 1, KitchenUnit.Millilitre)]
    [InlineData("454 g", 454, 1, KitchenUnit.Gram)]
    public void ReadsADecimalComma(string text, long numerator, long denominator, KitchenUnit unit)
    {
        Amount expected = Amount.Of(new(numerator, denominator), unit);
        Assert.Equal(expected, Amount.Parse(text, AmountReading.DecimalComma));
        Assert.True(Amount.TryParse(text, AmountReading.DecimalComma, out Amount tried));
        Assert.Equal(expected, tried);
    }

    [Fact]
    public void ADecimalCommaStillJoinsParts()
    {
        Assert.Equal(2, Amount.Parse("1 lb, 4 oz", AmountReading.DecimalComma).PartCount);
        Assert.Equal(Amount.Between(new(1, 2), new(3, 4), KitchenUnit.Litre), Amount.Parse("0,5-0,75 l", AmountReading.DecimalComma));
    }

    [Theory]
    [InlineData("1.5 dl", "point stands between digits")]
    [InlineData("1.500 g", "point stands between digits")]
    [InlineData("1,5,2 g", "more than one decimal mark")]
    [InlineData("1,500.5 g", "more than one decimal mark")]
    public void ADecimalCommaRefusesAPoint(string text, string words)
    {
        Assert.Contains(words, Assert.Throws<FormatException>(() => Amount.Parse(text, AmountReading.DecimalComma)).Message, StringComparison.Ordinal);
        Assert.False(Amount.TryParse(text, AmountReading.DecimalComma, out Amount amount));
        Assert.Equal(default, amount);
    }

    [Theory]
    // nothing, or half of it
    [InlineData("", "a number was expected")]
    [InlineData(" ", "a number was expected")]
    [InlineData("\u00A0\t", "a number was expected")]
    [InlineData("cups", "a number was expected")]
    [InlineData("cup 1", "a number was expected")]
    [InlineData("1", "a unit such as cup")]
    [InlineData("1/2", "a unit such as cup")]
    [InlineData("½", "a unit such as cup")]
    [InlineData("half a", "a unit such as cup")]
    [InlineData("1 cup +", "another amount was expected")]
    [InlineData("1 cup and", "another amount was expected")]
    [InlineData("1 cup,", "another amount was expected")]
    [InlineData("1 cup 2", "a unit such as cup")]
    [InlineData("+ 1 cup", "a number was expected")]
    [InlineData("1 to cups", "a number was expected")]
    // numbers that are none
    [InlineData("1/0 cup", "cannot have 0 below its line")]
    [InlineData("1 1/0 cups", "cannot have 0 below its line")]
    [InlineData("0/0 cup", "cannot have 0 below its line")]
    [InlineData("1/ cup", "whole number below its line")]
    [InlineData("1//2 cup", "whole number below its line")]
    [InlineData("1/x cup", "whole number below its line")]
    [InlineData("1/2/3 cup", "a unit such as cup")]
    [InlineData("1 3/2 cups", "must be below 1")]
    [InlineData("-1 cup", "cannot be negative")]
    [InlineData("-½ cup", "cannot be negative")]
    [InlineData("\u22121 cup", "a number was expected")]
    [InlineData("1,5 cups", "comma stands between digits")]
    [InlineData("1,500 g", "comma stands between digits")]
    [InlineData("1.5.2 g", "more than one decimal mark")]
    [InlineData("1.5,2 g", "more than one decimal mark")]
    [InlineData(".5.2 g", "more than one decimal mark")]
    [InlineData(",5 g", "a number was expected")]
    [InlineData(". g", "a number was expected")]
    [InlineData("1. g", "a unit such as cup")]
    [InlineData("NaN g", "a number was expected")]
    [InlineData("Infinity g", "a number was expected")]
    [InlineData("∞ cups", "a number was expected")]
    [InlineData("1e308 g", "the unit is not known")]
    [InlineData("1e3 g", "the unit is not known")]
    [InlineData("0x10 g", "the unit is not known")]
    [InlineData("\u0661\u0662 g", "a number was expected")]
    [InlineData("1\u0662 g", "a unit such as cup")]
    [InlineData("\uFF11 cup", "a number was expected")]
    [InlineData("99999999999999999999 g", "the number is too long")]
    [InlineData("9223372036854775808 g", "the number is too long")]
    [InlineData("1/99999999999999999999 cup", "the number is too long")]
    [InlineData("0.00000000000000000001 g", "the number is too long")]
    [InlineData("0.0000000000000000001 g", "the number is too long")]
    [InlineData("9223372036854775807 1/2 cups", "the number is too long")]
    [InlineData("9223372036854775807.5 g", "the number is too long")]
    [InlineData("9223372036854775807 dl", "the number is too large")]
    [InlineData("1 ½½ cups", "a unit such as cup")]
    [InlineData("\u2189 cup", "a number was expected")]
    [InlineData("thirteen cups", "a number was expected")]
    // ranges and sums
    [InlineData("3 to 2 tsp", "must not fall")]
    [InlineData("3-2 tsp", "must not fall")]
    [InlineData("1\u20131/2 cups", "must not fall")]
    [InlineData("1 to 2 to 3 tsp", "the unit is not known")]
    [InlineData("1 cup + 20 g", "cannot be added")]
    [InlineData("20 g + 1 cup", "cannot be added")]
    [InlineData("1 stick + 1 Tbsp", "cannot be added")]
    [InlineData("1 stick + 1 oz", "cannot be added")]
    [InlineData("2-3 tsp + 1 tsp", "range cannot be one part")]
    [InlineData("1 cup + 2-3 tsp", "range cannot be one part")]
    [InlineData("1 cup + sugar", "the end of the amount")]
    // units
    [InlineData("1 blorp", "the unit is not known")]
    [InlineData("1 cupsful", "the unit is not known")]
    [InlineData("1 extra", "the unit is not known")]
    [InlineData("1 extra small", "the unit is not known")]
    [InlineData("2 larges", "the unit is not known")]
    [InlineData("8 fl", "oz was expected after fl")]
    [InlineData("8 fl cups", "oz was expected after fl")]
    [InlineData("1 cup\u017F", "the end of the amount")]
    [InlineData("1 \u212Ag", "a unit such as cup")]
    [InlineData("1 cup sugar", "the end of the amount")]
    [InlineData("1 cup, sifted", "the end of the amount")]
    [InlineData("1 tsp..", "the end of the amount")]
    [InlineData("1 cup\0", "the end of the amount")]
    [InlineData("1\0cup", "a unit such as cup")]
    [InlineData("\0", "a number was expected")]
    [InlineData("\uFEFF1 cup", "a number was expected")]
    public void RefusesWithAReason(string text, string words) => Refuses(text, words);

    [Theory]
    [InlineData("1 cup 2 blorps", 9)]
    [InlineData("blorp", 1)]
    [InlineData("  blorp", 3)]
    [InlineData("1 cup sugar", 7)]
    [InlineData("1/0 cup", 3)]
    public void TheMessageSaysWhere(string text, int character) => Refuses(text, $"at character {character}, ");

    [Fact]
    public void LoneSurrogatesAreRefusedAndNeverEchoed()
    {
        // Written in code: an attribute cannot carry half a pair.
        foreach (string text in new[] { "\uD83C", "\uDF82", "1 \uD83C", "1 cup \uDF82", "1 \uD83C\uDF82", "\uDF82\uD83C 1 cup" })
        {
            string message = Refuses(text, "is not an amount");
            Assert.DoesNotContain(message, char.IsSurrogate);
        }
        Assert.DoesNotContain(Refuses("1 cup\r\n\u0007\u001B[31m", "is not an amount"), char.IsControl);
    }

    [Fact]
    public void TenMegabytesAreRefusedAtOnceInAShortMessage()
    {
        const int Size = 10 * 1024 * 1024;
        string[] texts =
        [
            new('1', Size), new('a', Size), new(' ', Size), new('½', Size), new('-', Size), new('\uD800', Size),
            "1 cup" + new string(' ', Size) + "x", "1 " + new string('1', Size), "1 " + new string('c', Size), "1 and" + new string(' ', Size),
            string.Concat(Enumerable.Repeat("1 cup + ", Size / 8)), string.Concat(Enumerable.Repeat("1 and ", Size / 6)),
        ];
        foreach (string text in texts)
        {
            Assert.False(Amount.TryParse(text, out _));
            FormatException thrown = Assert.Throws<FormatException>(() => Amount.Parse(text));
            Assert.InRange(thrown.Message.Length, 1, 250);
        }
    }

    [Fact]
    public void EveryDoorReadsTheSame()
    {
        Amount expected = Amount.Of(new(3, 2), KitchenUnit.Cup);
        const string Text = "1 1/2 cups";
        Assert.Equal(expected, Interfaces.Parse<Amount>(Text, null));
        Assert.Equal(expected, Interfaces.ParseSpan<Amount>(Text, null));
        Assert.True(Interfaces.TryParse(Text, null, out Amount one));
        Assert.True(Interfaces.TryParseSpan(Text, null, out Amount two));
        Assert.Equal(expected, one);
        Assert.Equal(expected, two);
        Assert.False(Interfaces.TryParse(null, null, out Amount none));
        Assert.Equal(default, none);
        Assert.Throws<ArgumentNullException>(() => Interfaces.Parse<Amount>(null!, null));
    }

    private static void Reads(string text, Amount expected)
    {
        Assert.Equal(expected, Amount.Parse(text));
        Assert.True(Amount.TryParse(text, out Amount tried));
        Assert.Equal(expected, tried);
        Assert.Equal(expected.GetHashCode(), tried.GetHashCode());
    }

    private static string Refuses(string text, string words)
    {
        FormatException thrown = Assert.Throws<FormatException>(() => Amount.Parse(text));
        Assert.Contains(words, thrown.Message, StringComparison.Ordinal);
        Assert.False(Amount.TryParse(text, out Amount amount));
        Assert.Equal(default, amount);
        return thrown.Message;
    }
}
