// Says an amount of an ingredient in grams, or a mass in kitchen measures, with its spread and source.
//
//   dotnet run docs/examples/convert.cs "1 1/2 cups" "icing sugar" [--packing sifted] [--system us-customary] [--tools household] [--decimal point|comma]
//   dotnet run docs/examples/convert.cs "340 g" "icing sugar" --packing sifted
//
// Exit status: 0 done, 1 the ingredient or packing is not known, 2 bad usage or an amount that cannot be read.
#:project ../../src/Confectio/Confectio.csproj

using System.Text;
using Confectio.Conversions;
using Confectio.Ingredients;
using Confectio.Measures;

const string Usage = "usage: convert.cs AMOUNT INGREDIENT [--packing WORD] [--system KEY] [--tools exact|household] [--decimal point|comma]";
Console.OutputEncoding = new UTF8Encoding(false);
List<string> words = [];
Packing? packing = null;
MeasuringSystem? system = MeasuringSystem.UsCustomary;
ConversionOptions options = ConversionOptions.Default;
AmountReading reading = AmountReading.DecimalPoint;
for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    switch (args[i])
    {
        case "--packing" when value is not null:
            if (!PackingText.TryRead(value, out Packing read))
                return Fail(2, $"--packing {value}: not a packing; one of: {string.Join(", ", Enum.GetValues<Packing>().Select(known => known.ToWord()))}");
            packing = read;
            i++;
            break;
        case "--system" when value is not null:
            if (!MeasuringSystem.TryGet(value, out system))
                return Fail(2, $"--system {value}: not a measuring system; one of: {string.Join(", ", MeasuringSystem.All.Select(known => known.Key))}");
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
        case ['-', '-', ..]:
            return Fail(2, $"{args[i]}: not understood. {Usage}");
        default:
            words.Add(args[i]);
            break;
    }
}
if (words.Count != 2)
    return Fail(2, Usage);

try
{
    Amount amount = Amount.Parse(words[0], reading);
    Ingredient ingredient = IngredientTable.BuiltIn.Get(words[1]);
    Conversion conversion = packing is Packing stated ? Conversion.Of(ingredient, stated, system, options) : Conversion.Of(ingredient, system, options);
    if (amount.IsMass)
        PrintMeasures(amount, conversion);
    else
        PrintMass(amount, conversion);
    return 0;
}
catch (FormatException e)
{
    return Fail(2, e.Message);
}
catch (ArgumentException e)
{
    // The first line is for a reader; the parameter's name is for a programmer.
    return Fail(1, e.Message.Split(" (Parameter")[0]);
}

static void PrintMass(Amount amount, Conversion conversion)
{
    ConvertedMass mass = conversion.ToMass(amount);
    string how = amount.IsVolume ? $", {conversion.Density.Packing.ToWord()}, {conversion.System.Name}" : "";
    Console.WriteLine($"{amount:V} {conversion.Ingredient.Name}{how}");
    Console.WriteLine($"  {mass.LikelyGrams:0.#} g, from {mass.LowGrams:0.#} to {mass.HighGrams:0.#} g");
    if (amount.IsVolume)
        PrintSources(conversion);
    else
        Console.WriteLine($"  source: {conversion.Ingredient.Piece(amount.Part(0).Piece!).Fact}");
}

static void PrintMeasures(Amount amount, Conversion conversion)
{
    double grams = amount.Grams(conversion.System);
    ConvertedVolume volume = conversion.ToVolume(grams);
    Console.WriteLine($"{amount} {conversion.Ingredient.Name}, {conversion.Density.Packing.ToWord()}, {conversion.System.Name}");
    Console.WriteLine($"  {volume.LikelyMillilitres:0.#} mL, from {volume.LowMillilitres:0.#} to {volume.HighMillilitres:0.#} mL");
    MeasuringTools tools = MeasuringTools.Usual(conversion.System);
    foreach (double allowed in (double[])[0.05, 0.02, 0.005])
    {
        PracticalMeasure? measure = conversion.ToMeasures(grams, tools, allowed);
        Console.WriteLine(measure is null ? $"  within {allowed * 100:0.#} %: no filling of the usual cups and spoons"
            : $"  within {allowed * 100:0.#} %: {measure.Amount:V}, {measure.Fills} fills, {measure.RelativeError * 100:+0.0;-0.0;0.0} %");
    }
    PrintSources(conversion);
}

static void PrintSources(Conversion conversion)
{
    foreach (WeightFact fact in conversion.Density.Voices)
        Console.WriteLine($"  source: {fact}");
    foreach (string caution in conversion.Cautions)
        Console.WriteLine($"  caution: {caution}");
}

static int Fail(int status, string message)
{
    Console.Error.WriteLine(message);
    return status;
}
