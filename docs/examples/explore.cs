// What a demand costs: the answers along one end of it, a line each, with what else was asked, the price, and how much of the house formula moves.
//
//   dotnet run docs/examples/explore.cs PROBLEM.json --vary "fat 34..38" [--json]
//
// The words before the figures are the beginning of a demand as the answer prints it; the figures are in its unit, per cent or grams. "fat 34..38/0.5"
// goes in steps of 0.5; without a step there are five places.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;

const int MostPlaces = 100;
Cli cli = new("explore.cs", "Shows what a demand costs along one of its ends. Exit status: 0 every place has a formula; 1 one of them has none; "
    + "2 bad usage, or a problem that cannot be read or used.");
Argument<string> problem = cli.Word("PROBLEM.json");
Option<(string Words, double[] Places)> vary = cli.Value("--vary", "\"fat 34..38/1\"", Places, default, isNeeded: true);
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(problem);
    (string words, double[] places) = options.GetRequiredValue(vary);
    SolvedFormula answer = Shell.Named(file, () => FormulaProblem.ReadJson(File.ReadAllBytes(file), IngredientTable.BuiltIn).OrThrow().Solve());
    Demand demand = Find(answer.Problem, words);
    double unit = demand is Demand.Share ? 100 : 1;
    IReadOnlyList<SolvedFormula> answers = answer.Explore(demand, [.. places.Select(place => place / unit)], !HasHighEndOnly(demand));
    bool areAll = answers.All(one => one.Status == SolutionStatus.Solved);
    return Shell.Answer(options.GetValue(json) ? Document(demand, places, answers) : Text(answer, demand, places, answers), areAll ? 0 : 1);
});

static string Text(SolvedFormula answer, Demand demand, double[] places, IReadOnlyList<SolvedFormula> answers)
{
    Page page = new();
    page.Line($"{answer.Problem.Name}");
    page.Line($"What it takes to move: {demand}\n");
    string unit = Unit(demand);
    bool hasCost = answers.Any(one => one.Cost > 0);
    // What else was asked and may be missed: as many as a page is wide.
    Demand[] others = [.. answer.Problem.Demands.Where(other => other != demand && other is Demand.Share { IsTarget: true }).Take(3)];
    int at = answer.Problem.Demands.ToList().IndexOf(demand);
    page.Line($"  {"asked",10}{"got",12}{(hasCost ? $"{"cost",9}" : "")}{"moved",10}{string.Concat(others.Select((_, k) => $"{$"({k + 1})",10}"))}");
    foreach ((double place, SolvedFormula one) in places.Zip(answers))
    {
        if (one.Status != SolutionStatus.Solved)
        {
            page.Line($"  {$"{place:0.##} {unit}",10}  {(one.Status == SolutionStatus.Impossible ? Shell.Shown($"cannot be done: {one.Conflict}") : "neither solved nor shown to be impossible")}");
            continue;
        }
        page.Line($"  {$"{place:0.##} {unit}",10}{Got(one, one.Problem.Demands[at]),12}{(hasCost ? $"{one.Cost,9:0.00}" : "")}{one.MovedGrams,8:0.0} g{string.Concat(others.Select(other => $"{Got(one, other),10}"))}");
    }
    page.Section("", others.Select((other, k) => $"  ({k + 1}) {other}"));
    page.Line($"\nMoved: grams added to the lines of the house formula or taken from them, whichever is more.{(hasCost ? " Cost: in the currency of the prices." : "")}");
    if (answers.Any(one => one.Certificate is { IsBest: false }))
        page.Line($"Not every line was proved to be the best there is; balance.cs says of each how far its proof came.");
    return page.ToString();
}

static string Got(SolvedFormula answer, Demand demand) => answer.Results.FirstOrDefault(result => result.Demand == demand)?.Achieved is double got
    ? string.Create(CultureInfo.InvariantCulture, $"{(demand is Demand.Share ? 100 * got : got):0.##} {Unit(demand)}") : "-";

static string Unit(Demand demand) => demand switch
{
    Demand.Share => "%",
    Demand.Ratio => "times",
    Demand.PropertyValue property => property.Asked.Unit,
    Demand.UnitCost => "per kg",
    _ => "g",
};

static string Document(Demand demand, double[] places, IReadOnlyList<SolvedFormula> answers)
{
    JsonArray explored = [];
    foreach ((double place, SolvedFormula one) in places.Zip(answers))
    {
        JsonObject document = Json.Written(writer => one.WriteTo(writer));
        document["asked"] = place;
        document["movedGrams"] = Math.Round(one.MovedGrams, 6);
        explored.Add((JsonNode)document);
    }
    return Json.Text(new JsonObject { ["demand"] = demand.Sentence, ["unit"] = Unit(demand), ["explored"] = explored });
}

static bool HasHighEndOnly(Demand demand) => demand.ToString().Contains(" at most ", StringComparison.Ordinal);

// The demand whose sentence begins with the words; where several do, the one in which nothing but figures comes after.
static Demand Find(FormulaProblem problem, string words)
{
    Demand[] found = [.. problem.Demands.Where(demand => demand.ToString().StartsWith(words + " ", StringComparison.OrdinalIgnoreCase))];
    if (found.Length > 1)
    {
        Demand[] targets = [.. found.Where(demand => demand is Demand.Share { IsTarget: true })];
        found = targets.Length == 1 ? targets : found;
    }
    return found.Length switch
    {
        1 => found[0],
        0 => throw new FormatException($"--vary {words}: no demand begins with these words; there are: {string.Join("; ", problem.Demands)}."),
        _ => throw new FormatException($"--vary {words}: several demands begin with these words: {string.Join("; ", found.AsEnumerable())}."),
    };
}

static (string, double[]) Places(string text)
{
    int space = text.LastIndexOf(' ');
    string[] ends = text[(space + 1)..].Split("..");
    string[] last = ends.Length == 2 ? ends[1].Split('/') : [];
    if (space < 1 || last.Length is 0 or > 2 || !Number(ends[0], out double from) || !Number(last[0], out double to) || !(to > from))
        throw new FormatException("the beginning of a demand and two places are expected, the lower first, such as \"fat 34..38\" or \"fat 34..38/0.5\".");
    double step = (to - from) / 4;
    if (last.Length == 2 && !(Number(last[1], out step) && step > 0 && (to - from) / step <= MostPlaces))
        throw new FormatException($"the step after / is above 0 and makes at most {MostPlaces} places.");
    return (text[..space].Trim(), [.. Enumerable.Range(0, 1 + (int)Math.Floor((to - from) / step + 1e-9)).Select(i => Math.Round(from + i * step, 9))]);
}

static bool Number(string text, out double value) =>
    double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
