namespace Confectio.Sugars;

/// <summary>What a figure of a sweetener is a figure of.</summary>
public enum SweetenerQuantity
{
    /// <summary>The glass transition of the dry substance, °C.</summary>
    GlassTransitionCelsius,

    /// <summary>
    /// The constant k of Gordon and Taylor with water, solids first and water second: 3 to 8. Texts that put the glass former second print
    /// its inverse, 4.7 as 0.21.
    /// </summary>
    GordonTaylorK,

    /// <summary>The constant K of Norrish, a_w = x_w·exp(−K·x_s²), with mole fractions, at 25 °C.</summary>
    NorrishK,

    /// <summary>What a saturated solution holds, without the water of the crystals, in per cent of its mass.</summary>
    SolubilityPercent,
}
