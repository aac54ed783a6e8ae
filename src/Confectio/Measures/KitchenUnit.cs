namespace Confectio.Measures;

/// <summary>What an amount is counted in. How much a cup or a spoon holds depends on the <see cref="MeasuringSystem"/>.</summary>
public enum KitchenUnit
{
    /// <summary>Gram. The unit of <see langword="default"/>.</summary>
    Gram,

    /// <summary>Kilogram.</summary>
    Kilogram,

    /// <summary>Avoirdupois ounce, a mass: "8 oz" is always a mass here and "8 fl oz" a volume.</summary>
    Ounce,

    /// <summary>Avoirdupois pound.</summary>
    Pound,

    /// <summary>Millilitre.</summary>
    Millilitre,

    /// <summary>Litre.</summary>
    Litre,

    /// <summary>Teaspoon.</summary>
    Teaspoon,

    /// <summary>Dessertspoon.</summary>
    Dessertspoon,

    /// <summary>Tablespoon.</summary>
    Tablespoon,

    /// <summary>Fluid ounce, a volume.</summary>
    FluidOunce,

    /// <summary>Cup.</summary>
    Cup,

    /// <summary>Pint.</summary>
    Pint,

    /// <summary>Quart.</summary>
    Quart,

    /// <summary>Gallon.</summary>
    Gallon,

    /// <summary>A counted piece, such as a stick of butter; its mass comes from the ingredient.</summary>
    Piece,
}
