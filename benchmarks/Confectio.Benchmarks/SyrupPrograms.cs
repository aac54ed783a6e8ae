using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Filters;
using Confectio.Sugars;

namespace Confectio.Benchmarks;

/// <summary>
/// Columns of 100 000 beside other programs, each started afresh: GNU Units, which looks elevations up in its table, and python3-iapws,
/// which boils pure water only. What Python itself measures, without its start, is printed beside the table. A program that is
/// not installed is not in the table.
/// </summary>
[Config(typeof(Installed))]
[SimpleJob(RunStrategy.Monitoring, launchCount: 1, warmupCount: 1, iterationCount: 5)]
[MemoryDiagnoser]
[CategoriesColumn]
[GroupBenchmarksBy(BenchmarkLogicalGroupRule.ByCategory)]
public class SyrupPrograms
{
    private const int Rows = 100_000;
    private const string Units = "units", Python = "/usr/bin/python3"; // Debian's own, which sees Debian's packages

    private const string BoilInPython = """
        import sys, time
        from iapws.iapws97 import _TSat_P
        pressures = [float(line) / 1000 for line in sys.stdin]
        begin = time.perf_counter()
        kelvins = [_TSat_P(pressure) for pressure in pressures]
        print(time.perf_counter() - begin)
        print(sum(kelvins) / len(kelvins) - 273.15)
        """;

    private readonly double[] _fractions = new double[Rows];
    private readonly double[] _kilopascals = new double[Rows];
    private readonly double[] _celsius = new double[Rows];
    private readonly List<double> _inside = [];
    private string _questions = "", _pressures = "";
    private double _steam, _meanElevation, _meanBoiling;

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        StringBuilder questions = new(), pressures = new();
        for (int i = 0; i < Rows; i++)
        {
            _fractions[i] = Math.Round(0.95 * random.NextDouble(), 6);
            _kilopascals[i] = Math.Round(1 + 199 * random.NextDouble(), 6);
            questions.Append(CultureInfo.InvariantCulture, $"sugar_conc_bpe({100 * _fractions[i]:0.####})\nK\n");
            pressures.Append(CultureInfo.InvariantCulture, $"{_kilopascals[i]:0.######}\n");
        }
        _questions = questions.ToString();
        _pressures = pressures.ToString();
        _steam = SaturatedWater.PressureKilopascals(100); // the table of GNU Units is for water that boils at 100 °C
        _meanElevation = Sucrose() - 100;
        _meanBoiling = Water();
    }

    [GlobalCleanup]
    public void Tell()
    {
        if (_inside.Count > 0)
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"// inside Python: {1000 * _inside.Min():0.#} ms at best of {_inside.Count} runs"));
    }

    [BenchmarkCategory("sucrose"), Benchmark]
    public double GnuUnits()
    {
        double[] elevations = Run(Units, _questions, "--terse", "--digits", "8");
        // The table is linear between its rows, up to 5 % apart; it is above the curve, 0.02 K at most.
        return elevations.Length == Rows ? Checked(elevations.Average(), _meanElevation, 0.02)
            : throw new InvalidOperationException($"GNU Units gave {elevations.Length} answers.");
    }

    [BenchmarkCategory("sucrose"), Benchmark(Baseline = true)]
    public double Sucrose()
    {
        SucroseSolution.BoilingCelsius(_fractions, _steam, _celsius);
        return _celsius.Average();
    }

    [BenchmarkCategory("water"), Benchmark]
    public double Iapws()
    {
        double[] answer = Run(Python, _pressures, "-c", BoilInPython);
        _inside.Add(answer[0]);
        return Checked(answer[1], _meanBoiling, 1e-8);
    }

    [BenchmarkCategory("water"), Benchmark(Baseline = true)]
    public double Water()
    {
        for (int i = 0; i < Rows; i++)
            _celsius[i] = SaturatedWater.BoilingCelsius(_kilopascals[i]);
        return _celsius.Average();
    }

    private static double Checked(double theirs, double ours, double tolerance) => Math.Abs(theirs - ours) <= tolerance ? theirs
        : throw new InvalidOperationException($"The mean is {theirs:R}, ours {ours:R}.");

    /// <summary>The numbers that a program prints, one a line, for the text that it reads.</summary>
    private static double[] Run(string program, string input, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        // Aside, since the program may stop reading until somebody takes what it has written.
        Task writing = Task.Run(() =>
        {
            process.StandardInput.Write(input);
            process.StandardInput.Close();
        });
        string output = process.StandardOutput.ReadToEnd();
        writing.Wait();
        process.WaitForExit();
        return [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => double.Parse(line, CultureInfo.InvariantCulture))];
    }

    private sealed class Installed : ManualConfig
    {
        public Installed()
        {
            bool units = Answers(Units, "--terse", "sugar_conc_bpe(60)", "K"), iapws = Answers(Python, "-c", "import iapws");
            AddFilter(new SimpleFilter(item => item.Descriptor.WorkloadMethod.Name switch
            {
                nameof(GnuUnits) => units,
                nameof(Iapws) => iapws,
                _ => true,
            }));
        }

        private static bool Answers(string program, params string[] arguments)
        {
            try
            {
                using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
                process.WaitForExit();
                return process.ExitCode == 0;
            }
            catch (Win32Exception)
            {
                return false;
            }
        }
    }
}
