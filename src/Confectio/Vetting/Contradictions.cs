namespace Confectio.Vetting;

/// <summary>
/// Where a row prints its weight twice, in ounces and in grams, the two say the same thing or one of them is wrong, whatever the food is. Which
/// one is told by how likely each is by itself.
/// </summary>
internal static class Contradictions
{
    /// <summary>Tables take an ounce for 28 to 31.25 g (8 oz for 250 g); within that two figures do not contradict each other.</summary>
    private const double LightestOunce = 28, HeaviestOunce = 31.25;

    public static void Find(List<TableRow> rows)
    {
        for (int i = 0; i < rows.Count; i++)
        {
            for (int j = rows[i].First; j < i; j++)
            {
                if (Agree(rows[i].Printed, rows[j].Printed))
                    continue;
                (TableRow one, TableRow other) = (rows[j], rows[i]);
                // Both cannot be right. Of an unknown food nothing tells which.
                double p = one.Verdict == Verdict.Unknown ? 0.5 : one.ProbabilityRight, q = other.Verdict == Verdict.Unknown ? 0.5 : other.ProbabilityRight;
                double first = p * (1 - q), second = q * (1 - p), neither = (1 - p) * (1 - q), all = first + second + neither;
                Weigh(one, other, first / all);
                Weigh(other, one, second / all);
            }
        }
    }

    private static void Weigh(TableRow row, TableRow other, double right)
    {
        row.ProbabilityRight = right;
        row.Contradicted = other;
        if (right >= 0.5)
            return;
        if (row.Verdict is Verdict.Agrees or Verdict.Unknown or Verdict.Doubtful)
            row.Verdict = right <= VerdictRule.MostRight ? Verdict.Wrong : Verdict.Doubtful;
        row.Reason ??= Reason.Unexplained;
    }

    private static bool Agree(PrintedMass one, PrintedMass other)
    {
        (double low, double high) = Ends(one);
        (double otherLow, double otherHigh) = Ends(other);
        return low <= otherHigh && otherLow <= high;
    }

    private static (double Low, double High) Ends(PrintedMass mass)
    {
        // Half a unit more: 125 g is printed for 4 1/2 oz (127.6) and for 4 1/4 (120.5).
        double low = Math.Max(0, mass.Value - mass.Resolution), high = mass.Value + mass.Resolution;
        return mass.IsOunces ? (low * LightestOunce, high * HeaviestOunce) : (low, high);
    }
}
