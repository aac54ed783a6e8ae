using Confectio.Ingredients;

namespace Confectio.Sugars;

/// <summary>How heavy the molecules above maltose in a glucose syrup are.</summary>
internal static class HigherSaccharides
{
    // Moles of reducing ends in a gram of dry solids of 1 DE: dextrose itself is 100.
    private static readonly double s_molesPerEquivalent = 1 / (100 * Solutes.MonosaccharideMolarMass);

    /// <summary>
    /// The mean molar mass of the saccharides above maltose, g/mol, from the dextrose equivalent: every molecule has one reducing end,
    /// so that a gram of dry solids has DE/18 015.6 moles, and what glucose and maltose do not take is left to the rest of the mass.
    /// </summary>
    /// <param name="dextroseEquivalent">DE, from 1 to 99.</param>
    /// <param name="glucose">The share of glucose in the dry solids, from 0 to 1.</param>
    /// <param name="maltose">The share of maltose in the dry solids, from 0 to 1 less the glucose.</param>
    /// <returns>Grams per mole. Worked number: DE 42 with 19 % glucose and 14 % maltose gives 772.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <exception cref="ArgumentException">
    /// The numbers do not go together: nothing is left for the rest, or it would be lighter than a trisaccharide or heavier than 20 000
    /// g/mol.
    /// </exception>
    public static double MolarMass(double dextroseEquivalent, double glucose, double maltose)
    {
        Guard.InRange(dextroseEquivalent, 1, 99);
        Guard.InRange(glucose, 0, 1);
        Guard.InRange(maltose, 0, 1 - glucose);
        double mass = (1 - glucose - maltose)
            / (dextroseEquivalent * s_molesPerEquivalent - glucose / Solutes.MonosaccharideMolarMass - maltose / Solutes.SucroseMolarMass);
        return IsPossible(mass) ? mass
            : throw new ArgumentException($"{nameof(dextroseEquivalent)}, {nameof(glucose)} and {nameof(maltose)} do not go together: "
                + "the saccharides above maltose would not be from 504 to 20000 g/mol.", nameof(dextroseEquivalent));
    }

    /// <summary>
    /// The same of an ingredient, whose dry solids may hold more than glucose syrup: fructose and lactose reduce too, sucrose and salt do
    /// not.
    /// The usual one where its equivalent is not known, or does not go with its sugars.
    /// </summary>
    internal static double MolarMass(Ingredient ingredient)
    {
        Composition composition = ingredient.Composition;
        double higher = composition[Constituent.HigherSaccharides];
        if (ingredient.DextroseEquivalent is not double equivalent || higher <= 0)
            return Solutes.UsualHigherMolarMass;
        double ends = (1 - composition[Constituent.Water]) * equivalent * s_molesPerEquivalent
            - (composition[Constituent.Glucose] + composition[Constituent.Fructose]) / Solutes.MonosaccharideMolarMass
            - (composition[Constituent.Maltose] + composition[Constituent.Lactose]) / Solutes.SucroseMolarMass;
        return IsPossible(higher / ends) ? higher / ends : Solutes.UsualHigherMolarMass;
    }

    private static bool IsPossible(double molarMass) => molarMass >= Solutes.LowestHigherMolarMass
        && molarMass <= Solutes.HighestHigherMolarMass;
}
