using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Ingredients.Names;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Text;

namespace Confectio.Costs;

/// <summary>Reads prices from a table or from JSON, and notes what is wrong with a row; a bad row hides no other.</summary>
internal sealed class PriceReader(IngredientTable ingredients, MeasuringSystem system, Currency? currency, AmountReading reading)
{
    private const string Lead = "This cannot be used as a list of prices";

    private const int Version = 1, MaximumBytes = 4 * 1024 * 1024, MostDepth = 8, MostSuggestions = 50;

    private static readonly string[] s_columns = ["ingredient", "pack", "price", "currency", "date", "waste"];

    private readonly ProblemList _problems = [];
    private readonly Dictionary<Ingredient, Price> _newest = [];
    private int _rows, _suggested;

    public Reading<PriceList> Read(TextReader text)
    {
        DelimitedTable.Read(text, _problems, table =>
        {
            table.RequireColumns(currency is null ? s_columns[..4] : s_columns[..3], _problems);
            foreach (string heading in table.Header.Where(heading => !s_columns.Contains(heading, StringComparer.OrdinalIgnoreCase)))
            {
                if (Near(heading) is string meant)
                    _problems.Add(new Problem(table.Line, Excerpt.Of(heading).Trim('\''), $"the column is none of these; perhaps {meant} is meant"));
            }
            return _problems.Count > 0 ? null : row => ReadRow(table, row);
        });
        if (_rows > PriceList.MaximumPrices)
            _problems.Add(new Problem(1, null, string.Create(CultureInfo.InvariantCulture, $"there are {_rows} prices; at most {PriceList.MaximumPrices} are read")));
        return _newest.Count > 0 ? new Reading<PriceList>(PriceList.OfNewest(_newest), Lead, _problems, _problems.Total)
            : Reading<PriceList>.None(Lead, Needed(), _problems.Total);
    }

    public static Reading<PriceList> ReadJson(ReadOnlySpan<byte> json, IngredientTable ingredients) =>
        JsonGuard.Read(json, MostDepth, MaximumBytes, "a list of prices", fields => Read(fields, ingredients));

    internal static PriceList? Read(JsonFields fields, IngredientTable ingredients)
    {
        if (!fields.IsVersion("confectioPrices", Version))
            return null;
        Currency? usual = CurrencyOf(fields, null);
        MeasuringSystem? system = MeasuringSystem.Metric;
        if (fields.Text("system") is string key && !MeasuringSystem.TryGet(key, out system))
            fields.Wrong("system", $"{Excerpt.Of(key)} is not a measuring system; one of these is expected: {string.Join(", ", MeasuringSystem.All.Select(known => known.Key))}", ProblemCodes.UnknownName);
        Dictionary<Ingredient, Price> newest = [];
        fields.NeededList("prices", PriceList.MaximumPrices, row => PriceOf(row, usual, system ?? MeasuringSystem.Metric, newest, ingredients));
        return newest.Count > 0 ? PriceList.OfNewest(newest) : null;
    }

    private static Price? PriceOf(JsonFields row, Currency? usual, MeasuringSystem system, Dictionary<Ingredient, Price> newest, IngredientTable ingredients)
    {
        Ingredient? food = FormulaLineReader.NeededIngredient(row, "ingredient", ingredients);
        Amount pack = default;
        if (row.NeededText("pack") is string written && !TryPack(written, AmountReading.DecimalPoint, out pack, out string why))
            row.Wrong("pack", why);
        double? number = row.NeededNumber("price");
        if (number is not (null or (>= 0 and <= (double)Price.MostAmount)))
            row.Wrong("price", string.Create(CultureInfo.InvariantCulture, $"{number:R} was read and a number from 0 to {Price.MaximumAmount} is expected"));
        Currency? currency = CurrencyOf(row, usual);
        if (currency is null && !row.Has("currency"))
            row.Missing("currency", Currency.Expected);
        DateOnly? date = null;
        if (row.Text("date") is string day && (date = DateOf(day)) is null)
            row.Wrong("date", NoDate(day));
        double waste = 0;
        if (row.Text("waste") is string share && !TryShare(share, AmountReading.DecimalPoint, out waste))
            row.Wrong("waste", NoShare(share));
        Price? price = row.Make(() => Price.Of(food!, (decimal)number!.Value, currency!, pack, system, date, waste), _ => "pack");
        if (price is not null && PriceList.Enter(newest, price) is string twice)
            row.Wrong("ingredient", twice);
        return price;
    }

    private static Currency? CurrencyOf(JsonFields fields, Currency? usual)
    {
        if (fields.Text("currency") is not string code)
            return usual;
        if (Currency.TryGet(code, out Currency? currency))
            return currency;
        fields.Wrong("currency", $"{Excerpt.Of(code)} was read; {Currency.Expected}", ProblemCodes.UnknownName);
        return null;
    }

    private void ReadRow(DelimitedTable table, DelimitedRow row)
    {
        if (++_rows > PriceList.MaximumPrices)
            return;
        RowFields fields = new(table, row, _problems);
        long before = fields.ProblemCount;
        // A price with a decimal comma among commas would be taken for two fields, and its coins lost.
        if (row.Count > table.Header.Count)
            fields.Problem(s_columns[2], string.Create(CultureInfo.InvariantCulture, $"the row has {row.Count} fields under {table.Header.Count} headings: quote a field that has the separator in it"));
        Ingredient? food = FoodOf(fields);
        Amount pack = default;
        string written = fields.Required("pack");
        if (written.Length > 0 && !TryPack(written, reading, out pack, out string why))
            fields.Problem("pack", why);
        decimal amount = 0;
        string number = fields.Required("price");
        if (number.Length > 0 && !TryMoney(number, out amount))
        {
            fields.Problem("price", $"{Excerpt.Of(number)} is not a price: a number from 0 to {Price.MaximumAmount.ToString(CultureInfo.InvariantCulture)} with "
                + $"{(reading == AmountReading.DecimalPoint ? "a decimal point" : "a decimal comma")}, without a sign of a currency and without marks between thousands, is expected");
        }
        Currency? paid = currency;
        if (fields.Word("currency") is { Length: > 0 } code)
        {
            if (!Currency.TryGet(code, out paid))
                fields.Problem("currency", $"{Excerpt.Of(code)} was read; {Currency.Expected}");
        }
        else if (paid is null)
        {
            fields.Problem("currency", $"the field is empty; {Currency.Expected}");
        }
        DateOnly? date = null;
        if (fields.Word("date") is { Length: > 0 } day && (date = DateOf(day)) is null)
            fields.Problem("date", NoDate(day));
        double waste = 0;
        if (fields.Word("waste") is { Length: > 0 } share && !TryShare(share, reading, out waste))
            fields.Problem("waste", NoShare(share));
        if (fields.ProblemCount > before)
            return;
        try
        {
            if (PriceList.Enter(_newest, Price.Of(food!, amount, paid!, pack, system, date, waste)) is string twice)
                fields.Problem("ingredient", twice);
        }
        catch (ArgumentException e)
        {
            fields.Problem("pack", Guard.ReasonOf(e).TrimEnd('.'));
        }
    }

    private Ingredient? FoodOf(RowFields fields)
    {
        string name = fields.Required("ingredient");
        if (name.Length == 0)
            return null;
        NameMatch match = ingredients.MatchName(name);
        if (match.Ingredient is null)
            fields.Problem("ingredient", FormulaLineReader.Unknown(match, "not an ingredient of this table", ingredients, _suggested++ < MostSuggestions));
        return match.Ingredient;
    }

    private ProblemList Needed()
    {
        if (_problems.Count == 0)
            _problems.Add(new Problem(1, null, "there is no price in it; a row such as unsalted butter,1 kg,6.95,EUR was expected"));
        return _problems;
    }

    private bool TryMoney(string text, out decimal amount)
    {
        NumberFormatInfo format = reading == AmountReading.DecimalPoint ? CultureInfo.InvariantCulture.NumberFormat : s_comma;
        return decimal.TryParse(text, NumberStyles.AllowDecimalPoint, format, out amount) && amount is >= 0 and <= Price.MostAmount;
    }

    private static readonly NumberFormatInfo s_comma = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = " " };

    private static bool TryPack(string text, AmountReading reading, out Amount pack, out string why)
    {
        AmountReader reader = new(text, reading);
        bool isRead = reader.TryReadAll(out pack);
        why = isRead ? "" : $"{reader.Refusal}; a pack such as 2.5 kg, 1 L or 12 large was expected";
        return isRead;
    }

    private static DateOnly? DateOf(string text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) ? date : null;

    private static string NoDate(string text) => $"{Excerpt.Of(text)} is not a date such as 2026-11-02, year first";

    private static bool TryShare(string text, AmountReading reading, out double share)
    {
        share = 0;
        ReadOnlySpan<char> number = text.AsSpan().TrimEnd();
        if (!number.EndsWith("%"))
            return false;
        bool isRead = double.TryParse(number[..^1].TrimEnd(), NumberStyles.AllowDecimalPoint, reading == AmountReading.DecimalPoint ? CultureInfo.InvariantCulture.NumberFormat : s_comma, out double percent)
            && percent >= 0 && percent <= 100 * Price.MaximumWaste;
        share = isRead ? percent / 100 : 0;
        return isRead;
    }

    private static string NoShare(string text) => string.Create(CultureInfo.InvariantCulture, $"{Excerpt.Of(text)} is not a share from 0% to {100 * Price.MaximumWaste:0}%, written with its sign");

    // One that a finger slipped on: what is not taken for a column would be lost without a word.
    private static string? Near(string heading) => heading.Length > EditDistance.Longest ? null
        : s_columns.FirstOrDefault(column => EditDistance.Of(heading.ToLowerInvariant(), column) is > 0 and <= 1)
            ?? s_columns.FirstOrDefault(column => heading.Equals(column + "s", StringComparison.OrdinalIgnoreCase));
}
