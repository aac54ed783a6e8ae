// Judges recipe cards and conversion tables, files and folders of them: measures against weights, temperatures, sums, percentages, stages, allergens.
//
//   dotnet run docs/examples/vet-card.cs PATH... [--system auto|us-customary|...] [--altitude 1600m] [--sarif FILE] [--format text|json|github|msbuild] [--json] [--github]
//
// PATH is a file, a folder of files, or - for the standard input. A .csv or .tsv is a table: of temperatures where its heading has fahrenheit or celsius, of measures elsewhere.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Confectio.Cards;
using Confectio.Examples;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;
using Confectio.Text;
using Confectio.Vetting;

Cli cli = new("vet-card.cs", "Judges recipe cards (text, Markdown, pages, structured recipe data, formulas) and conversion tables: files, folders, or - for the standard input. Exit status: 0 everything was "
    + "read and nothing is wrong; 1 something is wrong or could not be read; 2 bad usage, a file that cannot be read or holds neither a card nor a table, or an answer that could not be written. "
    + "That nothing is found does not say that a card is right or its food safe.");
Argument<string[]> pathWords = cli.Words("PATH");
Option<MeasuringSystem?> systemOption = cli.Choice("--system", null, MeasuringSystem.All.Select(known => (known.Key, (MeasuringSystem?)known)).Prepend(("auto", null)));
Option<AirPressure?> altitude = cli.Value<AirPressure?>("--altitude", "1600m", text => QuantityText.TryParseMetres(text, out double metres) && metres is >= AirPressure.MinimumMetres and <= AirPressure.MaximumMetres
    ? AirPressure.FromAltitudeMetres(metres) : throw new FormatException("an altitude from -500 m to 9000 m such as 1600m or 5200ft is expected."), null);
Option<string> sarif = cli.Text("--sarif", "FILE");
Option<string> format = cli.Choice("--format", "text", ("text", "text"), ("json", "json"), ("github", "github"), ("msbuild", "msbuild"));
Option<bool> json = cli.Flag("--json"), github = cli.Flag("--github");
return cli.Run(args, options =>
{
    string form = options.GetValue(json) ? "json" : options.GetValue(github) ? "github" : options.GetRequiredValue(format);
    string[] files = [.. options.GetRequiredValue(pathWords).SelectMany(Shell.Files)];
    if (files.Length == 0)
        return Shell.Fail("the folder has no file.");
    Page page = new();
    JsonArray documents = [];
    List<VettedFile> vetted = [];
    List<string> unreadable = [];
    foreach (string file in files)
    {
        string name = file == "-" ? "standard-input" : file;
        try
        {
            byte[] bytes = Shell.Bytes(file);
            JsonObject? document = null;
            if (IsTable(file))
            {
                string text = Encoding.UTF8.GetString(bytes), heading = text.TrimStart('\uFEFF', ' ', '\r', '\n').Split('\n')[0];
                if (heading.Contains("fahrenheit", StringComparison.OrdinalIgnoreCase) || heading.Contains("celsius", StringComparison.OrdinalIgnoreCase))
                {
                    TemperatureVerdict verdict = TemperatureTableVetter.Vet(new StringReader(text), IngredientTable.BuiltIn);
                    if (verdict.IsReadable)
                    {
                        vetted.Add(VettedFile.Of(name, verdict));
                        document = Json.Written(verdict.WriteTo);
                        Print(page, $"{Shell.Shown(name)}: {verdict.Rows.Count} temperatures", verdict.Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful)
                            .Select(row => (row.Line, 1, row.Verdict == Verdict.Doubtful ? "doubtful" : "wrong", $"{row.What}: {row.Explanation}")), verdict.Problems);
                    }
                    else
                        unreadable.Add(Why(name, verdict.Problems));
                }
                else
                {
                    TableVerdict verdict = ConversionTableVetter.Vet(bytes, IngredientTable.BuiltIn, new VettingOptions { System = options.GetValue(systemOption) });
                    if (verdict.IsReadable)
                    {
                        vetted.Add(VettedFile.Of(name, verdict));
                        document = Json.Written(verdict.WriteTo);
                        Print(page, $"{Shell.Shown(name)}: a table of {verdict.Rows.Count} rows{(verdict.System is null ? "" : $", {verdict.System}")}", verdict.Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful)
                            .Select(row => (row.Line, row.Column, row.Verdict == Verdict.Doubtful ? "doubtful" : "wrong", $"{row.Ingredient}: {row.Explanation}")), verdict.Problems);
                    }
                    else
                        unreadable.Add(Why(name, verdict.Problems));
                }
            }
            else
            {
                Reading<PrintedCard> reading = PrintedCard.Read(bytes, IngredientTable.BuiltIn, new CardReadingOptions { MeasuringSystem = options.GetValue(systemOption) });
                if (CardVetter.Vet(reading, new CardVettingOptions { System = options.GetValue(systemOption), Pressure = options.GetValue(altitude) }) is CardVerdict verdict)
                {
                    vetted.Add(VettedFile.Of(name, verdict));
                    document = Json.Written(verdict.WriteTo);
                    Print(page, $"{Shell.Shown(name)}: {verdict.Card}{(verdict.System is null ? "" : $"; {verdict.System}")}", verdict.Findings
                        .Select(finding => (finding.Place.Line, finding.Place.Column, finding.Severity == FindingSeverity.Note ? "doubtful" : "wrong",
                            $"{finding.Issue.ToCode()}: {finding.Explanation}{(finding.ProbabilityRight is double right ? string.Create(CultureInfo.InvariantCulture, $" (right: {(right < 0.001 ? "under 0.1 %" : $"{100 * right:0.0} %")})") : "")}")), verdict.Problems);
                    page.Section("  Not judged", verdict.NotJudged.Select(sentence => $"    {Shell.Shown(sentence)}"));
                }
                else
                    unreadable.Add(Why(name, reading.Problems));
            }
            if (document is not null)
            {
                document.Insert(0, "file", name);
                documents.Add((JsonNode)document);
            }
        }
        catch (Exception e) when (Shell.Expected(e))
        {
            unreadable.Add($"{Shell.Shown(name)}: cannot be read ({Shell.Reason(e)})");
        }
    }
    VettingReport report = VettingReport.Of(vetted);
    if (options.GetValue(sarif) is { Length: > 0 } log)
        Shell.Named($"{log}: cannot be written", () => { File.WriteAllText(log, report.ToSarif(), new UTF8Encoding(false)); return 0; });
    if (form == "text" && vetted.Count > 0)
        page.Words(CardVetter.Caution);
    string answer = form switch
    {
        "github" => report.ToWorkflowCommands(),
        "msbuild" => report.ToBuildLines(),
        "json" => documents.Count == 0 ? "" : documents.ToJsonString() + "\n",
        _ => page.ToString(),
    };
    if (answer.Length > 0 && Shell.Answer(answer, 0) is int failed and not 0)
        return failed;
    return unreadable.Count > 0 ? Shell.Fail(string.Join('\n', unreadable)) : report.HasMistakes ? 1 : 0;
});

static void Print(Page page, string title, IEnumerable<(int Line, int Column, string Word, string Sentence)> findings, IReadOnlyList<Problem> problems)
{
    page.Line($"{title}");
    (int Line, int Column, string Word, string Sentence)[] all = [.. findings];
    if (all.Length == 0)
        page.Line($"  nothing found");
    foreach ((int line, int column, string word, string sentence) in all)
        page.Line($"  line {line}, column {column}, {word}: {Shell.Shown(sentence)}");
    page.Section("  Could not be read", problems.Select(problem => $"    {Shell.Shown(problem.ToString())}"));
}

static string Why(string name, IReadOnlyList<Problem> problems) => $"{Shell.Shown(name)}: no card and no table can be read in it ({(problems.Count == 0 ? "it is empty" : problems[0])}{(problems.Count > 1 ? $"; {problems.Count - 1} more" : "")})";

static bool IsTable(string file) => Path.GetExtension(file).ToLowerInvariant() is ".csv" or ".tsv";
