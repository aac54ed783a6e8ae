namespace Confectio.Cakes;

/// <summary>What is remarkable about a cake.</summary>
public enum CakeFindingKind
{
    /// <summary>The sizes in centimetres would be usual in inches: 8, 6 and 4 cm.</summary>
    SmallForCentimetres,

    /// <summary>The cake is so large that centimetres may have been read as inches.</summary>
    LargeForInches,

    /// <summary>A coat or a filling is thinner than can be spread, or thicker than stays up.</summary>
    UnusualThickness,

    /// <summary>A coat fills notches of the plan, as at the cleft of a heart.</summary>
    CoatFillsNotch,

    /// <summary>A sharp coat on a plan with notches: its volume is an upper bound.</summary>
    UpperBound,

    /// <summary>The turns of a swirl have no room at the sizes that are stated; the bead counts all the same.</summary>
    SwirlIsOverfull,

    /// <summary>A layer of cake would be thinner than can be cut.</summary>
    ThinLayers,

    /// <summary>A border is so wide that its middle has nowhere to run: nothing of it is counted.</summary>
    BorderHasNoRoom,
}
