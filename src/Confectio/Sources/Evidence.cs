namespace Confectio.Sources;

/// <summary>
/// What kind of knowledge a figure is. Only <see cref="Measured"/>, <see cref="Compiled"/> and <see cref="Fitted"/> figures were read in a
/// publication.
/// </summary>
public enum Evidence
{
    /// <summary>A measurement that its own publication reports.</summary>
    Measured,

    /// <summary>A published table or standard that gathers the figures of others, or defines them.</summary>
    Compiled,

    /// <summary>Worked out from other published figures by a stated equation.</summary>
    Computed,

    /// <summary>The value of a published equation fitted to measurements.</summary>
    Fitted,

    /// <summary>A judgement made for this library; no publication stands behind it.</summary>
    Estimated,

    /// <summary>What the trade does everywhere and no single publication owns.</summary>
    CommonPractice,

    /// <summary>A handbook figure written down from memory and not verified. Never to be presented as published.</summary>
    FromMemory,
}
