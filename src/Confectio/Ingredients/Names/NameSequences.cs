namespace Confectio.Ingredients.Names;

/// <summary>Sequences of words by their numbers, each with a value; open addressing, nothing allocated to look one up.</summary>
internal sealed class NameSequences
{
    private int[] _places = new int[1024];
    private readonly List<(ulong Hash, int Start, int Length, int Value)> _entries = [];
    private readonly List<ushort> _pool = [];

    public int Count => _entries.Count;

    public bool TryGet(ReadOnlySpan<ushort> words, out int value)
    {
        int place = _places[Place(words, HashOf(words))];
        value = place == 0 ? 0 : _entries[place - 1].Value;
        return place != 0;
    }

    public void Set(ReadOnlySpan<ushort> words, int value)
    {
        if (_entries.Count * 2 >= _places.Length)
            Grow();
        ulong hash = HashOf(words);
        int place = Place(words, hash);
        if (_places[place] != 0)
        {
            _entries[_places[place] - 1] = _entries[_places[place] - 1] with { Value = value };
            return;
        }
        _entries.Add((hash, _pool.Count, words.Length, value));
        foreach (ushort word in words)
            _pool.Add(word);
        _places[place] = _entries.Count;
    }

    private void Grow()
    {
        _places = new int[_places.Length * 2];
        for (int i = 0; i < _entries.Count; i++)
        {
            int place = (int)(_entries[i].Hash >> 32) & _places.Length - 1;
            while (_places[place] != 0)
                place = place + 1 & _places.Length - 1;
            _places[place] = i + 1;
        }
    }

    private int Place(ReadOnlySpan<ushort> words, ulong hash)
    {
        int place = (int)(hash >> 32) & _places.Length - 1;
        while (_places[place] is int at and not 0 && !IsAt(at - 1, words, hash))
            place = place + 1 & _places.Length - 1;
        return place;
    }

    private bool IsAt(int entry, ReadOnlySpan<ushort> words, ulong hash)
    {
        (ulong known, int start, int length, _) = _entries[entry];
        return known == hash && length == words.Length
            && words.SequenceEqual(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_pool).Slice(start, length));
    }

    private static ulong HashOf(ReadOnlySpan<ushort> words)
    {
        ulong hash = 14695981039346656037;
        foreach (ushort word in words)
            hash = (hash ^ word) * 0x9E3779B97F4A7C15;
        return hash ^ hash >> 29;
    }
}
