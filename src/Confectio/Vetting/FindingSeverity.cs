namespace Confectio.Vetting;

/// <summary>How grave a finding is.</summary>
public enum FindingSeverity
{
    /// <summary>Worth a look; the card is not wrong for it.</summary>
    Note,

    /// <summary>Most likely wrong, or wrong by little.</summary>
    Warning,

    /// <summary>Wrong.</summary>
    Error,
}
