// Makes the tables of this folder from the data that the assembly carries. Nothing in them is typed.
//
//   dotnet run docs/tables/make.cs [FOLDER]
//
// Without a folder the tables stand beside this file. Exit status: 0 done, 2 bad usage.
#:project ../../src/Confectio/Confectio.csproj

using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

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
    Head(page, "id", "name", "also called", "class", "packing assumed", "water:", "fat:", "of it milk fat:", "protein:", "sugars:", "starch and higher saccharides:", "polyols, glycerol and alcohol:", "allergens", "evidence");
    foreach (Ingredient ingredient in IngredientTable.BuiltIn.All)
    {
        Composition made = ingredient.Composition;
        Row(page, $"`{ingredient.Id}`", ingredient.Name, string.Join("; ", ingredient.Aliases.Select(alias => alias.Text)),
            ingredient.Class.ToString().ToLowerInvariant(), ingredient.DefaultPacking.ToWord(),
            Percent(made[Constituent.Water]), Percent(made[Constituent.Fat]), Percent(made.MilkFat), Percent(made[Constituent.Protein]), Percent(made.Sugars),
            Percent(made[Constituent.Starch] + made[Constituent.HigherSaccharides]),
            Percent(made[Constituent.Polyols] + made[Constituent.Glycerol] + made[Constituent.Alcohol]),
            string.Join(", ", ingredient.Allergens.Select(allergen => allergen.ToString().ToLowerInvariant())),
            $"{ingredient.CompositionProvenance.Evidence.ToWord()}, {Link(ingredient.CompositionProvenance.Source)}");
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
                string.Join("; ", density.Voices.Select(Voice)));
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
    string system = fact.System is null ? "" : $" {fact.System.Key}";
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
