namespace Confectio.Tests.Numerics;

/// <summary>
/// Elimination on whole numbers without fractions (E. H. Bareiss, Mathematics of Computation 22 (1968) 565-578): every entry stays a
/// determinant of the given numbers, each division comes out even, and what would not fit throws.
/// </summary>
internal static class WholeNumberElimination
{
    /// <summary>
    /// Solves a square system whose right side is the last column: there the numerators are left, the denominator is returned. 0:
    /// singular.
    /// </summary>
    public static Int128 Solve(Int128[,] system)
    {
        int size = system.GetLength(0);
        (Int128 denominator, int[] pivots) = Reduce(system, size);
        return pivots.Length == size ? denominator : 0;
    }

    /// <summary>
    /// Brings the first columns of a matrix to echelon form, the pivots all equal to the number returned; row k has its pivot in the
    /// k-th of the columns returned.
    /// </summary>
    public static (Int128 Pivot, int[] Columns) Reduce(Int128[,] matrix, int columns)
    {
        int rows = matrix.GetLength(0), width = matrix.GetLength(1);
        List<int> pivots = [];
        Int128 last = 1;
        for (int column = 0; column < columns && pivots.Count < rows; column++)
        {
            int at = pivots.Count, found = at;
            while (found < rows && matrix[found, column] == 0)
                found++;
            if (found == rows)
                continue;
            // Swapped with a change of sign, so that the last pivot is the determinant.
            for (int j = 0; found != at && j < width; j++)
                (matrix[at, j], matrix[found, j]) = (matrix[found, j], -matrix[at, j]);
            Int128 pivot = matrix[at, column];
            for (int i = 0; i < rows; i++)
            {
                if (i == at)
                    continue;
                Int128 factor = matrix[i, column];
                for (int j = 0; j < width; j++)
                    matrix[i, j] = checked(pivot * matrix[i, j] - factor * matrix[at, j]) / last;
            }
            last = pivot;
            pivots.Add(column);
        }
        return (last, [.. pivots]);
    }
}
