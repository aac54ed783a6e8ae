using Confectio.Ingredients;
using Confectio.Layouts;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>
/// Judges a printed conversion table: which cup it uses and how sure that is, which rows are wrong, and what probably happened.
/// </summary>
/// <remarks>
/// The table may have any layout that <see cref="TableText"/> reads. What cannot be read is a problem with its line; the rest is judged.
/// Rows are called wrong while the expected share of right rows among them stays within <see cref="VettingOptions.FalseDiscoveryRate"/>
/// (Bayesian false-discovery control), and none that is likelier right than 0.08. Of a row with two weights or three each pair is held
/// against the other. The model and its measured hit rates are described in docs/guide/vetting.md.
/// </remarks>
public static class ConversionTableVetter
{
    /// <summary>How much likelier a table's ounces are ounces than another weight, before anything is read: 20 to 1, a judgement.</summary>
    private const double LogOtherOunce = -3;

    /// <summary>A cup of 236.6 mL is printed as 240; one of 250 is not.</summary>
    private const double StatedWithin = 0.02;

    /// <summary>Judges a table from its text.</summary>
    /// <param name="table">
    /// The text of the table, in any layout that <see cref="TableText"/> reads. It is read once, from start to end.
    /// </param>
    /// <param name="ingredients">The ingredients to judge by.</param>
    /// <param name="options">How to read and judge; <see langword="null"/> for the defaults.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static TableVerdict Vet(TextReader table, IngredientTable ingredients, VettingOptions? options = null)
    {
        string text = Guard.NotNull(table).ReadToEnd();
        options ??= VettingOptions.Default;
        Guard.NotNull(ingredients);
        return Vet(TableText.Read(text, options.Reading), ingredients, options);
    }

    /// <summary>Judges a table from its bytes, whose encoding is found out.</summary>
    /// <param name="table">The bytes of the table.</param>
    /// <param name="ingredients">The ingredients to judge by.</param>
    /// <param name="options">How to read and judge; <see langword="null"/> for the defaults.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredients"/> is null.</exception>
    public static TableVerdict Vet(ReadOnlySpan<byte> table, IngredientTable ingredients, VettingOptions? options = null)
    {
        options ??= VettingOptions.Default;
        Guard.NotNull(ingredients);
        return Vet(TableText.Read(table, options.Reading), ingredients, options);
    }

    /// <summary>Judges a table that was read.</summary>
    /// <param name="table">The table, and what of it could not be read.</param>
    /// <param name="ingredients">The ingredients to judge by.</param>
    /// <param name="options">How to judge; <see langword="null"/> for the defaults.</param>
    /// <returns>The verdict.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static TableVerdict Vet(Reading<TableText> table, IngredientTable ingredients, VettingOptions? options = null)
    {
        Guard.NotNull(table);
        Guard.NotNull(ingredients);
        options ??= VettingOptions.Default;
        if (!table.TryGet(out TableText? read))
            return new TableVerdict(null, [], table.Problems, "", "", readable: false);
        List<TableRow> rows = TableRows.Of(read, ingredients);
        IReadOnlyList<MeasuringSystem> systems = options.System is not null ? [options.System] : options.Among ?? SystemsOf(read);

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
        VerdictRule.Apply(rows, groups, model, grid, system?.Best ?? systems[0], systems, options.FalseDiscoveryRate,
            options.ExpectedWrong);
        Explanations explanations = new(system);
        RowFinding[] findings = new RowFinding[rows.Count];
        for (int i = 0; i < findings.Length; i++)
            findings[i] = new RowFinding(rows[i], explanations);
        return new TableVerdict(system, findings, table.Problems, grid.Name, read.Layout, findings.Length > 0);
    }

    /// <summary>
    /// The systems whose measures are those that the table itself states, to within what "240 mL" means in print; all where none fits.
    /// </summary>
    private static IReadOnlyList<MeasuringSystem> SystemsOf(TableText table)
    {
        MeasuringSystem[] fitting = [.. MeasuringSystem.All.Where(system => table.StatedMeasures.All(stated =>
            system.Defines(stated.Unit) && Math.Abs(Math.Log(stated.Millilitres / system.MillilitresPer(stated.Unit))) < StatedWithin))];
        return table.StatedMeasures.Count == 0 || fitting.Length == 0 ? MeasuringSystem.All : fitting;
    }

    private static MixtureModel Run(IReadOnlyList<TableRow> rows, List<RowGroup> groups, RoundingGrid grid,
        IReadOnlyList<MeasuringSystem> systems, VettingOptions options)
    {
        MixtureModel model = new(rows, groups, new RowHypotheses(rows, groups, systems, grid, options), systems, grid, options.Reach);
        model.Weigh();
        return model;
    }
}
