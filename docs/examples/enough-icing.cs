// Makes enough icing for a cake: what each coat, filling and border takes, grams through the whipped density, batches for every bowl, what is left over.
//
//   dotnet run docs/examples/enough-icing.cs CAKE.json [--system us-customary] [--left "1.4 kg"] [--icing NAME] [--svg OUT.svg] [--json]
//
// CAKE.json is an order as docs/schema/order.json describes it. --left asks the way back: what so much of an icing covers, the first one unless --icing names it.
// Exit status: 0 done; 1 done, and something about the cake itself deserves a second look; 2 bad usage, input that cannot be read or used, or an answer that could not
// be written. Whatever is wrong is one line on the error stream.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.Globalization;
using System.Text;
using System.Text.Json;
using Confectio.Cakes;
using Confectio.Conversions;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Pictures;
using Confectio.Sources;
using Confectio.Uncertainty;

const string Usage = "usage: enough-icing.cs CAKE.json [--system us-customary] [--left \"1.4 kg\"] [--icing NAME] [--svg OUT.svg] [--json]";
string? file = null;
Dictionary<string, string> options = [];
bool json = false;
for (int i = 0; i < args.Length; i++)
{
    if (args[i] == "--json")
        json = true;
    else if (args[i] is "--system" or "--left" or "--icing" or "--svg" && i + 1 < args.Length && options.TryAdd(args[i], args[i + 1]))
        i++;
    else if (file is null && !args[i].StartsWith('-'))
        file = args[i];
    else
        return Shell.Fail($"{args[i]}: not understood, twice, or without its value. {Usage}");
}
if (Shell.Repeated(args) is string twice)
    return Shell.Fail($"{twice}: given twice. {Usage}");
if (string.IsNullOrWhiteSpace(file))
    return Shell.Fail(Usage);
if (!MeasuringSystem.TryGet(options.GetValueOrDefault("--system", "us-customary"), out MeasuringSystem? system))
    return Shell.Fail($"--system {options["--system"]}: not a measuring system; one of: {string.Join(", ", MeasuringSystem.All.Select(known => known.Key))}");

if (options.FirstOrDefault(option => string.IsNullOrWhiteSpace(option.Value)) is { Key: not null } blank)
    return Shell.Fail($"{blank.Key}: its value is blank. {Usage}");

IcingOrder order;
try
{
    order = IcingOrderJson.Read(Bytes(file), IngredientTable.BuiltIn).OrThrow();
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail($"{file}: {Shell.Reason(e)}");
}
string name = options.GetValueOrDefault("--icing", order.Icings.Count > 0 ? order.Icings[0].Name : "");
if ((options.ContainsKey("--left") || options.ContainsKey("--icing")) && order.Icings.All(known => known.Name != name))
    return Shell.Fail($"--icing {name}: one of: {string.Join(", ", order.Icings.Select(known => known.Name))}");

IcingPlan[] plans;
Cover? cover = null;
try
{
    plans = order.Bowls.Count == 0 ? [order.Plan()] : [.. order.Bowls.Select(order.Plan)];
}
catch (Exception e) when (Shell.Expected(e))
{
    return Shell.Fail($"{file}: {Shell.Reason(e)}");
}
if (options.TryGetValue("--left", out string? left))
{
    try
    {
        double grams = QuantityText.ParseGrams(left);
        if (!(grams is >= 1 and <= 1e9))
            throw new FormatException("from 1 g to 1 000 000 kg are expected.");
        cover = new Cover(order, order.Icings.First(known => known.Name == name), grams);
    }
    catch (Exception e) when (Shell.Expected(e))
    {
        return Shell.Fail($"--left {left}: {Shell.Reason(e)}");
    }
}

// The whole answer before any of it is written: what fails leaves no half of one.
byte[] written = json ? Json(plans, cover) : Encoding.UTF8.GetBytes(Print(order, plans, system, cover));
if (options.TryGetValue("--svg", out string? picture))
{
    try
    {
        File.WriteAllText(picture, CakePicture.Svg(order.Cake));
    }
    catch (Exception e) when (Shell.Expected(e))
    {
        return Shell.Fail($"--svg {picture}: {Shell.Reason(e)}");
    }
}
return Shell.Answer(written, plans[0].Coverage.Findings.Count == 0 ? 0 : 1);

// No more than an order may have, and a byte, however much the file has.
static byte[] Bytes(string file)
{
    using FileStream stream = File.OpenRead(file);
    byte[] bytes = new byte[IcingOrderJson.MaximumBytes + 1];
    int read = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
    return bytes[..read];
}

static string Print(IcingOrder order, IcingPlan[] plans, MeasuringSystem system, Cover? cover)
{
    StringBuilder text = new();
    void Line(FormattableString line) => text.AppendFormat(CultureInfo.InvariantCulture, line.Format, [.. line.GetArguments().Select(part => part is null or IFormattable ? part : Shell.Shown($"{part}"))]).Append('\n');
    CakeCoverage coverage = plans[0].Coverage;
    Line($"{order.Cake}");
    for (int i = 0; i < order.Cake.Tiers.Count; i++)
    {
        CakeTier tier = order.Cake.Tiers[i];
        Line($"  tier {i + 1}  {tier}   ({(tier.Body.Footprint is PlanShape foot ? $"{Inches(foot.WidthCentimetres)} across" : "on a point")}, {Inches(tier.Body.HeightCentimetres)} high)");
    }
    if (order.Cake.Tiers.Count > 0)
    {
        Line($"  seen: {coverage.ExposedSquareCentimetres:0} cm² of sides and tops; under the tiers {coverage.HiddenSquareCentimetres:0} cm², where {coverage.HiddenMillilitres:0} mL {(order.Cake.HiddenTops == HiddenTop.Coated ? "could be saved" : "are saved")}");
        Line($"  portions: {order.Cake.Portions(Portion.OneByTwoInches):0} of 1 × 2 in, {order.Cake.Portions(Portion.OneAndAHalfByTwoInches):0} of 1½ × 2 in (common practice)");
    }

    Line($"\nWhat it takes                                                 mL      area × thickness");
    foreach (CoveragePart part in coverage.Parts)
    {
        string thin = part.ThinMillilitres is double area && part.Millilitres > 0 ? string.Create(CultureInfo.InvariantCulture, $"{area,10:0.0} {100 * (area / part.Millilitres - 1),7:+0.0;-0.0} %") : "";
        Line($"  {(part.Tier is int number ? $"tier {number}  " : "        ")}{part.Name + " of " + part.Icing,-47}{part.Millilitres,8:0.0}{thin}");
    }

    double cup = system.MillilitresPer(KitchenUnit.Cup);
    Line($"\nHow much, with {100 * order.WasteFraction:0.#} % of what is taken lost in bowls and bags");
    foreach (IcingNeed need in plans[0].Needs)
    {
        Line($"  {need.Icing.Name}, {Spread(need.Icing.GramsPerMillilitre, "0.00")} g/mL");
        Line($"    on the cake {Spread(need.PlannedGrams)} g, {need.Millilitres:0} mL, {need.Millilitres / cup:0.#} cups ({system.Name}); with waste {need.TakenGrams:0} g");
    }

    foreach (IcingPlan plan in plans.Where(plan => plan.Bowl is not null))
    {
        Line($"\nIn a {plan.Bowl}");
        foreach (IcingNeed need in plan.Needs.Where(need => need.Icing.Formula is not null))
        {
            foreach (IcingBatch batch in need.Batches)
            {
                Line($"  {batch}");
                foreach (FormulaLine line in batch.Formula!.Lines)
                    Line($"    {line.Ingredient.Name,-22}{line.Grams.Likely,9:0.0} g{Measures(line.Ingredient, line.Grams.Likely, system)}");
            }
            Line($"  {need.MadeGrams:0.0} g made = {need.PlannedGrams.Likely:0.0} on the cake + {need.WasteGrams:0.0} lost + {need.LeftOverGrams:0.0} left over{LeftOver(order, need)}");
        }
    }
    foreach (Icing icing in order.Icings.Where(icing => icing.Formula is not null))
        Line($"\n{icing.Name} contains: {(icing.Formula!.Allergens.Count == 0 ? "none of the listed allergens" : string.Join(", ", icing.Formula.Allergens.Select(allergen => $"{allergen}")))}{(icing.Formula.OftenContains.Count == 0 ? "" : $"; often contains: {string.Join(", ", icing.Formula.OftenContains.Select(allergen => $"{allergen}"))}")}. {Caution.ReadTheLabel}");
    if (order.Icings.Any(icing => icing.Formula is null))
        Line($"Of icings without a formula the allergens are not known: {string.Join(", ", order.Icings.Where(icing => icing.Formula is null).Select(icing => icing.Name))}.");
    // What is left over may be of an icing that this cake does not take.
    foreach (string caution in plans.SelectMany(plan => plan.Cautions).Concat(cover?.Cautions ?? []).Distinct())
        Line($"Caution: {caution}");
    if (cover is not null)
    {
        Line($"\n{cover.Grams:0} g of {cover.Icing.Name} are left: {cover.Millilitres:0} mL on a cake, and that is one of these");
        foreach (string line in cover.Lines())
            Line($"  {line}");
    }
    return text.ToString();
}

// The fewest cups and spoons within 2 %, or about so much.
static string Measures(Ingredient ingredient, double grams, MeasuringSystem system)
{
    if (ingredient.Densities.Count == 0 || grams < 0.1)
        return "";
    Conversion conversion = Conversion.Of(ingredient, system);
    MeasuringTools tools = MeasuringTools.Usual(system);
    return conversion.ToMeasures(grams, tools, 0.02) is PracticalMeasure near ? $"   {near.Amount:V}"
        : conversion.ToMeasures(grams, tools, 0.15) is PracticalMeasure about ? $"   about {about.Amount:V}" : "";
}

// As tins are labelled, or to a tenth where it is no sixteenth.
static string Inches(double centimetres)
{
    CakeLength length = CakeLength.FromCentimetres(centimetres);
    return Math.Abs(16 * length.Inches - Math.Round(16 * length.Inches)) < 1e-6 ? length.ToString("in") : string.Create(CultureInfo.InvariantCulture, $"{length.Inches:0.0} in");
}

// Where nobody stated a spread there is none to print.
static string Spread(Spread spread, string format = "0") => spread.Low == spread.High ? Number(spread.Likely, format)
    : $"{Number(spread.Likely, format)} ({Number(spread.Low, format)} to {Number(spread.High, format)})";

static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

static string LeftOver(IcingOrder order, IcingNeed need)
{
    if (need.LeftOverCover is not IcingCover cover)
        return "";
    List<string> more = [];
    if (order.Cake.Cupcakes.FirstOrDefault(one => one.Icing == need.Icing.Name) is Cupcakes cupcakes)
        more.Add($"{cover.CupcakesLike(cupcakes)} more cupcakes");
    if (order.Cake.Tiers.SelectMany(tier => tier.Pieces).FirstOrDefault(pieces => pieces.Icing == need.Icing.Name) is PipedPieces pieces)
        more.Add($"{cover.Pieces(pieces.Piece)} more rosettes");
    return more.Count == 0 ? "" : $" ({string.Join(" or ", more)})";
}

static byte[] Json(IcingPlan[] plans, Cover? cover)
{
    using MemoryStream output = new();
    using (Utf8JsonWriter writer = new(output))
    {
        writer.WriteStartObject();
        writer.WriteStartArray("plans");
        foreach (IcingPlan plan in plans)
            IcingPlanJson.Write(plan, writer);
        writer.WriteEndArray();
        cover?.Write(writer);
        writer.WriteEndObject();
    }
    output.WriteByte((byte)'\n');
    return output.ToArray();
}

// The way back: so much is left; each of its answers alone uses it up.
internal sealed class Cover
{
    private readonly double? _scale, _coats, _round;
    private readonly (Cupcakes Like, long Count)[] _cupcakes;

    public Cover(IcingOrder order, Icing icing, double grams)
    {
        (Icing, Grams) = (icing, grams);
        IcingCover cover = icing.CoverFrom(grams, order.WasteFraction);
        Millilitres = cover.Millilitres;
        (_scale, _coats, _round) = (cover.MaximumScale(order.Cake, icing.Name), cover.CoatFactor(order.Cake, icing.Name), cover.MaximumRoundCentimetres(CakeLength.FromCentimetres(10.16), CakeLength.FromMillimetres(6), CoatEdge.Sharp));
        _cupcakes = [.. order.Cake.Cupcakes.Where(one => one.Icing == icing.Name).Select(one => (one, cover.CupcakesLike(one)))];
    }

    public Icing Icing { get; }

    public double Grams { get; }

    public double Millilitres { get; }

    public IEnumerable<string> Cautions => (Icing.Formula?.Cautions ?? []).Select(caution => caution.Text);

    public IEnumerable<string> Lines()
    {
        if (_scale is double scale)
            yield return string.Create(CultureInfo.InvariantCulture, $"this cake at {100 * scale:0.0} % of its size, coats and borders as they are, with as many cupcakes");
        if (_coats is double coats)
            yield return string.Create(CultureInfo.InvariantCulture, $"this cake as large as it is, its coats at {100 * coats:0.0} % of their thickness");
        if (_round is double round)
            yield return string.Create(CultureInfo.InvariantCulture, $"top and side of a round of {round:0.0} cm ({round / CakeLength.CentimetresPerInch:0.0} in), 4 in high, 6 mm thick");
        foreach ((_, long count) in _cupcakes)
            yield return string.Create(CultureInfo.InvariantCulture, $"{count} cupcakes like these");
    }

    public void Write(Utf8JsonWriter writer)
    {
        writer.WriteStartObject("left");
        writer.WriteString("icing", Icing.Name);
        writer.WriteNumber("grams", Grams);
        writer.WriteNumber("millilitres", Millilitres);
        Write(writer, "cakeScale", _scale);
        Write(writer, "coatFactor", _coats);
        Write(writer, "roundCentimetres", _round);
        writer.WriteStartArray("cupcakes");
        foreach ((_, long count) in _cupcakes)
            writer.WriteNumberValue(count);
        writer.WriteEndArray();
        Write(writer, "contains", Icing.Formula?.Allergens.Select(Word));
        Write(writer, "oftenContains", Icing.Formula?.OftenContains.Select(Word));
        writer.WriteString("label", Caution.ReadTheLabel);
        Write(writer, "cautions", Cautions);
        writer.WriteEndObject();
    }

    private static string Word(Allergen allergen) => $"{allergen}".ToLowerInvariant();

    // Null is not known, which is not none.
    private static void Write(Utf8JsonWriter writer, string name, IEnumerable<string>? words)
    {
        if (words is null)
        {
            writer.WriteNull(name);
            return;
        }
        writer.WriteStartArray(name);
        foreach (string word in words)
            writer.WriteStringValue(word);
        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is double number)
            writer.WriteNumber(name, number);
        else
            writer.WriteNull(name);
    }
}
