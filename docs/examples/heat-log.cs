// Judges a probe's log of a heated mix by every kinetic set that applies to its water activity, and by none that does not.
//
//   dotnet run docs/examples/heat-log.cs LOG.csv --formula FORMULA.json [--matter egg-white|egg-yolk|whole-egg] [--json]
//
// The log has a column minutes, seconds or time (h:mm:ss), and a column celsius or fahrenheit.
// Exit status: 0 judged, 1 no set applies, 2 unreadable or bad usage.
#:project ../../src/Confectio/Confectio.csproj

using System.Text;
using System.Text.Json;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Sources;
using Confectio.Text;

const string Usage = "usage: heat-log.cs LOG.csv --formula FORMULA.json [--matter egg-white|egg-yolk|whole-egg] [--json]";
string? file = null, formulaFile = null;
HeatedMatter matter = HeatedMatter.EggWhite;
bool json = false;
for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    switch (args[i])
    {
        case "--json":
            json = true;
            break;
        case "--formula" when value is not null:
            formulaFile = value;
            i++;
            break;
        case "--matter" when value is "egg-white" or "egg-yolk" or "whole-egg":
            matter = value switch { "egg-white" => HeatedMatter.EggWhite, "egg-yolk" => HeatedMatter.EggYolk, _ => HeatedMatter.WholeEgg };
            i++;
            break;
        case [not '-', ..] when file is null:
            file = args[i];
            break;
        default:
            return Fail($"{args[i]}: not understood. {Usage}");
    }
}
if (file is null || formulaFile is null)
    return Fail(Usage);

Console.OutputEncoding = new UTF8Encoding(false);
LethalityJudgement judgement;
Formula formula;
IReadOnlyList<TableProblem> problems;
try
{
    formula = FormulaJson.Read(File.ReadAllBytes(formulaFile), IngredientTable.BuiltIn);
    using StreamReader text = new(file);
    if (ProbeLog.Read(text, out problems) is not ProbeLog log)
        return Fail($"{file} cannot be used as a log:{string.Concat(problems.Select(problem => $"\n  {problem}"))}");
    judgement = LethalityJudgement.Of(log, matter, HeatedMix.WaterActivity(formula, Math.Clamp(log.HighestCelsius, 0, 100)));
}
catch (Exception e) when (e is IOException or UnauthorizedAccessException)
{
    return Fail($"It cannot be read: {e.Message}");
}
catch (Exception e) when (e is FormatException or ArgumentException or InvalidOperationException)
{
    return Fail($"{formulaFile}: {e.Message}");
}

if (json)
    WriteJson(judgement, problems);
else
    Print(judgement, formula, problems);
return judgement.HasAnswer ? 0 : 1;

static void Print(LethalityJudgement judgement, Formula formula, IReadOnlyList<TableProblem> problems)
{
    ProbeLog log = judgement.Log;
    Line($"{formula.Name}: {log.Readings.Count} readings over {log.Minutes:0.0} minutes, the hottest {log.HighestCelsius:0.0} °C");
    Line($"Water activity {judgement.WaterActivity:0.000}: sugar and water of the formula, by three models");
    foreach (TableProblem problem in problems)
        Line($"  {problem}");
    Line($"\nWhat studies say that were made at such a water activity, in the food that each names");
    foreach (LethalityFinding finding in judgement.Findings.Where(finding => finding.Applies))
    {
        Line($"  {finding.LogReduction!.Value:0.00} log   {finding.Set.Name}, {finding.Set.Organism}; {finding.Set.Provenance!.Source.ShortName}");
        if (finding.IsBeyondMeasured)
            Line($"    cut at {finding.Set.MeasuredLogs:0.#} log, as far as it was measured");
        Line($"    {finding.Set.Provenance.Note}");
    }
    if (!judgement.HasAnswer)
        Line($"  {judgement}");
    Line($"\nWhat was left out, and why");
    foreach (LethalityFinding finding in judgement.Findings.Where(finding => !finding.Applies))
        Line($"  {finding.Set.Name}: {finding.Why}");
    Line($"\nWhat printed tables ask, each for the product it names and not for a mix rich in sugar");
    foreach (HoldTimeTable table in HoldTimeTable.All)
    {
        IReadOnlyList<HoldTime> rows = table.RowsFor(judgement.Matter);
        if (rows.Count == 0)
            continue;
        Line($"  {table}");
        foreach (HoldTime row in rows)
            Line($"    {(row.IsHeldBy(log) ? "held    " : "not held")}  {row}");
    }
    Line($"\nCaution: {HeatCaution.Text}");
}

static void WriteJson(LethalityJudgement judgement, IReadOnlyList<TableProblem> problems)
{
    using Stream output = Console.OpenStandardOutput();
    using (Utf8JsonWriter writer = new(output))
    {
        writer.WriteStartObject();
        writer.WriteNumber("waterActivity", Math.Round(judgement.WaterActivity.Likely, 4));
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
                writer.WriteBoolean("cutWhereMeasured", finding.IsBeyondMeasured);
                writer.WriteString("note", finding.Set.Provenance!.Note);
            }
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteNumber("highestCelsius", Math.Round(judgement.Log.HighestCelsius, 2));
        writer.WriteStartArray("problems");
        foreach (TableProblem problem in problems)
            writer.WriteStringValue(problem.ToString());
        writer.WriteEndArray();
        writer.WriteString("caution", HeatCaution.Text);
        writer.WriteEndObject();
    }
    output.WriteByte((byte)'\n');
}

static void Line(FormattableString text) => Console.WriteLine(FormattableString.Invariant(text));

static int Fail(string message)
{
    Console.Error.WriteLine(message);
    return 2;
}
