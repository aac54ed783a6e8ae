namespace Confectio.Formulas.Solving;

/// <summary>What a demand asks for.</summary>
public enum DemandKind
{
    /// <summary>A share to be hit as well as possible.</summary>
    Target,

    /// <summary>A share that must be kept.</summary>
    Requirement,

    /// <summary>Grams of an ingredient that must be kept.</summary>
    Limit,

    /// <summary>The grams of an ingredient, given.</summary>
    Fixed,

    /// <summary>So many grams of one ingredient to a gram of another.</summary>
    Ratio,

    /// <summary>The total after boiling off.</summary>
    Total,

    /// <summary>Grams of water that may boil off.</summary>
    BoilOff,

    /// <summary>An ingredient is either left out or used within limits.</summary>
    Optional,
}
