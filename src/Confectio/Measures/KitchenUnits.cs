namespace Confectio.Measures;

/// <summary>What kind of quantity a <see cref="KitchenUnit"/> measures.</summary>
internal static class KitchenUnits
{
    /// <summary>Whether the unit is a mass: gram, kilogram, ounce or pound.</summary>
    /// <param name="unit">The unit.</param>
    public static bool IsMass(this KitchenUnit unit) => unit is KitchenUnit.Gram or KitchenUnit.Kilogram or KitchenUnit.Ounce
        or KitchenUnit.Pound;

    /// <summary>Whether the unit is a volume, from millilitre to gallon.</summary>
    /// <param name="unit">The unit.</param>
    public static bool IsVolume(this KitchenUnit unit) => unit is KitchenUnit.Millilitre or KitchenUnit.Litre or KitchenUnit.Teaspoon
        or KitchenUnit.Dessertspoon or KitchenUnit.Tablespoon or KitchenUnit.FluidOunce or KitchenUnit.Cup or KitchenUnit.Pint
            or KitchenUnit.Quart
        or KitchenUnit.Gallon;

    /// <summary>Whether every measuring system has the same one: gram, kilogram, millilitre, litre.</summary>
    internal static bool IsMetric(this KitchenUnit unit) => unit is KitchenUnit.Gram or KitchenUnit.Kilogram or KitchenUnit.Millilitre
        or KitchenUnit.Litre;

    /// <summary>
    /// The short word the trade writes, such as <c>Tbsp</c>; <c>cup</c>, <c>pint</c>, <c>quart</c> and <c>gallon</c> are written out.
    /// </summary>
    /// <param name="unit">The unit.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="unit"/> is not a defined value.</exception>
    public static string ToWord(this KitchenUnit unit) => Guard.Defined(unit) switch
    {
        KitchenUnit.Gram => "g",
        KitchenUnit.Kilogram => "kg",
        KitchenUnit.Ounce => "oz",
        KitchenUnit.Pound => "lb",
        KitchenUnit.Millilitre => "mL",
        KitchenUnit.Litre => "L",
        KitchenUnit.Teaspoon => "tsp",
        KitchenUnit.Dessertspoon => "dsp",
        KitchenUnit.Tablespoon => "Tbsp",
        KitchenUnit.FluidOunce => "fl oz",
        KitchenUnit.Cup => "cup",
        KitchenUnit.Pint => "pint",
        KitchenUnit.Quart => "quart",
        KitchenUnit.Gallon => "gallon",
        _ => "piece",
    };
}
