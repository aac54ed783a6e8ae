using System.Globalization;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Ingredients.Names;

/// <summary>What a match says: the food, what was dropped and why, what a name means in doubt. Expected answers are common practice.</summary>
public sealed class NameMatchTests
{
    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    [Fact]
    public void EveryNameAndIdOfTheTableIsItself() => Assert.All(s_table.All, food =>
    {
        foreach (string name in food.Aliases.Select(alias => alias.Text).Append(food.Name).Append(food.Id))
        {
            NameMatch match = s_table.MatchName(name);
            Assert.Same(food, match.Ingredient);
            Assert.Equal("", match.Reason);
            Assert.Empty(match.Ignored);
            Assert.Empty(match.Preparation);
            Assert.Empty(match.Between);
            Assert.Empty(match.Suggestions);
        }
    });

    [Fact]
    public void WhatIsDroppedIsSaid()
    {
        NameMatch match = s_table.MatchName("Cold unsalted Butter, softened (organic), cut into cubes*");
        Assert.Equal("butter-unsalted", match.Ingredient?.Id);
        Assert.Equal(Packing.Softened, match.Packing);
        Assert.Equal(["Cold", "organic"], match.Ignored);
        Assert.Equal(["cut into cubes"], match.Preparation);
        Assert.Equal("Cold unsalted Butter, softened (organic), cut into cubes*", match.Text);
    }

    [Fact]
    public void OfTwoPackingsTheFirstCountsAndTheOtherIsKept()
    {
        NameMatch match = s_table.MatchName("walnuts, ground or chopped");
        Assert.Null(match.Packing); // either
        match = s_table.MatchName("plain flour, sifted, spooned");
        Assert.Equal(Packing.Sifted, match.Packing);
        Assert.Equal(["spooned"], match.Preparation);
    }

    [Theory]
    [InlineData("low-fat milk", "'low-fat' changes the food, and the table has none of that name.", "1 to 1.8 % fat")]
    [InlineData("3% milk", "'3%' changes the food, and the table has none of that name.", null)]
    [InlineData("low-fat greek yoghurt", "'low-fat' changes the food, and the table has none of that name.", null)]
    [InlineData("digestive biscuit crumbs", "No food of the table has 'digestive' in its name.", null)]
    [InlineData("butter water", "No food of the table is called 'butter water'.", null)]
    [InlineData("tbsp honey", "'tbsp' is a measure: it belongs to an amount, not to a name.", null)]
    [InlineData("", "There is no name.", null)]
    [InlineData(" \u00A0\t", "There is no name.", null)]
    [InlineData("**", "There is no name.", null)]
    [InlineData("milk/dark chocolate", "The words can be read as different foods.", null)]
    [InlineData("butter/eggplant", "No food of the table has 'eggplant' in its name.", null)]
    [InlineData("butter or truffle oil", "No food of the table has 'truffle' in its name.", null)]
    public void TheReasonIsASentence(string name, string reason, string? instead)
    {
        NameMatch match = s_table.MatchName(name);
        Assert.Null(match.Ingredient);
        Assert.True(match.Reason == reason || instead is not null && match.Reason.Contains(instead, StringComparison.Ordinal), match.Reason);
    }

    [Fact]
    public void ANameOfTwoFoodsSaysWhich()
    {
        NameMatch match = s_table.MatchName("butter or margarine, softened");
        Assert.Equal("It names more than one food: unsalted butter, salted block margarine.", match.Reason);
        Assert.Equal(["unsalted butter", "salted block margarine"], match.Between.Select(food => food.Name));
        Assert.Equal("It does not say which food: it is poured fondant in Europe and rolled fondant in American cake decorating.",
            s_table.MatchName("White Fondant icing (fondant)").Ingredient is null ? s_table.MatchName("fondant").Reason : s_table.MatchName("Fondant").Reason);
        // Two names of different foods, one in brackets.
        Assert.Equal(["double cream", "heavy cream"], s_table.MatchName("double (heavy) cream").Between.Select(food => food.Name));
    }

    [Theory]
    [InlineData("suger", "sugar", 1)]
    [InlineData("granulted sugar", "granulated sugar", 1)]
    [InlineData("cream of tarter", "cream of tartar", 1)]
    [InlineData("flower", "flour", 2)]
    [InlineData("dessicated coconut", "desiccated coconut", 2)]
    [InlineData("unsalted buter, softened", "unsalted butter, softened", 1)]
    [InlineData("vanila extarct", "vanilla extract", 2)]
    public void ASlipIsASuggestionAndTakenOnlyWhereTheCallerSaysSo(string name, string mended, int distance)
    {
        NameMatch match = s_table.MatchName(name);
        Assert.Null(match.Ingredient);
        Assert.Equal((mended, distance), (match.Suggestions[0].Name, match.Suggestions[0].Distance));
        Assert.Null(s_table.MatchName(name, distance - 1).Ingredient);
        NameMatch accepted = s_table.MatchName(name, distance);
        Assert.Same(match.Suggestions[0].Ingredient, accepted.Ingredient);
        Assert.Equal(distance, accepted.SpellingDistance);
        Assert.Equal(name, accepted.Text);
        Assert.Equal("", accepted.Reason);
    }

    [Fact]
    public void BadArgumentsAreRefused()
    {
        Assert.Throws<ArgumentNullException>("name", () => s_table.MatchName(null!));
        Assert.Throws<ArgumentOutOfRangeException>("acceptSpelling", () => s_table.MatchName("sugar", -1));
        Assert.Throws<ArgumentOutOfRangeException>("acceptSpelling", () => s_table.MatchName("sugar", 5));
    }

    // A comma turns the words round. Today's fault: "milk, chocolate" was milk chocolate.
    [Theory]
    [InlineData("milk, chocolate")]
    [InlineData("butter, cocoa, milk")]
    public void WhatStandsBeforeACommaIsTheFood(string name) => Assert.Null(s_table.MatchName(name).Ingredient);

    [Fact]
    public void NamesOfALayerStandBeforeWhatFollowsFromOthers()
    {
        IngredientTable table = s_table.LayerIngredients(new StringReader(
            "id,name,us_names,class,default_packing,source,kind,water_percent,sucrose_percent\n"
            + "fennmarsh-blend,Butter (salted),house blend!|organic honey,paste,packed,Fennmarsh Hall,measured,20,80\n")).Told(out _)!;
        foreach (string name in (string[])["Butter (salted)", "butter (SALTED)", "house blend!", "organic honey", "fennmarsh-blend"])
            Assert.Equal("fennmarsh-blend", table.MatchName(name).Ingredient?.Id);
        Assert.Equal("butter-salted", table.MatchName("salted butter").Ingredient?.Id);
        Assert.Equal("honey", table.MatchName("honey (fair trade)").Ingredient?.Id);
    }

    [Fact]
    public void AmericanNamesAreReadAsWell() =>
        Assert.Equal("sugar-icing", s_table.WithAmericanNames().MatchName("icing sugar, sifted").Ingredient?.Id);

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    public void EveryCultureReadsTheSame(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(culture);
            Assert.Equal("sugar-icing", s_table.MatchName("ICING SUGAR (SIFTED)").Ingredient?.Id);
            Assert.Equal("milk-whole", s_table.MatchName("3.25% MILK").Ingredient?.Id);
            Assert.Equal("milk-whole", s_table.MatchName("3,25 % milk").Ingredient?.Id);
            Assert.Equal("It names more than one food: honey, golden syrup.", s_table.MatchName("HONEY / GOLDEN SYRUP").Reason);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void ALongTextCostsNothing()
    {
        string[] texts = [new('(', 10_000_000), new string(' ', 5_000_000) + string.Concat(Enumerable.Repeat("cold ", 1_000_000)), string.Join("/", Enumerable.Repeat("or", 1_000_000))];
        s_table.MatchName("warm up");
        foreach (string text in texts)
        {
            NameMatch match = s_table.MatchName(text, 4);
            Assert.InRange(Allocated.Least(() => s_table.MatchName(text, 4), 5000), 0, 5000);
            Assert.Equal("The text is longer than a name.", match.Reason);
            Assert.Empty(match.Suggestions);
        }
    }

    // One place reads names: a formula, a problem in JSON and a table that is vetted match the same food, with the packing of the name.
    [Fact]
    public void FormulasAndTablesReadTheSameNames()
    {
        Confectio.Formulas.Formula formula = Kitchen.Metric.ParseFormula("icing", "100 g Sugar - granulated*\n2 cups caster (superfine) sugar, sifted");
        Assert.Equal(["sugar-granulated", "sugar-caster"], formula.Lines.Select(line => line.Ingredient.Id));
        TableVerdict verdict = Kitchen.UsCustomary.Vet("ingredient,measure,packing,grams\n\"brown sugar, firmly packed\",1 cup,,220\nfondant,1 cup,,300\nbrown sugar (packed),1 cup,loose,145\n");
        Assert.Equal((Packing.Packed, true), (verdict.Rows[0].Packing!.Value, verdict.Rows[0].PackingIsFromName));
        Assert.Contains("packed, as the name says", verdict.Rows[0].Explanation, StringComparison.Ordinal);
        Assert.Contains("poured fondant in Europe", verdict.Rows[1].Explanation, StringComparison.Ordinal);
        Assert.Equal((Packing.Loose, false), (verdict.Rows[2].Packing!.Value, verdict.Rows[2].PackingIsFromName));
        Assert.Contains("rolled fondant", Assert.Throws<FormatException>(() => Kitchen.Metric.ParseFormula("x", "100 g fondant")).Message, StringComparison.Ordinal);
    }

    // USDA Standard Reference 28: the food number is the oracle. What matches a description must be the food of that number; where our row was
    // made from another number, it has none.
    [Fact]
    public void DescriptionsOfTheStandardReferenceMatchOnlyTheirOwnFood()
    {
        (string Number, string Text)[] foods = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Oracles", "usda-sr", "usda-sr-composition.csv")).Skip(1)
            .Select(line => (line[..line.IndexOf(',')], line[(line.IndexOf(',') + 1)..]))
            .Select(pair => (pair.Item1, pair.Item2[0] == '"' ? pair.Item2[1..pair.Item2.IndexOf('"', 1)] : pair.Item2[..pair.Item2.IndexOf(',')]))];
        Assert.True(foods.Length >= 110);
        // Other numbers of the same food: a maple syrup by country, dried white without its form, flour by its vitamins and bleach.
        string[] same = ["19911", "01173", "20481", "20581"];
        Ingredient?[] matched = [.. foods.Select(food => s_table.MatchName(food.Text).Ingredient)];
        Assert.Empty(foods.Zip(matched).Where(pair => pair.Second?.StandardReferenceNumber is string number && number != pair.First.Number && !same.Contains(pair.First.Number))
            .Select(pair => $"{pair.First.Number} {pair.First.Text} is {pair.Second!.Id}"));
        Assert.True(matched.Count(food => food is not null) >= 75, matched.Count(food => food is not null).ToString(CultureInfo.InvariantCulture));
    }
}
