using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using Confectio.Ingredients;
using Confectio.Sugars;
using MathNet.Numerics.RootFinding;

namespace Confectio.Benchmarks;

/// <summary>
/// Sugar solutions, one number at a time and a column. The peers are the definitions written out plainly below and solved by MathNet:
/// bisection from every textbook, and Brent's method. Peers and room give the same numbers within a ten-millionth.
/// </summary>
[MemoryDiagnoser]
[CategoriesColumn]
[GroupBenchmarksBy(BenchmarkLogicalGroupRule.ByCategory)]
public class SyrupPhysics
{
    private const int Rows = 100_000;
    private const double Kilopascals = 101.325, Accuracy = 1e-9;

    // kg/m3, ICUMSA SPS-4 (1998): rows of ((t - 20)/100)^k, columns of w^(j + 1).
    private static readonly double[][] s_density =
    [
        [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890], [-46.2720, -7.1720, 1.1597, 5.1126, 17.5254],
        [59.7712, 7.2491, 12.3630, -35.4791], [-47.2207, -21.6977, 27.6301], [18.3184, 12.3081],
    ];

    // Grams, molar mass, Norrish's constant. The higher saccharides are those of a 42 DE syrup, 772 g/mol.
    private static readonly (Constituent Constituent, double Grams, double MolarMass, double Norrish)[] s_mixture =
    [
        (Constituent.Sucrose, 40, 342.30, 6.47), (Constituent.Glucose, 10, 180.156, 2.25), (Constituent.Fructose, 5, 180.156, 2.25),
        (Constituent.Maltose, 8, 342.30, 4.54),
        (Constituent.HigherSaccharides, 17, 772, 2.25 + (4.54 - 2.25) * ((772 - 18.015) / (180.156 - 18.015) - 1)),
    ];

    private readonly AirPressure _pressure = AirPressure.FromKilopascals(Kilopascals);
    private readonly double[] _fractions = new double[Rows];
    private readonly double[] _celsius = new double[Rows];
    private SugarSolution _mixture = SugarSolution.PureWater;
    private double _solute, _strength;
    private double _fraction = 0.85, _boiling = 115.56, _room = 25;

    [GlobalSetup]
    public void Setup()
    {
        Random random = new(1);
        for (int i = 0; i < Rows; i++)
            _fractions[i] = 0.95 * random.NextDouble();
        _mixture = SugarSolution.FromGrams([.. s_mixture.Select(part => KeyValuePair.Create(part.Constituent, part.Grams)),
            KeyValuePair.Create(Constituent.Water, 20.0)]);
        double moles = s_mixture.Sum(part => part.Grams / part.MolarMass);
        _solute = moles / (moles + 20 / 18.015);
        _strength = Math.Pow(s_mixture.Sum(part => part.Grams / part.MolarMass * Math.Sqrt(part.Norrish / 6.47)) / moles, 2);

        Same(BoilingBisection(), Boiling());
        Same(BoilingBrent(), Boiling());
        Same(InverseBisection(), Inverse());
        Same(InverseBrent(), Inverse());
        Same(DensityPlain(), Density());
        Same(ActivityPlain(), Activity());
        Same(MixtureBisection(), Mixture());
        Same(MixtureBrent(), Mixture());
        ColumnBrent();
        double[] brent = [.. _celsius];
        Column();
        for (int i = 0; i < Rows; i++)
            Same(brent[i], _celsius[i]);
    }

    [BenchmarkCategory("boiling point"), Benchmark(Baseline = true)]
    public double BoilingBisection() => BoilingBy(Bisect, MoleFraction(_fraction), 1);

    [BenchmarkCategory("boiling point"), Benchmark]
    public double BoilingBrent() => BoilingBy(Brenton, MoleFraction(_fraction), 1);

    [BenchmarkCategory("boiling point"), Benchmark]
    public double Boiling() => SucroseSolution.BoilingCelsius(_fraction, Kilopascals);

    [BenchmarkCategory("fraction boiling at"), Benchmark(Baseline = true)]
    public double InverseBisection() => FractionBy(Bisect);

    [BenchmarkCategory("fraction boiling at"), Benchmark]
    public double InverseBrent() => FractionBy(Brenton);

    [BenchmarkCategory("fraction boiling at"), Benchmark]
    public double Inverse() => SucroseSolution.FractionBoilingAt(_boiling, Kilopascals);

    [BenchmarkCategory("density"), Benchmark(Baseline = true)]
    public double DensityPlain() => PlainDensity(_fraction, _room) / 1000;

    [BenchmarkCategory("density"), Benchmark]
    public double Density() => SucroseSolution.GramsPerMillilitre(_fraction, _room);

    [BenchmarkCategory("mixture, water activity"), Benchmark(Baseline = true)]
    public double ActivityPlain() => PlainActivity(_solute, _strength, _room + 273.15);

    [BenchmarkCategory("mixture, water activity"), Benchmark]
    public double Activity() => _mixture.WaterActivityAllDissolved(_room);

    [BenchmarkCategory("mixture, boiling point"), Benchmark(Baseline = true)]
    public double MixtureBisection() => BoilingBy(Bisect, _solute, _strength);

    [BenchmarkCategory("mixture, boiling point"), Benchmark]
    public double MixtureBrent() => BoilingBy(Brenton, _solute, _strength);

    [BenchmarkCategory("mixture, boiling point"), Benchmark]
    public double Mixture() => _mixture.BoilingCelsius(_pressure, BoilingModel.StarzakPeacock);

    [BenchmarkCategory("column of 100 000"), Benchmark(Baseline = true)]
    public void ColumnBrent()
    {
        for (int i = 0; i < Rows; i++)
            _celsius[i] = BoilingBy(Brenton, MoleFraction(_fractions[i]), 1);
    }

    [BenchmarkCategory("column of 100 000"), Benchmark]
    public void Column() => SucroseSolution.BoilingCelsius(_fractions, Kilopascals, _celsius);

    private static double Bisect(Func<double, double> miss, double low, double high) => Bisection.FindRoot(miss, low, high, Accuracy, 200);

    private static double Brenton(Func<double, double> miss, double low, double high) => Brent.FindRoot(miss, low, high, Accuracy, 200);

    private static double BoilingBy(Func<Func<double, double>, double, double, double> solver, double x, double k) =>
        solver(kelvin => Math.Log(PlainActivity(x, k, kelvin) * PlainVapourPressure(kelvin) / Kilopascals), 370, 450) - 273.15;

    private double FractionBy(Func<Func<double, double>, double, double, double> solver)
    {
        double kelvin = _boiling + 273.15;
        return solver(w => Math.Log(PlainActivity(MoleFraction(w), 1, kelvin) * PlainVapourPressure(kelvin) / Kilopascals), 0, 0.98);
    }

    // Starzak and Peacock (1997), with Norrish's rule for mixtures.
    private static double PlainActivity(double x, double k, double kelvin) =>
        (1 - x) * Math.Exp(-k * (17638 / 8.31446261815324 / kelvin) * x * x * (1 - 1.0038 * x - 0.24653 * x * x));

    // IAPWS-IF97, equation 30, kPa.
    private static double PlainVapourPressure(double kelvin)
    {
        double t = kelvin - 0.23855557567849 / (kelvin - 650.17534844798);
        double a = t * t + 1167.0521452767 * t - 724213.16703206;
        double b = -17.073846940092 * t * t + 12020.824702470 * t - 3232555.0322333;
        double c = 14.915108613530 * t * t - 4823.2657361591 * t + 405113.40542057;
        return 1000 * Math.Pow(2 * c / (-b + Math.Sqrt(b * b - 4 * a * c)), 4);
    }

    private static double PlainDensity(double w, double celsius)
    {
        double t = celsius;
        double sum = (999.83952 + 16.952577 * t - 7.9905127e-3 * Math.Pow(t, 2) - 46.241757e-6 * Math.Pow(t, 3) + 105.84601e-9 * Math.Pow(t, 4)
            - 281.03006e-12 * Math.Pow(t, 5)) / (1 + 16.887236e-3 * t);
        for (int k = 0; k < s_density.Length; k++)
        {
            for (int j = 0; j < s_density[k].Length; j++)
                sum += s_density[k][j] * Math.Pow(w, j + 1) * Math.Pow((t - 20) / 100, k);
        }
        return sum;
    }

    private static double MoleFraction(double w) => w / 342.30 / (w / 342.30 + (1 - w) / 18.015);

    // A peer that gives something else does other work. The solvers stop at a thousand-millionth of a kelvin, and of the function.
    private static void Same(double peer, double ours)
    {
        if (!(Math.Abs(peer - ours) < 1e-7))
            throw new InvalidOperationException($"The peer gives {peer:R}, the room {ours:R}.");
    }
}
