using System.Globalization;
using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Icings;
using Confectio.Ingredients;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>What a batch of a formula costs by a list of prices: for the whole, a portion, 100 g and a cake, line by line, with what is not known said.</summary>
/// <remarks>
/// <para>
/// A line costs C = P·x/((1 − w)·W) with x its grams, P and W the price and the grams of a pack and w its waste; in <see cref="decimal"/>, rounded only where it is
/// printed. Where an ingredient has no price there is no <see cref="Total"/>: only what it costs at least (<see cref="AtLeast"/>).
/// </para>
/// <para>
/// The spread is that of the measures: lines of one density share its error (<see cref="MassTotal"/>), and so do all lines that are bought by one pack. A line in cups
/// that is bought by the litre is as sure as the measure, for the density cancels. Prices themselves are taken as told.
/// Worked number: 250 g of butter at 6.95 the kilogram and 500 g of icing sugar at 1.20 are 1.7375 + 0.60 = 2.3375, printed 2.34.
/// </para>
/// </remarks>
public sealed class BatchCost
{
    private const double MostCost = 1e15;

    private readonly decimal _cost;

    private BatchCost(Formula formula, PriceList prices, BatchCostOptions options, string[] withoutFormula)
    {
        Formula = formula;
        Options = options;
        IcingsWithoutFormula = withoutFormula;
        Price?[] found = [.. formula.Lines.Select(line => line.Grams.Likely > 0 ? prices[line.Ingredient] : null)];
        Currency = CurrencyOf(found, options);
        Dictionary<Currency, decimal> rates = RatesOf(found, options);
        decimal[] costs = new decimal[found.Length];
        for (int i = 0; i < costs.Length; i++)
            costs[i] = found[i] is Price price ? CostOf(price, formula.Lines[i], rates[price.Currency], nameof(prices)) : 0;
        _cost = costs.Sum();
        WithoutPrice = [.. formula.Lines.Where((line, i) => line.Grams.Likely > 0 && found[i] is null).Select(line => line.Ingredient).Distinct()];
        HasPrices = found.Any(price => price is not null);
        if (Currency is not null)
            Spread = SpreadOf(formula, found, costs);
        Lines = Told(formula, found, costs);
        Purchases = Currency is null ? [] : PurchasesOf(formula, found);
        Remarks = Look(found, prices.Prices.Any(price => price.Ingredient.Id == "egg-whole"));
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>What it is shared out on.</summary>
    public BatchCostOptions Options { get; }

    /// <summary>The currency; <see langword="null"/> where nothing has a price.</summary>
    public Currency? Currency { get; }

    /// <summary>The lines of the formula.</summary>
    public IReadOnlyList<CostLine> Lines { get; }

    /// <summary>Whether anything has a price.</summary>
    public bool HasPrices { get; }

    /// <summary>Whether everything has one, so that there is a <see cref="Total"/>.</summary>
    public bool IsWhole => HasPrices && WithoutPrice.Count == 0 && IcingsWithoutFormula.Count == 0;

    /// <summary>What it costs, not rounded; <see langword="null"/> where something has no price.</summary>
    public decimal? Total => IsWhole ? _cost : null;

    /// <summary>What all that has a price costs, not rounded: where something has none, it costs at least that.</summary>
    public decimal? AtLeast => HasPrices ? _cost : null;

    /// <summary>The same with its spread.</summary>
    public Spread? Spread { get; }

    /// <summary>Ingredients without a price.</summary>
    public IReadOnlyList<Ingredient> WithoutPrice { get; }

    /// <summary>Icings of a plan that have no formula, and so no price here.</summary>
    public IReadOnlyList<string> IcingsWithoutFormula { get; }

    /// <summary>What is made, g, after boiling off.</summary>
    public double MadeGrams => Formula.TotalGrams;

    /// <summary>What of it is served, g: after what is lost.</summary>
    public double ServedGrams => MadeGrams * (1 - Options.LossFraction);

    /// <summary>How many portions; <see langword="null"/> where nobody told. Of portions by mass it need not be whole.</summary>
    public double? Portions => Options.Portions ?? ServedGrams / Options.PortionGrams;

    /// <summary>What a portion costs, at least where there is no <see cref="Total"/>; not rounded.</summary>
    public decimal? PerPortion => Portions is double portions ? Over(portions) : null;

    /// <summary>What 100 g that are served cost, at least where there is no <see cref="Total"/>; not rounded.</summary>
    public decimal? Per100Grams => Over(ServedGrams / 100);

    /// <summary>What a cake costs of it, at least where there is no <see cref="Total"/>; not rounded.</summary>
    public decimal? PerCake => Options.Cakes is int cakes ? Over(cakes) : null;

    /// <summary>The ingredient that costs most, all its lines together; <see langword="null"/> where nothing costs anything. The first of equal ones.</summary>
    public Ingredient? Driver => Lines.Where(line => line.Cost > 0).GroupBy(line => line.Line.Ingredient).MaxBy(lines => lines.Sum(line => line.Cost))?.Key;

    /// <summary>The share of <see cref="Driver"/> in all that has a price, from 0 to 1.</summary>
    public double? DriverShare => Driver is Ingredient driver ? Lines.Where(line => line.Line.Ingredient == driver).Sum(line => line.Share ?? 0) : null;

    /// <summary>By how much a tenth on the price of <see cref="Driver"/> raises the cost.</summary>
    public decimal? TenthOfDriver => Driver is Ingredient driver ? Lines.Where(line => line.Line.Ingredient == driver).Sum(line => line.Cost ?? 0) / 10 : null;

    /// <summary>The whole packs to buy, in the order of the lines; of what has no price there is none.</summary>
    public IReadOnlyList<PackPurchase> Purchases { get; }

    /// <summary>What is missing, old, undated or changed at a rate, in sentences.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>The cost of a formula.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="prices">The prices.</param>
    /// <param name="options">What it is shared out on; nothing unless stated.</param>
    /// <returns>The cost, or what it is at least.</returns>
    /// <exception cref="ArgumentNullException">The formula or the prices are null.</exception>
    /// <exception cref="ArgumentException">
    /// The prices that are needed are in several currencies and no rate is told between them; or both <see cref="BatchCostOptions.Portions"/> and
    /// <see cref="BatchCostOptions.PortionGrams"/> are told; or a line costs more than 1e15.
    /// </exception>
    public static BatchCost Of(Formula formula, PriceList prices, BatchCostOptions? options = null) =>
        new(Guard.NotNull(formula), Guard.NotNull(prices), Checked(options, nameof(options)), []);

    /// <summary>The cost of all that a plan makes, its batches together: what is made and not only what lands on the cake.</summary>
    /// <param name="plan">The plan. An icing without a formula is bought, and what it costs is not known here: the cost is at least what the rest is.</param>
    /// <param name="prices">The prices.</param>
    /// <param name="options">What it is shared out on. Without <see cref="BatchCostOptions.Cakes"/> the plan is for one.</param>
    /// <returns>The cost, or what it is at least.</returns>
    /// <exception cref="ArgumentNullException">The plan or the prices are null.</exception>
    /// <exception cref="ArgumentException">No icing of the plan has a formula, or as of a formula.</exception>
    public static BatchCost Of(IcingPlan plan, PriceList prices, BatchCostOptions? options = null)
    {
        Guard.NotNull(plan);
        Guard.NotNull(prices);
        BatchCostOptions chosen = Checked(options, nameof(options));
        Formula[] made = [.. plan.Needs.SelectMany(need => need.Batches).Where(batch => batch.Formula is not null).Select(batch => batch.Formula!.Scale(batch.Count))];
        if (made.Length == 0)
            throw new ArgumentException($"{nameof(plan)} makes nothing of which there is a formula.", nameof(plan));
        return new BatchCost(Formula.Merge(plan.Coverage.Cake.Name, made).Combined(), prices, chosen.Cakes is null ? OfOneCake(chosen) : chosen,
            [.. plan.Needs.Where(need => need.Icing.Formula is null && need.TakenGrams > 0).Select(need => need.Icing.Name)]);
    }

    /// <summary>The cost in one line: <c>EUR 2.34; a portion EUR 0.20</c>, and what is missing.</summary>
    public override string ToString()
    {
        string name = VisibleText.Of(Formula.Name);
        if (Currency is null)
            return $"{name}{(name.Length > 0 ? ": " : "")}nothing has a price";
        string least = IsWhole ? "" : "at least ";
        return $"{name}{(name.Length > 0 ? ": " : "")}{least}{Currency.Write(_cost)}"
            + (PerPortion is decimal portion ? $"; a portion {least}{Currency.Write(portion)}" : "")
            + (WithoutPrice.Count > 0 ? $"; no price for {Named(WithoutPrice)}" : "")
            + (IcingsWithoutFormula.Count > 0 ? $"; no formula of {VisibleText.Of(string.Join(", ", IcingsWithoutFormula))}" : "");
    }

    private static BatchCostOptions Checked(BatchCostOptions? options, string name) => options is { Portions: not null, PortionGrams: not null }
        ? throw new ArgumentException($"{name} tell both {nameof(BatchCostOptions.Portions)} and {nameof(BatchCostOptions.PortionGrams)}; one of them is expected.", name)
        : options ?? BatchCostOptions.Default;

    private static BatchCostOptions OfOneCake(BatchCostOptions options) => new()
    {
        Portions = options.Portions,
        PortionGrams = options.PortionGrams,
        Cakes = 1,
        LossFraction = options.LossFraction,
        Currency = options.Currency,
        Rates = options.Rates,
        AsOf = options.AsOf,
        OldAfterDays = options.OldAfterDays,
    };

    private static Currency? CurrencyOf(Price?[] found, BatchCostOptions options)
    {
        Currency[] all = [.. found.OfType<Price>().Select(price => price.Currency).Distinct()];
        return all.Length == 0 ? null : options.Currency ?? (all.Length == 1 ? all[0]
            : throw new ArgumentException($"prices are in {string.Join(" and ", all.Select(one => one.Code))}; the currency of the cost and a rate are expected.", nameof(options)));
    }

    private Dictionary<Currency, decimal> RatesOf(Price?[] found, BatchCostOptions options)
    {
        Dictionary<Currency, decimal> rates = [];
        foreach (Currency paid in found.OfType<Price>().Select(price => price.Currency).Distinct())
        {
            rates[paid] = paid == Currency ? 1 : options.Rates.FirstOrDefault(rate => rate.From == paid && rate.To == Currency)?.Rate
                ?? throw new ArgumentException($"prices in {paid} cannot be told in {Currency} without a rate: 1 {paid} = how many {Currency}?", nameof(options));
        }
        return rates;
    }

    private static decimal CostOf(Price price, FormulaLine line, decimal rate, string name)
    {
        double about = (double)(price.Amount * rate) * (line.Grams.Likely / price.UsableGrams.Likely);
        return about <= MostCost ? price.Of(line.Grams.Likely, rate)
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"prices: {Excerpt.Of(line.Ingredient.Name)} would cost {about:G3}; at most {MostCost:R} is expected."), name);
    }

    private decimal? Over(double count) => AtLeast is decimal cost && count > 1e-12 ? cost / (decimal)count : null;

    private CostLine[] Told(Formula formula, Price?[] found, decimal[] costs)
    {
        int[] priced = [.. Enumerable.Range(0, found.Length).Where(i => found[i] is not null)];
        decimal[] parts = [.. priced.Select(i => costs[i])];
        decimal[] printed = Currency is null ? [] : Coins.Share(parts, Currency.Round(_cost), Currency.Unit);
        decimal[]? percents = _cost > 0 ? Coins.Share([.. parts.Select(part => 100 * part / _cost)], 100, 0.1m) : null;
        CostLine[] lines = new CostLine[found.Length];
        for (int i = 0, at = 0; i < lines.Length; i++)
        {
            if (found[i] is not Price price)
            {
                lines[i] = new CostLine(formula.Lines[i], null);
                continue;
            }
            lines[i] = new CostLine(formula.Lines[i], price)
            {
                Cost = costs[i],
                Printed = printed[at],
                Spread = LineSpread(formula.Lines[i], price, (double)costs[i]),
                Share = _cost > 0 ? (double)(costs[i] / _cost) : null,
                PrintedPercent = percents?[at],
            };
            at++;
        }
        return lines;
    }

    // Whether the pack and the line are off by the same: the density of both, or what a piece weighs.
    private static bool SharesError(FormulaLine line, Price price) => line.Measured is { ThroughDensity: true, By: Conversion by } && price.Mass is { ThroughDensity: true, By: Conversion sold }
        ? (by.Density.Basis ?? by.Density).Packing == (sold.Density.Basis ?? sold.Density).Packing
        : line.AsWritten is { IsPiece: true, PartCount: 1 } counted && price.Pack is { IsPiece: true, PartCount: 1 } pack && counted.Part(0).Piece == pack.Part(0).Piece && !counted.IsRange;

    // The line as an amount of money, and how far the pack may move it down and up.
    private static (ConvertedMass Line, double Down, double Up) Ways(FormulaLine line, Price price, double cost)
    {
        Spread grams = line.Grams, pack = price.PackGrams;
        if (SharesError(line, price))
        {
            double tool = line.Measured!.Value.By is Conversion by && line.Measured.Value.ThroughDensity ? by.Options.ToolTolerance / Math.Sqrt(3) : 0;
            return (new ConvertedMass(cost * Math.Exp(-2 * tool), cost, cost * Math.Exp(2 * tool), cost * tool, SpreadBasis.Coverage, null, throughDensity: false), 0, 0);
        }
        double factor = grams.Likely > 0 ? cost / grams.Likely : 0;
        // What is exact stays so, to the last bit of its ends.
        ConvertedMass money = grams.Basis == SpreadBasis.Exact ? ConvertedMass.Exactly(cost) : new(Math.Min(grams.Low * factor, cost), cost, Math.Max(grams.High * factor, cost), grams.StandardUncertainty * factor, grams.Basis,
            line.Measured?.By, line.Measured is { ThroughDensity: true });
        return (money, cost * (1 - pack.Likely / pack.High), cost * (pack.Likely / pack.Low - 1));
    }

    private static Spread LineSpread(FormulaLine line, Price price, double cost)
    {
        (ConvertedMass money, double down, double up) = Ways(line, price, cost);
        return Join([money], down, up, Uncertainty.Spread.Worse(money.Grams.Basis, down + up > 0 ? price.PackGrams.Basis : SpreadBasis.Exact));
    }

    private static Spread SpreadOf(Formula formula, Price?[] found, decimal[] costs)
    {
        List<ConvertedMass> lines = [];
        Dictionary<Price, (double Down, double Up)> packs = [];
        SpreadBasis basis = SpreadBasis.Exact;
        for (int i = 0; i < found.Length; i++)
        {
            if (found[i] is not Price price)
                continue;
            (ConvertedMass money, double down, double up) = Ways(formula.Lines[i], price, (double)costs[i]);
            lines.Add(money);
            (double Down, double Up) known = packs.GetValueOrDefault(price);
            packs[price] = (known.Down + down, known.Up + up);
            basis = Uncertainty.Spread.Worse(basis, Uncertainty.Spread.Worse(money.Grams.Basis, down + up > 0 ? price.PackGrams.Basis : SpreadBasis.Exact));
        }
        return Join(lines, Math.Sqrt(packs.Values.Sum(way => way.Down * way.Down)), Math.Sqrt(packs.Values.Sum(way => way.Up * way.Up)), basis);
    }

    private static Spread Join(IEnumerable<ConvertedMass> lines, double packDown, double packUp, SpreadBasis basis)
    {
        (double total, MassTotal.Reach down, MassTotal.Reach up) = MassTotal.Reaches(lines);
        double below = double.Hypot(down.Grams, packDown), above = double.Hypot(up.Grams, packUp);
        return below + above > 0 ? new Spread(Math.Max(0, total - below), total, total + above, basis == SpreadBasis.Exact ? SpreadBasis.Coverage : basis) : Uncertainty.Spread.Exactly(total);
    }

    private static PackPurchase[] PurchasesOf(Formula formula, Price?[] found)
    {
        List<PackPurchase> purchases = [];
        foreach (Price price in found.OfType<Price>().Distinct())
        {
            FormulaLine[] lines = [.. formula.Lines.Where((line, i) => ReferenceEquals(found[i], price))];
            (double grams, MassTotal.Reach down, MassTotal.Reach up) = MassTotal.Reaches(lines.Select(line => line.Measured ?? ConvertedMass.Exactly(line.Grams.Likely)));
            Spread needed = new(Math.Max(0, grams - down.Grams), grams, grams + up.Grams, lines.Select(line => line.Grams.Basis).Append(SpreadBasis.Coverage).Aggregate(Uncertainty.Spread.Worse));
            Spread usable = price.UsableGrams;
            bool shares = Array.TrueForAll(lines, line => SharesError(line, price));
            purchases.Add(new PackPurchase(price, needed, Whole(grams / usable.Likely), Whole(shares ? grams / usable.Likely : needed.High / usable.Low)));
        }
        return [.. purchases];

        // A hair above a whole pack is forgiven: the last bits of a sum.
        static double Whole(double packs) => Math.Max(1, Math.Ceiling(packs * (1 - 1e-9)));
    }

    private static string Named(IEnumerable<Ingredient> foods) => VisibleText.Of(string.Join(", ", foods.Select(food => food.Name)));

    private string[] Look(Price?[] found, bool isEggPriced)
    {
        List<string> remarks = [];
        if (WithoutPrice.Count > 0)
            remarks.Add($"No price is known for {Named(WithoutPrice)}: the cost is at least what is told. What is free has a price of 0.");
        if (WithoutPrice.FirstOrDefault(food => food.Id is "egg-white" or "egg-yolk") is Ingredient part && isEggPriced)
            remarks.Add($"Whole egg has a price and {part.Name} has none: where it is taken from shell eggs, a row of {part.Name} with a pack such as 12 large and the price of the eggs says so.");
        if (IcingsWithoutFormula.Count > 0)
            remarks.Add($"There is no formula of {VisibleText.Of(string.Join(", ", IcingsWithoutFormula))}: what it costs is not in the sum.");
        foreach (ExchangeRate rate in Options.Rates.Where(rate => rate.To == Currency && found.Any(price => price?.Currency == rate.From)))
            remarks.Add($"Prices in {rate.From} were changed at {rate}, as told.");
        Price[] used = [.. found.OfType<Price>().Distinct()];
        Price[] undated = [.. used.Where(price => price.Date is null)];
        if (undated.Length > 0)
            remarks.Add($"Nobody says of when the price is: {Named(undated.Select(price => price.Ingredient))}.");
        if (Options.AsOf is DateOnly day)
        {
            foreach (Price price in used.Where(price => price.Date is not null))
            {
                int days = day.DayNumber - price.Date!.Value.DayNumber;
                if (days > Options.OldAfterDays)
                    remarks.Add(string.Create(CultureInfo.InvariantCulture, $"The price of {VisibleText.Of(price.Ingredient.Name)} is {days} days old."));
                else if (days < 0)
                    remarks.Add(string.Create(CultureInfo.InvariantCulture, $"The price of {VisibleText.Of(price.Ingredient.Name)} is of {-days} {(days == -1 ? "day" : "days")} after the day of the cost."));
            }
        }
        return [.. remarks];
    }
}
