namespace Confectio.Ingredients.Names;

/// <summary>A descriptor where it stands in a name.</summary>
/// <param name="Use">Which descriptor.</param>
/// <param name="First">Its first token.</param>
/// <param name="Count">How many tokens.</param>
/// <param name="CanDrop">Whether it may be dropped for some food.</param>
internal readonly record struct NameUse(int Use, int First, int Count, bool CanDrop);

/// <summary>What a reading of a name came to.</summary>
/// <param name="Miss">Why there is no food.</param>
/// <param name="From">The first token of what stood in the way; -1 where nothing did.</param>
/// <param name="To">Its last token.</param>
internal readonly record struct NameReading(NameMiss Miss, int From, int To)
{
    /// <summary>The food.</summary>
    public int? Target { get; init; }

    /// <summary>The uses that were dropped, a bit each.</summary>
    public uint Dropped { get; init; }

    public Packing? Packing { get; init; }

    /// <summary>Which unclear name.</summary>
    public int Unclear { get; init; }

    /// <summary>The foods of a name that means several.</summary>
    public int[]? Between { get; init; }

    public static NameReading None(NameMiss miss) => new(miss, -1, -1);

    public static NameReading OfTwo(int one, int other) => OfSeveral([one, other]);

    public static NameReading OfSeveral(ReadOnlySpan<int> foods) => new(NameMiss.TwoNames, -1, -1) { Between = foods.ToArray() };
}
