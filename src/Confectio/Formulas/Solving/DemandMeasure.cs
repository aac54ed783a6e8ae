using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

/// <summary>What a formula has of what a demand asks for, in the demand's own unit; worked out from the masses and nothing else.</summary>
internal static class DemandMeasure
{
    public static double Of(FormulaProblem problem, Demand demand, ReadOnlySpan<double> grams, double boiledOffGrams)
    {
        switch (demand.Kind)
        {
            case DemandKind.Total:
                return GramsOf(problem, FormulaPart.Everything, grams, boiledOffGrams);
            case DemandKind.BoilOff:
                return boiledOffGrams;
            case DemandKind.Ratio:
                double first = GramsOf(problem, demand.Ingredient!, grams), second = GramsOf(problem, demand.ToIngredient!, grams);
                // Nothing of both keeps every ratio.
                return second > 0 ? first / second : first > 0 ? double.PositiveInfinity : demand.Low;
            case DemandKind.Target or DemandKind.Requirement:
                double whole = GramsOf(problem, demand.Of!, grams, boiledOffGrams);
                return whole > 0 ? GramsOf(problem, demand.Part!, grams, boiledOffGrams) / whole : 0;
            default:
                return GramsOf(problem, demand.Ingredient!, grams);
        }
    }

    private static double GramsOf(FormulaProblem problem, FormulaPart part, ReadOnlySpan<double> grams, double boiledOffGrams)
    {
        double sum = -part.FractionOfBoiledOffWater * boiledOffGrams;
        for (int j = 0; j < grams.Length; j++)
            sum += part.FractionIn(problem.Candidates[j].Ingredient) * grams[j];
        return sum;
    }

    private static double GramsOf(FormulaProblem problem, Ingredient ingredient, ReadOnlySpan<double> grams)
    {
        for (int j = 0; j < grams.Length; j++)
        {
            if (problem.Candidates[j].Ingredient.Equals(ingredient))
                return grams[j];
        }
        return 0;
    }
}
