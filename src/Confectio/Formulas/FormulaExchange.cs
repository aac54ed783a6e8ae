using Confectio.Ingredients;

namespace Confectio.Formulas;

/// <summary>One ingredient of a formula exchanged for another, and water added or taken.</summary>
internal static class FormulaExchange
{
    /// <summary>
    /// The formula with so much less of the one, in all its lines in proportion, so much of the other in a line of its own, and so much more water (below 0: less) in the lines it has or
    /// in one of its own.
    /// </summary>
    public static Formula Make(Formula formula, Ingredient outgoing, double grams, Ingredient incoming, double incomingGrams, Ingredient water, double waterGrams)
    {
        double there = formula.GramsOf(outgoing), watered = formula.GramsOf(water);
        List<FormulaLine> lines = [];
        foreach (FormulaLine line in formula.Lines)
        {
            // What is left may be below nothing by its last bits.
            double left = line.Ingredient == outgoing ? line.Grams * ((there - grams) / there)
                : line.Ingredient == water ? line.Grams * ((watered + waterGrams) / watered) : line.Grams;
            if (left > 0)
                lines.Add(left == line.Grams ? line : FormulaLine.Of(line.Ingredient, left));
        }
        if (incomingGrams > 0)
            lines.Add(FormulaLine.Of(incoming, incomingGrams));
        if (watered == 0 && waterGrams > 0)
            lines.Add(FormulaLine.Of(water, waterGrams));
        return Formula.Of(formula.Name, lines, formula.BoiledOffGrams);
    }
}
