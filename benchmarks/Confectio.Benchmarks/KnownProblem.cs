using Confectio.Numerics;

namespace Confectio.Benchmarks;

/// <summary>Two formula problems over USDA SR28 compositions whose exact answers are in the tests (Oracles/least-squares, F1 and F3).</summary>
internal static class KnownProblem
{
    // Of each line: fat, sugars, water, protein.
    private static readonly double[] s_chocolate = [0.3831, 0.3671, 0.0125, 0.0612], s_cream = [0.37, 0.0279, 0.5771, 0.0205], s_butter = [0.8111, 0.0006, 0.1794, 0.0085];
    private static readonly double[] s_syrup = [0.002, 0.7677, 0.2281, 0], s_honey = [0, 0.8212, 0.171, 0.003], s_sugar = [0, 0.998, 0.0002, 0];
    private static readonly double[] s_condensed = [0.087, 0.544, 0.2716, 0.0791], s_salt = [0, 0, 0.002, 0], s_cocoa = [0.137, 0.0175, 0.03, 0.196], s_boiledOff = [0, 0, 1, 0];

    public static LeastSquaresProblem Ganache()
    {
        LeastSquaresProblem problem = Make([s_chocolate, s_cream, s_butter, s_syrup, s_honey], [480, 400, 40, 50, 30],
            [300, 200, 0, 0, 0], [600, 420, 60, 80, 40], [(0, 0.36), (1, 0.30), (2, 0.23)], nearness: 0.04);
        problem.AddRow([1, 1, 1, 1, 1], 1, 1);
        return problem;
    }

    public static LeastSquaresProblem Fudge()
    {
        double[][] lines = [s_sugar, s_syrup, s_cream, s_condensed, s_butter, s_salt, s_cocoa, s_boiledOff];
        LeastSquaresProblem problem = Make(lines, [450, 120, 260, 200, 60, 4, 40, -134],
            [0, 0, 0, 0, 0, 0, 0, -400], [600, 200, 400, 300, 120, 10, 60, 0], [(1, 0.62), (0, 0.15), (3, 0.028)], nearness: 0.01);
        problem.AddRow([1, 1, 1, 1, 1, 1, 1, 1], 1, 1);
        problem.AddRow([0, 0, 0, 0, 0, 1, 0, 0], 0.005, 0.005);
        problem.AddRow([-1, 4, 0, 0, 0, 0, 0, 0], 0, 0);
        problem.AddRow([.. lines.Select(line => line[2])], 0.08, 0.09);
        return problem;
    }

    private static LeastSquaresProblem Make(double[][] lines, double[] grams, double[] low, double[] high, (int Part, double Share)[] targets, double nearness)
    {
        LeastSquaresProblem problem = new(lines.Length);
        foreach ((int part, double share) in targets)
            problem.AddTarget([.. lines.Select(line => line[part])], share, weight: 100);
        for (int j = 0; j < lines.Length; j++)
        {
            problem.Centre[j] = grams[j] / 1000;
            problem.Prior[j] = Math.Sqrt(nearness) / (0.5 * Math.Abs(grams[j] / 1000));
            problem.Lower[j] = low[j] / 1000;
            problem.Upper[j] = high[j] / 1000;
        }
        return problem;
    }
}
