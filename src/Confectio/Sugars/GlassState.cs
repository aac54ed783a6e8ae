namespace Confectio.Sugars;

/// <summary>
/// How soft a boiled syrup may be at a temperature, by T − Tg. The steps of 10 and 20 K are from memory: sticky points are mostly found
/// there, and time counts too.
/// </summary>
public enum GlassState
{
    /// <summary>At Tg or below it: hard, brittle and dry to the touch, and crystals do not grow.</summary>
    Glass,

    /// <summary>Up to 10 K above: it may soften and lose its shape, and grains slowly.</summary>
    Softening,

    /// <summary>Above 10 to 20 K: it may stick to fingers and wrapper.</summary>
    Sticky,

    /// <summary>More than 20 K above: it may flow, as a caramel or a syrup does.</summary>
    Flowing,
}
