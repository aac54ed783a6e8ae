using Confectio.Cards;

namespace Confectio.Vetting;

/// <summary>Something wrong on a card: where, what stands there, what was expected, and what most likely happened.</summary>
public sealed class CardFinding
{
    internal CardFinding(CardIssue issue, FindingSeverity severity, CardPlace place, string stands, string expected, string explanation, string? cause = null,
        double? probabilityRight = null)
    {
        Issue = issue;
        Severity = severity;
        Place = place;
        Stands = stands;
        Expected = expected;
        Explanation = explanation;
        Cause = cause;
        ProbabilityRight = probabilityRight;
    }

    /// <summary>What is wrong.</summary>
    public CardIssue Issue { get; }

    /// <summary>How grave it is.</summary>
    public FindingSeverity Severity { get; }

    /// <summary>Where it stands.</summary>
    public CardPlace Place { get; }

    /// <summary>What stands there.</summary>
    public string Stands { get; }

    /// <summary>What was expected; empty where that cannot be told.</summary>
    public string Expected { get; }

    /// <summary>What is wrong and what most likely happened, in a sentence.</summary>
    public string Explanation { get; }

    /// <summary>
    /// The code of what most likely happened, such as <c>spoon-swap</c> or <c>columns-swapped</c>; <see langword="null"/> where the issue
    /// says all.
    /// </summary>
    public string? Cause { get; }

    /// <summary>How likely what stands there is right, from 0 to 1; <see langword="null"/> where no model tells.</summary>
    public double? ProbabilityRight { get; }

    /// <summary>The place, the code and the sentence.</summary>
    public override string ToString() => $"{Place}: {Issue.ToCode()}: {Explanation}";
}
