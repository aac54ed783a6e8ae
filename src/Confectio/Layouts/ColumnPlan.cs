using System.Text;
using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>
/// Which column says what: from the headings first, and from what stands in the columns where the headings are unknown or missing.
/// </summary>
internal sealed class ColumnPlan
{
    private ColumnPlan(List<ColumnGroup> groups, int headingRows, ColumnHeading[] headings, TableCell[]? starts)
    {
        Groups = groups;
        HeadingRows = headingRows;
        Headings = headings;
        Starts = starts;
    }

    public List<ColumnGroup> Groups { get; }

    /// <summary>The cells of the heading, where it takes one row; by their places a row that lacks a cell is read.</summary>
    public TableCell[]? Starts { get; }

    /// <summary>Whether a row has a number where weights stand: then it is no heading.</summary>
    public bool HasWeight(TableLine row)
    {
        foreach (ColumnGroup group in Groups)
        {
            if (Any(group.Masses) || Any(group.OfMeasure) || Any(group.PerMass) || group.Across.Exists(food => row[food.Column].HasDigit))
                return true;
        }
        return false;

        bool Any(List<MassColumn> columns)
        {
            foreach (MassColumn column in columns)
            {
                // "1 cup" over a column is a heading, and stands where weights do.
                if (row[column.Column].HasDigit && !row[column.Column].Text.AsSpan().ContainsAnyInRange('a', 'z'))
                    return true;
            }
            return false;
        }
    }

    /// <summary>How many rows the heading takes; 0 where there is none.</summary>
    public int HeadingRows { get; }

    /// <summary>The headings; empty ones where there is no heading.</summary>
    public ColumnHeading[] Headings { get; }

    /// <summary>The headings of the columns that are not read.</summary>
    public IEnumerable<string> UnreadHeadings => Headings
        .Where((heading, column) => heading.Role is ColumnRole.Unread && heading.Text.Length > 0
            && !Groups.Exists(group => Reads(group, column)))
        .Select(heading => heading.Text);

    /// <summary>Whether a row is the start of a plan: a heading, over the rows that follow it.</summary>
    /// <param name="rows">The row and some that follow.</param>
    /// <param name="reading">The decimal mark.</param>
    /// <param name="title">What stands above the table.</param>
    public static ColumnPlan? FromHeading(ReadOnlySpan<TableLine> rows, AmountReading reading, TableTitle title)
    {
        if (rows.Length == 0 || rows[0].Filled < 2)
            return null;
        int length = HeadingLength(rows);
        if (length == 0)
            return null;
        int columns = Widest(rows);
        ColumnHeading[] headings = new ColumnHeading[columns];
        for (int column = 0; column < columns; column++)
        {
            StringBuilder text = new();
            for (int row = 0; row < length; row++)
            {
                string part = rows[row][column].Text;
                if (part.Length > 0 && (row == 0 || part != rows[row - 1][column].Text))
                    text.Append(text.Length > 0 ? " " : "").Append(part);
            }
            headings[column] = ColumnHeading.Read(text.ToString());
        }
        List<ColumnGroup> groups = GroupsOf(headings, length, rows[length..], reading, title);
        return groups.Count == 0 ? null : new ColumnPlan(groups, length, headings, length == 1 ? rows[0].Cells : null);
    }

    /// <summary>The plan of rows without a heading.</summary>
    public static ColumnPlan? FromContent(ReadOnlySpan<TableLine> rows, AmountReading reading, TableTitle title)
    {
        int columns = Widest(rows);
        if (columns < 2)
            return null;
        ColumnHeading[] headings = new ColumnHeading[columns];
        Array.Fill(headings, ColumnHeading.Read(""));
        List<ColumnGroup> groups = GroupsOf(headings, 0, rows, reading, title);
        return groups.Count == 0 ? null : new ColumnPlan(groups, 0, headings, null);
    }

    private static int Widest(ReadOnlySpan<TableLine> rows)
    {
        int columns = 0;
        foreach (TableLine row in rows)
            columns = Math.Max(columns, row.Cells.Length);
        return columns;
    }

    // A heading has no figure of its own but in "1 cup" and "½ cup", and says at least two things that are known, or the rows below it do.
    private static int HeadingLength(ReadOnlySpan<TableLine> rows)
    {
        if (!LooksLikeHeading(rows[0], out int known))
            return 0;
        if (rows.Length > 1 && rows[1].Filled > 0 && LooksLikeHeading(rows[1], out int more) && more == rows[1].Filled)
            return 2;
        return known >= 2 || (rows.Length > 1 && rows[1].HasDigit) ? 1 : 0;
    }

    private static bool LooksLikeHeading(TableLine row, out int known)
    {
        known = 0;
        foreach (TableCell cell in row.Cells)
        {
            if (cell.IsBlank)
                continue;
            // "1 cup = 250 ml   1 Tbsp = 15 ml" says what the measures are.
            if (IsStatement(cell))
                return false;
            ColumnHeading heading = ColumnHeading.Read(cell.Text);
            if (heading.Role != ColumnRole.Unread)
                known++;
            if (heading.Measure is null && cell.Text.AsSpan().IndexOfAnyInRange('0', '9') >= 0)
                return false;
        }
        // "1 cup" alone in a row of words is a measure, not a heading; two of them, or one beside a known word, are.
        return true;
    }

    /// <summary>Whether a cell says how large a measure is.</summary>
    public static bool IsStatement(TableCell cell) => cell.Text.Contains('=', StringComparison.Ordinal) && cell.HasDigit
        && cell.Text.AsSpan().TrimEnd(" .)").EndsWith("ml", StringComparison.OrdinalIgnoreCase);

    private static bool Reads(ColumnGroup group, int column) => group.Name == column || group.Measure == column || group.Quantity == column
        || group.QuantityUnitColumn == column || group.Packing == column
            || group.Masses.Exists(mass => mass.Column == column || mass.UnitColumn == column)
        || group.OfMeasure.Exists(mass => mass.Column == column) || group.PerMass.Exists(mass => mass.Column == column)
            || group.Across.Exists(food => food.Column == column);

    private static List<ColumnGroup> GroupsOf(ColumnHeading[] headings, int length, ReadOnlySpan<TableLine> rows, AmountReading reading,
        TableTitle title)
    {
        ColumnContent[] contents = new ColumnContent[headings.Length];
        for (int column = 0; column < headings.Length; column++)
            contents[column] = ColumnContent.Of(rows, column, reading);

        bool hasMass = headings.Any(heading => heading.Role == ColumnRole.Mass);
        // A group begins at each food; what stands before the first belongs to it.
        List<ColumnGroup> groups = [];
        ColumnGroup group = new();
        groups.Add(group);
        bool[] taken = new bool[headings.Length];
        for (int column = 0; column < headings.Length; column++)
        {
            ColumnHeading heading = headings[column];
            taken[column] = heading.Role != ColumnRole.Unread;
            switch (heading.Role)
            {
                case ColumnRole.Name when group.Name >= 0 && group.IsUsable:
                    groups.Add(group = new ColumnGroup { Name = column });
                    break;
                case ColumnRole.Name when group.Name < 0:
                    group.Name = column;
                    break;
                case ColumnRole.Measure when group.Measure < 0 && group.Quantity < 0:
                    if (contents[column].Is(ColumnContents.Number)
                        && (headings.Any(other => other.Role == ColumnRole.QuantityUnit) || length > 0 && contents[column].Amounts == 0))
                        group.Quantity = column;
                    else
                        group.Measure = column;
                    break;
                case ColumnRole.QuantityUnit when group.QuantityUnitColumn < 0:
                    group.QuantityUnitColumn = column;
                    break;
                case ColumnRole.MassUnit or ColumnRole.QuantityUnit when group.Masses.Count > 0:
                    group.Masses[^1] = group.Masses[^1] with { UnitColumn = column };
                    break;
                case ColumnRole.Quantity when group.Measure < 0 && group.Quantity < 0:
                    (group.Quantity, group.QuantityUnit) = (column, heading.Measure);
                    break;
                case ColumnRole.Mass:
                    group.Masses.Add(new MassColumn(column, heading.Unit, -1, null, heading.SecondUnit, heading.Packing));
                    break;
                case ColumnRole.MassOfMeasure when heading.IsBareUnit && hasMass && group.Measure < 0 && group.Quantity < 0:
                    (group.Quantity, group.QuantityUnit) = (column, heading.Measure);
                    break;
                case ColumnRole.MassOfMeasure when contents[column].Is(ColumnContents.Amount):
                    // "US cups" over "1½ cups".
                    if (group.Measure < 0)
                        group.Measure = column;
                    break;
                case ColumnRole.MassOfMeasure:
                    group.OfMeasure.Add(new MassColumn(column, heading.Unit, -1, heading.Measure));
                    break;
                case ColumnRole.MeasuresPerMass:
                    group.PerMass.Add(new MassColumn(column, heading.Unit, -1, heading.Measure));
                    break;
                case ColumnRole.Packing when heading.Packing is not null
                    && (contents[column].Is(ColumnContents.Number) || contents[column].Is(ColumnContents.Mass)):
                    group.Masses.Add(new MassColumn(column, FigureUnit.None, -1, null, FigureUnit.None, heading.Packing));
                    break;
                case ColumnRole.Packing when group.Packing < 0:
                    group.Packing = column;
                    break;
            }
        }

        // What the headings do not say, the columns do.
        bool across = group.Name < 0 && groups.Count == 1 && !hasMass && group.OfMeasure.Count == 0 && group.PerMass.Count == 0
            && (group.Measure >= 0 || group.Quantity >= 0 || contents[0].Is(ColumnContents.Amount));
        for (int column = 0; column < headings.Length; column++)
        {
            if (taken[column])
                continue;
            ColumnContent content = contents[column];
            if (content.Is(ColumnContents.Amount) && group.Measure < 0 && group.Quantity < 0)
                group.Measure = column;
            else if (across && length > 0 && headings[column].Text.Length > 0 && content.Is(ColumnContents.Figure))
                group.Across.Add((column, headings[column].Text));
            else if (content.Is(ColumnContents.Words) && group.Name < 0)
                group.Name = column;
            else if (content.Is(ColumnContents.Packing) && group.Packing < 0)
                group.Packing = column;
            else if (content.Is(ColumnContents.Mass) || (content.Is(ColumnContents.Number) && !content.Counts && !hasMass
                && group.Masses.Count == 0 && group.OfMeasure.Count == 0 && group.PerMass.Count == 0 && !across))
                group.Masses.Add(new MassColumn(column, FigureUnit.None, -1, null));
        }
        foreach (ColumnGroup other in groups)
        {
            // A column of units beside a column for each measure has the units of its weights.
            if (other.QuantityUnitColumn >= 0 && other.Quantity < 0 && other.Measure < 0)
            {
                for (int i = 0; i < other.OfMeasure.Count; i++)
                    other.OfMeasure[i] = other.OfMeasure[i] with { UnitColumn = other.QuantityUnitColumn };
            }
            // "Ingredient, Grams" under "Weight of one cup".
            if (other.Measure < 0 && other.Quantity < 0 && other.OfMeasure.Count == 0 && other.PerMass.Count == 0
                && (headings.FirstOrDefault(heading => heading.Role == ColumnRole.Name)?.Measure ?? title.Measure) is { } measure
                && !contents[Math.Max(other.Name, 0)].Is(ColumnContents.Amount))
            {
                other.OfMeasure.AddRange(other.Masses.Select(mass => mass with { Measure = measure }));
                other.Masses.Clear();
            }
        }
        groups.RemoveAll(candidate => !candidate.IsUsable);
        return groups;
    }
}
