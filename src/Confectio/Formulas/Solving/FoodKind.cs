using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>A kind of food of which a problem may choose among those of a table, told by the composition and not by the name.</summary>
public enum FoodKind
{
    /// <summary>Fats that are spooned or cut: at least 75 % fat, measured as a fat.</summary>
    Fats,

    /// <summary>Oils that pour: liquids of at least 99 % fat.</summary>
    Oils,

    /// <summary>Dry sugars: crystals or powders of at least 90 % sugars.</summary>
    Sugars,

    /// <summary>Syrups: at least half sugars and higher saccharides, with water.</summary>
    Syrups,

    /// <summary>What is drunk: liquids of at least 75 % water, without alcohol and at most 20 % fat.</summary>
    Drinks,
}

/// <summary>Which foods are of a kind.</summary>
internal static class FoodKinds
{
    private const double MostlyFat = 0.75, AllFat = 0.99, AllSugars = 0.9, HalfSugars = 0.5, Watery = 0.75, FatOfADrink = 0.2;

    public static bool IsOf(FoodKind kind, Ingredient food)
    {
        Composition made = food.Composition;
        return kind switch
        {
            FoodKind.Fats => food.Class == IngredientClass.Fat && made[Constituent.Fat] >= MostlyFat,
            FoodKind.Oils => food.Class == IngredientClass.Liquid && made[Constituent.Fat] >= AllFat,
            FoodKind.Sugars => food.Class is IngredientClass.Crystal or IngredientClass.Powder && made.Sugars >= AllSugars,
            FoodKind.Syrups => food.Class == IngredientClass.Syrup && made.Sugars + made[Constituent.HigherSaccharides] >= HalfSugars,
            FoodKind.Drinks => food.Class == IngredientClass.Liquid && made[Constituent.Water] >= Watery && made[Constituent.Fat] <= FatOfADrink
                && made[Constituent.Alcohol] == 0,
            _ => false,
        };
    }
}
