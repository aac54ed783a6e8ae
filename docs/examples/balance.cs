// Balances a formula: hits shares of fat, sugar and water within limits, close to the house formula, and says what binds or collides.
//
//   dotnet run docs/examples/balance.cs PROBLEM.json [--round 5g|spoons] [--system us-customary] [--bakers] [--json]
//
// With --round the answer is the rounded formula: what it got, and the exit status, are about it, with what the formula got before beside it. What is missed by less
// than the steps can do is told as that, and is no failure. With --system cups and spoons stand beside the grams, with the mass they hold. With --bakers the lines are
// counted on the flour too.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio;
using Confectio.Cooking;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Uncertainty;

Cli cli = new("balance.cs", "Balances a formula within limits. Exit status: 0 solved, and the answer meets every demand, or where it is rounded as near as the steps allow; "
    + "1 it misses one by more than that, or the demands collide; 2 bad usage, a problem that cannot be read or used, or an answer that could not be written.");
Argument<string> problem = cli.Word("PROBLEM.json");
Option<Func<MeasuringSystem, RoundingGrid>?> round = cli.Value("--round", "5g|spoons", Grid, null);
Option<MeasuringSystem?> system = cli.SystemOrNone();
Option<bool> bakers = cli.Flag("--bakers"), json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(problem);
    RoundingGrid? grid = options.GetValue(round)?.Invoke(options.GetValue(system) ?? MeasuringSystem.UsCustomary);
    MeasuringSystem? cups = options.GetValue(system) ?? grid?.MeasuringSystem;
    SolvedFormula answer = Shell.Named(file, () => Kitchen.Metric.ReadProblem(File.ReadAllBytes(file)).OrThrow().Solve());
    FormulaPart? flour = options.GetValue(bakers) ? Flour(answer.Problem) ?? throw new FormatException($"{file}: --bakers counts on the flour, and there is none in it.") : null;
    RoundedFormula? rounded = grid is null ? null : answer.Round(grid);
    // What the reader is given to weigh is what has to meet the demands.
    bool isMet = answer.Status == SolutionStatus.Solved && (rounded?.Results ?? answer.Results).All(result => result.IsMet || result.IsAsNearAsSteps);
    return Shell.Answer(options.GetValue(json) ? Document(answer, rounded, isMet, cups, flour) : Text(answer, rounded, cups, flour), isMet ? 0 : 1);
});

static string Document(SolvedFormula answer, RoundedFormula? rounded, bool isMet, MeasuringSystem? cups, FormulaPart? flour)
{
    JsonObject document = Json.Written(writer => answer.WriteTo(writer, rounded, cups, flour));
    document["answer"] = rounded is null ? "exact" : "rounded";
    document["everyDemandMet"] = isMet;
    if (IsBoiled(answer, rounded))
        document["boilingCaution"] = CookingStage.Caution;
    if (Made(answer, rounded) is Formula made)
        document.AddFood(made);
    return Json.Text(document);
}

static string Text(SolvedFormula answer, RoundedFormula? rounded, MeasuringSystem? cups, FormulaPart? flour)
{
    Page page = new();
    page.Line($"{answer.Problem.Name}");
    int missed = rounded?.Results.Count(result => !result.IsMet && !result.IsAsNearAsSteps) ?? 0;
    page.Words(answer.Status switch
    {
        SolutionStatus.Solved when missed > 0 => $"\nSolved, but rounded it misses {missed} of {answer.Results.Count} demands:\n",
        SolutionStatus.Solved => "",
        SolutionStatus.Impossible => $"\nThis cannot be done: {Shell.Shown($"{answer.Conflict}")}.\nThe closest formula:\n",
        _ => $"\nThis was neither solved nor shown to be impossible{(answer.WhyUndecided is string why ? $": {Shell.Shown(why).TrimEnd('.')}" : "")}. The closest formula that was found:\n",
    });
    AddLines(page, answer, rounded, cups, flour);
    if (rounded is not null)
        page.Section("\nSteps too coarse leave nothing of", rounded.Vanished.Where(food => answer.GramsOf(food) >= 0.05).Select(food => $"  {food.Name}, of which the answer has {answer.GramsOf(food):0.0} g"));
    AddDemands(page, answer, rounded);
    page.Section("\nWhat the answer rests on", answer.Remarks.Concat((rounded?.Results ?? answer.Results).SelectMany(result => result.Cautions.Select(caution => $"{result.Demand}: {caution}"))).Select(remark => $"  {remark}"));
    AddCost(page, answer, rounded);
    string before = rounded is null ? "" : ", before rounding";
    page.Section($"\nWhat binds{before}", answer.Binding.Select(binding => $"  {binding}{(binding.CostsTargets ? "; it keeps a target from being met better" : "")}"));
    if (answer.Status == SolutionStatus.Solved)
        AddOpen(page, answer, before);
    if (answer.Certificate is AnswerCertificate proof)
        page.Line($"\n{(rounded is null ? proof.Sentence : proof.Sentence.Replace("roved:", "roved, before rounding:", StringComparison.Ordinal))}{(proof.CertainToGrams is double grams && proof.Holds ? $" Its masses are certain to {(grams < 0.01 ? "less than 0.01" : $"{grams:0.##}")} g." : "")}");
    if (rounded is not null)
        page.Line($"Rounded: {(rounded.Formula is null ? "the steps are so coarse that nothing is left" : rounded.IsProven ? "no formula within a step of each line does better" : "there are too many lines to try all; a better formula within the steps may exist")}.");
    if (Made(answer, rounded) is Formula made)
        page.AddFood(made);
    if (IsBoiled(answer, rounded))
        page.Line($"Caution: {CookingStage.Caution}");
    return page.ToString();
}

// The house formula beside the answer, and what changed: that is what the cook looks for first. Then what to weigh.
static void AddLines(Page page, SolvedFormula answer, RoundedFormula? rounded, MeasuringSystem? cups, FormulaPart? flour)
{
    FormulaProblem asked = answer.Problem;
    double[] house = [.. asked.Ingredients.Select(asked.BaseGramsOf)];
    (double Grams, double BoiledOff)[] wholes = [(house.Sum(), asked.BaseBoiledOffGrams), (answer.Grams.Sum(), answer.BoiledOffGrams), (rounded?.Grams.Sum() ?? 0, rounded?.BoiledOffGrams ?? 0)];
    double[] makes = [.. wholes.Select(whole => whole.Grams - whole.BoiledOff)];
    IReadOnlyList<double>[] all = [house, answer.Grams, rounded?.Grams ?? []];
    double[] onFlour = [.. all.Select(grams => flour is null ? 0 : asked.Ingredients.Zip(grams, (food, mass) => mass * flour.FractionIn(food)).Sum())];
    bool hasHouse = makes[0] > 0;
    LineMeasure?[] measures = [.. asked.Ingredients.Select((food, j) => cups is not null && (rounded?.Grams ?? answer.Grams)[j] is > 0 and < 1e12 and double grams ? LineMeasure.Of(food, grams, cups) : null)];
    string of = flour is null ? "of all" : "of flour";
    page.Line($"  {"",-28}{(hasHouse ? $"{"house",11}{of,9}" : "")}{"answer",11}{of,9}{(hasHouse ? $"{"change",11}" : "")}{(rounded is null ? "" : $"{"weigh",11}{of,9}")}{(cups is null ? "" : $"   {cups.Name} measures and what they hold")}");
    // What spoons hold is not known to a hundredth.
    string form = rounded?.Formula?.Lines.Any(line => line.AsWritten is not null) ?? false ? "0.#" : "0.##";
    for (int j = 0; j < house.Length; j++)
    {
        string spoons = rounded?.Formula?.Lines.FirstOrDefault(line => line.Ingredient == asked.Ingredients[j])?.AsWritten is Amount amount ? $"   {amount:V}"
            : measures[j] is LineMeasure measure ? $"   {measure.Amount:V} = {measure.Grams:0.#} g" : "";
        page.Line($"{$"  {asked.Ingredients[j].Name,-28}{(hasHouse ? Mass(0, house[j], "0.0") : "")}{Mass(1, answer.Grams[j], "0.0")}{(hasHouse ? $"{Change(answer.Grams[j] - house[j]),11}" : "")}{(rounded is null ? "" : Mass(2, rounded.Grams[j], form))}{spoons}".TrimEnd()}");
    }
    if (answer.BoiledOffGrams > 0 || rounded?.BoiledOffGrams > 0)
        page.Line($"  {"water boiled off",-28}{(hasHouse ? Mass(0, -wholes[0].BoiledOff, "0.0", false) : "")}{Mass(1, -wholes[1].BoiledOff, "0.0", false)}{(hasHouse ? $"{Change(wholes[0].BoiledOff - wholes[1].BoiledOff),11}" : "")}{(rounded is null ? "" : Mass(2, -wholes[2].BoiledOff, form, false))}");
    page.Line($"  {"makes",-28}{(hasHouse ? Mass(0, makes[0], "0.0", false) : "")}{Mass(1, makes[1], "0.0", false)}{(hasHouse ? $"{Change(makes[1] - makes[0]),11}" : "")}{(rounded is null ? "" : Mass(2, makes[2], form, false))}");
    string[] filled = [.. measures.Select((measure, j) => (measure, j)).Where(one => one.measure is { Packing: not Packing.Levelled }).Select(one => $"{asked.Ingredients[one.j].Name} {one.measure!.Packing.ToWord()}")];
    if (filled.Length > 0)
        page.Line($"  Cups and spoons are filled level: {string.Join(", ", filled)}. A scale is surer.");

    // What is not there is not weighed.
    string Mass(int column, double grams, string form, bool isLine = true) => grams == 0 && isLine ? $"{"-",11}{"",9}"
        : string.Create(CultureInfo.InvariantCulture, $"{grams.ToString(form, CultureInfo.InvariantCulture),9} g{(flour is null ? $"{100 * grams / makes[column],7:0.0} %" : onFlour[column] > 0 && isLine ? $"{100 * grams / onFlour[column],7:0.0} %" : $"{"",9}")}");
}

// What was missed comes first: by priority, as it was settled. The house formula's figure shows what was wrong with it.
static void AddDemands(Page page, SolvedFormula answer, RoundedFormula? rounded)
{
    IReadOnlyList<DemandResult> had = answer.BaseResults;
    (DemandResult Exact, DemandResult Given, string Had)[] results = [.. answer.Results.Select((exact, i) => (exact, rounded?.Results[i] ?? exact, had.Count > 0 ? had[i].AchievedText : ""))];
    int width = Math.Min(60, results.Max(one => $"{one.Exact.Demand}".Length) + 2);
    int column = results.Max(one => Math.Max(one.Had.Length, Math.Max(one.Exact.AchievedText.Length, one.Given.AchievedText.Length))) + 2;
    column = Math.Max(column, 11);
    page.Line($"\n{"What was asked, and what it got".PadRight(width + 10)}{(had.Count > 0 ? "house".PadLeft(column) : "")}{"answer".PadLeft(column)}{(rounded is null ? "" : "weighed".PadLeft(column))}");
    foreach ((DemandResult exact, DemandResult given, string house) in results.OrderBy(one => one.Given.IsMet || one.Given.IsAsNearAsSteps))
    {
        string word = given.IsMet ? "ok" : given.IsAsNearAsSteps ? "near" : "missed";
        string earlier = rounded is null || given.IsMet == exact.IsMet || given.IsAsNearAsSteps ? "" : exact.IsMet ? "met before rounding" : "missed before rounding";
        page.Line($"  {word,-8}{$"{exact.Demand}".PadRight(width)}{(had.Count > 0 ? house.PadLeft(column) : "")}{exact.AchievedText.PadLeft(column)}{(rounded is null ? "" : given.AchievedText.PadLeft(column))}{string.Concat(new[] { given.MissText, earlier, given.Spread is Spread known ? string.Create(CultureInfo.InvariantCulture, $"known to {known.Low:0.###} to {known.High:0.###}") : "" }.Where(part => part.Length > 0).Select((part, i) => (i == 0 ? "   " : "; ") + part))}");
    }
}

static void AddCost(Page page, SolvedFormula answer, RoundedFormula? rounded)
{
    if (answer.FullCost is not FormulaCost cost)
        return;
    page.Line($"\nWhat it costs, in the currency of the prices");
    (string Name, FormulaCost? Of)[] all = [("house", answer.BaseCost), ("answer", cost), ("weighed", rounded?.FullCost)];
    foreach ((string name, FormulaCost? one) in all.Where(one => one.Of is not null))
        page.Line($"  {name,-10}{one!.Total,9:0.00}{one.PerKilogram,9:0.00} the kilogram");
    // What is not known is not free.
    string[] without = [.. all.SelectMany(one => one.Of?.WithoutPrice ?? []).Distinct().Select(food => food.Name)];
    if (without.Length > 0)
        page.Line($"  No price was given of {string.Join(", ", without)}: what {(without.Length == 1 ? "it costs" : "they cost")} is not in it.");
}

static void AddOpen(Page page, SolvedFormula answer, string before)
{
    DegreesOfFreedom open = answer.DegreesOfFreedom;
    page.Section($"\nWhat the demands leave open{before}", open.Count == 0 ? ["  Nothing: they fix every mass."]
        : open.Trades.Count == 0 ? [$"  {open}, and none of it has room."]
        : open.Trades.Select(trade => $"  {trade}"));
    if (open.Trades.Count > 0)
        page.Line($"  After such a trade every target gets what it got and every limit is kept{(open.Count > open.Trades.Count ? $"; there are {open.Count} independent ways in all" : "")}.");
}

static string Change(double grams) => Math.Abs(grams) < 0.05 ? "=" : string.Create(CultureInfo.InvariantCulture, $"{grams:+0.0;-0.0} g");

// Common practice: baker's percentages are counted on what is milled of cereals, not on ground nuts.
static FormulaPart? Flour(FormulaProblem asked)
{
    Ingredient[] flours = [.. asked.Ingredients.Where(food => food.Id.StartsWith("flour-", StringComparison.Ordinal) && FormulaPart.Starch.FractionIn(food) > 0.5)];
    return flours.Length > 0 ? FormulaPart.OfIngredients("flour", flours) : null;
}

// What boils water off sugar is hot syrup.
static bool IsBoiled(SolvedFormula answer, RoundedFormula? rounded) => (rounded?.BoiledOffGrams ?? answer.BoiledOffGrams) > 0
    && answer.Problem.Ingredients.Where((_, j) => (rounded?.Grams ?? answer.Grams)[j] > 0).Any(food => FormulaPart.Sugars.FractionIn(food) > 0);

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
