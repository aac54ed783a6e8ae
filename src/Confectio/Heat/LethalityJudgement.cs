using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>
/// A probe's log judged by every kinetic set that applies, and by none that does not. Where sets disagree they stand side by side; where none
/// applies there is no number.
/// </summary>
public sealed class LethalityJudgement
{
    private LethalityJudgement(ProbeLog log, HeatedMatter matter, Spread waterActivity, IReadOnlyList<LethalityFinding> findings)
    {
        Log = log;
        Matter = matter;
        WaterActivity = waterActivity;
        Findings = findings;
    }

    /// <summary>The log.</summary>
    public ProbeLog Log { get; }

    /// <summary>What was heated.</summary>
    public HeatedMatter Matter { get; }

    /// <summary>Its water activity.</summary>
    public Spread WaterActivity { get; }

    /// <summary>What each set says, those that do not apply too, with the reason.</summary>
    public IReadOnlyList<LethalityFinding> Findings { get; }

    /// <summary>Whether any set applies.</summary>
    public bool HasAnswer => Findings.Any(finding => finding.Applies);

    /// <summary>Judges a log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="matter">What was heated.</param>
    /// <param name="waterActivity">Its water activity, from 0 to 1; of a formula by <see cref="HeatedMix.WaterActivity"/>.</param>
    /// <returns>The judgement. Show <see cref="HeatCaution.Text"/> with it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="log"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static LethalityJudgement Of(ProbeLog log, HeatedMatter matter, Spread waterActivity)
    {
        Guard.NotNull(log);
        Guard.Defined(matter);
        Guard.InRange(waterActivity.Low, 0, 1, nameof(waterActivity));
        Guard.InRange(waterActivity.High, 0, 1, nameof(waterActivity));
        List<LethalityFinding> findings = [];
        foreach (KineticSet set in KineticSet.All)
        {
            bool applies = set.AppliesTo(matter, waterActivity.Likely, out string why);
            // Where the activity is in doubt its low end decides: sugar protects, so that a set for more active water would promise too much.
            if (applies && waterActivity.Low < set.LowWaterActivity)
                applies = set.AppliesTo(matter, waterActivity.Low, out why);
            findings.Add(new LethalityFinding(set, applies, why, applies ? log.LogReduction(set) : null));
        }
        return new LethalityJudgement(log, matter, waterActivity, findings);
    }

    /// <summary>The findings that apply, one a line; that there is none where there is none.</summary>
    public override string ToString() => HasAnswer ? string.Join("; ", Findings.Where(finding => finding.Applies))
        : "no study that is built in was made in such a food at such a water activity: there is no number";
}
