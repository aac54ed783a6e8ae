// Replaces fresh whites by dried or pasteurised ones and water, at equal solids or protein, and says what the kitchen rules would have given.
//
//   dotnet run docs/examples/whites.cs --replace "8 large" --system us --with dried --moisture 8%
//       [--solids 12%] [--match protein] [--measures us-customary] [--json]
//
// --replace takes a count and a size of the egg system (us, eu, japan), a mass (264 g) or a volume (1 cup). --with takes dried, dried-flakes,
// pasteurised, frozen, or the key of a form. --measures is whose cups and spoons.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Eggs;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;

Cli cli = new("whites.cs", "Replaces fresh egg whites. Exit status: 0 done; 2 bad usage, an egg that cannot be replaced so, or an answer that could not be written.");
EggForms forms = EggForms.Of(IngredientTable.BuiltIn);
Option<string> replace = cli.Text("--replace", "\"8 large\"", isNeeded: true), sizes = cli.Text("--system", "us|eu|japan");
Option<EggForm> with = cli.Value("--with", "dried|dried-flakes|pasteurised|frozen|KEY", text => forms.Get(text switch
{
    "dried" => "dried-white",
    "dried-flakes" => "dried-white-flakes",
    "pasteurised" => "pasteurised-white",
    "frozen" => "frozen-white",
    _ => text,
}), forms.FreshWhite, isNeeded: true);
Option<double?> moisture = cli.Value("--moisture", "8%", Percent, null), solids = cli.Value("--solids", "12%", Percent, null);
Option<EggMatch> match = cli.Choice("--match", EggMatch.Solids, ("solids", EggMatch.Solids), ("protein", EggMatch.Protein));
Option<MeasuringSystem> measuresOption = cli.System("--measures");
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    EggForm incoming = options.GetRequiredValue(with);
    MeasuringSystem measures = options.GetRequiredValue(measuresOption);
    if (options.GetValue(moisture) is double water)
        incoming = incoming.WithMoisture(water);
    string egg = options.GetRequiredValue(replace).Trim(), system = options.GetRequiredValue(sizes);
    // A count and a size, such as 8 large: the size needs its system, for a large egg is not the same everywhere.
    int space = egg.IndexOf(' ', StringComparison.Ordinal);
    EggReplacement replacement = space > 0 && double.TryParse(egg.AsSpan(0, space), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double count)
        && system.Length > 0 && EggSizeSystem.Get(system).TryGetSize(egg[space..].Trim(), out EggSize? size)
        ? EggReplacement.Of(EggCount.Of(count, size), incoming, options.GetValue(match), options.GetValue(solids))
        : EggReplacement.Of(forms.FreshWhite, Measured(egg, system), measures, incoming, options.GetValue(match), options.GetValue(solids));
    return Shell.Answer(options.GetValue(json) ? Document(replacement) : Text(replacement, measures), 0);
});

static Amount Measured(string egg, string system) => Amount.TryParse(egg, out Amount read) && !read.IsPiece ? read : throw new FormatException(system.Length > 0
    ? $"--replace {egg}: a count and a size of {system} is expected, such as 8 large, or a mass or a volume."
    : $"--replace {egg}: a mass or a volume is expected; a count of eggs needs --system us, eu or japan.");

static double? Percent(string text) => text.EndsWith('%')
    && double.TryParse(text.AsSpan(0, text.Length - 1).Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double percent)
    ? percent / 100 : throw new FormatException("a percentage is expected, such as 8%.");

static string Text(EggReplacement replacement, MeasuringSystem measures)
{
    Page page = new();
    EggForm incoming = replacement.Incoming;
    page.Line($"{replacement.ReplacedGrams:0.#} g of {replacement.Outgoing}");
    page.Line($"  by {incoming}, at equal {(replacement.Match == EggMatch.Protein ? "protein" : "solids")}");
    page.Line($"\n  {(incoming.IsDry ? "powder" : "white"),-10}{replacement.IncomingGrams.Likely,8:0.0} g");
    page.Line($"  {"water",-10}{replacement.WaterGrams,8:0.0} g{(replacement.WaterGrams < 0 ? "   the formula gives up so much water" : "")}");
    page.Line($"  {"solids",-10}{replacement.SolidsPercent,8:0.00} %   protein {100 * replacement.ProteinKept:0} % of what went out");
    page.Line($"  in {measures.Name} measures: {replacement.InMeasures(measures)}");
    page.Section("", ((string[])[replacement.Preparation, incoming.Note]).Where(note => note.Length > 0).Select(note => $"  {note}"));
    if (incoming is { IsDry: true, Part: EggPart.White })
    {
        page.Line($"\nWhat the kitchen rules give of this powder (fresh white has {100 * incoming.Forms.FreshWhite.SolidsFraction.Likely:0.00} % solids, pasteurised {100 * incoming.Forms.PasteurisedWhite.SolidsFraction.Likely:0.00})");
        foreach (ReconstitutionRule rule in ReconstitutionRule.All)
        {
            ReconstitutionResult result = replacement.ByRule(rule, measures);
            page.Line($"  {rule.Name}");
            page.Line($"    {result.PowderGrams.Likely:0.0} g of powder and {result.WaterGrams.Likely:0.0} g of water: {result.SolidsPercent:0.00} % solids, {100 * result.SolidsShare:0} % of those of the fresh white");
        }
    }
    page.AddFood(Made(replacement));
    return page.ToString();
}

static string Document(EggReplacement replacement)
{
    JsonObject document = new()
    {
        ["powderGrams"] = Json.Number(replacement.IncomingGrams.Likely),
        ["waterGrams"] = Json.Number(replacement.WaterGrams),
        ["solidsPercent"] = Json.Number(replacement.SolidsPercent),
        ["replacedGrams"] = Json.Number(replacement.ReplacedGrams.Likely),
    };
    document.AddFood(Made(replacement));
    document.Remove("oftenContains");
    return Json.Text(document);
}

// The cautions are those of what goes in, not of what it replaces.
static Formula Made(EggReplacement replacement) => Formula.Of("", [FormulaLine.Of(replacement.Incoming.Ingredient, replacement.IncomingGrams.Likely)]);
