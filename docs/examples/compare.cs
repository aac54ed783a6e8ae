// Two formulas beside each other: what differs by line, by what they are made of, by solid fat and water activity, and which is sweeter, softer, keeps longer.
//
//   dotnet run docs/examples/compare.cs A B [--at 24C]... [--json]
//
// A and B are formulas in JSON, or texts with a line an ingredient. All is in shares: a formula and twice of it are the same. What the spreads leave open is said to be not told apart. --at may be
// given more than once.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Comparisons;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Keeping;
using Confectio.Measures;
using Confectio.Uncertainty;

Cli cli = new("compare.cs", "Compares two formulas. Exit status: 0 they are one formula, but for how much is made; 1 they differ; 2 bad usage, or a formula that cannot be read.");
Argument<string> firstFile = cli.Word("A"), secondFile = cli.Word("B");
Option<string[]> at = cli.Texts("--at", "24C");
Option<MeasuringSystem> system = cli.System();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string one = options.GetRequiredValue(firstFile), two = options.GetRequiredValue(secondFile);
    MeasuringSystem cups = options.GetRequiredValue(system);
    Formula first = Shell.Named(one, () => Food.Read(one, cups)), second = Shell.Named(two, () => Food.Read(two, cups));
    double[] celsius = [.. options.GetRequiredValue(at).Select(text => Shell.Named($"--at {text}", () => QuantityText.ParseCelsius(text)))];
    FormulaComparison comparison = Shell.Named("--at", () => FormulaComparison.Of(first, second, celsius.Length == 0 ? new ComparisonOptions() : new ComparisonOptions { Celsius = celsius }));
    return Shell.Answer(options.GetValue(json) ? Document(comparison) : Text(comparison), comparison.AreTheSame ? 0 : 1);
});

static string Text(FormulaComparison comparison)
{
    Page page = new();
    page.Line($"First:  {Title(comparison.First)}");
    page.Line($"Second: {Title(comparison.Second)}");
    page.Line($"");
    if (comparison.AreTheSame)
        page.Line($"  They are one formula, but for how much is made.");
    foreach (ComparisonVerdict verdict in Verdicts(comparison))
        page.Line($"  {verdict.Sentence}");
    bool bakers = comparison.Lines.Any(line => line.FirstBakersPercent is not null || line.SecondBakersPercent is not null);
    page.Line($"\n  {"of what is put in",-30}{"first",9}{"",9}{"second",11}{"",9}{"change",9}{(bakers ? $"{"of flour",12}" : "")}");
    foreach (ComparedLine line in comparison.Lines)
    {
        string change = line.IsOnlyInFirst ? "gone" : line.IsOnlyInSecond ? "new" : Change(line.Percent);
        page.Line($"{$"  {line.Ingredient.Name,-30}{Grams(line.FirstGrams),9}{Percent(line.FirstGrams, line.Percent.First),9}{Grams(line.SecondGrams),11}{Percent(line.SecondGrams, line.Percent.Second),9}{change,9}{(bakers ? $"{Flour(line.FirstBakersPercent),9}{Flour(line.SecondBakersPercent),9}" : "")}".TrimEnd()}");
    }
    if (comparison.FirstBoiledOffPercent > 0 || comparison.SecondBoiledOffPercent > 0)
        page.Line($"  {"water boiled off",-30}{comparison.First.BoiledOffGrams,7:0.#} g{comparison.FirstBoiledOffPercent,7:0.0} %{comparison.Second.BoiledOffGrams,9:0.#} g{comparison.SecondBoiledOffPercent,7:0.0} %");
    page.Line($"\n  {"what comes out has",-30}{"first",9}{"second",9}{"change",9}   range of the change");
    foreach (ComparedFigure figure in comparison.Parts.Append(comparison.Sweetness).Concat(comparison.SolidFat).Append(comparison.WaterActivity))
        page.Line($"{$"  {figure.Name,-30}{Number(figure, figure.First),9}{Number(figure, figure.Second),9}{Change(figure),9}{Range(figure)}".TrimEnd()}");
    page.Line($"  Parts in per cent; sweetness in grams of sucrose that 100 g are as sweet as; solid fat in per cent of the whole.");
    page.Section("\nWhat the figures leave out", comparison.SolidFat.Append(comparison.Sweetness).Append(comparison.WaterActivity).Where(figure => figure.Why.Length > 0).Select(figure => $"  {figure.Name}: {figure.Why}"));
    page.Words($"\n{KeepingAnswer.Caution}");
    if (comparison.NewAllergens.Count > 0)
        page.Line($"\nThe second has what the first has not to declare: {string.Join(", ", comparison.NewAllergens.Select(Food.Word))}.");
    page.Line($"\nThe first:");
    page.AddFood(comparison.First);
    page.Line($"\nThe second:");
    page.AddFood(comparison.Second);
    return page.ToString();
}

static string Title(Formula formula) => string.Create(CultureInfo.InvariantCulture, $"{(formula.Name.Length > 0 ? formula.Name + ", " : "")}{formula.TotalGrams:0.#} g");

static IEnumerable<ComparisonVerdict> Verdicts(FormulaComparison comparison) => comparison.Softer.Prepend(comparison.Sweeter).Concat(comparison.KeepsLonger);

static string Grams(double? grams) => grams is double mass ? string.Create(CultureInfo.InvariantCulture, $"{mass:0.#} g") : "-";

static string Percent(double? grams, Spread? percent) => grams is not null && percent is Spread known ? string.Create(CultureInfo.InvariantCulture, $"{known.Likely:0.0} %") : "";

static string Flour(double? percent) => percent is double known ? string.Create(CultureInfo.InvariantCulture, $"{known:0.0} %") : "-";

static string Number(ComparedFigure figure, Spread? value) => value is Spread known ? known.Likely.ToString(figure.Unit.Length > 0 ? "0.0" : "0.000", CultureInfo.InvariantCulture) : "?";

static string Change(ComparedFigure figure) => figure.Answer switch
{
    ComparedAnswer.Same => "=",
    _ when IsNothing(figure) => "=",
    ComparedAnswer.NotKnown => "?",
    _ => figure.Difference is Spread known ? known.Likely.ToString(figure.Unit.Length > 0 ? "+0.0;-0.0;0.0" : "+0.000;-0.000;0.000", CultureInfo.InvariantCulture) : "?",
};

// Less than the last digit, whichever of the two has more.
static bool IsNothing(ComparedFigure figure) => figure.Difference is Spread known && Math.Max(Math.Abs(known.Low), Math.Abs(known.High)) < (figure.Unit.Length > 0 ? 0.05 : 0.0005);

static string Range(ComparedFigure figure)
{
    string form = figure.Unit.Length > 0 ? "+0.0;-0.0;0.0" : "+0.000;-0.000;0.000";
    return IsNothing(figure) || figure.Answer is ComparedAnswer.Same or ComparedAnswer.NotKnown || figure.Difference is not Spread known || known.Low == known.High ? ""
        : $"   {known.Low.ToString(form, CultureInfo.InvariantCulture)} to {known.High.ToString(form, CultureInfo.InvariantCulture)}{(figure.Answer == ComparedAnswer.CannotBeTold ? ", which has more cannot be told" : "")}";
}

static string Document(FormulaComparison comparison)
{
    JsonObject document = new()
    {
        ["same"] = comparison.AreTheSame,
        ["first"] = Side(comparison.First, comparison.FirstKeeping),
        ["second"] = Side(comparison.Second, comparison.SecondKeeping),
        ["verdicts"] = Json.Array(Verdicts(comparison), verdict => new JsonObject { ["question"] = verdict.Question, ["answer"] = Word(verdict.Answer), ["sentence"] = verdict.Sentence }),
        ["lines"] = Json.Array(comparison.Lines, line => new JsonObject
        {
            ["ingredient"] = line.Ingredient.Name,
            ["id"] = line.Ingredient.Id,
            ["firstGrams"] = Json.Number(line.FirstGrams),
            ["secondGrams"] = Json.Number(line.SecondGrams),
            ["percent"] = Figure(line.Percent),
            ["firstOnFlour"] = Json.Number(line.FirstBakersPercent),
            ["secondOnFlour"] = Json.Number(line.SecondBakersPercent),
        }),
        ["parts"] = Json.Array(comparison.Parts, part => Figure(part)),
        ["sweetness"] = Figure(comparison.Sweetness),
        ["solidFat"] = Json.Array(comparison.SolidFat, figure => Figure(figure)),
        ["waterActivity"] = Figure(comparison.WaterActivity),
        ["newAllergens"] = Food.Keys(comparison.NewAllergens),
        ["caution"] = KeepingAnswer.Caution,
    };
    return Json.Text(document);
}

static JsonObject Side(Formula formula, KeepingAnswer keeping)
{
    JsonObject side = new() { ["name"] = formula.Name, ["grams"] = Json.Number(formula.TotalGrams), ["takenFor"] = keeping.Food?.Key };
    side.AddFood(formula);
    return side;
}

static JsonObject Figure(ComparedFigure figure) => new()
{
    ["name"] = figure.Name,
    ["unit"] = figure.Unit,
    ["first"] = figure.First is Spread first ? Json.Range(first, 4) : null,
    ["second"] = figure.Second is Spread second ? Json.Range(second, 4) : null,
    ["difference"] = figure.Difference is Spread difference ? Json.Range(difference, 4) : null,
    ["answer"] = Word(figure.Answer),
    ["why"] = figure.Why,
};

static string Word(ComparedAnswer answer) => answer switch
{
    ComparedAnswer.Same => "same",
    ComparedAnswer.First => "first",
    ComparedAnswer.Second => "second",
    ComparedAnswer.CannotBeTold => "cannot-be-told",
    _ => "not-known",
};
