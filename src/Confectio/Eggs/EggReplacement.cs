using System.Globalization;
using Confectio.Conversions;
using Confectio.Formulas;
using Confectio.Ingredients;
using Confectio.Measures;
using Confectio.Sources;

namespace Confectio.Eggs;

/// <summary>
/// So much of one form of egg replaced by another form and water, at equal solids or equal protein: fresh whites by powder and water, or
/// powder by liquid white.
/// </summary>
/// <remarks>
/// <para>
/// With W grams going out, e the egg solids or the protein of a gram and a the added sugar of a gram, what comes in is x = W·e_out/e_in,
/// and the water is W − x + (x·a_in − W·a_out): the masses without added sugar stay the same. Of white there is no added sugar, and x and
/// the water together are W. Where a target t of solids is stated it stands for e_out.
/// </para>
/// <para>
/// A powder of moisture m made up to a mass fraction s of solids takes (1 − m)/s − 1 grams of water a gram: 8.54 % moisture to 12.43 %
/// solids takes 6.358. What "12 to 88" gives is another thing: it is a rule of mass, and its solids are whatever the moisture leaves.
/// </para>
/// <para>Caution: <see cref="EggCaution.Text"/></para>
/// </remarks>
public sealed class EggReplacement
{
    private const double MostGrams = 1e9;

    private EggReplacement(EggForm outgoing, Spread replaced, EggForm incoming, EggMatch match, double? targetSolids)
    {
        Outgoing = outgoing;
        Incoming = incoming;
        Match = match;
        TargetSolids = targetSolids;
        ReplacedGrams = replaced;
        Share = match == EggMatch.Protein ? outgoing.ProteinFraction / incoming.ProteinFraction
            : (targetSolids ?? outgoing.EggSolidsFraction) / incoming.EggSolidsFraction;
        IncomingGrams = Share * replaced;
        AddedSugarGrams = IncomingGrams.Likely * incoming.AddedSugarFraction - ReplacedGrams.Likely * outgoing.AddedSugarFraction;
        WaterGrams = ReplacedGrams.Likely - IncomingGrams.Likely + AddedSugarGrams;
    }

    /// <summary>What goes out.</summary>
    public EggForm Outgoing { get; }

    /// <summary>What comes in.</summary>
    public EggForm Incoming { get; }

    /// <summary>What stays.</summary>
    public EggMatch Match { get; }

    /// <summary>
    /// The egg solids asked for, as a mass fraction of what is replaced; <see langword="null"/> where they are those of the outgoing form.
    /// </summary>
    public double? TargetSolids { get; }

    /// <summary>What goes out, g: exact where it was weighed, the spread of eggs or of a cup where it was counted or measured.</summary>
    public Spread ReplacedGrams { get; }

    /// <summary>What comes in, g: the powder, or the liquid egg, as sure as what goes out.</summary>
    public Spread IncomingGrams { get; }

    /// <summary>The water that is added, g; below 0, the water that the formula gives up because what comes in has more of it.</summary>
    public double WaterGrams { get; }

    /// <summary>
    /// The sugar that comes in with the egg, g, to be taken off the formula; below 0, sugar that the formula loses and wants back.
    /// </summary>
    public double AddedSugarGrams { get; }

    /// <summary>The solids of what comes in and its water together, per cent. Worked number: 12.43 of dried white for fresh.</summary>
    public double SolidsPercent => 100 * IncomingGrams.Likely * Incoming.SolidsFraction.Likely / (IncomingGrams.Likely + WaterGrams);

    /// <summary>The protein that comes in, g.</summary>
    public double ProteinGrams => IncomingGrams.Likely * Incoming.ProteinFraction;

    /// <summary>
    /// The protein that comes in over that which goes out: 1 where all of it is kept. Worked number: 1.027 of dried for fresh white at
    /// equal solids.
    /// </summary>
    public double ProteinKept => ProteinGrams / (ReplacedGrams.Likely * Outgoing.ProteinFraction);

    /// <summary>The egg solids that come in over those which go out: 1 where all of them are kept.</summary>
    public double SolidsKept => IncomingGrams.Likely * Incoming.EggSolidsFraction / (ReplacedGrams.Likely * Outgoing.EggSolidsFraction);

    /// <summary>What to do before it is used, such as how long a powder stands in its water: common practice. May be empty.</summary>
    public string Preparation => Incoming.Preparation;

    /// <summary>Grams of the incoming form for a gram of the outgoing.</summary>
    internal double Share { get; }

    /// <summary>The water that a gram of powder takes: (1 − m)/s − 1.</summary>
    /// <param name="moisture">The moisture m of the powder as a mass fraction, above 0 to 0.2.</param>
    /// <param name="solids">The mass fraction s of solids that it is made up to, above 0 to 1 − m.</param>
    /// <returns>Grams. Worked number: 8.54 % moisture to 12.43 % solids takes 6.358; 8.0 % to 12.0 % takes 6.667.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    internal static double WaterPerGram(double moisture, double solids)
    {
        Guard.InRange(moisture, Guard.Trace, EggForm.MaximumMoisture);
        Guard.InRange(solids, Guard.Trace, 1 - moisture);
        return (1 - moisture) / solids - 1;
    }

    /// <summary>A mass replaced.</summary>
    /// <param name="outgoing">What goes out.</param>
    /// <param name="grams">How much of it, g, above 0 to 1e9; part of what a formula has, or all of it.</param>
    /// <param name="incoming">What comes in: another form of the same part.</param>
    /// <param name="match">What stays.</param>
    /// <param name="targetSolids">
    /// Egg solids to make up to instead of those of the outgoing form, as a mass fraction of what is replaced, above 0 to those of the
    /// incoming form. Only with <see cref="EggMatch.Solids"/>.
    /// </param>
    /// <returns>
    /// The replacement. Worked number: 100 g of fresh white by dried white of 8.54 % moisture: 13.59 g and 86.41 g of water.
    /// </returns>
    /// <exception cref="ArgumentNullException">A form is null.</exception>
    /// <exception cref="ArgumentException">The forms are of different parts, or a target is stated for protein.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or the match is not a defined value.</exception>
    public static EggReplacement Of(EggForm outgoing, double grams, EggForm incoming, EggMatch match = EggMatch.Solids,
        double? targetSolids = null)
    {
        Guard.InRange(grams, Guard.Trace, MostGrams);
        return Make(outgoing, Spread.Exactly(grams), incoming, match, targetSolids);
    }

    /// <summary>The whites, yolks or wholes of counted eggs replaced; fresh eggs go out.</summary>
    /// <param name="eggs">The eggs: of the part, 1e-9 to 1e9 g.</param>
    /// <param name="incoming">What comes in; its part is what goes out.</param>
    /// <param name="match">What stays.</param>
    /// <param name="targetSolids">
    /// Egg solids to make up to instead of those of the fresh egg, as in <see cref="Of(EggForm, double, EggForm, EggMatch, double?)"/>.
    /// </param>
    /// <returns>
    /// The replacement. Worked number: the whites of 6 US large eggs, 198 g, by dried white: 26.91 g and 171.09 g of water.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There are no eggs, or too many, or a target is stated for protein.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or the match is not a defined value.</exception>
    public static EggReplacement Of(EggCount eggs, EggForm incoming, EggMatch match = EggMatch.Solids, double? targetSolids = null)
    {
        Guard.NotNull(eggs);
        return Make(Guard.NotNull(incoming).Forms.Fresh(incoming.Part), Weighable(eggs.Grams(incoming.Part), $"{eggs}", nameof(eggs)),
            incoming, match, targetSolids);
    }

    /// <summary>A cup, a spoon or a weight replaced.</summary>
    /// <param name="outgoing">What goes out.</param>
    /// <param name="amount">How much of it: a volume, pieces that the ingredient has, or a mass, from 1e-9 to 1e9 g.</param>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="incoming">What comes in: another form of the same part.</param>
    /// <param name="match">What stays.</param>
    /// <param name="targetSolids">
    /// Egg solids to make up to instead of those of the outgoing form, as in <see cref="Of(EggForm, double, EggForm, EggMatch, double?)"/>.
    /// </param>
    /// <returns>The replacement. Worked number: 1 US cup of fresh whites, 243.3 g, by dried white: 33.1 g.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// The amount is nothing or too much, the system lacks its unit, the forms are of different parts, or a target is stated for protein.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range, or the match is not a defined value.</exception>
    public static EggReplacement Of(EggForm outgoing, Amount amount, MeasuringSystem system, EggForm incoming,
        EggMatch match = EggMatch.Solids, double? targetSolids = null)
    {
        ConvertedMass mass = Conversion.Of(Guard.NotNull(outgoing).Ingredient, Guard.NotNull(system)).ToMass(amount);
        return Make(outgoing, Weighable(mass.Grams, $"{amount}", nameof(amount)), incoming, match, targetSolids);
    }

    /// <summary>Some or all of a form replaced in a formula.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="outgoing">What goes out. The formula has an ingredient of this id; where it is made otherwise than the form's, the
    /// formula's own figures count.</param>
    /// <param name="grams">How much of it, g, above 0 up to what the formula has.</param>
    /// <param name="incoming">What comes in: another form of the same part.</param>
    /// <param name="match">What stays.</param>
    /// <returns>The formula before and after, and the replacement for the kitchen.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The formula has none of the form, or the forms are of different parts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="grams"/> is outside its range, or the match is not a defined value.
    /// </exception>
    public static EggFormulaReplacement InFormula(Formula formula, EggForm outgoing, double grams, EggForm incoming,
        EggMatch match = EggMatch.Solids)
    {
        Guard.NotNull(formula);
        double there = formula.GramsOf(Guard.NotNull(outgoing).Ingredient) ?? 0;
        Guard.InRange(grams, Guard.Trace, there > 0 ? there : MostGrams);
        if (there <= 0)
            throw new ArgumentException($"{nameof(outgoing)} '{outgoing.Ingredient.Name}' is not in the formula.", nameof(outgoing));
        return EggFormulaReplacement.Of(formula, Make(outgoing.In(formula), Spread.Exactly(grams), Guard.NotNull(incoming).In(formula),
            match, null));
    }

    /// <summary>The replacement in cups and spoons: the powder in its usual packing, and the water.</summary>
    /// <param name="system">Whose cups and spoons.</param>
    /// <param name="allowedError">The largest error allowed of each, as a fraction from 0 to 0.5.</param>
    /// <returns>
    /// The measures. The spread is that of the densities; a powder differs by a tenth or more, so weigh it where there are scales. Worked
    /// number: 13.59 g of dried white and 86.41 g of water are 2 US tablespoons, 3 % more, and 1/3 cup + 1 tsp, 3 % less.
    /// </returns>
    /// <exception cref="ArgumentNullException"><paramref name="system"/> is null.</exception>
    /// <exception cref="ArgumentException">No density of the ingredient is known.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="allowedError"/> is outside its range.</exception>
    public EggMeasures InMeasures(MeasuringSystem system, double allowedError = 0.05)
    {
        Guard.InRange(allowedError, 0, 0.5);
        return EggMeasures.Of(Incoming, IncomingGrams.Likely, Incoming.Forms.Needed("water"), WaterGrams, system, allowedError);
    }

    /// <summary>What a kitchen rule would have given instead.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="system">Whose cups and spoons it is followed with.</param>
    /// <returns>The result of the rule for the same mass of white.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="InvalidOperationException">What comes in is no dried white.</exception>
    public ReconstitutionResult ByRule(ReconstitutionRule rule, MeasuringSystem system)
    {
        Guard.NotNull(rule);
        return Incoming is { IsDry: true, Part: EggPart.White } ? rule.ApplyTo(ReplacedGrams.Likely, Incoming, system)
            : throw new InvalidOperationException($"The rules are for dried white, and '{Incoming.Name}' is none.");
    }

    /// <summary>One line, such as <c>100 g fresh egg white: 13.59 g dried egg white + 86.41 g water, 12.43 % solids</c>.</summary>
    public override string ToString()
    {
        string water = WaterGrams < 0 ? string.Create(CultureInfo.InvariantCulture, $", {-WaterGrams:0.##} g water less")
            : string.Create(CultureInfo.InvariantCulture, $" + {WaterGrams:0.##} g water");
        string sugar = Math.Abs(AddedSugarGrams) < 0.005 ? ""
            : string.Create(CultureInfo.InvariantCulture, $", {Math.Abs(AddedSugarGrams):0.##} g sugar "
                + $"{(AddedSugarGrams < 0 ? "more" : "less")}");
        return string.Create(CultureInfo.InvariantCulture, $"{ReplacedGrams.Likely:0.##} g {Outgoing.Name}: {IncomingGrams.Likely:0.##} g "
            + $"{Incoming.Name}{water}{sugar}, {SolidsPercent:0.00} % solids");
    }

    // Of less than a trace no rule and no share could be worked out, and of more no formula could be made.
    private static Spread Weighable(Spread grams, string said, string name) => grams.Likely >= Guard.Trace && grams.High <= MostGrams
        ? grams
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
            $"{name} was {said}, {grams.Likely:G4} g; it must be from {Guard.Trace:R} to {MostGrams:R} g."), name);

    private static EggReplacement Make(EggForm outgoing, Spread grams, EggForm incoming, EggMatch match, double? targetSolids)
    {
        Guard.NotNull(outgoing);
        Guard.NotNull(incoming);
        Guard.Defined(match);
        if (outgoing.Part != incoming.Part)
            throw new ArgumentException($"{nameof(incoming)} '{incoming.Name}' is {incoming.Part.Word()} and '{outgoing.Name}' is "
                + $"{outgoing.Part.Word()}; a form replaces one of the same part.", nameof(incoming));
        if (targetSolids is double target)
        {
            Guard.InRange(target, Guard.Trace, incoming.EggSolidsFraction, nameof(targetSolids));
            if (match != EggMatch.Solids)
                throw new ArgumentException($"{nameof(targetSolids)} was stated with {match}; it goes with {nameof(EggMatch.Solids)}.",
                    nameof(targetSolids));
        }
        return new EggReplacement(outgoing, grams, incoming, match, targetSolids);
    }
}
