namespace Confectio.Troubles;

/// <summary>What the figures say of a cause.</summary>
public enum TroubleStanding
{
    /// <summary>All that its figure may be is past where the rule begins.</summary>
    SpeaksFor,

    /// <summary>Some of what its figure may be is past it.</summary>
    InDoubt,

    /// <summary>Nothing that its figure may be is past it.</summary>
    SpeaksAgainst,

    /// <summary>No figure of it is known: it is neither likely nor unlikely.</summary>
    CannotBeTold,
}
