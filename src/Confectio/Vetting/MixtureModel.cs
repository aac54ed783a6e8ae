using Confectio.Measures;
using Confectio.Numerics;

namespace Confectio.Vetting;

/// <summary>
/// The probability model of a printed conversion table.
/// </summary>
/// <remarks>
/// Logarithms of grams. For a row of ingredient group g in measuring system k, the true mass is ln ρ_g + ln V_k + t_g + noise, where t_g is
/// how far this table's figures for the group lie from our likely density: one number a group, shared by all its rows, so that rows of one
/// ingredient are checked against each other and a cup row beside a spoon row tells cups apart without any density. A row is right, or one
/// of the mistakes of <see cref="RowHypotheses"/> was made; what is compared is the probability of the printed digits, so rounding is part
/// of the model. t_g has a normal prior whose width is multiplied by 1, 1.5 or 2.2 (densities less well known than we think; for liquids 1,
/// 1.3 or 1.7), and powders share an offset of -12 to +12 % (a house that scoops). Systems, widths and offsets are summed over; t_g is
/// summed over nodes. Given the system, liquids and the rest are independent, so the sum factors.
/// </remarks>
internal sealed class MixtureModel
{
    /// <summary>
    /// Of more rows than this only some groups are asked for the system, the widths and the offsets; every row is judged.
    /// </summary>
    private const int MostHeard = 500;

    private const int MostHeardOfAGroup = 32;

    private readonly IReadOnlyList<TableRow> _rows;
    private readonly IReadOnlyList<RowGroup> _groups;
    private readonly RowHypotheses _spare;

    // The rows of a group that were heard: what was made of them serves again when they are judged.
    private readonly List<RowHypotheses> _heard = [];
    private RowHypotheses _hypotheses;
    private readonly IReadOnlyList<MeasuringSystem> _systems;
    private readonly double[] _systemPriors;
    private readonly bool _tellsUsCups;
    private readonly GroupSums _sums;
    private readonly NormalSteps _steps;
    private double _packedWidth = 1, _pouredWidth = 1;
    private double[] _packedShares = [], _pouredShares = [];
    private readonly double[] _likelihood;
    private readonly double[] _weight;
    private readonly double[] _probability;
    private readonly int _nodes;
    private readonly (double Mean, double Deviation)[] _expected;
    private double _others, _othersSum, _othersSquare;
    private int _parts;

    public MixtureModel(IReadOnlyList<TableRow> rows, IReadOnlyList<RowGroup> groups, RowHypotheses hypotheses,
        IReadOnlyList<MeasuringSystem> systems, RoundingGrid grid, double reach)
    {
        _steps = new NormalSteps { Reach = reach };
        _systemPriors = SystemClues.Priors(rows, systems);
        _tellsUsCups = SystemClues.TellsUsCups(rows, groups, grid);
        _rows = rows;
        _groups = groups;
        _hypotheses = _spare = hypotheses;
        _systems = systems;
        _sums = new GroupSums(groups, systems.Count);
        int most = groups.Count == 0 ? 0 : groups.Max(group => group.NodeCount);
        _nodes = most;
        _expected = new (double, double)[rows.Count];
        _likelihood = new double[most];
        _weight = new double[most];
        _probability = new double[RowHypotheses.Most * most];
    }

    /// <summary>The posterior probability of each system; equal to the prior where no row can tell.</summary>
    public double[] SystemProbabilities { get; private set; } = [];

    /// <summary>The logarithm of the probability of all the printed digits, however they came about.</summary>
    public double LogEvidence { get; private set; }

    /// <summary>How much less well known densities of a grid are than we think, by these rows: the root of the mean square.</summary>
    public double Width(NuisanceGrid grid) => grid == NuisanceGrid.Poured ? _pouredWidth : _packedWidth;

    /// <summary>
    /// What the other rows of a row's group, and the whole table, make of its ln grams: mean and standard deviation, without the row's own;
    /// (0, 0) where it is alone in its group.
    /// </summary>
    public (double Mean, double Deviation) ExpectedByOthers(int row) => _expected[row];

    /// <summary>Whether any row depends on the measuring system.</summary>
    public bool SystemMatters { get; private set; }

    /// <summary>Weighs the systems, the widths and the offsets by what all groups say of them.</summary>
    public void Weigh()
    {
        double[] packed = LogPriors(NuisanceGrid.Packed), poured = LogPriors(NuisanceGrid.Poured);
        // A long table has said what it can long before its end: of more rows than this, every second, third, ... group is heard, by name,
        // so that the order of the rows does not choose them.
        int every = (_rows.Count + MostHeard - 1) / MostHeard;
        List<RowGroup> heard = new(_groups.Count);
        foreach (RowGroup group in _groups)
        {
            SystemMatters |= group.Kind is GroupKind.Density && _rows[group.Rows[0]].Amount.IsVolume;
            // One row of a name that nobody knows may weigh anything, in any system, and so nearly may a heaped spoon.
            if (group.Kind != GroupKind.Mass && _rows[group.Rows[0]].Rough is null
                && (group.Kind != GroupKind.Unknown || group.Rows.Count > 1))
                heard.Add(group);
        }
        if (every > 1)
            heard.Sort(CompareNames);
        for (int g = 0; g < heard.Count; g += every)
        {
            Gather(heard[g], []);
            _sums.AddLogEvidence(heard[g].Grid == NuisanceGrid.Poured ? poured : packed);
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
            if (group.Kind == GroupKind.Unknown && group.Rows.Count < VerdictRule.FewestToOutvote)
                continue;
            double[] shares = group.Grid == NuisanceGrid.Poured ? poured : packed;
            Gather(group, shares);
            _sums.SetPosterior(shares);
            List<int> rows = Heard(group, out int every);
            for (int i = 0; i < rows.Count; i++)
            {
                _hypotheses = i % every == 0 ? _heard[i / every] : _spare;
                Judge(rows[i], group);
            }
        }
    }

    private int CompareNames(RowGroup left, RowGroup right)
    {
        TableRow a = _rows[left.Rows[0]], b = _rows[right.Rows[0]];
        int order = string.Compare(a.Matched?.Id ?? a.Ingredient, b.Matched?.Id ?? b.Ingredient, StringComparison.OrdinalIgnoreCase);
        order = order != 0 ? order : Nullable.Compare(a.Packing, b.Packing);
        return order != 0 ? order : string.CompareOrdinal(a.Amount.Part(0).Piece, b.Amount.Part(0).Piece);
    }

    /// <summary>Sums the likelihoods of a group's rows, in every system or, where shares are given, in those whose share matters.</summary>
    private void Gather(RowGroup group, ReadOnlySpan<double> shares)
    {
        _sums.Begin(group);
        int pairings = group.Grid.Count, last = group.NodeCount - 1;
        List<int> rows = Heard(group, out int every);
        for (int i = 0; i < rows.Count; i += every)
        {
            if (i / every == _heard.Count)
                _heard.Add(new RowHypotheses(_spare));
            _hypotheses = _heard[i / every];
            _hypotheses.Begin(rows[i], group);
            if (!_hypotheses.HasCups)
                FillCups(group);
            _sums.BeginRow();
            for (int k = 0; k < _systems.Count; k++)
            {
                if (!shares.IsEmpty && !GroupSums.Matters(shares.Slice(k * pairings, pairings)))
                    continue;
                int same = _hypotheses.SameAs(k);
                if (_sums.TryInclude(k, same, out Span<double> likelihood))
                    continue;
                Likelihood(group, same, likelihood);
                _sums.Include(k, same);
            }
            _sums.EndRow();
        }
    }

    /// <summary>
    /// The rows of a group, and of how many of them one is heard: sixteen rows of one ingredient are heard for all of them; where there are
    /// many more, every second, third, ... of them, by their figures.
    /// </summary>
    private List<int> Heard(RowGroup group, out int every)
    {
        every = Math.Max(1, group.Rows.Count / MostHeardOfAGroup);
        return every == 1 ? group.Rows : group.InOrderOfFigures(_rows);
    }

    /// <summary>The probability of the digits in each of the cups that the row's measure may be.</summary>
    private void FillCups(RowGroup group)
    {
        _hypotheses.BeginCups(group.NodeCount);
        ReadOnlySpan<double> cups = _hypotheses.Cups;
        for (int c = 0; c < cups.Length; c++)
        {
            RowHypothesis plain = _hypotheses.Plain(cups[c]);
            (int first, int last) = group.Reached(_steps, in plain, 0, group.NodeCount - 1);
            group.AddProbability(_steps, in plain, 1, _hypotheses.BeginCup(c, first, last), first, last);
        }
    }

    /// <summary>The probability of the printed digits at the nodes of the group.</summary>
    private void Likelihood(RowGroup group, int system, Span<double> likelihood)
    {
        int last = group.NodeCount - 1;
        ReadOnlySpan<RowHypothesis> hypotheses = _hypotheses.Of(system, group.Node(0), group.Node(last));
        double constant = 0;
        foreach (ref readonly RowHypothesis hypothesis in hypotheses)
            constant += hypothesis.IsConstant ? hypothesis.Share : 0;
        likelihood.Fill(constant);
        foreach (ref readonly RowHypothesis hypothesis in hypotheses)
        {
            if (!hypothesis.IsConstant)
                group.AddProbability(_steps, in hypothesis, hypothesis.Share, likelihood, 0, last);
        }
        bool plain = true;
        double volume = _hypotheses.Volume(system), share = _hypotheses.ScaledCupShare;
        ReadOnlySpan<double> cups = _hypotheses.Cups;
        for (int c = 0; c < cups.Length; c++)
        {
            if (RowHypotheses.IsOtherCup(cups[c], volume))
            {
                AddCup(likelihood, share, c);
            }
            else if (cups[c] == volume)
            {
                AddCup(likelihood, _hypotheses.PlainShare(system), c);
                plain = false;
            }
        }
        if (plain)
            group.AddProbability(_steps, _hypotheses.Plain(volume), _hypotheses.PlainShare(system), likelihood, 0, last);
    }

    private void AddCup(Span<double> likelihood, double share, int cup)
    {
        ReadOnlySpan<double> at = _hypotheses.Cup(cup, out int first);
        SpanLoops.AddScaled(likelihood.Slice(first, at.Length), share, at);
    }

    /// <summary>
    /// The logarithm of the prior of every pairing of a system with a width and an offset; the groups of that grid add their evidence.
    /// </summary>
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
            log[k] = Math.Log(_systemPriors[k]) + LogSum(packed, k, NuisanceGrid.Packed.Count) + LogSum(poured, k,
                NuisanceGrid.Poured.Count);
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

    private void Judge(int row, RowGroup group)
    {
        Span<double> shares = stackalloc double[RowHypothesis.CodeCount];
        shares.Clear();
        _others = _othersSum = _othersSquare = 0;
        _hypotheses.Begin(row, group);
        for (int k = 0; k < _systems.Count; k++)
        {
            // Systems in which the row measures the same are judged once, by the first of them that matters.
            if (!_sums.IsJudged(k) || IsJudgedBefore(k))
                continue;
            Span<double> posterior = _weight.AsSpan(0, group.NodeCount);
            _sums.Posterior(k).CopyTo(posterior);
            for (int other = k + 1; other < _systems.Count; other++)
            {
                if (_sums.IsJudged(other) && _hypotheses.SameAs(other) == _hypotheses.SameAs(k))
                    SpanLoops.AddScaled(posterior, 1, _sums.Posterior(other));
            }
            int first = posterior.IndexOfAnyExceptInRange(double.NegativeInfinity, GroupSums.Negligible);
            if (first >= 0)
                Judge(group, k, first, posterior.LastIndexOfAnyExceptInRange(double.NegativeInfinity, GroupSums.Negligible), shares);
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
        if (group.Rows.Count > 1)
        {
            double mean = _othersSum / _others;
            _expected[row] = (group.LogWeight + mean, Math.Sqrt(Math.Max(0, _othersSquare / _others - mean * mean)));
        }
        TableRow finding = _rows[row];
        finding.ProbabilityRight = shares[RowHypothesis.RightCode] / all;
        finding.Reason = (Reason)likeliest;
    }

    private bool IsJudgedBefore(int system)
    {
        for (int k = 0; k < system; k++)
        {
            if (_sums.IsJudged(k) && _hypotheses.SameAs(k) == _hypotheses.SameAs(system))
                return true;
        }
        return false;
    }

    /// <summary>Shares the posterior at the nodes from first to last out among what may have happened.</summary>
    private void Judge(RowGroup group, int system, int first, int last, Span<double> shares)
    {
        ReadOnlySpan<RowHypothesis> hypotheses = _hypotheses.Of(system, group.Node(first), group.Node(last));
        double volume = _hypotheses.Volume(system), cupShare = _hypotheses.ScaledCupShare;
        int cups = _hypotheses.CupCount, width = last - first + 1, count = 0;
        Span<double> likelihood = _likelihood.AsSpan(0, last + 1);
        double constant = 0;
        foreach (ref readonly RowHypothesis hypothesis in hypotheses)
            constant += hypothesis.IsConstant ? hypothesis.Share : 0;
        likelihood[first..].Fill(constant);
        foreach (ref readonly RowHypothesis hypothesis in hypotheses)
        {
            if (!hypothesis.IsConstant)
                Part(group, in hypothesis, hypothesis.Share, count++, first, last);
        }
        CupPart(group, volume, _hypotheses.PlainShare(system), count++, first, last);
        for (int c = 0; c < cups; c++)
        {
            if (RowHypotheses.IsOtherCup(_hypotheses.Cups[c], volume))
                CupPart(group, _hypotheses.Cups[c], cupShare, count++, first, last);
        }
        double total = 0, moment = 0, square = 0;
        for (int j = first; j <= last; j++)
        {
            double w = _weight[j] /= likelihood[j];
            total += w;
            moment += w * j;
            square += w * j * j;
        }
        // Without the row's own likelihood, the posterior is what the other rows of the group, and all of the table, say of it.
        double step = group.Node(1) - group.Node(0), mean = moment / total, x = group.Node(0) + step * mean + volume;
        _others += total;
        _othersSum += total * x;
        _othersSquare += total * (x * x + step * step * Math.Max(0, square / total - mean * mean));
        Span<double> weight = _weight.AsSpan(first, width);
        count = 0;
        foreach (ref readonly RowHypothesis hypothesis in hypotheses)
            shares[hypothesis.Code] += hypothesis.IsConstant ? hypothesis.Share * total
                : SpanLoops.Dot(weight, Part(count++, first, width));
        shares[RowHypothesis.RightCode] += SpanLoops.Dot(weight, Part(count++, first, width));
        for (; count < _parts; count++)
            shares[(int)Reason.OtherCup] += SpanLoops.Dot(weight, Part(count, first, width));
    }

    private void Part(RowGroup group, in RowHypothesis hypothesis, double share, int index, int first, int last)
    {
        Span<double> part = _probability.AsSpan(index * _nodes, last + 1);
        part[first..].Clear();
        group.AddProbability(_steps, in hypothesis, share, part, first, last);
        SpanLoops.AddScaled(_likelihood.AsSpan(first, last - first + 1), 1, part[first..]);
        _parts = index + 1;
    }

    /// <summary>The same for a figure that is right in a cup; that of a row which was heard is known.</summary>
    private void CupPart(RowGroup group, double cup, double share, int index, int first, int last)
    {
        int known = _hypotheses.HasCups ? _hypotheses.Cups.IndexOf(cup) : -1;
        if (known < 0)
        {
            Part(group, _hypotheses.Plain(cup), share, index, first, last);
            return;
        }
        _parts = index + 1;
        _probability.AsSpan(index * _nodes + first, last - first + 1).Clear();
        ReadOnlySpan<double> at = _hypotheses.Cup(known, out int begin);
        int from = Math.Max(first, begin), count = Math.Min(last + 1, begin + at.Length) - from;
        if (count <= 0)
            return;
        Span<double> part = _probability.AsSpan(index * _nodes + from, count);
        SpanLoops.AddScaled(part, share, at.Slice(from - begin, count));
        SpanLoops.AddScaled(_likelihood.AsSpan(from, count), 1, part);
    }

    private ReadOnlySpan<double> Part(int index, int first, int width) => _probability.AsSpan(index * _nodes + first, width);
}
