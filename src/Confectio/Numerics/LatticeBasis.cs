namespace Confectio.Numerics;

/// <summary>A basis of a lattice, given as columns: its triangle and a better basis of the same lattice.</summary>
internal static class LatticeBasis
{
    // Lovasz's condition. 3/4 is the usual value; nearer to 1 costs a few swaps more and saves nodes of every search.
    private const double Swap = 0.99;

    /// <summary>
    /// Householder's reflections: R with R'R = M'M, upper triangular. The columns are overwritten: R[i, j] is columns[j][i].
    /// </summary>
    public static void MakeTriangular(double[][] columns)
    {
        for (int k = 0; k < columns.Length; k++)
        {
            Span<double> pivot = columns[k].AsSpan(k);
            double square = Square(pivot);
            if (square == 0)
                continue;
            double diagonal = pivot[0] > 0 ? -Math.Sqrt(square) : Math.Sqrt(square);
            pivot[0] -= diagonal;
            double half = -diagonal * pivot[0];
            for (int j = k + 1; j < columns.Length; j++)
            {
                Span<double> column = columns[j].AsSpan(k);
                double dot = 0;
                for (int i = 0; i < pivot.Length; i++)
                    dot += pivot[i] * column[i];
                dot /= half;
                for (int i = 0; i < pivot.Length; i++)
                    column[i] -= dot * pivot[i];
            }
            pivot.Clear();
            pivot[0] = diagonal;
        }
    }

    /// <summary>
    /// The reduction of Lenstra, Lenstra and Lovász (Mathematische Annalen 261 (1982) 515-534) on a triangle: integer combinations
    /// of the columns that are short and nearly at right angles. Returns them by columns: new column j = Σᵢ old columnᵢ U[j][i].
    /// </summary>
    /// <param name="triangle">From <see cref="MakeTriangular"/>, without a zero on its diagonal; overwritten.</param>
    /// <param name="inverse">U⁻¹ by rows: the old coordinate vector k becomes z with zⱼ = Σᵢ inverse[j][i] kᵢ.</param>
    public static double[][] Reduce(double[][] triangle, out double[][] inverse)
    {
        int n = triangle.Length;
        double[][] combination = Identity(n);
        inverse = Identity(n);
        for (int k = 1; k < n;)
        {
            for (int j = k - 1; j >= 0; j--)
            {
                double times = Math.Round(triangle[k][j] / triangle[j][j]);
                if (times == 0)
                    continue;
                Subtract(triangle[k].AsSpan(0, j + 1), times, triangle[j]);
                Subtract(combination[k], times, combination[j]);
                Subtract(inverse[j], -times, inverse[k]);
            }
            double above = triangle[k - 1][k - 1], beside = triangle[k][k - 1], below = triangle[k][k];
            if (beside * beside + below * below >= Swap * above * above)
            {
                k++;
                continue;
            }
            (triangle[k - 1], triangle[k]) = (triangle[k], triangle[k - 1]);
            (combination[k - 1], combination[k]) = (combination[k], combination[k - 1]);
            (inverse[k - 1], inverse[k]) = (inverse[k], inverse[k - 1]);
            // A rotation of rows k - 1 and k makes it a triangle again.
            double length = Math.Sqrt(beside * beside + below * below), cosine = beside / length, sine = below / length;
            for (int j = k - 1; j < n; j++)
            {
                double upper = triangle[j][k - 1], lower = triangle[j][k];
                triangle[j][k - 1] = cosine * upper + sine * lower;
                triangle[j][k] = cosine * lower - sine * upper;
            }
            triangle[k - 1][k] = 0;
            k = Math.Max(k - 1, 1);
        }
        return combination;
    }

    /// <summary>Σ xᵢ².</summary>
    public static double Square(ReadOnlySpan<double> x)
    {
        double sum = 0;
        foreach (double value in x)
            sum += value * value;
        return sum;
    }

    private static double[][] Identity(int n)
    {
        double[][] rows = new double[n][];
        for (int i = 0; i < n; i++)
        {
            rows[i] = new double[n];
            rows[i][i] = 1;
        }
        return rows;
    }

    private static void Subtract(Span<double> from, double times, ReadOnlySpan<double> other)
    {
        for (int i = 0; i < from.Length; i++)
            from[i] -= times * other[i];
    }
}
