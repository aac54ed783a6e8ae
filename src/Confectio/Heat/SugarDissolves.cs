namespace Confectio.Heat;

/// <summary>How much of the crystalline sucrose of a mix dissolves in its water by the time it has landed. Dissolving cools.</summary>
public enum SugarDissolves
{
    /// <summary>As much as the water of the whole mix holds at the final temperature. What is dissolved already stays so.</summary>
    AsMuchAsCan,

    /// <summary>All, whether or not the water can hold it.</summary>
    All,

    /// <summary>None: the mix is used before it has had the time, or the sugar is shut off by fat.</summary>
    None,
}
