using Confectio.Numerics;

namespace Confectio.Tests.Numerics;

/// <summary>
/// Our own check of a proof of contradiction. Of the solver's proof it takes only which ends it speaks of; the multipliers it finds
/// for itself.
/// </summary>
internal static class FarkasOracle
{
    /// <summary>
    /// For a problem of whole numbers: the ends of the proof are dependent in one way only, that way has the signs the ends ask for,
    /// and then 0 would be more than 0. Exact.
    /// </summary>
    public static bool HoldsExactly(LeastSquaresProblem problem, ReadOnlySpan<double> rowProof, ReadOnlySpan<double> boundProof)
    {
        int n = problem.Variables;
        List<(int Condition, int Side)> members = [];
        for (int k = 0; k < problem.Rows; k++)
        {
            if (rowProof[k] != 0)
                members.Add((k, Math.Sign(rowProof[k])));
        }
        for (int j = 0; j < n; j++)
        {
            if (boundProof[j] != 0)
                members.Add((problem.Rows + j, Math.Sign(boundProof[j])));
        }
        if (members.Count == 0)
            return false;
        Int128[,] normals = new Int128[n, members.Count];
        for (int m = 0; m < members.Count; m++)
        {
            for (int j = 0; j < n; j++)
                normals[j, m] = members[m].Condition < problem.Rows ? Whole(problem.Row(members[m].Condition)[j]) : members[m].Condition - problem.Rows == j ? 1 : 0;
        }
        (Int128 pivot, int[] columns) = WholeNumberElimination.Reduce(normals, members.Count);
        if (columns.Length != members.Count - 1)
            return false;
        // The one column without a pivot gets the multiplier 'pivot', the others what cancels it.
        int free = Enumerable.Range(0, members.Count).Except(columns).Single();
        Int128[] multipliers = new Int128[members.Count];
        multipliers[free] = pivot;
        for (int i = 0; i < columns.Length; i++)
            multipliers[columns[i]] = -normals[i, free];
        int turn = Int128.Sign(pivot) * members[free].Side;
        Int128 claim = 0;
        for (int m = 0; m < members.Count; m++)
        {
            (int condition, int side) = members[m];
            if (Int128.Sign(multipliers[m]) * turn != side)
                return false;
            double low = condition < problem.Rows ? problem.RowLow[condition] : problem.Lower[condition - problem.Rows];
            double high = condition < problem.Rows ? problem.RowHigh[condition] : problem.Upper[condition - problem.Rows];
            double end = side > 0 ? low : high;
            if (!double.IsFinite(end))
                return false;
            claim += turn * multipliers[m] * Whole(end);
        }
        return claim > 0;
    }

    /// <summary>
    /// For real numbers, with the multipliers of the rows as they are: the bounds of the proof, each with what cancels its column, make
    /// 0 more than 0 by more than rounding.
    /// </summary>
    public static bool HoldsInDoubles(LeastSquaresProblem problem, ReadOnlySpan<double> rowProof, ReadOnlySpan<double> boundProof)
    {
        // A proof polished once cancels to some 1e-15 of its largest terms, which may be 1e4 times those of a column.
        const double Cancelled = 1e-11, Rounding = 1e-14;
        double claim = 0, size = 0;
        for (int k = 0; k < problem.Rows; k++)
        {
            if (rowProof[k] != 0)
                Claim(rowProof[k], rowProof[k] > 0 ? problem.RowLow[k] : problem.RowHigh[k]);
        }
        for (int j = 0; j < problem.Variables; j++)
        {
            double needed = 0, terms = Math.Abs(boundProof[j]);
            for (int k = 0; k < problem.Rows; k++)
            {
                needed -= rowProof[k] * problem.Row(k)[j];
                terms += Math.Abs(rowProof[k] * problem.Row(k)[j]);
            }
            double end = needed > 0 ? problem.Lower[j] : problem.Upper[j];
            bool said = Math.Sign(needed) == Math.Sign(boundProof[j]) && Math.Abs(needed - boundProof[j]) <= 1e-6 * terms;
            // What is too small to be said is carried by the bound all the same, where there is one.
            if (!said && (boundProof[j] != 0 || (!double.IsFinite(end) && Math.Abs(needed) > Cancelled * terms)))
                return false;
            if (needed != 0 && (said || double.IsFinite(end)))
                Claim(needed, end);
        }
        return claim > Rounding * size && double.IsFinite(claim);

        void Claim(double multiplier, double end)
        {
            claim += multiplier * end;
            size += Math.Abs(multiplier * end);
        }
    }

    private static Int128 Whole(double value) => checked((Int128)(long)value);
}
