using Confectio.Numerics;

namespace Confectio.Vetting;

/// <summary>What the rows of a group have in common.</summary>
internal enum GroupKind
{
    /// <summary>An ingredient with a known bulk density, measured by volume.</summary>
    Density,

    /// <summary>An ingredient's pieces, of known weight.</summary>
    Piece,

    /// <summary>Masses written in two units: nothing is uncertain but the rounding.</summary>
    Mass,

    /// <summary>A name, or a packing, of which no weight is known: its rows can only be held against each other.</summary>
    Unknown,
}

/// <summary>The rows of one ingredient in one stated packing, and the nodes over which their common deviation is summed.</summary>
internal sealed class RowGroup
{
    /// <summary>
    /// Of the spread of a density, the part by which one row of a table differs from the next; the rest the rows share.
    /// An estimate: USDA SR's own cups and spoons of one powder differ by up to 7 %.
    /// </summary>
    private const double OwnShare = 0.35;

    /// <summary>No kitchen scale and cup agree better than this.</summary>
    private const double LeastDeviation = 0.004;

    /// <summary>Nodes and configurations with less posterior weight than this change no printed digit.</summary>
    public const double Negligible = 1e-10;

    /// <summary>Keeps a logarithm finite where every node underflows.</summary>
    private const double Smallest = 1e-300;

    /// <summary>Nodes a row's deviation apart: the logarithm of a row's likelihood is a smooth curve of that scale.</summary>
    private const double Spacing = 0.9;

    /// <summary>
    /// Rows of one ingredient are copies of one table maker's habits, not independent witnesses: beyond this many they add
    /// nothing more to what is known of their common deviation.
    /// </summary>
    private const double MostWitnesses = 16;

    private readonly int _systemCount;
    private readonly double _first;
    private readonly double _step;
    private readonly double[] _logLikelihood;
    private readonly double[] _product;
    private readonly bool _offsetApplies;
    private double[] _posterior = [];

    public RowGroup(GroupKind kind, int systemCount, double logWeight = 0, double logUncertainty = 0, bool isPowder = false, bool isPoured = false)
    {
        Kind = kind;
        LogWeight = logWeight;
        Grid = isPoured ? NuisanceGrid.Poured : NuisanceGrid.Packed;
        _systemCount = systemCount;
        _offsetApplies = isPowder;
        if (kind == GroupKind.Mass)
        {
            Deviation = 0.0005;
            NodeCount = 1;
        }
        else if (kind == GroupKind.Unknown)
        {
            // Anything from a puff of marshmallow (0.05 g/mL) to salt (2 g/mL).
            Deviation = 0.02;
            _first = Math.Log(0.05);
            _step = Spacing * Deviation;
            NodeCount = (int)Math.Ceiling((Math.Log(2) - _first) / _step) + 1;
        }
        else
        {
            Deviation = Math.Max(OwnShare * logUncertainty, LeastDeviation);
            Shared = Math.Max(Math.Sqrt(Math.Max(0, logUncertainty * logUncertainty - Deviation * Deviation)), LeastDeviation);
            // The packed grid is the wider one; liquids keep its reach, so that a gross deviation still has a node.
            double reach = 3.5 * NuisanceGrid.Packed.WidestWidth * Shared + (isPowder ? NuisanceGrid.Packed.WidestOffset : 0);
            _step = Spacing * Deviation;
            int half = (int)Math.Ceiling(reach / _step);
            _first = -half * _step;
            NodeCount = 2 * half + 1;
        }
        _logLikelihood = new double[systemCount * NodeCount];
        _product = new double[systemCount * NodeCount];
        Array.Fill(_product, 1);
    }

    public GroupKind Kind { get; }

    /// <summary>The logarithm of the likely grams in a millilitre or a piece; 0 where there is none.</summary>
    public double LogWeight { get; }

    /// <summary>How much less well known its density may be: what pours and finds its level is kept near by physics.</summary>
    public NuisanceGrid Grid { get; }

    public int RowCount { get; set; }

    /// <summary>The standard deviation of a single row about its group.</summary>
    public double Deviation { get; }

    /// <summary>The standard deviation of the group about our likely density.</summary>
    public double Shared { get; }

    public int NodeCount { get; }

    /// <summary>Multiplies the likelihood of one more row in; a logarithm is taken only when the product runs out of range.</summary>
    public void Include(int system, ReadOnlySpan<double> likelihood)
    {
        Span<double> product = _product.AsSpan(system * NodeCount, NodeCount), logs = _logLikelihood.AsSpan(system * NodeCount, NodeCount);
        for (int j = 0; j < likelihood.Length; j++)
        {
            product[j] *= likelihood[j];
            if (product[j] < 1e-250)
            {
                logs[j] += Math.Log(product[j]);
                product[j] = 1;
            }
        }
    }

    public ReadOnlySpan<double> Posterior(int system) => _posterior.AsSpan(system * NodeCount, NodeCount);

    /// <summary>Adds weight times the probability of the digits to the nodes from first to last that the hypothesis reaches.</summary>
    public void AddProbability(in RowHypothesis hypothesis, double weight, Span<double> target, int first, int last)
    {
        if (NodeCount > 1)
        {
            double reach = RowHypothesis.Reach * hypothesis.Deviation;
            first = Math.Max(first, (int)Math.Ceiling(Math.Min((hypothesis.Low - reach - _first) / _step, NodeCount)));
            last = Math.Min(last, (int)Math.Floor(Math.Max((hypothesis.High + reach - _first) / _step, -1)));
        }
        if (first > last)
            return;
        double t = _first + first * _step;
        NormalDistribution.AddBetween(target[first..(last + 1)], weight,
            (hypothesis.Low - t) / hypothesis.Deviation, (hypothesis.High - t) / hypothesis.Deviation, _step / hypothesis.Deviation);
    }

    /// <summary>
    /// The logarithm of the probability of all the group's rows, t summed over with its prior. Each set of prior weights and
    /// each row of likelihoods is made once and used for every pairing.
    /// </summary>
    public void LogEvidence(Span<double> evidence)
    {
        double[] scaled = new double[FineCount];
        double[][] priors = Priors();
        for (int k = 0; k < _systemCount; k++)
        {
            double highest = Scale(k, scaled);
            double last = 0;
            for (int p = 0; p < priors.Length; p++)
            {
                if (p == 0 || priors[p] != priors[p - 1])
                    last = highest + Math.Log(Math.Max(Dot(priors[p], scaled), Smallest));
                evidence[k * priors.Length + p] = last;
            }
        }
    }

    /// <summary>Makes the posterior over the nodes, given the posterior over systems, widths and offsets.</summary>
    public void SetPosterior(ReadOnlySpan<double> shares)
    {
        _posterior = new double[_systemCount * NodeCount];
        double[] scaled = new double[FineCount], fine = new double[FineCount];
        double[][] priors = Priors();
        double sum = 0;
        for (int k = 0; k < _systemCount; k++)
        {
            ReadOnlySpan<double> own = shares.Slice(k * priors.Length, priors.Length);
            if (own.IndexOfAnyExceptInRange(0, Negligible) < 0)
                continue;
            Scale(k, scaled);
            Array.Clear(fine);
            for (int p = 0; p < priors.Length; p++)
            {
                double factor = own[p] / Math.Max(Dot(priors[p], scaled), Smallest);
                for (int i = 0; i < fine.Length && own[p] > Negligible; i++)
                    fine[i] += factor * priors[p][i] * scaled[i];
            }
            // A point between two nodes is shared between them.
            for (int i = 0; i < fine.Length; i++)
            {
                int node = k * NodeCount + i / Fine;
                double part = (double)(i % Fine) / Fine;
                _posterior[node] += fine[i] * (1 - part);
                if (part > 0)
                    _posterior[node + 1] += fine[i] * part;
                sum += fine[i];
            }
        }
        for (int i = 0; i < _posterior.Length; i++)
            _posterior[i] /= sum;
    }

    /// <summary>Into how many parts a step between nodes is cut by interpolation: many rows make a narrow peak.</summary>
    private int Fine => RowCount <= 2 ? 1 : RowCount <= 8 ? 2 : 4;

    private int FineCount => (NodeCount - 1) * Fine + 1;

    /// <summary>The likelihood of all rows at the fine points, relative to the highest; answers the logarithm of that.</summary>
    private double Scale(int system, double[] scaled)
    {
        double[] logs = new double[NodeCount];
        double witnesses = Math.Min(1, MostWitnesses / Math.Max(1, RowCount));
        for (int j = 0; j < logs.Length; j++)
            logs[j] = witnesses * (_logLikelihood[system * NodeCount + j] + Math.Log(_product[system * NodeCount + j]));
        double highest = double.NegativeInfinity;
        for (int i = 0; i < scaled.Length; i++)
        {
            int j = i / Fine;
            double x = (double)(i % Fine) / Fine, b = logs[j];
            if (x > 0)
            {
                // Cubic through four neighbours, which is exact for the parabola that a sum of normal logarithms is.
                double a = logs[Math.Max(j - 1, 0)], c = logs[j + 1], d = logs[Math.Min(j + 2, NodeCount - 1)];
                b += 0.5 * x * (c - a + x * (2 * a - 5 * b + 4 * c - d + x * (3 * (b - c) + d - a)));
            }
            scaled[i] = b;
            highest = Math.Max(highest, b);
        }
        for (int i = 0; i < scaled.Length; i++)
            scaled[i] = Math.Exp(scaled[i] - highest);
        return highest;
    }

    private double[][] Priors()
    {
        double[][] priors = new double[Grid.Count][];
        for (int p = 0; p < priors.Length; p++)
        {
            // Without a common offset, all offsets give the same prior.
            bool same = p > 0 && !_offsetApplies && Grid.Width(p) == Grid.Width(p - 1);
            priors[p] = same ? priors[p - 1] : Prior(Grid.Width(p), Grid.Offset(p));
        }
        return priors;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int j = 0; j < a.Length; j++)
            sum += a[j] * b[j];
        return sum;
    }

    private double[] Prior(double width, double offset)
    {
        double[] prior = new double[FineCount];
        double sum = 0;
        for (int i = 0; i < prior.Length; i++)
        {
            double t = _first + i * _step / Fine;
            double z = Kind is GroupKind.Mass or GroupKind.Unknown ? 0 : (t - (_offsetApplies ? offset : 0)) / (width * Shared);
            prior[i] = Math.Exp(-z * z / 2);
            sum += prior[i];
        }
        for (int i = 0; i < prior.Length; i++)
            prior[i] /= sum;
        return prior;
    }
}
