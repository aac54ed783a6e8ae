using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>
/// What was found in several files, in the forms that builds and editors read: SARIF 2.1.0 (OASIS), lines of <c>file(line,column)</c>, and
/// workflow commands that annotate a change.
/// </summary>
/// <remarks>
/// Paths stand as they were given: relative ones are relative references with each part percent-encoded (RFC 3986), absolute ones file URIs.
/// Control characters, those that turn the direction of text, and halves of characters are shown as U+FFFD in every form: a name on a card
/// writes no line of a log. Columns count UTF-16 code units from 1.
/// </remarks>
public sealed class VettingReport
{
    private readonly IReadOnlyList<VettedFile> _files;

    private VettingReport(IReadOnlyList<VettedFile> files) => _files = files;

    /// <summary>The files, in the order given.</summary>
    public IReadOnlyList<VettedFile> Files => _files;

    /// <summary>Whether any file has a finding that is more than a note.</summary>
    public bool HasMistakes => _files.Any(file => file.Mistakes > 0);

    /// <summary>A report of files.</summary>
    /// <param name="files">The files.</param>
    /// <exception cref="ArgumentNullException"><paramref name="files"/> or one of them is null.</exception>
    public static VettingReport Of(IEnumerable<VettedFile> files)
    {
        VettedFile[] all = [.. Guard.NotNull(files)];
        foreach (VettedFile file in all)
            Guard.NotNull(file, nameof(files));
        return new VettingReport(all);
    }

    /// <summary>
    /// The report as a SARIF log, version 2.1.0: one run with its rules, a result for each finding at its place, columns in UTF-16 code
    /// units.
    /// </summary>
    /// <returns>The JSON, indented, with line feeds on every machine.</returns>
    public string ToSarif() => IndentedJson.Write(Write) + "\n";

    /// <summary>
    /// The findings a line each as <c>file(line,column): error code: message</c>, which builds and editors turn into places; a note is
    /// <c>info</c>.
    /// </summary>
    /// <returns>The lines, each ended by a line feed; empty where nothing was found.</returns>
    public string ToBuildLines()
    {
        StringBuilder lines = new();
        foreach ((VettedFile file, ReportResult result) in Results())
        {
            string level = result.Severity switch { FindingSeverity.Error => "error", FindingSeverity.Warning => "warning", _ => "info" };
            lines.Append(VisibleText.Of(file.Path)).Append(CultureInfo.InvariantCulture, $"({Math.Max(1, result.Line)},{Math.Max(1, result.Column)}): {level} {result.Rule.Replace('/', '-')}: ").Append(VisibleText.Of(result.Message)).Append('\n');
        }
        return lines.ToString();
    }

    /// <summary>
    /// The findings as workflow commands, <c>::error file=...,line=...,col=...,title=...::message</c>, which annotate the lines of a change.
    /// </summary>
    /// <returns>The commands, each ended by a line feed; empty where nothing was found.</returns>
    public string ToWorkflowCommands()
    {
        StringBuilder lines = new();
        foreach ((VettedFile file, ReportResult result) in Results())
        {
            string level = result.Severity switch { FindingSeverity.Error => "error", FindingSeverity.Warning => "warning", _ => "notice" };
            int column = Math.Max(1, result.Column);
            lines.Append("::").Append(level).Append(" file=").Append(Property(file.Path)).Append(CultureInfo.InvariantCulture, $",line={Math.Max(1, result.Line)},col={column}");
            if (result.Length > 0)
                lines.Append(CultureInfo.InvariantCulture, $",endColumn={column + result.Length}");
            lines.Append(",title=").Append(Property(result.Rule)).Append("::").Append(Data(result.Message)).Append('\n');
        }
        return lines.ToString();
    }

    /// <summary>How many files, and how many findings.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{_files.Count} files, {_files.Sum(file => file.Results.Count)} findings");

    private IEnumerable<(VettedFile File, ReportResult Result)> Results() => _files.SelectMany(file => file.Results.Select(result => (file, result)));

    // ---- SARIF 2.1.0; the numbers are those of its sections ----

    private void Write(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json");
        writer.WriteString("version", "2.1.0");
        writer.WriteStartArray("runs");
        writer.WriteStartObject();
        // 3.18, 3.19, 3.49: the tool, its driver, its rules
        writer.WriteStartObject("tool");
        writer.WriteStartObject("driver");
        writer.WriteString("name", "Confectio");
        writer.WriteStartArray("rules");
        foreach ((string id, string name, string help) in ReportRules.All)
        {
            writer.WriteStartObject();
            writer.WriteString("id", id);
            writer.WriteString("name", name);
            WriteText(writer, "shortDescription", First(help));
            WriteText(writer, "fullDescription", help);
            WriteText(writer, "help", help);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteEndObject();
        writer.WriteEndObject();
        // 3.14.17
        writer.WriteString("columnKind", "utf16CodeUnits");
        // 3.14.15, 3.24: every file that was looked at, found wrong or not
        writer.WriteStartArray("artifacts");
        foreach (VettedFile file in _files)
        {
            writer.WriteStartObject();
            writer.WriteStartObject("location");
            writer.WriteString("uri", Uri(file.Path));
            writer.WriteEndObject();
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteStartArray("results");
        for (int i = 0; i < _files.Count; i++)
        {
            foreach (ReportResult result in _files[i].Results)
                Write(writer, result, Uri(_files[i].Path), i);
        }
        writer.WriteEndArray();
        writer.WriteEndObject();
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, ReportResult result, string uri, int artifact)
    {
        // 3.27
        writer.WriteStartObject();
        writer.WriteString("ruleId", result.Rule);
        writer.WriteNumber("ruleIndex", IndexOf(result.Rule));
        writer.WriteString("level", result.Severity switch { FindingSeverity.Error => "error", FindingSeverity.Warning => "warning", _ => "note" });
        WriteText(writer, "message", VisibleText.Of(result.Message));
        writer.WriteStartArray("locations");
        writer.WriteStartObject();
        writer.WriteStartObject("physicalLocation");
        writer.WriteStartObject("artifactLocation");
        writer.WriteString("uri", uri);
        writer.WriteNumber("index", artifact);
        writer.WriteEndObject();
        // 3.30: a region begins at line 1 at least; where no line is known the file is meant.
        if (result.Line > 0)
        {
            writer.WriteStartObject("region");
            writer.WriteNumber("startLine", result.Line);
            writer.WriteNumber("startColumn", Math.Max(1, result.Column));
            if (result.Length > 0)
                writer.WriteNumber("endColumn", Math.Max(1, result.Column) + result.Length);
            writer.WriteEndObject();
        }
        writer.WriteEndObject();
        writer.WriteEndObject();
        writer.WriteEndArray();
        if (result.Cause is not null || result.Expected.Length > 0 || result.ProbabilityRight is not null)
        {
            writer.WriteStartObject("properties");
            if (result.Cause is not null)
                writer.WriteString("cause", result.Cause);
            if (result.Expected.Length > 0)
                writer.WriteString("expected", VisibleText.Of(result.Expected));
            if (result.ProbabilityRight is double right)
                writer.WriteNumber("probabilityRight", Math.Round(right, 4));
            writer.WriteEndObject();
        }
        writer.WriteEndObject();
    }

    private static void WriteText(Utf8JsonWriter writer, string name, string text)
    {
        writer.WriteStartObject(name);
        writer.WriteString("text", text);
        writer.WriteEndObject();
    }

    private static int IndexOf(string rule)
    {
        for (int i = 0; i < ReportRules.All.Count; i++)
        {
            if (ReportRules.All[i].Id == rule)
                return i;
        }
        return -1;
    }

    private static string First(string help) => help.IndexOf(". ", StringComparison.Ordinal) is > 0 and int end ? help[..(end + 1)] : help;

    /// <summary>A relative reference of a relative path, a file URI of an absolute one; each part percent-encoded.</summary>
    internal static string Uri(string path)
    {
        string plain = path.Replace('\\', '/');
        bool drive = plain.Length > 2 && plain[1] == ':' && plain[2] == '/' && char.IsAsciiLetter(plain[0]);
        string parts = string.Join('/', plain.Split('/').Select((part, i) => i == 0 && drive ? part : System.Uri.EscapeDataString(VisibleText.Of(part))));
        return drive ? "file:///" + parts : plain.StartsWith("//", StringComparison.Ordinal) ? "file:" + parts : plain.StartsWith('/') ? "file://" + parts : parts;
    }

    private static string Data(string text) => VisibleText.Of(text).Replace("%", "%25", StringComparison.Ordinal).Replace("\r", "%0D", StringComparison.Ordinal).Replace("\n", "%0A", StringComparison.Ordinal);

    private static string Property(string text) => Data(text).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}
