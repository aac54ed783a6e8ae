using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// The coefficients of all equations: coefficients.csv. A row that is lost, stands twice or cannot be read stops the reading with file,
/// line and reason, for a model that reckoned on without it would be wrong in silence.
/// </summary>
internal sealed class CoefficientTable
{
    public const string FileName = "coefficients.csv";

    // No coefficient of any equation is beyond; the greatest is the rate of inversion, 8e16.
    private const double Most = 1e20;

    private static readonly string[] s_columns =
    [
        "equation", "substance", "coefficient", "value", "unit", "range_unit", "low", "high", "low_celsius", "high_celsius", "fit_error",
        "fit_error_unit", "source", "kind", "locator", "made_from", "note",
    ];

    private readonly Dictionary<(string Equation, string Substance), CoefficientSet> _sets;

    private CoefficientTable(Coefficient[] all)
    {
        All = all;
        _sets = all.GroupBy(row => (row.EquationKey, row.Substance.Key))
            .ToDictionary(set => set.Key, set => new CoefficientSet(FileName, [.. set]));
    }

    /// <summary>The table in the assembly.</summary>
    public static CoefficientTable BuiltIn { get; } = ReadBuiltIn();

    /// <summary>All rows.</summary>
    public IReadOnlyList<Coefficient> All { get; }

    /// <summary>What an equation has for a substance.</summary>
    /// <exception cref="InvalidOperationException">It has nothing.</exception>
    public CoefficientSet Get(string equation, string substance) => _sets.TryGetValue((equation, substance), out CoefficientSet? set) ? set
        : throw new InvalidOperationException($"{FileName}: there is no row of {equation} for {substance}.");

    /// <summary>What an equation has for a constituent.</summary>
    public CoefficientSet Get(string equation, Constituent constituent) => Get(equation, Constituents.WordOf(constituent));

    /// <summary>What an equation has, substance by substance, in the order of the table.</summary>
    public IEnumerable<CoefficientSet> Of(string equation) => _sets.Where(pair => pair.Key.Equation == equation).Select(pair => pair.Value);

    /// <summary>Reads a table that must have as many rows of each equation as the equation says.</summary>
    /// <exception cref="InvalidOperationException">The table has a problem; the message has the first, with its line.</exception>
    public static CoefficientTable Read(TextReader text, IReadOnlyList<Equation> equations)
    {
        List<(Coefficient Row, int Line)> rows = [];
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Coefficient? made = ReadRow(fields, equations);
            if (made is null)
                return;
            foreach ((Coefficient known, int line) in rows)
            {
                if (known.EquationKey != made.EquationKey || known.Substance != made.Substance)
                    continue;
                if (known.Name == made.Name)
                    fields.Problem("coefficient",
                        Text($"{Excerpt.Of(made.Name)} of {made.EquationKey} for {made.Substance.Key} stands already on line {line}"));
                else if (!HaveOneRange(known, made))
                    fields.Problem("low", Text($"the range is another than on line {line}; an equation has one for a substance"));
            }
            rows.Add((made, row.Line));
        }, s_columns, problems =>
        {
            foreach (Equation equation in equations)
            {
                (Coefficient Row, int Line)[] own = [.. rows.Where(row => row.Row.EquationKey == equation.Key)];
                if (own.Length != equation.CoefficientCount)
                    problems.Add(new Problem(own.Length > 0 ? own[0].Line : 1, "equation",
                        Text($"{equation.Key} has {own.Length} coefficients; ")
                        + Text($"{equation.CoefficientCount} are expected by {Equation.FileName}")));
            }
        });
        return new CoefficientTable([.. rows.Select(row => row.Row)]);
    }

    private static Coefficient? ReadRow(RowFields fields, IReadOnlyList<Equation> equations)
    {
        long before = fields.ProblemCount;
        string equation = fields.Required("equation"), key = fields.Required("substance");
        if (!equations.Any(known => known.Key == equation))
            fields.Problem("equation", $"{Excerpt.Of(equation)} is no equation of {Equation.FileName}");
        if (!Substance.TryGet(key, out Substance? substance))
            fields.Problem("substance", $"{Excerpt.Of(key)} is no substance of {Substance.FileName}");
        string source = fields.Word("source");
        if (!Bibliography.TryGet(source, out _))
            fields.Problem("source", $"{Excerpt.Of(source)} is no key of sources.csv");
        Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
        double value = fields.RequiredNumber("value", -Most, Most);
        Coefficient made = new(equation, substance!, fields.Required("coefficient"), value, fields.Required("unit"), provenance)
        {
            RangeUnit = fields.Word("range_unit"),
            Lowest = fields.Number("low", -Most, Most),
            Highest = fields.Number("high", -Most, Most),
            MinimumCelsius = fields.Number("low_celsius", -273.15, 5000),
            MaximumCelsius = fields.Number("high_celsius", -273.15, 5000),
            FitError = fields.Number("fit_error", 0, Most),
            FitErrorUnit = fields.Word("fit_error_unit"),
        };
        if (made.Lowest > made.Highest || made.Lowest is null != made.Highest is null
            || made.Lowest is null != (made.RangeUnit.Length == 0))
            fields.Problem("low", "a range has a low, a high that is not below it, and a unit");
        if (made.MinimumCelsius > made.MaximumCelsius || made.MinimumCelsius is null != made.MaximumCelsius is null)
            fields.Problem("low_celsius", "a range of temperatures has a low and a high that is not below it");
        if (made.FitError is null != (made.FitErrorUnit.Length == 0))
            fields.Problem("fit_error", "an error has a unit, and a unit an error");
        if (made.Provenance.Evidence == Evidence.Estimated && made.FitError is null)
            fields.Problem("fit_error", "an estimate says how far it may be off");
        return fields.ProblemCount == before ? made : null;
    }

    private static bool HaveOneRange(Coefficient known, Coefficient made) => known.Lowest == made.Lowest && known.Highest == made.Highest
        && known.RangeUnit == made.RangeUnit && known.MinimumCelsius == made.MinimumCelsius && known.MaximumCelsius == made.MaximumCelsius;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static CoefficientTable ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text, Equation.All);
    }
}
