using Confectio.Formulas.Solving;

namespace Confectio.Labels;

/// <summary>
/// How far food may be off what its label declares in the European Union: the Commission's guidance of December 2012, Table 1, for foods without a claim. From memory, and guidance
/// to the controls and no licence: the declared figure is an average.
/// </summary>
/// <remarks>
/// In 100 g. Carbohydrate, sugars, protein, fibre: under 10 g ±2 g, to 40 g ±20 %, above ±8 g. Fat: under 10 g ±1.5 g, to 40 g ±20 %, above ±8 g. Saturates: under 4 g ±0.8 g, from there ±20 %.
/// Salt: under 1.25 g ±0.375 g, from there ±20 %. There is none for energy, which is a sum, and none here for polyols and starch, which were not recalled. Uncertainty of measurement and all the
/// shelf life are within it.
/// </remarks>
public static class LabelTolerance
{
    /// <summary>Where a figure was not read, what belongs beside it.</summary>
    public const string Caution = "Tolerances are of the Commission's guidance of December 2012, from memory; the authority of the place decides.";

    /// <summary>By how much food may be off a declared figure.</summary>
    /// <param name="nutrient">The nutrient.</param>
    /// <param name="declaredGrams">What is declared in 100 g, g, from 0 to 100.</param>
    /// <returns>Grams each way; <see langword="null"/> where there is none, as of energy. Worked numbers: 9.9 g of sugars ±2 g, 25 g of fat ±5 g, 64 g of carbohydrate ±8 g.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The nutrient is no defined value, or the figure is outside its range.</exception>
    public static double? Of(LabelNutrient nutrient, double declaredGrams)
    {
        Guard.Defined(nutrient);
        Guard.InRange(declaredGrams, 0, 100);
        return nutrient switch
        {
            LabelNutrient.Carbohydrate or LabelNutrient.Sugars or LabelNutrient.Protein or LabelNutrient.Fibre => By(2),
            LabelNutrient.Fat => By(1.5),
            LabelNutrient.Saturates => declaredGrams < 4 ? 0.8 : declaredGrams / 5,
            LabelNutrient.Salt => declaredGrams < 1.25 ? 0.375 : declaredGrams / 5,
            _ => null,
        };

        double By(double below10) => declaredGrams < 10 ? below10 : declaredGrams <= 40 ? declaredGrams / 5 : 8;
    }
}
