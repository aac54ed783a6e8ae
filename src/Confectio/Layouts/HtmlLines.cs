using System.Text;
using System.Text.RegularExpressions;
using AngleSharp;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Confectio.Text;

namespace Confectio.Layouts;

/// <summary>
/// The tables and the lines of an HTML page: cells with their spans of rows and columns, items of lists, paragraphs. Scripts, styles and
/// what a reader of the page does not see are no text. Nothing is fetched and nothing is run.
/// </summary>
internal static partial class HtmlLines
{
    private const int MostRows = 1000;

    private const int MostColumns = 64;

    private const int MostDepth = 256;

    private static readonly HtmlParser s_parser = new(new HtmlParserOptions { IsKeepingSourceReferences = true });

    public static bool LooksLike(string text) => Tag().IsMatch(text.AsSpan(0, Math.Min(text.Length, 64 * 1024)));

    /// <summary>
    /// Whether elements stand in one another deeper than any page has them; the parser would take time that grows with the square of it.
    /// </summary>
    public static bool IsTooDeep(string text)
    {
        int depth = 0;
        foreach (ValueMatch match in Opening().EnumerateMatches(text))
        {
            depth += text[match.Index + 1] == '/' ? -1 : 1;
            if (depth > MostDepth)
                return true;
            depth = Math.Max(depth, 0);
        }
        return false;
    }

    /// <summary>The blocks of a page, in order: rows of a table belong together, lines outside of tables too.</summary>
    public static IReadOnlyList<(bool IsTable, List<TableLine> Lines)> Of(string text)
    {
        using IHtmlDocument document = s_parser.ParseDocument(text);
        List<(bool, List<TableLine>)> blocks = [];
        Walk(document.Body ?? (INode)document, blocks);
        return blocks;
    }

    // A stack of our own: a page nested a million deep must not end the process.
    private static void Walk(INode root, List<(bool IsTable, List<TableLine> Lines)> blocks)
    {
        StringBuilder words = new();
        int line = 0, column = 0, at = 1;
        Stack<(INode? Node, bool Close)> open = new();
        open.Push((root, false));
        while (open.TryPop(out (INode? Node, bool Close) next))
        {
            if (next.Close)
            {
                Flush();
                continue;
            }
            INode node = next.Node!;
            if (node is IText characters)
            {
                Append(characters.Data, characters.ParentElement?.LocalName is "pre" or "textarea" or "code");
                continue;
            }
            if (node is IHtmlTableElement table)
            {
                Flush();
                blocks.Add((true, Rows(table)));
                continue;
            }
            if (node is not IElement element)
            {
                continue;
            }
            if (IsUnseen(element))
                continue;
            if (element.LocalName == "br")
            {
                Flush();
                at = element.SourceReference?.Position.Line ?? at;
                continue;
            }
            bool block = IsBlock(element.LocalName);
            if (block)
            {
                Flush();
                open.Push((null, true));
            }
            if (element.SourceReference is { } place)
            {
                at = place.Position.Line;
                if (words.Length == 0 || block)
                    (line, column) = (at, place.Position.Column);
            }
            for (INode? child = element.LastChild; child is not null; child = child.PreviousSibling)
                open.Push((child, false));
        }
        Flush();

        // A line break is a blank, but in text that keeps its lines. A line of text stands where its first word stands.
        void Append(string data, bool keepsLines)
        {
            string[] parts = data.Split('\n');
            for (int i = 0; i < parts.Length; i++)
            {
                if (i > 0)
                {
                    at++;
                    if (keepsLines)
                        Flush();
                }
                if (words.Length == 0 && parts[i].AsSpan().Trim().Length > 0 && at > line)
                    (line, column) = (at, 1);
                if (words.Length > 0 || parts[i].AsSpan().Trim().Length > 0)
                    words.Append(i > 0 ? " " : "").Append(parts[i]);
            }
        }

        void Flush()
        {
            string said = Squeezed(words.ToString());
            words.Clear();
            if (said.Length == 0)
                return;
            if (blocks.Count == 0 || blocks[^1].IsTable)
                blocks.Add((false, []));
            blocks[^1].Lines.Add(new TableLine(line, [new TableCell(line, column, said)]));
        }
    }

    private static List<TableLine> Rows(IHtmlTableElement table)
    {
        List<TableLine> lines = [];
        if (table.Caption is { } caption && Squeezed(caption.TextContent) is { Length: > 0 } title)
            lines.Add(new TableLine(LineOf(caption), [new TableCell(LineOf(caption), 1, title)]));
        Dictionary<int, (int Rows, TableCell Cell)> spans = [];
        foreach (IHtmlTableRowElement row in table.Rows)
        {
            List<TableCell> cells = [];
            int line = LineOf(row);
            foreach (IHtmlTableCellElement cell in row.Cells)
            {
                FillSpans(cells, spans, line);
                TableCell read = new(Math.Max(line, LineOf(cell)), Math.Max(1, cell.SourceReference?.Position.Column ?? 1),
                    Squeezed(Seen(cell)));
                int width = Math.Clamp(cell.ColumnSpan, 1, MostColumns), height = Math.Clamp(cell.RowSpan, 1, MostRows);
                for (int i = 0; i < width && cells.Count < MostColumns; i++)
                {
                    if (height > 1)
                        spans[cells.Count] = (height - 1, read);
                    cells.Add(i == 0 || IsHeading(row) ? read : read with { Text = "" });
                }
            }
            FillSpans(cells, spans, line);
            lines.Add(new TableLine(line, [.. cells]));
        }
        return lines;
    }

    private static void FillSpans(List<TableCell> cells, Dictionary<int, (int Rows, TableCell Cell)> spans, int line)
    {
        while (cells.Count < MostColumns && spans.TryGetValue(cells.Count, out (int Rows, TableCell Cell) span) && span.Rows > 0)
        {
            spans[cells.Count] = (span.Rows - 1, span.Cell);
            cells.Add(span.Cell with { Line = line });
        }
    }

    private static bool IsHeading(IHtmlTableRowElement row) => row.Cells.All(cell => cell.LocalName == "th");

    private static int LineOf(IElement element) => element.SourceReference?.Position.Line ?? 0;

    private static string Seen(IElement cell)
    {
        if (cell.ChildElementCount == 0)
            return cell.TextContent;
        StringBuilder words = new();
        Stack<INode> open = new();
        open.Push(cell);
        while (open.TryPop(out INode? node))
        {
            if (node is IText characters)
                words.Append(characters.Data);
            else if (node is IElement element && element.LocalName is "sup" && element.TextContent is { Length: <= 2 } mark
                && !mark.Contains('/'))
                words.Append(""); // the mark of a footnote
            else if (node is IElement { LocalName: "br" })
                words.Append(' ');
            else if (node is IElement seen && !IsUnseen(seen))
            {
                for (INode? child = seen.LastChild; child is not null; child = child.PreviousSibling)
                    open.Push(child);
            }
        }
        return words.ToString();
    }

    private static bool IsUnseen(IElement element) => element.LocalName is "script" or "style" or "template" or "noscript" or "svg"
        or "head" or "title" or "input" or "button" or "select" or "nav"
        || element.HasAttribute("hidden") || (element.GetAttribute("style") ?? "").Replace(" ", "",
            StringComparison.Ordinal).Contains("display:none", StringComparison.OrdinalIgnoreCase);

    private static bool IsBlock(string name) => name is "p" or "li" or "div" or "h1" or "h2" or "h3" or "h4" or "h5" or "h6" or "pre"
        or "ul" or "ol" or "section" or "article" or "header" or "footer" or "main"
        or "dt" or "dd" or "dl" or "tr" or "td" or "blockquote" or "figure" or "figcaption" or "hr" or "body" or "html" or "center"
            or "address" or "details" or "summary" or "label";

    private static string Squeezed(string text)
    {
        StringBuilder words = new(Math.Min(text.Length, LineGuard.LongestLine));
        bool blank = true;
        foreach (char c in text)
        {
            if (words.Length == LineGuard.LongestLine)
                break;
            bool space = char.IsWhiteSpace(c) || c is '\u200B' or '\uFEFF' or '\u00AD';
            if (!space)
                words.Append(c);
            else if (!blank)
                words.Append(' ');
            blank = space;
        }
        return words.ToString().Trim();
    }

    [GeneratedRegex(@"<(?:!doctype html|/?(?:html|body|table|t[rhd]|ul|ol|li|dl|d[td]|div|span|p|br|h[1-6]|pre)\b[^<>]{0,300}/?>)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Tag();

    // Those that a page may leave open, and those that hold nothing, do not add up.
    [GeneratedRegex(@"</?(?!(?:li|p|t[rdh]|thead|tbody|tfoot|d[dt]|br|hr|img|input|meta|link|col|colgroup|wbr|option|source|area|base|embed|track|param)\b)[a-z]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Opening();
}
