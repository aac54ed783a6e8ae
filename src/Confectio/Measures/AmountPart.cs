using System.Diagnostics.CodeAnalysis;

namespace Confectio.Measures;

/// <summary>One term of an <see cref="Amount"/>: how many of which unit. <see langword="default"/> is 0 g.</summary>
public readonly struct AmountPart : IEquatable<AmountPart>
{
    internal AmountPart(Fraction low, Fraction high, KitchenUnit unit, string? piece)
    {
        Low = low;
        High = high;
        Unit = unit;
        Piece = piece;
    }

    /// <summary>How many; for a range, the smaller number.</summary>
    public Fraction Low { get; }

    /// <summary>How many; for a range such as 2-3 tsp, the larger number.</summary>
    public Fraction High { get; }

    /// <summary>The unit.</summary>
    public KitchenUnit Unit { get; }

    /// <summary>
    /// The word for the piece, such as <c>stick</c> or <c>large</c>; <see langword="null"/> where the unit is not a piece.
    /// </summary>
    public string? Piece { get; }

    /// <inheritdoc/>
    public bool Equals(AmountPart other) => Low == other.Low && High == other.High && Unit == other.Unit && Piece == other.Piece;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is AmountPart other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Low, High, Unit, Piece);

    /// <summary>Whether two parts were written the same.</summary>
    public static bool operator ==(AmountPart left, AmountPart right) => left.Equals(right);

    /// <summary>Whether two parts were written differently.</summary>
    public static bool operator !=(AmountPart left, AmountPart right) => !left.Equals(right);

    /// <summary>Invariant text, such as <c>1 1/2 cups</c>.</summary>
    public override string ToString() => new Amount(this, null).ToString();
}
