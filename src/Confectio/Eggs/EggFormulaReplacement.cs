using System.Globalization;
using Confectio.Formulas;
using Confectio.Formulas.Solving;
using Confectio.Ingredients;

namespace Confectio.Eggs;

/// <summary>A form of egg replaced by another in a formula: what came in, what became of the water, and what was kept.</summary>
/// <remarks>
/// The water counts by its own composition: that of the table is 99.90 % water and 0.10 % minerals, which are solids of the formula. It
/// therefore takes a little less powder than <see cref="EggReplacement"/> says, which counts with pure water. Worked number: 100 g of fresh
/// white take 13.50 g of dried white instead of 13.59. Where what comes in needs water, <see cref="Replacement"/> finds it. Where it brings
/// water, the formula's lines of water give it up, as far as there are any. Sugar that comes in with sugared yolk is not taken off the
/// formula's sugar: <see cref="AddedSugarGrams"/> says how much to take.
/// </remarks>
public sealed class EggFormulaReplacement
{
    private EggFormulaReplacement(EggReplacement replacement, Formula before, Formula after, double incomingGrams, double waterGrams,
        double missingWaterGrams)
    {
        Replacement = replacement;
        Before = before;
        After = after;
        IncomingGrams = incomingGrams;
        WaterGrams = waterGrams;
        MissingWaterGrams = missingWaterGrams;
    }

    /// <summary>The replacement for the kitchen: measures, preparation, what a rule would have given.</summary>
    public EggReplacement Replacement { get; }

    /// <summary>The formula as it was.</summary>
    public Formula Before { get; }

    /// <summary>The formula with the replacement.</summary>
    public Formula After { get; }

    /// <summary>What comes in of the new form, g.</summary>
    public double IncomingGrams { get; }

    /// <summary>The water that joined the formula's lines, g; below 0, the water that they gave up.</summary>
    public double WaterGrams { get; }

    /// <summary>
    /// Water that should have gone and could not, because the formula has no line of water with so much, g; 0 where all went.
    /// </summary>
    public double MissingWaterGrams { get; }

    /// <summary>The sugar that came in with the egg, g, to be taken off the formula; below 0, sugar that the formula lost.</summary>
    public double AddedSugarGrams => IncomingGrams * Replacement.Incoming.AddedSugarFraction - Replacement.ReplacedGrams.Likely
        * Replacement.Outgoing.AddedSugarFraction;

    /// <summary>
    /// Whether all was kept that was to be: at equal solids water and egg solids, at equal protein the protein and the mass without added
    /// sugar.
    /// </summary>
    public bool IsExact => MissingWaterGrams <= 1e-9 * Replacement.ReplacedGrams.Likely;

    /// <summary>One line, such as <c>13.5 g dried egg white in, 86.5 g of water in</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{IncomingGrams:0.##} g {Replacement.Incoming.Name} in, {Math.Abs(WaterGrams):0.##} g of water {(WaterGrams < 0 ? "out" : "in")}")
        + (IsExact ? "" : string.Create(CultureInfo.InvariantCulture, $"; {MissingWaterGrams:0.##} g of water too much"));

    internal static EggFormulaReplacement Of(Formula formula, EggReplacement replacement)
    {
        EggForm outgoing = replacement.Outgoing, incoming = replacement.Incoming;
        double grams = replacement.ReplacedGrams.Likely;
        // Two forms of one composition: nothing changes but the name on the carton.
        if (incoming.Ingredient == outgoing.Ingredient)
            return new EggFormulaReplacement(replacement, formula, formula, grams, 0, 0);
        // The formula's own water, where it was made with a table of somebody's own.
        Ingredient water = formula.Own(incoming.Forms.Needed("water"));
        (double incomingGrams, double waterGrams) = Balance(outgoing, grams, incoming, replacement.Match, water);
        if (waterGrams >= 0 && outgoing.AddedSugarFraction == 0 && incoming.AddedSugarFraction == 0)
        {
            Replacement solved = Formulas.Solving.Replacement.Of(formula, outgoing.Ingredient, grams, [incoming.Ingredient, water],
                replacement.Match == EggMatch.Solids ? [FormulaPart.Water, FormulaPart.Solids]
                    : [FormulaPart.Protein, FormulaPart.Everything]);
            return new EggFormulaReplacement(replacement, formula, solved.After, solved.Added[0].Grams.Likely, solved.Added[1].Grams.Likely,
                0);
        }
        double plain = formula.GramsOf(water) ?? 0, missing = Math.Max(0, -waterGrams - plain);
        Formula after = FormulaExchange.Make(formula, outgoing.Ingredient, grams, incoming.Ingredient, incomingGrams, water,
            waterGrams + missing);
        return new EggFormulaReplacement(replacement, formula, after, incomingGrams, waterGrams + missing, missing);
    }

    // Two equations: what is matched, and the water (or, at equal protein, the mass without added sugar).
    private static (double Incoming, double Water) Balance(EggForm outgoing, double grams, EggForm incoming, EggMatch match,
        Ingredient water)
    {
        double solids = FormulaPart.Solids.FractionIn(water), wet = FormulaPart.Water.FractionIn(water);
        (double a, double b, double sum) = match == EggMatch.Solids
            ? (incoming.EggSolidsFraction, solids, outgoing.EggSolidsFraction)
            : (incoming.ProteinFraction, water.Composition[Constituent.Protein], outgoing.ProteinFraction);
        (double c, double d, double rest) = match == EggMatch.Solids
            ? (incoming.WaterFraction, wet, outgoing.WaterFraction)
            : (1 - incoming.AddedSugarFraction, 1, 1 - outgoing.AddedSugarFraction);
        double determinant = a * d - b * c;
        return (grams * (sum * d - b * rest) / determinant, grams * (a * rest - c * sum) / determinant);
    }
}
