using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

internal static partial class Rounding
{
    // A property as the search sees it: a fraction of sums as it is, another by its slope at the answer, which is near enough to choose by
    // and proves nothing. Null where it has no slope.
    private static BoxSearch.Measure? OfProperty(SolvedFormula answer, Demand.PropertyValue demand, bool isLoose, int targetLevel)
    {
        FormulaProblem problem = answer.Problem;
        FormulaProperty property = demand.Asked;
        int n = problem.Candidates.Count;
        double unit = problem.UnitGrams;
        double[] sums = new double[property.Sums];
        // The last unknown is the water that boils off, taken as a mass below nothing.
        double[][] rows = [.. sums.Select(_ => new double[n + 1])];
        for (int j = 0; j <= n; j++)
        {
            Array.Clear(sums);
            if (j == n)
                property.BoilOff(-1, sums);
            else
                property.Add(problem.Candidates[j].Ingredient, 1, sums);
            for (int k = 0; k < sums.Length; k++)
                rows[k][j] = sums[k];
        }
        double low = demand.LowEnd, high = demand.HighEnd, boiled = isLoose ? 0 : answer.BoiledOffGrams;
        double[] part = rows[0][..n], whole = new double[n];
        (double looseInPart, double looseInWhole) = (rows[0][n], 0);
        if (property.IsFraction)
        {
            whole = rows[1][..n];
            looseInWhole = rows[1][n];
        }
        else
        {
            double[] x = [.. answer.Grams.Select(grams => grams / unit), -answer.BoiledOffGrams / unit];
            int piece = property.Pieces > 1 && property.Side(Linearisation.Sums(rows, x)) > 0 ? 1 : 0;
            if (Linearisation.At([(property, rows, piece)], x) is not Linearisation slopes)
                return null;
            (double value, double[] slope) = slopes.Of(property);
            part = [.. slope[..n].Select(rise => rise / unit)];
            looseInPart = slope[n] / unit;
            // Its value does not change where all masses do, so that slope·x is 0 at the answer.
            (low, high) = (low - value + looseInPart * boiled, high - value + looseInPart * boiled);
        }
        double one = demand.Tolerance ?? property.UsualTolerance, slack = demand.IsTarget || demand.IsOneValue ? 0 : OfAStep * Math.Max(1, one);
        return new BoxSearch.Measure
        {
            Part = part, Whole = whole, IsShare = property.IsFraction, LooseInPart = isLoose ? looseInPart : 0,
            LooseInWhole = isLoose ? looseInWhole : 0, Low = low - slack, High = high + slack, Weight = 1 / one,
            Level = demand.IsTarget ? targetLevel : demand.IsOneValue ? ToBeHit : Kept, IsSquared = demand.IsTarget || demand.IsOneValue,
        };
    }
}
