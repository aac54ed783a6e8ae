namespace Confectio.Heat;

/// <summary>How much of the sucrose in something is crystals, which have three quarters of the specific heat of dissolved sugar.</summary>
public enum SugarState
{
    /// <summary>
    /// What its own water cannot hold at its temperature is crystals, by the solubility of sucrose alone. Granulated sugar is all crystals,
    /// the sugar of a chocolate nearly all, that of a fondant in great part, that of milk none.
    /// </summary>
    AsItsWaterHolds,

    /// <summary>
    /// All is dissolved, or counts as the carbohydrate of Choi and Okos: for boiled syrups, and to check printed figures.
    /// </summary>
    Dissolved,

    /// <summary>All is crystals.</summary>
    Crystals,
}
