using System.Globalization;
using System.Text;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>Prices of ingredients, one that counts for each: the newest by its date.</summary>
public sealed class PriceList
{
    /// <summary>The most prices that a list may have.</summary>
    public const int MaximumPrices = 100_000;

    private readonly Dictionary<Ingredient, Price> _newest;

    private PriceList(Dictionary<Ingredient, Price> newest)
    {
        _newest = newest;
        Prices = [.. newest.Values];
    }

    /// <summary>The prices that count, one an ingredient, in the order in which their ingredients first stood.</summary>
    public IReadOnlyList<Price> Prices { get; }

    /// <summary>A list of prices.</summary>
    /// <param name="prices">The prices, at most 100 000. Of an ingredient that stands more than once the newest counts.</param>
    /// <returns>The list.</returns>
    /// <exception cref="ArgumentNullException">The prices or one of them are null.</exception>
    /// <exception cref="ArgumentException">There are too many; or of two of one ingredient it cannot be told which is newer.</exception>
    public static PriceList Of(params IEnumerable<Price> prices)
    {
        Dictionary<Ingredient, Price> newest = [];
        int count = 0;
        foreach (Price price in Guard.NotNull(prices))
        {
            if (++count > MaximumPrices)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(prices)} has more than {MaximumPrices} prices, the most a list may have."), nameof(prices));
            if (Enter(newest, Guard.NotNull(price, nameof(prices))) is string why)
                throw new ArgumentException($"{nameof(prices)}: {why}.", nameof(prices));
        }
        return new PriceList(newest);
    }

    /// <summary>Reads prices from delimited text with a header line: a list of your own, out of any spreadsheet.</summary>
    /// <remarks>
    /// Columns, in any order: <c>ingredient</c>, <c>pack</c> (<c>2.5 kg</c>, <c>1 L</c>, <c>12 large</c>), <c>price</c> (a number without a sign), and, if you like,
    /// <c>currency</c> (ISO 4217), <c>date</c> (<c>2026-11-02</c>) and <c>waste</c> (<c>5%</c>). Other columns are yours; one whose name is nearly one of these is a
    /// problem. Commas, semicolons or tabs; a field that begins like a formula of a spreadsheet is text like any other.
    /// </remarks>
    /// <param name="text">The text.</param>
    /// <param name="ingredients">The table in which the ingredients are looked up.</param>
    /// <param name="system">Whose pints and fluid ounces.</param>
    /// <param name="currency">The currency of the rows that name none; without one each row has to.</param>
    /// <param name="reading">How a decimal is written.</param>
    /// <returns>The prices that could be used, and every other row as a problem with its line and column.</returns>
    /// <exception cref="ArgumentNullException">The text, the table or the system is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="reading"/> is not a defined value.</exception>
    public static Reading<PriceList> Read(TextReader text, IngredientTable ingredients, MeasuringSystem system, Currency? currency = null, AmountReading reading = AmountReading.DecimalPoint) =>
        new PriceReader(Guard.NotNull(ingredients), Guard.NotNull(system), currency, Guard.Defined(reading)).Read(Guard.NotNull(text));

    /// <summary>Reads prices in JSON, a form of our own, version 1; the schema stands in docs/schema/prices.json.</summary>
    /// <param name="json">The text, at most 4 MiB of UTF-8.</param>
    /// <param name="ingredients">The table in which the ingredients are looked up.</param>
    /// <returns>The prices, or every mistake in them with its place.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Reading<PriceList> ReadJson(string json, IngredientTable ingredients) => ReadJson(Encoding.UTF8.GetBytes(Guard.NotNull(json)), ingredients);

    /// <summary>Reads prices in JSON from UTF-8.</summary>
    /// <inheritdoc cref="ReadJson(string, IngredientTable)"/>
    public static Reading<PriceList> ReadJson(ReadOnlySpan<byte> json, IngredientTable ingredients) => PriceReader.ReadJson(json, Guard.NotNull(ingredients));

    /// <summary>The price of an ingredient; <see langword="null"/> where there is none, which is not the same as a price of 0.</summary>
    /// <param name="ingredient">The ingredient, of any table: it is found by its id.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ingredient"/> is null.</exception>
    public Price? this[Ingredient ingredient] => _newest.GetValueOrDefault(Guard.NotNull(ingredient));

    /// <summary>
    /// A problem with what its ingredients cost by this list, the likely price of a kilogram that is used, so that <see cref="Preference.LeastCost"/> and a limit of
    /// the cost can be asked for. An ingredient without a price stays without one, and the answer says so.
    /// </summary>
    /// <param name="problem">The problem.</param>
    /// <returns>The problem with prices.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="problem"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// None of its ingredients has a price here; or their prices are in several currencies, or a kilogram is above 1e9.
    /// </exception>
    public FormulaProblem AppliedTo(FormulaProblem problem)
    {
        Price[] used = [.. Guard.NotNull(problem).Ingredients.Select(food => this[food]).OfType<Price>()];
        string[] currencies = [.. used.Select(price => price.Currency.Code).Distinct()];
        if (currencies.Length != 1)
        {
            throw new ArgumentException(currencies.Length == 0 ? $"{nameof(problem)}: none of its ingredients has a price in this list."
                : $"{nameof(problem)}: its ingredients are priced in {string.Join(" and ", currencies)}; one currency is expected.", nameof(problem));
        }
        foreach (Price price in used)
        {
            problem = price.PerKilogram <= Price.MaximumAmount ? problem.WithCost(price.Ingredient, (double)price.PerKilogram)
                : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{nameof(problem)}: a kilogram of {price.Ingredient.Name} costs {price.PerKilogram:G6}; at most {Price.MaximumAmount} is expected."), nameof(problem));
        }
        return problem;
    }

    /// <summary>How many, such as <c>14 prices</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Prices.Count} {(Prices.Count == 1 ? "price" : "prices")}");

    /// <summary>Enters a price where it is the newest of its ingredient; says why where that cannot be told.</summary>
    internal static string? Enter(Dictionary<Ingredient, Price> newest, Price price)
    {
        if (newest.TryGetValue(price.Ingredient, out Price? known))
        {
            if (price.Date is null || known.Date is null || price.Date == known.Date)
                return $"{Excerpt.Of(price.Ingredient.Name)} stands twice{(price.Date is null || known.Date is null ? " and not both with a date" : " with one date")}: which price counts?";
            if (price.Date < known.Date)
                return null;
        }
        newest[price.Ingredient] = price;
        return null;
    }

    internal static PriceList OfNewest(Dictionary<Ingredient, Price> newest) => new(newest);
}
