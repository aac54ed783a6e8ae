using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Xunit;

namespace Confectio.Tests.Phrases;

/// <summary>There is one reader of amounts: a text that is an amount is the same amount where it stands in a line.</summary>
public sealed class OneReaderTests
{
    private static readonly string[] s_numbers = ["1", "2", "1/2", "1 1/2", "1½", "½", "0.5", "1.25", "one", "two", "half a", "a", "2-3", "1 to 2", "1/4-1/2", "1-1/2"];
    private static readonly string[] s_units = ["cup", "cups", "c.", "Tbsp", "T", "t", "tsp.", "oz", "oz.", "fl oz", "fl. oz.", "oz fl", "lb", "g", "kg", "ml", "dl", "cl", "l", "pint",
        "stick", "sticks", "pat", "sheet"];
    private static readonly string[] s_joins = [" ", " + ", " plus ", " and ", ", ", " & ", " to ", " - ", " or "];

    public static TheoryData<string> Joins => [.. s_joins];

    [Fact]
    public void OnePart() => Assert.Empty(from number in s_numbers from unit in s_units from space in (string[])[" ", "-"] let text = number + space + unit where !IsOne(text) select text);

    [Theory]
    [MemberData(nameof(Joins))]
    public void TwoParts(string join) => Assert.Empty(from number in s_numbers from unit in s_units from second in (string[])["2", "1/2", "two"] from smaller in s_units
        let text = $"{number} {unit}{join}{second} {smaller}" where !IsOne(text) select text);

    [Theory]
    [InlineData("115 g 4 oz")]
    [InlineData("115 g, 4 oz")]
    [InlineData("4 oz 115 g")]
    [InlineData("1 Tbsp 1 cup")]
    [InlineData("1 tsp, 2 Tbsp")]
    public void OneMassInTwoUnitsIsNoSum(string text)
    {
        Assert.False(Amount.TryParse(text, out _));
        Phrase line = Phrase.Read(text + " butter", IngredientTable.BuiltIn);
        Assert.Single(line.SecondAmounts);
    }

    [Theory]
    [InlineData("1/4 cup to 1/3 cup", "1/4-1/3 cup")]
    [InlineData("14-oz", "14 oz")]
    [InlineData("two tablespoonfuls", "2 Tbsp")]
    [InlineData("1 cupful", "1 cup")]
    [InlineData("1 lb 2 oz", "1 lb + 2 oz")]
    public void ReadByBoth(string text, string same) => Assert.Equal(Amount.Parse(same), Amount.Parse(text));

    private static bool IsOne(string text)
    {
        AmountScanner scanner = new(text, AmountReading.DecimalPoint);
        bool found = scanner.TryNext(out WrittenAmount written) && written is { Start: 0, Reason: null, IsCount: false } && written.Length == text.Length;
        return Amount.TryParse(text, out Amount amount) ? found && written.Amount == amount : !found;
    }
}
