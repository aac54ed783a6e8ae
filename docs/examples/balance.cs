// Balances a formula: hits shares of fat, sugar and water within limits, close to the house formula, and says what binds or collides.
//
//   dotnet run docs/examples/balance.cs PROBLEM.json [--round 5g|spoons] [--system us-customary] [--json]
//
// With --round the answer is the rounded formula: what it got, and the exit status, are about it, and what the formula got before is said where that differs.
// Exit status: 0 solved, and the answer meets every demand; 1 it misses one, if only by the rounding, or the demands collide; 2 bad usage, a problem that cannot be read
// or used, or an answer that could not be written. Whatever is wrong is one line on the error stream.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;

const string Usage = "usage: balance.cs PROBLEM.json [--round 5g|spoons] [--system us-customary] [--json]";
string? file = null, round = null;
MeasuringSystem? system = MeasuringSystem.UsCustomary;
bool json = false;
for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    switch (args[i])
    {
        case "--json":
            json = true;
            break;
        case "--round" when value is not null:
            round = value;
            i++;
            break;
        case "--system" when value is not null:
            if (!MeasuringSystem.TryGet(value, out system))
                return Shell.Fail($"--system {value}: not a measuring system; one of: {string.Join(", ", MeasuringSystem.All.Select(known => known.Key))}");
            i++;
            break;
        case [not '-', ..] when file is null:
            file = args[i];
            break;
        default:
            return Shell.Fail($"{args[i]}: not understood. {Usage}");
    }
}
if (file is null)
    return Shell.Fail(Usage);
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {Usage}");
if (!TryReadGrid(round, system, out RoundingGrid? grid))
    return Shell.Fail($"--round {round}: spoons, or a mass such as 5g or 0.5g, is expected.");

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
SolvedFormula answer;
try
{
    answer = ProblemJson.Read(File.ReadAllBytes(file), IngredientTable.BuiltIn).OrThrow().Solve();
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail($"{file}: {Shell.Reason(e)}");
}
RoundedFormula? rounded = grid is null ? null : answer.Round(grid);
// What the reader is given to weigh is what has to meet the demands.
bool isMet = answer.Status == SolutionStatus.Solved && (rounded?.Results ?? answer.Results).All(result => result.IsMet);

if (json)
{
    using MemoryStream written = new();
    using (Utf8JsonWriter writer = new(written))
        answer.WriteTo(writer, rounded);
    JsonObject document = JsonNode.Parse(written.ToArray())!.AsObject();
    document["answer"] = rounded is null ? "exact" : "rounded";
    document["everyDemandMet"] = isMet;
    if (Made(answer, rounded) is Formula made)
    {
        document["contains"] = new JsonArray([.. made.Allergens.Select(allergen => (JsonNode)$"{allergen}".ToLowerInvariant())]);
        document["oftenContains"] = new JsonArray([.. made.OftenContains.Select(allergen => (JsonNode)$"{allergen}".ToLowerInvariant())]);
        document["label"] = Caution.ReadTheLabel;
        document["cautions"] = new JsonArray([.. made.Cautions.Select(caution => new JsonObject { ["code"] = caution.Code, ["text"] = caution.Text, ["source"] = caution.Source })]);
    }
    s_text.WriteLine(document.ToJsonString());
}
else
{
    Print(answer, rounded);
    if (Made(answer, rounded) is Formula made)
    {
        s_text.WriteLine($"\nContains: {(made.Allergens.Count == 0 ? "none of the listed allergens" : string.Join(", ", made.Allergens.Select(allergen => $"{allergen}")))}{(made.OftenContains.Count == 0 ? "" : $"; often contains: {string.Join(", ", made.OftenContains.Select(allergen => $"{allergen}"))}")}. {Caution.ReadTheLabel}");
        foreach (Caution caution in made.Cautions)
            s_text.WriteLine($"Caution: {caution} ({caution.Source})");
    }
}
return Shell.Answer(s_text.ToString(), isMet ? 0 : 1);

static void Print(SolvedFormula answer, RoundedFormula? rounded)
{
    s_text.WriteLine(answer.Problem.Name);
    s_text.WriteLine(answer.Status switch
    {
        SolutionStatus.Solved when Missed(rounded) is int missed and > 0 => $"\nSolved, but rounded it misses {missed} of {answer.Results.Count} demands:\n",
        SolutionStatus.Solved => "",
        SolutionStatus.Impossible => $"\nThis cannot be done: {answer.Conflict}.\nThe closest formula:\n",
        _ => "\nThis was neither solved nor shown to be impossible. The closest formula that was found:\n",
    });
    IReadOnlyList<Ingredient> ingredients = answer.Problem.Ingredients;
    for (int j = 0; j < ingredients.Count; j++)
    {
        string measure = rounded?.Formula?.Lines.FirstOrDefault(line => line.Ingredient == ingredients[j])?.AsWritten is Amount amount ? $"   {amount:V}" : "";
        string grams = rounded is null ? Grams(answer.Grams[j]) : $"{Grams(answer.Grams[j])}  ->{Grams(rounded.Grams[j])}";
        s_text.WriteLine($"  {ingredients[j].Name,-28}{grams}{measure}");
    }
    if (answer.BoiledOffGrams > 0)
        s_text.WriteLine($"  {"water boiled off",-28}{Grams(-answer.BoiledOffGrams)}");

    s_text.WriteLine(rounded is null ? "\nWhat was asked, and what it got" : "\nWhat was asked, and what it got after rounding");
    for (int i = 0; i < answer.Results.Count; i++)
    {
        DemandResult exact = answer.Results[i], given = rounded?.Results[i] ?? exact;
        s_text.WriteLine($"  {(given.IsMet ? "ok    " : "missed")}  {given}{(given.IsMet == exact.IsMet ? "" : $"; {(exact.IsMet ? "met" : "missed")} before rounding")}");
    }
    string before = rounded is null ? "" : " before rounding";
    if (answer.Binding.Count > 0)
    {
        s_text.WriteLine($"\nWhat binds{before}");
        foreach (BindingDemand binding in answer.Binding)
            s_text.WriteLine($"  {binding}{(binding.CostsTargets ? "; it keeps a target from being met better" : "")}");
    }
    if (answer.Status == SolutionStatus.Solved)
        s_text.WriteLine($"\nOf all this, {answer.DegreesOfFreedom}.");
    if (answer.Certificate is AnswerCertificate certificate)
    {
        string certain = certificate.CertainToGrams is double grams ? string.Create(CultureInfo.InvariantCulture, $"; masses certain to {grams:0.#####} g") : "";
        s_text.WriteLine($"Proof that this is the best{before}: {(certificate.Holds ? "it holds" : "IT DOES NOT HOLD")}{certain}.");
    }
    if (rounded is null)
        return;
    s_text.WriteLine($"\nRounded: {(rounded.IsProven ? "no formula on this grid is better" : string.Create(CultureInfo.InvariantCulture, $"{(rounded.Formula is null ? "the steps are so coarse that nothing is left" : rounded.Gap is double gap ? $"the search stopped; another may be better by up to {gap.ToString("0.###", CultureInfo.InvariantCulture)} squared tolerances" : "no formula on this grid was found; every mass is rounded by itself")}"))}.");
}

static int Missed(RoundedFormula? rounded) => rounded?.Results.Count(result => !result.IsMet) ?? 0;

// The formula that the answer is of; none where there is no formula.
static Formula? Made(SolvedFormula answer, RoundedFormula? rounded)
{
    if (rounded is not null)
        return rounded.Formula;
    try
    {
        return answer.ToFormula();
    }
    catch (InvalidOperationException)
    {
        return null;
    }
}

static string Grams(double grams) => string.Create(CultureInfo.InvariantCulture, $"{grams,10:0.0} g");

static bool TryReadGrid(string? round, MeasuringSystem? system, out RoundingGrid? grid)
{
    grid = null;
    if (round is null)
        return true;
    if (round == "spoons")
        grid = RoundingGrid.Spoons(system!);
    else if (round.EndsWith('g') && double.TryParse(round[..^1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double step) && step is >= 0.001 and <= 1e6)
        grid = RoundingGrid.Grams(step);
    return grid is not null;
}

internal partial class Program
{
    private static readonly StringWriter s_text = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
}
