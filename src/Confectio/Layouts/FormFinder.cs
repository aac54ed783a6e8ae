using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>
/// Finds how the cells of a text are set apart: by the sign with which it has a heading, or columns that hold one thing each.
/// </summary>
internal static class FormFinder
{
    private const int Sample = 80;

    private static readonly DocumentForm[] s_forms = [DocumentForm.Tab, DocumentForm.Bar, DocumentForm.Semicolon, DocumentForm.Comma,
        DocumentForm.Blanks];

    public static DocumentForm Find(string text)
    {
        // A heading that is understood settles it.
        (DocumentForm Form, double Score) best = (DocumentForm.Typed, 0);
        foreach (DocumentForm form in s_forms)
        {
            TableLine[] rows = [.. DocumentLines.Of(text, form).Where(line => line.Filled > 0).Take(Sample)];
            double score = Score(rows, form);
            if (score > best.Score)
                best = (form, score);
        }
        return best.Form;
    }

    private static double Score(TableLine[] rows, DocumentForm form)
    {
        for (int i = 0; i < Math.Min(rows.Length, 30); i++)
        {
            ReadOnlySpan<TableLine> rest = rows.AsSpan(i, Math.Min(40, rows.Length - i));
            if (rows[i].Filled >= 2 && ColumnPlan.FromHeading(rest, AmountReading.DecimalPoint, default) is { } plan)
                return 2 + plan.Headings.Count(heading => heading.Role is not ColumnRole.Unread) - plan.UnreadHeadings.Count() * 0.25;
        }
        // Without a heading, every line has the same cells and each cell one thing.
        TableLine[] full = [.. rows.Where(row => row.Filled >= 2)];
        if (form == DocumentForm.Blanks || full.Length < 2 || full.Length * 10 < rows.Length * 7)
            return 0;
        int most = full.GroupBy(row => row.Cells.Length).Max(lengths => lengths.Count());
        return most * 10 >= full.Length * 8 && ColumnPlan.FromContent(full, AmountReading.DecimalPoint, default) is not null ? 1 : 0;
    }
}
