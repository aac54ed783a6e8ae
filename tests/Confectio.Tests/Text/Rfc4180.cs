namespace Confectio.Tests.Text;

/// <summary>A small reader and writer by the rules of RFC 4180, which share nothing with the library's own. No line breaks in fields.</summary>
internal static class Rfc4180
{
    public static string Write(IEnumerable<string[]> rows, char separator, string lineEnd) =>
        string.Concat(rows.Select(row => string.Join(separator, row.Select(field => Quote(field, separator))) + lineEnd));

    /// <summary>The rows by column name.</summary>
    public static List<Dictionary<string, string>> Read(TextReader text)
    {
        string[] header = Split(text.ReadLine()!);
        List<Dictionary<string, string>> rows = [];
        while (text.ReadLine() is string line)
            rows.Add(header.Zip(Split(line)).ToDictionary(pair => pair.First, pair => pair.Second));
        return rows;
    }

    private static string Quote(string field, char separator) =>
        field.Length == 0 || field.Contains(separator, StringComparison.Ordinal) || field.Contains('"', StringComparison.Ordinal)
            ? "\"" + field.Replace("\"", "\"\"", StringComparison.Ordinal) + "\""
            : field;

    private static string[] Split(string line)
    {
        List<string> fields = [];
        for (int at = 0; at <= line.Length;)
        {
            System.Text.StringBuilder field = new();
            if (at < line.Length && line[at] == '"')
            {
                for (at++; line[at] != '"' || (at + 1 < line.Length && line[at + 1] == '"'); at++)
                {
                    if (line[at] == '"')
                        at++;
                    field.Append(line[at]);
                }
                at++;
            }
            for (; at < line.Length && line[at] != ','; at++)
                field.Append(line[at]);
            at++;
            fields.Add(field.ToString());
        }
        return [.. fields];
    }
}
