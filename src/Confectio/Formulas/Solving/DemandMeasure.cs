namespace Confectio.Formulas.Solving;

/// <summary>What a formula has of what a demand asks for, in the demand's own unit; worked out from the masses and nothing else.</summary>
internal static class DemandMeasure
{
    /// <summary>What every demand got. An option is no demand on the masses: it is the choice itself.</summary>
    public static DemandResult[] Results(FormulaProblem problem, double[] grams, double boiledOffGrams) =>
        [.. problem.Demands.Where(demand => demand.Kind != DemandKind.Optional).Select(demand => new DemandResult(demand, Of(problem, demand, grams, boiledOffGrams)))];

    private static double Of(FormulaProblem problem, Demand demand, ReadOnlySpan<double> grams, double boiledOffGrams)
    {
        switch (demand.Kind)
        {
            case DemandKind.Total:
                return GramsOf(problem, FormulaPart.Everything, grams, boiledOffGrams);
            case DemandKind.BoilOff:
                return boiledOffGrams;
            case DemandKind.Ratio:
                double first = grams[problem.IndexOf(demand.Ingredient!)], second = grams[problem.IndexOf(demand.ToIngredient!)];
                // Nothing of both keeps every ratio.
                return second > 0 ? first / second : first > 0 ? double.PositiveInfinity : demand.Low;
            case DemandKind.Target or DemandKind.Requirement:
                double whole = GramsOf(problem, demand.Of!, grams, boiledOffGrams);
                return whole > 0 ? GramsOf(problem, demand.Part!, grams, boiledOffGrams) / whole : 0;
            default:
                return grams[problem.IndexOf(demand.Ingredient!)];
        }
    }

    /// <summary>The grams of a part.</summary>
    public static double GramsOf(FormulaProblem problem, FormulaPart part, ReadOnlySpan<double> grams, double boiledOffGrams)
    {
        double sum = -part.FractionOfBoiledOffWater * boiledOffGrams;
        for (int j = 0; j < grams.Length; j++)
            sum += part.FractionIn(problem.Candidates[j].Ingredient) * grams[j];
        return sum;
    }
}
