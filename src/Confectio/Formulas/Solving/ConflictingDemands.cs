namespace Confectio.Formulas.Solving;

/// <summary>
/// Demands that cannot all be met, none of them superfluous: without any one of them the others can be. There may be other
/// conflicts besides. Where lines may be left out, it is so whichever of them are.
/// </summary>
public sealed class ConflictingDemands
{
    internal ConflictingDemands(IReadOnlyList<Demand> demands, IReadOnlyList<string> ends, IReadOnlyList<string> either)
    {
        Demands = demands;
        string whichever = either.Count == 0 ? "" : either.Count == 1 ? $", with {either[0]} or without"
            : $", whichever of {string.Join(", ", either.Take(either.Count - 1))} and {either[^1]} is left out";
        Sentence = (ends.Count == 1 ? $"{ends[0]} cannot be met"
            : $"{string.Join(", ", ends.Take(ends.Count - 1))} and {ends[^1]} cannot all be met") + whichever;
    }

    /// <summary>The demands.</summary>
    public IReadOnlyList<Demand> Demands { get; }

    /// <summary>The conflict in words, with the end of each demand that is to blame.</summary>
    public string Sentence { get; }

    /// <summary>The same as <see cref="Sentence"/>.</summary>
    public override string ToString() => Sentence;
}
