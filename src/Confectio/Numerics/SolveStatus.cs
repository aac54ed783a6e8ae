namespace Confectio.Numerics;

/// <summary>How a solve ended.</summary>
internal enum SolveStatus
{
    /// <summary>The optimum was found.</summary>
    Optimal,

    /// <summary>The conditions contradict each other, and the proof of it was checked against the problem as stated.</summary>
    Infeasible,

    /// <summary>
    /// Neither was shown: a proof of contradiction failed its check, the passes did not settle, or nothing bounds the cost.
    /// </summary>
    Undecided,
}
