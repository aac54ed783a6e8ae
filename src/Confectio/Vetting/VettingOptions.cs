using System.Globalization;
using Confectio.Measures;

namespace Confectio.Vetting;

/// <summary>How a table is read and judged. Every default stands here.</summary>
public sealed class VettingOptions
{
    /// <summary>The defaults.</summary>
    public static VettingOptions Default { get; } = new();

    /// <summary>The measuring system the table is said to use; <see langword="null"/> (the default) finds it from the rows.</summary>
    public MeasuringSystem? System { get; init; }

    /// <summary>How decimals are written in the table; <see langword="null"/> (the default) finds it from its numbers.</summary>
    public AmountReading? Reading { get; init; }

    /// <summary>
    /// The expected share of right rows among those called wrong, at most: 0.05. Smaller is stricter with the vetter and
    /// kinder to the table.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not from 0.0001 to 0.5.</exception>
    public double FalseDiscoveryRate
    {
        get;
        init => field = Guard.InRange(value, 0.0001, 0.5, nameof(FalseDiscoveryRate));
    } = 0.05;

    /// <summary>The share of rows expected to be wrong before anything is read: 0.1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not from 0.001 to 0.5.</exception>
    public double ExpectedWrong
    {
        get;
        init => field = Guard.InRange(value, 0.001, 0.5, nameof(ExpectedWrong));
    } = 0.1;

    /// <summary>The systems among which it is found, where something else of the document narrows them; <see langword="null"/> for all.</summary>
    internal IReadOnlyList<MeasuringSystem>? Among { get; init; }

    /// <summary>Beyond how many standard deviations of a hypothesis nothing is worked out; tests ask for more.</summary>
    internal double Reach { get; init; } = RowHypothesis.UsualReach;

    /// <summary>Whether the rows above and below may explain a figure; a test asks what else the order of rows changes.</summary>
    internal bool HearsNeighbours { get; init; } = true;

    /// <summary>What the table is judged by.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{System?.Name ?? "any measuring system"}, false discovery {FalseDiscoveryRate:0.####}, wrong {ExpectedWrong:0.####}");
}
