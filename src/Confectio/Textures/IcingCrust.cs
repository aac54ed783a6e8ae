using System.Globalization;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Sugars;

namespace Confectio.Textures;

/// <summary>
/// Whether an icing crusts, by its sugars to its pure fat, and how much of its sugar does not dissolve where it is kept.
/// </summary>
/// <remarks>
/// Below 2.0 of sugars to one of fat a crust is unlikely, above 3.0 it is likely, between it is open. The 2 is a rule of thumb from memory and the 3 an estimate. Corriher (BakeWise,
/// 2008) has more sugar to fat crust within some ten minutes, and prints a formula that does not crust at 2.2 to its fat ingredients, so that the simple rule of two to one is wrong.
/// Humectants and emulsified shortening hold a likely crust back to open; they never make one sure. Without fat a paste of more sugar than its water dissolves sets hard as it
/// dries. Worked number: icing sugar and butter two to one by mass have 2.4 g of sugars to 1 g of fat: open.
/// </remarks>
public sealed class IcingCrust
{
    /// <summary>Grams of sugars to a gram of fat below which a crust is unlikely: a rule of thumb from memory.</summary>
    public const double UnlikelyBelow = 2;

    /// <summary>Grams of sugars to a gram of fat above which a crust is likely: an estimate.</summary>
    public const double LikelyAbove = 3;

    // Estimates: from which share of the sugars humectants count, and of the fat emulsified shortening.
    private const double Humectants = 0.03, Emulsified = 0.1;

    private static readonly string[] s_emulsified = ["shortening-high-ratio", "shortening-icing"];

    private static readonly FormulaPart s_humectants = FormulaPart.Of("humectants", Constituent.Glycerol, Constituent.Polyols, Constituent.Glucose, Constituent.Fructose,
        Constituent.Maltose, Constituent.HigherSaccharides);

    private IcingCrust(Formula formula, double celsius)
    {
        Formula = formula;
        Celsius = celsius;
        double Grams(FormulaPart part) => formula.Lines.Sum(line => line.Grams.Likely * part.FractionIn(line.Ingredient));
        double sugars = Grams(FormulaPart.Sugars), fat = Grams(FormulaPart.Fat), humectants = Grams(s_humectants),
            emulsified = formula.Lines.Where(line => s_emulsified.Contains(line.Ingredient.Id)).Sum(line => line.Grams.Likely);
        SugarsToFat = fat > 0 && sugars / fat is var ratio && double.IsFinite(ratio) ? ratio : null;
        if (Formula.WaterOf(formula.Lines) > formula.BoiledOffGrams)
        {
            SugarSolution all = SugarSolution.Of(formula);
            double solution = (Formula.WaterOf(formula.Lines) - formula.BoiledOffGrams) / all.Water;
            ExcessSugarGrams = Crystallisation.Of(all, celsius).CrystalFraction * solution;
        }
        else
        {
            // Without water nothing dissolves.
            ExcessSugarGrams = Grams(FormulaPart.Of(Constituent.Sucrose));
        }
        List<string> reasons = [];
        CrustOutlook outlook;
        if (SugarsToFat is double to && to <= 100)
        {
            reasons.Add(string.Create(CultureInfo.InvariantCulture,
                $"{to:0.0#} g of sugars to 1 g of fat: a crust is unlikely below {UnlikelyBelow:0.0} (rule of thumb, from memory) and likely above {LikelyAbove:0.0} (estimated); between, a published formula of 2.2 does not crust (Corriher, BakeWise, 2008)."));
            outlook = to > LikelyAbove ? CrustOutlook.Likely : to >= UnlikelyBelow ? CrustOutlook.Uncertain : CrustOutlook.Unlikely;
            // What is all dissolved has nothing on its surface that grows: a curd, a caramel sauce.
            if (outlook == CrustOutlook.Likely && ExcessSugarGrams <= 0)
                Hold("All of its sucrose dissolves: nothing is there to grow on the surface until it has dried.");
        }
        else if (sugars > 0 && ExcessSugarGrams > 0)
        {
            reasons.Add("There is next to no fat, and more sugar than dissolves: it sets hard as its water dries off (common practice of royal icing and fondant). It is no crust over a soft cream.");
            outlook = CrustOutlook.Likely;
        }
        else if (sugars > 0)
        {
            reasons.Add("There is next to no fat, and all of the sucrose dissolves: what dries on its surface is not told by sugar and fat.");
            outlook = CrustOutlook.Uncertain;
        }
        else
        {
            reasons.Add("There is no sugar to crust.");
            outlook = CrustOutlook.Unlikely;
        }
        if (sugars > 0 && humectants >= Humectants * sugars)
            Hold(string.Create(CultureInfo.InvariantCulture, $"Syrups, polyols or glycerine hold water: {100 * humectants / sugars:0.#} g to 100 g of sugars (counted from {100 * Humectants:0} g on, estimated)."));
        if (fat > 0 && emulsified >= Emulsified * fat)
            Hold(string.Create(CultureInfo.InvariantCulture, $"Emulsified shortening is {100 * Math.Min(1, emulsified / fat):0} % of the fat: it binds water (common practice; counted from {100 * Emulsified:0} % on, estimated)."));
        Outlook = outlook;
        Reasons = reasons;

        void Hold(string why)
        {
            reasons.Add(why);
            if (outlook == CrustOutlook.Likely)
                outlook = CrustOutlook.Uncertain;
        }
    }

    /// <summary>The icing.</summary>
    public Formula Formula { get; }

    /// <summary>Where it is kept, °C.</summary>
    public double Celsius { get; }

    /// <summary>Grams of sugars to a gram of pure fat; <see langword="null"/> without fat.</summary>
    public double? SugarsToFat { get; }

    /// <summary>Sucrose that does not dissolve in the water there is, at equilibrium, g: grains, whether they are felt or not.</summary>
    public double ExcessSugarGrams { get; }

    /// <summary>The same, per cent of the formula.</summary>
    public double ExcessSugarPercent => 100 * ExcessSugarGrams / Formula.TotalGrams;

    /// <summary>Whether it crusts.</summary>
    public CrustOutlook Outlook { get; }

    /// <summary>Why, each with its kind.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>Judges an icing.</summary>
    /// <param name="formula">The icing.</param>
    /// <param name="celsius">Where it is kept, °C, from 0 to 100.</param>
    /// <returns>The outlook with its reasons.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="celsius"/> is outside its range.</exception>
    public static IcingCrust Of(Formula formula, double celsius = 20) =>
        new(Guard.NotNull(formula), Guard.InRange(celsius, Solubility.MinimumCelsius, Solubility.MaximumCelsius));

    /// <summary>One line, such as <c>a crust is uncertain; 51.4 % of it is sugar that does not dissolve at 20 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"a crust is {Outlook.ToString().ToLowerInvariant()}; {ExcessSugarPercent:0.0} % of it is sugar that does not dissolve at {Celsius:0.#} °C");
}
