using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;

namespace Confectio.Layouts;

/// <summary>One row of a table as it was read: which food, how much of it by which measure, and what it is said to weigh.</summary>
public sealed class TableEntry
{
    private readonly Amount _measure;

    internal TableEntry(TableCell place, string name, Amount measure, Packing? packing, TableFigure[] figures, string? section)
    {
        Line = place.Line;
        Column = place.Column;
        Name = name;
        _measure = measure;
        Packing = packing;
        Figures = figures;
        Section = section;
    }

    /// <summary>The line of the document, counted from 1.</summary>
    public int Line { get; }

    /// <summary>The character of the line at which the weight stands, counted from 1.</summary>
    public int Column { get; }

    /// <summary>The food as printed.</summary>
    public string Name { get; }

    /// <summary>The measure.</summary>
    public Amount Measure => _measure;

    /// <summary>The measure where it stands.</summary>
    internal ref readonly Amount MeasureInPlace => ref _measure;

    /// <summary>The packing that the row states apart from the name; <see langword="null"/> where it states none.</summary>
    public Packing? Packing { get; }

    /// <summary>
    /// The line without a number above the row, which may be the heading of a section: "granulated" below "Sugars" is granulated sugar;
    /// <see langword="null"/> where there is none.
    /// </summary>
    public string? Section { get; }

    /// <summary>
    /// What a heaped, rounded or scant measure, or a pinch, is taken for; <see langword="null"/> where the measure is level.
    /// </summary>
    internal RoughMeasure? Rough { get; init; }

    /// <summary>The weights, in the order in which they are printed; at least one.</summary>
    internal TableFigure[] Figures { get; }

    /// <summary>The row in one line, such as <c>line 4: 1 cup honey = 340 g</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"line {Line}: {Measure} {Name} = {string.Join(" = ", Figures)}");
}
