using Confectio.Ingredients;

namespace Confectio.Formulas;

/// <summary>What a problem may ask of a formula by its composition alone (<see cref="FormulaProperty"/>): its energy.</summary>
public static class FormulaProperties
{
    /// <summary>The energy of what is made, in kcal in 100 g (<see cref="Composition.KilocaloriesPerGram"/>).</summary>
    /// <remarks>
    /// With the factors of Regulation (EU) No 1169/2011, Annex XIV; from 0 to 900, with a usual tolerance of 5. Worked number: butter has 733.6.
    /// </remarks>
    public static FormulaProperty Energy { get; } = new EnergyOfAll("energy", "energy", "kcal in 100 g", 900, 5,
        composition => composition.KilocaloriesPerGram);

    /// <summary>The energy of what is made, in kJ in 100 g, summed with factors of its own (<see cref="Composition.KilojoulesPerGram"/>).</summary>
    /// <remarks>From 0 to 3700, with a usual tolerance of 20. Worked number: butter has 3016.5.</remarks>
    public static FormulaProperty EnergyKilojoules { get; } = new EnergyOfAll("energy-kilojoules", "energy", "kJ in 100 g", 3700, 20,
        composition => composition.KilojoulesPerGram);

    /// <summary>The kinds that problems in JSON may ask for.</summary>
    public static IReadOnlyList<FormulaPropertyKind> Kinds { get; } = [new(Energy), new(EnergyKilojoules)];

    private sealed class EnergyOfAll(string word, string name, string unit, double maximum, double usualTolerance, Func<Composition, double> perGram)
        : FormulaProperty.Fraction(word, name, unit, 0, maximum, usualTolerance)
    {
        internal override double BoiledOffWhole => 1;

        public override bool Equals(FormulaProperty? other) => base.Equals(other) && other.Word == Word;

        public override IReadOnlyList<string> CautionsOf(Formula formula)
        {
            Guard.NotNull(formula);
            return ["Energy by the factors of Regulation (EU) No 1169/2011, Annex XIV; what the sources of the ingredients leave over counts none."];
        }

        internal override double Part(Ingredient ingredient) => 100 * perGram(ingredient.Composition);

        internal override double Whole(Ingredient ingredient) => 1;

        internal override string? Lacking(IEnumerable<Ingredient> ingredients) =>
            ingredients.Any(food => perGram(food.Composition) > 0) ? null : "none of the ingredients has any";
    }
}
