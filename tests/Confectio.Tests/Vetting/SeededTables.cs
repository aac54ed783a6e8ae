using System.Globalization;
using System.Text;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Vetting;

namespace Confectio.Tests.Vetting;

/// <summary>How a synthetic table is made.</summary>
public sealed record SeededSetting(int Rows, bool Liquids, double ErrorShare = 0.1, double SpreadFactor = 1, double PowderOffset = 0, MeasuringSystem? System = null);

/// <summary>
/// Makes conversion tables whose truth is known: a stated system, true densities drawn about our own, figures rounded as
/// tables round them, and mistakes of twelve kinds in a stated share of the rows.
/// </summary>
/// <remarks>
/// The truth is drawn from the density table that the vetter also uses, so hit rates are an upper bound on what real tables
/// will give; the misspecified settings (spreads wider than we believe, powders off by a common factor) are the honest ones.
/// </remarks>
public sealed class SeededTables(int seed)
{
    private static readonly string[] s_dry =
    [
        "sugar-granulated", "sugar-icing", "sugar-brown", "sugar-caster", "flour-all-purpose", "flour-bread", "flour-cake", "starch-corn",
        "cocoa-natural", "milk-dry-skim", "egg-white-dried", "almonds", "walnuts", "pecans", "coconut-desiccated", "butter-unsalted",
        "shortening-white", "cream-cheese", "peanut-butter", "baking-powder", "salt-table",
    ];

    private static readonly string[] s_liquids =
        ["water", "milk-whole", "cream-heavy", "honey", "syrup-corn-light", "oil-vegetable", "egg-white", "molasses", "milk-butter", "juice-lemon"];

    private static readonly (string Text, KitchenUnit Unit)[] s_measures =
    [
        ("1 cup", KitchenUnit.Cup), ("1 cup", KitchenUnit.Cup), ("1 cup", KitchenUnit.Cup), ("1/2 cup", KitchenUnit.Cup), ("1/4 cup", KitchenUnit.Cup),
        ("1/3 cup", KitchenUnit.Cup), ("3/4 cup", KitchenUnit.Cup), ("1 Tbsp", KitchenUnit.Tablespoon), ("2 Tbsp", KitchenUnit.Tablespoon), ("1 tsp", KitchenUnit.Teaspoon),
    ];

    private static readonly Reason[] s_kinds =
    [
        Reason.CupCountedAsEightOunces, Reason.SpoonSwap, Reason.HalvedOrDoubled, Reason.DecimalShift, Reason.OuncesAsGrams, Reason.GramsAsOunces,
        Reason.ThirtyGramOunce, Reason.FluidOunceAsOunce, Reason.DigitsSwapped, Reason.OtherPacking, Reason.OtherCup, Reason.CopiedRow, Reason.Unexplained,
    ];

    private readonly Random _random = new(seed);

    public SeededTable Next(SeededSetting setting)
    {
        MeasuringSystem system = setting.System ?? DrawSystem();
        IngredientTable table = IngredientTable.BuiltIn;
        Dictionary<string, double> deviations = [];
        List<SeededRow> rows = [];
        List<double> grams = [];
        while (rows.Count < setting.Rows)
        {
            bool liquid = setting.Liquids && _random.NextDouble() < 0.35;
            string id = liquid ? s_liquids[_random.Next(s_liquids.Length)] : s_dry[_random.Next(s_dry.Length)];
            Ingredient ingredient = table.Get(id);
            BulkDensity density = ingredient.Densities[_random.Next(ingredient.Densities.Count)];
            (string text, KitchenUnit unit) = s_measures[_random.Next(s_measures.Length)];
            string key = id + density.Packing;
            if (!deviations.TryGetValue(key, out double deviation))
            {
                deviation = Normal() * density.LogUncertainty * setting.SpreadFactor
                    + (ingredient.Class == IngredientClass.Powder ? setting.PowderOffset : 0);
                deviations.Add(key, deviation);
            }
            // One filling of the measure to the next differs a little too.
            double own = Normal() * 0.2 * density.LogUncertainty * setting.SpreadFactor;
            double volume = Amount.Parse(text).Millilitres(system);
            double truth = volume * density.GramsPerMillilitre.Likely * Math.Exp(deviation + own);
            rows.Add(new SeededRow { Ingredient = ingredient, Density = density, Measure = text, Unit = unit, Truth = truth, Deviation = density.LogUncertainty * setting.SpreadFactor });
        }
        foreach (SeededRow row in rows)
            row.Printed = Print(row.Truth);
        for (int i = 0; i < rows.Count; i++)
        {
            if (_random.NextDouble() < setting.ErrorShare)
                Spoil(rows, i, system);
        }
        return new SeededTable(system, rows);
    }

    private MeasuringSystem DrawSystem() => MeasuringSystem.All[_random.NextDouble() switch
    {
        < 0.35 => 0,
        < 0.6 => 1,
        < 0.78 => 2,
        < 0.86 => 3,
        < 0.92 => 4,
        _ => 5,
    }];

    private void Spoil(List<SeededRow> rows, int index, MeasuringSystem system)
    {
        SeededRow row = rows[index];
        string before = row.Printed;
        for (int attempt = 0; attempt < 40 && row.Printed == before; attempt++)
        {
            Reason reason = s_kinds[_random.Next(s_kinds.Length)];
            double? mass = reason switch
            {
                Reason.CupCountedAsEightOunces when row.Unit == KitchenUnit.Cup => Amount.Parse(row.Measure).Part(0).Low.ToDouble() * 8 * 28.349523125,
                Reason.FluidOunceAsOunce when row.Unit != KitchenUnit.Cup => Amount.Parse(row.Measure).Part(0).Low.ToDouble() * 28.349523125 / (row.Unit == KitchenUnit.Tablespoon ? 2 : 6),
                Reason.SpoonSwap when row.Unit == KitchenUnit.Tablespoon => row.Truth * system.MillilitresPer(KitchenUnit.Teaspoon) / system.MillilitresPer(KitchenUnit.Tablespoon),
                Reason.SpoonSwap when row.Unit == KitchenUnit.Teaspoon => row.Truth * system.MillilitresPer(KitchenUnit.Tablespoon) / system.MillilitresPer(KitchenUnit.Teaspoon),
                Reason.HalvedOrDoubled => row.Truth * (_random.Next(2) == 0 ? 0.5 : 2),
                Reason.DecimalShift => row.Truth * (_random.Next(2) == 0 ? 0.1 : 10),
                Reason.OuncesAsGrams when row.Truth > 14 => row.Truth / 28.349523125,
                Reason.GramsAsOunces when row.Truth < 40 => row.Truth * 28.349523125,
                Reason.ThirtyGramOunce when row.Truth > 25 => Math.Round(row.Truth / 28.349523125 * 2) / 2 * 30,
                Reason.OtherPacking when row.Ingredient.Densities.Count > 1 => row.Truth / row.Density.GramsPerMillilitre.Likely
                    * row.Ingredient.Densities.First(other => other.Packing != row.Density.Packing).GramsPerMillilitre.Likely,
                Reason.OtherCup when row.Unit == KitchenUnit.Cup => row.Truth
                    * MeasuringSystem.All[_random.Next(6)].MillilitresPer(KitchenUnit.Cup) / system.MillilitresPer(KitchenUnit.Cup),
                Reason.Unexplained => row.Truth * Math.Exp((_random.NextDouble() < 0.5 ? -1 : 1) * (0.25 + 1.5 * _random.NextDouble())),
                _ => null,
            };
            string? printed = reason switch
            {
                Reason.DigitsSwapped => Swap(before),
                Reason.CopiedRow => rows[index == 0 ? 1 : index - 1] is { Error: null } neighbour && neighbour.Ingredient != row.Ingredient ? neighbour.Printed : null,
                _ => mass is double grams ? Print(grams) : null,
            };
            if (printed is null || printed == before || double.Parse(printed, CultureInfo.InvariantCulture) <= 0)
                continue;
            row.Printed = printed;
            row.Error = reason;
        }
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

    // Whole grams, and tenths of a gram below ten, as most printed tables have it.
    private static string Print(double grams) => grams < 10
        ? Math.Max(0.1, Math.Round(grams, 1)).ToString("0.0", CultureInfo.InvariantCulture)
        : Math.Round(grams).ToString("0", CultureInfo.InvariantCulture);

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}

public sealed class SeededRow
{
    public required Ingredient Ingredient { get; init; }

    public required BulkDensity Density { get; init; }

    public required string Measure { get; init; }

    public required KitchenUnit Unit { get; init; }

    /// <summary>The standard deviation of ln grams that this row was drawn with.</summary>
    public required double Deviation { get; init; }

    public required double Truth { get; init; }

    public string Printed { get; set; } = "";

    public Reason? Error { get; set; }

    /// <summary>Nobody could see the mistake: the printed figure lies within two standard deviations of the truth.</summary>
    public bool IsInvisible => Error is not null && Miss <= 2 * Deviation;

    /// <summary>How far the printed figure is from the truth, in logarithms.</summary>
    public double Miss => Math.Abs(Math.Log(double.Parse(Printed, CultureInfo.InvariantCulture) / Truth));
}

public sealed record SeededTable(MeasuringSystem System, IReadOnlyList<SeededRow> Rows)
{
    public string ToCsv()
    {
        StringBuilder text = new("ingredient,measure,packing,grams\n");
        foreach (SeededRow row in Rows)
            text.Append(CultureInfo.InvariantCulture, $"\"{row.Ingredient.Name}\",{row.Measure},{row.Density.Packing.ToWord()},{row.Printed}\n");
        return text.ToString();
    }
}
