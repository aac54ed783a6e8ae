using Confectio.Phrases;

namespace Confectio.Vetting;

/// <summary>The masses of a row beside the one that is judged.</summary>
internal sealed record OtherMasses(PrintedMass Second, PrintedMass? Third);

/// <summary>
/// Holds the masses of a row that gives more than one against each other, and each against its measure, and names the figure that is
/// most likely wrong: the one that agrees with the fewest others.
/// </summary>
internal static class FigurePairs
{
    /// <summary>Ounces of 28 and of 28.35 g are 1.3 % apart; twice a rounding on the way may add as much.</summary>
    private const double Slack = 0.015;

    /// <summary>Two figures of a row that contradict each other cannot both be right; what is left is our own misreading.</summary>
    private const double BothRight = 0.01;

    /// <summary>
    /// A table may take the ounce for 30 g, or 8 oz for 250 g, all through: then that is its habit, and no figure contradicts it.
    /// </summary>
    private const double LightestOunce = 28, HeaviestOunce = 31.25;

    /// <summary>Whether the rows with ounces and grams fit together only if the ounce may be another than 28.35 g.</summary>
    public static bool TakesOtherOunces(IReadOnlyList<TableRow> rows)
    {
        int pairs = 0, exact = 0, loose = 0;
        foreach (TableRow row in rows)
        {
            if (row.Second is not PrintedMass second || second.IsOunces == row.Printed.IsOunces)
                continue;
            pairs++;
            exact += FigureVote.Meet(Interval(row.Printed, false), Interval(second, false)) ? 1 : 0;
            loose += FigureVote.Meet(Interval(row.Printed, true), Interval(second, true)) ? 1 : 0;
        }
        return pairs >= 2 && exact * 3 < pairs * 2 && loose * 3 >= pairs * 2;
    }

    public static void Judge(TableRow row, bool otherOunces)
    {
        if (row.Second is null && row.Third is null)
            return;
        Span<(double Low, double High)> masses = [Interval(row.Printed, otherOunces), Interval(row.Second, otherOunces),
            Interval(row.Third, otherOunces)];
        (double Low, double High) judged = row.ExpectedGrams is Spread expected ? (expected.Low, expected.High) : (double.NaN, double.NaN);
        bool contradiction = FigureVote.Contradict(masses, judged, out int suspect, out bool isAlone);
        if (!contradiction)
        {
            // Masses that agree with each other and not with the measure: a measure misread is likelier than a mass written twice wrong.
            if (row.Verdict is not (Verdict.Agrees or Verdict.Unknown)
                && row.Reason is Reason.HalvedOrDoubled or Reason.SpoonSwap or Reason.OtherMeasure or Reason.OtherCup)
                row.Suspect = RowFigure.Measure;
            return;
        }
        row.Suspect = isAlone ? (RowFigure)(suspect + 1) : null;
        row.Contradicts = true;
        bool flagged = row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful;
        if (row.Verdict != Verdict.Impossible)
            row.Verdict = Verdict.Wrong;
        row.Reason = flagged && row.Suspect == RowFigure.Mass ? row.Reason : Reason.Unexplained;
        row.ProbabilityRight = Math.Min(row.ProbabilityRight, BothRight);
    }

    /// <summary>A figure that is not there agrees with everything.</summary>
    private static (double Low, double High) Interval(PrintedMass? mass, bool otherOunces)
    {
        if (mass is not PrintedMass printed)
            return (0, double.PositiveInfinity);
        double half = printed.Resolution / 2 * printed.GramsPerUnit;
        double low = (printed.Grams - half) * (1 - Slack), high = (printed.Grams + half) * (1 + Slack);
        return printed.IsOunces && otherOunces ? (low / PrintedMass.GramsPerOunce * LightestOunce,
            high / PrintedMass.GramsPerOunce * HeaviestOunce) : (low, high);
    }
}
