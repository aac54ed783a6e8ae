// Reads a recipe as a cook types it or copies it from a page, and prints each ingredient in grams and in cups and spoons, with what was assumed.
//
//   dotnet run docs/examples/recipe.cs FILE --in metric [--from us-customary] [--decimal point|comma] [--json]
//
// FILE may be - for standard input. --in names the cups and spoons to print in, --from those of the cook: us-customary, us-labelling, metric, australian,
// imperial or japanese. A heading or an instruction is no line of the answer.
// Exit status: 0 everything was read; 1 something was not understood, contradicts itself, or has no weight; 2 bad usage, a file that cannot be read or an
// answer that cannot be written. With 2, what is wrong is one line on the error stream.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Confectio.Conversions;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Phrases;
using Confectio.Text;

const int MostCharacters = 10_000_000;
string keys = string.Join('|', MeasuringSystem.All.Select(known => known.Key));
string usage = $"usage: recipe.cs FILE --in {keys} [--from {keys}] [--decimal point|comma] [--json]";
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
string? file = null;
MeasuringSystem? target = null, from = MeasuringSystem.UsCustomary;
AmountReading reading = AmountReading.DecimalPoint;
bool json = false;
for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    switch (args[i])
    {
        case "--in" when value is not null:
            if (!MeasuringSystem.TryGet(value, out target))
                return Shell.Fail($"--in {value}: not a measuring system; one of: {keys}");
            i++;
            break;
        case "--from" when value is not null:
            if (!MeasuringSystem.TryGet(value, out from))
                return Shell.Fail($"--from {value}: not a measuring system; one of: {keys}");
            i++;
            break;
        case "--decimal" when value is "point" or "comma":
            reading = value == "comma" ? AmountReading.DecimalComma : AmountReading.DecimalPoint;
            i++;
            break;
        case "--json":
            json = true;
            break;
        case "-" or [not '-', ..] when file is null:
            file = args[i];
            break;
        default:
            return Shell.Fail($"{args[i]}: not understood. {usage}");
    }
}
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {usage}");
if (file is null || target is null)
    return Shell.Fail(usage);

string text;
try
{
    using TextReader input = file == "-" ? new StreamReader(Console.OpenStandardInput(), new UTF8Encoding(false, true)) : new StreamReader(file, new UTF8Encoding(false, true));
    char[] buffer = new char[MostCharacters + 1];
    int length = input.ReadBlock(buffer);
    if (length > MostCharacters)
        return Shell.Fail($"{file}: longer than {MostCharacters} characters");
    text = new string(buffer, 0, length);
}
catch (DecoderFallbackException)
{
    return Shell.Fail($"{file}: cannot be read (it is not UTF-8)");
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail($"{file}: cannot be read ({Shell.Reason(e)})");
}

Reading<RecipeText> whole = RecipeText.Read(text, IngredientTable.BuiltIn, new PhraseOptions { MeasuringSystem = from, Reading = reading });
if (!whole.TryGet(out RecipeText? recipe))
    return Shell.Fail($"{file}: {whole}");
List<Line> lines = [.. recipe.Ingredients.Select(line => new Line(line.Phrase, from, target))];
if (lines.Count == 0)
    return Shell.Fail($"{file}: no line of it is an ingredient");
Formula? formula = lines.Exists(line => line.Mass is { Grams.Likely: > 0 })
    ? Formula.Of("", lines.Where(line => line.Mass is { Grams.Likely: > 0 }).Select(line => FormulaLine.Of(line.Phrase.Ingredient!, line.Mass!.Value.Grams.Likely))) : null;
int status = whole.TotalProblems > 0 || lines.Exists(line => !line.IsRead) ? 1 : 0;
return json ? Shell.Answer(Json(recipe, lines, formula), status) : Shell.Answer(InWords(recipe, lines, formula, target, from), status);

static string InWords(RecipeText recipe, List<Line> lines, Formula? formula, MeasuringSystem target, MeasuringSystem from)
{
    StringBuilder answer = new();
    int next = 0;
    answer.Append($"{recipe.Layout}; read in {from.Name}, printed in grams and {target.Name}\n");
    foreach (RecipeLine line in recipe.Lines)
    {
        if (line.Phrase.Kind == PhraseKind.Heading)
            answer.Append($"\n{Shown(line.Phrase.Text)}\n");
        if (line.Phrase.Kind != PhraseKind.Ingredient)
            continue;
        answer.Append($"  {Shown(line.Phrase.Text)}\n");
        for (Phrase? phrase = line.Phrase; phrase is not null; phrase = phrase.Also)
            lines[next++].AppendTo(answer);
    }
    if (formula is null)
        return answer.ToString();
    string contains = string.Join(", ", formula.Allergens.Select(allergen => $"{allergen}")), often = string.Join(", ", formula.OftenContains.Select(allergen => $"{allergen}"));
    answer.Append($"\nContains: {(contains.Length == 0 ? "none of the listed allergens" : contains)}{(often.Length == 0 ? "" : $"; often contains: {often}")}. Only what was weighed is in this list. {Caution.ReadTheLabel}\n");
    foreach (Caution caution in formula.Cautions)
        answer.Append($"Caution: {caution} ({caution.Source})\n");
    return answer.ToString();
}

static byte[] Json(RecipeText recipe, List<Line> lines, Formula? formula)
{
    using MemoryStream bytes = new();
    using (Utf8JsonWriter writer = new(bytes, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
    {
        writer.WriteStartObject();
        writer.WriteStartArray("lines");
        foreach (Line line in lines)
            line.WriteTo(writer);
        writer.WriteEndArray();
        writer.WriteString("layout", recipe.Layout);
        writer.WriteStartArray("cautions");
        foreach (Caution caution in formula?.Cautions ?? [])
            writer.WriteStringValue(caution.Text);
        writer.WriteEndArray();
        writer.WriteStartArray("contains");
        foreach (Allergen allergen in formula?.Allergens ?? [])
            writer.WriteStringValue($"{allergen}".ToLowerInvariant());
        writer.WriteEndArray();
        writer.WriteString("label", Caution.ReadTheLabel);
        writer.WriteEndObject();
    }
    bytes.WriteByte((byte)'\n');
    return bytes.ToArray();
}

static string Shown(string text) => Shell.Shown(text.Trim());

/// <summary>An ingredient, what it weighs, and how it is measured in the other cups.</summary>
internal sealed class Line
{
    public Line(Phrase phrase, MeasuringSystem from, MeasuringSystem target)
    {
        Phrase = phrase;
        Assumed.AddRange(phrase.Assumed);
        Unread.AddRange(phrase.Unread.Select(part => part.Text));
        Problems.AddRange(phrase.Problems.Select(problem => problem.Message));
        if (phrase.Ingredient is not Ingredient ingredient || phrase.Amount is null)
            return;
        if (!phrase.TryToMass(from, out ConvertedMass mass, out string? reason))
        {
            Problems.Add($"it has no weight: {reason}");
            return;
        }
        Mass = mass;
        if (mass.By is Conversion by)
        {
            Assumed.AddRange(by.Cautions);
            if (phrase.Amount is { Amount.IsVolume: true, MeasuringSystem: null })
                Assumed.Add($"the cup and the spoon are {from.Name}");
        }
        if (ingredient.TryGetNearestDensity(phrase.Packing ?? ingredient.DefaultPacking, out _))
        {
            Conversion to = phrase.Packing is Packing packing ? Conversion.Of(ingredient, packing, target) : Conversion.Of(ingredient, target);
            double millilitres = to.ToVolume(mass.Grams.Likely).Millilitres.Likely;
            if (millilitres is >= 0.3 and <= 100_000)
                Measure = PracticalMeasure.Find(millilitres, MeasuringTools.Usual(target), 0.05);
        }
    }

    public Phrase Phrase { get; }

    public ConvertedMass? Mass { get; }

    public PracticalMeasure? Measure { get; }

    public List<string> Assumed { get; } = [];

    public List<string> Unread { get; } = [];

    public List<string> Problems { get; } = [];

    /// <summary>What has no amount, or is left to taste, is read where its name is.</summary>
    public bool IsRead => Phrase.Ingredient is not null && Unread.Count == 0 && Problems.Count == 0;

    public void AppendTo(StringBuilder answer)
    {
        if (Phrase.Ingredient is Ingredient ingredient)
        {
            answer.Append($"      {ingredient.Name}{(Phrase.Packing is Packing packing ? ", " + packing.ToWord() : "")}: ");
            answer.Append(Mass is ConvertedMass mass ? $"{Grams(mass)}{(Measure is null ? "" : $", {Measure.Amount:V}")}" : "no amount").Append(Phrase.IsOptional ? ", optional" : "").Append('\n');
        }
        foreach (string sentence in Assumed)
            answer.Append($"      assumed: {Shell.Shown(sentence)}\n");
        foreach (string words in Unread)
            answer.Append($"      not understood: {Shell.Shown(words)}\n");
        foreach (string problem in Problems)
            answer.Append($"      problem: {Shell.Shown(problem)}\n");
    }

    public void WriteTo(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("text", Phrase.Text.Trim());
        writer.WriteString("ingredient", Phrase.Name.Length == 0 ? null : Phrase.Name);
        writer.WriteString("matched", Phrase.Ingredient?.Id);
        if (Mass is ConvertedMass mass)
        {
            writer.WriteStartObject("grams");
            writer.WriteNumber("low", Rounded(mass.Grams.Low));
            writer.WriteNumber("likely", Rounded(mass.Grams.Likely));
            writer.WriteNumber("high", Rounded(mass.Grams.High));
            writer.WriteEndObject();
        }
        else
        {
            writer.WriteNull("grams");
        }
        writer.WriteString("packing", Phrase.Packing?.ToWord());
        Words(writer, "preparation", Phrase.Preparation);
        writer.WriteBoolean("optional", Phrase.IsOptional);
        Words(writer, "assumed", Assumed);
        Words(writer, "unread", Unread);
        Words(writer, "problems", Problems);
        writer.WriteEndObject();
    }

    private static string Grams(ConvertedMass mass) => mass.Grams.Low < mass.Grams.High ? mass.ToString("U")
        : string.Create(CultureInfo.InvariantCulture, $"{mass.Grams.Likely:0.#} g");

    private static double Rounded(double grams) => grams is 0 or > 1e15 ? grams : Math.Round(grams, Math.Clamp(3 - (int)Math.Floor(Math.Log10(grams)), 0, 12));

    private static void Words(Utf8JsonWriter writer, string name, IEnumerable<string> words)
    {
        writer.WriteStartArray(name);
        foreach (string word in words)
            writer.WriteStringValue(word);
        writer.WriteEndArray();
    }
}
