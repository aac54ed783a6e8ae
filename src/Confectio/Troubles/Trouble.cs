using System.Diagnostics.CodeAnalysis;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Troubles;

/// <summary>What is wrong with an icing, as a cook says it, with what may have caused it.</summary>
public sealed class Trouble
{
    private static readonly (string Word, string[] Troubles)[] s_words = ReadWords();

    private static readonly Trouble[] s_all = [.. s_words.SelectMany(word => word.Troubles).Distinct().Select(key => new Trouble(key))];

    private Trouble(string key)
    {
        Key = key;
        Words = [.. s_words.Where(word => word.Troubles.Contains(key)).Select(word => word.Word)];
        Causes = [.. TroubleCause.All.Where(cause => cause.Troubles.Contains(key))];
    }

    /// <summary>The troubles: curdled, split, soupy, grainy, tough, deflated, stiff, crusted, weeping, sweating, greasy.</summary>
    public static IReadOnlyList<Trouble> All => s_all;

    /// <summary>The key, which is its name.</summary>
    public string Key { get; }

    /// <summary>The words that are taken for it.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>What may have caused it, of every kind of icing.</summary>
    public IReadOnlyList<TroubleCause> Causes { get; }

    /// <summary>The troubles that words name: <c>it went all runny</c> is soupy, <c>broken</c> curdled or split.</summary>
    /// <param name="words">What a cook says.</param>
    /// <returns>The troubles, at least one, each once, in the order in which they are said.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="words"/> is null.</exception>
    /// <exception cref="ArgumentException">No trouble is named; the message has the nearest words.</exception>
    public static IReadOnlyList<Trouble> Named(string words) => TryNamed(words, out IReadOnlyList<Trouble>? troubles) ? troubles
        : throw new ArgumentException($"{nameof(words)}: {Excerpt.Of(words)} names no trouble{Near(words)}; one of: {string.Join(", ", s_all.Select(known => known.Key))}.",
            nameof(words));

    /// <summary>The troubles that words name, where they name one.</summary>
    /// <param name="words">What a cook says.</param>
    /// <param name="troubles">The troubles, or <see langword="null"/>.</param>
    /// <returns>Whether any is named.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="words"/> is null.</exception>
    public static bool TryNamed(string words, [NotNullWhen(true)] out IReadOnlyList<Trouble>? troubles)
    {
        string[] said = Plain(Guard.NotNull(words)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        List<Trouble> found = [];
        for (int i = 0; i < said.Length;)
        {
            // The longest first: "too soft" before "soft", "broken ganache" before "broken".
            (string Word, string[] Troubles) here = s_words.Where(known => StartsAt(known.Word, said, i)).OrderByDescending(known => known.Word.Length).FirstOrDefault();
            if (here.Word is null)
            {
                i++;
                continue;
            }
            i += here.Word.Split(' ').Length;
            found.AddRange(here.Troubles.Select(key => s_all.First(known => known.Key == key)).Where(known => !found.Contains(known)));
        }
        troubles = found.Count > 0 ? found : null;
        return troubles is not null;
    }

    /// <summary>The name.</summary>
    public override string ToString() => Key;

    private static bool StartsAt(string word, string[] said, int at)
    {
        string[] parts = word.Split(' ');
        return at + parts.Length <= said.Length && parts.AsSpan().SequenceEqual(said.AsSpan(at, parts.Length));
    }

    private static string Near(string words)
    {
        string plain = Plain(words);
        if (plain.Length is 0 or > 30)
            return "";
        string[] near = [.. s_words.Select(known => (known.Word, Distance: EditDistance.Of(plain, known.Word))).Where(known => known.Distance <= 1 + known.Word.Length / 3)
            .OrderBy(known => known.Distance).ThenBy(known => known.Word, StringComparer.Ordinal).Take(3).Select(known => known.Word)];
        return near.Length > 0 ? $"; perhaps {string.Join(", ", near)}" : "";
    }

    // Letters in lower case and single blanks; "won't" is "will not", "doesn't" "does not", "can't" "cannot".
    private static string Plain(string words)
    {
        string low = (words.Length > 500 ? words[..500] : words).ToLowerInvariant().Replace('’', '\'').Replace("won't", "will not", StringComparison.Ordinal)
            .Replace("can't", "cannot", StringComparison.Ordinal).Replace("n't", " not", StringComparison.Ordinal);
        return string.Join(' ', string.Concat(low.Select(c => char.IsLetter(c) ? c : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    private static (string, string[])[] ReadWords()
    {
        List<(string, string[])> words = [];
        EmbeddedTable.Read("trouble_words.csv", (table, problems) => row =>
        {
            RowFields fields = new(table, row, problems);
            words.Add((fields.Required("word").Replace('-', ' '), fields.Required("troubles").Split('|')));
        });
        return [.. words];
    }
}
