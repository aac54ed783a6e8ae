using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Ingredients;

/// <summary>
/// An equation that the library works with: where it holds, what it rests on and how far off it is. Its numbers are <see
/// cref="Coefficients"/>.
/// </summary>
internal sealed class Equation
{
    internal const string FileName = "equations.csv";

    private static readonly string[] s_columns =
        ["key", "quantity", "equation", "coefficients", "range", "basis", "fit_error", "source", "kind", "made_from", "note"];

    private static readonly Equation[] s_all = ReadBuiltIn();

    private Equation(RowFields fields)
    {
        Key = fields.Required("key");
        Quantity = fields.Required("quantity");
        Form = fields.Required("equation");
        CoefficientCount = (int)(fields.Number("coefficients", 1, 1000) ?? 0);
        Range = fields.Required("range");
        Basis = fields.Required("basis");
        FitError = fields.Required("fit_error");
        Provenance = fields.Provenance("source", "kind", "", fields.Word("note"));
    }

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Equation> All => s_all;

    /// <summary>The key, such as <c>density-sucrose</c>.</summary>
    public string Key { get; }

    /// <summary>What it gives.</summary>
    public string Quantity { get; }

    /// <summary>The equation, or what kind of equation it is.</summary>
    public string Form { get; }

    /// <summary>Where it holds.</summary>
    public string Range { get; }

    /// <summary>What measurements or what theory it rests on.</summary>
    public string Basis { get; }

    /// <summary>How far it is from those, or from other equations for the same.</summary>
    public string FitError { get; }

    /// <summary>Where it comes from. A coefficient of it may be worse known: each has its own.</summary>
    public Provenance Provenance { get; }

    /// <summary>Its coefficients, substance by substance; none where it has no numbers of its own.</summary>
    public IReadOnlyList<Coefficient> Coefficients => [.. CoefficientTable.BuiltIn.Of(Key).SelectMany(set => set.All)];

    /// <summary>How many coefficients it must have.</summary>
    internal int CoefficientCount { get; }

    /// <summary>The equation of a key.</summary>
    /// <param name="key">The key; case does not matter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such equation; the message lists those there are.</exception>
    public static Equation Get(string key) => Keyed.Get(s_all, key, "equation", "equations", known => known.Key);

    /// <summary>One line, such as <c>solubility of sucrose: 0 to 100 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Quantity}: {Range}");

    internal static Equation[] Read(TextReader text)
    {
        List<Equation> all = [];
        EmbeddedTable.Read(text, FileName, (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            Equation made = new(fields);
            if (all.Exists(known => known.Key == made.Key))
                fields.Problem("key", $"the equation {Excerpt.Of(made.Key)} stands twice");
            all.Add(made);
        }, s_columns);
        return [.. all];
    }

    private static Equation[] ReadBuiltIn()
    {
        using TextReader text = EmbeddedTable.Open(FileName);
        return Read(text);
    }
}
