// Judges a probe's log of a heated mix by every kinetic set that applies to its water activity, and by none that does not.
//
//   dotnet run docs/examples/heat-log.cs LOG.csv --formula FORMULA.json [--matter egg-white|egg-yolk|whole-egg] [--ph 8.2]
//       [--gap-seconds 90] [--unit celsius|fahrenheit] [--all] [--json]
//
// The log has a column minutes, seconds, time (h:mm:ss), mm:ss or h:mm, and a column celsius or fahrenheit. --unit confirms the unit where the log could be in the
// other one. Nothing is counted between readings farther apart than --gap-seconds. --ph of the mix, where it is known. --all shows every study and table.
// Exit status: 0 judged, 1 no study applies, 2 bad usage, a file that cannot be read or used, a unit in doubt,
// or an answer that could not be written. Whatever is wrong is one line on the error stream.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Text;
using Confectio.Sugars;
using Confectio.Uncertainty;

const string Usage = "usage: heat-log.cs LOG.csv --formula FORMULA.json [--matter egg-white|egg-yolk|whole-egg] [--ph 8.2] [--gap-seconds 90] [--unit celsius|fahrenheit] [--all] [--json]";
string? file = null, formulaFile = null;
FoodMatrix matter = FoodMatrix.EggWhite;
bool json = false, all = false;
double? ph = null, gapSeconds = null;
TemperatureScale? unit = null;
for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    switch (args[i])
    {
        case "--json":
            json = true;
            break;
        case "--all":
            all = true;
            break;
        case "--ph" when double.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double acidity):
            ph = acidity;
            i++;
            break;
        case "--gap-seconds" when double.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double seconds):
            gapSeconds = seconds;
            i++;
            break;
        case "--unit" when value is "celsius" or "fahrenheit":
            unit = value == "celsius" ? TemperatureScale.Celsius : TemperatureScale.Fahrenheit;
            i++;
            break;
        case "--formula" when value is not null:
            formulaFile = value;
            i++;
            break;
        case "--matter" when value is "egg-white" or "egg-yolk" or "whole-egg":
            matter = value switch { "egg-white" => FoodMatrix.EggWhite, "egg-yolk" => FoodMatrix.EggYolk, _ => FoodMatrix.WholeEgg };
            i++;
            break;
        case [not '-', ..] when file is null:
            file = args[i];
            break;
        default:
            return Shell.Fail($"{args[i]}: not understood. {Usage}");
    }
}
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {Usage}");
if (file is null || formulaFile is null)
    return Shell.Fail(Usage);

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
StringWriter shown = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
Console.SetOut(shown);
LethalityJudgement judgement;
Formula formula;
IReadOnlyList<Problem> problems;
try
{
    formula = FormulaJson.Read(File.ReadAllBytes(formulaFile), IngredientTable.BuiltIn).OrThrow();
    using StreamReader text = new(file);
    Reading<ProbeLog> reading = ProbeLog.Read(text, new ProbeLogOptions { ConfirmedScale = unit, GapSeconds = gapSeconds ?? ProbeLog.DefaultGapSeconds });
    problems = reading.Problems;
    if (!reading.TryGet(out ProbeLog? log))
        return Shell.Fail($"{file} cannot be used as a log:{string.Concat(problems.Select(problem => $" {problem};"))} --unit celsius or --unit fahrenheit confirms a unit");
    judgement = LethalityJudgement.Of(log, matter, HeatedMix.WaterActivity(formula, Math.Clamp(log.MaximumCelsius, 0, 100)), ph is double stated ? new Spread(stated, stated, stated) : null);
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail($"{file} with {formulaFile}: {Shell.Reason(e)}");
}

if (json)
    WriteJson(judgement, problems);
else
    Print(judgement, formula, problems, all);
return Shell.Answer(shown.ToString(), judgement.HasAnswer ? 0 : 1);

static void Print(LethalityJudgement judgement, Formula formula, IReadOnlyList<Problem> problems, bool all)
{
    ProbeLog log = judgement.Log;
    Line($"{formula.Name}: {log.Readings.Count} readings over {log.Minutes:0.0} minutes, the hottest {log.MaximumCelsius:0.0} °C ({log.MaximumCelsius * 1.8 + 32:0.0} °F)");
    Line($"\n{judgement.Headline}");
    Line($"\nMeasured time at or above");
    foreach ((double celsius, double fahrenheit) in (ReadOnlySpan<(double, double)>)[(60, 140), (63, 145), (71, 160)])
        Line($"  {celsius:0} °C ({fahrenheit:0} °F)   {Minutes(log.MinutesAtOrAbove(celsius), log.LongestMinutesAtOrAbove(celsius))}");
    HoldTime household = HoldTimeTable.Get("consumer-guidance").Rows[0];
    Line($"  The guidance to households, {household.Fahrenheit:0} °F ({household.Celsius:0.0} °C) for egg mixtures, was {(household.IsHeldBy(log) ? "reached" : "not reached")}. It is guidance and no study of such a mix.");
    if (log.Gaps.Count > 0)
    {
        Line($"\nGaps, longer than {log.GapSeconds:0.#} s, across which nothing is counted");
        foreach (LogGap gap in log.Gaps)
            Line($"  {gap}");
    }
    Problem[] others = [.. problems.Where(problem => problem.Code != "gap")];
    if (others.Length > 0)
    {
        Line($"\nOdd in the log");
        foreach (Problem problem in others)
            Line($"  {problem}");
    }
    Line($"\nWater activity {judgement.WaterActivity:0.000}: what is dissolved in the hot mix, by three models");
    Line($"pH {judgement.Ph.Low:0.0}{(judgement.Ph.Low == judgement.Ph.High ? "" : $" to {judgement.Ph.High.ToString("0.0", CultureInfo.InvariantCulture)}")}{(judgement.IsPhStated ? "" : ": not stated, so that of fresh to stored egg is taken; acid such as cream of tartar lowers it")}");
    if (judgement.HasAnswer)
        Line($"The study: {judgement.Minimum!.Set.Provenance!.Note}");
    if (all)
        PrintAll(judgement);
    else
        Line($"\n--all shows the other studies, why {judgement.Findings.Count(finding => !finding.Applies)} of {judgement.Findings.Count} were left out, and the printed tables.");
    Line($"\nCaution: {HeatCaution.Text}");
}

static string Minutes(double? sum, double? longest) => sum is null ? "never" : FormattableString.Invariant($"{sum:0.0} min{(longest < sum - 0.05 ? $", the longest without a break {longest:0.0}" : "")}");

static void PrintAll(LethalityJudgement judgement)
{
    Line($"\nWhat the studies say that apply, the lowest first");
    foreach (LethalityFinding finding in judgement.Findings.Where(finding => finding.Applies))
    {
        Line($"  {finding.LogText}   {finding.Set.Name}, {finding.Set.Organism}; {finding.Set.Provenance!.Source.ShortName}");
        if (finding.IsBeyondMeasured)
            Line($"    counted no further than {finding.Set.MeasuredLogs:0.#} log: {(finding.Set.IsMeasuredLogsAssumed ? "what the inoculum of such studies allows; the study itself was not read for it" : "as far as the study goes")}");
        Line($"    {finding.Set.Provenance.Note}");
    }
    if (!judgement.HasAnswer)
        Line($"  none");
    Line($"\nWhat was left out, and why");
    foreach (LethalityFinding finding in judgement.Findings.Where(finding => !finding.Applies))
        Line($"  {finding.Set.Name}: {finding.Why}");
    Line($"\nWhat printed tables ask, each for the product it names");
    foreach (HoldTimeTable table in HoldTimeTable.All)
    {
        IReadOnlyList<HoldTime> rows = table.RowsFor(judgement.Matter);
        if (rows.Count == 0)
            continue;
        Line($"  {table}");
        bool isFor = table.IsFor(judgement.WaterActivity);
        if (!isFor)
            Line($"    is not for a mix of this water activity: that its times were kept says nothing");
        foreach (HoldTime row in rows)
            Line($"    {(!isFor ? "" : row.IsHeldBy(judgement.Log) ? "reached and kept   " : "not kept in the log ")}{row}");
    }
}

static void WriteJson(LethalityJudgement judgement, IReadOnlyList<Problem> problems)
{
    using MemoryStream output = new();
    using (Utf8JsonWriter writer = new(output))
    {
        writer.WriteStartObject();
        writer.WriteString("headline", judgement.Headline);
        writer.WriteNumber("waterActivity", Math.Round(judgement.WaterActivity.Likely, 4));
        writer.WriteNumber("waterActivityLow", Math.Round(judgement.WaterActivity.Low, 4));
        writer.WriteNumber("waterActivityHigh", Math.Round(judgement.WaterActivity.High, 4));
        writer.WriteNumber("phLow", judgement.Ph.Low);
        writer.WriteNumber("phHigh", judgement.Ph.High);
        writer.WriteBoolean("phStated", judgement.IsPhStated);
        writer.WriteNumber("gapSeconds", judgement.Log.GapSeconds);
        writer.WriteStartArray("gaps");
        foreach (LogGap gap in judgement.Log.Gaps)
        {
            writer.WriteStartObject();
            writer.WriteNumber("fromMinutes", Math.Round(gap.FromMinutes, 4));
            writer.WriteNumber("toMinutes", Math.Round(gap.ToMinutes, 4));
            writer.WriteNumber("seconds", Math.Round(gap.Seconds, 2));
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteStartArray("sets");
        foreach (LethalityFinding finding in judgement.Findings)
        {
            writer.WriteStartObject();
            writer.WriteString("key", finding.Set.Key);
            writer.WriteBoolean("applies", finding.Applies);
            writer.WriteString("why", finding.Why);
            // A set that does not apply has no number.
            if (finding.LogReduction is Spread logs)
            {
                writer.WriteStartObject("logReduction");
                writer.WriteNumber("low", Math.Round(logs.Low, 4));
                writer.WriteNumber("likely", Math.Round(logs.Likely, 4));
                writer.WriteNumber("high", Math.Round(logs.High, 4));
                writer.WriteEndObject();
                writer.WriteBoolean("atLeast", finding.IsBeyondMeasured);
                writer.WriteString("text", finding.LogText);
                writer.WriteNumber("measuredLogs", finding.Set.MeasuredLogs);
                writer.WriteBoolean("measuredLogsAssumed", finding.Set.IsMeasuredLogsAssumed);
                writer.WriteString("solute", finding.Set.Solute);
                writer.WriteString("note", finding.Set.Provenance!.Note);
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("highestCelsius", Math.Round(judgement.Log.MaximumCelsius, 2));
        writer.WriteStartArray("problems");
        foreach (Problem problem in problems)
            writer.WriteStringValue(problem.ToString());
        writer.WriteEndArray();
        writer.WriteString("caution", HeatCaution.Text);
        writer.WriteEndObject();
    }
    Console.WriteLine(Encoding.UTF8.GetString(output.ToArray()));
}

static void Line(FormattableString text) => Console.WriteLine(FormattableString.Invariant(text));
