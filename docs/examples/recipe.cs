// Reads a recipe as a cook types it or copies it from a page, and prints each ingredient in grams and in cups and spoons, with what was assumed.
//
//   dotnet run docs/examples/recipe.cs FILE --in metric [--from us-customary] [--decimal comma] [--json]
//
// --in names the cups and spoons to print in, --from those of the cook. A heading or an instruction is no line of the answer.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
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
Cli cli = new("recipe.cs", "Reads a recipe and prints it in grams and in cups and spoons. Exit status: 0 everything was read; 1 something was not understood, contradicts "
    + "itself or has no weight; 2 bad usage, a file that cannot be read or an answer that cannot be written.");
Argument<string> fileWord = cli.Word("FILE");
Option<MeasuringSystem> inOption = cli.System("--in"), fromOption = cli.System("--from");
Option<AmountReading> readingOption = cli.Reading();
Option<bool> json = cli.Flag("--json");
inOption.Required = true;
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(fileWord);
    MeasuringSystem target = options.GetRequiredValue(inOption), from = options.GetRequiredValue(fromOption);
    string text = Shell.Named($"{file}: cannot be read", () => Text(file));
    Reading<RecipeText> whole = RecipeText.Read(text, IngredientTable.BuiltIn, new PhraseOptions { MeasuringSystem = from, Reading = options.GetValue(readingOption) });
    if (!whole.TryGet(out RecipeText? recipe))
        return Shell.Fail($"{file}: {whole}");
    List<Line> lines = [.. recipe.Ingredients.Select(line => new Line(line.Phrase, from, target))];
    if (lines.Count == 0)
        return Shell.Fail($"{file}: no line of it is an ingredient");
    List<Line> weighed = lines.FindAll(line => line.Mass is { Grams.Likely: > 0 and <= 1e12 });
    Formula? formula = weighed.Count == 0 ? null : Formula.Of("", weighed.Select(line => FormulaLine.Of(line.Phrase.Ingredient!, line.Mass!.Value.Grams.Likely)));
    int status = whole.TotalProblems > 0 || lines.Exists(line => !line.IsRead) ? 1 : 0;
    return options.GetValue(json) ? Shell.Answer(Document(recipe, lines, formula), status) : Shell.Answer(InWords(recipe, lines, formula, target, from), status);
});

static string Text(string file)
{
    try
    {
        using StreamReader input = new(file, new UTF8Encoding(false, true));
        char[] buffer = new char[MostCharacters + 1];
        int length = input.ReadBlock(buffer);
        return length <= MostCharacters ? new string(buffer, 0, length) : throw new FormatException($"it is longer than {MostCharacters} characters");
    }
    catch (DecoderFallbackException e)
    {
        throw new FormatException("it is not UTF-8", e);
    }
}

static string InWords(RecipeText recipe, List<Line> lines, Formula? formula, MeasuringSystem target, MeasuringSystem from)
{
    Page answer = new();
    int next = 0;
    answer.Line($"{recipe.Layout}; read in {from.Name}, printed in grams and {target.Name}");
    foreach (RecipeLine line in recipe.Lines)
    {
        if (line.Phrase.Kind == PhraseKind.Heading)
            answer.Line($"\n{line.Phrase.Text.Trim()}");
        if (line.Phrase.Kind != PhraseKind.Ingredient)
            continue;
        answer.Line($"  {line.Phrase.Text.Trim()}");
        for (Phrase? phrase = line.Phrase; phrase is not null; phrase = phrase.Also)
            lines[next++].AddTo(answer);
    }
    if (formula is null)
        return answer.ToString();
    answer.AddFood(formula);
    answer.Words("Only what was weighed is in this list of allergens.");
    return answer.ToString();
}

static byte[] Document(RecipeText recipe, List<Line> lines, Formula? formula)
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
            writer.WriteStringValue(Food.Word(allergen));
        writer.WriteEndArray();
        writer.WriteString("label", Caution.ReadTheLabel);
        writer.WriteEndObject();
    }
    bytes.WriteByte((byte)'\n');
    return bytes.ToArray();
}

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
            if (phrase.Amount is { Amount: { IsVolume: true } amount, MeasuringSystem: null }
                && Enumerable.Range(0, amount.PartCount).Any(i => amount.Part(i).Unit is not (KitchenUnit.Millilitre or KitchenUnit.Litre)))
                Assumed.Add($"the cup and the spoon are {from.Name}");
        }
        // A leaf of gelatine or a bar in a cup means nothing.
        bool isLoosePiece = phrase.Amount is { Amount.IsPiece: true } && ingredient.DefaultPacking == Packing.Whole;
        if (!isLoosePiece && ingredient.TryGetNearestDensity(phrase.Packing ?? ingredient.DefaultPacking, out _))
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

    public void AddTo(Page page)
    {
        if (Phrase.Ingredient is Ingredient ingredient)
        {
            string packing = Phrase.Packing is Packing packed ? ", " + packed.ToWord() : "", optional = Phrase.IsOptional ? ", optional" : "";
            string grams = Mass is ConvertedMass mass ? Grams(mass) + (Measure is null ? "" : $", {Measure.Amount:V}") : "no amount";
            page.Line($"      {ingredient.Name}{packing}: {grams}{optional}");
        }
        page.Section("", Assumed.Select(sentence => $"      assumed: {sentence}"));
        page.Section("", Unread.Select(words => $"      not understood: {words}"));
        page.Section("", Problems.Select(problem => $"      problem: {problem}"));
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
