using Confectio.Ingredients;

namespace Confectio.Publishing;

/// <summary>A food of a chart, and how the measure is filled with it.</summary>
public sealed class ChartFood
{
    private ChartFood(Ingredient ingredient, Packing packing)
    {
        Ingredient = ingredient;
        Packing = packing;
    }

    /// <summary>The food.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>How the measure is filled.</summary>
    public Packing Packing { get; }

    /// <summary>A food in a packing.</summary>
    /// <param name="ingredient">The food.</param>
    /// <param name="packing">How the measure is filled; <see langword="null"/> for its usual packing, which the chart then states.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The packing is no defined value.</exception>
    public static ChartFood Of(Ingredient ingredient, Packing? packing = null) => new(Guard.NotNull(ingredient),
        packing is Packing stated ? Guard.Defined(stated, nameof(packing)) : ingredient.DefaultPacking);

    /// <summary>The food in every packing in which it was weighed; none where it never was.</summary>
    /// <param name="ingredient">The food.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public static IReadOnlyList<ChartFood> All(Ingredient ingredient) => [.. Guard.NotNull(ingredient).Densities.Select(density => Of(ingredient, density.Packing))];

    /// <summary>The food and its packing, such as <c>icing sugar, sifted</c>.</summary>
    public override string ToString() => $"{Ingredient.Name}, {Packing.ToWord()}";
}
