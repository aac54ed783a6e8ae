using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Numerics;

namespace Confectio.Vetting;

/// <summary>
/// Lists, for a row in a measuring system, the ways in which its digits may have come about: right, or one of the mistakes.
/// The prior shares are judgements, not counts; they add up to the expected share of wrong rows.
/// </summary>
internal sealed class RowHypotheses
{
    /// <summary>No row has more hypotheses.</summary>
    public const int Most = 128;

    // How often each mistake is made, relative to the others.
    private const double EightOunces = 20, Spoons = 13, Half = 18, Decimal = 8, OuncesPrinted = 6, GramsTaken = 3, ThirtyGrams = 5,
        Swapped = 12, Packings = 12, OtherCups = 8, Copied = 8, Slipped = 6, Measures = 2.5, Millilitres = 1.5, Pieces = 3, Lost = 1.5, Twice = 0.1, Outlier = 21;

    /// <summary>A packing that the row does not state: the usual one most of the time.</summary>
    private const double UsualPacking = 0.7;

    /// <summary>
    /// Few right rows stand further from the other rows of their ingredient, weighed on another day. That spoons do more often has its
    /// own deviation (<see cref="RowGroup.DeviationOf"/>): of 93 pairs of cup and spoon in USDA SR, 15 differ by more than their rounding.
    /// </summary>
    private const double LooseShare = 0.005, LooseFactor = 3;

    /// <summary>Where a row states no packing, some figures fit none of those that were weighed, but lie among them.</summary>
    private const double BetweenPackings = 0.15;

    /// <summary>
    /// A scoop pushed into the bin takes so much more than a spoon fills, where nobody weighed it (flour: 137 to 145 g against 120 to 125).
    /// </summary>
    private const double ScoopFactor = 0.15, ScoopDeviation = 0.05;

    /// <summary>Among more rows of one ingredient than this, nearly any figure stands at another measure by chance.</summary>
    private const int RowsOfTheSame = 24;

    /// <summary>Between the 14.8 mL of a US customary tablespoon and the 15 mL of most others.</summary>
    private const double MiddleTablespoon = 14.9;

    /// <summary>A figure further from its likely weight than this, in logarithms, is not its own.</summary>
    private const double Misfit = 0.25;

    /// <summary>Where more figures than this may have lost a digit, the digit explains everything.</summary>
    private const int MostLost = 32;

    /// <summary>A mistake that fixes the mass exactly still leaves the table maker's own rounding on the way.</summary>
    private const double ExactDeviation = 0.002;

    /// <summary>Two cups closer than this (236.6 and 240 mL) are no mistake that anybody could find in one row.</summary>
    private const double SameCup = 0.03;

    /// <summary>Cups of 236.6, 240 and 250 mL are printed for one another.</summary>
    private const double LikeCup = 0.06;

    /// <summary>
    /// Where the figure before a slip would not keep to the grid of the table, it happened on the way to the rounding, not after it, and what
    /// is printed keeps to the grid. Only a few figures of a table do neither; nor can digits that change places in print.
    /// </summary>
    private const double OffGrid = 0.5, OffGridInPrint = 0.15;

    /// <summary>
    /// In a table of imperial pints and cups, how likely its spoons are metric; a judgement. The code marks what is believed of it alone.
    /// </summary>
    private const double MetricSpoons = 0.5;
    private const byte Imperial = 17;

    /// <summary>Whoever prints the millilitres of a cup prints those of his own, and seldom 250 for 236.6.</summary>
    private const double OtherMillilitres = 0.2;

    /// <summary>The standard deviation of ln grams where somebody weighed badly.</summary>
    private const double BadWeighing = 0.15;

    /// <summary>How far most figures that nothing explains lie from the truth: within half and double.</summary>
    private const double OutlierDeviation = 0.8;

    /// <summary>
    /// A figure that was right before a slip was near to its weight, but hardly nearer than this: 100 g stands for 104 where it is easier
    /// to read.
    /// </summary>
    private const double LeastSlip = 0.01;

    /// <summary>Of each unit, the logarithms of the different volumes that it has in one system or another.</summary>
    private static readonly double[][] s_logVolumes = [.. Enum.GetValues<KitchenUnit>().Select(unit => unit.IsVolume()
        && unit is not (KitchenUnit.Millilitre or KitchenUnit.Litre)
        ? MeasuringSystem.All.Where(system => system.Defines(unit)).Select(system => LogVolume(system, unit)).Distinct().ToArray() : [])];

    private static readonly double s_ounce = Math.Log(PrintedMass.GramsPerOunce), s_three = Math.Log(3), s_four = Math.Log(4),
        s_threeDecades = Math.Log(1000);

    private readonly IReadOnlyList<TableRow> _rows;
    private readonly IReadOnlyList<RowGroup> _groups;
    private readonly IReadOnlyList<MeasuringSystem> _systems;
    private readonly HashSet<(double, bool)> _constants;
    private readonly RoundingGrid _grid;
    private readonly double _wrong;
    private readonly double _reach;
    private readonly bool _hearsNeighbours;

    // What the measures of one part come to, once for all rows that have them; 0 where a row was not asked yet, and -1 for a measure of its
    // own.
    private readonly Dictionary<(KitchenUnit Unit, Fraction Low, Fraction High), int> _measureIndex;
    private readonly List<MeasureFacts> _measures;
    private readonly int[] _measureOf;

    // How many teaspoons a tablespoon holds in each system, and whether any has three or four.
    private readonly byte[] _teaspoons;
    private readonly int _imperial;
    private readonly bool _has3;
    private readonly bool _has4;

    // The logarithm of a unit in every system, by system and unit.
    private readonly double[][] _logVolumes;

    // One row's hypotheses as if its measure held one millilitre; a system only moves them. Filled once a row, read once a system.
    private readonly RowHypothesis[] _list = new RowHypothesis[Most];
    private readonly BulkDensity?[] _packing = new BulkDensity?[Most];
    private readonly int[] _neighbour = new int[Most];
    private readonly Source[] _source = new Source[Most];

    // The systems in which a hypothesis is believed: how many teaspoons their tablespoon has, or Imperial; 0 for all.
    private readonly byte[] _spoons = new byte[Most];
    private readonly RowHypothesis[] _moved;
    private readonly byte[] _misfits;
    private readonly double[] _ownVolume;
    private readonly double[] _above;
    private readonly double[] _below;
    private readonly int[] _ownSameAs;
    private double[] _volume;
    private int[] _sameAs;
    private double[] _cups = [];
    private double[] _cupProbability = [];
    private (int First, int Last)[] _cupRange = [];
    private int _cupNodes;
    private double _leastBefore;
    private double _mostBefore;
    private double _leastNode;
    private double _mostNode;
    private int _index = -1;
    private int _count;
    private double _low;
    private double _high;
    private double _weight;
    private double _badWeighing;
    private double _mistakeShares;
    private double _plainShare;
    private double _metricSpoon;

    public RowHypotheses(IReadOnlyList<TableRow> rows, IReadOnlyList<RowGroup> groups, IReadOnlyList<MeasuringSystem> systems,
        RoundingGrid grid, VettingOptions options)
    {
        _moved = new RowHypothesis[Most];
        _reach = options.Reach;
        _hearsNeighbours = options.HearsNeighbours;
        _rows = rows;
        _groups = groups;
        _constants = Constants(rows);
        _systems = systems;
        _grid = grid;
        _wrong = options.ExpectedWrong;
        _logVolumes = [.. systems.Select(system => Enum.GetValues<KitchenUnit>().Select(unit => LogVolume(system.Defines(unit) ? system
            : MeasuringSystem.UsCustomary, unit)).ToArray())];
        _misfits = new byte[rows.Count];
        _volume = _ownVolume = new double[systems.Count];
        _above = new double[systems.Count];
        _below = new double[systems.Count];
        _sameAs = _ownSameAs = new int[systems.Count];
        _measureIndex = [];
        _measures = [];
        _measureOf = new int[rows.Count];
        _teaspoons = [.. systems.Select(system => (byte)Math.Round(system.MillilitresPer(KitchenUnit.Tablespoon) / system.MillilitresPer(KitchenUnit.Teaspoon)))];
        _imperial = systems.ToList().IndexOf(MeasuringSystem.Imperial);
        _has3 = _teaspoons.Contains((byte)3);
        _has4 = _teaspoons.Contains((byte)4);
    }

    /// <summary>
    /// Room for one more row beside those that <paramref name="other"/> has room for; all that is known of the table is shared.
    /// </summary>
    public RowHypotheses(RowHypotheses other)
    {
        (_reach, _hearsNeighbours, _wrong, _grid) = (other._reach, other._hearsNeighbours, other._wrong, other._grid);
        (_rows, _groups, _constants, _systems) = (other._rows, other._groups, other._constants, other._systems);
        (_logVolumes, _misfits, _teaspoons) = (other._logVolumes, other._misfits, other._teaspoons);
        (_imperial, _has3, _has4) = (other._imperial, other._has3, other._has4);
        (_measureIndex, _measures, _measureOf) = (other._measureIndex, other._measures, other._measureOf);
        // What moves is read at once, row by row.
        _moved = other._moved;
        _volume = _ownVolume = new double[_systems.Count];
        (_above, _below) = (new double[_systems.Count], new double[_systems.Count]);
        _sameAs = _ownSameAs = new int[_systems.Count];
    }

    /// <summary>What a hypothesis needs before it can be compared with the digits.</summary>
    private enum Source
    {
        /// <summary>Nothing: its probability is known.</summary>
        Known,

        /// <summary>The measure, and the group's deviation.</summary>
        Measure,

        /// <summary>The measure, and the density of another packing.</summary>
        Packing,

        /// <summary>The measure alone: its millilitres are the figure.</summary>
        Volume,

        /// <summary>The measure, somewhere about which somebody weighed badly.</summary>
        BadWeighing,

        /// <summary>The measure, from which the figure strays widely.</summary>
        Stray,

        /// <summary>The row above or below: its measure and its density.</summary>
        Neighbour,
    }

    /// <summary>
    /// The volumes, in logarithms, that the row's measure has in one system or another, for <see cref="Reason.OtherCup"/>; empty where it
    /// is the same in all.
    /// </summary>
    public ReadOnlySpan<double> Cups => _cups.AsSpan(0, CupCount);

    public int CupCount { get; private set; }

    /// <summary>Whether the probabilities of the digits in each of the cups are at hand, at every node.</summary>
    public bool HasCups { get; private set; }

    /// <summary>
    /// The probability of the digits in one of the cups, from the first node to the last at which there is any; elsewhere it is 0.
    /// </summary>
    public Span<double> Cup(int cup, out int first)
    {
        (first, int last) = _cupRange[cup];
        return _cupProbability.AsSpan(cup * _cupNodes + first, last - first + 1);
    }

    /// <summary>Makes room for the probabilities of the digits in the cups.</summary>
    public void BeginCups(int nodes)
    {
        if (_cupProbability.Length < CupCount * nodes)
            _cupProbability = new double[CupCount * nodes];
        if (_cupRange.Length < CupCount)
            _cupRange = new (int, int)[CupCount];
        _cupNodes = nodes;
        HasCups = true;
    }

    /// <summary>Clears the room of a cup at the nodes at which it will be filled.</summary>
    public Span<double> BeginCup(int cup, int first, int last)
    {
        _cupRange[cup] = first <= last ? (first, last) : (0, -1);
        Span<double> all = _cupProbability.AsSpan(cup * _cupNodes, _cupNodes);
        Cup(cup, out _).Clear();
        return all;
    }

    /// <summary>The prior share of each other cup.</summary>
    public double CupShare { get; private set; }

    /// <summary>The standard deviation of the row about its group.</summary>
    public double Deviation { get; private set; }

    /// <summary>The hypothesis that the row is right, if its measure held the volume; its share is 1.</summary>
    public RowHypothesis Plain(double logVolume) => RowHypothesis.Interval(RowHypothesis.RightCode, 1, _low - _weight - logVolume,
        _high - _weight - logVolume, Deviation);

    /// <summary>
    /// The share of the plain hypothesis in being right: the row's usual packing, weighed as the other rows were, with the system's own
    /// measure.
    /// </summary>
    public double PlainShare(int systemIndex) => systemIndex == _imperial && _metricSpoon != 0 ? _plainShare * (1 - MetricSpoons)
        : _plainShare;

    /// <summary>The logarithm of the measure in a system.</summary>
    public double Volume(int systemIndex) => _volume[systemIndex];

    /// <summary>
    /// The first system in which the row, and its neighbours, measure the same as in this one: everything about the row is then the same.
    /// </summary>
    public int SameAs(int systemIndex) => _sameAs[systemIndex];

    /// <summary>Another system's cup does not depend on this system's, and is no mistake where the two are the same.</summary>
    public static bool IsOtherCup(double cup, double volume) => Math.Abs(cup - volume) > SameCup;

    /// <summary>Begins with a row.</summary>
    public void Begin(int index, RowGroup group)
    {
        if (index == _index)
            return;
        TableRow row = _rows[index];
        MeasureFacts? facts = FactsOf(index);
        bool above = IsSlipping(index, index - 1), below = IsSlipping(index, index + 1);
        if (above)
            FillVolumes(index - 1, _above);
        if (below)
            FillVolumes(index + 1, _below);
        _volume = facts?.Volumes ?? _ownVolume;
        if (facts is null)
            FillVolumes(index, _ownVolume);
        _sameAs = facts is not null && !above && !below ? facts.SameAs : _ownSameAs;
        if (_sameAs == _ownSameAs)
            FillSame(IsSpoon(in row.Amount), above, below);
        _cups = facts?.Cups ?? [];
        HasCups = false;
        Build(index, group);
    }

    private void FillSame(bool isSpoon, bool above, bool below)
    {
        for (int k = 0; k < _volume.Length; k++)
        {
            int same = 0;
            while (_volume[same] != _volume[k] || (isSpoon && _teaspoons[same] != _teaspoons[k]) || (above && _above[same] != _above[k])
                || (below && _below[same] != _below[k]))
                same++;
            _sameAs[k] = same;
        }
    }

    /// <summary>
    /// The hypotheses of the row in a system, but the plain one and the other cups; valid until the next call. What cannot reach t from
    /// first to last is left out: all of it together is less than the least that an unexplained figure has.
    /// </summary>
    public ReadOnlySpan<RowHypothesis> Of(int systemIndex, double first, double last)
    {
        double volume = _volume[systemIndex];
        int count = 0;
        // Only the mistakes that a row could have are shared out, so that it is as likely wrong before it is read as any other row.
        double scale = _wrong / _mistakeShares;
        for (int i = 0; i < _count; i++)
        {
            ref readonly RowHypothesis hypothesis = ref _list[i];
            if (_spoons[i] != 0 && _spoons[i] != _teaspoons[systemIndex] && !(_spoons[i] == Imperial && systemIndex == _imperial))
                continue;
            double share = hypothesis.Code == RowHypothesis.RightCode ? hypothesis.Share : hypothesis.Share * scale;
            if (_source[i] == Source.Measure)
            {
                double reach = _reach * hypothesis.Deviation;
                if (hypothesis.High - volume + reach >= first && hypothesis.Low - volume - reach <= last)
                    _moved[count++] = hypothesis.For(volume, share);
                continue;
            }
            double p = _source[i] switch
            {
                Source.Packing => Between(volume + _packing[i]!.LogLikely, _packing[i]!.LogUncertainty),
                Source.Volume => AsMillilitres(volume),
                Source.BadWeighing => Between(volume + _weight, _badWeighing),
                Source.Stray => Between(volume + _weight, OutlierDeviation),
                Source.Neighbour => Between((_neighbour[i] < 0 ? _above : _below)[systemIndex] + NeighbourGroup(i).LogWeight,
                    NeighbourGroup(i).Uncertainty),
                _ => 1,
            };
            if (p > 0)
                _moved[count++] = RowHypothesis.Constant(hypothesis.Code, share * p);
        }
        return _moved.AsSpan(0, count);
    }

    /// <summary>
    /// The probability that the figure is the millilitres of the measure, in this system or, rounded as 240 and 250 are, in another.
    /// </summary>
    private double AsMillilitres(double volume)
    {
        double p = CupCount == 0 ? Between(volume, ExactDeviation) : 0;
        for (int c = 0; c < CupCount; c++)
        {
            double apart = Math.Abs(_cups[c] - volume);
            if (apart < LikeCup)
                p = Math.Max(p, (apart < SameCup ? 1 : OtherMillilitres) * Between(_cups[c], ExactDeviation));
        }
        return p;
    }

    /// <summary>The share of each other cup among all that may have happened.</summary>
    public double ScaledCupShare => CupShare * _wrong / _mistakeShares;

    /// <summary>The probability of the digits where ln grams is normal; beyond the reach nothing is left.</summary>
    private double Between(double mean, double deviation)
    {
        double low = (_low - mean) / deviation, high = (_high - mean) / deviation;
        return low > _reach || high < -_reach ? 0 : NormalDistribution.Between(low, high);
    }

    private void FillVolumes(int index, double[] volumes)
    {
        if (FactsOf(index) is MeasureFacts facts)
        {
            facts.Volumes.CopyTo(volumes, 0);
            return;
        }
        for (int k = 0; k < volumes.Length; k++)
            volumes[k] = Math.Log(Measure(_rows[index], _systems[k]));
    }

    /// <summary>What a row's measure comes to; <see langword="null"/> where it is no volume, or has more than one part.</summary>
    private MeasureFacts? FactsOf(int index)
    {
        int known = _measureOf[index];
        if (known > 0)
            return _measures[known - 1];
        if (known < 0)
            return null;
        ref readonly Amount amount = ref _rows[index].Amount;
        if (!amount.IsVolume || amount.PartCount > 1)
        {
            _measureOf[index] = -1;
            return null;
        }
        ref readonly AmountPart part = ref amount.First;
        if (!_measureIndex.TryGetValue((part.Unit, part.Low, part.High), out known))
        {
            _measures.Add(NewFacts(_rows[index]));
            _measureIndex.Add((part.Unit, part.Low, part.High), known = _measures.Count);
        }
        _measureOf[index] = known;
        return _measures[known - 1];
    }

    private MeasureFacts NewFacts(TableRow row)
    {
        ref readonly AmountPart part = ref row.Amount.First;
        double middle = Math.Log((part.Low.ToDouble() + part.High.ToDouble()) / 2);
        (double[] volumes, int[] sameAs) = (_volume, _sameAs);
        (_volume, _sameAs) = (new double[_systems.Count], new int[_systems.Count]);
        for (int k = 0; k < _volume.Length; k++)
            _volume[k] = middle + _logVolumes[k][(int)part.Unit];
        FillSame(IsSpoon(in row.Amount), false, false);
        MeasureFacts facts = new(_volume, _sameAs, [.. s_logVolumes[(int)part.Unit].Select(volume => middle + volume)], LogOunces(row));
        (_volume, _sameAs) = (volumes, sameAs);
        return facts;
    }

    /// <summary>What rows of the same measure share.</summary>
    /// <param name="Volumes">Its logarithm in every system.</param>
    /// <param name="SameAs">The first system in which it is the same.</param>
    /// <param name="Cups">Its logarithms in all systems that there are.</param>
    /// <param name="LogOunces">The logarithm of its fluid ounces; <see langword="null"/> where nobody counts it in them.</param>
    private sealed record MeasureFacts(double[] Volumes, int[] SameAs, double[] Cups, double? LogOunces)
    {
        /// <summary>
        /// The group whose rows were last asked for, and the grams within which one of them may be right with this measure.
        /// </summary>
        public (RowGroup? Group, double Least, double Most, double LeastNode, double MostNode) Right { get; set; }
    }

    /// <summary>
    /// The logarithm of a unit as it is judged. Spoons of 15 and 14.8 mL are one: no heap of rows of spoons may decide between them, for
    /// what a spoon really takes is off by more than that, and in one table always to the same side.
    /// </summary>
    private static double LogVolume(MeasuringSystem system, KitchenUnit unit)
    {
        if (!unit.IsVolume())
            return 0;
        double volume = system.MillilitresPer(unit);
        return Math.Log(unit == KitchenUnit.Tablespoon && volume is > 14.5 and < 15.5 ? MiddleTablespoon
            : unit == KitchenUnit.Teaspoon && volume is > 4.9 and < 5.1 ? MiddleTablespoon / 3 : volume);
    }

    /// <summary>What the density or piece weight is multiplied by: millilitres, pieces, or the grams themselves.</summary>
    public static double Measure(TableRow row, MeasuringSystem system)
    {
        ref readonly Amount amount = ref row.Amount;
        if (amount.IsVolume)
            return amount.Millilitres(Having(system, in amount));
        if (amount.IsMass)
            return amount.Grams(system);
        double pieces = 0;
        for (int i = 0; i < amount.PartCount; i++)
            pieces += (amount.Part(i).Low.ToDouble() + amount.Part(i).High.ToDouble()) / 2;
        return pieces;
    }

    /// <summary>
    /// A system without the unit (a metric pint) says nothing about the row; the US unit stands in so that it can still be judged.
    /// </summary>
    private static MeasuringSystem Having(MeasuringSystem system, in Amount amount)
    {
        for (int i = 0; i < amount.PartCount; i++)
        {
            if (!system.Defines(amount.Part(i).Unit))
                return MeasuringSystem.UsCustomary;
        }
        return system;
    }

    /// <summary>
    /// By how much, in logarithms, a metric spoon is larger than the imperial one that a row names; 0 where it names no spoon.
    /// </summary>
    public static double LogMetricSpoon(in Amount amount) => amount.IsVolume && amount.PartCount == 1
        && amount.First.Unit is KitchenUnit.Teaspoon or KitchenUnit.Dessertspoon or KitchenUnit.Tablespoon
        && MeasuringSystem.Metric.Defines(amount.First.Unit)
            ? LogVolume(MeasuringSystem.Metric, amount.First.Unit) - LogVolume(MeasuringSystem.Imperial, amount.First.Unit) : 0;

    private void Build(int index, RowGroup group)
    {
        TableRow row = _rows[index];
        PrintedMass printed = row.Printed;
        (_low, _high) = _grid.LogInterval(row);
        _spoons.AsSpan(0, _count).Clear();
        _count = 0;
        _mistakeShares = 0;
        _index = index;
        double weight = _weight = group.LogWeight, deviation = Deviation = group.DeviationOf(row.Amount);
        _badWeighing = Math.Sqrt(BadWeighing * BadWeighing + group.Shared * group.Shared);
        CupCount = 0;
        CupShare = 0;
        SetReach(index, group);

        AddRight(row, group, deviation);
        // In a kitchen of pints of 568 mL spoons of 15 and 5 mL have long stood beside those of five eighths of a fluid ounce.
        _metricSpoon = _imperial >= 0 ? LogMetricSpoon(in row.Amount) : 0;
        if (_metricSpoon != 0)
        {
            _spoons[_count] = Imperial;
            Push(Source.Measure, RowHypothesis.Interval(RowHypothesis.RightCode, _plainShare * MetricSpoons, _low - weight - _metricSpoon,
                _high - weight - _metricSpoon, deviation));
        }
        // A slip starts from a figure that was right: it keeps nearer to its multiple than one spoonful to the next. Ten times is far from
        // anything else that may have happened, so that there is no need to be narrow.
        double whole = Math.Max(deviation, LeastSlip);
        deviation = group.Kind == GroupKind.Mass ? deviation : Math.Max(group.DeviationOf(row.Amount, 1, 0.5), LeastSlip);
        if (row.Amount.IsVolume)
        {
            AddOtherMeasures(row, deviation);
            AddEightOunces(row);
            AddThirtyGramOunce(printed, weight, deviation);
            AddOtherPackings(row, weight);
            AddNeighbours(index);
            AddMillilitres(row, group);
            AddPieces(row);
        }
        else if (row.Amount.IsMass)
        {
            AddThirtyGramOunceOfMass(row);
        }
        AddSlip(Reason.HalvedOrDoubled, Half / 2, 2, deviation);
        AddSlip(Reason.HalvedOrDoubled, Half / 2, 0.5, deviation);
        AddSlip(Reason.DecimalShift, Decimal / 2, 10, whole);
        AddSlip(Reason.DecimalShift, Decimal / 2, 0.1, whole);
        // In a column of grams, ounces were printed; in a column of ounces, grams were. Either way we read 28 times too little or too much.
        Add(Reason.OuncesAsGrams, printed.IsOunces ? 1 : OuncesPrinted, weight - s_ounce, deviation);
        Add(Reason.GramsAsOunces, printed.IsOunces ? OuncesPrinted : GramsTaken, weight + s_ounce, deviation);
        AddSwappedDigits(printed, deviation);
        AddLostDigits(printed, deviation);
        AddCopied(index);
        AddOtherMeasure(index, group, weight, deviation);
        // A bad weighing is near the truth; most other figures that nothing explains are within half and double; a few are log-uniform
        // over three decades.
        Push(Source.BadWeighing, RowHypothesis.Constant((int)Reason.Unexplained, 0.15 * Outlier));
        Push(Source.Stray, RowHypothesis.Constant((int)Reason.Unexplained, 0.65 * Outlier));
        AddConstant(Reason.Unexplained, 0.2 * Outlier, Math.Min(1, (_high - _low) / s_threeDecades));
        _mistakeShares += 0.8 * Outlier;
    }

    private void AddRight(TableRow row, RowGroup group, double deviation)
    {
        double right = 1 - _wrong, loose = group.Kind == GroupKind.Mass ? 0 : LooseShare,
            looseDeviation = group.DeviationOf(row.Amount, LooseFactor);
        _plainShare = right * (1 - loose);
        if (group.Kind != GroupKind.Density || row.Packing is not null || row.Rough is not null || row.Matched!.Densities.Count == 1)
        {
            if (loose > 0)
                Push(Source.Measure, RowHypothesis.Interval(RowHypothesis.RightCode, right * loose, _low - _weight, _high - _weight,
                    looseDeviation));
            return;
        }
        Ingredient ingredient = row.Matched;
        double others = 0;
        foreach (BulkDensity density in ingredient.Densities)
            others += density.Packing == ingredient.DefaultPacking ? 0 : Likeliness(ingredient, density.Packing);
        right *= 1 - BetweenPackings;
        foreach (BulkDensity density in ingredient.Densities)
        {
            double likeliness = Likeliness(ingredient, density.Packing), share = right * (1 - UsualPacking) * likeliness / others,
                weight = density.LogLikely;
            if (density.Packing == ingredient.DefaultPacking)
            {
                share = right * UsualPacking;
                _plainShare = share * (1 - loose);
            }
            else
            {
                Push(Source.Measure, RowHypothesis.Interval(RowHypothesis.RightCode, share * (1 - loose), _low - weight, _high - weight,
                    deviation));
            }
            Push(Source.Measure, RowHypothesis.Interval(RowHypothesis.RightCode, share * loose, _low - weight, _high - weight,
                looseDeviation));
        }
        (double lowest, double highest) = BetweenPackingsOf(ingredient);
        double middle = Math.Log(lowest * highest) / 2, half = Math.Log(highest / lowest) / 2;
        Push(Source.Measure, RowHypothesis.Interval(RowHypothesis.RightCode, (1 - _wrong) * BetweenPackings, _low - middle, _high - middle,
            Math.Max(half / 2, deviation)));
    }

    /// <summary>The lightest and the heaviest grams in a millilitre that may be meant where no packing is stated.</summary>
    public static (double Lowest, double Highest) BetweenPackingsOf(Ingredient ingredient)
    {
        double lowest = double.MaxValue, highest = 0;
        foreach (BulkDensity density in ingredient.Densities)
        {
            if (Likeliness(ingredient, density.Packing) < 0.03)
                continue;
            lowest = Math.Min(lowest, density.GramsPerMillilitre.Low);
            highest = Math.Max(highest, density.GramsPerMillilitre.High);
        }
        return (lowest, highest);
    }

    /// <summary>How likely an unstated packing is, beside the others: nobody presses icing sugar down without saying so.</summary>
    private static double Likeliness(Ingredient ingredient, Packing packing) => ingredient.Class == IngredientClass.Powder
        && PackingNearness.Steps(IngredientClass.Powder, ingredient.DefaultPacking, packing) is double steps ? Math.Pow(0.2, steps) : 1;

    /// <summary>The weight of the other spoon, or of another system's cup, was printed.</summary>
    private void AddOtherMeasures(TableRow row, double deviation)
    {
        if (row.Amount.PartCount > 1)
            return;
        KitchenUnit unit = row.Amount.First.Unit;
        if (unit is KitchenUnit.Tablespoon or KitchenUnit.Teaspoon)
        {
            // The other spoon was weighed; less often its number was turned the wrong way, three times up instead of down.
            bool tablespoon = unit == KitchenUnit.Tablespoon;
            AddSpoons(!tablespoon, Spoons * 0.75, deviation);
            AddSpoons(tablespoon, Spoons * 0.25, deviation);
        }
        if (_cups.Length < 2)
            return;
        CupCount = _cups.Length;
        CupShare = OtherCups / _cups.Length;
        _mistakeShares += OtherCups;
    }

    /// <summary>A tablespoon holds four teaspoons in Australia and three elsewhere: each is believed only in its own systems.</summary>
    private void AddSpoons(bool isLarger, double share, double deviation)
    {
        if (_has3)
            AddSlip(Reason.SpoonSwap, share, isLarger ? 3 : 1 / 3.0, deviation, 3);
        if (_has4)
            AddSlip(Reason.SpoonSwap, share, isLarger ? 4 : 1 / 4.0, deviation, 4);
        if (_has3 && _has4)
            _mistakeShares -= share;
    }

    private void AddEightOunces(TableRow row)
    {
        double? known = FactsOf(_index) is MeasureFacts facts ? facts.LogOunces : LogOunces(row);
        if (known is not double ounces)
            return;
        // Hardly anybody counts a teaspoon as a sixth of an ounce, and 5 g is what many a powder weighs in it.
        double share = row.Amount.First.Unit == KitchenUnit.Teaspoon ? 1 : EightOunces;
        AddConstant(row.Amount.First.Unit == KitchenUnit.Cup ? Reason.CupCountedAsEightOunces : Reason.FluidOunceAsOunce, share,
            Between(ounces + s_ounce, ExactDeviation));
    }

    private static double? LogOunces(TableRow row)
    {
        double ounces = 0;
        for (int i = 0; i < row.Amount.PartCount; i++)
        {
            AmountPart part = row.Amount.Part(i);
            // Millilitres and litres are nobody's ounces.
            if (part.Unit is KitchenUnit.Millilitre or KitchenUnit.Litre or KitchenUnit.Dessertspoon)
                return null;
            ounces += part.Low.ToDouble() * MeasuringSystem.UsCustomary.MillilitresPer(part.Unit) / MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.FluidOunce);
        }
        return Math.Log(ounces);
    }

    private void AddThirtyGramOunce(PrintedMass printed, double weight, double deviation)
    {
        // Somebody weighed to the half or quarter ounce and multiplied by 30: the figure is then a multiple of 15 or 7.5.
        if (printed.IsOunces || printed.Decimals < 0)
            return;
        double half = printed.Value % 15 == 0 ? 0.25 : printed.Value % 7.5 == 0 ? 0.125 : 0;
        double ounces = printed.Value / 30;
        // Nobody weighs less than an ounce in quarter ounces: 7.5 g would stand for anything from 4 to 11.
        if (half == 0 || ounces < 1)
            return;
        Push(Source.Measure, RowHypothesis.Interval((int)Reason.ThirtyGramOunce, ThirtyGrams,
            Math.Log(ounces - half) + s_ounce - weight, Math.Log(ounces + half) + s_ounce - weight, deviation));
        _mistakeShares += ThirtyGrams;
    }

    private void AddThirtyGramOunceOfMass(TableRow row)
    {
        ref readonly AmountPart part = ref row.Amount.First;
        if (row.Amount.PartCount > 1 || part.Unit is not (KitchenUnit.Ounce or KitchenUnit.Pound))
            return;
        double mean = Math.Log(part.Low.ToDouble() * 30 * (part.Unit == KitchenUnit.Pound ? 16 : 1));
        AddConstant(Reason.ThirtyGramOunce, ThirtyGrams, Between(mean, ExactDeviation));
    }

    private void AddOtherPackings(TableRow row, double weight)
    {
        if (row.Packing is not Packing stated || row.Matched is null || row.Rough is not null)
            return;
        // What the stated packing was taken from is no other packing.
        if (!row.Matched.TryGetNearestDensity(stated, out BulkDensity? nearest))
            return;
        Packing right = nearest.TakenFrom ?? stated;
        bool scoop = row.Matched.Class == IngredientClass.Powder && stated is Packing.Sifted or Packing.Spooned or Packing.Levelled
            && !row.Matched.TryGetDensity(Packing.Scooped, out _);
        int others = row.Matched.Densities.Count - 1 + (scoop ? 1 : 0);
        foreach (BulkDensity density in row.Matched.Densities)
        {
            if (density.Packing == right)
                continue;
            _packing[_count] = density;
            Push(Source.Packing, RowHypothesis.Constant((int)Reason.OtherPacking, Packings / others));
            _mistakeShares += Packings / others;
        }
        if (scoop)
            Add(Reason.OtherPacking, Packings / others / 2, weight + ScoopFactor * (stated == Packing.Sifted ? 1.5 : 1), ScoopDeviation);
    }

    /// <summary>The figures slipped by a row: this one belongs to the ingredient above or below.</summary>
    private void AddNeighbours(int index)
    {
        for (int step = -1; step <= 1; step += 2)
        {
            if (!IsSlipping(index, index + step))
                continue;
            _neighbour[_count] = step;
            Push(Source.Neighbour, RowHypothesis.Constant((int)Reason.RowSlip, Slipped / 2));
            _mistakeShares += Slipped / 2;
        }
    }

    // Where figures slipped, the row above or below has one that is not its own either.
    private bool IsSlipping(int index, int other) => _hearsNeighbours && other >= 0 && other < _rows.Count
        && _rows[other].Group != _rows[index].Group && _rows[index].Amount.IsVolume && IsMisfit(other);

    /// <summary>Whether a row of a known density is off by a quarter in every system.</summary>
    private bool IsMisfit(int index)
    {
        if (_misfits[index] != 0)
            return _misfits[index] == 2;
        TableRow row = _rows[index];
        RowGroup group = _groups[row.Group];
        bool misfit = group.Kind == GroupKind.Density && row.Amount.IsVolume;
        if (misfit)
        {
            FillVolumes(index, _above);
            double density = Math.Log(row.Printed.Grams) - group.LogWeight;
            foreach (double volume in _above)
                misfit &= Math.Abs(density - volume) > Misfit;
        }
        _misfits[index] = (byte)(misfit ? 2 : 1);
        return misfit;
    }

    private RowGroup NeighbourGroup(int hypothesis) => _groups[_rows[_index + _neighbour[hypothesis]].Group];

    /// <summary>The millilitres were printed as grams. Of a liquid as heavy as water that is no mistake.</summary>
    private void AddMillilitres(TableRow row, RowGroup group)
    {
        if (row.Printed.IsOunces || (group.Kind == GroupKind.Density && Math.Abs(group.LogWeight) < SameCup))
            return;
        Push(Source.Volume, RowHypothesis.Constant((int)Reason.VolumeAsMass, Millilitres));
        _mistakeShares += Millilitres;
    }

    private void AddPieces(TableRow row)
    {
        // A spoon is no stick.
        if (row.Matched is not Ingredient ingredient || row.Amount.First.Unit != KitchenUnit.Cup)
            return;
        foreach (PieceWeight piece in ingredient.Pieces)
        {
            double mean = Math.Log(piece.Grams.Likely), u = Math.Max(0.01, Math.Log(piece.Grams.High / piece.Grams.Low) / 4),
                share = Pieces / ingredient.Pieces.Count;
            AddConstant(Reason.PieceAsMeasure, share, Between(mean, u));
        }
    }

    private void AddSwappedDigits(PrintedMass printed, double deviation)
    {
        Span<double> values = stackalloc double[20];
        int count = printed.SwappedDigits(values);
        double half = printed.Resolution / 2;
        foreach (double value in values[..count])
        {
            AddBefore(Reason.DigitsSwapped, Swapped / count, Math.Max(value - half, value / 2), value + half, deviation);
            _mistakeShares += Swapped / count;
        }
    }

    /// <summary>
    /// A digit was lost, or printed twice. Only figures that are far too small can have lost one, and only those with a pair of digits have one
    /// twice: of others it is no mistake that could have been made.
    /// </summary>
    private void AddLostDigits(PrintedMass printed, double deviation)
    {
        double half = printed.Resolution / 2;
        Span<(double Value, double Share)> longer = stackalloc (double, double)[MostLost];
        int count = printed.WithADigitMore(_leastNode / printed.GramsPerUnit - half, _mostNode / printed.GramsPerUnit + half, longer);
        foreach ((double value, double share) in longer[..count])
            AddBefore(Reason.DigitLost, Lost * share, value - half, value + half, deviation);
        _mistakeShares += count > 0 ? Lost : 0;
        Span<double> shorter = stackalloc double[8];
        count = printed.WithADigitLess(shorter);
        foreach (double value in shorter[..count])
            AddBefore(Reason.DigitDoubled, Twice / count, Math.Max(value - half, value / 2), value + half, deviation);
        _mistakeShares += count > 0 ? Twice : 0;
    }

    private void AddCopied(int index)
    {
        TableRow row = _rows[index];
        // In a column that says the same nearly everywhere, the row above says it too.
        if (_constants.Contains((row.Printed.Value, row.Printed.IsOunces)))
            return;
        double p = (SamePrint(row, index - 1) ? 0.6 : 0) + (SamePrint(row, index + 1) ? 0.4 : 0);
        if (p > 0)
            AddConstant(Reason.CopiedRow, Copied, p);
    }

    private bool SamePrint(TableRow row, int index)
    {
        if (index < 0 || index >= _rows.Count || !_hearsNeighbours)
            return false;
        TableRow other = _rows[index];
        // The same thing printed twice is a repetition, not a copy of another row's figure.
        return other.Printed.Value == row.Printed.Value && other.Printed.IsOunces == row.Printed.IsOunces
            && (other.Group != row.Group || IsOtherMeasure(row, other));
    }

    private static bool IsOtherMeasure(TableRow row, TableRow other) => row.Amount.PartCount == 1 && other.Amount.PartCount == 1
        && (row.Amount.First.Unit != other.Amount.First.Unit || row.Amount.First.Low != other.Amount.First.Low);

    /// <summary>
    /// The figure of another measure of the same ingredient: one that the table gives too, or one that it would be for. Twice and
    /// half, and three spoons, have their own names.
    /// </summary>
    private void AddOtherMeasure(int index, RowGroup group, double weight, double deviation)
    {
        TableRow row = _rows[index];
        if (!row.Amount.IsVolume || row.Amount.PartCount > 1)
            return;
        bool known = false;
        // All of them or none: which stand near is no evidence.
        for (int i = 0; i < group.Rows.Count && group.Rows.Count <= RowsOfTheSame && !known; i++)
        {
            TableRow other = _rows[group.Rows[i]];
            if (!other.Amount.IsVolume || other.Printed.Value != row.Printed.Value || other.Printed.IsOunces != row.Printed.IsOunces
                || !IsOtherMeasure(row, other))
                continue;
            double ratio = Measure(other, MeasuringSystem.UsCustomary) / Measure(row, MeasuringSystem.UsCustomary);
            bool spoons = row.Amount.First.Unit is KitchenUnit.Teaspoon or KitchenUnit.Tablespoon && (IsNear(ratio, 3) || IsNear(ratio, 1.0 / 3));
            known = !IsNear(ratio, 2) && !IsNear(ratio, 0.5) && !spoons;
        }
        if (known && !_constants.Contains((row.Printed.Value, row.Printed.IsOunces)))
            AddConstant(Reason.OtherMeasure, Measures / 2, 0.5);
        if (row.Amount.First.Unit is not KitchenUnit.Cup)
            return;
        Add(Reason.OtherMeasure, Measures / 40, weight + s_four, deviation);
        Add(Reason.OtherMeasure, Measures / 40, weight - s_four, deviation);
        Add(Reason.OtherMeasure, Measures / 40, weight + s_three, deviation);
        Add(Reason.OtherMeasure, Measures / 40, weight - s_three, deviation);
    }

    private static bool IsNear(double ratio, double factor) => Math.Abs(ratio / factor - 1) < 0.02;

    /// <summary>Figures that stand in a quarter of the rows or in three rows running: no row can be said to have copied one.</summary>
    private static HashSet<(double, bool)> Constants(IReadOnlyList<TableRow> rows)
    {
        HashSet<(double, bool)> constants = [];
        Dictionary<(double, bool), int> counts = [];
        for (int i = 0; i < rows.Count; i++)
        {
            (double, bool) figure = (rows[i].Printed.Value, rows[i].Printed.IsOunces);
            int count = counts.GetValueOrDefault(figure) + 1;
            counts[figure] = count;
            if (count >= 3 && 4 * count >= rows.Count)
                constants.Add(figure);
        }
        return constants;
    }

    private void Add(Reason reason, double share, double mean, double deviation)
    {
        Push(Source.Measure, RowHypothesis.Interval((int)reason, share, _low - mean, _high - mean, deviation));
        _mistakeShares += share;
    }

    /// <summary>
    /// A figure that was right was multiplied on its way into print: what stood there before was rounded as the table rounds.
    /// </summary>
    private void AddSlip(Reason reason, double share, double factor, double deviation, byte spoons = 0)
    {
        PrintedMass printed = _rows[_index].Printed;
        double half = printed.Resolution / 2;
        // A nought more behind a whole number: 1130 was 113, which stands for 112.5 to 113.5.
        if (factor == 10 && printed.Decimals == 0 && printed.Value % 10 == 0)
            half *= 10;
        double first = Math.Max(printed.Value - half, printed.Value / 2) / factor, last = (printed.Value + half) / factor;
        AddBefore(reason, share, first, last, deviation, spoons);
        _mistakeShares += share;
    }

    private void AddBefore(Reason reason, double share, double first, double last, double deviation, byte spoons = 0)
    {
        bool isOn = _grid.TryBefore(_rows[_index], first, last, out (double Low, double High) before);
        // Most slips explain nothing of a row; those that no node of the group could hear are not even put into logarithms.
        if (before.High < _leastBefore || before.Low > _mostBefore)
            return;
        _spoons[_count] = spoons;
        share = isOn ? share : share * (reason is Reason.DigitsSwapped or Reason.DigitLost or Reason.DigitDoubled || !IsOnGrid() ? OffGridInPrint : OffGrid);
        (double low, double high) = (Math.Log(before.Low) - _weight, Math.Log(before.High) - _weight);
        Push(Source.Measure, RowHypothesis.Interval((int)reason, share, low, high, deviation));
    }

    private bool IsOnGrid()
    {
        PrintedMass printed = _rows[_index].Printed;
        double half = printed.Resolution / 2;
        return _grid.TryBefore(_rows[_index], Math.Max(printed.Value - half, printed.Value / 2), printed.Value + half, out _);
    }

    /// <summary>
    /// The grams beyond which a figure that was right before a slip would lie further from every node of the group, in every system, than
    /// <see cref="Of"/> asks for.
    /// </summary>
    private void SetReach(int index, RowGroup group)
    {
        MeasureFacts? facts = FactsOf(index);
        if (facts is null || facts.Right.Group != group)
        {
            const double margin = 1e-6;
            double least = double.MaxValue, most = double.MinValue, reach = _reach * Math.Max(Deviation, LeastSlip) + margin;
            foreach (double volume in _volume)
                (least, most) = (Math.Min(least, volume), Math.Max(most, volume));
            (_leastNode, _mostNode) = (Math.Exp(group.Node(0) + least + _weight), Math.Exp(group.Node(group.NodeCount - 1) + most + _weight));
            (_leastBefore, _mostBefore) = (_leastNode * Math.Exp(-reach), _mostNode * Math.Exp(reach));
            if (facts is not null)
                facts.Right = (group, _leastBefore, _mostBefore, _leastNode, _mostNode);
            return;
        }
        (_, _leastBefore, _mostBefore, _leastNode, _mostNode) = facts.Right;
    }

    private void AddConstant(Reason reason, double share, double probability)
    {
        if (probability > 0)
            Push(Source.Known, RowHypothesis.Constant((int)reason, share * probability));
        _mistakeShares += share;
    }

    private static bool IsSpoon(in Amount amount) => amount.IsVolume && amount.PartCount == 1
        && amount.First.Unit is KitchenUnit.Teaspoon or KitchenUnit.Tablespoon;

    private void Push(Source source, RowHypothesis hypothesis)
    {
        _list[_count] = hypothesis;
        _source[_count++] = source;
    }
}
