namespace Confectio.Safety;

/// <summary>How a log stands to one step of a cooling rule.</summary>
public enum CoolingOutcome
{
    /// <summary>The log shows the step in time.</summary>
    InTime,

    /// <summary>The log shows that it took too long.</summary>
    TooLate,

    /// <summary>The log ends before it can be told.</summary>
    NotShown,
}
