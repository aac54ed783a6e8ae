using Confectio.Measures;

namespace Confectio.Vetting;

/// <summary>
/// How the maker of a table rounded, beyond the printed digits, learnt for each size of measure by itself: cups to 5 or 10 g, spoons to
/// 0.5 or 1 g, ounces turned into grams; and, where one mass stands against many measures (a pound is so many cups), the measures.
/// A value on a grid is known only to half a step of it.
/// </summary>
internal sealed class RoundingGrid
{
    /// <summary>A grid is believed only from this many values on, and where nearly all of them keep to it.</summary>
    private const int FewestValues = 6;
    private const double Share = 0.85;

    /// <summary>However many noughts are printed, nothing was weighed better than to a millionth.</summary>
    private const double LeastHalf = 5e-7;

    /// <summary>One mass against so many measures is a list of how much makes a pound.</summary>
    private const int FewestMeasures = 3;

    /// <summary>Ounces that are none: the label's, the round one, and a quarter of a kilogram for eight.</summary>
    public static readonly double[] OtherOunces = [28, 30, 31.25];

    /// <summary>A whole figure keeps to every grid of parts, so the coarsest grid that holds is taken.</summary>
    private static readonly double[] s_ounceSteps = [1, 0.5, 0.25, 0.125];

    private readonly double[] _steps = new double[3];
    private readonly double _ounceStep;
    private readonly bool _quarters;
    private readonly double[] _slacks = new double[3];
    private readonly double _ounce;
    private readonly double _part;
    private readonly Dictionary<(double Printed, bool Ounces, KitchenUnit Unit), double> _measureSteps = [];

    private RoundingGrid(IReadOnlyList<TableRow> rows, double ounce, double part)
    {
        (_ounce, _part) = (ounce, part);
        string[] names = ["", "", ""];
        double[][] values = Values(rows);
        Learn(Size.Spoon, values, [(5, "5 g"), (1, "1 g"), (0.5, "0.5 g")], names);
        Learn(Size.Cup, values, [(10, "10 g"), (5, "5 g"), (1, "1 g")], names);
        double[] masses = values[(int)Size.Mass];
        _quarters = rows.Count(row => row.Amount.IsMass) >= 4 && Keeping(masses, 25, 0) >= 0.6;
        LearnMeasures(rows);
        double[] ounces = [.. rows.Where(row => row.Printed.IsOunces).Select(row => row.Printed.Value)];
        if (ounces.Length >= FewestValues)
            _ounceStep = s_ounceSteps.FirstOrDefault(step => Keeping(ounces, step, 0) >= Share);
        Name = string.Join("; ", ((string[])[names[(int)Size.Cup], names[(int)Size.Spoon].Length > 0 ? "spoons " + names[(int)Size.Spoon]
            : "", ounce > 0 ? FormattableString.Invariant($"ounces of {ounce:0.##} g") : ""])
            .Where(name => name.Length > 0));
    }

    private enum Size
    {
        Spoon,
        Cup,
        Mass,
    }

    /// <summary>The grids for a reader, such as <c>5 g; spoons 0.5 g</c>; empty where there are none.</summary>
    public string Name { get; }

    /// <summary>The weight of the ounces that this table's grams were made from, where it is no ounce; otherwise 0.</summary>
    public double Ounce => _ounce;

    public static RoundingGrid Of(IReadOnlyList<TableRow> rows) => new(rows, 0, 0);

    /// <summary>
    /// The same table read as made with ounces of another weight; <see langword="null"/> where the digits do not suggest it.
    /// </summary>
    public static RoundingGrid? WithOunce(IReadOnlyList<TableRow> rows, RoundingGrid plain, double ounce)
    {
        // Distinct figures only: a figure that stands twice is no second witness.
        HashSet<double> seen = [];
        // On a grid of 10 g most figures lie near some multiple of anything.
        if (4 * Math.Max(0.51, plain._steps[(int)Size.Cup] / 2) > ounce / 2)
            return null;
        int whole = 0, half = 0, all = 0;
        foreach (TableRow row in rows)
        {
            PrintedMass printed = row.Printed;
            if (printed.IsOunces || printed.Decimals > 0 || printed.Value < 20 || !seen.Add(printed.Value))
                continue;
            double slack = Math.Max(0.51, plain._steps[(int)Size.Cup] / 2);
            all++;
            whole += IsOn(printed.Value, ounce, slack) ? 1 : 0;
            half += IsOn(printed.Value, ounce / 2, slack) ? 1 : 0;
        }
        if (half < FewestValues - 1 || half < 0.8 * all)
            return null;
        return new RoundingGrid(rows, ounce, whole >= Share * all ? 1 : 0.5);
    }

    /// <summary>The interval of ln grams that would be printed as the mass of this row.</summary>
    public (double Low, double High) LogInterval(TableRow row)
    {
        PrintedMass printed = row.Printed;
        if (_measureSteps.Count > 0 && !row.Amount.IsMass && row.Amount.PartCount == 1
            && TryMeasureInterval(row, printed.Value, out (double Low, double High) measured))
            return (Math.Log(measured.Low), Math.Log(measured.High));
        Size size = SizeOf(row.Amount);
        double half = Math.Max(printed.Resolution / 2, printed.Value * LeastHalf);
        if (!printed.IsOunces && printed.Decimals >= 0)
        {
            double step = size == Size.Mass ? StepOfMass(printed.Value) : _steps[(int)size];
            // A figure of one step was not rounded to it.
            if (step > 0 && (step < 5 || size == Size.Mass || printed.Value >= 2 * step)
                && IsOn(printed.Value, step, size == Size.Mass ? 0 : _slacks[(int)size]))
                half = Math.Max(half, step / 2);
        }
        (double low, double high) = Interval(printed, printed.Value, half);
        return (Math.Log(low), Math.Log(high));
    }

    /// <summary>
    /// The interval of grams of the figure that stood there before a slip: it was rounded as this table rounds, and lies from
    /// <paramref name="first"/> to <paramref name="last"/> in the unit of print. Where the table would have printed nothing in between,
    /// that itself, and false.
    /// </summary>
    public bool TryBefore(TableRow row, double first, double last, out (double Low, double High) interval)
    {
        PrintedMass printed = row.Printed;
        double middle = (first + last) / 2, half = (last - first) / 2;
        if (_measureSteps.Count > 0 && !row.Amount.IsMass && row.Amount.PartCount == 1
            && TryMeasureInterval(row, Math.Round(middle, 9), out interval))
            return true;
        Size size = SizeOf(row.Amount);
        double step = size == Size.Mass ? Math.Max(1, StepOfMass(Math.Round(middle))) : printed.IsOunces ? _ounceStep : printed.Decimals < 0
            ? 0 : _steps[(int)size], slack = printed.IsOunces ? 1e-9 : _slacks[(int)size] + 1e-9;
        bool isOn = true;
        if (step > 0 && (step < 5 || last >= 2 * step))
        {
            double low = Math.Ceiling((first - slack) / step), high = Math.Floor((last + slack) / step);
            isOn = low <= high;
            if (isOn)
                (middle, half) = ((low + high) / 2 * step, (high - low + 1) / 2 * step);
        }
        interval = Interval(printed, middle, Math.Max(half, middle * LeastHalf));
        return isOn;
    }

    private (double Low, double High) Interval(PrintedMass printed, double value, double half)
    {
        // A value below its own half unit (0.5 read as 1) still lies above zero.
        double low = Math.Max(value - half, value / 2) * printed.GramsPerUnit, high = (value + half) * printed.GramsPerUnit;
        if (_ounce > 0 && !printed.IsOunces && IsOn(value, _ounce * _part, Math.Max(0.51, _steps[(int)Size.Cup] / 2)))
        {
            double ounces = Math.Round(value / (_ounce * _part)) * _part;
            low = Math.Min(low, Math.Max(ounces - _part / 2, ounces / 2) * PrintedMass.GramsPerOunce);
            high = Math.Max(high, (ounces + _part / 2) * PrintedMass.GramsPerOunce);
        }
        return (low, high);
    }

    /// <summary>
    /// The mass is exact and the measure was rounded: half a step more of it is so much less mass in the one that is printed.
    /// </summary>
    private bool TryMeasureInterval(TableRow row, double value, out (double Low, double High) interval)
    {
        interval = default;
        if (!_measureSteps.TryGetValue((value, row.Printed.IsOunces, row.Amount.First.Unit), out double step))
            return false;
        double amount = row.Amount.First.Low.ToDouble(), part = Math.Min(step / 2 / amount, 0.25), exact = value * row.Printed.GramsPerUnit;
        interval = (exact / (1 + part), exact / (1 - part));
        return true;
    }

    // A pound is printed as 450 as often as 454, and 4 oz as 115: fives from twenty on, tens from a hundred, fifties from four hundred; and
    // quarters of a hundred where the whole sheet keeps to them (1 oz as 25 g, 6 oz as 175).
    private double StepOfMass(double value) => value >= 400 && value % 50 == 0 ? 25 : _quarters && value >= 25 && value % 25 == 0 ? 25
        : value >= 100 && value % 10 == 0 ? 10 : value >= 20 && value % 5 == 0 ? 5 : 0;

    private static Size SizeOf(in Amount amount)
    {
        if (!amount.IsVolume)
            return Size.Mass;
        ref readonly AmountPart part = ref amount.First;
        return part.Unit is KitchenUnit.Teaspoon or KitchenUnit.Dessertspoon or KitchenUnit.Tablespoon
            || (part.Unit == KitchenUnit.Millilitre && part.Low.ToDouble() <= 30) ? Size.Spoon : Size.Cup;
    }

    private static double[][] Values(IReadOnlyList<TableRow> rows)
    {
        List<double>[] values = [[], [], []];
        foreach (TableRow row in rows)
        {
            if (row.Printed.IsOunces || row.Printed.Decimals < 0)
                continue;
            values[(int)SizeOf(row.Amount)].Add(row.Printed.Value);
        }
        return [.. values.Select(list => list.ToArray())];
    }

    private void Learn(Size size, double[][] values, (double Step, string Name)[] steps, string[] names)
    {
        // Small values say nothing: everything below four steps is near some multiple.
        foreach ((double step, string name) in steps)
        {
            double[] told = [.. values[(int)size].Where(value => value >= (step >= 5 ? 20 : 2 * step))];
            if (told.Length >= FewestValues && Keeping(told, step, 0) >= Share)
            {
                (_steps[(int)size], names[(int)size]) = (step, step is 1 ? "" : name);
                break;
            }
        }
        if (size != Size.Cup || _steps[(int)size] >= 5)
            return;
        // A printed whole gram is within half a gram of the ounces it came from. One value in seven keeps to quarter ounces by chance.
        double[] whole = [.. values[(int)size].Where(value => value >= 20 && value % 1 == 0)];
        if (whole.Length < FewestValues + 2)
            return;
        foreach ((double step, string name) in ((double, string)[])[(PrintedMass.GramsPerOunce / 2, "1/2 oz"),
            (PrintedMass.GramsPerOunce / 4, "1/4 oz")])
        {
            if (Keeping(whole, step, 0.51) >= Share)
            {
                (_steps[(int)size], _slacks[(int)size], names[(int)size]) = (step, 0.51, name);
                return;
            }
        }
    }

    private void LearnMeasures(IReadOnlyList<TableRow> rows)
    {
        Dictionary<(double Printed, bool Ounces, KitchenUnit Unit), int> counts = [];
        foreach (TableRow row in rows)
        {
            if (!row.Amount.IsMass && row.Amount.PartCount == 1)
                System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(counts, Key(row), out _)++;
        }
        foreach (((double, bool, KitchenUnit) key, int count) in counts)
        {
            if (count < FewestMeasures || 5 * count < rows.Count)
                continue;
            double[] amounts = [.. rows.Where(row => !row.Amount.IsMass && row.Amount.PartCount == 1
                && Key(row) == key).Select(row => row.Amount.First.Low.ToDouble())];
            if (amounts.Distinct().Count() >= FewestMeasures)
                _measureSteps.Add(key, Keeping(amounts, 0.5, 1e-9) >= 0.9 ? 0.5 : 0.25);
        }
    }

    private static (double Printed, bool Ounces, KitchenUnit Unit) Key(TableRow row) =>
        (row.Printed.Value, row.Printed.IsOunces, row.Amount.First.Unit);

    private static double Keeping(double[] values, double step, double slack) =>
        (double)values.Count(value => IsOn(value, step, slack)) / values.Length;

    private static bool IsOn(double value, double step, double slack) => Math.Abs(value - Math.Round(value / step) * step) <= slack + 1e-9;
}
