namespace Confectio.Vetting;

/// <summary>One of the figures of a row of a table.</summary>
public enum RowFigure
{
    /// <summary>The measure: the cup or the spoon.</summary>
    Measure,

    /// <summary>The mass by which the row is judged.</summary>
    Mass,

    /// <summary>The second mass, such as ounces beside grams.</summary>
    SecondMass,

    /// <summary>The third mass, such as one in a bracket beside the measure.</summary>
    ThirdMass,
}
