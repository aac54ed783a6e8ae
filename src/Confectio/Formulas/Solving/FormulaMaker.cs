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
        return lines.Count > 0
            ? Formula.Of(problem.Name, lines, boiledOffGrams)
            : throw new InvalidOperationException("The answer has no mass.");
    }
}
