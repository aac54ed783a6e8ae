namespace Confectio.Cakes;

/// <summary>The cross-section of a piped border.</summary>
public enum BorderKind
{
    /// <summary>A half round, flat side to the cake: π·b²/2·(P + 8b/3) for a width of 2b round a plan of perimeter P.</summary>
    HalfRound,

    /// <summary>
    /// A full round, such as beads piped in a line at the foot: π·b²·(P + 2π·b) for a width of 2b round a plan of perimeter P.
    /// </summary>
    FullRound,

    /// <summary>Shells, each taken as a half ball: two thirds of a half round where they touch.</summary>
    Shells,
}
