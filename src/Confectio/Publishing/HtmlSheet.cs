using System.Text;
using Confectio.Text;

namespace Confectio.Publishing;

/// <summary>
/// A sheet as a whole HTML document: one article, tables with captions and heads, no script and nothing from elsewhere. Whatever was handed
/// in is text.
/// </summary>
internal static class HtmlSheet
{
    private const int ShortRows = 24;

    public static string Write(Sheet sheet)
    {
        StringBuilder html = new(8192);
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n<title>");
        Text(html, sheet.Title);
        html.Append("</title>\n<style>\n").Append(SheetStyle.Css).Append("</style>\n</head>\n<body>\n<main>\n<article>\n<h1>");
        Marked(html, sheet.Title);
        html.Append("</h1>\n");
        if (sheet.Lead.Length > 0)
            Element(html, "p class=\"lead\"", sheet.Lead);
        for (int i = 0; i < sheet.Sections.Count; i++)
        {
            SheetSection section = sheet.Sections[i];
            html.Append("<section aria-labelledby=\"s").Append(i + 1).Append(section.IsFramed ? "\" class=\"framed\">\n<h2 id=\"s" : "\">\n<h2 id=\"s").Append(i + 1).Append("\">");
            Marked(html, section.Title);
            html.Append("</h2>\n");
            foreach (SheetBlock block in section.Blocks)
                Write(html, block);
            html.Append("</section>\n");
        }
        return html.Append("</article>\n</main>\n</body>\n</html>\n").ToString();
    }

    private static void Write(StringBuilder html, SheetBlock block)
    {
        switch (block)
        {
            case SheetBlock.Words words:
                Element(html, "p", words.Text);
                break;
            case SheetBlock.Items items:
                html.Append(items.IsOrdered ? "<ol>\n" : "<ul>\n");
                foreach (string item in items.All)
                    Element(html, "li", item);
                html.Append(items.IsOrdered ? "</ol>\n" : "</ul>\n");
                break;
            case SheetBlock.Facts facts:
                html.Append("<dl>\n");
                foreach ((string term, string value) in facts.All)
                {
                    html.Append("<div><dt>");
                    Marked(html, term);
                    html.Append("</dt><dd>");
                    Marked(html, value);
                    html.Append("</dd></div>\n");
                }
                html.Append("</dl>\n");
                break;
            case SheetBlock.Table table:
                Write(html, table);
                break;
        }
    }

    private static void Write(StringBuilder html, SheetBlock.Table table)
    {
        // A short table stays on one page, a long one may not.
        string classes = $"{(table.Columns.Count > 4 ? "wide " : "")}{(table.Rows.Count <= ShortRows ? "short" : "")}".Trim();
        html.Append(classes.Length > 0 ? $"<table class=\"{classes}\">\n" : "<table>\n");
        if (table.Caption.Length > 0)
            Element(html, "caption", table.Caption);
        html.Append("<thead>\n<tr>");
        foreach (SheetColumn column in table.Columns)
        {
            html.Append(column.IsFigure ? "<th scope=\"col\" class=\"n\">" : "<th scope=\"col\">");
            Marked(html, column.Heading);
            html.Append("</th>");
        }
        html.Append("</tr>\n</thead>\n<tbody>\n");
        foreach (SheetCell[] row in table.Rows)
            Row(html, table, row);
        html.Append("</tbody>\n");
        if (table.Foot is not null)
        {
            html.Append("<tfoot>\n");
            Row(html, table, table.Foot);
            html.Append("</tfoot>\n");
        }
        html.Append("</table>\n");
    }

    private static void Row(StringBuilder html, SheetBlock.Table table, SheetCell[] row)
    {
        html.Append("<tr>");
        for (int i = 0; i < row.Length; i++)
        {
            html.Append(i == 0 ? "<th scope=\"row\"" : "<td");
            if (table.Columns[i].IsFigure)
                html.Append(" class=\"n\"");
            // On a narrow screen each cell says its own heading.
            if (i > 0 && row[i].Text.Length > 0)
            {
                html.Append(" data-h=\"");
                Text(html, table.Columns[i].Heading);
                html.Append('"');
            }
            html.Append('>');
            Marked(html, row[i].Text);
            if (row[i].Note.Length > 0)
            {
                html.Append(row[i].Text.Length > 0 ? " <small>" : "<small>");
                Marked(html, row[i].Note);
                html.Append("</small>");
            }
            html.Append(i == 0 ? "</th>" : "</td>");
        }
        html.Append("</tr>\n");
    }

    private static void Element(StringBuilder html, string tag, string text)
    {
        html.Append('<').Append(tag).Append('>');
        Marked(html, text);
        int end = tag.IndexOf(' ');
        html.Append("</").Append(end < 0 ? tag : tag[..end]).Append(">\n");
    }

    // What runs from right to left is set apart, so that the figures beside it stay where they are.
    private static void Marked(StringBuilder html, string text)
    {
        bool apart = SafeText.RunsLeft(text);
        html.Append(apart ? "<bdi>" : "");
        Text(html, text);
        html.Append(apart ? "</bdi>" : "");
    }

    private static void Text(StringBuilder html, string text) => html.AppendEscaped(SafeText.Of(text));
}
