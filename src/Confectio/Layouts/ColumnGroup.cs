using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>A column of weights: where it stands, in which unit, and of which measure and packing where those stand over it.</summary>
internal readonly record struct MassColumn(int Column, FigureUnit Unit, int UnitColumn, Amount? Measure,
    FigureUnit SecondUnit = FigureUnit.None, Packing? Packing = null);

/// <summary>The columns that together make a row; a sheet printed in two halves side by side has two groups.</summary>
internal sealed class ColumnGroup
{
    /// <summary>The food; -1 where it stands in the measure's cell, or over the columns.</summary>
    public int Name { get; set; } = -1;

    /// <summary>The measure with its unit.</summary>
    public int Measure { get; set; } = -1;

    /// <summary>A bare number of <see cref="QuantityUnit"/>.</summary>
    public int Quantity { get; set; } = -1;

    /// <summary>The unit of the numbers, as 1 of it; or the column that has it.</summary>
    public Amount? QuantityUnit { get; set; }

    public int QuantityUnitColumn { get; set; } = -1;

    public int Packing { get; set; } = -1;

    /// <summary>Weights of the row's measure.</summary>
    public List<MassColumn> Masses { get; } = [];

    /// <summary>Weights of the measure over the column: each makes a row.</summary>
    public List<MassColumn> OfMeasure { get; } = [];

    /// <summary>Numbers of a measure in a weight: "cups per pound".</summary>
    public List<MassColumn> PerMass { get; } = [];

    /// <summary>Foods that stand over the columns, with the unit of their weights.</summary>
    public List<(int Column, string Name)> Across { get; } = [];

    public bool IsUsable => Across.Count > 0 ? Measure >= 0 || Quantity >= 0
        : (Name >= 0 || Measure >= 0) && Masses.Count + OfMeasure.Count + PerMass.Count > 0;
}
