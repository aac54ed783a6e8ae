using System.Numerics;
using Confectio.Numerics;

namespace Confectio.Vetting;

/// <summary>
/// The sums over the nodes of one group in every measuring system. All groups take their turn in the same buffers: a table may
/// have as many groups as rows, and what one of them needs is far more than a row.
/// </summary>
internal sealed class GroupSums
{
    /// <summary>Nodes and configurations with less posterior weight than this change no printed digit.</summary>
    public const double Negligible = 1e-7;

    /// <summary>A shape takes some 10 kB.</summary>
    private const int MostShapes = 200;

    /// <summary>Of a likelihood this far below the highest nothing is left in a sum of doubles.</summary>
    private const double LeastLog = -80;

    /// <summary>Keeps a logarithm finite where every node underflows.</summary>
    private const double Smallest = 1e-300;

    /// <summary>
    /// Rows of one ingredient are copies of one table maker's habits, not independent witnesses: beyond this many they add
    /// nothing more to what is known of their common deviation.
    /// </summary>
    private const double MostWitnesses = 16;

    private readonly int _systemCount;
    private readonly double[] _row;
    private readonly bool[] _made;
    private readonly int[] _rowSame;
    private int[] _same;
    private int[] _next;
    private readonly double[] _product;
    private readonly double[] _posterior;
    private readonly double[] _logs;
    private readonly double[] _scaled;
    private readonly double[] _fine;
    private readonly double[] _evidence;
    private readonly Dictionary<(NuisanceGrid, GroupKind, double, double, bool, int), double[][]> _shapes = [];
    private double[][] _priors = [];
    private RowGroup _group = null!;
    private int _heard;
    private readonly double[] _logLikelihood;
    private readonly bool[] _underflowed;
    private readonly bool[] _matters;

    public GroupSums(IReadOnlyList<RowGroup> groups, int systemCount)
    {
        int nodes = 0, fine = 0, pairings = 0;
        foreach (RowGroup group in groups)
        {
            nodes = Math.Max(nodes, group.NodeCount);
            fine = Math.Max(fine, group.FineCount);
            pairings = Math.Max(pairings, group.Grid.Count);
        }
        _systemCount = systemCount;
        _logLikelihood = new double[systemCount * nodes];
        _underflowed = new bool[systemCount];
        _matters = new bool[systemCount];
        _row = new double[systemCount * nodes];
        _made = new bool[systemCount];
        _rowSame = new int[systemCount];
        _same = new int[systemCount];
        _next = new int[systemCount];
        _product = new double[systemCount * nodes];
        _posterior = new double[systemCount * nodes];
        _logs = new double[nodes];
        _scaled = new double[fine];
        _fine = new double[fine];
        _evidence = new double[systemCount * pairings];
    }

    /// <summary>Begins a group.</summary>
    public void Begin(RowGroup group)
    {
        _group = group;
        _heard = 0;
        _same.AsSpan().Clear();
        _underflowed.AsSpan().Clear();
        _product.AsSpan(0, _systemCount * group.NodeCount).Fill(1);
    }

    /// <summary>Begins with a row: no system has its likelihood yet.</summary>
    public void BeginRow()
    {
        _heard++;
        _made.AsSpan().Clear();
        _rowSame.AsSpan().Fill(-1);
    }

    /// <summary>
    /// Multiplies the likelihood of the row in where a system in which it measures the same was included already; otherwise hands out
    /// the room for it.
    /// </summary>
    public bool TryInclude(int system, int same, out Span<double> likelihood)
    {
        likelihood = Of(same, _row);
        if (!_made[same])
            return false;
        Include(system, same);
        return true;
    }

    /// <summary>Multiplies the likelihood of one more row in; a logarithm is taken only when the product runs out of range.</summary>
    public void Include(int system, int same)
    {
        _made[same] = true;
        _rowSame[system] = same;
        ReadOnlySpan<double> likelihood = Of(same, _row);
        Span<double> product = Of(system, _product);
        int i = 0;
        Vector<double> least = new(1e-250);
        bool small = false;
        for (; i <= product.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> next = new Vector<double>(product[i..]) * new Vector<double>(likelihood[i..]);
            next.CopyTo(product[i..]);
            small |= Vector.LessThanAny(next, least);
        }
        for (; i < product.Length; i++)
        {
            product[i] *= likelihood[i];
            small |= product[i] < 1e-250;
        }
        if (!small)
            return;
        Span<double> logs = Of(system, _logLikelihood);
        if (!_underflowed[system])
            logs.Clear();
        _underflowed[system] = true;
        for (int j = 0; j < product.Length; j++)
        {
            if (product[j] < 1e-250)
            {
                logs[j] += Math.Log(product[j]);
                product[j] = 1;
            }
        }
    }

    /// <summary>Ends a row: which systems it could not tell apart.</summary>
    public void EndRow()
    {
        for (int k = 0; k < _systemCount; k++)
        {
            int first = 0;
            while (_same[first] != _same[k] || _rowSame[first] != _rowSame[k])
                first++;
            _next[k] = first;
        }
        (_same, _next) = (_next, _same);
    }

    /// <summary>Whether a system has a share worth judging by, after <see cref="SetPosterior"/>.</summary>
    public bool IsJudged(int system) => _matters[system];

    public ReadOnlySpan<double> Posterior(int system) => Of(system, _posterior);

    /// <summary>
    /// Adds the logarithm of the probability of all the group's rows, t summed over with its prior. Each set of prior weights and
    /// each row of likelihoods is made once and used for every pairing.
    /// </summary>
    public void AddLogEvidence(Span<double> evidence)
    {
        FillPriors();
        int pairings = _group.Grid.Count;
        for (int k = 0; k < _systemCount; k++)
        {
            if (_same[k] < k)
            {
                Span<double> own = _evidence.AsSpan(_same[k] * pairings, pairings);
                own.CopyTo(_evidence.AsSpan(k * pairings));
                for (int p = 0; p < pairings; p++)
                    evidence[k * pairings + p] += own[p];
                continue;
            }
            ReadOnlySpan<double> scaled = Scale(k, out double highest);
            double last = 0;
            for (int p = 0; p < pairings; p++)
            {
                if (IsNewPrior(p))
                    last = highest + Math.Log(Math.Max(SpanLoops.Dot(Prior(p), scaled), Smallest));
                _evidence[k * pairings + p] = last;
                evidence[k * pairings + p] += last;
            }
        }
    }

    /// <summary>Whether any pairing of a system with a width and an offset has a share worth summing.</summary>
    public static bool Matters(ReadOnlySpan<double> shares) => shares.IndexOfAnyExceptInRange(0, Negligible) >= 0;

    /// <summary>Makes the posterior over the nodes, given the posterior over systems, widths and offsets.</summary>
    public void SetPosterior(ReadOnlySpan<double> shares)
    {
        FillPriors();
        int pairings = _group.Grid.Count, parts = _group.Fine;
        Span<double> all = _posterior.AsSpan(0, _systemCount * _group.NodeCount), fine = _fine.AsSpan(0, _group.FineCount);
        all.Clear();
        double sum = 0;
        for (int k = 0; k < _systemCount; k++)
        {
            ReadOnlySpan<double> own = shares.Slice(k * pairings, pairings);
            _matters[k] = Matters(own);
            if (!_matters[k])
                continue;
            ReadOnlySpan<double> scaled = Scale(k, out _);
            fine.Clear();
            double evidence = 0;
            ReadOnlySpan<double> prior = [];
            for (int p = 0; p < pairings; p++)
            {
                if (IsNewPrior(p))
                {
                    prior = Prior(p);
                    evidence = Math.Max(SpanLoops.Dot(prior, scaled), Smallest);
                }
                if (own[p] > Negligible)
                    SpanLoops.AddScaled(fine, own[p] / evidence, prior);
            }
            sum += SpanLoops.Multiply(fine, scaled);
            // A point between two nodes is shared between them.
            Span<double> posterior = Of(k, _posterior);
            if (parts == 1)
            {
                fine.CopyTo(posterior);
                continue;
            }
            for (int i = 0; i + 1 < fine.Length; i += 2)
            {
                double half = fine[i + 1] * 0.5;
                posterior[i / 2] += fine[i] + half;
                posterior[i / 2 + 1] += half;
            }
            posterior[^1] += fine[^1];
        }
        SpanLoops.Divide(all, sum);
    }

    private Span<double> Of(int system, double[] buffer) => buffer.AsSpan(system * _group.NodeCount, _group.NodeCount);

    /// <summary>The likelihood of all rows at the fine points, relative to the highest, and the logarithm of that.</summary>
    private ReadOnlySpan<double> Scale(int system, out double highest)
    {
        int last = _group.NodeCount - 1, parts = _group.Fine;
        double witnesses = Math.Min(1, MostWitnesses / Math.Max(1, _heard));
        ReadOnlySpan<double> product = Of(system, _product), likelihood = Of(system, _logLikelihood);
        Span<double> scaled = _scaled.AsSpan(0, _group.FineCount);
        bool plain = witnesses == 1 && !_underflowed[system];
        double most = 0;
        if (plain)
        {
            most = SpanLoops.Max(product);
            highest = Math.Log(most);
            if (parts == 1)
            {
                product.CopyTo(scaled);
                SpanLoops.Divide(scaled, most);
                return scaled;
            }
        }
        Span<double> logs = _logs.AsSpan(0, last + 1);
        highest = double.NegativeInfinity;
        for (int j = 0; j < logs.Length; j++)
        {
            logs[j] = witnesses * (Math.Log(product[j]) + (_underflowed[system] ? likelihood[j] : 0));
            highest = Math.Max(highest, logs[j]);
        }
        // What is between the nodes stands hardly above them; the highest is only a scale.
        for (int i = 0; i < scaled.Length; i++)
        {
            int j = i / parts;
            double x = (double)(i % parts) / parts, b = logs[j];
            if (x > 0)
            {
                // Cubic through four neighbours, which is exact for the parabola that a sum of normal logarithms is.
                double a = logs[Math.Max(j - 1, 0)], c = logs[j + 1], d = logs[Math.Min(j + 2, last)];
                b += 0.5 * x * (c - a + x * (2 * a - 5 * b + 4 * c - d + x * (3 * (b - c) + d - a)));
            }
            else if (plain)
            {
                scaled[i] = product[j] / most;
                continue;
            }
            scaled[i] = b - highest < LeastLog ? 0 : Math.Exp(b - highest);
        }
        return scaled;
    }

    /// <summary>The priors of a shape of group are made once; pairings with the same prior have one array.</summary>
    private void FillPriors()
    {
        if (_shapes.TryGetValue(_group.Shape, out double[][]? known))
        {
            _priors = known;
            return;
        }
        _priors = new double[_group.Grid.Count][];
        for (int p = 0; p < _priors.Length; p++)
        {
            if (IsNewPrior(p))
                _group.FillPrior(p, _priors[p] = new double[_group.FineCount]);
        }
        if (_shapes.Count < MostShapes)
            _shapes.Add(_group.Shape, _priors);
    }

    /// <summary>Whether the prior of a pairing differs from that of the pairing before it, which then serves for both.</summary>
    private bool IsNewPrior(int pairing) => pairing == 0 || !_group.HasSamePrior(pairing, pairing - 1);

    private ReadOnlySpan<double> Prior(int pairing) => _priors[pairing];
}
