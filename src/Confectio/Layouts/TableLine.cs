namespace Confectio.Layouts;

/// <summary>One row of a document, in cells.</summary>
internal readonly record struct TableLine(int Line, TableCell[] Cells)
{
    public TableCell this[int index] => index >= 0 && index < Cells.Length ? Cells[index] : new TableCell(Line, 1, "");

    /// <summary>
    /// What was wrong with the line itself, such as a quotation mark that is not closed; <see langword="null"/> where nothing was.
    /// </summary>
    public string? Flaw { get; init; }

    /// <summary>Whether any cell holds a number.</summary>
    public bool HasDigit => Cells.Any(cell => cell.HasDigit);

    /// <summary>How many cells hold anything.</summary>
    public int Filled => Cells.Count(cell => !cell.IsBlank);
}
