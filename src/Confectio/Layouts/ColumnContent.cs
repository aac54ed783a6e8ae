using Confectio.Ingredients;
using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>How many cells of a column are what.</summary>
internal readonly record struct ColumnContent(int Filled, int Words, int Amounts, int Masses, int Numbers, int Packings, bool Counts)
{
    public bool Is(ColumnContents kind) => Filled > 0 && 10 * kind switch
    {
        ColumnContents.Words => Words,
        ColumnContents.Amount => Amounts,
        ColumnContents.Mass => Masses,
        ColumnContents.Number => Numbers,
        ColumnContents.Figure => Masses + Numbers,
        _ => Packings,
    } >= 6 * Filled;

    public static ColumnContent Of(ReadOnlySpan<TableLine> rows, int column, AmountReading reading)
    {
        int filled = 0, words = 0, amounts = 0, masses = 0, numbers = 0, packings = 0, next = 1;
        foreach (TableLine row in rows)
        {
            TableCell cell = row[column];
            if (cell.IsBlank || TableFigure.IsNone(cell.Text) || row.Filled < 2)
                continue;
            filled++;
            AmountReader reader = new(cell.Text, reading);
            if (reader.TryRead(out Amount amount) && (amount.IsVolume || amount.IsPiece))
                amounts++;
            else if (TableFigure.TryRead(cell, cell.Text, FigureUnit.None, reading, out TableFigure figure))
            {
                if (figure.Unit == FigureUnit.None)
                    numbers++;
                else
                    masses++;
                next += figure.Value == next ? 1 : 0;
            }
            else if (reader.Position > 0 && amount.IsMass && amount.PartCount > 0 && !amount.Equals(default))
                masses++;
            else if (PackingText.TryRead(cell.Text, out _))
                packings++;
            else
                words++;
        }
        // 1, 2, 3 ... number the rows.
        return new ColumnContent(filled, words + packings, amounts, masses, numbers, packings, next > filled && filled > 2);
    }
}
