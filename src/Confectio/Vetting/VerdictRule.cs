using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Vetting;

/// <summary>Turns probabilities into verdicts, with control of the expected share of right rows among those called wrong.</summary>
internal static class VerdictRule
{
    /// <summary>Rows of an unknown ingredient can outvote one of their number only from this many on.</summary>
    public const int FewestToOutvote = 3;

    /// <summary>So many rows the share of mistakes that is expected before is worth.</summary>
    private const double RowsBefore = 11;

    /// <summary>No row is called wrong that is likelier right than this, however sure the others are: the mean lets ten sure ones buy a doubtful one.</summary>
    public const double MostRight = 0.08;

    public static void Apply(IReadOnlyList<TableRow> rows, IReadOnlyList<RowGroup> groups, MixtureModel model, MeasuringSystem system,
        IReadOnlyList<MeasuringSystem> systems, double falseDiscoveryRate, double expectedWrong)
    {
        List<TableRow> judged = [];
        bool otherOunces = FigurePairs.TakesOtherOunces(rows);
        foreach (TableRow row in rows)
        {
            RowGroup group = groups[row.Group];
            if (group.Kind == GroupKind.Unknown && group.Rows.Count < FewestToOutvote)
            {
                row.Verdict = Verdict.Unknown;
                row.Reason = null;
                FigurePairs.Judge(row, otherOunces);
                continue;
            }
            Expect(row, group, model, system);
            judged.Add(row);
        }

        LearnShareOfMistakes(judged, expectedWrong);
        // Only what may be called wrong is put in order; the rest has its verdict by itself.
        TableRow[] byDoubt = [.. judged.Where(row => row.ProbabilityRight <= MostRight).OrderBy(row => row.ProbabilityRight)];
        double sum = 0;
        int flagged = 0;
        while (flagged < byDoubt.Length && sum + byDoubt[flagged].ProbabilityRight <= falseDiscoveryRate * (flagged + 1))
            sum += byDoubt[flagged++].ProbabilityRight;
        // Rows of the same probability stand or fall together with the last that was flagged.
        double limit = flagged == 0 ? -1 : byDoubt[flagged - 1].ProbabilityRight;
        foreach (TableRow row in judged)
        {
            bool flagging = row.ProbabilityRight <= limit;
            if (flagging)
            {
                row.Verdict = IsImpossible(row, groups[row.Group], systems) ? Verdict.Impossible : Verdict.Wrong;
            }
            else if (row.ProbabilityRight < 0.5)
            {
                row.Verdict = Verdict.Doubtful;
            }
            else
            {
                row.Verdict = Verdict.Agrees;
                row.Reason = null;
                // What agrees lies within what was expected of it: the other rows of its ingredient, or its own rounding, brought it there.
                if (row.ExpectedGrams is Spread expected && !expected.Contains(row.Printed.Grams))
                    row.ExpectedGrams = new Spread(Math.Min(expected.Low, row.Printed.Grams), expected.Likely, Math.Max(expected.High, row.Printed.Grams), SpreadBasis.Judged);
            }
            FigurePairs.Judge(row, otherOunces);
        }
    }

    /// <summary>
    /// Some tables are careful and some are not: the share of mistakes is learnt from the rows, and every row judged by it. The share
    /// before is worth eleven rows, and no table is taken for more than a third wrong.
    /// </summary>
    private static void LearnShareOfMistakes(List<TableRow> rows, double before)
    {
        double share = before;
        for (int round = 0; round < 4; round++)
        {
            double right = (1 - share) / (1 - before), wrong = share / before, sum = 0;
            foreach (TableRow row in rows)
                sum += 1 - Reweighed(row.ProbabilityRight, right, wrong);
            share = Math.Clamp((RowsBefore * before + sum) / (RowsBefore + rows.Count), 0.2 * before, Math.Max(before, 1 / 3.0));
        }
        foreach (TableRow row in rows)
            row.ProbabilityRight = Reweighed(row.ProbabilityRight, (1 - share) / (1 - before), share / before);
    }

    private static double Reweighed(double probability, double right, double wrong) => probability * right / (probability * right + (1 - probability) * wrong);

    private static void Expect(TableRow row, RowGroup group, MixtureModel model, MeasuringSystem system)
    {
        double measure = RowHypotheses.Measure(row, system);
        if (group.Kind == GroupKind.Mass)
        {
            row.ExpectedGrams = new Spread(row.Amount.LowGrams(system), measure, row.Amount.HighGrams(system));
        }
        else if (group.Kind == GroupKind.Piece)
        {
            Spread piece = row.Matched!.Piece(row.Amount.Part(0).Piece!).Grams;
            row.ExpectedGrams = Widened(piece * measure, row, group, model);
        }
        else if (group.Kind == GroupKind.Density)
        {
            BulkDensity density = NearestPacking(row, measure);
            row.ExpectedPacking = density.Packing;
            row.TakenFrom = density.TakenFrom;
            Spread bulk = density.GramsPerMillilitre;
            row.ExpectedGrams = Widened(bulk * measure, row, group, model);
        }
    }

    /// <summary>The range by which the row was judged: as wide as this table showed densities to be, and as its measure is.</summary>
    private static Spread Widened(Spread grams, TableRow row, RowGroup group, MixtureModel model)
    {
        double shared = model.Width(group.Grid) * group.Shared, own = group.DeviationOf(row.Amount), u = Math.Sqrt(shared * shared + own * own);
        return new Spread(Math.Min(grams.Low, grams.Likely * Math.Exp(-2 * u)), grams.Likely, Math.Max(grams.High, grams.Likely * Math.Exp(2 * u)), grams.Likely * u, SpreadBasis.Judged);
    }

    /// <summary>The stated packing; where none is stated and another than the usual one fits, that one is what the table meant.</summary>
    private static BulkDensity NearestPacking(TableRow row, double measure)
    {
        Ingredient ingredient = row.Matched!;
        BulkDensity usual = ingredient.NearestDensity(row.Packing ?? ingredient.DefaultPacking);
        double density = row.Printed.Grams / measure;
        if (row.Packing is not null || usual.GramsPerMillilitre.Contains(density))
            return usual;
        return ingredient.Densities.Where(other => other.GramsPerMillilitre.Contains(density))
            .MinBy(other => Math.Abs(Math.Log(density / other.GramsPerMillilitre.Likely))) ?? usual;
    }

    /// <summary>
    /// Heavier than the ingredient without any air (5 % allowed for the measure), or lighter than half of its loosest known
    /// packing, in every cup that could be meant. The lower bound is a judgement: foams aside, nothing fluffs up to double.
    /// </summary>
    private static bool IsImpossible(TableRow row, RowGroup group, IReadOnlyList<MeasuringSystem> systems)
    {
        if (group.Kind != GroupKind.Density)
            return false;
        double smallest = double.MaxValue, largest = 0;
        foreach (MeasuringSystem system in systems)
        {
            double volume = RowHypotheses.Measure(row, system);
            smallest = Math.Min(smallest, volume);
            largest = Math.Max(largest, volume);
        }
        double heaviest = Math.Max(row.Matched!.Composition.AirFreeGramsPerMillilitre, row.Matched.Densities.Max(density => density.GramsPerMillilitre.High));
        double lightest = row.Matched.Densities.Min(density => density.GramsPerMillilitre.Low) / 2;
        double tool = 1 + MeasuringSystem.ToolTolerance;
        return row.Printed.Grams > heaviest * largest * tool || row.Printed.Grams < lightest * smallest / tool;
    }
}
