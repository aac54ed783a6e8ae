using System.Globalization;
using Confectio.Cards;
using Confectio.Text;

namespace Confectio.Vetting;

/// <summary>A file that was judged, for a report: its path and what was found in it, be it a card, a table of measures or one of temperatures.</summary>
public sealed class VettedFile
{
    private VettedFile(string path, IReadOnlyList<ReportResult> results) => (Path, Results) = (path, results);

    /// <summary>The path as it was given, which is how the report names it.</summary>
    public string Path { get; }

    /// <summary>How many findings it has that are more than notes, what could not be read counted in.</summary>
    public int Mistakes => Results.Count(result => result.Severity != FindingSeverity.Note);

    internal IReadOnlyList<ReportResult> Results { get; }

    /// <summary>A card.</summary>
    /// <param name="path">The path of its file, relative to the folder that the report is about.</param>
    /// <param name="verdict">What was found on it.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is blank.</exception>
    public static VettedFile Of(string path, CardVerdict verdict) => new(Checked(path),
        [.. Guard.NotNull(verdict).Findings.Select(finding => new ReportResult("card/" + finding.Issue.ToCode(), finding.Severity, finding.Place.Line, finding.Place.Column, finding.Place.Length,
            finding.Explanation, finding.Cause, finding.Expected, finding.ProbabilityRight)), .. Unread(verdict.Problems)]);

    /// <summary>A table of measures.</summary>
    /// <param name="path">The path of its file, relative to the folder that the report is about.</param>
    /// <param name="verdict">What was found in it.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is blank.</exception>
    public static VettedFile Of(string path, TableVerdict verdict) => new(Checked(path),
        [.. Guard.NotNull(verdict).Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful).Select(row => new ReportResult(ReportRules.TableRow,
            row.Verdict == Verdict.Doubtful ? FindingSeverity.Note : FindingSeverity.Error, row.Line, row.Column, 0, $"{row.Ingredient}: {row.Explanation}", row.Reason?.ToCode(),
            row.ExpectedGrams is { } grams ? string.Create(CultureInfo.InvariantCulture, $"{grams.Likely:0.#} g ({grams.Low:0.#} to {grams.High:0.#} g)") : "", row.ProbabilityRight)), .. Unread(verdict.Problems)]);

    /// <summary>A table of temperatures.</summary>
    /// <param name="path">The path of its file, relative to the folder that the report is about.</param>
    /// <param name="verdict">What was found in it.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is blank.</exception>
    public static VettedFile Of(string path, TemperatureVerdict verdict) => new(Checked(path),
        [.. Guard.NotNull(verdict).Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful).Select(row => new ReportResult(ReportRules.TableTemperature,
            row.Verdict == Verdict.Doubtful ? FindingSeverity.Note : FindingSeverity.Error, row.Line, 1, 0, $"{row.What}: {row.Explanation}", row.Reason?.ToCode(),
            row.ExpectedCelsius is double celsius ? string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C") : "", null)), .. Unread(verdict.Problems)]);

    /// <summary>A file of which nothing could be read.</summary>
    /// <param name="path">The path of the file, relative to the folder that the report is about.</param>
    /// <param name="problems">Why.</param>
    /// <exception cref="ArgumentNullException">An argument or a problem is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is blank.</exception>
    public static VettedFile OfUnread(string path, IReadOnlyList<Problem> problems)
    {
        string named = Checked(path);
        foreach (Problem problem in Guard.NotNull(problems))
            Guard.NotNull(problem, nameof(problems));
        return new VettedFile(named, [.. Unread(problems)]);
    }

    /// <summary>The path, and how many findings.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Path}: {Results.Count} {(Results.Count == 1 ? "finding" : "findings")}");

    private static string Checked(string path) => string.IsNullOrWhiteSpace(Guard.NotNull(path)) ? throw new ArgumentException($"{nameof(path)} is blank; the path of a file was expected.", nameof(path)) : path;

    // What nobody read is not known to be right.
    private static IEnumerable<ReportResult> Unread(IReadOnlyList<Problem> problems) => problems.Select(problem => new ReportResult(ReportRules.Unread, FindingSeverity.Warning, problem.Line,
        Math.Max(1, problem.Character), 0, problem.Message, null, "", null));
}

/// <summary>A finding in the words of a report.</summary>
internal sealed record ReportResult(string Rule, FindingSeverity Severity, int Line, int Column, int Length, string Message, string? Cause, string Expected, double? ProbabilityRight);

/// <summary>The rules of a report: those of cards, of tables, and what could not be read.</summary>
internal static class ReportRules
{
    public const string TableRow = "table/row", TableTemperature = "table/temperature", Unread = "unread";

    public static IReadOnlyList<(string Id, string Name, string Help)> All { get; } =
    [
        .. Enum.GetValues<CardIssue>().Select(issue => ("card/" + issue.ToCode(), issue.ToString(), issue.ToHelp())),
        (TableRow, "TableRow", "A row of a conversion table is wrong by the density of its food, in the cups that the whole table speaks for."),
        (TableTemperature, "TableTemperature", "The two scales of a row of a temperature table do not fit, or a figure is none that its process can have."),
        (Unread, "Unread", "Something could not be read, so that nobody knows whether it is right."),
    ];
}
