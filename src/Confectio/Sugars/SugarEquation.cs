using System.Globalization;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Sugars;

/// <summary>An equation that the room works with: where it holds, what it rests on and how far off it is.</summary>
public sealed class SugarEquation
{
    private static readonly SugarEquation[] s_all = ReadBuiltIn();

    private SugarEquation(string key, string quantity, string form, string range, string basis, string fitError, Provenance provenance)
    {
        Key = key;
        Quantity = quantity;
        Form = form;
        Range = range;
        Basis = basis;
        FitError = fitError;
        Provenance = provenance;
    }

    /// <summary>All of them.</summary>
    public static IReadOnlyList<SugarEquation> All => s_all;

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

    /// <summary>Where it comes from.</summary>
    public Provenance Provenance { get; }

    /// <summary>The equation of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such equation; the message lists those there are.</exception>
    public static SugarEquation Get(string key) => Keyed.Get(s_all, key, "equation", "equations", known => known.Key);

    /// <summary>One line, such as <c>solubility of sucrose: 0 to 100 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Quantity}: {Range}");

    private static SugarEquation[] ReadBuiltIn()
    {
        List<SugarEquation> all = [];
        EmbeddedTable.Read("equations.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            all.Add(new SugarEquation(fields.Required("key"), fields.Required("quantity"), fields.Required("equation"), fields.Required("range"),
                fields.Required("basis"), fields.Required("fit_error"), fields.Provenance("source", "kind", "", fields.Word("note"))));
        });
        return [.. all];
    }
}
