using System.Text;
using Confectio.Cakes;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Heat;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sugars;
using Confectio.Vetting;
using Xunit;

namespace Confectio.Tests.Attack;

/// <summary>
/// Every public reader of text, given texts that began as good ones and were cut, doubled, spliced and salted with what breaks readers. A text is read, or refused by
/// a <see cref="FormatException"/> or with a list of problems; what was read shows only numbers; and nothing costs more than a stated room.
/// </summary>
/// <remarks>CI runs some hundreds of each; CONFECTIO_ATTACK=1000000 runs a million a reader, and CONFECTIO_ATTACK_SEED another million.</remarks>
public sealed class ReaderAttackTests(ITestOutputHelper output)
{
    private const int Usual = 400;

    // Of one input of a few kB at most.
    private const long MaximumBytes = 48_000_000;

    private static readonly IngredientTable s_table = IngredientTable.BuiltIn;

    private const string FormulaSeed = """
        {"confectioFormula":1,"name":"Fennmarsh Hall","lines":[{"ingredient":"egg white","grams":300},{"ingredient":"granulated sugar","grams":540.5}]}
        """;

    private const string ProblemSeed = """
        {"confectioProblem":1,"name":"Fennmarsh Hall","totalGrams":1200,"ingredients":[{"ingredient":"egg white","baseGrams":290,"lowGrams":180},
        {"ingredient":"granulated sugar","baseGrams":410},{"ingredient":"unsalted butter","baseGrams":500,"highGrams":650},{"ingredient":"water","baseGrams":0}],
        "requirements":[{"part":"fat","lowPercent":30},{"part":"water","highPercent":40}]}
        """;

    private const string OrderSeed = """
        {"confectioOrder":1,"name":"Fennmarsh Hall","wastePercent":8,"tiers":[{"shape":"round","diameter":"9 in","height":"4 in","layers":2,
        "filling":{"icing":"jam","thickness":"4 mm","damIcing":"cream","damWidth":"1 cm"},"coats":[{"icing":"cream","thickness":"5 mm","edge":"sharp"}],
        "borders":[{"icing":"cream","kind":"shells","width":"1.2 cm","place":"foot","shellsPerWidth":1.25}]}],
        "cupcakes":[{"icing":"cream","count":24,"swirl":{"diameter":"6 cm","height":"3.5 cm","turns":3,"beadWidth":"1.2 cm"}}],
        "icings":[{"name":"cream","gramsPerMillilitre":0.85,"lowGramsPerMillilitre":0.8,"highGramsPerMillilitre":0.95},{"name":"jam","gramsPerMillilitre":1.35}],
        "bowls":[{"quarts":5,"usablePercent":70}]}
        """;

    private static readonly Dictionary<string, (Func<string, object?> Read, string[] Seeds)> s_readers = new()
    {
        ["amount"] = (text => Amount.TryParse(text, out Amount amount) ? amount : null, ["1 1/2 cups", "2 Tbsp + 1 tsp", "2-3 tsp", "1 lb 4 oz", "two cups", "½ c.", "340 g", "8 large", "1/8 teaspoon"]),
        ["amount, comma"] = (text => Amount.Parse(text, AmountReading.DecimalComma), ["1,5 dl", "0,25 kg", "3 1/2 cups"]),
        ["length"] = (text => CakeLength.Parse(text), ["9 in", "22.9 cm", "5 mm", "1 1/2\"", "300 mm"]),
        ["celsius"] = (text => QuantityText.ParseCelsius(text), ["240F", "116 °C", "-18 °C", "240 degrees F"]),
        ["metres"] = (text => QuantityText.ParseMetres(text), ["1600 m", "5,200 ft", "9 1/2 in", "22.9 cm"]),
        ["seconds"] = (text => QuantityText.ParseSeconds(text), ["12 min 30 s", "1 h 5 min", "1:30:00", "90 s"]),
        ["grams"] = (text => QuantityText.ParseGrams(text), ["600 g", "1 lb 4 oz", "1.4 kg"]),
        ["pressure"] = (text => AirPressure.Parse(text), ["84 kPa", "1013 hPa", "30.1 inHg", "760 mmHg"]),
        ["brix"] = (text => Brix.Parse(text), ["65 °Bx", "12.5 °Bx", "0 °Bx"]),
        ["packing"] = (text => PackingText.TryRead(text, out Packing packing) ? packing : null, ["sifted", "packed", "spooned and levelled", "softened"]),
        ["part"] = (text => FormulaPart.TryRead(text, out FormulaPart? part) ? part : null, ["fat", "water", "sugars", "protein"]),
        ["formula text"] = (text => Formula.ParseText("Fennmarsh", text, s_table, MeasuringSystem.UsCustomary),
            ["2 cups butter, softened\n4 cups sifted icing sugar\n1/4 tsp salt", "300 g egg white\n540 g granulated sugar", "3 large eggs\n1 1/2 cups plain flour, spooned"]),
        ["formula JSON"] = (text => Formula.ParseJson(text, s_table), [FormulaSeed]),
        ["problem JSON"] = (text => FormulaProblem.ParseJson(text, s_table), [ProblemSeed]),
        ["problem JSON, solved and rounded"] = (text =>
        {
            SolvedFormula solved = FormulaProblem.ParseJson(text, s_table).Solve();
            if (Attacks.Fault(solved) is string fault)
                throw new InvalidDataException(fault);
            return solved.Round(Confectio.Formulas.Solving.RoundingGrid.Grams(5));
        }, [ProblemSeed]),
        ["order JSON"] = (text => IcingOrder.ParseJson(text, s_table), [OrderSeed]),
        ["order JSON, planned"] = (text => IcingOrder.ParseJson(text, s_table).Plan(), [OrderSeed]),
        ["probe log"] = (text => ProbeLog.Read(new StringReader(text), new ProbeLogOptions { ConfirmedScale = TemperatureScale.Celsius }),
            ["time,celsius\n0:00:00,20\n0:01:00,56.5\n0:02:00,60\n", "minutes;celsius\n0;20\n1;40\n2;60\n3;62\n", "mm:ss,celsius\n0:00,20\n0:30,40\n1:00,60\n"]),
        ["probe log, comma"] = (text => ProbeLog.Read(new StringReader(text), new ProbeLogOptions { Reading = AmountReading.DecimalComma, GapSeconds = 30 }),
            ["time;celsius\n0:00:00;20,5\n0:01:00;56,5\n0:02:00;60\n", "seconds;fahrenheit\n0;68\n90;133,7\n120;140\n"]),
        ["weights"] = (text => s_table.LayerWeights(new StringReader(text)).Told(out _)!,
            ["ingredient,measure,system,packing,grams,low,high,sd_grams,n,source,kind\nplain-flour,1 cup,us-customary,spooned,120,,,4,12,memory,from-memory\n"]),
        ["ingredients"] = (text => s_table.LayerIngredients(new StringReader(text)).Told(out _)!, [FirstLines("ingredients.csv", 3)]),
        ["conversion table"] = (text => ConversionTableVetter.Vet(new StringReader(text), IngredientTable.BuiltIn),
            ["ingredient,measure,packing,grams\ngranulated sugar,1 cup,,198\nicing sugar,1 cup,sifted,98\nplain flour,1/2 cup,spooned,62\nhoney,1 Tbsp,,21\n", "ingredient;measure;grams\nbutter;1 cup;227\nmilk;1 cup;244\n"]),
        ["temperature table"] = (text => TemperatureTableVetter.Vet(new StringReader(text), IngredientTable.BuiltIn), ["name,celsius,fahrenheit\nsoft ball,115,240\nhard crack,150,300\negg mixtures,71,160\n"]),
    };

    // What has broken readers before: numbers at the ends, marks that look like others, controls, and the words of the formats themselves.
    private static readonly string[] s_salt =
    [
        "NaN", "Infinity", "-Infinity", "1e308", "-1e308", "5e-324", "1e-306", "-0.0", "0", "99999999999999999999", "1/0", "1/3", "⅔", "½", "٣", "1_000", "1,5", "1.5", "1.000,5",
        "\0", "\u001b[31m", "\u202e", "\u200b", "\ufeff", "İ", "ı", "ß", "\ud800", "\r", "\n", "\n\n", "\t", "\"", "\"\"", ",", ";", ":", "::", "[", "{", "}", "null", "true", "cups", "cup", "g", "lb", "large",
        "tbsp", "in", "%", "°", "-", "–", " to ", " + ", "(", ")", "F100000000", "E+400", "0x1F", "egg white", "icing sugar", "\"ingredient\":", "\"grams\":-1", "celsius", "0:-Infinity:00", "23:59:59", "confectioFormula",
    ];

    private static readonly string[] s_numbers = ["0", "1", "2", "3", "7", "50", "99.9", "0.001", "1e-306", "5e-324", "1e-9", "1e9", "1e15", "1e308", "-0.0", "-1", "2400000000", "100", "1000000", "0.5"];

    public static TheoryData<string> Readers => [.. s_readers.Keys];

    [Theory]
    [MemberData(nameof(Readers))]
    public void AnyTextIsReadOrRefused(string reader)
    {
        (Func<string, object?> read, string[] seeds) = s_readers[reader];
        // What is solved, rounded or planned costs a thousand times what is read.
        int count = reader.Contains("solved", StringComparison.Ordinal) || reader.Contains("planned", StringComparison.Ordinal) ? Math.Max(40, Attacks.Count(Usual) / 20) : Attacks.Count(Usual), first = int.TryParse(Environment.GetEnvironmentVariable("CONFECTIO_ATTACK_SEED"), out int stated) ? stated : 14;
        Random random = new(first);
        Dictionary<string, int> faults = [];
        List<string> examples = [];
        long worst = 0;
        int answered = 0;
        // Once beforehand, so that what is built on first use is not laid to an input.
        foreach (string seed in seeds)
        {
            Assert.Null(Faults(read, seed, out _, out bool isRead));
            Assert.True(isRead, $"the seed is refused: {seed}");
        }
        for (int i = 0; i < count; i++)
        {
            string text = Mutate(seeds, random);
            string? fault = Faults(read, text, out long bytes, out bool isAnswer);
            worst = Math.Max(worst, bytes);
            if (isAnswer)
                answered++;
            fault ??= bytes > MaximumBytes ? $"{bytes / 1_000_000} MB for {text.Length} characters" : null;
            if (fault is null)
                continue;
            string kind = fault.Length > 80 ? fault[..80] : fault;
            if (faults.TryAdd(kind, 0) && examples.Count < 5)
                examples.Add($"{fault}\n    of {(text.Length > 600 ? text[..600] + "…" : text).Replace("\n", "\\n", StringComparison.Ordinal)}");
            faults[kind]++;
        }
        output.WriteLine($"{reader}: {count} texts, {answered} read, the worst took {worst / 1000} kB; {faults.Values.Sum()} faults of {faults.Count} kinds");
        Assert.True(faults.Count == 0, $"{string.Join("\n", faults.Select(kind => $"{kind.Value} × {kind.Key}"))}\n{string.Join("\n", examples)}");
        // A fuzzer whose texts are all refused, or never, would show nothing.
        Assert.True(count < 200 || answered >= count / 100);
    }

    private static string? Faults(Func<string, object?> read, string text, out long bytes, out bool isAnswer)
    {
        isAnswer = false;
        long before = GC.GetAllocatedBytesForCurrentThread();
        object? answer;
        try
        {
            answer = read(text);
            bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        }
        catch (FormatException e)
        {
            bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            return e.Message.Length is 0 or > 100_000 ? $"a message of {e.Message.Length} characters" : null;
        }
        catch (Exception e)
        {
            bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            return $"{e.GetType().Name}: {e.Message.Split('\n')[0]}{e.StackTrace?.Split('\n').FirstOrDefault(line => line.Contains("Confectio", StringComparison.Ordinal) && !line.Contains("Guard", StringComparison.Ordinal))?.Trim().Split(" in ")[0]}";
        }
        isAnswer = answer is not null;
        return answer is IngredientTable ? null : Attacks.Fault(answer);
    }

    private static string Mutate(string[] seeds, Random random)
    {
        StringBuilder text = new(seeds[random.Next(seeds.Length)]);
        // Mostly one or two changes: more, and nothing would be read.
        for (int times = Math.Min(random.Next(1, 8), random.Next(1, 8)); times > 0; times--)
        {
            int at = random.Next(text.Length + 1), length = random.Next(0, Math.Min(12, text.Length - at) + 1);
            switch (random.Next(11))
            {
                case 8 or 9 or 10 when NumberAt(text, at) is (int start, int digits) && digits > 0:
                    // A number for a number keeps the form, and reaches what is behind the reader.
                    text.Remove(start, digits).Insert(start, s_numbers[random.Next(s_numbers.Length)]);
                    break;
                case 0:
                    text.Remove(at, length);
                    break;
                case 1:
                    text.Insert(at, s_salt[random.Next(s_salt.Length)]);
                    break;
                case 2:
                    text.Remove(at, length).Insert(at, s_salt[random.Next(s_salt.Length)]);
                    break;
                case 3:
                    text.Insert(at, text.ToString(at, length));
                    break;
                case 4 when at < text.Length:
                    text[at] = (char)random.Next(32, 127);
                    break;
                case 5:
                    string other = seeds[random.Next(seeds.Length)];
                    text.Insert(at, other.AsSpan(random.Next(other.Length)));
                    break;
                case 6 when text.Length < 400:
                    string line = text.ToString();
                    for (int more = random.Next(1, 12); more > 0; more--)
                        text.Append('\n').Append(line);
                    break;
                default:
                    text.Insert(at, random.Next(-10, 100_000));
                    break;
            }
        }
        return text.ToString();
    }

    private static (int Start, int Length) NumberAt(StringBuilder text, int at)
    {
        while (at < text.Length && !char.IsAsciiDigit(text[at]))
            at++;
        int end = at;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.'))
            end++;
        return (at, end - at);
    }

    private static string FirstLines(string resource, int lines)
    {
        Stream stream = typeof(Ingredient).Assembly.GetManifestResourceStream(typeof(Ingredient).Assembly.GetManifestResourceNames().Single(name => name.EndsWith("." + resource, StringComparison.Ordinal)))!;
        using StreamReader reader = new(stream);
        StringBuilder text = new();
        for (int i = 0; i < lines && reader.ReadLine() is string line; i++)
            text.Append(i == 0 ? line : "own-" + line).Append('\n');
        return text.ToString();
    }
}
