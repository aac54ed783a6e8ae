using Confectio.Formulas;
using Confectio.Ingredients;
using Xunit;

namespace Confectio.Tests.Formulas;

public sealed class FormulaPartTests
{
    private static readonly Ingredient s_butter = IngredientTable.BuiltIn.Get("unsalted butter"), s_sugar = IngredientTable.BuiltIn.Get("granulated sugar");

    [Fact]
    public void EveryWordReadsBackAndIsOneOnly()
    {
        Assert.Equal(FormulaPart.All.Count, FormulaPart.All.Select(part => part.Word).Distinct().Count());
        Assert.All(FormulaPart.All, part =>
        {
            Assert.True(FormulaPart.TryRead($" {part.Word.ToUpperInvariant()} ", out FormulaPart? read));
            Assert.Same(part, read);
            Assert.Equal(part.Word, part.Name.Replace(' ', '-'));
        });
        Assert.False(FormulaPart.TryRead("butter", out _));
        Assert.False(FormulaPart.TryRead("", out _));
    }

    [Fact]
    public void EveryConstituentHasAWord() => Assert.All(Enum.GetValues<Constituent>(), constituent => Assert.Contains(FormulaPart.Of(constituent), FormulaPart.All));

    [Fact]
    public void FractionsAreThoseOfTheComposition()
    {
        // USDA SR NDB 01145, g per 100 g: water 17.94, fat 81.11, protein 0.85; all of its fat is milk fat.
        Assert.Equal(0.1794, FormulaPart.Water.FractionIn(s_butter), 1e-12);
        Assert.Equal(0.8111, FormulaPart.Fat.FractionIn(s_butter), 1e-12);
        Assert.Equal(0.8111, FormulaPart.MilkFat.FractionIn(s_butter), 1e-12);
        Assert.Equal(1 - 0.1794, FormulaPart.Solids.FractionIn(s_butter), 1e-12);
        Assert.Equal(1 - 0.1794 - 0.8111, FormulaPart.SolidsNotFat.FractionIn(s_butter), 1e-12);
        Assert.Equal(0.1794 + 0.8111, FormulaPart.Of("wet and fat", Constituent.Water, Constituent.Fat).FractionIn(s_butter), 1e-12);
        Assert.Equal(1, FormulaPart.Everything.FractionIn(s_butter));
    }

    [Fact]
    public void WaterAlcoholAndSolidsAreEverythingInEveryIngredient() => Assert.All(IngredientTable.BuiltIn.All, ingredient => Assert.Equal(1,
        FormulaPart.Water.FractionIn(ingredient) + FormulaPart.Alcohol.FractionIn(ingredient) + FormulaPart.Solids.FractionIn(ingredient), 1e-12));

    [Fact]
    public void TheSugarsAreThoseOfTheComposition() => Assert.All(IngredientTable.BuiltIn.All, ingredient =>
        Assert.Equal(ingredient.Composition.Sugars, FormulaPart.Sugars.FractionIn(ingredient), 1e-15));

    [Fact]
    public void BoilingOffTakesFromEveryPartThatCountsWater()
    {
        Assert.All([FormulaPart.Everything, FormulaPart.Water, FormulaPart.WaterPhase, FormulaPart.Of("x", Constituent.Fat, Constituent.Water)],
            part => Assert.Equal(1, part.FractionOfBoiledOffWater));
        Assert.All([FormulaPart.Fat, FormulaPart.MilkFat, FormulaPart.Solids, FormulaPart.SolidsNotFat, FormulaPart.Sugars, FormulaPart.OfIngredient(s_butter)],
            part => Assert.Equal(0, part.FractionOfBoiledOffWater));
    }

    [Fact]
    public void PartsAreEqualWhenTheyCountTheSame()
    {
        Assert.Equal(FormulaPart.Fat, FormulaPart.FatPhase);
        Assert.Equal(FormulaPart.Fat, FormulaPart.Of("grease", Constituent.Fat, Constituent.Fat));
        Assert.Equal(FormulaPart.Fat.GetHashCode(), FormulaPart.FatPhase.GetHashCode());
        Assert.True(FormulaPart.Fat != FormulaPart.MilkFat);
        Assert.True(FormulaPart.Everything != FormulaPart.Solids);
        Assert.False(FormulaPart.Fat.Equals(null));
        Assert.Equal(FormulaPart.OfIngredients("a", s_butter, s_sugar), FormulaPart.OfIngredients("b", s_sugar, s_butter, s_sugar));
        Assert.Equal(FormulaPart.OfIngredients("a", s_butter, s_sugar).GetHashCode(), FormulaPart.OfIngredients("b", s_sugar, s_butter).GetHashCode());
        Assert.NotEqual(FormulaPart.OfIngredient(s_butter), FormulaPart.OfIngredient(s_sugar));
    }

    [Fact]
    public void IngredientsCountWhole()
    {
        FormulaPart part = FormulaPart.OfIngredient(s_butter);
        Assert.Equal("butter-unsalted", part.Word);
        Assert.Equal("unsalted butter", part.ToString());
        Assert.Equal(1, part.FractionIn(s_butter));
        Assert.Equal(0, part.FractionIn(s_sugar));
    }

    [Fact]
    public void APartNeedsANameAndSomethingToCount()
    {
        Assert.Throws<ArgumentException>("name", () => FormulaPart.Of(" ", Constituent.Fat));
        Assert.Throws<ArgumentException>("constituents", () => FormulaPart.Of("nothing"));
        Assert.Throws<ArgumentOutOfRangeException>("constituents", () => FormulaPart.Of("x", (Constituent)99));
        Assert.Throws<ArgumentOutOfRangeException>("constituent", () => FormulaPart.Of((Constituent)(-1)));
        Assert.Throws<ArgumentException>("ingredients", () => FormulaPart.OfIngredients("nothing"));
        Assert.Throws<ArgumentNullException>("ingredients", () => FormulaPart.OfIngredients("x", s_butter, null!));
    }
}
