using System.Diagnostics.CodeAnalysis;
using Confectio.Text;

namespace Confectio.Sources;

/// <summary>Every source that the built-in figures name.</summary>
internal static class Bibliography
{
    private static readonly Dictionary<string, Source> s_sources = ReadBuiltIn();

    /// <summary>All sources, in the order of their keys.</summary>
    public static IReadOnlyList<Source> All =>
        [.. s_sources.Values.OrderBy(source => source.Key, StringComparer.Ordinal)];

    /// <summary>The source of a key.</summary>
    /// <param name="key">The key, such as <c>usda-sr</c>; case does not matter.</param>
    /// <returns>The source.</returns>
    /// <exception cref="ArgumentException">No source has this key.</exception>
    public static Source Get(string key) => TryGet(key, out Source? source)
        ? source
        : throw new ArgumentException($"There is no source {Excerpt.Of(key)} in the bibliography.", nameof(key));

    /// <summary>The source of a key, where there is one.</summary>
    /// <param name="key">The key, such as <c>usda-sr</c>; case does not matter.</param>
    /// <param name="source">The source, or <see langword="null"/>.</param>
    /// <returns>Whether the key is known.</returns>
    public static bool TryGet(string key, [NotNullWhen(true)] out Source? source) =>
        s_sources.TryGetValue(Guard.NotNull(key), out source);

    private static Dictionary<string, Source> ReadBuiltIn()
    {
        Dictionary<string, Source> sources = new(StringComparer.OrdinalIgnoreCase);
        EmbeddedTable.Read("sources.csv", (table, _) =>
        {
            int key = table.Find("key"), shortName = table.Find("short"), citation = table.Find("citation");
            int edition = table.Find("edition"), licence = table.Find("licence"), note = table.Find("note");
            return row => sources.Add(row[key].ToString(), new Source(row[key].ToString(), row[shortName].ToString(),
                row[citation].ToString(), row[edition].ToString(), row[licence].ToString(), row[note].ToString()));
        });
        return sources;
    }
}
