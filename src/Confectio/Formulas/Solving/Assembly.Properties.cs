using Confectio.Ingredients;

namespace Confectio.Formulas.Solving;

internal sealed partial class Assembly
{
    private readonly Linearisation? _linearised;
    private HashSet<int>? _sideRows;

    /// <summary>Whether a row keeps the formula on one side of a kink, which nobody asked for.</summary>
    public bool IsSideRow(int row) => _sideRows is not null && _sideRows.Contains(row);

    /// <summary>The sums of a property over the unknowns: a row for each, with what a unit of an unknown adds to it.</summary>
    public double[][] SumsOf(FormulaProperty property)
    {
        int n = Ranked.Conditions.Variables;
        double[][] rows = [.. Enumerable.Range(0, property.Sums).Select(_ => new double[n])];
        double[] sums = new double[property.Sums];
        for (int j = 0; j < n; j++)
        {
            Array.Clear(sums);
            if (IsBoilOff(j))
                property.BoilOff(-1, sums);
            else
                property.Add(_problem.Candidates[j].Ingredient, 1, sums);
            for (int k = 0; k < sums.Length; k++)
                rows[k][j] = sums[k];
        }
        return rows;
    }

    /// <summary>
    /// A property: a fraction of two sums as it is; another by its slope where one is given, and else not at all.
    /// </summary>
    public void AddProperty(Demand.PropertyValue demand)
    {
        if (demand.Asked.IsFraction)
        {
            double[][] sums = SumsOf(demand.Asked);
            // No such fraction is below 0: an open end is that.
            AddFraction(demand.IsTarget && demand.LowEnd < 0 ? demand.Between(0, demand.HighEnd) : demand, sums[0], sums[1], demand.Tolerance,
                demand.Priority);
            return;
        }
        if (_linearised is null)
            return;
        // Its value does not change where all masses do, so that slope·x is 0 at the place.
        (double value, double[] slope) = _linearised.Of(demand.Asked);
        double low = demand.LowEnd - value, high = demand.HighEnd - value;
        if (demand is { Tolerance: double tolerance, Priority: int priority })
            Ranked.AddTarget(slope, low, high, 1 / tolerance, priority);
        else
            AddRow(demand, slope, low, high);
    }

    // On the side of a kink that the pieces are for.
    private void KeepToSides()
    {
        foreach (Demand.PropertyValue demand in _problem.Curved.DistinctBy(demand => demand.Asked))
        {
            if (_linearised?.SideOf(demand.Asked) is not (double value, double[] slope, int side))
                continue;
            (_sideRows ??= []).Add(_rows.Count);
            AddRow(demand, slope, side > 0 ? -value : double.NegativeInfinity, side > 0 ? double.PositiveInfinity : -value);
        }
    }
}
