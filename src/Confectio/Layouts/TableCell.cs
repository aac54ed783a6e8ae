namespace Confectio.Layouts;

/// <summary>What stands in one place of a document: the text, without the blanks and marks round it, and where it starts.</summary>
internal readonly record struct TableCell(int Line, int Column, string Text)
{
    public bool IsBlank => Text.Length == 0;
}

/// <summary>One row of a document, in cells.</summary>
internal readonly record struct TableLine(int Line, TableCell[] Cells)
{
    public TableCell this[int index] => index >= 0 && index < Cells.Length ? Cells[index] : new TableCell(Line, 1, "");

    /// <summary>How many cells hold anything.</summary>
    public int Filled => Cells.Count(cell => !cell.IsBlank);
}
