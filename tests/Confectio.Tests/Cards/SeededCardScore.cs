using System.Globalization;
using Confectio.Cards;
using Confectio.Ingredients;
using Confectio.Vetting;

namespace Confectio.Tests.Cards;

/// <summary>What vetting found of what was planted on made cards.</summary>
internal sealed class SeededCardScore
{
    private readonly SortedDictionary<string, (int Planted, int Found, int Reason)> _kinds = new(StringComparer.Ordinal);

    public int Cards { get; private set; }

    public int Lines { get; private set; }

    public int Planted { get; private set; }

    /// <summary>Planted and too small to be seen: within rounding or two standard deviations.</summary>
    public int Invisible { get; private set; }

    public int Found { get; private set; }

    public int RightReason { get; private set; }

    /// <summary>Findings at a place where nothing was planted.</summary>
    public int False { get; private set; }

    /// <summary>Findings of what follows from a planted mistake, such as the sum over a wrong weight.</summary>
    public int Echoes { get; private set; }

    /// <summary>Lines that should be read and were not.</summary>
    public int Unread { get; private set; }

    public double Precision => (double)Found / Math.Max(1, Found + False);

    public double Recall => (double)Found / Math.Max(1, Planted - Invisible);

    public double Reasons => (double)RightReason / Math.Max(1, Found);

    public double AlarmsPer100Lines => 100.0 * False / Math.Max(1, Lines);

    public List<string> Notes { get; } = [];

    public static SeededCardScore Of(int seed, double mistakes, int cards)
    {
        SeededCards maker = new(seed, mistakes);
        SeededCardScore score = new();
        for (int i = 0; i < cards; i++)
            score.Add(maker.Next());
        return score;
    }

    private void Add(SeededCard card)
    {
        Cards++;
        Lines += card.Lines;
        CardVerdict? verdict = CardVetter.Vet(PrintedCard.Read(card.Text, IngredientTable.BuiltIn));
        if (verdict is null || verdict.Card.Lines.Count != card.Lines)
        {
            Unread++;
            Notes.Add($"UNREAD {card.Form} {verdict?.Card.Lines.Count} of {card.Lines}\n{card.Text}");
            if (verdict is null)
                return;
        }
        List<CardFinding> findings = [.. verdict.Findings.Where(finding => finding.Severity != FindingSeverity.Note)];
        HashSet<CardFinding> matched = [];
        foreach (Planted planted in card.Planted)
        {
            CardFinding? hit = findings.Find(finding => !matched.Contains(finding) && finding.Issue == planted.Issue && IsAt(card, verdict, finding, planted))
                ?? findings.Find(finding => !matched.Contains(finding) && IsSameAs(planted.Issue, finding.Issue));
            (int count, int found, int reason) = _kinds.GetValueOrDefault(planted.Kind);
            Planted++;
            if (hit is null && !planted.IsVisible)
            {
                Invisible++;
                continue;
            }
            count++;
            if (hit is not null)
            {
                matched.Add(hit);
                found++;
                Found++;
                bool right = planted.Causes.Length == 0 || planted.Causes.Contains(hit.Cause ?? "") || (planted.Issue is CardIssue.AllergenContradicted or CardIssue.AllergenMissing);
                reason += right ? 1 : 0;
                RightReason += right ? 1 : 0;
                if (!right)
                    Notes.Add($"REASON {planted.Kind} at {planted.Place}: {hit.Cause} for {string.Join("/", planted.Causes)}: {hit.Explanation}");
            }
            else
            {
                Notes.Add($"MISSED {planted.Kind} at {planted.Place}\n{card.Text}\n  {string.Join("\n  ", verdict.Findings)}\n  {string.Join("\n  ", verdict.NotJudged)}");
            }
            _kinds[planted.Kind] = (count, found, reason);
        }
        foreach (CardFinding finding in findings.Where(finding => !matched.Contains(finding)))
        {
            if (card.Planted.Any(planted => Follows(planted.Issue, finding.Issue)))
            {
                Echoes++;
                continue;
            }
            False++;
            Notes.Add($"FALSE {finding}\n{card.Text}\n planted {string.Join("; ", card.Planted.Select(planted => planted.Kind + " " + planted.Place + " " + planted.IsVisible))}");
        }
    }

    private static bool IsAt(SeededCard card, CardVerdict verdict, CardFinding finding, Planted planted) => planted.Issue switch
    {
        CardIssue.Measures or CardIssue.Percent => verdict.Card.Lines.Any(line => line.Place.Line == finding.Place.Line && (line.Place.Path == finding.Place.Path) && line.Phrase.Text.Contains(planted.Place, StringComparison.Ordinal)),
        CardIssue.Temperature or CardIssue.Process => verdict.Card.Temperatures.Any(one => one.Place.Line == finding.Place.Line && one.Place.Column == finding.Place.Column && one.Sentence.Contains(planted.Place.Trim(), StringComparison.Ordinal)),
        _ => true,
    };

    // A lone temperature of the wrong scale may be told as a stage's or a process's; energy that does not fit as a nutrient.
    private static bool IsSameAs(CardIssue planted, CardIssue found) => (planted, found) is (CardIssue.Energy, CardIssue.Nutrition) or (CardIssue.Nutrition, CardIssue.Energy)
        or (CardIssue.Stage, CardIssue.Temperature) or (CardIssue.Temperature, CardIssue.Process) or (CardIssue.Yield, CardIssue.Portions) or (CardIssue.Portions, CardIssue.Yield) or (CardIssue.StageAltitude, CardIssue.Stage)
        or (CardIssue.Stage, CardIssue.StageAltitude);

    private static bool Follows(CardIssue planted, CardIssue found) => planted switch
    {
        CardIssue.Measures => found is CardIssue.Percent or CardIssue.Total or CardIssue.Yield or CardIssue.Portions or CardIssue.PercentSum,
        CardIssue.AllergenContradicted => found == CardIssue.AllergenContradicted,
        CardIssue.AllergenMissing => found == CardIssue.AllergenMissing,
        CardIssue.Energy or CardIssue.Nutrition => found is CardIssue.Energy or CardIssue.Nutrition,
        CardIssue.Portions or CardIssue.Yield => found is CardIssue.Nutrition or CardIssue.Portions or CardIssue.Yield,
        CardIssue.Percent => found == CardIssue.PercentSum,
        _ => false,
    };

    public string Told()
    {
        System.Text.StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"{Cards} cards, {Lines} lines, planted {Planted} ({Invisible} invisible), found {Found}, false {False}, echoes {Echoes}, unread {Unread}; precision {Precision:0.000} recall {Recall:0.000} reasons {Reasons:0.000} alarms/100 {AlarmsPer100Lines:0.00}");
        foreach ((string kind, (int planted, int found, int reason)) in _kinds)
            text.AppendLine(CultureInfo.InvariantCulture, $"  {kind,-26} {planted,4} {found,4} {reason,4}  recall {(double)found / Math.Max(1, planted):0.00} reason {(double)reason / Math.Max(1, found):0.00}");
        return text.ToString();
    }
}
