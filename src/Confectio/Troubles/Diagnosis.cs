using Confectio.Cooking;
using Confectio.Formulas;

namespace Confectio.Troubles;

/// <summary>
/// What may have gone wrong with an icing: the causes of a trouble with the figure behind each, what helps, and what cannot be told from what is
/// known. No promise: the rules are partly common practice, and what was done at the bowl is not known here.
/// </summary>
/// <remarks>
/// A cause is ranked by its figure: how far it is past where the rule begins, measured in steps from there to where the case is clear. Causes
/// whose whole range is past it stand before those that are in doubt. A cause without a figure is not ranked. It is no probability.
/// Worked number: 250 g of butter of 8 °C and 500 g of icing sugar of 20 °C meet at 12.1 °C, where 47 % of the fat is solid: the rule
/// begins at 25 %, so that cold fat leads.
/// </remarks>
public sealed class Diagnosis
{
    private Diagnosis(Formula formula, IReadOnlyList<Trouble> troubles, TroubleFacts facts)
    {
        Formula = formula;
        Troubles = troubles;
        Facts = facts;
        TroubleParts parts = new(formula, facts);
        TroubleFinding[] all = [.. troubles.SelectMany(trouble => trouble.Causes).Distinct().Where(cause => cause.IsAbout(parts)).Select(cause => new TroubleFinding(cause, parts))];
        Ranked = [.. all.Where(finding => finding.Standing is TroubleStanding.SpeaksFor or TroubleStanding.InDoubt).OrderBy(finding => finding.Standing)
            .ThenByDescending(finding => finding.Past!.Value.Likely).ThenBy(finding => finding.Decides!.Provenance.Evidence)];
        SpokenAgainst = [.. all.Where(finding => finding.Standing == TroubleStanding.SpeaksAgainst)];
        CannotBeTold = [.. all.Where(finding => finding.Standing == TroubleStanding.CannotBeTold)];
        NotTold = parts.Mix is not null && facts.Temperatures.Any(told => told.Key.Equals("mix", StringComparison.OrdinalIgnoreCase)) ? [] : parts.NotTold;
        Cautions = CautionsOf(parts, all);
        Mix = parts.Mix;
        MixSentence = parts.MixText;
    }

    /// <summary>The icing.</summary>
    public Formula Formula { get; }

    /// <summary>The troubles that were named.</summary>
    public IReadOnlyList<Trouble> Troubles { get; }

    /// <summary>What was known beside the formula.</summary>
    public TroubleFacts Facts { get; }

    /// <summary>The causes whose figures speak for them or leave them in doubt, the one that is furthest past its rule first.</summary>
    public IReadOnlyList<TroubleFinding> Ranked { get; }

    /// <summary>The causes whose figures speak against them.</summary>
    public IReadOnlyList<TroubleFinding> SpokenAgainst { get; }

    /// <summary>The causes that cannot be told yet, in no order.</summary>
    public IReadOnlyList<TroubleFinding> CannotBeTold { get; }

    /// <summary>The parts whose temperature nobody told.</summary>
    public IReadOnlyList<string> NotTold { get; }

    /// <summary>The temperature of the mix, °C: as told, or where the parts meet; <see langword="null"/> where too little was told.</summary>
    public Spread? Mix { get; }

    /// <summary>How that is known and what was taken for what nobody told, or why it is not known.</summary>
    public string MixSentence { get; }

    /// <summary>What to measure next, each once: first what the ranked causes lack.</summary>
    public IReadOnlyList<string> ToMeasure => [.. Ranked.Concat(CannotBeTold).Concat(SpokenAgainst).SelectMany(finding => finding.ToMeasure).Distinct()];

    /// <summary>How the causes were ranked.</summary>
    public static string HowRanked => "Ranked by how far each figure is past where its rule begins, in steps from there to where the case is clear; those steps are partly a "
        + "judgement. Causes without a figure are not ranked. It is no probability.";

    /// <summary>What to mind with the remedies, each with its source. The cautions of the formula itself stand with the formula.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>Looks for the causes.</summary>
    /// <param name="formula">The icing.</param>
    /// <param name="troubles">What is wrong, as <see cref="Trouble.Named"/> reads it.</param>
    /// <param name="facts">What is known beside the formula; nothing where it is left out.</param>
    /// <returns>The diagnosis.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">
    /// No trouble is given, or a temperature is of a part that the formula does not have, of two parts at once, or outside of what the part can have.
    /// </exception>
    public static Diagnosis Of(Formula formula, IReadOnlyList<Trouble> troubles, TroubleFacts? facts = null)
    {
        Guard.NotNull(formula);
        if (Guard.NotNull(troubles).Count == 0)
            throw new ArgumentException($"{nameof(troubles)} is empty; at least one is expected.", nameof(troubles));
        return new Diagnosis(formula, [.. troubles.Select(trouble => Guard.NotNull(trouble, nameof(troubles))).Distinct()], facts ?? TroubleFacts.None);
    }

    /// <summary>The troubles and the cause that leads.</summary>
    public override string ToString() => $"{string.Join(", ", Troubles)}: {(Ranked.Count > 0 ? Ranked[0].ToString() : "no cause can be told yet")}";

    private static List<string> CautionsOf(TroubleParts parts, TroubleFinding[] all)
    {
        List<string> cautions = [];
        if ((parts.Contents.MoistEgg > 0 || parts.Contents.Dairy > 0) && all.Any(finding => finding.Remedy.Celsius is not null))
        {
            cautions.Add("Warm it no further and no longer than is said, and cool at once what is not used: with egg or dairy all its time above 5 °C (41 °F) counts, no more than two "
                + "hours in all and one above 32 °C (90 °F) (United States household guidance, recalled).");
        }
        if (parts.Contents.Egg > 0)
            cautions.Add("Warming an icing to work it cooks nothing: egg that was raw or not heated enough stays so (Food Code 3-401.11, recalled). A foam of egg that stands uses up its two hours.");
        if (all.Any(finding => finding.Cause.Signs.Any(sign => sign.Figure is { Key: "syrup-celsius" or "supersaturation" }) || finding.Cause.Key is "boiled-dry"))
            cautions.Add(CookingStage.Caution + " (common practice)");
        cautions.Add("The rules tell what usually is the cause, and nothing here judges whether a food may still be eaten. Local codes and licensed practice decide.");
        return cautions;
    }
}
