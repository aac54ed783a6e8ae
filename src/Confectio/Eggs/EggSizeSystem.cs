using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Eggs;

/// <summary>
/// Whose size classes of eggs are meant. There is no ambient default: a large egg is from 56.7 g in the United States and from 63 g in the
/// Union.
/// </summary>
/// <remarks>
/// A name of a size is not portable: in South Africa a large egg has 51 to 59 g, which is a small or medium one in the Union and a medium
/// or large one in the United States. A size is therefore always named with its system.
/// </remarks>
public sealed class EggSizeSystem
{
    private const double HeaviestGrams = 1000;

    private static readonly EggSizeSystem[] s_all = ReadBuiltIn();

    private readonly EggSize[] _sizes;

    private EggSizeSystem(string key, string name, EggSizeRow[] rows)
    {
        Key = key;
        Name = name;
        _sizes = new EggSize[rows.Length];
        // The shares of white and yolk in the egg without its shell, where a row of the system has all three.
        EggSizeRow? model = Array.Find(rows, row => row is { Edible: not null, White: not null, Yolk: not null });
        for (int i = 0; i < rows.Length; i++)
            _sizes[i] = new EggSize(this, rows, i, model);
    }

    /// <summary>The systems: <c>us</c>, <c>eu</c> and <c>japan</c>.</summary>
    public static IReadOnlyList<EggSizeSystem> All => s_all;

    /// <summary>The key, such as <c>us</c>.</summary>
    public string Key { get; }

    /// <summary>The name for a reader, such as <c>US</c>.</summary>
    public string Name { get; }

    /// <summary>The sizes, the largest first.</summary>
    public IReadOnlyList<EggSize> Sizes => _sizes;

    /// <summary>The system of a key or name.</summary>
    /// <param name="name">The key or the name, such as <c>us</c>; case does not matter.</param>
    /// <exception cref="ArgumentException">There is no such system; the message lists those there are.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static EggSizeSystem Get(string name) => Keyed.Get(s_all, name, "system of egg sizes", "systems", known => known.Key,
        known => known.Name);

    /// <summary>The system of a key or name, where there is one.</summary>
    /// <param name="name">The key or the name, such as <c>us</c>; case does not matter.</param>
    /// <param name="system">The system, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static bool TryGet(string name, [NotNullWhen(true)] out EggSizeSystem? system) =>
        (system = Keyed.Find(s_all, name, known => known.Key, known => known.Name)) is not null;

    /// <summary>The size of a key or name.</summary>
    /// <param name="name">The key or the name, such as <c>large</c> or <c>extra large</c>; case does not matter.</param>
    /// <exception cref="ArgumentException">The system has no such size; the message lists those it has.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public EggSize Size(string name) => Keyed.Get(_sizes, name, $"{Name} egg of size", "sizes", known => known.Key, known => known.Name);

    /// <summary>The size of a key or name, where there is one.</summary>
    /// <param name="name">The key or the name, such as <c>large</c> or <c>extra large</c>; case does not matter.</param>
    /// <param name="size">The size, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public bool TryGetSize(string name, [NotNullWhen(true)] out EggSize? size) =>
        (size = Keyed.Find(_sizes, name, known => known.Key, known => known.Name)) is not null;

    /// <summary>The size that an egg of a mass belongs to. The low end belongs to the class, the high end to the next.</summary>
    /// <param name="grams">The egg with its shell, g, above 0 to 1000.</param>
    /// <returns>
    /// The size; <see langword="null"/> where the egg is lighter than the lightest class or, in a system whose heaviest class has an end,
    /// heavier than that. Worked number: 72.99 g is large in the Union, 73.0 g very large.
    /// </returns>
    /// <remarks>The minima of the United States hold for a dozen together; there a single egg of the class may be lighter.</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="grams"/> is outside its range.</exception>
    public EggSize? Classify(double grams)
    {
        Guard.InRange(grams, Guard.Trace, HeaviestGrams);
        return Array.Find(_sizes, size => !(grams < size.LowGrams) && !(grams >= size.HighGrams));
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static EggSizeSystem[] ReadBuiltIn()
    {
        List<EggSizeRow> rows = [];
        EmbeddedTable.Read("egg_sizes.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            rows.Add(new EggSizeRow
            {
                System = fields.Required("system"),
                SystemName = fields.Required("system_name"),
                Key = fields.Required("size"),
                Name = fields.Required("name"),
                Low = fields.Number("low_grams", 1, HeaviestGrams),
                High = fields.Number("high_grams", 1, HeaviestGrams),
                OuncesPerDozen = fields.Number("low_ounces_per_dozen", 1, 100),
                Edible = fields.Number("edible_grams", 1, HeaviestGrams),
                White = fields.Number("white_grams", 1, HeaviestGrams),
                Yolk = fields.Number("yolk_grams", 1, HeaviestGrams),
                Class = fields.Provenance("source", "kind", fields.Word("locator"), fields.Word("note")),
                Parts = fields.Provenance("parts_source", "parts_kind", fields.Word("parts_locator"), fields.Word("parts_note")),
            });
        });
        return [.. rows.GroupBy(row => row.System).Select(group => new EggSizeSystem(group.Key, group.First().SystemName, [.. group]))];
    }
}
