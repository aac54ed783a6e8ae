using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Textures;

/// <summary>
/// A sort of icing whose consistency its water sets, with its bands. They are common practice or estimated: no viscosity of an icing at a
/// stated water content was found in print.
/// </summary>
public sealed class ConsistencySort
{
    private static readonly ConsistencySort[] s_all = ReadBuiltIn();

    private ConsistencySort(string key, ConsistencyRange[] bands)
    {
        Key = key;
        Bands = bands;
    }

    /// <summary>The sorts.</summary>
    public static IReadOnlyList<ConsistencySort> All => s_all;

    /// <summary>The key: <c>royal-icing</c>, <c>icing-sugar-glaze</c>, <c>buttercream</c>.</summary>
    public string Key { get; }

    /// <summary>The bands, the stiffest first.</summary>
    public IReadOnlyList<ConsistencyRange> Bands { get; }

    /// <summary>The sort of a key.</summary>
    /// <param name="key">The key.</param>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such sort; the message lists those there are.</exception>
    public static ConsistencySort Get(string key) => Keyed.Get(s_all, key, "sort of icing", "sorts", known => known.Key);

    /// <summary>The sort of a key, where there is one.</summary>
    /// <param name="key">The key.</param>
    /// <param name="sort">The sort, or <see langword="null"/>.</param>
    /// <returns>Whether there is one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="key"/> is null.</exception>
    public static bool TryGet(string key, [NotNullWhen(true)] out ConsistencySort? sort)
    {
        sort = Keyed.Find(s_all, key, known => known.Key);
        return sort is not null;
    }

    /// <summary>The key with blanks.</summary>
    public override string ToString() => Key.Replace('-', ' ');

    private static ConsistencySort[] ReadBuiltIn()
    {
        List<(string Sort, ConsistencyRange Range)> rows = [];
        EmbeddedTable.Read("consistencies.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            rows.Add((fields.Required("sort"), new ConsistencyRange(fields.Enum<ConsistencyBand>("band"), fields.RequiredNumber("low_water", 0, 100),
                fields.RequiredNumber("high_water", 0, 100), fields.Provenance("source", "kind", "", fields.Word("note")))));
        });
        return [.. rows.GroupBy(row => row.Sort).Select(group => new ConsistencySort(group.Key, [.. group.Select(row => row.Range)]))];
    }
}
