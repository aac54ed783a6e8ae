using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>What the lines above and beside a table say of all of it: the unit of its weights, the measure they are of.</summary>
internal readonly record struct TableTitle(FigureUnit Unit, Amount? Measure)
{
    public TableTitle With(string line) => new(
        Unit == FigureUnit.None ? WordUnit(line) : Unit,
        Measure ?? ColumnHeading.MeasureIn(line));

    // A lone g in a sentence is no unit of a table; "(g)", "in grams" are.
    private static FigureUnit WordUnit(string line)
    {
        string lower = line.ToLowerInvariant();
        return lower.Contains("gram", StringComparison.Ordinal) || lower.Contains("(g)", StringComparison.Ordinal)
            ? lower.Contains("ounces", StringComparison.Ordinal) ? FigureUnit.None : FigureUnit.Gram
            : lower.Contains("ounces", StringComparison.Ordinal) || lower.Contains("(oz)", StringComparison.Ordinal) ? FigureUnit.Ounce
                : FigureUnit.None;
    }
}
