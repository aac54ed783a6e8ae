using System.Globalization;
using Confectio.Sources;

namespace Confectio.Heat;

/// <summary>What one kinetic set says of a log.</summary>
public sealed class LethalityFinding
{
    internal LethalityFinding(KineticSet set, bool applies, string why, Spread? logReduction)
    {
        Set = set;
        Applies = applies;
        Why = why;
        // Beyond what was measured the sum goes on, and the survivors need not.
        double most = set.MeasuredLogs ?? double.MaxValue;
        IsBeyondMeasured = logReduction?.High > most;
        LogReduction = logReduction is Spread logs ? new Spread(Math.Min(logs.Low, most), Math.Min(logs.Likely, most), Math.Min(logs.High, most)) : null;
    }

    /// <summary>The set.</summary>
    public KineticSet Set { get; }

    /// <summary>Whether it applies to the matter and its water activity.</summary>
    public bool Applies { get; }

    /// <summary>Why, or why not.</summary>
    public string Why { get; }

    /// <summary>
    /// The log₁₀ reduction, at most as far as it was measured (<see cref="KineticSet.MeasuredLogs"/>); <see langword="null"/> where the set does not apply: no
    /// number is better than one that promises too much.
    /// </summary>
    public Spread? LogReduction { get; }

    /// <summary>Whether the sum goes beyond what was measured, and was cut there.</summary>
    public bool IsBeyondMeasured { get; }

    /// <summary>One line, such as <c>mattick: 0.31 (0.17 to 0.32) log</c>.</summary>
    public override string ToString() => LogReduction is Spread logs ? string.Create(CultureInfo.InvariantCulture, $"{Set.Key}: {logs:0.00} log{(IsBeyondMeasured ? ", which is as far as was measured" : "")}") : $"{Set.Key}: does not apply; {Why}";
}
