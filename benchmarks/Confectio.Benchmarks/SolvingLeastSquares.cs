using System.Globalization;
using BenchmarkDotNet.Attributes;
using Confectio.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Confectio.Benchmarks;

/// <summary>
/// The kernel on random formula problems: n lines within limits, m targets, a total, a base; a warm workspace. The peer is one thin
/// QR solve by MathNet of the same targets stacked on the same prior, which knows no limits at all.
/// </summary>
[MemoryDiagnoser]
public class SolvingLeastSquares
{
    private readonly DualActiveSet _kernel = new();
    private LeastSquaresProblem _problem = new(1);
    private Matrix<double> _stacked = Matrix<double>.Build.Dense(1, 1);
    private Vector<double> _right = Vector<double>.Build.Dense(1);

    /// <summary>Lines and targets; F1 is a ganache of 5 lines with 3 targets, F3 a fudge of 8 with 3, a ratio, a range and boil-off.</summary>
    [Params("F1", "F3", "12x6", "30x12", "60x20", "120x30", "200x50")]
    public string Size { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        _problem = Size switch
        {
            "F1" => KnownProblem.Ganache(),
            "F3" => KnownProblem.Fudge(),
            _ => RandomProblem.Make(int.Parse(Size.Split('x')[0], CultureInfo.InvariantCulture), int.Parse(Size.Split('x')[1], CultureInfo.InvariantCulture), seed: 7),
        };
        (_stacked, _right) = RandomProblem.Stack(_problem);
        if (_kernel.Solve(_problem) != SolveStatus.Optimal)
            throw new InvalidOperationException("The problem of the benchmark has no answer.");
        // The number of active conditions and of steps belongs beside the time.
        Console.WriteLine($"// {Size}: {_kernel.ActiveCount} conditions active at the answer, {_kernel.Steps} steps");
    }

    [Benchmark(Baseline = true)]
    public Vector<double> MathNetQr() => _stacked.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Solve(_right);

    [Benchmark]
    public double Kernel()
    {
        _kernel.Solve(_problem);
        return _kernel.Solution[0];
    }
}
