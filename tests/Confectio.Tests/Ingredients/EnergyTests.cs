using Confectio.Ingredients;
using Confectio.Text;
using Xunit;

namespace Confectio.Tests.Ingredients;

/// <summary>Energy by the factors of Regulation (EU) No 1169/2011, Annex XIV; expected values are decimal arithmetic.</summary>
public sealed class EnergyTests
{
    // kJ/g and kcal/g of Annex XIV, written out here once more, constituent by constituent.
    public static TheoryData<Constituent, string, double, double> Factors => new()
    {
        { Constituent.Water, "water", 0, 0 },
        { Constituent.Fat, "fat", 37, 9 },
        { Constituent.Protein, "protein", 17, 4 },
        { Constituent.Sucrose, "sucrose", 17, 4 },
        { Constituent.Glucose, "glucose", 17, 4 },
        { Constituent.Fructose, "fructose", 17, 4 },
        { Constituent.Lactose, "lactose", 17, 4 },
        { Constituent.Maltose, "maltose", 17, 4 },
        { Constituent.OtherSugars, "other_sugars", 17, 4 },
        { Constituent.HigherSaccharides, "higher_saccharides", 17, 4 },
        { Constituent.Starch, "starch", 17, 4 },
        { Constituent.Fibre, "fibre", 8, 2 },
        { Constituent.Polyols, "polyols", 10, 2.4 },
        { Constituent.Glycerol, "glycerol", 10, 2.4 }, // three hydroxyl groups: a polyol by Annex I
        { Constituent.Alcohol, "alcohol", 29, 7 },
        { Constituent.Acids, "acids", 13, 3 },
        { Constituent.Salt, "salt", 0, 0 },
        { Constituent.OtherAsh, "other_ash", 0, 0 },
        { Constituent.Other, "other", 0, 0 },
    };

    private static Composition Of(string columns, string percents)
    {
        string text = $"id,name,class,default_packing,source,kind,{columns}\nfood,food,paste,levelled,own,measured,{percents}\n";
        IngredientTable table = IngredientTable.Empty.LayerIngredients(new StringReader(text)).Told(out IReadOnlyList<Problem> problems)!;
        Assert.Empty(problems);
        return table.Get("food").Composition;
    }

    [Theory]
    [MemberData(nameof(Factors))]
    public void APureConstituentHasItsFactor(Constituent constituent, string column, double kilojoules, double kilocalories)
    {
        Composition pure = Of(column + "_percent", "100");
        Assert.Equal(1, pure[constituent]);
        Assert.Equal((kilojoules, kilocalories), (pure.KilojoulesPerGram, pure.KilocaloriesPerGram));
    }

    [Fact]
    public void EveryConstituentHasAFactor() => Assert.Equal(Enum.GetValues<Constituent>(), Factors.Select(row => row.Data.Item1));

    [Theory]
    // Butter: 81.11 x 37 + 0.85 x 17 + 0.06 x 17 = 3016.54 kJ and 81.11 x 9 + 0.91 x 4 = 733.63 kcal in 100 g.
    [InlineData("water_percent,fat_percent,protein_percent,lactose_percent,other_ash_percent", "17.94,81.11,0.85,0.06,0.04", 30.1654, 7.3363)]
    // A dark ganache-like mix: 30 x 37 + 5 x 17 + 40 x 17 + 8 x 8 = 1939 kJ and 30 x 9 + 5 x 4 + 40 x 4 + 8 x 2 = 466 kcal.
    [InlineData("fat_percent,protein_percent,sucrose_percent,fibre_percent,water_percent", "30,5,40,8,17", 19.39, 4.66)]
    // A liqueur jelly: 50 x 17 + 12 x 29 + 2 x 13 + 6 x 10 + 4 x 10 = 1324 kJ and 50 x 4 + 12 x 7 + 2 x 3 + 10 x 2.4 = 314 kcal.
    [InlineData("glucose_percent,alcohol_percent,acids_percent,polyols_percent,glycerol_percent,water_percent", "50,12,2,6,4,26", 13.24, 3.14)]
    public void EnergyIsTheSumOfItsParts(string columns, string percents, double kilojoules, double kilocalories)
    {
        Composition mix = Of(columns, percents);
        // Five sums of rounded products: a few units in the last place.
        Assert.Equal(kilojoules, mix.KilojoulesPerGram, 1e-13);
        Assert.Equal(kilocalories, mix.KilocaloriesPerGram, 1e-13);
    }

    [Fact]
    public void TheWorkedNumberOfTheDocumentationHolds()
    {
        Composition butter = IngredientTable.BuiltIn.Get("unsalted butter").Composition;
        Assert.Equal((30.165, 7.336), (Math.Round(butter.KilojoulesPerGram, 3), Math.Round(butter.KilocaloriesPerGram, 3)));
    }

    [Fact]
    public void KilocaloriesAreNotConvertedKilojoules() => Assert.All(IngredientTable.BuiltIn.All, food =>
    {
        // The factors of Annex XIV are rounded: their ratios run from 4 (fibre) to 4.34 (organic acids), never 4.184 for all.
        double kilocalories = food.Composition.KilocaloriesPerGram;
        Assert.InRange(food.Composition.KilojoulesPerGram, 4 * kilocalories - 1e-12, 13.0 / 3 * kilocalories + 1e-12);
    });

    [Fact]
    public void ErythritolCountsAsAnyPolyolAndItsNoteSaysSo()
    {
        Ingredient erythritol = IngredientTable.BuiltIn.Get("erythritol");
        Assert.Equal(10, erythritol.Composition.KilojoulesPerGram, 1e-12); // the pure substance; the regulation counts 0
        Assert.Contains("1169/2011 counts none for erythritol", erythritol.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSourceIsTheRegulation() => Assert.Contains("Annex XIV", Composition.EnergySource.Citation, StringComparison.Ordinal);
}
