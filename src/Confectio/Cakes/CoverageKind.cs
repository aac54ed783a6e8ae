namespace Confectio.Cakes;

/// <summary>What a part of the icing of a cake is for.</summary>
public enum CoverageKind
{
    /// <summary>A filling between two layers.</summary>
    Filling,

    /// <summary>The dam that holds a filling in.</summary>
    Dam,

    /// <summary>A coat.</summary>
    Coat,

    /// <summary>A piped border.</summary>
    Border,

    /// <summary>Rosettes or swirls.</summary>
    Pieces,

    /// <summary>A glaze: its pool and its drips.</summary>
    Drip,

    /// <summary>Cupcakes.</summary>
    Cupcakes,
}
