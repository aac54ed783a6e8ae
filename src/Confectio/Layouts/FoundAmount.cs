using Confectio.Measures;

namespace Confectio.Layouts;

/// <summary>An amount found in a text, and where.</summary>
internal readonly record struct FoundAmount(int Start, int End, Amount Amount, AmountManner Manner)
{
    public bool IsMeasure => Amount.IsVolume || Amount.IsPiece;
}

/// <summary>How a measure is said to be filled.</summary>
internal enum AmountManner
{
    /// <summary>Level, or nothing is said.</summary>
    Level,

    /// <summary>Heaped, rounded, scant, generous: more or less than the measure holds, and nobody says how much.</summary>
    NotLevel,
}
