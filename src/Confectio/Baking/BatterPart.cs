namespace Confectio.Baking;

/// <summary>What of a cake an adjustment is about.</summary>
public enum BatterPart
{
    /// <summary>Baking powder and baking soda.</summary>
    Leavening,

    /// <summary>Dry sugar. Honey and syrups are not spoken of.</summary>
    Sugar,

    /// <summary>Water, milk and juice. Eggs are not spoken of.</summary>
    Liquid,

    /// <summary>The temperature of the oven.</summary>
    Oven,
}
