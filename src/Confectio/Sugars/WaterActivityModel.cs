namespace Confectio.Sugars;

/// <summary>How the activity of water over a solution is worked out.</summary>
public enum WaterActivityModel
{
    /// <summary>
    /// The boiling model of Starzak and Peacock (1997), with Norrish's rule for mixtures: the default, at any temperature.
    /// </summary>
    StarzakPeacock,

    /// <summary>
    /// The boiling model of Starzak and Mathlouthi (2006), coefficients from memory, with Norrish's rule for mixtures; at any temperature.
    /// </summary>
    StarzakMathlouthi,

    /// <summary>Norrish (1966) with his rule for mixtures, a = x_w·exp(−(Σ √Kᵢ·xᵢ)²); the constants are those of 25 °C.</summary>
    Norrish,

    /// <summary>
    /// Ross (1975): the product of what each solute would give alone in all the water, each by Norrish; constants of 25 °C.
    /// </summary>
    Ross,

    /// <summary>Money and Born (1951), a rule of the trade: every mole of solute counts alike.</summary>
    MoneyBorn,

    /// <summary>Grover (1947), a rule of the trade: grams of solute counted by factors.</summary>
    Grover,
}
