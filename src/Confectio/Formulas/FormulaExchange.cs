using System.Globalization;
using Confectio.Ingredients;

namespace Confectio.Formulas;

/// <summary>One ingredient of a formula exchanged for another, and water added or taken.</summary>
internal static class FormulaExchange
{
    /// <summary>
    /// The formula with so much less of the one, in all its lines in proportion, so much of the other in a line of its own, and so much
    /// more water (below 0: less) in the lines it has or in one of its own.
    /// </summary>
    public static Formula Make(Formula formula, Ingredient outgoing, double grams, Ingredient incoming, double incomingGrams,
        Ingredient water, double waterGrams)
    {
        double there = formula.GramsOf(outgoing) ?? 0, watered = formula.GramsOf(water) ?? 0;
        List<FormulaLine> lines = [];
        foreach (FormulaLine line in formula.Lines)
        {
            // What is left may be below nothing by its last bits.
            double left = line.Ingredient == outgoing ? line.Grams.Likely * ((there - grams) / there)
                : line.Ingredient == water ? line.Grams.Likely * ((watered + waterGrams) / watered) : line.Grams.Likely;
            if (left > 0)
                lines.Add(left == line.Grams.Likely ? line : FormulaLine.Of(line.Ingredient, left));
        }
        if (incomingGrams > 0)
            lines.Add(FormulaLine.Of(incoming, incomingGrams));
        if (watered == 0 && waterGrams > 0)
            lines.Add(FormulaLine.Of(water, waterGrams));
        return Of(formula, lines, grams);
    }

    /// <summary>
    /// A formula with other lines, once some grams of it were exchanged; what cannot be is laid to those grams, which is what the caller
    /// said.
    /// </summary>
    public static Formula Of(Formula formula, IReadOnlyCollection<FormulaLine> lines, double grams)
    {
        double water = Formula.WaterOf(lines), boils = formula.BoiledOffGrams;
        string? why = boils > water * (1 + 1e-9)
            ? string.Create(CultureInfo.InvariantCulture, $"the formula would have {water:0.####} g of water, and {boils:0.####} g boil "
                + $"off. Replace less, or let less boil off.")
            : lines.Sum(line => line.Grams.Likely) - boils > 0 ? null : "nothing of the formula would be left.";
        if (why is not null)
            throw new ArgumentOutOfRangeException(nameof(grams), grams,
                string.Create(CultureInfo.InvariantCulture, $"{nameof(grams)} was {grams:R}; {why}"));
        return lines.Count <= Formula.MaximumLines ? Formula.Of(formula.Name, lines, boils)
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"{nameof(formula)} would have {lines.Count} lines with what comes in; from 1 to {Formula.MaximumLines} are expected."),
                    nameof(formula));
    }
}
