using System.Globalization;

namespace Confectio.Ingredients.Names;

/// <summary>
/// The names of one table, the descriptors and the unclear names, as sequences of numbered words. Built once a table, when a name is
/// first matched; nothing in it changes afterwards.
/// </summary>
internal sealed class NameBook
{
    private readonly NameSequences _names = new();
    private readonly NameSequences _phrases = new();
    private readonly List<Descriptor[]> _uses = [];
    private readonly Descriptor?[]?[] _rowOf;
    private readonly int[][] _between;
    private readonly bool[] _canDrop;
    private readonly bool[] _changes;
    private readonly byte[] _longest;
    private readonly IReadOnlyList<Ingredient> _foods;

    public NameBook(IReadOnlyList<Ingredient> foods)
    {
        _foods = foods;
        foreach (IGrouping<string, Descriptor> words in Descriptor.All.GroupBy(row => row.Words))
        {
            ushort[] ids = Learn(words.Key);
            // Two spellings of the same words share their rows.
            if (_phrases.TryGet(ids, out int use))
            {
                _uses[use] = [.. _uses[use], .. words];
                continue;
            }
            _phrases.Set(ids, _uses.Count);
            _uses.Add([.. words]);
        }
        _rowOf = new Descriptor?[]?[_uses.Count];
        _canDrop = [.. _uses.Select(rows => rows.Any(row => row.Meaning is not DescriptorMeaning.Food))];
        _changes = [.. _uses.Select(rows => rows.Any(row => row.Meaning is DescriptorMeaning.Food))];
        // No descriptor begins with a word that is learnt later.
        _longest = new byte[Words.All.Count];
        foreach (Descriptor row in Descriptor.All)
        {
            ushort[] ids = Learn(row.Words);
            _longest[ids[0]] = Math.Max(_longest[ids[0]], (byte)ids.Length);
        }
        _between = [.. UnclearName.All.Select(unclear => Enumerable.Range(0,
            foods.Count).Where(i => unclear.Between.Contains(foods[i].Id)).ToArray())];
        for (int i = 0; i < UnclearName.All.Count; i++)
            _names.Set(Learn(UnclearName.All[i].Name), -1 - i);
        // First what follows from a name, then the names themselves, so that a name stands before what follows from another. Later rows
        // win: a layer's names stand before those of what it covers.
        for (int i = 0; i < foods.Count; i++)
        {
            foreach (string name in NamesOf(foods[i]))
                LearnTurned(name, i);
        }
        for (int i = 0; i < foods.Count; i++)
        {
            foreach (string name in NamesOf(foods[i]))
                LearnRange(name, i);
        }
        for (int i = 0; i < foods.Count; i++)
        {
            foreach (string name in NamesOf(foods[i]))
                _names.Set(Learn(name), i);
        }
    }

    public NameWords Words { get; } = new();

    public Ingredient Food(int target) => _foods[target];

    /// <summary>The longest descriptor that begins with a word, in words; 0 where none does.</summary>
    public int LongestFrom(ushort word) => word < _longest.Length ? _longest[word] : 0;

    public bool TryGetUse(ReadOnlySpan<ushort> words, out int use) => _phrases.TryGet(words, out use);

    public Descriptor[] Use(int use) => _uses[use];

    /// <summary>The food of a sequence of words as an index from 0, or an unclear name as -1 and below.</summary>
    public bool TryGetName(ReadOnlySpan<ushort> words, out int target) => _names.TryGet(words, out target);

    /// <summary>The foods of this table that an unclear name means.</summary>
    public int[] FoodsOf(int unclear) => _between[unclear];

    /// <summary>Whether a descriptor may be dropped for some food.</summary>
    public bool CanDrop(int use) => _canDrop[use];

    /// <summary>Whether a descriptor changes some food.</summary>
    public bool Changes(int use) => _changes[use];

    /// <summary>The first row of a descriptor that is meant for a food.</summary>
    public Descriptor? RowFor(int use, int target)
    {
        // Worked out for all foods when the descriptor is first met. Two threads may both do it, to the same end.
        Descriptor?[] rows = _rowOf[use] ??= [.. _foods.Select(food => Array.Find(_uses[use], row => row.IsOf(food)))];
        return rows[target];
    }

    private static IEnumerable<string> NamesOf(Ingredient food) => food.Aliases.Select(alias => alias.Text).Append(food.Name);

    private ushort[] Learn(string name) => Plain(Tokens(name));

    private NameToken[] Tokens(string name)
    {
        Span<NameToken> tokens = stackalloc NameToken[NameWords.MostTokens];
        int count = Words.Read(name, tokens, learn: true);
        return count < 0 ? throw new InvalidOperationException($"The name '{name}' is too long.") : tokens[..count].ToArray();
    }

    private static ushort[] Plain(ReadOnlySpan<NameToken> tokens)
    {
        List<ushort> ids = [];
        foreach (NameToken token in tokens)
        {
            if (token.Id != 0)
                ids.Add(token.Id);
        }
        return [.. ids];
    }

    /// <summary>A name with commas read from behind ("sugar, granulated" is granulated sugar), and a percentage before or behind.</summary>
    private void LearnTurned(string name, int food)
    {
        NameToken[] tokens = Tokens(name);
        if (Array.Exists(tokens, token => token.Kind is NameTokenKind.Comma))
        {
            List<ushort[]> parts = [];
            int from = 0;
            for (int i = 0; i <= tokens.Length; i++)
            {
                if (i < tokens.Length && tokens[i].Kind is not NameTokenKind.Comma)
                    continue;
                parts.Add(Plain(tokens.AsSpan(from..i)));
                from = i + 1;
            }
            LearnUnlessKnown([.. parts.AsEnumerable().Reverse().SelectMany(part => part)], food);
            LearnUnlessKnown([.. parts.Skip(1).SelectMany(part => part), .. parts[0]], food);
        }
        ushort[] words = Plain(tokens);
        int percent = Array.IndexOf(words, Words.PercentId);
        if (percent == words.Length - 1 && percent >= 2)
            LearnUnlessKnown([.. words[^2..], .. words[..^2]], food);
        else if (percent == 1 && words.Length > 2)
            LearnUnlessKnown([.. words[2..], .. words[..2]], food);
        // "glucose syrup DE 42"
        if (words.Length > 2 && Words.All[words[^1]] == "de" && char.IsAsciiDigit(Words.All[words[^2]][0]))
            LearnUnlessKnown([.. words[..^2], words[^1], words[^2]], food);
    }

    /// <summary>
    /// "dark chocolate 60-69 % cocoa" is what 64 % is, and each of the others, unless another food has that figure in its name.
    /// </summary>
    private void LearnRange(string name, int food)
    {
        ReadOnlySpan<ushort> words = Learn(name);
        int percent = words.IndexOf(Words.PercentId);
        if (percent < 3 || !int.TryParse(Words.All[words[percent - 2]], NumberStyles.None, CultureInfo.InvariantCulture, out int low)
            || !int.TryParse(Words.All[words[percent - 1]], NumberStyles.None, CultureInfo.InvariantCulture, out int high) || high > 100)
            return;
        ReadOnlySpan<ushort> stem = words[..(percent - 2)];
        for (int figure = low; figure <= high; figure++)
        {
            ReadOnlySpan<ushort> said = Learn(figure.ToString(CultureInfo.InvariantCulture) + "%");
            LearnUnlessKnown([.. stem, .. said], food);
            LearnUnlessKnown([.. said, .. stem], food);
        }
    }

    private void LearnUnlessKnown(ushort[] words, int food)
    {
        if (!_names.TryGet(words, out int known) || known < 0)
            _names.Set(words, food);
    }
}
