using System.Globalization;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;
using Confectio.Sources;

namespace Confectio.Labels;

/// <summary>The nutrition panel of a formula, worked out from tables of food composition: for 100 g and for a portion, with its spread, rounded as a law has it.</summary>
/// <remarks>
/// <para>
/// An estimate, and no laboratory analysis: <see cref="Caution"/> stands on it. A line of which something is not known is absent and says why (<see cref="NotKnown"/>): what is not known is
/// no 0. Saturates are told food by food; where more than 0.1 g of the fat in 100 g is of foods of which nobody tells, there are none. No table at hand tells trans fat or cholesterol.
/// </para>
/// <para>
/// United States: total carbohydrate is all that is neither water, fat, protein, salt, ash nor alcohol, fibre counted in; energy is 4 kcal to a gram of it and of protein and 9 to fat (21 CFR
/// 101.9(c)(1)(i)(B), from memory), and 7 to alcohol. European Union: carbohydrate without fibre, and the factors of Annex XIV (<see cref="Composition.KilojoulesPerGram"/>). The range of a
/// carbohydrate counts in what a table leaves over. Worked number: 100 g of unsalted butter have 81 g of fat, 3017 kJ and 734 kcal in the European Union.
/// </para>
/// </remarks>
public sealed class NutritionEstimate
{
    /// <summary>What stands on every panel that was worked out.</summary>
    public const string Caution = "An estimate from tables of food composition, not a laboratory analysis. What a label must say, and how far it may be off, the law of the place decides.";

    // Of so much fat of foods whose saturates nobody tells, g in 100 g, a panel may print none in the European Union.
    private const double LeastUnknown = 0.1;

    // A label may print 0 g and be off by 2 g and the rounding, from memory.
    private const double MostOfZero = 0.03;

    private const double SodiumOfSalt = 1000 / 2.5; // mg in a gram of salt

    private readonly Balance _balance;

    private NutritionEstimate(Formula formula, LabelRules rules, double? portionGrams)
    {
        Formula = formula;
        Rules = rules;
        PortionGrams = portionGrams;
        _balance = Balance.Of(formula);
        List<NutritionLine> lines = [];
        List<NutrientNotKnown> unknown = [];
        foreach (LabelNutrient nutrient in LabelRounding.Lines(rules))
        {
            // Voluntary, and nothing to say of a formula without.
            if (nutrient is LabelNutrient.Polyols or LabelNutrient.Starch && _balance[nutrient == LabelNutrient.Starch ? FormulaPart.Starch : FormulaPart.Of(Constituent.Polyols)].Grams.High <= 0)
                continue;
            if (Of(nutrient, out string why) is Spread per100)
                lines.Add(LineOf(nutrient, per100));
            else
                unknown.Add(new NutrientNotKnown(nutrient, why));
        }
        Lines = lines;
        NotKnown = unknown;
        TrafficLights = rules == LabelRules.EuropeanUnion ? TrafficLight.Of(this) : [];
    }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>By whose rules.</summary>
    public LabelRules Rules { get; }

    /// <summary>The mass of a portion, g; <see langword="null"/> where none was told.</summary>
    public double? PortionGrams { get; }

    /// <summary>The lines that are known, in the order of the law.</summary>
    public IReadOnlyList<NutritionLine> Lines { get; }

    /// <summary>The lines that are not known, with why. A law may ask for them: then this panel is not whole.</summary>
    public IReadOnlyList<NutrientNotKnown> NotKnown { get; }

    /// <summary>The colours of the United Kingdom's front of pack, of the lines that there are; none of an American panel.</summary>
    public IReadOnlyList<TrafficLight> TrafficLights { get; }

    /// <summary>The line of a nutrient; <see langword="null"/> where the panel has none.</summary>
    /// <param name="nutrient">The nutrient.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="nutrient"/> is not a defined value.</exception>
    public NutritionLine? this[LabelNutrient nutrient]
    {
        get
        {
            Guard.Defined(nutrient);
            return Lines.FirstOrDefault(line => line.Nutrient == nutrient);
        }
    }

    /// <summary>The panel of a formula.</summary>
    /// <param name="formula">The formula as it is made: what boils off has gone.</param>
    /// <param name="rules">By whose rules.</param>
    /// <param name="portionGrams">The mass of a portion, g, from 0.1 to 1e5. An American panel is one of a serving and needs it.</param>
    /// <returns>The panel.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentException">An American panel was asked for without a portion.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="portionGrams"/> is outside its range, or the rules are no defined value.</exception>
    public static NutritionEstimate Of(Formula formula, LabelRules rules, double? portionGrams = null)
    {
        Guard.NotNull(formula);
        Guard.Defined(rules);
        if (portionGrams is double grams)
            Guard.InRange(grams, 0.1, 1e5, nameof(portionGrams));
        else if (rules == LabelRules.UnitedStates)
            throw new ArgumentException($"{nameof(portionGrams)} was not given, and an American panel is one of a serving: grams are expected.", nameof(portionGrams));
        return new NutritionEstimate(formula, rules, portionGrams);
    }

    /// <summary>The lines, what is not known, and the caution.</summary>
    public override string ToString() => string.Join("; ", Lines) + (NotKnown.Count > 0 ? $". Not known: {string.Join("; ", NotKnown)}" : "") + ". " + Caution;

    private NutritionLine LineOf(LabelNutrient nutrient, Spread per100)
    {
        Spread? portion = PortionGrams is double grams ? per100 * (grams / 100) : null;
        DailyAmount? day = DailyAmount.Of(nutrient, Rules);
        return new NutritionLine(nutrient, Figure(per100), portion is Spread told ? Figure(told) : null,
            day is null ? null : LabelRounding.DailyValuePercent(100 * (portion ?? per100).Likely / day.Amount, isVitaminOrMineral: false), day?.Provenance)
        {
            ToleranceGrams = Rules == LabelRules.EuropeanUnion ? nutrient is LabelNutrient.Kilojoules or LabelNutrient.Kilocalories ? null : LabelTolerance.Of(nutrient, Math.Min(100, per100.Likely)) : null,
        };

        NutritionFigure Figure(Spread value) => new(value, LabelRounding.Print(nutrient, Rules, value.Likely), LabelRounding.Print(nutrient, Rules, value.Low),
            LabelRounding.Print(nutrient, Rules, value.High));
    }

    // In 100 g, in the unit of its line; null with why where it is not known.
    private Spread? Of(LabelNutrient nutrient, out string why)
    {
        why = "";
        switch (nutrient)
        {
            case LabelNutrient.TransFat:
                why = "no table at hand tells it";
                return _balance[FormulaPart.Fat].Grams.High <= 0 ? Spread.Exactly(0) : null;
            case LabelNutrient.Cholesterol:
                why = "no table at hand tells it";
                return null;
            case LabelNutrient.AddedSugars:
                double most = 100 * (_balance[FormulaPart.Sugars].Fraction.High - _balance[FormulaPart.Of(Constituent.Lactose)].Fraction.Low);
                why = string.Create(CultureInfo.InvariantCulture, $"a food table does not tell which sugars were added; no more than {Math.Max(0, most):0.#} g in 100 g");
                return null;
            case LabelNutrient.Saturates:
                return Saturates(ref why);
            case LabelNutrient.Kilojoules:
                return Energy(Composition.EnergyFactors(isKilojoules: true), ref why);
            case LabelNutrient.Kilocalories:
                return Energy(Rules == LabelRules.UnitedStates ? s_general : Composition.EnergyFactors(isKilojoules: false), ref why);
            default:
                Constituent[] core = FoodLabel.Counted(nutrient, Rules, out Constituent[] whole)!;
                if (Unstated(core) is { } foods)
                {
                    why = $"the label of {foods} does not tell it";
                    return null;
                }
                Spread least = Share(core), most100 = Share(whole);
                bool american = Rules == LabelRules.UnitedStates && nutrient == LabelNutrient.Carbohydrate;
                double scale = 100 * (nutrient == LabelNutrient.Sodium ? SodiumOfSalt : 1);
                double high = Math.Max(least.High, most100.High);
                // What a table leaves over may count or not: no surer than a judgement where there is some.
                SpreadBasis basis = high <= least.Low ? SpreadBasis.Exact : Spread.Worse(Spread.Worse(least.Basis, most100.Basis), whole.Length > core.Length ? SpreadBasis.Judged : SpreadBasis.Coverage);
                return new Spread(least.Low, american ? most100.Likely : least.Likely, high, basis) * scale;
        }
    }

    // 21 CFR 101.9(c)(1)(i)(B), from memory; of alcohol the general factor of food tables.
    private static readonly double[] s_general = Constituents.ByPlace(constituent => constituent switch
    {
        Constituent.Fat => 9.0,
        Constituent.Alcohol => 7,
        Constituent.Water or Constituent.Salt or Constituent.OtherAsh => 0,
        _ => 4,
    });

    private Spread? Energy(double[] factors, ref string why)
    {
        if ((Unstated([Constituent.Fat]) ?? Unstated([Constituent.Protein])) is { } foods)
        {
            why = $"the label of {foods} does not tell its fat or its protein";
            return null;
        }
        Spread perGram = _balance[FormulaPart.Weighted("energy", factors)].Fraction;
        return perGram * 100;
    }

    private Spread? Saturates(ref string why)
    {
        double known = 0, unknown = 0, variance = 0;
        List<string> foods = [];
        foreach (FormulaLine line in Formula.Lines)
        {
            double grams = 100 * line.Grams.Likely / Formula.TotalGrams;
            if (SaturatesTable.Of(line.Ingredient) is (double fraction, Evidence kind))
            {
                known += grams * fraction;
                // As sure as a constituent of such a food: a few per cent, twice that where it was recalled or judged.
                variance += Math.Pow(grams * fraction * (kind <= Evidence.Fitted ? 0.05 : 0.10), 2);
            }
            else
            {
                unknown += grams * line.Ingredient.Composition[Constituent.Fat];
                foods.Add(line.Ingredient.Name);
            }
        }
        if (unknown > LeastUnknown)
        {
            why = $"nobody tells those of {string.Join(", ", foods.Distinct())}";
            return null;
        }
        double reach = 2 * Math.Sqrt(variance);
        return new Spread(Math.Max(0, known - reach), known + unknown / 2, known + unknown + reach, SpreadBasis.Judged);
    }

    private Spread Share(Constituent[] constituents) => _balance[FormulaPart.Of("part", constituents)].Fraction;

    // The foods of which a label does not say it, and that may have some.
    private string? Unstated(Constituent[] constituents)
    {
        string[] foods = [.. Formula.Lines.Where(line => line.Grams.Likely > 0 && IsUnstated(line.Ingredient, constituents)).Select(line => line.Ingredient.Name).Distinct()];
        return foods.Length > 0 ? string.Join(", ", foods) : null;
    }

    // The kinds of sugar are never printed, and their sum is: a group is stated where its least is above nothing, or where its most is no more than a rounded 0 may be off.
    private static bool IsUnstated(Ingredient food, Constituent[] constituents) => constituents.All(food.NotStated.Contains)
        && CompositionSpread.Of(food, constituents) is var within && within.High > (constituents.Length == 1 ? 0 : MostOfZero) && (constituents.Length == 1 || within.Low <= 0);
}
