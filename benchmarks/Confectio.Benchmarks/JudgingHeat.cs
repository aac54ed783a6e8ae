using BenchmarkDotNet.Attributes;
using Confectio.Heat;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sugars;
using MathNet.Numerics.Integration;

namespace Confectio.Benchmarks;

/// <summary>
/// A probe's log of 10 000 readings summed by six kinetic sets. The peers are the plain loop of a worksheet (a trapezoid on 10^((T − T_ref)/z), likely D
/// only), and MathNet's Gauss-Legendre rule of five points between every two readings, which is as exact as the closed form.
/// </summary>
[MemoryDiagnoser]
public class JudgingHeat
{
    private readonly KineticSet[] _sets = [.. new[] { "garibaldi-white", "palumbo-white-78", "palumbo-white-93", "doyle-mazzotta", "mattick", "fsis-appendix-a" }.Select(KineticSet.Get)];
    private readonly ThermometerReading[] _readings = new ThermometerReading[10_000];
    private readonly GaussLegendreRule _rule = new(0, 1, 5);

    [GlobalSetup]
    public void Setup()
    {
        // A second between readings; up to 68 °C and about there, with the ripple of a bath.
        for (int i = 0; i < _readings.Length; i++)
            _readings[i] = new ThermometerReading(i / 60.0, 68 - 48 * Math.Exp(-i / 900.0) + 0.3 * Math.Sin(i / 7.0));
    }

    [Benchmark(Baseline = true)]
    public double WorksheetTrapezoid()
    {
        double sum = 0;
        for (int set = 0; set < _sets.Length; set++)
        {
            double last = Math.Pow(10, (_readings[0].Celsius - 60) / 5);
            for (int i = 1; i < _readings.Length; i++)
            {
                double rate = Math.Pow(10, (_readings[i].Celsius - 60) / 5);
                sum += (rate + last) / 2 * (_readings[i].Minutes - _readings[i - 1].Minutes);
                last = rate;
            }
        }
        return sum;
    }

    [Benchmark]
    public double GaussLegendre()
    {
        double sum = 0;
        for (int set = 0; set < _sets.Length; set++)
        {
            for (int i = 1; i < _readings.Length; i++)
            {
                double minutes = _readings[i].Minutes - _readings[i - 1].Minutes, from = _readings[i - 1].Celsius, to = _readings[i].Celsius, part = 0;
                for (int k = 0; k < _rule.Order; k++)
                    part += _rule.GetWeight(k) * Math.Pow(10, (from + (to - from) * _rule.GetAbscissa(k) - 60) / 5);
                sum += minutes * part;
            }
        }
        return sum;
    }

    [Benchmark]
    public double Trapezoid()
    {
        double sum = 0;
        foreach (KineticSet set in _sets)
            sum += set.LogReductionByTrapezoid(_readings);
        return sum;
    }

    [Benchmark]
    public double Exact()
    {
        double sum = 0;
        foreach (KineticSet set in _sets)
            sum += set.LogReduction(_readings).Likely;
        return sum;
    }
}
