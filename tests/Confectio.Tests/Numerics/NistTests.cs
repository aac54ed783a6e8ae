using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Numerics;
using Xunit;

namespace Confectio.Tests.Numerics;

/// <summary>
/// The linear sets of the NIST Statistical Reference Datasets: polynomials fitted without bounds and without a prior. The measure is
/// NIST's own, the log relative error: the number of certified digits that are right.
/// </summary>
public sealed class NistTests
{
    // What Householder reflections reach on these sets: all that is certified but rounding, except for Wampler's polynomials of the
    // fifth degree on 0..20, whose condition number takes five to six digits and whose residuals, in sets 3 and 5, take more.
    [Theory]
    [InlineData("Norris", 12)]
    [InlineData("Pontius", 12)]
    [InlineData("NoInt1", 12)]
    [InlineData("NoInt2", 12)]
    [InlineData("Wampler1", 9)]
    [InlineData("Wampler2", 9)]
    [InlineData("Wampler3", 9)]
    [InlineData("Wampler5", 5.5)]
    public void CertifiedDigitsAreReached(string set, double digits)
    {
        string[] lines = File.ReadAllLines(Path.Combine(OracleProblem.Folder, "nist", set + ".dat"));
        Match[] certified = [.. lines.Select(line => Regex.Match(line, @"^\s+B(\d)\s+(\S+)\s+\S+\s*$")).Where(match => match.Success)];
        int lowest = int.Parse(certified[0].Groups[1].Value, CultureInfo.InvariantCulture);
        LeastSquaresProblem problem = new(certified.Length);
        int data = Array.FindLastIndex(lines, line => line.StartsWith("Data:", StringComparison.Ordinal));
        foreach (string line in lines.Skip(data + 1).Where(line => !string.IsNullOrWhiteSpace(line)))
        {
            double[] pair = [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];
            double[] powers = new double[certified.Length];
            for (int j = 0; j < powers.Length; j++)
                powers[j] = Math.Pow(pair[1], lowest + j);
            problem.AddTarget(powers, pair[0]);
        }
        DualActiveSet solver = new();
        Assert.Equal(SolveStatus.Optimal, solver.Solve(problem));
        Assert.Equal(0, solver.Passes);
        double worst = double.PositiveInfinity;
        for (int j = 0; j < certified.Length; j++)
        {
            double expected = Number(certified[j].Groups[2].Value);
            worst = Math.Min(worst, -Math.Log10(Math.Max(Math.Abs(solver.Solution[j] - expected) / Math.Abs(expected), 1e-16)));
        }
        Assert.True(worst >= digits, $"{set}: {worst:F1} digits, {digits} expected");
        TestContext.Current.SendDiagnosticMessage($"{set}: {worst:F1} digits");
    }

    [Fact]
    public void EverySetIsInTheListOfExactRecomputations() =>
        Assert.Equal(8, OracleProblem.Read("nist_lls.json").EnumerateArray()
            .Count(item => File.Exists(Path.Combine(OracleProblem.Folder, "nist", item.GetProperty("dataset").GetString() + ".dat"))));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
