using System.Globalization;
using System.Text;

namespace Confectio.Publishing;

/// <summary>A sheet in Markdown (CommonMark with the tables of GitHub). Whatever was handed in is text: it makes no link, no mark and no element.</summary>
internal static class MarkdownSheet
{
    public static string Write(Sheet sheet)
    {
        StringBuilder text = new();
        text.Append("# ").Append(Escaped(sheet.Title)).Append('\n');
        if (sheet.Lead.Length > 0)
            text.Append('\n').Append(Escaped(sheet.Lead)).Append('\n');
        foreach (SheetSection section in sheet.Sections)
        {
            text.Append("\n## ").Append(Escaped(section.Title)).Append('\n');
            foreach (SheetBlock block in section.Blocks)
            {
                text.Append('\n');
                Write(text, block, section.IsFramed ? "> " : "");
            }
        }
        return text.ToString();
    }

    /// <summary>Text that stands for itself in Markdown, on one line.</summary>
    public static string Escaped(string text)
    {
        string safe = SafeText.Of(text);
        StringBuilder escaped = new(safe.Length + 8);
        for (int i = 0; i < safe.Length; i++)
        {
            char c = safe[i];
            switch (c)
            {
                case '&':
                    escaped.Append("&amp;");
                    break;
                case '<':
                    escaped.Append("&lt;");
                    break;
                case '>':
                    escaped.Append("&gt;");
                    break;
                case '\\' or '`' or '*' or '_' or '{' or '}' or '[' or ']' or '|' or '~' or '$' or '^' or '@' or '#':
                    escaped.Append('\\').Append(c);
                    break;
                // What would become a link by itself.
                case ':' when i + 1 < safe.Length && safe[i + 1] == '/':
                case '.' when i >= 3 && safe.AsSpan(i - 3, 3).Equals("www", StringComparison.OrdinalIgnoreCase):
                // What would begin a list, a heading or a rule.
                case '-' or '+' or '=' when i == 0:
                    escaped.Append('\\').Append(c);
                    break;
                case '.' or ')' when i > 0 && (i + 1 == safe.Length || safe[i + 1] == ' ') && safe.AsSpan(0, i).IndexOfAnyExceptInRange('0', '9') < 0:
                    escaped.Append('\\').Append(c);
                    break;
                default:
                    escaped.Append(c);
                    break;
            }
        }
        return escaped.ToString();
    }

    private static void Write(StringBuilder text, SheetBlock block, string before)
    {
        switch (block)
        {
            case SheetBlock.Words words:
                text.Append(before).Append(Escaped(words.Text)).Append('\n');
                break;
            case SheetBlock.Items items:
                for (int i = 0; i < items.All.Count; i++)
                    text.Append(before).Append(CultureInfo.InvariantCulture, $"{(items.IsOrdered ? $"{i + 1}." : "-")} ").Append(Escaped(items.All[i])).Append('\n');
                break;
            case SheetBlock.Facts facts:
                foreach ((string term, string value) in facts.All)
                    text.Append(before).Append("- **").Append(Escaped(term)).Append(":** ").Append(Escaped(value)).Append('\n');
                break;
            case SheetBlock.Table table:
                if (table.Caption.Length > 0)
                    text.Append(Escaped(table.Caption)).Append("\n\n");
                Row(text, [.. table.Columns.Select(column => new SheetCell(column.Heading))]);
                text.Append('|').AppendJoin('|', table.Columns.Select(column => column.IsFigure ? "--:" : "---")).Append("|\n");
                foreach (SheetCell[] row in table.Rows)
                    Row(text, row);
                if (table.Foot is not null)
                    Row(text, table.Foot);
                break;
        }
    }

    private static void Row(StringBuilder text, SheetCell[] cells)
    {
        text.Append('|');
        foreach (SheetCell cell in cells)
            text.Append(' ').Append(Escaped(cell.Whole)).Append(" |");
        text.Append('\n');
    }
}
