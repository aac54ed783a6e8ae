using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>Tables of your own over the built-in one.</summary>
public sealed class LayerTests
{
    private const string Header = "id,name,us_names,other_names,class,default_packing,water_percent,fat_percent,sucrose_percent,starch_percent,allergens,source,kind\n";
    private const string WeightHeader = "ingredient,amount,system,packing,grams,low_grams,high_grams,samples,sd_grams,kind,source,locator,note\n";

    private static IngredientTable Foods(string rows, IngredientTable? under = null)
    {
        IngredientTable table = (under ?? IngredientTable.BuiltIn).LayerIngredients(new StringReader(Header + rows)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        return table;
    }

    private static IngredientTable Weights(string rows, IngredientTable? under = null)
    {
        IngredientTable table = (under ?? IngredientTable.BuiltIn).LayerWeights(new StringReader(WeightHeader + rows)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        return table;
    }

    [Fact]
    public void WhatIsOftenInAnIngredientIsReadAndNotRepeated()
    {
        const string header = "id,name,class,default_packing,water_percent,sucrose_percent,allergens,often_contains,source,kind\n";
        IngredientTable table = IngredientTable.BuiltIn.LayerIngredients(new StringReader(header + "a,a glaze,syrup,levelled,20,80,milk,soy|egg,mine,measured\n"
            + "b,b glaze,syrup,levelled,20,80,milk,milk,mine,measured\nc,c glaze,syrup,levelled,20,80,,lecithin,mine,measured\n")).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Equal([Allergen.Soy, Allergen.Egg], table.Get("a").OftenContains);
        Assert.Equal([(3, "often_contains"), (4, "often_contains")], problems.Select(problem => (problem.Line, problem.Column)));
        Assert.False(table.TryGet("b", out _));
        Assert.False(table.TryGet("c", out _));
    }

    [Fact]
    public void ANewIngredientIsAddedAndFoundByAllItsNames()
    {
        IngredientTable table = Foods("house-glaze,house glaze,the shiny stuff|Gläze,,syrup,levelled,20,,80,,milk|tree-nut:almond,my notebook,measured\n");
        Ingredient glaze = table.Get("THE SHINY STUFF");
        Assert.Same(glaze, table.Get("glaze"));
        Assert.Equal(IngredientTable.BuiltIn.All.Count + 1, table.All.Count);
        Assert.Equal([Allergen.Milk, Allergen.Almond], glaze.Allergens);
        Assert.Equal(0.8, glaze.Composition[Constituent.Sucrose]);
        Assert.Equal(0, glaze.Composition[Constituent.Fat]);
        Assert.Equal("my notebook", glaze.CompositionProvenance.Source.ShortName);
        Assert.Empty(glaze.Densities);
        Assert.Contains("none is known in any packing", Assert.Throws<ArgumentException>(() => glaze.Density(Packing.Levelled)).Message, StringComparison.Ordinal);
        Assert.False(IngredientTable.BuiltIn.TryGet("house-glaze", out _)); // the table below has not changed
    }

    [Fact]
    public void AKnownIdIsReplacedAndKeepsItsWeights()
    {
        Ingredient butter = Foods("butter-unsalted,my butter,,,fat,softened,16,84,,,,my notebook,measured\n").Get("butter-unsalted");
        Assert.Equal("my butter", butter.Name);
        Assert.Equal(0.84, butter.Composition[Constituent.Fat]);
        Assert.Equal(Packing.Softened, butter.DefaultPacking);
        Assert.Equal(IngredientTable.BuiltIn.Get("butter-unsalted").Weights, butter.Weights);
    }

    [Theory]
    [InlineData("42", 42.0)]
    [InlineData("38.5", 38.5)]
    [InlineData("0.1", 0.1)]
    [InlineData("100", 100.0)]
    [InlineData("", null)]
    public void ADextroseEquivalentIsRead(string field, double? equivalent)
    {
        IngredientTable table = IngredientTable.BuiltIn.LayerIngredients(new StringReader(
            $"id,name,class,default_packing,water_percent,higher_saccharides_percent,Dextrose_Equivalent,source,kind\nhouse-syrup,house syrup,syrup,levelled,20,80,{field},own,measured\n")).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        Assert.Equal(equivalent, table.Get("house-syrup").DextroseEquivalent);
    }

    [Fact]
    public void WithoutTheColumnThereIsNoDextroseEquivalentNotEvenThatOfTheTableBelow()
    {
        IngredientTable table = Foods("syrup-glucose-de42,house glucose,,,syrup,levelled,20,,80,,,own,measured\n");
        Assert.Null(table.Get("syrup-glucose-de42").DextroseEquivalent); // the row replaces the whole of the one below
        Assert.Equal(42, IngredientTable.BuiltIn.Get("syrup-glucose-de42").DextroseEquivalent);
        Assert.Equal(36, table.Get("syrup-glucose-de36").DextroseEquivalent);
    }

    [Fact]
    public void TheSameIngredientReplacedKeepsTheCountOfAll() =>
        Assert.Equal(IngredientTable.BuiltIn.All.Count, Foods("butter-unsalted,my butter,,,fat,packed,16,84,,,,my notebook,measured\n").All.Count);

    [Fact]
    public void ANameOfTheLayerStandsBeforeThatOfTheTableBelow() =>
        Assert.Equal("house-sugar", Foods("house-sugar,house sugar,powdered sugar,,powder,sifted,,,100,,,own,measured\n").Get("powdered sugar").Id);

    [Fact]
    public void TheEmptyTableCanBeLayeredToo()
    {
        Assert.Empty(IngredientTable.Empty.All);
        Assert.Equal("only-one", Assert.Single(Foods("only-one,only one,,,liquid,levelled,100,,,,,own,measured\n", IngredientTable.Empty).All).Id);
    }

    [Fact]
    public void WeightsReplaceThoseOfTheirPackingOnly()
    {
        IngredientTable below = IngredientTable.BuiltIn, table = Weights("sugar-icing,1 cup,metric,sifted,99,,,,,measured,own scale,,\n");
        Ingredient before = below.Get("icing sugar"), after = table.Get("icing sugar");
        WeightFact only = Assert.Single(after.Density(Packing.Sifted).Facts);
        Assert.Equal(99, only.Grams.Likely);
        Assert.Equal(99.0 / 250, after.Density(Packing.Sifted).GramsPerMillilitre.Likely, 1e-15);
        Assert.Equal(before.Density(Packing.Spooned).Facts, after.Density(Packing.Spooned).Facts);
        Assert.Same(below.Get("water"), table.Get("water"));
    }

    [Fact]
    public void WeightsReplaceThoseOfTheirPieceOnly()
    {
        Ingredient butter = Weights("butter-unsalted,1 stick,,,125,,,,,measured,own scale,,\n").Get("butter-unsalted");
        Assert.Equal(125, butter.Piece("stick").Grams.Likely);
        Assert.Equal(5, butter.Piece("pat").Grams.Likely);
        Assert.Equal(IngredientTable.BuiltIn.Get("butter-unsalted").Density(Packing.Packed).Facts, butter.Density(Packing.Packed).Facts);
    }

    [Fact]
    public void AWeightOfManyPiecesIsSharedOut() =>
        Assert.Equal(new Spread(9.5, 10, 10.5), Weights("walnuts,12 pieces,,,120,114,126,,,measured,own scale,,\n").Get("walnuts").Piece("piece").Grams);

    [Fact]
    public void AFigureKeepsItsRangeSamplesAndLocator()
    {
        WeightFact fact = Assert.Single(Weights("water,1/2 cup,us-customary,whipped,118.0,117,119,3,0.4,measured,usda-sr,page 7,cold\n")
            .Get("water").Density(Packing.Whipped).Facts);
        Assert.Equal(new Spread(117, 118, 119), fact.Grams);
        Assert.Equal((3, 0.4, 0.05), (fact.Samples, fact.StandardDeviationGrams, fact.RoundingHalfUnit));
        Assert.Same(Bibliography.Get("usda-sr"), fact.Provenance.Source);
        Assert.Equal(("page 7", "cold"), (fact.Provenance.Locator, fact.Provenance.Note));
        Assert.Equal("1/2 cup whipped = 118 g, USDA SR28, page 7 (measured)", fact.ToString());
    }

    [Theory]
    [InlineData("120", 0.5)]
    [InlineData("120.0", 0.05)]
    [InlineData("4.25", 0.005)]
    public void TheLastPrintedDigitIsTheRounding(string grams, double half) =>
        Assert.Equal(half, Weights($"water,1 cup,us-customary,whipped,{grams},,,,,measured,own,,\n").Get("water").Density(Packing.Whipped).Facts[0].RoundingHalfUnit, 1e-15);

    [Fact]
    public void WithoutASourceItsWeightsAreGoneAndTheOthersStay()
    {
        IngredientTable table = IngredientTable.BuiltIn.WithoutWeightsFrom("USDA-SR");
        Assert.DoesNotContain(table.All.SelectMany(food => food.Weights), fact => fact.Provenance.Source.Key == "usda-sr");
        Assert.Equal(IngredientTable.BuiltIn.All.SelectMany(food => food.Weights).Count(fact => fact.Provenance.Source.Key != "usda-sr"),
            table.All.Sum(food => food.Weights.Count));
        Assert.Equal(187 / 236.5882365, table.Get("white shortening").Density(Packing.Packed).GramsPerMillilitre.Likely, 1e-12);
        Assert.Empty(table.Get("cream of tartar").Densities); // nobody else weighed it
        Assert.Equal(IngredientTable.BuiltIn.All.Count, table.All.Count);
    }

    [Fact]
    public void WithoutAnUnknownSourceNothingIsGone()
    {
        Assert.Equal(IngredientTable.BuiltIn.All.Sum(food => food.Weights.Count), IngredientTable.BuiltIn.WithoutWeightsFrom("nobody").All.Sum(food => food.Weights.Count));
        Assert.Throws<ArgumentNullException>("key", () => IngredientTable.BuiltIn.WithoutWeightsFrom(null!));
    }
}
