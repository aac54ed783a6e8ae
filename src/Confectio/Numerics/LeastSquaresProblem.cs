namespace Confectio.Numerics;

/// <summary>
/// A constrained least-squares problem, dense:
/// minimise ½‖Ax − b‖² + ½‖D(x − x₀)‖² + c·x subject to low ≤ Cx ≤ high and lower ≤ x ≤ upper. Equal ends make an equality, an
/// infinite end a one-sided limit. A row of A and its b are called a target.
/// </summary>
/// <remarks>The object is made to be filled again and again: <see cref="Reset"/> keeps the memory.</remarks>
internal sealed class LeastSquaresProblem
{
    private double[] _targets = [], _targetValues = [], _rows = [], _low = [], _high = [], _perVariable = [];

    public LeastSquaresProblem(int variables) => Reset(variables);

    /// <summary>How many unknowns there are.</summary>
    public int Variables { get; private set; }

    /// <summary>The distance from one row of A or C to the next: the unknowns, in whole blocks.</summary>
    public int Stride { get; private set; }

    public int Targets { get; private set; }

    public int Rows { get; private set; }

    /// <summary>Whether ends of conditions were found by another solve, and so are rounded.</summary>
    public bool IsHandedDown { get; set; }

    /// <summary>The diagonal of D: how strongly each unknown is held at its centre, 0 or more.</summary>
    public Span<double> Prior => Part(0);

    /// <summary>x₀.</summary>
    public Span<double> Centre => Part(1);

    /// <summary>c, the linear cost.</summary>
    public Span<double> Cost => Part(2);

    public Span<double> Lower => Part(3)[..Variables];

    public Span<double> Upper => Part(4)[..Variables];

    public Span<double> TargetValues => _targetValues.AsSpan(0, Targets);

    public Span<double> RowLow => _low.AsSpan(0, Rows);

    public Span<double> RowHigh => _high.AsSpan(0, Rows);

    /// <summary>Forgets everything: no targets, no rows, no bounds, no prior.</summary>
    public void Reset(int variables)
    {
        Variables = Guard.InRange(variables, 1, 100_000);
        Stride = Vectors.Padded(variables);
        Targets = Rows = 0;
        IsHandedDown = false;
        if (_perVariable.Length < 5 * Stride)
            _perVariable = new double[5 * Stride];
        _perVariable.AsSpan(0, 3 * Stride).Clear();
        Lower.Fill(double.NegativeInfinity);
        Upper.Fill(double.PositiveInfinity);
    }

    /// <summary>Adds the target coefficients·x = value, multiplied through by its weight.</summary>
    public void AddTarget(ReadOnlySpan<double> coefficients, double value, double weight = 1)
    {
        Grow(ref _targets, (Targets + 1) * Stride);
        Grow(ref _targetValues, Targets + 1);
        Targets++;
        Span<double> row = TargetRow(Targets - 1);
        row.Clear();
        for (int j = 0; j < Variables; j++)
            row[j] = weight * coefficients[j];
        _targetValues[Targets - 1] = weight * value;
    }

    /// <summary>
    /// Forgets everything and takes up the rows, bounds and centre of another problem, with so many unknowns more that none of them knows.
    /// </summary>
    public void StartFrom(LeastSquaresProblem conditions, int extra)
    {
        Reset(conditions.Variables + extra);
        conditions.Lower.CopyTo(Lower);
        conditions.Upper.CopyTo(Upper);
        conditions.Centre[..conditions.Variables].CopyTo(Centre);
        for (int k = 0; k < conditions.Rows; k++)
            conditions.Row(k)[..conditions.Variables].CopyTo(NewRow(conditions.RowLow[k], conditions.RowHigh[k]));
    }

    /// <summary>
    /// Adds the target low ≤ coefficients·x ≤ high. A place within the range, the unknown that is named, stands in for the value aimed at: no
    /// cost inside, a quadratic one outside.
    /// </summary>
    public void AddTargetWithin(Span<double> coefficients, double low, double high, double weight, int standIn)
    {
        Lower[standIn] = low;
        Upper[standIn] = high;
        coefficients[standIn] = -1;
        AddTarget(coefficients, 0, weight);
        coefficients[standIn] = 0;
    }

    /// <summary>Adds the condition low ≤ coefficients·x ≤ high.</summary>
    public void AddRow(ReadOnlySpan<double> coefficients, double low, double high) => coefficients[..Variables].CopyTo(NewRow(low, high));

    /// <summary>A row of A, with the zeros that fill its last block.</summary>
    public Span<double> TargetRow(int target) => _targets.AsSpan(target * Stride, Stride);

    /// <summary>A row of C, with the zeros that fill its last block.</summary>
    public Span<double> Row(int row) => _rows.AsSpan(row * Stride, Stride);

    /// <summary>row·x, and the sum of the magnitudes of its terms, to which its rounding is relative.</summary>
    public static (double Value, double Terms) Evaluate(ReadOnlySpan<double> row, ReadOnlySpan<double> x)
    {
        double value = 0, terms = 0;
        for (int j = 0; j < x.Length; j++)
        {
            value += row[j] * x[j];
            terms += Math.Abs(row[j] * x[j]);
        }
        return (value, terms);
    }

    private Span<double> NewRow(double low, double high)
    {
        Grow(ref _rows, (Rows + 1) * Stride);
        Grow(ref _low, Rows + 1);
        Grow(ref _high, Rows + 1);
        Rows++;
        Span<double> row = Row(Rows - 1);
        row.Clear();
        _low[Rows - 1] = low;
        _high[Rows - 1] = high;
        return row;
    }

    private Span<double> Part(int part) => _perVariable.AsSpan(part * Stride, Stride);

    private static void Grow(ref double[] array, int length)
    {
        if (array.Length < length)
            Array.Resize(ref array, Math.Max(length, 2 * array.Length));
    }
}
