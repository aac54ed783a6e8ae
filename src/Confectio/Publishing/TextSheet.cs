using System.Globalization;
using System.Text;

namespace Confectio.Publishing;

/// <summary>A sheet as plain text: tables in aligned columns, lists with a bullet. No sentence is broken over lines: who reads them again, or looks for one, finds it whole.</summary>
internal static class TextSheet
{
    public static string Write(Sheet sheet)
    {
        StringBuilder text = new();
        text.Append(SafeText.Of(sheet.Title)).Append('\n');
        if (sheet.Lead.Length > 0)
            text.Append(SafeText.Of(sheet.Lead)).Append('\n');
        foreach (SheetSection section in sheet.Sections)
        {
            text.Append('\n').Append(SafeText.Of(section.Title)).Append('\n');
            foreach (SheetBlock block in section.Blocks)
                Write(text, block);
        }
        return text.ToString();
    }

    private static void Write(StringBuilder text, SheetBlock block)
    {
        switch (block)
        {
            case SheetBlock.Words words:
                text.Append("  ").Append(SafeText.Of(words.Text)).Append('\n');
                break;
            case SheetBlock.Items items:
                for (int i = 0; i < items.All.Count; i++)
                    text.Append(CultureInfo.InvariantCulture, $"  {(items.IsOrdered ? $"{i + 1}." : "-")} ").Append(SafeText.Of(items.All[i])).Append('\n');
                break;
            case SheetBlock.Facts facts:
                int term = facts.All.Count == 0 ? 0 : Math.Min(32, facts.All.Max(fact => Length(SafeText.Of(fact.Term))));
                foreach ((string name, string value) in facts.All)
                    text.Append("  ").Append(Padded(SafeText.Of(name) + ":", term + 1, isRight: false)).Append(' ').Append(SafeText.Of(value)).Append('\n');
                break;
            case SheetBlock.Table table:
                Write(text, table);
                break;
        }
    }

    private static void Write(StringBuilder text, SheetBlock.Table table)
    {
        if (table.Caption.Length > 0)
            text.Append("  ").Append(SafeText.Of(table.Caption)).Append('\n');
        List<string[]> lines = [[.. table.Columns.Select(column => SafeText.Of(column.Heading))]];
        lines.AddRange(table.Rows.Select(row => row.Select(cell => SafeText.Of(cell.Whole)).ToArray()));
        if (table.Foot is not null)
            lines.Add([.. table.Foot.Select(cell => SafeText.Of(cell.Whole))]);
        int[] widths = [.. table.Columns.Select((_, i) => lines.Max(line => Length(line[i])))];
        for (int row = 0; row < lines.Count; row++)
        {
            StringBuilder line = new("  ");
            for (int i = 0; i < widths.Length; i++)
                line.Append(i > 0 ? "  " : "").Append(Padded(lines[row][i], widths[i], table.Columns[i].IsFigure));
            text.Append(line.ToString().TrimEnd()).Append('\n');
        }
    }

    private static string Padded(string text, int width, bool isRight)
    {
        string blanks = new(' ', Math.Max(0, width - Length(text)));
        return isRight ? blanks + text : text + blanks;
    }

    // As many as a reader sees: an accent that stands apart is part of its letter.
    private static int Length(string text) => System.Text.Ascii.IsValid(text) ? text.Length : new StringInfo(text).LengthInTextElements;
}
