using Confectio.Numerics;

namespace Confectio.Tests.Numerics;

/// <summary>What makes a random problem hard.</summary>
internal enum Hardship
{
    /// <summary>Nothing: dense random numbers, a prior on every unknown.</summary>
    None,

    /// <summary>Whole numbers of -2 to 2, many of them 0: ties, equal rows and columns, fixed unknowns, dependent equalities.</summary>
    Degenerate,

    /// <summary>The same without a prior: the curvature is singular more often than not.</summary>
    DegenerateWithoutPrior,

    /// <summary>Unknowns in units that differ by up to 10¹⁶, and rows by up to 10¹².</summary>
    Scale,

    /// <summary>Rows that differ by a thousandth to a millionth.</summary>
    NearlyParallel,

    /// <summary>
    /// Rows that differ by a millionth to a billionth: a rounding of their ends moves the answer by as much as 1e-7, and may make the
    /// difference between an answer and a contradiction.
    /// </summary>
    AlmostParallel,

    /// <summary>Fewer targets than unknowns and no prior.</summary>
    NoPrior,

    /// <summary>A linear cost, and a prior on some unknowns only; all of them within finite bounds.</summary>
    Cost,
}

/// <summary>Random problems, each from its own seed.</summary>
internal sealed class FuzzProblems
{
    public const int MostVariables = 13, MostRows = 8;

    private readonly double[] _row = new double[MostVariables], _inside = new double[MostVariables], _unit = new double[MostVariables];
    private readonly LeastSquaresProblem _problem = new(1);
    private Random _random = new(0);

    /// <summary>The problem of a seed; it is overwritten by the next one.</summary>
    public LeastSquaresProblem Make(Hardship hardship, int seed)
    {
        _random = new Random(seed);
        int n = _random.Next(1, MostVariables + 1);
        _problem.Reset(n);
        if (hardship is Hardship.Degenerate or Hardship.DegenerateWithoutPrior)
            Degenerate(n, hardship == Hardship.Degenerate);
        else
            Dense(n, hardship);
        return _problem;
    }

    private void Dense(int n, Hardship hardship)
    {
        for (int j = 0; j < n; j++)
        {
            _inside[j] = Real();
            _unit[j] = hardship == Hardship.Scale ? Math.Pow(10, 16 * _random.NextDouble() - 8) : 1;
        }
        int targets = hardship == Hardship.NoPrior ? _random.Next(0, n) : _random.Next(0, n + 4);
        for (int t = 0; t < targets; t++)
        {
            FillRow(n, 0.8);
            _problem.AddTarget(_row, 2 * Real());
        }
        for (int j = 0; j < n; j++)
        {
            bool held = hardship != Hardship.NoPrior && (hardship != Hardship.Cost || _random.Next(2) == 0);
            _problem.Prior[j] = held ? (0.05 + _random.NextDouble()) * _unit[j] : 0;
            _problem.Centre[j] = 2 * Real() / _unit[j];
            _problem.Cost[j] = hardship == Hardship.Cost ? Real() : 0;
        }
        // Half of the problems have an answer by construction, the others if they happen to.
        bool possible = _random.Next(2) == 0;
        int rows = _random.Next(0, MostRows + 1);
        for (int k = 0; k < rows; k++)
        {
            double scale = hardship == Hardship.Scale ? Math.Pow(10, 12 * _random.NextDouble() - 6) : 1;
            if ((hardship is Hardship.NearlyParallel or Hardship.AlmostParallel) && k % 2 == 1)
                TurnLastRow(n, k, hardship == Hardship.NearlyParallel ? -3 : -6);
            else
                FillRow(n, 0.7);
            double value = 0;
            for (int j = 0; j < n; j++)
            {
                value += _row[j] * _inside[j] / _unit[j];
                _row[j] *= scale;
            }
            (double low, double high) = Ends(possible ? value : Real(), possible, false);
            _problem.AddRow(_row, low * scale, high * scale);
        }
        for (int j = 0; j < n; j++)
        {
            (double low, double high) = Ends(possible ? _inside[j] : Real(), possible, hardship == Hardship.Cost);
            _problem.Lower[j] = low / _unit[j];
            _problem.Upper[j] = high / _unit[j];
        }
    }

    private void FillRow(int n, double filled)
    {
        for (int j = 0; j < n; j++)
            _row[j] = _random.NextDouble() < filled ? Real() * _unit[j] : 0;
    }

    private void TurnLastRow(int n, int row, int magnitude)
    {
        double by = Math.Pow(10, magnitude - 3 * _random.NextDouble());
        for (int j = 0; j < n; j++)
            _row[j] = _problem.Row(row - 1)[j] + by * Real();
    }

    private (double Low, double High) Ends(double value, bool around, bool finite)
    {
        double below = around ? _random.NextDouble() / 2 : 0, above = _random.NextDouble();
        return _random.Next(finite ? 4 : 8) switch
        {
            0 => (value, value),
            1 or 2 or 3 => (value - below, value + above),
            4 or 5 => (value - below, double.PositiveInfinity),
            6 => (double.NegativeInfinity, value + above),
            _ => (double.NegativeInfinity, double.PositiveInfinity),
        };
    }

    private void Degenerate(int n, bool held)
    {
        int twin = _random.Next(2) == 0 ? _random.Next(n) : -1, targets = _random.Next(0, n + 2);
        for (int t = 0; t < targets; t++)
        {
            FillWhole(n, twin);
            _problem.AddTarget(_row, _random.Next(-4, 5));
        }
        for (int j = 0; j < n; j++)
        {
            _problem.Prior[j] = held ? _random.Next(1, 3) : 0;
            _problem.Centre[j] = _random.Next(-3, 4);
            _inside[j] = _random.Next(-2, 3);
        }
        bool possible = _random.Next(3) > 0;
        int rows = _random.Next(0, MostRows + 1);
        for (int k = 0; k < rows; k++)
        {
            if (k > 0 && _random.Next(4) == 0)
                _problem.Row(k - 1)[..n].CopyTo(_row);
            else if (k > 1 && _random.Next(4) == 0)
                AddLastTwoRows(n, k);
            else
                FillWhole(n, twin);
            double value = 0;
            for (int j = 0; j < n; j++)
                value += _row[j] * _inside[j];
            (double low, double high) = WholeEnds(possible ? value : _random.Next(-3, 4), possible);
            _problem.AddRow(_row, low, high);
        }
        for (int j = 0; j < n; j++)
            (_problem.Lower[j], _problem.Upper[j]) = WholeEnds(possible ? _inside[j] : _random.Next(-3, 4), possible);
    }

    private void FillWhole(int n, int twin)
    {
        for (int j = 0; j < n; j++)
            _row[j] = _random.Next(2) == 0 ? 0 : _random.Next(-2, 3);
        if (twin >= 0)
            _row[twin] = _row[0];
    }

    private void AddLastTwoRows(int n, int row)
    {
        for (int j = 0; j < n; j++)
            _row[j] = _problem.Row(row - 1)[j] + _problem.Row(row - 2)[j];
    }

    private (double Low, double High) WholeEnds(double value, bool around)
    {
        double low = value - (around ? _random.Next(0, 2) : 0);
        return _random.Next(8) switch
        {
            0 or 1 => (value, value),
            2 or 3 => (low, low + _random.Next(around ? 1 : 0, 4)),
            4 or 5 => (low, double.PositiveInfinity),
            6 => (double.NegativeInfinity, value),
            _ => (double.NegativeInfinity, double.PositiveInfinity),
        };
    }

    private double Real() => 2 * _random.NextDouble() - 1;
}
