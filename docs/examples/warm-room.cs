// Whether an icing stands in a warm room: how much of its fat is solid, until which temperature it stays in the published windows, what it does over an
// afternoon, and the most butter that still holds.
//
//   dotnet run docs/examples/warm-room.cs FORMULA --room 31C [--afternoon "9:00 21C, 14:00 31C, 18:00 27C"] [--start 18C] [--cake 20x10] [--firm "white shortening"] [--svg FILE] [--json]
//
// FORMULA is a formula in JSON, or a text with a line an ingredient. --afternoon: the room by the clock or by minutes, a temperature each. --cake: across and
// high in cm, with a coat of 5 mm. --start: the cake at the first reading; the temperature of the room then unless told.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Pictures;
using Confectio.Sources;
using Confectio.Uncertainty;

const string Promise = "They were found for buttercreams of margarine and shortening. A direction and no promise: pipe a rosette and leave it in the room first. That it stands says nothing of how long it may be left there: keeping.cs tells what is printed, and local codes decide.";

Cli cli = new("warm-room.cs", "Says whether an icing stands in a warm room. Exit status: 0 it stands; 1 it does not, it is doubtful, or nothing is judged; 2 bad usage, or a formula that cannot be read.");
Argument<string> formulaFile = cli.Word("FORMULA");
Option<double?> room = cli.Value<double?>("--room", "31C", text => Room(text), null, isNeeded: true);
Option<(double Minutes, double Celsius)[]> afternoon = cli.Value("--afternoon", "\"9:00 21C, 14:00 31C\"", Readings, []);
Option<double?> start = cli.Value<double?>("--start", "18C", text => Start(text), null);
Option<(double Across, double High)> cake = cli.Value("--cake", "20x10", Size, (20, 10));
Option<Ingredient> firm = cli.Value("--firm", "\"white shortening\"", text => IngredientTable.BuiltIn.MatchName(text).Ingredient ?? throw new FormatException("no such ingredient in the table."), IngredientTable.BuiltIn.Get("white shortening"));
Option<string> svg = cli.Text("--svg", "FILE");
Option<MeasuringSystem> system = cli.System();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(formulaFile);
    double celsius = options.GetValue(room)!.Value;
    (Formula formula, WarmRoom verdict) = Shell.Named(file, () =>
    {
        Formula read = Food.Read(file, options.GetRequiredValue(system));
        return (read, read.InWarmRoom(celsius));
    });
    WindowLimit[] limits = [.. FatWindow.All.Select(window => formula.Until(window))];
    (double Minutes, double Celsius)[] readings = options.GetRequiredValue(afternoon);
    (double across, double high) = options.GetValue(cake);
    WarmAfternoon? day = readings.Length == 0 ? null : formula.InWarmAfternoon(readings.Select(reading => new ThermometerReading { Minutes = reading.Minutes, Celsius = reading.Celsius }),
        options.GetValue(start) ?? readings[0].Celsius, WarmAfternoon.RateOfCake(across, high, 5));
    HoldingBlend[] blends = verdict.Stands == WindowAnswer.Yes && day is not { Stands: not WindowAnswer.Yes } ? [] : Blends(formula, options.GetRequiredValue(firm), celsius, day);
    if (options.GetRequiredValue(svg) is { Length: > 0 } picture)
        File.WriteAllText(picture, SolidFatPicture.Svg(formula, celsius));
    WindowAnswer stands = Worse(verdict.Stands, day?.Stands);
    return Shell.Answer(options.GetValue(json) ? Document(formula, verdict, limits, day, blends, stands) : Text(formula, verdict, limits, day, blends), stands == WindowAnswer.Yes ? 0 : 1);
});

static WindowAnswer Worse(WindowAnswer one, WindowAnswer? other) => one == WindowAnswer.NotJudged ? WindowAnswer.NotJudged : one == WindowAnswer.No || other == WindowAnswer.No ? WindowAnswer.No
    : one == WindowAnswer.Yes && other is null or WindowAnswer.Yes && one == WindowAnswer.Yes ? WindowAnswer.Yes : WindowAnswer.Doubtful;

static HoldingBlend[] Blends(Formula formula, Ingredient firm, double celsius, WarmAfternoon? day)
{
    Ingredient? butter = formula.Lines.Where(line => line.Ingredient.Id.StartsWith("butter-", StringComparison.Ordinal)).MaxBy(line => line.Grams.Likely)?.Ingredient;
    if (butter is null)
        return [];
    Ingredient water = IngredientTable.BuiltIn.Get("water");
    // An afternoon may be warmer than the room that was asked about.
    double warmest = Math.Clamp(Math.Max(celsius, day?.WarmestCelsius.Likely ?? 0), WarmRoom.MinimumCelsius, WarmRoom.MaximumCelsius);
    return [formula.MostThatHolds(butter, firm, water, warmest), formula.MostThatHolds(butter, firm, water, warmest, surely: true)];
}

static string Text(Formula formula, WarmRoom verdict, WindowLimit[] limits, WarmAfternoon? day, HoldingBlend[] blends)
{
    Page page = new();
    page.Line($"{formula.Name}");
    page.Words($"\nAt {Degrees(verdict.Fat.Celsius)}: {(verdict.Stands switch { WindowAnswer.Yes => "IT STANDS", WindowAnswer.No => "IT DOES NOT STAND", WindowAnswer.NotJudged => "NOT JUDGED", _ => "DOUBTFUL" })}. {Capital(verdict.Why)}");
    page.Section("\nSolid fat, in 100 g of its fat", ((double[])[18, 20, 24, 28, 31, 35]).Append(verdict.Fat.Celsius).Distinct().Order().Select(celsius => Solid(formula.SolidFat(celsius))));
    page.Section("\nIt is within these windows until (from 20 to 40 °C is judged)", limits.Where(limit => limit.UntilCelsius is not null).Select(limit => $"  {limit.Window.Use}, {limit.Window.Of}: {Until(limit)}"));
    if (day is not null)
    {
        page.Words($"\nThe afternoon: {day}");
        page.Section("", Moments(day));
        page.Section("", day.Cautions.Select(words => $"  {words}"));
    }
    page.Section("\nThe most butter that holds, at equal fat and water", blends.Select(blend => $"  {Capital(blend.Why)}."));
    page.Section("\nWhat this leaves out", verdict.Fat.Cautions.Select(words => $"  {words}"));
    page.Words($"\nWindows: {string.Join("; ", FatWindow.All.Select(window => window.Provenance.ToString()).Distinct())}. {Promise}");
    page.AddFood(formula);
    return page.ToString();
}

static IEnumerable<string> Moments(WarmAfternoon day)
{
    if (day.Limit.UntilCelsius is null)
        yield break;
    yield return $"  warmest by the middle rate: {day.WarmestCelsius.Likely.ToString("0.0", CultureInfo.InvariantCulture)} °C, {Clock(day.WarmestMinutes)}";
    yield return day.EarliestMinutes is double first ? $"  may go soft from {Clock(first)} on" : "  nothing in its range goes soft";
    if (day.EarliestMinutes is not null)
    {
        yield return day.LikelyMinutes is double likely ? $"  likely soft from {Clock(likely)} on" : "  by the likely curve it stands to the last reading";
        yield return day.LatestMinutes is double last ? $"  surely soft from {Clock(last)} on" : "  nowhere surely soft";
    }
    if (day.MarginKelvins is double kelvins)
        yield return string.Create(CultureInfo.InvariantCulture, $"  margin: {kelvins:0.0} K{(day.MarginPoints is double points ? $", {points:0.#} points of solid fat" : "")}, by the likely figures");
}

static string Clock(double minutes) => minutes < 24 * 60 && minutes >= 0 ? string.Create(CultureInfo.InvariantCulture, $"{(int)minutes / 60}:{(int)minutes % 60:00}") : $"minute {minutes.ToString("0", CultureInfo.InvariantCulture)}";

static string Until(WindowLimit limit) => limit.UntilCelsius is null ? "not judged" : limit.ToString()[(limit.Window.Use.Length + 2)..];

static string Solid(SolidFat fat) => fat.PercentOfFat is Spread percent
    ? string.Create(CultureInfo.InvariantCulture, $"  {fat.Celsius,4:0.#} °C {percent.Likely,5:0.#} % ({percent.Low:0.#} to {percent.High:0.#}; {fat.Evidence!.Value.ToWord()})")
    : $"  {fat.Celsius.ToString("0.#", CultureInfo.InvariantCulture)} °C: not known";

static string Degrees(double celsius) => string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C ({celsius * 1.8 + 32:0} °F)");

static string Capital(string text) => text.Length > 0 ? char.ToUpperInvariant(text[0]) + text[1..] : text;

static string Document(Formula formula, WarmRoom verdict, WindowLimit[] limits, WarmAfternoon? day, HoldingBlend[] blends, WindowAnswer stands)
{
    JsonObject document = new()
    {
        ["name"] = formula.Name,
        ["solidFat"] = Json.Array(((double[])[18, 20, 24, 28, 31, 35]).Append(verdict.Fat.Celsius).Distinct().Order(), celsius => new JsonObject
        {
            ["celsius"] = Json.Number(celsius, 1),
            ["percentOfFat"] = formula.SolidFat(celsius).PercentOfFat is Spread percent ? Json.Range(percent, 2) : null,
        }),
        ["windows"] = Json.Array(limits, limit => new JsonObject
        {
            ["name"] = limit.Window.Use,
            ["of"] = limit.Window.Of,
            ["untilCelsius"] = limit.UntilCelsius is Spread until ? Json.Range(until, 1) : null,
        }),
        ["holds"] = Word(stands),
        ["why"] = day is { Stands: var over } && over == stands && over != verdict.Stands ? day.Why : verdict.Why,
        ["afternoon"] = day is null ? null : new JsonObject
        {
            ["holds"] = Word(day.Stands),
            ["warmestCelsius"] = Json.Range(day.WarmestCelsius, 1),
            ["earliestMinutes"] = Json.Number(day.EarliestMinutes, 0),
            ["likelyMinutes"] = Json.Number(day.LikelyMinutes, 0),
            ["latestMinutes"] = Json.Number(day.LatestMinutes, 0),
            ["marginKelvins"] = Json.Number(day.MarginKelvins, 1),
            ["cautions"] = Json.Array(day.Cautions, words => (JsonNode)words),
        },
        ["mostButter"] = Json.Array(blends, blend => new JsonObject
        {
            ["surely"] = blend.IsSure,
            ["celsius"] = Json.Number(blend.Celsius, 1),
            ["butterGrams"] = blend.Formula is null ? null : Json.Number(blend.SoftGrams, 1),
            ["firmGrams"] = blend.Formula is null ? null : Json.Number(blend.FirmGrams, 1),
            ["firm"] = blend.Firm.Name,
            ["sentence"] = blend.Why,
        }),
        ["sources"] = Json.Array(verdict.Fat.Fats.Select(fat => fat.Provenance.ToString()).Concat(FatWindow.All.Select(window => window.Provenance.ToString())).Distinct(), words => (JsonNode)words),
        ["caution"] = Promise,
        ["cautions"] = Json.Array(verdict.Fat.Cautions, words => (JsonNode)words),
    };
    document.AddFood(formula);
    return Json.Text(document);
}

static string Word(WindowAnswer answer) => answer == WindowAnswer.NotJudged ? "not-judged" : answer.ToString().ToLowerInvariant();

static double Start(string text)
{
    double celsius = QuantityText.ParseCelsius(text);
    return celsius is >= WarmAfternoon.MinimumCelsius and <= WarmAfternoon.MaximumCelsius ? celsius
        : throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C is no cake; from -30 to 50 °C is expected."));
}

static double Room(string text)
{
    double celsius = QuantityText.ParseCelsius(text);
    return celsius is >= WarmRoom.MinimumCelsius and <= WarmRoom.MaximumCelsius ? celsius
        : throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} °C is no room that is judged; from 20 to 40 °C (68 to 104 °F) is expected, and 88 without a unit or with C is of another scale."));
}

static (double Minutes, double Celsius)[] Readings(string text) => [.. text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(part =>
{
    string[] words = part.Split(' ', 2, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
    string[] clock = words[0].Split(':');
    if (words.Length == 2 && clock.Length is 1 or 2 && clock.All(one => int.TryParse(one, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number < 1e6))
    {
        int[] numbers = [.. clock.Select(one => int.Parse(one, CultureInfo.InvariantCulture))];
        if (numbers.Length == 1 || numbers[0] < 24 && numbers[1] < 60)
            return (numbers.Length == 1 ? numbers[0] : 60.0 * numbers[0] + numbers[1], QuantityText.ParseCelsius(words[1]));
    }
    throw new FormatException($"'{part}' is no reading; a time and a temperature such as 9:00 21C are expected.");
})];

static (double, double) Size(string text)
{
    string[] ends = text.Split('x', 'X');
    return ends.Length == 2 && ends.All(end => double.TryParse(end, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double _))
        ? (double.Parse(ends[0], CultureInfo.InvariantCulture), double.Parse(ends[1], CultureInfo.InvariantCulture))
        : throw new FormatException("across and high in cm, such as 20x10, are expected.");
}
