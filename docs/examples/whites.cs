// Replaces fresh whites by dried or pasteurised ones and water, at equal solids or protein, and says what the kitchen rules would have given.
//
//   dotnet run docs/examples/whites.cs --replace "8 large" --system us --with dried --moisture 8%
//       [--solids 12%] [--match protein] [--measures us-customary] [--json]
//
// --replace takes a count and a size of the egg system (us, eu, japan), a mass (264 g) or a volume (1 cup). --with takes dried, dried-flakes,
// pasteurised, frozen, or the key of a form. --measures is whose cups and spoons; US customary unless stated.
// Exit status: 0 done; 2 bad usage, an egg that cannot be replaced so, or an answer that could not be written. Whatever is wrong is one line on the error stream.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Eggs;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;

const string Usage = "usage: whites.cs --replace \"8 large\" --system us --with dried [--moisture 8%] [--solids 12%] [--match solids|protein] [--measures us-customary] [--json]";
Dictionary<string, string> options = [];
bool json = false;
for (int i = 0; i < args.Length; i++)
{
    if (args[i] == "--json")
        json = true;
    else if (args[i] is "--replace" or "--system" or "--with" or "--moisture" or "--solids" or "--match" or "--measures" && i + 1 < args.Length && options.TryAdd(args[i], args[i + 1]))
        i++;
    else
        return Shell.Fail($"{args[i]}: not understood, twice, or without its value. {Usage}");
}
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {Usage}");
if (!options.TryGetValue("--replace", out string? replace) || !options.TryGetValue("--with", out string? with))
    return Shell.Fail(Usage);

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
StringWriter shown = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
Console.SetOut(shown);
EggForms forms = EggForms.Of(IngredientTable.BuiltIn);
EggReplacement replacement;
MeasuringSystem? measures;
try
{
    if (!MeasuringSystem.TryGet(options.GetValueOrDefault("--measures", "us-customary"), out measures))
        return Shell.Fail($"--measures {options["--measures"]}: not a measuring system; one of: {string.Join(", ", MeasuringSystem.All.Select(known => known.Key))}");
    EggForm incoming = forms.Get(with switch
    {
        "dried" => "dried-white",
        "dried-flakes" => "dried-white-flakes",
        "pasteurised" => "pasteurised-white",
        "frozen" => "frozen-white",
        _ => with,
    });
    if (options.TryGetValue("--moisture", out string? moisture))
        incoming = incoming.WithMoisture(Percent("--moisture", moisture));
    double? solids = options.TryGetValue("--solids", out string? text) ? Percent("--solids", text) : null;
    EggMatch match = options.GetValueOrDefault("--match", "solids") switch
    {
        "solids" => EggMatch.Solids,
        "protein" => EggMatch.Protein,
        string other => throw new FormatException($"--match {other}: solids or protein is expected."),
    };
    replacement = Replace(replace, incoming, match, solids, measures);
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail(Shell.Reason(e));
}

if (json)
    WriteJson(replacement);
else
    Print(replacement, measures);
return Shell.Answer(shown.ToString(), 0);

EggReplacement Replace(string replace, EggForm incoming, EggMatch match, double? solids, MeasuringSystem measures)
{
    // A count and a size, such as 8 large: the size needs its system, for a large egg is not the same everywhere.
    int space = replace.Trim().IndexOf(' ', StringComparison.Ordinal);
    if (space > 0 && double.TryParse(replace.AsSpan().Trim()[..space], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double count)
        && options.TryGetValue("--system", out string? key) && EggSizeSystem.Get(key).TryGetSize(replace.Trim()[space..].Trim(), out EggSize? size))
        return EggReplacement.Of(EggCount.Of(count, size), incoming, match, solids);
    Amount amount = Amount.TryParse(replace, out Amount read) && !read.IsPiece ? read
        : throw new FormatException(options.TryGetValue("--system", out string? system)
            ? $"--replace {replace}: a count and a size of {system} is expected, such as 8 large, or a mass or a volume."
            : $"--replace {replace}: a mass or a volume is expected; a count of eggs needs --system us, eu or japan.");
    return EggReplacement.Of(forms.FreshWhite, amount, measures, incoming, match, solids);
}

static double Percent(string option, string text) => text.EndsWith('%')
    && double.TryParse(text.AsSpan(0, text.Length - 1).Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double percent)
    ? percent / 100 : throw new FormatException($"{option} {text}: a percentage is expected, such as 8%.");

static void Print(EggReplacement replacement, MeasuringSystem measures)
{
    Line($"{replacement.ReplacedGrams:0.#} g of {replacement.Outgoing}");
    Line($"  by {replacement.Incoming}, at equal {(replacement.Match == EggMatch.Protein ? "protein" : "solids")}");
    Line($"\n  {(replacement.Incoming.IsDry ? "powder" : "white"),-10}{replacement.IncomingGrams.Likely,8:0.0} g");
    Line($"  {"water",-10}{replacement.WaterGrams,8:0.0} g{(replacement.WaterGrams < 0 ? "   the formula gives up so much water" : "")}");
    Line($"  {"solids",-10}{replacement.SolidsPercent,8:0.00} %   protein {100 * replacement.ProteinKept:0} % of what went out");
    Line($"  in {measures.Name} measures: {replacement.InMeasures(measures)}");
    if (replacement.Preparation.Length > 0)
        Line($"  {replacement.Preparation}");
    if (replacement.Incoming.Note.Length > 0)
        Line($"  {replacement.Incoming.Note}");
    if (replacement.Incoming is { IsDry: true, Part: EggPart.White })
    {
        Line($"\nWhat the kitchen rules give of this powder (fresh white has {100 * replacement.Incoming.Forms.FreshWhite.SolidsFraction.Likely:0.00} % solids, pasteurised {100 * replacement.Incoming.Forms.PasteurisedWhite.SolidsFraction.Likely:0.00})");
        foreach (ReconstitutionRule rule in ReconstitutionRule.All)
        {
            ReconstitutionResult result = replacement.ByRule(rule, measures);
            Line($"  {rule.Name}");
            Line($"    {result.PowderGrams.Likely:0.0} g of powder and {result.WaterGrams.Likely:0.0} g of water: {result.SolidsPercent:0.00} % solids, {100 * result.SolidsShare:0} % of those of the fresh white");
        }
    }
    Formula made = Made(replacement);
    Line($"\nContains: {string.Join(", ", made.Allergens.Select(allergen => $"{allergen}"))}. {Caution.ReadTheLabel}");
    foreach (Caution caution in made.Cautions)
        Line($"Caution: {caution} ({caution.Source})");
}

static void WriteJson(EggReplacement replacement)
{
    using MemoryStream output = new();
    using (Utf8JsonWriter writer = new(output))
    {
        writer.WriteStartObject();
        writer.WriteNumber("powderGrams", Math.Round(replacement.IncomingGrams.Likely, 3));
        writer.WriteNumber("waterGrams", Math.Round(replacement.WaterGrams, 3));
        writer.WriteNumber("solidsPercent", Math.Round(replacement.SolidsPercent, 3));
        writer.WriteNumber("replacedGrams", Math.Round(replacement.ReplacedGrams.Likely, 3));
        Formula made = Made(replacement);
        writer.WriteStartArray("contains");
        foreach (Allergen allergen in made.Allergens)
            writer.WriteStringValue($"{allergen}".ToLowerInvariant());
        writer.WriteEndArray();
        writer.WriteString("label", Caution.ReadTheLabel);
        writer.WriteStartArray("cautions");
        foreach (Caution caution in made.Cautions)
        {
            writer.WriteStartObject();
            writer.WriteString("code", caution.Code);
            writer.WriteString("text", caution.Text);
            writer.WriteString("source", caution.Source);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
        writer.WriteEndObject();
    }
    Console.WriteLine(Encoding.UTF8.GetString(output.ToArray()));
}

// The cautions are those of what goes in, not of what it replaces.
static Formula Made(EggReplacement replacement) => Formula.Of("", [FormulaLine.Of(replacement.Incoming.Ingredient, replacement.IncomingGrams.Likely)]);

static void Line(FormattableString text) => Console.WriteLine(FormattableString.Invariant(text));
