using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>An amount found in a text, and where.</summary>
internal readonly record struct FoundAmount(int Start, int End, Amount Amount, AmountManner Manner)
{
    public bool IsMeasure => Manner != AmountManner.Bare && (Amount.IsVolume || Amount.IsPiece);

    public bool IsMass => Manner != AmountManner.Bare && Amount.IsMass;
}

/// <summary>How a measure is said to be filled.</summary>
internal enum AmountManner
{
    /// <summary>Level, or nothing is said.</summary>
    Level,

    /// <summary>Heaped, rounded, scant, a pinch: more or less than the measure holds, and nobody says how much.</summary>
    NotLevel,

    /// <summary>No amount, but a number without a unit.</summary>
    Bare,
}
