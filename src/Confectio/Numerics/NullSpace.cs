using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Confectio.Numerics;

/// <summary>The directions in which unknowns can move without any of the given rows noticing.</summary>
internal sealed class NullSpace
{
    private const double Zero = 1e-9;

    private readonly double[] _freedom;

    private NullSpace(int directions, double[] freedom)
    {
        Directions = directions;
        _freedom = freedom;
    }

    /// <summary>How many independent directions there are.</summary>
    public int Directions { get; }

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
            return new NullSpace(variables, freedom);
        }
        Svd<double> svd = Matrix<double>.Build.DenseOfRowArrays(scaled).Svd(computeVectors: true);
        int rank = svd.S.Count(value => value > Zero * svd.S[0]);
        for (int direction = rank; direction < variables; direction++)
        {
            for (int j = 0; j < variables; j++)
                freedom[j] = Math.Max(freedom[j], Math.Abs(svd.VT[direction, j]));
        }
        return new NullSpace(variables - rank, freedom);
    }
}
