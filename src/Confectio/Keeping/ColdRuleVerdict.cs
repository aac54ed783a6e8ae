namespace Confectio.Keeping;

/// <summary>What a printed rule says of a formula.</summary>
public enum ColdRuleVerdict
{
    /// <summary>The rule does not speak of such a food.</summary>
    DoesNotSay,

    /// <summary>By this rule it may stand out.</summary>
    MayStandOut,

    /// <summary>By this rule its acidity and water activity are measured first.</summary>
    TestFirst,

    /// <summary>By this rule it is kept cold.</summary>
    KeepCold,
}
