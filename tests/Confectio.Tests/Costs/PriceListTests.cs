using System.Text;
using Confectio.Costs;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Tests.Consistency;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Costs;

/// <summary>Lists of prices as people keep them, good, bad and hostile.</summary>
public sealed class PriceListTests
{
    private const string Header = "ingredient,pack,price,currency,date,waste\n";

    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    [Fact]
    public void ATableIsRead()
    {
        foreach (string culture in (string[])["", "de-DE", "tr-TR"])
        {
            Cultures.In(culture, () =>
            {
                PriceList prices = Read("\uFEFFSupplier;Price;Ingredient;Pack;Currency;Date;Waste\nA;6.95;unsalted butter;1 kg;eur;2026-11-02;\nA;3.60;whole egg;12 large;EUR;;5 %\n\nB;0;water;1 L;EUR;;\n").OrThrow();
                Assert.Equal(["unsalted butter: EUR 6.95 for 1 kg (2026-11-02)", "whole egg: EUR 3.60 for 12 large, 5 % waste, undated", "water: EUR 0.00 for 1 L, undated"], prices.Prices.Select(price => price.ToString()));
            });
        }
    }

    [Fact]
    public void ADecimalCommaIsReadWhereItIsSaid()
    {
        const string Table = "ingredient;pack;price;waste\nunsalted butter;2,5 kg;17,38;2,5%\n";
        Price price = Assert.Single(PriceList.Read(new StringReader(Table), s_table, MeasuringSystem.Metric, Currency.Get("EUR"), AmountReading.DecimalComma).OrThrow().Prices);
        Assert.Equal((17.38m, 2500, 0.025), (price.Amount, price.PackGrams.Likely, price.WasteFraction));
        // Nobody can tell 17,38 from 1738 without being told.
        Reading<PriceList> reading = PriceList.Read(new StringReader(Table), s_table, MeasuringSystem.Metric, Currency.Get("EUR"));
        Assert.False(reading.HasValue);
        Assert.Contains(reading.Problems, problem => problem is { Line: 2, Column: "price" } && problem.Message.Contains("'17,38' is not a price", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("unobtainium,1 kg,1,EUR,,", "ingredient", "not an ingredient")]
    [InlineData("unsalted buter,1 kg,1,EUR,,", "ingredient", "unsalted butter")]
    [InlineData("honey,,1,EUR,,", "pack", "empty")]
    [InlineData("honey,a jar,1,EUR,,", "pack", "a pack such as")]
    [InlineData("honey,0 kg,1,EUR,,", "pack", "must be from")]
    [InlineData("honey,1-2 kg,1,EUR,,", "pack", "no range")]
    [InlineData("honey,2 large,1,EUR,,", "pack", "not known")]
    [InlineData("honey,1 kg,,EUR,,", "price", "empty")]
    [InlineData("honey,1 kg,-1,EUR,,", "price", "not a price")]
    [InlineData("honey,1 kg,1e3,EUR,,", "price", "not a price")]
    [InlineData("honey,1 kg,NaN,EUR,,", "price", "not a price")]
    [InlineData("honey,1 kg,€3.49,EUR,,", "price", "without a sign")]
    [InlineData("honey,1 kg,99999999999999999999999999999999,EUR,,", "price", "not a price")]
    [InlineData("honey,1 kg,\"1,234.50\",EUR,,", "price", "thousands")]
    [InlineData("honey,1 kg,6,95,EUR,,", "price", "the row has 7 fields")] // a decimal comma among commas
    [InlineData("honey,1 kg,1,$,,", "currency", "ISO 4217")]
    [InlineData("honey,1 kg,1,EURO,,", "currency", "ISO 4217")]
    [InlineData("honey,1 kg,1,,,", "currency", "empty")]
    [InlineData("honey,1 kg,1,EUR,2.11.2026,", "date", "year first")]
    [InlineData("honey,1 kg,1,EUR,2026-02-29,", "date", "year first")]
    [InlineData("honey,1 kg,1,EUR,,5", "waste", "with its sign")]
    [InlineData("honey,1 kg,1,EUR,,0.05", "waste", "with its sign")]
    [InlineData("honey,1 kg,1,EUR,,96%", "waste", "from 0% to 95%")]
    [InlineData("\"=HYPERLINK(\"\"http://x\"\")\",1 kg,1,EUR,,", "ingredient", "not an ingredient")]
    [InlineData("\u202Ehoney\u001b[2J,1 kg,1,EUR,,", "ingredient", "not an ingredient")]
    public void ABadRowIsToldWithItsColumnAndHidesNoOther(string row, string column, string says)
    {
        Reading<PriceList> reading = Read(Header + row + "\nunsalted butter,1 kg,6.95,EUR,,\n");
        Assert.True(reading.TryGet(out PriceList? prices));
        Assert.Equal("unsalted butter", Assert.Single(prices!.Prices).Ingredient.Name);
        Assert.Contains(reading.Problems, problem => problem.Line == 2 && problem.Column == column && problem.Message.Contains(says, StringComparison.Ordinal));
        Assert.All(reading.Problems, problem => Assert.DoesNotContain(problem.ToString(), c => char.IsControl(c)));
        Assert.Throws<FormatException>(() => reading.OrThrow());
    }

    [Fact]
    public void TwoPricesOfWhichNobodyKnowsTheNewerAreAProblem()
    {
        Reading<PriceList> reading = Read(Header + "honey,1 kg,9,EUR,,\nhoney,500 g,5,EUR,,\n");
        Assert.Equal(9m, Assert.Single(reading.TryGet(out PriceList? prices) ? prices.Prices : []).Amount);
        Assert.Equal((3, "ingredient"), (reading.Problems[0].Line, reading.Problems[0].Column));
        Assert.Equal(5m, Assert.Single(Read(Header + "honey,1 kg,9,EUR,2026-01-01,\nhoney,500 g,5,EUR,2026-02-01,\n").OrThrow().Prices).Amount);
    }

    [Theory]
    [InlineData("")]
    [InlineData("ingredient,pack\nhoney,1 kg\n")]
    [InlineData("ingredient,pack,price,currency,price\nhoney,1 kg,1,EUR,2\n")]
    [InlineData("ingredient,pack,price,currency,wast\nhoney,1 kg,1,EUR,5%\n")] // a slip that would lose the waste
    [InlineData(Header)]
    public void ATableWithoutWhatItNeedsIsNone(string table)
    {
        Reading<PriceList> reading = Read(table);
        Assert.False(reading.HasValue);
        Assert.NotEmpty(reading.Problems);
    }

    [Fact]
    public void HostileTablesEnd()
    {
        Assert.False(Read(new string('x', 10_000_000)).HasValue);
        Assert.False(Read(Header + new string(',', 10_000_000)).HasValue);
        Reading<PriceList> many = Read(Header + string.Concat(Enumerable.Repeat("unobtainium,1 kg,1,EUR,,\n", 150_000)));
        Assert.False(many.HasValue);
        Assert.Equal(1001, many.Problems.Count);
        Assert.False(Read("\0\u0001\uFFFF").HasValue);
    }

    [Fact]
    public void JsonIsRead()
    {
        PriceList prices = PriceList.ReadJson("""
            {"confectioPrices":1,"currency":"GBP","prices":[{"ingredient":"unsalted butter","pack":"250 g","price":2.05,"date":"2026-11-02","waste":"2%"},{"ingredient":"water","pack":"1 L","price":0,"currency":"EUR"}]}
            """, s_table).OrThrow();
        Assert.Equal(["unsalted butter: GBP 2.05 for 250 g, 2 % waste (2026-11-02)", "water: EUR 0.00 for 1 L, undated"], prices.Prices.Select(price => price.ToString()));
    }

    [Theory]
    [InlineData("""{"confectioPrices":2,"prices":[]}""", "$.confectioPrices")]
    [InlineData("""{"confectioPrices":1,"prices":[]}""", "$.prices")]
    [InlineData("""{"confectioPrices":1,"prices":[{"ingredient":"honey","pack":"1 kg","price":1}]}""", "$.prices[0]")] // no currency
    [InlineData("""{"confectioPrices":1,"currency":"€","prices":[{"ingredient":"honey","pack":"1 kg","price":1}]}""", "$.currency")]
    [InlineData("""{"confectioPrices":1,"currency":"EUR","prices":[{"ingredient":"honey","pack":"1 kg","price":-1}]}""", "$.prices[0].price")]
    [InlineData("""{"confectioPrices":1,"currency":"EUR","prices":[{"ingredient":"honey","pack":"1 kg","price":1e308}]}""", "$.prices[0].price")]
    [InlineData("""{"confectioPrices":1,"currency":"EUR","prices":[{"ingredient":"honey","pack":"1 large","price":1}]}""", "$.prices[0].pack")]
    [InlineData("""{"confectioPrices":1,"currency":"EUR","prices":[{"ingredient":"honey","pack":"1 kg","price":1,"wast":"5%"}]}""", "$.prices[0].wast")]
    [InlineData("""{"confectioPrices":1,"currency":"EUR","prices":[{"ingredient":"honey","pack":"1 kg","price":1},{"ingredient":"honey","pack":"2 kg","price":1}]}""", "$.prices[1].ingredient")]
    public void BadJsonIsToldWithItsPath(string json, string path)
    {
        Reading<PriceList> reading = PriceList.ReadJson(json, s_table);
        Assert.False(reading.HasValue);
        Assert.Contains(reading.Problems, problem => problem.Path == path);
    }

    [Fact]
    public void BombsAreRefused()
    {
        Assert.False(PriceList.ReadJson(new string('[', 100_000), s_table).HasValue);
        Assert.False(PriceList.ReadJson(Encoding.UTF8.GetBytes("{\"confectioPrices\":1,\"prices\":[" + string.Concat(Enumerable.Repeat("{},", 200_000)) + "{}]}"), s_table).HasValue);
        Assert.False(PriceList.ReadJson(new byte[5_000_000], s_table).HasValue);
    }

    private static Reading<PriceList> Read(string table) => PriceList.Read(new StringReader(table), s_table, MeasuringSystem.Metric);
}
