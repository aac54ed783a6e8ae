using System.Text;
using Confectio.Cards;
using Confectio.Ingredients;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Cards;

/// <summary>Cards as strangers write them, by somebody who had not seen the words that the reader knows: what is found on them and what is not.</summary>
public sealed class StrangersCardTests
{
    [Theory] // the same claim in other words, and words that make none
    [InlineData("Suitable for people with a milk allergy", "allergen-contradicted")]
    [InlineData("Safe for coeliacs and anyone allergic to dairy.", "allergen-contradicted")]
    [InlineData("Suitable for vegans", "allergen-contradicted")]
    [InlineData("Made without milk or eggs", "allergen-contradicted")]
    [InlineData("No dairy, no nuts", "allergen-contradicted")]
    [InlineData("Not suitable for people with a milk allergy", null)]
    [InlineData("Suitable for piping and for cakes with fondant", null)]
    [InlineData("Suitable for people with a nut allergy", null)]
    [InlineData("No milk left? Use cream.", null)]
    public void AClaimInOtherWords(string words, string? issue) => Assert.Equal(issue, Vet($"Lemon glaze\n200 g icing sugar\n45 g lemon juice\n15 g butter, melted\n\n{words}\n")
        .Findings.FirstOrDefault(finding => finding.Issue is CardIssue.AllergenContradicted)?.Issue.ToCode());

    // A column that is named by its measures, and a total in bold: 454 + 51 + 90 is 595 and not 659; 16 oz are 454 g, 3.2 oz 90 g.
    [Fact]
    public void ABoldTotalAndAColumnOfSpoons()
    {
        const string Card = "# Royal icing\n\n| Ingredient | Grams | Ounces | Cups/spoons |\n|---|---:|---:|---|\n| Icing sugar, sifted | 454 | 16 | 4 cups |\n| Dried egg white | 15 | 0.53 | 2 Tbsp |\n"
            + "| Water, warm | 90 | 3.2 | 6 Tbsp |\n| **Total** | **{0}** | 19.7 | |\n\nContains egg.\n";
        CardVerdict good = Vet(string.Format(System.Globalization.CultureInfo.InvariantCulture, Card, 559));
        Assert.Empty(good.Findings);
        Assert.DoesNotContain("not read", good.Card.ToString(), StringComparison.Ordinal);
        CardFinding total = Assert.Single(Vet(string.Format(System.Globalization.CultureInfo.InvariantCulture, Card, 659)).Findings);
        Assert.Equal(CardIssue.Total, total.Issue);
        Assert.Equal(8, total.Place.Line);
    }

    // Sugar stages fall with the boiling point: 118 °C in a kitchen at 1600 m is not that of the sea-level card.
    [Theory]
    [InlineData("Italian meringue - for our kitchen at 1600 m", true)]
    [InlineData("Italian meringue (altitude 1600 m)", true)]
    [InlineData("Italian meringue; above 1600 m cook it less", false)]
    public void TheHeightOfOurKitchen(string title, bool isHere)
    {
        CardVerdict verdict = Vet($"{title}\n120 g egg white\n240 g sugar\n70 g water\nCook sugar and water to soft ball, 115 °C (239 °F).\n");
        Assert.Equal(isHere, verdict.Findings.Any(finding => finding.Issue == CardIssue.StageAltitude));
    }

    // What is added to a food says nothing of what that food weighs.
    [Fact]
    public void WhatIsAddedIsNoSecondMeasure() => Assert.Empty(Vet("Marshmallow\nGelatine 24 g + 120 ml cold water to bloom\nSugar 400 g\n").Findings);

    // The batter is the sum, and the tins are its portions: 500 + 600 + 250 + 500 + 275 + 25 + 10 = 2160 = 12 · 180.
    [Theory]
    [InlineData("Batter 2160 g; scale 12 tins at 180 g", null)]
    [InlineData("Batter 2160 g; scale 14 tins at 180 g", CardIssue.Portions)]
    [InlineData("Batter 2610 g", CardIssue.Yield)]
    public void TheBatterIsTheSum(string line, CardIssue? issue)
    {
        CardVerdict verdict = Vet($"High ratio cake\nCake flour 500 g\nSugar 600 g\nShortening 250 g\nWhole milk 500 g\nEggs 275 g\nBaking powder 25 g\nSalt 10 g\n{line}\n");
        Assert.Equal(issue, verdict.Findings.Count == 0 ? null : Assert.Single(verdict.Findings).Issue);
        Assert.Equal(7, verdict.Card.Lines.Count);
    }

    // 150 + 300 + 450 g and some vanilla are no 1150 g, and nobody doubled them.
    [Fact]
    public void WhatIsNeitherHalfNorTwiceIsNotCalledSo()
    {
        CardFinding yield = Assert.Single(Vet("Swiss meringue buttercream\nMakes 1150 g\nEgg whites 150 g\nCaster sugar 300 g\nUnsalted butter 450 g\nCook over simmering water.\n").Findings);
        Assert.Equal(CardIssue.Yield, yield.Issue);
        Assert.DoesNotContain("halved", yield.Explanation, StringComparison.Ordinal);
    }

    // 257.7 mL of double cream in metric cups is 265 g: 250 is more likely right than not where the cups are not known, and is no finding.
    [Fact]
    public void WhatIsMoreLikelyRightIsNoFinding() => Assert.All(Vet("Ganache\n250 g dark chocolate\n250 g (1 cup + 1 tbsp) double cream\n25 g unsalted butter\n").Findings,
        finding => Assert.True(finding.ProbabilityRight is null or < 0.5));

    [Theory]
    [InlineData(1252)]
    [InlineData(1200)]
    [InlineData(65001)]
    public void TheBytesOfAFile(int codePage)
    {
        byte[] file = CodePagesEncodingProvider.Instance.GetEncoding(codePage) is Encoding page ? page.GetBytes("Crème\n200 g (3 cups) granulated sugar\n") : Encoding.GetEncoding(codePage).GetBytes("Crème\n200 g (3 cups) granulated sugar\n");
        Assert.True(PrintedCard.Read(file, IngredientTable.BuiltIn).TryGet(out PrintedCard? card));
        Assert.Equal("Crème", card.Title);
        Assert.Single(card.Lines);
    }

    [Fact]
    public void APictureIsNoCard()
    {
        byte[] junk = new byte[10_000];
        new Random(1).NextBytes(junk);
        Assert.Contains("no text", Assert.Single(PrintedCard.Read(junk, IngredientTable.BuiltIn).Problems).Message, StringComparison.Ordinal);
    }

    private static CardVerdict Vet(string text) => CardVetter.Vet(PrintedCard.Read(text, IngredientTable.BuiltIn)) ?? throw new InvalidOperationException("No card was read.");
}
