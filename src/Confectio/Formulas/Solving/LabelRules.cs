namespace Confectio.Formulas.Solving;

/// <summary>By whose rules a nutrition panel was printed: what its figures mean, how they were rounded, how far the food may be off.</summary>
public enum LabelRules
{
    /// <summary>
    /// Regulation (EU) No 1169/2011: carbohydrate without fibre, salt, usually per 100 g; rounded as the Commission's guidance of December
    /// 2012 has it.
    /// </summary>
    EuropeanUnion,

    /// <summary>21 CFR 101.9: total carbohydrate with fibre, sodium, per serving; rounded as its paragraph (c) has it.</summary>
    UnitedStates,
}
