// What a batch costs: the whole, a portion, 100 g and a cake, line by line, with what has no price said, what drives it, and the packs to buy.
//
//   dotnet run docs/examples/cost.cs FORMULA --prices prices.csv [--currency EUR] [--portions 12 | --portion-grams 60g] [--cakes 2] [--waste 5%] [--make 60 | --eggs '12 large'] [--as-of 2026-11-29] [--json]
//
// FORMULA is a formula in JSON, or a text with a line an ingredient. The prices are a table with the columns ingredient, pack, price, currency, date and waste, or JSON. --waste is the share of
// what is made that is not served; the column waste is the share of a pack that is not used. --rate GBP=1.17 changes what is paid in pounds, --as-of tells which prices are old.
// --make scales the formula to so many of its portions, --eggs to so many eggs whose whites it takes, in cups and spoons that a kitchen has; what is told is of that.
#:project ../../src/Confectio/Confectio.csproj
#:project shell/Shell.csproj

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Confectio.Costs;
using Confectio.Eggs;
using Confectio.Examples;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;
using Confectio.Uncertainty;

Cli cli = new("cost.cs", "Costs a formula by a list of prices. Exit status: 0 everything in it has a price; 1 something has none, and the cost is at least what is told; "
    + "2 bad usage, or a formula or prices that cannot be read.");
Argument<string> formulaFile = cli.Word("FORMULA");
Option<string> pricesFile = cli.Text("--prices", "prices.csv", isNeeded: true);
Option<Currency?> currency = cli.Value("--currency", "EUR", text => (Currency?)Currency.Get(text), null);
Option<string[]> rates = cli.Texts("--rate", "GBP=1.17");
Option<double?> portions = cli.Number("--portions", "12");
Option<double?> portionGrams = cli.Value<double?>("--portion-grams", "60g", text => QuantityText.ParseGrams(text), null);
Option<int?> cakes = cli.Value<int?>("--cakes", "2", text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) ? count : throw new FormatException("a whole number such as 2 is expected."), null);
Option<double?> waste = cli.Percent("--waste", "5%");
Option<double?> make = cli.Number("--make", "60");
Option<string?> eggs = cli.Value<string?>("--eggs", "12 large", text => text, null);
Option<DateOnly?> day = cli.Value<DateOnly?>("--as-of", "2026-11-29", text => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) ? date
    : throw new FormatException("a date such as 2026-11-29, year first, is expected."), null);
Option<AmountReading> reading = cli.Reading();
Option<MeasuringSystem> system = cli.System();
Option<bool> json = cli.Flag("--json");
return cli.Run(args, options =>
{
    string file = options.GetRequiredValue(formulaFile), list = options.GetRequiredValue(pricesFile);
    MeasuringSystem cups = options.GetRequiredValue(system);
    Formula formula = Shell.Named(file, () => Food.Read(file, cups));
    Reading<PriceList> read = Shell.Named(list, () => Prices(list, cups, options.GetValue(currency), options.GetValue(reading)));
    if (!read.TryGet(out PriceList? prices))
        throw new FormatException($"{list}: {read}");
    ScaledFormula? scaled = Shell.Named(file, () => Scaled(formula, cups, options.GetValue(make), options.GetValue(eggs), options.GetValue(portions), options.GetValue(portionGrams), options.GetValue(waste) ?? 0));
    BatchCostOptions chosen = new()
    {
        Currency = options.GetValue(currency),
        Rates = [.. options.GetRequiredValue(rates).Select(text => Rate(text, options.GetValue(currency)))],
        Portions = options.GetValue(portions) * (scaled?.Factor ?? 1),
        PortionGrams = options.GetValue(portionGrams),
        Cakes = options.GetValue(cakes),
        LossFraction = options.GetValue(waste) ?? 0,
        AsOf = options.GetValue(day),
    };
    BatchCost cost = Shell.Named(file, () => BatchCost.Of(scaled?.Formula ?? formula, prices, chosen));
    return Shell.Answer(options.GetValue(json) ? Document(cost, scaled, read.Problems) : Text(cost, scaled, read.Problems), cost.IsWhole && read.Problems.Count == 0 ? 0 : 1);
});

// By portions or by eggs, in the usual cups and spoons; null where it stays as it is.
static ScaledFormula? Scaled(Formula formula, MeasuringSystem cups, double? make, string? eggs, double? portions, double? portionGrams, double waste)
{
    if (make is null && eggs is null)
        return null;
    if (make is not null && eggs is not null)
        throw new FormatException("--make and --eggs both scale it; one of them is expected.");
    double factor;
    if (make is double wanted)
    {
        factor = portions is double now ? wanted / now : portionGrams is double grams ? wanted * grams / (formula.TotalGrams * (1 - waste))
            : throw new FormatException("--make counts portions: --portions says how many the formula makes, or --portion-grams what one weighs.");
    }
    else
    {
        string[] words = eggs!.Split(' ', 2, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        EggSizeSystem sizes = EggSizeSystem.Get(cups == MeasuringSystem.UsCustomary ? "us" : "eu");
        factor = words.Length == 2 && double.TryParse(words[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double count)
            ? EggScale.Of(formula, sizes.Size(words[1])).FactorTo(count) : throw new FormatException($"--eggs {eggs}: a count and a size such as 12 large is expected.");
    }
    return ScaledFormula.Of(formula, factor, MeasuringTools.Usual(cups));
}

static Reading<PriceList> Prices(string file, MeasuringSystem system, Currency? currency, AmountReading reading)
{
    string text = File.ReadAllText(file);
    return text.AsSpan().TrimStart("\uFEFF \t\r\n").StartsWith("{") ? PriceList.ReadJson(text, IngredientTable.BuiltIn)
        : PriceList.Read(new StringReader(text), IngredientTable.BuiltIn, system, currency, reading);
}

static ExchangeRate Rate(string text, Currency? to)
{
    string[] parts = text.Split('=');
    if (to is null)
        throw new FormatException("--rate: --currency says into which currency prices are changed, and is missing.");
    return parts.Length == 2 && Currency.TryGet(parts[0], out Currency? from) && decimal.TryParse(parts[1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal rate)
        ? ExchangeRate.Of(from, to, rate) : throw new FormatException($"--rate {text}: what one of a currency is in {to} is expected, such as GBP=1.17.");
}

static string Text(BatchCost cost, ScaledFormula? scaled, IReadOnlyList<Problem> problems)
{
    Page page = new();
    page.Line($"{(cost.Formula.Name.Length > 0 ? cost.Formula.Name : "formula")}, {cost.MadeGrams:0.#} g{(cost.Options.LossFraction > 0 ? string.Create(CultureInfo.InvariantCulture, $", of which {cost.ServedGrams:0.#} g are served") : "")}");
    if (scaled is not null)
    {
        page.Line($"\nScaled × {scaled.Factor:0.####}, in measures:");
        page.Section("", scaled.Lines.Select(line => $"  {line}"));
        page.Line($"  What is put in is off by {100 * scaled.RelativeError:+0.0;-0.0;0.0} % by that.");
    }
    if (cost.Currency is not Currency currency)
    {
        page.Line($"\nNothing in it has a price.");
    }
    else
    {
        string least = cost.IsWhole ? "" : "at least ";
        page.Line($"\n  {"",-40}{currency.Code,12}{"share",9}   of");
        foreach (CostLine line in cost.Lines)
            page.Line($"  {$"{line.Line}",-40}{Money(line.Printed, currency),12}{(line.PrintedPercent is decimal percent ? $"{percent.ToString("0.0", CultureInfo.InvariantCulture)} %" : ""),9}   {(line.Price is Price price ? $"{price.Pack} for {price.Currency.Write(price.Amount)}{Waste(price)}{(price.Date is DateOnly date ? ", " + date.ToString("O", CultureInfo.InvariantCulture) : "")}" : "no price")}");
        page.Line($"  {(cost.IsWhole ? "together" : "at least, for not all has a price"),-40}{Money(cost.AtLeast, currency),12}{Spread(cost, currency)}");
        page.Line($"");
        if (cost.PerPortion is decimal portion)
            page.Line($"  a portion ({Count(cost.Portions!.Value)}): {least}{currency.Write(portion)}");
        page.Line($"  100 g: {least}{(cost.Per100Grams is decimal hundred ? currency.Write(hundred) : "not known")}");
        if (cost.PerCake is decimal cake)
            page.Line($"  a cake (of {cost.Options.Cakes}): {least}{currency.Write(cake)}");
        if (cost.Driver is Ingredient driver)
            page.Line($"  {driver.Name} costs most, {100 * (cost.DriverShare ?? 0):0} % of what has a price; if it gets a tenth dearer, the whole costs {currency.Write(cost.TenthOfDriver!.Value)} more.");
        page.Section("\nWhole packs to buy", cost.Purchases.Select(purchase => $"  {purchase}"));
    }
    page.Section("\nTo know", cost.Remarks.Select(remark => $"  {remark}"));
    page.Section("\nRows of the prices that were not used", problems.Take(20).Select(problem => $"  {problem}").Concat(problems.Count > 20 ? [$"  and {problems.Count - 20} more"] : []));
    page.AddFood(cost.Formula);
    return page.ToString();
}

static string Money(decimal? amount, Currency currency) => amount is decimal told ? currency.Write(told)[4..] : "?";

static string Waste(Price price) => price.WasteFraction > 0 ? string.Create(CultureInfo.InvariantCulture, $", {100 * price.WasteFraction:0.##} % of it not used") : "";

static string Count(double portions) => string.Create(CultureInfo.InvariantCulture, $"of {portions:0.##}");

static string Spread(BatchCost cost, Currency currency) => cost.Spread is Spread spread && currency.Write((decimal)spread.Low) != currency.Write((decimal)spread.High)
    ? $"   {currency.Write((decimal)spread.Low)[4..]} to {currency.Write((decimal)spread.High)[4..]}, by how cups and packs are filled" : "";

static string Document(BatchCost cost, ScaledFormula? scaled, IReadOnlyList<Problem> problems)
{
    JsonObject document = new()
    {
        ["name"] = cost.Formula.Name,
        ["madeGrams"] = Json.Number(cost.MadeGrams, 2),
        ["servedGrams"] = Json.Number(cost.ServedGrams, 2),
        ["currency"] = cost.Currency?.Code,
        ["whole"] = cost.IsWhole,
        ["total"] = Exact(cost.Total, cost.Currency),
        ["atLeast"] = Exact(cost.AtLeast, cost.Currency),
        ["spread"] = cost.Spread is Spread spread ? Json.Range(spread, 4) : null,
        ["portions"] = Json.Number(cost.Portions),
        ["perPortion"] = Exact(cost.PerPortion, cost.Currency),
        ["per100Grams"] = Exact(cost.Per100Grams, cost.Currency),
        ["perCake"] = Exact(cost.PerCake, cost.Currency),
        ["driver"] = cost.Driver?.Name,
        ["tenthOfDriver"] = Exact(cost.TenthOfDriver, cost.Currency),
        ["lines"] = Json.Array(cost.Lines, line => new JsonObject
        {
            ["ingredient"] = line.Line.Ingredient.Name,
            ["id"] = line.Line.Ingredient.Id,
            ["grams"] = Json.Range(line.Line.Grams),
            ["cost"] = Exact(line.Cost, cost.Currency),
            ["printed"] = line.Printed is decimal printed ? JsonValue.Create(printed) : null,
            ["percent"] = line.PrintedPercent is decimal percent ? JsonValue.Create(percent) : null,
            ["price"] = line.Price?.ToString(),
        }),
        ["withoutPrice"] = Json.Array(cost.WithoutPrice, food => food.Name),
        ["packs"] = Json.Array(cost.Purchases, purchase => new JsonObject
        {
            ["ingredient"] = purchase.Ingredient.Name,
            ["pack"] = purchase.Price.Pack.ToString(),
            ["packs"] = Json.Number(purchase.Packs, 0),
            ["packsToBeSure"] = Json.Number(purchase.PacksToBeSure, 0),
            ["cost"] = Exact(purchase.Cost, purchase.Price.Currency),
            ["leftOverGrams"] = Json.Number(purchase.LeftOverGrams, 1),
        }),
        ["scaled"] = scaled is null ? null : new JsonObject
        {
            ["factor"] = Json.Number(scaled.Factor, 6),
            ["relativeError"] = Json.Number(Math.Round(scaled.RelativeError, 5) + 0.0, 5),
            ["lines"] = Json.Array(scaled.Lines, line => new JsonObject
            {
                ["line"] = line.Line.ToString(),
                ["wantedGrams"] = Json.Number(line.WantedGrams),
                ["relativeError"] = Json.Number(Math.Round(line.RelativeError, 5) + 0.0, 5),
                ["why"] = line.Why,
            }),
        },
        ["remarks"] = Json.Array(cost.Remarks, remark => remark),
        ["problems"] = Json.Array(problems, problem => problem.ToString()),
    };
    document.AddFood(cost.Formula);
    return Json.Text(document);
}

// As it is, to a ten thousandth of a coin: decimals, as they were added up.
static JsonNode? Exact(decimal? amount, Currency? currency) => amount is decimal told && currency is not null ? JsonValue.Create(Math.Round(told, currency.MinorDigits + 4)) : null;
