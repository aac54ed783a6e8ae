// Prints a formula, or the plan of a cake, as a card to hand out: grams, ounces and the cups and spoons of one or more kitchens, percentages, temperatures in both
// scales, the balance, allergens, cautions and what is not known.
//
//   dotnet run docs/examples/card.cs FILE [--as text|markdown|html|json-ld|json] [--systems us-customary,metric] [--names uk|us] [--portions 24 | --portion-grams 40g]
//                                    [--panel eu|us] [--bakers] [--rounding] [--temperature "oven=180 C"]... [--step "Whip until cool."]... [--title TEXT]
//                                    [--from us-customary] [--tools usual|full] [--culture de-DE] [--json]
//
// FILE is a formula in JSON, a text with an ingredient a line (and its method below), or an order of a cake as docs/schema/order.json describes it, which is printed as the sheet of its
// plan. --from says whose cups a text means. HTML is a whole page that prints on A4 and Letter: chromium --headless --print-to-pdf.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.RegularExpressions;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Publishing;

Cli cli = new("card.cs", "Prints a formula or the plan of a cake as a card. Exit status: 0 done; 2 bad usage, a file that cannot be read or used, or an answer that could not be written.");
Argument<string> fileWord = cli.Word("FILE");
Option<string> form = cli.Choice("--as", "text", ((string[])["text", "markdown", "html", "json-ld", "json"]).Select(word => (word, word)));
Option<MeasuringSystem[]> systems = cli.Value("--systems", "KEY,KEY", Systems, (MeasuringSystem[])[]);
Option<MeasuringSystem> from = cli.System("--from");
Option<string> names = cli.Choice("--names", "uk", ("uk", "uk"), ("us", "us")), tools = cli.Choice("--tools", "usual", ("usual", "usual"), ("full", "full"));
Option<double?> portions = cli.Number("--portions", "24");
Option<double> portionGrams = cli.Value("--portion-grams", "40g", text => QuantityText.ParseGrams(text), 0);
Option<LabelRules?> panel = cli.Choice("--panel", (LabelRules?)null, ("none", null), ("eu", LabelRules.EuropeanUnion), ("us", LabelRules.UnitedStates));
Option<bool> bakers = cli.Flag("--bakers"), rounding = cli.Flag("--rounding"), json = cli.Flag("--json");
Option<string[]> temperatures = cli.Texts("--temperature", "\"oven=180 C\""), steps = cli.Texts("--step", "TEXT");
Option<string> title = cli.Text("--title", "TEXT");
Option<CultureInfo?> culture = cli.Value("--culture", "de-DE", Culture, null);
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(fileWord), kind = options.GetValue(json) ? "json" : options.GetRequiredValue(form);
    MeasuringSystem[] kitchens = options.GetRequiredValue(systems);
    MeasuringSystem own = options.GetRequiredValue(from);
    string text = Shell.Named($"{file}: cannot be read", () => File.ReadAllText(file));
    bool isJson = text.AsSpan().TrimStart("\uFEFF \t\r\n").StartsWith("{"), isOrder = isJson && text.Contains("\"confectioOrder\"", StringComparison.Ordinal);
    double grams = options.GetValue(portionGrams);
    Formula? formula = isOrder ? null : Shell.Named(file, () => (isJson ? Formula.ReadJson(text, IngredientTable.BuiltIn)
        : Formula.ReadText(Name(file), new StringReader(text), IngredientTable.BuiltIn, own)).OrThrow());
    string[] told = options.GetRequiredValue(steps);
    CardOptions card = new()
    {
        MeasuringSystems = kitchens,
        Tools = options.GetRequiredValue(tools) == "full" ? [.. kitchens.Select(MeasuringTools.Full)] : [],
        Names = options.GetRequiredValue(names) == "us" ? IngredientTable.BuiltIn.WithAmericanNames() : null,
        Title = options.GetRequiredValue(title),
        Portions = options.GetValue(portions),
        PortionGrams = grams > 0 ? grams : null,
        Rules = options.GetValue(panel),
        Basis = options.GetValue(bakers) && formula is not null ? Flour(formula) : null,
        Temperatures = [.. options.GetRequiredValue(temperatures).Select(one => Shell.Named($"--temperature {one}", () => Temperature(one)))],
        Steps = told.Length > 0 || isJson ? told : Method(text, own),
        Culture = options.GetValue(culture),
        ShowsRounding = options.GetValue(rounding),
    };
    return Shell.Answer(formula is null ? Sheet(file, text, card, kind) : Card(FormulaCard.Of(formula, card), kind), 0);
});

static string Card(FormulaCard card, string kind) => kind switch
{
    "markdown" => card.ToMarkdown(),
    "html" => card.ToHtml(),
    "json-ld" => card.ToJsonLd(),
    "json" => card.ToJson(),
    _ => card.ToText(),
};

static string Sheet(string file, string text, CardOptions options, string kind)
{
    IcingOrder order = Shell.Named(file, () => IcingOrder.ParseJson(text, IngredientTable.BuiltIn));
    PlanSheet sheet = PlanSheet.Of(Shell.Named<IcingPlan[]>(file, () => order.Bowls.Count == 0 ? [order.Plan()] : [.. order.Bowls.Select(order.Plan)]), options);
    return kind switch
    {
        "markdown" => sheet.ToMarkdown(),
        "html" => sheet.ToHtml(),
        "text" => sheet.ToText(),
        "json" => Json.Text(new() { ["plans"] = Json.Array(sheet.Plans, plan => Json.Written(plan.WriteTo)) }),
        _ => throw new FormatException($"--as {kind}: a plan of a cake is no recipe; it is printed as text, markdown, html or json."),
    };
}

static MeasuringSystem[] Systems(string text) => [.. text.Split(',', StringSplitOptions.TrimEntries).Select(key => MeasuringSystem.TryGet(key, out MeasuringSystem? system) ? system
    : throw new FormatException(Cli.Expected(key, MeasuringSystem.All.Select(known => known.Key))))];

// A culture that the machine makes up for any word is none.
static CultureInfo Culture(string text) => CultureInfo.GetCultures(CultureTypes.AllCultures).FirstOrDefault(known => known.Name.Equals(text, StringComparison.OrdinalIgnoreCase) && known.Name.Length > 0)
    ?? throw new FormatException("a culture such as de-DE or en-US is expected.");

static FormulaPart Flour(Formula formula)
{
    Ingredient[] flours = [.. formula.Lines.Select(line => line.Ingredient).Where(food => food.Id.StartsWith("flour-", StringComparison.Ordinal)).Distinct()];
    return flours.Length > 0 ? FormulaPart.OfIngredients("flour", flours) : throw new FormatException("--bakers counts on the flour, and there is none in the formula.");
}

static CardTemperature Temperature(string text)
{
    Match match = Regex.Match(text, @"^\s*(?<name>[^=<>]+?)\s*(?<bound>[<>]?)=\s*(?<degrees>-?\d+(\.\d+)?)\s*°?(?<scale>[CF])\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));
    if (!match.Success)
        throw new FormatException("a name and a temperature such as \"oven=180 C\", \"dish>=165 F\" or \"cold<=5 C\" is expected.");
    CardTemperatureBound bound = match.Groups["bound"].Value switch { ">" => CardTemperatureBound.AtLeast, "<" => CardTemperatureBound.AtMost, _ => CardTemperatureBound.None };
    double degrees = double.Parse(match.Groups["degrees"].Value, CultureInfo.InvariantCulture);
    return match.Groups["scale"].Value is "F" or "f" ? CardTemperature.OfFahrenheit(match.Groups["name"].Value, degrees, bound) : CardTemperature.Of(match.Groups["name"].Value, degrees, bound);
}

static string Name(string file) => Path.GetFileNameWithoutExtension(file).Replace('-', ' ') is { Length: > 0 } name ? char.ToUpperInvariant(name[0]) + name[1..] : "";

// The instructions of a recipe, without their numbers.
static string[] Method(string text, MeasuringSystem system) => RecipeText.Read(text, IngredientTable.BuiltIn, new PhraseOptions { MeasuringSystem = system }).TryGet(out RecipeText? recipe)
    ? [.. recipe.Lines.Where(line => line.Phrase.Kind == PhraseKind.Instruction).Select(line => Regex.Replace(line.Phrase.Text.Trim(), @"^\d{1,3}[.)]\s+", "", RegexOptions.None, TimeSpan.FromSeconds(1)))] : [];
