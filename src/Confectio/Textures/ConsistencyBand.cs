namespace Confectio.Textures;

/// <summary>How an icing stands or runs, the stiffest first.</summary>
public enum ConsistencyBand
{
    /// <summary>Peaks stand: flowers, borders.</summary>
    Stiff,

    /// <summary>Peaks curl over: writing, stars.</summary>
    Medium,

    /// <summary>Peaks fall: spreading, outlines.</summary>
    Soft,

    /// <summary>It runs together: filling in, pouring.</summary>
    Flood,
}
