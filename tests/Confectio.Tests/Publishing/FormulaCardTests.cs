using System.Globalization;
using System.Text.Json;
using Confectio.Cooking;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Publishing;
using Confectio.Tests.Consistency;
using Xunit;
using static Confectio.Tests.Publishing.Cards;

namespace Confectio.Tests.Publishing;

/// <summary>What stands on a card as a whole.</summary>
public sealed class FormulaCardTests
{
    private static readonly CardOptions s_full = new()
    {
        MeasuringSystems = [MeasuringSystem.UsCustomary, MeasuringSystem.Metric], Portions = 24, Rules = LabelRules.EuropeanUnion, ShowsRounding = true,
        Temperatures = [CardTemperature.Of("whites and sugar", 71, CardTemperatureBound.AtLeast)], Steps = ["Whisk over simmering water.", "Whip until cool."],
    };

    [Fact]
    public void TheTextHasWhatACookNeeds()
    {
        string text = FormulaCard.Of(Buttercream, s_full).ToText();
        // 210 + 385 + 470 + 6 + 3 = 1074 g; /24 = 44.75 g; 1074/28.349523125 = 37.884 oz = 2 lb 5.9 oz.
        Assert.Contains("Makes 1074 g (2 lb 5.9 oz): 24 portions of 44.8 g.", text, StringComparison.Ordinal);
        Assert.Contains("385 g (13.58 oz; ", text, StringComparison.Ordinal);
        Assert.Contains("at least 71 °C (160 °F)", text, StringComparison.Ordinal);
        Assert.Contains("1. Whisk over simmering water.", text, StringComparison.Ordinal);
        Assert.Contains("milk, egg", text, StringComparison.Ordinal);
        Assert.Contains(Caution.ReadTheLabel, text, StringComparison.Ordinal);
        Assert.Contains("Rounding: no weight was rounded", text, StringComparison.Ordinal);
        Assert.Matches(@"granulated sugar +35\.8\n", text); // 385/1074
    }

    [Fact]
    public void EveryFormHasTheCautionsAndTheAllergens()
    {
        FormulaCard card = FormulaCard.Of(Buttercream, s_full);
        Assert.Equal(Buttercream.Cautions.Count, card.Cautions.Count);
        foreach (string form in (string[])[Flat(card.ToText()), Flat(card.ToMarkdown()), Flat(card.ToHtml()), JsonDocument.Parse(card.ToJsonLd()).RootElement.GetProperty("description").GetString()!, card.ToJson()])
        {
            foreach (Caution caution in Buttercream.Cautions)
                Assert.Contains(caution.Text, form, StringComparison.Ordinal);
            Assert.Contains("egg", form, StringComparison.Ordinal);
            Assert.Contains(Caution.ReadTheLabel, form, StringComparison.Ordinal);
            Assert.Contains("Local codes and licensed practice decide.", form, StringComparison.Ordinal);
        }

        static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void APlainSyrupHasNoCautionAndABoiledOneThatOfHotSugar()
    {
        Formula syrup = Formula.Of("syrup", [Line("granulated sugar", 300), Line("water", 100)]), boiled = Formula.Of("syrup", syrup.Lines, 60);
        Assert.Empty(FormulaCard.Of(syrup).Cautions);
        Assert.Equal([CookingStage.Caution], FormulaCard.Of(boiled).Cautions);
        Assert.Equal([CookingStage.Caution], FormulaCard.Of(syrup, new CardOptions { Temperatures = [CardTemperature.Of("syrup", 118)] }).Cautions);
        Assert.Equal([CookingStage.Caution], FormulaCard.Of(syrup, new CardOptions { Steps = ["Cook to the soft ball stage."] }).Cautions);
        Assert.Empty(FormulaCard.Of(syrup, new CardOptions { Temperatures = [CardTemperature.Of("oven", 180)] }).Cautions);
    }

    [Fact]
    public void TheCautionOfASpoonStandsWhereTheSpoonDoes()
    {
        Assert.Contains(Of(Line("table salt", "1 tsp", MeasuringSystem.Imperial), MeasuringSystem.Imperial).Cautions, caution => caution.Contains("ambiguous", StringComparison.Ordinal));
        Assert.DoesNotContain(Of(Line("table salt", "1 tsp", MeasuringSystem.UsCustomary), MeasuringSystem.UsCustomary).Cautions, caution => caution.Contains("ambiguous", StringComparison.Ordinal));
        Assert.Empty(FormulaCard.Of(Formula.Of("", [Line("table salt", 6)])).Cautions);
    }

    [Fact]
    public void TheRoundingOfTheTotalIsToldAtWorstAndAsItIs()
    {
        // Three lines of 100/3 g are printed as 33.3 g, each within 0.05 g: 0.15 g at worst, 99.9 − 100 = −0.1 g as it is.
        Formula thirds = Formula.Of("", [Line("granulated sugar", 100.0 / 3), Line("water", 100.0 / 3), Line("unsalted butter", 100.0 / 3)]);
        CardRounding rounding = FormulaCard.Of(thirds).Rounding;
        Assert.Equal(0.15, rounding.WorstGrams, 1e-12);
        Assert.Equal(-0.1, rounding.ActualGrams, 1e-9);
        Assert.Contains("0.1 g less", rounding.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, FormulaCard.Of(Buttercream).Rounding.WorstGrams);
    }

    [Fact]
    public void BakersPercentagesAreOfTheirBasis()
    {
        Formula cake = Formula.Of("", [Line("plain flour", 200), Line("granulated sugar", 250), Line("water", 120)]);
        FormulaCard card = FormulaCard.Of(cake, new CardOptions { Basis = FormulaPart.OfIngredient(Table.Get("plain flour")) });
        Assert.Equal([100, 125, 60], card.Lines.Select(line => line.BasisPercent!.Value), (one, other) => Math.Abs(one - other) < 1e-9);
        Assert.Contains("125.0", card.ToHtml(), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("options", () => FormulaCard.Of(Buttercream, card.Options));
    }

    [Fact]
    public void WhatBoilsOffIsSaid()
    {
        string text = FormulaCard.Of(Formula.Of("caramel", [Line("granulated sugar", 300), Line("water", 100)], 60), new CardOptions { Portions = 10 }).ToText();
        Assert.Contains("60 g of water boil off. Makes 340 g (12.0 oz): 10 portions of 34.0 g.", text, StringComparison.Ordinal);
        Assert.Contains("Put in: 400 g", text, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsNotNothingIsNotPrintedAsNothing()
    {
        string text = FormulaCard.Of(Formula.Of("", [Line("granulated sugar", 1e9), Line("table salt", 0.001)])).ToText();
        Assert.Matches(@"table salt +under 0\.000001\n", text);
        Assert.DoesNotMatch(@"(?m)^  \S.* 0(\.0+)?( g)?$", text);
    }

    [Theory]
    [InlineData(40, "26 portions of 40 g, and 34 g over.", "26 portions")] // 1074 − 26·40 = 34
    [InlineData(1074, "1 portion of 1074 g.", "1 portion")]
    [InlineData(2000, "0 portions of 2000 g, and 1074 g over.", "1074 g")]
    public void PortionsOfAStatedMassAreWhole(double grams, string told, string yield)
    {
        FormulaCard card = FormulaCard.Of(Buttercream, new CardOptions { PortionGrams = grams });
        Assert.Contains(told, card.ToText(), StringComparison.Ordinal);
        Assert.Equal(yield, JsonDocument.Parse(card.ToJsonLd()).RootElement.GetProperty("recipeYield").GetString());
    }

    [Fact]
    public void AmericanNamesAreShownAndTheIdsAreNot()
    {
        FormulaCard card = FormulaCard.Of(Formula.Of("", [Line("icing sugar", 200), Line("egg white", 30)]), new CardOptions { Names = Table.WithAmericanNames(), MeasuringSystems = [MeasuringSystem.UsCustomary] });
        foreach (string form in (string[])[card.ToText(), card.ToMarkdown(), card.ToHtml(), card.ToJsonLd()])
        {
            Assert.Contains("powdered sugar", form, StringComparison.Ordinal);
            Assert.DoesNotContain("icing sugar", form, StringComparison.Ordinal);
            Assert.DoesNotContain("sugar-icing", form, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void WhatNobodyKnowsIsSaid()
    {
        Ingredient own = Ingredient.FromLabel("Fennmarsh praline", NutritionPanel.Of(LabelRules.EuropeanUnion, 100, (LabelNutrient.Fat, "30"), (LabelNutrient.Carbohydrate, "55"), (LabelNutrient.Sugars, "50"), (LabelNutrient.Protein, "8"), (LabelNutrient.Salt, "0.1")));
        FormulaCard card = FormulaCard.Of(Formula.Of("", [FormulaLine.Of(own, 200)]), new CardOptions { MeasuringSystems = [MeasuringSystem.Metric], Rules = LabelRules.EuropeanUnion });
        Assert.Contains(card.NotKnown, sentence => sentence.StartsWith("Which allergens are in Fennmarsh praline", StringComparison.Ordinal));
        Assert.Contains(card.NotKnown, sentence => sentence.Contains("a cup or spoon holds of Fennmarsh praline", StringComparison.Ordinal));
        Assert.Contains(card.NotKnown, sentence => sentence.Contains("water", StringComparison.Ordinal));
        Assert.Contains("Not stated for", card.ToText(), StringComparison.Ordinal);
        Assert.Contains("nobody weighed a measure of it", card.ToHtml(), StringComparison.Ordinal);
        foreach (string sentence in card.NotKnown)
            Assert.Contains(sentence, JsonDocument.Parse(card.ToJsonLd()).RootElement.GetProperty("description").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void OurJsonHoldsTheFormulaToTheLastBit()
    {
        Formula formula = Formula.Of("a \"name\" <b>", [Line("granulated sugar", 1000.0 / 3), Line("icing sugar", "1 1/2 cups", MeasuringSystem.UsCustomary, Packing.Sifted)]);
        using JsonDocument json = JsonDocument.Parse(FormulaCard.Of(formula, s_full).ToJson());
        Formula back = Formula.ParseJson(json.RootElement.GetProperty("formula").GetRawText(), Table);
        Assert.Equal(formula.ToJson(), back.ToJson());
        Assert.Equal(1, json.RootElement.GetProperty("confectioCard").GetInt32());
        Assert.Equal(24, json.RootElement.GetProperty("portions").GetDouble());
    }

    [Fact]
    public void FormsForProgramsAreTheSameInEveryCulture()
    {
        string ld = FormulaCard.Of(Buttercream, s_full).ToJsonLd(), json = FormulaCard.Of(Buttercream, s_full).ToJson(), text = FormulaCard.Of(Buttercream, s_full).ToText(), html = FormulaCard.Of(Buttercream, s_full).ToHtml();
        Cultures.InEach(["tr-TR", "de-DE", "fr-FR", "fa-IR"], () =>
        {
            FormulaCard card = FormulaCard.Of(Buttercream, s_full);
            Assert.Equal(ld, card.ToJsonLd());
            Assert.Equal(json, card.ToJson());
            Assert.Equal(text, card.ToText());
            Assert.Equal(html, card.ToHtml());
        });
    }

    [Fact]
    public void AChosenCultureHasItsMark()
    {
        FormulaCard card = FormulaCard.Of(Formula.Of("", [Line("granulated sugar", 12345.5), Line("table salt", 2.5)]), new CardOptions { Culture = CultureInfo.GetCultureInfo("de-DE"), MeasuringSystems = [MeasuringSystem.Metric] });
        Assert.Contains("12.345,5 g", card.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("12345,5 g", card.ToText(), StringComparison.Ordinal);
        Assert.Contains("12345.5 g", card.ToJsonLd(), StringComparison.Ordinal);
        // A text of a culture with a decimal comma is read with a decimal comma.
        string line = card.ToText().Split('\n').First(part => part.Contains("table salt", StringComparison.Ordinal)).Trim(' ', '-');
        Confectio.Phrases.Phrase phrase = Confectio.Phrases.Phrase.Read(line, Table, new Confectio.Phrases.PhraseOptions { Reading = AmountReading.DecimalComma });
        Assert.Equal(2.5, phrase.Amount!.Value.Amount.Grams(MeasuringSystem.Metric));
        Assert.Empty(phrase.Problems);
    }

    [Fact]
    public void OptionsThatContradictEachOtherAreRefused()
    {
        Assert.Throws<ArgumentException>("options", () => FormulaCard.Of(Buttercream, new CardOptions { Portions = 2, PortionGrams = 10 }));
        Assert.Throws<ArgumentException>("options", () => FormulaCard.Of(Buttercream, new CardOptions { Rules = LabelRules.UnitedStates }));
        Assert.Throws<ArgumentOutOfRangeException>("options", () => FormulaCard.Of(Buttercream, new CardOptions { Rules = LabelRules.EuropeanUnion, Portions = 1e6 }));
        Assert.Throws<ArgumentException>("MeasuringSystems", () => new CardOptions { MeasuringSystems = [MeasuringSystem.Metric, MeasuringSystem.Metric] });
        Assert.Throws<ArgumentException>("Tools", () => new CardOptions { Tools = [MeasuringTools.Usual(MeasuringSystem.Metric), MeasuringTools.Full(MeasuringSystem.Metric)] });
        Assert.Throws<ArgumentOutOfRangeException>("Portions", () => new CardOptions { Portions = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>("PortionGrams", () => new CardOptions { PortionGrams = -1 });
        Assert.Throws<ArgumentOutOfRangeException>("AllowedError", () => new CardOptions { AllowedError = 0.2 });
        Assert.Throws<ArgumentException>("Title", () => new CardOptions { Title = new string('x', 2001) });
        Assert.Throws<ArgumentException>("Steps", () => new CardOptions { Steps = [.. Enumerable.Repeat("x", 201)] });
        Assert.Throws<ArgumentNullException>("Steps", () => new CardOptions { Steps = [null!] });
        Assert.Throws<ArgumentNullException>("Temperatures", () => new CardOptions { Temperatures = [null!] });
    }
}
