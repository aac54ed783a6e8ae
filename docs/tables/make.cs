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
string folder = args.Length == 1 ? args[0] : Here();
Directory.CreateDirectory(folder);
Write("measures.md", Measures());
Write("ingredients.md", Ingredients());
Write("densities.md", Densities());
Write("equations.md", Equations());
Write("stages.md", Stages());
Write("sweetness.md", Sweetnesses());
Write("egg-sizes.md", EggSizes());
Write("reconstitution.md", Reconstitution());
Write("lethality.md", Lethality());
Write("cakes.md", Cakes());
Write("sources.md", SourceList());
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
        Head(page, "unit", "mL:", "source", "caution");
        foreach (KitchenUnit unit in Enum.GetValues<KitchenUnit>().Where(unit => unit.IsVolume() && system.Defines(unit)))
        {
            if (unit is KitchenUnit.Millilitre or KitchenUnit.Litre)
                continue;
            Row(page, unit.ToWord(), Exact(system.ExactMillilitresPer(unit)), Link(system.SourceOf(unit)), system.CautionFor(unit) ?? "");
        }
        Line(page);
    }
    return page;
}

StringBuilder Ingredients()
{
    StringBuilder page = Page("Ingredients",
        $"{IngredientTable.BuiltIn.All.Count} ingredients. Composition in g per 100 g; fibre, acids, salt, ash and what is left over are in the data but not shown here. " +
        "Allergens are a caution, not a clearance: read the label.");
    Head(page, "id", "name", "also called", "class", "packing assumed", "water:", "fat:", "of it milk fat:", "protein:", "sugars:", "starch and higher saccharides:", "polyols, glycerol and alcohol:", "allergens", "often contains", "evidence");
    foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
    {
        Composition made = ingredient.Composition;
        Row(page, $"`{ingredient.Id}`", ingredient.Name, string.Join("; ", ingredient.Aliases.Select(alias => alias.Text)),
            ingredient.Class.ToString().ToLowerInvariant(), ingredient.DefaultPacking.ToWord(),
            Percent(made[Constituent.Water]), Percent(made[Constituent.Fat]), Percent(made.MilkFat), Percent(made[Constituent.Protein]), Percent(made.Sugars),
            Percent(made[Constituent.Starch] + made[Constituent.HigherSaccharides]),
            Percent(made[Constituent.Polyols] + made[Constituent.Glycerol] + made[Constituent.Alcohol]),
            string.Join(", ", ingredient.Allergens.Select(allergen => allergen.ToString().ToLowerInvariant())),
            string.Join(", ", ingredient.OftenContains.Select(allergen => allergen.ToString().ToLowerInvariant())),
            Evidence(ingredient.CompositionProvenance));
    }
    return page;
}

StringBuilder Densities()
{
    double us = MeasuringSystem.UsCustomary.MillilitresPer(KitchenUnit.Cup), metric = MeasuringSystem.Metric.MillilitresPer(KitchenUnit.Cup);
    StringBuilder page = Page("Weights of a cup",
        $"Grams in a cup, low / likely / high. Low and high bound about 95 % of careful kitchens; they are not a tolerance. " +
        $"The US cup holds {Number(us)} mL, the metric cup {Number(metric)} mL. The voices are the figures that the spread was made from, one a source; " +
        "a voice that is estimated, from memory or common practice speaks only where no published figure does.");
    Head(page, "ingredient", "packing", "US cup, g:", "metric cup, g:", "voices");
    foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
    {
        foreach (BulkDensity density in ingredient.Densities)
        {
            string assumed = density.Packing == ingredient.DefaultPacking && ingredient.Densities.Count > 1 ? " (assumed where none is stated)" : "";
            Row(page, ingredient.Name, density.Packing.ToWord() + assumed, Cup(density.GramsPerMillilitre, us), Cup(density.GramsPerMillilitre, metric),
                string.Join("; ", density.ContributingFigures.Select(Voice)));
        }
    }
    Line(page);
    Line(page, "## Pieces");
    Line(page);
    Head(page, "ingredient", "piece", "g a piece:", "source");
    foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
    {
        foreach (PieceWeight piece in ingredient.Pieces)
            Row(page, ingredient.Name, piece.Piece, Triple(piece.Grams), Where(piece.Fact.Provenance));
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
    return $"{grams.Low.ToString(format, CultureInfo.InvariantCulture)} / {grams.Likely.ToString(format, CultureInfo.InvariantCulture)} / {grams.High.ToString(format, CultureInfo.InvariantCulture)}";
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

// A column name that ends in a colon is aligned to the right.
static void Head(StringBuilder page, params string[] columns)
{
    Row(page, [.. columns.Select(column => column.TrimEnd(':'))]);
    Line(page, "|" + string.Concat(columns.Select(column => column.EndsWith(':') ? " ---: |" : " --- |")));
}

static void Row(StringBuilder page, params string[] fields) => Line(page, "| " + string.Join(" | ", fields.Select(Text)) + " |");

static string Text(string field) => field.Replace("|", "\\|", StringComparison.Ordinal).Replace('\n', ' ');

static void Line(StringBuilder page, string line = "") => page.Append(line).Append('\n');

void Write(string name, StringBuilder page)
{
    string path = Path.Combine(folder, name);
    File.WriteAllText(path, page.ToString().TrimEnd('\n') + "\n", new UTF8Encoding(false));
    Console.WriteLine(path);
}

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
