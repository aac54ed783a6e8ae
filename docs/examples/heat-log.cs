// Judges a probe's log of a heated mix by every kinetic set that applies to its water activity, and by none that does not.
//
//   dotnet run docs/examples/heat-log.cs LOG.csv --formula FORMULA.json [--matter egg-white|egg-yolk|whole-egg] [--ph 8.2]
//       [--gap-seconds 90] [--unit celsius|fahrenheit] [--all] [--json]
//
// The log has a column minutes, seconds, time (h:mm:ss), mm:ss or h:mm, and a column celsius or fahrenheit. --unit confirms the unit where the log could be in the
// other one. Nothing is counted between readings farther apart than --gap-seconds. --ph of the mix, where it is known. --all shows every study and table.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Text;
using Confectio.Sugars;
using Confectio.Uncertainty;

Cli cli = new("heat-log.cs", "Judges a probe's log of a heated mix. Exit status: 0 judged; 1 no study applies; "
    + "2 bad usage, a file that cannot be read or used, a unit in doubt, or an answer that could not be written.");
Argument<string> fileWord = cli.Word("LOG.csv");
Option<string> formulaOption = cli.Text("--formula", "FORMULA.json", isNeeded: true);
Option<FoodMatrix> matter = cli.Choice("--matter", FoodMatrix.EggWhite,
    ("egg-white", FoodMatrix.EggWhite), ("egg-yolk", FoodMatrix.EggYolk), ("whole-egg", FoodMatrix.WholeEgg));
Option<double?> ph = cli.Number("--ph", "8.2"), gapSeconds = cli.Number("--gap-seconds", "90");
Option<TemperatureScale?> unit = cli.Choice<TemperatureScale?>("--unit", null, ("celsius", TemperatureScale.Celsius), ("fahrenheit", TemperatureScale.Fahrenheit));
Option<bool> all = cli.Flag("--all"), json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(fileWord), formulaFile = options.GetRequiredValue(formulaOption);
    return Shell.Named($"{file} with {formulaFile}", () =>
    {
        Formula formula = Formula.ReadJson(File.ReadAllBytes(formulaFile), IngredientTable.BuiltIn).OrThrow();
        using StreamReader text = new(file);
        ProbeLogOptions how = new() { ConfirmedScale = options.GetValue(unit), GapSeconds = options.GetValue(gapSeconds) ?? ProbeLog.DefaultGapSeconds };
        Reading<ProbeLog> reading = ProbeLog.Read(text, how);
        IReadOnlyList<Problem> problems = reading.Problems;
        if (!reading.TryGet(out ProbeLog? log))
            return Shell.Fail($"{file} cannot be used as a log:{string.Concat(problems.Select(problem => $" {problem};"))} --unit celsius or --unit fahrenheit confirms a unit");
        LethalityJudgement judgement = LethalityJudgement.Of(log, options.GetValue(matter), HeatedMix.WaterActivity(formula, Math.Clamp(log.MaximumCelsius, 0, 100)),
            options.GetValue(ph) is double stated ? new Spread(stated, stated, stated) : null);
        return Shell.Answer(options.GetValue(json) ? Document(judgement, problems) : Text(judgement, formula, problems, options.GetValue(all)), judgement.HasAnswer ? 0 : 1);
    });
});

static string Text(LethalityJudgement judgement, Formula formula, IReadOnlyList<Problem> problems, bool all)
{
    Page page = new();
    ProbeLog log = judgement.Log;
    page.Line($"{formula.Name}: {log.Readings.Count} readings over {log.Minutes:0.0} minutes, the hottest {log.MaximumCelsius:0.0} °C ({log.MaximumCelsius * 1.8 + 32:0.0} °F)");
    page.Words($"\n{judgement.Headline}");
    page.Section("\nMeasured time at or above", new (int Celsius, int Fahrenheit)[] { (60, 140), (63, 145), (71, 160) }.Select(step =>
        $"  {step.Celsius} °C ({step.Fahrenheit} °F)   {Minutes(log.MinutesAtOrAbove(step.Celsius), log.LongestMinutesAtOrAbove(step.Celsius))}"));
    HoldTime household = HoldTimeTable.Get("consumer-guidance").Rows[0];
    page.Line($"  The guidance to households, {household.Fahrenheit:0} °F ({household.Celsius:0.0} °C) for egg mixtures, was {(household.IsHeldBy(log) ? "reached" : "not reached")}. It is guidance and no study of such a mix.");
    page.Section($"\nGaps, longer than {log.GapSeconds:0.#} s, across which nothing is counted", log.Gaps.Select(gap => $"  {gap}"));
    page.Section("\nOdd in the log", problems.Where(problem => problem.Code != "gap").Select(problem => $"  {problem}"));
    page.Line($"\nWater activity {judgement.WaterActivity:0.000}: what is dissolved in the hot mix, by three models");
    string upTo = judgement.Ph.Low == judgement.Ph.High ? "" : $" to {judgement.Ph.High:0.0}";
    page.Line($"pH {judgement.Ph.Low:0.0}{upTo}{(judgement.IsPhStated ? "" : ": not stated, so that of fresh to stored egg is taken; acid such as cream of tartar lowers it")}");
    if (judgement.HasAnswer)
        page.Line($"The study: {judgement.Minimum!.Set.Provenance!.Note}");
    if (all)
        AddAll(page, judgement);
    else
        page.Line($"\n--all shows the other studies, why {judgement.Findings.Count(finding => !finding.Applies)} of {judgement.Findings.Count} were left out, and the printed tables.");
    page.Words($"\nCaution: {HeatCaution.Text}");
    return page.ToString();
}

static string Minutes(double? sum, double? longest) => sum is null ? "never" : FormattableString.Invariant($"{sum:0.0} min{(longest < sum - 0.05 ? $", the longest without a break {longest:0.0}" : "")}");

static void AddAll(Page page, LethalityJudgement judgement)
{
    page.Line($"\nWhat the studies say that apply, the lowest first");
    foreach (LethalityFinding finding in judgement.Findings.Where(finding => finding.Applies))
    {
        page.Line($"  {finding.LogText}   {finding.Set.Name}, {finding.Set.Organism}; {finding.Set.Provenance!.Source.ShortName}");
        if (finding.IsBeyondMeasured)
            page.Line($"    counted no further than {finding.Set.MeasuredLogs:0.#} log: {(finding.Set.IsMeasuredLogsAssumed ? "what the inoculum of such studies allows; the study itself was not read for it" : "as far as the study goes")}");
        page.Line($"    {finding.Set.Provenance.Note}");
    }
    if (!judgement.HasAnswer)
        page.Line($"  none");
    page.Line($"\nWhat was left out, and why");
    foreach (LethalityFinding finding in judgement.Findings.Where(finding => !finding.Applies))
        page.Line($"  {finding.Set.Name}: {finding.Why}");
    page.Line($"\nWhat printed tables ask, each for the product it names");
    foreach (HoldTimeTable table in HoldTimeTable.All)
    {
        IReadOnlyList<HoldTime> rows = table.RowsFor(judgement.Matter);
        if (rows.Count == 0)
            continue;
        page.Line($"  {table}");
        bool isFor = table.IsFor(judgement.WaterActivity);
        if (!isFor)
            page.Line($"    is not for a mix of this water activity: that its times were kept says nothing");
        foreach (HoldTime row in rows)
            page.Line($"    {(!isFor ? "" : row.IsHeldBy(judgement.Log) ? "reached and kept   " : "not kept in the log ")}{row}");
    }
}

static string Document(LethalityJudgement judgement, IReadOnlyList<Problem> problems) => Json.Text(new JsonObject
{
    ["headline"] = judgement.Headline,
    ["waterActivity"] = Json.Number(judgement.WaterActivity.Likely, 4),
    ["waterActivityLow"] = Json.Number(judgement.WaterActivity.Low, 4),
    ["waterActivityHigh"] = Json.Number(judgement.WaterActivity.High, 4),
    ["phLow"] = judgement.Ph.Low,
    ["phHigh"] = judgement.Ph.High,
    ["phStated"] = judgement.IsPhStated,
    ["gapSeconds"] = judgement.Log.GapSeconds,
    ["gaps"] = Json.Array(judgement.Log.Gaps, gap => new JsonObject
    {
        ["fromMinutes"] = Json.Number(gap.FromMinutes, 4), ["toMinutes"] = Json.Number(gap.ToMinutes, 4), ["seconds"] = Json.Number(gap.Seconds, 2),
    }),
    ["sets"] = Json.Array(judgement.Findings, OfSet),
    ["highestCelsius"] = Json.Number(judgement.Log.MaximumCelsius, 2),
    ["problems"] = Json.Array(problems, problem => problem.ToString()),
    ["caution"] = HeatCaution.Text,
});

static JsonObject OfSet(LethalityFinding finding)
{
    JsonObject set = new() { ["key"] = finding.Set.Key, ["applies"] = finding.Applies, ["why"] = finding.Why };
    // A set that does not apply has no number.
    if (finding.LogReduction is Spread logs)
    {
        set["logReduction"] = Json.Range(logs, 4);
        set["atLeast"] = finding.IsBeyondMeasured;
        set["text"] = finding.LogText;
        set["measuredLogs"] = finding.Set.MeasuredLogs;
        set["measuredLogsAssumed"] = finding.Set.IsMeasuredLogsAssumed;
        set["solute"] = finding.Set.Solute;
        set["note"] = finding.Set.Provenance!.Note;
    }
    return set;
}
