using System.Globalization;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;

namespace Confectio.Tests.Vetting;

/// <summary>A row of a real table after planting: what stands there now, and what was done to it.</summary>
public sealed record PlantedRow(RealRow Row, Reason? Done, double Before);

/// <summary>
/// Spoils a tenth of the rows of a real table in one of the ways in which tables are spoilt. The figure before is the source's
/// own, so nothing here is drawn from our densities but the mistakes that need one (another packing, another cup).
/// </summary>
public sealed class PlantedErrors(int seed, IReadOnlyList<Reason>? kinds = null)
{
    private const double Ounce = 28.349523125;

    private static readonly Reason[] s_kinds =
    [
        Reason.CupCountedAsEightOunces, Reason.SpoonSwap, Reason.HalvedOrDoubled, Reason.DecimalShift, Reason.OuncesAsGrams,
        Reason.DigitsSwapped, Reason.OtherPacking, Reason.OtherCup, Reason.CopiedRow, Reason.Unexplained,
    ];

    private readonly Random _random = new(seed);

    private readonly IReadOnlyList<Reason> _kinds = kinds ?? s_kinds;

    /// <summary>Slips of print in the digits, planted by themselves: the others were planted before there was a name for these.</summary>
    public static IReadOnlyList<Reason> SlipsOfDigits { get; } = [Reason.DigitsSwapped, Reason.DigitLost, Reason.DigitDoubled, Reason.DecimalShift, Reason.HalvedOrDoubled, Reason.Unexplained];

    public List<PlantedRow> Plant(RealTable table, double share = 0.1)
    {
        List<PlantedRow> rows = [.. table.Rows.Select(row => new PlantedRow(row, null, row.Grams))];
        int wanted = Math.Max(1, (int)Math.Round(share * rows.Count));
        // A row that was copied from stays as it is: otherwise nothing of the copying is left to be seen.
        HashSet<int> copied = [];
        for (int attempt = 0; attempt < 400 && wanted > 0; attempt++)
        {
            int i = _random.Next(rows.Count);
            if (rows[i].Done is not null || copied.Contains(i))
                continue;
            Reason kind = _kinds[_random.Next(_kinds.Count)];
            int above = i == 0 ? 1 : i - 1;
            if (kind == Reason.CopiedRow && rows[above].Done is not null)
                continue;
            if (Spoil(table.Rows, i, kind) is not string printed || printed == rows[i].Row.Printed)
                continue;
            if (kind == Reason.CopiedRow)
                copied.Add(above);
            rows[i] = rows[i] with { Row = rows[i].Row with { Printed = printed }, Done = kind };
            wanted--;
        }
        return rows;
    }

    private string? Spoil(IReadOnlyList<RealRow> rows, int index, Reason kind)
    {
        RealRow row = rows[index];
        if (!Amount.TryParse(row.Measure, out Amount amount) && !Amount.TryParse(row.Measure.Split(',')[0], out amount))
            return null;
        double grams = row.Grams, count = amount.Part(0).Low.ToDouble();
        KitchenUnit unit = amount.Part(0).Unit;
        bool ounces = row.Ounces, cup = unit == KitchenUnit.Cup, half = _random.Next(2) == 0;
        double? spoilt = kind switch
        {
            Reason.CupCountedAsEightOunces when cup => count * 8 * Ounce,
            Reason.SpoonSwap when unit == KitchenUnit.Tablespoon => grams / 3,
            Reason.SpoonSwap when unit == KitchenUnit.Teaspoon => grams * 3,
            Reason.HalvedOrDoubled => grams * (half ? 0.5 : 2),
            Reason.DecimalShift => grams * (half ? 0.1 : 10),
            Reason.OuncesAsGrams when !ounces && grams > 14 => grams / Ounce,
            Reason.OtherPacking => OtherPacking(row, grams),
            Reason.OtherCup when cup => grams * (half ? 284.130625 : 200) / 236.588,
            Reason.Unexplained => grams * Math.Exp((half ? -1 : 1) * (0.25 + 1.5 * _random.NextDouble())),
            _ => null,
        };
        return kind switch
        {
            Reason.DigitsSwapped => Swap(row.Printed),
            Reason.DigitLost => Lose(row.Printed),
            Reason.DigitDoubled => Double(row.Printed),
            Reason.CopiedRow => rows[index == 0 ? 1 : index - 1] is RealRow other && other.Ounces == ounces ? other.Printed : null,
            _ => spoilt is double value ? Print(ounces ? value / Ounce : value, ounces) : null,
        };
    }

    private double? OtherPacking(RealRow row, double grams)
    {
        if (!PackingText.TryRead(row.Packing, out Packing stated) || !IngredientTable.BuiltIn.TryGet(row.Ingredient, out Ingredient? ingredient)
            || !ingredient.TryGetDensity(stated, out BulkDensity? right) || ingredient.Densities.Count < 2)
            return null;
        BulkDensity[] others = [.. ingredient.Densities.Where(density => density.Packing != stated)];
        return grams * others[_random.Next(others.Length)].GramsPerMillilitre.Likely / right.GramsPerMillilitre.Likely;
    }

    private string? Swap(string printed)
    {
        int place = _random.Next(Math.Max(1, printed.Length - 1));
        if (place + 1 >= printed.Length || !char.IsAsciiDigit(printed[place]) || !char.IsAsciiDigit(printed[place + 1]) || (place == 0 && printed[1] == '0'))
            return null;
        char[] digits = printed.ToCharArray();
        (digits[place], digits[place + 1]) = (digits[place + 1], digits[place]);
        return new string(digits);
    }

    // Any digit but the last before the mark and those behind it, whose loss hardly shows. 13 for 143 looks like a mark that moved, and 5 for 15
    // like the other spoon: better reasons, which are no test of this one.
    private string? Lose(string printed)
    {
        int whole = Whole(printed);
        if (whole < 2)
            return null;
        int place = _random.Next(whole - 1);
        string left = printed.Remove(place, 1);
        double ratio = double.Parse(printed, CultureInfo.InvariantCulture) / double.Parse(left, CultureInfo.InvariantCulture);
        return left[0] == '0' || new[] { 10, 2, 3, 4, Ounce }.Any(other => Math.Abs(ratio / other - 1) < 0.2) ? null : left;
    }

    private string? Double(string printed)
    {
        int place = _random.Next(Whole(printed));
        return printed[place] == '0' ? null : printed.Insert(place, printed[place].ToString());
    }

    private static int Whole(string printed) => printed.IndexOf('.', StringComparison.Ordinal) is int mark and > 0 ? mark : printed.Length;

    private static string? Print(double value, bool ounces)
    {
        string text = ounces ? value.ToString("0.##", CultureInfo.InvariantCulture)
            : value < 10 ? value.ToString("0.#", CultureInfo.InvariantCulture) : Math.Round(value).ToString("0", CultureInfo.InvariantCulture);
        return text == "0" ? null : text;
    }
}
