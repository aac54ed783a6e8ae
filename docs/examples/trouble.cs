// What went wrong with an icing: the likely causes with the figure behind each, what helps with its grams and degrees, and what to measure next.
//
//   dotnet run docs/examples/trouble.cs FORMULA --what curdled [--at butter=8C] [--at meringue=30C] [--at mix=14C] [--cooked-to 118C] [--minutes 12] [--room 24C] [--humidity 70%] [--cup 190g] [--json]
//
// FORMULA is a formula in JSON, or a text with a line an ingredient. --what is in your own words: "split", "runny", "went all gritty". --at is the temperature of an ingredient when it
// went in, or of meringue, syrup, fat, or of the mix as it is; it may be given more than once. --cooked-to is how hot the syrup was boiled, in degrees or as a stage such as soft-ball, or the whites with their sugar were warmed.
// --cup is what a level cup of it weighs.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Text.Json.Nodes;
using Confectio.Cooking;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Keeping;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Troubles;
using Confectio.Uncertainty;

Cli cli = new("trouble.cs", "Looks for what went wrong with an icing. Exit status: 0 a figure speaks for a cause or leaves it in doubt; 1 no cause can be told yet; 2 bad usage, or a formula "
    + "that cannot be read.");
Argument<string> formulaFile = cli.Word("FORMULA");
Option<IReadOnlyList<Trouble>?> what = cli.Value("--what", "curdled", text => (IReadOnlyList<Trouble>?)Trouble.Named(text), null, isNeeded: true);
Option<string[]> at = cli.Texts("--at", "butter=8C");
Option<(CookingStage? Stage, double Celsius)?> cooked = cli.Value<(CookingStage?, double)?>("--cooked-to", "118C", text => CookingStage.TryGet(text, out CookingStage? stage) ? (stage, 0)
    : (null, QuantityText.ParseCelsius(text)), null);
Option<double?> room = cli.Value("--room", "24C", text => (double?)QuantityText.ParseCelsius(text), null);
Option<double?> minutes = cli.Number("--minutes", "12"), humidity = cli.Percent("--humidity", "70%");
Option<double?> cup = cli.Value("--cup", "190g", text => (double?)QuantityText.ParseGrams(text), null);
Option<MeasuringSystem> system = cli.System();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(formulaFile);
    MeasuringSystem cups = options.GetRequiredValue(system);
    Formula formula = Shell.Named(file, () => Food.Read(file, cups));
    TroubleFacts facts = TroubleFacts.None;
    foreach (string part in options.GetValue(at) ?? [])
    {
        facts = Shell.Named($"--at {part}", () => part.Split('=') is [string name, string celsius] ? facts.At(name, QuantityText.ParseCelsius(celsius))
            : throw new FormatException("a part and its temperature such as butter=8C are expected."));
    }
    if (options.GetValue(cooked) is (var stage, double hot))
        facts = Shell.Named("--cooked-to", () => stage is null ? facts.CookedTo(hot) : facts.CookedTo(stage));
    if (options.GetValue(minutes) is double beaten)
        facts = Shell.Named("--minutes", () => facts.Beaten(beaten));
    if (options.GetValue(humidity) is double damp)
    {
        double warm = options.GetValue(room) ?? throw new FormatException("--humidity: it needs --room, the temperature of the air.");
        facts = Shell.Named("--room", () => facts.InRoom(RoomAir.Of(warm, damp)));
    }
    else if (options.GetValue(room) is double celsius)
        facts = Shell.Named("--room", () => facts.InRoom(celsius));
    if (options.GetValue(cup) is double grams)
        facts = Shell.Named("--cup", () => facts.Weighing(grams / cups.MillilitresPer(KitchenUnit.Cup)));
    Diagnosis found = Shell.Named("--at", () => Diagnosis.Of(formula, options.GetValue(what)!, facts));
    return Shell.Answer(options.GetValue(json) ? Document(found) : Text(found), found.Ranked.Count > 0 ? 0 : 1);
});

static string Text(Diagnosis found)
{
    Page page = new();
    page.Line($"{found.Formula.Name}: {string.Join(", ", found.Troubles)}");
    page.Line($"Known: {found.Facts}.");
    page.Line($"{Capital(found.MixSentence)}.");
    int number = 0;
    foreach (TroubleFinding finding in found.Ranked)
    {
        page.Line($"\n{++number}. {(finding.Standing == TroubleStanding.InDoubt ? "Perhaps" : number == 1 ? "Most likely" : "Also likely")}: {finding.Cause.Says}.");
        page.Section("", finding.For.Select(why => $"   Why: {why}."));
        page.Section("", finding.Against.Select(why => $"   Against: {why}."));
        page.Line($"   Do: {finding.Remedy}");
    }
    if (number == 0)
        page.Words("\nNo cause can be told yet from this.");
    page.Section("\nSpoken against", found.SpokenAgainst.Select(finding => $"  {Capital(finding.Cause.Says)}: no, {string.Join("; ", finding.Against)}."));
    page.Section("\nCannot be told yet, in no order", found.CannotBeTold.Select(finding => $"  {Capital(finding.Cause.Says)}. If so: {finding.Remedy}"));
    page.Section("\nMeasure next", found.ToMeasure.Select(measure => $"  {measure}"));
    page.Words($"\n{Diagnosis.HowRanked}");
    page.Section("", found.Cautions.Select(caution => $"Caution: {caution}"));
    page.AddFood(found.Formula);
    return page.ToString();
}

static string Capital(string says) => char.ToUpperInvariant(says[0]) + says[1..];

static string Document(Diagnosis found)
{
    JsonObject document = new()
    {
        ["name"] = found.Formula.Name,
        ["troubles"] = Json.Array(found.Troubles, trouble => trouble.Key),
        ["known"] = found.Facts.ToString(),
        ["mix"] = found.Mix is Spread mix ? Json.Range(mix, 1) : null,
        ["mixSentence"] = found.MixSentence,
        ["notTold"] = Json.Array(found.NotTold, name => name),
        ["ranked"] = Json.Array(found.Ranked, Finding),
        ["spokenAgainst"] = Json.Array(found.SpokenAgainst, Finding),
        ["cannotBeTold"] = Json.Array(found.CannotBeTold, Finding),
        ["measure"] = Json.Array(found.ToMeasure, measure => measure),
        ["howRanked"] = Diagnosis.HowRanked,
        ["remedyCautions"] = Json.Array(found.Cautions, caution => caution),
    };
    document.AddFood(found.Formula);
    return Json.Text(document);
}

static JsonNode Finding(TroubleFinding finding) => new JsonObject
{
    ["cause"] = finding.Cause.Key,
    ["says"] = finding.Cause.Says,
    ["standing"] = finding.Standing switch { TroubleStanding.SpeaksFor => "speaks-for", TroubleStanding.InDoubt => "in-doubt", TroubleStanding.SpeaksAgainst => "speaks-against", _ => "cannot-be-told" },
    ["figure"] = finding.Figure is Spread figure ? Json.Range(figure, 2) : null,
    ["of"] = finding.Decides?.Quantity,
    ["past"] = finding.Past is Spread past ? Json.Range(past, 2) : null,
    ["for"] = Json.Array(finding.For, why => why),
    ["against"] = Json.Array(finding.Against, why => why),
    ["source"] = (finding.Decides ?? finding.Cause.Signs[0]).Provenance.Source.ShortName,
    ["kind"] = (finding.Decides ?? finding.Cause.Signs[0]).Provenance.Evidence.ToWord(),
    ["remedy"] = new JsonObject
    {
        ["text"] = finding.Remedy.Text,
        ["ingredient"] = finding.Remedy.StirredIn?.Name,
        ["grams"] = finding.Remedy.Grams is Spread grams ? Json.Range(grams, 1) : null,
        ["celsius"] = finding.Remedy.Celsius is Spread celsius ? Json.Range(celsius, 1) : null,
        ["warmedGrams"] = Json.Number(finding.Remedy.WarmedGrams, 0),
        ["iceGrams"] = Json.Number(finding.Remedy.IceGrams, 0),
    },
};
