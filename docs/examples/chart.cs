// Prints a chart of what cups and spoons of foods weigh, with the spread and the source of each row. Its CSV is what vet-table.cs reads.
//
//   dotnet run docs/examples/chart.cs --foods "plain flour, icing sugar: sifted, honey" [--measures "1 cup, 1 Tbsp"] [--system us-customary] [--round 1g|5g|10g|quarter-ounce]
//                                     [--as text|markdown|html|csv|json] [--names uk|us] [--title TEXT] [--culture de-DE] [--json]
//
// A food may have a packing behind a colon; without one it stands in every packing in which it was weighed. --foods all is every food that was weighed.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using Confectio.Examples;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Measures;
using Confectio.Publishing;

Cli cli = new("chart.cs", "Prints a chart of what cups and spoons weigh. Exit status: 0 done; 1 done, and nobody weighed one of the foods; 2 bad usage, or an answer that could not be written.");
Option<ChartFood[]> foods = cli.Value("--foods", "\"plain flour, icing sugar: sifted\"", Foods, (ChartFood[])[], isNeeded: true);
Option<Amount[]> measures = cli.Value("--measures", "\"1 cup, 1 Tbsp\"", text => text.Split(',', StringSplitOptions.TrimEntries).Select(one => Amount.Parse(one)).ToArray(), (Amount[])[]);
Option<MeasuringSystem> systemOption = cli.System();
Option<ChartRounding> round = cli.Choice("--round", ChartRounding.Gram, ("1g", ChartRounding.Gram), ("5g", ChartRounding.FiveGrams), ("10g", ChartRounding.TenGrams), ("quarter-ounce", ChartRounding.QuarterOunce));
Option<string> form = cli.Choice("--as", "text", ((string[])["text", "markdown", "html", "csv", "json"]).Select(word => (word, word)));
Option<string> names = cli.Choice("--names", "uk", ("uk", "uk"), ("us", "us")), title = cli.Text("--title", "TEXT");
Option<CultureInfo?> culture = cli.Value("--culture", "de-DE", text => CultureInfo.GetCultures(CultureTypes.AllCultures).FirstOrDefault(known => known.Name.Length > 0 && known.Name.Equals(text, StringComparison.OrdinalIgnoreCase))
    ?? throw new FormatException("a culture such as de-DE or en-US is expected."), null);
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    MeasuringSystem system = options.GetRequiredValue(systemOption);
    Amount[] chosen = options.GetRequiredValue(measures);
    // A kitchen without cups has decilitres.
    Amount[] usual = [Amount.Parse(system.Defines(KitchenUnit.Cup) ? "1 cup" : "1 dl"), Amount.Parse("1 Tbsp"), Amount.Parse("1 tsp")];
    ConversionChart chart = ConversionChart.Of(options.GetRequiredValue(foods), chosen.Length > 0 ? chosen : usual, system, new ChartOptions
    {
        Rounding = options.GetValue(round), Title = options.GetRequiredValue(title), Culture = options.GetValue(culture),
        Names = options.GetRequiredValue(names) == "us" ? IngredientTable.BuiltIn.WithAmericanNames() : null,
    });
    int status = chart.NotKnown.Count == 0 ? 0 : 1;
    return Shell.Answer((options.GetValue(json) ? "json" : options.GetRequiredValue(form)) switch
    {
        "markdown" => chart.ToMarkdown(),
        "html" => chart.ToHtml(),
        "csv" => chart.ToCsv(),
        "json" => chart.ToJson(),
        _ => chart.ToText(),
    }, status);
});

static ChartFood[] Foods(string text) => text.Trim().Equals("all", StringComparison.OrdinalIgnoreCase) ? [.. IngredientTable.BuiltIn.All.SelectMany(ChartFood.All)]
    : [.. text.Split(',', StringSplitOptions.TrimEntries).SelectMany(Food)];

static IReadOnlyList<ChartFood> Food(string text)
{
    string[] parts = text.Split(':', 2, StringSplitOptions.TrimEntries);
    NameMatch match = IngredientTable.BuiltIn.MatchName(parts[0]);
    Ingredient food = match.Ingredient ?? throw new FormatException($"{match.Reason}{(IngredientTable.BuiltIn.Suggest(parts[0]) is { Count: > 0 } near ? $"; near names: {string.Join(", ", near)}" : "")}.");
    if (parts.Length == 1)
        return match.Packing is Packing said ? [ChartFood.Of(food, said)] : food.Densities.Count == 0 ? [ChartFood.Of(food)] : ChartFood.All(food);
    return [ChartFood.Of(food, PackingText.TryRead(parts[1], out Packing packing) ? packing : throw new FormatException($"{parts[1]} is not a packing of {food.Name}: {string.Join(", ", food.Densities.Select(known => known.Packing.ToWord()))}."))];
}
