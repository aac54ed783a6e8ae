namespace Confectio.Formulas.Solving;

/// <summary>The values and slopes, at one place, of the properties that are neither a sum nor a fraction of sums.</summary>
internal sealed class Linearisation
{
    // A step, to the size of what the value hangs on, over which a difference of fourth order is good to some 1e-10.
    private const double Step = 2e-3;

    private const double Nothing = 1e-11;

    private readonly Dictionary<FormulaProperty, (double Value, double[] Slope)> _values = [];
    private readonly Dictionary<FormulaProperty, (double Value, double[] Slope, int Side)> _sides = [];

    /// <summary>The value and the slope of a property.</summary>
    public (double Value, double[] Slope) Of(FormulaProperty property) => _values[property];

    /// <summary>How far over the kink and with which slope, and on which side of it the piece holds; null where there is none.</summary>
    public (double Value, double[] Slope, int Side)? SideOf(FormulaProperty property) =>
        _sides.TryGetValue(property, out (double, double[], int) side) ? side : null;

    /// <summary>The slopes at a place; null where one of the properties has no value there.</summary>
    /// <param name="properties">The properties, with their sums over the unknowns and the piece that is meant.</param>
    /// <param name="x">The place.</param>
    public static Linearisation? At(IReadOnlyList<(FormulaProperty Property, double[][] Sums, int Piece)> properties, ReadOnlySpan<double> x)
    {
        Linearisation made = new();
        foreach ((FormulaProperty property, double[][] rows, int piece) in properties)
        {
            double[] sums = Sums(rows, x);
            double value = property.ValueOfPiece(piece, sums), step = Step * property.Size(sums);
            double[] slope = Slope(rows, x, sums, step, at => property.ValueOfPiece(piece, at));
            if (!double.IsFinite(value) || !Array.TrueForAll(slope, double.IsFinite))
                return null;
            made._values[property] = (value, slope);
            if (property.Pieces > 1)
                made._sides[property] = (property.Side(sums), Slope(rows, x, sums, step, at => property.Side(at)), piece == 0 ? -1 : 1);
        }
        return made;
    }

    /// <summary>The sums at a place.</summary>
    public static double[] Sums(double[][] rows, ReadOnlySpan<double> x)
    {
        double[] sums = new double[rows.Length];
        for (int k = 0; k < rows.Length; k++)
        {
            for (int j = 0; j < x.Length; j++)
                sums[k] += rows[k][j] * x[j];
            // Rounding may leave a little below nothing of what is not there.
            sums[k] = Math.Max(0, sums[k]);
        }
        return sums;
    }

    // By every unknown: the sums may have no slope of their own where there is nothing of them, such as the mean size of saccharides.
    private static double[] Slope(double[][] rows, ReadOnlySpan<double> x, double[] sums, double step, Func<double[], double> value)
    {
        double[] slope = new double[x.Length], moved = new double[sums.Length];
        double here = value(sums);
        for (int j = 0; j < slope.Length; j++)
        {
            bool moves = false;
            foreach (double[] row in rows)
                moves |= row[j] != 0;
            if (!moves)
                continue;
            // Not below nothing: there the difference is taken to one side. Water that boils off is below nothing.
            slope[j] = Math.Abs(x[j]) >= 2 * step
                ? (8 * (Value(j, 1) - Value(j, -1)) - (Value(j, 2) - Value(j, -2))) / (12 * step)
                : (-25 * here + 48 * Value(j, 1) - 36 * Value(j, 2) + 16 * Value(j, 3) - 3 * Value(j, 4)) / (12 * step);
        }
        // What is left of an ingredient that moves nothing is rounding.
        double largest = 0;
        foreach (double rise in slope)
            largest = Math.Max(largest, Math.Abs(rise));
        for (int j = 0; j < slope.Length; j++)
            slope[j] = Math.Abs(slope[j]) <= Nothing * largest ? 0 : slope[j];
        return slope;

        double Value(int j, int steps)
        {
            for (int k = 0; k < sums.Length; k++)
                moved[k] = Math.Max(0, sums[k] + steps * step * rows[k][j]);
            return value(moved);
        }
    }
}
