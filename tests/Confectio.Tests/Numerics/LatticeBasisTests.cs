using Confectio.Numerics;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Confectio.Tests.Numerics;

public sealed class LatticeBasisTests
{
    // The products of columns do not change under reflections: M'M = R'R.
    [Property(MaxTest = 300)]
    public void TheTriangleHasTheProductsOfTheColumns(DoNotSize<int> seed)
    {
        double[][] columns = Columns(new Random(seed.Item)), triangle = Copy(columns);
        LatticeBasis.MakeTriangular(triangle);
        for (int i = 0; i < columns.Length; i++)
        {
            for (int j = 0; j < columns.Length; j++)
                Assert.Equal(Dot(columns[i], columns[j]), Dot(triangle[i], triangle[j]), 1e-11); // products of numbers up to 10
            Assert.All(triangle[i].Skip(i + 1), below => Assert.Equal(0, below));
        }
    }

    // The conditions of Lenstra, Lenstra and Lovász (1982), equations 1.4 and 1.5, on a triangle made anew from the new columns.
    [Property(MaxTest = 300)]
    public void AReducedBasisIsOfTheSameLatticeAndShort(DoNotSize<int> seed)
    {
        double[][] columns = Columns(new Random(seed.Item)), triangle = Copy(columns);
        int n = columns.Length;
        LatticeBasis.MakeTriangular(triangle);
        double[][] combination = LatticeBasis.Reduce(triangle, out double[][] inverse);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                Assert.Equal(Math.Round(combination[i][j]), combination[i][j]);
                // Whole numbers with a whole inverse: the same lattice.
                Assert.Equal(i == j ? 1 : 0, Dot(inverse[i], combination[j]));
            }
        }
        double[][] reduced = [.. combination.Select(u => Enumerable.Range(0, columns[0].Length).Select(i => Enumerable.Range(0, n).Sum(c => u[c] * columns[c][i])).ToArray())];
        LatticeBasis.MakeTriangular(reduced);
        for (int j = 1; j < n; j++)
        {
            for (int i = 0; i < j; i++)
                Assert.True(Math.Abs(reduced[j][i]) <= (0.5 + 1e-6) * Math.Abs(reduced[i][i]));
            double next = reduced[j][j] * reduced[j][j] + reduced[j][j - 1] * reduced[j][j - 1];
            Assert.True(next >= 0.75 * reduced[j - 1][j - 1] * reduced[j - 1][j - 1] * (1 - 1e-6));
        }
    }

    [Fact]
    public void AColumnOfZerosStaysOne()
    {
        double[][] columns = [[0, 0, 0], [3, 4, 0]];
        LatticeBasis.MakeTriangular(columns);
        Assert.Equal([0, 0, 0], columns[0]);
        Assert.Equal(25, LatticeBasis.Square(columns[1]), 1e-12);
    }

    private static double[][] Columns(Random random)
    {
        int n = random.Next(1, 9);
        return [.. Enumerable.Range(0, n).Select(_ => Enumerable.Range(0, n + 2).Select(_ => 6 * random.NextDouble() - 3).ToArray())];
    }

    private static double[][] Copy(double[][] columns) => [.. columns.Select(column => (double[])column.Clone())];

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
}
