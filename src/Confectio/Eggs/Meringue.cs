using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Eggs;

/// <summary>
/// A kind of meringue: French (raw white and dry sugar), Swiss (white and sugar warmed together) or Italian (boiled syrup poured into
/// whipped white), with what each source prints of it.
/// </summary>
/// <remarks>
/// Where sources conflict all of them are kept: the Swiss mix is warmed to 45, to 57 to 60 or to 71 °C, and nothing here says which of them
/// does what to bacteria. Caution: <see cref="EggCaution.Text"/>
/// </remarks>
public sealed class Meringue
{
    private static readonly Meringue[] s_all = ReadBuiltIn();

    private Meringue(string key, MeringueFigure[] figures)
    {
        Key = key;
        Figures = figures;
    }

    /// <summary>The kinds: <c>french</c>, <c>swiss</c> and <c>italian</c>.</summary>
    public static IReadOnlyList<Meringue> All => s_all;

    /// <summary>Raw white whipped with dry sugar.</summary>
    public static Meringue French { get; } = Get("french");

    /// <summary>White and sugar warmed together, then whipped.</summary>
    public static Meringue Swiss { get; } = Get("swiss");

    /// <summary>Boiled syrup poured into whipped white.</summary>
    public static Meringue Italian { get; } = Get("italian");

    /// <summary>The key, such as <c>italian</c>.</summary>
    public string Key { get; }

    /// <summary>What the sources print, side by side.</summary>
    internal IReadOnlyList<MeringueFigure> Figures { get; }

    /// <summary>The kind of a key.</summary>
    /// <param name="name">The key; case does not matter.</param>
    /// <exception cref="ArgumentException">There is no such kind; the message lists those there are.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static Meringue Get(string name) => Keyed.Get(s_all, name, "meringue", "kinds", known => known.Key);

    /// <summary>The kind of a key, where there is one.</summary>
    /// <param name="name">The key; case does not matter.</param>
    /// <param name="meringue">The kind, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static bool TryGet(string name, [NotNullWhen(true)] out Meringue? meringue) =>
        (meringue = Keyed.Find(s_all, name, known => known.Key)) is not null;

    /// <summary>What the sources print of one quantity; the first is the range that is used here.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <returns>The figures; empty where it is no matter of this kind.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="quantity"/> is not a defined value.</exception>
    internal IReadOnlyList<MeringueFigure> FiguresOf(MeringueQuantity quantity)
    {
        Guard.Defined(quantity);
        return [.. Figures.Where(figure => figure.Quantity == quantity)];
    }

    /// <summary>The key.</summary>
    public override string ToString() => Key;

    private static Meringue[] ReadBuiltIn()
    {
        List<(string Meringue, MeringueFigure Figure)> rows = [];
        EmbeddedTable.Read("meringues.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            rows.Add((fields.Required("meringue"), new MeringueFigure(fields.Enum<MeringueQuantity>("quantity"),
                fields.RequiredNumber("low", 0, 200),
                fields.RequiredNumber("high", 0, 200), fields.Required("printed_as"),
                    fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")))));
        });
        return [.. rows.GroupBy(row => row.Meringue).Select(group => new Meringue(group.Key, [.. group.Select(row => row.Figure)]))];
    }
}
