using System.Runtime.CompilerServices;
using Confectio.Cards;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Cards;

/// <summary>Cards written by hand before any list of words was looked at, as people set them, and what must be read in each.</summary>
public sealed class PrintedCardTests
{
    internal static string Hand(string name) => File.ReadAllText(Path.Combine(Here(), "Hand", name));

    private static string Here([CallerFilePath] string here = "") => Path.GetDirectoryName(here)!;

    internal static PrintedCard Read(string text)
    {
        Reading<PrintedCard> reading = PrintedCard.Read(text, IngredientTable.BuiltIn);
        Assert.True(reading.TryGet(out PrintedCard? card), reading.ToString());
        return card;
    }

    // What stands on each, counted by eye.
    [Theory]
    [InlineData("01-vanilla-buttercream.txt", "Vanilla Buttercream", 5, 0, 0)]
    [InlineData("02-swiss-meringue-buttercream.md", "Swiss meringue buttercream", 4, 2, 0)]
    [InlineData("03-royal-icing-meringue-powder.txt", "ROYAL ICING", 3, 0, 0)]
    [InlineData("04-caramel-sauce.txt", "Salted caramel", 5, 1, 0)]
    [InlineData("05-cream-cheese-frosting.html", "Cream Cheese Frosting", 5, 1, 0)]
    [InlineData("06-ganache.html", "Dark Chocolate Ganache", 3, 1, 0)]
    [InlineData("07-bakers-percent.txt", "High-ratio yellow cake", 8, 1, 0)]
    [InlineData("08-fondant-percent.txt", "Rolled fondant", 6, 0, 0)]
    [InlineData("09-fudge-mountain.txt", "Old-fashioned chocolate fudge, our mountain kitchen", 5, 2, 0)]
    [InlineData("10-italian-meringue.txt", "Italian meringue", 4, 1, 0)]
    [InlineData("11-metric-australian.txt", "Lemon glacé icing", 3, 0, 0)]
    [InlineData("12-marshmallow.txt", "Vanilla marshmallows", 8, 1, 1)]
    [InlineData("13-temperatures-wrong.txt", "Tempering dark chocolate", 1, 4, 0)]
    [InlineData("14-nutrition-text.txt", "American buttercream, per recipe 24 servings of 2 Tbsp", 3, 0, 0)]
    [InlineData("15-pastry-school-sheet.txt", "CRÈME PÂTISSIÈRE", 6, 1, 1)]
    [InlineData("16-uk-card.txt", "Victoria sponge", 5, 2, 0)]
    [InlineData("17-egg-danger.txt", "Quick silky meringue frosting", 2, 1, 0)]
    public void ACardOfAStrangerIsRead(string file, string title, int lines, int temperatures, int problems)
    {
        Reading<PrintedCard> reading = PrintedCard.Read(Hand(file), IngredientTable.BuiltIn);
        Assert.True(reading.TryGet(out PrintedCard? card));
        Assert.Equal(title, card.Title);
        Assert.Equal(lines, card.Lines.Count);
        Assert.Equal(temperatures, card.Temperatures.Count);
        Assert.Equal(problems, reading.Problems.Count);
    }

    [Fact]
    public void EveryAmountHasItsPlace()
    {
        PrintedCard card = Read("Icing\n\n| Ingredient | Cups | Weight |\n|---|---|---|\n| Icing sugar | 2 cups | 240 g |\n");
        PrintedLine line = Assert.Single(card.Lines);
        Assert.Equal("icing sugar", line.Phrase.Ingredient!.Name);
        CardPlace grams = line.PlaceOf(line.Phrase.SecondAmounts[0]);
        Assert.Equal((5, 26, 5), (grams.Line, grams.Column, grams.Length));
        CardPlace cups = line.PlaceOf(line.Phrase.Amount!.Value);
        Assert.Equal((5, 17, 6), (cups.Line, cups.Column, cups.Length));
    }

    [Fact]
    public void APlaceInStructuredDataHasItsPath()
    {
        PrintedCard card = Read("{\n \"@type\": \"Recipe\", \"name\": \"x\",\n \"recipeIngredient\": [\"1 cup (120 g) flour\",\n  \"250 g butter\"]\n}");
        Assert.Equal(CardForm.RecipeData, card.Form);
        Assert.Equal("$.recipeIngredient[1]", card.Lines[1].Place.Path);
        Assert.Equal((4, 4, 12), (card.Lines[1].Place.Line, card.Lines[1].Place.Column, card.Lines[1].Place.Length));
        CardPlace grams = card.Lines[0].PlaceOf(card.Lines[0].Phrase.SecondAmounts[0]);
        Assert.Equal((3, 31, 5), (grams.Line, grams.Column, grams.Length));
    }

    // schema.org Recipe: recipeYield is a text or a QuantitativeValue; recipeInstructions texts, HowToStep or HowToSection; the older ingredients.
    [Theory]
    [InlineData("\"recipeYield\": \"24 cupcakes\"", CardFigureKind.Portions, 24)]
    [InlineData("\"recipeYield\": 12", CardFigureKind.Portions, 12)]
    [InlineData("\"recipeYield\": [\"8\", \"8 servings\"]", CardFigureKind.Portions, 8)]
    [InlineData("\"recipeYield\": {\"@type\": \"QuantitativeValue\", \"value\": 1200, \"unitCode\": \"GRM\"}", CardFigureKind.YieldGrams, 1200)]
    [InlineData("\"recipeYield\": {\"@type\": \"QuantitativeValue\", \"value\": \"1.2\", \"unitText\": \"kg\"}", CardFigureKind.YieldGrams, 1200)]
    [InlineData("\"recipeYield\": \"20 portions of 80 g\"", CardFigureKind.PortionGrams, 80)]
    public void AYieldIsReadInEachOfItsForms(string member, CardFigureKind kind, double value)
    {
        PrintedCard card = Read($"{{\"@type\":\"Recipe\",\"name\":\"x\",\"ingredients\":[\"250 g butter\"],{member}}}");
        Assert.Equal(value, card.Figures.First(figure => figure.Kind == kind).Low, 9);
    }

    [Theory]
    [InlineData("\"recipeInstructions\": \"Bake at 350°F (177°C).\"")]
    [InlineData("\"recipeInstructions\": [\"Mix.\", \"Bake at 350&deg;F (177&#176;C).\"]")]
    [InlineData("\"recipeInstructions\": [{\"@type\":\"HowToStep\",\"text\":\"Bake at 350 \\u00b0F (177 \\u00b0C).\"}]")]
    [InlineData("\"recipeInstructions\": [{\"@type\":\"HowToSection\",\"itemListElement\":[{\"@type\":\"HowToStep\",\"text\":\"<p>Bake at 350°F<br>(177°C).</p>\"}]}]")]
    [InlineData("\"recipeInstructions\": {\"@type\":\"ItemList\",\"itemListElement\":[{\"@type\":\"HowToStep\",\"text\":\"Bake at 350°F / 177°C.\"}]}")]
    public void InstructionsAreReadInEachOfTheirForms(string member)
    {
        PrintedCard card = Read($"{{\"@graph\":[{{\"@type\":\"WebPage\"}},{{\"@type\":[\"Recipe\"],\"name\":\"x\",\"recipeIngredient\":[\"250 g butter\"],{member}}}]}}");
        Assert.Contains(card.Temperatures, temperature => temperature.Fahrenheit == 350);
        Assert.Contains(card.Temperatures, temperature => temperature.Celsius == 177);
    }

    [Fact]
    public void WhatSaysNothingIsListedAsNotUsed()
    {
        PrintedCard card = Read("{\"@type\":\"Recipe\",\"recipeIngredient\":[\"250 g butter\"],\"prepTime\":\"PT15M\",\"image\":\"https://example.org/x.png\"}");
        Assert.Equal(["$.prepTime", "$.image"], card.NotUsed.Select(problem => problem.Path));
    }

    [Fact]
    public void EveryPartThatIsNotUnderstoodIsAProblemWithItsPlace()
    {
        Reading<PrintedCard> reading = PrintedCard.Read("Icing\n250 g butter\n3 cups zzyzx powder\n", IngredientTable.BuiltIn);
        Problem problem = Assert.Single(reading.Problems);
        Assert.Equal(3, problem.Line);
        Assert.Contains("zzyzx", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("70% dark chocolate is a name", "200 g 70% dark chocolate\n100 g butter\n50 g sugar\n20 g honey\n", 0)]
    [InlineData("shares behind most names are shares", "200 g butter (50%)\n100 g sugar (25%)\n60 g honey (15%)\n40 g water (10%)\n", 4)]
    public void APercentageIsOfTheCardOnlyWhereMostLinesHaveOne(string what, string text, int shares)
    {
        Assert.True(what.Length > 0);
        Assert.Equal(shares, Read("Title\n" + text).Lines.Count(line => line.Percent is not null));
    }

    // A column of units beside a column of numbers; a total in bold; pounds and ounces as one figure.
    [Fact]
    public void AUnitMayStandInAColumnOfItsOwn()
    {
        PrintedCard card = Read("Glaze\nItem\tQty\tUnit\nEgg white\t6\tea\nDark chocolate\t400\tg\nHoney\t2\ttsp\n");
        Assert.Equal(["6 large", "400 g", "2 tsp"], card.Lines.Select(line => line.Phrase.Amount!.Value.Amount.ToString()));
    }

    [Fact]
    public void ATotalInBoldIsATotal() => Assert.Equal(1134, Assert.Single(Read("| | g | % |\n|---|---|---|\n| Sugar | 550 | 48.5 |\n| Water | 584 | 51.5 |\n| **Total** | **1134** | **100.0** |\n").Figures, figure => figure.Kind == CardFigureKind.TotalGrams).Low);

    // 10 x 453.59237 + 8 x 28.349523125.
    [Fact]
    public void PoundsAndOuncesAreOneFigure() => Assert.Equal(4762.719885, Assert.Single(Read("Dough\nYields 10 lb 8 oz\n5 lb flour\n").Figures, figure => figure.Kind == CardFigureKind.YieldGrams).Low, 6);

    [Fact]
    public void AFormulaInOurJsonIsACard()
    {
        Formula formula = Formula.ParseText("Fennmarsh", "1 cup honey\n250 g butter\n", IngredientTable.BuiltIn, MeasuringSystem.Metric);
        PrintedCard card = Read(formula.ToJson());
        Assert.Equal(CardForm.FormulaJson, card.Form);
        Assert.Equal(formula.TotalGrams, card.ToFormula(MeasuringSystem.Metric).OrThrow().TotalGrams, 6);
        Assert.Equal("$.lines[1]", card.Lines[1].Place.Path);
    }

    [Fact]
    public void ACardIsAFormulaAndWhatCannotBeWeighedIsSaid()
    {
        Reading<Formula> reading = Read("Icing\n1 cup (340 g) honey\n2 cups butter\n1 handful unobtainium\n").ToFormula(MeasuringSystem.UsCustomary);
        Assert.True(reading.TryGet(out Formula? formula));
        // 340 g as printed; two cups of 227 g by the table.
        Assert.Equal(340, formula.Lines[0].Grams.Likely, 6);
        Assert.Equal(2, formula.Lines.Count);
        Assert.Equal(4, Assert.Single(reading.Problems).Line);
    }

    [Theory]
    [InlineData("5°F (3°C) lower", true)]
    [InlineData("cool to within 5°F (3°C) of that", true)]
    [InlineData("2 °F (1 °C) for every 500 ft", false)]
    [InlineData("lower the oven by 25 °F (15 °C)", true)]
    [InlineData("do not let it rise by more than 10°F (6°C)", true)]
    [InlineData("cool to 90°F (32°C)", false)]
    public void ADifferenceIsToldFromAPoint(string words, bool isDifference) =>
        Assert.Equal(isDifference, Assert.Single(Read("Icing\n250 g butter\n\nMethod\n1. Then " + words + ".\n").Temperatures).IsDifference);

    [Theory]
    [InlineData("Our kitchen stands at an altitude of 1 600 m", 1600)]
    [InlineData("(elevation 5,280 ft)", 1609.344)]
    [InlineData("Altitude: 2130 m", 2130)]
    public void TheHeightOfTheKitchenIsRead(string words, double metres) =>
        Assert.Equal(metres, Assert.Single(Read("Fudge\n" + words + "\n250 g butter\n").Figures, figure => figure.Kind == CardFigureKind.AltitudeMetres).Low, 6);

    [Theory]
    [InlineData("Above 3,000 ft altitude use less sugar.")]
    [InlineData("For every 1,000 ft of altitude cook 2 °F less.")]
    [InlineData("High altitude: over 5,000 ft elevation add flour.")]
    public void AHeightOfOthersIsNone(string words) =>
        Assert.DoesNotContain(Read("Fudge\n250 g butter\n\nNotes\n" + words + "\n").Figures, figure => figure.Kind == CardFigureKind.AltitudeMetres);
}
