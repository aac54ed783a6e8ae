// Balances a formula: hits shares of fat, sugar and water within limits, close to the house formula, and says what binds or collides.
//
//   dotnet run docs/examples/balance.cs PROBLEM.json [--round 5g|spoons] [--system us-customary] [--json]
//
// With --round the answer is the rounded formula: what it got, and the exit status, are about it, and what the formula got before is said where that differs.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;

Cli cli = new("balance.cs", "Balances a formula within limits. Exit status: 0 solved, and the answer meets every demand; "
    + "1 it misses one, if only by the rounding, or the demands collide; 2 bad usage, a problem that cannot be read or used, or an answer that could not be written.");
Argument<string> problem = cli.Word("PROBLEM.json");
Option<Func<MeasuringSystem, RoundingGrid>?> round = cli.Value("--round", "5g|spoons", Grid, null);
Option<MeasuringSystem> system = cli.System();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(problem);
    RoundingGrid? grid = options.GetValue(round)?.Invoke(options.GetRequiredValue(system));
    SolvedFormula answer = Shell.Named(file, () => Kitchen.UsCustomary.ReadProblem(File.ReadAllBytes(file)).OrThrow().Solve());
    RoundedFormula? rounded = grid is null ? null : answer.Round(grid);
    // What the reader is given to weigh is what has to meet the demands.
    bool isMet = answer.Status == SolutionStatus.Solved && (rounded?.Results ?? answer.Results).All(result => result.IsMet);
    return Shell.Answer(options.GetValue(json) ? Document(answer, rounded, isMet) : Text(answer, rounded), isMet ? 0 : 1);
});

static string Document(SolvedFormula answer, RoundedFormula? rounded, bool isMet)
{
    JsonObject document = Json.Written(writer => answer.WriteTo(writer, rounded));
    document["answer"] = rounded is null ? "exact" : "rounded";
    document["everyDemandMet"] = isMet;
    if (Made(answer, rounded) is Formula made)
        document.AddFood(made);
    return Json.Text(document);
}

static string Text(SolvedFormula answer, RoundedFormula? rounded)
{
    Page page = new();
    int missed = rounded?.Results.Count(result => !result.IsMet) ?? 0;
    page.Line($"{answer.Problem.Name}");
    page.Words(answer.Status switch
    {
        SolutionStatus.Solved when missed > 0 => $"\nSolved, but rounded it misses {missed} of {answer.Results.Count} demands:\n",
        SolutionStatus.Solved => "",
        SolutionStatus.Impossible => $"\nThis cannot be done: {Shell.Shown($"{answer.Conflict}")}.\nThe closest formula:\n",
        _ => "\nThis was neither solved nor shown to be impossible. The closest formula that was found:\n",
    });
    // The house formula beside the answer, and what changed: that is what the cook looks for first.
    double[] house = [.. answer.Problem.Ingredients.Select(answer.Problem.BaseGramsOf)];
    bool hasHouse = house.Any(grams => grams > 0);
    page.Line($"  {"",-28}{(hasHouse ? $"{"house",11}" : "")}{"answer",11}{(hasHouse ? $"{"change",11}" : "")}{(rounded is null ? "" : $"{"weigh",11}")}");
    for (int j = 0; j < answer.Grams.Count; j++)
    {
        Ingredient ingredient = answer.Problem.Ingredients[j];
        string measure = rounded?.Formula?.Lines.FirstOrDefault(line => line.Ingredient == ingredient)?.AsWritten is Amount amount ? $"   {amount:V}" : "";
        page.Line($"  {ingredient.Name,-28}{(hasHouse ? $"{house[j],9:0.0} g" : "")}{answer.Grams[j],9:0.0} g{(hasHouse ? $"{Change(answer.Grams[j] - house[j]),11}" : "")}{(rounded is null ? "" : $"{rounded.Grams[j],9:0.##} g")}{measure}");
    }
    if (answer.BoiledOffGrams > 0 || rounded?.BoiledOffGrams > 0)
        page.Line($"  {"water boiled off",-28}{(hasHouse ? $"{-answer.Problem.BaseBoiledOffGrams,9:0.0} g" : "")}{-answer.BoiledOffGrams,9:0.0} g{(hasHouse ? $"{Change(answer.Problem.BaseBoiledOffGrams - answer.BoiledOffGrams),11}" : "")}{(rounded is null ? "" : $"{-rounded.BoiledOffGrams,9:0.##} g")}");
    if (rounded is not null)
        page.Section("\nSteps too coarse leave nothing of", rounded.Vanished.Select(food => $"  {food.Name}"));

    page.Line($"\nWhat was asked, and what it got{(rounded is null ? "" : " after rounding")}");
    // What was missed comes first: by priority, as it was settled.
    foreach ((DemandResult exact, DemandResult given) in answer.Results.Zip(rounded?.Results ?? answer.Results).OrderBy(pair => pair.Second.IsMet))
        page.Line($"  {(given.IsMet ? "ok    " : "missed")}  {given}{(given.IsMet == exact.IsMet ? "" : $"; {(exact.IsMet ? "met" : "missed")} before rounding")}");
    string before = rounded is null ? "" : " before rounding";
    page.Section($"\nWhat binds{before}", answer.Binding.Select(binding => $"  {binding}{(binding.CostsTargets ? "; it keeps a target from being met better" : "")}"));
    if (answer.Status == SolutionStatus.Solved)
        page.Line($"\nOf all this, {answer.DegreesOfFreedom}.");
    if (answer.Cost > 0)
        page.Line($"It costs {answer.Cost:0.00} in the currency of the prices{before}.");
    if (answer.Certificate is AnswerCertificate proof)
        page.Line($"{(rounded is null ? proof.Sentence : proof.Sentence.Replace("roved:", "roved, before rounding:", StringComparison.Ordinal))}{(proof.CertainToGrams is double grams && proof.Holds ? $" Its masses are certain to {grams:0.#####} g." : "")}");
    if (rounded is not null)
        page.Line($"\nRounded: {(rounded.Formula is null ? "the steps are so coarse that nothing is left" : rounded.IsProven ? "no formula within a step of each line does better" : "there are too many lines to try all; a better formula within the steps may exist")}.");
    if (Made(answer, rounded) is Formula made)
        page.AddFood(made);
    return page.ToString();
}

static string Change(double grams) => Math.Abs(grams) < 0.05 ? "= " : string.Create(CultureInfo.InvariantCulture, $"{grams:+0.0;-0.0} g");

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

static Func<MeasuringSystem, RoundingGrid> Grid(string text) => text == "spoons" ? RoundingGrid.Spoons
    : text.EndsWith('g') && double.TryParse(text[..^1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double step) && step is >= 0.001 and <= 1e6
    ? _ => RoundingGrid.Grams(step) : throw new FormatException("spoons, or a mass such as 5g or 0.5g, from 0.001g to 1000000g, is expected.");
