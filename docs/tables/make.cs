// Makes the tables of this folder from the data that the assembly carries. Nothing in them is typed.
//
//   dotnet run docs/tables/make.cs [FOLDER]
//
// Without a folder the tables stand beside this file. Exit status: 0 done, 2 bad usage.
#:project ../../src/Confectio/Confectio.csproj
#:property AssemblyName=Confectio.Tables

using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;
using Confectio.Cakes;
using Confectio.Cooking;
using Confectio.Eggs;
using Confectio.Formulas;
using Confectio.Heat;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Safety;
using Confectio.Sources;
using Confectio.Sugars;
using Confectio.Uncertainty;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args.Length > 1 || (args.Length == 1 && args[0].StartsWith('-')))
{
    Console.Error.WriteLine("usage: make.cs [FOLDER]");
    return 2;
}
const int MostColumns = 3;
double UsCup = MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.Cup), MetricCup = MeasuringSystem.Metric.MillilitresPer(KitchenUnit.Cup);
string[] head = [];
string folder = args.Length == 1 ? args[0] : Here();
Directory.CreateDirectory(folder);
Write("measures.md", Measures());
Write("ingredients.md", Ingredients());
Write("densities.md", Densities());
Write("two-tables.md", TwoTables());
Write("equations.md", Equations());
Write("stages.md", Stages());
Write("sweetness.md", Sweetnesses());
Write("egg-sizes.md", EggSizes());
Write("reconstitution.md", Reconstitution());
Write("lethality.md", Lethality());
Write("cakes.md", Cakes());
Write("sources.md", SourceList());
Directory.CreateDirectory(Path.Combine(folder, "foods"));
foreach (Ingredient food in IngredientTable.BuiltIn.All)
    Write($"foods/{food.Id}.md", Food(food));
foreach (string gone in Directory.EnumerateFiles(Path.Combine(folder, "foods"), "*.md")
    .Where(page => IngredientTable.BuiltIn.All.All(food => food.Id != Path.GetFileNameWithoutExtension(page))))
    File.Delete(gone);
return 0;

StringBuilder Measures()
{
    StringBuilder page = Page("Measures",
        "Every measuring system and every unit of volume it has, exactly. A fraction in lowest terms is given where the decimals do not end. " +
        "Grams, kilograms, pounds (453.59237 g), ounces, millilitres and litres belong to every system.");
    foreach (MeasuringSystem system in MeasuringSystem.All)
    {
        Line(page, $"## {system.Name}");
        Line(page);
        Line(page, $"Key: `{system.Key}`. Family: `{system.Family}`. An ounce weighs {Number(system.GramsPer(KitchenUnit.Ounce))} g ({system.SourceOf(KitchenUnit.Ounce).ShortName}).");
        Line(page);
        Head(page, "unit", "mL:", "source");
        foreach (KitchenUnit unit in Enum.GetValues<KitchenUnit>().Where(unit => unit.IsVolume() && system.Defines(unit)))
        {
            if (unit is KitchenUnit.Millilitre or KitchenUnit.Litre)
                continue;
            Row(page, unit.ToWord(), Exact(system.ExactMillilitresPer(unit)), Link(system.SourceOf(unit)));
        }
        Line(page);
        foreach (var caution in Enum.GetValues<KitchenUnit>().Where(unit => system.CautionFor(unit) is not null).GroupBy(unit => system.CautionFor(unit)))
            Line(page, $"- {string.Join(", ", caution.Select(unit => unit.ToWord()))}: {caution.Key}");
        Line(page);
    }
    return page;
}

// Every name of every food, so that whoever says powdered sugar and whoever says icing sugar both find it.
StringBuilder Ingredients()
{
    StringBuilder page = Page("Ingredients",
        $"{IngredientTable.BuiltIn.All.Count} foods by every name that they have: what each is made of, what it weighs and where that is from stands on its page. " +
        "Behind a name stands where it is used. A name that means two foods stands with both.");
    var names = IngredientTable.BuiltIn.All.SelectMany(food => food.Aliases.Select(alias => (alias.Text, Region: Region(alias.Region), Food: food))
        .Prepend((Text: food.Name, Region: "", Food: food)))
        .GroupBy(name => (Key: name.Text.ToUpperInvariant(), name.Food.Id)).Select(same => (Text: same.First().Text, Food: same.First().Food,
            Region: same.Any(name => name.Region.Length == 0) ? "" : $" ({string.Join(", ", same.Select(name => name.Region).Distinct())})"))
        .OrderBy(name => name.Text.ToUpperInvariant(), StringComparer.Ordinal).ThenBy(name => name.Food.Id, StringComparer.Ordinal).ToArray();
    foreach (var letter in names.GroupBy(name => char.IsAsciiLetter(name.Text[0]) ? char.ToUpperInvariant(name.Text[0]) : '0'))
    {
        Line(page, $"## {(letter.Key == '0' ? "0 to 9" : letter.Key.ToString())}");
        Line(page);
        foreach (var (text, food, region) in letter)
            Line(page, text == food.Name ? $"- **[{Text(text)}](foods/{food.Id}.md)**" : $"- {Text(text)}{region}: [{Text(food.Name)}](foods/{food.Id}.md)");
        Line(page);
    }
    return page;
}

static string Region(NameRegion region) => region switch
{
    NameRegion.UnitedStates => "US", NameRegion.UnitedKingdom => "UK", NameRegion.Australia => "Australia", NameRegion.Ireland => "Ireland",
    NameRegion.SouthAfrica => "South Africa", NameRegion.Canada => "Canada", _ => "",
};

StringBuilder Food(Ingredient food)
{
    StringBuilder page = Page(food.Name, $"`{food.Id}`, {food.Class.ToString().ToLowerInvariant()}; where nobody says how the measure is filled, {food.DefaultPacking.ToWord()} is assumed.");
    foreach (var region in food.Aliases.GroupBy(alias => alias.Region).OrderBy(region => region.Key))
        Line(page, $"- {(region.Key == NameRegion.Everywhere ? "Also" : Region(region.Key))}: {string.Join("; ", region.Select(alias => Text(alias.Text)))}");
    Line(page);
    Line(page, "## What it is made of");
    Line(page);
    Composition made = food.Composition;
    Head(page, "constituent", "g in 100 g:", "evidence");
    foreach (Constituent constituent in Enum.GetValues<Constituent>().Where(constituent => made[constituent] > 0))
    {
        Row(page, FormulaPart.Of(constituent).Name, Percent(made[constituent]), food.EvidenceOf(constituent).ToWord());
        if (constituent == Constituent.Fat && made.MilkFat > 0)
            Row(page, "of it milk fat", Percent(made.MilkFat), "");
    }
    Line(page);
    Line(page, string.Create(CultureInfo.InvariantCulture, $"Energy as a label counts it: {100 * made.KilojoulesPerGram:0} kJ ({100 * made.KilocaloriesPerGram:0} kcal) in 100 g."));
    Line(page);
    Line(page, $"- Composition: {Text(From(food.CompositionProvenance))}");
    if (food.SugarsProvenance != food.CompositionProvenance && made.Sugars > 0)
        Line(page, $"- Split of the sugars: {Text(From(food.SugarsProvenance))}");
    if (food.DextroseEquivalent is double equivalent)
        Line(page, $"- Dextrose equivalent: {Number(equivalent)}");
    if (food.Note.Length > 0)
        Line(page, $"- {Text(food.Note)}");
    Line(page);
    Line(page, "## Allergens");
    Line(page);
    Line(page, $"- Has: {Allergens(food.Allergens)}");
    Line(page, $"- Many makes have: {Allergens(food.OftenContains)}");
    Line(page);
    Line(page, "What is not named here is not said to be absent. Read the label of your own.");
    Line(page);
    Line(page, "## What it weighs");
    Line(page);
    if (food.Densities.Count == 0)
        Line(page, "Nobody is known to have weighed it by volume, so no cup of it is converted.");
    else
        Head(page, "packing", "US cup, g:", "metric cup, g:");
    foreach (BulkDensity density in food.Densities)
        Row(page, density.Packing.ToWord(), Cup(density.GramsPerMillilitre, UsCup), Cup(density.GramsPerMillilitre, MetricCup));
    Line(page);
    foreach (BulkDensity density in food.Densities)
    {
        foreach (WeightFact voice in density.ContributingFigures)
            Line(page, $"- {density.Packing.ToWord()}: {Text(Voice(voice))}");
    }
    Line(page);
    if (food.Pieces.Count > 0)
    {
        Head(page, "piece", "g:", "evidence");
        foreach (PieceWeight piece in food.Pieces)
            Row(page, piece.Piece, Triple(piece.Grams), piece.Fact.Provenance.Evidence.ToWord());
        Line(page);
        foreach (PieceWeight piece in food.Pieces)
            Line(page, $"- {piece.Piece}: {Text(Where(piece.Fact.Provenance))}");
        Line(page);
    }
    Line(page, "Low and high of a cup bound about 95 % of careful kitchens. [All foods](../ingredients.md); [all weights of a cup](../densities.md).");
    return page.Replace("](sources.md#", "](../sources.md#");

    static string From(Provenance provenance) => $"{Evidence(provenance)}{(provenance.Locator.Length > 0 ? ", " + provenance.Locator : "")}";

    static string Allergens(IReadOnlyList<Allergen> allergens) =>
        allergens.Count == 0 ? "none listed" : string.Join(", ", allergens.Select(allergen => allergen.ToString().ToLowerInvariant()));
}

StringBuilder TwoTables()
{
    StringBuilder page = Page("One food in two tables", $"{CompositionVoices.All.Count} foods stand in the American and in the French food table. Of each what both print, in g in 100 g, and where they differ much, why, " +
        "as it was judged by reading both. Ours are the figures of the first; the spread of a constituent is no narrower than the two are apart. The widest differences stand first.");
    foreach ((string id, CompositionVoice voice) in CompositionVoices.All.OrderByDescending(pair => Places(pair.Value).Max(place => Apart(pair.Key, pair.Value, place))).ThenBy(pair => pair.Key, StringComparer.Ordinal))
    {
        Ingredient food = IngredientTable.BuiltIn.Get(id);
        string causes = voice.Causes.Count == 0 ? "they agree" : string.Join(", ", voice.Causes.Select(cause => cause.ToString().ToLowerInvariant()));
        Line(page, $"<details><summary>{Html(food.Name)} · {causes}</summary>");
        Line(page);
        Head(page, "constituent", Html(Link(food.CompositionProvenance.Source)) + ":", Html(Link(voice.Provenance.Source)) + ":");
        foreach (int place in Places(voice))
        {
            Constituent constituent = Constituents.At(place);
            string mark = CompositionVoices.IsFarApart(food, voice, constituent) ? "**" : "";
            Row(page, mark + FormulaPart.Of(constituent).Name + mark, Percent(food.Composition[constituent]) is { Length: > 0 } ours ? ours : "0",
                Percent(voice.Fractions[place]!.Value) is { Length: > 0 } theirs ? theirs : "0");
        }
        Line(page);
        if (voice.Why.Length > 0)
            Line(page, $"- {Text(voice.Why)}");
        Line(page, $"- {Text(Where(food.CompositionProvenance))}; {Text(Where(voice.Provenance))}. [The page of the food](foods/{id}.md).");
        Line(page);
        Line(page, "</details>");
        Line(page);
    }
    return page;

    static IEnumerable<int> Places(CompositionVoice voice) => Enumerable.Range(0, voice.Fractions.Length).Where(place => voice.Fractions[place] is not null);

    static double Apart(string id, CompositionVoice voice, int place) =>
        Math.Abs(IngredientTable.BuiltIn.Get(id).Composition[Constituents.At(place)] - voice.Fractions[place]!.Value);
}

StringBuilder Densities()
{
    StringBuilder page = Page("Weights of a cup",
        $"Grams in a cup, likely (low to high). Low and high bound about 95 % of careful kitchens; they are not a tolerance. " +
        $"The US cup holds {Number(UsCup)} mL, the metric cup {Number(MetricCup)} mL. Whose figures these are stands on the page of the food: a figure that is estimated, " +
        "from memory or common practice speaks only where no published one does, and is marked \\*.");
    Head(page, "food", "US cup, g:", "metric cup, g:");
    foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
    {
        foreach (BulkDensity density in ingredient.Densities)
        {
            bool judged = density.ContributingFigures.All(voice => voice.Provenance.Evidence is Confectio.Sources.Evidence.Estimated
                or Confectio.Sources.Evidence.CommonPractice or Confectio.Sources.Evidence.FromMemory);
            Row(page, $"[{ingredient.Name}](foods/{ingredient.Id}.md), {density.Packing.ToWord()}{(judged ? " \\*" : "")}",
                Cup(density.GramsPerMillilitre, UsCup), Cup(density.GramsPerMillilitre, MetricCup));
        }
    }
    Line(page);
    Line(page, "## Pieces");
    Line(page);
    Head(page, "food", "piece", "g:");
    foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
    {
        foreach (PieceWeight piece in ingredient.Pieces)
            Row(page, $"[{ingredient.Name}](foods/{ingredient.Id}.md)", piece.Piece, Triple(piece.Grams));
    }
    return page;
}

StringBuilder Equations()
{
    StringBuilder page = Page("Equations and their coefficients",
        "Each equation with where it holds, what it rests on and how far off it is, then the numbers in it, and the substances they are for. " +
        "`Equation`, `Coefficient` and `Substance` have the same.");
    Head(page, "gives", "equation", "range", "basis", "off by", "evidence", "note");
    foreach (Equation equation in Equation.All)
    {
        Row(page, equation.Quantity, equation.Form, equation.Range, equation.Basis, equation.FitError,
            Evidence(equation.Provenance), equation.Provenance.Note);
    }
    foreach (Equation equation in Equation.All.Where(equation => equation.Coefficients.Count > 0))
    {
        Line(page);
        Line(page, $"## {equation.Key}");
        Line(page);
        Line(page, $"{Text(equation.Quantity)}: {Text(equation.Form)}");
        Line(page);
        Head(page, "of", "coefficient", "value:", "unit", "from", "to", "°C", "off by", "evidence", "note");
        foreach (Coefficient coefficient in equation.Coefficients)
        {
            Row(page, coefficient.Substance.Key, coefficient.Name, Exponent(coefficient.Value), Unit(coefficient.Unit),
                Limit(coefficient.Lowest, coefficient.RangeUnit), Limit(coefficient.Highest, coefficient.RangeUnit),
                coefficient.MinimumCelsius is double low ? $"{Exponent(low)} to {Exponent(coefficient.MaximumCelsius!.Value)}" : "",
                Limit(coefficient.FitError, coefficient.FitErrorUnit), Evidence(coefficient.Provenance), coefficient.Provenance.Note);
        }
    }
    Line(page);
    Line(page, "## Substances");
    Line(page);
    Head(page, "key", "name", "formula", "g/mol:", "evidence", "note");
    foreach (Substance substance in Substance.All)
    {
        Row(page, substance.Key, substance.Name, substance.ChemicalFormula ?? "", substance.MolarMass is double mass ? Exponent(mass) : "",
            substance.MolarMassProvenance is Provenance known ? Evidence(known) : "", substance.MolarMassProvenance?.Note ?? "");
    }
    return page;

    static string Exponent(double value) => value.ToString("R", CultureInfo.InvariantCulture).Replace('E', 'e');
    static string Unit(string unit) => unit == "1" ? "" : unit;
    static string Limit(double? value, string unit) => value is double number ? $"{Exponent(number)} {Unit(unit)}".Trim() : "";
}

StringBuilder Stages()
{
    StringBuilder page = Page("Cooking stages", "What each source prints, at sea level, and the strength at which sucrose boils there by the default model. " +
        "The same strength boils lower in a high kitchen. " + CookingStage.Caution);
    Head(page, "stage", "source", "printed as", "°F", "°C", "sugar printed, %:", "sugar that boils there, %:", "note");
    foreach (CookingStage stage in CookingStage.All)
    {
        foreach (StageFigure figure in stage.Figures)
        {
            double high = figure.HighFahrenheit ?? figure.LowFahrenheit;
            string open = figure.HighFahrenheit is null ? "from " : "";
            Row(page, stage.Name, Link(figure.Provenance.Source), figure.PrintedAs, open + Range(figure.LowFahrenheit, high, "0"),
                open + Range(Celsius(figure.LowFahrenheit), Celsius(high), "0.0"), figure.SugarPercent is double percent ? Number(percent) : "",
                open + Range(BoilingPercent(figure.LowFahrenheit), BoilingPercent(high), "0.0"), figure.Provenance.Note);
        }
    }
    return page;
}

static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

static double? BoilingPercent(double fahrenheit)
{
    SugarSolution sucrose = SugarSolution.OfSucrose(0.5);
    return Celsius(fahrenheit) <= sucrose.MaximumBoilingCelsius(AirPressure.SeaLevel) ? 100 * sucrose.BoilingAt(Celsius(fahrenheit), AirPressure.SeaLevel).Solids : null;
}

static string Range(double? low, double? high, string format)
{
    string first = low is double from ? from.ToString(format, CultureInfo.InvariantCulture) : "above 98";
    string second = high is double to ? to.ToString(format, CultureInfo.InvariantCulture) : "above 98";
    return first == second ? first : $"{first} to {second}";
}

StringBuilder Sweetnesses()
{
    StringBuilder page = Page("Relative sweetness", "Grams of sucrose that a gram is as sweet as. The tables disagree; choose one by its key.");
    Head(page, "table", "substance", "sweetness:", "from:", "to:", "evidence", "note");
    foreach (SweetnessTable table in SweetnessTable.All)
    {
        foreach (SweetnessFigure figure in table.Figures)
        {
            Row(page, $"`{table.Key}`", FormulaPart.Of(figure.Constituent).Name, Number(figure.Value.Likely), Number(figure.Value.Low), Number(figure.Value.High),
                Evidence(figure.Provenance), figure.Provenance.Note);
        }
    }
    return page;
}

StringBuilder Cakes()
{
    StringBuilder page = Page("Tins, portions and usage", "What the trade and two institutional recipes print, beside what geometry says of the nominal sizes.");
    Line(page, "## Tins");
    Line(page);
    Line(page, "To the brim. Tins taper and are measured over the rim, so a nominal size promises more than it holds: fill yours with water.");
    Line(page);
    Head(page, "tin", "depth, cm:", "printed, US cups:", "printed, mL:", "geometry, mL:", "printed / geometry:", "evidence", "note");
    foreach (PanFigure figure in PanFigure.All)
    {
        Row(page, figure.Pan.Name, Number(figure.Pan.DepthCentimetres), Number(figure.PrintedCups), figure.PrintedMillilitres.ToString("0", CultureInfo.InvariantCulture),
            figure.GeometricMillilitres.ToString("0", CultureInfo.InvariantCulture), figure.PrintedOverGeometric.ToString("0.00", CultureInfo.InvariantCulture), Evidence(figure.Provenance), figure.Provenance.Note);
    }
    Line(page);
    Line(page, "## Icing for a cake");
    Line(page);
    Line(page, "The mean thickness is the printed volume over top, side and fillings. Beside it stands what the same cake takes with 3 mm everywhere, coats with their edges.");
    Line(page);
    Head(page, "cake", "printed, US cups:", "printed, mL:", "mean thickness, mm:", "with 3 mm, mL:", "evidence", "note");
    foreach (IcingUsage usage in IcingUsage.All)
    {
        Row(page, usage.Name, Number(usage.PrintedCups), usage.PrintedMillilitres.ToString("0", CultureInfo.InvariantCulture), Millimetres(usage.MeanMillimetres), With3Millimetres(usage), Evidence(usage.Provenance),
            usage.Provenance.Note);
    }
    Line(page);
    Line(page, "## Portions");
    Line(page);
    Line(page, "Of a tier about 4 in high, by its plan. How two institutions cut a sheet, and what the trade says of rounds.");
    Line(page);
    Head(page, "portion", "tier", "said:", "by area:", "evidence", "note");
    foreach (PortionFigure figure in PortionFigure.All)
    {
        CakeBody body = CakeBody.Prism(figure.Plan, CakeLength.FromInches(4));
        string across = $"{CakeLength.FromCentimetres(figure.Plan.WidthCentimetres):in}";
        Row(page, $"{figure.Portion}", figure.Plan.Name == "round" ? $"round, {across}" : $"sheet, {across} by {CakeLength.FromCentimetres(figure.Plan.LengthCentimetres):in}",
            figure.Low == figure.High ? Number(figure.Low) : $"{figure.Low} to {figure.High}", figure.Portion.CountOn(body).ToString("0.0", CultureInfo.InvariantCulture), Evidence(figure.Provenance), figure.Provenance.Note);
    }
    return page;
}

static string Evidence(Provenance provenance) => $"{provenance.Evidence.ToWord()}, {Link(provenance.Source)}";

static string Millimetres(Spread spread) => spread.Low == spread.High ? spread.Likely.ToString("0.0", CultureInfo.InvariantCulture)
    : string.Create(CultureInfo.InvariantCulture, $"{spread.Low:0.0} / {spread.Likely:0.0} / {spread.High:0.0}");

static string With3Millimetres(IcingUsage usage)
{
    // Of a sheet the top alone is iced; how high it is does not matter then.
    CakeTier tier = CakeTier.Of(CakeBody.Prism(usage.Plan, CakeLength.FromCentimetres(usage.HeightCentimetres?.Likely ?? 5))).Filled(CakeFilling.Of("icing", CakeLength.FromMillimetres(3)), usage.Layers);
    tier = tier.Coated(CakeCoat.Of("icing", CakeLength.FromMillimetres(3), CoatEdge.Sharp, usage.HeightCentimetres is null ? CoatPlace.Top : CoatPlace.TopAndSide));
    return Cake.Of("", [tier]).Cover().TotalMillilitres.ToString("0", CultureInfo.InvariantCulture);
}

StringBuilder EggSizes()
{
    StringBuilder page = Page("Egg sizes", "A size means nothing without its system: a large egg of one is a medium one of another. Grams, low / likely / high. Low and high go over the class and over the shares of shell, white and " +
        "yolk that are known, one of them common practice; they are no bounds of a single egg, least of all in the US, where the minimum holds for the dozen. The likely white and yolk of a US egg are those of the food table, near " +
        "the minimum of the class. The evidence is that of the likely white and yolk alone.");
    Head(page, "system", "size", "in the shell, g:", "white, g:", "yolk, g:", "evidence of white and yolk");
    foreach (EggSizeSystem system in EggSizeSystem.All)
    {
        foreach (EggSize size in system.Sizes)
        {
            Row(page, system.Name, size.Name, Ends(size.WithShell), Ends(size.Grams(EggPart.White)), Ends(size.Grams(EggPart.Yolk)),
                Evidence(size.ProvenanceOf(EggPart.White)));
        }
    }
    return page;
}

static string Ends(Spread spread) => string.Create(CultureInfo.InvariantCulture, $"{spread.Low:0.0} / {spread.Likely:0.0} / {spread.High:0.0}");

StringBuilder Reconstitution()
{
    EggForms forms = EggForms.Of(IngredientTable.BuiltIn);
    StringBuilder page = Page("Making up dried egg white", "Grams of water to a gram of powder, (1 − m)/s − 1, for the powder's moisture m and the solids s that you want. Fresh white has " +
        $"{Percent(forms.FreshWhite.SolidsFraction.Likely)} % solids, pasteurised liquid white {Percent(forms.PasteurisedWhite.SolidsFraction.Likely)} %. " + EggCaution.Text);
    double[] targets = [0.105, 0.11, forms.PasteurisedWhite.SolidsFraction.Likely, 0.115, 0.12, forms.FreshWhite.SolidsFraction.Likely, 0.125];
    Head(page, [.. targets.Select(solids => $"{Percent(solids)} % solids:").Prepend("moisture, %:")]);
    for (int moisture = 4; moisture <= 12; moisture++)
        Row(page, [Number(moisture), .. targets.Select(solids => EggReplacement.WaterPerGram(moisture / 100.0, solids).ToString("0.00", CultureInfo.InvariantCulture))]);
    Line(page);
    Line(page, "## What the kitchen rules give");
    Line(page);
    Line(page, "Solids of the mix in per cent, by the moisture of the powder, in US measures; the spread is that of a spoon or a cup of powder.");
    Line(page);
    Head(page, "rule", "at 5 %:", "at 8 %:", "at 8.54 %:", "at 12 %:", "mass of what it replaces, %:", "evidence");
    double[] moistures = [0.05, 0.08, 0.0854, 0.12];
    foreach (ReconstitutionRule rule in ReconstitutionRule.All)
    {
        string[] solids = [.. moistures.Select(moisture => Solids(rule.Apply(forms.DriedWhite.WithMoisture(moisture), MeasuringSystem.UsCustomary).SolidsPercent))];
        Row(page, [rule.Name, .. solids, Math.Round(100 * rule.Apply(forms.DriedWhite, MeasuringSystem.UsCustomary).MassShare).ToString(CultureInfo.InvariantCulture),
            Evidence(rule.Provenance)]);
    }
    return page;
}

static string Solids(Spread percent) => percent.High - percent.Low < 0.005 ? percent.Likely.ToString("0.00", CultureInfo.InvariantCulture)
    : string.Create(CultureInfo.InvariantCulture, $"{percent.Likely:0.0} ({percent.Low:0.0} to {percent.High:0.0})");

StringBuilder Lethality()
{
    StringBuilder page = Page("Kinetic sets and holding times", HeatCaution.Text);
    Line(page, "## Kinetic sets");
    Line(page);
    Line(page, "D in minutes at the temperatures between which a set holds, low / likely / high. Below, nothing is counted; above, as at the highest; and no further than the logs that the study counted (assumed where what we read of it does not say).");
    Line(page);
    Head(page, "key", "measured in", "organism", "solute", "D", "water activity", "pH", "logs counted", "evidence", "note");
    foreach (KineticSet set in KineticSet.All)
    {
        Row(page, $"`{set.Key}`", set.Name, set.Organism, set.Solute,
            string.Join("; ", set.Points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.Celsius:0.#} °C {point.DecimalReductionMinutes.Low:G3} / {point.DecimalReductionMinutes.Likely:G3} / {point.DecimalReductionMinutes.High:G3}"))),
            $"{Number(set.LowWaterActivity)} to {Number(set.HighWaterActivity)}", set.LowPh is double lowPh ? $"{Number(lowPh)} to {Number(set.HighPh!.Value)}" : "any",
            $"{Number(set.MeasuredLogs)}{(set.IsMeasuredLogsAssumed ? " (assumed)" : "")}", Evidence(set.Provenance!), set.Provenance!.Note);
    }
    foreach (HoldTimeTable table in HoldTimeTable.All)
    {
        Line(page);
        Line(page, $"## {Text(table.Name)}");
        Line(page);
        Line(page, $"Status: {Text(table.Status.TrimEnd('.'))}. Of {Text(table.AsOf)}.");
        Line(page);
        bool isFsis = table.Key == "fsis-appendix-a";
        Head(page, ["product", "°F:", "°C:", "time", .. isFsis ? (string[])["by the kinetic set"] : [], "note"]);
        foreach (HoldTime row in table.Rows)
        {
            bool isMinutes = row.Seconds >= 240 && isFsis;
            double logs = row.Product.Contains("6.5", StringComparison.Ordinal) ? 6.5 : 7, seconds = 60 * logs * KineticSet.Get("fsis-appendix-a").DecimalReductionMinutes(Math.Max(row.Celsius, KineticSet.Get("fsis-appendix-a").Points[0].Celsius))!.Value.Likely;
            string time = row.Seconds == 0 ? "reached" : isMinutes ? $"{Number(row.Seconds / 60)} min" : $"{Number(row.Seconds)} s";
            string[] model = !isFsis ? [] : row.Seconds == 0 ? [""] : [FormattableString.Invariant(isMinutes ? (FormattableString)$"{seconds / 60:0.0} min" : $"{seconds:0.0} s")];
            Row(page, [row.Product, Number(row.Fahrenheit), row.Celsius.ToString("0.0", CultureInfo.InvariantCulture), time, .. model, row.Provenance.Note]);
        }
    }
    return page;
}

StringBuilder SourceList()
{
    StringBuilder page = Page("Sources", "Every source that a figure names, by its key.");
    foreach (Source source in Bibliography.All)
    {
        Line(page, $"## {source.Key}");
        Line(page);
        Line(page, $"**{Text(source.ShortName)}.** {Text(source.Citation)}");
        Line(page);
        if (source.Edition.Length > 0)
            Line(page, $"- Edition: {Text(source.Edition)}");
        Line(page, $"- Terms: {Text(source.Licence)}");
        if (source.Note.Length > 0)
            Line(page, $"- Note: {Text(source.Note)}");
        Line(page);
    }
    return page;
}

static string Voice(WeightFact fact)
{
    string system = fact.MeasuringSystem is null ? "" : $" {fact.MeasuringSystem.Key}";
    string range = fact.Grams.Low < fact.Grams.Likely || fact.Grams.High > fact.Grams.Likely ? $" ({Number(fact.Grams.Low)} to {Number(fact.Grams.High)})" : "";
    return $"{fact.Amount}{system} = {Number(fact.Grams.Likely)} g{range}, {Where(fact.Provenance)}";
}

static string Where(Provenance provenance) =>
    $"{Link(provenance.Source)}{(provenance.Locator.Length > 0 ? ", " + provenance.Locator : "")} ({provenance.Evidence.ToWord()})";

static string Link(Source source) => $"[{source.ShortName}](sources.md#{source.Key})";

static string Cup(Spread gramsPerMillilitre, double millilitres) =>
    Triple(new Spread(gramsPerMillilitre.Low * millilitres, gramsPerMillilitre.Likely * millilitres, gramsPerMillilitre.High * millilitres));

static string Triple(Spread grams)
{
    // Three digits are more than any of these figures deserves.
    string format = grams.Likely < 10 ? "0.00" : grams.Likely < 100 ? "0.0" : "0";
    return $"{grams.Likely.ToString(format, CultureInfo.InvariantCulture)} ({grams.Low.ToString(format, CultureInfo.InvariantCulture)} to {grams.High.ToString(format, CultureInfo.InvariantCulture)})";
}

static string Exact(Fraction millilitres)
{
    // A decimal number ends where the denominator has no prime but 2 and 5.
    long rest = millilitres.Denominator;
    foreach (int prime in (int[])[2, 5])
    {
        while (rest % prime == 0)
            rest /= prime;
    }
    decimal value = (decimal)millilitres.Numerator / millilitres.Denominator;
    return rest == 1 ? value.ToString("0.############################", CultureInfo.InvariantCulture) : $"{value:0.############} = {millilitres.Numerator}/{millilitres.Denominator}";
}

static string Number(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

static string Percent(double fraction) => fraction == 0 ? "" : (fraction * 100).ToString("0.##", CultureInfo.InvariantCulture);

static StringBuilder Page(string title, string about)
{
    StringBuilder page = new();
    Line(page, $"# {title}");
    Line(page);
    Line(page, "<!-- Made by docs/tables/make.cs from the data in src/Confectio/Data. Do not edit. -->");
    Line(page);
    Line(page, about);
    Line(page);
    return page;
}

// A column name that ends in a colon is aligned to the right. A telephone shows three columns; of a wider table each row is one to open,
// with what the first two columns hold as its heading.
void Head(StringBuilder page, params string[] columns)
{
    head = columns;
    if (columns.Length > MostColumns)
        return;
    Row(page, [.. columns.Select(column => column.TrimEnd(':'))]);
    Line(page, "|" + string.Concat(columns.Select(column => column.EndsWith(':') ? " ---: |" : " --- |")));
}

void Row(StringBuilder page, params string[] fields)
{
    if (head.Length <= MostColumns)
    {
        Line(page, "| " + string.Join(" | ", fields.Select(Text)) + " |");
        return;
    }
    string[] shown = [.. Enumerable.Range(0, 2).Where(i => fields[i].Length > 0).Select(i => head[i].EndsWith(':') ? $"{head[i]} {fields[i]}" : Html(fields[i]))];
    Line(page, $"<details><summary>{string.Join(" · ", shown)}</summary>");
    Line(page);
    for (int i = 0; i < fields.Length; i++)
    {
        // What the heading shows whole is not said again.
        if (fields[i].Length > 0 && (i > 1 || Html(fields[i]) != fields[i]))
            Line(page, $"- {head[i].TrimEnd(':')}: {Text(fields[i])}");
    }
    Line(page);
    Line(page, "</details>");
    Line(page);
}

// Markdown is not read in a heading: what it points to stands below, and what it marks loses its marks.
static string Html(string field) => Regex.Replace(field, @"\[([^\]]*)\]\([^)]*\)", "$1").Replace("`", "", StringComparison.Ordinal)
    .Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal);

static string Text(string field) => field.Replace("|", "\\|", StringComparison.Ordinal).Replace('\n', ' ');

static void Line(StringBuilder page, string line = "") => page.Append(line).Append('\n');

void Write(string name, StringBuilder page)
{
    string path = Path.Combine(folder, name);
    File.WriteAllText(path, page.ToString().TrimEnd('\n') + "\n", new UTF8Encoding(false));
    if (!name.Contains('/'))
        Console.WriteLine(path);
}

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
