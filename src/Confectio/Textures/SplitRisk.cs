namespace Confectio.Textures;

/// <summary>How near a ganache is to parting into fat and water, the least first. The limits are estimates: none is printed.</summary>
public enum SplitRisk
{
    /// <summary>No more than usual.</summary>
    Low,

    /// <summary>It asks for care.</summary>
    Raised,

    /// <summary>More fat than its water is wont to hold.</summary>
    High,
}
