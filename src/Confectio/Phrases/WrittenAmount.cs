using System.Diagnostics.CodeAnalysis;
using Confectio.Measures;

namespace Confectio.Phrases;

/// <summary>
/// An amount where it stands in a text, with what is said of it: about, heaped, whose cup. <see langword="default"/> is 0 g at the start.
/// </summary>
public readonly struct WrittenAmount : IEquatable<WrittenAmount>
{
    /// <summary>The amount. Of a pinch, a knob or a drop it is the amount that is taken for it, often a range.</summary>
    public Amount Amount { get; internal init; }

    /// <summary>Where it begins in the text, counted from 0.</summary>
    public int Start { get; internal init; }

    /// <summary>How many characters it takes.</summary>
    public int Length { get; internal init; }

    /// <summary>How full the measure is said to be.</summary>
    public MeasureFill Fill { get; internal init; }

    /// <summary>Whether the text says about, ~, a pinch, or another word that leaves it open how much.</summary>
    public bool IsApproximate { get; internal init; }

    /// <summary>Whose cup or spoon the text says it is, such as <c>US cup</c>; <see langword="null"/> where it does not say.</summary>
    public MeasuringSystem? MeasuringSystem { get; internal init; }

    /// <summary>A number without a unit: what is counted stands behind it, as in <c>4 eggs</c>.</summary>
    internal bool IsCount { get; init; }

    internal Fraction CountLow { get; init; }

    internal Fraction CountHigh { get; init; }

    /// <summary>
    /// The word of a rough measure, such as pinch, or of a lone letter; <see langword="null"/> where nothing was taken for it.
    /// </summary>
    internal string? Assumed { get; init; }

    /// <summary>Why it cannot be read, where it looks like an amount and is none.</summary>
    internal string? Reason { get; init; }

    /// <summary>"A few" of a rough measure was taken for three to six.</summary>
    internal bool IsFew { get; init; }

    /// <summary>A measure without a size, such as a drizzle; <see cref="Reason"/> says so.</summary>
    internal bool IsVague { get; init; }

    /// <summary>One tin, jar or bag, without a word of what is in it.</summary>
    internal bool IsOneContainer { get; init; }

    internal bool IsRead => Reason is null && !IsCount;

    internal int End => Start + Length;

    /// <inheritdoc/>
    public bool Equals(WrittenAmount other) => Amount == other.Amount && Start == other.Start && Length == other.Length
        && Fill == other.Fill
        && IsApproximate == other.IsApproximate && MeasuringSystem == other.MeasuringSystem && IsCount == other.IsCount
        && CountLow == other.CountLow && CountHigh == other.CountHigh && Reason == other.Reason;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is WrittenAmount other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Amount, Start, Length);

    /// <summary>Whether two amounts are the same, at the same place.</summary>
    public static bool operator ==(WrittenAmount left, WrittenAmount right) => left.Equals(right);

    /// <summary>Whether two amounts differ, or their places.</summary>
    public static bool operator !=(WrittenAmount left, WrittenAmount right) => !left.Equals(right);

    /// <summary>The amount, such as <c>about 1 cup</c> or <c>2 Tbsp, heaped</c>.</summary>
    public override string ToString() => (IsApproximate ? "about " : "") + Amount
        + (Fill == MeasureFill.NotStated ? "" : ", " + Fill.ToString().ToLowerInvariant());
}
