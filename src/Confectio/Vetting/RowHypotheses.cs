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
    private const int Most = 96;

    // How often each mistake is made, relative to the others.
    private const double EightOunces = 15, Spoons = 12, Half = 15, Decimal = 8, OuncesPrinted = 6, GramsTaken = 4, ThirtyGrams = 5,
        Swapped = 12, Packings = 12, Cups = 8, Copied = 8, Slipped = 3, Measures = 5, Millilitres = 4, Pieces = 3, Outlier = 12;

    /// <summary>A packing that the row does not state: the usual one most of the time.</summary>
    private const double UsualPacking = 0.7;

    /// <summary>
    /// Some right rows stand further from the other rows of their ingredient: the spoon was weighed on another day than the
    /// cup. Of 93 pairs of cup and spoon in USDA SR, 78 agree within their rounding and 9 differ by more than two of our
    /// deviations beyond it: about one row in twenty.
    /// </summary>
    private const double LooseShare = 0.03, LooseFactor = 3;

    /// <summary>Where a row states no packing, some figures fit none of those that were weighed, but lie among them.</summary>
    private const double BetweenPackings = 0.15;

    /// <summary>A scoop pushed into the bin takes so much more than a spoon fills, where nobody weighed it (flour: 137 to 145 g against 120 to 125).</summary>
    private const double ScoopFactor = 0.15, ScoopDeviation = 0.05;

    /// <summary>How many rows of the same ingredient are looked at on either side for the figure of another measure.</summary>
    private const int RowsOfTheSame = 4;

    /// <summary>Between the 14.8 mL of a US customary tablespoon and the 15 mL of most others.</summary>
    private const double MiddleTablespoon = 14.9;

    /// <summary>A mistake that fixes the mass exactly still leaves the table maker's own rounding on the way.</summary>
    private const double ExactDeviation = 0.002;

    /// <summary>Two cups closer than this (236.6 and 240 mL) are no mistake that anybody could find in one row.</summary>
    private const double SameCup = 0.03;

    /// <summary>The standard deviation of ln grams where somebody weighed badly.</summary>
    private const double BadWeighing = 0.15;

    /// <summary>Of each unit, the different volumes that it has in one system or another.</summary>
    private static readonly double[][] s_volumes = [.. Enum.GetValues<KitchenUnit>().Select(unit => unit.IsVolume()
        ? MeasuringSystem.All.Where(system => system.Defines(unit)).Select(system => system.MillilitresPer(unit)).Distinct().ToArray() : [])];

    private static readonly double s_ounce = Math.Log(PrintedMass.GramsPerOunce);

    private readonly IReadOnlyList<TableRow> _rows;
    private readonly IReadOnlyList<RowGroup> _groups;
    private readonly IReadOnlyList<MeasuringSystem> _systems;
    private readonly HashSet<(double, bool)> _constants;
    private readonly RoundingGrid _grid;
    private readonly double _wrong;

    // How likely a tablespoon holds four teaspoons, as only the Australian one does.
    private readonly double _fourTeaspoons;

    // One row's hypotheses as if its measure held one millilitre; a system only moves them. Filled once a row, read once a system.
    private readonly RowHypothesis[] _list = new RowHypothesis[Most];
    private readonly double[] _cup = new double[Most];
    private readonly BulkDensity?[] _packing = new BulkDensity?[Most];
    private readonly TableRow?[] _neighbour = new TableRow?[Most];
    private readonly bool[] _isVolume = new bool[Most];
    private readonly RowHypothesis[] _moved = new RowHypothesis[Most];
    private int _count;
    private int _built = -1;
    private double _low;
    private double _high;
    private double _mistakeShares;

    public RowHypotheses(IReadOnlyList<TableRow> rows, IReadOnlyList<RowGroup> groups, IReadOnlyList<MeasuringSystem> systems, RoundingGrid grid, double expectedWrong)
    {
        _rows = rows;
        _groups = groups;
        _constants = Constants(rows);
        _systems = systems;
        _grid = grid;
        _wrong = expectedWrong;
        _fourTeaspoons = !systems.Contains(MeasuringSystem.Australian) ? 0 : systems.Count == 1 ? 1 : 0.1;
    }

    /// <summary>The hypotheses of a row in a system; valid until the next call.</summary>
    public ReadOnlySpan<RowHypothesis> Of(int index, RowGroup group, int systemIndex)
    {
        if (_built != index)
        {
            Build(index, group);
            _built = index;
        }
        double volume = LogMeasure(_rows[index], _systems[systemIndex]);
        int count = 0;
        // Only the mistakes that a row could have are shared out, so that it is as likely wrong before it is read as any other row.
        double scale = _wrong / _mistakeShares;
        for (int i = 0; i < _count; i++)
        {
            ref readonly RowHypothesis hypothesis = ref _list[i];
            bool right = hypothesis.Code == RowHypothesis.RightCode;
            if (_neighbour[i] is TableRow neighbour)
            {
                double p = SlippedProbability(neighbour, systemIndex);
                if (p > 0)
                    _moved[count++] = RowHypothesis.Constant(hypothesis.Code, hypothesis.Share * scale * p);
            }
            else if (_isVolume[i])
            {
                _moved[count++] = RowHypothesis.Constant(hypothesis.Code, hypothesis.Share * scale * ExactProbability(volume));
            }
            else if (_cup[i] != 0)
            {
                // Another system's cup does not depend on this system's, and is no mistake where the two are the same.
                if (Math.Abs(_cup[i] - volume) > SameCup)
                    _moved[count++] = hypothesis.For(_cup[i], hypothesis.Share * scale);
            }
            else if (_packing[i] is BulkDensity packing)
            {
                double mean = volume + packing.LogLikely, u = packing.LogUncertainty;
                double p = NormalDistribution.Between((_low - mean) / u, (_high - mean) / u);
                _moved[count++] = RowHypothesis.Constant(hypothesis.Code, hypothesis.Share * scale * p);
            }
            else
            {
                _moved[count++] = hypothesis.For(volume, right ? hypothesis.Share : hypothesis.Share * scale);
            }
        }
        return _moved.AsSpan(0, count);
    }

    /// <summary>What the density or piece weight is multiplied by: millilitres, pieces, or the grams themselves.</summary>
    public static double Measure(TableRow row, MeasuringSystem system)
    {
        Amount amount = row.Amount;
        if (amount.IsVolume)
            return amount.Millilitres(Having(system, amount));
        if (amount.IsMass)
            return amount.Grams(system);
        double pieces = 0;
        for (int i = 0; i < amount.PartCount; i++)
            pieces += (amount.Part(i).Low.ToDouble() + amount.Part(i).High.ToDouble()) / 2;
        return pieces;
    }

    /// <summary>
    /// The logarithm of the measure as it is judged. Spoons of 15 and 14.8 mL are one: no heap of rows of spoons may decide between
    /// them, for what a spoon really takes is off by more than that, and in one table always to the same side.
    /// </summary>
    private static double LogMeasure(TableRow row, MeasuringSystem system)
    {
        double measure = Measure(row, system);
        AmountPart part = row.Amount.Part(0);
        if (row.Amount.PartCount == 1 && part.Unit is KitchenUnit.Tablespoon or KitchenUnit.Teaspoon && system.MillilitresPer(part.Unit) is (> 14 and < 15.5) or (> 4.9 and < 5.1))
            measure = (part.Low.ToDouble() + part.High.ToDouble()) / 2 * (part.Unit == KitchenUnit.Tablespoon ? MiddleTablespoon : MiddleTablespoon / 3);
        return Math.Log(measure);
    }

    /// <summary>A system without the unit (a metric pint) says nothing about the row; the US unit stands in so that it can still be judged.</summary>
    private static MeasuringSystem Having(MeasuringSystem system, Amount amount)
    {
        for (int i = 0; i < amount.PartCount; i++)
        {
            if (!system.Defines(amount.Part(i).Unit))
                return MeasuringSystem.UsCustomary;
        }
        return system;
    }

    private void Build(int index, RowGroup group)
    {
        TableRow row = _rows[index];
        PrintedMass printed = row.Printed;
        (_low, _high) = _grid.LogInterval(row);
        _count = 0;
        _mistakeShares = 0;
        double weight = group.LogWeight, deviation = group.DeviationOf(row.Amount);

        AddRight(row, group, deviation);
        if (row.Amount.IsVolume)
        {
            AddOtherMeasures(row, weight, deviation);
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
        Add(Reason.HalvedOrDoubled, Half / 2, weight + Math.Log(2), deviation);
        Add(Reason.HalvedOrDoubled, Half / 2, weight - Math.Log(2), deviation);
        Add(Reason.DecimalShift, Decimal / 2, weight + Math.Log(10), deviation);
        Add(Reason.DecimalShift, Decimal / 2, weight - Math.Log(10), deviation);
        // In a column of grams, ounces were printed; in a column of ounces, grams were. Either way we read 28 times too little or too much.
        Add(Reason.OuncesAsGrams, printed.IsOunces ? 1 : OuncesPrinted, weight - s_ounce, deviation);
        Add(Reason.GramsAsOunces, printed.IsOunces ? OuncesPrinted : GramsTaken, weight + s_ounce, deviation);
        AddSwappedDigits(printed, weight, deviation);
        AddCopied(index);
        AddOtherMeasure(index, group, weight, deviation);
        // A bad weighing is near the truth; anything else is log-uniform over three decades.
        Add(Reason.Unexplained, Outlier / 2, weight, BadWeighing);
        AddConstant(Reason.Unexplained, Outlier / 2, Math.Min(1, (_high - _low) / Math.Log(1000)));
    }

    private void AddRight(TableRow row, RowGroup group, double deviation)
    {
        double right = 1 - _wrong;
        if (group.Kind != GroupKind.Density || row.Packing is not null || row.Matched!.Densities.Count == 1)
        {
            AddRight(right, group.LogWeight, group, deviation);
            return;
        }
        Ingredient ingredient = row.Matched;
        double others = 0, lowest = double.MaxValue, highest = 0;
        foreach (BulkDensity density in ingredient.Densities)
            others += density.Packing == ingredient.DefaultPacking ? 0 : Likeliness(ingredient, density.Packing);
        foreach (BulkDensity density in ingredient.Densities)
        {
            double likeliness = Likeliness(ingredient, density.Packing);
            AddRight(right * (1 - BetweenPackings) * (density.Packing == ingredient.DefaultPacking ? UsualPacking : (1 - UsualPacking) * likeliness / others), density.LogLikely, group, deviation);
            if (likeliness < 0.1)
                continue;
            lowest = Math.Min(lowest, density.GramsPerMillilitre.Low);
            highest = Math.Max(highest, density.GramsPerMillilitre.High);
        }
        double middle = Math.Log(lowest * highest) / 2, half = Math.Log(highest / lowest) / 2;
        Push(RowHypothesis.Interval(RowHypothesis.RightCode, right * BetweenPackings, _low - middle, _high - middle, Math.Max(half / 2, deviation)));
    }

    /// <summary>How likely an unstated packing is, beside the others: nobody presses icing sugar down without saying so.</summary>
    private static double Likeliness(Ingredient ingredient, Packing packing) => ingredient.Class == IngredientClass.Powder
        && PackingNearness.Steps(IngredientClass.Powder, ingredient.DefaultPacking, packing) is double steps ? Math.Pow(0.35, steps) : 1;

    private void AddRight(double share, double weight, RowGroup group, double deviation)
    {
        double loose = group.Kind == GroupKind.Mass ? 0 : LooseShare;
        Push(RowHypothesis.Interval(RowHypothesis.RightCode, share * (1 - loose), _low - weight, _high - weight, deviation));
        if (loose > 0)
            Push(RowHypothesis.Interval(RowHypothesis.RightCode, share * loose, _low - weight, _high - weight, LooseFactor * deviation));
    }

    /// <summary>The weight of the other spoon, or of another system's cup, was printed.</summary>
    private void AddOtherMeasures(TableRow row, double weight, double deviation)
    {
        if (row.Amount.PartCount > 1)
            return;
        KitchenUnit unit = row.Amount.Part(0).Unit;
        if (unit is KitchenUnit.Tablespoon or KitchenUnit.Teaspoon)
        {
            // The other spoon was weighed; less often its number was turned the wrong way, three times up instead of down.
            bool tablespoon = unit == KitchenUnit.Tablespoon;
            AddSpoons(tablespoon ? -1 : 1, Spoons * 0.75, weight, deviation);
            AddSpoons(tablespoon ? 1 : -1, Spoons * 0.25, weight, deviation);
        }
        if (unit is KitchenUnit.Millilitre or KitchenUnit.Litre)
            return;
        double[] volumes = s_volumes[(int)unit];
        if (volumes.Length < 2)
            return;
        double middle = (row.Amount.Part(0).Low.ToDouble() + row.Amount.Part(0).High.ToDouble()) / 2;
        foreach (double volume in volumes)
        {
            _cup[_count] = Math.Log(middle * volume);
            Push(RowHypothesis.Interval((int)Reason.OtherCup, Cups / volumes.Length, _low - weight, _high - weight, deviation));
            _mistakeShares += Cups / volumes.Length;
        }
    }

    private void AddSpoons(int direction, double share, double weight, double deviation)
    {
        if (_fourTeaspoons < 1)
            Add(Reason.SpoonSwap, share * (1 - _fourTeaspoons), weight + direction * Math.Log(3), deviation);
        if (_fourTeaspoons > 0)
            Add(Reason.SpoonSwap, share * _fourTeaspoons, weight + direction * Math.Log(4), deviation);
    }

    private void AddEightOunces(TableRow row)
    {
        double ounces = 0;
        for (int i = 0; i < row.Amount.PartCount; i++)
        {
            AmountPart part = row.Amount.Part(i);
            // Millilitres and litres are nobody's ounces.
            if (part.Unit is KitchenUnit.Millilitre or KitchenUnit.Litre or KitchenUnit.Dessertspoon)
                return;
            ounces += part.Low.ToDouble() * MeasuringSystem.UsCustomary.MillilitresPer(part.Unit) / MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.FluidOunce);
        }
        double mean = Math.Log(ounces) + s_ounce;
        AddConstant(row.Amount.Part(0).Unit == KitchenUnit.Cup ? Reason.CupCountedAsEightOunces : Reason.FluidOunceAsOunce, EightOunces, ExactProbability(mean));
    }

    private void AddThirtyGramOunce(PrintedMass printed, double weight, double deviation)
    {
        // Somebody weighed to the half or quarter ounce and multiplied by 30: the figure is then a multiple of 15 or 7.5.
        if (printed.IsOunces || printed.Decimals < 0)
            return;
        double half = printed.Value % 15 == 0 ? 0.25 : printed.Value % 7.5 == 0 ? 0.125 : 0;
        double ounces = printed.Value / 30;
        if (half == 0 || ounces <= half)
            return;
        Push(RowHypothesis.Interval((int)Reason.ThirtyGramOunce, ThirtyGrams,
            Math.Log(ounces - half) + s_ounce - weight, Math.Log(ounces + half) + s_ounce - weight, deviation));
        _mistakeShares += ThirtyGrams;
    }

    private void AddThirtyGramOunceOfMass(TableRow row)
    {
        AmountPart part = row.Amount.Part(0);
        if (row.Amount.PartCount > 1 || part.Unit is not (KitchenUnit.Ounce or KitchenUnit.Pound))
            return;
        double mean = Math.Log(part.Low.ToDouble() * 30 * (part.Unit == KitchenUnit.Pound ? 16 : 1));
        AddConstant(Reason.ThirtyGramOunce, ThirtyGrams, ExactProbability(mean));
    }

    private void AddOtherPackings(TableRow row, double weight)
    {
        if (row.Packing is not Packing stated || row.Matched is null)
            return;
        // What the stated packing was taken from is no other packing.
        Packing right = row.Matched.TryGetNearestDensity(stated, out BulkDensity? nearest) ? nearest.TakenFrom ?? stated : stated;
        bool scoop = row.Matched.Class == IngredientClass.Powder && stated is Packing.Sifted or Packing.Spooned or Packing.Levelled
            && !row.Matched.TryGetDensity(Packing.Scooped, out _);
        int others = row.Matched.Densities.Count - 1 + (scoop ? 1 : 0);
        foreach (BulkDensity density in row.Matched.Densities)
        {
            if (density.Packing == right)
                continue;
            _packing[_count] = density;
            Push(RowHypothesis.Constant((int)Reason.OtherPacking, Packings / others));
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
            int other = index + step;
            if (other < 0 || other >= _rows.Count || _rows[other].Group == _rows[index].Group || !_rows[other].Amount.IsVolume
                || _groups[_rows[other].Group].Kind != GroupKind.Density)
                continue;
            _neighbour[_count] = _rows[other];
            Push(RowHypothesis.Constant((int)Reason.RowSlip, Slipped / 2));
            _mistakeShares += Slipped / 2;
        }
    }

    private double SlippedProbability(TableRow neighbour, int systemIndex)
    {
        RowGroup group = _groups[neighbour.Group];
        double mean = Math.Log(Measure(neighbour, _systems[systemIndex])) + group.LogWeight, u = group.Uncertainty;
        return (_low - mean) / u > RowHypothesis.Reach || (_high - mean) / u < -RowHypothesis.Reach ? 0 : NormalDistribution.Between((_low - mean) / u, (_high - mean) / u);
    }

    /// <summary>The millilitres were printed as grams. Of a liquid as heavy as water that is no mistake.</summary>
    private void AddMillilitres(TableRow row, RowGroup group)
    {
        if (row.Printed.IsOunces || (group.Kind == GroupKind.Density && Math.Abs(group.LogWeight) < SameCup))
            return;
        _isVolume[_count] = true;
        Push(RowHypothesis.Constant((int)Reason.VolumeAsMass, Millilitres));
        _mistakeShares += Millilitres;
    }

    private void AddPieces(TableRow row)
    {
        if (row.Matched is not Ingredient ingredient)
            return;
        foreach (PieceWeight piece in ingredient.Pieces)
        {
            double mean = Math.Log(piece.Grams.Likely), u = Math.Max(0.01, Math.Log(piece.Grams.High / piece.Grams.Low) / 4), share = Pieces / ingredient.Pieces.Count;
            AddConstant(Reason.PieceAsMeasure, share, NormalDistribution.Between((_low - mean) / u, (_high - mean) / u));
        }
    }

    private void AddSwappedDigits(PrintedMass printed, double weight, double deviation)
    {
        Span<double> values = stackalloc double[20];
        int count = printed.SwappedDigits(values);
        double half = printed.Resolution / 2, unit = Math.Log(printed.GramsPerUnit) - weight;
        foreach (double value in values[..count])
        {
            Push(RowHypothesis.Interval((int)Reason.DigitsSwapped, Swapped / count,
                Math.Log(Math.Max(value - half, value * 0.5)) + unit, Math.Log(value + half) + unit, deviation));
            _mistakeShares += Swapped / count;
        }
    }

    private void AddCopied(int index)
    {
        TableRow row = _rows[index];
        // In a column that says the same nearly everywhere, the row above says it too.
        if (_constants.Contains((row.Printed.Value, row.Printed.IsOunces)))
            return;
        double p = (SamePrint(row, index - 1) ? 0.5 : 0) + (SamePrint(row, index + 1) ? 0.5 : 0);
        if (p > 0)
            AddConstant(Reason.CopiedRow, Copied, p);
    }

    private bool SamePrint(TableRow row, int index)
    {
        if (index < 0 || index >= _rows.Count)
            return false;
        TableRow other = _rows[index];
        // The same thing printed twice is a repetition, not a copy of another row's figure.
        return other.Printed.Value == row.Printed.Value && other.Printed.IsOunces == row.Printed.IsOunces && (other.Group != row.Group || IsOtherMeasure(row, other));
    }

    private static bool IsOtherMeasure(TableRow row, TableRow other) => row.Amount.PartCount == 1 && other.Amount.PartCount == 1
        && (row.Amount.Part(0).Unit != other.Amount.Part(0).Unit || row.Amount.Part(0).Low != other.Amount.Part(0).Low);

    /// <summary>
    /// The figure of another measure of the same ingredient: one that the table gives too, or one that it would be for. Twice and
    /// half, and three spoons, have their own names.
    /// </summary>
    private void AddOtherMeasure(int index, RowGroup group, double weight, double deviation)
    {
        TableRow row = _rows[index];
        if (!row.Amount.IsVolume || row.Amount.PartCount > 1)
            return;
        List<int> same = group.Rows;
        int own = same.BinarySearch(index);
        bool known = false;
        for (int i = Math.Max(0, own - RowsOfTheSame); i <= Math.Min(same.Count - 1, own + RowsOfTheSame) && !known; i++)
        {
            TableRow other = _rows[same[i]];
            if (!other.Amount.IsVolume || other.Printed.Value != row.Printed.Value || other.Printed.IsOunces != row.Printed.IsOunces || !IsOtherMeasure(row, other))
                continue;
            double ratio = Measure(other, MeasuringSystem.UsCustomary) / Measure(row, MeasuringSystem.UsCustomary);
            known = !IsNear(ratio, 2) && !IsNear(ratio, 0.5) && !IsNear(ratio, 3) && !IsNear(ratio, 1.0 / 3);
        }
        if (known)
            AddConstant(Reason.OtherMeasure, Measures / 2, 0.5);
        if (row.Amount.Part(0).Unit is not KitchenUnit.Cup)
            return;
        Add(Reason.OtherMeasure, Measures / 8, weight + Math.Log(4), deviation);
        Add(Reason.OtherMeasure, Measures / 8, weight - Math.Log(4), deviation);
        Add(Reason.OtherMeasure, Measures / 8, weight + Math.Log(3), deviation);
        Add(Reason.OtherMeasure, Measures / 8, weight - Math.Log(3), deviation);
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

    private double ExactProbability(double mean) => NormalDistribution.Between((_low - mean) / ExactDeviation, (_high - mean) / ExactDeviation);

    private void Add(Reason reason, double share, double mean, double deviation)
    {
        Push(RowHypothesis.Interval((int)reason, share, _low - mean, _high - mean, deviation));
        _mistakeShares += share;
    }

    private void AddConstant(Reason reason, double share, double probability)
    {
        Push(RowHypothesis.Constant((int)reason, share * probability));
        _mistakeShares += share;
    }

    private void Push(RowHypothesis hypothesis)
    {
        _list[_count] = hypothesis;
        // Only the rows' own adders set these two, just before they push.
        if (hypothesis.Code != (int)Reason.OtherCup)
            _cup[_count] = 0;
        if (hypothesis.Code != (int)Reason.OtherPacking || !hypothesis.IsConstant)
            _packing[_count] = null;
        if (hypothesis.Code != (int)Reason.RowSlip)
            _neighbour[_count] = null;
        if (hypothesis.Code != (int)Reason.VolumeAsMass)
            _isVolume[_count] = false;
        _count++;
    }
}
