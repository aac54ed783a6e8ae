using System.Globalization;
using Confectio.Sources;

namespace Confectio.Safety;

/// <summary>
/// A probe's log judged by every kinetic set that applies, and by none that does not. The lowest is the answer, the others stand beside it;
/// where none applies there is no number, which says nothing for or against the mix.
/// </summary>
public sealed class LethalityJudgement
{
    private LethalityJudgement(ProbeLog log, FoodMatrix matter, Spread waterActivity, Spread ph, bool isPhStated,
        LethalityFinding[] findings)
    {
        Log = log;
        Matter = matter;
        WaterActivity = waterActivity;
        Ph = ph;
        IsPhStated = isPhStated;
        Findings = findings;
    }

    /// <summary>The log. Its <see cref="ProbeLog.Gaps"/> belong beside every number: nothing is counted across them.</summary>
    public ProbeLog Log { get; }

    /// <summary>What was heated.</summary>
    public FoodMatrix Matter { get; }

    /// <summary>Its water activity.</summary>
    public Spread WaterActivity { get; }

    /// <summary>What its pH may be.</summary>
    public Spread Ph { get; }

    /// <summary>Whether the pH was stated; otherwise it is <see cref="DefaultPh"/>.</summary>
    public bool IsPhStated { get; }

    /// <summary>What each set says: those that apply first, the lowest of them first, then those that do not, with the reason.</summary>
    public IReadOnlyList<LethalityFinding> Findings { get; }

    /// <summary>The lowest finding that applies: the answer. <see langword="null"/> where none does.</summary>
    public LethalityFinding? Minimum => HasAnswer ? Findings[0] : null;

    /// <summary>Whether any set applies.</summary>
    public bool HasAnswer => Findings.Count > 0 && Findings[0].Applies;

    /// <summary>
    /// The pH that is taken of a matter unless it is stated. White is 7.6 as laid and rises to 9.7 as it is stored, and nobody knows the
    /// age of a carton: all studies of plain white between speak, and the slowest decides. Acid, as cream of tartar, lowers it further, and
    /// then it must be stated. Yolk is 6.0 to 6.6, whole egg taken as 7 to 8 (from memory); other matter may be anything.
    /// </summary>
    /// <param name="matter">The matter.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="matter"/> is not a defined value.</exception>
    public static Spread DefaultPh(FoodMatrix matter) => Guard.Defined(matter) switch
    {
        FoodMatrix.EggWhite => new Spread(7.6, 8.2, 9.7),
        FoodMatrix.EggYolk => new Spread(6.0, 6.3, 6.6),
        FoodMatrix.WholeEgg => new Spread(7, 7.5, 8, SpreadBasis.Judged),
        _ => new Spread(0, 7, 14, SpreadBasis.Judged),
    };

    /// <summary>Judges a log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="matter">What was heated.</param>
    /// <param name="waterActivity">Its water activity, from 0 to 1; of a formula by <see cref="HeatedMix.WaterActivity"/>.</param>
    /// <param name="ph">What its pH may be, from 0 to 14; <see cref="DefaultPh"/> where it is not stated.</param>
    /// <returns>The judgement. Show <see cref="HeatCaution.Text"/> and the gaps of the log with it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="log"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static LethalityJudgement Of(ProbeLog log, FoodMatrix matter, Spread waterActivity, Spread? ph = null)
    {
        Guard.NotNull(log);
        Guard.Defined(matter);
        Guard.InRange(waterActivity.Low, 0, 1, nameof(waterActivity));
        Guard.InRange(waterActivity.High, 0, 1, nameof(waterActivity));
        Spread acidity = Acidity.Checked(ph ?? DefaultPh(matter));
        List<(KineticSet Set, bool Applies, string Why)> said = [];
        foreach (KineticSet set in KineticSet.All)
        {
            bool isFor = set.AppliesTo(matter, waterActivity.Likely, out string reason, acidity);
            // Where the activity is in doubt its low end decides: sugar protects, so that a set for more active water would promise too
            // much.
            if (isFor && waterActivity.Low < set.LowWaterActivity)
                isFor = set.AppliesTo(matter, waterActivity.Low, out reason, acidity);
            said.Add((set, isFor, reason));
        }
        // A study of old white, in which heat kills quickly, may stand beside one that reaches the mix at its lowest pH, and never alone.
        bool isLowEndReached = said.Any(one => one.Applies && one.Set.Matter == matter && !(one.Set.LowPh > acidity.Low));
        List<LethalityFinding> findings = [];
        foreach ((KineticSet set, bool isFor, string reason) in said)
        {
            bool applies = isFor && (isLowEndReached || !(set.LowPh > acidity.Low));
            string why = applies || !isFor ? reason : string.Create(CultureInfo.InvariantCulture,
                $"holds for a pH of {set.LowPh:0.##} to {set.HighPh:0.##}; here it may be as low as {acidity.Low:0.##}, where heat kills "
                    + $"more slowly, and no study of such a mix reaches there");
            findings.Add(new LethalityFinding(set, applies, why, applies ? log.LogReduction(set) : null));
        }
        return new LethalityJudgement(log, matter, waterActivity, acidity, ph is not null,
            [.. findings.OrderBy(finding => !finding.Applies).ThenBy(finding => finding.LogReduction?.Low).ThenBy(finding =>
                finding.LogReduction?.Likely)]);
    }

    /// <summary>
    /// The answer in one sentence: what the lowest study that applies says, or that none does and why; and where the log has gaps, that
    /// nothing is counted there.
    /// </summary>
    public string Headline
    {
        get
        {
            CultureInfo invariant = CultureInfo.InvariantCulture;
            string gaps = Log.Gaps.Count == 0 ? "" : string.Create(invariant,
                $" Nothing is counted across the {(Log.Gaps.Count == 1 ? "gap" : $"{Log.Gaps.Count} gaps")} of the log, "
                    + $"{Log.Gaps.Sum(gap => gap.Seconds):0.#} s in all.");
            if (Minimum is not LethalityFinding lowest)
                return $"No study that is built in was made in such a food at such a water activity and acidity: there is no number, which "
                    + $"says nothing for or against the mix.{gaps}";
            int others = Findings.Count(finding => finding.Applies) - 1;
            string which = others == 0 ? "The one study that applies"
                : string.Create(invariant, $"The lowest of the {others + 1} studies that apply");
            string solute = lowest.Set.Solute.Length == 0 ? "" : $", predicted for water with {lowest.Set.Solute}";
            return $"{which} says {lowest.LogText} ({lowest.Set.Name}{solute}; {lowest.Set.Provenance!.Source.ShortName}).{gaps}";
        }
    }

    /// <summary>The findings that apply, the lowest first; that there is none where there is none.</summary>
    public override string ToString() => $"{(HasAnswer ? string.Join("; ", Findings.Where(finding => finding.Applies)
        .Select(finding => $"{finding} ({finding.Set.Provenance!.Source.ShortName})")) : Headline)} Local codes and licensed practice decide.";
}
