namespace Confectio.Numerics;

/// <summary>
/// The check of a proof that conditions contradict each other (Farkas): multipliers y of the rows and w of the bounds, above zero
/// for a low end and below zero for a high one, with y'C + w' = 0 and yet y·ends + w·ends above 0. Every x that met the conditions
/// would make 0 more than 0.
/// </summary>
/// <remarks>It looks at the problem as stated and at nothing of the solver.</remarks>
internal static class InfeasibilityProof
{
    // What may be left of y'C + w' for an unknown without a bound on that side, relative to the terms it is summed from: were the
    // unknown as large as the claim over what is left, there would be no contradiction. It is never as large as this, and what is
    // left within the rounding of the sum counts as nothing.
    private const double Cancelled = 1e-11, Rounding = 1e-14, LargestUnknown = 1e13;

    /// <summary>Whether the proof holds, by more than the rounding of what the claim is summed from.</summary>
    public static bool Holds(LeastSquaresProblem problem, ReadOnlySpan<double> rows, ReadOnlySpan<double> bounds)
    {
        double claim = 0, size = 0, left = 0;
        for (int k = 0; k < problem.Rows; k++)
        {
            if (rows[k] == 0)
                continue;
            double end = rows[k] > 0 ? problem.RowLow[k] : problem.RowHigh[k];
            if (!double.IsFinite(end))
                return false;
            claim += rows[k] * end;
            size += Math.Abs(rows[k] * end);
        }
        for (int j = 0; j < problem.Variables; j++)
        {
            double sum = 0, terms = 0;
            for (int k = 0; k < problem.Rows; k++)
            {
                double term = rows[k] == 0 ? 0 : rows[k] * problem.Row(k)[j];
                sum += term;
                terms += Math.Abs(term);
            }
            // The bound's multiplier is taken as what cancels the column exactly, where the unknown has that bound: so the proof
            // does not rest on the rounding of the solver's own.
            double multiplier = -sum, end = multiplier > 0 ? problem.Lower[j] : problem.Upper[j];
            if (multiplier == 0)
                continue;
            if (double.IsFinite(end))
            {
                claim += multiplier * end;
                size += Math.Abs(multiplier * end);
            }
            else if (Math.Abs(sum) > Cancelled * terms || bounds[j] != 0)
            {
                return false;
            }
            else if (Math.Abs(sum) > Rounding * terms)
            {
                left = Math.Max(left, Math.Abs(sum));
            }
        }
        return claim > 1e-13 * size && claim > left * LargestUnknown;
    }
}
