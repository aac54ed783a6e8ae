using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Confectio.Numerics;

/// <summary>The directions in which unknowns can move without any of the given rows noticing.</summary>
internal sealed class NullSpace
{
    private const double Zero = 1e-9;

    // How many sets of unknowns are looked at for the simplest directions: all pairs, threes and fours of twenty.
    private const int MostSets = 8000;

    private const int MostInASet = 4;

    private readonly double[] _freedom;
    private readonly double[][] _basis;

    private NullSpace(double[][] basis, double[] freedom)
    {
        _basis = basis;
        _freedom = freedom;
    }

    /// <summary>How many independent directions there are.</summary>
    public int Directions => _basis.Length;

    /// <summary>Whether an unknown moves in any of them.</summary>
    public bool Moves(int variable) => _freedom[variable] > Zero;

    /// <summary>Of a matrix by rows, by its singular values, after scaling every row to length 1.</summary>
    public static NullSpace Of(IReadOnlyList<double[]> rows, int variables)
    {
        double[] freedom = new double[variables];
        List<double[]> scaled = [];
        foreach (double[] row in rows)
        {
            double length = Math.Sqrt(row.Sum(value => value * value));
            if (length > 0)
                scaled.Add([.. row.Select(value => value / length)]);
        }
        if (scaled.Count == 0)
        {
            Array.Fill(freedom, 1);
            return new NullSpace([.. Enumerable.Range(0, variables).Select(j => One(j, variables))], freedom);
        }
        Svd<double> svd = Matrix<double>.Build.DenseOfRowArrays(scaled).Svd(computeVectors: true);
        int rank = svd.S.Count(value => value > Zero * svd.S[0]);
        double[][] basis = [.. Enumerable.Range(rank, variables - rank).Select(direction => svd.VT.Row(direction).ToArray())];
        foreach (double[] direction in basis)
        {
            for (int j = 0; j < variables; j++)
                freedom[j] = Math.Max(freedom[j], Math.Abs(direction[j]));
        }
        return new NullSpace(basis, freedom);
    }

    /// <summary>
    /// Directions in which as few unknowns move as can be, those of the fewest first: no part of such a direction is a direction. Where
    /// there are too many unknowns to look at every few of them, one for each dimension is found in another way.
    /// </summary>
    public IEnumerable<double[]> Simplest()
    {
        int n = _freedom.Length, sets = 0;
        int[] moving = [.. Enumerable.Range(0, n).Where(Moves)];
        List<int[]> found = [];
        for (int size = 1; size <= Math.Min(MostInASet, moving.Length); size++)
        {
            foreach (int[] set in Sets(moving, size))
            {
                if (++sets > MostSets)
                    break;
                if (found.Exists(smaller => smaller.All(set.Contains)))
                    continue;
                if (Within(set) is double[] direction)
                {
                    found.Add(set);
                    yield return direction;
                }
            }
        }
        // The others: of a basis brought to as many noughts as it has dimensions, each direction is of the fewest in its own way.
        foreach (double[] direction in Reduced())
        {
            int[] set = [.. Enumerable.Range(0, n).Where(j => direction[j] != 0)];
            if (!found.Exists(smaller => smaller.Length == set.Length && smaller.All(set.Contains)))
                yield return direction;
        }
    }

    private static double[] One(int at, int variables)
    {
        double[] one = new double[variables];
        one[at] = 1;
        return one;
    }

    private static IEnumerable<int[]> Sets(int[] of, int size)
    {
        int[] at = [.. Enumerable.Range(0, size)];
        while (true)
        {
            yield return [.. at.Select(k => of[k])];
            int last = size - 1;
            while (last >= 0 && at[last] == of.Length - size + last)
                last--;
            if (last < 0)
                yield break;
            at[last]++;
            for (int k = last + 1; k < size; k++)
                at[k] = at[k - 1] + 1;
        }
    }

    // The one direction in which only these move; null where there is none, or one in which fewer do. What stands outside the set is
    // brought to nought by combining the directions of the basis.
    private double[]? Within(int[] set)
    {
        int n = _freedom.Length, k = Directions;
        double[][] rows = [.. _basis.Select(direction => (double[])direction.Clone())];
        int used = 0;
        // Eliminates the unknowns outside the set, largest first; what is left of the basis lives in the set.
        HashSet<int> inside = [.. set];
        while (used < k)
        {
            (int Row, int At, double Size) pivot = (-1, -1, Zero);
            for (int r = used; r < k; r++)
            {
                for (int j = 0; j < n; j++)
                {
                    if (!inside.Contains(j) && Math.Abs(rows[r][j]) > pivot.Size)
                        pivot = (r, j, Math.Abs(rows[r][j]));
                }
            }
            if (pivot.Row < 0)
                break;
            (rows[used], rows[pivot.Row]) = (rows[pivot.Row], rows[used]);
            Eliminate(rows, used, pivot.At, used + 1);
            used++;
        }
        if (k - used != 1)
            return null;
        double[] only = Clean(rows[used]);
        return set.All(j => only[j] != 0) ? only : null;
    }

    private IEnumerable<double[]> Reduced()
    {
        int k = Directions, n = _freedom.Length;
        double[][] rows = [.. _basis.Select(direction => (double[])direction.Clone())];
        for (int used = 0; used < k; used++)
        {
            (int row, int at) = (used, 0);
            for (int r = used; r < k; r++)
            {
                for (int j = 0; j < n; j++)
                {
                    if (Math.Abs(rows[r][j]) > Math.Abs(rows[row][at]))
                        (row, at) = (r, j);
                }
            }
            (rows[used], rows[row]) = (rows[row], rows[used]);
            Eliminate(rows, used, at, 0);
        }
        return rows.Select(Clean).OrderBy(row => row.Count(value => value != 0));
    }

    private static void Eliminate(double[][] rows, int by, int at, int from)
    {
        for (int r = from; r < rows.Length; r++)
        {
            if (r == by)
                continue;
            double factor = rows[r][at] / rows[by][at];
            for (int j = 0; j < rows[r].Length; j++)
                rows[r][j] -= factor * rows[by][j];
            rows[r][at] = 0;
        }
    }

    private static double[] Clean(double[] direction)
    {
        double largest = direction.Max(Math.Abs);
        return largest > 0 ? [.. direction.Select(value => Math.Abs(value) > Zero * largest ? value / largest : 0)] : direction;
    }
}
