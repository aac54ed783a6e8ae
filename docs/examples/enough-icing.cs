// Makes enough icing for a cake: what each coat, filling and border takes, grams through the whipped density, batches for every bowl, what is left over.
//
//   dotnet run docs/examples/enough-icing.cs CAKE.json [--system us-customary] [--left "1.4 kg"] [--icing NAME] [--svg OUT.svg] [--json]
//
// CAKE.json is an order as docs/schema/order.json describes it. --left asks the way back: what so much of an icing covers, the first one unless --icing names it.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
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

Cli cli = new("enough-icing.cs", "Makes enough icing for a cake. Exit status: 0 done; 1 done, and something about the cake itself deserves a second look; "
    + "2 bad usage, input that cannot be read or used, or an answer that could not be written.");
Argument<string> fileWord = cli.Word("CAKE.json");
Option<MeasuringSystem> systemOption = cli.System();
Option<double> left = cli.Value("--left", "\"1.4 kg\"", text => QuantityText.ParseGrams(text) is >= 1 and <= 1e9 and double grams ? grams
    : throw new FormatException("from 1 g to 1 000 000 kg are expected."), 0);
Option<string> icing = cli.Text("--icing", "NAME"), svg = cli.Text("--svg", "OUT.svg");
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(fileWord), picture = options.GetRequiredValue(svg), name = options.GetRequiredValue(icing);
    double grams = options.GetValue(left);
    IcingOrder order = Shell.Named(file, () => ReadOrder(file));
    Icing? chosen = name.Length > 0 ? order.Icings.FirstOrDefault(known => known.Name == name) : order.Icings is [Icing first, ..] ? first : null;
    if (chosen is null && (name.Length > 0 || grams > 0))
        throw new FormatException($"--icing {name}: {Cli.Expected(name, order.Icings.Select(known => known.Name))}");
    IcingPlan[] plans = Shell.Named<IcingPlan[]>(file, () => order.Bowls.Count == 0 ? [order.Plan()] : [.. order.Bowls.Select(order.Plan)]);
    Cover? cover = grams > 0 ? Shell.Named("--left", () => new Cover(order, chosen!, grams)) : null;
    // The whole answer before any of it is written: what fails leaves no half of one.
    string written = options.GetValue(json) ? Document(plans, cover) : Text(order, plans, options.GetRequiredValue(systemOption), cover);
    if (picture.Length > 0)
    {
        Shell.Named($"--svg {picture}", () =>
        {
            File.WriteAllText(picture, CakePicture.Svg(order.Cake));
            return picture;
        });
    }
    return Shell.Answer(written, plans[0].Coverage.Findings.Count == 0 ? 0 : 1);
});

static IcingOrder ReadOrder(string file)
{
    using FileStream stream = File.OpenRead(file);
    return IcingOrder.ReadJson(stream, IngredientTable.BuiltIn).OrThrow();
}

static string Text(IcingOrder order, IcingPlan[] plans, MeasuringSystem system, Cover? cover)
{
    Page page = new();
    CakeCoverage coverage = plans[0].Coverage;
    page.Line($"{order.Cake}");
    for (int i = 0; i < order.Cake.Tiers.Count; i++)
    {
        CakeTier tier = order.Cake.Tiers[i];
        page.Line($"  tier {i + 1}  {tier}   ({(tier.Body.Footprint is PlanShape foot ? $"{Inches(foot.WidthCentimetres)} across" : "on a point")}, {Inches(tier.Body.HeightCentimetres)} high)");
    }
    if (order.Cake.Tiers.Count > 0)
    {
        page.Line($"  seen: {coverage.ExposedSquareCentimetres:0} cm² of sides and tops; under the tiers {coverage.HiddenSquareCentimetres:0} cm², where {coverage.HiddenMillilitres:0} mL {(order.Cake.HiddenTops == HiddenTop.Coated ? "could be saved" : "are saved")}");
        page.Line($"  portions: {order.Cake.Portions(Portion.OneByTwoInches):0} of 1 × 2 in, {order.Cake.Portions(Portion.OneAndAHalfByTwoInches):0} of 1½ × 2 in (common practice)");
    }

    page.Line($"\nWhat it takes                                                 mL      area × thickness");
    foreach (CoveragePart part in coverage.Parts)
    {
        string thin = part.ThinMillilitres is double area && part.Millilitres > 0 ? string.Create(CultureInfo.InvariantCulture, $"{area,10:0.0} {100 * (area / part.Millilitres - 1),7:+0.0;-0.0} %") : "";
        page.Line($"  {(part.Tier is int number ? $"tier {number}  " : "        ")}{part.Name + " of " + part.Icing,-47}{part.Millilitres,8:0.0}{thin}");
    }

    double cup = system.MillilitresPer(KitchenUnit.Cup);
    page.Line($"\nHow much, with {100 * order.WasteFraction:0.#} % of what is taken lost in bowls and bags");
    foreach (IcingNeed need in plans[0].Needs)
    {
        page.Line($"  {need.Icing.Name}, {Spread(need.Icing.GramsPerMillilitre, "0.00")} g/mL");
        page.Line($"    on the cake {Spread(need.PlannedGrams)} g, {need.Millilitres:0} mL, {need.Millilitres / cup:0.#} cups ({system.Name}); with waste {need.TakenGrams:0} g");
    }

    foreach (IcingPlan plan in plans.Where(plan => plan.Bowl is not null))
    {
        page.Line($"\nIn a {plan.Bowl}");
        foreach (IcingNeed need in plan.Needs.Where(need => need.Icing.Formula is not null))
        {
            foreach (IcingBatch batch in need.Batches)
            {
                page.Line($"  {batch}");
                foreach (FormulaLine line in batch.Formula!.Lines)
                    page.Line($"    {line.Ingredient.Name,-22}{line.Grams.Likely,9:0.0} g{Measures(line.Ingredient, line.Grams.Likely, system)}");
            }
            page.Line($"  {need.MadeGrams:0.0} g made = {need.PlannedGrams.Likely:0.0} on the cake + {need.WasteGrams:0.0} lost + {need.LeftOverGrams:0.0} left over{LeftOver(order, need)}");
        }
    }
    foreach (Icing icing in order.Icings.Where(icing => icing.Formula is not null))
        page.Line($"\n{icing.Name} c{Food.Contains(icing.Formula!)}");
    if (order.Icings.Any(icing => icing.Formula is null))
        page.Line($"Of icings without a formula the allergens are not known: {string.Join(", ", order.Icings.Where(icing => icing.Formula is null).Select(icing => icing.Name))}.");
    // What is left over may be of an icing that this cake does not take.
    page.Section("", plans.SelectMany(plan => plan.Cautions).Concat(cover?.Cautions ?? []).Distinct().Select(caution => $"Caution: {caution}"));
    if (cover is not null)
    {
        page.Line($"\n{cover.Grams:0} g of {cover.Icing.Name} are left: {cover.Millilitres:0} mL on a cake, and that is one of these");
        page.Section("", cover.Lines().Select(line => $"  {line}"));
    }
    return page.ToString();
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

static string Document(IcingPlan[] plans, Cover? cover)
{
    JsonObject document = new() { ["plans"] = Json.Array(plans, plan => Json.Written(writer => plan.WriteTo(writer))) };
    if (cover is not null)
        document["left"] = cover.Document();
    return Json.Text(document);
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

    // Null is not known, which is not none.
    public JsonObject Document() => new()
    {
        ["icing"] = Icing.Name,
        ["grams"] = Grams,
        ["millilitres"] = Millilitres,
        ["cakeScale"] = _scale,
        ["coatFactor"] = _coats,
        ["roundCentimetres"] = _round,
        ["cupcakes"] = Json.Array(_cupcakes, one => one.Count),
        ["contains"] = Icing.Formula is null ? null : Food.Keys(Icing.Formula.Allergens),
        ["oftenContains"] = Icing.Formula is null ? null : Food.Keys(Icing.Formula.OftenContains),
        ["label"] = Caution.ReadTheLabel,
        ["cautions"] = Json.Array(Cautions, caution => caution),
    };
}
