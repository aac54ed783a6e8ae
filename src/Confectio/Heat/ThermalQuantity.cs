namespace Confectio.Heat;

/// <summary>What a thermal equation gives.</summary>
internal enum ThermalQuantity
{
    /// <summary>Specific heat, kJ/(kg·K).</summary>
    SpecificHeat,

    /// <summary>Density, kg/m³.</summary>
    Density,

    /// <summary>Thermal conductivity, W/(m·K).</summary>
    Conductivity,
}
