using System.Globalization;
using Confectio.Text;

namespace Confectio.Formulas.Solving;

/// <summary>How the figures of a nutrition panel are rounded and written.</summary>
/// <remarks>
/// United States, 21 CFR 101.9(c): calories under 5 as 0, to 50 by 5, above by 10; fats under 0.5 g as 0, under 5 g by 0.5, above by 1;
/// cholesterol under 2 mg as 0, to 5 mg "less than 5 mg", above by 5; sodium under 5 mg as 0, to 140 mg by 5, above by 10; carbohydrate, fibre,
/// sugars, polyols and protein under 0.5 g as 0, under 1 g "less than 1 g", above by 1. European Union, Commission guidance on tolerances,
/// December 2012, section 6, as restated by others: energy by 1; fat, carbohydrate, sugars, polyols, starch, fibre and protein up to 0.5 g as 0,
/// under 10 g by 0.1, above by 1; saturates the same from 0.1 g on; salt up to 0.0125 g as 0, under 1 g by 0.01, above by 0.1. Where a tie goes is in
/// no rule but that of daily values (21 CFR 101.9(d)(8), whose printed 5.0 % becomes 6): half goes up here. The figure that was not rounded decides
/// which step it gets, so 9.96 g is 10.0 g and not 10 g.
/// </remarks>
public static class LabelRounding
{
    // What a panel of each law has lines for.
    private static readonly LabelNutrient[] s_american =
    [
        LabelNutrient.Kilocalories, LabelNutrient.Fat, LabelNutrient.Saturates, LabelNutrient.TransFat, LabelNutrient.Cholesterol, LabelNutrient.Sodium,
        LabelNutrient.Carbohydrate, LabelNutrient.Fibre, LabelNutrient.Sugars, LabelNutrient.AddedSugars, LabelNutrient.Polyols, LabelNutrient.Protein,
    ];

    private static readonly LabelNutrient[] s_european =
    [
        LabelNutrient.Kilojoules, LabelNutrient.Kilocalories, LabelNutrient.Fat, LabelNutrient.Saturates, LabelNutrient.Carbohydrate,
        LabelNutrient.Sugars, LabelNutrient.Polyols, LabelNutrient.Starch, LabelNutrient.Fibre, LabelNutrient.Protein, LabelNutrient.Salt,
    ];

    /// <summary>The lines that a panel of these rules may have, in their order.</summary>
    /// <param name="rules">By whose rules.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rules"/> is not a defined value.</exception>
    public static IReadOnlyList<LabelNutrient> Lines(LabelRules rules) =>
        Guard.Defined(rules) == LabelRules.UnitedStates ? s_american : s_european;

    /// <summary>A figure as a panel prints it.</summary>
    /// <param name="nutrient">What it is a figure of: one of <see cref="Lines"/>.</param>
    /// <param name="rules">By whose rules.</param>
    /// <param name="value">
    /// The figure that was not rounded, from 0 to 1e6: kcal, kJ; g; of cholesterol and sodium mg. American figures are of a serving, European ones of
    /// 100 g or a portion.
    /// </param>
    /// <returns>
    /// The text. Worked numbers: American 137.94 kcal is <c>140</c>, 4.7 g of fat <c>4.5 g</c>, 0.7 g of protein <c>less than 1 g</c>; European 0.0126 g
    /// of salt <c>0.01 g</c>.
    /// </returns>
    /// <exception cref="ArgumentException">A panel of these rules has no line of the nutrient.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or an enum has no such value.</exception>
    public static string Print(LabelNutrient nutrient, LabelRules rules, double value)
    {
        Guard.Defined(nutrient);
        if (!Lines(rules).Contains(nutrient))
        {
            throw new ArgumentException($"{nameof(nutrient)} was {EnumWords.Of(nutrient, ' ')}, and a panel of these rules has no such line; expected one "
                + $"of: {string.Join(", ", Lines(rules).Select(line => EnumWords.Of(line, ' ')))}.", nameof(nutrient));
        }
        // As decimal: 4.75 g that was added up to 4.7499999999999996 is a tie all the same.
        decimal exact = (decimal)Guard.InRange(value, 0, 1e6), zero = (decimal)Zero(nutrient, rules);
        string unit = UnitOf(nutrient);
        bool american = rules == LabelRules.UnitedStates;
        if (american ? exact < zero : exact <= zero)
            return "0" + unit;
        if (american && nutrient == LabelNutrient.Cholesterol && exact <= 5)
            return "less than 5 mg";
        if (american && exact < 1 && nutrient is LabelNutrient.Carbohydrate or LabelNutrient.Fibre or LabelNutrient.Sugars or LabelNutrient.AddedSugars
            or LabelNutrient.Polyols or LabelNutrient.Protein && american && exact < 1)
            return "less than 1 g";
        decimal step = (decimal)Step(nutrient, rules, (double)exact);
        // Up to 50 kcal by 5 and up to 140 mg by 5: at the edge itself both steps say the same.
        decimal rounded = Math.Round(exact / step, MidpointRounding.AwayFromZero) * step;
        bool tenths = american ? rounded != Math.Truncate(rounded) : step < 1;
        return rounded.ToString(!tenths ? "0" : step < 0.1m ? "0.00" : "0.0", CultureInfo.InvariantCulture) + unit;
    }

    /// <summary>
    /// A share of a daily value as an American panel prints it: of a nutrient with a daily reference value by 1 % (21 CFR 101.9(d)(7)(ii), from memory),
    /// of a vitamin or mineral to 10 % by 2, to 50 % by 5, above by 10 (101.9(c)(8)(iii), as quoted by others).
    /// </summary>
    /// <param name="percent">The share, per cent, from 0 to 1e5.</param>
    /// <param name="isVitaminOrMineral">Whether it is of a vitamin or mineral.</param>
    /// <returns>Whole per cent. Worked number: 8 mg of iron of 18 mg is 44.4 %, printed 45; as a nutrient with a reference value it would be 44.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="percent"/> is outside its range.</exception>
    public static int DailyValuePercent(double percent, bool isVitaminOrMineral)
    {
        decimal exact = (decimal)Guard.InRange(percent, 0, 1e5);
        decimal step = !isVitaminOrMineral ? 1 : exact <= 10 ? 2 : exact <= 50 ? 5 : 10;
        return (int)(Math.Round(exact / step, MidpointRounding.AwayFromZero) * step);
    }

    /// <summary>
    /// The servings of a pack as an American label prints them (21 CFR 101.9(b)(8), as quoted by others): from 2 to 5 by halves, above by wholes; below 2
    /// as they are, to halves here.
    /// </summary>
    /// <param name="servings">How many there are, from 0.1 to 1e6.</param>
    /// <returns>The text. Worked numbers: 3.3 is <c>about 3.5</c>, 12.6 <c>about 13</c>, 4 is <c>4</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="servings"/> is outside its range.</exception>
    public static string PrintServings(double servings)
    {
        decimal exact = (decimal)Guard.InRange(servings, 0.1, 1e6), step = exact <= 5 ? 0.5m : 1;
        decimal rounded = Math.Max(step, Math.Round(exact / step, MidpointRounding.AwayFromZero) * step);
        return (rounded == exact ? "" : "about ") + rounded.ToString("0.#", CultureInfo.InvariantCulture);
    }

    /// <summary>Up to this a figure is printed as 0.</summary>
    internal static double Zero(LabelNutrient nutrient, LabelRules rules) => (rules, nutrient) switch
    {
        (LabelRules.EuropeanUnion, LabelNutrient.Kilojoules or LabelNutrient.Kilocalories) => 0.5,
        (LabelRules.EuropeanUnion, LabelNutrient.Saturates) => 0.1,
        (LabelRules.EuropeanUnion, LabelNutrient.Salt) => 0.0125,
        (LabelRules.UnitedStates, LabelNutrient.Kilojoules) => 21,
        (_, LabelNutrient.Kilocalories or LabelNutrient.Sodium) => 5,
        (LabelRules.UnitedStates, LabelNutrient.Salt) => 0.0125,
        (_, LabelNutrient.Cholesterol) => 2,
        _ => 0.5,
    };

    /// <summary>To what a figure of this size is rounded; 0 where the rules say nothing.</summary>
    internal static double Step(LabelNutrient nutrient, LabelRules rules, double value) => (rules, nutrient) switch
    {
        (_, LabelNutrient.Water) => 0,
        (LabelRules.EuropeanUnion, LabelNutrient.Kilojoules or LabelNutrient.Kilocalories) => 1,
        (LabelRules.EuropeanUnion, LabelNutrient.Salt) => value < 1 ? 0.01 : 0.1,
        (LabelRules.EuropeanUnion, LabelNutrient.Sodium) => value < 1000 ? 10 : 100,
        (LabelRules.EuropeanUnion, _) => value < 10 ? 0.1 : 1,
        (_, LabelNutrient.Kilocalories) => value < 50 ? 5 : 10,
        (_, LabelNutrient.Kilojoules) => value < 209 ? 21 : 42,
        (_, LabelNutrient.Fat or LabelNutrient.Saturates or LabelNutrient.TransFat) => value < 5 ? 0.5 : 1,
        (_, LabelNutrient.Sodium) => value < 140 ? 5 : 10,
        (_, LabelNutrient.Cholesterol) => 5,
        (_, LabelNutrient.Salt) => value < 0.35 ? 0.0125 : 0.025,
        _ => 1,
    };

    private static string UnitOf(LabelNutrient nutrient) => nutrient switch
    {
        LabelNutrient.Kilojoules => " kJ",
        LabelNutrient.Kilocalories => " kcal",
        LabelNutrient.Sodium or LabelNutrient.Cholesterol => " mg",
        _ => " g",
    };
}
