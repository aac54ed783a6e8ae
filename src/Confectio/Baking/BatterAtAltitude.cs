using System.Globalization;
using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;
using Confectio.Uncertainty;

namespace Confectio.Baking;

/// <summary>
/// What extension services and the armed forces print on baking a cake at a height: for each publication its own figures, applied to the lines of a
/// formula. They disagree, and nobody here decides between them.
/// </summary>
/// <remarks>
/// So many teaspoons of each teaspoon, or tablespoons of each cup, are a share of the line whatever it weighs: 1/16 a tablespoon. New Mexico's figure
/// is a rate, so much for each 2500 feet, and goes with the height. Between two printed heights the range is that of both rows, below the lowest nothing is said, and above the highest the last row stands and says so. They are for cakes that rise by
/// baking powder or soda. Worked number: 12 g of baking powder at 5000 ft are 9 to 10.5 g by the University of Wyoming, and at 8000 ft 4 g by the armed forces.
/// </remarks>
public sealed class BatterAtAltitude
{
    private const double MetresPerFoot = 0.3048;

    // Sugars of a dry sugar and water of a liquid, in 100 g: bounds of our own, so that honey is no dry sugar and cream no liquid.
    private const double LeastSugars = 0.85, MostWaterOfSugar = 0.1, LeastWater = 0.7;

    private BatterAtAltitude(Formula formula, double metres)
    {
        Formula = formula;
        Metres = metres;
        List<AltitudeChange> changes = [];
        List<string> cautions = [];
        FormulaLine[] lines = [.. formula.Lines.Where(line => line.Grams.Likely > 0)];
        double flourCups = lines.Where(line => IsFlour(line.Ingredient)).Sum(line => Cups(line, cautions));
        foreach (IGrouping<Source, AltitudeRule> publication in AltitudeRule.All.GroupBy(rule => rule.Provenance.Source))
        {
            foreach (IGrouping<BatterPart, AltitudeRule> part in publication.GroupBy(rule => rule.Part))
            {
                if (Around([.. part]) is not { } around)
                    continue;
                if (part.Key == BatterPart.Oven)
                    changes.Add(new AltitudeChange(around.Rules, null, 0, null, around.IsBeyond));
                else
                    changes.AddRange(Applied(around.Rules, around.IsBeyond, [.. lines.Where(line => IsPart(line.Ingredient, part.Key))], flourCups));
            }
        }
        Changes = changes;
        cautions.AddRange(Said(lines));
        Cautions = cautions;
    }

    /// <summary>The cake as it is baked at sea level.</summary>
    public Formula Formula { get; }

    /// <summary>The height, m.</summary>
    public double Metres { get; }

    /// <summary>The height, feet.</summary>
    public double Feet => Metres / MetresPerFoot;

    /// <summary>What is printed, a publication after the other; empty where none speaks of this height.</summary>
    public IReadOnlyList<AltitudeChange> Changes { get; }

    /// <summary>What this leaves out or takes for granted.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>What is printed for a cake at a height.</summary>
    /// <param name="formula">The cake.</param>
    /// <param name="metres">The height, m, from 0 to 4000: 5200 ft are 1585 m.</param>
    /// <exception cref="ArgumentNullException"><paramref name="formula"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="metres"/> is outside its range.</exception>
    public static BatterAtAltitude Of(Formula formula, double metres) => new(Guard.NotNull(formula), Guard.InRange(metres, 0, 4000));

    /// <summary>The height and every change, a line each.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Metres:0} m ({Feet:0} ft)\n")
        + string.Concat(Changes.Select(change => change + "\n")) + string.Join("\n", Cautions);

    internal static Spread Between(double low, double high) => low == high ? Spread.Exactly(low) : new Spread(low, low / 2 + high / 2, high, SpreadBasis.Sources);

    // The row of the height itself, or the two about it; a publication with one row prints it for "this and higher".
    private (AltitudeRule[] Rules, bool IsBeyond)? Around(AltitudeRule[] rules)
    {
        // A height that is given in metres comes back from feet with a last bit of its own.
        const double Close = 1;
        AltitudeRule? exact = Array.Find(rules, rule => Math.Abs(rule.Feet - Feet) <= Close);
        AltitudeRule? below = Array.FindLast(rules, rule => rule.Feet < Feet), above = Array.Find(rules, rule => rule.Feet > Feet);
        if (exact is not null)
            return ([exact], false);
        if (below is null)
            return null;
        bool isOpen = rules.Length == 1 || rules[0].Part == BatterPart.Oven;
        return above is null ? ([below], !isOpen) : ([below, above], false);
    }

    private IEnumerable<AltitudeChange> Applied(AltitudeRule[] rules, bool isBeyond, FormulaLine[] lines, double flourCups)
    {
        double spoons = rules[0].Unit == AltitudeUnit.TeaspoonsPerTwoCupsOfFlour ? lines.Sum(line => Fills(line, KitchenUnit.Teaspoon)) : 0;
        foreach (FormulaLine line in lines)
        {
            double share = rules[0].Unit switch
            {
                AltitudeUnit.TablespoonsPerCup => 1.0 / 16,
                AltitudeUnit.TeaspoonsPerTwoCupsOfFlour => flourCups > 0 && spoons > 0 ? Feet / rules[0].Feet * flourCups / 2 / spoons : double.NaN,
                _ => 1,
            };
            if (double.IsNaN(share))
                continue;
            double grams = line.Grams.Likely;
            // More cannot be taken than there is.
            double At(double change) => grams * Math.Max(0, 1 + change * share);
            yield return new AltitudeChange(rules, line.Ingredient, grams, Between(At(rules.Min(rule => rule.Low)), At(rules.Max(rule => rule.High))), isBeyond);
        }
    }

    private IEnumerable<string> Said(FormulaLine[] lines)
    {
        bool hasLeavening = Array.Exists(lines, line => IsPart(line.Ingredient, BatterPart.Leavening));
        if (Changes.Count == 0)
            yield return string.Create(CultureInfo.InvariantCulture, $"Nothing is printed for {Metres:0} m: the lowest height of these publications is {AltitudeRule.All.Min(rule => rule.Feet)} ft.");
        if (!hasLeavening)
            yield return "There is no baking powder or soda in it: these publications are about cakes that rise by them, and a cake that rises by beaten egg alone is not spoken of.";
        if (Array.Exists(lines, line => line.Ingredient.Id == "flour-self-raising"))
            yield return "Self-raising flour brings leavening that cannot be taken out: its share is not counted here.";
        if (Changes.Count > 0)
        {
            yield return "Each publication speaks for itself, and they part by two to one: change one thing at a time, in the order leavening, sugar, liquid (University of Wyoming, for 3000 ft and higher), and keep the first cake that is right.";
            yield return "Bake until it is done in the middle: the batter boils at a lower temperature there, and no time of these publications is known here.";
        }
        if (Changes.Any(change => change.IsBeyond))
            yield return "Some of these rows are of a lower place than yours: they are the last that their publication prints, and nothing was drawn on beyond them.";
    }

    private static bool IsPart(Ingredient food, BatterPart part) => part switch
    {
        BatterPart.Leavening => food.Id.StartsWith("baking-powder", StringComparison.Ordinal) || food.Id == "baking-soda",
        BatterPart.Sugar => food.Composition.Sugars >= LeastSugars && food.Composition[Constituent.Water] <= MostWaterOfSugar,
        BatterPart.Liquid => food.Composition[Constituent.Water] >= LeastWater && !food.Allergens.Contains(Allergen.Egg) && IsPoured(food),
        _ => false,
    };

    // Fruit and fresh cheese have as much water; what is poured is known by its name.
    private static bool IsPoured(Ingredient food) => food.Id == "water" || food.Id.StartsWith("milk-", StringComparison.Ordinal) || food.Id.StartsWith("juice-", StringComparison.Ordinal)
        || food.Id.StartsWith("coffee", StringComparison.Ordinal) || food.Id is "coconut-milk";

    private static bool IsFlour(Ingredient food) => food.Id.StartsWith("flour-", StringComparison.Ordinal);

    private static double Cups(FormulaLine line, List<string> cautions)
    {
        if (!line.Ingredient.TryGetNearestDensity(line.Ingredient.DefaultPacking, out _))
        {
            cautions.Add($"What a cup of {line.Ingredient.Name} weighs is not known: it is not among the cups of flour.");
            return 0;
        }
        return Fills(line, KitchenUnit.Cup);
    }

    private static double Fills(FormulaLine line, KitchenUnit unit) => Conversion.Of(line.Ingredient, MeasuringSystem.UsCustomary).ToVolume(line.Grams.Likely).Millilitres.Likely
        / MeasuringSystem.UsCustomary.MillilitresPer(unit);
}
