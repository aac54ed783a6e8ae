namespace Confectio.Sugars;

/// <summary>Which activity of water a boiling point is computed with. Both are fits to measurements of sucrose solutions.</summary>
public enum BoilingModel
{
    /// <summary>
    /// Starzak and Peacock (1997): ln γ = Q/(R·T)·x²·(1 + a·x + b·x²), Q = −17 638 J/mol, a = −1.0038, b = −0.24653, with x the
    /// mole fraction of sucrose. 1197 measurements of 56 sets, to about 98 % and 150 °C. The default.
    /// </summary>
    StarzakPeacock,

    /// <summary>
    /// Starzak and Mathlouthi (2006): a Margules equation of four suffixes with a temperature polynomial. Its coefficients were written
    /// down from memory; they agree with the older equation within 0.2 K to 85 % and are 2 K lower at 95 %. Above 150 °C, where it
    /// was not fitted, its temperature polynomial stays what it is there.
    /// </summary>
    StarzakMathlouthi,
}
