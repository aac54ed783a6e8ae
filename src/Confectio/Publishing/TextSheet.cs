using System.Globalization;
using System.Text;

namespace Confectio.Publishing;

/// <summary>A sheet as plain text: tables in aligned columns, lists with a bullet. No line that may be read back is broken.</summary>
internal static class TextSheet
{
    private const int Width = 96;

    public static string Write(Sheet sheet)
    {
        StringBuilder text = new();
        text.Append(SafeText.Of(sheet.Title)).Append('\n');
        Wrap(text, SafeText.Of(sheet.Lead), "");
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
                Wrap(text, SafeText.Of(words.Text), "  ");
                break;
            case SheetBlock.Items items:
                for (int i = 0; i < items.All.Count; i++)
                {
                    string bullet = items.IsOrdered ? string.Create(CultureInfo.InvariantCulture, $"  {i + 1}. ") : "  - ";
                    Wrap(text, SafeText.Of(items.All[i]), bullet, items.AreLines ? int.MaxValue : Width);
                }
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
            Wrap(text, SafeText.Of(table.Caption), "  ");
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

    // What goes on below stands under what began.
    private static void Wrap(StringBuilder text, string words, string indent, int width = Width)
    {
        if (words.Length == 0)
            return;
        text.Append(indent);
        int column = indent.Length;
        foreach (string word in words.Split(' '))
        {
            if (column > indent.Length)
            {
                bool fits = column + 1 + word.Length <= width;
                text.Append(fits ? " " : "\n" + new string(' ', indent.Length));
                column = fits ? column + 1 : indent.Length;
            }
            text.Append(word);
            column += word.Length;
        }
        text.Append('\n');
    }
}
