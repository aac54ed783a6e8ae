namespace Confectio.Formulas.Solving;

/// <summary>Whether there is a formula that keeps everything that must be kept.</summary>
public enum SolutionStatus
{
    /// <summary>There is one, and the answer is the best of them.</summary>
    Solved,

    /// <summary>There is none. The answer names the demands that collide and is the closest formula.</summary>
    Impossible,

    /// <summary>Neither was proved. The answer is the closest formula that was found.</summary>
    Undecided,
}
