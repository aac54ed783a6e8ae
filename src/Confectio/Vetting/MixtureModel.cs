using Confectio.Measures;

namespace Confectio.Vetting;

/// <summary>
/// The probability model of a printed conversion table.
/// </summary>
/// <remarks>
/// Logarithms of grams. For a row of ingredient group g in measuring system k, the true mass is ln ρ_g + ln V_k + t_g + noise,
/// where t_g is how far this table's figures for the group lie from our likely density: one number a group, shared by all its
/// rows, so that rows of one ingredient are checked against each other and a cup row beside a spoon row tells cups apart
/// without any density. A row is right, or one of the mistakes of <see cref="RowHypotheses"/> was made; what is compared is
/// the probability of the printed digits, so rounding is part of the model.
/// t_g has a normal prior whose width is multiplied by 1, 1.5 or 2.2 (densities less well known than we think), and powders
/// share an offset of -12 to +12 % (a house that scoops). Systems, widths and offsets are summed over; t_g is summed over nodes.
/// </remarks>
internal sealed class MixtureModel
{
    private static readonly double[] s_widths = [1, 1.5, 2.2];
    private static readonly double[] s_widthPriors = [0.5, 0.33, 0.17];
    private static readonly double[] s_offsets = [-0.12, -0.06, 0, 0.06, 0.12];
    private static readonly double[] s_offsetPriors = [0.1, 0.2, 0.4, 0.2, 0.1];

    /// <summary>Prior shares of the systems: an English-language page is most often American, then metric.</summary>
    private static readonly Dictionary<string, double> s_systemPriors = new()
    {
        ["us-customary"] = 0.35, ["us-labelling"] = 0.25, ["metric"] = 0.18, ["australian"] = 0.08, ["imperial"] = 0.06, ["japanese"] = 0.08,
    };

    /// <summary>Nodes with less posterior weight than this change no printed digit.</summary>
    private const double Negligible = 1e-10;

    private static int PriorCount => s_widths.Length * s_offsets.Length;

    private readonly IReadOnlyList<RowFinding> _rows;
    private readonly IReadOnlyList<RowGroup> _groups;
    private readonly RowHypotheses _hypotheses;
    private readonly IReadOnlyList<MeasuringSystem> _systems;
    private readonly double[] _likelihood;
    private readonly double[] _weight;
    private readonly double[] _probability;

    public MixtureModel(IReadOnlyList<RowFinding> rows, IReadOnlyList<RowGroup> groups, RowHypotheses hypotheses, IReadOnlyList<MeasuringSystem> systems)
    {
        _rows = rows;
        _groups = groups;
        _hypotheses = hypotheses;
        _systems = systems;
        int most = groups.Count == 0 ? 0 : groups.Max(group => group.NodeCount);
        _likelihood = new double[most];
        _weight = new double[most];
        _probability = new double[most];
    }

    /// <summary>The posterior probability of each system; equal to the prior where no row can tell.</summary>
    public double[] SystemProbabilities { get; private set; } = [];

    /// <summary>Whether any row depends on the measuring system.</summary>
    public bool SystemMatters { get; private set; }

    /// <summary>Judges every row: <see cref="RowFinding.ProbabilityRight"/> and the likeliest mistake.</summary>
    public void Run()
    {
        for (int i = 0; i < _rows.Count; i++)
            Gather(i);
        double[] posterior = Configurations();
        SystemProbabilities = new double[_systems.Count];
        for (int c = 0; c < posterior.Length; c++)
            SystemProbabilities[c / PriorCount] += posterior[c];
        foreach (RowGroup group in _groups)
            group.SetPosterior(s_widths, s_offsets, posterior);
        for (int i = 0; i < _rows.Count; i++)
            Judge(i);
    }

    private void Gather(int row)
    {
        RowGroup group = _groups[_rows[row].Group];
        SystemMatters |= group.Kind is GroupKind.Density && _rows[row].Amount.IsVolume;
        for (int k = 0; k < _systems.Count; k++)
        {
            Likelihood(_hypotheses.Of(row, group, k), group, 0, group.NodeCount - 1);
            group.Include(k, _likelihood.AsSpan(0, group.NodeCount));
        }
    }

    /// <summary>The probability of the printed digits at the nodes of the group from first to last.</summary>
    private void Likelihood(ReadOnlySpan<RowHypothesis> hypotheses, RowGroup group, int first, int last)
    {
        double constant = 0;
        foreach (ref readonly RowHypothesis hypothesis in hypotheses)
        {
            if (hypothesis.IsConstant)
                constant += hypothesis.Share;
        }
        _likelihood.AsSpan(first, last - first + 1).Fill(constant);
        foreach (ref readonly RowHypothesis hypothesis in hypotheses)
        {
            if (hypothesis.IsConstant)
                continue;
            group.AddProbability(in hypothesis, hypothesis.Share, _likelihood, first, last);
        }
    }

    /// <summary>The posterior probability of every pairing of a system, a width and an offset.</summary>
    private double[] Configurations()
    {
        double[] log = new double[_systems.Count * PriorCount];
        double[] evidence = new double[log.Length];
        for (int c = 0; c < log.Length; c++)
        {
            double system = _systems.Count == 1 ? 1 : s_systemPriors[_systems[c / PriorCount].Key];
            int p = c % PriorCount;
            log[c] = Math.Log(system * s_widthPriors[p / s_offsets.Length] * s_offsetPriors[p % s_offsets.Length]);
        }
        foreach (RowGroup group in _groups)
        {
            group.LogEvidence(s_widths, s_offsets, evidence);
            for (int c = 0; c < log.Length; c++)
                log[c] += evidence[c];
        }
        double highest = log.Max(), sum = 0;
        for (int c = 0; c < log.Length; c++)
            sum += log[c] = Math.Exp(log[c] - highest);
        for (int c = 0; c < log.Length; c++)
            log[c] /= sum;
        return log;
    }

    private void Judge(int row)
    {
        RowGroup group = _groups[_rows[row].Group];
        Span<double> shares = stackalloc double[RowHypothesis.CodeCount];
        shares.Clear();
        for (int k = 0; k < _systems.Count; k++)
        {
            ReadOnlySpan<double> posterior = group.Posterior(k);
            int first = 0, last = posterior.Length - 1;
            while (first <= last && posterior[first] < Negligible)
                first++;
            while (last >= first && posterior[last] < Negligible)
                last--;
            if (first > last)
                continue;
            ReadOnlySpan<RowHypothesis> hypotheses = _hypotheses.Of(row, group, k);
            Likelihood(hypotheses, group, first, last);
            double total = 0;
            for (int j = first; j <= last; j++)
            {
                _weight[j] = posterior[j] / _likelihood[j];
                total += _weight[j];
            }
            foreach (ref readonly RowHypothesis hypothesis in hypotheses)
            {
                if (hypothesis.IsConstant)
                {
                    shares[hypothesis.Code] += hypothesis.Share * total;
                    continue;
                }
                Span<double> probability = _probability.AsSpan(0, last + 1);
                probability[first..].Clear();
                group.AddProbability(in hypothesis, hypothesis.Share, _probability, first, last);
                double sum = 0;
                for (int j = first; j <= last; j++)
                    sum += _weight[j] * probability[j];
                shares[hypothesis.Code] += sum;
            }
        }

        double all = 0;
        foreach (double share in shares)
            all += share;
        int likeliest = 0;
        for (int code = 1; code < RowHypothesis.RightCode; code++)
        {
            if (shares[code] > shares[likeliest])
                likeliest = code;
        }
        RowFinding finding = _rows[row];
        finding.ProbabilityRight = shares[RowHypothesis.RightCode] / all;
        finding.Reason = (Reason)likeliest;
    }
}
