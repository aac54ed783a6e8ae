using System.Text.Json;
using Confectio.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Confectio.Tests.Numerics;

/// <summary>A problem of Oracles/least-squares as it stands in its file, every number exact. The README there states the conventions.</summary>
internal sealed class OracleProblem
{
    private OracleProblem(string id, JsonElement data, string inequalities, string inequalityEnds)
    {
        Id = id;
        Targets = Table(data, "A");
        TargetValues = List(data, "b");
        // A matrix file states the normal form beside the rows.
        Curvature = Targets.Length > 0 ? [] : Table(data, "H");
        Cost = Targets.Length > 0 ? [] : List(data, "c");
        CostConstant = data.TryGetProperty("c0", out JsonElement constant) ? Number(constant) : ExactFraction.Zero;
        Equalities = Table(data, "E");
        EqualityValues = List(data, "f");
        Inequalities = Table(data, inequalities);
        InequalityEnds = List(data, inequalityEnds);
        Variables = data.GetProperty("n").GetInt32();
        Lower = Ends(data, "lo");
        Upper = Ends(data, "hi");
    }

    public string Id { get; }

    public int Variables { get; }

    public ExactFraction[][] Targets { get; }

    public ExactFraction[] TargetValues { get; }

    public ExactFraction[][] Curvature { get; }

    public ExactFraction[] Cost { get; }

    public ExactFraction CostConstant { get; }

    public ExactFraction[][] Equalities { get; }

    public ExactFraction[] EqualityValues { get; }

    public ExactFraction[][] Inequalities { get; }

    public ExactFraction[] InequalityEnds { get; }

    public ExactFraction?[] Lower { get; }

    public ExactFraction?[] Upper { get; }

    public ExactFraction[] Answer { get; private init; } = [];

    public double Objective { get; private init; }

    public double[] EqualityMultipliers { get; private init; } = [];

    /// <summary>The active conditions by name, with their multipliers.</summary>
    public IReadOnlyDictionary<string, double> Active { get; private init; } = new Dictionary<string, double>();

    public static string Folder => Path.Combine(AppContext.BaseDirectory, "Oracles", "least-squares");

    public static JsonElement Read(string file) => JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, file))).RootElement;

    public static OracleProblem[] Published() => [.. Read("published_lsq_qp.json").EnumerateArray().Select(item =>
        new OracleProblem(item.GetProperty("id").GetString()!, item.GetProperty("problem"), "G", "h")
        {
            Answer = List(item, "x_exact"),
            Objective = ExactFraction.Parse(item.GetProperty("objective_exact").GetString()!).ToDouble(),
            EqualityMultipliers = [.. List(item, "eq_multipliers").Select(y => y.ToDouble())],
            Active = ActiveOf(item),
        })];

    /// <summary>F1, F2, F3, F5, F9, F10: the matrices from one file, the answer from another.</summary>
    public static OracleProblem Formula(string name)
    {
        JsonElement answer = Read("formula_problems.json").EnumerateArray().Concat(Read("formula_problems_more.json").EnumerateArray())
            .Single(item => item.GetProperty("id").GetString()!.StartsWith(name + "_", StringComparison.Ordinal));
        return new OracleProblem(name, Read($"matrix_{name}.json"), "G0", "h0")
        {
            Answer = List(answer, "x"),
            Objective = Number(answer.GetProperty("objective")).ToDouble(),
            EqualityMultipliers = [.. List(answer, "eq_multipliers").Select(y => y.ToDouble())],
            Active = ActiveOf(answer),
        };
    }

    /// <summary>The same for the kernel: the equalities first among its rows, H by a square root of it.</summary>
    public LeastSquaresProblem ForKernel()
    {
        LeastSquaresProblem problem = new(Variables);
        for (int t = 0; t < Targets.Length; t++)
            problem.AddTarget(Doubles(Targets[t]), TargetValues[t].ToDouble());
        if (Curvature.Length > 0)
            AddRootOfCurvature(problem);
        for (int k = 0; k < Equalities.Length; k++)
            problem.AddRow(Doubles(Equalities[k]), EqualityValues[k].ToDouble(), EqualityValues[k].ToDouble());
        for (int k = 0; k < Inequalities.Length; k++)
            problem.AddRow(Doubles(Inequalities[k]), InequalityEnds[k].ToDouble(), double.PositiveInfinity);
        for (int j = 0; j < Variables; j++)
        {
            problem.Lower[j] = Lower[j]?.ToDouble() ?? double.NegativeInfinity;
            problem.Upper[j] = Upper[j]?.ToDouble() ?? double.PositiveInfinity;
        }
        return problem;
    }

    /// <summary>Every inequality: its name, its normal, its end in the sense normal·x ≥ end.</summary>
    public IEnumerable<(string Name, ExactFraction[] Normal, ExactFraction End)> Conditions()
    {
        for (int k = 0; k < Inequalities.Length; k++)
            yield return ($"G{k}", Inequalities[k], InequalityEnds[k]);
        ExactFraction one = new(1, 1), minusOne = new(-1, 1);
        for (int j = 0; j < Variables; j++)
        {
            if (Lower[j] is ExactFraction low)
                yield return ($"lo{j}", Unit(j, one), low);
            if (Upper[j] is ExactFraction high)
                yield return ($"hi{j}", Unit(j, minusOne), ExactFraction.Zero - high);
        }
    }

    /// <summary>What a condition is inside its end, exactly, at the exact answer.</summary>
    public ExactFraction SlackAtAnswer(ExactFraction[] normal, ExactFraction end) => Dot(normal, Answer) - end;

    /// <summary>Whether every active condition pulls and every other one is slack: only then is there one right active set.</summary>
    public bool StrictlyComplementary => Conditions().All(condition =>
        (SlackAtAnswer(condition.Normal, condition.End).Sign == 0) == (Active.TryGetValue(condition.Name, out double multiplier) && multiplier != 0));

    /// <summary>The gradient at a point, and what the terms of its entries add up to.</summary>
    public (double[] Gradient, double Terms) GradientAtAnswer()
    {
        ExactFraction[] gradient = new ExactFraction[Variables];
        double terms = 0;
        for (int j = 0; j < Variables; j++)
        {
            gradient[j] = Curvature.Length > 0 ? Dot(Curvature[j], Answer) + Cost[j] : ExactFraction.Zero;
            terms = Math.Max(terms, Curvature.Length > 0 ? Math.Abs(Cost[j].ToDouble()) : 0);
        }
        for (int t = 0; t < Targets.Length; t++)
        {
            ExactFraction residual = Dot(Targets[t], Answer) - TargetValues[t];
            for (int j = 0; j < Variables; j++)
            {
                gradient[j] += Targets[t][j] * residual;
                terms = Math.Max(terms, Math.Abs((Targets[t][j] * TargetValues[t]).ToDouble()));
            }
        }
        return ([.. gradient.Select(entry => entry.ToDouble())], terms);
    }

    /// <summary>The objective at x, and what its terms add up to.</summary>
    public (double Value, double Terms) ObjectiveAt(ReadOnlySpan<double> x)
    {
        double value = CostConstant.ToDouble(), terms = Math.Abs(value);
        for (int t = 0; t < Targets.Length; t++)
        {
            double sum = 0, b = TargetValues[t].ToDouble();
            for (int j = 0; j < Variables; j++)
                sum += Targets[t][j].ToDouble() * x[j];
            value += (sum - b) * (sum - b) / 2;
            terms += (sum * sum + b * b) / 2;
        }
        for (int i = 0; i < Curvature.Length; i++)
        {
            double pull = Cost[i].ToDouble() * x[i];
            value += pull;
            terms += Math.Abs(pull);
            for (int j = 0; j < Variables; j++)
            {
                double part = Curvature[i][j].ToDouble() * x[i] * x[j] / 2;
                value += part;
                terms += Math.Abs(part);
            }
        }
        return (value, terms);
    }

    public static double[] Doubles(ExactFraction[] row) => [.. row.Select(entry => entry.ToDouble())];

    private static ExactFraction Dot(ExactFraction[] a, ExactFraction[] b)
    {
        ExactFraction sum = ExactFraction.Zero;
        for (int j = 0; j < a.Length; j++)
            sum += a[j] * b[j];
        return sum;
    }

    private ExactFraction[] Unit(int at, ExactFraction entry)
    {
        ExactFraction[] unit = new ExactFraction[Variables];
        Array.Fill(unit, ExactFraction.Zero);
        unit[at] = entry;
        return unit;
    }

    // R'R = H: by Cholesky, or by eigenvalues where H is singular.
    private void AddRootOfCurvature(LeastSquaresProblem problem)
    {
        Matrix<double> h = Matrix<double>.Build.Dense(Variables, Variables, (i, j) => Curvature[i][j].ToDouble());
        var eigen = h.Evd(Symmetricity.Symmetric);
        double largest = eigen.EigenValues.Max(value => value.Real);
        // An eigenvalue of a singular matrix of small whole numbers comes out at some 1e-16 of the largest.
        const double Singular = 1e-12;
        if (eigen.EigenValues.Min(value => value.Real) > Singular * largest)
        {
            Matrix<double> root = h.Cholesky().Factor.Transpose();
            for (int i = 0; i < Variables; i++)
                problem.AddTarget(root.Row(i).ToArray(), 0);
        }
        else
        {
            for (int i = 0; i < Variables; i++)
            {
                if (eigen.EigenValues[i].Real > Singular * largest)
                    problem.AddTarget(eigen.EigenVectors.Column(i).ToArray(), 0, Math.Sqrt(eigen.EigenValues[i].Real));
            }
        }
        Doubles(Cost).CopyTo(problem.Cost);
    }

    private static Dictionary<string, double> ActiveOf(JsonElement item) =>
        item.GetProperty("active").EnumerateArray().Select(name => name.GetString()!)
            .Zip(List(item, "ineq_multipliers"), (name, multiplier) => (name, multiplier.ToDouble())).ToDictionary();

    private static ExactFraction Number(JsonElement element) =>
        ExactFraction.Parse(element.ValueKind == JsonValueKind.String ? element.GetString()! : element.GetRawText());

    private static ExactFraction[] List(JsonElement data, string name) =>
        data.TryGetProperty(name, out JsonElement list) ? [.. list.EnumerateArray().Select(Number)] : [];

    private static ExactFraction[][] Table(JsonElement data, string name) =>
        data.TryGetProperty(name, out JsonElement table) ? [.. table.EnumerateArray().Select(row => row.EnumerateArray().Select(Number).ToArray())] : [];

    private ExactFraction?[] Ends(JsonElement data, string name) =>
        data.TryGetProperty(name, out JsonElement list) && list.ValueKind == JsonValueKind.Array
            ? [.. list.EnumerateArray().Select(end => end.ValueKind == JsonValueKind.Null ? (ExactFraction?)null : Number(end))]
            : new ExactFraction?[Variables];
}
