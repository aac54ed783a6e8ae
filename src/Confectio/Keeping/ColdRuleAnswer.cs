namespace Confectio.Keeping;

/// <summary>A printed rule and what it says of a formula.</summary>
public sealed class ColdRuleAnswer
{
    internal ColdRuleAnswer(ColdRule rule, ColdRuleVerdict verdict)
    {
        Rule = rule;
        Verdict = verdict;
    }

    /// <summary>The rule.</summary>
    public ColdRule Rule { get; }

    /// <summary>What it says of the formula.</summary>
    public ColdRuleVerdict Verdict { get; }

    /// <summary>A line of text.</summary>
    public override string ToString() => $"{Verdict switch
    {
        ColdRuleVerdict.KeepCold => "keep cold",
        ColdRuleVerdict.MayStandOut => "may stand out",
        ColdRuleVerdict.TestFirst => "test first",
        _ => "does not say",
    }}: {Rule}";
}
