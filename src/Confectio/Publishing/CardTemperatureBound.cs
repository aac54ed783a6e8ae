namespace Confectio.Publishing;

/// <summary>What the figure of a temperature means.</summary>
public enum CardTemperatureBound
{
    /// <summary>That temperature.</summary>
    None,

    /// <summary>That temperature or more.</summary>
    AtLeast,

    /// <summary>That temperature or less.</summary>
    AtMost,
}
