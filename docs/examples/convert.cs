// Says an amount of an ingredient in grams, or a mass in kitchen measures, with its spread and source.
//
//   dotnet run docs/examples/convert.cs "1 1/2 cups" "icing sugar" [--packing sifted] [--system us-customary] [--tools household] [--decimal point|comma] [--json]
//   dotnet run docs/examples/convert.cs "340 g" "icing sugar" --packing sifted
//
// The cautions of the conversion and the allergens of the ingredient follow the answer, in text and in JSON. Text is the same in every culture.
// Exit status: 0 done, 1 the ingredient, its packing or its piece is not known, 2 bad usage, an amount that cannot be read or an
// answer that cannot be written. A failure is one line on the error stream.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Conversions;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;

const string Usage = "usage: convert.cs AMOUNT INGREDIENT [--packing WORD] [--system KEY] [--tools exact|household] [--decimal point|comma] [--json]";
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
List<string> words = [];
Packing? packing = null;
MeasuringSystem? system = MeasuringSystem.UsCustomary;
ConversionOptions options = ConversionOptions.Default;
AmountReading reading = AmountReading.DecimalPoint;
bool json = false;
for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    switch (args[i])
    {
        case "--packing" when value is not null:
            if (!PackingText.TryRead(value, out Packing read))
                return Shell.Fail($"--packing {value}: not a packing; one of: {string.Join(", ", Enum.GetValues<Packing>().Select(known => known.ToWord()))}");
            packing = read;
            i++;
            break;
        case "--system" when value is not null:
            if (!MeasuringSystem.TryGet(value, out system))
                return Shell.Fail($"--system {value}: not a measuring system; one of: {string.Join(", ", MeasuringSystem.All.Select(known => known.Key))}");
            i++;
            break;
        case "--tools" when value is "exact" or "household":
            options = value == "household" ? ConversionOptions.HouseholdTools : ConversionOptions.Default;
            i++;
            break;
        case "--decimal" when value is "point" or "comma":
            reading = value == "comma" ? AmountReading.DecimalComma : AmountReading.DecimalPoint;
            i++;
            break;
        case "--json":
            json = true;
            break;
        case ['-', '-', ..]:
            return Shell.Fail($"{args[i]}: not understood. {Usage}");
        default:
            words.Add(args[i]);
            break;
    }
}
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {Usage}");
if (words.Count != 2)
    return Shell.Fail(Usage);

string answer;
try
{
    Amount amount = Amount.Parse(words[0], reading);
    Ingredient ingredient = IngredientTable.BuiltIn.Get(words[1]);
    // What is weighed is asked for in cups, so it needs a density as a volume does; what is counted does not.
    Conversion? conversion = amount.IsPiece ? null
        : packing is Packing stated ? Conversion.Of(ingredient, stated, system, options) : Conversion.Of(ingredient, system, options);
    // A piece has its own weight, and its conversion only finds it.
    ConvertedMass? mass = amount.IsMass ? null : conversion is null ? FormulaLine.Of(ingredient, amount, system).Measured : conversion.ToMass(amount);
    answer = json ? Json(amount, ingredient, conversion, mass) : InWords(amount, ingredient, conversion, mass);
}
catch (FormatException e)
{
    return Shell.Fail(Shell.Reason(e));
}
catch (ArgumentException e)
{
    return Shell.Fail(Shell.Reason(e), 1);
}
return Shell.Answer(answer, 0);

static string InWords(Amount amount, Ingredient ingredient, Conversion? conversion, ConvertedMass? mass)
{
    StringWriter text = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
    string how = conversion is null ? "" : $", {Packed(conversion)}, {conversion.System.Name}";
    text.WriteLine($"{amount:V} {ingredient.Name}{how}");
    if (mass is ConvertedMass grams)
    {
        text.WriteLine($"  {grams.Grams.Likely:0.#} g, from {grams.Grams.Low:0.#} to {grams.Grams.High:0.#} g");
    }
    else
    {
        ConvertedVolume volume = conversion!.ToVolume(amount.Grams(conversion.System));
        text.WriteLine($"  {volume.Millilitres.Likely:0.#} mL, from {volume.Millilitres.Low:0.#} to {volume.Millilitres.High:0.#} mL");
        foreach ((double allowed, PracticalMeasure? measure, bool settled) in Measures(volume, conversion))
        {
            text.WriteLine(measure is null ? $"  within {allowed * 100:0.#} %: {(settled ? "no filling of the usual cups and spoons" : "none found")}"
                : $"  within {allowed * 100:0.#} %: {measure.Amount:V}, {measure.Fills} fills, {measure.RelativeError * 100:+0.0;-0.0;0.0} %{(settled ? "" : ", perhaps not the fewest")}");
        }
    }
    foreach (WeightFact fact in Facts(amount, ingredient, conversion))
        text.WriteLine($"  source: {fact}");
    foreach (string caution in conversion?.Cautions ?? [])
        text.WriteLine($"  caution: {caution}");
    string contains = string.Join(", ", ingredient.Allergens.Select(Word)), often = string.Join(", ", ingredient.OftenContains.Select(Word));
    if (contains.Length + often.Length == 0)
        text.WriteLine("  allergens: none is listed, and that is not to say absent; read the label of your own");
    if (contains.Length > 0)
        text.WriteLine($"  allergens: contains {contains}; read the label of your own");
    if (often.Length > 0)
        text.WriteLine($"  allergens: often contains {often}; read the label of your own");
    return text.ToString();
}

static string Json(Amount amount, Ingredient ingredient, Conversion? conversion, ConvertedMass? mass)
{
    using MemoryStream bytes = new();
    using (Utf8JsonWriter writer = new(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
    {
        writer.WriteStartObject();
        writer.WriteString("amount", amount.ToString());
        writer.WriteString("ingredient", ingredient.Name);
        if (conversion is not null)
        {
            writer.WriteString("packing", conversion.Density.Packing.ToWord());
            if (conversion.Density.TakenFrom is Packing known)
                writer.WriteString("packingTakenFrom", known.ToWord());
            writer.WriteBoolean("packingAssumed", conversion.PackingWasAssumed);
            writer.WriteString("system", conversion.System.Key);
        }
        if (mass is ConvertedMass grams)
        {
            WriteSpread(writer, "grams", grams.Grams.Low, grams.Grams.Likely, grams.Grams.High);
        }
        else
        {
            ConvertedVolume volume = conversion!.ToVolume(amount.Grams(conversion.System));
            WriteSpread(writer, "millilitres", volume.Millilitres.Low, volume.Millilitres.Likely, volume.Millilitres.High);
            writer.WriteStartArray("measures");
            foreach ((double allowed, PracticalMeasure? measure, bool settled) in Measures(volume, conversion))
            {
                writer.WriteStartObject();
                writer.WriteNumber("allowedError", allowed);
                writer.WriteString("amount", measure?.Amount.ToString());
                writer.WriteBoolean("searchEnded", settled);
                writer.WriteEndObject();
            }
            writer.WriteEndArray();
        }
        WriteWords(writer, "sources", Facts(amount, ingredient, conversion).Select(fact => fact.ToString()));
        WriteWords(writer, "cautions", conversion?.Cautions ?? []);
        WriteWords(writer, "contains", ingredient.Allergens.Select(Word));
        WriteWords(writer, "oftenContains", ingredient.OftenContains.Select(Word));
        writer.WriteString("allergenCaution", "Read the label of your own; an allergen that is not listed is not said to be absent.");
        writer.WriteEndObject();
    }
    return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
}

static List<(double Allowed, PracticalMeasure? Measure, bool Settled)> Measures(ConvertedVolume volume, Conversion conversion)
{
    List<(double, PracticalMeasure?, bool)> found = [];
    // Beyond what cups and spoons can measure there is nothing to list.
    if (volume.Millilitres.Likely is < 0.01 or > 1e6)
        return found;
    foreach (double allowed in (double[])[0.05, 0.02, 0.005])
        found.Add((allowed, PracticalMeasure.Search(volume.Millilitres.Likely, MeasuringTools.Usual(conversion.System), allowed, out bool settled), settled));
    return found;
}

static IEnumerable<WeightFact> Facts(Amount amount, Ingredient ingredient, Conversion? conversion) =>
    conversion?.Density.Voices ?? [ingredient.Piece(amount.Part(0).Piece!).Fact];

static string Packed(Conversion conversion) => conversion.Density.Packing.ToWord()
    + (conversion.Density.TakenFrom is Packing known ? $" (taken as {known.ToWord()})" : "");

static string Word(Allergen allergen) => allergen switch
{
    >= Allergen.Almond and <= Allergen.Brazil => $"{allergen.ToString().ToLowerInvariant()} (tree nut)",
    _ => allergen.ToString().ToLowerInvariant(),
};

static void WriteSpread(Utf8JsonWriter writer, string name, double low, double likely, double high)
{
    writer.WriteStartObject(name);
    writer.WriteNumber("low", low);
    writer.WriteNumber("likely", likely);
    writer.WriteNumber("high", high);
    writer.WriteEndObject();
}

static void WriteWords(Utf8JsonWriter writer, string name, IEnumerable<string> words)
{
    writer.WriteStartArray(name);
    foreach (string word in words)
        writer.WriteStringValue(word);
    writer.WriteEndArray();
}
