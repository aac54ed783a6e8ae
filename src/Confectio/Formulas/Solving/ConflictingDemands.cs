namespace Confectio.Formulas.Solving;

/// <summary>
/// Demands that cannot all be met, none of them superfluous: without any one of them the others can be. There may be other
/// conflicts besides.
/// </summary>
public sealed class ConflictingDemands
{
    internal ConflictingDemands(IReadOnlyList<Demand> demands, IReadOnlyList<string> ends)
    {
        Demands = demands;
        Sentence = ends.Count == 1 ? $"{ends[0]} cannot be met"
            : $"{string.Join(", ", ends.Take(ends.Count - 1))} and {ends[^1]} cannot all be met";
    }

    /// <summary>The demands.</summary>
    public IReadOnlyList<Demand> Demands { get; }

    /// <summary>The conflict in words, with the end of each demand that is to blame.</summary>
    public string Sentence { get; }

    /// <summary>The same as <see cref="Sentence"/>.</summary>
    public override string ToString() => Sentence;
}
