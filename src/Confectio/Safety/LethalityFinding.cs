using System.Globalization;
using Confectio.Sources;

namespace Confectio.Safety;

/// <summary>What one kinetic set says of a log.</summary>
public sealed class LethalityFinding
{
    // Numbers are shown with two decimals: what is shown as the limit is at the limit.
    private const double Rounding = 0.005;

    internal LethalityFinding(KineticSet set, bool applies, string why, Spread? sum)
    {
        Set = set;
        Applies = applies;
        Why = why;
        // Beyond what was counted the sum goes on, and the survivors need not.
        double most = set.MeasuredLogs;
        IsBeyondMeasured = sum?.High >= most - Rounding;
        LogReduction = sum is Spread logs ? new Spread(Math.Min(logs.Low, most), Math.Min(logs.Likely, most), Math.Min(logs.High, most),
            logs.Basis) : null;
    }

    /// <summary>The set.</summary>
    public KineticSet Set { get; }

    /// <summary>Whether it applies to the matter, its water activity and its acidity.</summary>
    public bool Applies { get; }

    /// <summary>Why, or why not.</summary>
    public string Why { get; }

    /// <summary>
    /// The log₁₀ reduction, at most as far as the study counted (<see cref="KineticSet.MeasuredLogs"/>): an end that stands there means "at
    /// least". <see langword="null"/> where the set does not apply: no number is better than one that promises too much.
    /// </summary>
    public Spread? LogReduction { get; }

    /// <summary>Whether the sum, or its high end, goes beyond what the study counted, and was cut there.</summary>
    public bool IsBeyondMeasured { get; }

    /// <summary>
    /// The number in words: <c>2.10 (1.02 to 2.96) log</c>; <c>at least 7 log</c> where all of it is beyond what the study counted;
    /// <c>0.51 to at least 3 log</c> where only the low end is not. Empty where the set does not apply.
    /// </summary>
    public string LogText
    {
        get
        {
            if (LogReduction is not Spread logs)
                return "";
            double most = Set.MeasuredLogs;
            CultureInfo invariant = CultureInfo.InvariantCulture;
            return logs.High <= 0 ? "0 log"
                : !IsBeyondMeasured ? string.Create(invariant, $"{logs.Likely:0.00} ({logs.Low:0.00} to {logs.High:0.00}) log")
                : logs.Low >= most - Rounding ? string.Create(invariant, $"at least {most:0.##} log")
                : logs.Likely >= most - Rounding ? string.Create(invariant, $"{logs.Low:0.00} to at least {most:0.##} log")
                : string.Create(invariant, $"{logs.Likely:0.00} ({logs.Low:0.00} to at least {most:0.##}) log");
        }
    }

    /// <summary>One line, such as <c>mattick: 0.51 to at least 3 log</c>.</summary>
    public override string ToString() => Applies ? $"{Set.Key}: {LogText}" : $"{Set.Key}: does not apply; {Why}";
}
