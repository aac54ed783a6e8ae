using System.Globalization;

namespace Confectio.Formulas.Solving;

/// <summary>A part that a replacement was to keep.</summary>
public sealed class KeptPart
{
    private readonly double _replacedGrams;

    internal KeptPart(FormulaPart part, double takenOutGrams, double putInGrams, double replacedGrams)
    {
        Part = part;
        TakenOutGrams = takenOutGrams;
        PutInGrams = putInGrams;
        _replacedGrams = replacedGrams;
    }

    /// <summary>The part.</summary>
    public FormulaPart Part { get; }

    /// <summary>How much of it went out, g.</summary>
    public double TakenOutGrams { get; }

    /// <summary>How much of it came in, g.</summary>
    public double PutInGrams { get; }

    /// <summary>Whether it stayed, to a billionth of the mass that was replaced.</summary>
    public bool IsKept => Math.Abs(PutInGrams - TakenOutGrams) <= 1e-9 * _replacedGrams;

    /// <summary>A line of text: <c>fat: 81.11 g out, 81.11 g in</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Part}: {TakenOutGrams:0.##} g out, {PutInGrams:0.##} g in");
}
