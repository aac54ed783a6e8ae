using Confectio.Measures;
using Confectio.Phrases;

namespace Confectio.Layouts;

/// <summary>
/// An amount found in a text, and where. It is bare where it is a number without a unit, and rough where it is heaped, rounded, scant or a
/// pinch: more or less than a measure holds.
/// </summary>
internal readonly record struct FoundAmount(int Start, int End, Amount Amount, bool IsBare, RoughMeasure? Rough = null)
{
    public bool IsMeasure => !IsBare && (Amount.IsVolume || Amount.IsPiece);

    public bool IsMass => !IsBare && Amount.IsMass;
}
