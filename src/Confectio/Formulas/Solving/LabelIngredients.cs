using System.Diagnostics.CodeAnalysis;
using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>Foods made of their labels, as members of <see cref="Ingredient"/>.</summary>
[SuppressMessage("Naming", "CA1708", Justification = "Extension blocks have no names that could be taken for one another.")]
public static class LabelIngredients
{
    extension(Ingredient)
    {
        /// <summary>A food made of its nutrition panel alone; what the panel does not say is said to be missing.</summary>
        /// <remarks>
        /// <see cref="FoodLabel.Of(string, NutritionPanel, LabelOptions?)"/> does it, and has the remarks.
        /// Caution: without a list of ingredients no allergen is known. The packet wins.
        /// </remarks>
        /// <param name="name">What to call it.</param>
        /// <param name="panel">The panel.</param>
        /// <param name="options">How; <see langword="null"/> for the usual.</param>
        /// <returns>The food.</returns>
        /// <exception cref="ArgumentNullException">The name or the panel is null.</exception>
        /// <exception cref="ArgumentException">The name makes no id, or the figures contradict each other.</exception>
        public static Ingredient FromLabel(string name, NutritionPanel panel, LabelOptions? options = null) =>
            FoodLabel.Of(name, panel, options).Ingredient;

        /// <summary>A food made of its nutrition panel and its list of ingredients.</summary>
        /// <remarks>
        /// <see cref="FoodLabel.Of(string, NutritionPanel, string, IngredientTable, LabelOptions?)"/> does it, and has the remarks.
        /// Caution: allergens are read from English words. The packet wins.
        /// </remarks>
        /// <param name="name">What to call it.</param>
        /// <param name="panel">The panel.</param>
        /// <param name="ingredientList">The list as printed, with what it says of allergens.</param>
        /// <param name="table">The foods of which the list is made.</param>
        /// <param name="options">How; <see langword="null"/> for the usual.</param>
        /// <returns>The food.</returns>
        /// <exception cref="ArgumentNullException">An argument is null.</exception>
        /// <exception cref="ArgumentException">
        /// The name makes no id, the list has no ingredient, or the figures contradict each other.
        /// </exception>
        public static Ingredient FromLabel(string name, NutritionPanel panel, string ingredientList, IngredientTable table,
            LabelOptions? options = null) => FoodLabel.Of(name, panel, ingredientList, table, options).Ingredient;
    }
}
