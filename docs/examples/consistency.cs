// From stiff to flood and back: how stiff an icing is by its water, and what to stir in to take it to another consistency.
//
//   dotnet run docs/examples/consistency.cs FORMULA --to medium [--sort royal-icing] [--with milk] [--thicken "icing sugar"] [--seconds 15 --trials "20:40 23:20 26:10"] [--json]
//
// FORMULA is a formula in JSON, or a text with a line an ingredient. --trials is your own calibration of a flowing icing: grams of water to 100 g of sugars, and the seconds
// until a cut closes; with --seconds it takes the icing there.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;
using Confectio.Textures;
using Confectio.Uncertainty;

Cli cli = new("consistency.cs", "Says how stiff an icing is by its water, and what to stir in. Exit status: 0 done; 2 bad usage, or an icing that cannot be judged so.");
Argument<string> formulaFile = cli.Word("FORMULA");
Option<ConsistencyBand?> to = cli.Choice<ConsistencyBand?>("--to", null, Enum.GetValues<ConsistencyBand>().Select(band => (band.ToString().ToLowerInvariant(), (ConsistencyBand?)band)));
Option<ConsistencySort?> sort = cli.Value("--sort", string.Join('|', ConsistencySort.All.Select(one => one.Key)), text => (ConsistencySort?)ConsistencySort.Get(text), null);
Option<string> with = cli.Text("--with", "milk"), thicken = cli.Text("--thicken", "\"icing sugar\"");
Option<double?> seconds = cli.Value("--seconds", "15", text => (double?)Number(text), null);
Option<FlowTrials?> trials = cli.Value("--trials", "\"20:40 23:20 26:10\"", Trials, null);
Option<MeasuringSystem> system = cli.System();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(formulaFile);
    MeasuringSystem spoons = options.GetRequiredValue(system);
    Formula formula = Shell.Named(file, () => Food.Read(file, spoons));
    ConsistencySort judged = options.GetValue(sort) ?? Guess(formula);
    IcingConsistency now = Shell.Named(file, () => IcingConsistency.Of(formula, judged));
    Ingredient liquid = Named("--with", options.GetRequiredValue(with), "water"), sugar = Named("--thicken", options.GetRequiredValue(thicken), "icing sugar");
    FlowTrials? own = options.GetValue(trials);
    if (options.GetValue(seconds) is not null && own is null)
        throw new FormatException("--seconds: it needs --trials, your own calibration; none is published.");
    ConsistencyStep? step = options.GetValue(seconds) is double wanted ? Shell.Named("--seconds", () => now.ToWater(own!.WaterFor(wanted), liquid, sugar))
        : options.GetValue(to) is ConsistencyBand band ? now.To(band, liquid, sugar) : null;
    return Shell.Answer(options.GetValue(json) ? Document(now, options.GetValue(to), step) : Text(now, step, own, spoons), 0);
});

static string Text(IcingConsistency now, ConsistencyStep? step, FlowTrials? own, MeasuringSystem spoons)
{
    Page page = new();
    page.Line($"{now.Formula.Name}");
    page.Line($"\n{now}");
    if (now.WaterPhase is Spread phase)
        page.Line($"Water and what dissolves in it is {100 * phase.Likely:0} % of the volume without air ({100 * phase.Low:0} to {100 * phase.High:0}).");
    Spread cups = IcingYield.Of(now.Formula, IcingAir.Get(now.Sort.Key)).Cups(spoons);
    page.Line($"It makes some {cups.Likely:0.0} cups ({cups.Low:0.0} to {cups.High:0.0}; {spoons.Name}, its air is estimated: weigh a cup); {IcingCrust.Of(now.Formula)}.");
    page.Section($"\nBands of {now.Sort}", now.Sort.Bands.Select(band => $"  {band}{(band == now.Band ? "   <- here" : "")}"));
    if (own is not null && now.WaterPer100Sugars >= own.LowWater && now.WaterPer100Sugars <= own.HighWater)
    {
        Spread at = own.SecondsAt(now.WaterPer100Sugars);
        page.Line($"\nBy your own trials a cut closes in {at.Likely:0.#} s ({at.Low:0.#} to {at.High:0.#}).");
    }
    if (step is not null)
    {
        page.Line($"\nStir in {step}");
        if (step.Grams.High > 0)
            page.Line($"  that is {step.GramsPerPound:0.#} g to a pound (454 g){(step.Thickens ? "" : $", {step.TeaspoonsPerPound(spoons):0.#} teaspoons ({spoons.Name})")}");
        page.Words("  Half of it first, then look: how it was beaten, the grain of the sugar and the warmth of the room count too.");
    }
    page.AddFood(now.Formula);
    return page.ToString();
}

static string Document(IcingConsistency now, ConsistencyBand? to, ConsistencyStep? step)
{
    JsonObject document = new()
    {
        ["name"] = now.Formula.Name,
        ["sort"] = now.Sort.Key,
        ["now"] = new JsonObject
        {
            ["band"] = now.BandText,
            ["waterPer100Sugars"] = Json.Number(now.WaterPer100Sugars, 2),
            ["waterPhase"] = now.WaterPhase is Spread phase ? Json.Range(phase) : null,
        },
        ["millilitres"] = Json.Range(IcingYield.Of(now.Formula, IcingAir.Get(now.Sort.Key)).Millilitres, 0),
        ["crust"] = IcingCrust.Of(now.Formula).Outlook.ToString().ToLowerInvariant(),
        ["sugarNotDissolvedPercent"] = Json.Number(IcingCrust.Of(now.Formula).ExcessSugarPercent, 1),
        ["to"] = to?.ToString().ToLowerInvariant(),
        ["add"] = step is null ? null : new JsonObject { ["ingredient"] = step.StirredIn.Name, ["thickens"] = step.Thickens, ["grams"] = Json.Range(step.Grams) },
        ["bands"] = Json.Array(now.Sort.Bands, band => new JsonObject
        {
            ["band"] = band.Band.ToString().ToLowerInvariant(),
            ["low"] = band.Low,
            ["high"] = band.High,
            ["kind"] = band.Provenance.Evidence.ToWord(),
            ["note"] = band.Provenance.Note,
        }),
    };
    document.AddFood(now.Formula);
    return Json.Text(document);
}

// With fat it is a buttercream, with egg white a royal icing, else a glaze.
static ConsistencySort Guess(Formula formula) => ConsistencySort.Get(Balance.Of(formula)[FormulaPart.Fat].Fraction.Likely > 0.03 ? "buttercream"
    : formula.Allergens.Contains(Allergen.Egg) ? "royal-icing" : "icing-sugar-glaze");

static Ingredient Named(string option, string name, string usual)
{
    IngredientTable table = IngredientTable.BuiltIn;
    return table.MatchName(name.Length > 0 ? name : usual).Ingredient
        ?? throw new FormatException($"{option} {name}: there is no such ingredient in the table.");
}

static double Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) ? value
    : throw new FormatException("a number with a decimal point is expected.");

static FlowTrials? Trials(string text)
{
    string[] parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
    return FlowTrials.Of([.. parts.Select(part => part.Split(':') is [string water, string time] ? (Number(water), Number(time))
        : throw new FormatException("trials such as \"20:40 23:20 26:10\" are expected, grams of water to 100 g of sugars and seconds."))]);
}
