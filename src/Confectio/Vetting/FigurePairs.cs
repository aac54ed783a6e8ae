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

    public static void Judge(TableRow row)
    {
        if (row.Second is null && row.Third is null)
            return;
        Span<(double Low, double High)> masses = [Interval(row.Printed), Interval(row.Second), Interval(row.Third)];
        Span<int> against = [0, 0, 0];
        bool contradiction = false;
        for (int i = 0; i < masses.Length; i++)
        {
            for (int j = i + 1; j < masses.Length; j++)
            {
                if (Meet(masses[i], masses[j]))
                    continue;
                contradiction = true;
                against[i]++;
                against[j]++;
            }
        }
        if (!contradiction)
        {
            // Masses that agree with each other and not with the measure: a measure misread is likelier than a mass written twice wrong.
            if (row.Verdict is not (Verdict.Agrees or Verdict.Unknown) && row.Reason is Reason.HalvedOrDoubled or Reason.SpoonSwap or Reason.OtherMeasure or Reason.OtherCup)
                row.Suspect = RowFigure.Measure;
            return;
        }
        if (row.ExpectedGrams is Spread expected)
        {
            for (int i = 0; i < masses.Length; i++)
                against[i] += Meet(masses[i], (expected.Low, expected.High)) ? 0 : 1;
        }
        int most = Math.Max(against[0], Math.Max(against[1], against[2])), suspect = -1;
        for (int i = 0; i < against.Length; i++)
        {
            if (against[i] == most)
                suspect = suspect == -1 ? i : -2;
        }
        row.Suspect = suspect < 0 ? null : (RowFigure)(suspect + 1);
        row.Contradicts = true;
        bool flagged = row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful;
        if (row.Verdict != Verdict.Impossible)
            row.Verdict = Verdict.Wrong;
        row.Reason = flagged && row.Suspect == RowFigure.Mass ? row.Reason : Reason.Unexplained;
        row.ProbabilityRight = Math.Min(row.ProbabilityRight, BothRight);
    }

    /// <summary>A figure that is not there agrees with everything.</summary>
    private static (double Low, double High) Interval(PrintedMass? mass)
    {
        if (mass is not PrintedMass printed)
            return (0, double.PositiveInfinity);
        double half = printed.Resolution / 2 * printed.GramsPerUnit;
        return ((printed.Grams - half) * (1 - Slack), (printed.Grams + half) * (1 + Slack));
    }

    private static bool Meet((double Low, double High) left, (double Low, double High) right) => left.Low <= right.High && right.Low <= left.High;
}
