using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Vetting;

/// <summary>Turns probabilities into verdicts, with control of the expected share of right rows among those called wrong.</summary>
internal static class VerdictRule
{
    /// <summary>Rows of an unknown ingredient can outvote one of their number only from this many on.</summary>
    public const int FewestToOutvote = 3;

    /// <summary>
    /// The expected range holds all but three in a thousand figures that are right: where a mistake becomes likelier than a figure that far
    /// out, it ends. With two deviations one right row in thirty would lie outside the range beside it.
    /// </summary>
    private const double Reach = 3;

    /// <summary>So many rows the share of mistakes that is expected before is worth.</summary>
    private const double RowsBefore = 11;

    /// <summary>
    /// No row is called wrong that is likelier right than this, however sure the others are: the mean lets ten sure ones buy a doubtful
    /// one.
    /// </summary>
    public const double MostRight = 0.08;

    public static void Apply(IReadOnlyList<TableRow> rows, IReadOnlyList<RowGroup> groups, MixtureModel model, RoundingGrid grid,
        MeasuringSystem system,
        IReadOnlyList<MeasuringSystem> systems, double falseDiscoveryRate, double expectedWrong)
    {
        List<TableRow> judged = [];
        bool otherOunces = FigurePairs.TakesOtherOunces(rows);
        for (int i = 0; i < rows.Count; i++)
        {
            TableRow row = rows[i];
            RowGroup group = groups[row.Group];
            if (group.Kind == GroupKind.Unknown && group.Rows.Count < FewestToOutvote)
            {
                row.Verdict = Verdict.Unknown;
                row.Reason = null;
                FigurePairs.Judge(row, otherOunces);
                continue;
            }
            Expect(row, group, model, model.ExpectedByOthers(i), grid, system);
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
            else if (row.ProbabilityRight < 0.5 || row.ExpectedGrams is Spread expected && !expected.Contains(row.Printed.Grams))
            {
                // What is said is what is judged: a figure outside the range beside it does not agree, likely as it may be in so careless a
                // table.
                row.Verdict = Verdict.Doubtful;
            }
            else
            {
                row.Verdict = Verdict.Agrees;
                row.Reason = null;
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

    private static double Reweighed(double probability, double right, double wrong) =>
        probability * right / (probability * right + (1 - probability) * wrong);

    private static void Expect(TableRow row, RowGroup group, MixtureModel model, (double Mean, double Deviation) others, RoundingGrid grid,
        MeasuringSystem system)
    {
        double measure = RowHypotheses.Measure(row, system);
        row.IsAlone = group.Rows.Count == 1;
        if (group.Kind == GroupKind.Mass)
        {
            row.ExpectedGrams = AsPrinted(new Spread(row.Amount.LowGrams(system), measure, row.Amount.HighGrams(system)), row, grid);
        }
        else if (group.Kind == GroupKind.Piece)
        {
            Spread piece = row.Matched!.Piece(row.Amount.Part(0).Piece!).Grams;
            row.ExpectedGrams = AsPrinted(Widened(piece * measure, row, group, model, others), row, grid);
        }
        else if (group.Kind == GroupKind.Density)
        {
            if (system == MeasuringSystem.Imperial && RowHypotheses.LogMetricSpoon(row.Amount) is not 0 and double spoon
                && Math.Abs(Math.Log(row.Printed.Grams / measure) - group.LogWeight - spoon)
                    < Math.Abs(Math.Log(row.Printed.Grams / measure) - group.LogWeight))
                measure *= Math.Exp(spoon);
            BulkDensity density = NearestPacking(row, measure);
            row.ExpectedPacking = density.Packing;
            row.TakenFrom = density.TakenFrom;
            (double least, double usual, double most) = RowGrouping.FactorsOf(row);
            Spread level = density.GramsPerMillilitre, bulk = row.Rough is null ? level
                : new Spread(level.Low * least, level.Likely * usual, level.High * most, SpreadBasis.Judged),
                    expected = AsPrinted(Widened(bulk * measure, row, group, model, others), row, grid);
            if (row.Packing is null && row.Rough is null && row.Matched!.Densities.Count > 1 && !expected.Contains(row.Printed.Grams))
            {
                // No packing by itself weighs that, but the row does not say how it is packed, and may be judged as between two of them.
                (double low, double high) = RowHypotheses.BetweenPackingsOf(row.Matched);
                Spread between = AsPrinted(new Spread(Math.Min(expected.Low, low * measure), expected.Likely,
                    Math.Max(expected.High, high * measure), expected.StandardUncertainty, SpreadBasis.Judged), row, grid);
                row.IsOfAnyPacking = between.Contains(row.Printed.Grams);
                expected = row.IsOfAnyPacking ? between : expected;
            }
            row.ExpectedGrams = expected;
        }
    }

    /// <summary>
    /// The range by which the row was judged: as wide as this table showed densities to be, and as its measure is; and what the other rows
    /// of the same ingredient make of it.
    /// </summary>
    private static Spread Widened(Spread grams, TableRow row, RowGroup group, MixtureModel model, (double Mean, double Deviation) others)
    {
        double shared = model.Width(group.Grid) * group.Shared, own = group.DeviationOf(row.Amount),
            u = Math.Sqrt(shared * shared + own * own);
        double low = Math.Min(grams.Low, grams.Likely * Math.Exp(-Reach * u)),
            high = Math.Max(grams.High, grams.Likely * Math.Exp(Reach * u));
        if (others.Deviation > 0)
        {
            double by = Reach * Math.Sqrt(others.Deviation * others.Deviation + own * own);
            (low, high) = (Math.Min(low, Math.Exp(others.Mean - by)), Math.Max(high, Math.Exp(others.Mean + by)));
        }
        return new Spread(low, grams.Likely, high, grams.Likely * u, SpreadBasis.Judged);
    }

    /// <summary>The figures that would be printed for it: half a step of the row's rounding more to either side.</summary>
    private static Spread AsPrinted(Spread grams, TableRow row, RoundingGrid grid)
    {
        (double low, double high) = grid.LogInterval(row);
        double below = row.Printed.Grams - Math.Exp(low), above = Math.Exp(high) - row.Printed.Grams;
        return new Spread(Math.Max(grams.Low - above, grams.Low / 2), grams.Likely, grams.High + below, grams.StandardUncertainty,
            SpreadBasis.Judged);
    }

    /// <summary>The stated packing; where none is stated and another than the usual one fits, that one is what the table meant.</summary>
    private static BulkDensity NearestPacking(TableRow row, double measure)
    {
        Ingredient ingredient = row.Matched!;
        BulkDensity usual = ingredient.NearestDensity(row.Packing ?? ingredient.DefaultPacking);
        double density = row.Printed.Grams / measure / RowGrouping.FactorsOf(row).Likely;
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
        // Who knows what stays on a spoon?
        if (group.Kind != GroupKind.Density || row.Rough is not null)
            return false;
        double smallest = double.MaxValue, largest = 0;
        foreach (MeasuringSystem system in systems)
        {
            double volume = RowHypotheses.Measure(row, system);
            smallest = Math.Min(smallest, volume);
            largest = Math.Max(largest, volume);
        }
        double heaviest = Math.Max(row.Matched!.Composition.AirFreeGramsPerMillilitre,
            row.Matched.Densities.Max(density => density.GramsPerMillilitre.High));
        double lightest = row.Matched.Densities.Min(density => density.GramsPerMillilitre.Low) / 2;
        double tool = 1 + MeasuringSystem.ToolTolerance;
        return row.Printed.Grams > heaviest * largest * tool || row.Printed.Grams < lightest * smallest / tool;
    }
}
