using Confectio.Ingredients;

namespace Confectio.Heat;

/// <summary>
/// Which melting curve the fat of every ingredient follows: the built-in ones, and those of your own on top. It never changes; every
/// change makes a new one.
/// </summary>
/// <remarks>
/// Milk fat follows <see cref="SolidFatCurve.MilkFat"/> wherever it is, other fat that of its kind: lard, cocoa butter, palm, liquid oil.
/// Of egg, flour and most mixed products none is known, and none is taken. Worked example:
/// <c>FatCurves.BuiltIn.WithMilkFat(SolidFatCurve.Get("milk-fat-winter"))</c> is for the butter of winter.
/// </remarks>
public sealed class FatCurves
{
    private readonly SolidFatCurve _milkFat;
    private readonly Dictionary<string, SolidFatCurve> _own; // by the id of the ingredient

    private FatCurves(SolidFatCurve milkFat, Dictionary<string, SolidFatCurve> own)
    {
        _milkFat = milkFat;
        _own = own;
    }

    /// <summary>The built-in ones.</summary>
    public static FatCurves BuiltIn { get; } = new(SolidFatCurve.MilkFat, []);

    /// <summary>The same with another milk fat, such as the soft one of summer.</summary>
    /// <param name="curve">The curve of the milk fat of all ingredients.</param>
    /// <exception cref="ArgumentNullException"><paramref name="curve"/> is null.</exception>
    public FatCurves WithMilkFat(SolidFatCurve curve) => new(Guard.NotNull(curve), _own);

    /// <summary>The same with a curve for one ingredient, which all of its fat follows: one that you measured.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="curve">The curve of its fat.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public FatCurves With(Ingredient ingredient, SolidFatCurve curve) =>
        new(_milkFat, new Dictionary<string, SolidFatCurve>(_own, StringComparer.Ordinal)
        {
            [Guard.NotNull(ingredient).Id] = Guard.NotNull(curve),
        });

    /// <summary>Which milk fat is meant, and which ingredients have a curve of their own: <c>milk-fat; lard as Fennmarsh lard</c>.</summary>
    public override string ToString() => string.Join("; ", _own.OrderBy(fat => fat.Key, StringComparer.Ordinal)
        .Select(fat => $"{fat.Key} as {fat.Value.Key}").Prepend(_milkFat.Key));

    /// <summary>The fats in a gram of an ingredient; no curve where none is known.</summary>
    internal IEnumerable<(SolidFatCurve? Curve, double PerGram)> Of(Ingredient ingredient)
    {
        double fat = ingredient.Composition[Constituent.Fat], milkFat = ingredient.Composition.MilkFat;
        if (_own.TryGetValue(ingredient.Id, out SolidFatCurve? own))
        {
            if (fat > 0)
                yield return (own, fat);
            yield break;
        }
        if (milkFat > 0)
            yield return (_milkFat, milkFat);
        if (fat > milkFat)
            yield return (IngredientFat.TryGet(ingredient, out IngredientFat? known) ? known.Curve : null, fat - milkFat);
    }
}
