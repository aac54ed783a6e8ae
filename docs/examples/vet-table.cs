// Judges a printed conversion table: which cup it uses, which rows are wrong, and what probably happened.
//
//   dotnet run docs/examples/vet-table.cs FILE [--system auto|us-customary|us-labelling|metric|australian|imperial|japanese|decilitre]
//                                              [--kind volume|temperature] [--decimal point|comma] [--json]
//
// Exit status: 0 every row was read whole and none is wrong; 1 a row is wrong, could not be read, or holds bytes that are not UTF-8; 2 bad usage, a file that cannot
// be read, a table of which no row could be, or an answer that could not be written. With 2, what is wrong is one line on the error stream; of a table, the answer
// lists it all beside.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Confectio.Examples;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;
using Confectio.Vetting;

const string Usage = "usage: vet-table.cs FILE [--system auto|us-customary|us-labelling|metric|australian|imperial|japanese|decilitre] [--kind volume|temperature] [--decimal point|comma] [--json]";
const string Compared = "Only the two units were compared: whether a temperature is right or safe for its food was not.";
const string EggGuidance = "the published household guidance for dishes that contain egg is 160 °F (71 °C), read with a food thermometer; a lower temperature "
    + "needs a time with it, which a table of two units does not state. Local codes and licensed practice come first.";
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
                return Shell.Fail($"--system {value}: not a measuring system. {Usage}");
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
            return Shell.Fail($"{args[i]}: not understood. {Usage}");
    }
}
if (file is null)
    return Shell.Fail(Usage);
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {Usage}");

// The whole answer before any of it is written: what fails leaves no half of one.
StringBuilder answer = new();
byte[] written;
int status;
string? unreadable = null;
try
{
    using StreamReader text = new(file);
    (status, written) = temperature ? VetTemperatures(text) : VetMeasures(text);
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail($"{file}: cannot be read ({Shell.Reason(e)})");
}
// Of a table that no row could be read of, the answer is what stood in the way; it is said where errors are said, too.
if (Shell.Answer(written, 0) is int failed and not 0)
    return failed;
return unreadable is null ? status : Shell.Fail($"{file}: no row of it can be read ({unreadable})", status);

void Line(string line) => answer.Append(Shell.Shown(line)).Append('\n');

// A row that nobody read is not known to be right.
int Status(bool readable, bool mistakes, IReadOnlyList<Problem> problems)
{
    if (readable)
        return mistakes || problems.Count > 0 ? 1 : 0;
    unreadable = problems.Count == 0 ? "it has no row" : $"{problems[0]}{(problems.Count > 1 ? $"; {problems.Count - 1} more" : "")}";
    return 2;
}

(int, byte[]) VetMeasures(TextReader table)
{
    TableVerdict verdict = ConversionTableVetter.Vet(table, IngredientTable.BuiltIn, new VettingOptions { System = system, Reading = reading });
    if (!json)
        PrintMeasures(verdict);
    return (Status(verdict.IsReadable, verdict.HasMistakes, verdict.Problems), json ? Json(verdict.WriteTo) : Encoding.UTF8.GetBytes(answer.ToString()));
}

(int, byte[]) VetTemperatures(TextReader table)
{
    TemperatureVerdict verdict = TemperatureTableVetter.Vet(table, reading);
    if (!json)
        PrintTemperatures(verdict);
    return (Status(verdict.IsReadable, verdict.HasMistakes, verdict.Problems), json ? Json(verdict.WriteTo, With(verdict)) : Encoding.UTF8.GetBytes(answer.ToString()));
}

void PrintMeasures(TableVerdict verdict)
{
    int wrong = verdict.Count(Verdict.Wrong) + verdict.Count(Verdict.Impossible);
    Line($"{Path.GetFileName(file)}: {verdict.Rows.Count} rows, {wrong} wrong, {verdict.Count(Verdict.Doubtful)} doubtful, " +
        $"{verdict.Count(Verdict.Agrees)} agree, {verdict.Count(Verdict.Unknown)} unknown, {verdict.Problems.Count} could not be read whole");
    if (verdict.System is not null)
        Line($"Measuring system: {verdict.System}");
    if (verdict.RoundingGrid.Length > 0)
        Line($"The figures are rounded to {verdict.RoundingGrid}.");

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
            answer.Append('\n').Append(title).Append('\n');
        first = false;
        string packing = row.Packing is { } stated ? ", " + Confectio.Ingredients.PackingText.ToWord(stated) : "";
        string chance = row.Verdict == Verdict.Unknown ? "" : $"   right: {Percent(row.ProbabilityRight)}";
        Line($"  line {row.Line,-4} {row.Amount} {row.Ingredient}{packing} = {Number(row.PrintedGrams)} g{chance}");
        Line($"            {row.Explanation}.");
    }
}

void Agreeing(List<RowFinding> rows)
{
    if (rows.Count == 0)
        return;
    answer.Append("\nAgree\n");
    int name = Math.Min(34, rows.Max(row => row.Ingredient.Length));
    Line($"  {"line",-5} {"ingredient".PadRight(name)}  {"measure",-12} {"printed",9} {"likely",9}   low to high, g");
    foreach (RowFinding row in rows)
    {
        string shown = row.Ingredient.Length > name ? row.Ingredient[..(name - 1)] + "…" : row.Ingredient;
        string packing = row.ExpectedPacking is { } assumed && row.Matched!.Densities.Count > 1 ? Confectio.Ingredients.PackingText.ToWord(assumed) : "";
        string expected = row.ExpectedGrams is { } grams ? $"{Number(grams.Likely),9}   {Number(grams.Low)} to {Number(grams.High)}" : $"{"-",9}";
        Line($"  {row.Line,-5} {shown.PadRight(name)}  {row.Amount,-12} {Number(row.PrintedGrams),9} {expected}  {packing}".TrimEnd());
    }
}

void PrintTemperatures(TemperatureVerdict verdict)
{
    Line($"{Path.GetFileName(file)}: {verdict.Rows.Count} rows, {verdict.Count(Verdict.Wrong)} wrong, {verdict.Count(Verdict.Doubtful)} doubtful, " +
        $"{verdict.Count(Verdict.Agrees)} agree, {verdict.Count(Verdict.Unknown)} unknown, {verdict.Problems.Count} could not be read whole");
    foreach (Verdict kind in (Verdict[])[Verdict.Wrong, Verdict.Doubtful, Verdict.Unknown, Verdict.Agrees])
    {
        List<TemperatureFinding> rows = verdict.Rows.Where(row => row.Verdict == kind).ToList();
        if (rows.Count == 0)
            continue;
        answer.Append('\n').Append(kind == Verdict.Agrees ? "The two units agree" : $"{kind}").Append('\n');
        foreach (TemperatureFinding row in rows)
        {
            string printed = string.Join(" / ", new[] { row.Fahrenheit is { } f ? $"{Number(f)} °F" : null, row.Celsius is { } c ? $"{Number(c)} °C" : null }.OfType<string>());
            Line($"  line {row.Line,-4} {row.What,-32} {printed}");
            if (kind != Verdict.Agrees)
                Line($"            {row.Explanation}.");
        }
    }
    PrintProblems(verdict.Problems);
    Line("");
    Line(Compared);
    if (verdict.NamesEgg)
        Line($"Caution: {EggGuidance}");
}

void PrintProblems(IReadOnlyList<Problem> problems)
{
    if (problems.Count == 0)
        return;
    answer.Append("\nCould not be read whole\n");
    foreach (Problem problem in problems)
        Line($"  {problem}");
}

// What the verdict does not say of itself, in the same object.
static (string, string)[] With(TemperatureVerdict verdict) => verdict.NamesEgg ? [("compared", Compared), ("caution", EggGuidance)] : [("compared", Compared)];

static byte[] Json(Action<Utf8JsonWriter> write, params (string Name, string Text)[] more)
{
    using MemoryStream output = new();
    using (Utf8JsonWriter writer = new(output))
        write(writer);
    if (more.Length > 0)
    {
        JsonObject whole = JsonNode.Parse(output.ToArray())!.AsObject();
        foreach ((string name, string text) in more)
            whole[name] = text;
        output.SetLength(0);
        using Utf8JsonWriter writer = new(output);
        whole.WriteTo(writer);
    }
    output.WriteByte((byte)'\n');
    return output.ToArray();
}

static string Number(double value) => value.ToString(Math.Abs(value) < 10 ? "0.##" : "0.#", System.Globalization.CultureInfo.InvariantCulture);

static string Percent(double probability) => probability < 0.001 ? "under 0.1 %" : (probability * 100).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture) + " %";
