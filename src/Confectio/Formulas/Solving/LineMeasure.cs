using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Formulas.Solving;

/// <summary>Cups and spoons for a line of a formula, with the mass they stand for, which is not quite that of the line.</summary>
public sealed class LineMeasure
{
    // In cups nobody measures more closely; where no filling of a few tools comes that near, one that comes within 5 per cent is said.
    private static readonly double[] s_allowed = [0.02, 0.05];

    private const int MostFills = 6;

    private LineMeasure(Amount amount, double grams, Packing packing)
    {
        Amount = amount;
        Grams = grams;
        Packing = packing;
    }

    /// <summary>The cups and spoons.</summary>
    public Amount Amount { get; }

    /// <summary>What they hold of the ingredient, g: the likely mass of a measure that is filled in this way.</summary>
    public double Grams { get; }

    /// <summary>How they are filled: the usual way of the ingredient.</summary>
    public Packing Packing { get; }

    /// <summary>Cups and spoons that come within 5 per cent of a mass, in at most six fills of the usual tools.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="grams">The mass, g, from 0 to 1e12.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <returns>The measures; null where nobody weighed a cup of it, or nothing comes near enough.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public static LineMeasure? Of(Ingredient ingredient, double grams, MeasuringSystem system)
    {
        Guard.NotNull(ingredient);
        Guard.InRange(grams, 0, 1e12);
        Guard.NotNull(system);
        if (!ingredient.TryGetDensity(ingredient.DefaultPacking, out _))
            return null;
        Conversion conversion = Conversion.Of(ingredient, system);
        double millilitres = conversion.ToVolume(grams).Millilitres.Likely;
        if (millilitres is < 0.01 or > 1e6)
            return null;
        foreach (double allowed in s_allowed)
        {
            if (PracticalMeasure.Find(millilitres, MeasuringTools.Usual(system), allowed) is { Fills: <= MostFills } measure)
                return new LineMeasure(measure.Amount, conversion.ToMass(measure.Amount).Grams.Likely, conversion.Density.Packing);
        }
        return null;
    }

    /// <summary>The measures and what they hold: <c>1 1/2 cups, levelled = 300 g</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Amount}, {Packing.ToWord()} = {Demand.Figure(Grams, 3)} g");
}
