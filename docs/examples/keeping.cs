// How long it keeps: the water activity as the formula will stand, what the table of the Food Code says, printed rules and times beside each other, and the strictest.
//
//   dotnet run docs/examples/keeping.cs FORMULA [--ph 5.2..6.0] [--kind meringue-buttercream] [--packaged-hot] [--room 25C] [--humidity 70%] [--json]
//
// FORMULA is a formula in JSON, or a text with a line an ingredient. Without --ph the acidity may be any: it is never guessed. --packaged-hot: closed at
// once after it was heated. With --humidity it says what happens when it comes out of the refrigerator or the freezer into the room.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Keeping;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Uncertainty;

Cli cli = new("keeping.cs", "Says what is known about keeping a formula. Exit status: 0 the table asks for no control of time and temperature; 1 it is required unless a "
    + "product assessment says otherwise; 2 bad usage, or a formula that cannot be read.");
Argument<string> formulaFile = cli.Word("FORMULA");
Option<Spread?> ph = cli.Value("--ph", "5.2..6.0", Acidity, null);
Option<KeptFood?> kind = cli.Value("--kind", string.Join('|', KeptFood.All.Select(food => food.Key)), text => (KeptFood?)KeptFood.Get(text), null);
Option<bool> packaged = cli.Flag("--packaged-hot");
Option<double> room = cli.Value("--room", "25C", text => QuantityText.ParseCelsius(text), 25);
Option<double?> humidity = cli.Percent("--humidity", "70%");
Option<MeasuringSystem> system = cli.System();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(formulaFile);
    KeepingAnswer answer = Shell.Named(file, () => KeepingAnswer.Of(Food.Read(file, options.GetRequiredValue(system)), options.GetValue(ph), options.GetValue(kind),
        options.GetValue(packaged), options.GetValue(room)));
    RoomAir? air = options.GetValue(humidity) is double damp ? Shell.Named("--room", () => RoomAir.Of(options.GetValue(room), damp)) : null;
    OutOfTheCold[] cold = air is null ? [] : Shell.Named("--room", () => new[] { KeepingPlace.Refrigerator, KeepingPlace.Freezer }.Select(place => OutOfTheCold.Of(answer, place, air)).ToArray());
    return Shell.Answer(options.GetValue(json) ? Document(answer, cold) : Text(answer, cold), answer.Control == ControlNeed.NotByTheTable ? 0 : 1);
});

static string Text(KeepingAnswer answer, OutOfTheCold[] cold)
{
    Page page = new();
    page.Line($"{answer.Formula.Name}");
    page.Line($"Taken for: {(answer.Food is null ? "no kind of food that printed advice is about; --kind tells one" : $"{answer.Food}{(answer.TakenFor.Length > 0 ? $", because {answer.TakenFor}; --kind tells another" : "")}")}\n");
    if (answer.WaterActivity is Spread activity)
        page.Line($"Water activity at {answer.Celsius:0.#} °C as it will stand: {activity.Likely:0.00} ({activity.Low:0.00} to {activity.High:0.00}), worked out from models{(answer.IsSaturated ? "; there is more sugar than dissolves, and more of it changes nothing" : "")}.");
    else
        page.Line($"Water activity: not known. {answer.WhyNoActivity}");
    if (answer.WaterActivityUngrained is Spread clear)
        page.Line($"As long as nothing in it has grained: {clear.Likely:0.00} ({clear.Low:0.00} to {clear.High:0.00}); the higher is judged by.");
    page.Line($"pH: {(answer.Ph is Spread acidity ? $"{acidity.Low:0.0#} to {acidity.High:0.0#}, as told" : "not known, and not guessed")}.");
    page.Line($"\n{answer.ControlSentence}");
    page.Section("\nThe strictest for each place", answer.Places.Select(place => $"  {place}"));
    page.Section("\nPrinted rules", answer.Rules.Where(rule => rule.Verdict != ColdRuleVerdict.DoesNotSay).Select(rule => $"  {rule}{Quoted(rule.Rule.Provenance)}"));
    page.Section("\nPrinted times of this kind of food", answer.Times.Select(time => $"  {time}{Quoted(time.Provenance)}"));
    if (answer.Food is { Note.Length: > 0 })
        page.Line($"\n{answer.Food.Note}");
    page.Section("\nOf its ingredients by themselves", answer.IngredientTimes.Select(time => $"  {time}"));
    page.Section("\nNeither water activity nor pH is known to keep these from growing, where it is warm enough", answer.MayGrow.GroupBy(limit => limit.Organism)
        .Select(group => $"  {group.Key}: {string.Join("; ", group.Select(limit => $"from {limit.LowWaterActivity.ToString("0.###", CultureInfo.InvariantCulture)} ({limit.Provenance.Source.ShortName}{(limit.Provenance.Evidence == Evidence.FromMemory ? ", from memory" : "")})"))}"));
    page.Section("\nWhat moves its water activity", answer.Movers.Select(mover => $"  {mover}"));
    page.Section("\nOut of the cold", cold.Select(one => $"  {one}"));
    page.Words($"\n{KeepingAnswer.Caution}{(cold.Length == 0 ? " With --humidity it is said how it comes out of the cold." : "")}");
    page.AddFood(answer.Formula);
    return page.ToString();
}

static string Quoted(Provenance provenance) => provenance.Note.Length > 0 ? $" [{provenance.Note}]" : "";

static string Document(KeepingAnswer answer, OutOfTheCold[] cold)
{
    JsonObject document = new()
    {
        ["name"] = answer.Formula.Name,
        ["kind"] = answer.Food?.Key,
        ["waterActivity"] = answer.WaterActivity is Spread activity ? Json.Range(activity, 4) : null,
        ["waterActivityUngrained"] = answer.WaterActivityUngrained is Spread clear ? Json.Range(clear, 4) : null,
        ["saturated"] = answer.IsSaturated,
        ["ph"] = answer.Ph is Spread acidity ? Json.Range(acidity, 4) : null,
        ["control"] = new JsonObject
        {
            ["table"] = answer.IsHeatedAndPackaged ? "A" : "B",
            ["answer"] = answer.Control == ControlNeed.NotByTheTable ? "not-required-by-this-table" : "required-unless-assessed",
            ["sentence"] = answer.ControlSentence,
        },
        ["places"] = Json.Array(answer.Places, place => new JsonObject { ["place"] = Word(place.Place), ["days"] = Json.Number(place.Days), ["sentence"] = place.Sentence }),
        ["advice"] = Json.Array(answer.Times, time => new JsonObject
        {
            ["place"] = Word(time.Place),
            ["suitable"] = time.IsSuitable,
            ["days"] = new JsonObject { ["low"] = Json.Number(time.LowDays), ["high"] = Json.Number(time.HighDays) },
            ["asPrinted"] = time.AsPrinted,
            ["presumes"] = time.Presumes,
            ["source"] = time.Provenance.Source.ShortName,
            ["kind"] = time.Provenance.Evidence.ToWord(),
        }),
        ["rules"] = Json.Array(answer.Rules.Where(rule => rule.Verdict != ColdRuleVerdict.DoesNotSay), rule => new JsonObject
        {
            ["verdict"] = rule.Verdict switch { ColdRuleVerdict.KeepCold => "keep-cold", ColdRuleVerdict.TestFirst => "test-first", _ => "may-stand-out" },
            ["rule"] = rule.Rule.Text,
            ["source"] = rule.Rule.Provenance.Source.ShortName,
        }),
        ["outOfTheCold"] = Json.Array(cold, one => new JsonObject
        {
            ["from"] = Word(one.From),
            ["dewPointCelsius"] = Json.Number(one.Air.DewPointCelsius, 1),
            ["sweats"] = one.Sweats,
            ["minutesToDewPoint"] = Json.Range(one.MinutesToDewPoint, 0),
            ["condensation"] = one.CondensationSentence,
            ["thawing"] = one.ThawingSentence,
        }),
        ["caution"] = KeepingAnswer.Caution,
        ["movers"] = Json.Array(answer.Movers, mover => new JsonObject { ["ingredient"] = mover.Ingredient.Name, ["changeOfATenthMore"] = Json.Number(mover.Change, 4) }),
    };
    document.AddFood(answer.Formula);
    return Json.Text(document);
}

static string Word(KeepingPlace place) => place.ToString().ToLowerInvariant();

static Spread? Acidity(string text)
{
    string[] ends = text.Split("..");
    if (ends.Length is 0 or > 2 || !ends.All(end => double.TryParse(end, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) && value is >= 0 and <= 14))
        throw new FormatException("a pH from 0 to 14 or a range such as 5.2..6.0 is expected.");
    double[] values = [.. ends.Select(end => double.Parse(end, CultureInfo.InvariantCulture))];
    return values[0] <= values[^1] ? new Spread(values[0], (values[0] + values[^1]) / 2, values[^1], SpreadBasis.Sources) : throw new FormatException("the lower pH comes first.");
}
