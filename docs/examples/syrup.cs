// Cooks a syrup to a stage in a kitchen at any altitude: the temperature to cook to, the mass on the scales, and whether it will crystallise.
//
//   dotnet run docs/examples/syrup.cs --sugar 600g --water 200g [--glucose-syrup 60g] [--cream-of-tartar 1g] --to soft-ball
//       [--altitude 1600m | --pressure 84kPa | --water-boils 95C] [--json]
//
// Without the last three the kitchen is at sea level. Masses are in g, kg, oz or lb; an altitude in m or ft (1600m, 5,200 ft); temperatures in C or F.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Text.Json.Nodes;
using Confectio.Cooking;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;

Cli cli = new("syrup.cs", "Cooks a syrup to its stage. Exit status: 0 done; 1 the stage lies beyond boiling or the pot is past it already; "
    + "2 bad usage, or an answer that could not be written.");
Func<string, double> grams = text => QuantityText.ParseGrams(text);
(Option<double> Grams, string Ingredient)[] pot =
[
    (cli.Value("--sugar", "600g", grams, 0, isNeeded: true), "granulated sugar"), (cli.Value("--water", "200g", grams, 0, isNeeded: true), "water"),
    (cli.Value("--glucose-syrup", "60g", grams, 0), "glucose syrup 42 DE"), (cli.Value("--cream-of-tartar", "1g", grams, 0), "cream of tartar"),
];
Option<CookingStage> to = cli.Value("--to", "soft-ball", CookingStage.Get, CookingStage.All[0], isNeeded: true);
Option<AirPressure?>[] kitchen =
[
    cli.Value<AirPressure?>("--altitude", "1600m", text => AirPressure.FromAltitudeMetres(QuantityText.ParseMetres(text)), null),
    cli.Value<AirPressure?>("--pressure", "84kPa", text => AirPressure.Parse(text), null),
    cli.Value<AirPressure?>("--water-boils", "95C", text => AirPressure.FromBoilingWater(QuantityText.ParseCelsius(text)), null),
];
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    AirPressure[] stated = [.. kitchen.Select(option => options.GetValue(option)).OfType<AirPressure>()];
    if (stated.Length > 1)
        throw new FormatException("--altitude, --pressure and --water-boils say the same thing: give one.");
    AirPressure air = stated.Length == 1 ? stated[0] : AirPressure.SeaLevel;
    SyrupPot filled = SyrupPot.Of(Formula.Of("syrup", pot.Select(one => (options.GetValue(one.Grams), one.Ingredient)).Where(one => one.Item1 > 0)
        .Select(one => FormulaLine.Of(IngredientTable.BuiltIn.Get(one.Ingredient), one.Item1))));
    if (filled.SolidsGrams == 0)
        throw new FormatException("--sugar: there is no sugar in the pot.");
    PotTarget target = filled.CookTo(options.GetRequiredValue(to), air);
    // Past the stage: there is less water in the pot than the stage has.
    return Shell.Answer(options.GetValue(json) ? Document(target, air) : Text(target, filled, air), (target.High ?? target.Low) is { WaterToBoilOffGrams: >= 0 } ? 0 : 1);
});

static string Text(PotTarget target, SyrupPot pot, AirPressure air)
{
    Page page = new();
    void Range(string what, string unit, double low, double? high) =>
        page.Line(high is double end ? $"{what}{low:0.0} to {end:0.0}{unit}" : (FormattableString)$"{what}{low:0.0}{unit} at the low end");
    StageEnd low = target.Stage.Low, high = target.Stage.High;
    page.Line($"In the pot          {pot}");
    page.Line($"Kitchen             {air}, as at {air.StandardAltitudeMetres:0} m; water boils at {air.WaterBoilsCelsius:0.0} °C ({air.WaterBoilsCelsius * 1.8 + 32:0} °F)");
    page.Line(pot.DissolvedAtCelsius is double celsius ? $"Sugar dissolved     at {celsius:0} °C; stir and wash down the sides until then, not after"
        : (FormattableString)$"Sugar dissolved     not at 100 °C: it needs more water, or dissolves on the boil");
    page.Line($"\n{target.Stage.Stage.Name}");
    page.Line($"  cook to           {low.Celsius:0.0} to {high.Celsius:0.0} °C   ({low.Fahrenheit:0} to {high.Fahrenheit:0} °F)");
    page.Line($"  rule of thumb     {low.RuleOfThumbCelsius:0.0} to {high.RuleOfThumbCelsius:0.0} °C   (2 °F less for every 1000 ft: {low.RuleOfThumbError:+0.0;-0.0;0.0} and {high.RuleOfThumbError:+0.0;-0.0;0.0} K off)");
    page.Line($"  at sea level      {low.SeaLevelCelsius:0.0} to {high.SeaLevelCelsius:0.0} °C");
    if (target.Low is PotEnd most)
    {
        Range("  solids            ", " %", 100 * most.Pot.Solution.Solids, 100 * target.High?.Pot.Solution.Solids);
        Range("  on the scales     ", " g", most.FinalGrams.Likely, target.High?.FinalGrams.Likely);
        Range("  water gone        ", " g", most.WaterToBoilOffGrams, target.High?.WaterToBoilOffGrams);
        Range("  volume at 20 °C   ", " mL", most.Millilitres(), target.High?.Millilitres());
        page.Line($"  cooled to 20 °C   {Crystallisation.Of(most.Pot.Solution, 20)}");
        if (target.High is { WaterToBoilOffGrams: < 0 } past)
            page.Line($"  The pot is past this stage: {-past.WaterToBoilOffGrams:0} to {-most.WaterToBoilOffGrams:0} g of water bring it back.");
        if (high.IsAtLimit || target.High is null)
            page.Words("  The high end is stronger than boiling points are known for: go by the thermometer there.");
    }
    else
    {
        page.Words("  Here syrup no longer boils: what water was left is gone, and sugar melts and browns. The air has no part in it.");
    }
    page.Words($"\nCaution: {CookingStage.Caution}");
    return page.ToString();
}

static string Document(PotTarget target, AirPressure air)
{
    StageEnd low = target.Stage.Low, high = target.Stage.High;
    JsonObject document = new()
    {
        ["pressureKilopascals"] = Json.Number(air.Kilopascals),
        ["waterBoilsCelsius"] = Json.Number(air.WaterBoilsCelsius),
        ["stage"] = target.Stage.Stage.Key,
        ["targetCelsius"] = Pair(low.Celsius, high.Celsius),
        ["ruleOfThumbCelsius"] = Pair(low.RuleOfThumbCelsius, high.RuleOfThumbCelsius),
        ["sugarPercent"] = Pair(100 * target.Low?.Pot.Solution.Solids, 100 * target.High?.Pot.Solution.Solids),
        ["waterToBoilOffGrams"] = Pair(target.Low?.WaterToBoilOffGrams, target.High?.WaterToBoilOffGrams),
        // Low and high are of the number: the high end of the stage has the lower mass.
        ["finalGrams"] = Pair(target.High?.FinalGrams.Likely, target.Low?.FinalGrams.Likely),
    };
    if (target.Low is PotEnd cooked)
        document["cooledTo20Celsius"] = Crystallisation.Of(cooked.Pot.Solution, 20).ToString();
    document["caution"] = CookingStage.Caution;
    return Json.Text(document);
}

// An end beyond boiling is left out.
static JsonObject Pair(double? low, double? high) => new(new (string Name, double? Value)[] { ("low", low), ("high", high) }
    .Where(end => end.Value is not null).Select(end => KeyValuePair.Create(end.Name, Json.Number(end.Value))));
