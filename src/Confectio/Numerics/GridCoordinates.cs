namespace Confectio.Numerics;

/// <summary>
/// Coordinates z in which a grid is searched, k = Uz with whole numbers and |det U| = 1. The free unknowns are mixed so that the
/// steps are short and nearly at right angles; those a bound holds at a price keep a coordinate each, and come last. In them the
/// objective is at least root bound + Σ costⱼ(zⱼ) + ½‖R(z − centre)‖², R upper triangular and every cost at least 0.
/// </summary>
/// <remarks>
/// Sixteen ingredients and six targets leave many directions to the weak prior alone. With one coordinate per ingredient a search
/// sees the cost of a wrong value only after the next ten; in mixed coordinates it sees it at once. Twenty random problems took
/// 71 nodes each in place of 6000.
/// The price is that the limits of the free unknowns are no longer limits of coordinates. They are rows.
/// </remarks>
internal sealed class GridCoordinates
{
    private const int Passes = 3;

    private readonly GridModel _model;
    private readonly int _mixed;
    private readonly double[][] _combination;   // the mixed part of U, by columns

    /// <param name="model">The grid.</param>
    /// <param name="stiffness">
    /// How much the limits count beside the targets: a coordinate must not leap across the box in one step. 0 up.
    /// </param>
    public GridCoordinates(GridModel model, double stiffness)
    {
        int count = model.Count;
        _model = model;
        while (_mixed < count && Math.Abs(model.Prices[_mixed]) <= model.Rounding)
            _mixed++;
        _combination = Mix(stiffness, out double[][] inverse);
        Root = Factor();
        Centre = (double[])model.Centre.Clone();
        Lowest = (double[])model.Lowest.Clone();
        Highest = (double[])model.Highest.Clone();
        Slopes = (double[])model.Prices.Clone();
        LeastCosts = (double[])model.LeastCosts.Clone();
        for (int j = 0; j < _mixed; j++)
        {
            Slopes[j] = LeastCosts[j] = Centre[j] = Lowest[j] = Highest[j] = 0;
            for (int c = 0; c < _mixed; c++)
            {
                double times = inverse[j][c];
                Centre[j] += times * model.Centre[c];
                Lowest[j] += times * (times > 0 ? model.Lowest[c] : model.Highest[c]);
                Highest[j] += times * (times > 0 ? model.Highest[c] : model.Lowest[c]);
            }
        }
        List<GridRow> rows = [];
        for (int c = 0; c < _mixed; c++)
        {
            double[] own = new double[count];
            own[c] = 1;
            rows.Add(new GridRow(Transform(own), model.Lowest[c], model.Highest[c]));
        }
        foreach (GridRow row in model.Rows)
            rows.Add(new GridRow(Transform(row.Coefficients), row.Low, row.High));
        Rows = [.. rows];

        SumUnits = model.WholeSum is null ? new double[count] : Transform(model.Units);
        Moduli = new double[count];
        double divisor = model.CompletingUnits;
        for (int j = 0; j < count; j++)
        {
            double next = GreatestDivisor(divisor, SumUnits[j]);
            Moduli[j] = next == divisor ? 0 : divisor;
            divisor = next;
        }
        SumIsDivisible = model.WholeSum is not { } sum || sum % divisor == 0;
    }

    /// <summary>R by rows.</summary>
    public double[][] Root { get; }

    public double[] Centre { get; }

    public double[] Lowest { get; }

    public double[] Highest { get; }

    /// <summary>Coordinate j at z costs slope (z − centre) − least cost.</summary>
    public double[] Slopes { get; }

    public double[] LeastCosts { get; }

    /// <summary>Conditions on z.</summary>
    public GridRow[] Rows { get; }

    /// <summary>One step of each coordinate in whole units of the sum; 0 where the sum is not done in whole units.</summary>
    public double[] SumUnits { get; }

    /// <summary>What coordinate j and those after it leave of the sum must be divisible by this; 0 where it is anyway.</summary>
    public double[] Moduli { get; }

    /// <summary>False where no whole numbers at all make the sum.</summary>
    public bool SumIsDivisible { get; }

    /// <summary>k = Uz.</summary>
    public void ToSteps(ReadOnlySpan<double> z, Span<double> k)
    {
        z.CopyTo(k);
        k[.._mixed].Clear();
        for (int j = 0; j < _mixed; j++)
        {
            for (int c = 0; c < _mixed; c++)
                k[c] += _combination[j][c] * z[j];
        }
    }

    // The mean loss when each coordinate is rounded in turn is Σ rⱼⱼ²/24. Against a loss of this size the limits are weighed: a
    // coordinate step through the whole range of an unknown counts as stiffness times as far as the loss reaches. Better
    // coordinates lose less, so a few passes find the size.
    private double[][] Mix(double stiffness, out double[][] inverse)
    {
        double loss = 0;
        for (int c = 0; c < _mixed; c++)
            loss += LatticeBasis.Square(_model.Columns[c]) / 24;
        if (loss == 0)
            loss = 1;
        double[][] combination = [];
        inverse = [];
        for (int pass = 0; pass < Passes; pass++)
        {
            double[][] triangle = new double[_mixed][];
            for (int c = 0; c < _mixed; c++)
            {
                double[] limits = new double[_mixed];
                limits[c] = stiffness * Math.Sqrt(2 * loss) / (_model.Highest[c] - _model.Lowest[c]);
                triangle[c] = [.. _model.Columns[c], .. limits];
            }
            LatticeBasis.MakeTriangular(triangle);
            combination = LatticeBasis.Reduce(triangle, out inverse);
            loss = 0;
            for (int c = 0; c < _mixed; c++)
                loss += triangle[c][c] * triangle[c][c] / 24;
        }
        return combination;
    }

    private double[][] Factor()
    {
        int count = _model.Count;
        double[][] basis = [.. _model.Columns.Select(column => (double[])column.Clone())];
        for (int j = 0; j < _mixed; j++)
        {
            for (int i = 0; i < basis[j].Length; i++)
            {
                double sum = 0;
                for (int c = 0; c < _mixed; c++)
                    sum += _combination[j][c] * _model.Columns[c][i];
                basis[j][i] = sum;
            }
        }
        LatticeBasis.MakeTriangular(basis);
        double[][] root = new double[count][];
        for (int i = 0; i < count; i++)
        {
            root[i] = new double[count];
            for (int j = i; j < count; j++)
                root[i][j] = basis[j][i];
        }
        return root;
    }

    // Coefficients of k, as coefficients of z.
    private double[] Transform(double[] coefficients)
    {
        double[] transformed = (double[])coefficients.Clone();
        for (int j = 0; j < _mixed; j++)
        {
            transformed[j] = 0;
            for (int c = 0; c < _mixed; c++)
                transformed[j] += _combination[j][c] * coefficients[c];
        }
        return transformed;
    }

    private static double GreatestDivisor(double a, double b)
    {
        while (b != 0)
            (a, b) = (b, a % b);
        return Math.Abs(a);
    }
}
