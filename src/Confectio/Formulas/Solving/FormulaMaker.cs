using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>Makes a formula of the masses of an answer.</summary>
internal static class FormulaMaker
{
    public static Formula Make(FormulaProblem problem, ReadOnlySpan<double> grams, double boiledOffGrams)
    {
        List<FormulaLine> lines = [];
        for (int j = 0; j < grams.Length; j++)
        {
            if (grams[j] > 0)
                lines.Add(FormulaLine.Of(problem.Candidates[j].Ingredient, grams[j]));
        }
        if (lines.Count == 0)
            throw new InvalidOperationException("The answer has no mass.");
        // The closest formula of demands that cannot be met may be asked to boil off water that it has not.
        double water = Formula.WaterOf(lines);
        if (boiledOffGrams > water * (1 + 1e-9))
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
                $"The answer is no formula: {boiledOffGrams:0.###} g of water would boil off, and it has {water:0.###} g."));
        return Formula.Of(problem.Name, lines, Math.Min(boiledOffGrams, water));
    }
}
