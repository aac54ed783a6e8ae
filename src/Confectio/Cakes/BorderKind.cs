namespace Confectio.Cakes;

/// <summary>The cross-section of a piped border.</summary>
public enum BorderKind
{
    /// <summary>A half round, flat side to the cake: <see cref="PipedLine.HalfRoundMillilitres(CakeLength, CakeLength)"/>.</summary>
    HalfRound,

    /// <summary>
    /// A full round, such as beads piped in a line at the foot: <see cref="PipedLine.FullRoundMillilitres(CakeLength, CakeLength)"/>.
    /// </summary>
    FullRound,

    /// <summary>Shells, each taken as a half ball: <see cref="PipedLine.ShellsMillilitres"/>.</summary>
    Shells,
}
