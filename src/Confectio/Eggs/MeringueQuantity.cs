namespace Confectio.Eggs;

/// <summary>What a figure of a meringue is about.</summary>
public enum MeringueQuantity
{
    /// <summary>Grams of sugar to a gram of white.</summary>
    SugarPerWhite,

    /// <summary>The temperature that the syrup is cooked to at sea level, °C.</summary>
    SyrupCelsius,

    /// <summary>The temperature that white and sugar are warmed to together, °C.</summary>
    MixCelsius,

    /// <summary>The volume of the foam of white alone over that of the liquid.</summary>
    FoamVolume,

    /// <summary>The density of the meringue, g/mL.</summary>
    FoamDensity,

    /// <summary>Cream of tartar in 100 g of white, g.</summary>
    AcidPercent,
}
