namespace Confectio.Layouts;

/// <summary>The unit in which a table prints a weight.</summary>
internal enum FigureUnit
{
    /// <summary>No unit stands with the figure, nor over its column, nor anywhere in the document.</summary>
    None,

    Gram,

    Kilogram,

    Ounce,

    Pound,

    /// <summary>A volume, where a table gives one beside the measure.</summary>
    Millilitre,
}
