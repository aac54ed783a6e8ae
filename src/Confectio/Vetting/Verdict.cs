namespace Confectio.Vetting;

/// <summary>What vetting says of a row.</summary>
public enum Verdict
{
    /// <summary>The row is more likely right than not.</summary>
    Agrees,

    /// <summary>The row is more likely wrong than right, but not surely enough to call it wrong.</summary>
    Doubtful,

    /// <summary>The row is wrong: among all rows called wrong, the expected share of mistakes is within the false-discovery rate.</summary>
    Wrong,

    /// <summary>No packing of this ingredient can weigh that, in any cup.</summary>
    Impossible,

    /// <summary>Nothing is known to judge the row by.</summary>
    Unknown,
}
