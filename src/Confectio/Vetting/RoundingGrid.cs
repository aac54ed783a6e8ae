namespace Confectio.Vetting;

/// <summary>
/// The grid that a table's masses keep to beyond their printed digits: whole fives and tens, or ounces turned into grams.
/// A value on the grid is then known only to half a grid step.
/// </summary>
internal sealed class RoundingGrid
{
    /// <summary>A grid is believed only from this many values on, and where nearly all of them keep to it.</summary>
    private const int FewestValues = 8;
    private const double Share = 0.85;

    /// <summary>However many noughts are printed, nothing was weighed better than to a millionth.</summary>
    private const double LeastHalf = 5e-7;

    private readonly double _step;
    private readonly double _slack;

    private RoundingGrid(double step, double slack, string name)
    {
        _step = step;
        _slack = slack;
        Name = name;
    }

    /// <summary>The grid for a reader; empty where there is none.</summary>
    public string Name { get; }

    public static RoundingGrid Of(IReadOnlyList<TableRow> rows)
    {
        // Small values say nothing: everything below 20 g is near some multiple.
        double[] values = [.. rows.Where(row => !row.Printed.IsOunces && row.Printed.Decimals == 0 && row.Printed.Value >= 20).Select(row => row.Printed.Value)];
        if (values.Length >= FewestValues)
        {
            foreach ((double step, string name) in ((double, string)[])[(10, "10 g"), (5, "5 g")])
            {
                if (Keeping(values, step, 0) >= Share)
                    return new RoundingGrid(step, 0, name);
            }
            // A printed whole gram is within half a gram of the ounces it came from. One value in seven keeps to quarter ounces by chance.
            foreach ((double step, string name) in ((double, string)[])[(PrintedMass.GramsPerOunce / 2, "1/2 oz"), (PrintedMass.GramsPerOunce / 4, "1/4 oz")])
            {
                if (Keeping(values, step, 0.51) >= Share)
                    return new RoundingGrid(step, 0.51, name);
            }
        }
        return new RoundingGrid(0, 0, "");
    }

    /// <summary>The interval of ln grams that would be printed as this mass.</summary>
    public (double Low, double High) LogInterval(PrintedMass printed)
    {
        double half = Math.Max(printed.Resolution / 2, printed.Value * LeastHalf);
        if (_step > 0 && !printed.IsOunces && printed.Decimals == 0 && IsOn(printed.Value, _step, _slack))
            half = Math.Max(half, _step / 2);
        // A value below its own half unit (0.5 read as 1) still lies above zero.
        double low = Math.Max(printed.Value - half, printed.Value / 2), high = printed.Value + half;
        return (Math.Log(low * printed.GramsPerUnit), Math.Log(high * printed.GramsPerUnit));
    }

    private static double Keeping(double[] values, double step, double slack) => (double)values.Count(value => IsOn(value, step, slack)) / values.Length;

    private static bool IsOn(double value, double step, double slack) => Math.Abs(value - Math.Round(value / step) * step) <= slack;
}
