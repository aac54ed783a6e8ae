namespace Confectio.Layouts;

/// <summary>What the cells of a column say.</summary>
internal enum ColumnRole
{
    /// <summary>Nothing that is known; the column is not read, and the layout says so.</summary>
    Unread,

    /// <summary>Notes, row numbers, sources: known to be beside the matter.</summary>
    Note,

    /// <summary>The name of the food.</summary>
    Name,

    /// <summary>A measure with its unit, such as <c>1 cup</c>.</summary>
    Measure,

    /// <summary>A number whose unit stands over the column or in a column of its own.</summary>
    Quantity,

    /// <summary>The unit of <see cref="Quantity"/>.</summary>
    QuantityUnit,

    /// <summary>A weight.</summary>
    Mass,

    /// <summary>The unit of <see cref="Mass"/>.</summary>
    MassUnit,

    /// <summary>A weight of the measure that stands over the column.</summary>
    MassOfMeasure,

    /// <summary>A number of the measure that stands over the column in a weight that stands there too, as in "cups per pound".</summary>
    MeasuresPerMass,

    /// <summary>The packing.</summary>
    Packing,
}
