namespace Confectio.Textures;

/// <summary>How a ganache or a coating behaves, the softest first.</summary>
public enum GanacheBody
{
    /// <summary>It runs: glaze, drip.</summary>
    Pourable,

    /// <summary>It is spread and piped.</summary>
    Pipeable,

    /// <summary>It is rolled or cut.</summary>
    Firm,
}
