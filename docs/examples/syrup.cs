// Cooks a syrup to a stage in a kitchen at any altitude: the temperature to cook to, the mass on the scales, and whether it will crystallise.
//
//   dotnet run docs/examples/syrup.cs --sugar 600g --water 200g [--glucose-syrup 60g] [--cream-of-tartar 1g] --to soft-ball
//       [--altitude 1600m | --pressure 84kPa | --water-boils 95C] [--json]
//
// Without the last three the kitchen is at sea level. Masses are in g, kg, oz or lb; an altitude in m or ft (1600m, 5,200 ft); temperatures in C or F.
// Exit status: 0 done, 1 the stage lies beyond boiling or the pot is past it already, 2 bad usage, or an answer that could not be written.
// Whatever is wrong is one line on the error stream.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sugars;

const string Usage = "usage: syrup.cs --sugar 600g --water 200g [--glucose-syrup 60g] [--cream-of-tartar 1g] --to soft-ball "
    + "[--altitude 1600m | --pressure 84kPa | --water-boils 95C] [--json]";
Dictionary<string, string> options = [];
bool json = false;
for (int i = 0; i < args.Length; i++)
{
    if (args[i] == "--json")
        json = true;
    else if (args[i] is "--sugar" or "--water" or "--glucose-syrup" or "--cream-of-tartar" or "--to" or "--altitude" or "--pressure" or "--water-boils"
        && i + 1 < args.Length && options.TryAdd(args[i], args[i + 1]))
        i++;
    else
        return Shell.Fail($"{args[i]}: not understood, twice, or without its value. {Usage}");
}
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {Usage}");
if (!options.ContainsKey("--sugar") || !options.ContainsKey("--water") || !options.TryGetValue("--to", out string? to))
    return Shell.Fail(Usage);
if (options.Keys.Count(key => key is "--altitude" or "--pressure" or "--water-boils") > 1)
    return Shell.Fail("--altitude, --pressure and --water-boils say the same thing: give one.");

PotTarget target;
byte[] written;
try
{
    CookingStage stage = CookingStage.Get(to);
    AirPressure air = Air();
    List<FormulaLine> lines = [];
    foreach ((string option, string ingredient) in (ReadOnlySpan<(string, string)>)
        [("--sugar", "granulated sugar"), ("--water", "water"), ("--glucose-syrup", "glucose syrup 42 DE"), ("--cream-of-tartar", "cream of tartar")])
    {
        if (options.TryGetValue(option, out string? text) && Option(option, text, mass => QuantityText.ParseGrams(mass)) is double grams and > 0)
            lines.Add(FormulaLine.Of(IngredientTable.BuiltIn.Get(ingredient), grams));
    }
    SyrupPot pot = SyrupPot.Of(Formula.Of("syrup", lines));
    if (pot.SolidsGrams == 0)
        return Shell.Fail("--sugar: there is no sugar in the pot.");
    target = pot.CookTo(stage, air);
    // The whole answer before any of it is written: what fails leaves no half of one.
    written = json ? Json(target, air) : Encoding.UTF8.GetBytes(Print(target, pot, air));
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail(Shell.Reason(e));
}
// Past the stage: there is less water in the pot than the stage has.
return Shell.Answer(written, (target.High ?? target.Low) is PotEnd end && end.WaterToBoilOffGrams >= 0 ? 0 : 1);

AirPressure Air()
{
    if (options.TryGetValue("--pressure", out string? pressure))
        return AirPressure.Parse(pressure);
    if (options.TryGetValue("--altitude", out string? altitude))
        return AirPressure.FromAltitudeMetres(Option("--altitude", altitude, text => QuantityText.ParseMetres(text)));
    if (options.TryGetValue("--water-boils", out string? boils))
        return AirPressure.FromBoilingWater(Option("--water-boils", boils, text => QuantityText.ParseCelsius(text)));
    return AirPressure.SeaLevel;
}

// The quantity, or the option with what was wrong with it.
static double Option(string option, string text, Func<string, double> parse)
{
    try
    {
        return parse(text);
    }
    catch (FormatException e)
    {
        throw new FormatException($"{option}: {e.Message}", e);
    }
}

static string Print(PotTarget target, SyrupPot pot, AirPressure air)
{
    StringBuilder text = new();
    void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    void Range(string what, string unit, double low, double? high) =>
        Line(high is double end ? $"{what}{low:0.0} to {end:0.0}{unit}" : (FormattableString)$"{what}{low:0.0}{unit} at the low end");
    StageEnd low = target.Stage.Low, high = target.Stage.High;
    Line($"In the pot          {pot}");
    Line($"Kitchen             {air}, as at {air.StandardAltitudeMetres:0} m; water boils at {air.WaterBoilsCelsius:0.0} °C ({air.WaterBoilsCelsius * 1.8 + 32:0} °F)");
    Line(pot.DissolvedAtCelsius is double celsius ? $"Sugar dissolved     at {celsius:0} °C; stir and wash down the sides until then, not after"
        : (FormattableString)$"Sugar dissolved     not at 100 °C: it needs more water, or dissolves on the boil");
    Line($"\n{target.Stage.Stage.Name}");
    Line($"  cook to           {low.Celsius:0.0} to {high.Celsius:0.0} °C   ({low.Fahrenheit:0} to {high.Fahrenheit:0} °F)");
    Line($"  rule of thumb     {low.RuleOfThumbCelsius:0.0} to {high.RuleOfThumbCelsius:0.0} °C   (2 °F less for every 1000 ft: {low.RuleOfThumbError:+0.0;-0.0;0.0} and {high.RuleOfThumbError:+0.0;-0.0;0.0} K off)");
    Line($"  at sea level      {low.SeaLevelCelsius:0.0} to {high.SeaLevelCelsius:0.0} °C");
    if (target.Low is PotEnd most)
    {
        Range("  solids            ", " %", 100 * most.Pot.Solution.Solids, 100 * target.High?.Pot.Solution.Solids);
        Range("  on the scales     ", " g", most.FinalGrams.Likely, target.High?.FinalGrams.Likely);
        Range("  water gone        ", " g", most.WaterToBoilOffGrams, target.High?.WaterToBoilOffGrams);
        Range("  volume at 20 °C   ", " mL", most.Millilitres(), target.High?.Millilitres());
        Line($"  cooled to 20 °C   {Crystallisation.Of(most.Pot.Solution, 20)}");
        if (target.High is { WaterToBoilOffGrams: < 0 } past)
            Line($"  The pot is past this stage: {-past.WaterToBoilOffGrams:0} to {-most.WaterToBoilOffGrams:0} g of water bring it back.");
        if (high.IsAtLimit || target.High is null)
            Line($"  The high end is stronger than boiling points are known for: go by the thermometer there.");
    }
    else
    {
        Line($"  Here syrup no longer boils: what water was left is gone, and sugar melts and browns. The air has no part in it.");
    }
    Line($"\nCaution: {CookingStage.Caution}");
    return text.ToString();
}

static byte[] Json(PotTarget target, AirPressure air)
{
    StageEnd low = target.Stage.Low, high = target.Stage.High;
    using MemoryStream output = new();
    using (Utf8JsonWriter writer = new(output))
    {
        writer.WriteStartObject();
        writer.WriteNumber("pressureKilopascals", Math.Round(air.Kilopascals, 3));
        writer.WriteNumber("waterBoilsCelsius", Math.Round(air.WaterBoilsCelsius, 3));
        writer.WriteString("stage", target.Stage.Stage.Key);
        WritePair(writer, "targetCelsius", low.Celsius, high.Celsius);
        WritePair(writer, "ruleOfThumbCelsius", low.RuleOfThumbCelsius, high.RuleOfThumbCelsius);
        WritePair(writer, "sugarPercent", 100 * target.Low?.Pot.Solution.Solids, 100 * target.High?.Pot.Solution.Solids);
        WritePair(writer, "waterToBoilOffGrams", target.Low?.WaterToBoilOffGrams, target.High?.WaterToBoilOffGrams);
        // Low and high are of the number: the high end of the stage has the lower mass.
        WritePair(writer, "finalGrams", target.High?.FinalGrams.Likely, target.Low?.FinalGrams.Likely);
        if (target.Low is PotEnd cooked)
            writer.WriteString("cooledTo20Celsius", Crystallisation.Of(cooked.Pot.Solution, 20).ToString());
        writer.WriteString("caution", CookingStage.Caution);
        writer.WriteEndObject();
    }
    output.WriteByte((byte)'\n');
    return output.ToArray();
}

// An end beyond boiling is left out.
static void WritePair(Utf8JsonWriter writer, string name, double? low, double? high)
{
    writer.WriteStartObject(name);
    if (low is double first)
        writer.WriteNumber("low", Math.Round(first, 3));
    if (high is double second)
        writer.WriteNumber("high", Math.Round(second, 3));
    writer.WriteEndObject();
}
