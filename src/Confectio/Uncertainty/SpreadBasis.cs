namespace Confectio.Uncertainty;

/// <summary>
/// What the interval of a <see cref="Spread"/> means, the surest first. Of two that are combined the result has the less sure one:
/// nothing is surer than the worst thing it was made from.
/// </summary>
public enum SpreadBasis
{
    /// <summary>Nothing is left open: the three numbers are one, or the value was taken as it was given.</summary>
    Exact,

    /// <summary>About 95 % of what a careful kitchen would find: likely ∓ 2u, or likely × e^∓2u.</summary>
    Coverage,

    /// <summary>From the lowest to the highest that the sources have, widened where they know it less well than they differ.</summary>
    Sources,

    /// <summary>From the lowest to the highest of several models, or of one model at the ends of what goes into it.</summary>
    Models,

    /// <summary>A factor that was judged: an estimate of how far off it may be.</summary>
    Judged,
}
