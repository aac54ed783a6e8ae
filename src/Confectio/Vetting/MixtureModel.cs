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
/// t_g has a normal prior whose width is multiplied by 1, 1.5 or 2.2 (densities less well known than we think; for liquids 1, 1.3
/// or 1.7), and powders share an offset of -12 to +12 % (a house that scoops). Systems, widths and offsets are summed over; t_g is
/// summed over nodes. Given the system, liquids and the rest are independent, so the sum factors.
/// </remarks>
internal sealed class MixtureModel
{
    private readonly IReadOnlyList<TableRow> _rows;
    private readonly IReadOnlyList<RowGroup> _groups;
    private readonly RowHypotheses _hypotheses;
    private readonly IReadOnlyList<MeasuringSystem> _systems;
    private readonly double[] _systemPriors;
    private readonly bool _tellsUsCups;
    private readonly GroupSums _sums;
    private double _packedWidth = 1, _pouredWidth = 1;
    private double[] _packedShares = [], _pouredShares = [];
    private readonly double[] _likelihood;
    private readonly double[] _weight;
    private readonly double[] _probability;

    public MixtureModel(IReadOnlyList<TableRow> rows, IReadOnlyList<RowGroup> groups, RowHypotheses hypotheses, IReadOnlyList<MeasuringSystem> systems, RoundingGrid grid)
    {
        _systemPriors = SystemClues.Priors(rows, systems);
        _tellsUsCups = SystemClues.TellsUsCups(rows, groups, grid);
        _rows = rows;
        _groups = groups;
        _hypotheses = hypotheses;
        _systems = systems;
        _sums = new GroupSums(groups, systems.Count);
        int most = groups.Count == 0 ? 0 : groups.Max(group => group.NodeCount);
        _likelihood = new double[most];
        _weight = new double[most];
        _probability = new double[most];
    }

    /// <summary>The posterior probability of each system; equal to the prior where no row can tell.</summary>
    public double[] SystemProbabilities { get; private set; } = [];

    /// <summary>The logarithm of the probability of all the printed digits, however they came about.</summary>
    public double LogEvidence { get; private set; }

    /// <summary>How much less well known densities of a grid are than we think, by these rows: the root of the mean square.</summary>
    public double Width(NuisanceGrid grid) => grid == NuisanceGrid.Poured ? _pouredWidth : _packedWidth;

    /// <summary>Whether any row depends on the measuring system.</summary>
    public bool SystemMatters { get; private set; }

    /// <summary>Weighs the systems, the widths and the offsets by what all groups say of them.</summary>
    public void Weigh()
    {
        double[] packed = LogPriors(NuisanceGrid.Packed), poured = LogPriors(NuisanceGrid.Poured);
        foreach (RowGroup group in _groups)
        {
            Gather(group, []);
            _sums.AddLogEvidence(group.Grid == NuisanceGrid.Poured ? poured : packed);
        }
        SystemProbabilities = Systems(packed, poured);
        _packedShares = Shares(packed, NuisanceGrid.Packed.Count);
        _pouredShares = Shares(poured, NuisanceGrid.Poured.Count);
    }

    /// <summary>
    /// Judges every row by what was weighed: <see cref="TableRow.ProbabilityRight"/> and the likeliest mistake. The groups are gone
    /// through a second time, for what the systems say of their rows.
    /// </summary>
    public void Judge()
    {
        double[] packed = _packedShares, poured = _pouredShares;
        (_packedWidth, _pouredWidth) = (MeanWidth(packed, NuisanceGrid.Packed), MeanWidth(poured, NuisanceGrid.Poured));
        foreach (RowGroup group in _groups)
        {
            double[] shares = group.Grid == NuisanceGrid.Poured ? poured : packed;
            Gather(group, shares);
            _sums.SetPosterior(shares);
            foreach (int row in group.Rows)
                Judge(row);
        }
    }

    /// <summary>Sums the likelihoods of a group's rows, in every system or, where shares are given, in those whose share matters.</summary>
    private void Gather(RowGroup group, ReadOnlySpan<double> shares)
    {
        if (!_sums.TryBegin(group))
            return;
        int pairings = group.Grid.Count;
        foreach (int row in group.Rows)
        {
            SystemMatters |= group.Kind is GroupKind.Density && _rows[row].Amount.IsVolume;
            for (int k = 0; k < _systems.Count; k++)
            {
                if (!shares.IsEmpty && !GroupSums.Matters(shares.Slice(k * pairings, pairings)))
                    continue;
                Likelihood(_hypotheses.Of(row, group, k), group, 0, group.NodeCount - 1);
                _sums.Include(k, _likelihood.AsSpan(0, group.NodeCount));
            }
        }
        _sums.End();
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

    /// <summary>The logarithm of the prior of every pairing of a system with a width and an offset; the groups of that grid add their evidence.</summary>
    private double[] LogPriors(NuisanceGrid grid)
    {
        double[] log = new double[_systems.Count * grid.Count];
        for (int c = 0; c < log.Length; c++)
            log[c] = grid.LogPrior(c % grid.Count);
        return log;
    }

    private double[] Systems(double[] packed, double[] poured)
    {
        double[] log = new double[_systems.Count];
        for (int k = 0; k < log.Length; k++)
        {
            log[k] = Math.Log(_systemPriors[k]) + LogSum(packed, k, NuisanceGrid.Packed.Count) + LogSum(poured, k, NuisanceGrid.Poured.Count);
        }
        double highest = log.Max(), sum = log.Sum(value => Math.Exp(value - highest));
        LogEvidence = highest + Math.Log(sum);
        double[] shares = [.. log.Select(value => Math.Exp(value - highest) / sum)];
        int customary = IndexOf(MeasuringSystem.UsCustomary), labelling = IndexOf(MeasuringSystem.UsLabelling);
        if (!_tellsUsCups && customary >= 0 && labelling >= 0)
        {
            // Nothing here knows its density to 1.4 %: what the rows say of 236.6 against 240 mL is our own densities' error.
            double both = shares[customary] + shares[labelling], prior = _systemPriors[customary] + _systemPriors[labelling];
            (shares[customary], shares[labelling]) = (both * _systemPriors[customary] / prior, both * _systemPriors[labelling] / prior);
        }
        return shares;
    }

    private int IndexOf(MeasuringSystem system)
    {
        for (int k = 0; k < _systems.Count; k++)
        {
            if (_systems[k] == system)
                return k;
        }
        return -1;
    }

    private static double LogSum(double[] log, int system, int count)
    {
        ReadOnlySpan<double> own = log.AsSpan(system * count, count);
        double highest = double.NegativeInfinity, sum = 0;
        foreach (double value in own)
            highest = Math.Max(highest, value);
        foreach (double value in own)
            sum += Math.Exp(value - highest);
        return highest + Math.Log(sum);
    }

    /// <summary>The posterior probability of every pairing: that of the system, times that of width and offset within it.</summary>
    private double[] Shares(double[] log, int count)
    {
        double[] shares = new double[log.Length];
        for (int c = 0; c < log.Length; c++)
            shares[c] = SystemProbabilities[c / count] * Math.Exp(log[c] - LogSum(log, c / count, count));
        return shares;
    }

    private static double MeanWidth(double[] shares, NuisanceGrid grid)
    {
        double sum = 0;
        for (int c = 0; c < shares.Length; c++)
            sum += shares[c] * grid.Width(c % grid.Count) * grid.Width(c % grid.Count);
        return Math.Sqrt(sum);
    }

    private void Judge(int row)
    {
        RowGroup group = _groups[_rows[row].Group];
        Span<double> shares = stackalloc double[RowHypothesis.CodeCount];
        shares.Clear();
        for (int k = 0; k < _systems.Count; k++)
        {
            ReadOnlySpan<double> posterior = _sums.Posterior(k);
            int first = 0, last = posterior.Length - 1;
            while (first <= last && posterior[first] < GroupSums.Negligible)
                first++;
            while (last >= first && posterior[last] < GroupSums.Negligible)
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
        TableRow finding = _rows[row];
        finding.ProbabilityRight = shares[RowHypothesis.RightCode] / all;
        finding.Reason = (Reason)likeliest;
    }
}
