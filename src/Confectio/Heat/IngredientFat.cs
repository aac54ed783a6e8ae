using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Heat;

/// <summary>
/// Which melting curve the fat of an ingredient follows, its milk fat apart: that follows <see cref="SolidFatCurve.MilkFat"/> wherever it
/// is. What the trade knows of the ingredient, and common practice.
/// </summary>
internal sealed class IngredientFat
{
    private static readonly FrozenDictionary<string, IngredientFat> s_all = ReadBuiltIn();

    private IngredientFat(string ingredientId, SolidFatCurve curve, Provenance provenance)
    {
        IngredientId = ingredientId;
        Curve = curve;
        Provenance = provenance;
    }

    /// <summary>All of them, in the order of the ids.</summary>
    public static IReadOnlyList<IngredientFat> All { get; } = [.. s_all.Values.OrderBy(fat => fat.IngredientId, StringComparer.Ordinal)];

    /// <summary>The id of the ingredient.</summary>
    public string IngredientId { get; }

    /// <summary>The curve.</summary>
    public SolidFatCurve Curve { get; }

    /// <summary>Where it comes from, and anything odd.</summary>
    public Provenance Provenance { get; }

    /// <summary>The curve of the fat of an ingredient that is not milk fat, where one is known.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="fat">The curve and its source, or <see langword="null"/>.</param>
    /// <returns>Whether it is known. Egg, flour and most mixed products are not.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public static bool TryGet(Ingredient ingredient, [NotNullWhen(true)] out IngredientFat? fat) =>
        s_all.TryGetValue(Guard.NotNull(ingredient).Id, out fat);

    /// <summary>One line, such as <c>lard: lard</c>.</summary>
    public override string ToString() => $"{IngredientId}: {Curve}";

    private static FrozenDictionary<string, IngredientFat> ReadBuiltIn()
    {
        Dictionary<string, IngredientFat> all = new(StringComparer.Ordinal);
        EmbeddedTable.Read("ingredient_fats.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            string id = fields.Required("ingredient"), fat = fields.Required("fat");
            if (!SolidFatCurve.TryGet(fat, out SolidFatCurve? curve))
                fields.Problem("fat", $"{Excerpt.Of(fat)} has no curve");
            else if (!all.TryAdd(id, new IngredientFat(id, curve, fields.Provenance("source", "kind", "", fields.Word("note")))))
                fields.Problem("ingredient", $"{Excerpt.Of(id)} stands here twice");
        });
        return all.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
