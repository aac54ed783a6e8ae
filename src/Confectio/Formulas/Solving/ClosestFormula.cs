using Confectio.Numerics;

namespace Confectio.Formulas.Solving;

/// <summary>
/// The formula that breaks what must be kept least, where not all of it can be kept. Shares and masses of parts give way first,
/// a percentage point of one being worth a point of another, or a hundredth of the total; where the masses alone collide, every demand gives way but that no mass is below 0.
/// </summary>
internal static class ClosestFormula
{
    // Where the masses alone collide every demand gives way: whatever it costs, that comes after all where only shares do.
    private const double MassesGiveWay = 1e6;

    /// <summary>The formula, and how much it breaks: the shares that give way, in fractions, or all that gives way.</summary>
    public static (double[] Grams, double BoiledOffGrams, double Breach) Of(FormulaProblem problem, Assembly assembly)
    {
        LeastSquaresProblem conditions = assembly.Ranked.Conditions;
        double[] x = new double[conditions.Variables];
        if (assembly.Crossing is null)
        {
            double[] weights = [.. assembly.Rows.Select(row => row.GivesWayFirst ? 1.0 : 0.0)];
            if (ElasticFit.Solve(conditions, weights, x) == SolveStatus.Optimal)
                return (assembly.Grams(x), assembly.BoiledOffGrams(x), Breach(conditions, weights, x));
        }
        LeastSquaresProblem loose = Loosened(assembly, out bool isVoid);
        double[] all = new double[loose.Rows];
        Array.Fill(all, 1);
        ElasticFit.Solve(loose, all, x);
        for (int j = 0; j < x.Length; j++)
            x[j] = assembly.IsBoilOff(j) ? Math.Min(x[j], 0) : Math.Max(x[j], 0);
        return (assembly.Grams(x), assembly.BoiledOffGrams(x), isVoid ? double.PositiveInfinity : MassesGiveWay + Breach(loose, all, x));
    }

    private static double Breach(LeastSquaresProblem conditions, double[] weights, double[] x)
    {
        double sum = 0;
        for (int k = 0; k < conditions.Rows; k++)
        {
            double value = LeastSquaresProblem.Evaluate(conditions.Row(k)[..x.Length], x).Value;
            sum += weights[k] * Math.Max(0, Math.Max(conditions.RowLow[k] - value, value - conditions.RowHigh[k]));
        }
        return sum;
    }

    // Bounds become rows, which can give way; only the sign of a mass stays a bound, what may be left out keeps the choice made, and an
    // allergen that was asked to be absent stays absent.
    private static LeastSquaresProblem Loosened(Assembly assembly, out bool isVoid)
    {
        isVoid = false;
        LeastSquaresProblem conditions = assembly.Ranked.Conditions;
        LeastSquaresProblem loose = new(conditions.Variables);
        conditions.Prior.CopyTo(loose.Prior);
        conditions.Centre.CopyTo(loose.Centre);
        for (int k = 0; k < conditions.Rows; k++)
            loose.AddRow(conditions.Row(k), conditions.RowLow[k], conditions.RowHigh[k]);
        double[] unit = new double[conditions.Variables];
        for (int j = 0; j < conditions.Variables; j++)
        {
            // What never gives way stays a bound; every other demand becomes a row. Two limits that cross are two rows: the point then
            // lies between them.
            bool isWater = assembly.IsBoilOff(j);
            double lower = isWater ? double.NegativeInfinity : 0, upper = isWater ? 0 : double.PositiveInfinity;
            unit[j] = 1;
            foreach ((Demand demand, double low, double high) in assembly.Bounds(j))
            {
                if (demand.NeverGivesWay && Math.Max(lower, low) <= Math.Min(upper, high))
                    (lower, upper) = (Math.Max(lower, low), Math.Min(upper, high));
                else
                    loose.AddRow(unit, low, high);
                // Used by one choice and left out by another: no formula keeps both.
                isVoid |= demand.NeverGivesWay && Math.Max(lower, low) > Math.Min(upper, high);
            }
            unit[j] = 0;
            (loose.Lower[j], loose.Upper[j]) = (lower, upper);
        }
        return loose;
    }
}
