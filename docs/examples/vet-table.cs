// Judges printed conversion tables, whatever their layout: which cup each uses, which rows are wrong, and what probably happened.
//
//   dotnet run docs/examples/vet-table.cs FILE... [--system auto|us-customary|us-labelling|metric|australian|imperial|japanese|decilitre]
//                                         [--kind volume|temperature] [--decimal auto|point|comma] [--format text|json|github|msbuild] [--json]
//
// FILE is a file, a folder of files, or - for the standard input.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;
using Confectio.Vetting;

const string Compared = "Only the two units were compared: whether a temperature is right or safe for its food was not.";
const string EggGuidance = "the published household guidance for dishes that contain egg is 160 °F (71 °C), read with a food thermometer; a lower temperature "
    + "needs a time with it, which a table of two units does not state. Local codes and licensed practice come first.";

Cli cli = new("vet-table.cs", "Judges printed conversion tables in any layout: files, folders, or - for the standard input. Exit status: 0 every row was read whole "
    + "and none is wrong; 1 a row is wrong, could not be read, or holds bytes that are no text; 2 bad usage, a file that cannot be read, a table of which no row could "
    + "be, or an answer that could not be written.");
Argument<string[]> fileWords = cli.Words("FILE");
Option<MeasuringSystem?> systemOption = cli.Choice("--system", null, MeasuringSystem.All.Select(known => (known.Key, (MeasuringSystem?)known)).Prepend(("auto", null)));
Option<string> kind = cli.Choice("--kind", "volume", ("volume", "volume"), ("temperature", "temperature"));
Option<AmountReading?> readingOption = cli.ReadingOrAuto();
Option<string> format = cli.Choice("--format", "text", ("text", "text"), ("json", "json"), ("github", "github"), ("msbuild", "msbuild"));
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string form = options.GetValue(json) ? "json" : options.GetRequiredValue(format);
    string[] files = [.. options.GetRequiredValue(fileWords).SelectMany(Shell.Files)];
    if (files.Length == 0)
        return Shell.Fail("the folder has no file.");
    Page page = new();
    JsonArray documents = [];
    List<string> unreadable = [];
    int status = 0;
    foreach (string file in files)
    {
        (bool readable, bool mistakes, IReadOnlyList<Problem> problems) = (false, false, []);
        try
        {
            byte[] bytes = Shell.Bytes(file);
            string name = file == "-" ? "standard input" : Path.GetFileName(file);
            JsonObject document;
            if (options.GetValue(kind) == "temperature")
            {
                using StreamReader table = new(new MemoryStream(bytes));
                TemperatureVerdict verdict = TemperatureTableVetter.Vet(table, IngredientTable.BuiltIn, options.GetValue(readingOption) ?? AmountReading.DecimalPoint);
                (readable, mistakes, problems) = (verdict.IsReadable, verdict.HasMistakes, verdict.Problems);
                document = Json.Written(verdict.WriteTo);
                // What the verdict does not say of itself, in the same object.
                document["compared"] = Compared;
                if (verdict.NamesEgg)
                    document["caution"] = EggGuidance;
                if (form == "text")
                    PrintTemperatures(page, name, verdict);
                Annotate(page, form, file, verdict.Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful)
                    .Select(row => (row.Line, 1, row.Verdict == Verdict.Doubtful, row.Explanation)), problems);
            }
            else
            {
                TableVerdict verdict = ConversionTableVetter.Vet(bytes, IngredientTable.BuiltIn,
                    new VettingOptions { System = options.GetValue(systemOption), Reading = options.GetValue(readingOption) });
                (readable, mistakes, problems) = (verdict.IsReadable, verdict.HasMistakes, verdict.Problems);
                document = Json.Written(verdict.WriteTo);
                if (form == "text")
                    PrintMeasures(page, name, verdict);
                Annotate(page, form, file, verdict.Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible or Verdict.Doubtful)
                    .Select(row => (row.Line, row.Column, row.Verdict == Verdict.Doubtful, $"{row.Ingredient}: {row.Explanation}")), problems);
            }
            if (files.Length > 1)
                document.Insert(0, "file", file);
            documents.Add((JsonNode)document);
        }
        catch (Exception e) when (Shell.Expected(e))
        {
            unreadable.Add($"{file}: cannot be read ({Shell.Reason(e)})");
            continue;
        }
        // A row that nobody read is not known to be right.
        if (readable)
            status = Math.Max(status, mistakes || problems.Count > 0 ? 1 : 0);
        else
            unreadable.Add($"{file}: no row of it can be read ({(problems.Count == 0 ? "it has no row" : $"{problems[0]}{(problems.Count > 1 ? $"; {problems.Count - 1} more" : "")}")})");
    }
    string answer = form != "json" ? page.ToString() : documents.Count == 0 ? "" : files.Length > 1 ? documents.ToJsonString() + "\n" : Json.Text(documents[0]!.AsObject());
    if (answer.Length > 0 && Shell.Answer(answer, 0) is int failed and not 0)
        return failed;
    // Of a table that no row could be read of, the answer is what stood in the way; it is said where errors are said, too.
    return unreadable.Count == 0 ? status : Shell.Fail(string.Join('\n', unreadable));
});

// What an editor or a build shows at its place: what is wrong is an error, what is doubtful or could not be read a warning.
static void Annotate(Page page, string form, string file, IEnumerable<(int Line, int Column, bool IsDoubtful, string Sentence)> findings, IReadOnlyList<Problem> problems)
{
    if (form is not ("github" or "msbuild"))
        return;
    foreach ((int line, int column, bool warning, string code, string sentence) in findings
        .Select(row => (row.Line, row.Column, row.IsDoubtful, row.IsDoubtful ? "VET002" : "VET001", row.Sentence))
        .Concat(problems.Select(problem => (problem.Line, 1, true, "VET003", problem.Message))))
    {
        string level = warning ? "warning" : "error";
        page.Words(form == "msbuild" ? $"{Shell.Shown(file)}({line},{column}): {level} {code}: {Shell.Shown(sentence)}."
            : $"::{level} file={Escaped(file).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal)},line={line},col={column},title={code}::{Escaped(Shell.Shown(sentence))}.");
    }
}

static string Escaped(string text) => text.Replace("%", "%25", StringComparison.Ordinal).Replace("\r", "%0D", StringComparison.Ordinal).Replace("\n", "%0A", StringComparison.Ordinal);

static void PrintMeasures(Page page, string file, TableVerdict verdict)
{
    int wrong = verdict.Count(Verdict.Wrong) + verdict.Count(Verdict.Impossible), rows = verdict.Rows.Count;
    page.Line($"{file}: {rows} {Rows(rows)}, {wrong} wrong, {verdict.Count(Verdict.Doubtful)} doubtful, {verdict.Count(Verdict.Agrees)} agree, {verdict.Count(Verdict.Unknown)} unknown, {verdict.Problems.Count} could not be read whole");
    if (verdict.Layout.Length > 0)
        page.Line($"{verdict.Layout}");
    if (verdict.System is not null)
        page.Line($"Measuring system: {verdict.System}");
    if (verdict.RoundingGrid.Length > 0)
        page.Line($"The figures are rounded to {verdict.RoundingGrid}.");
    void Section(string title, Func<Verdict, bool> isOf) => page.Section($"\n{title}", verdict.Rows.Where(row => isOf(row.Verdict)).SelectMany(row => (string[])
    [
        $"  line {row.Line,-4} {row.Amount} {row.Ingredient}{(row.Packing is Packing stated ? $", {stated.ToWord()}" : "")} = {Number(row.PrintedGrams)} g{(row.Verdict == Verdict.Unknown ? "" : $"   right: {Percent(row.ProbabilityRight)}")}",
        $"            {row.Explanation}.",
    ]));
    Section("Wrong", kind => kind is Verdict.Wrong or Verdict.Impossible);
    Section("Doubtful", kind => kind == Verdict.Doubtful);
    page.Section("\nCould not be read whole", verdict.Problems.Select(problem => $"  {problem}"));
    Section("Unknown", kind => kind == Verdict.Unknown);

    RowFinding[] agree = [.. verdict.Rows.Where(row => row.Verdict == Verdict.Agrees)];
    if (agree.Length == 0)
        return;
    int width = Math.Min(34, agree.Max(row => row.Ingredient.Length));
    page.Section("\nAgree", agree.Select(row =>
    {
        string shown = row.Ingredient.Length > width ? row.Ingredient[..(width - 1)] + "…" : row.Ingredient;
        string packing = row.ExpectedPacking is Packing assumed && row.Matched!.Densities.Count > 1 ? assumed.ToWord() : "";
        string expected = row.ExpectedGrams is { } grams ? $"{Number(grams.Likely),9}   {Number(grams.Low)} to {Number(grams.High)}" : $"{"-",9}";
        return $"  {row.Line,-5} {shown.PadRight(width)}  {row.Amount,-12} {Number(row.PrintedGrams),9} {expected}  {packing}".TrimEnd();
    }).Prepend($"  {"line",-5} {"ingredient".PadRight(width)}  {"measure",-12} {"printed",9} {"likely",9}   low to high, g"));
}

static void PrintTemperatures(Page page, string file, TemperatureVerdict verdict)
{
    int rows = verdict.Rows.Count;
    page.Line($"{file}: {rows} {Rows(rows)}, {verdict.Count(Verdict.Wrong)} wrong, {verdict.Count(Verdict.Doubtful)} doubtful, {verdict.Count(Verdict.Agrees)} agree, {verdict.Count(Verdict.Unknown)} unknown, {verdict.Problems.Count} could not be read whole");
    foreach (Verdict kind in (Verdict[])[Verdict.Wrong, Verdict.Doubtful, Verdict.Unknown, Verdict.Agrees])
    {
        page.Section(kind == Verdict.Agrees ? "\nThe two units agree" : $"\n{kind}", verdict.Rows.Where(row => row.Verdict == kind).SelectMany(row =>
        {
            string printed = string.Join(" / ", new[] { row.Fahrenheit is double f ? $"{Number(f)} °F" : null, row.Celsius is double c ? $"{Number(c)} °C" : null }.OfType<string>());
            string line = $"  line {row.Line,-4} {row.What,-32} {printed}";
            return kind == Verdict.Agrees ? (string[])[line] : [line, $"            {row.Explanation}."];
        }));
    }
    page.Section("\nCould not be read whole", verdict.Problems.Select(problem => $"  {problem}"));
    page.Words($"\n{Compared}");
    if (verdict.NamesEgg)
        page.Words($"Caution: {EggGuidance}");
}

static string Rows(int count) => count == 1 ? "row" : "rows";

static string Number(double value) => value.ToString(Math.Abs(value) < 10 ? "0.##" : "0.#", CultureInfo.InvariantCulture);

static string Percent(double probability) => probability < 0.001 ? "under 0.1 %" : $"{probability * 100:0.0} %";
