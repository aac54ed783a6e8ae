namespace Confectio.Vetting;

/// <summary>What vetting says of a row.</summary>
public enum Verdict
{
    /// <summary>The row is more likely right than not, and lies within what was expected of it.</summary>
    Agrees,

    /// <summary>
    /// The row is more likely wrong than right, or lies outside what was expected of it, but not surely enough to call it wrong.
    /// </summary>
    Doubtful,

    /// <summary>The row is wrong: among all rows called wrong, the expected share of mistakes is within the false-discovery rate.</summary>
    Wrong,

    /// <summary>No packing of this ingredient can weigh that, in any cup.</summary>
    Impossible,

    /// <summary>Nothing is known to judge the row by.</summary>
    Unknown,
}
