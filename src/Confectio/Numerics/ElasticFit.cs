namespace Confectio.Numerics;

/// <summary>
/// The point that breaks contradicting conditions least: minimise Σ weight x violation, a linear programme whose answer breaks as
/// few conditions as it can, unlike a sum of squares, which spreads the breach over all of them. Among equals the nearest to the centre.
/// </summary>
internal static class ElasticFit
{
    /// <summary>
    /// Finds the point. Rows with weight 0 stay firm, and so do all bounds.
    /// </summary>
    /// <param name="conditions">Rows, bounds, prior and centre; the cost is not looked at.</param>
    /// <param name="rowWeights">What a violation of one unit costs, for every row.</param>
    /// <param name="x">Receives the point.</param>
    /// <returns>Infeasible where the firm conditions alone contradict each other.</returns>
    public static SolveStatus Solve(LeastSquaresProblem conditions, ReadOnlySpan<double> rowWeights, Span<double> x)
    {
        int n = conditions.Variables, elastic = 0;
        for (int k = 0; k < conditions.Rows; k++)
            elastic += rowWeights[k] > 0 ? 2 : 0;
        LeastSquaresProblem problem = new(n + elastic);
        conditions.Lower.CopyTo(problem.Lower);
        conditions.Upper.CopyTo(problem.Upper);
        conditions.Centre[..n].CopyTo(problem.Centre);
        conditions.Prior[..n].CopyTo(problem.Prior);
        double[] row = new double[n + elastic];
        int at = n;
        for (int k = 0; k < conditions.Rows; k++)
        {
            Array.Clear(row);
            conditions.Row(k)[..n].CopyTo(row);
            if (rowWeights[k] > 0)
            {
                // What is missing, and what is too much.
                foreach (int sign in stackalloc[] { 1, -1 })
                {
                    row[at] = sign;
                    problem.Lower[at] = 0;
                    problem.Prior[at] = rowWeights[k];
                    problem.Cost[at++] = rowWeights[k];
                }
            }
            problem.AddRow(row, conditions.RowLow[k], conditions.RowHigh[k]);
        }
        DualActiveSet kernel = new();
        SolveStatus status = LeastCost.Solve(kernel, problem);
        kernel.Solution[..n].CopyTo(x);
        return status;
    }
}
