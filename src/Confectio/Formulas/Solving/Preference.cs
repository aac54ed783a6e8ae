namespace Confectio.Formulas.Solving;

/// <summary>What decides between formulas that do equally well.</summary>
public enum Preference
{
    /// <summary>The targets come first, as well as they can be met; then the least change from the base.</summary>
    TargetsFirst,

    /// <summary>Closeness to the base is traded against the targets of the last priority.</summary>
    ClosenessTraded,

    /// <summary>The targets come first; then the least cost; among equal costs the least change from the base.</summary>
    LeastCost,
}
