using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

public sealed partial class FormulaProblem
{
    /// <summary>Asks for the grams of a part, which must be kept: the two flours together from 300 to 350 g, at least 120 g of fat.</summary>
    /// <param name="part">The part; of a group, <see cref="FormulaPart.OfIngredients"/>.</param>
    /// <param name="lowGrams">At least this much, g, from 0 to 1e12.</param>
    /// <param name="highGrams">At most this much, g, from <paramref name="lowGrams"/> to 1e12; infinity where there is no most.</param>
    /// <exception cref="ArgumentNullException"><paramref name="part"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="ArgumentException">None of the ingredients holds any, or there are 400 demands.</exception>
    public FormulaProblem WithMass(FormulaPart part, double lowGrams, double highGrams = double.PositiveInfinity)
    {
        MassEnds(part, lowGrams, highGrams);
        return With(new Demand.PartMass(part, lowGrams > 0 || highGrams == 0 ? lowGrams : double.NegativeInfinity, highGrams));
    }

    /// <summary>Asks for the grams of a part to be hit as well as possible: inside the range all places are equally good.</summary>
    /// <param name="part">The part.</param>
    /// <param name="lowGrams">The low end, g, from 0 to 1e12.</param>
    /// <param name="highGrams">The high end, g, from <paramref name="lowGrams"/> to 1e12; infinity where there is none.</param>
    /// <param name="toleranceGrams">
    /// The miss that counts as one, g, from 1e-6 to 1e12; a hundredth of what the problem makes unless stated, which weighs it as a share.
    /// </param>
    /// <param name="priority">From 1, the first, to 4.</param>
    /// <inheritdoc cref="WithMass" path="/exception"/>
    public FormulaProblem WithMassTarget(FormulaPart part, double lowGrams, double highGrams, double? toleranceGrams = null,
        int priority = 1)
    {
        MassEnds(part, lowGrams, highGrams);
        Guard.InRange(priority, 1, 4);
        double tolerance = toleranceGrams is double given ? Guard.InRange(given, 1e-6, MaximumGrams, nameof(toleranceGrams)) : UnitGrams / 100;
        return With(new Demand.PartMass(part, lowGrams, highGrams) { ToleranceGrams = tolerance, Priority = priority });
    }

    private void MassEnds(FormulaPart part, double lowGrams, double highGrams)
    {
        Guard.NotNull(part);
        Guard.InRange(lowGrams, 0, MaximumGrams);
        if (!double.IsPositiveInfinity(highGrams))
            Guard.InRange(highGrams, lowGrams, MaximumGrams);
        MustBeTouched(part, FormulaPart.Everything, nameof(part));
    }
}
