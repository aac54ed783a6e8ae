// Judges a printed conversion table: which cup it uses, which rows are wrong, and what probably happened.
//
//   dotnet run docs/examples/vet-table.cs FILE [--system auto|us-customary|us-labelling|metric|australian|imperial|japanese]
//                                              [--kind volume|temperature] [--decimal point|comma] [--json]
//
// Exit status: 0 nothing wrong, 1 something wrong, 2 unreadable or bad usage.
#:project ../../src/Confectio/Confectio.csproj

using System.Text;
using System.Text.Json;
using Confectio.Measures;
using Confectio.Text;
using Confectio.Vetting;

const string Usage = "usage: vet-table.cs FILE [--system auto|us-customary|us-labelling|metric|australian|imperial|japanese] [--kind volume|temperature] [--decimal point|comma] [--json]";
string? file = null;
MeasuringSystem? system = null;
AmountReading reading = AmountReading.DecimalPoint;
bool temperature = false, json = false;

for (int i = 0; i < args.Length; i++)
{
    string? value = i + 1 < args.Length ? args[i + 1] : null;
    switch (args[i])
    {
        case "--json":
            json = true;
            break;
        case "--system" when value is not null:
            if (value != "auto" && !MeasuringSystem.TryGet(value, out system))
                return Fail($"--system {value}: not a measuring system. {Usage}");
            i++;
            break;
        case "--kind" when value is "volume" or "temperature":
            temperature = value == "temperature";
            i++;
            break;
        case "--decimal" when value is "point" or "comma":
            reading = value == "comma" ? AmountReading.DecimalComma : AmountReading.DecimalPoint;
            i++;
            break;
        case [not '-', ..] when file is null:
            file = args[i];
            break;
        default:
            return Fail($"{args[i]}: not understood. {Usage}");
    }
}
if (file is null)
    return Fail(Usage);

// People read aligned columns; a terminal that is not told otherwise may not be UTF-8.
Console.OutputEncoding = new UTF8Encoding(false);
StreamReader text;
try
{
    text = new StreamReader(file);
}
catch (Exception e) when (e is IOException or UnauthorizedAccessException)
{
    return Fail($"{file}: cannot be read ({e.Message})");
}
using (text)
    return temperature ? VetTemperatures(text) : VetMeasures(text);

int VetMeasures(TextReader table)
{
    TableVerdict verdict = ConversionTableVetter.Vet(table, new VettingOptions { System = system, Reading = reading });
    if (json)
        WriteJson(verdict.WriteTo);
    else
        PrintMeasures(verdict);
    return !verdict.IsReadable ? 2 : verdict.HasMistakes ? 1 : 0;
}

int VetTemperatures(TextReader table)
{
    TemperatureVerdict verdict = TemperatureTableVetter.Vet(table, reading);
    if (json)
        WriteJson(verdict.WriteTo);
    else
        PrintTemperatures(verdict);
    return !verdict.IsReadable ? 2 : verdict.HasMistakes ? 1 : 0;
}

void PrintMeasures(TableVerdict verdict)
{
    int wrong = verdict.Count(Verdict.Wrong) + verdict.Count(Verdict.Impossible);
    Console.WriteLine($"{Path.GetFileName(file)}: {verdict.Rows.Count} rows, {wrong} wrong, {verdict.Count(Verdict.Doubtful)} doubtful, " +
        $"{verdict.Count(Verdict.Agrees)} agree, {verdict.Count(Verdict.Unknown)} unknown, {verdict.Problems.Count} could not be read");
    if (verdict.System is not null)
        Console.WriteLine($"Measuring system: {verdict.System}");
    if (verdict.RoundingGrid.Length > 0)
        Console.WriteLine($"The figures are rounded to {verdict.RoundingGrid}.");

    Section("Wrong", verdict.Rows.Where(row => row.Verdict is Verdict.Wrong or Verdict.Impossible));
    Section("Doubtful", verdict.Rows.Where(row => row.Verdict == Verdict.Doubtful));
    PrintProblems(verdict.Problems);
    Section("Unknown", verdict.Rows.Where(row => row.Verdict == Verdict.Unknown));
    Agreeing(verdict.Rows.Where(row => row.Verdict == Verdict.Agrees).ToList());
}

void Section(string title, IEnumerable<RowFinding> rows)
{
    bool first = true;
    foreach (RowFinding row in rows)
    {
        if (first)
            Console.WriteLine($"{Environment.NewLine}{title}");
        first = false;
        string packing = row.Packing is { } stated ? ", " + Confectio.Ingredients.PackingText.ToWord(stated) : "";
        string chance = row.Verdict == Verdict.Unknown ? "" : $"   right: {Percent(row.ProbabilityRight)}";
        Console.WriteLine($"  line {row.Line,-4} {row.Amount} {row.Ingredient}{packing} = {Number(row.PrintedGrams)} g{chance}");
        Console.WriteLine($"            {row.Explanation}.");
    }
}

void Agreeing(List<RowFinding> rows)
{
    if (rows.Count == 0)
        return;
    Console.WriteLine($"{Environment.NewLine}Agree");
    int name = Math.Min(34, rows.Max(row => row.Ingredient.Length));
    Console.WriteLine($"  {"line",-5} {"ingredient".PadRight(name)}  {"measure",-12} {"printed",9} {"likely",9}   low to high, g");
    foreach (RowFinding row in rows)
    {
        string shown = row.Ingredient.Length > name ? row.Ingredient[..(name - 1)] + "…" : row.Ingredient;
        string packing = row.ExpectedPacking is { } assumed && row.Matched!.Densities.Count > 1 ? Confectio.Ingredients.PackingText.ToWord(assumed) : "";
        string expected = row.ExpectedGrams is { } grams ? $"{Number(grams.Likely),9}   {Number(grams.Low)} to {Number(grams.High)}" : $"{"-",9}";
        Console.WriteLine($"  {row.Line,-5} {shown.PadRight(name)}  {row.Amount,-12} {Number(row.PrintedGrams),9} {expected}  {packing}".TrimEnd());
    }
}

void PrintTemperatures(TemperatureVerdict verdict)
{
    Console.WriteLine($"{Path.GetFileName(file)}: {verdict.Rows.Count} rows, {verdict.Count(Verdict.Wrong)} wrong, {verdict.Count(Verdict.Doubtful)} doubtful, " +
        $"{verdict.Count(Verdict.Agrees)} agree, {verdict.Count(Verdict.Unknown)} unknown, {verdict.Problems.Count} could not be read");
    foreach (Verdict kind in (Verdict[])[Verdict.Wrong, Verdict.Doubtful, Verdict.Unknown, Verdict.Agrees])
    {
        List<TemperatureFinding> rows = verdict.Rows.Where(row => row.Verdict == kind).ToList();
        if (rows.Count == 0)
            continue;
        Console.WriteLine($"{Environment.NewLine}{(kind == Verdict.Agrees ? "Agree" : kind.ToString())}");
        foreach (TemperatureFinding row in rows)
        {
            string printed = string.Join(" / ", new[] { row.Fahrenheit is { } f ? $"{Number(f)} °F" : null, row.Celsius is { } c ? $"{Number(c)} °C" : null }.OfType<string>());
            Console.WriteLine($"  line {row.Line,-4} {row.What,-32} {printed}");
            if (kind != Verdict.Agrees)
                Console.WriteLine($"            {row.Explanation}.");
        }
    }
    PrintProblems(verdict.Problems);
}

void PrintProblems(IReadOnlyList<TableProblem> problems)
{
    if (problems.Count == 0)
        return;
    Console.WriteLine($"{Environment.NewLine}Could not be read");
    foreach (TableProblem problem in problems)
        Console.WriteLine($"  {problem}");
}

static void WriteJson(Action<Utf8JsonWriter> write)
{
    using Stream output = Console.OpenStandardOutput();
    using (Utf8JsonWriter writer = new(output))
        write(writer);
    output.WriteByte((byte)'\n');
}

static string Number(double value) => value.ToString(Math.Abs(value) < 10 ? "0.##" : "0.#", System.Globalization.CultureInfo.InvariantCulture);

static string Percent(double probability) => probability < 0.001 ? "under 0.1 %" : (probability * 100).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture) + " %";

static int Fail(string message)
{
    Console.Error.WriteLine(message);
    return 2;
}
