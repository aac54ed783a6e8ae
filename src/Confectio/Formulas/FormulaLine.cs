using System.Globalization;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Sources;

namespace Confectio.Formulas;

/// <summary>
/// One line of a formula: so many grams of an ingredient, and perhaps the cups, spoons or pieces in which they are measured.
/// </summary>
/// <remarks>
/// A line of grams alone is weighed, and its mass is a decision, so it is exact. A line with an amount is measured: its grams are the
/// likely ones with how far a kitchen may be from them.
/// </remarks>
public sealed class FormulaLine
{
    private const double MostGrams = 1e12;

    private FormulaLine(Ingredient ingredient, Spread grams, Amount? asWritten, Packing? packing, MeasuringSystem? system,
        ConvertedMass? measured)
    {
        Ingredient = ingredient;
        Grams = grams;
        AsWritten = asWritten;
        Packing = packing;
        MeasuringSystem = system;
        Measured = measured;
    }

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>
    /// The mass in grams, from 0 to 1e12: exact where the line is weighed, and as sure as the measure where it is measured.
    /// </summary>
    public Spread Grams { get; }

    /// <summary>The amount as it was written; <see langword="null"/> where the line is weighed.</summary>
    public Amount? AsWritten { get; }

    /// <summary>The packing that was stated; <see langword="null"/> where none was.</summary>
    public Packing? Packing { get; }

    /// <summary>Whose cups and spoons the amount is in; <see langword="null"/> where the line is weighed.</summary>
    public MeasuringSystem? MeasuringSystem { get; }

    /// <summary>
    /// The mass that the amount was turned into, with the conversion, its sources and its cautions; <see langword="null"/> where the
    /// line is weighed. Its likely mass is <see cref="Grams"/>.
    /// </summary>
    public ConvertedMass? Measured { get; }

    /// <summary>A line that is weighed.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="grams">The mass in grams, from 0 to 1e12.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public static FormulaLine Of(Ingredient ingredient, double grams) =>
        new(Guard.NotNull(ingredient), Spread.Exactly(Guard.InRange(grams, 0, MostGrams)), null, null, null, null);

    /// <summary>
    /// A line that is measured: a volume becomes grams through the density, pieces through what a piece weighs, and a mass is one
    /// already. A range such as 2-3 tsp counts with its middle.
    /// </summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="amount">The amount, at most 1e12 g.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="packing">How a volume is filled; <see langword="null"/> for the ingredient's usual packing.</param>
    /// <returns>The line. Worked number: 1 1/2 US cups of sifted icing sugar is 146.2 g, 129.6 to 164.9 g.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> or <paramref name="system"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The packing is not a defined value, or the amount is above 1e12 g.</exception>
    /// <exception cref="ArgumentException">
    /// No density is known in this packing, or no weight of this piece, or the system lacks the unit.
    /// </exception>
    public static FormulaLine Of(Ingredient ingredient, Amount amount, MeasuringSystem system, Packing? packing = null)
    {
        ConvertedMass measured = Measure(ingredient, amount, system, packing);
        if (!(measured.Grams.High <= MostGrams))
            throw new ArgumentOutOfRangeException(nameof(amount), amount, $"{nameof(amount)} was {amount}; it must be from 0 to 1E+12 g.");
        return new FormulaLine(ingredient, measured.Grams, amount, packing, system, measured);
    }

    /// <summary>A line that is measured, where the formula says for itself what the amount weighs: 1 stick, 113.4 g.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <param name="grams">The likely mass in grams, from 0 to 1e12.</param>
    /// <param name="amount">The amount. The spread is that of its conversion, in proportion to the grams.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="packing">How a volume is filled; <see langword="null"/> for the ingredient's usual packing.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> or <paramref name="system"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The grams are outside their range, or the packing is not a defined value.</exception>
    /// <exception cref="ArgumentException">
    /// No density is known in this packing, or no weight of this piece, or the system lacks the unit.
    /// </exception>
    public static FormulaLine Of(Ingredient ingredient, double grams, Amount amount, MeasuringSystem system, Packing? packing = null)
    {
        Guard.InRange(grams, 0, MostGrams);
        ConvertedMass measured = InProportion(Measure(ingredient, amount, system, packing), grams);
        return new FormulaLine(ingredient, measured.Grams, amount, packing, system, measured);
    }

    /// <summary>The line that a phrase says; <see langword="null"/> where it has no mass, with the reason and what it is about.</summary>
    internal static FormulaLine? OfPhrase(Phrase phrase, MeasuringSystem system, out string? reason, out string column)
    {
        column = "amount";
        if (!phrase.TryToMass(system, out ConvertedMass mass, out reason))
        {
            if (phrase is { Ingredient: Ingredient known, Packing: Packing packing, Amount.Amount.IsVolume: true }
                && !known.TryGetNearestDensity(packing, out _))
                column = "packing";
            return null;
        }
        if (!(mass.Grams.High <= MostGrams))
        {
            reason = $"amount was {phrase.Amount!.Value.Amount}; it must be from 0 to 1E+12 g";
            return null;
        }
        return new FormulaLine(phrase.Ingredient!, mass.Grams, phrase.Amount!.Value.Amount, phrase.Packing,
            phrase.Amount.Value.MeasuringSystem ?? system, mass);
    }

    /// <summary>
    /// The line as a cook reads it, such as <c>1 1/2 cups sifted icing sugar (146.2 g)</c> or <c>250 g unsalted butter</c>.
    /// </summary>
    public override string ToString()
    {
        string grams = string.Create(CultureInfo.InvariantCulture, $"{Grams.Likely:0.##} g");
        // What is done before the food is measured stands before its name, as a recipe reads it.
        string name = Packing is not Packing stated ? Ingredient.Name
            : stated.IsDone() ? $"{stated.ToWord()} {Ingredient.Name}" : $"{Ingredient.Name}, {stated.ToWord()}";
        string written = AsWritten?.ToString() ?? grams;
        return $"{written} {name}{(written == grams ? "" : $" ({grams})")}";
    }

    /// <summary>
    /// The line times a factor. The amount is kept where <paramref name="exact"/> is the factor as a fraction and the product can be
    /// written.
    /// </summary>
    internal FormulaLine Scaled(double factor, Fraction? exact)
    {
        // The formula has seen to the limit, but not to its last bit.
        double grams = Math.Min(Grams.Likely * factor, MostGrams);
        if (!(AsWritten is Amount amount && exact is Fraction fraction && AmountScaling.TryScale(amount, fraction, out Amount scaled)))
            return Of(Ingredient, grams);
        ConvertedMass measured = InProportion(Measured!.Value, grams);
        return new FormulaLine(Ingredient, measured.Grams, scaled, Packing, MeasuringSystem, measured);
    }

    private static ConvertedMass Measure(Ingredient ingredient, Amount amount, MeasuringSystem system, Packing? packing)
    {
        Guard.NotNull(ingredient);
        Guard.NotNull(system);
        if (packing is Packing stated)
            Guard.Defined(stated, nameof(packing));
        if (amount.IsVolume)
            return (packing is Packing filled ? Conversion.Of(ingredient, filled, system)
                : Conversion.Of(ingredient, system)).ToMass(amount);
        if (amount.IsPiece)
            return Conversion.MassOfPieces(ingredient, amount, null);
        double low = amount.LowGrams(system), high = amount.HighGrams(system);
        return new ConvertedMass(low, low / 2 + high / 2, high, (high - low) / Math.Sqrt(12), SpreadBasis.Sources, null,
            throughDensity: false);
    }

    private static ConvertedMass InProportion(ConvertedMass mass, double grams)
    {
        // An exact mass stays one: its ends times a factor may differ in the last bit.
        if (mass.Grams.Likely <= 0 || mass.Grams.Low == mass.Grams.High)
            return ConvertedMass.Exactly(grams, mass.By);
        double factor = grams / mass.Grams.Likely;
        // The ends are kept from crossing the middle by the last bit.
        return new ConvertedMass(Math.Min(mass.Grams.Low * factor, grams), grams, Math.Max(mass.Grams.High * factor, grams),
            mass.Grams.StandardUncertainty * factor, mass.Grams.Basis, mass.By, mass.ThroughDensity);
    }
}
