using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>
/// Judges a printed conversion table: which cup it uses and how sure that is, which rows are wrong, and what probably happened.
/// </summary>
/// <remarks>
/// The table is delimited text (comma, semicolon or tab) with a header line naming the columns <c>ingredient</c>, <c>measure</c>,
/// <c>grams</c> or <c>ounces</c>, and optionally <c>packing</c>. A row that cannot be read is a problem with its line and column;
/// the others are judged. Rows are called wrong while the expected share of right rows among them stays within
/// <see cref="VettingOptions.FalseDiscoveryRate"/> (Bayesian false-discovery control). The model and its measured hit rates are
/// described in docs/guide/vetting.md.
/// </remarks>
public static class ConversionTableVetter
{
    /// <summary>How much likelier a table's ounces are ounces than another weight, before anything is read: 20 to 1, a judgement.</summary>
    private const double LogOtherOunce = -3;

    /// <summary>Judges a table.</summary>
    /// <param name="table">The text of the table. It is read once, from start to end.</param>
    /// <param name="ingredients">The ingredients to judge by.</param>
    /// <param name="options">How to read and judge; <see langword="null"/> for the defaults.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static TableVerdict Vet(TextReader table, IngredientTable ingredients, VettingOptions? options = null)
    {
        Guard.NotNull(table);
        Guard.NotNull(ingredients);
        options ??= VettingOptions.Default;
        ProblemList problems = [];
        ConversionTableReader reader = new(ingredients, options, problems);
        reader.Read(table);
        IReadOnlyList<TableRow> rows = reader.Rows;
        IReadOnlyList<MeasuringSystem> systems = options.System is null ? MeasuringSystem.All : [options.System];

        List<RowGroup> groups = RowGrouping.Assign(rows);
        RoundingGrid grid = RoundingGrid.Of(rows);
        MixtureModel model = Run(rows, groups, grid, systems, options);
        foreach (double ounce in RoundingGrid.OtherOunces)
        {
            // Ounces that are none explain the digits of the whole table or of nothing.
            if (RoundingGrid.WithOunce(rows, grid, ounce) is not RoundingGrid other)
                continue;
            MixtureModel habit = Run(rows, groups, other, systems, options);
            if (habit.LogEvidence + LogOtherOunce > model.LogEvidence)
                (grid, model) = (other, habit);
        }
        model.Judge();

        SystemFinding? system = rows.Any(row => row.Amount.IsVolume) && (model.SystemMatters || options.System is not null)
            ? new SystemFinding(systems, model.SystemProbabilities, options.System is not null)
            : null;
        VerdictRule.Apply(rows, groups, model, system?.Best ?? systems[0], systems, options.FalseDiscoveryRate, options.ExpectedWrong);
        Explanations explanations = new(system, reader.Suggestions, reader.Unclear);
        RowFinding[] findings = new RowFinding[rows.Count];
        for (int i = 0; i < findings.Length; i++)
            findings[i] = new RowFinding(rows[i], explanations);
        problems.SortByLine();
        return new TableVerdict(system, findings, problems, grid.Name, findings.Length > 0);
    }

    private static MixtureModel Run(IReadOnlyList<TableRow> rows, List<RowGroup> groups, RoundingGrid grid, IReadOnlyList<MeasuringSystem> systems, VettingOptions options)
    {
        MixtureModel model = new(rows, groups, new RowHypotheses(rows, groups, systems, grid, options.ExpectedWrong, options.Reach), systems, grid, options.Reach);
        model.Weigh();
        return model;
    }
}
