using System.Globalization;
using System.Text;
using Confectio.Cards;
using Confectio.Ingredients;
using Confectio.Text;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Cards;

/// <summary>Whatever stands in a text of a stranger, nothing is thrown, nothing runs away, and what was not read is said.</summary>
public sealed class HostileCardTests
{
    public static TheoryData<string, string> Texts()
    {
        TheoryData<string, string> texts = new()
        {
            { "empty", "" },
            { "blank", " \r\n\t " },
            { "nul", "250 g butter\0\0\n\0" },
            { "bidi", "250 g \u202Ebutter\u2066\n100 g sugar\u200F\n" },
            { "lone surrogates", "250 g butter \uD800\n\uDC00 100 g sugar\n" },
            { "lone surrogate in data", "{\"@type\":\"Recipe\",\"recipeIngredient\":[\"250 g butter \\ud800\"]}" },
            { "data cut short", "{\"@type\":\"Recipe\",\"recipeIngredient\":[\"250 g butter\"," },
            { "a member twice", "{\"@type\":\"Recipe\",\"recipeIngredient\":[\"1 g salt\"],\"recipeIngredient\":[\"250 g butter\"]}" },
            { "deep data", string.Concat(Enumerable.Repeat("[", 100_000)) },
            { "deep objects", string.Concat(Enumerable.Repeat("{\"a\":", 10_000)) },
            { "huge number", "{\"@type\":\"Recipe\",\"recipeYield\":1e999,\"recipeIngredient\":[\"250 g butter\"]}" },
            { "wrong kinds", "{\"@type\":\"Recipe\",\"recipeIngredient\":[1,null,{\"a\":1},[\"x\"],true,\"250 g butter\"],\"recipeYield\":{},\"nutrition\":[1],\"recipeInstructions\":[null,7]}" },
            { "a list of a million", "{\"@type\":\"Recipe\",\"recipeIngredient\":[" + string.Join(',', Enumerable.Repeat("\"1 g salt\"", 300_000)) + "]}" },
            { "a million lines", string.Concat(Enumerable.Repeat("250 g butter\n", 1_000_000)) },
            { "a line of ten million", "250 g butter\n" + new string('x', 10_000_000) },
            { "ten million in data", "{\"@type\":\"Recipe\",\"name\":\"" + new string('x', 10_000_000) + "\"}" },
            { "too long", new string('x', PrintedCard.MaximumCharacters + 1) },
            { "digits", "250 g butter\n" + new string('9', 7_000) + " °F\n" },
            { "numbers and degrees", "Method\n1. " + string.Concat(Enumerable.Repeat("1-2 °F (3 °C) ", 500)) + "\n250 g butter\n" },
            { "figures of fat", "250 g butter\nNutrition: " + string.Concat(Enumerable.Repeat("fat 1 g carbs ", 500)) + "\n" },
            { "portions", "250 g butter\nmakes " + string.Concat(Enumerable.Repeat("1 to 2 ", 1_000)) + "\n" },
            { "blanks", "250 g butter\n" + new string(' ', 7_900) + "x\n" },
            { "dots", "250 g butter\n" + new string('.', 7_900) + "\n" + string.Concat(Enumerable.Repeat(". ", 3_900)) + "\n" },
            { "bars", "250 g butter\n" + new string('|', 7_900) + "\n" },
            { "open script", "<html><script type=\"application/ld+json\">{\"@type\":\"Recipe\"" },
            { "a thousand scripts", "<html>" + string.Concat(Enumerable.Repeat("<script type='application/ld+json'>[]</script>", 1_000)) + "<p>250 g butter</p>" },
            { "a script in a name", "<html><script type=\"application/ld+json\">{\"@type\":\"Recipe\",\"name\":\"<script>alert(1)<\\/script>\",\"recipeIngredient\":[\"250 g <b>butter</b>\"]}</script></html>" },
            { "deep page", "<html>" + string.Concat(Enumerable.Repeat("<div>", 50_000)) },
            { "contains", "250 g butter\n" + string.Concat(Enumerable.Repeat("contains contains: ", 400)) + "\n" },
            { "free", "250 g butter\n" + string.Concat(Enumerable.Repeat("dairy-free nut ", 500)) + "!\n" },
            { "powder", "250 g butter\n" + string.Concat(Enumerable.Repeat("1 part egg white powder ", 300)) + "water\n" },
            { "altitude", "250 g butter\n" + string.Concat(Enumerable.Repeat("altitude of about 1 ", 380)) + "\n" },
        };
        return texts;
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void NothingIsThrownAndWhatWasNotReadIsSaid(string what, string text)
    {
        Reading<PrintedCard> reading = PrintedCard.Read(text, IngredientTable.BuiltIn);
        CardVerdict? verdict = CardVetter.Vet(reading);
        Assert.Equal(reading.HasValue, verdict is not null);
        if (verdict is null)
            Assert.NotEmpty(reading.Problems);
        else
            Assert.True(verdict.Card.Lines.Count is > 0 and <= 10_000, what);
        Assert.InRange(reading.Problems.Count, 0, 1001);
        if (verdict is not null)
        {
            string sarif = VettingReport.Of([VettedFile.Of(what, verdict)]).ToSarif();
            Assert.DoesNotContain('\u202E', sarif);
            using System.Text.Json.JsonDocument parsed = System.Text.Json.JsonDocument.Parse(sarif);
            Assert.Equal("2.1.0", parsed.RootElement.GetProperty("version").GetString());
        }
    }

    [Theory]
    [InlineData("a million lines", 10_001)]
    [InlineData("a line of ten million", 2)]
    public void WhatIsLeftOutHasItsLine(string what, int line)
    {
        string text = what == "a million lines" ? string.Concat(Enumerable.Repeat("250 g butter\n", 20_000)) : "250 g butter\n" + new string('x', 10_000_000);
        Assert.Contains(PrintedCard.Read(text, IngredientTable.BuiltIn).Problems, problem => problem.Line == line);
    }

    // The machine's culture changes nothing: one card in Turkish and German, with the letters and marks that differ there.
    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void TheCultureOfTheMachineChangesNothing(string culture)
    {
        const string Text = "ICING\nMakes 24 portions of 20.5 g\n\n1 cup (227 g) honey\n1 1/2 cups (300.5 g) GRANULATED SUGAR\n\nMethod\n1. Bake at 350.5°F (180°C).\n\nCONTAINS MILK.\n";
        string expected = Told(Text);
        CultureInfo was = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(expected, Told(Text));
        }
        finally
        {
            CultureInfo.CurrentCulture = was;
        }
    }

    private static string Told(string text)
    {
        CardVerdict verdict = CardVetter.Vet(PrintedCardTests.Read(text));
        return new StringBuilder().AppendJoin('\n', verdict.Findings).AppendJoin('\n', verdict.NotJudged).AppendJoin('\n', verdict.Card.Figures).AppendJoin('\n', verdict.Card.Lines).ToString();
    }
}
