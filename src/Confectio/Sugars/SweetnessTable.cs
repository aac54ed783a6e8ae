using System.Diagnostics.CodeAnalysis;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>
/// A table of relative sweetness, chosen by name because tables disagree: glucose is 0.5, 0.74 or 0.8. Sweetnesses are added up by mass.
/// </summary>
/// <remarks>
/// That is what the trade does. Sweetness depends on strength, temperature and company, and the tables say little about theirs:
/// fructose is less sweet hot than cold. The table <c>joined</c> is the oldest one with the range of the others, filled up with estimates.
/// </remarks>
public sealed class SweetnessTable
{
    // What is sweet or may be; a substance of these without a figure is reported.
    private static readonly Constituent[] s_sweet =
    [
        Constituent.Sucrose, Constituent.Glucose, Constituent.Fructose, Constituent.Lactose, Constituent.Maltose, Constituent.OtherSugars,
        Constituent.HigherSaccharides, Constituent.Polyols, Constituent.Glycerol,
    ];

    private static readonly SweetnessTable[] s_all = ReadBuiltIn();

    private readonly double[] _low, _likely, _high; // by constituent

    private SweetnessTable(string key, SweetnessFigure[] figures)
    {
        Key = key;
        Figures = figures;
        _low = Weights(figure => figure.Value.Low);
        _likely = Weights(figure => figure.Value.Likely);
        _high = Weights(figure => figure.Value.High);
        Part = FormulaPart.Weighted($"sweetness by {key}", _likely);
    }

    /// <summary>The tables.</summary>
    public static IReadOnlyList<SweetnessTable> All => s_all;

    /// <summary>The key, such as <c>biester-1925</c>.</summary>
    public string Key { get; }

    /// <summary>The figures.</summary>
    internal IReadOnlyList<SweetnessFigure> Figures { get; }

    /// <summary>
    /// The sucrose that a formula's sugars are as sweet as, for the solver: <c>problem.WithTarget(table.Part, 0.45)</c> asks for a formula
    /// of which 100 g are as sweet as 45 g of sucrose.
    /// </summary>
    public FormulaPart Part { get; }

    /// <summary>The table of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such table; the message lists those there are.</exception>
    public static SweetnessTable Get(string key) => Keyed.Get(s_all, key, "table of sweetness", "tables", known => known.Key);

    /// <summary>The table of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="table">The table, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out SweetnessTable? table) =>
        (table = Keyed.Find(s_all, key, known => known.Key)) is not null;

    /// <summary>How sweet an ingredient is.</summary>
    /// <param name="ingredient">The ingredient.</param>
    /// <returns>The sweetness of a gram. Worked number: honey by <c>biester-1925</c> is 0.99.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public Sweetness Of(Ingredient ingredient)
    {
        Composition composition = Guard.NotNull(ingredient).Composition;
        return Of(constituent => composition[constituent]);
    }

    /// <summary>How sweet a solution is.</summary>
    /// <param name="solution">The solution.</param>
    /// <returns>The sweetness of a gram. Worked number: 50 g of invert sugar in 100 g by <c>biester-1925</c> give 0.6175.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="solution"/> is null.</exception>
    public Sweetness Of(SugarSolution solution)
    {
        Guard.NotNull(solution);
        return Of(constituent => solution[constituent]);
    }

    /// <summary>How sweet a formula is, after what boils off.</summary>
    /// <param name="formula">The formula.</param>
    /// <returns>The sweetness of a gram of what comes out.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    public Sweetness Of(Formula formula)
    {
        Guard.NotNull(formula);
        return Of(constituent => formula.Lines.Sum(line => line.Grams.Likely
            * line.Ingredient.Composition[constituent]) / formula.TotalGrams);
    }

    /// <summary>The key.</summary>
    public override string ToString() => Key;

    private Sweetness Of(Func<Constituent, double> fraction)
    {
        double low = 0, likely = 0, high = 0;
        SpreadBasis basis = SpreadBasis.Exact;
        List<Constituent> missing = [];
        foreach (Constituent constituent in s_sweet)
        {
            double there = fraction(constituent);
            SweetnessFigure? known = Figures.FirstOrDefault(figure => figure.Constituent == constituent);
            if (there > 0 && known is null)
                missing.Add(constituent);
            else if (there > 0)
                basis = Spread.Worse(basis, known!.Value.Basis);
            low += there * _low[(int)constituent];
            likely += there * _likely[(int)constituent];
            high += there * _high[(int)constituent];
        }
        return new Sweetness(this, new Spread(low, likely, high, basis), missing);
    }

    private double[] Weights(Func<SweetnessFigure, double> value)
    {
        double[] weights = new double[Enum.GetValues<Constituent>().Length];
        foreach (SweetnessFigure figure in Figures)
            weights[(int)figure.Constituent] = value(figure);
        return weights;
    }

    private static SweetnessTable[] ReadBuiltIn()
    {
        List<(string Table, SweetnessFigure Figure)> rows = [];
        EmbeddedTable.Read("sweetness.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Provenance provenance = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note"));
            rows.Add((fields.Required("table"), new SweetnessFigure(Solutes.Read(fields, "constituent"),
                fields.Spread(0, 3, provenance.Evidence), provenance)));
        });
        return [.. rows.GroupBy(row => row.Table).Select(group => new SweetnessTable(group.Key, [.. group.Select(row => row.Figure)]))];
    }
}
