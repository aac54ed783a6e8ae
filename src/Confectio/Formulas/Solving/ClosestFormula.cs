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
        LeastSquaresProblem loose = Loosened(assembly);
        double[] all = new double[loose.Rows];
        Array.Fill(all, 1);
        ElasticFit.Solve(loose, all, x);
        for (int j = 0; j < x.Length; j++)
            x[j] = assembly.IsBoilOff(j) ? Math.Min(x[j], 0) : Math.Max(x[j], 0);
        return (assembly.Grams(x), assembly.BoiledOffGrams(x), MassesGiveWay + Breach(loose, all, x));
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

    // Bounds become rows, which can give way; only the sign of a mass stays a bound, and what may be left out keeps the choice made.
    private static LeastSquaresProblem Loosened(Assembly assembly)
    {
        LeastSquaresProblem conditions = assembly.Ranked.Conditions;
        LeastSquaresProblem loose = new(conditions.Variables);
        conditions.Prior.CopyTo(loose.Prior);
        conditions.Centre.CopyTo(loose.Centre);
        for (int k = 0; k < conditions.Rows; k++)
            loose.AddRow(conditions.Row(k), conditions.RowLow[k], conditions.RowHigh[k]);
        double[] unit = new double[conditions.Variables];
        for (int j = 0; j < conditions.Variables; j++)
        {
            double lower = conditions.Lower[j], upper = conditions.Upper[j];
            if (lower <= upper && assembly.Bounds(j).Any(bound => bound.Demand.IsChoice))
            {
                (loose.Lower[j], loose.Upper[j]) = (lower, upper);
                continue;
            }
            if (lower < 0)
                loose.Upper[j] = 0;
            else
                loose.Lower[j] = 0;
            unit[j] = 1;
            // Two limits that cross are two rows: the point then lies between them.
            if (lower > upper)
            {
                loose.AddRow(unit, lower, double.PositiveInfinity);
                loose.AddRow(unit, double.NegativeInfinity, upper);
            }
            else
            {
                loose.AddRow(unit, lower, upper);
            }
            unit[j] = 0;
        }
        return loose;
    }
}
