using System.Text;

namespace Confectio.Publishing;

/// <summary>Rows as comma-separated values (RFC 4180). What a spreadsheet would work out is made a text.</summary>
internal static class SheetCsv
{
    public static string Write(IEnumerable<string[]> rows)
    {
        StringBuilder csv = new();
        foreach (string[] row in rows)
        {
            for (int i = 0; i < row.Length; i++)
            {
                if (i > 0)
                    csv.Append(',');
                Cell(csv, row[i]);
            }
            csv.Append('\n');
        }
        return csv.ToString();
    }

    private static void Cell(StringBuilder csv, string raw)
    {
        string text = SafeText.Of(raw);
        if (text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '|' or '%' or '＝' or '＋' or '－' or '＠')
            text = "'" + text;
        if (text.AsSpan().IndexOfAny(",\"\n;") < 0 && text == text.Trim())
            csv.Append(text);
        else
            csv.Append('"').Append(text.Replace("\"", "\"\"", StringComparison.Ordinal)).Append('"');
    }
}
