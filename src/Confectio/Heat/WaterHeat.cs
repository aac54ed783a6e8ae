namespace Confectio.Heat;

/// <summary>Which of two printed constants the specific heat of water has in the equations of Choi and Okos.</summary>
public enum WaterHeat
{
    /// <summary>4.1762, as Choi and Okos (1986) are reprinted: 4.177 kJ/(kg·K) at 20 °C, as real water has within 0.2 %.</summary>
    ChoiOkos,

    /// <summary>4.1289, as ASHRAE Refrigeration (2006) prints it: 1.1 % lower.</summary>
    Ashrae,
}
